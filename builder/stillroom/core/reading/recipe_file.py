"""A recipe file to a recipe: its facts, its body, and every problem with its line.

Nothing fails at the first mistake: a file's problems come out together. Many files at once:
loading.py.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any, Final, get_args
from weakref import WeakKeyDictionary, ref

from pydantic import ValidationError

from stillroom.core.amounts.quantities import Ratio
from stillroom.core.amounts.units import System, system_said
from stillroom.core.label.fruit_in_spirit import with_its_fruit
from stillroom.core.label.how_long import known_keeping, known_stages, planned_span
from stillroom.core.label.use_said import use_of_method
from stillroom.core.larder.shelves import Larder, common_larder
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import as_eaten, find_foods
from stillroom.core.method.spoken import larder_spoken
from stillroom.core.reading.dividing import Divided, divide
from stillroom.core.reading.drafts import draft_recipe
from stillroom.core.reading.facts_above import read_facts
from stillroom.core.reading.recipe_problems import say_what_is_wrong
from stillroom.core.reading.written_facts import NAMES, Ready, make_ready
from stillroom.core.recipe.body import NO_METHOD, Body, read_body
from stillroom.core.recipe.kind_dates import waits_to_go_by
from stillroom.core.recipe.method import brace_faults, find_base
from stillroom.core.recipe.model import (
    LONGEST_NAME,
    TAKEN_NAME,
    InGroup,
    MethodStep,
    Recipe,
    read_any_ingredient,
)
from stillroom.core.when.timeline_checks import check_timeline
from stillroom.core.words.frontmatter import Located
from stillroom.core.words.nearest import nearest
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.text_files import clean, read_text

SLUG = late_regex(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_WORD = late_regex(r"[^\W\d_]+")
_SPELLED = str.maketrans(
    {"ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "ł": "l", "&": "-and-", "'": "", "’": ""}
)


def load_recipe(
    path: Path,
    name: str = "",
    system: System = "metric",
    larder: Larder | None = None,
    language: str = "en_GB",
) -> Recipe:
    """Read one recipe file; raises ProblemsFound with every problem in it.

    `name` is how the file is called in messages, `system` how spoons, cups and pints are read
    when the recipe does not say, `larder` what the book knows of foods, `language` how its numbers
    are written.
    """
    name = name or str(path)
    return read_recipe(read_text(path, name), name, path.stem, system, larder, language)


@lru_cache(maxsize=4096)  # `mkdocs serve` reads again only the file that was changed
def read_recipe(
    text: str,
    name: str,
    slug: str,
    system: System = "metric",
    larder: Larder | None = None,
    language: str = "en_GB",
) -> Recipe:
    """Read a recipe from its text; raises ProblemsFound."""
    parts, located = read_front(text, name)
    problems = [*_check_slug(slug, name), *parts.problems, *located.problems]
    system = _written_system(located.data, system)
    ready = make_ready(located, name, system, language)
    problems.extend(ready.problems)
    body = _read_below(parts, ready, name, problems)
    if body.listed and "ingredients" not in ready.data:
        ready = _with_list(ready, body)
    if body.has_table:  # told of, so that the ingredients are not called missing too
        ready = replace(ready, doubtful=ready.doubtful | {"ingredients"})
    larder = larder or common_larder()
    ways = (system, language)
    recipe, draft = _validate(ready, body, name, slug, ways, problems)
    ingredients, unread = _readable_ingredients(ready, system, language, recipe)
    problems.extend(_check_names(ingredients, unread, body.method, ways, name, ready.lines))
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
        raise ProblemsFound(problems, _draft_of(recipe or draft, larder))
    try:
        return the_one(_completed(recipe, larder))
    except Unreadable as wrong:  # what fits no reckoning is told at its place, never thrown
        raise ProblemsFound(
            [Problem(name, recipe.line_of("ingredients"), wrong.what, wrong.mend)]
        ) from None


def _read_below(parts: Divided, ready: Ready, name: str, problems: list[Problem]) -> Body:
    """Read what stands below the facts; a method among the facts is told of there alone."""
    found: list[Problem] = []
    told_of = ready.doubtful if parts.has_facts else frozenset()
    wants_list = not {"ingredients", "materials"} & {*ready.data, *told_of}
    body = read_body(parts.body, parts.body_line, name, found, wants_list)
    told = ready.method_above and not body.method
    problems.extend(one for one in found if not (told and one.what == NO_METHOD))
    return body


def _with_list(ready: Ready, body: Body) -> Ready:
    """Return the facts with the ingredients that stand below them, each with its line."""
    rows = [InGroup(one.text, one.group) if one.group else one.text for one in body.listed]
    lines = {f"ingredients/{place}": one.line for place, one in enumerate(body.listed)}
    first = {"ingredients": body.listed[0].line}
    return replace(
        ready, data=ready.data | {"ingredients": rows}, lines=ready.lines | first | lines
    )


def _draft_of(recipe: Recipe | None, larder: Larder) -> Recipe | None:
    """Return what is known of a recipe with problems; None where nothing can be reckoned of it."""
    try:
        return recipe and _completed(recipe, larder)
    except Unreadable:  # an amount that hangs on a food which is not there: that was told
        return None


def _completed(recipe: Recipe, larder: Larder) -> Recipe:
    """Return a recipe with what the book knows of its foods and of how it keeps."""
    fed = with_its_fruit(_with_foods(_with_use(recipe), larder))
    known = the_one(fed.model_copy(update={"waits_of_method": waits_to_go_by(fed)}))
    kept = known.model_copy(update={"keeps": known_keeping(known), "plans_by": planned_span})
    return kept.model_copy(update={"waits_of_method": known_stages(kept)})


def _with_use(recipe: Recipe) -> Recipe:
    """Let a card say what the method's own words for it do, where the recipe says no other."""
    use = "" if recipe.card.use else use_of_method(recipe)
    return (
        recipe.model_copy(update={"card": recipe.card.model_copy(update={"use": use})})
        if use
        else recipe
    )


