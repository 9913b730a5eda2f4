"""Cards as PDF, measured from outside: boxes, words, faces, sizes, codes, bytes."""

from __future__ import annotations

import io
import re
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pypdf
import pypdfium2
import pytest
import zxingcpp
from PIL import Image
from pypdf.generic import DictionaryObject

from letters import open_letters
from stillroom.core.label.contents_list import ContentsEntry
from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Unreadable
from stillroom.printing.cards import CardJob, SheetOptions, print_cards

from .conftest import MM, open_pdf, words_of

TOLERANCE_MM = 0.2  # issue 6


def edges(made: bytes) -> tuple[list[float], list[float]]:
    """Where the cut lines of the first page lie, in mm from its top left."""
    with open_pdf(made) as pdf:
        page = pdf.pages[0]
        # the emblems are drawn of short lines: only the long ones are cuts
        xs = sorted(
            {
                round(line["x0"] / MM, 2)
                for line in page.lines
                if line["width"] < 0.1 and line["height"] > 400
            }
        )
        ys = sorted(
            {
                round(line["top"] / MM, 2)
                for line in page.lines
                if line["height"] < 0.1 and line["width"] > 400
            }
        )
    return xs, ys


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("size", ["90x65", "a7", "id-1"])
def test_card_boxes_are_their_nominal_size(jobs: list[CardJob], paper: str, size: str) -> None:
    made = print_cards(jobs[-2:], size, SheetOptions(paper=PAPERS[paper]))
    xs, ys = edges(made)
    box, sheet = CARD_SIZES[size], PAPERS[paper]
    for found, nominal in ((xs, box.width_mm), (ys, box.height_mm)):
        gaps = [after - before for before, after in pairwise(found)]
        assert gaps
        assert max(abs(gap - float(nominal)) for gap in gaps) < TOLERANCE_MM
    with open_letters(made) as pdf:
        assert pdf.pages[0].width / MM == pytest.approx(float(sheet.width_mm), abs=TOLERANCE_MM)
        assert pdf.pages[0].height / MM == pytest.approx(float(sheet.height_mm), abs=TOLERANCE_MM)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_eight_cards_to_a_page(jobs: list[CardJob], paper: str) -> None:
    one_sided = [job for job in jobs if job.recipe.slug == "rosemary-salt"]
    assert one_sided
    made = print_cards(
        [replace(one_sided[0], copies=16)], "90x65", SheetOptions(paper=PAPERS[paper])
    )
    pages = [
        page.extract_text().count("Rosemary salt")
        for page in pypdf.PdfReader(io.BytesIO(made)).pages
    ]
    assert pages in ([8, 8], [8, 0, 8, 0])


def test_every_word_of_every_card_is_there(jobs: list[CardJob], sheet: bytes) -> None:
    # quotes are set curly, whichever were typed
    text = re.sub(r"[\s-]", "", words_of(sheet)).replace("’", "'")
    for job in jobs:
        card = job.card
        said = [card.title, card.what, card.use, card.keep, *card.cautions, card.date_mark.text]
        said += [entry.whole for entry in card.contents] + list(card.allergens)
        for words in said:
            for word in words.split():
                plain = re.sub(r"[\s-]", "", word).replace("’", "'")
                assert plain in text, (card.title, word)


def test_no_type_is_under_the_stated_size(sheet: bytes) -> None:
    with open_letters(sheet) as pdf:
        sizes = {
            (char["fontname"].partition("+")[2].startswith("Alegreya"), round(char["size"], 2))
            for page in pdf.pages
            for char in page.chars
            if char["text"].strip()
        }
    assert min(size for plain, size in sizes if not plain) >= 9
    assert min(size for plain, size in sizes if plain) >= 8.5


def test_only_the_books_faces_and_all_embedded(jobs: list[CardJob]) -> None:
    reader = pypdf.PdfReader(io.BytesIO(print_cards(jobs[:4], "90x65", SheetOptions())))
    seen = set()
    for page in reader.pages:
        fonts = page["/Resources"].get("/Font", DictionaryObject())
        for font in fonts.values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()
            descriptor = inner["/FontDescriptor"]
            assert any(key in descriptor for key in ("/FontFile2", "/FontFile3")), inner[
                "/BaseFont"
            ]
            seen.add(str(inner["/BaseFont"]).partition("+")[2].partition("-")[0])
    assert seen <= {"EBGaramond", "EBGaramondItalic", "AlegreyaSans"}


def test_it_is_tagged_with_title_and_language(jobs: list[CardJob]) -> None:
    reader = pypdf.PdfReader(io.BytesIO(print_cards(jobs[:1], "90x65", SheetOptions(title="Kept"))))
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert str(root["/Lang"]).lower() == "en-gb"
    assert reader.metadata is not None
    assert reader.metadata.title == "Kept"
    assert b"pdfuaid:part" in root["/Metadata"].get_data()


