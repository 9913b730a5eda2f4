"""All that is wrong with a giving list, told at once: by itself, with the book, with its posting.

A list that cannot be read whole is held against the book as far as it can be read: of what could
not be, nothing is said twice.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.filled_into import shares_of
from stillroom.giving.half_read import HalfRead
from stillroom.giving.money.costing import PricedItem
from stillroom.giving.names import with_names_of
from stillroom.giving.posting import posting_problems
from stillroom.giving.reading import ReadList


def check_whole(
    read: ReadList, recipes: Mapping[str, Recipe], country: str
) -> tuple[tuple[PricedItem, ...], dict[str, Fraction]]:
    """Return the priced items and each make's share of a batch; raises ProblemsFound with all."""
    problems: list[Problem] = []
    items: tuple[PricedItem, ...] = ()
    try:
        items = check_list(read, recipes)
    except ProblemsFound as found:
        problems += found.problems
    shares, unknown = shares_of(read, recipes)
    problems += [*unknown, *posting_problems(read, country)]
    if problems:
        raise ProblemsFound(problems)
    return items, shares


def with_the_rest(
    found: ProblemsFound, recipes: Mapping[str, Recipe], country: str
) -> ProblemsFound:
    """Return the problems of a list that does not read, with those of what does."""
    half = found.draft
    if not isinstance(half, HalfRead):
        return found
    read = ReadList(file=half.file, giving=half.giving, lines=half.lines)
    try:
        check_whole(with_names_of(read, recipes), recipes, country)
    except ProblemsFound as more:
        return ProblemsFound([*found.problems, *half.of_what_was_read(more.problems)])
    return found
