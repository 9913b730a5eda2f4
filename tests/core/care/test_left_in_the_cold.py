"""Where pickles of the fridge and confits stand, and what lies under oil, as strangers say it.

The words are those of pages read on 30 November 2026 (cookingwithchester.blogspot.com,
thelocalbutchershop.com, spicelibrary.org, papillesalaffut.com, neues-vom-landei.de, matgeek.se,
stundervidspisen.com) and others of their families in six languages. What must come of them: NCHFP,
vegetables in oil are kept in the fridge and four days; a pickle that was never processed is kept
in the fridge.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe

ONIONS = ["1 kg red onions", "600 ml cider vinegar", "60 g sugar", "20 g salt"]
BOOK = BookSettings()


def _made(lines: list[str], *steps: str) -> Recipe:
    return recipe_of(
        {"title": "Something", "kind": "preserve", "ingredients": lines, "method": list(steps)}
    )


def _refused(recipe: Recipe) -> set[str]:
    return {one.rule for one in assess_safety(recipe, BOOK).refusals}


@pytest.mark.parametrize(
    "last",
    [
        "Cool, then refrigerate for at least 24 hours.",
        "Let cool and refrigerate for at least 24 hours before serving.",
        "Refrigerate for at least 24 hours but 48 or more is better.",
        "Refrigerate for at least 24 hours. I keep these in a mason jar so I can shake them.",
        "Let cool to room temperature, then refrigerate for 24 hours.",
        "Refrigerate overnight before using.",
        "Chill for a day before eating.",
        "They will hold for weeks in the fridge.",
        "Saften står sig länge i kylen.",
        "Ställ i kylen.",
        "Låt stå två dagar, eller mer, i kylen.",
        "In den Kühlschrank stellen.",
        "Mettre au frigo.",
        "Riporre in frigorifero.",
        "Zet in de koelkast.",
    ],
)
def test_a_pickle_left_in_the_fridge_is_none_for_a_year(last: str) -> None:
    recipe = _made(ONIONS, "Boil the vinegar and pour it over the onions.", last)
    assert kept_at(recipe) == "fridge"
    kept = label_recipe(recipe, BOOK).keeping.unopened
    assert kept is not None
    assert kept.minutes() <= 31 * 24 * 60


@pytest.mark.parametrize(
    "last",
    [
        "Process 10 minutes in a boiling-water canner. Refrigerate after opening.",
        "Fill hot jars and seal. Chill before serving.",
        "Store in a cool place. Chill for an hour before serving.",
        "Process for 10 minutes. If a jar has not sealed, refrigerate it.",
        "Refrigerate overnight, then drain, fill jars and process for 10 minutes.",
        "Leave 4 weeks before eating.",
    ],
)
def test_one_that_is_processed_or_on_a_shelf_is_not_in_the_fridge(last: str) -> None:
    assert kept_at(_made(ONIONS, "Boil the vinegar, pour it over the onions.", last)) == "room"


@pytest.mark.parametrize(
    "last",
    ["Ich empfehle, die Gläser einzufrieren.", "Am besten friert man sie portionsweise ein."],
)
def test_who_is_told_to_freeze_it_freezes_it(last: str) -> None:
    lines = ["150 g Bärlauch", "200 ml Olivenöl", "60 g Hartkäse"]
    recipe = _made(lines, "Alles mischen und in Gläser füllen.", last)
    assert kept_at(recipe) == "freezer"
    assert "low-acid-in-oil" not in _refused(recipe)


def test_a_confit_that_holds_for_months_in_the_fridge_is_given_days() -> None:
    """thelocalbutchershop.com; USDA FoodKeeper: cooked meat, 3 to 4 days."""
    recipe = _made(
        ["4 duck legs", "60 g salt", "1 l duck fat"],
        "Rub with the salt. Refrigerate the legs for 48 hours.",
        "Cook in the fat at 95 C for 3 hours.",
        "Pour fat over the duck. Confited meat will hold for months in the refrigerator.",
    )
    assert (kept_at(recipe), str(label_recipe(recipe, BOOK).keeping.unopened)) == (
        "fridge",
        "4 days",
    )
    assert not _refused(recipe)


def test_hours_in_the_fridge_are_no_keeping() -> None:
    assert str(_made(ONIONS, "Boil.", "Refrigerate 24 hours.").keeps.unopened) != "24 hours"


@pytest.mark.parametrize("said", ["a full month", "a whole month", "one good month"])
def test_a_full_month_is_a_month(said: str) -> None:
    """nutritionalhealingrecipes.com; NCHFP gives pickled eggs 3 to 4 months, its maker one."""
    lines = ["12 eggs", "240 ml cider vinegar", "60 g sugar"]
    last = f"They are ready after 1 week, and keep for {said} in a refrigerator."
    recipe = _made(lines, "Boil the eggs, peel, cover with the hot vinegar.", last)
    assert str(label_recipe(recipe, BOOK).keeping.unopened) == "1 month"


TOMATOES = ["1 kg tomatoes", "1 head garlic", "180 ml olive oil"]


@pytest.mark.parametrize(
    "last",
    [
        "Recouvrir les tomates séchées d'huile d'olive.",
        "Recouvrez le tout avec l'huile d'olive.",
        "On recouvre alors d'huile d'olive.",
        "Ricoprire le verdure con l'olio.",
        "Ricoprite le melanzane di olio.",
        "Coprite bene il tutto con olio d'oliva.",
        "Mit Olivenöl bedecken.",
        "Die Tomaten vollständig mit Olivenöl bedecken.",
        "Mit dem Olivenöl übergießen.",
        "Zum Schluss alles mit gutem Olivenöl abdecken.",
        "Cubrir los pimientos con aceite de oliva.",
        "Recubre todo con el aceite.",
        "Bedek de tomaten met olijfolie.",
        "Overgiet alles met olijfolie.",
        "Met olijfolie afdekken.",
        "Täck tomaterna med olivolja.",
        "Häll på olivoljan så att allt täcks.",
        "Cover the tomatoes with olive oil.",
    ],
)
def test_garlic_under_little_oil_is_refused_beyond_four_days(last: str) -> None:
    recipe = _made(TOMATOES, "Dry the tomatoes.", f"{last} Keeps for 2 months in the fridge.")
    assert "low-acid-in-oil" in _refused(recipe)


@pytest.mark.parametrize(
    "last",
    [
        "Couvrir de vinaigre et de sel.",
        "Mit Essig bedecken.",
        "Cubrir con vinagre.",
        "Toss in oil.",
    ],
)
def test_what_is_covered_with_something_else_lies_in_no_oil(last: str) -> None:
    recipe = _made(TOMATOES, f"{last} Keeps for 2 months in the fridge.")
    assert "low-acid-in-oil" not in _refused(recipe)
