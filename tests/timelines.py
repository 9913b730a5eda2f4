"""The timelines that Python and the browser are asked about, and what is asked of both.

Those of every demo recipe and of a few odd ones, on days that trip arithmetic up and on days of
chance that hang on one number. Answers stand nowhere: both are asked live, and the dates that
were counted by hand are in core/when/test_timeline.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from stillroom.core.reading.loading import load_recipes
from stillroom.core.when.season import plan_in_season, season_of_start
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.timeline_words import timeline_document
from timed import TimedRecipe, timed

ROOT = Path(__file__).resolve().parents[1]
# leap days, month ends, year ends, a century that is no leap year, plain days
STARTS = ("2028-02-29", "2027-01-31", "2027-08-31", "2027-12-31", "2099-12-30", "2027-02-01")
GIVING = ("2026-12-19", "2027-12-18", "2028-02-29", "2027-06-24", "2028-12-31", "2100-03-01")
TODAY = "2026-11-25"
FIRST = date(2026, 11, 1)
ODD: dict[str, tuple[list[tuple[str, str]], str | None]] = {
    "over-two-days": (
        [("prepare", "1 hour over 2 days"), ("rest", "overnight"), ("fill", "")],
        "6 months",
    ),
    "a-starter": (
        [
            ("mix", "10 minutes"),
            ("feed", "twice a day for 7 days"),
            ("usable from", "1 week"),
            ("best from", "2 weeks"),
        ],
        "10 days",
    ),
    "monthly": (
        [
            ("prepare", ""),
            ("turn", "every month for 6 months"),
            ("strain", ""),
            ("rest", "2-4 weeks"),
            ("bottle", ""),
            ("best from", "3 months after bottling"),
        ],
        "2 years",
    ),
    "one-window": (
        [
            ("prepare", ""),
            ("ferment", "while it bubbles, about 3 weeks"),
            ("burp", "every day while it bubbles, about 3 weeks"),
            ("taste", "once after 5 weeks"),
            ("bottle", ""),
            ("usable from", "2-3 months"),
        ],
        None,
    ),
    "wrapped-late": (
        [
            ("bake", "20 minutes"),
            ("cool", "2 hours"),
            ("wrap", "15 minutes the day before giving"),
            ("label", "5 minutes, 3 days before giving"),
        ],
        "3 weeks",
    ),
    "end-of-months": (
        [
            ("prepare", ""),
            ("shake", "every week until the end of the second month"),
            ("usable from", "the end of the second month"),
            ("best from", "a year and a half"),
            ("bottle", ""),
        ],
        "1 year",
    ),
    "long-days": ([("boil", "10 hours"), ("rest", "30 hours"), ("finish", "3 hours")], "1 month"),
    "soon-stale": ([("bake", ""), ("best from", "2 months")], "3 weeks"),
}


@cache
def timelines() -> dict[str, TimedRecipe]:
    """Return every timeline by its name."""
    found = {}
    for one in load_recipes(sorted((ROOT / "recipes").glob("*.md")), ROOT, "metric", None):
        pairs = [(stage.word, stage.text) for stage in one.stages]
        keeps = str(one.keeps.unopened) if one.keeps.unopened else None
        found[one.slug] = timed(*pairs, keeps=keeps, slug=one.slug, season=one.season)
    for slug, (lines, keeps) in ODD.items():
        found[slug] = timed(*lines, keeps=keeps, slug=slug)
    return found


def questions(by_chance: int) -> Iterator[dict[str, str | None]]:
    """Yield what is asked: of each timeline the days that trip arithmetic up, then by chance."""
    for slug in timelines():
        for day in STARTS:
            yield {"recipe": slug, "start": day, "give": None, "today": None}
        for day in GIVING:
            yield {"recipe": slug, "start": None, "give": day, "today": TODAY}
    chance = Random(2026)
    for _ in range(by_chance):
        today = FIRST + timedelta(chance.randrange(800))
        day = (today + timedelta(chance.randrange(-40, 700))).isoformat()
        asked: dict[str, str | None] = {"recipe": chance.choice(list(timelines()))}
        asked |= {"start": None, "give": None, chance.choice(("start", "give")): day}
        yield asked | {"today": chance.choice((today.isoformat(), TODAY))}


def answer(asked: dict[str, str | None]) -> dict[str, Any]:
    """Return what Python says to a question, in the shape in which the browser says it."""
    recipe = timelines()[asked["recipe"] or ""]
    now = date.fromisoformat(asked["today"]) if asked["today"] else None
    if asked["start"]:
        plan = plan_forward(recipe, date.fromisoformat(asked["start"]), None, now)
        season = season_of_start(recipe.season, plan.start)
    else:
        giving = date.fromisoformat(asked["give"] or "")
        plan, season = plan_in_season(recipe, recipe.season, giving, now)
    days = [(day - plan.start).days for day in plan.tending]
    return timeline_document(plan, season) | {"tending": days}
