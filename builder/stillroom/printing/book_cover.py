"""The cover of a glued book in one piece: back, spine and front, as wide as its pages are thick.

How thick a leaf is stands in staples/leaf_thickness.yml. Leaves out the pages (family_book.py) and
covers of board and cloth, which are cut by whoever binds them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.words.data_files import read_data
from stillroom.core.words.problems import Unreadable
from stillroom.printing.family_book import BLEED_MM
from stillroom.printing.typesetting import typeset

FEWEST_PAGES, MOST_PAGES = 32, 1200
"""Fewer are stapled, not glued; more fall out of a glued back: common practice, no source."""


@dataclass(frozen=True)
class Spine:
    """The back of a book: how wide it is, of what leaf, and who says how thick that is."""

    pages: int
    leaf_mm: Fraction
    width_mm: Fraction
    source: str

    @property
    def bears_words(self) -> bool:
        """Whether it is wide enough for a title."""
        return self.width_mm >= _table("least_spine_with_words")


def _table(name: str) -> Fraction:
    return Fraction(read_data("leaf_thickness.yml")[name]["mm"])


def measure_spine(pages: int, gsm: int | None = None, leaf_mm: Fraction | None = None) -> Spine:
    """Return the spine of so many pages, by a leaf that was measured or by the paper's weight.

    Raises Unreadable for a count or a paper that no glued book has.

    >>> measure_spine(200, gsm=89).width_mm
    Fraction(127, 10)
    """
    if not FEWEST_PAGES <= pages <= MOST_PAGES:
        raise Unreadable(
            f"A glued book has {FEWEST_PAGES} to {MOST_PAGES} pages, and this has {pages}.",
            "Staple a thinner one (print book --booklet), or divide a thicker one.",
        )
    source = "measured by the maker"
    if leaf_mm is None:
        leaf_mm, source = _by_weight(gsm)
    if not Fraction("0.03") <= leaf_mm <= Fraction("0.5"):
        raise Unreadable(
            f"A leaf of {float(leaf_mm):g} mm is no leaf of a book.",
            'Measure 100 leaves in mm and divide by 100: "--leaf 0.11".',
        )
    leaves = -(-pages // 2)
    width = leaves * leaf_mm + 2 * _table("cover") + _table("glue")
    return Spine(pages, leaf_mm, width, source)


def _by_weight(gsm: int | None) -> tuple[Fraction, str]:
    """Return the thickness of a leaf and who says so; between two weights by their difference."""
    rows = read_data("leaf_thickness.yml")["leaves"]
    wanted = gsm or 89
    below = [row for row in rows if row["gsm"] <= wanted]
    above = [row for row in rows if row["gsm"] >= wanted]
    if not below or not above:
        raise Unreadable(
            f"How thick paper of {wanted} g/m² is, is not known here.",
            f"Choose from {rows[0]['gsm']} to {rows[-1]['gsm']}, or measure 100 leaves in mm and "
            'divide by 100: "--leaf 0.11".',
        )
    low, high = below[-1], above[0]
    thin, thick = Fraction(low["mm"]), Fraction(high["mm"])
    if low is high:
        return thin, str(low["source"])
    share = Fraction(wanted - low["gsm"], high["gsm"] - low["gsm"])
    return thin + share * (thick - thin), f"between two papers: {low['source']}"


def print_cover(data: Mapping[str, Any], spine: Spine, fonts: Path | None = None) -> bytes:
    """Return the cover as one page with its bleed, the folds marked outside the trimmed page."""
    page = PAPERS["a5"]
    code = draw_qr(data["url"]) if data["url"] else None
    shown = {
        name: data[name]
        for name in ("title", "subtitle", "language", "region", "cover_svg", "cover_alt", "imprint")
    }
    shown |= {
        "whom": data["household"]["whom"],
        "page": {"width": float(page.width_mm), "height": float(page.height_mm)},
        "spine_mm": float(spine.width_mm),
        "spine_words": spine.bears_words,
        "bleed_mm": BLEED_MM,
        "url": data["url"],
        "qr_svg": code.svg if code else "",
        "qr_mm": code.size_mm if code else 0,
    }
    return typeset("cover.typ", shown, fonts=fonts).pdf
