"""What a recipe's page says of amounts: the list, the sentence with blanks, other sizes.

`show_amounts` is the context of fragments/how-much.html and fragments/ingredients.html. It also
tells what can be reckoned of the finished thing: strength, fold, sugar, what there is to bottle.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from stillroom.core.bottling import estimate_yield, fill_containers
from stillroom.core.drinks import Pour
from stillroom.core.preserves import solids_of
from stillroom.core.quantities import show_amount, show_decimal
from stillroom.core.recipe import Recipe
from stillroom.core.scalable import Scalable, scalable_of
from stillroom.core.scaled_lines import Measures, ScaledLine
from stillroom.core.scaling import scale
from stillroom.core.strength import fold_of_recipe, strength_of
from stillroom.core.strength_words import milder_text
from stillroom.core.targets import ByFactor
from stillroom.core.units import convert, size_of
from stillroom.core.what_stays import boiled_at_most

_READY = (Fraction(1, 2), Fraction(1), Fraction(2), Fraction(4))


@dataclass(frozen=True)
class ListedLine:
    """One ingredient with its place in the recipe, as the list shows it."""

    place: int
    line: ScaledLine


@dataclass(frozen=True)
class ReadyMade:
    """Ready-made sizes for readers without scripts: what each makes, then a row an ingredient."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True)
class Reckoned:
    """One thing worked out of the recipe: its name, its value, how and from what source."""

    name: str
    text: str
    how: str


@dataclass(frozen=True)
class AmountsView:
    """Everything the two fragments show."""

    groups: tuple[tuple[str, tuple[ListedLine, ...]], ...]
    makes: str
    things: str
    container: str
    container_size: str
    can_fill: bool
    vessel: str
    choices: tuple[str, ...]
    system: str
    can_change_measure: bool
    ready: ReadyMade
    reckoned: tuple[Reckoned, ...]


def show_amounts(recipe: Recipe) -> AmountsView:
    """Return what the page shows of a recipe's amounts as written."""
    scalable = scalable_of(recipe)
    written = scale(scalable, ByFactor(Fraction(1)))
    listed = [ListedLine(place, line) for place, line in enumerate(written.lines)]
    first = recipe.filled_into[0]
    vessel = recipe.vessel
    has_vessel = bool(scalable.stands_ml and vessel and vessel.capacity)
    return AmountsView(
        groups=tuple(
            (group, tuple(lines)) for group, lines in groupby(listed, lambda row: row.line.group)
        ),
        makes=written.makes,
        things=scalable.things,
        container=first.name,
        container_size=show_amount(first.size) if first.size else "",
        can_fill=scalable.makes_ml is not None,
        vessel=show_amount(vessel.capacity) if has_vessel and vessel and vessel.capacity else "",
        choices=tuple(
            line.item
            for line in scalable.lines
            if line.form != "words" and line.scales == "with the batch"
        ),
        system=recipe.system,
        can_change_measure=any(line.density for line in scalable.lines),
        ready=_ready_made(scalable),
        reckoned=_reckoned(recipe),
    )


def _ready_made(recipe: Scalable) -> ReadyMade:
    most = boiled_at_most(recipe.kind) or _READY[-1]
    batches = [
        scale(recipe, ByFactor(factor), Measures(recipe.system))
        for factor in _READY
        if factor <= most
    ]
    return ReadyMade(
        heads=tuple(batch.makes for batch in batches),
        rows=tuple(
            (line.item, tuple(batch.lines[place].amount_text for batch in batches))
            for place, line in enumerate(recipe.lines)
        ),
    )


def _reckoned(recipe: Recipe) -> tuple[Reckoned, ...]:
    found = []
    there = estimate_yield(recipe)
    if there:
        kept = "; ".join(
            f"{part.name} {show_decimal(part.volume_ml, 0)} ml"
            if part.volume_ml >= 0
            else f"{part.name} −{show_decimal(-part.volume_ml, 0)} ml"
            for part in there.parts
            if abs(part.volume_ml) >= 1
        )
        text = f"{_tens(there.low_ml)} to {_tens(there.high_ml)} ml"
        found.append(Reckoned("To bottle", text, f"{kept} ({there.source})"))
        found += _filling(recipe, there.low_ml)
    strength = strength_of(recipe)
    if strength:
        how = f"{strength.how} ({strength.source}). {strength.uncertainty}"
        found.append(Reckoned("Strength", strength.text, how))
        milder = milder_text(strength.abv_percent)
        if milder:
            how = f"as if unsweetened; keeping times are for it uncut ({strength.source})"
            found.append(Reckoned("Milder", milder, how))
        pours = "; ".join(
            f"{_name_pour(pour)}: {pour.uk_units:.1f} UK units, "
            f"{pour.us_drinks:.1f} US standard drinks"
            for pour in strength.pours
        )
        source = "UK Chief Medical Officers' guidelines 2016; NIAAA"
        found.append(Reckoned("In a serving", pours, f"10 ml and 14 g of ethanol ({source})"))
    fold = fold_of_recipe(recipe)
    if fold:
        found.append(Reckoned("Vanilla", fold.text, f"{fold.uncertainty} ({fold.source})"))
    solids = solids_of(recipe)
    if solids:
        found.append(Reckoned("Sugar", solids.text, f"{solids.uncertainty} ({solids.source})"))
    return tuple(found)


def _name_pour(pour: Pour) -> str:
    """Name a serving with its ml, unless the name has them."""
    return pour.name if " ml" in pour.name else f"{pour.name} ({int(pour.volume_ml)} ml)"


def _filling(recipe: Recipe, there_ml: Fraction) -> list[Reckoned]:
    """Say which containers of the recipe to fill so that the least is left, at the worst yield."""
    sized = {
        convert(container.size.middle, container.size.unit, "ml"): (
            f"{container.name}, {show_amount(container.size)}"
        )
        for container in recipe.filled_into
        if container.size and size_of(container.size.unit) == "volume"
    }
    if not sized:
        return []
    filling = fill_containers(there_ml, list(sized))
    words = " and ".join(f"{count} × {sized[size]}" for size, count in filling.counts if count)
    left = f"leaves {show_decimal(filling.left_ml, 0)} ml of the least there may be"
    return [Reckoned("Into", words or "less than one container", left)]


def _tens(volume_ml: Fraction) -> int:
    return int((volume_ml / 10 + Fraction(1, 2)).__floor__() * 10)
