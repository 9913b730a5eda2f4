"""A recipe as the scale sees it: each line with what scaling must know, nothing else.

Python scales from this and the browser from its JSON (scaling_data.py), so both see the same.
Uses the staples for densities and bottling.py for what one batch fills. Leaves out the arithmetic:
scaling.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any, Literal

from stillroom.core.amounts.quantities import (
    Amount,
    Ratio,
    Unmeasured,
    decimal_sign,
    show_amount,
)
from stillroom.core.amounts.rounding import (
    allows_halves,
    binds_all,
    near_of,
    rounding_data,
    share_named,
    spoon_share,
    tight_class,
)
from stillroom.core.amounts.tins import Tin, find_tin
from stillroom.core.amounts.units import System, convert, counted_nouns, size_of
from stillroom.core.batch.bottling import (
    finished_density,
    headspace_ml,
    makes_ml,
    stands_ml,
    vessel_share,
)
from stillroom.core.larder.shelves import is_named_elsewhere
from stillroom.core.lines.ingredient import Ingredient, Scales
from stillroom.core.lines.reader import MEASURE_WORDS
from stillroom.core.lines.staple_table import staple_of
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.method import find_base
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.kept_apart import kept_apart
from stillroom.core.words.patterns import any_word, late_regex
from stillroom.core.words.plurals import plural, singular
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")

Form = Literal["amount", "ratio", "words"]
_FEW_WORDS = 6
_SPOONED = ("tsp", "tbsp", "cup")
_SPOONS = ("tsp", "tbsp")
# a strength, a heat and a length do not grow with the batch, nor does a rate
_NUMBER = late_regex(r"[½⅓⅔¼¾⅛]|\d(?![\d.,]*\s*(?:%|°|[cm]m\b))")
_RATE = late_regex(r"\b(?:for (?:each|every)|per|to (?:a|the|each)|(?:k?g|oz|lb|l) each)\b")


@dataclass(frozen=True)
class ScaleLine:
    """One ingredient: its amount as written, and how it is rounded.

    `low` and `high` are in `unit` ("" counts things); of a ratio they are for each `per_low` to
    `per_high` of the line at place `of`, in that line's own unit. `tolerance` and `near` are shares
    of 1; `stated` tells that the recipe itself gave the tolerance. `density` is g per ml in bulk,
    `pack` how much one of the nouns holds, in words: "400 g".
    `note_counts` tells that the note names an amount, which does not grow with the batch.
    """

    item: str
    one: str
    many: str
    form: Form
    written: str
    note: str = ""
    note_counts: bool = False
    group: str = ""
    optional: bool = False
    low: Fraction = Fraction(0)
    high: Fraction = Fraction(0)
    unit: str = ""
    noun_one: str = ""
    noun_many: str = ""
    pack: str = ""
    about: bool = False
    per_low: Fraction = Fraction(1)
    per_high: Fraction = Fraction(1)
    of: int | None = None
    scales: Scales = "with the batch"
    tolerance: Fraction = Fraction(1, 20)
    stated: bool = False
    near: Fraction = Fraction(1, 50)
    tight: str = ""
    halves: bool = False
    spooned: bool = False
    density: Fraction | None = None
    density_source: str = ""
    each_g: Fraction | None = None


@dataclass(frozen=True)
class Scalable:
    """A recipe ready to be scaled.

    `makes_ml` is the volume one batch fills (None when it is not poured or spooned), `stands_ml`
    what stands in the vessel while it steeps or cooks, `vessel_share` how much of a vessel may be
    filled, `vessel_ml` its largest vessel, `container_ml` the first container it is given in,
    `headspace_ml` what its jars are left short of their brim (None when they are no preserve's),
    `tin` the first vessel that is a tin of one size.
    """

    slug: str
    title: str
    kind: str
    system: System
    lines: tuple[ScaleLine, ...]
    makes: Amount
    makes_written: str
    things: str
    thing: str
    each: Amount | None
    each_written: str
    makes_ml: Fraction | None
    finished_density: Fraction | None
    stands_ml: Fraction
    vessel_share: Fraction
    vessel_ml: Fraction | None
    container_ml: Fraction | None
    container: str
    container_many: str
    headspace_ml: Fraction | None = None
    tin: Tin | None = None


@cache
def _heats() -> re.Pattern[str]:
    return any_word(rounding_data()["heats"])


def _boiled_kind(recipe: Recipe) -> str:
    """Return the kind by which a batch boils down, "" of one that no word of its method heats.

    A method of a few words tells nothing.
    """
    told = " ".join(step.text for step in recipe.method)
    silent = len(told.split()) < _FEW_WORDS
    return recipe.kind.name if silent or recipe.oven or _heats().search(told) else ""


@kept_apart(decimal_sign, 256)
def scalable_of(recipe: Recipe) -> Scalable:
    """Return the recipe as the scale sees it; raises Unreadable for a ratio of nothing known."""
    first = recipe.filled_into[0]
    sized = first.size and size_of(first.size.unit) == "volume"
    things = recipe.makes.things
    sizes = [
        convert(vessel.capacity.middle, vessel.capacity.unit, "ml")
        for vessel in recipe.vessels
        if vessel.capacity
    ]
    return Scalable(
        slug=recipe.slug,
        title=recipe.title,
        kind=_boiled_kind(recipe),
        system=recipe.system,
        lines=tuple(_line(recipe, ingredient) for ingredient in recipe.ingredients),
        makes=recipe.makes.amount,
        makes_written=show_amount(recipe.makes.amount),
        things=plural(things) if things else "",
        thing=singular(things),
        each=recipe.makes.each,
        each_written=show_amount(recipe.makes.each) if recipe.makes.each else "",
        makes_ml=makes_ml(recipe),
        finished_density=finished_density(recipe),
        stands_ml=stands_ml(recipe),
        vessel_share=vessel_share(recipe),
        vessel_ml=max(sizes, default=None),
        container_ml=convert(first.size.middle, first.size.unit, "ml")
        if first.size and sized
        else None,
        container=first.name,
        container_many=plural(first.name),
        headspace_ml=headspace_ml(recipe),
        tin=find_tin([vessel.words for vessel in recipe.vessels]),
    )


def _line(recipe: Recipe, ingredient: Ingredient) -> ScaleLine:
    amount = ingredient.amount
    note = _note(ingredient)
    said: dict[str, Any] = {
        "item": ingredient.item,
        "written": show_amount(amount),
        "note": note,
        "note_counts": ingredient.scales == "with the batch" and _names_amount(note),
        "group": ingredient.group,
        "optional": ingredient.optional,
        "scales": ingredient.scales,
    }
    if isinstance(amount, Unmeasured):
        return ScaleLine(one=ingredient.item, many=ingredient.item, form="words", **said)
    own = amount.amount if isinstance(amount, Ratio) else amount
    nouns = counted_nouns()[own.noun] if own.noun else ("", "")
    if ingredient.pack and own.noun:
        said["pack"] = show_amount(ingredient.pack)
        said["written"] = _say("of_pack", amount=said["written"], size=said["pack"])
    if isinstance(amount, Ratio):
        said["of"] = find_base(ingredient, recipe.ingredients)
        said["per_low"], said["per_high"] = _per(amount, recipe.ingredients[said["of"]])
    return ScaleLine(
        form="ratio" if isinstance(amount, Ratio) else "amount",
        low=own.low,
        high=own.high,
        unit=own.unit,
        noun_one=nouns[0],
        noun_many=nouns[1],
        about=own.about,
        **said,
        **_rounding(ingredient, own, _bound_by(recipe)),
    )


@once_a_recipe
def _bound_by(recipe: Recipe) -> str:
    """Return the ratio that all a recipe weighs belongs to, "" where there is none."""
    return next((it for one in recipe.ingredients if binds_all(it := _tight(one))), "")


def _tight(ingredient: Ingredient) -> str:
    staple = staple_of(ingredient)
    strength = ingredient.strength or (staple.strength if staple else None)
    return tight_class(ingredient.item, strength)


def _rounding(ingredient: Ingredient, own: Amount, bound_by: str) -> dict[str, Any]:
    """Return what rounding must know: tolerance, whole or half things, density, weight of one."""
    staple = staple_of(ingredient)
    tight = bound_by or _tight(ingredient)
    bare = not own.unit and not own.noun
    english = bare and not is_named_elsewhere(ingredient.item)
    dense = staple if staple and own.unit else None
    return {
        "one": singular(ingredient.item) if english else ingredient.item,
        "many": plural(ingredient.item) if english else ingredient.item,
        "tolerance": _tolerance(ingredient, own, tight),
        "stated": ingredient.tolerance is not None,
        "near": near_of(tight),
        "tight": tight,
        "halves": not own.unit
        and allows_halves(ingredient.item, own.noun, ingredient.pack is not None),
        "spooned": own.unit.endswith(_SPOONED),
        "density": dense.density if dense else None,
        "density_source": dense.sources.get("density", "") if dense else "",
        "each_g": ingredient.each_g
        or (staple.one_weighs(own.noun) if staple and not own.unit else None),
    }


def _per(ratio: Ratio, base: Ingredient) -> tuple[Fraction, Fraction]:
    """Return what the ratio is "per", in the unit in which its ingredient is written."""
    assert isinstance(base.amount, Amount), "find_base gives no other"
    low = convert(ratio.per.low, ratio.per.unit, base.amount.unit)
    return low, convert(ratio.per.high, ratio.per.unit, base.amount.unit)


def _note(ingredient: Ingredient) -> str:
    """Return the note of an ingredient, its second measure first: "that is 8 oz, softened"."""
    again = " or ".join(show_amount(amount) for amount in ingredient.also)
    bare = isinstance(ingredient.amount, Amount) and not ingredient.amount.noun
    each = _say("each_of", size=show_amount(ingredient.pack)) if ingredient.pack and bare else ""
    return ", ".join(
        part for part in (f"that is {again}" if again else "", each, ingredient.note) if part
    )


def _names_amount(note: str) -> bool:
    """Whether a note tells how many or how much of something the recipe as written takes.

    >>> _names_amount("from 1 or 2 lemons"), _names_amount("750 g for each litre of juice")
    (True, False)
    """
    return bool(_NUMBER.search(note)) and not _RATE.search(note)


def _tolerance(ingredient: Ingredient, amount: Amount, tight: str) -> Fraction:
    if ingredient.tolerance is not None:
        return ingredient.tolerance
    if not amount.unit:
        loose = amount.noun in MEASURE_WORDS
        return share_named("tolerance", "loose" if loose else "counted")
    if amount.about:
        return share_named("tolerance", "about")
    own = share_named("tolerance", "tight" if tight else "plain")
    return max(own, spoon_share()) if amount.unit.endswith(_SPOONS) else own
