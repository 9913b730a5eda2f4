"""Whether what goes in and what is made can be of one batch: 400 kg of tomatoes fill no single jar.

Told where a unit was mistyped or a page's machine lost a stop; nothing is refused for it. Leaves
out what a batch really yields: bottling.py.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from stillroom.core.amounts.quantities import Amount, show_amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import Content, contents_by_place
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.plurals import singular_word
from stillroom.core.words.problems import Problem

# Maple sap is boiled down forty to one, which is the most that a kitchen does; the least that grows
# is dough with its air, jelly with its water, both written. Common practice, no published source.
_MOST_TO_ONE: Final = 60
_LEAST_TO_ONE: Final = Fraction(1, 30)
_HEAVIEST_PIECE_G: Final = 20_000


def ask_of_size(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a question where what goes in is far too much, or too little, for what it makes."""
    contents = contents_by_place(recipe)
    known = [one for one in contents if one is not None]
    whole = sum((_grams(one) for one in known), Fraction(0))
    made = recipe.makes.total
    if not known or not whole or made.middle <= 0:
        return ()
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


def _grams(one: Content) -> Fraction:
    """Return about what one line weighs: a millilitre for a gram where nothing better is known."""
    return one.grams if one.grams is not None else one.volume_ml


def _shown(recipe: Recipe) -> str:
    makes = recipe.makes
    each = f" of {show_amount(makes.each)}" if makes.each else ""
    things = singular_word(makes.things) if makes.amount.high <= 1 else makes.things
    return f"{show_amount(makes.amount)} {things}".strip() + each
