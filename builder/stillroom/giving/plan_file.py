"""The plan as a pack keeps it: who gets what, what is begun when, what it would cost.

Planning again changes little of it, the next pack says what became of it, the log is ticked off
by it. Leaves out how a plan is made.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from stillroom.core.words.problems import Problem, ProblemsFound

PLAN_FILE = "plan.json"
Before = Mapping[tuple[str, int], tuple[str, ...]]
"""Offer keys by household and which basket of theirs, counted from 1."""


@dataclass(frozen=True)
class KeptBatch:
    """A batch of an earlier plan: so many times a recipe, from one day."""

    recipe: str
    start: date
    count: int


@dataclass(frozen=True)
class KeptPlan:
    """An earlier pack's plan, and the day it was made."""

    gifts: Before
    planned_on: date | None = None
    batches: tuple[KeptBatch, ...] = ()
    paid: str = ""
    log_lines: int = 0


def days_of(kept: KeptPlan) -> dict[str, frozenset[date]]:
    """Return the days on which a plan begins each recipe."""
    days: dict[str, set[date]] = {}
    for batch in kept.batches:
        days.setdefault(batch.recipe, set()).add(batch.start)
    return {recipe: frozenset(own) for recipe, own in days.items()}


def write_plan(title: str, kept: KeptPlan) -> bytes:
    """Return the file of a plan."""
    document: dict[str, Any] = {
        "giving list": title,
        "planned on": kept.planned_on.isoformat() if kept.planned_on else None,
        "log lines": kept.log_lines,
        "paid": kept.paid,
        "baskets": [
            {"household": name, "basket": nth, "gifts": list(keys)}
            for (name, nth), keys in kept.gifts.items()
        ],
        "batches": [
            {"recipe": one.recipe, "start": one.start.isoformat(), "count": one.count}
            for one in kept.batches
        ],
    }
    return (json.dumps(document, indent=1, ensure_ascii=False) + "\n").encode()


def read_plan(folder: Path, giving_list: str) -> KeptPlan | None:
    """Return the plan of an earlier pack of the same list, or None without one."""
    try:
        document = json.loads((folder / PLAN_FILE).read_text(encoding="utf-8"))
        if document["giving list"] != giving_list:
            return None
        planned_on = document.get("planned on")
        return KeptPlan(
            gifts={
                (row["household"], int(row["basket"])): tuple(row["gifts"])
                for row in document["baskets"]
            },
            planned_on=date.fromisoformat(planned_on) if planned_on else None,
            batches=tuple(
                KeptBatch(row["recipe"], date.fromisoformat(row["start"]), int(row["count"]))
                for row in document.get("batches", ())
            ),
            paid=str(document.get("paid", "")),
            log_lines=int(document.get("log lines", 0)),
        )
    except FileNotFoundError:
        return None
    except (ValueError, KeyError, TypeError, AttributeError):
        mend = 'Delete it, or plan with "--afresh".'
        raise ProblemsFound(
            [Problem(str(folder / PLAN_FILE), 1, "The earlier plan cannot be read.", mend)]
        ) from None
