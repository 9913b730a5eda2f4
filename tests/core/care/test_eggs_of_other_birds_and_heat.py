"""Eggs of any bird are eggs, and an egg that thickened over heat is cooked, in the words of cooks.

A newcomer's plain lemon curd (80 C, coating a spoon) and egg liqueur (Wasserbad, 70 °C) were called
raw, and yolks of ducks poultry meat (30 November 2026). 71 °C: US FDA, as rule "raw-egg" has it.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.allergens.of_foods import contains, know_recipe, law_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.giving.facts import facts_of

GB = BookSettings()
LEMON = ["4 lemons", "200 g sugar", "100 g butter", "3 eggs", "1 egg yolk"]
CHOCOLATE = ["100 g dark chocolate", "3 eggs", "50 g sugar"]
LIQUEUR = ["8 Eigelb", "250 g Puderzucker", "400 ml Sahne"]
MELT = "Melt butter, sugar, zest and juice in a bowl over simmering water."
STIR = "Whisk in the beaten eggs and stir for 10-12 min until it coats a spoon (80C)."
MIXED = "Eigelb und Puderzucker verrühren, Sahne dazugeben."


def rules(foods: list[str], *steps: str) -> set[str]:
    facts = {"title": "Present", "kind": "preserve", "keeps": "3 days in the fridge"}
    recipe = recipe_of(facts | {"ingredients": foods, "method": [*steps, "Fill."]})
    return {one.rule for one in assess_safety(recipe, GB).cautions}


@pytest.mark.parametrize(
    ("foods", "steps"),
    [
        (LEMON, (MELT, STIR)),
        (LEMON, ("Put everything in a double boiler.", "Stir until it coats a spoon.")),
        (LIQUEUR, (MIXED, "Über dem heißen Wasserbad aufschlagen, bis es dicklich wird (70 °C).")),
        (LIQUEUR, (MIXED, "Über dem Wasserbad auf 75 °C erhitzen.")),
        (LIQUEUR, (MIXED, "Im Topf auf 80 °C erhitzen, bis die Masse dick wird.")),
        (["3 œufs"], ("Battre les œufs.", "Chauffer à 80 °C jusqu'à ce que la crème épaississe.")),
        (["3 huevos"], ("Batir los huevos.", "Calentar al baño maría hasta 82 °C.")),
        (["3 ägg"], ("Vispa äggen.", "Värm över vattenbad till 80 °C.")),
    ],
)
def test_an_egg_that_thickened_over_heat_is_cooked(
    foods: list[str], steps: tuple[str, ...]
) -> None:
    assert "raw-egg" not in rules(foods, *steps)


@pytest.mark.parametrize(
    ("foods", "steps"),
    [
        (LEMON, ("Melt butter over simmering water, then leave to cool.", STIR.split(" (")[0])),
        (LEMON, ("Whisk eggs and sugar until it coats the back of a spoon.",)),
        (CHOCOLATE, ("Melt the chocolate over simmering water.", "Whisk the yolks until thick.")),
        (CHOCOLATE, ("Melt it over simmering water.", "In another bowl whisk the eggs.")),
        (CHOCOLATE, ("Melt it over simmering water until it reaches 45 C.", "Stir in the eggs.")),
        (LIQUEUR, (MIXED, "Auf 60 °C erhitzen.")),
        (LIQUEUR, (MIXED, "Über dem Wasserbad schaumig schlagen.")),
        (LIQUEUR, (MIXED, "Zuckersirup auf 80 °C abkühlen und dazugeben.")),
        (LIQUEUR, (MIXED, "Die Flaschen auf 80 °C erhitzen.")),
        (
            ["8 Eigelb", "400 ml Milch"],
            ("Eigelb verrühren.", "Die Milch auf 80 °C erhitzen.", "Kalt dazugeben."),
        ),
    ],
)
def test_an_egg_that_no_heat_is_said_of_stays_raw(foods: list[str], steps: tuple[str, ...]) -> None:
    assert "raw-egg" in rules(foods, *steps)


@pytest.mark.parametrize(
    "egg",
    [
        "duck eggs",
        "goose eggs",
        "quail eggs",
        "duck egg yolks",
        "goose egg whites",
        "Enteneier",
        "quail egg yolks",
        "turkey eggs",
        "œufs de cane",
    ],
)
def test_an_egg_of_any_bird_is_egg_and_no_meat(egg: str) -> None:
    facts = {"title": "Drink", "kind": "preserve", "keeps": "3 days in the fridge"}
    recipe = recipe_of(facts | {"ingredients": [f"4 {egg}", "200 ml cream"], "method": ["Whisk."]})
    said = {one.rule for one in assess_safety(recipe, GB).cautions}
    assert "raw-egg" in said
    assert not said & {"raw-meat-fish", "potted-cold"}
    assert "eggs" in {one.name for one in contains(know_recipe(recipe), law_of("GB"))}
    assert facts_of(recipe).unread is False


@pytest.mark.parametrize("egg", ["eggs", "duck eggs", "goose eggs"])
def test_a_raw_egg_of_any_bird_keeps_as_short(egg: str) -> None:
    foods = ["4 lemons", "200 g sugar", "100 g butter", f"3 {egg}"]
    facts = {"title": "Curd", "kind": "preserve", "keeps": "2 weeks in the fridge"}
    recipe = recipe_of(facts | {"ingredients": foods, "method": ["Whisk.", "Fill."]})
    refused = [one.because for one in assess_safety(recipe, GB).refusals]
    assert any("raw whites and yolks" in one for one in refused)
