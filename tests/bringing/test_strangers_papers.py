"""Lists in papers as strangers type and save them, by class: what each line is, and what it is not.

The classes were found in 38 saved pages, letters and texts of seven sorts of site and in six
languages (November 2026), read with expectations written before; the texts here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps


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


@pytest.mark.parametrize(("line", "says"), [("175m milk", "length"), ("1# butter", "pounds")])
def test_lost_letters_and_signs_are_asked_about(line: str, says: str) -> None:
    (found,) = brought(f"Scones\n\n{line}\n200 g flour\n\nMix the two of them and bake at once.\n")
    assert says in asked(found)
    (found,) = brought("Garland\n\n5 m ribbon\n20 m string\n\nKnot the ribbon along the string.\n")
    assert "length" not in asked(found)


def test_a_list_on_one_line_between_dots_is_a_list() -> None:
    (found,) = brought(
        "Honigkuchen\n\nZutaten: • 250 g Zucker, braun • 4 Eier • 1 Prise Salz\n"
        "Zucker und Eier rühren und alles bei 180 Grad backen.\n",
        "de_DE",
    )
    assert found.title == "Honigkuchen"
    assert listed(found) == ["250 g Zucker, braun", "4 Eier", "1 Prise Salz"]


def test_the_head_right_above_the_first_amounts_heads_them() -> None:
    (found,) = brought(
        "Orangettes\nPour les oranges confites :\n4 oranges\n250 g de sucre\n"
        "Pour l'enrobage au chocolat:\n100 g de chocolat noir\n"
        "Couper les oranges en deux et les cuire dans le sucre.\n",
        "fr_FR",
    )
    assert listed(found)[0] == "Pour les oranges confites:"


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


def test_what_leads_to_each_thing_is_no_part_of_it() -> None:
    (found,) = brought(
        "Damson gin\n\nIngredients of Damson Gin\n- You need 1 kg of damsons.\n- Prepare 1 kg "
        "of sugar.\n"
        "- It's 1 l of gin.\nMethod\n- Layer the damsons and the sugar in a jar.\n"
    )
    assert listed(found) == ["1 kg of damsons", "1 kg of sugar", "1 l of gin"]


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


@pytest.mark.parametrize("head", ["INGREDIENES:", "Ingrediants", "Zutatten:", "Ingridients"])
def test_a_misprinted_head_heads_the_list(head: str) -> None:
    (found,) = brought(
        f"Mermelada de tomate\n\n{head}\n1 kg de tomates\n500 g de azúcar\n\nHervir todo.\n",
        "es_ES",
    )
    assert fact(found, "title") == "Mermelada de tomate"
    assert listed(found) == ["1 kg de tomates", "500 g de azúcar"]
