"""What is read of a page by one pattern is what pdfminer reads of it sign by sign."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pdfplumber
import pytest
from pdfminer.psparser import KWD, LIT

from quick_pages import QuickParser, read_as_before, read_quickly
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.looks.card_designs import choose_design
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags

from .test_letters import SIGNS


@pytest.fixture(autouse=True)
def quick_behind() -> Iterator[None]:
    yield
    read_quickly()


def objects_of(made: bytes) -> list[dict[str, list[dict[str, Any]]]]:
    """Return all that stands on each page; a picture's stream is another one in each reading."""
    with pdfplumber.open(io.BytesIO(made)) as pdf:
        return [
            {
                kind: [
                    {key: one[key] for key in one if key not in ("stream", "colorspace")}
                    for one in found
                ]
                for kind, found in page.objects.items()
            }
            for page in pdf.pages
        ]


def read_both_ways(made: bytes) -> None:
    read_as_before()
    before = objects_of(made)
    read_quickly()
    assert objects_of(made) == before
    assert sum(len(found) for page in before for found in page.values()) > 50


@pytest.mark.parametrize("design", ["winter", "leaves", "own-drawing"])
def test_dressed_cards(jobs: list[CardJob], pictured: list[CardJob], design: str) -> None:
    options = SheetOptions(design=choose_design(design))
    read_both_ways(print_cards([*jobs[-2:], pictured[0]], "90x65", options))


def test_tags_and_signs_that_pages_are_written_with(jobs: list[CardJob]) -> None:
    read_both_ways(print_tags(jobs[:3], tag_shape("luggage"), SheetOptions()))
    signs = replace(jobs[-1].card, use=f"{SIGNS} ((\\) \\101 <41> % [")
    read_both_ways(print_cards([replace(jobs[-1], card=signs)], "90x65", SheetOptions()))


class _Stream:
    """A stream as pdfminer has it, of bytes that were written here."""

    def __init__(self, data: bytes) -> None:
        self.data = data

    def get_data(self) -> bytes:
        return self.data


@pytest.mark.parametrize(
    ("written", "parts"),
    [
        (b"1 -.5 2. rg", [1, -0.5, 2.0, KWD(b"rg")]),
        (b"/F1 9 Tf(a\\(b\\051\\n)Tj", [LIT("F1"), 9, KWD(b"Tf"), b"a(b)\n", KWD(b"Tj")]),
        (b"[(a(b)c)-3<00fF>]TJ T*", [[b"a(b)c", -3, b"\x00\xff"], KWD(b"TJ"), KWD(b"T*")]),
        (
            b"/P<</MCID 3/A[1 /B]>>BDC",
            [LIT("P"), {"MCID": 3, "A": [1, LIT("B")]}, KWD(b"BDC")],
        ),
    ],
)
def test_parts_of_a_page(written: bytes, parts: list[Any], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("quick_pages.stream_value", lambda one: one)
    reader = QuickParser([_Stream(written)])
    assert reader.parts is not None
    assert list(reader.parts) == parts


@pytest.mark.parametrize(
    "written",
    [
        b"BI /W 1 ID x EI",
        b"% a remark\n1 w",
        b"(\\8)Tj",
        b"(a\rb)Tj",
        b"<0> Tj",
        b"/a#20b gs",
        b"true",
        b"[1 2",
        b"1 2] d",
        b"<</A>> BDC",
        b"[1 w]",
        b"(((a)))Tj",
    ],
)
def test_what_is_not_known_is_read_as_before(
    written: bytes, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("quick_pages.stream_value", lambda one: one)
    assert QuickParser([_Stream(written)]).parts is None
