"""Mistakes in mkdocs.yml are told in plain words, all in one run, and never as a traceback."""

from __future__ import annotations

from typing import Any

import pytest

from stillroom.core.book import read_settings
from stillroom.core.problems import ProblemsFound


def told(written: dict[str, Any]) -> list[str]:
    with pytest.raises(ProblemsFound) as found:
        read_settings(written)
    return [str(problem) for problem in found.value.problems]


def one_day(rule: object) -> dict[str, Any]:
    return {"giving_days": [{"name": "Christmas", "day": rule}]}


# written -> the message after 'mkdocs.yml:1: '
MISTAKES: list[tuple[dict[str, Any], str]] = [
    ({"countri": "GB"}, '"countri" is not a setting of the book. Did you mean "country"?'),
    (
        {"country": "Britain"},
        'The setting "country" is not right: "Britain". Write its two capitals: "GB".',
    ),
    (
        {"altitude_m": "high"},
        'The setting "altitude_m" is not right: "high". Write whole metres from -430 to 6000.',
    ),
    (
        {"units": "cups"},
        'The setting "units" is not right: "cups". Write "metric", "us" or "imperial".',
    ),
    (
        {"giving_days": ["Midsummer"]},
        'The setting "giving_days" is not right: "Midsummer". '
        'Write each as "- {name: Christmas, day: 24 December}".',
    ),
    (
        one_day("the Saturdy before Christmas"),
        'The giving day "Christmas" is not right: "the Saturdy before Christmas" is not a day. '
        'Write a date ("24 June", "2027-12-18") or e.g. "the Saturday before Christmas".',
    ),
    (
        one_day("2027-12-18"),
        'The giving day "Christmas" is not right: 2027-12-18 comes only once. '
        'Write it without its year, as in "18 December".',
    ),
]


@pytest.mark.parametrize(("written", "message"), MISTAKES, ids=lambda row: str(row)[:30])
def test_a_mistake_is_told_with_its_mend(written: dict[str, Any], message: str) -> None:
    assert told(written) == [f"mkdocs.yml:1: {message}"]


def test_all_mistakes_come_in_one_run() -> None:
    assert len(told({"country": "Britain", "units": "cups", "currency": "pounds"})) == 3


@pytest.mark.parametrize("rule", ["24 June", "29 February", "the Saturday before Christmas"])
def test_a_day_that_comes_round_is_taken(rule: str) -> None:
    assert read_settings(one_day(rule)).giving_days[0].day == rule
