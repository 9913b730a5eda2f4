"""What is cut for a gift, as the print room shows it: the data of its script, a table of lids."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from stillroom.core.paper.cut_layout import layout_measures
from stillroom.core.paper.gift_cuts import (
    LID_HEIGHT_MM,
    cloth_square_mm,
    cut_measures,
    gift_words,
    ribbon_mm,
)
from stillroom.core.paper.gift_pieces import cuts_data, say_allowances
from stillroom.publish.card_page import paper_data
from stillroom.publish.library import Library

USUAL_LIDS_MM: Final = (43, 58, 63, 70, 82)
"""Widths of the screw lids of common preserving jars. From memory."""


@dataclass(frozen=True)
class LidRow:
    """A usual lid with its cloth and ribbon, in mm."""

    across: int
    cloth: int
    ribbon: int


@dataclass(frozen=True)
class GiftCutsView:
    """What fragments/gift-cuts.html shows."""

    data: Mapping[str, Any]
    papers: tuple[Mapping[str, Any], ...]
    lids: tuple[LidRow, ...]
    lid_height: int
    largest: int
    turns: tuple[str, ...]
    parts: Mapping[str, str]
    allowances: str


def make_gift_cuts(library: Library) -> GiftCutsView:
    """Return everything the print room says of cloth, ribbon, labels and boxes."""
    papers, words = paper_data(library)["papers"], gift_words()
    return GiftCutsView(
        data=cuts_data() | {"papers": papers, "layout": layout_measures()},
        papers=tuple(papers),
        lids=tuple(LidRow(mm, cloth_square_mm(mm), ribbon_mm(mm)) for mm in USUAL_LIDS_MM),
        lid_height=LID_HEIGHT_MM,
        largest=cut_measures()["largest"],
        turns=tuple(words["turns"][1:]),
        parts=words["parts"],
        allowances=say_allowances(),
    )
