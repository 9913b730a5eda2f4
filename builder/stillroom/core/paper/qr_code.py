"""The QR code that leads from paper to a recipe's page, drawn so that a cheap printer keeps it.

ISO/IEC 18004: a quiet zone of 4 modules all round. The side of one module is never under
0.4 mm, so that a telephone still reads it after a printer has shrunk the page by a fifth.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

QUIET_MODULES = 4
"""ISO/IEC 18004:2015, 6.3.8 (from memory)."""

SMALLEST_MODULE_MM = 0.4
"""Maker's own: 2.4 dots at 150 dpi, 1.9 after a shrink of a fifth. Tested by decoding."""

MODULE_MM = 0.42

LONGEST_ADDRESS = 300
"""Bytes; beyond it the code outgrows every card."""


NO_SQUARES = (
    "They bear no square to scan, since the book has no address yet: once it has one, write "
    '"site_url: https://…" in mkdocs.yml.'
)
"""What is said of cards and tags without an address to lead to."""
_DARK = late_regex("1+")


@dataclass(frozen=True)
class QrCode:
    """A code as one SVG, `size_mm` on each side with its quiet zone."""

    address: str
    svg: str
    size_mm: float


@lru_cache(maxsize=4096)  # the page, its card and the print room ask for the same one
def draw_qr(address: str, *, module_mm: float = MODULE_MM) -> QrCode:
    """Draw the code of an address with the most correction that costs no further module.

    Raises:
        Unreadable: for an empty or endless address or a module too small to print.

    >>> draw_qr("https://book.example/r/quince-ratafia/").size_mm
    15.54
    """
    if not address or len(address.encode()) > LONGEST_ADDRESS:
        raise Unreadable(
            f"An address of {len(address.encode())} letters makes no readable code.",
            f'Write a "site_url:" of 1 to {LONGEST_ADDRESS} letters.',
        )
    if module_mm < SMALLEST_MODULE_MM:
        raise Unreadable(f"Squares of {module_mm:g} mm are too small to print well.")
    from stillroom.core.paper.qr_mask import best_rows  # late: who only asks how long one may be

    rows = best_rows(address)
    modules = len(rows) + 2 * QUIET_MODULES
    return QrCode(address, _svg(rows, modules, module_mm), round(modules * module_mm, 2))


def _svg(rows: tuple[str, ...], modules: int, module_mm: float) -> str:
    """Draw the dark modules as filled runs: stroked rows leave hairlines between them in print."""
    runs = []
    for y, row in enumerate(rows, start=QUIET_MODULES):
        for dark in _DARK.finditer(row):
            width = dark.end() - dark.start()
            runs.append(f"M{dark.start() + QUIET_MODULES} {y}h{width}v1h-{width}z")
    size = f"{modules * module_mm:.2f}mm"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{size}" height="{size}" '
        f'viewBox="0 0 {modules} {modules}"><path fill="#fff" d="M0 0h{modules}v{modules}H0z"/>'
        f'<path fill="#000" shape-rendering="crispEdges" d="{"".join(runs)}"/></svg>'
    )
