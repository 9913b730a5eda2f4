"""A giving list and its log checked against the book, without a plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.against_book import problems_alone
from stillroom.giving.against_whole import check_whole, with_the_rest
from stillroom.giving.basket_designs import design_problems
from stillroom.giving.finding import is_list
from stillroom.giving.log import ReadLog
from stillroom.giving.log_file import LOG_FILE, load_log, log_beside
from stillroom.giving.log_names import Known, named_log
from stillroom.giving.names import with_names_of
from stillroom.giving.noting import other_households
from stillroom.giving.posting import posting_problems
from stillroom.giving.reading import NOBODY, ReadList, load_giving_list
from stillroom.giving.season import Season, read_season
from stillroom.giving.standing import check_pins


def find_giving_problems(
    paths: list[Path], book: Book, recipes: Mapping[str, Recipe]
) -> Iterator[Problem]:
    """Return everything wrong in these giving lists and in the logs beside them."""
    for path in paths:
        try:
            read = read_list(path, book, recipes)
            named = with_names_of(read, recipes)
            check_whole(named, recipes, book.settings.country)
            read_log_of(path, named, book, recipes)
        except ProblemsFound as found:
            yield from found.problems


def only_begun(problems: Sequence[Problem]) -> tuple[Problem, ...]:
    """Return, of the lists with which nothing else is wrong, that nobody stands in them yet."""
    files = Counter(one.file for one in problems)
    return tuple(one for one in problems if one.what == NOBODY and files[one.file] == 1)


def find_own_problems(paths: Sequence[Path], book: Book) -> Iterator[Problem]:
    """Return what is wrong in giving lists and their logs as far as no recipe is needed for it."""
    country = book.settings.country
    for path in paths:
        try:
            read = read_list(path, book)
            yield from (*problems_alone(read), *posting_problems(read, country))
            load_log(path, read, country)
        except ProblemsFound as found:
            yield from found.problems


def read_list(path: Path, book: Book, recipes: Mapping[str, Recipe] | None = None) -> ReadList:
    """Read a giving list as its book writes money and days; raises ProblemsFound.

    With the book's `recipes` those of a list that does not read are told as well as can be. A
    design that is not there is told at its line: a basket's papers would have another.
    """
    said = book.settings
    try:
        read = load_giving_list(
            path, str(path), said.currency, said.language, said.country, said.units, said.own_days
        )
    except ProblemsFound as found:
        raise with_the_rest(found, recipes or {}, said.country) if recipes else found from None
    if problems := list(design_problems(read, book)):
        raise ProblemsFound(problems)
    return read


def read_log_of(
    giving_list: Path, named: ReadList, book: Book, recipes: Mapping[str, Recipe]
) -> tuple[ReadLog, Season]:
    """Return the log of a list whose names are whole, and its season; raises ProblemsFound."""
    log = load_log(giving_list, named, book.settings.country)
    if not log.lines:
        return log, read_season(log, named.giving)
    others = other_households(giving_list, named.giving)
    log = named_log(log, Known(named.giving, recipes), others)
    season = read_season(log, named.giving)
    check_pins(log, season, named.giving, recipes)
    return log, season


def lists_named(files: tuple[Path, ...]) -> list[Path]:
    """Return the giving lists that are meant by files: a log stands for the lists beside it."""
    found: dict[Path, None] = {}
    for path in files:
        beside = _lists_beside(path) if path.name == LOG_FILE else [path]
        found |= dict.fromkeys(one for one in beside if one != log_beside(one))
    return list(found)


def _lists_beside(log: Path) -> list[Path]:
    """Return the lists beside a log; all that could be one where nothing begins as a list does."""
    files = [path for path in sorted(log.parent.glob("*.y*ml")) if path.is_file()]
    return [path for path in files if is_list(path)] or files
