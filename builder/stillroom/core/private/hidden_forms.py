"""The texts that the bytes of a file may hold: as they stand, and as files wrap them up.

A name is as private in UTF-16, in base64 or in a spreadsheet as in plain words. Leaves out what is
looked for.
"""

from __future__ import annotations

import base64
import binascii
import gzip
import html
import io
import quopri
import re
import unicodedata
import urllib.parse
import zipfile
import zlib
from collections.abc import Iterator

MOST_UNPACKED = 30_000_000
"""More than this is not unpacked from one file: nobody keeps a list so long."""
_BASE64 = re.compile(
    rb"(?<![A-Za-z0-9+/=_-])[A-Za-z0-9+/_-]{16,}={0,2}(?:\r?\n[ \t]?[A-Za-z0-9+/_-]{4,}={0,2})*"
)
_HEX = re.compile(rb"(?:[0-9A-Fa-f]{2}[ :]?){8,}")
_JSON_LETTER = re.compile(r"\\(?:u\{?([0-9A-Fa-f]{4,6})\}?|x([0-9A-Fa-f]{2}))")
_NOT_SEEN = re.compile("[\u00ad\u200b-\u200f\u2060\ufeff]")
_ENTITY = re.compile(r"&(?:#|[a-z]{2,8};)", re.IGNORECASE)
_PERCENT = re.compile(r"%[2-7][0-9A-F]|%[C-E][0-9A-F]%", re.IGNORECASE)
_QUOTED = re.compile(r"=[0-9A-F]{2}|=\r?\n")
_TAGS = re.compile(r"<[^<>]{0,400}>")
_FOLDED = re.compile(r"\r?\n[ \t]")
_PNG = b"\x89PNG\r\n\x1a\n"
_STREAM = re.compile(rb"stream\r?\n(.*?)endstream", re.DOTALL)


def read_plain(data: bytes) -> str:
    """Return the text of a file in whichever of the usual encodings it was saved.

    >>> read_plain("Zoë".encode("utf-16")), read_plain("Zoë".encode("latin-1"))
    ('Zoë', 'Zoë')
    """
    for mark, encoding in ((b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be")):
        if data.startswith(mark):
            return data[2:].decode(encoding, errors="replace")
    if b"\x00" in data[:400] and len(data) > 3:
        even, odd = data[:400:2].count(0), data[1:400:2].count(0)
        if max(even, odd) > 10 * min(even, odd) and max(even, odd) * 3 > len(data[:400:2]):
            return data.decode("utf-16-be" if even > odd else "utf-16-le", errors="replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def every_text(data: bytes, depth: int = 0) -> Iterator[str]:
    """Return every text that bytes may hold, folded so that only letters and gaps count."""
    if data.startswith(_PNG):  # a picture's points are sought as they stand, its words in full
        points, data = _parted(data)
        yield fold(points.decode("latin-1"))
    text = read_plain(data)
    yield from _unwrapped(text)
    if b"\x00" in data:
        yield fold(text.replace("\x00", " "))  # it parts a word from the next
        for start in (0, 1):
            for encoding in ("utf-16-le", "utf-16-be"):
                yield fold(data[start:].decode(encoding, errors="ignore"))
    if depth < 2:
        for inner in filter(None, _unpacked(data)):
            yield from every_text(inner, depth + 1)


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


def fold(text: str) -> str:
    r"""Return a text as it is compared: capitals, gaps and what is not seen make no difference.

    >>> fold("Zebedee\u00a0  QUILL\u00adfeather")
    'zebedee quillfeather'
    """
    try:
        text.encode("latin-1")
        text = text.replace("\u00ad", "")  # a soft hyphen; its other letters are one form each
    except UnicodeEncodeError:
        text = _NOT_SEEN.sub("", unicodedata.normalize("NFKC", text))
    return " ".join(text.replace("\x00", "").replace("_", " ").split()).casefold()


def _unwrapped(text: str) -> Iterator[str]:
    yield fold(text)
    if _ENTITY.search(text):
        yield fold(html.unescape(text))
    if "<" in text:
        yield fold(html.unescape(_TAGS.sub("", text)))
    if "+" in text:
        yield fold(text.replace("+", " "))
    if _PERCENT.search(text):
        yield fold(urllib.parse.unquote_plus(text, errors="replace"))
    if "\\" in text:
        yield fold(_JSON_LETTER.sub(_letter, text).replace("\\n", " ").replace("\\,", ","))
    if "\n " in text or "\n\t" in text:
        yield fold(_FOLDED.sub("", text))
    if text.isascii() and _QUOTED.search(text):
        yield fold(quopri.decodestring(text.encode()).decode("utf-8", errors="replace"))


def _letter(found: re.Match[str]) -> str:
    number = int(found[1] or found[2], 16)
    return chr(number) if number < 0x110000 and not 0xD800 <= number < 0xE000 else ""


def _unpacked(data: bytes) -> Iterator[bytes]:
    """Return what is wrapped up in bytes: archives, compressed parts, base64 and hexadecimals."""
    if data.startswith(b"PK\x03\x04"):
        yield from _zipped(data)
    if data.startswith(b"\x1f\x8b"):
        with gzip.GzipFile(fileobj=io.BytesIO(data)) as file:
            try:
                yield file.read(MOST_UNPACKED)
            except (OSError, EOFError, zlib.error):
                return
    if data.startswith(b"%PDF"):
        for part in _STREAM.findall(data):
            unpacker = zlib.decompressobj()
            try:
                yield unpacker.decompress(part, MOST_UNPACKED)
            except zlib.error:
                continue
    # all that one file wraps up is looked through together, line by line
    runs = (_from_base64(found[0]) for found in _BASE64.finditer(data))
    yield b"\n".join(run for run in runs if run)
    digits = (found[0].translate(None, b" :") for found in _HEX.finditer(data))
    pairs = (bytes.fromhex(run[: len(run) // 2 * 2].decode()) for run in digits)
    yield b"\n".join(run for run in pairs if _is_text(run))


def _zipped(data: bytes) -> Iterator[bytes]:
    left = MOST_UNPACKED
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            for member in archive.infolist():
                if member.flag_bits & 1 or left <= 0:
                    continue
                with archive.open(member) as file:
                    inner = file.read(left)
                left -= len(inner)
                yield inner
    except (zipfile.BadZipFile, zlib.error, OSError, NotImplementedError, EOFError, ValueError):
        return


def _from_base64(run: bytes) -> bytes | None:
    """Return what a run of letters comes to in base64, or None where that is no text."""
    joined = b"".join(run.split()).rstrip(b"=").replace(b"-", b"+").replace(b"_", b"/")
    if joined.isalpha() and joined.islower():
        return None  # a long word
    try:
        inner = base64.b64decode(joined + b"=" * (-len(joined) % 4))
    except (binascii.Error, ValueError):
        return None
    return inner if _is_text(inner) else None


def _is_text(data: bytes) -> bool:
    """Say whether bytes can be text in any usual encoding; what is compressed is none."""
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
