"""Papers as strangers type and save them, by class: what each line is, and what it is not.

The classes were found in 38 saved pages, letters and texts of seven sorts of site and in six
languages (November 2026), read with expectations written before; the texts here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.tools import is_tool
from stillroom.core.method.keeping_said import may_say_keeping


def test_a_step_that_begins_as_a_pages_times_do_is_kept() -> None:
    text = (
        "Fudge\n\n1 kg sugar\n200 ml milk\n\nCook: stir the sugar and the milk until they boil.\n"
    )
    (found,) = brought(text)
    assert steps(found) == ["Cook: stir the sugar and the milk until they boil."]
    (found,) = brought(text.replace("Cook: stir", "Cook: 20 min\nStir"))
    assert steps(found) == ["Stir the sugar and the milk until they boil."]


def test_a_narrow_column_is_put_together_and_short_steps_are_not() -> None:
    text = """Pear butter
2 kg pears
1 kg sugar
Yield: about 4 to 5
pints
Procedure: Wash and quarter the
pears.
Cook them slowly until
soft. Fill hot into clean jars, leaving
1/4-inch headspace.
Adjust lids and process
as the table says.
"""
    (found,) = brought(text)
    assert "makes: about 4 to 5 pints" in found.text
    assert listed(found) == ["2 kg pears", "1 kg sugar"]
    assert steps(found) == [
        "Wash and quarter the pears.",
        "Cook them slowly until soft. Fill hot into clean jars, leaving 1/4-inch headspace.",
        "Adjust lids and process as the table says.",
    ]
    (found,) = brought("Tea\n\n1 kg leaves\n2 l water\n\nboil the water\npour it on\nstrain it\n")
    assert len(steps(found)) == 3


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


def test_a_line_between_items_heads_those_below_it() -> None:
    text = """Confiture
