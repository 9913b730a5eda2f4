"""Drawn timelines: words in strips of their own, everything within the picture, on any date."""

from __future__ import annotations

from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest

from stillroom.core.reading.loading import load_recipes
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import plan_back, plan_forward
from stillroom.publish.timeline_axis import TEXT, text_width
from stillroom.publish.timeline_picture import BAND, LINE, NARROW, WIDE, Picture, draw_timeline

ROOT = Path(__file__).parents[2]
RECIPES = load_recipes(sorted((ROOT / "recipes").glob("*.md")), ROOT, "metric", None)
STARTS = (date(2027, 2, 1), date(2028, 2, 29), date(2027, 12, 31))

Box = tuple[float, float, float, float]


def _word_boxes(picture: Picture) -> list[Box]:
    boxes = []
    for lane in picture.lanes:
        for number, line in enumerate(lane.lines):
            wide, y = text_width(line), lane.y + number * LINE
            left = lane.x if lane.anchor == "start" else lane.x - wide
            boxes.append((left, y - TEXT, left + wide, y + 3))
    for mark in picture.axis:
        for word, drop in ((mark.word, 15), (mark.year, 30)):
            if word:
                wide, y = text_width(word), picture.axis_y + drop
                boxes.append((mark.x - wide / 2, y - TEXT, mark.x + wide / 2, y + 2))
    return boxes


def _meet(one: Box, two: Box) -> bool:
    return one[0] < two[2] and two[0] < one[2] and one[1] < two[3] and two[1] < one[3]


@pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.slug)
@pytest.mark.parametrize("width", [WIDE, NARROW])
def test_words_never_meet_and_nothing_leaves_the_picture(recipe: Recipe, width: float) -> None:
    plans = [plan_forward(recipe, start) for start in STARTS]
    plans.append(plan_back(recipe, date(2026, 12, 19), date(2026, 11, 25)))
    for plan in plans:
        picture = draw_timeline(plan, width)
        boxes = _word_boxes(picture)
        clashes = [(a, b) for i, a in enumerate(boxes) for b in boxes[i + 1 :] if _meet(a, b)]
        assert clashes == []
        assert all(box[0] >= 0 and box[2] <= width and box[3] <= picture.height for box in boxes)
        for lane in picture.lanes:
            for band in lane.bands:
                assert 0 <= band.x <= band.x + band.width <= width
        for above, below in pairwise(picture.lanes):
            assert above.band_y + BAND < below.y - TEXT + 6


def test_a_tick_for_every_day_of_tending() -> None:
    for recipe in RECIPES:
        plan = plan_forward(recipe, date(2027, 2, 1))
        rows = [row for row in plan.stages if row.role == "tend"]
        ticks = [x for lane in draw_timeline(plan).lanes if lane.role == "tend" for x in lane.ticks]
        assert len(ticks) == sum(len(row.dates) for row in rows)


AXES = [
    ("almond-shortbread", "24 h"),
    ("dried-orange-garland", "3 Feb"),
    ("heather-mead", "Mar"),
]


@pytest.mark.parametrize(("slug", "word"), AXES)
def test_the_axis_is_scaled_to_the_making(slug: str, word: str) -> None:
    recipe = next(one for one in RECIPES if one.slug == slug)
    picture = draw_timeline(plan_forward(recipe, date(2027, 2, 1)))
    assert word in [mark.word for mark in picture.axis]
