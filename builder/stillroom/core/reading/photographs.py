"""A photograph's bytes without what a camera adds: the place, the time, the camera, earlier looks.

Where a home is must not be published, so this hangs on no library: JPEG, PNG and WebP are walked
part by part and what is no picture is left out. Which way up it was held is kept, since it is seen.
Leaves out how large it is shown: looks/photographs.py.
"""

from __future__ import annotations

import base64
import binascii
import re
import struct
import zlib
from collections.abc import Iterator
from typing import Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_BROKEN: Final = "Save it again as a JPEG or a PNG, or take it out."
_JPEG_KEPT: Final = frozenset({0xE0, 0xEE})
"""APP0 (JFIF) and APP14 (Adobe): how its colours are written. APP2 is kept where it is ICC."""
_PNG_KEPT: Final = frozenset(
    {b"tRNS", b"gAMA", b"cHRM", b"sRGB", b"iCCP", b"sBIT", b"pHYs", b"acTL", b"fcTL", b"fdAT"}
)
_WEBP_KEPT: Final = frozenset({b"VP8 ", b"VP8L", b"VP8X", b"ALPH", b"ANIM", b"ANMF", b"ICCP"})
_INNER: Final = late_regex(rb"data:image/(?:jpe?g|png|webp);base64,([A-Za-z0-9+/=\s]+)", re.I)
_METADATA: Final = late_regex(rb"<metadata\b.*?</metadata\s*>", re.I | re.DOTALL)


def without_places(data: bytes) -> bytes:
    """Return a picture without what is none; raises Unreadable for one that is broken.

    What is of no kind that is known here is refused, since it cannot be told what is in it.
    """
    try:
        if data.startswith(b"\xff\xd8"):
            return b"".join(_jpeg(data))
        if data.startswith(b"\x89PNG\r\n\x1a\n"):
            return b"".join(_png(data))
        if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
            return _webp(data)
    except (struct.error, IndexError):
        raise Unreadable("The picture is broken.", _BROKEN) from None
    raise Unreadable("The picture is of a kind that the book does not know.", _BROKEN)


def drawing_without_places(svg: bytes) -> bytes:
    """Return a drawing without notes of its program and with clean photographs within it."""
    return _INNER.sub(_clean_inner, _METADATA.sub(b"", svg))


def _clean_inner(found: re.Match[bytes]) -> bytes:
    try:
        clean = without_places(base64.b64decode(found[1]))
    except (Unreadable, binascii.Error):
        return b"data:,"
    head = found[0].partition(b",")[0]
    return head + b"," + base64.b64encode(clean)


def orientation_of(data: bytes) -> int:
    """Return which way up a photograph was held, 1 (upright) to 8, as EXIF counts (CIPA DC-008)."""
    try:
        if data.startswith(b"\x89PNG\r\n\x1a\n"):
            parts = (part[8:-4] for kind, part in _chunks(data) if kind == b"eXIf")
        elif data[:4] == b"RIFF":
            parts = (part[8:] for kind, part in _riff_parts(data) if kind == b"EXIF")
        else:
            parts = (part[4:] for mark, part in _segments(data) if mark == 0xE1)
            parts = (part for part in parts if part.startswith(b"Exif\0\0"))
        return next((_orientation(part.removeprefix(b"Exif\0\0")) for part in parts), 1)
    except (struct.error, IndexError, Unreadable):
        return 1


def _turned_only(turned: int) -> bytes:
    """Return EXIF that says which way up a photograph was held, and nothing else."""
    entry = struct.pack(">HHIHH", 0x0112, 3, 1, turned, 0)
    return b"MM\0*" + struct.pack(">IH", 8, 1) + entry + b"\0\0\0\0"


def _orientation(tiff: bytes) -> int:
    order = "<" if tiff[:2] == b"II" else ">"
    (at,) = struct.unpack_from(f"{order}I", tiff, 4)
    (count,) = struct.unpack_from(f"{order}H", tiff, at)
    for place in range(min(count, 200)):
        tag, _, _, value = struct.unpack_from(f"{order}HHIH", tiff, at + 2 + 12 * place)
        if tag == 0x0112:
            return value if 1 <= value <= 8 else 1
    return 1


def _segments(data: bytes) -> Iterator[tuple[int, bytes]]:
    """Yield the parts of a JPEG (ITU-T T.81 B.1), what it draws with the mark before it; to EOI."""
    at = 2
    while at < len(data):
        if data[at] != 0xFF:
            raise Unreadable("The picture is broken.", _BROKEN)
        mark = data[at + 1]
        if mark == 0xFF:  # B.1.1.2: any number of fill bytes
            at += 1
            continue
        if mark == 0xD9:
            return
        (length,) = struct.unpack_from(">H", data, at + 2)
        end = at + 2 + length
        if mark == 0xDA:  # what is drawn follows: up to a mark that is none of its own
            while True:
                end = data.find(b"\xff", end)
                if end < 0:
                    raise Unreadable("The picture is broken: its end is missing.", _BROKEN)
                after = data[end + 1]
                if after and not 0xD0 <= after <= 0xD7 and after != 0xFF:
                    break
                end += 1 if after == 0xFF else 2
        yield mark, data[at:end]
        at = end


