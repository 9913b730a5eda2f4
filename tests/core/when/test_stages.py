"""Plain words of a timeline: what is understood, and what is said of what is not."""

from __future__ import annotations

import re
from datetime import date

import pytest
from dateutil.relativedelta import relativedelta
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.when.spans import Span, parse_span
from stillroom.core.when.stages import ROLES, parse_stage, stage_words

SPANS = [
    ("40 minutes", (40, 40, "minute", False)),
    ("40 mins", (40, 40, "minute", False)),
    ("1 hour 30 minutes", (90, 90, "minute", False)),
    ("2½ hours", (150, 150, "minute", False)),
    ("an hour and a half", (90, 90, "minute", False)),
    ("half an hour", (30, 30, "minute", False)),
    ("2-4 weeks", (2, 4, "week", False)),
    ("2–4 weeks", (2, 4, "week", False)),
    ("2 to 4 weeks", (2, 4, "week", False)),
    ("about 3 weeks", (3, 3, "week", True)),
    ("a month", (1, 1, "month", False)),
    ("a fortnight", (2, 2, "week", False)),
    ("the end of the second month", (2, 2, "month", False)),
    ("a year and a half", (18, 18, "month", False)),
    ("1 year 6 months", (18, 18, "month", False)),
    ("2 weeks and 3 days", (17, 17, "day", False)),
    ("overnight", (1, 1, "day", False)),
]


@pytest.mark.parametrize(("text", "parts"), SPANS, ids=[text for text, _ in SPANS])
def test_span(text: str, parts: tuple[int, int, str, bool]) -> None:
    assert parse_span(text) == Span(*parts)


REFUSED_SPANS = [
    ("0 days", "no time at all"),
    ("-3 days", "less than no time"),
    ("4-2 weeks", "runs backwards"),
    ("200 years", "longer than 100 years"),
    ("40 mintues", 'Did you mean "minutes"?'),
    ("3 moons", "is not a unit of time"),
    ("14", 'e.g. "14 days"'),
    ("soon", "is not a length of time"),
    ("1½ months", 'e.g. "6 weeks"'),
    ("1 month and 2 weeks", "Write it in one unit"),
]


@pytest.mark.parametrize(("text", "says"), REFUSED_SPANS, ids=[text for text, _ in REFUSED_SPANS])
def test_refused_span(text: str, says: str) -> None:
    with pytest.raises(ValueError, match=re.escape(says)):
        parse_span(text)


# word, text, and the fields that matter with their values
STAGES = [
    ("prepare", "40 mins", {"role": "prepare", "hands_on_minutes": 40, "lasts": None}),
    (
        "shake",
        "every day for 2 weeks",
        {
            "role": "tend",
            "every": Span(1, 1, "day"),
            "lasts": Span(2, 2, "week"),
            "hands_on_minutes": 1,
        },
    ),
    ("stir", "every other day for a week", {"every": Span(2, 2, "day"), "hands_on_minutes": 3}),
    ("feed", "twice a day for 5 days, 10 minutes each time", {"times": 2, "hands_on_minutes": 10}),
    ("stir", "every 12 hours for 4 days", {"every": Span(1, 1, "day"), "times": 2}),
    ("shake", "every week until the end of the second month", {"until": Span(2, 2, "month")}),
    (
        "ferment",
        "while it bubbles, about 3 weeks",
        {"role": "rest", "condition": "while it bubbles", "lasts": Span(3, 3, "week", True)},
    ),
    (
        "rest",
        "until cold, about 2 hours",
        {"condition": "until cold", "lasts": Span(2, 2, "hour", True)},
    ),
    ("rest", "in the dark", {"lasts": None, "where": "in the dark"}),
    (
        "mature",
        "4-6 weeks in a cool, dark place",
        {"lasts": Span(4, 6, "week"), "where": "in a cool, dark place"},
    ),
    ("taste", "once after 3 weeks", {"after": Span(3, 3, "week"), "every": None}),
    (
        "turn",
        "from the third week, every 2 days for a week",
        {"after": Span(2, 2, "week"), "every": Span(2, 2, "day")},
    ),
    ("wrap", "20 minutes the day before giving", {"before_giving": 1, "hands_on_minutes": 20}),
    ("label", "15 minutes, 3 days before giving", {"before_giving": 3}),
    ("prepare", "1 hour over 2 days", {"lasts": Span(2, 2, "day"), "hands_on_minutes": 60}),
    (
        "cook",
        "2-2.5 hours, 45 minutes hands-on",
        {"hands_on_minutes": 45, "lasts": Span(120, 150, "minute")},
    ),
    ("usable from", "2 months", {"role": "usable", "age": Span(2, 2, "month")}),
    ("best from", "the end of the second month", {"role": "best", "age": Span(2, 2, "month")}),
    ("best from", "3 months after bottling", {"age_from": "bottling", "age": Span(3, 3, "month")}),
    ("usable from", "at once", {"age": None}),
    ("strain and bottle", "45 minutes", {"role": "bottle", "hands_on_minutes": 45}),
    ("strain and bottle", "", {"role": "bottle", "hands_on_minutes": 50}),
    ("prepare", "1 hour, plus 10 minutes", {"hands_on_minutes": 70, "lasts": None, "where": ""}),
    ("prepare", "peel, then chop, 40 minutes", {"hands_on_minutes": 40}),
    (
        "shake",
        "daily for the first fortnight",
        {"every": Span(1, 1, "day"), "lasts": Span(2, 2, "week"), "where": ""},
    ),
    ("keep", "3 weeks in the dark", {"role": "rest", "lasts": Span(3, 3, "week")}),
]


