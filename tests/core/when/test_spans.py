"""Lengths of time as cooks say them, each to what it means or to a question."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sampling import tries
from stillroom.core.when.spans import parse_span
from stillroom.core.when.stages import parse_stage
from stillroom.core.words.problems import Unreadable

SAID = """
an hour and a half = 90 minutes | 1h30 = 90 minutes | 1 hr 30 min = 90 minutes
1h 30m = 90 minutes | two to three weeks = 2-3 weeks | a fortnight = 2 weeks
24 hours = 24 hours | six months = 6 months | all night = 1 day | overnight = 1 day
the whole night = 1 day | half an hour = 30 minutes | three quarters of an hour = 45 minutes
a quarter of an hour = 15 minutes | one night = 1 day | an hour or two = 1-2 hours
a week or two = 1-2 weeks | a week or so = about 1 week | at least 3 weeks = 3 weeks
up to 2 weeks = 2 weeks | approx. 3 weeks = about 3 weeks | ~3 weeks = about 3 weeks
ca 3 weeks = about 3 weeks | 3+ weeks = 3 weeks | c. 3 weeks = about 3 weeks
twenty minutes = 20 minutes | forty-five minutes = 45 minutes | twenty-four hours = 24 hours
one and a half hours = 90 minutes | 2 1/2 hours = 150 minutes | 1½-2 hours = 90-120 minutes
2–3 wks = 2-3 weeks | a couple of weeks = 2 weeks | 2 nights = 2 days
two-three weeks = 2-3 weeks | between 2 and 3 weeks = 2-3 weeks | from 2 to 3 weeks = 2-3 weeks
6mths = 6 months | 6 mo = 6 months | 1 week minimum = 1 week | minimum 2 weeks = 2 weeks
another 2 weeks = 2 weeks | 2 full weeks = 2 weeks | 1 week to 10 days = 7-10 days
45 minutes to 1 hour = 45-60 minutes | 6 months - 1 year = 6-12 months
3 weeks or more = 3 weeks | six weeks at least = 6 weeks | no more than 2 days = 2 days
1 hour & 20 minutes = 80 minutes | 4 or 5 days = 4-5 days | 48h = 48 hours | all day = 1 day
A MONTH = 1 month | 2‑3 weeks = 2-3 weeks | 10 minutes or so = about 10 minutes
90 minutes = 90 minutes
""".replace("\n", "|")
LENGTHS = [tuple(one.strip().split(" = ")) for one in SAID.split("|") if one.strip()]

# what says no length: the message begins so
NOT_SAID = {
    "a few days": '"a few days" does not say how many.',
    "several weeks": '"several weeks" does not say how many.',
    "3 m": '"3 m" may be minutes or months.',
    "for ever": '"for ever" is not a length of time.',
    "a month and a half": '"a month and a half" is not a whole number of months.',
    "a year and a day": '"a year and a day" mixes lengths that do not add up.',
    "3 to 2 weeks": '"3 to 2 weeks" runs backwards.',
    "30 seconds": '"seconds" is not a unit of time.',
    "1/0 weeks": '"1/0" divides by nothing.',
    "0 days": '"0 days" is no time at all.',
    "999999 years": '"999999 years" is longer than 100 years.',
    "9999999999 days": '"9999999999 days" is not a length of time.',
    "٣ weeks": '"٣ weeks" is not a length of time.',
}


@pytest.mark.parametrize(("said", "meant"), LENGTHS)
def test_a_length_is_what_a_cook_means(said: str, meant: str) -> None:
    assert str(parse_span(said)) == meant


@pytest.mark.parametrize("said", NOT_SAID)
def test_what_says_no_length_is_told(said: str) -> None:
    with pytest.raises(Unreadable) as told:
        parse_span(said)
    assert told.value.what.startswith(NOT_SAID[said])
    assert told.value.mend


# a line of a timeline -> its role and how long it lasts
STAGES = [
    ("Steeping", "at least three weeks", "rest", "3 weeks"),
    ("Leave to infuse", "a fortnight in the dark", "rest", "2 weeks"),
    ("baking time", "1h30", "prepare", "None"),
    ("marinate", "overnight in the fridge", "rest", "1 day"),
    ("soak", "all night", "rest", "1 day"),
    ("Stirring", "daily for a week or two", "tend", "1-2 weeks"),
    ("dripping", "for 24 hours", "rest", "24 hours"),
    ("maturing", "between 2 and 3 months", "rest", "2-3 months"),
]


@pytest.mark.parametrize(("word", "text", "role", "lasts"), STAGES)
def test_a_line_of_a_timeline_in_everyday_words(
    word: str, text: str, role: str, lasts: str
) -> None:
    stage = parse_stage(word, text)
    assert (stage.role, str(stage.lasts)) == (role, lasts)


SOME_WORDS = """a an 2 3½ 1/2 1/0 0 two to or - about for every day weeks hours min h30 until end of
the second third month once twice while it bubbles overnight after from before giving each time ,
few h 1h30 999999 half and"""
WORDS = st.lists(st.sampled_from(SOME_WORDS.split()), max_size=9).map(" ".join)


@pytest.mark.sampled
@given(
    st.one_of(WORDS, st.text(max_size=30)), st.sampled_from(["shake", "rest", "usable from", "x"])
)
@tries(300, 2000)
def test_any_words_are_read_or_told(text: str, word: str) -> None:
    for read in (lambda: parse_span(text), lambda: parse_stage(word, text)):
        try:
            read()
        except Unreadable as told:
            said = str(told)
            continue
        said = ""
    assert said is not None
