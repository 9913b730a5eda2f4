"""Nitrite and nitrate of a cure are reckoned to the kilo of meat and held against published limits.

Limits: 21 CFR 172.170 and 172.175 (home cures: 200 mg of nitrite, 500 of nitrate); UK SI 2007/1778
Schedule 1 (150 mg of either); USDA FSIS Processing Inspectors' Calculations Handbook, 1995 (625 mg
of nitrite; reckoned to the weight of the meat as it goes in). Sums are made here by hand.
"""

from typing import Any

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.safety import assess_safety
from stillroom.core.recipe.settings import BookSettings

CASES = [
    # 2.5 ml at about 1 g to the ml, of a kilo
    (["1 kg venison haunch", "1/2 tsp saltpetre"], "2,500 mg of nitrate", "cure-beyond-any-law"),
    (["1.5 kg beef", "20 g saltpetre"], "13,300 mg of nitrate", "cure-beyond-any-law"),
    (["5 kg beef", "4 ml saltpetre"], "800 mg of nitrate", "cure-over-the-law"),
    (["2 kg beef", "0.3 g potassium nitrate"], "150 mg of nitrate", ""),
    # 6.25 % of it is nitrite
    (["1 kg pork belly", "2.5 g cure #1"], "160 mg of nitrite", ""),
    (["1 kg pork belly", "2.5 g Prague powder #1"], "160 mg of nitrite", ""),
    (["1 kg pork belly", "8 g pink curing salt"], "500 mg of nitrite", "cure-over-the-law"),
    (["1 kg pork belly", "30 g cure #1"], "1,900 mg of nitrite", "cure-beyond-any-law"),
    (["1 kg pork", "2.5 g cure #2"], "160 mg of nitrite and 100 mg of nitrate", ""),
    # half a percent of it
    (["1 kg Schweinebauch", "30 g Nitritpökelsalz"], "150 mg of nitrite", ""),
    # in a brine meat and water are weighed together
    (["2 kg beef brisket", "4 l water", "25 g cure #1"], "260 mg of nitrite", "cure-over-the-law"),
    (["1 kg pork belly", "20 g curing salt"], "could not be reckoned", ""),
    (["1 pork belly", "2.5 g cure #1"], "could not be reckoned", ""),
    (["1 kg pork belly", "some saltpetre"], "could not be reckoned", ""),
]


def _box(lines: list[str], **more: Any) -> Any:
    method = ["Rub it in and keep it in the fridge for a week."]
    written = {"title": "Cured", "kind": "preserve", "ingredients": lines, "method": method}
    return assess_safety(recipe_of({**written, "keeps": "2 days", **more}), BookSettings())


@pytest.mark.parametrize(("lines", "said", "rule"), CASES, ids=lambda one: str(one))
def test_a_cure_is_reckoned_to_the_kilo(lines: list[str], said: str, rule: str) -> None:
    box = _box(lines)
    told = {one.rule: one.to_maker for one in (*box.refusals, *box.cautions)}
    assert said in told["curing-salt"]
    assert {one for one in told if one.startswith("cure-")} == ({rule} if rule else set())


def test_pink_salt_on_pork_is_minded_and_not_reckoned() -> None:
    """A hunter's pancetta, nzhuntingandshooting.co.nz: "1 tsp of pink salt" beside rock salt."""
    box = _box(["1 kg pork belly", "1 tsp pink salt", "4 tsp rock salt"])
    (told,) = (one for one in box.cautions if one.rule == "curing-salt")
    assert "could not be reckoned" in told.to_maker


def test_pink_salt_of_the_himalaya_is_no_cure() -> None:
    box = _box(["1 kg pork belly", "25 g pink Himalayan salt"])
    assert not [one.rule for one in box.cautions if "cur" in one.rule]


HANG = "Rub in the salt and hang the meat in an airy place for five days."
WARM = "Dry it in the oven at 55 C for six hours until leathery."
HOT = "Heat the strips to 71 C, then dry in the oven at 55 C for six hours until leathery."


@pytest.mark.parametrize(
    ("method", "keeps", "rules"),
    [
        (HANG, "1 month", {"raw-meat-fish", "keeps-too-long"}),
        (HANG, "2 weeks", {"raw-meat-fish", "keeps-beyond-default"}),
        (HANG, "2 days", {"raw-meat-fish"}),
        (WARM, "2 months", {"raw-meat-fish", "keeps-beyond-default"}),
        (WARM, "1 week", {"raw-meat-fish"}),
        (HOT, "2 months", set()),
    ],
)
def test_meat_that_no_heat_reached_keeps_days(method: str, keeps: str, rules: set[str]) -> None:
    """Bok and Rose, Meat storage and handling (3 weeks); OMG Biltong (two days); USDA on jerky."""
    lines = ["1 kg lean beef, in strips", "40 g salt"]
    box = _box(lines, method=[method], keeps=keeps)
    assert {one.rule for one in (*box.refusals, *box.cautions)} == rules


@pytest.mark.parametrize(
    ("lines", "method", "rule"),
    [
        (["500 g cherries", "400 ml brandy, 40% vol", "150 g sugar"], "Cover.", "alcohol"),
        (["500 g prunes", "500 ml armagnac"], "Cover the prunes.", "alcohol"),
        (["1 kg fruit", "700 ml rum, 54% vol", "500 g sugar"], "Layer.", "alcohol"),
        (["1 kg oranges", "1 kg sugar", "50 ml whisky"], "Boil to a set.", "alcohol-in-food"),
        (["1 l red wine", "1 kg jam sugar"], "Boil the wine and sugar.", "alcohol-in-food"),
        (["100 g mustard seeds", "100 ml beer", "60 ml vinegar"], "Grind.", "alcohol-in-food"),
    ],
)
def test_fruit_in_spirit_is_told_as_a_drink_is(lines: list[str], method: str, rule: str) -> None:
    box = _box(lines, method=[method], keeps="6 months")
    found = {one.rule for one in box.cautions} & {"alcohol", "alcohol-in-food"}
    assert found == {rule}
