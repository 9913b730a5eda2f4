"""What a household puts into its book, and the book it makes for one other: read from PDFs."""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pypdf
import pytest
from click.testing import CliRunner, Result

from stillroom.cli import main
from stillroom.core.words.problems import Unreadable
from stillroom.printing.book_cover import measure_spine

from .conftest import MM, open_pdf

Run = Callable[..., Result]


@pytest.fixture
def run(own_book: Path, monkeypatch: pytest.MonkeyPatch) -> Run:
    def call(*words: str) -> Result:
        monkeypatch.chdir(own_book)
        done = CliRunner().invoke(main, ["print", *words])
        assert done.exit_code == 0, done.output
        return done

    return call


def figures_of(made: bytes) -> Iterator[str]:
    """Return what every figure of a PDF says to those who do not see it."""

    def walk(node: Any) -> Iterator[str]:
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, list):
            for one in node:
                yield from walk(one)
        elif isinstance(node, dict):
            if node.get("/S") == "/Figure":
                yield str(node.get("/Alt", ""))
            if "/K" in node:
                yield from walk(node["/K"])

    yield from walk(pypdf.PdfReader(io.BytesIO(made)).trailer["/Root"]["/StructTreeRoot"]["/K"])


def test_a_households_words_hand_and_photographs_stand_in_its_book(
    run: Run, tmp_path: Path
) -> None:
    out = tmp_path / "book.pdf"
    done = run("book", "--out", str(out))
    pages = [page.extract_text() for page in pypdf.PdfReader(out).pages]
    assert "For whoever comes up the lane." in pages[2]
    assert "The hut above the landing" in pages[3]
    assert "The quince tree in May" in pages[3]
    said = list(figures_of(out.read_bytes()))
    for words in ("In the giver's hand: With love from the Lane", "The hut above the landing"):
        assert words in said
    assert all(said)
    recipe = next(page for page in pages if page.lstrip().startswith("INFUSIONS\nQuince ratafia")
                  or "Quince ratafia\nGrated" in page)  # fmt: skip
    assert "From Great-aunt Ottilie, October 1987" in recipe
    writers = next(page for page in pages if page.startswith("Who wrote what, and when"))
    assert re.search(r"Great-aunt Ottilie\s+Quince chutney, October 1987 \d+", writers)
    assert "Rosemary salt" not in writers
    # the small photograph is too coarse for a printer's shop; the large one and the hand are not
    assert done.stderr.count("points to the inch") == 1
    assert '"hut.jpg" is printed as large as 118 by 88 mm, at 86 points' in done.stderr
    assert "one of 1394 by 1046 points or more" in done.stderr


def test_a_book_for_one_household_holds_what_was_chosen_for_it_and_no_more(
    run: Run, tmp_path: Path
) -> None:
    out = tmp_path / "book.pdf"
    chosen = ("recipes/rosemary-salt.md", "recipes/quince-ratafia.md")
    run("book", *chosen, "--for", "the Hollins", "--dedication", "For the snow.", "--out", str(out))
    pages = [page.extract_text() for page in pypdf.PdfReader(out).pages]
    whole = " ".join(pages)
    assert "for the Hollins" in pages[0]
    assert "For the Hollins" in pages[2]
    assert "For the snow." in pages[2]
    assert "up the lane" not in whole
    assert "2 things to make and give" in pages[0]
    assert "Rosemary salt" in whole
    assert "chutney" not in whole.lower()
    assert "lavender" not in whole.lower()


def test_no_page_is_ruled_for_nothing(printed: bytes, pages: list[str]) -> None:
    used = re.compile(r"made on|what goes into it|For a photograph|Written here|belongs to", re.I)
    with open_pdf(printed) as pdf:
        for number, page in enumerate(pdf.pages, start=1):
            ruled = [one for one in page.lines if one["x1"] - one["x0"] > 15 * MM]
            words = pages[number - 1]
            assert len(ruled) < 5 or used.search(words), (number, words)
            assert words.strip(), number


def test_both_columns_of_an_index_end_at_one_height(printed: bytes, pages: list[str]) -> None:
    for title in ("Index by ingredient", "Index by month"):
        at = next(number for number, text in enumerate(pages) if text.startswith(title))
        with open_pdf(printed) as pdf:
            page = pdf.pages[at]
            chars = [c for c in page.chars if 45 < c["top"] < page.height - 45]
        middle = (17 * MM if at % 2 == 0 else 13 * MM) + 59 * MM
        ends = [max(c["bottom"] for c in chars if (c["x0"] < middle) == left)
                for left in (True, False)]  # fmt: skip
        # a month is not torn, the longest some 45 mm high; an ingredient takes two lines
        assert abs(ends[0] - ends[1]) < (130 if "month" in title else 30), (title, ends)


@pytest.mark.parametrize(
    ("pages", "asked", "wanted"),
    # the middle row by hand: 100 leaves of 0.117 mm, two covers of 0.3 mm and 0.4 mm of glue
    [(64, {"gsm": 74}, "4.168"), (200, {"gsm": 89}, "12.7"), (201, {"leaf_mm": Fraction("0.1")},
      "11.1"), (100, {"gsm": 80}, "6.31")],
)  # fmt: skip
def test_a_spine_is_as_wide_as_the_pages_are_thick(
    pages: int, asked: dict[str, Any], wanted: str
) -> None:
    assert measure_spine(pages, **asked).width_mm == Fraction(wanted)


@pytest.mark.parametrize(
    ("pages", "asked", "words"),
    [
        (8, {}, "Staple a thinner one"),
        (2000, {}, "divide a thicker one"),
        (200, {"gsm": 300}, "Choose from 74 to 104"),
        (200, {"leaf_mm": Fraction(3)}, "no leaf of a book"),
    ],
)
def test_what_no_glued_book_has_is_refused(pages: int, asked: dict[str, Any], words: str) -> None:
    with pytest.raises(Unreadable) as refused:
        measure_spine(pages, **asked)
    assert words in f"{refused.value.what} {refused.value.mend}"


@pytest.mark.parametrize(("pages", "bears"), [(40, False), (160, True)])
def test_the_cover_is_one_piece_with_its_folds_marked(
    run: Run, tmp_path: Path, pages: int, bears: bool
) -> None:
    out = tmp_path / "cover.pdf"
    said = run("cover", "--pages", str(pages), "--out", str(out)).output
    spine = measure_spine(pages)
    assert f"the spine is {float(spine.width_mm):.1f} mm" in said
    page = pypdf.PdfReader(out).pages[0]
    trim = page.trimbox
    width = 2 * 148 + float(spine.width_mm)
    assert (float(trim.width) / MM, float(trim.height) / MM) == pytest.approx((width, 210), abs=0.2)
    assert float(page.mediabox.width) / MM == pytest.approx(width + 6, abs=0.2)
    assert page.extract_text().count("The Thistledown Lane") - int(bears) == 2
    with open_pdf(out.read_bytes()) as pdf:
        ticks = {
            round(one["x0"] / MM - 3, 1)
            for one in pdf.pages[0].lines
            if abs(one["x0"] - one["x1"]) < 0.1 and not 3 * MM < one["bottom"] < 213.5 * MM
        }
    assert ticks == {148.0, round(148 + float(spine.width_mm), 1)}
