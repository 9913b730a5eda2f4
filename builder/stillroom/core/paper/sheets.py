"""Paper sizes, and how many cards, tags or labels stand on a sheet and where.

Lengths are exact millimetres (Fractions). Leaves out everything that is drawn: this module only
says where boxes stand. Cloth, ribbon and nets are in ``gift_cuts``.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

_say = Said("stillroom.core.paper", "sheets")

Mm = Fraction

MAXIMUM_COPIES = 2000
"""More copies than this of one thing is a slip of the finger, and is refused."""


@dataclass(frozen=True)
class Size:
    """A named size in millimetres, with the document that sets it."""

    name: str
    width_mm: Mm
    height_mm: Mm
    source: str

    def turned(self) -> Size:
        """Return the same size lying on its other side.

        >>> PAPERS["a4"].turned().width_mm
        Fraction(297, 1)
        """
        return Size(self.name, self.height_mm, self.width_mm, self.source)


def _size(name: str, width: str, height: str, source: str) -> Size:
    return Size(name, Fraction(width), Fraction(height), source)


PAPERS = {
    "a4": _size("A4", "210", "297", "ISO 216"),
    "letter": _size("US Letter", "215.9", "279.4", "ANSI/ASME Y14.1, 8.5 x 11 in; from memory"),
    "a5": _size("A5", "148", "210", "ISO 216"),
}
"""Papers a printer is fed with. A5 is the family book's own page."""

WALL_PAPERS = {
    "a4": PAPERS["a4"],
    "letter": PAPERS["letter"],
    "a3": _size("A3", "297", "420", "ISO 216"),
    "tabloid": _size("Tabloid", "279.4", "431.8", "ANSI/ASME Y14.1, 11 x 17 in; from memory"),
}
"""Papers the wall year is printed on: two of the small ones joined are as large as a large one."""

CARD_SIZES = {
    "90x65": _size("90 x 65 mm", "90", "65", "maker's own: eight to an A4 and to a US Letter page"),
    "a7": _size("A7, 105 x 74 mm", "105", "74", "ISO 216, lying"),
    "id-1": _size("as a bank card, 86 x 54 mm", "85.60", "53.98", "ISO/IEC 7810; from memory"),
    "folded-a6": _size("A6, folded", "105", "148", "ISO 216; opened it is A5 lying, 210 x 148"),
}
"""Usage cards as held in the hand: what is typed after ``--size``."""


def named_size(word: str, sizes: dict[str, Size]) -> Size:
    """Return the size a person named.

    Raises:
        Unreadable: when no size has that name.

    >>> named_size("A4", PAPERS).width_mm
    Fraction(210, 1)
    """
    size = sizes.get(word.strip().lower().replace(" ", "-"))
    if size is None:
        raise Unreadable(f'"{word}" is not a size known here.', did_you_mean(word, sizes))
    return size


@dataclass(frozen=True)
class Place:
    """Where one box stands on its page: the corner nearest the paper's top left, in mm."""

    page: int
    column: int
    row: int
    x_mm: Mm
    y_mm: Mm


@dataclass(frozen=True)
class Grid:
    """Equal boxes on one sheet of paper, all in millimetres.

    ``pitch`` is the distance from one box's edge to the same edge of the next.
    """

    paper: Size
    box: Size
    columns: int
    rows: int
    left_mm: Mm
    top_mm: Mm
    pitch_x_mm: Mm
    pitch_y_mm: Mm

    @property
    def per_page(self) -> int:
        """Return how many boxes stand on one sheet."""
        return self.columns * self.rows

    def place(self, index: int, *, back: bool = False) -> Place:
        """Return where the box counted `index` from 0 stands.

        On the back of a sheet the columns run the other way, so that a sheet turned over on its
        long edge has every back behind its own front.
        """
        page, on_page = divmod(index, self.per_page)
        row, column = divmod(on_page, self.columns)
        x = self.left_mm + column * self.pitch_x_mm
        if back:
            x = self.paper.width_mm - x - self.box.width_mm
        return Place(page, column, row, x, self.top_mm + row * self.pitch_y_mm)


def impose(
    paper: Size,
    box: Size,
    *,
    gap_mm: Mm = Fraction(0),
    margin_mm: Mm = Fraction(0),
    densest: bool = False,
) -> Grid:
    """Stand as many boxes as go on the paper, in the middle of it.

    Boxes stand upright as their size says, since a sheet is read as it lies; one is turned only
    when it goes on no other way, or, where they are cut apart and read singly (`densest`), when
    more go on so. `margin_mm` is kept free all round; `gap_mm` between neighbours.

    Raises:
        Unreadable: when not even one goes on.

    >>> impose(PAPERS["a4"], CARD_SIZES["90x65"]).per_page
    8
    """
    columns, rows = _counts(paper, box, gap_mm, margin_mm)
    across, down = _counts(paper, box.turned(), gap_mm, margin_mm)
    if columns * rows == 0 or (densest and across * down > columns * rows):
        box, columns, rows = box.turned(), across, down
    if columns * rows == 0:
        raise _say.refuse(
            "does_not_go", box=f"{box.name[:1].upper()}{box.name[1:]}", paper=paper.name,
            width=show_mm(box.width_mm), height=show_mm(box.height_mm),
        )  # fmt: skip
    used_x = columns * (box.width_mm + gap_mm) - gap_mm
    used_y = rows * (box.height_mm + gap_mm) - gap_mm
    return Grid(
        paper, box, columns, rows,
        (paper.width_mm - used_x) / 2, (paper.height_mm - used_y) / 2,
        box.width_mm + gap_mm, box.height_mm + gap_mm,
    )  # fmt: skip


