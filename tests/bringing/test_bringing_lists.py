"""Lists of brought recipes: which lines are foods, where a list begins and ends, what parts it."""

from __future__ import annotations

import pytest

from bringing.drafts import list_of, one_of, steps_of
from stillroom.bringing import bring
from stillroom.core.recipe.settings import BookSettings


@pytest.mark.parametrize(
    ("line", "things"),
    [
        ("1 tbsp salt; 1kg sugar", ["1 tbsp salt", "1kg sugar"]),
        ("1 kg sugar + 2 tsp vanilla", ["1 kg sugar", "2 tsp vanilla"]),
        ("1 kg plums, 1 lemon, 2 kg sugar", ["1 kg plums", "1 lemon", "2 kg sugar"]),
        ("1 cup + 2 tbsp sugar", ["1 cup + 2 tbsp sugar"]),
        ("1 kg figs, 600 g sugar", ["1 kg figs", "600 g sugar"]),
        ("1 kg plums | 1 lemon | 800 g sugar", ["1 kg plums", "1 lemon", "800 g sugar"]),
        ("1 kg plums, 900 g stoned weight", ["1 kg plums, 900 g stoned weight"]),
        ("500 g plums, 50 g of them unripe, stoned", ["500 g plums, 50 g of them unripe, stoned"]),
        ("700 ml gin, 40% vol, 1 bottle", ["700 ml gin, 40% vol, 1 bottle"]),
        ("2 tins (400 g, 1 large, 1 small) beans", ["2 tins (400 g, 1 large, 1 small) beans"]),
    ],
)
def test_several_things_on_a_line_are_parted_where_it_is_certain(
    line: str, things: list[str]
) -> None:
    found = one_of("a.txt", f"Plum jam\n\n{line}\n2 cloves\n\nMethod\n\nBoil it all.\n".encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().removeprefix("- ").strip('"') for row in listed.splitlines()]
    assert [row for row in rows if not row.startswith("# ?")] == [*things, "2 cloves"]
    assert "stood on one line" not in found.text  # nobody needs to be asked of what is certain


def test_german_makes_and_steps_are_no_ingredients() -> None:
    text = (
        "Quittenlikör\nfür ca. 1 Liter\n500g Quitten\n1 Zimtstange\n700ml Korn (32 Vol-%)\n\n"
        "Zitrone heiß abwaschen.\nSchale dünn abschälen, Saft auspressen.\n"
    )
    found = bring("a.txt", text.encode(), BookSettings(language="de_DE", country="DE"))
    (recipe,) = found.recipes
    assert "makes: about 1 Liter" in recipe.text
    assert "- Schale" not in recipe.text
    assert "kind: liqueur" in recipe.text


