"""A telephone number or an address of e-mail in a recipe, where everybody would read it.

Leaves out letters that are brought in: they lose both before they are a recipe (bringing).
"""

from __future__ import annotations

from collections.abc import Iterator

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.contacts import find_contacts
from stillroom.core.words.problems import Problem


def warn_of_contacts(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a warning for each telephone number and each address of e-mail, by its line."""
    found = []
    for line, text in _texts(recipe):
        for said, at in find_contacts(text):
            sort = "An e-mail address" if "@" in said else "A telephone number"
            what = f'{sort} stands in the recipe: "{said}".'
            mend = "Take it out: the page is read by everybody."
            found.append(Problem(recipe.file, line + text.count("\n", 0, at), what, mend))
    return tuple(found)


def _texts(recipe: Recipe) -> Iterator[tuple[int, str]]:
    """Yield each text that a page or a card shows, and the line on which it begins."""
    for name in ("title", "summary", "author", "picture_alt"):
        yield recipe.line_of(name), str(getattr(recipe, name))
    yield recipe.line_of("card", "use"), recipe.card.use
    for place, caution in enumerate(recipe.cautions):
        yield recipe.line_of("cautions", place), caution
    for place, one in enumerate(recipe.ingredients):
        yield recipe.line_of("ingredients", place), f"{one.item}, {one.note}"
    yield recipe.line_of("intro"), recipe.intro
    for step in recipe.method:
        yield step.line, step.text
    for part in recipe.sections:
        yield part.line, part.heading
        yield part.line, part.text
