"""Pieces to be cut, laid close together on as few sheets as they go on.

Each piece is a rectangle with room for its words; it may lie on its side. The largest are laid
first, each where it leaves the least over. Lengths are millimetres. Leaves out what is drawn.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from stillroom.core.words.problems import Unreadable


@dataclass(frozen=True, slots=True)
class Laid:
    """Where a piece lies: its number as handed in, its sheet, its corner, whether on its side."""

    piece: int
    sheet: int
    x_mm: float
    y_mm: float
    turned: bool


@dataclass(frozen=True, slots=True)
class _Room:
    x: float
    y: float
    width: float
    height: float


def nest(
    pieces: Sequence[tuple[float, float]], width_mm: float, height_mm: float, gap_mm: float = 3
) -> tuple[Laid, ...]:
    """Lay pieces on sheets of this free size; raises Unreadable for one that is larger.

    >>> [(one.piece, one.x_mm, one.turned) for one in nest([(100, 40), (100, 40)], 190, 250)]
    [(0, 0, False), (1, 103, True)]
    """
    order = sorted(range(len(pieces)), key=lambda n: -(pieces[n][0] * pieces[n][1]))
    sheets: list[list[_Room]] = []
    laid: dict[int, Laid] = {}
    for number in order:
        wide, high = pieces[number]
        found = _best(sheets, wide + gap_mm, high + gap_mm)
        if found is None:
            sheets.append([_Room(0, 0, width_mm + gap_mm, height_mm + gap_mm)])
            found = _best(sheets[-1:], wide + gap_mm, high + gap_mm)
            if found is None:
                raise Unreadable("A piece is larger than the paper.")
            found = (len(sheets) - 1, *found[1:])
        sheet, room, turned = found
        taken = (high, wide) if turned else (wide, high)
        laid[number] = Laid(number, sheet, room.x, room.y, turned)
        used = _Room(room.x, room.y, taken[0] + gap_mm, taken[1] + gap_mm)
        sheets[sheet] = _without(sheets[sheet], used)
    return tuple(laid[number] for number in range(len(pieces)))


def _best(sheets: list[list[_Room]], wide: float, high: float) -> tuple[int, _Room, bool] | None:
    """Return the room with the shortest rest beside the piece: sheet, room, whether on its side."""
    fits = [
        (number, min(room.width - across, room.height - down), room.y, room.x, turned, room)
        for number, rooms in enumerate(sheets)
        for room in rooms
        for across, down, turned in ((wide, high, False), (high, wide, True))
        if across <= room.width and down <= room.height
    ]
    if not fits:
        return None
    number, _, _, _, turned, room = min(fits, key=lambda one: one[:5])
    return number, room, turned


def _without(rooms: list[_Room], used: _Room) -> list[_Room]:
    """Return the largest free rectangles that are left once `used` is taken."""
    left: list[_Room] = []
    right, foot = used.x + used.width, used.y + used.height
    for room in rooms:
        far, low = room.x + room.width, room.y + room.height
        if used.x >= far or right <= room.x or used.y >= low or foot <= room.y:
            left.append(room)
            continue
        if used.x > room.x:
            left.append(_Room(room.x, room.y, used.x - room.x, room.height))
        if right < far:
            left.append(_Room(right, room.y, far - right, room.height))
        if used.y > room.y:
            left.append(_Room(room.x, room.y, room.width, used.y - room.y))
        if foot < low:
            left.append(_Room(room.x, foot, room.width, low - foot))
    return [one for one in left if not any(one != other and _holds(other, one) for other in left)]


def _holds(outer: _Room, inner: _Room) -> bool:
    return (
        outer.x <= inner.x
        and outer.y <= inner.y
        and outer.x + outer.width >= inner.x + inner.width
        and outer.y + outer.height >= inner.y + inner.height
    )
