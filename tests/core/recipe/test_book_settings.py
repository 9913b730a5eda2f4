"""Mistakes in mkdocs.yml are told in plain words, all in one run, and never as a traceback."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from stillroom.core.book import open_book, read_settings
from stillroom.core.words.problems import ProblemsFound


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


FILE = """site_name: Our book
theme:
  name: material
  font: false
plugins:
  - search
  - stillroom:
      country: GB
      units: metric
      giving_days:
        - {name: Christmas, day: 24 December}
"""
# what is written for what -> the line and words of the one message
AT_ITS_LINE: list[tuple[str, str, int, str]] = [
    ("country: GB", "country: Norway", 8, 'Write "NO".'),
    ("country: GB", "countri: GB", 8, 'Did you mean "country"?'),
    ("units: metric", "units: cups", 9, 'Write "metric", "us" or "imperial".'),
    ("24 December", "the last turkey", 11, "is not a day"),
    ("units: metric", "altitude: 300", 9, 'Did you mean "altitude_m"?'),
    ("font: false", "font: Lora", 4, "another host"),
    ("font: false", "font: {text: Lora}", 4, "another host"),
    ("font: false", "logo: https://pics.example/a.png", 4, "another host"),
    ("plugins:", "extra_css: [own.css, https://fonts.example/x.css]\nplugins:", 5, "another host"),
    ("plugins:", "extra_css:\n  - own.css\n  - //x.example/x.css\nplugins:", 7, "another host"),
    ("plugins:", "extra_javascript:\n  - path: http://x.example/x.js\nplugins:", 6, "other"),
    ("site_name: Our book", "site_name:", 1, "The book has no name."),
    ("name: material", "name: mkdocs", 3, 'Not for "mkdocs".'),
]


@pytest.mark.parametrize(("old", "new", "line", "words"), AT_ITS_LINE)
def test_a_wrong_setting_is_told_at_its_own_line(
    tmp_path: Path, old: str, new: str, line: int, words: str
) -> None:
    path = tmp_path / "mkdocs.yml"
    path.write_text(FILE.replace(old, new), encoding="utf-8")
    with pytest.raises(ProblemsFound) as found:
        open_book(path)
    [problem] = found.value.problems
    assert problem.line == line
    assert words in str(problem)


@pytest.mark.parametrize("code", ["NO", '"NO"', "no", "GB", "US"])
def test_a_country_is_its_two_letters(tmp_path: Path, code: str) -> None:
    path = tmp_path / "mkdocs.yml"
    path.write_text(FILE.replace("country: GB", f"country: {code}"), encoding="utf-8")
    if code == "no":
        with pytest.raises(ProblemsFound, match='Write "NO"'):
            open_book(path)
    else:
        assert open_book(path).settings.country == code.strip('"')


def test_files_of_the_book_itself_may_be_named(tmp_path: Path) -> None:
    path = tmp_path / "mkdocs.yml"
    own = "extra_css: [css/own.css]\nextra_javascript:\n  - path: own.js\nplugins:"
    path.write_text(FILE.replace("plugins:", own), encoding="utf-8")
    assert open_book(path).settings.country == "GB"
