"""Recipe files to recipes: front matter, body, and every problem with its line.

Nothing fails at the first mistake: a file's problems come out together, and a book's too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path
from typing import Any, get_args

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.frontmatter import Located, read_yaml
from stillroom.core.method import read_steps, split_step
from stillroom.core.problems import Problem, ProblemsFound, Unreadable, did_you_mean
from stillroom.core.quantities import Ratio
from stillroom.core.recipe import FrontMatter, MethodStep, Recipe, Section
from stillroom.core.units import System

_SLUG = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_WRITTEN_AS = {"ingredients": "materials", "vessels": "vessel"}
KNOWN_KEYS = tuple(sorted({*FrontMatter.model_fields, *_WRITTEN_AS.values()}))


def load_recipe(path: Path, name: str = "", system: System = "metric") -> Recipe:
    """Read one recipe file; raises ProblemsFound with every problem in it.

    `name` is how the file is called in messages, `system` how spoons, cups and pints are read
    when the recipe does not say.
    """
    return read_recipe(_read_file(path, name or str(path)), name or str(path), path.stem, system)


def _read_file(path: Path, name: str) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        problem = Problem(name, 1, "The file is not UTF-8 text.", "Save it as UTF-8.")
    except OSError as error:
        problem = Problem(name, 1, f"The file cannot be read ({error.strerror}).")
    raise ProblemsFound([problem])


def read_recipe(text: str, name: str, slug: str, system: System = "metric") -> Recipe:
    """Read a recipe from its text; raises ProblemsFound."""
    front, body, body_line = _split(text, name)
    located = read_yaml(front, name, first_line=2)
    if not isinstance(located.data, dict):
        raise ProblemsFound([Problem(name, 2, "The front matter is not keys and values.")])
    problems: list[Problem] = []
    if not _SLUG.fullmatch(slug):
        mend = 'Use small letters, figures and dashes, as in "quince-ratafia.md".'
        problems.append(Problem(name, 1, f'"{slug}.md" cannot become an address.', mend))
    system = _written_system(located.data, system)
    body_parts = _read_body(body, body_line, name, problems)
    recipe = _validate(located, body_parts, name, slug, system, problems)
    if recipe is not None:
        _check_within(recipe, problems)
    if problems or recipe is None:
        raise ProblemsFound(problems)
    return recipe


def _split(text: str, name: str) -> tuple[str, list[str], int]:
    lines = text.splitlines()
    if not lines or lines[0].strip() != "---":
        mend = 'Begin with a line "---", then title, kind, makes, ingredients, then "---".'
        raise ProblemsFound([Problem(name, 1, "The file has no front matter.", mend)])
    for place, line in enumerate(lines[1:], start=1):
        if line.strip() == "---":
            return "\n".join(lines[1:place]), lines[place + 1 :], place + 2
    raise ProblemsFound([Problem(name, 1, "The front matter does not end.", 'Add a line "---".')])


def _written_system(data: dict[str, Any], default: System) -> System:
    written = data.get("units")
    for system in get_args(System):
        if written == system:
            return system  # type: ignore[no-any-return]
    return default


def _read_body(
    lines: list[str], first_line: int, name: str, problems: list[Problem]
) -> dict[str, Any]:
    intro: list[str] = []
    sections: list[tuple[str, int, list[str]]] = []
    for offset, line in enumerate(lines):
        if line.startswith("## "):
            sections.append((line[3:].strip(), first_line + offset, []))
        elif sections:
            sections[-1][2].append(line)
        else:
            intro.append(line)
    methods = [section for section in sections if section[0].lower() == "method"]
    steps: tuple[MethodStep, ...] = ()
    if not methods:
        end = first_line + len(lines)
        problems.append(
            Problem(name, end, 'The recipe has no "## Method".', 'Add "## Method" and "1. ...".')
        )
    else:
        _, line_number, words = methods[0]
        try:
            steps = read_steps(words, line_number + 1)
        except Unreadable as wrong:
            problems.append(Problem(name, line_number, wrong.what, wrong.mend))
    others = [section for section in sections if section[0].lower() != "method"]
    return {
        "intro": "\n".join(intro).strip(),
        "method": steps,
        "sections": tuple(Section(heading, "\n".join(text).strip()) for heading, _, text in others),
    }


def _validate(
    located: Located,
    body: dict[str, Any],
    name: str,
    slug: str,
    system: System,
    problems: list[Problem],
) -> Recipe | None:
    data = dict(located.data)
    for key in [key for key in data if key not in KNOWN_KEYS]:
        line = located.lines.get(str(key), 2)
        mend = did_you_mean(str(key), KNOWN_KEYS)
        problems.append(Problem(name, line, f'"{key}" is not a key of a recipe.', mend))
        del data[key]
    data |= {"slug": slug, "file": name, "system": system, "lines": _by_key(located.lines), **body}
    try:
        return Recipe.model_validate(data, context={"system": system})
    except ValidationError as error:
        problems.extend(_problem(detail, name, located.lines) for detail in error.errors())
    return None


def _by_key(lines: dict[str, int]) -> dict[str, int]:
    """Give lines under "materials" and "vessel" the names the model knows them by."""
    named = dict(lines)
    for key, written in _WRITTEN_AS.items():
        for path, line in lines.items():
            head, slash, rest = path.partition("/")
            if head == written:
                named[f"{key}{slash}{rest}"] = line
    return named


_MENDS = {
    "title": 'Write "title: Quince ratafia".',
    "kind": 'Write "kind: infusion" or another kind.',
    "makes": 'Write "makes: 900 ml", "makes: 24 biscuits" or so.',
    "ingredients": 'Write "ingredients:" and under it lines such as "  - 250 g sugar".',
}


def _problem(detail: ErrorDetails, name: str, lines: dict[str, int]) -> Problem:
    place = [str(part) for part in detail["loc"]]
    key = place[0] if place else ""
    line = _nearest_line(place, _by_key(lines))
    wrong = detail.get("ctx", {}).get("error")
    if isinstance(wrong, Unreadable):
        return Problem(name, line, wrong.what, wrong.mend)
    where = " ".join(part if not part.isdigit() else f"no. {int(part) + 1}" for part in place)
    if detail["type"] == "missing":
        return Problem(name, line, f'"{where}" is missing.', _MENDS.get(key, f'Add "{place[-1]}:".'))
    if detail["type"] == "extra_forbidden":
        allowed = _keys_under(place[:-1])
        return Problem(name, line, f'"{place[-1]}" is not a key here.', did_you_mean(place[-1], allowed))
    if detail["type"] == "string_too_short" and key == "overrides":
        return Problem(name, line, "The why of an override is too short.", "Say it in a sentence.")
    message = detail["msg"].removeprefix("Value error, ")
    return Problem(name, line, f'"{where}" is not right: {message}.', _MENDS.get(key, ""))


def _keys_under(place: list[str]) -> list[str]:
    from stillroom.core.recipe import Acidity, Card, Override

    models = {"card": Card, "acidity": Acidity, "overrides": Override}
    return list(models[place[0]].model_fields) if place and place[0] in models else list(KNOWN_KEYS)


def _nearest_line(place: list[str], lines: dict[str, int]) -> int:
    for size in range(len(place), 0, -1):
        line = lines.get("/".join(place[:size]))
        if line:
            return line
    return 2


def _check_within(recipe: Recipe, problems: list[Problem]) -> None:
    """Check what only the whole recipe can tell: ratios and braces name real ingredients."""
    from stillroom.core.method import find_ingredient

    for place, ingredient in enumerate(recipe.ingredients):
        if isinstance(ingredient.amount, Ratio):
            others = [other for other in recipe.ingredients if other is not ingredient]
            try:
                find_ingredient(ingredient.amount.of, others)
            except Unreadable as wrong:
                line = recipe.line_of("ingredients", place)
                problems.append(Problem(recipe.file, line, wrong.what, wrong.mend))
    for step in recipe.method:
        try:
            split_step(step.text, recipe.ingredients, recipe.system)
        except Unreadable as wrong:
            problems.append(Problem(recipe.file, step.line, wrong.what, wrong.mend))


def load_recipes(
    paths: Iterable[Path],
    root: Path,
    system: System = "metric",
    pictures: Path | None = None,
) -> tuple[Recipe, ...]:
    """Read many recipe files in the order of their titles; raises ProblemsFound with all.

    `root` shortens the names in messages; `pictures` is the folder their pictures stand in,
    or None when pictures are not to be looked for.
    """
    problems: list[Problem] = []
    recipes: list[Recipe] = []
    for path in sorted(paths):
        try:
            recipes.append(load_recipe(path, _short(path, root), system))
        except ProblemsFound as found:
            problems.extend(found.problems)
    problems.extend(_across(recipes))
    if pictures is not None:
        problems.extend(_missing_pictures(recipes, pictures))
    if problems:
        raise ProblemsFound(problems)
    return tuple(sorted(recipes, key=lambda recipe: recipe.title.lower()))


def _short(path: Path, root: Path) -> str:
    try:
        return path.resolve().relative_to(root.resolve()).as_posix()
    except ValueError:
        return str(path)


def _across(recipes: list[Recipe]) -> Iterable[Problem]:
    """Find titles and addresses that two recipes share."""
    titles: dict[str, Recipe] = {}
    addresses = {recipe.slug: recipe for recipe in recipes}
    for recipe in recipes:
        first = titles.setdefault(recipe.title.lower(), recipe)
        if first is not recipe:
            what = f'"{recipe.title}" is already the title of {first.file}.'
            yield Problem(recipe.file, recipe.line_of("title"), what, "Give one another title.")
        for old in recipe.was:
            taken = addresses.setdefault(old, recipe)
            if taken is not recipe:
                what = f'The earlier name "{old}" belongs to {taken.file}.'
                yield Problem(recipe.file, recipe.line_of("was"), what, 'Take it out of "was".')


def _missing_pictures(recipes: list[Recipe], folder: Path) -> Iterable[Problem]:
    have = sorted(path.name for path in folder.iterdir()) if folder.is_dir() else []
    for recipe in recipes:
        if recipe.picture and recipe.picture not in have:
            what = f'The picture "{recipe.picture}" is not there.'
            mend = did_you_mean(recipe.picture, have) if have else f"Put it into {folder}."
            yield Problem(recipe.file, recipe.line_of("picture"), what, mend)
