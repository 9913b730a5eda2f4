"""Titles that each stand over "Ingredients" with one method below them all; heads; counted foods.

The shape of the first is that of a newspaper's column of spice blends and that of a pickle from a
blog (read by a judge of this house on 30 November 2026); the heads are those of cooks' pages in
their languages, from memory. Expectations written before the code.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

BLENDS = """Here are some of my favorites:

Taco Seasoning

Ingredients

1 tablespoon chili powder
1½ teaspoons cumin

Cajun Seasoning

Ingredients

1 tablespoon salt
2 teaspoons paprika

Apple Pie Spice

Ingredients

¼ cup cinnamon
2 teaspoons nutmeg

Directions

Mix the spices well before storing them in an airtight jar.
"""

CAKE = """Lemon drizzle cake

My aunt made this every Sunday for us all.

Sponge

Ingredients

200 g butter
200 g flour

Icing

Ingredients

100 g icing sugar
1 lemon

Method

1. Beat the butter and flour and bake for an hour.
2. Ice with the sugar and lemon juice.
"""

PICKLE = """Lime pickle recipe

Lime - 10 medium sized (chop 6 of them and juice the remaining 4)
Turmeric powder - 1 tsp
Salt - 1/4 cup (see notes)
Oil - 2-3 tbsps

1. Cut the limes and add the salt and turmeric powder.
2. Heat the oil and pour it over.
"""


def test_three_blends_are_three_recipes_with_one_method() -> None:
    recipes = brought(BLENDS)
    assert [fact(one, "title") for one in recipes] == [
        "Taco Seasoning",
        "Cajun Seasoning",
        "Apple Pie Spice",
    ]
    assert [len(listed(one)) for one in recipes] == [2, 2, 2]
    assert all(
        steps(one) == ["Mix the spices well before storing them in an airtight jar."]
        for one in recipes
    )
    assert "stands below several lists" in asked(recipes[0])
    assert "stands below several lists" not in asked(recipes[2])


def test_a_sponge_and_its_icing_are_one_cake() -> None:
    (cake,) = brought(CAKE)
    assert fact(cake, "title") == "Lemon drizzle cake"
    assert listed(cake) == [
        "Sponge:",
        "200 g butter",
        "200 g flour",
        "Icing:",
        "100 g icing sugar",
        "1 lemon",
    ]


def test_a_counted_food_behind_its_dash_begins_the_list() -> None:
    (pickle,) = brought(PICKLE)
    assert listed(pickle)[0].startswith("Lime - 10 medium sized")
    assert len(listed(pickle)) == 4


@pytest.mark.parametrize(
    ("language", "over_list", "things", "over_method", "step"),
    [
        (
            "de_DE",
            "Was du brauchst:",
            ["1 kg Quitten", "500 g Zucker"],
            "Und so geht es:",
            "Die Quitten mit dem Zucker kochen.",
        ),
        (
            "es_ES",
            "Se necesita:",
            ["1 kg de membrillos", "500 g de azúcar"],
            "Modo de hacerlo",
            "Cocer los membrillos con el azúcar.",
        ),
        (
            "nl_NL",
            "Dit hebben we nodig:",
            ["1 kg kweeperen", "500 g suiker"],
            "Aan de slag",
            "Kook de kweeperen met de suiker.",
        ),
        (
            "pt_PT",
            "Precisa de:",
            ["1 kg de marmelos", "500 g de açúcar"],
            "Passo a passo",
            "Coza os marmelos com o açúcar.",
        ),
        (
            "sv_SE",
            "Det behövs:",
            ["1 kg kvitten", "500 g socker"],
            "Steg för steg",
            "Koka kvitten med sockret.",
        ),
        (
            "da_DK",
            "Der skal bruges:",
            ["1 kg kvæder", "500 g sukker"],
            "Fremgangsmåden",
            "Kog kvæderne med sukkeret.",
        ),
        (
            "nb_NO",
            "Det trengs:",
            ["1 kg kveder", "500 g sukker"],
            "Slik gjør du det:",
            "Kok kvedene med sukkeret.",
        ),
        (
            "pl_PL",
            "Potrzebujemy:",
            ["1 kg pigwy", "500 g cukru"],
            "Krok po kroku",
            "Gotować pigwę z cukrem.",
        ),
    ],
)
def test_a_head_of_another_kitchen_is_no_thing_and_no_step(
    language: str, over_list: str, things: list[str], over_method: str, step: str
) -> None:
    text = "\n\n".join(["Dulce", over_list, "\n".join(things), over_method, step])
    (recipe,) = brought(text, language)
    assert listed(recipe) == things
    assert steps(recipe) == [step]


@pytest.mark.parametrize("title", ["Plum gin", "Plum gin (from Nan)", "Quince paste (Membrillo)"])
def test_a_title_right_above_the_amounts_of_a_letter_is_none_of_them(title: str) -> None:
    (recipe,) = brought(
        f"Dear Jo,\n\nTom is better. Here is the recipe.\n\n{title}\n500 g plums\n250 g sugar\n\n"
        "Prick the plums and put them in a jar with the sugar.\n\nLove, May\n"
    )
    assert recipe.title == title
    assert listed(recipe) == ["500 g plums", "250 g sugar"]
    assert "right above the first amount" not in asked(recipe)
