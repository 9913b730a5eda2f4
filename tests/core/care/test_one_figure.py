"""One figure and one date for one thing: what the card says is what its box and its method say."""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.recipe.model import Recipe

BOOK = BookSettings()


def _made(title: str, kind: str, lines: list[str], *steps: str) -> Recipe:
    return recipe_of({"title": title, "kind": kind, "ingredients": lines, "method": list(steps)})


def _card(recipe: Recipe) -> str:
    return str(label_recipe(recipe, BOOK).keeping.unopened)


@pytest.mark.parametrize("said", ["", "It may be wrapped and refrigerated for up to 5 days."])
def test_gravlax_has_one_figure(said: str) -> None:
    """Its box said 4 days and its card 5 (spicelibrary.org; foodrepublic.com gives up to 5)."""
    steps = ("Spread with salt, sugar and dill.", "Cover and refrigerate for 48 hours.")
    lines = ["1 kg salmon fillet", "60 g salt", "60 g sugar", "1 bunch dill"]
    recipe = _made("Gravlax", "preserve", lines, *steps, said or "Slice thinly.")
    told = [one.to_receiver for one in assess_safety(recipe, BOOK).cautions]
    assert any("within 4 days" in one for one in told)
    assert _card(recipe) == "4 days"


BERRIES = ["700 ml water", "100 g dried elderberries", "340 g honey"]
THIN = ["500 ml water", "300 g raspberries", "300 g sugar"]
THICK = ["300 ml water", "100 g raspberries", "900 g sugar"]


# healingspiritsherbfarm.com: "2 to 3 months", which the box calls beyond the book's month
@pytest.mark.parametrize(
    ("lines", "said", "card"),
    [
        (BERRIES, "It will keep in the fridge for 2 to 3 months.", "1 month"),
        (BERRIES, "It will keep in the fridge for 12 weeks.", "1 month"),
        (BERRIES, "It will keep in the fridge for 2 weeks.", "2 weeks"),
        (THIN, "It will keep in the fridge for 3 months.", "1 month"),
        (THICK, "It will keep in the fridge for 3 months.", "3 months"),
    ],
)
def test_a_thin_syrup_takes_the_shorter(lines: list[str], said: str, card: str) -> None:
    recipe = _made("Syrup", "preserve", lines, "Simmer for 45 minutes and strain.", said)
    assert _card(recipe) == card


PEPPERS = ["300 g hot peppers", "4 cloves garlic", "240 ml water", "15 g salt"]


# earthdancefarm.net, mazopiya.com, tastemade.com: a kind's three and nine months are not its own
@pytest.mark.parametrize(
    "said",
    [
        "Cover loosely and place somewhere cool and out of direct sunlight for 2-3 days.",
        "Set the jar in a warm spot for 3 to 5 days.",
        "Once it smells sour after 2-3 days, blend.",
        "Ferment 1-14 days, to taste.",
    ],
)
def test_a_hot_sauce_is_ready_when_its_method_says(said: str) -> None:
    recipe = _made("Hot sauce", "ferment", PEPPERS, said, "Blend and bottle.")
    words = [stage.word for stage in recipe.stages]
    assert "usable from" not in words
    assert "best from" not in words


def test_a_must_of_three_days_is_not_ready() -> None:
    lines = ["1.4 kg honey", "3 l water", "5 g wine yeast"]
    recipe = _made("Mead", "mead", lines, "Ferment for 3 days, rack.", "Bottle.")
    assert "best from" in [stage.word for stage in recipe.stages]


@pytest.mark.parametrize(
    ("said", "line"),
    [
        ("Ferment under an airlock until it is clear.", "How long it keeps is not known"),
        ("Ferment under an airlock for 3 months.", "Best before: 3 years from the day it was made"),
    ],
)
def test_a_strong_mead_of_no_time_says_so_on_its_card(said: str, line: str) -> None:
    """lighthacker.org: "once it is done", and its card bore no line at all."""
    recipe = _made("Mead", "mead", ["1.4 kg honey", "3 l water", "5 g wine yeast"], said, "Bottle.")
    assert label_recipe(recipe, BOOK).date_mark.text == line


FRUIT = ["1 kg strawberries", "500 g sugar", "1 l rum, 54% vol"]


# ddr-rezepte.com and others: a rum pot that is not called one
@pytest.mark.parametrize(
    ("title", "said", "whole"),
    [
        ("Grandmother's pot", "Leave 3 months. Serve the fruit over ice cream.", True),
        ("Summer fruits", "Add each fruit as it ripens, with its sugar.", True),
        ("Christmas dessert", "Leave 3 months. Eat the fruit, drink the liquor.", True),
        ("Topf", "3 Monate ziehen lassen. Die Früchte mit Eis servieren.", True),
        ("Strawberry rum", "Leave 3 months.", False),
        ("Strawberry rum", "Leave 3 months. Strain. Eat the fruit.", False),
        ("Strawberry liqueur", "Leave 3 months. Serve the berries with cake.", False),
        ("Berry rum", "Leave 3 months. Pour over ice cream.", False),
    ],
)
def test_fruit_that_is_eaten_was_not_strained_out(title: str, said: str, whole: bool) -> None:
    recipe = _made(title, "infusion", FRUIT, "Cover the fruit and sugar with rum.", said)
    found = [one.text for one in label_recipe(recipe, BOOK).contents]
    assert ("strawberries" in found) is whole
    assert ("infused with strawberries" in found) is not whole
