"""The wall year as it hangs: read from its PDF, by where and how large every letter stands."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from typing import Any, NamedTuple

import pytest

from letters import open_letters
from stillroom.core.book import Book
from stillroom.core.paper.sheets import WALL_PAPERS
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.year import Named, Occasion, Year, plan_year, still_before
from stillroom.core.words.day_words import MONTH_NAMES
from stillroom.core.words.problems import Unreadable
from stillroom.printing.wall_year import JOIN_MM, print_year
from stillroom.publish.library import Library
from stillroom.publish.year_page import make_year

from .conftest import MM, open_pdf

MONTH_PT = 24
GIVEN = [Occasion("Christmas", date(year, 12, 18)) for year in (2026, 2027, 2028)]
BEGUN = date(2026, 11, 28)
ENTRY = re.compile(
    r"^(?P<from>\d+)(?:–(?P<to>\d+))? (?P<task>begin|tend|bottle|finish|give)\b(?P<rest>.*)"
)


class Line(NamedTuple):
    """A line of a column: its words and its size."""

    words: str
    size: float


def year_of(recipes: tuple[Recipe, ...], times: int = 1) -> Year:
    named = [
        Named(f"{one.slug}-{turn}", f"{one.title}{' again' * turn}", one.kind.name, one, one.season)
        for one in recipes
        for turn in range(times)
    ]
    return plan_year(named, GIVEN, BEGUN, not_before=BEGUN)


def rules_of(page: Any) -> list[Any]:
    """Return the lines to write on, which begin where their column does."""
    flat = [one for one in page.lines if abs(one["top"] - one["bottom"]) < 0.1]
    head = min(one["top"] for one in flat)
    return [one for one in flat if one["top"] > head + 1]


def columns_of(made: bytes) -> Iterator[list[Line]]:
    """Return the lines of each of the four columns, left to right, below the head."""
    with open_pdf(made) as pdf:
        for page in pdf.pages:
            top = min(c["top"] for c in page.chars if round(c["size"], 1) == MONTH_PT) - 2
            for left, right in sorted({(one["x0"], one["x1"]) for one in rules_of(page)}):
                part = page.crop((left - 1, top, right + 1, page.height - 10 * MM))
                yield [
                    Line(str(row["text"]), max(round(c["size"], 1) for c in row["chars"]))
                    for row in part.extract_text_lines(x_tolerance_ratio=0.2)
                ]


def entries_of(made: bytes) -> dict[str, list[tuple[int, int, str]]]:
    """Return for each month, by the heading it stands under, its days and work in order."""
    found: dict[str, list[tuple[int, int, str]]] = {}
    month, beyond = "", False
    for column in columns_of(made):
        for line in column:
            if line.size == MONTH_PT:
                month, beyond = line.words, line.words not in names()
                found[month] = []
            elif beyond and re.fullmatch(rf"({'|'.join(MONTH_NAMES)}) \d{{4}}", line.words):
                month = f"then {line.words}"
                found[month] = []
            elif entry := ENTRY.match(line.words):
                first = int(entry["from"])
                found[month].append((first, int(entry["to"] or first), entry["task"]))
    return found


def names() -> set[str]:
    return {*MONTH_NAMES, *(f"{name} {year}" for name in MONTH_NAMES for year in (2026, 2027))}


@pytest.fixture(scope="module", params=list(WALL_PAPERS))
def hung(request: Any, recipes: tuple[Recipe, ...]) -> tuple[str, bytes]:
    name = str(request.param)
    return name, print_year(year_of(recipes), "A book", paper=WALL_PAPERS[name])


def test_it_is_one_large_sheet_or_two_small_ones_that_join(hung: tuple[str, bytes]) -> None:
    name, made = hung
    paper = WALL_PAPERS[name]
    with open_pdf(made) as pdf:
        sizes = [(float(page.width) / MM, float(page.height) / MM) for page in pdf.pages]
        upright = (float(paper.width_mm), float(paper.height_mm))
        if name in ("a3", "tabloid"):
            assert sizes == [pytest.approx(upright[::-1], abs=0.2)]
            return
        assert sizes == [pytest.approx(upright, abs=0.2)] * 2
        first, second = pdf.pages
        at = (paper.width_mm - JOIN_MM) * MM
        upright_lines = [one for one in first.lines if abs(one["x0"] - one["x1"]) < 0.1]
        assert {round(one["x0"] / MM, 1) for one in upright_lines} == {float(round(at / MM, 1))}
        # no word stands where the other sheet is laid, and the rules of both heads meet in line
        assert max(char["x1"] for char in first.chars) < at
        assert min(char["x0"] for char in second.chars) > 5 * MM
        assert min(one["top"] for one in first.lines if one not in upright_lines) == pytest.approx(
            min(one["top"] for one in second.lines), abs=0.3
        )


def test_every_month_is_named_in_order_large_enough_to_read_across_a_room(
    hung: tuple[str, bytes],
) -> None:
    heads = [
        line.words for column in columns_of(hung[1]) for line in column if line.size == MONTH_PT
    ]
    turned = [*MONTH_NAMES[10:], *MONTH_NAMES[:10]]
    years = {"November": " 2026", "January": " 2027"}
    assert heads == [*(f"{name}{years.get(name, '')}" for name in turned), "After that"]
    with open_letters(hung[1]) as pdf:
        least = min(char["size"] for page in pdf.pages for char in page.chars)
    assert least >= 10


def test_work_stands_in_order_of_days_and_other_years_stand_apart(
    hung: tuple[str, bytes], recipes: tuple[Recipe, ...]
) -> None:
    found = entries_of(hung[1])
    for month, days in found.items():
        assert [day[:2] for day in days] == sorted(day[:2] for day in days), month
    year = year_of(recipes)
    wanted: dict[str, set[tuple[int, int, str]]] = {}
    says = {"start": "begin", "tend": "tend", "bottle": "bottle", "give": "give"}
    # a bauble goes into no bottle
    drinks = {f"{one.slug}-0" for one in recipes if one.kind.name in ("infusion", "ferment")}
    for part in year.months:
        for task in part.tasks:
            if task.task in says:
                said_so = says[task.task]
                if said_so == "bottle" and task.slug not in drinks:
                    said_so = "finish"
                of = f"{task.first:%B}"
                outside = not year.first <= task.first < year.end
                key = f"then {of} {task.first.year}" if outside else of
                wanted.setdefault(key, set()).add((task.first.day, task.last.day, said_so))
    said = {(m if m.startswith("then") else m.split()[0]): set(days) for m, days in found.items()}
    assert {month: days for month, days in said.items() if days} == wanted
    assert any(month.startswith("then") for month in wanted)


def test_work_for_a_later_giving_day_says_so_and_no_other_does(hung: tuple[str, bytes]) -> None:
    """The next Christmas is that of 2026: what is begun before it for another has its year.

    Counted by hand from the calendar: ratafia is shaken from 29 November to January for 2027, mead
    is begun on 31 October 2027 for 2028 and bottled in December; all else is for the next one.
    """
    marked: dict[str, list[tuple[str, str]]] = {}
    month = ""
    for column in columns_of(hung[1]):
        for line in column:
            if line.size == MONTH_PT or re.fullmatch(
                rf"({'|'.join(MONTH_NAMES)}) \d{{4}}", line.words
            ):
                month = line.words
            if found := re.search(r"(?:^|\W)([A-Z][a-z]+ [a-z]+) for (\d{4})$", line.words):
                marked.setdefault(month, []).append((found[1], found[2]))
    assert marked == {
        "November 2026": [("Quince ratafia", "2027")],
        "December": [("Quince ratafia", "2027")],
        "October": [("Heather mead", "2028")],
        "November 2027": [("Heather mead", "2028")],
        "December 2027": [("Heather mead", "2028")],
    }
    with open_letters(hung[1]) as pdf:
        said = " ".join(page.extract_text() for page in pdf.pages)
    assert len(re.findall(r"for 20\d\d", said)) == 5


def test_each_thing_has_a_box_to_tick_and_each_month_a_line_to_write_on(
    hung: tuple[str, bytes], recipes: tuple[Recipe, ...]
) -> None:
    year = year_of(recipes)
    things = {
        (task.first, task.last, task.task, task.title)
        for month in year.months
        for task in month.tasks
        if task.task != "label"
    }
    with open_pdf(hung[1]) as pdf:
        boxes = [r for page in pdf.pages for r in page.rects if 5 < r["width"] < 14]
        rules = [line for page in pdf.pages for line in rules_of(page)]
    assert len(boxes) == len(things)
    assert all(box["width"] == pytest.approx(box["height"], abs=0.1) for box in boxes)
    assert len(rules) >= 12


def test_a_long_book_goes_on_it_smaller_or_is_refused_by_its_fullest_month(
    recipes: tuple[Recipe, ...],
) -> None:
    made = print_year(year_of(recipes, 2), "A book", paper=WALL_PAPERS["a3"])
    with open_letters(made) as pdf:
        assert len(pdf.pages) == 1
        assert min(char["size"] for char in pdf.pages[0].chars) >= 10
    with pytest.raises(Unreadable, match="December is the fullest month"):
        print_year(year_of(recipes, 9), "A book", paper=WALL_PAPERS["a4"])


# Today, by hand from the recipes' own seasons, ages and keeping -> what is no longer begun at its
# best of fresh produce for Christmas 2026 and can be made for it all the same.
STILL = {
    # rosemary May to September, brambles August and September; a sugar draws a month, two weeks do
    date(2026, 11, 28): {
        "by 4 December": "Lavender sugar not at its best Vanilla sugar not at its best",
        "by 5 December": "Bramble jelly of stored produce Rosemary salt of stored produce",
    },
    # oranges are of January; quinces come too late; an extract is at its best after eight months
    date(2026, 7, 1): {
        "by 19 September": "Quince ratafia not at its best, of stored produce",
        "by 18 October": "Bitter-orange spirit not at its best, of stored produce "
        "Double vanilla extract not at its best",
    },
}


@pytest.mark.parametrize("today", list(STILL), ids=str)
def test_what_the_page_says_can_still_be_made_is_on_the_wall(
    book: Book, recipes: tuple[Recipe, ...], today: date
) -> None:
    """In its month where that is for the next Christmas, else apart, and nothing else is."""
    named = [Named(one.slug, one.title, one.kind.name, one, one.season) for one in recipes]
    given = [Occasion("Christmas", date(year, 12, day)) for year, day in ((2026, 19), (2027, 18))]
    year = plan_year(named, given, today, not_before=today)
    still = still_before(named, year, today)
    made = print_year(year, "A book", paper=WALL_PAPERS["a3"], still=still)
    found: dict[str, list[str]] = {}
    given_out: list[str] = []
    head, day = "", ""
    for column in columns_of(made):
        for line in column:
            if line.size == MONTH_PT:
                head, day = line.words, ""
            elif begun := re.match(r"(by \d+ [A-Z][a-z]+) begin(?P<rest>.*)", line.words):
                day = begun[1]
                found[day] = [begun["rest"].strip()] if begun["rest"].strip() else []
            elif head.startswith("Still for"):
                found[day].append(line.words.strip())
            elif entry := ENTRY.match(line.words):
                day = entry["task"] if entry["from"] == "19" else ""
                given_out += [entry["rest"].strip()] if day == "give" else []
            elif head.startswith("December") and day == "give":
                given_out.append(line.words.strip())
    assert {day: " ".join(titles) for day, titles in found.items()} == STILL[today]
    words = " ".join([*given_out, *(title for titles in found.values() for title in titles)])
    for one in make_year(Library(book, recipes, today), str).still:
        assert (one.title in words) == (one.fits != "late"), one.title
