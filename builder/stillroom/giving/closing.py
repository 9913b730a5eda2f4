"""Closing a year: next year's giving list, out of this one, its log and the pack that went out.

The earlier file is not touched; the new one keeps its notes, its order and its way of writing. Who
had what is written down with their word on it, ages are a year on, what is over goes to the stock
and never more than is over, what is on its way stays on its way.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any, Final

from ruamel.yaml.comments import CommentedMap, CommentedSeq

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.a_year_on import has_days, move_days
from stillroom.giving.as_written import several
from stillroom.giving.carrying import carry_batches, carry_stock
from stillroom.giving.list_words import said_key
from stillroom.giving.log import LogLine, ReadLog
from stillroom.giving.log_names import IN
from stillroom.giving.model import Household
from stillroom.giving.names import with_names_of
from stillroom.giving.needs_written import needs_said
from stillroom.giving.reading import ReadList
from stillroom.giving.season import Season, read_season
from stillroom.giving.standing import stand
from stillroom.saving.yaml_files import change_yaml

_WEEKDAYS: Final = 7
_HEAD: Final = "# Seeded from "
_HEAD_LINES: Final = 4
_MOVED: Final = (
    "# Last posting days, days off and the days on which baskets are opened are last year's,\n"
    "# moved by 52 weeks, but for feasts: nobody has named this year's. Put the new ones.\n"
)
# as it was said until November 2026
_MOVED_AT_FIRST: Final = _MOVED.replace(", but for feasts", "")


def close_year(
    read: ReadList,
    text: str,
    given: Mapping[tuple[str, int], tuple[str, ...]],
    recipes: Mapping[str, Recipe],
    giving_day: date | None = None,
    log: ReadLog | None = None,
    country: str = "GB",
) -> str:
    """Return next year's list; `given` is the plan of the pack that went out.

    A basket that nobody noted is taken to have gone as planned. `giving_day` is the new day:
    without it, the same weekday of the same week, a year on. Raises ProblemsFound when the plan
    names a household that the list does not.
    """
    names = {household.name for household in read.giving.households}
    if strangers := sorted({name for name, _ in given} - names):
        what = f"The pack gives to {', '.join(strangers)}, who are not on this list."
        raise ProblemsFound([Problem(read.file, 1, what, "Close the list that the pack is of.")])
    named = with_names_of(read, recipes)
    giving = named.giving
    log = log or ReadLog()
    season = read_season(log, giving)
    assumed = not_noted(season, given, giving.giving_day)
    standing = stand(named, recipes, log, season, assumed)
    year = giving.giving_day.year
    had = _had_now(season, assumed)

    def change(data: Any) -> None:
        data[said_key("list", data, "giving list")] = _next_title(giving.giving_list, year)
        day = giving_day or giving.giving_day + timedelta(days=52 * _WEEKDAYS)
        data[said_key("list", data, "giving day")] = day
        _put_after(data, said_key("list", data, "giving day"), "follows", giving.giving_list)
        rows = _rows_of(data, giving.households)
        for row, household in zip(rows, giving.households, strict=True):
            _carry_on(row, household, year, had.get(household.name, ()), season)
        move_days(data, rows, giving.giving_day, country)
        _leave_bare(data)
        carry_stock(data, named.giving, standing.read.giving)
        carry_batches(data, standing.read.giving)

    head = f"{_HEAD}the list of {year} when it was closed. Look over every household: ages\n"
    head += (
        "# are a year on, and a child expected then is put down as six months old. Strike out of\n"
    )
    head += "# the stock what has been eaten or has spoiled since. Private.\n"
    changed = change_yaml(_without_head(text), read.file, change)
    return head + (_MOVED if has_days(giving) else "") + changed


def not_noted(
    season: Season, given: Mapping[tuple[str, int], tuple[str, ...]], day: date
) -> tuple[LogLine, ...]:
    """Return the baskets of a pack that the log says nothing of, as if they were noted."""
    return tuple(
        LogLine(day=day, kind="given", name=name, things=things, basket=nth)
        for (name, nth), things in given.items()
        if things and season.has_gone(name, nth) is None
    )


def _without_head(text: str) -> str:
    if not text.startswith(_HEAD):
        return text
    # the head of a list, that of an earlier closing as well: comments down to the first other line
    lines = text.split("\n")
    private = next(
        (n for n, line in enumerate(lines[:_HEAD_LINES]) if line.endswith("Private.")), 0
    )
    return "\n".join(lines[private + 1 :]).removeprefix(_MOVED).removeprefix(_MOVED_AT_FIRST)


def _had_now(season: Season, assumed: tuple[LogLine, ...]) -> dict[str, tuple[str, ...]]:
    """Return the recipes that each household had this year."""
    had: dict[str, set[str]] = {}
    gone = [(one.household, one.things) for one in season.gone]
    for name, things in [*gone, *((line.name, line.things) for line in assumed)]:
        had.setdefault(name, set()).update(thing.partition(IN)[0] for thing in things)
    return {name: tuple(sorted(slugs)) for name, slugs in had.items()}


def _rows_of(data: Any, households: tuple[Household, ...]) -> list[Any]:
    """Return each household's own rows in the file, made rows where they were names alone."""
    key = said_key("list", data, "households")
    written = data[key]
    if isinstance(written, str):
        data[key] = [CommentedMap({"name": one.name}) for one in households]
    elif isinstance(written, dict):
        for name, said in list(written.items()):
            if not isinstance(said, dict):
                written[name] = CommentedMap({} if said is None else {"basket": said})
        return list(written.values())
    else:
        for place, one in enumerate(written):
            if not isinstance(one, dict):
                written[place] = CommentedMap({"name": one})
    return list(data[key])


