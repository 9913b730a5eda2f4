"""Households as many people write them, against what presents were written to hold beforehand.

Nothing goes where it must not, nor what only a packet tells, and what cannot be read is asked.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from care_cases import recipe_of
from giving.households import rows
from giving.lists import TODAY, demo_recipes
from giving.test_charities import read_household
from stillroom.core.allergens.near import named_in, nearest_avoided
from stillroom.core.larder.shelves import all_staples
from stillroom.giving.facts import GiftFacts, facts_of
from stillroom.giving.rules import why_refused

FAMILIES = rows("families.yml")
AGAIN = rows("families_again.yml")
# of some 5,100 pairs of the 66 households read, most for a bought thing of which only the packet
# tells, and 29 for the butter, bread and baking soda of whoever eats little salt
REFUSED_FOR_NOTHING = 408  # two more sentences are read, whose presents are not known
CONTENTS = {row["id"]: row for row in rows("contents.yml")}
CONTENTS_AGAIN = {row["id"]: row for row in rows("contents_again.yml")}


@cache
def presents() -> dict[str, GiftFacts]:
    """Return every present of the table, by its id."""
    demo = {recipe.slug: recipe for recipe in demo_recipes()}
    return {
        name: facts_of(recipe_of(row["recipe"]) if "recipe" in row else demo[name])
        for name, row in CONTENTS.items()
    }


@cache
def presents_again() -> dict[str, GiftFacts]:
    """Return the presents of the second table, and the lavender sugar of the demo book."""
    found = {name: facts_of(recipe_of(row["recipe"])) for name, row in CONTENTS_AGAIN.items()}
    return found | {"lavender-sugar": presents()["lavender-sugar"]}


@pytest.mark.parametrize("row", AGAIN, ids=[str(one["needs"])[:90] for one in AGAIN])
def test_whole_sentences_of_needs_keep_away_what_they_say_or_are_asked(row: dict[str, Any]) -> None:
    household = read_household(row)
    assert row["ask"] == "may" or row["ask"] == ("yes" if household is None else "no")
    if household is None:
        return
    never = set(row["never"].split())
    given = {
        name for name, facts in presents_again().items() if not why_refused(household, facts, TODAY)
    }
    held = CONTENTS | CONTENTS_AGAIN
    wrong = {
        name: never & {*held[name]["has"].split(), *held[name]["may"].split()} for name in given
    }
    assert {name: why for name, why in wrong.items() if why} == {}
    assert set(row["free"].split()) - given == set()


@pytest.mark.parametrize("row", FAMILIES, ids=[str(one["needs"])[:90] for one in FAMILIES])
def test_nothing_goes_where_it_must_not_and_what_cannot_be_read_is_asked(
    row: dict[str, Any],
) -> None:
    household = read_household(row)
    assert row["ask"] == "may" or row["ask"] == ("yes" if household is None else "no")
    if household is None:
        return
    never = set(row["never"].split())
    given = {name for name, facts in presents().items() if not why_refused(household, facts, TODAY)}
    wrong = {
        name: never & held
        for name in given
        if never & (held := {*CONTENTS[name]["has"].split(), *CONTENTS[name]["may"].split()})
    }
    assert wrong == {}
    assert set(row["free"].split()) - given == set()


def test_few_presents_are_refused_to_whom_they_could_be_given() -> None:
    """What is refused though nothing in it was expected to matter: it may only become less."""
    refused = 0
    for row in FAMILIES:
        never = set(row["never"].split())
        household = read_household(row) if set(row["needs"]) == {"avoid"} else None
        for name, facts in presents().items() if household else ():
            held = {*CONTENTS[name]["has"].split(), *CONTENTS[name]["may"].split()}
            refused += bool(not never & held and why_refused(household, facts, TODAY))
    assert refused <= REFUSED_FOR_NOTHING


def test_what_holds_an_allergen_of_an_animal_is_never_vegan() -> None:
    held = {"milk", "eggs", "fish", "crustaceans", "molluscs"}
    assert [
        name for name, food in all_staples().items() if held & {*food.allergens} and food.vegan
    ] == []


@pytest.mark.parametrize(
    ("typed", "near"),
    [
        ("DAO deficiency", ()),
        ("no almons or hazlenuts", ("almond", "hazelnut")),
        ("takes felodipine: no grapefruit", ("grapefruit",)),
        ("latex-fruit: banana and chestnut", ("latex-fruit", "banana", "chestnut")),
        ("vegan of a kind", ("vegan",)),
    ],
)
def test_a_near_word_is_the_thing_named_or_a_slip_of_its_letters(typed, near):
    assert nearest_avoided(typed) == near


def test_what_is_named_among_other_words_is_offered_back():
    assert named_in("severe tree nut allergy - no marzipan") == ("tree nut", "marzipan")
