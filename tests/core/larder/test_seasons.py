"""The seasons of fresh foods: every figure has a food and a source, and what is not fresh has none.

Figures: seasons.yml, restated calendars. The rows below were written from other pages: the Irish
Examiner (Seville oranges, December to February), Verbraucherzentrale NRW in the General-Anzeiger
(bilberries, raspberries, currants, mirabelles in July and August), ontarioberries.com (strawberries
from June), abbeyrentals.co.uk after BBC Good Food (elderberries in September and October).
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.seasons import months_of, season_of_food
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.data_files import read_data

KNOWN = read_data("seasons.yml", "larder")


def months(words: str, country: str) -> tuple[int, ...] | None:
    food = read_food(words).food
    assert food is not None, words
    season = season_of_food(food, words, country)
    return None if season is None else season.months


def test_every_row_is_a_food_and_every_figure_has_its_source():
    names = [*KNOWN["seasons"], *(name for row in KNOWN["all_year"] for name in row)]
    assert [n for n in names if (food := find_staple(n)) is None or food.name != n] == []
    assert len(names) == len(set(names))
    for name, row in KNOWN["seasons"].items():
        own = row.get("sources", {})
        for place, span in row.items():
            if place not in ("sources", "called"):
                assert own.get(place) or KNOWN["sources"][place], name
                assert months_of(span), name
        assert set(own) <= set(row), name


@pytest.mark.parametrize(
    ("words", "country", "within", "never"),
    [
        ("Seville oranges", "IE", {1, 2}, {6, 9, 10}),
        ("Seville oranges", "GB", {1, 2}, {3, 9}),
        ("sloes", "GB", {10, 11}, {3, 6}),
        # pages jaunes, Faire du vin de noix: from 24 June in the south to 20 July in the north
        ("green walnuts", "FR", {6, 7}, {4, 10}),
        ("raspberries", "DE", {7, 8}, {11, 12, 1}),
        ("Mirabellen", "DE", {7, 8}, {11, 12}),
        ("redcurrants", "DE", {7, 8}, {10}),
        ("strawberries", "CA", {6, 7}, {1, 2}),
        ("elderberries", "GB", {9, 10}, {4}),
        ("sloes", "IE", {10}, {3}),
        ("Zwetschgen", "AT", {8, 9}, {2}),
        ("peaches", "AU", {12, 1, 2}, {6, 7}),
        ("feijoa", "NZ", {4, 5}, {10}),
        ("white currants", "GB", {7}, {12}),
    ],
)
def test_what_is_fresh_has_its_months(words, country, within, never):
    found = set(months(words, country) or ())
    assert within <= found
    assert not never & found


@pytest.mark.parametrize(
    "words",
    [
        *("frozen raspberries", "dried apricots", "tinned peaches", "raisins"),
        *("lemons", "apples", "oranges", "bananas", "onions", "garlic", "glacé cherries"),
        *("strawberry jam", "sloe gin", "dried elderflowers", "apple juice", "flour", "chillies"),
    ],
)
def test_what_is_to_be_had_at_any_time_has_none(words):
    assert months(words, "GB") is None


def test_what_no_calendar_names_is_not_known():
    assert months("rose petals", "GB") == ()
    assert months("sloes", "US") == ()
    assert months("strawberries", "SE") == ()
