"""Whether what goes in and what is made can be of one batch: 400 kg of tomatoes fill no single jar.

Told where a unit was mistyped or a page's machine lost a stop, and where what is strained into
bottles or laid into jars comes to far more or less than they hold; nothing is refused for it.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from stillroom.core.amounts.quantities import Amount, show_amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.bottling import estimate_yield
from stillroom.core.batch.contents import (
    Content,
    contents_by_place,
    contents_of,
    liquids_without_size,
)
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.plurals import singular_word
from stillroom.core.words.problems import Problem

# Maple sap is boiled down forty to one, which is the most that a kitchen does; the least that grows
# is dough with its air, jelly with its water, both written. Common practice, no published source.
_MOST_TO_ONE: Final = 60
_LEAST_TO_ONE: Final = Fraction(1, 30)
_HEAVIEST_PIECE_G: Final = 20_000
# a cook's sum is wide: what is said may be a fifth above the most that is reckoned, and a third
# below the least, since some is drunk and some left in the jar
_A_LITTLE_MORE: Final = Fraction(6, 5)
_A_LITTLE_LESS: Final = Fraction(2, 3)
# between whole fruit there is air, which its vinegar fills or nothing does
_SHAKEN_TOGETHER: Final = 2
_PRESSED_DOWN: Final = Fraction(2, 3)
_TAKES_OFF: Final = clause_regex(
    r"\b(?:drain|strain|sieve|filter|drip|trim|press|squeez|discard|dry|dried|dehydrat|bake|roast|oven|peel|ston(?:e|ing)|core"
    r"|pit|seed|juice|rins|wring)|abgieß|abseih|abtropf|entstein|entkern|schäl|press|passier|trockn|\b(?:égoutt|filtr|épluch"
    r"|dénoyaut|pel|press|écrem|col[ae]|scol|scart|sbucc|escurr|afgiet|uitlek|schil|sila|sil\b|skal)"
)
_BOILS: Final = clause_regex(
    r"\b(?:simmer|boil|reduc|cook|evaporat)|koch|köchel|\b(?:bouill|mijot|cuire|cuisez|réduire|herv|hierv"
    r"|coc[ei]|boll|cuoc|ridurre|sudder|sjud|koka)|\b(?:ko(?:ok|ken))"
)


def ask_of_size(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a question where what goes in is far too much, or too little, for what it makes."""
    contents = contents_by_place(recipe)
    known = [one for one in contents if one is not None]
    whole = sum((_grams(one) for one in known), Fraction(0))
    made = recipe.makes.total
    if not known or not whole or made.middle <= 0:
        return ()
    if found := _does_not_fill(recipe):
        return (found,)
    size = size_of(made.unit) if made.unit else ""
    if size in ("mass", "volume"):
        grams = convert(made.middle, made.unit, "g" if size == "mass" else "ml")
        too_much = whole > grams * _MOST_TO_ONE
        all_told = len(known) == len(contents) and all(map(_grams, known))
        too_little = all_told and whole < grams * _LEAST_TO_ONE
    else:
        too_much = whole > made.middle * _HEAVIEST_PIECE_G
        too_little = False
    if not (too_much or too_little):
        return ()
    most = max(known, key=_grams).ingredient
    amount = show_amount(most.amount) if isinstance(most.amount, Amount) else ""
    what = f"{amount} {most.item}".strip() + f" can hardly be for {_shown(recipe)}."
    mend = "Look at both: a unit may be another, or a stop lost."
    return (Problem(recipe.file, recipe.line_of("makes"), what, mend),)


def _does_not_fill(recipe: Recipe) -> Problem | None:
    """Return a question where what is made is far less or far more than what goes in can come to.

    What is boiled, baked or foams is no matter of volume, and of what stays whole in its jar only
    what is raw is asked: more than its own weight in millilitres goes into none.
    """
    made = recipe.makes.total
    is_volume = bool(made.unit) and size_of(made.unit) == "volume"
    if not is_volume or not recipe.kind.is_eaten or _is_left_open(recipe):
        return None
    says = convert(made.middle, made.unit, "ml")
    there = estimate_yield(recipe)
    if there is not None:
        likely = there.volume_ml
        gross = sum((part.volume_ml for part in there.parts if part.volume_ml > 0), Fraction(0))
        low, high = there.low_ml * _A_LITTLE_LESS, gross * _A_LITTLE_MORE
    elif recipe.kind.is_("put up"):
        likely = sum((one.volume_ml for one in contents_of(recipe)), Fraction(0))
        lost = any(_TAKES_OFF.search(step.text.lower()) for step in recipe.method)
        low = Fraction(0) if lost else likely * _PRESSED_DOWN
        high = likely * _SHAKEN_TOGETHER
    else:
        return None
    low = low if not _is_boiled(recipe) else Fraction(0)
    if not likely or low <= says <= high:
        return None
    what = (
        f"What goes in comes to about {_round_ml(likely)}, and it is said to make {_shown(recipe)}."
    )
    mend = 'Look at "makes:", and at the amounts.'
    return Problem(recipe.file, recipe.line_of("makes"), what, mend)


def _is_left_open(recipe: Recipe) -> bool:
    """Whether a line has no amount, or one nobody can turn into millilitres: no sum can be told."""
    contents = contents_by_place(recipe)
    poured = bool(liquids_without_size(recipe))
    return poured or not all(one and (_grams(one) or one.volume_ml) for one in contents)


def _is_boiled(recipe: Recipe) -> bool:
    return any(_BOILS.search(step.text.lower()) for step in recipe.method)


def _round_ml(volume_ml: Fraction) -> str:
    return f"{round(volume_ml / 10) * 10} ml"


def _grams(one: Content) -> Fraction:
    """Return about what one line weighs: a millilitre for a gram where nothing better is known."""
    return one.grams if one.grams is not None else one.volume_ml


def _shown(recipe: Recipe) -> str:
    makes = recipe.makes
    each = f" of {show_amount(makes.each)}" if makes.each else ""
    things = singular_word(makes.things) if makes.amount.high <= 1 else makes.things
    return f"{show_amount(makes.amount)} {things}".strip() + each
