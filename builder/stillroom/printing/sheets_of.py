"""Lays cards, tags and labels on sheets: what Typst is told about where each box stands.

Leaves out how a box looks (the templates) and what it says (card_data).
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Any

from stillroom.core.paper.sheets import Grid, free_places, places
from stillroom.core.words.problems import Unreadable


def lay_sheets(
    grid: Grid,
    copies: Sequence[int],
    start_at: int,
    used: Sequence[int] = (),
    shift_mm: tuple[float, float] = (0.0, 0.0),
) -> list[list[dict[str, Any]]]:
    """Return for each page the boxes on it: which card, and where in mm for front and back.

    `copies` names the card (its index) of each box in the order they are laid; `used` are places of
    the first sheet that are gone; `shift_mm` is what a printer is told to move, right and down.
    """
    pages: dict[int, list[dict[str, Any]]] = {}
    if not copies:
        raise Unreadable("Nothing was chosen to print.", "Name at least one recipe.")
    places(grid, len(copies), start_at=start_at)  # refuses absurdly many, or a start there is not
    across, down = shift_mm
    for card, at in zip(copies, free_places(grid, len(copies), start_at, used), strict=True):
        place, back = grid.place(at), grid.place(at, back=True)
        pages.setdefault(place.page, []).append(
            {
                "card": card,
                "x": float(place.x_mm) + across,
                "y": float(place.y_mm) + down,
                "back_x": float(back.x_mm) + across,
            }
        )
    return [pages[number] for number in sorted(pages)]


def cut_edges(
    grid: Grid, shift_mm: tuple[float, float] = (0.0, 0.0)
) -> tuple[list[float], list[float]]:
    """Return the x and the y of every edge that is cut, each once."""
    xs, ys = set[Fraction](), set[Fraction]()
    for index in range(grid.per_page):
        place = grid.place(index)
        xs |= {place.x_mm, place.x_mm + grid.box.width_mm}
        ys |= {place.y_mm, place.y_mm + grid.box.height_mm}
    across, down = shift_mm
    return sorted(float(x) + across for x in xs), sorted(float(y) + down for y in ys)


def refuse_what_does_not_fit(found: Sequence[dict[str, Any]], size_name: str) -> None:
    """Raise Unreadable naming each card that no face of this size can hold, and which part."""
    refused = [one for one in found if not one["fits"]]
    if not refused:
        return
    said = []
    for one in refused:
        if one.get("word"):
            said.append(f'"{one["title"]}": the word "{one["word"]}" is longer than a line')
        else:
            said.append(f'"{one["title"]}": {one["part"]}, {max(one["over"], 0.1):.1f} mm too much')
    raise Unreadable(
        f"These do not fit on {size_name} at a readable size: {'; '.join(said)}.",
        "Choose a larger size, or write less. Nothing was left out and nothing was printed.",
    )


def refuse_backs(found: Sequence[dict[str, Any]]) -> None:
    """Raise Unreadable naming each card that needs two sides: a label's back is its glue."""
    titles = [f'"{one["title"]}"' for one in found if len(one.get("sides", ())) > 1]
    if titles:
        need = "needs" if len(titles) == 1 else "need"
        raise Unreadable(
            f"A label has no back: {', '.join(titles)} {need} two sides.",
            "Choose a larger label, or tags.",
        )


def refuse_year(found: Sequence[dict[str, Any]], paper_name: str, *, joined: bool) -> None:
    """Raise Unreadable naming the fullest month when the year goes on no one sheet, or no two."""
    if not found[0]["fits"]:
        sheets = f"two {paper_name} sheets" if joined else f"one {paper_name} sheet"
        raise Unreadable(
            f"The year does not fit on {sheets} at a readable size: "
            f"{found[0]['month']} is the fullest month.",
            "Name the recipes you will make, as files after the command.",
        )
