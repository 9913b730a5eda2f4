"""Heads, steps and what is no step in papers as strangers type and save them.

The classes were found in 38 saved pages, letters and texts of seven sorts of site and in six
languages (November 2026), read with expectations written before; the texts here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps
from stillroom.core.method.keeping_said import may_say_keeping


def test_a_step_that_begins_as_a_pages_times_do_is_kept() -> None:
    text = (
        "Fudge\n\n1 kg sugar\n200 ml milk\n\nCook: stir the sugar and the milk until they boil.\n"
    )
    (found,) = brought(text)
    assert steps(found) == ["Cook: stir the sugar and the milk until they boil."]
    (found,) = brought(text.replace("Cook: stir", "Cook: 20 min\nStir"))
    assert steps(found) == ["Stir the sugar and the milk until they boil."]


def test_tables_tips_variants_wishes_and_stories_are_no_steps() -> None:
    text = """Quittengelee
Zutaten
1 kg Quitten
1 kg Zucker
Zubereitung
1. Die Quitten kochen und den Saft abmessen.
2. Mit dem Zucker kochen, bis er geliert.

Variante:
Mit einer Vanilleschote kochen.

Tipp: Im Kühlschrank bleibt es klar.

Hot | Pints | 5 min

Gutes Gelingen!

Meine Geschichte zum Rezept
Wir kamen mit einem Karren voll Quitten in das Dorf.
"""
    (found,) = brought(text, "de_DE")
    assert len(steps(found)) == 2
    for kept in ("Mit einer Vanilleschote kochen.", "Wir kamen mit", "Im Kühlschrank", "Hot | "):
        assert kept in found.text
    assert "Gelingen" not in found.text


def test_a_numbered_head_and_its_paragraph_are_one_step() -> None:
    text = (
        "Jam\n\n1 kg plums\n1 kg sugar\n\nMethod\n1. Stoning\n\nHalve the plums and take out all "
        "their stones.\n\n2. Boiling\n\nBoil them with the sugar until a drop of it sets.\n"
    )
    (found,) = brought(text)
    assert [one.partition(":")[0] for one in steps(found)] == ["Stoning", "Boiling"]


@pytest.mark.parametrize(
    ("head", "language"),
    [
        ("Method summary", "en_GB"),
        ("Detailed instructions", "en_GB"),
        ("Kookinstructies", "nl_NL"),
        ("Zubereitungsschritte", "de_DE"),
    ],
)
def test_a_head_of_a_method_in_other_words(head: str, language: str) -> None:
    (found,) = brought(
        f"Gin\nIngredients\n- 500 g sloes\n- 700 ml gin\n{head}\n- Wash the sloes.\n- Add gin.\n",
        language,
    )
    assert listed(found) == ["500 g sloes", "700 ml gin"]
    assert steps(found) == ["Wash the sloes.", "Add gin."]


def test_storage_instructions_are_no_method() -> None:
    (found,) = brought(
        "Jam\n\n1 kg plums\n1 kg sugar\n\nMethod\nBoil the plums with the sugar until it sets.\n\n"
        "Storage instructions\nIn the fridge, and not for long, since it holds little sugar.\n"
    )
    assert len(steps(found)) == 1
    assert "In the fridge, and not for long" in found.text


def test_two_recipes_without_an_empty_line_between_them_are_two() -> None:
    text = """Plum jam
