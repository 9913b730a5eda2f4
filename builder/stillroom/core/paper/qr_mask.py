"""The modules of a QR code under the mask that the standard wants, found in a few steps.

A symbol is one whole number, row after row and a module a bit, so that each rule is asked of all
modules at once: judged module by module, the eight masks of one code take longer than all else on a
recipe's page. The rules are ISO/IEC 18004:2015, 7.8.2 and 7.8.3.1, as segno restates them; a test
holds the choice against segno's own. Leaves out how a code is drawn (qr_code.py).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import segno
from segno import consts

from stillroom.core.paper.qr_symbol import placing, symbol_of

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
class _Lines:
    """The rows or the columns: how far one module of a line is from the next as bits.

    `begin` are the places where what looks like a finder may begin; `beside` tells, 1 to 4 modules
    from it, which modules have one of the same line so far behind them, and which beyond a finder.
    """

    step: int
    begin: int
    beside: tuple[tuple[int, int], ...]


@dataclass(frozen=True)
class _Layout:
    """The places of a symbol of one size: `masks` are each mask's dark modules among the data."""

    size: int
    masks: tuple[int, ...]
    said: int
    not_last_column: int
    not_last_row: int
    lay: Callable[[bytes], int]
    lines: tuple[_Lines, _Lines]


def best_rows(text: str) -> tuple[str, ...]:
    """Return the rows of a text's code, "1" for a dark module, with all correction that is free.

    The smallest symbol, then the highest level that fits it, then the mask of the least penalty.
    """
    version, level, bare = _bare(text)
    layout = _layout(version)
    masked = [bare ^ mask for mask in layout.masks]
    penalties = [_penalty(modules, layout) for modules in masked]
    best = penalties.index(min(penalties))
    whole = masked[best] | _said(version, level, best)
    size = layout.size
    return tuple(
        format(whole >> row * size & (1 << size) - 1, f"0{size}b")[::-1] for row in range(size)
    )


def _bare(text: str) -> tuple[int, str, int]:
    """Return a text's version and level, and its modules with no mask on them."""
    if symbol := symbol_of(text):
        return symbol.version, symbol.level, _layout(symbol.version).lay(symbol.codewords)
    code = segno.make(text, error="l", boost_error=True, micro=False, mask=0)
    layout = _layout(int(code.version))
    bare = _as_number(code.matrix) & ~layout.said ^ layout.masks[0]
    return int(code.version), str(code.error), bare


def _as_number(matrix: tuple[bytearray, ...]) -> int:
    modules = b"".join(matrix)[::-1].translate(bytes.maketrans(b"\0\1", b"01"))
    return int(modules, 2)


@lru_cache(maxsize=64)
def _layout(version: int) -> _Layout:
    size = 17 + 4 * version
    any_code = segno.make("0", version=version, error="l", mask=0, boost_error=False)
    kinds = [[*row] for row in any_code.matrix_iter(border=0, verbose=True)]
    places = [(i, j) for i in range(size) for j in range(size)]
    said = {place for place in places if _tells(*place, size)}
    # segno's own naming of the places takes one module of the data for one that tells
    fixed = {(i, j) for i, j in places if kinds[i][j] not in _DATA} - {(8, size - 9)} | said
    free = frozenset(places) - fixed
    dark = {(i, j) for i, j in fixed - said if any_code.matrix[i][j]}
    return _Layout(
        size,
        tuple(_number(place not in fixed and mask(*place) for place in places) for mask in _MASKS),
        _number(place in said for place in places),
        _number(j < size - 1 for _, j in places),
        _number(i < size - 1 for i, _ in places),
        placing(size, free, dark),
        (_lines_of(size, [j for _, j in places], 1), _lines_of(size, [i for i, _ in places], size)),
    )


def _number(dark: Iterable[bool]) -> int:
    return sum(1 << place for place, is_dark in enumerate(dark) if is_dark)


def _lines_of(size: int, at: Sequence[int], step: int) -> _Lines:
    """Return the lines of a way, `at` being where in its line each module stands."""

    def before(end: int) -> int:
        return _number(place < end for place in at)

    last = size - _LIKE_A_FINDER
    beside = range(1, _LIGHT_BESIDE + 1)
    return _Lines(
        step,
        before(last + 1),
        tuple((before(size - away), before(last + 1 - away)) for away in beside),
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
    return _as_number(told.matrix) & _layout(version).said


def _penalty(modules: int, layout: _Layout) -> int:
    """Return N1 + N2 + N3 + N4 of table 11: runs, blocks, what looks like a finder, balance."""
    size = layout.size
    across = ~(modules ^ modules >> 1) & layout.not_last_column
    down = ~(modules ^ modules >> size) & layout.not_last_row
    blocks = 3 * (across & across >> size & down).bit_count()
    share = modules.bit_count() / size**2
    balance = 10 * int(abs(share * 100 - 50) / 5)
    finders = 40 * sum(_like_finders(modules, size, lines) for lines in layout.lines)
    return _runs(across, 1) + _runs(down, size) + blocks + finders + balance


def _runs(alike: int, step: int) -> int:
    """Return 3 for each run of 5 modules alike and 1 for each further one of it."""
    long = alike & alike >> step
    long &= long >> 2 * step
    return long.bit_count() + 2 * (long & ~(long << step)).bit_count()


def _like_finders(modules: int, size: int, lines: _Lines) -> int:
    """Count dark, light, 3 dark, light, dark in a line with 4 light modules before or behind."""
    step = lines.step
    found = modules & ~(modules >> step) & lines.begin
    for place in (2, 3, 4, 6):
        found &= modules >> place * step
    found &= ~(modules >> 5 * step)
    if not found:
        return 0
    before = behind = 0
    for beside, (has_before, has_behind) in enumerate(lines.beside, start=1):
        before |= (modules & has_before) << beside * step
        behind |= (modules >> (beside + _LIKE_A_FINDER - 1) * step) & has_behind
    apart = found & ~(before & behind)
    if not found & (found << 4 * step | found << 6 * step):  # where two may share modules
        return apart.bit_count()
    return _count_in_turn(found, apart, size, step)


def _count_in_turn(found: int, apart: int, size: int, step: int) -> int:
    """Count those that are apart, each line from its begin: one that counts hides what it shares.

    One that is not apart hides what begins on its first 4 modules alone, which none can.
    """
    counted = 0
    line, free_from = -1, 0
    for this, at in _places(found, size, step):
        if this != line:
            line, free_from = this, 0
        row, column = (this, at) if step == 1 else (at, this)
        if at >= free_from and apart >> row * size + column & 1:
            counted, free_from = counted + 1, at + _LIKE_A_FINDER
    return counted


def _places(found: int, size: int, step: int) -> list[tuple[int, int]]:
    """Return line and place of each module, in order."""
    places = []
    while found:
        row, column = divmod((found & -found).bit_length() - 1, size)
        places.append((row, column) if step == 1 else (column, row))
        found &= found - 1
    return sorted(places)
