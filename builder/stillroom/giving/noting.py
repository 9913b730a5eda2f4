"""A line noted in the log of a list: read, its names made whole, tried on all before it, written.

A line that could not be is refused before anything is written. Leaves out the terminal.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from datetime import date, timedelta
from pathlib import Path
from typing import Any

from stillroom.core.book import Book
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.day_words import say_day
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.core.words.text_files import read_text
from stillroom.giving.finding import giving_lists
from stillroom.giving.log import LogLine, ReadLog, log_kinds, read_kind
from stillroom.giving.log_file import add_row, log_beside, read_line, read_log
from stillroom.giving.log_names import IN, Known, named_line, named_log
from stillroom.giving.model import GivingList
from stillroom.giving.names import with_names_of
from stillroom.giving.plan_file import Before
from stillroom.giving.reading import ReadList, load_giving_list
from stillroom.giving.season import Season, read_season
from stillroom.giving.standing import check_pins
from stillroom.giving.written import read_day
from stillroom.saving.whole import write_whole


@dataclass(frozen=True)
class Noted:
    """A line as it was written, and where."""

    line: LogLine
    path: Path
    row: Mapping[str, Any]


def read_noted_day(text: str, today: date, country: str) -> date:
    """Return the day a line is of: "yesterday", or the last of that name; raises Unreadable.

    >>> read_noted_day("yesterday", date(2027, 6, 4), "GB")
    datetime.date(2027, 6, 3)
    >>> read_noted_day("28 Dec", date(2027, 6, 4), "GB")  # it has happened
    datetime.date(2026, 12, 28)
    """
    plain = text.strip().lower()
    if plain in ("", "today"):
        return today
    day = today - timedelta(days=1) if plain == "yesterday" else _said_day(text, today, country)
    if day > today:
        raise Unreadable(f"{say_day(day)} has not come yet.", "Note it on its day.")
    return day


def _said_day(text: str, today: date, country: str) -> date:
    for year in (today.year, today.year - 1) if not re.search(r"\d{4}", text) else ():
        with suppress(Unreadable):  # what is no day so is told as it was written
            if (day := read_day(f"{text} {year}", country)) <= today:
                return day
    return read_day(text, country)


def note(
    giving_list: Path,
    read: ReadList,
    recipes: Mapping[str, Recipe],
    said: Mapping[str, Any],
    before: Before | None,
    country: str,
) -> Noted:
    """Write one line into the log beside a list; raises Unreadable, and then nothing is written.

    `said` has "kind", "name", "day" and what else there is to say, `before` who was planned what.
    """
    read = with_names_of(read, recipes)
    giving = read.giving
    path = log_beside(giving_list)
    text = read_text(path, str(path)) if path.exists() else ""
    said_so = (giving.currency, giving.language, country, read.units)
    whole = read_log(text, str(path), *said_so) if text else None
    own = (whole or ReadLog(str(path))).of_list(giving.giving_list, giving.follows)
    if whole and giving.giving_list in [line.name for line in whole.lines if line.kind == "closed"]:
        raise Unreadable(f"{giving.giving_list} is closed.", "Note it in the list of this year.")
    known = Known(giving, recipes)
    log = named_log(own, known, other_households(giving_list, giving))
    row = _row(said, known, read_season(log, giving), before)
    context = {"currency": giving.currency, "language": giving.language, "country": country,
               "units": read.units}  # fmt: skip
    line = named_line(read_line(row, context), known)
    _try(line, log, giving, recipes)
    _make_whole(row, line)
    write_whole(path, add_row(text, str(path), row).encode())
    return Noted(line, path, row)


def other_households(giving_list: Path, giving: GivingList) -> frozenset[str]:
    """Return the households of the other lists in a list's folder: they share its log."""
    found: set[str] = set()
    for path in sorted(giving_list.parent.glob("*.y*ml")):
        if path.resolve() == giving_list.resolve() or path == log_beside(giving_list):
            continue
        try:
            found |= {one.name for one in load_giving_list(path).giving.households}
        except ProblemsFound:  # it tells its own problems when it is used itself
            continue
    return frozenset(found - {one.name for one in giving.households})


