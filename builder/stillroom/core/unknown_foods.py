"""Foods that a book does not know: each named once, with what saying it would allow.

No problem of the book: it is built all the same, and its pages say what could not be worked out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from stillroom.core.larder.words import normal_form
from stillroom.core.lines.ingredient_food import food_of, not_known_of, parts_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex

_MOST_PLACES = 3
_AMOUNT_WITHIN = late_regex(
    r"\w[\s,;-]+\d[\d.,/]*\s*(?:k?g|[mcd]?l|oz|lbs?|tsp|tbsp|teaspoons?|tablespoons?|cups?)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class UnknownFood:
    """One food that is not known: its words, every place it stands, names it may be meant for."""

    words: str
    places: tuple[tuple[str, int], ...]
    nearest: tuple[str, ...]
    edible: bool

    def say(self, larder_file: str = "larder.yml") -> str:
        """Say where it stands, what is not known for it, and the lines that would mend it."""
        file, line = self.places[0]
        return (
            f'{file}:{line}: "{self.words}" is not a food that this book knows{self._elsewhere()}. '
            f"{self._lost()} {self._run_together()}{self._did_you_mean()}"
            f"Say what it is in {larder_file}:\n"
            f"    {self.words.lower()}:\n"
            "      contains: nothing   # or its allergens: [milk, wheat]\n"
            "      from: plant         # or milk, egg, meat, fish ...\n"
            "    or, when it is only another name for something: is: butter"
        )

    def _run_together(self) -> str:
        """Say what "butter 200 g sugar" is: two lines, the second without its dash."""
        if not _AMOUNT_WITHIN.search(self.words):
            return ""
        return "Two lines seem to run together here: begin the second with a dash. "

    def _elsewhere(self) -> str:
        others = [f"{file}:{line}" for file, line in self.places[1:]]
        shown = ", ".join(others[:_MOST_PLACES])
        more = f" and {len(others) - _MOST_PLACES} more" if len(others) > _MOST_PLACES else ""
        return f" (also {shown}{more})" if others else ""

    def _lost(self) -> str:
        if not self.edible:
            return "No caution can come of it."
        return (
            "So its allergens and dangers could not be checked, its weight by the spoon is not "
            "known, and nothing made with it is said to be free from anything."
        )

    def _did_you_mean(self) -> str:
        named = " or ".join(f'"{name}"' for name in self.nearest)
        return f"Did you mean {named}? " if named else ""


def unknown_foods(recipes: Iterable[Recipe]) -> tuple[UnknownFood, ...]:
    """Return every food that no larder knows, each once, in the order in which they are met."""
    found: dict[str, UnknownFood] = {}
    for recipe in recipes:
        for line, words, nearest in _of_recipe(recipe):
            form = normal_form(words)
            place = (recipe.file, line)
            known = found.get(form)
            places = (*known.places, place) if known else (place,)
            edible = recipe.kind.edible or bool(known and known.edible)
            words = known.words if known else words
            found[form] = UnknownFood(words, tuple(dict.fromkeys(places)), nearest, edible)
    return tuple(found.values())


def _of_recipe(recipe: Recipe) -> Iterable[tuple[int, str, tuple[str, ...]]]:
    for place, ingredient in enumerate(recipe.ingredients):
        line = recipe.line_of("ingredients", place)
        if not ingredient.parts and (words := not_known_of(ingredient)):
            yield line, words, food_of(ingredient).nearest
        for part, reading in zip(ingredient.parts, parts_of(ingredient), strict=True):
            if not reading.known:
                yield line, part, reading.nearest
