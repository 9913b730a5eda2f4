"""What is wrapped up in the bytes of a file: archives, compressed parts, base64, hexadecimals.

Each is known by its own first bytes, wherever it stands: behind a picture, in a chunk of one, in a
document. What packs its words so that they cannot be read here is named, never passed over.
"""

from __future__ import annotations

import base64
import binascii
import bz2
import lzma
import re
import zlib
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Final

MOST_UNPACKED: Final = 30_000_000
"""More than this is not unpacked from one file: nobody keeps a list so long."""
_DEEPEST: Final = 5
_BASE64: Final = re.compile(
    rb"(?<![A-Za-z0-9+/=_-])[A-Za-z0-9+/_-]{16,}={0,2}(?:\r?\n[ \t]?[A-Za-z0-9+/_-]{4,}={0,2})*"
)
_HEX: Final = re.compile(rb"(?:(?:0x|\\x)?[0-9A-Fa-f]{2}[ :,]{0,2}){8,}")
_ASCII85: Final = re.compile(rb"(?:<~|stream\r?\n)([!-uz\s]{12,})~>")
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
        layers.found.append(layer)
        for sign, what in _SEALED:
            if sign.search(layer):
                layers.sealed = layers.sealed or what
        for inner in filter(None, _within(layer, layers)):
            layers.left -= len(inner)
            if depth >= _DEEPEST or layers.left <= 0:
                layers.sealed = layers.sealed or "packed too often or too much"
                break
            waiting.append((inner, depth + 1))
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
    yield from _decompressed(data, layers)
    # all that one file wraps up is looked through together, line by line
    runs = (_from_base64(found[0]) for found in _BASE64.finditer(data))
    yield b"\n".join(run for run in runs if run)
    digits = (_digits(found[0]) for found in _HEX.finditer(data))
    pairs = (bytes.fromhex(run[: len(run) // 2 * 2].decode()) for run in digits)
    yield b"\n".join(run for run in pairs if _says(run))
    for found in _ASCII85.finditer(data):
        try:
            yield base64.a85decode(found[1])
        except ValueError:
            continue


def _decompressed(data: bytes, layers: Layers) -> Iterator[bytes]:
    """Return each compressed part, wherever in the bytes it stands."""
    view, at = memoryview(data), 0
    while found := _PACKED.search(data, at):
        at = found.end()
        unpacker, begin = _unpacker(data, found, layers)
        if unpacker is None:
            continue
        inner, end = _run(unpacker, view[begin:], max(layers.left, 0))
        if len(inner) >= 4:
            yield inner
            at = max(at, begin + end)


def _unpacker(data: bytes, found: re.Match[bytes], layers: Layers) -> tuple[Any, int]:
    """Return what unpacks the part that begins here, and where its bytes begin."""
    sign, begin = found[0], found.start()
    if sign[:1] == b"\x78":
        return zlib.decompressobj(), begin
    if sign[:2] == b"\x1f\x8b":
        return zlib.decompressobj(31), begin
    if sign[:3] == b"BZh":
        return bz2.BZ2Decompressor(), begin
    if sign[:2] != b"PK":
        return lzma.LZMADecompressor(), begin
    head = data[begin : begin + 30].ljust(30, b"\0")
    flags, method = head[6] | head[7] << 8, head[8] | head[9] << 8
    if flags & 1 or method not in (0, 8, 12, 95):
        layers.sealed = layers.sealed or "an archive under a password, or packed in a rare way"
    if flags & 1 or method != 8:
        return None, begin  # as it stands, or found by its own first bytes
    lengths = (head[26] | head[27] << 8) + (head[28] | head[29] << 8)
    return zlib.decompressobj(-15), begin + 30 + lengths


def _run(unpacker: Any, view: memoryview, most: int) -> tuple[bytes, int]:
    """Return what comes out, up to where it is whole or damaged, and how much went in."""
    out: list[bytes] = []
    size = at = 0
    while at < len(view) and size <= most and not unpacker.eof:
        piece = view[at : at + _PIECES[min(len(out), 2)]]
        try:
            out.append(unpacker.decompress(piece, most - size + 1))
        except (zlib.error, lzma.LZMAError, OSError, EOFError):
            break
        size += len(out[-1])
        at += len(piece)
    at -= len(unpacker.unused_data) if unpacker.eof else 0
    return b"".join(out), at


def _digits(run: bytes) -> bytes:
    if b"x" in run:
        run = run.replace(b"0x", b"")
    return run.translate(None, b" :,\\x")


def _from_base64(run: bytes) -> bytes | None:
    """Return what a run of letters comes to in base64, or None where that says nothing."""
    joined = b"".join(run.split()).rstrip(b"=").replace(b"-", b"+").replace(b"_", b"/")
    if joined.isalpha() and joined.islower():
        return None  # a long word
    try:
        inner = base64.b64decode(joined + b"=" * (-len(joined) % 4))
    except (binascii.Error, ValueError):
        return None
    return inner if _says(inner) else None


def _says(data: bytes) -> bool:
    """Say whether bytes are a text in any usual encoding, or something packed or wrapped."""
    if _PACKED.match(data) or data.startswith((_PNG, b"%PDF", b"\xff\xd8\xff", b"GIF8", b"RIFF")):
        return True
    begin = data[:120]
    if begin.count(0) * 3 > len(begin):
        return True  # UTF-16
    if any(byte < 9 or 13 < byte < 32 for byte in begin):
        return False
    plain = sum(32 <= byte < 127 for byte in begin)
    if plain * 5 >= len(begin) * 4:
        return True
    try:
        begin[: len(begin) - 4].decode("utf-8")
    except UnicodeDecodeError as error:
        return error.start >= len(begin) - 8
    return True