Ingrédients (pour environ 3 à 4 pots)
- 1 kg de figues
- 500 g de sucre
Préparation :
La veille
- Lavez les figues et coupez-les.
- Ajoutez le sucre et laissez reposer.
Le jour même
- Portez à ébullition en remuant.
- Cuisez, puis mettez en pots
et fermez.
"""
    (found,) = brought(text, "fr_FR")
    assert "### La veille" in found.text
    assert "### Le jour même" in found.text
    assert steps(found)[-1] == "Cuisez, puis mettez en pots et fermez."
    assert len(steps(found)) == 4


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


@pytest.mark.parametrize(
    ("line", "tool"),
    [
        ("A sterilised 3 ½ cup mason jar with lid", True),
        ("An A4 sheet of plain paper", True),
        ("1 Topf", True),
        ("Bassine à confiture en cuivre", True),
        ("1 jar honey", False),
        ("200 g rice paper", False),
        ("2 bottles red wine", False),
        ("1 vanilla pod", False),
    ],
)
def test_tools_are_told_from_foods(line: str, tool: bool) -> None:
    assert is_tool(line) is tool


def test_tools_among_foods_go_to_the_notes() -> None:
    (found,) = brought(
        "Sloe gin\n\nYou will need\nA large jar\nA sieve\n500 g sloes\n250 g sugar\n\n"
        "Put the sloes and the sugar in the jar and shake it daily.\n"
    )
    assert listed(found) == ["500 g sloes", "250 g sugar"]
    assert "## Equipment\n\nA large jar\n\nA sieve\n" in found.text
    assert "Under Equipment now" not in asked(found)  # a sieve is plainly no food
    (craft,) = brought(
        "Felt star\n\n1 sheet of paper\n1 jar\n50 g wool\n\nFold the paper and wind wool round.\n"
    )
    assert len(listed(craft)) == 3


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


def test_recipes_told_in_sentences_are_told_apart_by_their_titles() -> None:
    found = brought(
        "Apple pickle\n\nGrate an apple finely, and add as much of a minced onion and some salt.\n"
        "\nPear chutney\n\nBoil a pound of pears in a pint of vinegar with sugar for an hour.\n"
    )
    assert [one.title for one in found] == ["Apple pickle", "Pear chutney"]


def test_words_that_head_a_part_without_a_colon_are_asked_about() -> None:
    (found,) = brought(
        "Lemon biscuits\n\nIngredients\nBiscuits\n200 g flour\n100 g butter\nIcing\n"
        "100 g icing sugar\nsalt\n\nMethod\nBake the biscuits for ten minutes, and ice them.\n"
    )
    assert listed(found) == [
        "Biscuits:",
        "200 g flour",
        "100 g butter",
        "Icing:",
        "100 g icing sugar",
        "salt",
    ]
    assert '"Icing" was taken for a heading' in asked(found)


def test_foods_without_amounts_on_one_line_stay_in_the_list() -> None:
    (found,) = brought(
        "Spiced vinegar\n1 litre vinegar\n2 tbsp peppercorns\nsalt; a few cloves; a blade of mace."
        "\n\nBoil the vinegar with the spices for ten minutes and strain it.\n"
    )
    assert listed(found)[2:] == ["salt", "a few cloves", "a blade of mace"]
    (found,) = brought(
        "Herzen\n250 g Mehl\n125 g Butter\nPuderzucker und Perlen für die Verzierung\n"
        "Aus Mehl und Butter einen Teig kneten und kalt stellen.\n",
        "de_DE",
    )
    assert listed(found)[2] == "Puderzucker und Perlen für die Verzierung"
    assert len(steps(found)) == 1


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


@pytest.mark.parametrize(("line", "says"), [("175m milk", "length"), ("1# butter", "pounds")])
def test_lost_letters_and_signs_are_asked_about(line: str, says: str) -> None:
    (found,) = brought(f"Scones\n\n{line}\n200 g flour\n\nMix the two of them and bake at once.\n")
    assert says in asked(found)
    (found,) = brought("Garland\n\n5 m ribbon\n20 m string\n\nKnot the ribbon along the string.\n")
    assert "length" not in asked(found)


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


def test_times_and_yields_below_numbered_steps_are_no_part_of_the_last() -> None:
    (found,) = brought(
        "Brittle\nINGREDIENTS:\n2 cups sugar\n2 cups peanuts\nDIRECTIONS:\n1. Boil the sugar.\n"
        "2. Stir in the peanuts.\nPrep: 5 minutes\nServes: 12\n"
    )
    assert steps(found) == ["Boil the sugar.", "Stir in the peanuts."]
    assert "makes: 12 servings" in found.text


def test_a_list_on_one_line_between_dots_is_a_list() -> None:
    (found,) = brought(
        "Honigkuchen\n\nZutaten: • 250 g Zucker, braun • 4 Eier • 1 Prise Salz\n"
        "Zucker und Eier rühren und alles bei 180 Grad backen.\n",
        "de_DE",
    )
    assert found.title == "Honigkuchen"
    assert listed(found) == ["250 g Zucker, braun", "4 Eier", "1 Prise Salz"]


def test_days_head_the_steps_below_them() -> None:
    page = (
        "<h1>Chutney</h1><p>Ingredients:</p><ul><li>1 kg pears</li><li>1 kg sugar</li></ul>"
        "<p>Method:</p><p>Day 1.</p><ul><li>Chop the pears.</li></ul>"
        "<p>Day 2.</p><ul><li>Boil them with the sugar.</li></ul>"
    )
    (found,) = brought(page, name="a.html")
    assert steps(found) == ["Chop the pears.", "Boil them with the sugar."]
    assert "### Day 2." in found.text


def test_equipment_behind_the_list_goes_on_to_the_next_head() -> None:
    (found,) = brought(
        "Chutney\n\nIngredients\n1 kg pears\n1 kg sugar\nEquipment\n6 x 250 ml jars\nA large pan\n"
        "A wide funnel if you have one of them\nRubber gloves\nInstructions\n"
        "Step one: Boil the pears.\nThis recipe makes about 7 jars depending on their size.\n"
    )
    assert listed(found) == ["1 kg pears", "1 kg sugar"]
    assert steps(found) == ["Boil the pears."]
    assert "makes: about 7 jars" in found.text


def test_the_head_right_above_the_first_amounts_heads_them() -> None:
    (found,) = brought(
        "Orangettes\nPour les oranges confites :\n4 oranges\n250 g de sucre\n"
        "Pour l'enrobage au chocolat:\n100 g de chocolat noir\n"
        "Couper les oranges en deux et les cuire dans le sucre.\n",
        "fr_FR",
    )
    assert listed(found)[0] == "Pour les oranges confites:"


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


def test_amounts_beside_a_list_are_taken_in_or_asked_about() -> None:
    text = """Never-fail fudge

