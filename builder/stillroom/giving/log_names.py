"""The names in a log as list and book have them, and every one that is nobody's told.

"ratafia" is the one recipe on offer that is called so, "marrables" the one household. Pure: a log
in, the same log with whole names out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from stillroom.core.larder.words import normal_form
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.giving.log import LogLine, ReadLog, log_kinds
from stillroom.giving.model import GivingList, container_words
from stillroom.giving.names import plain_name

IN = " in "


@dataclass(frozen=True)
class Known:
    """Who and what a log may name: recipes by name and title, households, what can be bought."""

    giving: GivingList
    recipes: Mapping[str, Recipe]

    def recipe(self, word: str) -> str:
        """Return the recipe that a word means, its container kept; raises Unreadable."""
        name, _, container = word.partition(IN)
        titles = {slug: recipe.title for slug, recipe in self.recipes.items()}
        offered = [make.recipe for make in self.giving.makes if make.recipe in titles]
        for own in (offered, titles):
            found = _one(name, {slug: (slug, titles[slug]) for slug in own})
            if found:
                return f"{found}{IN}{container_words(container)}" if container else found
        mend = did_you_mean(name, [*titles, *titles.values()])
        raise Unreadable(f'"{name}" is not a recipe of the book.', mend)

    def household(self, word: str) -> str:
        """Return the household that a word means; raises Unreadable."""
        rows = {one.name: (one.name, one.to) for one in self.giving.households}
        found = _one(word, rows)
        if found is None:
            raise Unreadable(f'"{word}" is nobody on the list.', did_you_mean(word, rows))
        return found

    def thing(self, word: str) -> str:
        """Return what was bought as the list calls it; raises Unreadable for what nobody knows."""
        held = [*self.giving.stock.containers, *(make.container for make in self.giving.makes)]
        priced = [price.item for price in self.giving.prices]
        foods = [i.item for recipe in self._offered() for i in recipe.ingredients]
        known = [name for name in (*priced, *held, *foods) if name]
        same = next((name for name in known if normal_form(name) == normal_form(word)), None)
        if same or find_staple(word):
            return same or word
        try:
            if container_words(word) in {container_words(name) for name in held if name}:
                return container_words(word)
        except Unreadable:
            pass  # no container, then: told below like any other word
        what = f'"{word}" is nothing that the list or its recipes need.'
        raise Unreadable(what, did_you_mean(word, known))

    def _offered(self) -> list[Recipe]:
        return [self.recipes[m.recipe] for m in self.giving.makes if m.recipe in self.recipes]


def _one(word: str, rows: Mapping[str, Iterable[str]]) -> str | None:
    """Return the one row that is called so, or the only one whose name holds all the words."""
    plain = plain_name(word)
    if not plain:
        return None
    for name, called in rows.items():
        if plain in map(plain_name, called):
            return name
    words = set(plain.split())
    holding = [
        name for name, called in rows.items() if any(words <= _words_of(said) for said in called)
    ]
    return holding[0] if len(holding) == 1 else None


def _words_of(said: str) -> set[str]:
    return set(plain_name(said).split())


def named_line(line: LogLine, known: Known, others: Iterable[str] = ()) -> LogLine:
    """Return a line with every name whole; raises Unreadable for one that is nobody's.

    `others` are households of other lists of the folder, whose lines these are no part of.
    """
    kind = log_kinds()[line.kind]
    readers: dict[str, Callable[[str], str]] = {
        "recipe": lambda word: known.recipe(word).partition(IN)[0],
        "household": known.household,
        "thing": known.thing,
    }
    name = line.name
    if kind.names in readers and name not in others:
        name = readers[kind.names](name)
    container = container_words(line.container) if line.container else ""
    return line.model_copy(
        update={
            "name": name,
            "container": container,
            "of": tuple(known.recipe(word).partition(IN)[0] for word in line.of),
            "things": tuple(known.recipe(word) for word in _with_sizes(line.things)),
        }
    )


def _with_sizes(things: tuple[str, ...]) -> list[str]:
    """Return things as they were meant: the comma of "ratafia in bottle, 100 ml" parts nothing."""
    found: list[str] = []
    for word in things:
        if found and IN in found[-1] and word[:1].isdigit():
            found[-1] = f"{found[-1]}, {word}"
        else:
            found.append(word)
    return found


def named_log(log: ReadLog, known: Known, others: Iterable[str] = ()) -> ReadLog:
    """Return a log with every name whole; raises ProblemsFound with each that is nobody's."""
    lines: list[LogLine] = []
    problems: list[Problem] = []
    for line in log.lines:
        try:
            lines.append(named_line(line, known, others))
        except Unreadable as wrong:
            problems.append(Problem(log.file, line.line, wrong.what, wrong.mend))
    if problems:
        raise ProblemsFound(problems)
    return ReadLog(log.file, tuple(lines))
