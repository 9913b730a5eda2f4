"""A food in a line's remark is one beside it: no card loses an allergen by it, none is made up."""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import read_ingredient_food

# (language, line, remark, allergens that must be told or the line not known)
# the fourteen of Annex II of Regulation (EU) No 1169/2011, lines invented
BESIDE = [
    ("en_GB", "200 g flour", "flaked almonds to decorate", {"wheat", "almond"}),
    ("en_GB", "100 ml milk", "hazelnuts to finish", {"milk", "hazelnut"}),
    ("en_GB", "150 g butter", "flaked almonds to decorate", {"milk", "almond"}),
    ("en_GB", "150 g butter", "milk for brushing", {"milk"}),
    ("en_GB", "100 ml cream", "almonds", {"milk", "almond"}),
    ("en_GB", "100 ml cream", "wine", {"milk"}),
    ("en_GB", "100 ml oil", "chopped walnuts for the top", {"walnut"}),
    ("en_GB", "100 ml oil", "sesame seeds to sprinkle", {"sesame"}),
    ("en_GB", "50 g sugar", "chopped peanuts", {"peanut"}),
    ("en_GB", "50 g sugar", "mustard", {"mustard"}),
    ("de_DE", "50 g Zucker", "Milch zum Bestreichen", {"milk"}),
    ("de_DE", "200 g Mehl", "Eigelb zum Bestreichen", {"wheat", "eggs"}),
    ("de_DE", "150 g Butter", "Walnüsse zum Verzieren", {"milk", "walnut"}),
    ("fr_FR", "200 g de farine", "amandes effilées pour décorer", {"wheat", "almond"}),
    ("fr_FR", "50 g de sucre", "céleri", {"celery"}),
    ("es_ES", "200 g de harina", "nueces picadas", {"wheat", "walnut"}),
    ("es_ES", "50 g de azúcar", "gambas", {"crustacean"}),
    ("it_IT", "50 g di zucchero", "noci tritate", {"walnut"}),
    ("it_IT", "150 g di burro", "uovo per spennellare", {"milk", "eggs"}),
    ("nl_NL", "50 g suiker", "ei om te bestrijken", {"eggs"}),
    ("nl_NL", "50 g suiker", "melk om te bestrijken", {"milk"}),
    ("sv_SE", "150 g smör", "mandel", {"milk", "almond"}),
    ("sv_SE", "50 g socker", "hackad mandel till garnering", {"almond"}),
    ("da_DK", "50 g sukker", "hakkede mandler til pynt", {"almond"}),
    ("da_DK", "50 g sukker", "sojabønner", {"soya"}),
    ("da_DK", "50 g sukker", "kiks til pynt", {"wheat"}),
]
FORMS = ("{} ({})", "{}, {}", "{}; {}", "{} – {}")


@pytest.mark.parametrize("form", FORMS, ids=["bracket", "comma", "semicolon", "dash"])
@pytest.mark.parametrize(
    ("language", "line", "remark", "told"), BESIDE, ids=[f"{row[1]}+{row[2]}" for row in BESIDE]
)
def test_a_food_in_a_remark_brings_its_allergens_and_takes_none_away(
    language: str, line: str, remark: str, told: set[str], form: str
) -> None:
    ingredient = read_ingredient(form.format(line, remark), "metric", language)
    assert isinstance(ingredient, Ingredient)
    found = read_ingredient_food(ingredient, Larder(language=language))
    held = {name for food in found.named for name in food.allergens}
    assert not found.known or told <= held


# (language, line, the foods that it is still read as)
ONE = [
    ("en_GB", "200 g flour (gluten-free)", ["gluten-free flour"]),
    ("en_GB", "100 g milk chocolate", ["milk chocolate"]),
    ("en_GB", "150 g butter (no milk)", ["butter"]),
    ("en_GB", "100 ml cream (for pregnant: none)", ["cream"]),
    ("en_GB", "100 g sugar, brown", ["brown sugar"]),
    ("en_GB", "100 g almonds, ground", ["ground almonds"]),
    ("en_GB", "50 g nuts (optional)", ["nut"]),
    ("en_GB", "100 g biscuits, serve with milk", ["biscuit"]),
    ("en_GB", "100 g butter, almond", ["almond butter"]),
    ("en_GB", "100 ml milk, oat", ["oat milk"]),
    ("en_GB", "100 ml milk, coconut", ["coconut milk"]),
    ("en_GB", "100 g flour, rice", ["rice flour"]),
    ("en_GB", "50 ml oil, extra virgin olive", ["olive oil"]),
    ("en_GB", "50 ml vinegar, white wine", ["white wine vinegar"]),
    ("en_GB", "50 ml vinegar, cider", ["cider vinegar"]),
    ("en_GB", "100 g chocolate, white", ["white chocolate"]),
    ("en_GB", "100 g chocolate, bitter", ["bitter chocolate"]),
    ("en_GB", "100 g butter, the size of an egg", ["butter"]),
    ("en_GB", "100 g sugar (instead of honey and milk)", ["granulated sugar"]),
    ("en_GB", "1 tbsp salt (for the almonds)", ["salt"]),
    ("en_GB", "2 tsp oil, for frying the fish", ["oil"]),
    ("en_GB", "1 tsp cumin seeds, toast in a dry pan", ["cumin seeds"]),
    ("de_DE", "50 g Butter, walnussgroß", ["butter"]),
    ("de_DE", "100 ml Essig (Weißwein)", ["white wine vinegar"]),
    ("fr_FR", "6 jaunes d'œufs, jaunes restant après le macaron", ["egg yolk"]),
    ("es_ES", "50 g de mantequilla (tamaño nuez)", ["butter"]),
    ("it_IT", "50 g di zucchero (per le uova)", ["granulated sugar"]),
    ("nl_NL", "50 g suiker (voor de melk)", ["granulated sugar"]),
]


@pytest.mark.parametrize(("language", "line", "foods"), ONE, ids=[row[1] for row in ONE])
def test_what_is_denied_turned_round_or_said_of_use_is_no_second_food(
    language: str, line: str, foods: list[str]
) -> None:
    ingredient = read_ingredient(line, "metric", language)
    assert isinstance(ingredient, Ingredient)
    found = read_ingredient_food(ingredient, Larder(language=language))
    assert found.known
    assert [food.name for food in found.foods] == foods


# (line as Mrs Beeton, The Book of Household Management, prints it, foods that it names)
OLD_LINES = [
    ("1 or 2 eggs to bind, a small piece of butter", ["eggs", "butter"]),
    ("4 tablespoonfuls of marmalade, a few slices of sponge cake", ["marmalade", "sponge cake"]),
    ("3 tablespoonfuls of port wine, thickening of butter and flour", None),
]


@pytest.mark.parametrize(("line", "foods"), OLD_LINES, ids=[row[0] for row in OLD_LINES])
def test_a_second_food_of_an_old_line_is_told_or_asked_about(
    line: str, foods: list[str] | None
) -> None:
    ingredient = read_ingredient(line, "metric", "en_GB")
    assert isinstance(ingredient, Ingredient)
    found = read_ingredient_food(ingredient, Larder(language="en_GB"))
    assert found.known == (foods is not None)
    assert foods is None or [food.name for food in found.foods] == foods
