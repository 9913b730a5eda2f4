"""What is found in a file: its lines, the recipes in them, the drafts made of those.

Leaves out how any of it is found.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final, Literal

from stillroom.core.words.problems import Problem

SERVES: Final = re.compile(
    r"\b(?:servings?|persons?|people|personen|personnes|persone|personas|portion(?:s|en)?|porzioni"
    r"|porciones|raciones|porties|leute|guests|personer|portioner)\b",
    re.IGNORECASE,
)
PASTED: Final = "pasted.txt"
"""How words are called that came by no file: nobody is told whence they are."""
FARTHEST: Final = 200
"""Rows that are looked through from one: a book is not gone through anew from each of its lines."""
Shape = Literal["heading", "item", "step", "line", "row", "sizes"]
"""A heading, an item of a list, a numbered line, words on a line of their own, a row of a table
that lists no ingredients, or the sizes that the amounts of one which does are for."""


@dataclass(frozen=True)
class Row:
    """One line of a paper: its words, its shape, and how it stands among the others.

    `level` is that of a heading, 1 the highest; `gap` says that an empty line stands above it,
    `wraps` that a line may go on in the next, as typed text does and paragraphs do not.
    """

    text: str
    shape: Shape = "line"
    level: int = 0
    gap: bool = False
    wraps: bool = False
    indent: int = 0


@dataclass
class List:
    """A list of ingredients: the row of its heading or of its first line, and the one behind.

    `later` are rows of amounts that stand further below, amid the method; `tools` what is needed
    beside, listed without an amount before the ingredients.
    """

    begin: int
    end: int
    named: bool
    rows: list[int] = field(default_factory=list)
    later: list[int] = field(default_factory=list)
    tools: list[int] = field(default_factory=list)


@dataclass(frozen=True)
class Origin:
    """Where a paper comes from: what kind of thing it is, its address, its writer, its title.

    In place of an address that nobody knows stands the site's name ("from The Orchard Pages").

    `others` says that somebody else published the words, `beside` that letters which stood beside
    the one with the recipe are left out, `letter` that all of it was written to somebody, `chat`
    that it is the messages of a chat, without those who wrote them.
    """

    called: str
    address: str = ""
    writer: str = ""
    title: str = ""
    others: bool = False
    beside: bool = False
    letter: bool = False
    chat: bool = False


@dataclass
class Recipe:
    """One recipe as it stood elsewhere: its words by what they are, nothing of it understood yet.

    Ingredients and steps stand with the heading they are under, notes with theirs. `first_steps`
    are what stands over the list and is done with it, `numbered` the steps that their paper
    numbers itself; `doubts` are said beside their fact. `to_one` is what a letter says above its
    list, which is left out but for what is done. `told` says that its list was read from its
    method, `unread` is what the method measures of no food that is known.
    """

    title: str = ""
    makes: str = ""
    writer: str = ""
    season: str = ""
    intro: list[str] = field(default_factory=list)
    ingredients: list[tuple[str, str]] = field(default_factory=list)
    steps: list[tuple[str, str]] = field(default_factory=list)
    notes: list[tuple[str, list[str]]] = field(default_factory=list)
    doubts: list[tuple[str, str, str]] = field(default_factory=list)
    first_steps: list[str] = field(default_factory=list)
    numbered: set[str] = field(default_factory=set)
    address: str = ""
    to_one: list[str] = field(default_factory=list)
    told: bool = False
    unread: list[str] = field(default_factory=list)

    def texts(self) -> Iterator[str]:
        """Yield what stands in its draft: title, yield, writer, story, list, steps and notes."""
        yield from (self.title, self.makes, self.writer, *self.intro)
        for head, text in (*self.ingredients, *self.steps):
            yield from (head, text)
        for head, texts in self.notes:
            yield from (head, *texts)

    def say_makes(self, said: str) -> None:
        """Take how much it makes; what it makes counts before how many it serves, which is noted.

        >>> recipe = Recipe(makes="8 servings")
        >>> recipe.say_makes("24 biscuits")
        >>> recipe.makes, recipe.notes
        ('24 biscuits', [('Notes', ['8 servings.'])])
        """
        if not self.makes:
            self.makes = said
        elif said and SERVES.search(self.makes) and not SERVES.search(said):
            self.notes.append(("Notes", [f"{self.makes}."]))
            self.makes = said

    def doubt(self, fact: str, what: str, mend: str) -> None:
        """Note what is not certain of a fact, and what to do about it."""
        self.doubts.append((fact, what, mend))


@dataclass(frozen=True)
class Paper:
    """A file as it was read: its lines, the recipes that it states by itself, where it is from.

    `around` are the lines of a web page that are not read as words of its recipe.
    """

    rows: tuple[Row, ...]
    origin: Origin
    stated: tuple[Recipe, ...] = ()
    own_form: str = ""
    around: tuple[str, ...] = ()


@dataclass(frozen=True)
class Question:
    """What was not understood in a draft, at a line of its text, and what may be done about it."""

    line: int
    what: str
    mend: str


@dataclass(frozen=True)
class BroughtRecipe:
    """A draft recipe in the book's own form, every question about it, and the lines it came as.

    `came` are the lines of its paper, and those beside it that stand in no draft; `around` what a
    web page shows besides.
    """

    title: str
    slug: str
    text: str
    questions: tuple[Question, ...] = ()
    came: tuple[str, ...] = ()
    around: tuple[str, ...] = ()


@dataclass(frozen=True)
class Brought:
    """What became of one file: its recipes, and what kept it from being read."""

    name: str
    recipes: tuple[BroughtRecipe, ...] = ()
    problems: tuple[Problem, ...] = ()
