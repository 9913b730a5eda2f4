"""The names of a giving list as the book has them: a recipe by its title, a liking by its food.

"Quince chutney" is the recipe quince-chutney; "never: [coconut]" is a food that they must not
have, and "likes: [chocolate]" every recipe on offer with chocolate in it. Pure: a list in, the same
list out. What is still no name afterwards, against_book.py tells.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from stillroom.core.allergens.sentences import avoided_by_name, read_avoided
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.plurals import singular
from stillroom.giving.facts import facts_of
from stillroom.giving.model import Household
from stillroom.giving.reading import ReadList


def with_names_of(read: ReadList, recipes: Mapping[str, Recipe]) -> ReadList:
    """Return the list with every recipe called by the book's own name for it."""
    book = _Book(recipes, tuple(make.recipe for make in read.giving.makes))
    giving = read.giving
    stock = giving.stock
    changed: dict[str, Any] = {
        "makes": tuple(_renamed(make, book) for make in giving.makes),
        "batches": tuple(_renamed(batch, book) for batch in giving.batches),
        "stock": stock.model_copy(update={"made": tuple(_renamed(m, book) for m in stock.made)}),
        "households": tuple(_with_names(one, book) for one in giving.households),
    }
    return read.model_copy(update={"giving": giving.model_copy(update=changed)})


class _Book:
    """The recipes of a book by every way of writing their names, and those on offer."""

    def __init__(self, recipes: Mapping[str, Recipe], offered: tuple[str, ...]) -> None:
        self.recipes = recipes
        self.named: dict[str, str] = {}
        for slug, recipe in recipes.items():
            for name in (recipe.title, slug):
                self.named.setdefault(plain_name(name), slug)
        self.offered = tuple(self.slug(name) for name in offered)

    def slug(self, name: str) -> str:
        """Return the recipe that a name means, or the name itself."""
        return name if name in self.recipes else self.named.get(plain_name(name), name)

    def with_food(self, word: str) -> tuple[str, ...]:
        """Return the recipes on offer that hold a food, or have it in their title."""
        avoid = read_avoided(word)
        if avoid is None or avoid.diet or avoid.of:
            return ()
        if avoid.ask:  # "jam" and "biscuits" are many things, and all of them may be liked
            avoid = avoided_by_name(word)
        held = [slug for slug in dict.fromkeys(self.offered) if slug in self.recipes]
        return tuple(
            slug
            for slug in held
            if plain_name(word) in plain_name(self.recipes[slug].title)
            or facts_of(self.recipes[slug]).answer(avoid) == "contains"
        )


def recipes_liked(word: str, recipes: Mapping[str, Recipe]) -> tuple[str, ...]:
    """Return the recipes that a liking means: the one of that name, or all that hold the food."""
    book = _Book(recipes, tuple(recipes))
    slug = book.slug(word)
    return (slug,) if slug in recipes else book.with_food(word)


def plain_name(name: str) -> str:
    """Return a name as names are compared: small letters, one of each thing, no apostrophes."""
    words = re.split(r"[^\w]+|_", name.strip().lower().replace("’", ""))
    return " ".join(singular(word) for word in words if word)


def _renamed(part: Any, book: _Book) -> Any:
    slug = book.slug(part.recipe)
    return part if slug == part.recipe else part.model_copy(update={"recipe": slug})


def _with_names(household: Household, book: _Book) -> Household:
    never: list[str] = []
    foods = list(household.avoid_ingredients)
    for word in household.never:
        slug = book.slug(word)
        means_food = slug not in book.recipes and (found := read_avoided(word)) and not found.ask
        (foods if means_food else never).append(slug)
    likes: list[str] = []
    for word in household.likes:
        slug = book.slug(word)
        likes += [slug] if slug in book.recipes else book.with_food(word) or (slug,)
    return household.model_copy(
        update={
            "never": tuple(never),
            "avoid_ingredients": tuple(dict.fromkeys(foods)),
            "likes": tuple(dict.fromkeys(likes)),
            "must_have": tuple(book.slug(name) for name in household.must_have),
            "had": {
                year: tuple(book.slug(name) for name in names)
                for year, names in household.had.items()
            },
        }
    )
