"""Write timeline_cases.json anew: `python tests/data/make_timeline_cases.py` (review it as code).

It holds the lines of every demo recipe and of a few odd ones, and what Python's engine says of
each on days that trip arithmetic up. Python and Chromium both read it back.
"""

from __future__ import annotations

import json
import sys
from datetime import date
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent), str(HERE.parent.parent / "builder")]

from stillroom.core.reading.loading import load_recipes  # noqa: E402
from stillroom.core.when.season import plan_in_season, season_of_start  # noqa: E402
from stillroom.core.when.timeline import plan_forward  # noqa: E402
from stillroom.core.when.timeline_data import timeline_data  # noqa: E402
from stillroom.core.when.timeline_words import timeline_document  # noqa: E402
from timed import TimedRecipe, timed  # noqa: E402

# leap days, month ends, year ends, a century that is no leap year, plain days
STARTS = ("2028-02-29", "2027-01-31", "2027-08-31", "2027-12-31", "2099-12-30", "2027-02-01")
GIVING = ("2026-12-19", "2027-12-18", "2028-02-29", "2027-06-24", "2028-12-31", "2100-03-01")
TODAY = "2026-11-25"
ODD = {
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


def case(recipe: TimedRecipe, way: str, day: str, today: str | None) -> dict[str, object]:
    """Return one row: what is asked and what the engine says."""
    now = date.fromisoformat(today) if today else None
    if way == "start":
        plan = plan_forward(recipe, date.fromisoformat(day), None, now)
        season = season_of_start(recipe.season, plan.start)
    else:
        plan, season = plan_in_season(recipe, recipe.season, date.fromisoformat(day), now)
    document = timeline_document(plan, season)
    days = [(day - plan.start).days for day in plan.tending]
    return {"recipe": recipe.slug, way: day, "today": today, "says": document | {"tending": days}}


def main() -> None:
    """Write the table."""
    root = HERE.parent.parent
    recipes, lines = [], {}
    for one in load_recipes(sorted((root / "recipes").glob("*.md")), root, "metric", None):
        pairs = [[stage.word, stage.text] for stage in one.stages]
        keeps = str(one.keeps.unopened) if one.keeps.unopened else None
        lines[one.slug] = {"stages": pairs, "keeps": keeps, "season": list(one.season)}
    for slug, (pairs, keeps) in ODD.items():
        lines[slug] = {"stages": [list(pair) for pair in pairs], "keeps": keeps, "season": []}
    cases, data = [], {}
    for slug, row in lines.items():
        recipe = timed(*row["stages"], keeps=row["keeps"], slug=slug, season=row["season"])
        recipes.append(recipe)
        data[slug] = {k: v for k, v in timeline_data(recipe).items() if k != "phrases"}
        cases += [case(recipe, "start", day, None) for day in STARTS]
        cases += [case(recipe, "give", day, TODAY) for day in GIVING]
    rows = ",\n".join(json.dumps(one, ensure_ascii=False) for one in cases)
    named = ",\n".join(f"{json.dumps(k)}: {json.dumps(v)}" for k, v in lines.items())
    shown = ",\n".join(f"{json.dumps(k)}: {json.dumps(v)}" for k, v in data.items())
    text = f'{{"lines": {{\n{named}\n}},\n"data": {{\n{shown}\n}},\n"cases": [\n{rows}\n]}}\n'
    (HERE / "timeline_cases.json").write_text(text, encoding="utf-8")
    print(f"{len(cases)} cases over {len(recipes)} timelines")


if __name__ == "__main__":
    main()
