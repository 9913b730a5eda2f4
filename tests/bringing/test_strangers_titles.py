"""What papers as strangers type and save them are called, who sent them, and how much they make.

The classes were found in 38 saved pages, letters and texts of seven sorts of site and in six
languages (November 2026), read with expectations written before; the texts here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps


def test_recipes_told_in_sentences_are_told_apart_by_their_titles() -> None:
    found = brought(
        "Apple pickle\n\nGrate an apple finely, and add as much of a minced onion and some salt.\n"
        "\nPear chutney\n\nBoil a pound of pears in a pint of vinegar with sugar for an hour.\n"
    )
    assert [one.title for one in found] == ["Apple pickle", "Pear chutney"]


@pytest.mark.parametrize(
    ("text", "title"),
    [
        (
            "Every year we make it!\nFudge (Nan's)\n1 kg sugar\n1 l milk\nBoil till it is thick.",
            "Fudge (Nan's)",
        ),
        (
            "Sloe gin\nTo make slow (sloe) gin, you need sloes, gin, and sugar.\nIngredients\n"
            "1 kg sloes\n1 l gin\nMethod\n1. Steep.",
            "Sloe gin",
        ),
        (
            "A word.\n\nTitle: Cake mix\n\n500 g flour\n200 g sugar\n\nMix all of it in a bowl.",
            "Cake mix",
        ),
        (
            "Mead recipe for 1 gallon\n\nStir the honey into the water and add yeast when cool.",
            "Mead",
        ),
    ],
)
def test_a_title_is_found_where_it_stands(text: str, title: str) -> None:
    assert brought(text)[0].title == title


def test_a_sum_up_is_no_title_and_what_stands_above_it_is_the_method() -> None:
    (found,) = brought(
        "Lavate i limoni e togliete la buccia con un coltello molto affilato.\n"
        "Mettete le bucce nell'alcool per una settimana e poi filtrate.\n\n"
        "Riepilogo:\n1 l di alcool\n600 g di zucchero\n",
        "it_IT",
    )
    assert "Riepilogo" not in found.title
    assert len(steps(found)) == 2
    assert "what stood above it was taken for one" in asked(found)


def test_who_sent_it_and_how_much_are_no_food() -> None:
    (found,) = brought(
        "Pear butter\n16 pears\n4 cups sugar\nBoil the pears with the sugar until it is thick.\n"
        "Yeilds: 5 pints\nSubmitted by Heather\n"
    )
    assert listed(found) == ["16 pears", "4 cups sugar"]
    assert "makes: 5 pints" in found.text
    assert "author: Heather" in found.text
    assert len(steps(found)) == 1


def test_times_and_yields_below_numbered_steps_are_no_part_of_the_last() -> None:
    (found,) = brought(
        "Brittle\nINGREDIENTS:\n2 cups sugar\n2 cups peanuts\nDIRECTIONS:\n1. Boil the sugar.\n"
        "2. Stir in the peanuts.\nPrep: 5 minutes\nServes: 12\n"
    )
    assert steps(found) == ["Boil the sugar.", "Stir in the peanuts."]
    assert "makes: 12 servings" in found.text


def test_what_it_makes_counts_before_how_many_it_serves() -> None:
    text = (
        "Shortbread\nServes 8\n200 g flour\n100 g butter\nBake it for an hour. Makes 24 pieces.\n"
    )
    (found,) = brought(text)
    assert "makes: 24 pieces" in found.text
    assert "8 servings." in found.text
    stated = (
        '{"@type": "Recipe", "name": "Shortbread", "recipeYield": ["8 servings", "24 pieces"], '
        '"recipeIngredient": ["200 g flour"], "recipeInstructions": "Bake."}'
    )
    (found,) = brought(stated, name="a.json")
    assert "makes: 24 pieces" in found.text
    (found,) = brought(text.replace(" Makes 24 pieces.", ""))
    assert "makes: 8 servings" in found.text


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        (
            "This recipe will make 3 tubes of balm, which is all you need for a while.",
            "3 tubes of balm",
        ),
        ("Número de porciones: Aproximadamente 4 tarros de 300 ml", "about 4 tarros de 300 ml"),
        ("Nombre de pots : 5 pots", "5 pots"),
    ],
)
def test_how_many_it_makes_in_other_words(said: str, makes: str) -> None:
    (found,) = brought(f"Plum balm\n\n{said}\n\n1 kg plums\n1 kg sugar\n\nBoil it.\n")
    assert f"\nmakes: {makes}\n" in found.text


def test_a_rest_is_no_title_and_days_head_their_steps() -> None:
    text = (
        "Ma confiture de figues\n\nPréparation: 15 minutes\n\nRepos: une nuit\n\nIngrédients "
        "pour 5 pots:\n"
        "- 1 kg de figues\n- 800 g de sucre\n\nJour 1:\nLavez les figues et séchez-les bien "
        "avant de les couper.\n\n"
        "Jour 2:\nFaites cuire le tout quinze minutes et mettez en pots.\n"
    )
    (found,) = brought(text, "fr")
    assert found.title == "Ma confiture de figues"
    assert "### Jour 1\n" in found.text
    assert len(steps(found)) == 2


@pytest.mark.parametrize(
    ("text", "title"),
    [
        (
            "Pickles...here it is!\nHere is the recipe:\nBread and butter pickles\n",
            "Bread and butter",
        ),
        ("So geht es bei uns zu Hause.\n\nIm folgenden mein Rezept:\n", ""),
    ],
)
def test_words_that_only_lead_to_a_recipe_are_no_title(text: str, title: str) -> None:
    (found,) = brought(f"{text}1 kg cucumbers\n1 l vinegar\n1 lb onions\n\nBoil it all well.\n")
    assert found.title.startswith(title or "A recipe")


def test_how_many_stands_at_the_end_of_a_long_sentence() -> None:
    said = (
        "They were for church, and the note says so. It is a huge recipe and makes 12 dozen "
        "cookies!"
    )
    (found,) = brought(f"Church cookies\n\n{said}\n\n5 cups sugar\n5 eggs\n\nBake them well.\n")
    assert "\nmakes: 12 dozen cookies\n" in found.text
    (found,) = brought(
        "Relish\nYou need: (To make 4 to 5 pints)\n- 1 kg onions\n- 1 l vinegar\n\nBoil it.\n"
    )
    assert listed(found) == ["1 kg onions", "1 l vinegar"]
    assert "\nmakes: 4 to 5 pints\n" in found.text


@pytest.mark.parametrize(
    ("head", "title", "makes"),
    [
        ("ANZAC BISCUIT RECIPE – MAKES ABOUT 35", "Anzac biscuit", "ABOUT 35"),
        ("Nutty granola [makes about 5 cups]\n\nPrintable recipe", "Nutty granola", "about 5 cups"),
    ],
)
def test_how_many_stands_beside_the_title(head: str, title: str, makes: str) -> None:
    (found,) = brought(
        f"{head}\n\n1 cup rolled oats\n1 cup sugar\n\nMix it all and bake it well.\n"
    )
    assert found.title == title
    assert f"\nmakes: {makes}\n" in found.text


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("makes ~4 8 oz. jars.", "about 4 8 oz. jars"),
        ("Makes 6 half-pt. jars.", "6 half-pt. jars"),
        ("Makes 6 pts. chutney", "6 pts. chutney"),
        ("Makes 2 lb. Keep it cool.", "2 lb"),
        ("Makes 4 jars. Boil them first.", "4 jars"),
    ],
)
def test_a_shortened_unit_ends_no_yield(said: str, makes: str) -> None:
    (found,) = brought(f"Plum jam\n\n{said}\n\n2 lb plums\n1 lb sugar\n\nBoil it all.\n")
    assert fact(found, "makes").strip('"') == makes


@pytest.mark.parametrize(
    ("said", "title"),
    [
        ("Feel Good Friday: DIY Coffee Scrub", "DIY Coffee Scrub"),
        ("Rezept der Woche: Quittengelee", "Quittengelee"),
        ("Sunday marmalade: the quick way", '"Sunday marmalade: the quick way"'),
        ("Shrove Tuesday pancakes", "Shrove Tuesday pancakes"),
    ],
)
def test_the_column_a_recipe_was_printed_in_is_no_title(said: str, title: str) -> None:
    (found,) = brought(f"{said}\n\n2 cups sugar\n1 cup coffee\n\nMix them well.\n")
    assert fact(found, "title") == title
