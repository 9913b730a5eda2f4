"""What is cut for a gift, drawn to scale where it goes on the paper: cloth, ribbon, box nets."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from stillroom.core.gift_cuts import BoxNet, box_net, cloth_square_mm, ribbon_mm
from stillroom.core.paper import Size
from stillroom.core.problems import Unreadable
from stillroom.printing.language import split_language
from stillroom.printing.typesetting import typeset

MARGIN_MM = 10


@dataclass(frozen=True)
class GiftMeasures:
    """What was measured: a lid across, the inside of a box; mm."""

    lid_mm: float = 0
    box: BoxNet | None = None

    @classmethod
    def read(cls, lid_mm: float, box: str | None) -> GiftMeasures:
        """Read what was typed; raises Unreadable for nothing or for what is no box."""
        if not box and not lid_mm:
            raise Unreadable("Nothing was measured.", "Write --lid 70, or --box 80,60,40,20.")
        if not box:
            return cls(lid_mm)
        try:
            long, wide, high, lid = (float(part) for part in box.split(","))
        except ValueError:
            raise Unreadable(f'"{box}" is not a box.', 'Write "80,60,40,20".') from None
        return cls(lid_mm, box_net(long, wide, high, lid))


def print_cuts(measures: GiftMeasures, paper: Size, language: str = "en_GB") -> bytes:
    """Return one page for each piece; what is larger than the paper is told, not drawn."""
    spoken, region = split_language(language)
    data = {
        "title": "To cut for a gift",
        "language": spoken,
        "region": region,
        "paper": {"width": float(paper.width_mm), "height": float(paper.height_mm)},
        "pieces": [_fitting(piece, paper) for piece in _pieces(measures)],
    }
    return typeset("cuts.typ", data).pdf


def _pieces(measures: GiftMeasures) -> list[dict[str, Any]]:
    pieces: list[dict[str, Any]] = []
    if measures.lid_mm:
        side = cloth_square_mm(measures.lid_mm)
        ribbon = ribbon_mm(measures.lid_mm)
        words = f"A square of cloth {side} x {side} mm for a lid of {measures.lid_mm:g} mm, and "
        words += f"{ribbon} mm of ribbon to tie it with a bow."
        pieces.append(
            {"name": "Cloth", "words": words, "width": side, "height": side, "wall": 0,
             "lid": measures.lid_mm}
        )  # fmt: skip
    if measures.box:
        net = measures.box
        for name, flat, wall in (
            ("Box", net.base_flat, net.base_wall_mm),
            ("Lid of the box", net.lid_flat, net.lid_wall_mm),
        ):
            words = f"{flat.width_mm:g} x {flat.height_mm:g} mm of card, walls of {wall:g} mm. "
            words += "Cut the whole lines, fold the dashed ones, glue the tabs inside."
            pieces.append(
                {"name": name, "words": words, "width": flat.width_mm, "height": flat.height_mm,
                 "wall": wall, "lid": 0}
            )  # fmt: skip
    return pieces


def _fitting(piece: dict[str, Any], paper: Size) -> dict[str, Any]:
    room = (float(paper.width_mm) - 2 * MARGIN_MM, float(paper.height_mm) - 2 * MARGIN_MM - 30)
    upright = piece["width"] <= room[0] and piece["height"] <= room[1]
    return piece | {"drawn": upright}
