"""Which baskets a household gets, as a person writes it: "2 small", "small and large", "large x 2".

Leaves out what a basket holds: the list says it under "baskets".
"""

from __future__ import annotations

import re

from stillroom.giving.list_words import plain_key
from stillroom.giving.who import count_said

_PARTS = re.compile(r"\s*(?:[,+&]|\b(?:and|und|et|y|e|en|och|og|plus)\b)\s*", re.IGNORECASE)
_BEHIND = re.compile(r"^(?P<kind>.+?)\s*[x×]\s*(?P<count>\d{1,2})$")
_BEFORE = re.compile(r"^(?:(?:(?P<count>\d{1,2})\s*[x×]?|(?P<word>[^\W\d]{1,6}))\s+)?(?P<kind>.+)$")


def baskets_said(said: str, kinds: list[str]) -> str | dict[str, int]:
    """Return the kind of basket meant, or how many of which; as it is written where none is known.

    >>> baskets_said("2 small", ["small", "large"]), baskets_said("Small", ["small"])
    ({'small': 2}, 'small')
    >>> baskets_said("a large and two small ones", ["small", "large"])
    {'large': 1, 'small': 2}
    >>> baskets_said("2 tiny", ["small"])
    '2 tiny'
    """
    if kind := _kind_of(said, kinds):
        return kind
    many: dict[str, int] = {}
    for part in filter(None, _PARTS.split(said.strip())):
        found = _BEHIND.match(part) or _BEFORE.match(part)
        kind = _kind_of(found["kind"], kinds) if found else ""
        if not found or not kind:
            return said
        count = found["count"] or str(count_said(found.groupdict().get("word") or "1"))
        if not count.isdecimal():
            return said
        many[kind] = many.get(kind, 0) + int(count)
    return many or said


def _kind_of(said: str, kinds: list[str]) -> str:
    plain = re.sub(
        r"\s*\b(?:ones?|baskets?|körbe?|paniers?|cestas?|cest[oi])$", "", plain_key(said)
    )
    same = (kind for kind in kinds if plain_key(kind) in (plain, plain.removesuffix("s")))
    return next(same, "")
