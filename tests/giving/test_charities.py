"""Households out of published texts against the demo's presents and strangers': none unsafe.

Two-sided: what must be refused is, what must not be is not, and what cannot be told is asked.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
import yaml

from care_cases import recipe_of
from giving.households import rows
from giving.lists import TODAY, demo_recipes
from giving.test_written_by_others import LETTERS
from stillroom.core.allergens.near import nearest_avoided
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.asked_back import asked_about
from stillroom.giving.facts import GiftFacts, facts_of
from stillroom.giving.model import Household
from stillroom.giving.names import with_names_of
from stillroom.giving.reading import read_giving_list
from stillroom.giving.rules import why_refused

HOUSEHOLDS = rows("charities.yml") + rows("charities_again.yml")
# Regulation (EU) 1169/2011, Annex II, in the languages of the names of foods; from memory
ANNEX_II = {
    "gluten": "glutenhaltiges Getreide; céréales contenant du gluten; cereales que contengan "
    "gluten; cereali contenenti glutine; glutenbevattende granen",
    "crustaceans": "Krebstiere; crustacés; crustáceos; crostacei",
    "eggs": "Eier; œufs; huevos; uova; eieren; Eiallergie; allergia alle uova; eiallergie",
    "fish": "Fische; poissons; pescado; pesce; vis",
    "peanuts": "Erdnüsse; arachides; cacahuetes; arachidi; aardnoten",
    "soya": "Sojabohnen; soja; soia",
    "milk": "Milch; lait; leche; latte e prodotti a base di latte; melk; latte e derivati",
    "nuts": "Schalenfrüchte; fruits à coque; frutos de cáscara; frutta a guscio; noten",
    "celery": "Sellerie; céleri; apio; sedano; selderij",
    "mustard": "Senf; moutarde; mostaza; senape; mosterd",
    "sesame": "Sesamsamen; graines de sésame; granos de sésamo; semi di sesamo; sesamzaad",
    "sulphites": "Schwefeldioxid und Sulphite; anhydride sulfureux et sulfites; sulfitos; "
    "anidride solforosa e solfiti; zwaveldioxide en sulfieten; E220; SO2",
    "lupin": "Lupinen; lupin; altramuces; lupini; lupine",
    "molluscs": "Weichtiere; mollusques; moluscos; molluschi; weekdieren",
}


@cache
def presents() -> dict[str, GiftFacts]:
    """Return every present that the rows name, by its letters."""
    demo = {recipe.slug: recipe for recipe in demo_recipes()}
    found = {letters: facts_of(demo[slug]) for letters, slug in LETTERS.items()}
    for row in rows("outside.yml"):
        found[row["id"]] = facts_of(recipe_of({k: v for k, v in row.items() if k != "id"}))
    return found


def read_household(row: dict[str, Any]) -> Household | None:
    """Return a household as its list is read, None where a question is asked of it."""
    language = row.get("lang", "en_GB")
    data = {
        "giving list": "x",
        "giving day": "2027-12-18",
        "baskets": {"small": {"eat": 2, "drink": 1}},
        "makes": [{"recipe": "bramble-jelly"}],
        "households": [{"name": "Ann", "basket": "small", **row["needs"]}],
    }
    text = yaml.safe_dump(data, sort_keys=False, allow_unicode=True)
    recipes = {recipe.slug: recipe for recipe in demo_recipes()}
    try:
        listed = read_giving_list(text, "l.yml", "GBP", language, language[-2:])
        read = with_names_of(listed, recipes)
        check_list(read, recipes)
    except ProblemsFound:
        return None
    return read.giving.households[0]


@pytest.mark.parametrize("row", HOUSEHOLDS, ids=[str(one["needs"]) for one in HOUSEHOLDS])
def test_no_present_goes_where_it_must_not_and_none_is_refused_for_nothing(
    row: dict[str, Any],
) -> None:
    household = read_household(row)
    assert row["ask"] == "may" or row["ask"] == ("yes" if household is None else "no")
    if household is None:
        return
    refused = {
        letters: why_refused(household, facts, TODAY) for letters, facts in presents().items()
    }
    assert [one for one in (row["never"] or "").split() if not refused[one]] == []
    assert [one for one in row.get("free", "").split() if refused[one]] == []


def test_the_sample_is_as_large_as_it_says():
    assert len(HOUSEHOLDS) >= 120
    named = {
        one for row in HOUSEHOLDS for key in ("never", "free") for one in row.get(key, "").split()
    }
    assert named - set(presents()) == set()


@pytest.mark.parametrize(
    ("heading", "said"),
    [(k, one.strip()) for k, words in ANNEX_II.items() for one in words.split(";")],
)
def test_the_fourteen_headings_are_read_in_the_languages_of_the_names(heading, said):
    read, known = read_avoided(said), read_avoided(heading)
    assert read is not None
    assert not read.ask
    assert read.allergens >= known.allergens


@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        ("casher", ""),
        ("kascher", ""),
        ("segale", ""),
        ("glutten", "gluten"),
        ("cinamon", "cinnamon"),
    ],
)
def test_a_diet_is_never_taken_for_a_nut_nor_rye_for_salt(typed, offered):
    assert (", ".join(nearest_avoided(typed)) if read_avoided(typed) is None else "") == offered


def test_what_the_nearest_word_asks_is_asked_at_once_and_a_far_one_says_what_else():
    assert "does not tell" in asked_about("malabsorption of fructose").what
    assert asked_about("almonz").mend.startswith('Did you mean "almond"? If not: write a food')