def _row(
    said: Mapping[str, Any], known: Known, season: Season, before: Before | None
) -> dict[str, Any]:
    kind = read_kind(str(said["kind"]))
    if kind.kind == "closed":
        raise Unreadable("A year is closed by a command of its own.", kind.example)
    row: dict[str, Any] = {"day": said["day"].isoformat(), kind.kind: said["name"]}
    row |= {key: value for key, value in said.items() if key not in ("kind", "name", "day")}
    if kind.kind in ("given", "posted"):
        things = row.pop("of", None) or row.get("things")
        row["things"] = things or _planned(known.household(str(said["name"])), row, season, before)
    if kind.kind == "change" and row.get(
        "words"
    ):  # 'change "quince chutney" --words "less chilli"'
        row |= {kind.kind: row.pop("words"), "of": row.get("of") or [said["name"]]}
    lacking = [key for key in kind.must if not row.get(key) and row.get(key) != 0]
    if lacking:
        raise Unreadable(f'It lacks "{lacking[0]}".', f"As in: {kind.example}")
    return row


def _planned(
    household: str, row: Mapping[str, Any], season: Season, before: Before | None
) -> list[str]:
    """Return what the pack planned for a household's next basket; raises Unreadable without one."""
    own = {nth: things for (name, nth), things in (before or {}).items() if name == household}
    waiting = [nth for nth in sorted(own) if not season.has_gone(household, nth)]
    nth = row.get("basket") or (waiting[0] if waiting else 0)
    if own and not waiting:
        what = f"Every basket of {household} has gone already."
        raise Unreadable(what, 'What else left the shelf is "used", with "--number 1".')
    if not own.get(nth):
        what = f"No pack says what {household} were to have."
        raise Unreadable(what, 'Say what was in it: --of "quince chutney", once for each.')
    return list(own[nth])


def _try(line: LogLine, log: ReadLog, giving: GivingList, recipes: Mapping[str, Recipe]) -> None:
    """Raise Unreadable where a line does not fit what is noted before it."""
    tried = ReadLog("", (*log.lines, line))
    try:
        check_pins(tried, read_season(tried, giving), giving, recipes)
    except ProblemsFound as found:
        raise Unreadable(found.problems[0].what, found.problems[0].mend) from None


def _make_whole(row: dict[str, Any], line: LogLine) -> None:
    """Put the whole names into what is written."""
    row[line.kind] = line.name
    for key in ("of", "things"):
        if key in row:
            row[key] = list(getattr(line, key))
    if line.container:
        row["container"] = line.container


def say_noted(noted: Noted, recipes: Mapping[str, Recipe]) -> str:
    """Say in a line what was noted, recipes by their titles."""

    def title(thing: str) -> str:
        slug, _, container = thing.partition(IN)
        named = recipes[slug].title if slug in recipes else slug
        return f"{named} ({container})" if container else named

    words = log_kinds()[noted.line.kind].said.format(name=title(noted.line.name))
    things = [title(thing) for thing in (*noted.line.things, *noted.line.of)]
    more = f": {', '.join(things)}" if things else ""
    return f"{say_day(noted.line.day)}: {words}{more}."


def list_to_note_in(book: Book) -> Path:
    """Return the only giving list of a book that is not closed; raises Unreadable for several."""
    found = giving_lists(book)
    open_ones = [path for path in found if not _is_closed(path, book)]
    if len(open_ones) == 1:
        return open_ones[0]
    if not found:
        raise Unreadable("This book has no giving list.", 'Name it: "--list giving/christmas.yml".')
    names = ", ".join(path.relative_to(book.root).as_posix() for path in open_ones or found)
    raise Unreadable("Which giving list is it of?", f'Name it with "--list": {names}.')


def _is_closed(path: Path, book: Book) -> bool:
    log = log_beside(path)
    if not log.exists():
        return False
    said = book.settings
    read = load_giving_list(
        path, str(path), said.currency, said.language, said.country, said.units, said.own_days
    )
    giving = read.giving
    text = read_text(log, str(log))
    lines = read_log(
        text, str(log), giving.currency, giving.language, said.country, said.units
    ).lines
    return giving.giving_list in [line.name for line in lines if line.kind == "closed"]
