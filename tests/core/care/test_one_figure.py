"""One recipe has one figure: what the box says the book would say is what the card falls back to.

An Eierlikör had three (3-4 weeks, 2 weeks, 3 days), polvorones too (a newcomer, 30 November 2026).
Garlic dressed with oil and a splash of vinegar keeps as garlic in oil does: NCHFP, Freezing
garlic-in-oil (4 days). "Cool" is no fridge for a sweet that was boiled to 112 °C and more.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe

GB = BookSettings()
EGG = ["8 Eigelb", "250 g Puderzucker", "400 ml Sahne", "250 ml Doppelkorn, 38% vol"]
MIXED = "Eigelb und Puderzucker verrühren, Sahne dazugeben."
COLD = "Im Kühlschrank aufbewahren."
LARD = ["250 g plain flour", "100 g sugar", "125 g lard"]
OLIVES = ["500 g green olives", "150 ml olive oil", "50 ml sherry vinegar"]


def make(kind: str, foods: list[str], *steps: str, **more: str) -> Recipe:
    facts = {"title": "Biscuits" if kind == "bake" else "Present", "kind": kind, **more}
    return recipe_of(facts | {"ingredients": foods, "method": [*steps]})


@pytest.mark.parametrize(
    ("recipe", "card"),
    [
        (make("liqueur", EGG, MIXED, "Im Kühlschrank 3-4 Wochen haltbar."), "3 days"),
        (make("bake", LARD, "Mix.", "Bake for 15 minutes.", "They keep for 2 months."), "3 weeks"),
        (make("bake", LARD, "Mezclar.", "Hornear a 180 °C.", "Aguantan 2 meses."), "3 weeks"),
    ],
)
def test_the_box_names_the_figure_of_the_card(recipe: Recipe, card: str) -> None:
    said = {one.rule: one.because for one in assess_safety(recipe, GB).cautions}
    assert f"the book would say {card}" in said["keeps-beyond-default"]
    assert str(label_recipe(recipe, GB).keeping.unopened) == card


def test_a_reason_leaves_the_usual_figure() -> None:
    told = {"unopened": "2 months", "reason": "sealed in tins under nitrogen"}
    recipe = make("bake", LARD, "Bake for 15 minutes.", keeps=told)  # type: ignore[arg-type]
    said = {one.rule: one.because for one in assess_safety(recipe, GB).cautions}
    assert "the book would say 4 weeks" in said["keeps-beyond-default"]


def test_an_egg_liqueur_that_was_heated_is_no_raw_egg_drink() -> None:
    heated = make("liqueur", EGG, MIXED, "Über dem Wasserbad auf 75 °C erhitzen.", COLD)
    assert str(label_recipe(heated, GB).keeping.unopened) == "2 weeks"
    raw = make("liqueur", EGG, MIXED, COLD)
    assert str(label_recipe(raw, GB).keeping.unopened) == "3 days"


@pytest.mark.parametrize(
    ("more", "steps", "card"),
    [
        (["4 crushed garlic cloves"], ["Mix and fill jars."], "4 days"),
        (["2 sprigs fresh thyme"], ["Mix and fill jars."], "4 days"),
        (["2 tsp dried oregano"], ["Mix and fill jars."], "1 week"),
        (["4 garlic cloves"], ["Simmer the garlic in the oil for 20 minutes.", "Mix."], "1 week"),
        (["4 garlic cloves", "500 ml white wine vinegar"], ["Mix and fill jars."], "1 week"),
    ],
)
def test_raw_garlic_under_a_little_vinegar_has_four_days(
    more: list[str], steps: list[str], card: str
) -> None:
    recipe = make("preserve", OLIVES + more, *steps, keeps="1 week in the fridge")
    assert str(label_recipe(recipe, GB).keeping.unopened) == card


@pytest.mark.parametrize(
    ("steps", "place"),
    [
        (("Koka till 122 °C.", "Häll upp. Förvara svalt."), "room"),
        (("Auf 118 °C kochen.", "Schneiden. Kühl aufbewahren."), "room"),
        (("Koka till 122 °C.", "Häll upp. Förvara i kylskåp."), "fridge"),
        (("Sahne erwärmen, über die Schokolade gießen.", "Kühl aufbewahren."), "fridge"),
        (("Chauffer la crème à 60 °C.", "Conserver au frais."), "fridge"),
    ],
)
def test_cool_is_a_cupboard_for_a_boiled_sweet(steps: tuple[str, ...], place: str) -> None:
    sweet = make("confection", ["300 ml double cream", "300 g sugar", "50 g butter"], *steps)
    assert kept_at(sweet) == place
