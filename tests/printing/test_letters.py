"""What is read of a PDF without its drawings is what is read of the whole one."""

from __future__ import annotations

import io
from dataclasses import replace

import pdfplumber
import pypdf
import pytest

from letters import letters_of, open_letters, read_letters
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.looks.card_designs import choose_design
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags

from .conftest import open_pdf

SIGNS = "BT 1 0 0 1 m ET Q q 1 2 l f (1 2 3 4 re) \\ Tj"  # what a page is written with, as words


@pytest.fixture(scope="module")
def made(jobs: list[CardJob], pictured: list[CardJob]) -> dict[str, bytes]:
    salt = jobs[-1]
    signs = replace(salt, card=replace(salt.card, use=SIGNS))
    dressed = {name: SheetOptions(design=choose_design(name)) for name in ("winter", "leaves")}
    return {
        "winter": print_cards(jobs[-2:], "90x65", dressed["winter"]),
        "own drawing": print_cards(pictured[:2], "folded-a6", dressed["leaves"]),
        "tags": print_tags(jobs[:3], tag_shape("luggage"), SheetOptions()),
        "signs": print_cards([signs], "90x65", SheetOptions()),
    }


@pytest.mark.parametrize("what", ["winter", "own drawing", "tags", "signs"])
def test_letters_are_the_same_and_nothing_is_drawn(made: dict[str, bytes], what: str) -> None:
    def read(opened: pdfplumber.PDF) -> list[object]:
        with opened as pdf:
            return [(page.chars, page.images, page.structure_tree) for page in pdf.pages]

    def words(reader: pypdf.PdfReader) -> list[str]:
        return [page.extract_text() for page in reader.pages]

    whole = made[what]
    assert read(open_letters(whole)) == read(open_pdf(whole))
    assert words(read_letters(whole)) == words(pypdf.PdfReader(io.BytesIO(whole)))
    with open_letters(whole) as pdf:
        assert not [one for page in pdf.pages for one in (*page.lines, *page.curves, *page.rects)]
    assert letters_of(whole) != whole


def test_letters_and_pictures_of_the_bound_book_are_the_same(printed: bytes) -> None:
    def read(opened: pdfplumber.PDF) -> list[object]:
        with opened as pdf:
            found = []
            for page in pdf.pages[:16]:
                # a stream is another one in each reading
                images = [
                    {key: one[key] for key in one if key not in ("stream", "colorspace")}
                    for one in page.images
                ]
                found.append((page.chars, images, page.extract_text()))
            return found

    quickly = read(open_letters(printed))
    assert quickly == read(open_pdf(printed))
    assert sum(len(page[0]) for page in quickly) > 5_000
    assert any(page[1] for page in quickly)


def test_what_is_not_known_is_read_the_long_way(made: dict[str, bytes]) -> None:
    with open_letters(made["signs"]) as pdf, open_pdf(made["signs"]) as whole:
        page = pdf.pages[0]
        page.mediabox = (-1, *page.mediabox[1:])
        assert len(page.chars) == len(whole.pages[0].chars) > 100
