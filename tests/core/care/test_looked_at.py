"""Every silence has a why: what was asked, and what was found."""

from __future__ import annotations

from typing import Any

import pytest

from care_cases import load_cases, recipe_of, settings_of
from stillroom.core.care.looked_at import rules_looked_at
from stillroom.core.care.safety import SafetyBox, assess_safety
from stillroom.core.care.safety_table import all_rules
from stillroom.core.words.problems import ProblemsFound

# how to do it well, and what is judged by the words of the page rather than by what is in it
NO_QUESTION = {
    "process-jars", "process-pickle", "keep-the-sugar", "mould", "posting-liquid", "damp-mix",
    "curing-salt", "cure-over-the-law", "cure-beyond-any-law", "chilli", "broad-beans",
    "allergens", "unknown-refused",
    "claim-contradicted", "craft-glitter-food", "caffeine-powder", "food-wrap", "pet-treat",
    "hairy-seeds",
}  # fmt: skip
SHORTBREAD = {
    "title": "Shortbread", "kind": "bake", "keeps": "4 weeks",
    "ingredients": ["250 g plain flour", "125 g butter", "80 g sugar"],
    "method": ["Rub together and bake at 160 C for 30 minutes."],
}  # fmt: skip


def box_of(written: dict[str, Any]) -> SafetyBox:
    return assess_safety(recipe_of(written), settings_of({"recipe": written}))


def test_every_rule_is_asked_under_a_question() -> None:
    assert set(all_rules()) - rules_looked_at() == NO_QUESTION
    assert rules_looked_at() - set(all_rules()) == set()


def test_a_silence_says_what_was_found() -> None:
    looks = {look.what: look for look in box_of(SHORTBREAD).looked}
    raw = looks["Raw egg, flour, meat, fish or milk"]
    assert raw.answer == "not found"
    assert raw.found.startswith("plain flour: cooked through")
    assert {look.answer for look in looks.values()} == {"not found"}


def test_a_caution_is_said_above_and_an_unknown_food_is_neither() -> None:
    written = SHORTBREAD | {"ingredients": ["250 g plain flour", "5 g glimmerwort", "60 ml honey"]}
    looks = {look.what: look for look in box_of(written).looked}
    assert looks["Babies, children and animals"].answer == "said above"
    gas = looks["Gas in a closed bottle"]
    assert gas.answer == "could not be told"
    # it is named at the first question that it leaves open
    assert gas.found == "for the same reason"
    assert sum("glimmerwort" in one.found for one in looks.values()) == 1


@pytest.mark.parametrize("answer", ["said above", "not found", "could not be told"])
def test_the_three_answers_are_kept_apart_over_all_cases(answer: str) -> None:
    for case in load_cases()[::5]:
        try:
            box = assess_safety(recipe_of(case["recipe"]), settings_of(case))
        except ProblemsFound:
            continue
        found = [look for look in box.looked if look.answer == answer]
        spoken = {one.title for one in (*box.cautions, *box.refusals)}
        spoken |= {one.caution.title for one in box.overrides}
        assert all(look.found for look in found)
        if answer == "could not be told":
            assert not found or box.unchecked
        elif answer == "not found":
            # one food of which it is not known how sour it is leaves the other questions answered
            assert not found or not any("is not known" in words for words in box.unchecked)
        else:
            assert all(any(title in look.found for title in spoken) for look in found)


def test_a_known_food_of_which_nobody_says_how_sour_it_is_is_told_in_a_closed_jar() -> None:
    jar = {
        "title": "Jar", "kind": "preserve", "keeps": "6 months",
        "ingredients": ["200 g sugar", "200 ml soy sauce"],
        "method": ["Boil and fill hot jars."],
    }  # fmt: skip
    box = box_of(jar)
    assert [words for words in box.unchecked if "soy sauce" in words]
    assert {look.answer for look in box.looked if "botulism" in look.what} == {"could not be told"}
    cold = box_of(jar | {"keeps": "2 weeks in the fridge"})
    assert not cold.unchecked
