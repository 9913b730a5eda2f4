"""Fish that is not cooked, vinegar that lives, and what is salt without being called so.

A newcomer's household that is pregnant could have desalted herring in vinegar and a raw cider
vinegar though its sheet said "nothing raw or live", and one on little salt the herring (found on
30 November 2026). Fish: NHS 111 Wales, Foods to avoid in pregnancy. Salt: Food Standards Scotland,
Salt (a copy), "foods that are often high in salt".
"""

from __future__ import annotations

from typing import Any

import pytest

from care_cases import recipe_of
from giving.lists import TODAY, read_dict, small_list
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.recipe.model import Recipe
from stillroom.giving.facts import facts_of
from stillroom.giving.rules import why_refused

GB = BookSettings()
COLD = "Keep in the fridge."
LIQUOR = "Boil the liquor, let it cool and pour it over."


def make(foods: list[str], *steps: str, kind: str = "preserve") -> Recipe:
    return recipe_of({"title": "Present", "kind": kind, "ingredients": foods, "method": [*steps]})


def reasons(recipe: Recipe, **needs: Any) -> list[str]:
    written = {"name": "Z", "basket": "small", **needs}
    household = read_dict(small_list(households=[written])).giving.households[0]
    return [one.one for one in why_refused(household, facts_of(recipe), TODAY)]


RAW = [
    (
        ["420 g sillfiléer", "3 dl vatten", "2 dl socker"],
        "Koka upp lagen.",
        "Häll över sillen. I kylskåp.",
    ),
    (
        ["400 g Heringsfilets", "2 Zwiebeln"],
        "Den Sud aufkochen und abkühlen.",
        "Über die Heringe gießen.",
    ),
    (
        ["400 g herring fillets", "1 onion"],
        "Boil the onion and let it cool.",
        "Pour it over the herring.",
    ),
    (["400 g matjes fillets", "1 onion"], LIQUOR, COLD),
    (["300 g smoked salmon", "1 lemon"], "Layer in a jar.", COLD),
    (["300 g saumon fumé", "1 citron"], "Mettre en bocal.", "Garder au réfrigérateur."),
]
COOKED = [
    (["400 g Heringe", "2 Zwiebeln"], "Die Heringe braten.", "Den Sud über die Heringe gießen."),
    (["400 g herring fillets", "1 onion"], "Fry the herring until cooked through.", COLD),
    (["100 g smoked salmon", "200 g plain flour"], "Mix.", "Bake at 180 C for 20 minutes."),
    (["100 g tinned tuna", "200 g black olives"], "Blend.", COLD),
    (["50 g anchovy fillets in oil", "200 g black olives"], "Blend.", COLD),
    (["100 g smoked mackerel", "100 g butter"], "Blend.", COLD),
    (["1 tsp smoked paprika", "200 g black olives"], "Blend.", COLD),
]


@pytest.mark.parametrize("case", RAW, ids=lambda case: case[0][0])
def test_fish_that_no_heat_reached_is_said_and_not_for_a_pregnancy(case: tuple[Any, ...]) -> None:
    recipe = make(case[0], *case[1:])
    said = {one.rule for one in assess_safety(recipe, GB).cautions}
    assert said & {"raw-meat-fish", "cured-fish"}
    assert any(
        "Not in pregnancy" in one or "in pregnancy" in one for one in reasons(recipe, pregnant=True)
    )
    assert reasons(recipe, avoid=["weak immunity"])


@pytest.mark.parametrize("case", COOKED, ids=lambda case: case[0][0])
def test_cooked_and_tinned_fish_is_no_raw_fish(case: tuple[Any, ...]) -> None:
    recipe = make(case[0], *case[1:])
    said = {one.rule for one in assess_safety(recipe, GB).cautions}
    assert not said & {"raw-meat-fish", "cured-fish"}
    assert not any("in pregnancy" in one for one in reasons(recipe, pregnant=True))


@pytest.mark.parametrize(
    ("vinegar", "steps", "refused"),
    [
        ("raw cider vinegar", ("Steep for 4 weeks.", "Strain."), True),
        ("cider vinegar, unpasteurised", ("Steep for 4 weeks.", "Strain."), True),
        ("cider vinegar with the mother", ("Steep for 4 weeks.", "Strain."), True),
        ("cider vinegar", ("Steep for 4 weeks.", "Strain."), False),
        ("raw cider vinegar", ("Boil everything for 1 hour.", "Pot hot."), False),
    ],
)
def test_live_vinegar_is_not_for_whoever_is_to_have_nothing_live(
    vinegar: str, steps: tuple[str, ...], refused: bool
) -> None:
    recipe = make([f"500 ml {vinegar}", "100 g sugar", "50 g ginger"], *steps, kind="infusion")
    told = "is made with vinegar that is neither pasteurised nor heated"
    assert (told in reasons(recipe, pregnant=True)) is refused
    assert told not in reasons(recipe)


SALT = [
    "salted anchovies",
    "capers",
    "green olives",
    "soy sauce",
    "miso",
    "feta",
    "vegetable stock powder",
    "bacon",
    "smoked salmon",
    "prosciutto",
    "parmesan",
    "cheddar",
    "sillfiléer",
    "sauerkraut",
    "gherkins",
    "salami",
    "preserved lemons",
    "yeast extract",
]
NO_SALT = [
    "olive oil",
    "walnuts",
    "smoked paprika",
    "butternut squash",
    "buttermilk",
    "cocoa butter",
    "plums",
    "salmon fillet",
    "plain flour",
    "cider vinegar",
    "green beans",
]


@pytest.mark.parametrize("food", SALT)
def test_what_is_salt_is_not_for_whoever_leaves_salt_out(food: str) -> None:
    recipe = make([f"100 g {food}", "100 g plums"], "Boil for 1 hour.")
    assert any("salt" in one for one in reasons(recipe, avoid=["low salt, for his blood pressure"]))


@pytest.mark.parametrize("food", NO_SALT)
def test_what_holds_no_salt_is(food: str) -> None:
    unit = "ml" if food in ("olive oil", "buttermilk", "cider vinegar") else "g"
    recipe = make([f"100 {unit} {food}", "100 g plums"], "Boil for 1 hour.")
    assert reasons(recipe, avoid=["low salt"]) == []
