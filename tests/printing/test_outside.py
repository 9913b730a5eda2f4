"""Every printed thing as an outsider finds it: tagged, titled, the same twice, its codes readable.

Looked at with pypdf, a rasteriser and a decoder that know nothing of Typst.
"""

from __future__ import annotations

import io
from collections.abc import Callable
from datetime import date

import pypdf
import pypdfium2
import pytest
import zxingcpp
from PIL import Image

from stillroom.core.book import Book
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import SHAPES, tag_shape
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.when.timeline import plan_forward
from stillroom.core.when.year import Named, Occasion, plan_year
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.cut_sheet import GiftMeasures, print_cuts
from stillroom.printing.kitchen_sheet import print_sheet
from stillroom.printing.wall_year import print_year

BEGUN = date(2027, 1, 10)
Make = Callable[[], bytes]


@pytest.fixture(scope="module")
def makers(book: Book, recipes: tuple[Recipe, ...], jobs: list[CardJob]) -> dict[str, Make]:
    mead = next(one for one in recipes if one.slug == "heather-mead")
    named = [Named(one.slug, one.title, one.kind.name, one, one.season) for one in recipes]
    year = plan_year(named, [Occasion("Christmas", date(2027, 12, 18))], BEGUN)
    options = SheetOptions(title="Printed")
    makers: dict[str, Make] = {
        "cards": lambda: print_cards(jobs[:3], "90x65", options),
        "folded cards": lambda: print_cards(jobs[:2], "folded-a6", options),
        "sheet": lambda: print_sheet(
            mead, scale_recipe(mead), book.settings, plan_forward(mead, BEGUN), PAPERS["a4"],
            "https://b.example/r/heather-mead/",
        ),
        "year": lambda: print_year(year, "Printed", paper=PAPERS["a4"]),
        "cuts": lambda: print_cuts(GiftMeasures.read(70, "80,60,40,20"), PAPERS["a4"]),
    }  # fmt: skip
    for shape in SHAPES:
        cut = tag_shape(shape, lid_mm=80, bottle_mm=60, wall_mm=70)
        makers[f"{shape} tags"] = lambda cut=cut: print_tags(jobs[:2], cut, options)  # type: ignore[misc]
    return makers


PRINTED = ["cards", "folded cards", "sheet", "year", "cuts", *(f"{shape} tags" for shape in SHAPES)]


@pytest.mark.parametrize("name", PRINTED)
def test_it_is_tagged_titled_and_the_same_twice(makers: dict[str, Make], name: str) -> None:
    made = makers[name]()
    assert makers[name]() == made
    reader = pypdf.PdfReader(io.BytesIO(made))
    root = reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/StructTreeRoot"]["/K"]
    assert str(root["/Lang"]).lower() == "en-gb"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert b"pdfuaid:part" in root["/Metadata"].get_data()
    assert reader.metadata is not None
    assert reader.metadata.title


def test_every_code_of_the_book_is_read_from_a_coarse_raster(
    book: Book, recipes: tuple[Recipe, ...], printed: bytes
) -> None:
    """At full size and shrunk by a fifth."""
    found: dict[float, set[str]] = {1.0: set(), 0.8: set()}
    for page in pypdfium2.PdfDocument(printed):
        raster = page.render(scale=150 / 72).to_pil().convert("L")
        for shrink, codes in found.items():
            size = (round(raster.width * shrink), round(raster.height * shrink))
            small = raster.resize(size, Image.Resampling.BILINEAR)
            read = zxingcpp.read_barcodes(small, formats=zxingcpp.BarcodeFormat.QRCode)
            codes |= {code.text for code in read}
    site = book.settings.site_url.rstrip("/")
    every = {f"{site}/r/{recipe.slug}/" for recipe in recipes}
    assert list(found.values()) == [every, every]
