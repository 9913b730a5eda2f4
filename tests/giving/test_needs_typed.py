"""Needs as strangers type them, against the demo's presents: none unsafe, none in silence."""

from __future__ import annotations

from typing import Any

import pytest

from giving.households import rows
from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.facts import facts_of
from stillroom.giving.reading import ReadList
from stillroom.giving.rules import why_refused

NEEDS = rows("needs.yml")
BY_NAME = {recipe.slug: recipe for recipe in demo_recipes()}
# two things in one word, and "bee products", are asked about and could be read
ASKED_AS_WELL = {"sulfites (asthma)", "honey and bee products"}


def _read(row: dict[str, Any]) -> ReadList | None:
    """Return the list with such a household, None where a question is asked of it."""
    own = {key: value for key, value in row.items() if key not in ("never", "ask")}
    try:
        read = read_dict(small_list(households=[{"name": "A", "basket": "small", **own}]))
        check_list(read, BY_NAME)
    except ProblemsFound:
        return None
    return read


@pytest.mark.parametrize(
    "row", NEEDS, ids=[str(one.get("avoid", next(iter(one)))) for one in NEEDS]
)
def test_nothing_goes_where_it_would_harm_and_what_cannot_be_told_is_asked(
    row: dict[str, Any],
) -> None:
    read = _read(row)
    if read is None:
        assert row.get("ask") or row["avoid"][0] in ASKED_AS_WELL
        return
    assert row.get("ask") != "yes", "it was passed in silence"
    household = read.giving.households[0]
    let_through = {
        name for name in row["never"] if not why_refused(household, facts_of(BY_NAME[name]), TODAY)
    }
    assert let_through == set()


def test_presents_are_named_as_the_book_names_them() -> None:
    named = {name for row in NEEDS for name in row["never"]}
    assert named - set(BY_NAME) == set()
    assert len(NEEDS) >= 55
