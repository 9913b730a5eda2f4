"""A new recipe file from a title and a kind: whole, and each fact with a note beside it.

What it holds until a cook writes over it is in samples.yml. It can be published as it stands, in
the book's own units. Leaves out recipes that stood elsewhere: those are brought in, not begun.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final

import yaml

from stillroom.beginning.written import fact, facts, item
from stillroom.core.book import Book, BookSettings
from stillroom.core.reading.loading import load_recipe
from stillroom.core.reading.recipe_file import address_name
from stillroom.core.recipe.kinds import Kind, find_kind
from stillroom.core.recipe.model import LONGEST_NAME, TAKEN_NAME
from stillroom.core.recipe.plain_facts import read_title
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.said import OWN, fill, read_room
from stillroom.saving.whole import write_whole

HERE: Final = Path(__file__).parent
LONGEST_TITLE: Final = 90
"""As recipe.py takes it."""


@dataclass(frozen=True)
class NewRecipe:
    """A recipe file to be: the name it is found by, and its text."""

    slug: str
    text: str


def new_recipe(title: str, kind: str, settings: BookSettings) -> NewRecipe:
    """Return a new recipe of a kind; raises Unreadable for a title or a kind that is none."""
    title = " ".join(title.split())
    if not title:
        raise Unreadable("The recipe has no title.", 'Say what it is called: "Plum gin".')
    if len(title) > LONGEST_TITLE:
        what = f"The title is {len(title)} letters long."
        raise Unreadable(what, f"{LONGEST_TITLE} are the most; the summary may say the rest.")
    found = find_kind(kind)
    text = (HERE / "recipe.md.txt").read_text(encoding="utf-8").format(**_filled(found, settings))
    # a title may hold braces and must not be filled in: it is put in its place at last
    return NewRecipe(slug_of(title), text.replace("\x00", fact("title", title)))


def write_recipe(book: Book, title: str, kind: str) -> Path:
    """Write a new recipe among a book's own; where it raises, nothing is written.

    Raises Unreadable for a title or a kind that is none, ProblemsFound for a name that is taken.
    """
    new = new_recipe(read_title(title), kind, book.settings)
    path = book.recipes_dir / f"{new.slug}.md"
    refuse_taken(path)
    for other in book.recipe_files():
        if _title_of(other, book).lower() == " ".join(title.split()).lower():
            what = f'There is a recipe called "{title}" already.'
            raise ProblemsFound([Problem(str(other), 1, what, "Give the new one another title.")])
    write_whole(path, new.text.encode())
    return path


def refuse_taken(path: Path) -> None:
    """Raise ProblemsFound where something lies already: nothing is ever written over."""
    if path.exists() or path.is_symlink():
        what = "This file is there already, and is left as it is."
        raise ProblemsFound([Problem(str(path), 1, what, "Give the new one another title.")])


def slug_of(title: str) -> str:
    """Return the name of the file for a title: it becomes the recipe's address.

    >>> slug_of("Crème de Menthe"), slug_of("梅酒"), slug_of("Index")
    ('creme-de-menthe', 'recipe', 'index-recipe')
    """
    name = address_name(title) or "recipe"
    return f"{name[: LONGEST_NAME - 7]}-recipe" if TAKEN_NAME.fullmatch(name) else name


def _title_of(path: Path, book: Book) -> str:
    """Return the title of a recipe that reads; one that does not is told by the check."""
    said = book.settings
    try:
        return load_recipe(path, path.name, said.units, language=said.language).title
    except ProblemsFound:
        return ""


@cache
def _samples() -> dict[str, Any]:
    text = (HERE / "samples.yml").read_text(encoding="utf-8")
    return dict(yaml.safe_load(text))


def _sample_of(kind: Kind) -> dict[str, Any]:
    """Return the example for the cook's own word where there is one, else the one for the kind."""
    return dict(_samples().get(kind.spoken) or _samples()[kind.name])


def example_of(kind: str) -> str:
    """Return what the example in a new recipe of a kind makes; raises Unreadable.

    >>> example_of("fudge"), example_of("toffee")
    ('vanilla fudge', 'butter brittle')
    """
    return str(_sample_of(find_kind(kind))["called"])


def example_steps() -> tuple[tuple[str, ...], ...]:
    """Return the steps that a new recipe of each kind holds until they are written over."""
    return tuple(tuple(sample["steps"]) for sample in _samples().values())


@cache
def example_lines() -> tuple[tuple[str, ...], ...]:
    """Return the lines of a list that a new recipe of each kind holds, in either units."""
    measured = (sample[units] for sample in _samples().values() for units in ("metric", "us"))
    return tuple(dict.fromkeys(tuple(map(item, one["lines"])) for one in measured))


def _filled(kind: Kind, settings: BookSettings) -> dict[str, str]:
    """Return what stands in each place of the new file."""
    sample = _sample_of(kind)
    measured = sample["us" if settings.units == "us" else "metric"]
    stages = [f"{word}: {text}" for word, text in kind.timeline]
    listed = "ingredients" if kind.is_eaten else "materials"
    oven = fact("oven", measured["oven"]) + "\n" if "oven" in measured else ""
    notes = _notes(settings.language)
    steps = (f"{place}. {step}" for place, step in enumerate(sample["steps"], 1))
    return {
        "title": "\x00",
        "kind": fact("kind", kind.spoken),
        "makes": fact("makes", measured["makes"]),
        "lines": "\n".join(facts(listed, measured["lines"])),
        "oven": oven,
        "containers": fact("containers", kind.container),
        "timeline": "\n".join(["timeline:", *(f"  - {stage}" for stage in stages)]),
        "use": "  " + fact("use", sample["card"]),
        "steps": "\n".join(steps),
    } | {f"note_{name}": fill(note, {"kind": kind.name}) for name, note in notes.items()}


def _notes(language: str) -> dict[str, str]:
    """Return the notes beside the facts in the book's language, in English where there are none."""
    spoken = language.split("_")[0]
    there = (HERE / "said" / f"{spoken}.yml").is_file()
    return dict(read_room("stillroom.beginning", spoken if there else OWN)["notes"])