def test_the_same_input_gives_the_same_bytes(jobs: list[CardJob], sheet: bytes) -> None:
    assert print_cards(jobs, "90x65", SheetOptions()) == sheet


def rasterise(made: bytes, dpi: int) -> list[Image.Image]:
    document = pypdfium2.PdfDocument(made)
    return [page.render(scale=dpi / 72).to_pil().convert("L") for page in document]


@pytest.mark.parametrize("dpi", [300, 150])
def test_every_code_is_read_from_the_raster(jobs: list[CardJob], sheet: bytes, dpi: int) -> None:
    """At full size and shrunk by a fifth."""
    pages = rasterise(sheet, dpi)
    for shrink in (1.0, 0.8):
        found = set()
        for page in pages:
            size = (round(page.width * shrink), round(page.height * shrink))
            shrunk = page.resize(size, Image.Resampling.BILINEAR)
            codes = zxingcpp.read_barcodes(shrunk, formats=zxingcpp.BarcodeFormat.QRCode)
            found |= {code.text for code in codes}
        assert found == {job.card.url for job in jobs}, shrink


FOURTEEN = (
    "cereals containing gluten", "crustaceans", "eggs", "fish", "peanuts", "soybeans", "milk",
    "nuts", "celery", "mustard", "sesame", "sulphites", "lupin", "molluscs",
)  # fmt: skip  # Regulation (EU) No 1169/2011, Annex II

LARDER = (
    "wholemeal wheat flour", "rolled oats", "soft brown sugar", "unsalted butter", "clear honey",
    "dried apricots", "sultanas", "candied orange peel", "walnuts", "toasted almonds", "sesame",
    "pumpkin seeds", "poppy seeds", "free-range eggs", "buttermilk", "black treacle", "ginger",
    "cinnamon", "nutmeg", "allspice", "cloves", "sea salt", "bicarbonate of soda",
    "lemon juice", "rapeseed oil",
)  # fmt: skip


def _entries(count: int) -> tuple[ContentsEntry, ...]:
    names = (LARDER * 4)[:count]
    return tuple(ContentsEntry(name, n % 3 == 0) for n, name in enumerate(names))


def test_what_no_face_can_hold_is_refused_by_name(
    recipes: tuple[Recipe, ...], card_of: Callable[..., UsageCard]
) -> None:
    card = replace(card_of(recipes[0]), contents=_entries(90))
    with pytest.raises(Unreadable, match=r"do not fit .*what is in it, \d+\.\d mm too much"):
        print_cards([CardJob(card, recipes[0])], "id-1", SheetOptions())


@pytest.mark.parametrize("name", ["שרה", "数馬", "Ὀδυσσεύς"], ids=["Hebrew", "CJK", "Greek"])
def test_letters_no_face_has_are_refused_by_name(
    recipes: tuple[Recipe, ...], card_of: Callable[..., UsageCard], name: str
) -> None:
    card = card_of(recipes[0], to=name)
    with pytest.raises(
        Unreadable, match=rf"have no letter for .* of \"{recipes[0].title}\"\..*--fonts"
    ):
        print_cards([CardJob(card, recipes[0])], "90x65", SheetOptions())


def test_start_position_leaves_the_used_places_free(jobs: list[CardJob]) -> None:
    with open_letters(print_cards(jobs[-1:], "90x65", SheetOptions(start_at=8))) as pdf:
        chars = [char for char in pdf.pages[0].chars if char["text"].strip()]
    assert min(char["x0"] for char in chars) / MM > 105
    assert min(char["top"] for char in chars) / MM > 213.5


INKS = {"ink": "#2a221c", "soft": "#5c5046", "accent": "#7d2c1d"}  # templates/theme.typ


@pytest.mark.parametrize("name", INKS)
def test_inks_are_dark_enough_when_printed_grey(name: str) -> None:
    """WCAG 2.2, 1.4.3 (from memory): 4.5 : 1, here of the grey that a mono printer makes."""
    red, green, blue = (int(INKS[name][at : at + 2], 16) / 255 for at in (1, 3, 5))
    grey = 0.299 * red + 0.587 * green + 0.114 * blue  # ITU-R BT.601 luma
    linear = grey / 12.92 if grey <= 0.04045 else ((grey + 0.055) / 1.055) ** 2.4
    assert 1.05 / (linear + 0.05) >= 4.5


def test_a_back_without_a_code_to_scan_has_its_whole_width(jobs: list[CardJob]) -> None:
    """A newcomer of November 2026: the left quarter was blank in a book without an address."""

    def first_word_mm(url: str) -> float:
        job = replace(jobs[0], card=replace(jobs[0].card, url=url))
        with open_letters(print_cards([job], "90x65", SheetOptions())) as pdf:
            words = pdf.pages[1].extract_words()
            return min(words, key=lambda word: word["top"])["x0"] / MM

    assert first_word_mm("") + 10 < first_word_mm("https://example.org/r/quince-ratafia/")
