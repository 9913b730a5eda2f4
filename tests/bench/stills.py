"""Pictures of what is printed, to be looked at: every design, one basket's papers, the book.

Run: python tests/bench/stills.py FOLDER [--before REVISION]. It writes into FOLDER:

    DESIGN.png      a card, its back, a tag, a round label and a folded card, at true size (200 dpi)
    basket.png      the papers of the demo list's first basket, laid together
    book.png        every page of the demo book; book-before.png, as it was at REVISION

It asserts nothing: whoever runs it looks.
"""

from __future__ import annotations

import argparse
import io
import os
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Sequence
from datetime import date
from pathlib import Path

import pypdfium2
from PIL import Image

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "builder")]

from stillroom.core.book import open_book  # noqa: E402
from stillroom.core.label.labelling import make_card  # noqa: E402
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, impose  # noqa: E402
from stillroom.core.paper.tag_shapes import tag_shape  # noqa: E402
from stillroom.looks.card_designs import Design, designs_of  # noqa: E402
from stillroom.looks.card_pictures import card_picture  # noqa: E402
from stillroom.printing.apart import run_here  # noqa: E402
from stillroom.printing.cards import (  # noqa: E402
    CardJob,
    SheetOptions,
    print_cards,
    print_cards_alike,
    print_tags,
)

DPI, SMALL_DPI, BOOK_DPI = 200, 70, 45
GAP = 24
PAPERS_OF_A_BASKET = ("basket-tags", "cards", "tags", "baskets", "labels")
SHOWN = ("quince-ratafia", "felted-bauble")
MADE_ON = date(2026, 11, 12)
CLI = "import sys; from stillroom.cli import main; sys.exit(main())"


def drawn(made: bytes, dpi: int) -> list[Image.Image]:
    pages = pypdfium2.PdfDocument(made)
    return [page.render(scale=dpi / 72).to_pil().convert("RGB") for page in pages]


def inked(page: Image.Image, *, room: int = GAP) -> Image.Image:
    """Return what of a page bears ink, with some room round it."""
    box = page.convert("L").point(lambda value: 255 * (value < 250)).getbbox()
    if box is None:
        return page
    left, top, right, bottom = box
    return page.crop((max(0, left - room), max(0, top - room), right + room, bottom + room))


def rows_of(rows: Sequence[Sequence[Image.Image]]) -> Image.Image:
    """Lay pictures in rows on grey paper."""
    width = max(sum(one.width + GAP for one in row) for row in rows) + GAP
    heights = [max(one.height for one in row) for row in rows]
    sheet = Image.new("RGB", (width, sum(heights) + GAP * (len(rows) + 1)), "#b9b5ad")
    down = GAP
    for row, high in zip(rows, heights, strict=True):
        across = GAP
        for one in row:
            sheet.paste(one, (across, down))
            across += one.width + GAP
        down += high + GAP
    return sheet


def cut_out(made: bytes, size_name: str) -> list[Image.Image]:
    """Return each page's first two places of a sheet of cards, as they are cut."""
    size = CARD_SIZES[size_name]
    folded = size_name == "folded-a6"
    box = size if not folded else type(size)("opened", 2 * size.width_mm, size.height_mm, "")
    grid = impose(PAPERS["a4"], box)
    found = []
    for number, page in enumerate(drawn(made, DPI)):
        for place in range(2):
            at = grid.place(place, back=bool(number % 2))
            left, top = (round(float(mm) / 25.4 * DPI) for mm in (at.x_mm, at.y_mm))
            wide, high = (
                round(float(mm) / 25.4 * DPI) for mm in (grid.box.width_mm, grid.box.height_mm)
            )
            found.append(page.crop((left, top, left + wide, top + high)))
    return found


def show_design(design: Design, folder: Path) -> None:
    book = open_book(ROOT / "mkdocs.yml")
    site = book.settings.site_url.rstrip("/")
    words = {"to": "Merrin", "sender": "the Lane"}
    jobs = [
        CardJob(
            make_card(one, book.settings, MADE_ON, url=f"{site}/r/{one.slug}/", **words),
            one,
            picture=card_picture(one, book, design),
        )
        for one in book.load()
        if one.slug in SHOWN
    ]
    options = SheetOptions(design=design, cut_lines=False)
    (made,), taken = print_cards_alike([jobs], "90x65", options, run_here, grows=design.large)
    folded = print_cards(jobs, "folded-a6", options)
    cut = SheetOptions(design=design)
    tags = [
        inked(drawn(print_tags(jobs, tag_shape(shape, lid_mm=90), cut), DPI)[0])  # type: ignore[arg-type]
        for shape in ("rectangle", "luggage", "round")
    ]
    picture = rows_of([cut_out(made, taken), tags, *pairs(cut_out(folded, "folded-a6"))])
    picture.save(folder / f"{design.slug}.png", dpi=(DPI, DPI))


def pairs(pictures: list[Image.Image]) -> list[list[Image.Image]]:
    return [[outside, inside] for outside, inside in zip(pictures[:2], pictures[2:], strict=True)]


def run(*words: str, at: Path) -> None:
    """Run a command of the Stillroom that lies at a place, on the book beside it."""
    environment = {**os.environ, "PYTHONPATH": str(at / "builder"), "STILLROOM_CACHE": "off"}
    subprocess.run([sys.executable, "-c", CLI, *words], cwd=at, env=environment, check=True)


def show_basket(folder: Path) -> None:
    """Lay out every page of the demo's pack that bears the first household's name."""
    (giving,) = (ROOT / "site_demo" / "giving").glob("*.yml")
    with tempfile.TemporaryDirectory() as place:
        run("pack", str(giving), "--out", place, "--seconds", "10", at=ROOT)
        papers = {name: (Path(place) / f"{name}.pdf").read_bytes() for name in PAPERS_OF_A_BASKET}
    names = [
        line.partition("name:")[2].strip(" \"'")
        for line in giving.read_text(encoding="utf-8").splitlines()
        if "name:" in line
    ]
    pages: list[Image.Image] = []
    for made in papers.values():
        texts = [page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(made)]
        shown = drawn(made, SMALL_DPI)
        first = next((at for at, text in enumerate(texts) if any(one in text for one in names)), 0)
        pages += shown[first : first + 2]
    rows_of([pages[at : at + 6] for at in range(0, len(pages), 6)]).save(folder / "basket.png")


def show_book(folder: Path, name: str, at: Path) -> None:
    with tempfile.TemporaryDirectory() as place:
        out = Path(place) / "book.pdf"
        run("print", "book", "--out", str(out), at=at)
        pages = drawn(out.read_bytes(), BOOK_DPI)
    rows_of([pages[at : at + 12] for at in range(0, len(pages), 12)]).save(folder / name)


def main() -> None:
    """Write the pictures."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("folder", type=Path)
    asked.add_argument("--before", help="a revision at which the book is printed too")
    told = asked.parse_args()
    told.folder.mkdir(parents=True, exist_ok=True)
    for design in designs_of().values():
        show_design(design, told.folder)
    show_book(told.folder, "book.png", ROOT)
    show_basket(told.folder)
    if told.before:
        kept = subprocess.run(
            ["git", "archive", told.before], cwd=ROOT, check=True, capture_output=True
        ).stdout
        with tempfile.TemporaryDirectory() as place:
            with tarfile.open(fileobj=io.BytesIO(kept)) as archive:
                archive.extractall(place, filter="data")
            show_book(told.folder, "book-before.png", Path(place))


if __name__ == "__main__":
    main()
