"""Words in quotes and lists in brackets, as they may stand after a colon or a dash.

What is in them stays the words that were written. Leaves out the lines they stand on:
facts_above.py.
"""

from __future__ import annotations

import re
from typing import Any, Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

CLOSES: Final = {"[": "]", "{": "}"}
_DEEPEST: Final = 4
_ESCAPES: Final = {"n": " ", "t": " ", "r": " ", '"': '"', "\\": "\\", "/": "/", " ": " "}
_CODE: Final = late_regex(r"\\(?:x([0-9a-fA-F]{2})|u([0-9a-fA-F]{4})|(.?))", re.DOTALL)
_END: Final = late_regex(r"\s*(?:\s#.*)?$")
_UNCLOSED_QUOTE: Final = "Put the same mark behind the last word, or take the first one away."


def ends_at(text: str) -> int | None:
    """Return where the quotes or brackets that `text` begins with end; None when they do not.

    >>> ends_at('"a" b'), ends_at("[a, 'b]']"), ends_at('"a')
    (3, 9, None)
    """
    if text[0] in CLOSES:
        return _bracket_end(text)
    if text[0] == "'":
        found = re.match(r"'(?:[^']|'')*'(?!')", text)
    else:
        found = re.match(r'"(?:[^"\\]|\\.)*"', text, re.DOTALL)
    return found.end() if found else None


def _bracket_end(text: str) -> int | None:
    open_signs: list[str] = []
    at = 0
    while at < len(text):
        sign = text[at]
        if sign in "\"'" and re.search(r"[\[{,:]\s*$", text[:at][-40:]):
            end = ends_at(text[at:])
            if end is None:
                return None
            at += end
            continue
        if sign in CLOSES:
            open_signs.append(CLOSES[sign])
        elif open_signs and sign == open_signs[-1]:
            open_signs.pop()
            if not open_signs:
                return at + 1
        at += 1
    return None


def stands_alone(text: str, end: int) -> bool:
    """Whether nothing but a note to oneself follows the closing sign."""
    return bool(_END.match(text[end:]))


def unquote(text: str) -> str:
    r"""Return what stands in a text's quotes; raises Unreadable for a sign that is none.

    >>> unquote("'it''s'"), unquote(r'"two\nlines"')
    ("it's", 'two lines')
    """
    inside = text[1:-1]
    if text[0] == "'":
        return inside.replace("''", "'")
    return _CODE.sub(_sign, inside)


def _sign(found: re.Match[str]) -> str:
    code = found[1] or found[2]
    if code:
        sign = chr(int(code, 16))
        if sign.isprintable():
            return sign
    elif found[3] in _ESCAPES:
        return _ESCAPES[found[3]]
    raise Unreadable(f'"{found[0]}" is no sign that can be printed.', "Take it out.")


def unclosed(text: str) -> Unreadable:
    """Say that quotes or brackets are opened and never closed."""
    if text[0] in CLOSES:
        what = f'The bracket "{text[0]}" is never closed.'
        return Unreadable(what, f'Put "{CLOSES[text[0]]}" behind the last word of the list.')
    return Unreadable("It begins with a quotation mark that is never closed.", _UNCLOSED_QUOTE)


def read_brackets(text: str, depth: int = 0) -> Any:
    """Return `[a, b]` as a list of words and `{name: a, day: b}` as words by name.

    >>> read_brackets("[January, 'March, April']")
    ['January', 'March, April']
    >>> read_brackets("{name: Christmas, day: 24 December}")
    {'name': 'Christmas', 'day': '24 December'}
    """
    if depth > _DEEPEST:
        raise Unreadable("Brackets stand too deep in brackets.", "Write one to a line.")
    parts = _split(text[1:-1])
    if text[0] == "[":
        return [_value(part, depth) for part in parts]
    found: dict[str, Any] = {}
    for part in parts:
        name, _, value = part.partition(":")
        name = name.strip().strip("\"'")
        if name in found:
            raise Unreadable(f'"{name}" stands here twice.', "Keep one of them.")
        found[name] = _value(value.strip(), depth) if value.strip() else None
    return found


def _split(inside: str) -> list[str]:
    parts, start, at = [], 0, 0
    while at < len(inside):
        sign = inside[at]
        fresh = not inside[start:at].strip() or bool(re.search(r":\s*$", inside[start:at]))
        if fresh and sign in "\"'[{":
            end = ends_at(inside[at:])
            at += end or 1
            continue
        if sign == ",":
            parts.append(inside[start:at].strip())
            start = at + 1
        at += 1
    last = inside[start:].strip()
    return [*parts, last] if last else parts


def _value(part: str, depth: int) -> Any:
    if part and part[0] in "\"'[{":
        end = ends_at(part)
        if end == len(part):
            return read_brackets(part, depth + 1) if part[0] in CLOSES else unquote(part)
    return " ".join(part.split())
