"""A ferment of which nobody says how long it works has no dates, on page, paper or in any plan.

lighthacker.org, Standard mead: "once it is done". It stood with its kind's three months, called
not its own, in the table of dates, in the calendar, in the year and in every plan.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from click.testing import CliRunner

from giving.lists import demo_book, demo_recipes, read_dict, small_list
from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.reading.loading import read_recipe
from stillroom.giving.offering import make_offering
from stillroom.giving.plan_model import Brew
from stillroom.giving.shelf import read_shelf

BUILDER = Path(__file__).parents[2] / "builder"
MEAD = """---
title: {title}
kind: mead
makes: 4 l
ingredients:
  - 1.4 kg honey
  - 4 l water
  - 10 g wine yeast
---

## Method

1. Warm the honey with the water, cool, and add the yeast.
2. {works}
3. Bottle.
"""
UNTIMED = MEAD.format(title="Till-clear mead", works="Ferment under an airlock until it is clear.")
TIMED = MEAD.format(title="Counted mead", works="Ferment under an airlock for 3 months.")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("not-dated") / "book"
    begin_book(folder, Answers(title="Heron Ferry"))
    (folder / "recipes" / "till-clear-mead.md").write_text(UNTIMED, encoding="utf-8")
    (folder / "recipes" / "counted-mead.md").write_text(TIMED, encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-m", "stillroom", "build"],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(BUILDER), "STILLROOM_PROCESSES": "1"},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return folder


def page(book: Path, name: str) -> BeautifulSoup:
    text = (book / "site" / name / "index.html").read_text(encoding="utf-8")
    return BeautifulSoup(text, "html.parser")


def test_its_page_says_that_it_is_not_known(book: Path) -> None:
    untimed = page(book, "r/till-clear-mead")
    words = " ".join(untimed.main.get_text(" ").split())
    assert "Usable from not known" in words
    assert "3 months" not in words
    assert untimed.find("stillroom-when") is None
    assert not untimed.select("a[href$='.ics']")
    timed = page(book, "r/counted-mead")
    assert timed.find("stillroom-when") is not None
    assert timed.select("a[href$='.ics']")


def test_only_what_has_dates_has_a_calendar(book: Path) -> None:
    made = {path.stem for path in (book / "site").rglob("*.ics")}
    assert "counted-mead" in made
    assert "till-clear-mead" not in made


@pytest.mark.parametrize("name", ["year", ""])
def test_no_list_of_what_to_begin_when_holds_it(book: Path, name: str) -> None:
    links = {one["href"].rstrip("/").rsplit("/")[-1] for one in page(book, name).select("a[href]")}
    assert "counted-mead" in links
    assert "till-clear-mead" not in links


def test_what_lists_all_holds_it_without_a_day(book: Path) -> None:
    leaves = page(book, "browse").select("[data-best]")
    days = {one.a["href"].rstrip("/").rsplit("/")[-1]: one["data-best"] for one in leaves}
    assert days["till-clear-mead"] == ""
    assert days["counted-mead"]


def test_the_command_says_it_and_writes_no_calendar(book: Path) -> None:
    file = book / "recipes" / "till-clear-mead.md"
    calendar = book.parent / "untimed.ics"
    words = ["dates", str(file), "--give", "2027-12-18"]
    told = CliRunner().invoke(main, [*words, "--calendar", str(calendar)])
    assert told.exit_code == 0
    assert "no calendar was written" in told.output.lower()
    assert "2027" not in told.output
    assert not calendar.exists()
    assert list(json.loads(CliRunner().invoke(main, [*words, "--json"]).output)) == ["not_known"]
    counted = CliRunner().invoke(main, ["dates", str(file.with_stem("counted-mead")), *words[2:]])
    assert "18 December 2027" in counted.output


def brew_of_mead(text: str) -> Brew:
    mead = read_recipe(text, "heather-mead.md", "heather-mead")
    recipes = tuple(mead if one.slug == mead.slug else one for one in demo_recipes())
    read = read_dict(small_list())
    settings = demo_book().settings
    offering = make_offering(read, recipes, date(2027, 2, 1), settings=settings)
    return next(brew for brew in offering.problem.brews if brew.recipe == mead.slug)


def test_no_plan_begins_it() -> None:
    brew = brew_of_mead(UNTIMED)
    assert brew.choices == ()
    assert "ready is not known" in brew.too_late
    counted = brew_of_mead(TIMED)
    assert counted.choices
    assert not counted.too_late


@pytest.mark.parametrize(
    ("text", "more", "counts"),
    [
        (UNTIMED, {}, False),
        (UNTIMED, {"made on": "2027-05-20"}, True),
        (TIMED, {}, True),
    ],
)
def test_a_batch_begun_is_ready_when_it_is_filled_and_not_by_its_kind(
    text: str, more: dict[str, str], counts: bool
) -> None:
    mead = read_recipe(text, "heather-mead.md", "heather-mead")
    recipes = {one.slug: mead if one.slug == mead.slug else one for one in demo_recipes()}
    begun = {"recipe": mead.slug, "started": "2027-02-01", **more}
    read = read_dict(small_list(batches=[begun]))
    makes = {make.recipe: make for make in read.giving.makes}
    shelf = read_shelf(read.giving, makes, recipes, dict.fromkeys(makes, Fraction(1)))
    assert any(thing.recipe == mead.slug for thing in shelf.things) is counts
    assert any("when it is ready is not known" in note for note in shelf.notes) is not counts