@pytest.mark.parametrize(
    ("word", "text", "fields"), STAGES, ids=[f"{w}: {t}" for w, t, _ in STAGES]
)
def test_stage(word: str, text: str, fields: dict[str, object]) -> None:
    stage = parse_stage(word, text)
    assert {name: getattr(stage, name) for name in fields} == fields


REFUSED_STAGES = [
    ("shak", "every day", 'Did you mean "shake"?'),
    ("shake", "every 3 moons for 2 weeks", "is not a rhythm"),
    ("shake", "every day", 'Write e.g. "every day for 2 weeks"'),
    ("shake", "every month for 2 weeks", "never comes round"),
    ("shake", "twice a week for 2 weeks", 'Write e.g. "every 3 days"'),
    ("rest", "while it bubbles", 'Write e.g. "while it bubbles, about 3 weeks"'),
    ("rest", "for 14", "has no unit"),
    ("prepare", "40 mintues", 'Did you mean "minutes"?'),
    ("best from", "", "has no age"),
    ("wrap", "2 months before giving", "is not days or weeks"),
    # each was read, and its days or its second half lost without a word
    ("shake", "Mondays for a month", 'Write "every week"'),
    ("shake", "every Sunday for 6 weeks", 'Write "every week"'),
    ("shake", "on Tuesdays and Fridays for 6 weeks", 'Write "every week"'),
    ("keep", "6 months", 'Write "- rest: 6 months", or outside the timeline "keeps: 6 months".'),
    (
        "shake",
        "daily for 2 weeks, then weekly for 2 months",
        'Write "- shake: daily for 2 weeks", "- shake: weekly for 2 months".',
    ),
    (
        "cool",
        "2 hours and then overnight in the fridge",
        'Write "- cool: 2 hours", "- cool: overnight in the fridge".',
    ),
]


@pytest.mark.parametrize(
    ("word", "text", "says"), REFUSED_STAGES, ids=[f"{w}: {t}" for w, t, _ in REFUSED_STAGES]
)
def test_refused_stage(word: str, text: str, says: str) -> None:
    with pytest.raises(ValueError, match=re.escape(says)):
        parse_stage(word, text)


def test_every_stage_word_has_a_known_role() -> None:
    assert {entry.role for entry in stage_words().values()} == set(ROLES)


DAYS = st.dates(date(1900, 1, 1), date(2150, 12, 31))


@given(DAYS, st.integers(1, 240))
def test_month_arithmetic_is_that_of_dateutil(day: date, months: int) -> None:
    # python-dateutil's relativedelta: a day that the month lacks becomes its last
    assert Span(months, months, "month").after(day) == day + relativedelta(months=months)


# reference.md, E9 and 6.3: "Add-months rule: clamp to month end" (31 Aug + 6 months = 28/29 Feb);
# EU 1169/2011 Annex X leaves the counting to the maker
CLAMPED = [
    (date(2027, 1, 31), Span(1, 1, "month"), date(2027, 2, 28)),
    (date(2028, 1, 31), Span(1, 1, "month"), date(2028, 2, 29)),
    (date(2026, 8, 31), Span(6, 6, "month"), date(2027, 2, 28)),
    (date(2028, 2, 29), Span(1, 1, "year"), date(2029, 2, 28)),
    (date(2026, 11, 25), Span(3, 3, "month"), date(2027, 2, 25)),
    (date(2026, 11, 25), Span(18, 18, "month"), date(2028, 5, 25)),
    (date(2026, 12, 31), Span(2, 2, "week"), date(2027, 1, 14)),
]


@pytest.mark.parametrize(("day", "span", "later"), CLAMPED, ids=str)
def test_month_ends(day: date, span: Span, later: date) -> None:
    assert span.after(day) == later


@pytest.mark.parametrize(
    ("word", "said"),
    [
        # another word for a thing is said as it was written; an age is said by its one name
        ("chill", "Chill"), ("sweeten", "Sweeten"),
        ("usable", "Usable"), ("ready from", "Usable"), ("best after", "At its best"),
    ],
)  # fmt: skip
def test_how_a_stage_is_said(word: str, said: str) -> None:
    assert parse_stage(word, "2 hours").say == said
