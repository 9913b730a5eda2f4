"""How long a thing keeps, as cooks say it: every word used, or asked about."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.recipe.keeps import read_keeping
from stillroom.core.words.problems import Unreadable

# said -> unopened, once opened, where
SAID = {
    "6 months": ("6 months", "None", ""),
    "keeps for 6 months": ("6 months", "None", ""),
    "It will keep for a year.": ("1 year", "None", ""),
    "for 3 months": ("3 months", "None", ""),
    "up to 6 months in the fridge": ("6 months", "None", "in the fridge"),
    "at least a year in a cool, dark place": ("1 year", "None", "in a cool, dark place"),
    "12 months at room temperature": ("12 months", "None", "at room temperature"),
    "1 month refrigerated": ("1 month", "None", "in the fridge"),
    "6 months frozen": ("6 months", "None", "in the freezer"),
    "6 months cool and dark": ("6 months", "None", "cool and dark"),
    "a year if you can resist": ("1 year", "None", "if you can resist"),
    "a fortnight": ("2 weeks", "None", ""),
    "2-3 weeks": ("2-3 weeks", "None", ""),
    "3 years unopened, 1 year once opened": ("3 years", "1 year", ""),
    "6 months unopened and 2 weeks once opened": ("6 months", "2 weeks", ""),
    "6 months, unopened; 2 weeks opened": ("6 months", "2 weeks", ""),
    "one year unopened, once opened 4 weeks": ("1 year", "4 weeks", ""),
    "a year. After opening: 3 weeks": ("1 year", "3 weeks", ""),
    "2 weeks in the fridge, 3 days once opened": ("2 weeks", "3 days", "in the fridge"),
    # labels before their lengths: the two were taken for each other
    "a year; once opened, a month": ("1 year", "1 month", ""),
    "unopened, a year; once opened, a month": ("1 year", "1 month", ""),
    "once opened, a month; unopened, a year": ("1 year", "1 month", ""),
    "2 years, unopened, 6 weeks, once opened": ("2 years", "6 weeks", ""),
    "2 weeks (fridge)": ("2 weeks", "None", "in the fridge"),
    "fridge, 2 weeks": ("2 weeks", "None", "in the fridge"),
    "refrigerated: 2 weeks": ("2 weeks", "None", "in the fridge"),
    "best eaten within a week": ("1 week", "None", ""),
    "store in the fridge and use within 2 weeks": ("2 weeks", "None", "in the fridge"),
}
# said -> unopened, once opened, where once opened; before that it is not kept cold
ONCE_OPENED = {
    "6 months unopened, 1 month once opened in the fridge": (
        "6 months",
        "1 month",
        "in the fridge",
    ),
    "2 years unopened, 6 weeks once opened, in the fridge": ("2 years", "6 weeks", "in the fridge"),
    "1 year; after opening 3 weeks refrigerated": ("1 year", "3 weeks", "in the fridge"),
    "1 year, refrigerate after opening and use within 4 weeks": (
        "1 year",
        "4 weeks",
        "in the fridge",
    ),
    "6 months. Refrigerate once opened.": ("6 months", "None", "in the fridge"),
    "1 year; keep in the fridge once opened": ("1 year", "None", "in the fridge"),
    "refrigerate once opened; 1 year": ("1 year", "None", "in the fridge"),
}
ASKED = [
    "indefinitely", "several months", "for ever", "", "months", "2 weeks, 3 weeks", "until Easter",
    "3 weeks or 6 months frozen",
    "a week or a month", "3 weeks blah", "6 months minus 2 weeks", "never more than 3 days",
]  # fmt: skip


@pytest.mark.parametrize("said", SAID)
def test_how_it_keeps_is_read(said: str) -> None:
    kept = read_keeping(said)
    assert (str(kept.unopened), str(kept.opened), kept.where) == SAID[said]


@pytest.mark.parametrize("said", ONCE_OPENED)
def test_where_it_is_kept_once_opened_is_read(said: str) -> None:
    kept = read_keeping(said)
    assert (str(kept.unopened), str(kept.opened), kept.opened_where) == ONCE_OPENED[said]
    assert kept.where == ""


def test_each_state_may_have_its_place_among_the_facts() -> None:
    kept = read_keeping({"unopened": "1 year in the cellar", "opened": "3 weeks in the fridge"})
    assert (kept.words, kept.where) == (
        "1 year, 3 weeks in the fridge once opened",
        "in the cellar",
    )


@pytest.mark.parametrize("said", ASKED)
def test_what_is_not_plain_is_asked_about(said: str) -> None:
    with pytest.raises(Unreadable) as asked:
        read_keeping(said)
    assert asked.value.mend


WORDS = "6 2 a months weeks year once opened unopened in the fridge , and or for keeps if . 1/0"


@given(st.lists(st.sampled_from(WORDS.split()), max_size=10).map(" ".join))
def test_any_words_are_read_or_asked_about(words: str) -> None:
    try:
        kept = read_keeping(words)
    except Unreadable:
        return
    assert kept.unopened or kept.opened or kept.opened_where
