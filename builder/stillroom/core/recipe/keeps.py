"""How a recipe says that it keeps: "3 years unopened, 1 year once opened", "a month in the fridge".

Every word of it is used or asked about, since what is lost here could be eaten too late. Leaves
out what published guidance says: keeping.py.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Final, Literal

from stillroom.core.when.span_words import UNIT
from stillroom.core.when.spans import SPAN_PATTERN, Span, parse_span, tidy
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

KEEPING_KEYS: Final = ("unopened", "opened", "where", "source", "mark", "reason")
MARKS: Final = ("best before", "use by", "none")
OWN_PRACTICE: Final = "the maker's own practice"
_MEND: Final = 'Write "3 years unopened, 1 year once opened" or "2 weeks in the fridge".'
_NOT_KNOWN: Final = (
    'Write the longest you would keep it, e.g. "8 months". Leave "keeps" out if you do not know.'
)
_AND: Final = r"(?:and|then|but|or)\s+"
_BETWEEN: Final = late_regex(
    rf"[,;.]\s*(?:{_AND})?|\s+{_AND}(?=(?:once |when |after )?open|[^,;.]*\bopen)"
)
_NAMES_TIME: Final = late_regex(rf"\b{UNIT}\b|\d")
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
    r"(?:(?:keep|store|put|(?P<cold>refrigerate|chill))(?: it| them)?"
    r"\s*(?P<where>(?:(?:in|at) (?:the |a )?[a-z ]+?|refrigerated|chilled))?"
    r"\s*(?:\s+and|[,|])\s+)?(?:(?:best|use|eat|drink|consume|finish)(?: it| them)?(?: up)?(?: if)?"
    r"(?: used| eaten| drunk)?\s+(?:within|in))"
)
_CHILLED: Final = late_regex(
    r"\(?(?:(?:keep |store |kept |stored )?(?:in (?:the |a )?)?(?:fridge|refrigerat(?:or|ed?))"
    r"|(?:keep |kept )?chill(?:ed)?)\)?"
)
_FROZEN: Final = late_regex(r"\(?(?:(?:in (?:the |a )?)?freezer|frozen)\)?")


@dataclass(frozen=True)
class Keeping:
    """How long it keeps, where, and who says so. Spans are None when not stated.

    `by` is who says so: the recipe under "keeps", its method, or the book for want of both;
    `where_of_book` that the book alone named the place. `vaguely` is the least that its words
    without a number mean, where that is longer than the book's own: it raises rules, and no more.
    """

    unopened: Span | None = None
    opened: Span | None = None
    where: str = ""
    opened_where: str = ""
    source: str = ""
    mark: str = ""
    reason: str = ""
    by: Literal["recipe", "method", "book"] = "recipe"
    where_of_book: bool = False
    vaguely: Span | None = None

    @property
    def claim(self) -> Span | None:
        """The longest that it is said to keep, in whatever words: what rules are held against."""
        return self.vaguely or self.unopened

    @property
    def claim_words(self) -> str:
        """Its claim as it may be told: of loose words no number, since nobody said one.

        >>> Keeping(vaguely=Span(3, 3, "week", loosely=True)).claim_words
        'some weeks, of which no number is said'
        """
        if self.claim and self.claim.loosely:
            return f"some {self.claim.unit}s, of which no number is said"
        return str(self.claim or "")

    @property
    def once_opened(self) -> str:
        """How long and where it keeps once opened, as far as either is said."""
        return " ".join(filter(None, (str(self.opened or ""), self.opened_where)))

    @property
    def words(self) -> str:
        """How long it keeps in a few words, "" when that is not known.

        >>> read_keeping("3 weeks, 2 weeks once opened").words
        '3 weeks, 2 weeks once opened'
        """
        if self.unopened is None:
            return ""
        opened = f", {self.once_opened} once opened" if self.once_opened else ""
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
        if place := _place_once_opened(piece):
            keeping = replace(keeping, opened_where=place)
            continue
        keeping = _with(keeping, piece, str(value))
    if keeping == Keeping(source=OWN_PRACTICE):
        return replace(keeping, unopened=parse_span(str(value)))
    return keeping


def _pieces(text: str) -> list[str]:
    """Divide a line at its lengths; what names none belongs to the one before it.

    But "a year; once opened, a month" ends in a length: its labels stand before theirs.
    """
    parts = [part.strip() for part in _BETWEEN.split(tidy(text)) if part.strip()]
    labels = [_is_label(part) for part in parts]
    telling = [part for part in parts if _says_opened(part) or _SPAN.search(part)]
    leads = bool(telling) and not _says_opened(telling[-1])
    pieces: list[str] = []
    for piece, label in zip(parts, labels, strict=True):
        alone = not _SPAN.search(piece)
        waits = bool(pieces) and not _SPAN.search(pieces[-1])
        placed = bool(pieces) and bool(_place_once_opened(pieces[-1]))
        if placed and not alone and not _WITHIN.match(piece):
            pieces.append(piece)
        elif (
            pieces
            and not _place_once_opened(piece)
            and (waits or (alone and not (label and leads)))
        ):
            pieces[-1] = f"{pieces[-1]}, {piece}" if alone else f"{pieces[-1]} {piece}"
        else:
            pieces.append(piece)
    return pieces


def _place_once_opened(piece: str) -> str:
    """Return where it is kept once opened, of words that name no length; else "".

    >>> read_keeping("6 months. Refrigerate once opened.").opened_where
    'in the fridge'
    """
    around, opened = _OPENED.subn("", piece)
    if not opened or _SPAN.search(piece):
        return ""
    around = around.strip(" ,:;.")
    return _as_place(around) if _CHILLED.fullmatch(around) or _FROZEN.fullmatch(around) else ""


def _as_place(words: str) -> str:
    """Return "in the fridge" for "refrigerated", and other places in their own words."""
    if _CHILLED.fullmatch(words):
        return "in the fridge"
    return "in the freezer" if _FROZEN.fullmatch(words) else words


def _says_opened(piece: str) -> bool:
    return bool(_OPENED.search(piece) or _UNOPENED.search(piece))


def _is_label(piece: str) -> bool:
    """Whether a piece says nothing but whether it is opened."""
    return bool(_OPENED.fullmatch(piece) or _UNOPENED.fullmatch(piece))


def _with(keeping: Keeping, piece: str, text: str) -> Keeping:
    lengths = list(_SPAN.finditer(piece))
    if not lengths and not _NAMES_TIME.search(tidy(text)):
        what = f'"{text}" says no length of time.'
        raise Unreadable(what, _NOT_KNOWN)
    if not lengths:
        parse_span(text)  # says what is wrong with it
    if len(lengths) != 1:
        raise Unreadable(f'"{text}" does not say plainly how long it keeps.', _MEND)
    span = parse_span(lengths[0][1])
    around = f"{piece[: lengths[0].start()].strip()} | {piece[lengths[0].end() :].strip()}"
    around, sealed = _UNOPENED.subn("", around)
    around, opened = _OPENED.subn("", around)
    before, _, after = (part.strip(" ,:") for part in around.partition("|"))
    if within := _WITHIN.fullmatch(before):  # "keep in the fridge and eat within a month"
        before, after = "", after or within["where"] or within["cold"] or ""
    if before and not after and (_CHILLED.fullmatch(before) or _FROZEN.fullmatch(before)):
        before, after = "", before  # "refrigerated: 2 weeks"
    where = _as_place(after)
    if not _BEFORE.fullmatch(before) or (where and not _PLACE.fullmatch(where)):
        raise Unreadable(f'"{before or after}" in "{text}" is not understood.', _MEND)
    if opened and not sealed:
        if keeping.opened:
            raise Unreadable(f'"{text}" says twice how long it keeps once opened.', _MEND)
        return replace(keeping, opened=span, opened_where=where or keeping.opened_where)
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
    shut = read_keeping(f"{value['unopened']} unopened") if "unopened" in value else Keeping()
    opened = read_keeping(f"{value['opened']} once opened") if "opened" in value else Keeping()
    return Keeping(
        unopened=shut.unopened,
        opened=opened.opened,
        where=str(value.get("where", shut.where)),
        opened_where=opened.opened_where,
        source=str(value.get("source", OWN_PRACTICE)),
        mark=mark,
        reason=str(value.get("reason", "")),
    )