def _with_foods(recipe: Recipe, larder: Larder) -> Recipe:
    """Let a recipe carry what its book's larder knows, so that no other book's can be asked.

    In a French recipe "citron" is a lemon, whatever the language of its book; in a German one
    "Kümmel" is no spirit.
    """
    larder = larder_spoken(recipe, larder)
    found = tuple(find_foods(one, larder, recipe.system) for one in recipe.ingredients)
    if recipe.kind.is_eaten:
        found = tuple(map(as_eaten, found))
    return recipe.model_copy(update={"ingredients": found, "larder": larder})


_FIRST: Final[WeakKeyDictionary[Recipe, ref[Recipe]]] = WeakKeyDictionary()
"""Each recipe that something still holds; one that was changed goes when nobody asks for it."""


def the_one(recipe: Recipe) -> Recipe:
    """Return the recipe that was read first of all that are equal to this one, if it is still held.

    What is worked out of a recipe is kept by its equality, and what came of it tells its
    ingredients apart by being the same thing: a recipe read again after a harmless save must be
    that very recipe, with those very ingredients.
    """
    held = _FIRST.get(recipe)
    first = None if held is None else held()
    if first is None:
        _FIRST[recipe] = ref(recipe)
    return first or recipe


def _check_slug(slug: str, name: str) -> Iterable[Problem]:
    if not SLUG.fullmatch(slug):
        name_it = address_name(slug) or "quince-ratafia"
        mend = f'Use small letters, figures and dashes: call it "{name_it}.md".'
        yield Problem(name, 1, f'"{slug}.md" cannot become an address.', mend)
    elif TAKEN_NAME.fullmatch(slug):
        what = f'"{slug}.md" is a name that computers keep for themselves.'
        yield Problem(name, 1, what, f'Call it "{slug}-recipe.md" or so.')
    elif len(slug) > LONGEST_NAME:
        what = f"The file's name is longer than {LONGEST_NAME} letters."
        yield Problem(name, 1, what, "Give it a shorter one; the title may be longer.")


