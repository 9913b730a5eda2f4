"""What is packed in the bytes of a file: archives, compressed parts, and what runs of letters hold.

Each is known by its own first bytes, wherever it stands: behind a picture, in a chunk of one, in a
document. What packs its words so that they cannot be read here is named, never passed over.
"""

from __future__ import annotations

import bz2
import lzma
import re
import zlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from stillroom.core.private.coded_fonts import coded_words
from stillroom.core.private.wrapped import unwrap

MOST_UNPACKED: Final = 30_000_000
"""More than this is not unpacked from one file: nobody keeps a list so long."""
_DEEPEST: Final = 5
_PNG: Final = b"\x89PNG\r\n\x1a\n"
# RFC 1950 (2.2), RFC 1952 (2.3.1), the ZIP file format (4.3.7), and what bzip2 and xz begin with
_PACKED: Final = re.compile(
    rb"\x78[\x01\x5e\x9c\xda]|\x1f\x8b\x08|PK\x03\x04|BZh[1-9]1AY&SY|\xfd7zXZ\x00|\A\x5d\x00\x00"
)
_SEALED: Final = (
    (re.compile(rb"\A(?:wOF2|.{0,3}wOF2)"), "a font that is packed by Brotli"),
    (re.compile(rb"\A\x28\xb5\x2f\xfd"), "packed by Zstandard"),
    (re.compile(rb"\A7z\xbc\xaf\x27\x1c"), "an archive of the 7z sort"),
    (re.compile(rb"\ARar!\x1a\x07"), "an archive of the RAR sort"),
    (re.compile(rb"\A%PDF-.*/Encrypt\b", re.DOTALL), "a document under a password"),
)
_LONGEST_STORED: Final = 2_000_000
"""What is longer and not packed is looked through with the archive that holds it."""
_PIECES: Final = (64, 4096, 65_536)


@dataclass
class Layers:
    """All that one file holds, layer by layer, and what of it could not be read."""

    found: list[bytes] = field(default_factory=list)
    points: bytes = b""
    """The points of a picture: they are sought as they stand."""
    sealed: str = ""
    left: int = MOST_UNPACKED


def unpack(data: bytes) -> Layers:
    """Return the bytes of a file and all that is wrapped up in them."""
    layers = Layers()
    if data.startswith(_PNG):
        layers.points, data = _parted(data)
    waiting = [(data, 0)]
    while waiting:
        layer, depth = waiting.pop()
        for sign, what in _SEALED:
            if sign.search(layer):
                layers.sealed = layers.sealed or what
        for inner in filter(None, _within(layer, layers)):
            layers.left -= len(inner)
            if depth >= _DEEPEST or layers.left <= 0:
                layers.sealed = layers.sealed or "packed too often or too much"
                layers.found.append(layer)
                break
            waiting.append((inner, depth + 1))
    if data.startswith(b"%PDF"):
        words, unread = coded_words(layers.found)
        layers.found += words
        layers.sealed = layers.sealed or unread
    return layers


def _parted(data: bytes) -> tuple[bytes, bytes]:
    """Return the points of a PNG and all else in it, chunk by chunk (third edition, 5.3)."""
    points: list[bytes] = []
    rest, at = [data[:8]], 8
    while at + 12 <= len(data):
        end = at + 12 + int.from_bytes(data[at : at + 4], "big")
        if end > len(data):  # no chunk: something else stands behind the picture
            break
        (points if data[at + 4 : at + 8] == b"IDAT" else rest).append(data[at + 8 : end - 4])
        at = end
    rest.append(data[at:])
    return b"\n".join(points), b"\n".join(rest)


def _within(data: bytes, layers: Layers) -> Iterator[bytes]:
    """Return what bytes hold, and keep in the layers what stands beside it."""
    parts: list[tuple[int, int]] = []
    yield from _decompressed(data, layers, parts)
    rest = _without(data, parts)
    layers.found.append(rest)
    yield from unwrap(rest, _PACKED.match)


def _without(data: bytes, parts: Sequence[tuple[int, int]]) -> bytes:
    """Return bytes without the parts whose whole sense was taken out of them."""
    kept, at = [], 0
    for begin, end in parts:
        kept.append(data[at:begin])
        at = end
    return b"\n".join((*kept, data[at:])) if parts else data


