"""Closing a year: next year's giving list, seeded from this one and its batch log.

The earlier file is not touched. Who had what is written down, ages are a year on, what is over
goes to the stock, and the log begins empty.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta
from typing import Any

import yaml

from stillroom.core.words.frontmatter import read_yaml
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.model import GivingList, Household
from stillroom.giving.reading import ReadList

_WEEKDAYS = 7


def close_year(
    read: ReadList,
    text: str,
    given: Mapping[tuple[str, int], tuple[str, ...]],
    giving_day: date | None = None,
) -> str:
    """Return next year's list as YAML; `given` is the plan of the pack that went out.

    `giving_day` is the new day: without it, the same weekday of the same week, a year on.
    Raises ProblemsFound when the plan names a household that the list does not.
    """
    giving = read.giving
    data: dict[str, Any] = dict(read_yaml(text, read.file).data)
    names = {household.name for household in giving.households}
    if strangers := sorted({name for name, _ in given} - names):
        what = f"The pack gives to {', '.join(strangers)}, who are not on this list."
        raise ProblemsFound([Problem(read.file, 1, what, "Close the list that the pack is of.")])
    year = giving.giving_day.year
    data["giving list"] = _next_title(giving.giving_list, year)
    data["giving day"] = (
        giving_day or giving.giving_day + timedelta(days=52 * _WEEKDAYS)
    ).isoformat()
    for row, household in zip(data["households"], giving.households, strict=True):
        keys = {key for (name, _), own in given.items() if name == household.name for key in own}
        _carry_on(row, household, year, {key.split(" in ")[0] for key in keys})
    data["stock"] = _stock(data.get("stock") or {}, giving)
    data["batches"] = []
    head = (
        f"# Seeded from the list of {year} when it was closed. Look over every household: ages\n"
        "# are a year on, and a child expected then is put down as six months old. Private.\n"
    )
    return head + yaml.safe_dump(data, sort_keys=False, allow_unicode=True, width=100)


def _carry_on(row: dict[str, Any], household: Household, year: int, now: set[str]) -> None:
    """Write into a household's row what it has had, and make its children a year older."""
    had = {int(number): list(slugs) for number, slugs in household.had.items()}
    if now:
        had[year] = sorted(now)
    if had:
        row["had"] = dict(sorted(had.items(), reverse=True))
    if household.children:
        row["children"] = [_a_year_on(months) for months in household.children]
    if household.pregnant:
        row["pregnant"] = False
        row["children"] = [*row.get("children", []), "6 months"]


def _next_title(title: str, year: int) -> str:
    return title.replace(str(year), str(year + 1)) if str(year) in title else f"{title}, next"


def _a_year_on(months: int) -> int | str:
    older = months + 12
    return older // 12 if older % 12 == 0 else f"{older} months"


def _stock(stock: dict[str, Any], giving: GivingList) -> dict[str, Any]:
    """Return the stock with what the log says is over; containers filled are used up."""
    made = [
        {"recipe": batch.recipe, "number": left, "made on": batch.made_on.isoformat()}
        | ({"container": batch.container} if batch.container else {})
        for batch in giving.batches
        if batch.made_on and batch.number and (left := batch.number - batch.given) > 0
    ]
    known = {(row["recipe"], row["made on"]) for row in made}
    kept = [
        row for row in stock.get("made") or [] if (row["recipe"], str(row["made on"])) not in known
    ]
    return {**stock, "made": [*kept, *made]}