def address_name(slug: str) -> str:
    """Return the name a file might have, from the letters and figures of what it is called.

    >>> address_name("Crème_de_Menthe (best)"), address_name("梅酒")
    ('creme-de-menthe-best', '')
    """
    spelled = slug.lower().translate(_SPELLED)
    plain = unicodedata.normalize("NFKD", spelled).encode("ascii", "ignore").decode()
    return "-".join(re.findall("[a-z0-9]+", plain))[:LONGEST_NAME].strip("-")


@lru_cache(maxsize=16)  # the recipe is read from it, and so is what no two may share
def read_front(text: str, name: str) -> tuple[Divided, Located]:
    """Return the two parts of a file, and the facts in the first; raises ProblemsFound."""
    parts = divide(clean(text, name), name)
    if not parts.has_facts:  # that they are missing is told once, for all of them
        missing = frozenset({"title", "kind", "makes", "ingredients"})
        return parts, Located({}, {}, (), missing)
    return parts, read_facts(parts.front, name, parts.first, NAMES)


def _written_system(data: Mapping[str, Any], default: System) -> System:
    written = system_said(data.get("units"))
    for system in get_args(System):
        if written == system:
            return system  # type: ignore[no-any-return]
    return default


def _validate(
    ready: Ready,
    body: Body,
    name: str,
    slug: str,
    ways: tuple[System, str],
    problems: list[Problem],
) -> tuple[Recipe | None, Recipe | None]:
    """Return the recipe or, where it does not read whole, a draft of what does."""
    system, language = ways
    data = ready.data | {
        "slug": slug,
        "file": name,
        "system": system,
        "language": language,
        "lines": ready.lines | {"intro": body.intro_line},
        "intro": body.intro,
        "method": body.method,
        "sections": body.sections,
    }
    try:
        return Recipe.model_validate(data, context={"system": system, "language": language}), None
    except ValidationError as error:
        found = error.errors()
    problems.extend(say_what_is_wrong(found, name, ready.lines, ready.doubtful))
    return None, draft_recipe(data, found, ready.doubtful, system)


def _readable_ingredients(
    ready: Ready, system: System, language: str, recipe: Recipe | None
) -> tuple[tuple[Ingredient, ...], frozenset[str]]:
    """Return the ingredients that read, and every word of those that do not."""
    if recipe is not None:
        return recipe.ingredients, frozenset(_WORD.findall(" ".join(ready.unread).lower()))
    written = ready.data.get("ingredients", ready.data.get("materials")) or ()
    found, unread = [], list(ready.unread)
    for value in written if isinstance(written, list | tuple) else [written]:
        try:
            found.append(read_any_ingredient(value, system, language))
        except (Unreadable, TypeError):
            unread.append(str(value))
    return tuple(found), frozenset(_WORD.findall(" ".join(unread).lower()))


def _check_names(
    ingredients: tuple[Ingredient, ...],
    unread: frozenset[str],
    steps: tuple[MethodStep, ...],
    ways: tuple[System, str],
    name: str,
    lines: Mapping[str, int],
) -> Iterable[Problem]:
    """Find ratios and braces that name no ingredient, but for those of a line that is told."""
    if not ingredients and not unread:
        return
    for place, ingredient in enumerate(ingredients if not unread else ()):
        if isinstance(ingredient.amount, Ratio):
            try:
                find_base(ingredient, ingredients)
            except Unreadable as wrong:
                line = lines.get(f"ingredients/{place}", 2)
                yield Problem(name, line, wrong.what, wrong.mend)
    for step in steps:
        for fault in brace_faults(step.text, ingredients, *ways):
            last = _WORD.findall(fault.what.partition("}")[0].lower())[-1:] if unread else []
            if not last or "}" not in fault.what:
                yield Problem(name, step.line, fault.what, fault.mend)
            elif last[0] not in unread:
                near = nearest(last[0], unread, 0.75)
                mend = f'Did you mean "{near}"?' if near else fault.mend
                yield Problem(name, step.line, fault.what, mend)
