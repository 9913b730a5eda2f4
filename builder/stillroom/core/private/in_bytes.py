"""A name whose parts stand in fields of their own in a file that is no text.

What a program keeps has each value with its length or its kind before it, which may look like a
letter; so the parts are sought as they are written, with their capitals. Leaves out what is drawn
or set: pictures, photographs and typefaces.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import product
from typing import Final

from stillroom.core.private.hidden_forms import is_binary

_NO_FIELDS: Final = (
    b"\xff\xd8\xff", b"\x89PNG", b"GIF8", b"RIFF", b"wOF", b"OTTO", b"\0\1\0\0", b"II*\0", b"MM\0*",
)  # fmt: skip
# each with what goes on with a word in it; before letters of two bytes a sign may look like one
_ENCODINGS: Final = (
    ("utf-8", rb"(?![a-z](?!\0))"), ("latin-1", rb"(?![a-z](?!\0))"),
    ("utf-16-le", rb"(?![a-z]\0)"), ("utf-16-be", rb"(?!\0[a-z])"),
)  # fmt: skip
_FAR: Final = 200
_MOST_PLACES: Final = 2_000
_LEAST: Final = 3


def has_fields(data: bytes) -> bool:
    """Say whether bytes are no text, and no picture or typeface either."""
    if data.startswith(_NO_FIELDS):
        return False
    if is_binary(data):
        return True
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return True
    return False


def stand_in_fields(names: Sequence[str], data: bytes) -> bool:
    r"""Return whether the first and the last of somebody's names are fields beside each other.

    >>> stand_in_fields(["Ada", "Thistle"], b"\x82\xa5given\xa3Ada\xa6family\xa7Thistle")
    True
    >>> stand_in_fields(["Ada", "Thistle"], b"\0Adaline, and a Thistle\0")
    False
    """
    first, last = names[0], names[-1]
    if min(len(first), len(last)) < _LEAST:
        return False
    # what is plain is often kept in another encoding than what is not
    ones, others = (
        [(part, end) for part, end in _encoded(name) if part in data] for name in (first, last)
    )
    return any(
        _beside(left, right, data)
        for one, other in product(ones, others)
        for left, right in ((one, other), (other, one))
    )


@lru_cache(maxsize=4096)
def _encoded(name: str) -> tuple[tuple[bytes, bytes], ...]:
    return tuple(dict.fromkeys(_each(name)))


def _each(name: str) -> Iterator[tuple[bytes, bytes]]:
    for encoding, end in _ENCODINGS:
        try:
            yield name.encode(encoding), end
        except UnicodeEncodeError:
            continue


def _beside(left: tuple[bytes, bytes], right: tuple[bytes, bytes], data: bytes) -> bool:
    sought, wanted = (re.compile(re.escape(part) + end) for part, end in (left, right))
    for count, found in enumerate(sought.finditer(data)):
        if count >= _MOST_PLACES:
            break
        second = wanted.search(data, found.end(), found.end() + _FAR)
        if second and _parts(data[found.end() : second.start()]):
            return True
    return False


def _parts(between: bytes) -> bool:
    """Say whether what stands between two fields is what a program puts there, and no prose."""
    return len(between) <= 2 or all(sign < 32 or sign > 126 for sign in (between[0], between[-1]))
