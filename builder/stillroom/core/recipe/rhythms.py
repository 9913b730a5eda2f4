"""Tending that changes its rhythm: "shake daily for the first week, then once a week".

What is shaken for the first of several weeks is a part of the wait, not a wait before it; how often
from then on holds for the rest. Leaves out how a sentence is read: method_times.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from math import ceil
from typing import Final

from stillroom.core.recipe.said_times import Said
from stillroom.core.recipe.wait_words import (
    AFTER,
    FIRST_PART,
    IN_ALL,
    OR_SO_OFTEN,
    SEVERAL,
    TENDED_OFTEN,
    THEN_SO_OFTEN,
)
from stillroom.core.recipe.waits_elsewhere import is_first_part, rhythm_elsewhere, rhythm_then
from stillroom.core.when.spans import Span, tidy

_DAY: Final = 24 * 60
_A_MONTH: Final = 365.25 / 12


def how_often(said: str) -> str:
    """Return a rhythm as a timeline has it: several times a week is every few days.

    >>> how_often("daily"), how_often("a couple of times a day"), how_often("twice a week")
    ('every day', 'twice a day', 'every 3 days')
    """
    often = {"daily": "every day", "weekly": "every week"}.get(said, said)
    often = SEVERAL.sub("twice ", OR_SO_OFTEN.sub("", re.sub(r"\b(?:each|per)\b", "every", often)))
    often = re.sub(r"^((?:once|twice|.* times)) every\b", r"\1 a", often)
    if often.endswith("a week") and not often.startswith("once"):
        return "every 3 days" if often.startswith("twice") else "every 2 days"
    return often


def so_often_then(sentence: str) -> str:
    """Return how often a thing is tended from then on, where a sentence says so; else "".

    >>> so_often_then("Shake daily for 2 weeks, then weekly."), so_often_then("Shake daily.")
    ('every week', '')
    """
    found = THEN_SO_OFTEN.search(tidy(sentence))
    return how_often(found["then"] or found["so"]) if found else rhythm_then(sentence)


def is_tended(sentence: str) -> bool:
    """Whether a sentence says that a thing is shaken, stirred or turned again and again.

    >>> is_tended("Store it in a dark cupboard and shake every other day for a week.")
    True
    >>> is_tended("Keep it for a year."), is_tended("Eine Woche lang täglich schütteln.")
    (False, True)
    """
    return bool(TENDED_OFTEN.search(tidy(sentence)) or rhythm_elsewhere(sentence)[0])


def as_one_wait(found: list[Said], told: Sequence[str]) -> list[Said]:
    """Return waits of which the first part is tended as such: that part, and what is left of all.

    `told` are the sentences of the method, by the places of what was found.
    """
    made = list(found)
    for at, tended in enumerate(made):
        if not (tended.every and tended.role == "wait"):
            continue
        sentence = told[tended.place]
        behind = told[tended.place + 1] if tended.place + 1 < len(told) else ""
        then = so_often_then(sentence) or so_often_then(behind)
        if not (then or FIRST_PART.search(tidy(sentence)) or is_first_part(sentence)):
            continue
        whole = _whole_of(made, at, told)
        if whole is None:
            continue
        rest = _rest(made[whole], tended, "" if made[whole].every else then)
        if rest is None:
            continue
        first = replace(tended, place=made[whole].place) if whole < at else tended
        return [*made[: min(whole, at)], first, rest, *made[max(whole, at) + 1 :]]
    return made


def _whole_of(made: Sequence[Said], at: int, told: Sequence[str]) -> int | None:
    """Return which wait the tended one is the first part of; None where it stands before it."""
    tended = made[at]
    if at and _is_longer(made[at - 1], tended) and tended.place - made[at - 1].place <= 1:
        return at - 1 if not made[at - 1].every else None
    if at + 1 < len(made) and _is_longer(made[at + 1], tended):
        sentence = told[made[at + 1].place]
        if IN_ALL.search(sentence) or (not made[at + 1].every and AFTER.search(tidy(sentence))):
            return at + 1
    return None


def _is_longer(one: Said, than: Said) -> bool:
    return one.role == "wait" and one.span.minutes(longest=False) > than.span.minutes()


def _rest(whole: Said, first: Said, every: str) -> Said | None:
    """Return what is left of a wait when its first part is over; None where that is no whole day.

    >>> from stillroom.core.when.spans import parse_span
    >>> one = Said("wait", "rest", parse_span("3 months"), "", 1, 1)
    >>> str(_rest(one, replace(one, span=parse_span("2 weeks")), "").span)
    '11 weeks'
    """
    over = ceil(first.span.minutes() / _DAY)
    low, high = (_days(whole.span, longest) - over for longest in (False, True))
    if low <= 0:
        return None
    weeks = low % 7 == 0 and high % 7 == 0
    span = Span(low // 7, high // 7, "week") if weeks else Span(low, high, "day")
    word = first.word if every else whole.word
    span = replace(span, about=whole.span.about)
    return replace(whole, word=word, span=span, every=every or whole.every)


def _days(span: Span, longest: bool) -> int:
    count = span.high if longest else span.low
    if span.unit in ("month", "year"):
        return round(count * _A_MONTH * (12 if span.unit == "year" else 1))
    return span.minutes(longest=longest) // _DAY
