"""What to tell a maker about a plan: start by, too late for best, do not open before, stale.

The words are data (said/), shared with the browser. What is not here: the dates.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from stillroom.core.words.day_words import say_day
from stillroom.core.words.said import Said

_say = Said("stillroom.core.when", "verdicts")


@dataclass(frozen=True, slots=True)
class Verdict:
    """A verdict's code, for programs and tests, and its text, for people."""

    code: str
    text: str


@dataclass(frozen=True, slots=True)
class PlanFacts:
    """The dates a verdict is given on.

    `way` is "forward", "back" or "batch"; `first_out` and `natural_out` are the first days this
    start could go out usable, and at its best; `first_usable` is when it is usable and finished.
    """

    way: str
    asked: bool
    today: date | None
    start: date
    usable: date
    best: date
    making_done: date
    hands_done: date
    give: date
    first_usable: date
    first_out: date
    natural_out: date
    keep_until: date | None
    latest_start_best: date
    latest_start_usable: date
    earliest_start_fresh: date | None


def give_verdict(facts: PlanFacts) -> Verdict:
    """Return the verdict on a plan."""
    code = _code(facts)
    dates = {
        "start": facts.start,
        "usable": facts.first_usable if code == "late_for_best" else facts.usable,
        "best": facts.best,
        "give": facts.give,
        "ready": facts.first_out,
        "keep": facts.keep_until,
        "last_best": facts.latest_start_best,
        "last_usable": facts.latest_start_usable,
        "fresh": facts.earliest_start_fresh,
    }
    said = {name: say_day(day) for name, day in dates.items() if day}
    return Verdict(code, _say(_phrase(code, facts), **said))


def _code(facts: PlanFacts) -> str:
    if not facts.asked:
        return "ready"
    if facts.today and facts.give < facts.today:
        return "passed"
    if facts.keep_until and facts.keep_until < facts.give:
        return "past_keep" if facts.way == "batch" else "stale"
    if facts.give < facts.first_out:
        # what is still being made or bottled cannot be wrapped; what only has to age can
        ages = facts.making_done <= facts.give < facts.usable
        return "late_for_giving" if ages else "cannot"
    if facts.give < facts.natural_out:
        return "late_for_best"
    if facts.way != "back":
        return "in_time"
    return "start_today" if facts.today == facts.latest_start_best else "start_by"


def _phrase(code: str, facts: PlanFacts) -> str:
    """Shorten what would say the same date twice."""
    if code == "ready":
        one = "_one" if facts.usable >= facts.best else ""
        return f"ready{one}{'' if facts.keep_until else '_no_keep'}"
    if code == "late_for_giving" and facts.hands_done > facts.give:
        return "late_for_giving_in_its_jar"
    if code == "late_for_best" and facts.best <= facts.give:
        return "late_to_finish"
    if code in ("start_by", "in_time") and facts.latest_start_best == facts.latest_start_usable:
        return f"{code}_one"
    return code
