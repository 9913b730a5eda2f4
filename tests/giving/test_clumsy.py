"""What people type of somebody, the clumsy way, against presents as families write them: two-sided.

Both tables were written before anything was run. Unsafe in silence: none. What is understood and
refused for nothing may only grow fewer.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from care_cases import recipe_of
from giving.households import FOLDER, expected, rows
from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.facts import facts_of
from stillroom.giving.model import Household
from stillroom.giving.rules import why_refused

TYPED = ("avoid", "children", "pets")
SAID = rows("clumsy.yml")
# what cannot be understood and is asked back, which is safe
ASKED_ALL_THE_SAME = {"twins 2 1/2"}
# presents of which nobody can know all: words of another language, shrimps without a food, raw fish
NOT_KNOWN = {"prawn-oil-mix", "lebkuchen", "tapenade", "sourdough-crackers", "pate-fruits"}


@cache
def letters() -> dict[str, tuple[dict[str, Any], Recipe]]:
    words = ("id", "refuse", "may", "packet")
    return {
        row["id"]: (row, recipe_of({k: v for k, v in row.items() if k not in words}))
        for row in rows("letters.yml")
    }


def words_of(row: dict[str, Any]) -> str:
    return str(next(row[key] for key in TYPED if key in row))


def household_of(row: dict[str, Any]) -> tuple[Household | None, str]:
    """Return the household of what was typed, or what is told of it."""
    typed = {key: row[key] for key in TYPED if key in row}
    recipes = {one.slug: one for one in demo_recipes()}
    try:
        read = read_dict(small_list(households=[{"name": "A", "basket": "small", **typed}]))
        check_list(read, recipes)
    except ProblemsFound as found:
        return None, " ".join(f"{one.what} {one.mend}" for one in found.problems)
    return read.giving.households[0], ""


@pytest.mark.parametrize("row", [row for row in SAID if "asks" in row], ids=words_of)
def test_what_means_too_much_is_asked_back_with_a_meaningful_word(row):
    household, told = household_of(row)
    assert household is None
    assert row["asks"].lower() in told.lower()


@pytest.mark.parametrize("row", [row for row in SAID if "never" in row], ids=words_of)
def test_what_is_typed_is_understood_and_nothing_harmful_goes_to_them(row):
    household, told = household_of(row)
    if words_of(row) in ASKED_ALL_THE_SAME:
        assert told
        return
    assert household is not None, told
    needless = set()
    for name, (present, recipe) in letters().items():
        refused = bool(why_refused(household, facts_of(recipe), TODAY))
        wanted = expected(row, present)
        assert refused or wanted != "no", name
        if refused and wanted == "yes":
            needless.add(name)
    assert needless <= NOT_KNOWN


def test_the_tables_are_large_and_every_needless_refusal_is_of_what_is_not_known():
    assert len(SAID) >= 80
    assert len(letters()) == 20
    assert FOLDER.is_dir()
