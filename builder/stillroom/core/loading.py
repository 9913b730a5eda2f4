"""Recipe files to recipes: front matter, body, and every problem with its line.

Nothing fails at the first mistake: a file's problems come out together, and a book's too.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.frontmatter import Located, read_yaml
from stillroom.core.method import find_ingredient, read_steps, split_step
from stillroom.core.parts import Ingredient, read_ingredient
from stillroom.core.problems import Problem, ProblemsFound, Unreadable, did_you_mean, nearest
from stillroom.core.quantities import Ratio
from stillroom.core.recipe import (
    Acidity,
    Card,
    FrontMatter,
    MethodStep,
    Override,
    Recipe,
    Section,
)
from stillroom.core.timeline_checks import check_timeline
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


@lru_cache(maxsize=4096)  # `mkdocs serve` reads again only the file that was changed
def read_recipe(text: str, name: str, slug: str, system: System = "metric") -> Recipe:
    """Read a recipe from its text; raises ProblemsFound."""
    located, body, body_line = _read_front(text, name)
    if not isinstance(located.data, dict):
        raise ProblemsFound([Problem(name, 2, "The front matter is not keys and values.")])
    problems: list[Problem] = []
    if not _SLUG.fullmatch(slug):
        mend = 'Use small letters, figures and dashes, as in "quince-ratafia.md".'
        problems.append(Problem(name, 1, f'"{slug}.md" cannot become an address.', mend))
    system = _written_system(located.data, system)
    body_parts = _read_body(body, body_line, name, problems)
    recipe = _validate(located, body_parts, name, slug, system, problems)
    ingredients = _readable_ingredients(located.data, system)
    if ingredients:
        lines = _by_key(located.lines)
        problems.extend(_check_names(ingredients, body_parts["method"], system, name, lines))
    if recipe is not None and recipe.timeline:
        for index, wrong in check_timeline(recipe.timeline, recipe.keeps.unopened):
            line = recipe.line_of("timeline", index)
            problems.append(Problem(name, line, wrong.what, wrong.mend))
    if problems or recipe is None:
        raise ProblemsFound(problems)
    return recipe


@lru_cache(maxsize=4096)  # the recipe is read from it, and so is what no two may share
def _read_front(text: str, name: str) -> tuple[Located, tuple[str, ...], int]:
    """Return the front matter, the lines of the body and the number of the first of them."""
    front, body, body_line = _split(text, name)
    return read_yaml(front, name, first_line=2), tuple(body), body_line


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
    lines: Sequence[str], first_line: int, name: str, problems: list[Problem]
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
        details = error.errors()
        within = {detail["loc"][0] for detail in details if len(detail["loc"]) > 1}
        problems.extend(
            _problem(detail, name, located.lines)
            for detail in details
            # lines that do not read leave their list short: the lines' own messages say it
            if detail["type"] != "too_short" or detail["loc"][0] not in within
        )
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
        return Problem(
            name, line, f'"{where}" is missing.', _MENDS.get(key, f'Add "{place[-1]}:".')
        )
    if detail["type"] == "extra_forbidden":
        allowed = _keys_under(place[:-1])
        mend = did_you_mean(place[-1], allowed)
        return Problem(name, line, f'"{place[-1]}" is not a key here.', mend)
    if detail["type"] == "string_too_short" and key == "overrides":
        return Problem(name, line, "The why of an override is too short.", "Write a sentence.")
    if detail["type"] == "too_short":
        return Problem(name, line, f'"{where}" is empty.', _MENDS.get(key, ""))
    if detail["type"] == "literal_error":
        allowed = re.findall(r"'([^']+)'", detail["ctx"]["expected"])
        mend = f"It may be: {', '.join(allowed)}."
        return Problem(name, line, f'"{detail["input"]}" is not among the {where}.', mend)
    message = detail["msg"].removeprefix("Value error, ")
    return Problem(name, line, f'"{where}" is not right: {message}.', _MENDS.get(key, ""))


def _keys_under(place: list[str]) -> list[str]:
    models: dict[str, type[BaseModel]] = {"card": Card, "acidity": Acidity, "overrides": Override}
    model = models.get(place[0] if place else "")
    return list(model.model_fields) if model else list(KNOWN_KEYS)


def _nearest_line(place: list[str], lines: dict[str, int]) -> int:
    for size in range(len(place), 0, -1):
        line = lines.get("/".join(place[:size]))
        if line:
            return line
    return 2


def _readable_ingredients(data: dict[str, Any], system: System) -> tuple[Ingredient, ...] | None:
    """Return the ingredients when every one reads, even if other keys of the recipe do not."""
    written = data.get("ingredients", data.get("materials"))
    try:
        return tuple(read_ingredient(value, system) for value in written or ()) or None
    except (Unreadable, TypeError):
        return None


def _check_names(
    ingredients: tuple[Ingredient, ...],
    steps: tuple[MethodStep, ...],
    system: System,
    name: str,
    lines: dict[str, int],
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


@dataclass(frozen=True)
class _Head:
    """What two recipes may not share, and the picture: read even when the rest is wrong."""

    file: str
    slug: str
    title: str
    was: tuple[str, ...]
    picture: str
    lines: dict[str, int]

    def line(self, key: str) -> int:
        return self.lines.get(key, 1)


def _read_head(path: Path, name: str) -> _Head | None:
    try:
        located, _, _ = _read_front(_read_file(path, name), name)
    except ProblemsFound:
        return None  # load_recipe has told these problems already
    data = located.data if isinstance(located.data, dict) else {}
    was = data.get("was", ())
    return _Head(
        file=name,
        slug=path.stem,
        title=str(data.get("title", "")),
        was=tuple(str(old) for old in (was if isinstance(was, list) else [was] if was else [])),
        picture=str(data.get("picture", "")),
        lines=located.lines,
    )


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
    folders = None if pictures is None else (pictures,)
    recipes, problems = gather_recipes(paths, root, system, folders)
    if problems:
        raise ProblemsFound(problems)
    return recipes


def gather_recipes(
    paths: Iterable[Path],
    root: Path,
    system: System = "metric",
    pictures: Sequence[Path] | None = None,
) -> tuple[tuple[Recipe, ...], list[Problem]]:
    """Read many recipe files and return those that are right beside every problem of the rest.

    A picture may stand in any folder of `pictures`; None looks for none.
    """
    problems: list[Problem] = []
    recipes: list[Recipe] = []
    heads: list[_Head] = []
    for path in sorted(paths):
        name = _short(path, root)
        try:
            recipes.append(load_recipe(path, name, system))
        except ProblemsFound as found:
            problems.extend(found.problems)
        head = _read_head(path, name)
        heads.extend([head] if head else [])
    problems.extend(_shared(heads))
    if pictures is not None:
        problems.extend(_missing_pictures(heads, pictures))
    return tuple(sorted(recipes, key=lambda recipe: recipe.title.lower())), problems


def _short(path: Path, root: Path) -> str:
    try:
        return path.resolve().relative_to(root.resolve()).as_posix()
    except ValueError:
        return str(path)


def _shared(heads: list[_Head]) -> Iterable[Problem]:
    """Find titles and addresses that two recipes share."""
    titles: dict[str, _Head] = {}
    addresses = {head.slug: head for head in heads}
    for head in heads:
        first = titles.setdefault(head.title.lower(), head) if head.title else head
        if first is not head:
            what = f'"{head.title}" is already the title of {first.file}.'
            yield Problem(head.file, head.line("title"), what, "Give one of them another title.")
        for old in head.was:
            taken = addresses.setdefault(old, head)
            if taken is not head:
                what = f'The earlier name "{old}" belongs to {taken.file}.'
                yield Problem(head.file, head.line("was"), what, 'Take it out of "was".')


def _missing_pictures(heads: list[_Head], folders: Sequence[Path]) -> Iterable[Problem]:
    have = sorted({path.name for folder in folders if folder.is_dir() for path in folder.iterdir()})
    for head in heads:
        if head.picture and head.picture not in have:
            what = f'The picture "{head.picture}" is not in {folders[0].name}/.'
            near = nearest(head.picture, have)
            mend = f'Did you mean "{near}"?' if near else "Put it there, or take the line out."
            yield Problem(head.file, head.line("picture"), what, mend)
