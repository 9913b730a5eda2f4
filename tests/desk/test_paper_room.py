"""What is printed at the desk: the choices that the commands have, read from the PDFs that open."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pdfplumber
import pypdf
import pytest
from bs4 import BeautifulSoup

from desk.conftest import Answer, OpenDesk, open_on, small_book
from letters import open_letters, read_letters


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path_factory.mktemp("paper") / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def printed(desk: OpenDesk, said: str = "", **asked: str) -> bytes:
    """Return the PDF that opens, behind a page that says what there is to say of it, if any."""
    answer = desk.ask("/paper", "POST", {name.replace("_", "-"): v for name, v in asked.items()})
    assert answer.status == 200, answer.text[-2000:]
    assert answer.body.startswith(b"%PDF") == (not said)
    if not said:
        return answer.body
    told = BeautifulSoup(answer.text, "html.parser").select_one(".said")
    assert told is not None
    assert said in told.text
    assert ".pdf (" not in told.text, "where the desk keeps it is nobody's business"
    return desk.ask(str(told.select_one("a")["href"])).body  # type: ignore[index]


MM = 72 / 25.4


def places_of(pdf: bytes, title: str) -> list[list[tuple[int, int]]]:
    """Return where a title stands on each page, to the millimetre, row by row."""
    with open_letters(pdf) as opened:
        return [
            sorted(
                (round(word["top"] / MM), round(word["x0"] / MM))
                for word in page.extract_words()
                if word["text"] == title
            )
            for page in opened.pages
        ]


def words_of(pdf: bytes) -> str:
    pages = read_letters(pdf).pages
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
    booklet = printed(own, "A booklet has no tags", what="booklet", **asked)
    sheet = pypdf.PdfReader(io.BytesIO(booklet)).pages[0].mediabox
    assert max(sheet.width, sheet.height) * 25.4 / 72 == pytest.approx(297, abs=0.5)


def test_a_cover_wants_a_book_thick_enough_to_glue(own: OpenDesk) -> None:
    answer = own.ask("/paper", "POST", {"what": "cover", "recipe": "lavender-sugar"})
    assert answer.status == 422
    assert "A glued book has 32 to 1200 pages" in answer.text
    words = BeautifulSoup(answer.text, "html.parser").get_text(" ")
    assert "“The book to fold and sew, A4”" in words
    for notion in ("Usage:", "Error:", "stillroom", "--"):
        assert notion not in words, "the terminal's own words are not the desk's"


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


def test_a_sheet_half_used_goes_on_where_it_is_free(own: OpenDesk) -> None:
    asked = {"what": "tags", "recipe": "lavender-sugar", "count": "10"}
    (whole,) = places_of(printed(own, **asked), "Lavender")
    assert len(whole) == 10
    first, second = places_of(printed(own, **asked, used="1, 2,7"), "Lavender")
    assert first == [*whole[2:6], *whole[7:]]
    assert second == whole[:3], "what no longer goes on it begins the next sheet"
    # where all of a sheet is gone nothing is printed over
    (anew,) = places_of(printed(own, **asked, used="1,2,3,4,5,6,7,8,9,10"), "Lavender")
    assert anew == whole


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ({"what": "tags", "used": "11"}, "Place 11 is not on this sheet"),
        ({"what": "tags", "used": "the first"}, "names no places"),
        ({"what": "cards", "count": "none"}, "none"),
        ({"what": "cards", "count": "5000"}, "5000"),
        ({"what": "tags", "shape": "round"}, "A round label is made for a lid"),
        ({"what": "tags", "shape": "round", "lid": "wide"}, "wide"),
        ({"what": "tags", "shape": "wrap", "bottle": "95", "straight": "70"}, "does not go on A4"),
        ({"what": "tags", "shape": "wrap", "bottle": "52"}, "Measure the bottle"),
    ],
    ids=lambda value: " ".join(value.values()) if isinstance(value, dict) else "",
)
def test_what_cannot_be_printed_is_told_and_nothing_opens(
    own: OpenDesk, asked: dict[str, str], said: str
) -> None:
    answer = own.ask("/paper", "POST", {"recipe": "lavender-sugar", **asked})
    assert answer.status == 422
    alert = BeautifulSoup(answer.text, "html.parser").select_one('[role="alert"]')
    assert alert is not None
    assert said in alert.text
    assert "Traceback" not in answer.text


@pytest.mark.parametrize(
    ("asked", "wide", "high"),
    [
        # 6 mm less than its lid; once round 52 mm and 8 mm to glue, 2 mm less than its wall twice
        ({"shape": "round", "lid": "62"}, 56, 56),
        ({"shape": "wrap", "bottle": "52", "straight": "70"}, 171.4, 66),
    ],
    ids=["lid", "bottle"],
)
def test_labels_for_lids_and_bottles_are_cut_to_their_measures(
    own: OpenDesk, asked: dict[str, str], wide: float, high: float
) -> None:
    made = printed(own, what="tags", recipe="lavender-sugar", **asked)
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        drawn = [*pdf.pages[0].curves, *pdf.pages[0].rects]
        sizes = {(round(one["width"] / MM, 1), round(one["height"] / MM, 1)) for one in drawn}
    assert {(wide, high), (high, wide)} & sizes, sizes


def test_bought_labels_are_those_that_the_book_keeps(own: OpenDesk) -> None:
    settings = own.folder / "mkdocs.yml"
    before = settings.read_text("utf-8")
    try:
        kept = "      labels: [{name: 65 small jars, measures: '3,7,6,15,66,38,63,36'}]\n"
        settings.write_text(before.replace("  - stillroom:\n", f"  - stillroom:\n{kept}"), "utf-8")
        assert "65 small jars" in own.ask("/paper").text
        asked = {"what": "tags", "recipe": "lavender-sugar", "count": "4", "used": "2"}
        (found,) = places_of(printed(own, **asked, label_sheet="65 small jars"), "Lavender")
    finally:
        settings.write_text(before, "utf-8")
    assert len(found) == 4
    rows = sorted({top for top, _ in found})
    assert rows[1] - rows[0] == 38
    assert [round(x / 66 - 0.2) for _, x in found] == [0, 2, 0, 1]
    assert "65 small jars" not in own.ask("/paper").text


def test_the_test_sheet_opens_on_the_paper_that_is_chosen(own: OpenDesk) -> None:
    made = printed(own, what="test-sheet", paper="letter", recipe="lavender-sugar")
    assert "How your printer feeds its paper" in words_of(made)
    assert float(pypdf.PdfReader(io.BytesIO(made)).pages[0].mediabox.height) == pytest.approx(792)


def test_a_larger_size_that_was_taken_is_said(own: OpenDesk) -> None:
    asked = {"what": "tags", "recipe": "quince-chutney", "shape": "round", "lid": "62"}
    printed(own, **asked)
    made = printed(own, "In large type they take tags of", **asked, large="1")
    assert "Quince" in words_of(made)


def test_nothing_but_prints_opens(own: OpenDesk) -> None:
    for way in ("/paper/epub.pdf", "/paper/..%2Fmkdocs.yml.pdf", "/paper/.pdf"):
        assert own.ask(way).status == 404
