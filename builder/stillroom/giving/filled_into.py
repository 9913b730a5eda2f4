"""What a present is filled into, and how many of them one batch gives."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction

from stillroom.core.amounts.quantities import show_amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.bottling import makes_ml
from stillroom.core.recipe.holders import read_container
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, Unreadable
from stillroom.giving.model import GivingList, Make, container_words
from stillroom.giving.reading import ReadList

MOST_OVER = Fraction(3, 2)
"""More than so many times what a recipe gives is a slip: common practice, no published source."""


def key_of(make: Make) -> str:
    """Return how an offer is told from the others of its recipe."""
    return f"{make.recipe} in {container_words(make.container)}" if make.container else make.recipe


def container_of(make: Make, recipe: Recipe) -> str:
    """Return the container a make is given in, as it is counted."""
    if make.container:
        return container_words(make.container)
    container = recipe.made_in or recipe.filled_into[0]
    size = f", {show_amount(container.size)}" if container.size else ""
    return container_words(f"{container.name}{size}")


def shares_of(
    read: ReadList, recipes: Mapping[str, Recipe]
) -> tuple[dict[str, Fraction], list[Problem]]:
    """Return the share of a batch that one present of each make takes, and what is told of it."""
    shares, problems = {}, []
    for place, make in enumerate(read.giving.makes):
        recipe = recipes.get(make.recipe)
        if recipe is None:  # told of by its name
            continue
        try:
            key, count = key_of(make), make.per_batch or count_filled(make, recipe)
        except Unreadable:  # told of by the words of its container
            continue
        if not count:
            made = show_amount(recipe.makes.amount)
            said = f"{made} {recipe.makes.things}".strip()
            what = f"A batch of {make.recipe} makes {said}: how many presents that is is not said."
            mend = f'Write it as in "- {{recipe: {make.recipe}, per batch: 4}}".'
            problems.append(read.problem(("makes", place, "per batch"), what, mend))
        shares[key] = Fraction(1, count or 1)
    return shares, problems


def count_filled(make: Make, recipe: Recipe) -> int:
    """Return how many presents one batch gives; 0 where that cannot be worked out."""
    if not make.container and recipe.made_in:
        return int(recipe.makes.amount.low)
    container = read_container(container_of(make, recipe), "metric")
    volume = makes_ml(recipe)
    if volume and container.size and size_of(container.size.unit) == "volume":
        return int(volume / convert(container.size.low, container.size.unit, "ml"))
    one_thing = recipe.makes.amount.low == recipe.makes.amount.high == 1
    counted = size_of(recipe.makes.amount.unit) == "count"
    # one garland is one present; of 28 biscuits it is not known
    return int(recipe.makes.amount.low) if recipe.makes.each or (one_thing and counted) else 0


def times_filled(giving: GivingList, recipe: Recipe, filled: Mapping[str, int]) -> Fraction | None:
    """Return how often a recipe is made for so many of each container; None if nobody can tell."""
    parts = Fraction(0)
    for words, number in filled.items():
        container = container_words(words) if words else ""
        same = [one for one in giving.makes if one.recipe == recipe.slug]
        own = [one for one in same if not container or container_of(one, recipe) == container]
        make = own[0] if own else Make(recipe=recipe.slug, container=container)
        count = make.per_batch or count_filled(make, recipe)
        if not count:
            return None
        parts += Fraction(number, count)
    return parts


def more_than_it_gives(
    giving: GivingList, recipe: Recipe, filled: Mapping[str, int], times: int
) -> str:
    """Say that so many presents never came out of so many times a recipe; "" where they may have.

    `filled` is how many of each container. What a batch gives and nobody can tell is no reason.
    """
    parts = times_filled(giving, recipe, filled)
    if parts is None or parts <= MOST_OVER * times:
        return ""
    number = sum(filled.values())
    gives = math.floor(number / parts * times)
    of = recipe.title if times == 1 else f"{times} times {recipe.title}"
    return f"{number} are more than {of} gives, which is about {gives}."
