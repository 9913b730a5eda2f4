"""A recipe file to a recipe: its facts, its body, and every problem with its line.

Nothing fails at the first mistake: a file's problems come out together. Many files at once:
loading.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, get_args

from pydantic import ValidationError

from stillroom.core.body import Body, read_body
from stillroom.core.facts_above import read_facts
from stillroom.core.frontmatter import Located
from stillroom.core.keeping import known_keeping
from stillroom.core.larder.ingredients import find_foods
from stillroom.core.larder.shelves import Larder, common_larder
from stillroom.core.method import find_ingredient, split_step
from stillroom.core.parts import Ingredient
from stillroom.core.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.quantities import Ratio
from stillroom.core.recipe import TAKEN_NAME, MethodStep, Recipe, read_any_ingredient
from stillroom.core.recipe_problems import say_what_is_wrong
from stillroom.core.text_files import clean, read_text
from stillroom.core.timeline_checks import check_timeline
from stillroom.core.units import System
from stillroom.core.written_facts import NAMES, Ready, make_ready

SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
LONGEST_NAME = 80
# three dashes, however a word processor has set them
_DASHES = re.compile(r"(?:-{3,}|[–—][-–—]*|-[–—]+)")


def load_recipe(
    path: Path, name: str = "", system: System = "metric", larder: Larder | None = None
) -> Recipe:
    """Read one recipe file; raises ProblemsFound with every problem in it.

    `name` is how the file is called in messages, `system` how spoons, cups and pints are read
    when the recipe does not say, `larder` what the book knows of foods.
    """
    name = name or str(path)
    return read_recipe(read_text(path, name), name, path.stem, system, larder)


@lru_cache(maxsize=4096)  # `mkdocs serve` reads again only the file that was changed
def read_recipe(
    text: str, name: str, slug: str, system: System = "metric", larder: Larder | None = None
) -> Recipe:
    """Read a recipe from its text; raises ProblemsFound."""
    located, rows, body_line = read_front(text, name)
    problems: list[Problem] = list(_check_slug(slug, name))
    system = _written_system(located.data, system)
    body = read_body(rows, body_line, name, problems)
    ready = make_ready(located.data, located.lines, name, system)
    problems.extend(ready.problems)
    recipe = _validate(ready, body, name, slug, system, problems)
    ingredients = _readable_ingredients(ready.data, system)
    if ingredients:
        problems.extend(_check_names(ingredients, body.method, system, name, ready.lines))
    if recipe is not None and recipe.timeline:
        for index, wrong in check_timeline(recipe.timeline, recipe.keeps.unopened):
            line = recipe.line_of("timeline", index)
            problems.append(Problem(name, line, wrong.what, wrong.mend))
    if recipe is None and not problems:  # a recipe is read or told of: there is no third way
        what = "This recipe could not be read, and the book cannot say why."
        problems.append(
            Problem(name, 1, what, "Please show this file to those who make Stillroom.")
        )
    if problems or recipe is None:
        raise ProblemsFound(problems)
    known = _the_one(_with_foods(recipe, larder or common_larder()))
    return _the_one(known.model_copy(update={"keeps": known_keeping(known)}))


def _with_foods(recipe: Recipe, larder: Larder) -> Recipe:
    """Let a recipe carry what its book's larder knows, so that no other book's can be asked."""
    found = tuple(find_foods(ingredient, larder) for ingredient in recipe.ingredients)
    return recipe.model_copy(update={"ingredients": found, "larder": larder})


@cache
def _the_one(recipe: Recipe) -> Recipe:
    """Return the recipe that was read first of all that are equal to this one.

    What is worked out of a recipe is kept by its equality, and what came of it tells its
    ingredients apart by being the same thing: a recipe read again after a harmless save must be
    that very recipe, with those very ingredients.
    """
    return recipe


def _check_slug(slug: str, name: str) -> Iterable[Problem]:
    if not SLUG.fullmatch(slug):
        mend = 'Use small letters, figures and dashes, as in "quince-ratafia.md".'
        yield Problem(name, 1, f'"{slug}.md" cannot become an address.', mend)
    elif TAKEN_NAME.fullmatch(slug):
        what = f'"{slug}.md" is a name that computers keep for themselves.'
        yield Problem(name, 1, what, f'Call it "{slug}-recipe.md" or so.')
    elif len(slug) > LONGEST_NAME:
        what = f"The file's name is longer than {LONGEST_NAME} letters."
        yield Problem(name, 1, what, "Give it a shorter one; the title may be longer.")


@lru_cache(maxsize=4096)  # the recipe is read from it, and so is what no two may share
def read_front(text: str, name: str) -> tuple[Located, tuple[str, ...], int]:
    """Return the facts, the lines of the body and the number of the first of them."""
    front, first, body, body_line = _split(clean(text, name), name)
    return read_facts(front, name, first, NAMES), tuple(body), body_line


def _split(text: str, name: str) -> tuple[list[str], int, list[str], int]:
    lines = text.removesuffix("\n").split("\n")
    begin = next((place for place, line in enumerate(lines) if line.strip()), len(lines))
    if begin == len(lines):
        what, mend = "The file is empty.", 'Write a recipe as the page "Write a recipe" shows.'
        raise ProblemsFound([Problem(name, 1, what, mend)])
    if not _DASHES.fullmatch(lines[begin].strip()):
        what = "The recipe does not begin with a line of three dashes."
        mend = 'Begin with a line "---", then title, kind, makes, ingredients, then "---".'
        raise ProblemsFound([Problem(name, begin + 1, what, mend)])
    for place in range(begin + 1, len(lines)):
        line = lines[place].strip()
        if line[:1] in "-–—" and _DASHES.fullmatch(line):
            return lines[begin + 1 : place], begin + 2, lines[place + 1 :], place + 2
        if line.startswith("## "):
            mend = 'Put a line "---" above this heading.'
            raise ProblemsFound([Problem(name, place + 1, _NO_END, mend)])
    mend = 'Put a line "---" below the last of them.'
    raise ProblemsFound([Problem(name, begin + 1, _NO_END, mend)])


_NO_END = "The second line of three dashes, below the facts, is missing."


def _written_system(data: Mapping[str, Any], default: System) -> System:
    written = data.get("units")
    for system in get_args(System):
        if written == system:
            return system  # type: ignore[no-any-return]
    return default


def _validate(
    ready: Ready, body: Body, name: str, slug: str, system: System, problems: list[Problem]
) -> Recipe | None:
    data = ready.data | {
        "slug": slug,
        "file": name,
        "system": system,
        "lines": ready.lines,
        "intro": body.intro,
        "method": body.method,
        "sections": body.sections,
    }
    try:
        return Recipe.model_validate(data, context={"system": system})
    except ValidationError as error:
        problems.extend(say_what_is_wrong(error.errors(), name, ready.lines))
    return None


def _readable_ingredients(data: Mapping[str, Any], system: System) -> tuple[Ingredient, ...] | None:
    """Return the ingredients when every one reads, even if other facts of the recipe do not."""
    written = data.get("ingredients", data.get("materials"))
    try:
        return tuple(read_any_ingredient(value, system) for value in written or ()) or None
    except (Unreadable, TypeError):
        return None


def _check_names(
    ingredients: tuple[Ingredient, ...],
    steps: tuple[MethodStep, ...],
    system: System,
    name: str,
    lines: Mapping[str, int],
) -> Iterable[Problem]:
    """Find ratios and braces that do not name an ingredient."""
    for place, ingredient in enumerate(ingredients):
        if isinstance(ingredient.amount, Ratio):
            others = [other for other in ingredients if other is not ingredient]
            try:
                find_ingredient(ingredient.amount.of, others)
            except Unreadable as wrong:
                line = lines.get(f"ingredients/{place}", 2)
                yield Problem(name, line, wrong.what, wrong.mend)
    for step in steps:
        try:
            split_step(step.text, ingredients, system)
        except Unreadable as wrong:
            yield Problem(name, step.line, wrong.what, wrong.mend)
