"""What is said within a list and is no thing of it: remarks, links, bold sentences, short steps.

The first two are from cooks' blogs that a judge of this house read ("If using Apples, I add …",
"(recipe here)"), the rest are the same in other languages, from memory. Expectations written before
the code, 30 November 2026.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of

CHUTNEY = """Apple chutney

Ingredients

2 kg apples, peeled and chopped
500 g raisins
(If using green apples, I add a few teaspoons of mild curry powder)
1 cup candied pecans (recipe here)
1 l vinegar
For the spice bag or bouquet garni – if you will
1 tsp cloves
1 tsp peppercorns

Method

Boil the apples with the vinegar. Add the raisins and the spice bag.
"""


def test_a_remark_is_a_note_and_a_part_has_its_head() -> None:
    (recipe,) = brought(CHUTNEY)
    assert listed(recipe) == [
        "2 kg apples, peeled and chopped",
        "500 g raisins",
        "1 cup candied pecans",
        "1 l vinegar",
        "For the spice bag or bouquet garni – if you will:",
        "1 tsp cloves",
        "1 tsp peppercorns",
    ]
    assert "If using green apples, I add" in recipe.text.split("## Notes")[1]
    assert "stood in the list, and is a note now" in asked(recipe)


def test_a_remark_on_the_thing_above_is_kept_and_asked_about() -> None:
    text = CHUTNEY.replace(
        "(If using green apples, I add a few teaspoons of mild curry powder)",
        "(if you like them soft, soak the raisins overnight)",
    )
    (recipe,) = brought(text)
    assert listed(recipe)[1] == "500 g raisins"
    assert "if you like them soft" in recipe.text.partition("## Notes")[2]
    assert "if you like them soft" in asked(recipe)


def test_a_sentence_in_bold_below_what_is_optional_is_a_note() -> None:
    text = (
        "# Limoncello\n\n## Ingredients\n\n- 8 lemons\n- 1 bottle vodka\n- 200 g sugar\n\n"
        "**Optional ingredients:**\n\n**You can add a vanilla pod for a rounder taste.**\n\n"
        "## Method\n\n1. Peel the lemons.\n"
    )
    (recipe,) = brought(text)
    assert listed(recipe) == ["8 lemons", "1 bottle vodka", "200 g sugar"]
    assert "You can add a vanilla pod" in recipe.text.split("## Notes")[1]


def test_a_short_german_step_with_its_minutes_ends_a_list() -> None:
    text = "Apfelgelee\n\n1 l Apfelsaft\n500 g Gelierzucker\n\nSaft und Zucker 4 Minuten kochen.\n"
    (recipe,) = brought(text, "de_DE")
    assert listed(recipe) == ["1 l Apfelsaft", "500 g Gelierzucker"]
    assert steps(recipe) == ["Saft und Zucker 4 Minuten kochen."]


@pytest.mark.parametrize(
    ("line", "language", "foods"),
    [
        ("100 g burro (io in realtà uso lo strutto)", "it_IT", ["butter", "lard"]),
        ("100 g butter (I actually use lard)", "en_GB", ["butter", "lard"]),
        ("100 g Butter (ich nehme immer Margarine)", "de_DE", ["butter", "margarine"]),
        ("100 g de beurre (j'utilise du saindoux)", "fr_FR", ["butter", "lard"]),
        ("100 g de mantequilla (uso margarina)", "es_ES", ["butter", "margarine"]),
        ("100 g smør (jeg bruger margarine)", "da_DK", ["butter", "margarine"]),
        ("100 g masła (używam margaryny)", "pl_PL", ["butter", "margarine"]),
        ("100 g butter (I don't use lard)", "en_GB", ["butter"]),
        ("100 g butter (I used a little less)", "en_GB", ["butter"]),
    ],
)
def test_what_a_writer_takes_herself_counts_beside_it(
    line: str, language: str, foods: list[str]
) -> None:
    read = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    assert [one.name for one in food_of(read).foods] == foods
