"""Lists set with pictures, letters, dots or a column for the method; recipes of two parts.

Forms as home-typed papers have them; the papers are made up for the form (2026-11-30).
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps

THINGS = ["500 g sugar", "500 ml water", "1 lemon"]
TOLD = ["Boil the sugar and water.", "Bottle it."]
FORMS = {
    "pictures": (
        "\U0001f36c 500 g sugar\n\U0001f4a7 500 ml water\n\U0001f34b 1 lemon\n\n"
        "\U0001f373 Boil the sugar and water.\n\U0001f37e Bottle it.\n"
    ),
    "letters": (
        "a) 500 g sugar\nb) 500 ml water\nc) 1 lemon\n\nBoil the sugar and water.\nBottle it.\n"
    ),
    "numbers": (
        "Ingredients\n1. 500 g sugar\n2. 500 ml water\n3. 1 lemon\n\n"
        "Method\n1. Boil the sugar and water.\n2. Bottle it.\n"
    ),
}


@pytest.mark.parametrize("form", FORMS)
def test_signs_of_a_list_are_none_of_its_words(form: str) -> None:
    (one,) = brought(f"Syrup\n\n{FORMS[form]}")
    assert listed(one) == THINGS
    assert steps(one) == TOLD
    assert "no list of ingredients" not in asked(one)


def test_letters_of_steps_and_one_picture_alone_stay() -> None:
    (steps_of,) = brought(
        "Syrup\n\n500 g sugar\n500 ml water\n\na) Boil the sugar.\nb) Bottle it.\n"
    )
    assert listed(steps_of) == ["500 g sugar", "500 ml water"]
    assert [one.removeprefix("a) ").removeprefix("b) ") for one in steps(steps_of)] == [
        "Boil the sugar.",
        "Bottle it.",
    ]
    (one,) = brought("Syrup ☀ of summer\n\n500 g sugar\n500 ml water\n\nBoil it.\nBottle it.\n")
    assert listed(one) == ["500 g sugar", "500 ml water"]


def test_dots_that_lead_to_amounts_are_a_list_and_those_of_a_page_are_not() -> None:
    text = "Chutney\n\napples ........ 1 kg\nonions ....... 500 g\nvinegar .... 300 ml\n\n"
    (one,) = brought(f"{text}Chop all.\nBoil it for an hour.\n")
    assert listed(one) == ["1 kg apples", "500 g onions", "300 ml vinegar"]
    assert len(steps(one)) == 2
    page = "Plum jam ...... 12\nQuince paste ..... 14\nSloe gin ..... 20\n"
    assert listed(brought(f"{page}\nJam\n\n1 kg plums\n1 kg sugar\n\nBoil it.\nPot it.\n")[0]) == [
        "1 kg plums",
        "1 kg sugar",
    ]


def test_a_table_with_a_column_for_the_method_is_both() -> None:
    table = (
        "| Ingredients | Method |\n|---|---|\n| 500 g sugar | Boil the sugar and water. |\n"
        "| 500 ml water | Bottle it. |\n| 1 lemon | |\n"
    )
    (one,) = brought(f"# Syrup\n\n{table}", name="a.md")
    assert listed(one) == THINGS
    assert steps(one) == TOLD


@pytest.mark.parametrize("top", ["- 100 g chocolate\n", "- 100 g chocolate\n- 1 tsp oil\n"])
def test_base_and_topping_with_a_method_each_are_one_recipe(top: str) -> None:
    text = (
        "# Biscuits\n\n## Base\n\n- 200 g flour\n- 100 g butter\n\n"
        "1. Rub the butter in.\n2. Bake.\n\n"
        f"## Topping\n\n{top}\n1. Melt the chocolate.\n2. Spread it.\n"
    )
    (one,) = brought(text, name="a.md")
    things = [line[2:] for line in top.strip().split("\n")]
    assert listed(one) == ["Base:", "200 g flour", "100 g butter", "Topping:", *things]
    assert len(steps(one)) == 4
    assert "### Topping" in one.text


def test_two_jams_below_a_title_stay_two() -> None:
    text = (
        "# Two jams\n\n## Plum jam\n\n- 1 kg plums\n- 1 kg sugar\n\n1. Boil it.\n2. Pot it.\n\n"
        "## Cherry jam\n\n- 1 kg cherries\n- 1 kg sugar\n\n1. Boil it.\n2. Pot it.\n"
    )
    assert len(brought(text, name="a.md")) == 2


def test_so_much_for_the_tin_is_no_thing_of_its_own() -> None:
    (one,) = brought(
        "Cake\n\n200 g flour\n100 g butter + 1 tbsp for the tin\n\n1. Mix.\n2. Bake.\n"
    )
    assert listed(one) == ["200 g flour", "100 g butter + 1 tbsp for the tin"]
    assert "Two things may stand" in asked(one)


# pasted pages of 2026-11-30 (l30, second dozen), their other words cut down
def test_a_label_before_several_things_heads_them_and_no_more() -> None:
    """22."""
    text = (
        "Chutney\n\nIngredients:\n- 3kg green tomatoes\n- 700g brown sugar\n"
        "- Spices: 3 tbs mustard seed, 1 tbs coriander seed, 1 teaspoon turmeric\n"
        "- 1.2 litres of vinegar\nDirections:\nChop the tomatoes.\nBoil all of it.\n"
    )
    (one,) = brought(text)
    assert listed(one)[:2] == ["3kg green tomatoes", "700g brown sugar"]
    spices = ["3 tbs mustard seed", "1 tbs coriander seed", "1 teaspoon turmeric"]
    assert listed(one)[2:6] == ["Spices:", *spices]
    assert listed(one)[-1] == "1.2 litres of vinegar"
    assert "    - 1.2 litres" not in one.text, "it is no spice"


@pytest.mark.parametrize(
    ("row", "things"),
    [
        (  # 26
            "1 kg de membrillos, azúcar (el mismo peso que los membrillos), el zumo de 1 limón.",
            [
                "1 kg de membrillos",
                "azúcar (el mismo peso que los membrillos)",
                "el zumo de 1 limón",
            ],
        ),
        ("1 kg de membrillos, pelados, troceados", ["1 kg de membrillos, pelados, troceados"]),
    ],
)
def test_things_of_one_line_of_which_only_the_first_has_an_amount(
    row: str, things: list[str]
) -> None:
    text = f"Dulce de membrillo\n\nIngredientes:\n{row}\n200 ml de agua\n\nPreparación:\n- Cocer.\n"
    assert listed(brought(text, "es")[0])[: len(things)] == things


def test_numbers_with_a_dash_head_the_paragraphs_below_them() -> None:
    """29: they were lines of the list, and "Recettes" with them."""
    text = (
        "Confiture de figues\n\nIngrédients\n1 kg de figues\n500 g de sucre\n1 citron\nRecettes\n"
        "1 - Macération des figues\nLavez et pelez les figues, puis ajoutez le sucre.\n"
        "2 - Cuisson de la confiture\nPortez à ébullition et laissez cuire 20 minutes.\n"
    )
    (one,) = brought(text, "fr")
    assert listed(one) == ["1 kg de figues", "500 g de sucre", "1 citron"]
    assert len(steps(one)) == 2
    assert "### Macération des figues" in one.text
    assert "### Cuisson de la confiture" in one.text


def test_foods_that_are_counted_with_a_dash_are_no_heads() -> None:
    (one,) = brought("Syrup\n\n1 - lemon\n2 - oranges\n500 g - sugar\n\nBoil all.\nBottle it.\n")
    assert len(listed(one)) == 3
    assert "###" not in one.text
