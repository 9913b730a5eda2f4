"""The date mark of a label: which term, how fine a date, in which words.

Follows Annex X and Article 24 of Regulation (EU) No 1169/2011 (read in reference.md 6.3), which
stayed law in the UK; a gift need not carry a mark, the form is taken over as good practice. Dates
are set by Babel's locale data. Leaves out how long a thing keeps: keeping.py.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Literal

from stillroom.core.when.spans import Span

Term = Literal["best before", "best before end", "use by", "not known", "none"]
Fineness = Literal["day", "month", "year"]

FINE_FOR_MONTHS = 3
MONTH_FOR_MONTHS = 18
DECEMBER = 12
NOT_KNOWN = "How long it keeps is not known"
_SAY: dict[str, dict[Term, str]] = {
    "en_US": {
        "best before": "Best by",
        "best before end": "Best by the end of",
        "use by": "Use by",
    },
    "en": {
        "best before": "Best before",
        "best before end": "Best before end",
        "use by": "Use by",
    },
}


@dataclass(frozen=True)
class DateMark:
    """A date mark: its term, its whole text, the date it stands for (ISO 8601), and why it is so.

    Without a made-on date `iso` is "" and `text` counts from the day of making. Of food whose
    keeping nobody knows the text says so, for a silent card is taken for one that keeps.
    """

    term: Term
    text: str
    iso: str
    why: str


def fineness_for(keeps: Span) -> Fineness:
    """Return how fine a best-before date must be: Annex X 1(c).

    Day and month to 3 months, month and year to 18 months, the year alone beyond. Three and
    eighteen months themselves fall to the finer side.

    >>> fineness_for(Span(3, 3, "month")), fineness_for(Span(18, 18, "month"))
    ('day', 'month')
    """
    start = date(2025, 1, 1)
    end = keeps.after(start, longest=False)
    if end <= Span(FINE_FOR_MONTHS, FINE_FOR_MONTHS, "month").after(start):
        return "day"
    return (
        "month" if end <= Span(MONTH_FOR_MONTHS, MONTH_FOR_MONTHS, "month").after(start) else "year"
    )


def mark_date(
    term: Term, keeps: Span | None, made_on: date | None, language: str, why: str
) -> DateMark:
    """Return the date mark of something made on a day that keeps so long.

    A range of keeping counts at its short end. `language` is a locale such as "en_GB". A use-by
    date always shows its day and its year. A month or a year, which is all Annex X asks of what
    keeps longer, would promise its last day: the mark names the last month wholly within the
    keeping time, and the year alone only where it keeps to the end of it.

    >>> mark_date("best before", Span(3, 3, "year"), date(2026, 11, 25), "en_GB", "").text
    'Best before end October 2029'
    >>> mark_date("best before", Span(4, 4, "month"), date(2026, 11, 25), "en_GB", "").text
    'Best before end February 2027'
    """
    mark = annex_mark(term, keeps, made_on, language, why)
    if mark.term != "best before end":
        return mark
    due = date.fromisoformat(mark.iso)
    whole = _last_whole_month(due)
    if whole == due and due.month == DECEMBER:
        return mark
    return replace(mark, text=_to_the_end(whole, language))


def _to_the_end(month: date, language: str) -> str:
    return f"{date_words(language)['best before end']} {_say(month, 'month', language, True)}"


def _last_whole_month(due: date) -> date:
    """Return the last day of the latest month that ends by the day."""
    after = due + timedelta(days=1)
    return after.replace(day=1) - timedelta(days=1)


def annex_mark(
    term: Term, keeps: Span | None, made_on: date | None, language: str, why: str
) -> DateMark:
    """Return the mark no finer than Annex X asks; its month or year may run past the keeping."""
    if term == "not known":
        return DateMark(term, NOT_KNOWN, "", why)
    if term == "none" or keeps is None:
        return DateMark("none", "", "", why)
    if made_on is None:
        words = date_words(language)["use by" if term == "use by" else "best before"]
        return DateMark(term, f"{words}: {keeps} from the day it was made", "", why)
    last = keeps.after(made_on, longest=False)
    if term == "use by":
        return DateMark(
            term,
            f"{date_words(language)['use by']} {_say(last, 'day', language, True)}",
            last.isoformat(),
            why,
        )
    fineness = fineness_for(keeps)
    shown: Term = "best before" if fineness == "day" else "best before end"
    text = (
        f"{date_words(language)[shown]} {_say(last, fineness, language, last.year != made_on.year)}"
    )
    return DateMark(shown, text, last.isoformat(), why)


def say_date(day: date, language: str) -> str:
    """Return a day in full in the book's language.

    >>> say_date(date(2026, 11, 25), "en_GB"), say_date(date(2026, 11, 25), "en_US")
    ('25 November 2026', 'November 25, 2026')
    """
    from babel.dates import format_date  # late: who counts how long it keeps sets no day

    return format_date(day, format="long", locale=language)


def date_words(language: str) -> dict[Term, str]:
    """Return how each term is worded in the book's language; the browser uses it too."""
    return _SAY.get(language.replace("-", "_"), _SAY["en"])


def _say(day: date, fineness: Fineness, language: str, with_year: bool) -> str:
    """Set a date; the order is the locale's, which for en_GB is the day, month, year of Annex X."""
    if fineness == "year":
        return str(day.year)
    from babel.dates import format_skeleton

    if fineness == "month":
        return format_skeleton("yMMMM", day, locale=language)
    return say_date(day, language) if with_year else format_skeleton("MMMMd", day, locale=language)