1 kg plums
1 kg sugar
Boil the plums until soft. Add the sugar and boil until it sets.
Pot in hot jars.
Pear chutney
1 kg pears
500 ml vinegar
Boil everything together for an hour until it is thick.
"""
    found = brought(text)
    assert [one.title for one in found] == ["Plum jam", "Pear chutney"]
    assert [len(listed(one)) for one in found] == [2, 2]
    (one,) = brought(text.replace("Pear chutney", "Icing"))  # a part of it, and asked about
    assert "More amounts stand amid the method" in asked(one)


@pytest.mark.parametrize(
    ("text", "span"),
    [
        ("It keeps in a tin for about 3 weeks.", "3 weeks"),
        ("Store in a cool place for 6 months.", "6 months"),
        ("Eat within a couple of days.", "2 days"),
        ("Hält sich 4 Wochen.", "4 weeks"),
        ("Keep stirring for a day.", ""),
        ("Leave it for 6 months before use.", ""),
        ("It lasts us a winter.", ""),
    ],
)
def test_words_beside_a_method_that_may_say_how_long_it_keeps(text: str, span: str) -> None:
    found = may_say_keeping(text)
    assert (str(found[1]) if found else "") == span


def test_days_head_the_steps_below_them() -> None:
    page = (
        "<h1>Chutney</h1><p>Ingredients:</p><ul><li>1 kg pears</li><li>1 kg sugar</li></ul>"
        "<p>Method:</p><p>Day 1.</p><ul><li>Chop the pears.</li></ul>"
        "<p>Day 2.</p><ul><li>Boil them with the sugar.</li></ul>"
    )
    (found,) = brought(page, name="a.html")
    assert steps(found) == ["Chop the pears.", "Boil them with the sugar."]
    assert "### Day 2." in found.text


def test_a_recipe_in_one_paragraph_and_things_between_hearts() -> None:
    (found,) = brought(
        "Mostarda di frutta Ingredienti: 2 kg di frutta, 1 kg di zucchero, 6 gocce di olio. "
        "Procedimento: La frutta "
        "deve essere asciutta. Si fa bollire per 5 minuti.\n",
        "it",
    )
    assert found.title == "Mostarda di frutta"
    assert len(listed(found)) == 3
    assert steps(found)
    (found,) = brought(
        "Relish\n\nIngredients - 1 kg tomatoes ❤ ¼ cup salt ❤ ½ teaspoon each of ground nutmeg, "
        "mace & cloves\n\n"
        "Method + Top Tips - Score the tomatoes with a sharp knife and boil them well.\n"
    )
    assert listed(found) == [
        "1 kg tomatoes",
        "¼ cup salt",
        "½ teaspoon ground nutmeg",
        "½ teaspoon ground mace",
        "½ teaspoon ground cloves",
    ]
    assert steps(found) == ["Score the tomatoes with a sharp knife and boil them well."]


def test_recipes_numbered_on_one_page_are_two() -> None:
    one = (
        "250 g de miel\n250 g de farine\n\nFaites chauffer le miel et versez-le sur la farine.\n\n"
    )
    text = f"Recette n°1 – le pain express\n\n{one}Recette n°2 – le pain corsé\n\n{one}"
    assert [found.title for found in brought(text, "fr")] == ["Le pain express", "Le pain corsé"]


def test_small_pictures_before_a_line_hide_no_head() -> None:
    text = (
        "Pain\n\n👥 Portions 8 personnes\n\n🥗 Ingrédients\n\n- 1 kg de farine\n\n👨‍🍳 "
        "Préparation\n\n1. Cuire.\n"
    )
    (found,) = brought(text, "fr")
    assert listed(found) == ["1 kg de farine"]
    assert "\nmakes: 8 personnes\n" in found.text


def test_an_empty_number_takes_no_heading() -> None:
    text = (
        "Scrub\n\n1 cup sugar\n½ cup coconut oil\n\nDirections\n\n1. Mash them together.\n2.  \n\n"
        "Notes\n\nPlain sugar is my favorite.\n"
    )
    (found,) = brought(text)
    assert steps(found) == ["Mash them together."]
    assert "## Notes\n\nPlain sugar" in found.text
    (found,) = brought("Scrub\n\n1 cup sugar\n½ cup oil\n\nDirections\n1.\nMash them.\n2.\nFill.\n")
    assert steps(found) == ["Mash them.", "Fill."]


# Heads, feet and wishes of saved blog pages (November 2026), and lines that look like them
LEADS_AWAY = """
Home » What's Cooking » Teas & Syrups
Startseite | Händler | Kontakt
Am Markt – Startseite | Händler | Kontakt
Have a great weekend!
Inicio | Recetas | Sobre mí
Entrada más reciente | Entrada antigua | Inicio
8 décembre 2021 · Bretagne · 2 commentaires
Envoyer par e-mail | Partager sur Facebook
Neuerer Post | Startseite | Älterer Post
Recipes | Gifts | About me
"""
STAYS = """
Home-made mincemeat
Fill the jars | seal | label
"""


@pytest.mark.parametrize("line", LEADS_AWAY.strip().splitlines())
def test_a_sites_menu_is_nothing_of_a_recipe(line: str) -> None:
    body = "Fig jam\n\n1 kg figs\n500 g sugar\n\nBoil the figs with the sugar.\n"
    above, below = brought(f"{line}\n\n{body}"), brought(f"{body}\n{line}\n")
    for (found,) in (above, below):
        assert line[:9] not in found.text
        assert "title: Fig jam" in found.text
        assert steps(found) == ["Boil the figs with the sugar."]


@pytest.mark.parametrize("line", STAYS.strip().splitlines())
def test_what_only_looks_like_a_menu_stays(line: str) -> None:
    (found,) = brought(
        f"Fig jam\n\n1 kg figs\n500 g sugar\n\nBoil the figs with the sugar.\n\n{line}\n"
    )
    assert line[:9] in found.text
