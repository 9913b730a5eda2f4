"""Whether two names of one person stand so near each other that they are one name again.

A table, a form or a program keeps "first name" and "last name" apart; a letter puts an initial or a
second name between. What is only prose, in which both words happen to stand, is neither.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from functools import lru_cache
from typing import Final

from stillroom.core.private.hidden_forms import ONE_LETTER
from stillroom.core.words.patterns import CAPITAL

_MARKS: Final = re.compile("[\u0300-\u036f\u00ad\u200b-\u200d\ufeff]")
_STRUCK: Final = str.maketrans(
    {**dict(ONE_LETTER), **{one.upper(): other.title() for one, other in ONE_LETTER if one != "ı"}}
)
"""Letters that are no other letter with a mark."""
_OF: Final = (
    r"(?:(?:van|von|de|den|der|da|di|du|del|la|le|ter|af|av|n[eé]{1,2}e?|born|geb\.|geborene)"
    r"[\s_]+)"
)
_AND: Final = r"(?:(?:and|&|und|et|y|e|en|och|og)[\s_]+)"
# an initial or a further name, one in quotation marks or brackets; "and" before the first of these
_BETWEEN: Final = re.compile(
    rf"[\s_]+(?:{_AND}?(?:{_OF}*(?:{CAPITAL}\.?|[\"'“‘(]?{CAPITAL}[\w’'-]+[\"'”’)]?)[\s_]+)"
    rf"{{1,3}}{_OF}*|{_OF}{{1,3}})"
)
# what stands before and behind the whole of a field: of a program, of a table, of a page
_OPENS: Final = re.compile(
    r"(?:(?P<strong>[:=>»|\t;{\[&?/\\]|(?<!\w)[\"'`])|(?P<weak>[,(\n\r-]|^))[ ]*(?:(?<!\w)[\"'`])?$"
)
_CLOSES: Final = re.compile(
    r"(?:[\"'`](?!\w))?[ ]*(?:(?P<strong>[<«|\t;}\]&=\\]|[\"'`](?!\w))|(?P<weak>[,)\r\n]|$))"
)
_SIGNS: Final = ("-", "_", ".", "+", "%20")
_JOINED: Final = re.compile(r"[\w'’-]")
_FAR: Final = 400
_MOST_FIELDS: Final = 30
_MOST_BETWEEN: Final = 3
_MOST_PLACES: Final = 5_000


def unmarked(text: str) -> str:
    """Return a text as it stands, without the marks over its letters.

    >>> unmarked("Zoë Bjørdal"), unmarked("Łucja Þór")
    ('Zoe Bjordal', 'Lucja Thor')
    """
    if text.isascii():
        return text
    plain = _MARKS.sub("", unicodedata.normalize("NFKD", text))
    return plain.translate(_STRUCK)


def stand_near(names: Sequence[str], text: str) -> bool:
    r"""Return whether the first and the last of somebody's names stand together as one name would.

    The text is one without marks.

    >>> stand_near(["nell", "tarrowby"], '{"first": "Nell", "last": "Tarrowby"}')
    True
    >>> stand_near(["nell", "tarrowby"], "To Nell J. Tarrowby")
    True
    >>> stand_near(["sinead", "o brien"], "sn: O'Brien\ngivenName: Sinead\n")
    True
    >>> stand_near(["rose", "baker"], "Strew the rose petals where the baker can see them")
    False
    """
    first, last = names[0], names[-1]
    return _in_turn(first, last, text, straight=True) or _in_turn(last, first, text, straight=False)


@lru_cache(maxsize=4096)
def _as_word(name: str) -> re.Pattern[str]:
    """Return the pattern of a name; of one of several words, whatever stands between these."""
    said = r"[\W_]{1,2}".join(map(re.escape, name.split()))
    return re.compile(rf"(?<![^\W_]){said}(?![^\W_])", re.IGNORECASE)


def _in_turn(one: str, other: str, text: str, *, straight: bool) -> bool:
    wanted, sought = _as_word(other), _as_word(one)
    for count, found in enumerate(sought.finditer(text)):
        if count >= _MOST_PLACES:
            break
        second = wanted.search(text, found.end(), found.end() + _FAR)
        if second is None:
            continue
        between = text[found.end() : second.start()]
        capital = found[0][0].isupper() and second[0][0].isupper()
        if straight and capital and _BETWEEN.fullmatch(between):
            return True
        if not straight and _is_field(text, found.start(), second.end(), between, capital):
            return True
        if _are_fields(text, found, second, len(between.split()), capital=capital):
            return True
    return False


def _is_field(text: str, start: int, end: int, between: str, capital: bool) -> bool:
    """Say whether a surname and a first name behind it are by themselves, as a register has them.

    In a sentence "King Edward" is a potato.
    """
    if between.isspace():
        return (
            capital
            and _OPENS.search(text[max(0, start - 4) : start]) is not None
            and _CLOSES.match(text[end : end + 4]) is not None
        )
    alone = not _JOINED.match(text[start - 1 : start]) and not _JOINED.match(text[end : end + 1])
    return between in _SIGNS and alone


def _are_fields(
    text: str, one: re.Match[str], other: re.Match[str], between: int, *, capital: bool
) -> bool:
    strong = []
    for found in (one, other):
        before = _OPENS.search(text[max(0, found.start() - 4) : found.start()])
        behind = _CLOSES.match(text[found.end() : found.end() + 4])
        if before is None or behind is None:
            return False
        strong.append(bool(before["strong"] or behind["strong"]))
    if all(strong):
        return between <= _MOST_FIELDS
    return capital and between <= _MOST_BETWEEN
