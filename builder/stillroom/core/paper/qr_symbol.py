"""The modules of an address's code before a mask lies on them, by a few sums on whole numbers.

The codewords of a plain address, their correction (polynomials over GF(256)) and where each of
their bits lies: ISO/IEC 18004:2015, 7.4 to 7.7 (from memory; segno's tables of capacities and
blocks). A test holds every module against segno's own, which takes ten times as long. Leaves out
all that is written otherwise than in bytes, as capitals alone are, and the masks: qr_mask.py.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, zip_longest
from operator import itemgetter
from typing import Any, Final, cast

from segno import consts

_LEVELS: Final = (
    (consts.ERROR_LEVEL_H, "H"),
    (consts.ERROR_LEVEL_Q, "Q"),
    (consts.ERROR_LEVEL_M, "M"),
    (consts.ERROR_LEVEL_L, "L"),
)
"""The most correction first."""
_ROOM: Final = cast("Mapping[int, Mapping[int, int]]", consts.SYMBOL_CAPACITY)
"""Bits that a version holds at a level."""
_BLOCKS: Final = cast("Mapping[int, Mapping[int, Sequence[Any]]]", consts.ECC)
_BYTES: Final = 0b0100
_PADS: Final = (0xEC, 0x11)
_LARGEST: Final = 40
_LONG_COUNT_FROM: Final = 10
"""The version from which the count of letters is written in two bytes."""


@dataclass(frozen=True)
class Symbol:
    """The smallest version that holds a text, the highest level that is free, the codewords."""

    version: int
    level: str
    codewords: bytes


def symbol_of(text: str) -> Symbol | None:
    """Return the symbol of a text that is written in bytes, letter by letter; else None.

    >>> symbol_of("https://book.example/").level, symbol_of("HTTPS://BOOK.EXAMPLE/") is None
    ('M', True)
    """
    if not text.isascii() or text == text.upper():
        return None
    data = text.encode()
    for version in range(1, _LARGEST + 1):
        size = 8 if version < _LONG_COUNT_FROM else 16
        bits = 4 + size + 8 * len(data)
        for level, name in _LEVELS:
            if _ROOM[version][level] >= bits:
                return Symbol(version, name, _codewords(data, size, version, level))
    return None


def _codewords(data: bytes, size: int, version: int, level: int) -> bytes:
    whole = ((_BYTES << size | len(data)) << 8 * len(data) | int.from_bytes(data)) << 4
    written = whole.to_bytes(len(data) + 1 + size // 8)
    room = _ROOM[version][level] // 8
    # segno sets an empty codeword before the pads: nothing is read behind the end of a text
    written += bytes((0, *_PADS * room)[: room - len(written)])
    blocks: list[bytes] = []
    checks: list[bytes] = []
    begins = 0
    for sort in _BLOCKS[version][level]:
        for _ in range(sort.num_blocks):
            blocks.append(written[begins : begins + sort.num_data])
            checks.append(_remainder(blocks[-1], sort.num_total - sort.num_data))
            begins += sort.num_data
    return _in_turn(blocks) + _in_turn(checks)


def _in_turn(blocks: Sequence[bytes]) -> bytes:
    """Return the first byte of each block, then the second of each that has one, and so on."""
    if len(blocks) == 1:
        return blocks[0]
    return bytes(one for one in chain(*zip_longest(*blocks)) if one is not None)


def _remainder(block: bytes, count: int) -> bytes:
    """Return a block's words of correction: what its polynomial leaves, divided by another."""
    steps, rest = _steps(count), 0
    top, below = 8 * (count - 1), (1 << 8 * (count - 1)) - 1
    for byte in block:
        rest = (rest & below) << 8 ^ steps[rest >> top ^ byte]
    return rest.to_bytes(count)


@lru_cache(maxsize=64)
def _steps(count: int) -> tuple[int, ...]:
    """Return what each leading byte leaves of the division by the generator of so many words."""
    roots = consts.GEN_POLY[count]
    log, power = consts.GALIOS_LOG, consts.GALIOS_EXP

    def step(byte: int) -> int:
        return int.from_bytes(bytes(power[log[byte] + root] for root in roots)) if byte else 0

    return tuple(step(byte) for byte in range(256))


def placing(
    size: int, free: Collection[tuple[int, int]], dark: Collection[tuple[int, int]]
) -> Callable[[bytes], int]:
    """Return what lays codewords out in a symbol of a size, as one number, a module a bit.

    `free` are the places of the data, `dark` the modules that are dark in every symbol.
    """
    order = {place: bit for bit, place in enumerate(_snake(size, free))}
    remainder = len(free) % 8
    unset = len(free)  # behind the bits of the data stand a light module and a dark one
    places = ((i, j) for i in reversed(range(size)) for j in reversed(range(size)))
    pick = itemgetter(*(order.get(one, unset + (one in dark)) for one in places))

    def lay(codewords: bytes) -> int:
        bits = f"{int.from_bytes(codewords):0{8 * len(codewords)}b}{'0' * remainder}01"
        return int("".join(pick(bits)), 2)

    return lay


def _snake(size: int, free: Collection[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    """Yield the places of the data in order: two columns at a time from the right, up and down."""
    upwards = True
    for right in (*range(size - 1, 6, -2), 5, 3, 1):
        rows = range(size)
        for i in reversed(rows) if upwards else rows:
            yield from (place for place in ((i, right), (i, right - 1)) if place in free)
        upwards = not upwards
