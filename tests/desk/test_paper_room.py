"""What is printed at the desk: the choices that the commands have, read from the PDFs that open."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pdfplumber
import pypdf
import pytest

from desk.conftest import Answer, OpenDesk, open_on, small_book


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path_factory.mktemp("paper") / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def printed(desk: OpenDesk, **asked: str) -> bytes:
    answer = desk.ask("/paper", "POST", asked)
    assert answer.status == 200, answer.text[-2000:]
    return answer.body


def words_of(pdf: bytes) -> str:
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return " ".join(" ".join(page.extract_text().split()) for page in pages)


@pytest.mark.parametrize(("wall", "many", "tall"), [("a3", 1, 420), ("a4", 2, 297)])
def test_the_year_goes_on_one_large_sheet_or_on_two_small_ones(
    own: OpenDesk, wall: str, many: int, tall: float
) -> None:
    pages = pypdf.PdfReader(io.BytesIO(printed(own, what="year", wall=wall, paper="letter"))).pages
    assert len(pages) == many
    longest = max(float(pages[0].mediabox.width), float(pages[0].mediabox.height))
    assert longest * 25.4 / 72 == pytest.approx(tall, abs=0.5)


def test_a_book_for_one_household_has_its_name_and_its_recipes(own: OpenDesk) -> None:
    asked = {"recipe": "lavender-sugar", "whom": "The Fennimores"}
    book = words_of(printed(own, what="book", dedication="Keep it dry", **asked))
    assert "The Fennimores" in book
    assert "Keep it dry" in book
    assert "Lavender sugar" in book
    booklet = printed(own, what="booklet", **asked)
    sheet = pypdf.PdfReader(io.BytesIO(booklet)).pages[0].mediabox
    assert max(sheet.width, sheet.height) * 25.4 / 72 == pytest.approx(297, abs=0.5)


def test_a_cover_wants_a_book_thick_enough_to_glue(own: OpenDesk) -> None:
    answer = own.ask("/paper", "POST", {"what": "cover", "recipe": "lavender-sugar"})
    assert answer.status == 422
    assert "A glued book has 32 to 1200 pages" in answer.text


def test_what_is_no_weight_of_paper_is_told_and_runs_nothing(own: OpenDesk) -> None:
    for typed in ("heavy", "--help", "1;ls"):
        answer: Answer = own.ask("/paper", "POST", {"what": "cover", "gsm": typed})
        assert answer.status == 422
        assert 'role="alert"' in answer.text


def test_a_kitchen_sheet_can_be_large(own: OpenDesk) -> None:
    sizes = {}
    for large in ("", "1"):
        made = printed(own, what="sheet", recipe="lavender-sugar", large=large)
        with pdfplumber.open(io.BytesIO(made)) as pdf:
            sizes[large] = max(char["size"] for page in pdf.pages for char in page.chars)
    assert sizes["1"] > sizes[""]


def test_every_choice_of_the_page_is_one_that_the_commands_take(own: OpenDesk) -> None:
    page = own.ask("/paper").text
    for words in ("A3, one sheet", "Tabloid, one sheet", "A4, two sheets to join", "The cover"):
        assert words in page
