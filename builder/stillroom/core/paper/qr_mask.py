"""The modules of a QR code under the mask that the standard wants, found in a few steps.

A symbol is one whole number, row after row and a module a bit, so that each rule is asked of all
modules at once: judged module by module, the eight masks of one code take longer than all else on a
recipe's page. The rules are ISO/IEC 18004:2015, 7.8.2 and 7.8.3.1, as segno restates them; a test
holds the choice against segno's own. Leaves out how a code is drawn (qr_code.py).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import segno
from segno import consts

_MASKS: Final[tuple[Callable[[int, int], bool], ...]] = (
    lambda i, j: (i + j) % 2 == 0,
    lambda i, j: i % 2 == 0,
    lambda i, j: j % 3 == 0,
    lambda i, j: (i + j) % 3 == 0,
    lambda i, j: (i // 2 + j // 3) % 2 == 0,
    lambda i, j: (i * j) % 2 + (i * j) % 3 == 0,
    lambda i, j: ((i * j) % 2 + (i * j) % 3) % 2 == 0,
    lambda i, j: ((i + j) % 2 + (i * j) % 3) % 2 == 0,
)
_DATA: Final = frozenset({consts.TYPE_DATA_DARK, consts.TYPE_DATA_LIGHT})
_TIMING: Final = 6
_LIKE_A_FINDER: Final = 7
_LIGHT_BESIDE: Final = 4


@dataclass(frozen=True)
class _Layout:
    """The places of a symbol of one size: `masks` are each mask's dark modules among the data."""

    size: int
    masks: tuple[int, ...]
    said: int
    not_last_column: int
    not_last_row: int


def best_rows(text: str) -> tuple[str, ...]:
    """Return the rows of a text's code, "1" for a dark module, with all correction that is free.

    The smallest symbol, then the highest level that fits it, then the mask of the least penalty.
    """
    code = segno.make(text, error="l", boost_error=True, micro=False, mask=0)
    layout = _layout(int(code.version), len(code.matrix))
    bare = _as_number(code.matrix) & ~layout.said ^ layout.masks[0]
    masked = [bare ^ mask for mask in layout.masks]
    penalties = [_penalty(modules, layout) for modules in masked]
    best = penalties.index(min(penalties))
    whole = masked[best] | _said(int(code.version), str(code.error), best)
    size = layout.size
    return tuple(
        format(whole >> row * size & (1 << size) - 1, f"0{size}b")[::-1] for row in range(size)
    )


def _as_number(matrix: tuple[bytearray, ...]) -> int:
    modules = b"".join(matrix)[::-1].translate(bytes.maketrans(b"\0\1", b"01"))
    return int(modules, 2)


@lru_cache(maxsize=64)
def _layout(version: int, size: int) -> _Layout:
    any_code = segno.make("0", version=version, error="l", mask=0, boost_error=False)
    kinds = [[*row] for row in any_code.matrix_iter(border=0, verbose=True)]
    places = [(i, j) for i in range(size) for j in range(size)]
    said = {place for place in places if _tells(*place, size)}
    # segno's own naming of the places takes one module of the data for one that tells
    fixed = {(i, j) for i, j in places if kinds[i][j] not in _DATA} - {(8, size - 9)} | said

    def number(dark: Iterable[bool]) -> int:
        return sum(1 << place for place, is_dark in enumerate(dark) if is_dark)

    return _Layout(
        size,
        tuple(number(place not in fixed and mask(*place) for place in places) for mask in _MASKS),
        number(place in said for place in places),
        number(j < size - 1 for _, j in places),
        number(i < size - 1 for i, _ in places),
    )


def _tells(i: int, j: int, size: int) -> bool:
    """Say whether a module tells level, mask or version (7.9, 7.10): light while trying masks."""
    ends = (*range(9), *range(size - 8, size))
    least, most = sorted((i, j))
    if size > 41 and least < 6 and size - 12 < most < size - 8:
        return True
    return _TIMING not in (i, j) and 8 in (i, j) and i in ends and j in ends


@lru_cache(maxsize=512)
def _said(version: int, level: str, mask: int) -> int:
    """Return the dark modules that tell version, level and mask."""
    told = segno.make("0", version=version, error=level, mask=mask, boost_error=False)
    return _as_number(told.matrix) & _layout(version, len(told.matrix)).said


def _penalty(modules: int, layout: _Layout) -> int:
    """Return N1 + N2 + N3 + N4 of table 11: runs, blocks, what looks like a finder, balance."""
    size = layout.size
    across = ~(modules ^ modules >> 1) & layout.not_last_column
    down = ~(modules ^ modules >> size) & layout.not_last_row
    blocks = 3 * (across & across >> size & down).bit_count()
    share = modules.bit_count() / size**2
    balance = 10 * int(abs(share * 100 - 50) / 5)
    finders = 40 * (_like_finders(modules, size, 1) + _like_finders(modules, size, size))
    return _runs(across, 1) + _runs(down, size) + blocks + finders + balance


def _runs(alike: int, step: int) -> int:
    """Return 3 for each run of 5 modules alike and 1 for each further one of it."""
    long = alike & alike >> step
    long &= long >> 2 * step
    return long.bit_count() + 2 * (long & ~(long << step)).bit_count()


def _like_finders(modules: int, size: int, step: int) -> int:
    """Count dark, light, 3 dark, light, dark in a line with 4 light modules before or behind."""
    found = modules & ~(modules >> step)
    for place in (2, 3, 4, 6):
        found &= modules >> place * step
    found &= ~(modules >> 5 * step)
    counted = 0
    line, free_from = -1, 0
    for this, at in _places(found, size, step):
        if this != line:
            line, free_from = this, 0
        if at < free_from:
            continue
        if _is_apart(modules, size, step, this, at):
            counted, free_from = counted + 1, at + _LIKE_A_FINDER
        else:
            free_from = at + 4
    return counted


def _places(found: int, size: int, step: int) -> list[tuple[int, int]]:
    """Return line and place of each module in order; none that would go on in another line."""
    places = []
    while found:
        row, column = divmod((found & -found).bit_length() - 1, size)
        line, at = (row, column) if step == 1 else (column, row)
        if at <= size - _LIKE_A_FINDER:
            places.append((line, at))
        found &= found - 1
    return sorted(places)


def _is_apart(modules: int, size: int, step: int, line: int, at: int) -> bool:
    """Say whether what looks like a finder has light modules, or the edge, on either side."""
    begin = line * (size if step == 1 else 1)

    def light(from_: int, to: int) -> bool:
        return not any(modules >> begin + place * step & 1 for place in range(from_, to))

    behind = at + _LIKE_A_FINDER
    return (
        at in (0, size - _LIKE_A_FINDER)
        or light(max(at - _LIGHT_BESIDE, 0), at)
        or light(behind, min(behind + _LIGHT_BESIDE, size))
    )
