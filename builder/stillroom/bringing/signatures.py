"""A name signed below a recipe: "/Hanna", "~ Ann & Per", "Signed: A. Berg", last "– Eva".

It is left out, and told without being repeated. Leaves out names without a sign before them:
remarks.py; and letters' ends: farewell.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_NAME: Final = r"[A-ZÀ-Ý](?:[^\W\d_]|['’.-]){0,20}"
_NAMES: Final = rf"{_NAME}(?:\s(?:(?:&|\+|and|und|et|e|y|en|och|og|i|von|van|de)\s)?{_NAME}){{0,3}}"
# a sign that nothing but a name stands behind, wherever it is below a list
_PLAINLY: Final = late_regex(
    rf"(?:/{{1,2}}|~)\s?(?P<who>{_NAMES})[.!]?"
    rf"|(?i:signed|gezeichnet|gez\.|signé|firmato|firmado|getekend|undertecknat)\s?[:,]?\s(?P<name>{_NAMES})[.!]?"
)
# at the end of the paper these may be nothing else
_AT_THE_END: Final = late_regex(
    rf"(?:[-–—]{{1,2}}|(?:by|von|par|av|af|door)\s)?\s?(?P<who>{_NAMES})[.!]?"
    rf"|/{{1,2}}\s?(?P<small>[^\W\d_]{{1,14}})"
)
_SIGNS: Final = late_regex(r"[-–—/]|(?:by|von|par|av|af|door)\s")


def without_signatures(rows: Sequence[Row]) -> tuple[tuple[Row, ...], bool]:
    """Return rows without the names signed below them, and whether there were any.

    >>> typed = (Row("Boil the plums.", "step"), Row("Fill jars.", "step"), Row("/Hanna"))
    >>> [row.text for row in without_signatures(typed)[0]]
    ['Boil the plums.', 'Fill jars.']
    >>> without_signatures((Row("500 g plums"), Row("/ Salt", gap=True)))[1]
    False
    """
    kept = tuple(row for at, row in enumerate(rows) if not (at and _signs_plainly(row)))
    last = kept[-1] if len(kept) > 1 else None
    if last and _signs_the_end(last, kept[-2]):
        kept = kept[:-1]
    return kept, len(kept) < len(rows)


def _signs_plainly(row: Row) -> bool:
    found = _PLAINLY.fullmatch(row.text.strip()) if row.shape == "line" else None
    return found is not None and _is_somebody(found["who"] or found["name"])


def _signs_the_end(row: Row, above: Row) -> bool:
    """Whether the last row of a paper is a name behind a sign; the dash of an item is one."""
    text = row.text.strip()
    alone = row.shape == "item" and above.shape != "item"
    if not (alone or (row.shape == "line" and _SIGNS.match(text))):
        return False
    found = _AT_THE_END.fullmatch(text)
    return found is not None and _is_somebody(found["who"] or found["small"])


def _is_somebody(who: str) -> bool:
    """Whether words may be a name: no food, nothing that is done, no head of a part."""
    first = plain(who).split(" ")[0]
    known = words("told_first") | words("told_last") | words("no_names") | words("passed")
    known = known | words("tool_last") | words("tool_first")
    return first not in known and section_of(who) is None and not staples_named(who)
