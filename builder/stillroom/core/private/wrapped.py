"""What is written in letters and figures that stand for other bytes: base64, hexadecimals and such.

Each run is known by the letters it is made of, and counts where it says something: a text, or what
is packed. Leaves out what is compressed (unpacking.py) and letters written by their number within a
text (hidden_forms.py).
"""

from __future__ import annotations

import base64
import binascii
import re
from collections.abc import Callable, Iterator
from typing import Final

_BASE64: Final = re.compile(
    rb"(?<![A-Za-z0-9+/=_-])[A-Za-z0-9+/_-]{16,}={0,2}(?:\r?\n[ \t]?[A-Za-z0-9+/_-]{4,}={0,2})*"
)
_BASE32: Final = re.compile(rb"[A-Z2-7]+|[a-z2-7]+|[0-9A-V]+")
# where none of these is, there is no run of eight pairs: it is sooner seen than the run is sought
_FIGURE: Final = bytes.maketrans(b"0123456789abcdefABCDEF:,", b"h" * 22 + b"  ")
_HEX_SIGNS: Final = (
    b"h" * 16,
    *(pair * 7 for pair in (b"hh ", b"hh  ", b"hxhh", b"hxhh ", b"hxhh  ", b"\\xhh", b"\\xhh ")),
)
_HEX: Final = re.compile(rb"(?:(?:0x|\\x)?[0-9A-Fa-f]{2}[ :,]{0,2}){8,}")
# Each of these begins with what it may begin with, and looks behind itself only then: that is the
# sooner way by far. First a text's bytes by their numbers, as a script or a table writes them.
_DECIMAL: Final = re.compile(
    rb"[1-9](?<![\d.].)\d{1,2}(?:[ ,;\r\n\t]{1,4}[1-9]\d{1,2}){6,}(?![\d.])"
)
_BINARY: Final = re.compile(rb"[01](?<![01].)[01]{7}(?:[ ,\r\n]{0,2}[01]{8}){6,}(?![01])")
_ASCII85: Final = re.compile(rb"(?:<~|stream\r?\n)([!-uz\s]{12,})~>")
# of a text's every four bytes the first is below 128: so the first of five letters is one of few,
# after the first five that of a tab or of a line's end too
_BARE_85: Final = re.compile(
    rb"[*-J](?<![!-~].)[!-u]{4}(?:[#$*-J][!-u]{4}){2,}[!-u]{0,4}(?:\r?\n[!-u]{5,})*(?![!-~])"
)
_BASE85: Final = re.compile(
    rb"[A-Za-f](?<![!-~].)[!#-&(-+;-Z^-~0-9-]{4}(?:[23A-Za-f][!#-&(-+;-Z^-~0-9-]{4}){2,}"
    rb"[!#-&(-+;-Z^-~0-9-]{0,4}(?![!-~])"
)
_QUOTED_85: Final = re.compile(rb"[\"']([*-J][!#-&(-u]{14,})[\"']")
_QUOTED_B85: Final = re.compile(rb"[\"']([A-Za-e][!#-&(-+;-Z^-~0-9-]{14,})[\"']")
_UUENCODED: Final = re.compile(
    rb"^begin [0-7]{3,4} [^\r\n]+\r?\n((?:[ -`]{1,62}\r?\n)+)", re.MULTILINE
)
_TEXT_BEGINS: Final = (b"%PDF", b"\xff\xd8\xff", b"GIF8", b"RIFF", b"\x89PNG\r\n\x1a\n")
_LONGEST_85: Final = 20_000
_LEAST_RUN: Final = 15
"""Signs without a gap in the shortest run that is sought in base64, base32 or base85."""