def _decompressed(data: bytes, layers: Layers, parts: list[tuple[int, int]]) -> Iterator[bytes]:
    """Return each compressed part, wherever in the bytes it stands.

    `parts` are given where those begin and end that are whole by their sum.
    """
    view, at = memoryview(data), 0
    while found := _PACKED.search(data, at):
        at = found.end()
        unpacker, begin = _unpacker(data, found, layers)
        if unpacker is None:
            yield data[begin : begin + _stored(data, found)]
            continue
        inner, end, damaged = _run(unpacker, view[begin:], max(layers.left, 0))
        if damaged and found[0].startswith(
            (b"BZh", b"\xfd7z")
        ):  # these give nothing until a sum is right
            layers.sealed = layers.sealed or "packed, and damaged"
        if len(inner) >= 4:
            yield inner
            at = max(at, begin + end)
            if unpacker.eof and not damaged and _is_whole(data, found, begin + end, inner):
                parts.append((begin, begin + end))


def _is_whole(data: bytes, found: re.Match[bytes], end: int, inner: bytes) -> bool:
    """Say whether what came out of a packed part has the sum that stands beside it."""
    if found[0][:1] == b"\x78":
        return zlib.adler32(inner) == int.from_bytes(data[end : end + 4], "big")
    if found[0][:2] == b"\x1f\x8b":
        return zlib.crc32(inner) == int.from_bytes(data[end : end + 4], "little")
    if found[0][:2] == b"PK":
        at = found.start() + 14
        return zlib.crc32(inner) == int.from_bytes(data[at : at + 4], "little")
    return True  # the others look at it themselves


def _unpacker(data: bytes, found: re.Match[bytes], layers: Layers) -> tuple[Any, int]:
    """Return what unpacks the part that begins here, and where its bytes begin.

    What is deflated is unpacked without its sum: a wrong one takes nothing of the words away.
    """
    sign, begin = found[0], found.start()
    if sign[:1] == b"\x78":
        return zlib.decompressobj(-15), begin + 2
    if sign[:2] == b"\x1f\x8b":
        return zlib.decompressobj(-15), _behind_head(data, begin)
    if sign[:3] == b"BZh":
        return bz2.BZ2Decompressor(), begin
    if sign[:2] != b"PK":
        return lzma.LZMADecompressor(), begin
    head = data[begin : begin + 30].ljust(30, b"\0")
    flags, method = head[6] | head[7] << 8, head[8] | head[9] << 8
    if flags & 1 or method not in (0, 8, 12, 95):
        layers.sealed = layers.sealed or "an archive under a password, or packed in a rare way"
    behind = begin + 30 + (head[26] | head[27] << 8) + (head[28] | head[29] << 8)
    if flags & 1 or method != 8:
        return None, behind  # as it stands, or found by its own first bytes
    return zlib.decompressobj(-15), behind


def _stored(data: bytes, found: re.Match[bytes]) -> int:
    """Return how many bytes an archive holds unpacked here, 0 where it holds none (4.4.8).

    They stand in its bytes as they are, but for a name that ends where they begin.
    """
    head = data[found.start() : found.start() + 26]
    plain = found[0][:2] == b"PK" and head[6:7] and not head[6] & 1 and head[8:10] == b"\0\0"
    size = int.from_bytes(head[18:22], "little") if plain and len(head) == 26 else 0
    return size if size <= _LONGEST_STORED else 0


def _behind_head(data: bytes, begin: int) -> int:
    """Return where a gzip's packed bytes begin, behind its names and remarks (RFC 1952, 2.3)."""
    flags, at = data[begin + 3 : begin + 4], begin + 10
    said = flags[0] if flags else 0
    if said & 4:
        at += 2 + int.from_bytes(data[at : at + 2], "little")
    for bit in (8, 16):
        if said & bit:
            at = max(data.find(b"\0", at), at - 1) + 1
    return at + (2 if said & 2 else 0)


def _run(unpacker: Any, view: memoryview, most: int) -> tuple[bytes, int, bool]:
    """Return what comes out, how much went in, and whether it was damaged on the way."""
    out: list[bytes] = []
    size = at = 0
    damaged = False
    while at < len(view) and size <= most and not unpacker.eof:
        piece = view[at : at + _PIECES[min(len(out), 2)]]
        before = unpacker.copy() if hasattr(unpacker, "copy") else None
        try:
            out.append(unpacker.decompress(piece, most - size + 1))
        except (zlib.error, lzma.LZMAError, OSError, EOFError):
            damaged = True
            out.append(_up_to_damage(before, piece) if before else b"")
            break
        size += len(out[-1])
        at += len(piece)
    at -= len(unpacker.unused_data) if unpacker.eof else 0
    return b"".join(out), at, damaged


def _up_to_damage(unpacker: Any, piece: memoryview) -> bytes:
    """Return what comes out of a damaged piece before the byte that is wrong."""
    out: list[bytes] = []
    try:
        for at in range(len(piece)):
            out.append(unpacker.decompress(piece[at : at + 1]))
    except zlib.error:
        return b"".join(out)
    return b"".join(out)
