"""What twenty ordinary papers of strangers (text, pages, Word, mail; seven languages) told wrongly.

The shapes are those of the papers; the lines are shortened from a jar of cocoa mix, a spiced mead,
a Danish apple marmalade, a Seville marmalade, a German quince jelly and a Spanish orange marmalade.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

THINGS = ["1 kg quinces", "500 g sugar"]
LIST = "".join(f"<li>{thing}</li>" for thing in THINGS)


def page(method: str, below: str = "") -> str:
    """Return a page of quince jelly with that method."""
    return (
        f"<html><body><h1>Quince jelly</h1><h2>Ingredients</h2><ul>{LIST}</ul>"
        f"<h2>Instructions</h2>{method}{below}</body></html>"
    )


def test_a_step_of_several_blocks_is_one_step() -> None:
    method = (
        "<ol><li><p><strong>Prepare the jar</strong><br>Use a clean jar.</p></li>"
        "<li><p><strong>Layer the things</strong><br>Add each in layers:</p>"
        "<ul><li>Cocoa powder</li><li>Powdered sugar</li></ul></li>"
        "<li><p>Close tightly.</p><p>Tie a ribbon round it.</p></li>"
        "<li><p><strong>Add a tag</strong><br>Write on it:</p>"
        "<blockquote><p>“Stir into 1 cup of hot milk.”</p></blockquote></li></ol>"
    )
    (one,) = brought(page(method), name="a.html")
    assert steps(one) == [
        "Prepare the jar: Use a clean jar.",
        "Layer the things: Add each in layers: Cocoa powder, Powdered sugar",
        "Close tightly. Tie a ribbon round it.",
        "Add a tag: Write on it: “Stir into 1 cup of hot milk.”",
    ]


def test_a_numbered_list_of_things_in_groups_stays_a_list() -> None:
    groups = "<ol><li>For the jelly<ul><li>1 kg quinces</li><li>500 g sugar</li></ul></li></ol>"
    body = page("<ol><li>Boil it.</li><li>Pot it.</li></ol>").replace(f"<ul>{LIST}</ul>", groups)
    (one,) = brought(body, name="a.html")
    assert [thing for thing in listed(one) if thing[0].isdigit()] == THINGS
    assert steps(one) == ["Boil it.", "Pot it."]


def test_ways_to_use_it_are_no_steps() -> None:
    ways = "<h2>Methods (Ways to Enjoy)</h2><ul><li>On toast: warm it</li><li>With cheese</li></ul>"
    (one,) = brought(page("<ol><li>Boil it.</li><li>Pot it.</li></ol>", ways), name="a.html")
    assert steps(one) == ["Boil it.", "Pot it."]
    assert "On toast: warm it" in one.text


def test_a_number_without_a_blank_is_the_next_steps() -> None:
    told = ["Pour in the yeast.", "Let it sit for 10 days.", "Filter it."]
    text = f"Mead\n\n1.5 kg honey\n10 cups water\n\n1. {told[0]}\n2.{told[1]}\n3. {told[2]}\n"
    assert steps(brought(text)[0]) == told


@pytest.mark.parametrize(
    ("head", "language", "makes"),
    [
        ("Opskrift til ca. 1½ liter:", "da_DK", "ca. 1½ liter"),
        ("Recipe for about 6 jars:", "en_GB", "about 6 jars"),
        ("Rezept für ca. 6 Gläser:", "de_DE", "ca. 6 Gläser"),
        ("Recette pour 6 pots :", "fr_FR", "6 pots"),
        ("Receta para 2 botes:", "es_ES", "2 botes"),
        ("Recept voor ca. 4 potjes:", "nl_NL", "ca. 4 potjes"),
        ("Recept till 3 burkar:", "sv_SE", "3 burkar"),
    ],
)
def test_a_recipe_for_so_much_heads_its_list(head: str, language: str, makes: str) -> None:
    (one,) = brought(f"Marmelade\n\n{head}\n2 kg x\n1 kg y\n\n1. Zzz.\n2. Zzz zz.\n", language)
    assert (fact(one, "title"), fact(one, "makes")) == ("Marmelade", makes)
    assert listed(one) == ["2 kg x", "1 kg y"]


@pytest.mark.parametrize("word", ["Recipe:", "Rezept", "Opskrift:", "Receita"])
def test_the_word_recipe_alone_says_nothing(word: str) -> None:
    (one,) = brought(f"Marmalade\n\n{word}\n\n1 kg oranges\n1 kg sugar\n\nMethod\nBoil it.\n")
    assert fact(one, "title") == "Marmalade"
    assert word not in one.text


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ('Ein Rezept von Anna Berg, "Der Marmeladenladen", Hainburg.', "Anna Berg"),
        ("A recipe by Ann Other", "Ann Other"),
        ("A recipe by Rose Hart", "Rose Hart"),
        ("Une recette de Rose Hart.", "Rose Hart"),
        ("Recette de Mamie Jeanne", "Mamie Jeanne"),
        ("Receta de Rosa Hart", "Rosa Hart"),
        ("Ricetta di Rosa Hart", "Rosa Hart"),
        ("Opskrift fra Rosa Hart", "Rosa Hart"),
        ("Ett recept av Anna Berg", "Anna Berg"),
    ],
)
def test_whose_a_recipe_is_said_to_be(line: str, who: str) -> None:
    (one,) = brought(f"Quince jelly\n\n{line}\n\nIngredients\n1 kg quinces\n\nMethod\nBoil it.\n")
    assert fact(one, "author").strip('"') == who
    assert line not in one.text


@pytest.mark.parametrize(
    "title",
    ["Receta de Dulce de Membrillo", "Recette de Confiture de Coings", "Recipe of Plum Gin"],
)
def test_a_dish_in_capitals_is_no_person(title: str) -> None:
    (one,) = brought(f"{title}\n\nIngredients\n1 kg quinces\n\nMethod\nBoil it.\n")
    assert fact(one, "author") == ""
    assert fact(one, "title") == title.split(" ", 2)[2]


@pytest.mark.parametrize(
    "foot",
    [
        "Entrada más reciente Entrada antigua Inicio",
        "Newer Post Older Post Home",
        "Message plus récent Message plus ancien Accueil",
        "Con la tecnología de Something.",
        "Powered by Something",
    ],
)
def test_the_foot_of_a_blog_is_nothing(foot: str) -> None:
    method = f"<ol><li>Boil it.</li><li>Pot it.</li></ol><div>{foot}</div>"
    (one,) = brought(page(method), name="a.html")
    assert steps(one) == ["Boil it.", "Pot it."]
    assert foot.split(" ")[0] not in one.text + asked(one)


@pytest.mark.parametrize(
    ("line", "thing"),
    [
        ("(icing sugar for dusting)", "icing sugar for dusting"),
        ("(zucchero a velo per cospargere)", "zucchero a velo per cospargere"),
        ("(Puderzucker zum Bestäuben)", "Puderzucker zum Bestäuben"),
        ("(milk for brushing)", "milk for brushing"),
        ("(or margarine)", ""),
        ("(peeled and grated)", ""),
        ("(about 3 lemons)", ""),
        ("(no salt)", ""),
    ],
)
def test_a_food_on_a_line_in_brackets_is_one_of_the_list(line: str, thing: str) -> None:
    text = f"Biscuits\n\nIngredients\n250 g flour\n2 eggs\n{line}\n\nMethod\n1. Mix.\n2. Bake.\n"
    (one,) = brought(text)
    assert listed(one)[1:] == (["2 eggs", thing] if thing else [f"2 eggs {line}"])


@pytest.mark.parametrize(
    ("line", "is_asked"),
    [
        ("5.25 C sugar", True),
        ("2 c. sugar", True),
        ("1.5 QT water", True),
        ("1 qt. water", True),
        ("1 gal water", True),
        ("2 pt water", True),
        ("1 c. à soupe de sucre", False),
        ("2 c. à s. de sel", False),
        ("100 g sugar", False),
    ],
)
def test_short_american_measures_are_asked_about_too(line: str, is_asked: bool) -> None:
    text = f"Syrup\n\nIngredients\n250 g plums\n{line}\n\nMethod\n1. Mix.\n2. Boil.\n"
    assert ("is not the American measure" in asked(brought(text)[0])) == is_asked


@pytest.mark.parametrize("line", ["1 gallon batch", "Batch size: 1 gallon"])
def test_a_batch_is_what_it_makes(line: str) -> None:
    text = f"Mead\n\n{line}\n\nIngredients\n3 lb honey\n\nMethod\n1. Mix.\n2. Boil.\n"
    (one,) = brought(text)
    assert fact(one, "makes") == "1 gallon"
    assert "atch" not in one.text