one 7-1/2 oz. jar marshmallow cream
1/2 stick butter
one 5.33 oz can evaporated milk
2-1/2 cups sugar
3/4 teaspoon salt

Boil slowly for 5 minutes, stirring. Makes 2-1/2 pounds.
"""
    (found,) = brought(text)
    assert listed(found)[0] == "one 7-1/2 oz. jar marshmallow cream"
    assert len(listed(found)) == 5
    assert "makes: 2 1/2 pounds" in found.text
    (found,) = brought("Relish\n\n450 g salt\nAdd 3 cauliflowers\n3 onions\n\nBoil it all well.\n")
    assert listed(found) == ["450 g salt", "Add 3 cauliflowers", "3 onions"]
    # what the list lost to a blank line and a sentence is asked about, and nothing else is
    text = (
        "Plum jam\n\n200 g butter\n\nMy aunt made this each year for all of us.\n\n1 kg "
        "plums\n1 kg sugar\n\nBoil it.\n"
    )
    (found,) = brought(text)
    assert 'Amounts stand outside the list: "200 g butter"' in asked(found)
    (found,) = brought(text.replace("200 g butter\n\n", ""))
    assert "outside the list" not in asked(found)


def test_a_second_row_of_amounts_is_taken_off_and_told() -> None:
    text = (
        "Fudge\n\nIngredients\n\n3 1/3 cups sugar  1 2/3\n\n4 tbsp butter 2\n\n1 tsp salt "
        "1/2\n\nMethod\n\nBoil it.\n"
    )
    (found,) = brought(text)
    assert listed(found) == ["3 1/3 cups sugar", "4 tbsp butter", "1 tsp salt"]
    assert "A second row of amounts stood behind the foods (1 2/3, 2, 1/2)" in asked(found)
    (found,) = brought(
        "Loaf\n\nIngredients\n\n500 g flour type 00\n1 tsp salt\n1 l water\n\nMethod\n\nBake.\n"
    )
    assert listed(found)[0] == "500 g flour type 00"


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


def test_tools_on_one_line_or_without_amounts_are_no_foods() -> None:
    text = (
        "Quittenlikör\n\nZutaten: 1 kg Quitten, 300 g Zucker, 1 l Korn\n"
        "Geräte: 1 Messer, 1 Topf, Schnur, 1 Schüssel\nRezept: Wenn man Quitten verarbeitet, "
        "muss man "
        "zuerst den Flaum abreiben und sie dann in Stücke schneiden.\n"
    )
    (found,) = brought(text, "de")
    assert listed(found) == ["1 kg Quitten", "300 g Zucker", "1 l Korn"]
    assert steps(found)[0].startswith("Wenn man Quitten")
    assert "1 Topf, Schnur" in found.text
    text = (
        "# Mermelada\n\nIngredientes\n\n- 1 kg de membrillos\n- 1 kg de azúcar\n\nUtensilios "
        "necesarios\n\n"
        "- Una olla de fondo doble\n- Un rallador\n- Una cuchara de madera\n\nPreparación\n\n1. "
        "Cocina todo.\n"
    )
    (found,) = brought(text, "es", "a.md")
    assert listed(found) == ["1 kg de membrillos", "1 kg de azúcar"]
    assert "Una olla de fondo doble" in found.text
    assert "Un rallador" in found.text
    assert not is_tool("distilled white vinegar: 6 cups")
    assert not is_tool("1 cucharada de sal")


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


def test_foods_below_one_amount_for_each_of_them_stay_in_the_list() -> None:
    text = """Omas Lebkuchen

Zutaten 450 Gramm Zucker

4 Eier