def _leave_bare(data: Any) -> None:
    """Leave a name alone a name alone, where there is nothing to say of it."""
    rows = data[said_key("list", data, "households")]
    if isinstance(rows, dict):
        for name in [name for name, row in rows.items() if not row]:
            rows[name] = None


def _carry_on(
    row: Any, household: Household, year: int, now: tuple[str, ...], season: Season
) -> None:
    """Write into a household's row what it has had and said, and make its children older."""
    had = {number: list(slugs) for number, slugs in household.had.items()}
    if now:
        had[year] = list(now)
        _put(row, "had", dict(sorted(had.items(), reverse=True)))
    words = [line for line in season.of_kind("liked", "disliked") if line.name == household.name]
    if words:
        said = {number: list(lines) for number, lines in household.said.items()}
        said[year] = [_word(line) for line in words]
        _put(row, "said", dict(sorted(said.items(), reverse=True)))
        _learn(row, household, words)
    children: list[Any] = [_a_year_on(months) for months in household.children]
    if household.pregnant:
        _put(row, "pregnant", False)
        key = said_key("household", row, "avoid")
        if key in row and needs_said(row[key], several(row[key])).get("pregnant"):
            _put(row, key, list(household.avoid))  # "pregnant, no nuts" is no nuts now
        if household.pregnant is True:
            children.append("6 months")
    if children:
        _put(row, "children", children)


def _learn(row: Any, household: Household, words: list[LogLine]) -> None:
    """Put what they liked among their likes, what they did not among what they never get again."""
    last = {slug: line.kind for line in words for slug in line.of}
    for kind, key, had in (
        ("liked", "likes", household.likes),
        ("disliked", "never", household.never),
    ):
        new = [slug for slug, said in last.items() if said == kind and slug not in had]
        if new:
            written = row.get(said_key("household", row, key)) or []
            own = written if isinstance(written, list) else list(had)
            _put(row, key, [*own, *new])


def _word(line: LogLine) -> str:
    """Return their word as a line: "liked quince-chutney: gone in a day"."""
    said = f"{'liked' if line.kind == 'liked' else 'did not like'} {', '.join(line.of)}"
    return f"{said}: {line.words}" if line.words else said


def _put(row: Any, key: str, value: Any) -> None:
    name = said_key("household", row, key)
    row[name] = _in_one_line(value)


def _in_one_line(value: Any) -> Any:
    """Return a list, or what was had by years, as it stands on one line."""
    if not isinstance(value, dict | list):
        return value
    new = CommentedMap(value) if isinstance(value, dict) else CommentedSeq(value)
    new.fa.set_flow_style()
    return new


def _put_after(data: Any, before: str, key: str, value: Any) -> None:
    if key in data:
        data[key] = value
    else:
        data.insert(list(data).index(before) + 1, key, value)


def _next_title(title: str, year: int) -> str:
    return title.replace(str(year), str(year + 1)) if str(year) in title else f"{title} {year + 1}"


def _a_year_on(months: int) -> int | str:
    older = months + 12
    return older // 12 if older % 12 == 0 else f"{older} months"