def _counts(paper: Size, box: Size, gap: Mm, margin: Mm) -> tuple[int, int]:
    across = (paper.width_mm - 2 * margin + gap) / (box.width_mm + gap)
    down = (paper.height_mm - 2 * margin + gap) / (box.height_mm + gap)
    return max(0, math.floor(across)), max(0, math.floor(down))


LEAST_LABEL_MM = (40, 25)
"""A label less wide or less high holds no readable words. Maker's own."""


def label_box(width_mm: Mm, height_mm: Mm) -> Size:
    """Return the size of a bought label.

    Raises:
        Unreadable: when it is too small to be read.

    >>> label_box(Fraction(70), Fraction(50)).name
    'a label of 70 x 50 mm'
    """
    size = {"width": show_mm(width_mm), "height": show_mm(height_mm)}
    least_width, least_height = LEAST_LABEL_MM
    if width_mm < least_width or height_mm < least_height:
        least = {"least_width": least_width, "least_height": least_height}
        raise _say.refuse("small_label", **size, **least)
    return Size(_say("label", **size), width_mm, height_mm, "measured off its packet")


def label_sheet(
    paper: Size, box: Size, *, columns: int, rows: int, left_mm: Mm, top_mm: Mm,
    pitch_x_mm: Mm, pitch_y_mm: Mm,
) -> Grid:  # fmt: skip
    """Return the grid of a bought sheet of labels from the measures typed off its packet.

    Raises:
        Unreadable: when the labels would overlap or run off the paper.
    """
    right = left_mm + (columns - 1) * pitch_x_mm + box.width_mm
    bottom = top_mm + (rows - 1) * pitch_y_mm + box.height_mm
    if columns < 1 or rows < 1:
        raise _say.refuse("no_label")
    if left_mm < 0 or top_mm < 0 or right > paper.width_mm or bottom > paper.height_mm:
        raise _say.refuse(
            "off_the_paper", right=show_mm(right), bottom=show_mm(bottom), paper=paper.name,
            width=show_mm(paper.width_mm), height=show_mm(paper.height_mm),
        )  # fmt: skip
    overlaps_x = columns > 1 and pitch_x_mm < box.width_mm
    overlaps_y = rows > 1 and pitch_y_mm < box.height_mm
    if overlaps_x or overlaps_y:
        raise _say.refuse("overlap")
    return Grid(paper, box, columns, rows, left_mm, top_mm, pitch_x_mm, pitch_y_mm)


def places(grid: Grid, count: int, *, start_at: int = 1) -> tuple[Place, ...]:
    """Return where `count` boxes stand when the first free place of the sheet is `start_at`.

    Places are counted from 1, along the rows from the top left.

    Raises:
        Unreadable: for no copies, absurdly many, or a start the sheet has not.

    >>> [(p.page, p.row, p.column) for p in places(impose(PAPERS["a4"], CARD_SIZES["90x65"]), 2,
    ...                                            start_at=8)]
    [(0, 3, 1), (1, 0, 0)]
    """
    if not 1 <= count <= MAXIMUM_COPIES:
        raise Unreadable(f"{count} copies cannot be printed.", f"Write 1 to {MAXIMUM_COPIES}.")
    if not 1 <= start_at <= grid.per_page:
        raise Unreadable(
            f"Place {start_at} is not on this sheet.",
            f"It has {grid.per_page} places, counted along the rows from the top left.",
        )
    return tuple(grid.place(start_at - 1 + index) for index in range(count))


def free_places(
    grid: Grid, count: int, start_at: int = 1, used: Sequence[int] = ()
) -> tuple[int, ...]:
    """Return the places that `count` boxes take, counted from 0 on and past the used ones.

    Used places are counted from 1 on the first sheet; raises Unreadable for one it has not.

    >>> free_places(impose(PAPERS["a4"], CARD_SIZES["90x65"]), 4, used=(1, 3, 8))
    (1, 3, 4, 5)
    """
    wrong = next((place for place in used if not 1 <= place <= grid.per_page), None)
    if wrong is not None:
        raise _say.refuse("no_place", place=wrong, count=grid.per_page)
    gone = {place - 1 for place in used}
    free = (at for at in itertools.count(start_at - 1) if at not in gone)
    return tuple(itertools.islice(free, count))


def show_mm(length: Mm) -> str:
    """Show a length to the hundredth of a millimetre, without needless noughts.

    >>> show_mm(Fraction("85.60"))
    '85.6'
    """
    return f"{float(length):.2f}".rstrip("0").rstrip(".")