Von folgenden Gewürzen jeweils ½ Teelöffel:

Zimt

Sternanis

Piment

Rühren Sie die Eier und den Zucker schaumig, bis sich die Masse fast verdoppelt hat.
"""
    (found,) = brought(text, "de")
    assert listed(found)[-3:] == ["½ Teelöffel Zimt", "½ Teelöffel Sternanis", "½ Teelöffel Piment"]
    assert "gives one amount for several" in asked(found)
    assert len(steps(found)) == 1


def test_what_is_said_between_items_of_a_list_does_not_end_it() -> None:
    text = """Polvorones
Ingredientes
Esto es todo lo que necesitas para hacerlos. Rinden para unas 20 piezas, según el tamaño.
-
2 tazas de harina
-
1 taza de manteca de cerdo
Si prefieres, puedes sustituirla por mantequilla sin sal.
-
1 huevo (opcional) — algunos prefieren no usarlo para mantener la textura más quebradiza.
-
Azúcar para espolvorear (opcional) — para ese toque final irresistible.
Preparación paso a paso
1. Mezcla todo y hornea 15 minutos.
"""
    (found,) = brought(text, "es")
    assert [row.split(" ")[1] for row in listed(found)] == ["tazas", "taza", "huevo", "para"]
    assert "\nmakes: about 20 piezas\n" in found.text
    assert steps(found) == ["Mezcla todo y hornea 15 minutos."]


def test_two_columns_and_a_paragraph_without_a_sign_are_lists() -> None:
    columns = """Lebkuchen

1 pint molasses                     1 lb. butter

2 lemons, rind and juice            4 eggs

