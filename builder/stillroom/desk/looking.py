"""A recipe as it is being written, looked at as the whole book would: what is wrong, and where.

Each problem is put to the box in which it can be mended, in words that fit a box. Leaves out the
page itself: publish/one_page.py sets it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stillroom.beginning.questions import questions
from stillroom.bringing.checked import unsafe_on_a_shelf
from stillroom.core.book import Book
from stillroom.core.care.claims import ask_of_claims
from stillroom.core.care.safety import check_safety
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.keeping_said import ask_of_keeping
from stillroom.core.reading.markup import check_markup
from stillroom.core.reading.picture_files import check_pictures
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.private_words import warn_of_contacts
from stillroom.core.size.absurd import ask_of_size
from stillroom.core.size.scalable import scalable_of
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.text_files import is_file_at
from stillroom.desk.plain_words import said_here
from stillroom.desk.recipe_form import UNDER
from stillroom.desk.recipe_rows import Fact, Laid, lay_out

SAFETY: Final = "safety"
"""Stands for a box where what is wrong is no one line's fault."""
_MISSING: Final = {
    "title": ("It has no name yet.", "Write what it is called."),
    "kind": ("What sort of thing is it?", "Choose one from the list."),
    "makes": ("How much does it make?", 'Write "900 ml", "24 biscuits" or "6 jars of 200 ml".'),
    "ingredients": ("Nothing goes in yet.", 'Write one thing to a line: "250 g sugar".'),
    "method": ("Nothing is done yet.", "Write what you do, one step to a line."),
}
_NAMED: Final = re.compile(r'"(?:ingredients|materials)"')
_KEYED: Final = re.compile(
    r'"(?:title|kind|makes|summary|oven|picture|season|vessels?|containers|keeps|opened|unopened'
    r'|where|source|use|what|keep|net|acidity|ph|amount|item): ([^"]+)"'
)
_AT_DESK: Final = (
    ('write "units: us".', "write “us” at “Spoons, cups and pints” below."),
    ('take out "units: us".', "empty “Spoons, cups and pints” below."),
    (' below "ingredients:", each after a dash', ""),
    (" (larder.yml)", ""),
    ('write what is a note below "## Notes"', "put what is a note into “Notes below the recipe”"),
    (
        'Put it below the second line of dashes, under a heading such as "## Notes".',
        "Put it into “Notes below the recipe”.",
    ),
    ("Write in larder.yml what it is", "Say under “The book” what it is, among your own foods"),
    (
        'Write "kind:" and one of these, or an everyday word',
        "Choose one of these, or write an everyday word",
    ),
)
"""What is said of lines of a file, and in its place at the boxes."""
# a rule is set aside in the file alone, on purpose; its name is said there
_SET_ASIDE: Final = re.compile(r' Or set it aside under "overrides:" with "rule: [\w-]+" and why\.')
_RULE: Final = re.compile(r"\(rule [\w-]+; ")
_UNDER_WHEN: Final = re.compile(r'Write "timeline:" and (?:below|under) it ')
_DASHED: Final = re.compile(r'"\s*- ([^"]+)"')
_KEY_ALONE: Final = re.compile(r'"([a-z_]+):"')
_FIELDSETS: Final = {"keeps": "How it keeps", "card": "More on the card"}
"""What facts are called that are asked in several boxes (templates/write.html)."""
_BRACED: Final = re.compile(r"\{([^{}\"]*)\}")


@dataclass(frozen=True)
class Wrong:
    """One thing to mend: in which box, in which of its lines (from 0), and its words."""

    box: str
    row: int
    what: str
    mend: str

    def __str__(self) -> str:
        return f"{self.what} {self.mend}".rstrip()

    @property
    def meant(self) -> str:
        """The box that the words send her to, where they name one."""
        return "timeline" if "under “When”" in self.mend else ""


@dataclass(frozen=True)
class Look:
    """What came of looking: the recipe where it is whole, and all that is wrong or doubtful."""

    recipe: Recipe | None
    wrong: tuple[Wrong, ...]
    warnings: tuple[Wrong, ...] = ()

    @property
    def is_right(self) -> bool:
        """Whether it can be published."""
        return self.recipe is not None and not self.wrong