def test_no_amount_is_lost_to_what_stands_in_brackets_behind_it() -> None:
    text = (
        "Herb vinegar\n\n1 gallon of vinegar, plain\n"
        "8 cups of whole clean herbs (your choice... today I used sage, but thyme, dill and basil "
        "are also good).\n32 peeled garlic cloves\n\nPut all in jars and wait for four weeks.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "- 1 gallon of vinegar, plain\n" in found.text
    assert "- 8 cups of whole clean herbs (your choice" in found.text
    assert "- 32 peeled garlic cloves\n" in found.text


def test_a_part_of_a_list_is_headed_without_a_colon() -> None:
    text = (
        "Iced biscuits\n\nIngredients\nFor the dough\n100 g flour\n50 g butter\n\n"
        "For the icing\n\n100 g icing sugar\n\nMethod\n1. Bake and ice them.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("---")[0]
    assert "- For the dough:\n    - 100 g flour\n" in listed
    assert "- For the icing:\n    - 100 g icing sugar\n" in listed


def test_tools_above_a_list_the_day_of_a_post_and_a_method_above_its_list() -> None:
    text = (
        "Saturday, December 16, 2017\n\nPlum jam\n\nYou will need: standard jars and discs\n"
        "A large bowl\nIngredients for around 4 jars:\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Plum jam"
    assert "makes: around 4 jars\n" in found.text
    listed = found.text.partition("ingredients:\n")[2].partition("---")[0]
    assert [row for row in listed.splitlines() if "# ?" not in row] == [
        "  - 1 kg plums",
        "  - 1 kg sugar",
    ]
    assert "## Equipment\n\nstandard jars and discs" in found.text
    turned = one_of(
        "b.txt",
        b"Fudge\n\nMethod\nMelt the butter.\nBoil it.\nIngredients\n200 g butter\n1 kg sugar\n",
    )
    assert "1. Melt the butter.\n2. Boil it.\n" in turned.text
    assert "- 200 g butter\n  - 1 kg sugar\n" in turned.text


def test_a_sign_that_was_lost_is_asked_about_and_never_left_out() -> None:
    text = "Plum jam\n\n\ufffd kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    found = one_of("a.txt", text.encode())
    assert any("was lost when it was saved" in one.what for one in found.questions)


def test_amounts_in_words_of_another_language_begin_a_list() -> None:
    text = (
        "Licor de naranja\nMedio litro de aguardiente\nCáscaras de dos naranjas\n"
        "Dos clavos de olor\nPreparación. Lavamos las naranjas con agua y las secamos bien.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    assert [row.strip() for row in listed.splitlines() if "# ?" not in row] == [
        "- Medio litro de aguardiente",
        "- Cáscaras de dos naranjas",
        "- Dos clavos de olor",
    ]
    assert steps_of(found.text) == ["Lavamos las naranjas con agua y las secamos bien."]


def test_tools_behind_the_list_are_no_food() -> None:
    text = (
        "Plum jam\n\nIngredients\n- 1 kg plums\n- 1 kg sugar\nEquipment\n- 6 x 250ml jars\n"
        "- Large saucepan\nInstructions\n1. Boil it all.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "saucepan" not in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert "## Equipment\n\n6 x 250ml jars\n\nLarge saucepan" in found.text


def test_amounts_on_a_line_above_their_foods_and_times_between_are_told_apart() -> None:
    text = (
        "Vin d'orange\nTemps total\n21 jours 20 min\nCuisson\n0 min\nVotre avis\n5.0/5.0\n\n"
        "Ingrédients\n\n4 personnes\n2 pièce\nOrange\n50 g\nSucre\n250 ml\nVin blanc\n\n"
        "Préparation\n1. Laissez macérer 21 jours.\n"
    )
    found = one_of("a.txt", text.encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().strip('"') for row in listed.splitlines() if "# ?" not in row]
    assert rows == ["- 2 pièce Orange", "- 50 g Sucre", "- 250 ml Vin blanc"]
    assert "makes: 4 personnes" in found.text


def test_things_one_after_the_other_on_a_line_are_parted_by_their_measures() -> None:
    text = "Kipferl\n\n60 g Mandeln 100 g Butter 45 g Puderzucker\n140 g Mehl\n\nAlles kneten.\n"
    found = one_of("a.txt", text.encode())
    for thing in ("60 g Mandeln", "100 g Butter", "45 g Puderzucker", "140 g Mehl"):
        assert f"- {thing}\n" in found.text


@pytest.mark.parametrize(
    ("told", "things", "makes", "steps"),
    [
        (
            "You will need 20 lemons, 3 quarts of rum, 3 lb of sugar and two nutmegs. Steep them.",
            ["20 lemons", "3 quarts of rum", "3 lb of sugar", "two nutmegs"],
            "",
            ["Steep them.", "Strain it after a day."],
        ),
        (
            "Piccalilly voor 3 potten: 1 kilo groente (wortel, ui); 25 g gember; 60 g suiker",
            ["1 kilo groente (wortel, ui)", "25 g gember", "60 g suiker"],
            "3 potten",
            ["Strain it after a day."],
        ),
    ],
)
def test_a_list_told_in_a_sentence_is_one(
    told: str, things: list[str], makes: str, steps: list[str]
) -> None:
    found = one_of("a.txt", f"{told}\n\nStrain it after a day.\n".encode())
    listed = found.text.partition("ingredients:\n")[2].partition("\n---")[0]
    rows = [row.strip().strip('"') for row in listed.splitlines() if "# ?" not in row]
    assert rows == [f"- {thing}" for thing in things]
    assert (f"makes: {makes}" if makes else "makes:") in found.text.splitlines()
    assert steps_of(found.text) == steps
    assert "told in one sentence" in found.text


def test_a_sentence_that_only_names_numbers_is_no_list() -> None:
    text = "Plum jam\n\nBoil it: 20 minutes, 30 minutes or 40 minutes, as you like it.\n"
    assert "No list of ingredients was found" in one_of("a.txt", text.encode()).text


def test_what_is_gathered_to_work_with_is_no_food() -> None:
    text = (
        "Soap\nINGREDIENTS\n500 grams olive oil\n63 grams caustic soda\nGATHER YOUR UTENSILS:\n"
        "A jug\nA large bowl\nMETHOD\nWeigh the water.\n"
    )
    found = one_of("a.txt", text.encode())
    assert "jug" not in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert "A large bowl" in found.text.partition("\n---\n")[2]


def test_a_list_on_one_line_below_its_title_is_one() -> None:
    text = (
        "Nocino\n\n30 noci verdi, 1 litro di alcol, 500 g zucchero\n\nTagliarle in 4 e coprirle.\n"
    )
    found = one_of("a.txt", text.encode())
    for thing in ("30 noci verdi", "1 litro di alcol", "500 g zucchero"):
        assert f"- {thing}\n" in found.text
    assert steps_of(found.text) == ["Tagliarle in 4 e coprirle."]


# The shapes of the next tests are those of saved pages of 29 November 2026; the words are ours.
def test_the_first_line_of_a_list_stays_in_it_though_it_ends_as_a_sentence() -> None:
    text = (
        "Chutney\nYou will need.........\n1 1/2Kg Cooking Apples, peeled and diced.\n"
        "750gms Muscovado Sugar.\n2 medium Onions, finely chopped and kept apart.\n"
        "Making:\nBoil it all until it is thick and pulpy.\n"
    )
    assert len(list_of(text)) == 3
    assert list_of(text)[0].startswith("1 1/2Kg")


@pytest.mark.parametrize(
    ("between", "steps"),
    [
        ("Stages of cooking\n- Boil the jam hard.\n- Fill the jars at once.\n", 2),
        ("Cook the mixture.\nPut all of it into a pan and boil it until it is thick.\n", 2),
    ],
)
def test_a_short_line_behind_a_list_is_no_food_of_it(between: str, steps: int) -> None:
    bullet = "- " if "- " in between else ""
    text = f"Plum jam\nIngredients:\n{bullet}1 kg plums\n{bullet}800 g sugar\n{between}"
    assert list_of(text) == ["1 kg plums", "800 g sugar"]
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == steps


def test_salt_and_pepper_behind_a_list_are_foods_of_it() -> None:
    text = (
        "Chutney\nIngredients:\n1 kg plums\n800 g sugar\nSalt and pepper.\n\n"
        "Boil all of it until it is thick.\n"
    )
    assert "Salt and pepper." in list_of(text)


def test_a_part_of_a_list_among_its_bullets_is_a_heading() -> None:
    text = (
        "Jelly\nIngredients\n- FOR THE JELLY:\n- 500 ml apple juice\n- 400 g sugar\n"
        "Method\nBoil it.\n"
    )
    assert list_of(text) == ["FOR THE JELLY:", "500 ml apple juice", "400 g sugar"]
    assert "FOR THE JELLY" not in " ".join(
        question.what for question in one_of("a.txt", text.encode()).questions
    )


def test_two_titles_above_a_list_are_no_foods() -> None:
    text = (
        "Salt Scrub\n(Body Polish)\nIt is kind to hands, and to feet too.\n1 cup salt\n"
        "2 tablespoons sunflower oil\nMix all of it together well, and bottle it.\n"
    )
    assert list_of(text) == ["1 cup salt", "2 tablespoons sunflower oil"]


def test_a_recipe_told_in_one_paragraph_has_its_list_and_its_method() -> None:
    text = (
        "Kekse\nZutaten 120 g Mehl, 150 g Zucker, 1 Ei, 1 Prise Salz. Zubereitung Alles verkneten."
    )
    assert list_of(text)[:3] == ["120 g Mehl", "150 g Zucker", "1 Ei"]
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Alles verkneten."]


def test_stars_part_the_things_of_a_sentence() -> None:
    text = (
        "~ Soup in a jar ~\n\nThe ingredients you will need are: 2 tablespoons of dried onion * "
        "2 teaspoons of salt * 1/2 cup of barley * 1/2 cup of split peas\n\n"
        "Directions: Mix all of it.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Soup in a jar"
    assert len(list_of(text)) == 4


def test_things_in_words_above_a_list_belong_to_it() -> None:
    text = (
        "Liqueur de verveine\n\n• Une poignée de feuilles\n• 200 g de sucre\n• 10 cl d’eau\n\n"
        "Laisser macérer un mois.\n"
    )
    assert list_of(text)[0] == "Une poignée de feuilles"
    oil = (
        "Oil\n\n1 fancy bottle\n\nenough good olive oil to fill it\n\n"
        "a lush sprig of rosemary\n\nWait a week.\n"
    )
    assert len(list_of(oil)) == 3


def test_a_long_line_of_a_list_loses_neither_itself_nor_the_next() -> None:
    text = (
        "Mincemeat\n"
        "300g of dried fruit, raisins, cherries and peel (whatever you like best of all)\n"
        "zest of one orange\n"
        "100g of brown sugar, I used dark brown, and added more as it was tart.\n"
        "one/two apples depending on their size.\n50g of melted butter\n"
        "Mix everything together and fill jars with it.\n"
    )
    assert len(list_of(text)) == 5


def test_crosses_before_each_line_are_dashes_and_no_line_is_lost() -> None:
    text = (
        "Turkish Delight\n\nYou'll Need:\n\n# 1 lb sugar\n# quarter pint (150ml) water\n"
        "# juice of one lemon\n# pink food colouring\n\n"
        "Procedures : # Soak the gelatine\n# Pour the water into a pan\n# Simmer it\n# Cut it\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Turkish Delight"
    assert list_of(text)[:2] == ["1 lb sugar", "quarter pint (150ml) water"]
    assert len(list_of(text)) == 4
    assert len(steps_of(found.text)) == 4


def test_oil_for_greasing_heads_nothing() -> None:
    text = (
        "Delight\n\nIngredients\n\noil for greasing\n1 oz gelatine\n1 lb sugar\n\nMix all of it.\n"
    )
    assert list_of(text) == ["oil for greasing", "1 oz gelatine", "1 lb sugar"]


def test_a_list_with_decimal_commas_on_one_line_is_parted() -> None:
    text = (
        "Kruidkoek\nIngrediënten\n150 g stroop, 50 ml water, 300 g roggemeel, 0,5 tl baking soda,"
        " 1,25 tl kaneel, snuf zout\nBereiding\n1. Meng alles.\n"
    )
    assert len(list_of(text)) == 6
    assert "0,5 tl baking soda" in [row.strip('"') for row in list_of(text)]


def test_things_numbered_below_a_heading_are_a_list() -> None:
    text = (
        "Ginger Bug\n\nIngredients of Ginger Bug\n\n  1. Prepare 2 tsp of grated ginger.\n"
        "  2. It’s 900 ml of water.\n\nGinger Bug instructions\n\n"
        "  1. Add the ginger to the water.\n"
    )
    assert list_of(text) == ["2 tsp of grated ginger", "900 ml of water"]
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Add the ginger to the water."]


PHOTOGRAPHED = """Max's coffee flavoured
liqueur

4 cups water
12 tsp instant coffee
(regular or decaf)
1/4 - 1/2 pint cream, to just
cover
Bring to the boil and simmer 60 to 90 min-
utes - uncovered.
Leave it in a well-
buttered dish.
"""


def test_lines_that_a_photograph_broke_are_whole_again() -> None:
    draft = one_of("a.txt", PHOTOGRAPHED.encode())
    assert draft.title == "Max's coffee flavoured liqueur"
    assert "- 12 tsp instant coffee (regular or decaf)\n" in draft.text
    assert "pint cream, to just cover" in draft.text
    assert "simmer 60 to 90 minutes - uncovered" in draft.text
    assert "well-buttered dish" in draft.text