Let it all boil up, then leave it overnight. Bake it in a moderate oven.
"""
    (found,) = brought(columns)
    assert listed(found) == [
        "1 pint molasses",
        "1 lb. butter",
        "2 lemons, rind and juice",
        "4 eggs",
    ]
    paragraph = (
        "BROWNIES 1/2 c. shortening 2 sq. chocolate 1/2 t. salt 2 eggs Melt the shortening and "
        "chocolate over hot water. Beat in the rest and bake for half an hour.\n"
    )
    (found,) = brought(paragraph)
    assert found.title == "Brownies"
    assert listed(found) == ["1/2 c. shortening", "2 sq. chocolate", "1/2 t. salt", "2 eggs"]
    assert len(steps(found)) == 1


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


def test_a_sentence_lists_things_with_what_is_done_to_them() -> None:
    (found,) = brought(
        "Rum truffles\n\nThe ingredients are: 250 ml cream, 100 g milk chocolate, finely "
        "chopped, 25 g "
        "butter, diced, and 2 tbsp rum and 5 tbsp cocoa powder, for dusting.\nHeat the cream and "
        "pour it over the chocolate, then add the butter and the rum.\n"
    )
    assert listed(found) == [
        "250 ml cream",
        "100 g milk chocolate, finely chopped",
        "25 g butter, diced",
        "2 tbsp rum",
        "5 tbsp cocoa powder, for dusting",
    ]


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


def test_what_leads_to_each_thing_is_no_part_of_it() -> None:
    (found,) = brought(
        "Damson gin\n\nIngredients of Damson Gin\n- You need 1 kg of damsons.\n- Prepare 1 kg "
        "of sugar.\n"
        "- It's 1 l of gin.\nMethod\n- Layer the damsons and the sugar in a jar.\n"
    )
    assert listed(found) == ["1 kg of damsons", "1 kg of sugar", "1 l of gin"]


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


def test_a_scrap_that_names_each_thing_before_its_amount_has_a_list() -> None:
    text = (
        "Spiced nuts\n"
        "almonds 200g, pecans 100g, egg white 1, sugar 100g, cinnamon 1 tsp, salt half tsp\n"
        "Mix it all and bake for 30 min at 150C.\n"
    )
    (found,) = brought(text)
    assert listed(found) == [
        "almonds 200g",
        "pecans 100g",
        "egg white 1",
        "sugar 100g",
        "cinnamon 1 tsp",
        "salt, half tsp",
    ]
    assert steps(found) == ["Mix it all and bake for 30 min at 150C."]
    told = "Mix all of it and pot it cold."
    text = (
        f"Mincemeat\n\nsuet 8 oz; apples 1 lb; brandy quarter pint; mixed spice 2 tsp\n\n{told}\n"
    )
    (found,) = brought(text)
    assert listed(found) == [
        "suet 8 oz",
        "apples 1 lb",
        "brandy, quarter pint",
        "mixed spice 2 tsp",
    ]
    (found,) = brought(
        "Nuts\n\n1 kg nuts\n\nBoil 20 minutes, rest 1 hour, bake 2 hours and cool them.\n"
    )
    assert listed(found) == ["1 kg nuts"]


@pytest.mark.parametrize(
    ("text", "tool"),
    [
        ("evaporated milk - 1 small tin (170g)", False),
        ("Condensed milk: 1 tin", False),
        ("cake tin, 20 cm", True),
        ("jam jars - 6", True),
    ],
)
def test_a_food_in_a_tin_is_no_tin(text: str, tool: bool) -> None:
    assert is_tool(text) is tool


# Pages that home makers keep, as they are pasted (November 2026): stored public pages, cut short


def test_a_list_whose_lines_end_in_commas_loses_none_to_the_line_above() -> None:
    text = (
        "Nocino\n\nINGREDIENTI:\n1 l di alcool 95°,\n24 noci verdi,\n7-8 chiodi di garofano,\n"
        "stecca di cannella,\n2-3 scorze di limone.\nLavare le noci e tagliarle.\n"
    )
    (found,) = brought(text, "it_IT")
    assert listed(found)[2:] == [
        "7-8 chiodi di garofano",
        "stecca di cannella",
        "2-3 scorze di limone",
    ]
    (found,) = brought("Jam\n\n1 kg plums,\nstoned and cut\n800 g sugar\n\nBoil them all.\n")
    assert listed(found) == ["1 kg plums, stoned and cut", "800 g sugar"]


def test_foods_without_amounts_above_numbered_steps_are_one_recipes_list() -> None:
    text = (
        "Lemon sugar scrub\n\nHere is what I made for the retreat.\n\nRinse off, and towel dry.\n\n"
        "Coconut oil (I like this one)\n\nGranulated sugar\n\nLemon essential oil (mine.)\n\n"
        "1. Let the jar sit in hot water.\n\n2. Stir until smooth.\n"
    )
    (found,) = brought(text)
    assert len(listed(found)) == 3
    assert len(steps(found)) == 2
    assert "without amounts" in asked(found)


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


@pytest.mark.parametrize(
    ("text", "language", "tool"),
    [
        ("Equipment: a big pan\n\n1 kg plums\n1 kg sugar\n\nBoil them.", "en_GB", "a big pan"),
        (
            "Ingredients\nEquipment: a big pan\n1 kg plums\n1 kg sugar\n\nMethod\nBoil them.",
            "en_GB",
            "a big pan",
        ),
        ("Geräte: ein großer Topf\n\n1 kg Pflaumen\n1 kg Zucker\n\nKochen.", "de_DE", "Topf"),
        ("Benodigdheden: een grote pan\n\n1 kg pruimen\n1 kg suiker\n\nKoken.", "nl_NL", "pan"),
    ],
)
def test_what_stands_behind_equipment_above_a_list_is_none_of_it(
    text: str, language: str, tool: str
) -> None:
    (found,) = brought(f"Plum jam\n\n{text}\n", language)
    assert len(listed(found)) == 2
    assert tool in found.text.split("\n---\n")[1]


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


@pytest.mark.parametrize("head", ["INGREDIENES:", "Ingrediants", "Zutatten:", "Ingridients"])
def test_a_misprinted_head_heads_the_list(head: str) -> None:
    (found,) = brought(
        f"Mermelada de tomate\n\n{head}\n1 kg de tomates\n500 g de azúcar\n\nHervir todo.\n",
        "es_ES",
    )
    assert fact(found, "title") == "Mermelada de tomate"
    assert listed(found) == ["1 kg de tomates", "500 g de azúcar"]
