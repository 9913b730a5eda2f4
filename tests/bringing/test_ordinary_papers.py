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


def test_a_bracket_that_trails_off_makes_no_sentence_of_a_thing() -> None:
    spices = "Gewürze (Prise Pfeffer, bisschen Zimt, gemahlene Nelken,…)"
    things = ["4 EL Öl", "100 g Zucker", spices, "100 g Orangeat"]
    (one,) = brought("\n".join(["Lebkuchen", "", "Zutaten", *things, "", "Zubereitung", "Backen."]))
    assert listed(one) == things


def test_two_versions_keep_their_heads() -> None:
    lists = "".join(
        f"<h3>{head}</h3><ul><li>1/2 l anís</li><li>200 g endrinas</li></ul>"
        for head in ("Pacharán fuerte", "Pacharán suave")
    )
    (one,) = brought(
        f"<html><body><h1>Cómo hacer pacharán</h1>{lists}<h2>Preparación</h2>"
        "<p>Dejar macerar tres meses y filtrar.</p></body>",
        "es_ES",
        "a.html",
    )
    assert [thing for thing in listed(one) if thing.endswith(":")] == [
        "Pacharán fuerte:",
        "Pacharán suave:",
    ]


def test_a_first_line_without_the_bullet_of_the_others_is_a_head() -> None:
    things = ["2 cups powdered sugar", "1 cup cocoa powder", "1 cup milk powder"]
    text = "\n".join(f"- {thing}" for thing in things)
    (one,) = brought(
        f"# Mix\n\n## Ingredients\n\nHot Chocolate Mix\n{text}\n\n## Method\n\nMix it.\n"
    )
    assert listed(one) == ["Hot Chocolate Mix:", *things]
    (two,) = brought(f"# Mix\n\n## Ingredients\n\n{text}\nsalt\n\n## Method\n\nMix it.\n")
    assert listed(two) == [*things, "salt"]


def test_a_star_before_every_thing_is_a_mark() -> None:
    things = ["6 cinnamon sticks", "1 whole nutmeg", "1 tbsp allspice", "1 tbsp whole cloves"]
    typed = "\n".join(f"*{thing}" for thing in things)
    (one,) = brought(f"Mull bags\n\nIngredients\n{typed}\n\nMethod\nMix it.\n")
    assert listed(one) == things


def test_steps_counted_in_words_lose_the_words() -> None:
    told = ["Put all dry things in a bowl.", "Combine the oil and the colour.", "Fill the mould."]
    steps_ = "".join(
        f"<p><b>Step {word}</b> {one}</p>"
        for word, one in zip(("One", "Two", "Three"), told, strict=True)
    )
    assert steps(brought(page(steps_), name="a.html")[0]) == told
    kept = "Step Back from the pan and let it cool."
    assert kept in steps(
        brought(page(f"<ol><li>Boil it.</li><li>{kept}</li></ol>"), name="a.html")[0]
    )


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("Plenty of chopped walnuts for rolling the biscuits in at the end.", "en_GB"),
        ("Nuts: a handful of walnuts, hazelnuts, whatever you have got.", "en_GB"),
        ("Nuts (a handful of walnuts, some hazelnuts, a few almonds,…)", "en_GB"),
        ("Reichlich gehackte Walnüsse, in denen die Plätzchen am Ende landen.", "de_DE"),
    ],
)
@pytest.mark.parametrize("bullet", ["", "- "])
def test_a_food_told_in_a_sentence_amid_the_list_is_not_lost(
    line: str, language: str, bullet: str
) -> None:
    """It went to the notes unasked, and the card said nothing of nuts."""
    body = "Method\n1. Mix the flour and sugar.\n2. Bake.\n"
    text = f"Biscuits\n\nIngredients\n{bullet}250 g flour\n{line}\n{bullet}100 g sugar\n\n{body}"
    assert line in listed(brought(text, language)[0])


@pytest.mark.parametrize(
    ("line", "is_asked"),
    [
        ("You can use honey instead of the sugar if you like it better.", True),
        ("My aunt always used the brown sort from the corner shop.", False),
    ],
)
def test_a_remark_amid_the_list_is_a_note(line: str, is_asked: bool) -> None:
    body = "Method\n1. Mix the flour and sugar.\n2. Bake.\n"
    text = f"Biscuits\n\nIngredients\n250 g flour\n{line}\n100 g sugar\n\n{body}"
    (one,) = brought(text)
    assert listed(one) == ["250 g flour", "100 g sugar"]
    assert line in one.text.split("## Notes")[1]
    assert ("stood in the list, and is a note now" in asked(one)) == is_asked