def look_at(
    book: Book, larder: Larder, raw: str, slug: str, path: Path, others: Mapping[str, str]
) -> Look:
    """Look at a recipe's words, which lie at `path` as well and are to have the address `slug`.

    `others` are the titles of the book's other recipes in small letters, with their files.
    """
    name = f"{slug}.md"
    said = book.settings
    try:
        laid: Laid | None = lay_out(raw, name)
    except ProblemsFound:
        laid = None
    try:
        recipe = read_recipe(raw, name, slug, said.units, larder, said.language)
    except ProblemsFound as found:
        wrong = list(found.problems)
        if isinstance(found.draft, Recipe):
            wrong += _unsafe(found.draft, book)
        wrong += unsafe_on_a_shelf(raw.split("\n"), found.problems, said, larder)
        return Look(None, tuple(_at_boxes(wrong, laid)))
    wrong = [*_unsafe(recipe, book), *check_markup(recipe, path)]
    wrong += check_pictures(recipe, (book.pictures_dir,))
    if recipe.picture and not is_file_at(book.pictures_dir / recipe.picture):
        what = f'The picture "{recipe.picture}" is not among the book\'s pictures.'
        wrong.append(Problem(name, recipe.line_of("picture"), what, "Choose it again."))
    if other := others.get(recipe.title.lower()):
        what = f'"{recipe.title}" is the name of another recipe already ({other}).'
        wrong.append(Problem(name, recipe.line_of("title"), what, "Give one another name."))
    boxed = tuple(_at_boxes(wrong, laid))
    asked = (*ask_of_keeping(recipe), *ask_of_size(recipe), *ask_of_claims(recipe))
    warned = tuple(_at_boxes([*warn_of_dates(recipe), *warn_of_contacts(recipe), *asked], laid))
    return Look(recipe, boxed, warned)


def _unsafe(recipe: Recipe, book: Book) -> list[Problem]:
    try:
        scalable_of(recipe)
        return list(check_safety(recipe, book.settings))
    except Unreadable as wrong:
        line = recipe.line_of("ingredients")
        return [Problem(recipe.file, line, wrong.what, wrong.mend)]


def _at_boxes(problems: list[Problem], laid: Laid | None) -> Iterator[Wrong]:
    """Put each problem to its box, once."""
    told: set[tuple[str, int, str]] = set()
    for problem in sorted(set(problems)):
        box, row = _box_of(problem, laid)
        missing = _MISSING.get(box)
        if missing and _is_missing(problem, box, laid):
            what, mend = missing
        else:
            what, mend = plainly(problem.what), plainly(problem.mend)
        if (box, row, what) not in told:
            told.add((box, row, what))
            yield Wrong(box, row, what, mend)


def _is_missing(problem: Problem, box: str, laid: Laid | None) -> bool:
    if box == "method":
        return '"## Method"' in problem.what or "has no steps" in problem.what
    return f'"{box}" is missing' in problem.what or (
        laid is not None and box not in laid.facts and "missing" in problem.what
    )


def plainly(text: str) -> str:
    """Return a message about a file in words that fit a box.

    >>> plainly('Write "makes: 900 ml" or so.'), plainly('"{plum}" is not an ingredient.')
    ('Write "900 ml" or so.', '"plum" is not an ingredient.')
    >>> plainly('Write "kind: ferment", and its own "timeline:" and "keeps:".')
    'Write "ferment", and its own “When” and “How it keeps”.'
    """
    text = _RULE.sub("(", _SET_ASIDE.sub("", text))
    for said, at_desk in _AT_DESK:
        text = text.replace(said, at_desk)
    text = _UNDER_WHEN.sub("Write under “When”, a line each: ", text)
    text = _DASHED.sub(r'"\1"', _KEYED.sub(r'"\1"', text))
    text = _BRACED.sub(r"\1", _NAMED.sub("what goes in", text))
    return said_here(_KEY_ALONE.sub(_box_called, text))


def _box_called(found: re.Match[str]) -> str:
    """Return what a fact of a file is called at its box; the fact as it is where it has none."""
    asked = questions().get(found[1])
    called = _FIELDSETS.get(found[1]) or (asked.words if asked else "")
    return f"“{called}”" if called else found[0]


def _box_of(problem: Problem, laid: Laid | None) -> tuple[str, int]:
    named = re.match(r'"(\w+)(?: no\. \d+)?" is (?:missing|empty)', problem.what)
    if named and named[1] in _MISSING:
        return named[1], -1
    if '"## Method"' in problem.what or "has no steps" in problem.what:
        return "method", -1
    if laid is None:
        return "whole", problem.line - 1
    at = problem.line - 1
    for fact in laid.facts.values():
        if fact.first <= at < fact.last:
            return _box_of_fact(fact, at, laid)
    for place, row in enumerate(one for one in laid.steps if not one.is_heading):
        if row.first <= at < row.last:
            return "method", place
    for place, row in enumerate(laid.listed):
        if row.first <= at < row.last:
            return "ingredients", place
    if laid.intro[0] <= at < laid.intro[1]:
        return "intro", -1
    return ("after", -1) if laid.after[0] <= at < laid.after[1] else (SAFETY, -1)


def _box_of_fact(fact: Fact, at: int, laid: Laid) -> tuple[str, int]:
    if fact.key in UNDER:
        found = re.match(r"\s*([a-z_]+):", laid.lines[at])
        first = "card_use" if fact.key == "card" else f"{fact.key}_{UNDER[fact.key][0]}"
        return (f"{fact.key}_{found[1]}", -1) if found and at > fact.first else (first, -1)
    place = next((i for i, row in enumerate(fact.rows) if row.first <= at < row.last), -1)
    return fact.key, place