def unwrap(data: bytes, is_packed: Callable[[bytes], object]) -> Iterator[bytes]:
    """Return what runs of letters and figures stand for; of each sort all together, line by line.

    `is_packed` tells what begins as something compressed does.
    """

    def says(inner: bytes) -> bool:
        return bool(is_packed(inner)) or _says(inner)

    longest = max(map(len, data.split()), default=0)
    if longest >= _LEAST_RUN:
        runs = [found[0] for found in _BASE64.finditer(data)]
        yield b"\n".join(inner for inner in map(_from_base64, runs) if says(inner))
        yield b"\n".join(inner for run in runs for inner in _from_base32(run) if says(inner))
    figures = data.translate(_FIGURE)
    hexadecimal = any(sign in figures for sign in _HEX_SIGNS)
    digits = (_digits(found[0]) for found in (_HEX.finditer(data) if hexadecimal else ()))
    pairs = (bytes.fromhex(run[: len(run) // 2 * 2].decode()) for run in digits)
    yield b"\n".join(pair for pair in pairs if says(pair))
    numbers = (_from_numbers(found[0]) for found in _DECIMAL.finditer(data))
    yield b"\n".join(inner for both in numbers for inner in both if says(inner))
    if b"0" in data:
        bits = (b"".join(found[0].replace(b",", b"").split()) for found in _BINARY.finditer(data))
        yield b"\n".join(int(run, 2).to_bytes(len(run) // 8, "big") for run in bits)
    yield from _from_85(data, says, longest >= _LEAST_RUN)
    if b"begin " in data:
        yield from (_from_uu(found[1]) for found in _UUENCODED.finditer(data))


def _from_base64(run: bytes) -> bytes:
    """Return what a run of letters comes to in base64, nothing where it is none."""
    joined = b"".join(run.split()).rstrip(b"=").replace(b"-", b"+").replace(b"_", b"/")
    if joined.isalpha() and joined.islower():
        return b""  # a long word
    try:
        return base64.b64decode(joined + b"=" * (-len(joined) % 4))
    except (binascii.Error, ValueError):
        return b""


def _from_base32(run: bytes) -> Iterator[bytes]:
    """Return what a run of letters comes to in base32, by both alphabets (RFC 4648, 6 and 7)."""
    joined = b"".join(run.split()).rstrip(b"=")
    if not _BASE32.fullmatch(joined):
        return
    padded = joined.upper() + b"=" * (-len(joined) % 8)
    for decode in (base64.b32decode, base64.b32hexdecode):
        try:
            yield decode(padded)
        except (binascii.Error, ValueError):
            continue


def _digits(run: bytes) -> bytes:
    if b"x" in run:
        run = run.replace(b"0x", b"")
    return run.translate(None, b" :,\\x")


def _from_numbers(run: bytes) -> Iterator[bytes]:
    """Return the bytes that a row of numbers names, in tens and in eights."""
    said = run.translate(bytes.maketrans(b",;", b"  ")).split()
    for figures in (10, 8):
        try:
            yield bytes(int(number, figures) for number in said)
        except ValueError:
            continue


def _from_85(data: bytes, says: Callable[[bytes], bool], has_runs: bool) -> Iterator[bytes]:
    """Return what runs come to in base85; `has_runs` tells whether any stands without a gap."""
    ways = (
        *((pattern, base64.a85decode) for pattern in (_ASCII85, _BARE_85, _QUOTED_85)),
        *((pattern, base64.b85decode) for pattern in (_BASE85, _QUOTED_B85)),
    )
    for pattern, decode in ways if has_runs else ways[:1] if b"~>" in data else ():
        for found in pattern.finditer(data):
            run = found[found.lastindex or 0]
            if pattern is not _ASCII85:
                run = b"".join(run.split())[:_LONGEST_85]
            try:
                inner = decode(run)
            except ValueError:
                continue
            if pattern is _ASCII85 or says(inner):
                yield inner


def _from_uu(lines: bytes) -> bytes:
    """Return what the lines of a uuencoded file come to."""
    out = []
    for line in lines.splitlines():
        try:
            out.append(binascii.a2b_uu(line))
        except binascii.Error:
            continue
    return b"".join(out)


def _says(data: bytes) -> bool:
    """Say whether bytes are a text in any usual encoding, or a file that holds texts."""
    if not data or data.startswith(_TEXT_BEGINS):
        return bool(data)
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