def _jpeg(data: bytes) -> Iterator[bytes]:
    yield b"\xff\xd8"
    turned = orientation_of(data)
    if turned != 1:
        tiff = _turned_only(turned)
        yield b"\xff\xe1" + struct.pack(">H", len(tiff) + 8) + b"Exif\0\0" + tiff
    drawn = False
    for mark, part in _segments(data):
        icc = mark == 0xE2 and part[4:16] == b"ICC_PROFILE\0"
        added = 0xE0 <= mark <= 0xEF or mark == 0xFE
        drawn |= mark == 0xDA
        if not added or icc or mark in _JPEG_KEPT:
            yield _plain_jfif(part) if mark == 0xE0 else part
    if not drawn:
        raise Unreadable("The picture is broken: nothing is drawn in it.", _BROKEN)
    yield b"\xff\xd9"


def _plain_jfif(part: bytes) -> bytes:
    """Return JFIF's head without the small picture that may hang from it."""
    if part[4:9] != b"JFIF\0" or len(part) < 18:
        return b""
    return b"\xff\xe0\x00\x10" + part[4:16] + b"\0\0"


def _png(data: bytes) -> Iterator[bytes]:
    """Yield a PNG's chunks (W3C PNG, third edition, 5) that its picture needs, to its end."""
    turned = orientation_of(data)
    yield data[:8]
    for kind, part in _chunks(data):
        if kind[:1].isupper() or kind in _PNG_KEPT:
            yield part
        if kind == b"IHDR" and turned != 1:  # 11.3.4.5: eXIf stands before what is drawn
            said = b"eXIf" + _turned_only(turned)
            yield struct.pack(">I", len(said) - 4) + said + struct.pack(">I", zlib.crc32(said))


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Yield the chunks of a PNG with their kinds, to its end."""
    at = 8
    while True:
        (length,) = struct.unpack_from(">I", data, at)
        kind = data[at + 4 : at + 8]
        end = at + 12 + length
        if end > len(data):
            raise Unreadable("The picture is broken: its end is missing.", _BROKEN)
        yield kind, data[at:end]
        if kind == b"IEND":
            return
        at = end


def _webp(data: bytes) -> bytes:
    """Return a WebP's chunks (RFC 9649, 2.7) that its picture needs."""
    parts = []
    turned = orientation_of(data)
    for kind, part in _riff_parts(data):
        if kind == b"VP8X":  # say no more that EXIF (bit 3) and XMP (bit 2) follow
            part = part[:8] + bytes([part[8] & ~0x0C | (0x08 if turned != 1 else 0)]) + part[9:]
        if kind in _WEBP_KEPT:
            parts.append(part)
    if not any(part[:4] in (b"VP8 ", b"VP8L", b"ANMF") for part in parts):
        raise Unreadable("The picture is broken: nothing is drawn in it.", _BROKEN)
    if turned != 1 and any(part[:4] == b"VP8X" for part in parts):
        said = _turned_only(turned)
        parts.append(b"EXIF" + struct.pack("<I", len(said)) + said)
    body = b"WEBP" + b"".join(parts)
    return b"RIFF" + struct.pack("<I", len(body)) + body


def _riff_parts(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """Yield the chunks of a WebP with their kinds."""
    at = 12
    (said,) = struct.unpack_from("<I", data, 4)
    data = data[: 8 + said]  # what hangs behind is none of it
    while at + 8 <= len(data):
        kind = data[at : at + 4]
        (length,) = struct.unpack_from("<I", data, at + 4)
        end = at + 8 + length + length % 2
        if at + 8 + length > len(data):
            raise Unreadable("The picture is broken: its end is missing.", _BROKEN)
        yield kind, data[at:end]
        at = end


def webp_size(data: bytes) -> tuple[int, int] | None:
    """Return the size that a WebP says (RFC 9649); None where it says none."""
    kind = data[12:16]
    if len(data) < 30:
        return None
    if kind == b"VP8X":
        return 1 + int.from_bytes(data[24:27], "little"), 1 + int.from_bytes(data[27:30], "little")
    if kind == b"VP8L" and data[20] == 0x2F:
        bits = int.from_bytes(data[21:25], "little")
        return 1 + (bits & 0x3FFF), 1 + (bits >> 14 & 0x3FFF)
    if kind == b"VP8 " and data[23:26] == b"\x9d\x01\x2a":
        width, height = struct.unpack_from("<HH", data, 26)
        return width & 0x3FFF, height & 0x3FFF
    return None
