"""How a recipe says that it keeps: "3 years unopened, 1 year once opened", "a month in the fridge".

Every word of it is used or asked about, since what is lost here could be eaten too late. Leaves
out what published guidance says: keeping.py.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from stillroom.core.when.spans import SPAN_PATTERN, Span, parse_span, tidy
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

KEEPING_KEYS: Final = ("unopened", "opened", "where", "source", "mark", "reason")
MARKS: Final = ("best before", "use by", "none")
OWN_PRACTICE: Final = "the maker's own practice"
_MEND: Final = 'Write "3 years unopened, 1 year once opened" or "2 weeks in the fridge".'
_AND: Final = r"(?:and|then|but|or)\s+"
_BETWEEN: Final = late_regex(
    rf"[,;.]\s*(?:{_AND})?|\s+{_AND}(?=(?:once |when |after )?open|[^,;.]*\bopen)"
)
_SPAN: Final = late_regex(rf"\b({SPAN_PATTERN})")
_BEFORE: Final = late_regex(
    r"(?:it |they |this |these )?(?:will |should |can )?(?:be )?"
    r"(?:keeps?|kept|lasts?|stores?|stored|good)?\s*(?:well |good )?(?:for|up to)?:?"
)
_OPENED: Final = late_regex(
    r"\b(?:once |when |if |after )?(?:it is |they are )?(?:opened|opening)\b:?"
)
_UNOPENED: Final = late_regex(r"\b(?:un-?opened|sealed|before opening|if unopened|when sealed)\b:?")
_PLACE: Final = late_regex(
    r"(?:stored |kept )?(?:in|at|on|if|when|while|out of|away from|under|below|somewhere|cool|dark|"
    r"dry|airtight|well|upright|tightly|closed|not)\b.*"
)
_WITHIN: Final = late_regex(
    r"(?:(?:keep|store|put|refrigerate)(?: it| them)?\s*(?P<where>(?:in|at) (?:the |a )?[a-z ]+?)?"
    r"\s+and\s+)?(?:use|eat|drink|consume|finish)(?: it| them)?(?: up)?\s+(?:within|in)"
)
_COLD: Final = {
    "refrigerated": "in the fridge",
    "chilled": "in the fridge",
    "frozen": "in the freezer",
}


@dataclass(frozen=True)
class Keeping:
    """How long it keeps, where, and who says so. Spans are None when not stated.

    `by` is who says so: the recipe under "keeps", its method, or the book for want of both.
    """

    unopened: Span | None = None
    opened: Span | None = None
    where: str = ""
    source: str = ""
    mark: str = ""
    reason: str = ""
    by: Literal["recipe", "method", "book"] = "recipe"

    @property
    def words(self) -> str:
        """How long it keeps in a few words, "" when that is not known.

        >>> read_keeping("3 weeks, 2 weeks once opened").words
        '3 weeks, 2 weeks once opened'
        """
        if self.unopened is None:
            return ""
        opened = f", {self.opened} once opened" if self.opened else ""
        return f"{self.unopened}{opened}{' (the book’s own figure)' if self.by == 'book' else ''}"


def read_keeping(value: Any) -> Keeping:
    """Read how long a thing keeps from its line or from its several facts.

    A plain line gives the maker's own figure: its source is then the maker's own practice.

    >>> kept = read_keeping("6 months in the freezer, and 2 weeks once opened")
    >>> str(kept.unopened), str(kept.opened), kept.where
    ('6 months', '2 weeks', 'in the freezer')
    """
    if isinstance(value, dict):
        return _read_facts(value)
    if not isinstance(value, str | int | float):
        raise Unreadable('"keeps" is not a length of time.', _MEND)
    keeping = Keeping(source=OWN_PRACTICE)
    for piece in _pieces(str(value)):
        keeping = _with(keeping, piece, str(value))
    if keeping.unopened is None and keeping.opened is None:
        return replace(keeping, unopened=parse_span(str(value)))
    return keeping


def _pieces(text: str) -> list[str]:
    """Divide a line at its lengths; what names none belongs to the one before it."""
    pieces: list[str] = []
    for piece in filter(None, (part.strip() for part in _BETWEEN.split(tidy(text)))):
        alone = not _SPAN.search(piece)
        waits = bool(pieces) and not _SPAN.search(pieces[-1])
        if pieces and (alone or waits):
            pieces[-1] = f"{pieces[-1]}, {piece}" if alone else f"{pieces[-1]} {piece}"
        else:
            pieces.append(piece)
    return pieces


def _with(keeping: Keeping, piece: str, text: str) -> Keeping:
    lengths = list(_SPAN.finditer(piece))
    if not lengths:
        parse_span(text)  # says what is wrong with it
    if len(lengths) != 1:
        raise Unreadable(f'"{text}" does not say plainly how long it keeps.', _MEND)
    span = parse_span(lengths[0][1])
    around = f"{piece[: lengths[0].start()].strip()} | {piece[lengths[0].end() :].strip()}"
    around, sealed = _UNOPENED.subn("", around)
    around, opened = _OPENED.subn("", around)
    before, _, after = (part.strip(" ,") for part in around.partition("|"))
    where = _COLD.get(after, after)
    if within := _WITHIN.fullmatch(before):  # "keep in the fridge and eat within a month"
        before, where = "", where or within["where"] or ""
    if not _BEFORE.fullmatch(before) or (where and not _PLACE.fullmatch(where)):
        raise Unreadable(f'"{before or after}" in "{text}" is not understood.', _MEND)
    if opened and not sealed:
        if where:
            first = f"{keeping.unopened} unopened, " if keeping.unopened else ""
            mend = (
                f'Write "keeps: {first}{span} once opened", and on the card: "card:" and under it '
                f'"keep: {where.capitalize()} once opened."'
            )
            raise Unreadable(f'"{where}" once opened has no place here.', mend)
        if keeping.opened:
            raise Unreadable(f'"{text}" says twice how long it keeps once opened.', _MEND)
        return replace(keeping, opened=span)
    if keeping.unopened:
        raise Unreadable(f'"{text}" says twice how long it keeps unopened.', _MEND)
    return replace(keeping, unopened=span, where=where)


def _read_facts(value: dict[str, Any]) -> Keeping:
    for key in value:
        if key not in KEEPING_KEYS:
            raise Unreadable(f'"keeps" has no "{key}:".', did_you_mean(str(key), KEEPING_KEYS))
    mark = str(value.get("mark", ""))
    if mark and mark not in MARKS:
        raise Unreadable(f'"{mark}" is not a date mark.', did_you_mean(mark, MARKS))
    return Keeping(
        unopened=parse_span(str(value["unopened"])) if "unopened" in value else None,
        opened=parse_span(str(value["opened"])) if "opened" in value else None,
        where=str(value.get("where", "")),
        source=str(value.get("source", OWN_PRACTICE)),
        mark=mark,
        reason=str(value.get("reason", "")),
    )
