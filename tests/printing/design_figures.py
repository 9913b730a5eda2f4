"""What a design comes to on paper: its least type, its contrast and its codes, read from PDFs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pypdfium2
import zxingcpp

from letters import open_letters
from stillroom.core.paper.contrast import contrasts
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.looks.card_designs import Design
from stillroom.printing.apart import run_here
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    print_cards,
    print_cards_alike,
    print_tags,
)

DPI = (300, 150)
THINGS = ("card", "folded card", "tag")


@dataclass(frozen=True)
class Figures:
    """The least type in points by what it stands on, the least contrast of any ink, codes read.

    `unread` are the addresses that no reader found, by the dots per inch they were drawn at.
    """

    least_pt: dict[str, float]
    taken: str
    contrast: float
    codes: int
    unread: dict[int, list[str]]


def figures_of(design: Design, jobs: Sequence[CardJob]) -> Figures:
    """Print a card, a folded card and a tag of each recipe and read them back."""
    options = SheetOptions(design=design)
    made: dict[str, bytes] = {}
    if design.large:
        (made["card"],), taken = print_cards_alike([jobs], "90x65", options, run_here, grows=True)
    else:
        made["card"], taken = print_cards(jobs, "90x65", options), "90x65"
    made["folded card"] = print_cards(jobs, "folded-a6", options)
    made["tag"] = print_tags(jobs, tag_shape("rectangle"), options)
    wanted = {job.card.url for job in jobs}
    unread = {
        dpi: sorted(
            address
            for thing in ("card", "folded card")
            for address in wanted - codes_read(made[thing], dpi)
        )
        for dpi in DPI
    }
    inks = design.inks.model_dump()
    return Figures(
        {thing: least_type(made[thing]) for thing in THINGS},
        taken,
        min(min(contrasts(inks[ink], design.paper).values()) for ink in ("ink", "soft", "accent")),
        2 * len(wanted),
        unread,
    )


def least_type(made: bytes) -> float:
    """Return the smallest type that words are set in, in points."""
    with open_letters(made) as pdf:
        return min(
            round(char["size"], 2)
            for page in pdf.pages
            for char in page.chars
            if char["text"].strip()
        )


def codes_read(made: bytes, dpi: int) -> set[str]:
    """Return the addresses read from the codes of a PDF drawn at so many dots per inch."""
    return {
        code.text
        for page in pypdfium2.PdfDocument(made)
        for code in zxingcpp.read_barcodes(page.render(scale=dpi / 72).to_pil().convert("L"))
    }
