"""Steps, heads and times of brought methods: which lines are steps, and where each begins."""

from __future__ import annotations

import pytest

from bringing import papers
from bringing.drafts import list_of, one_of, steps_of


def test_more_amounts_amid_the_method_are_asked_about_and_not_lost() -> None:
    text = f"{papers.TEXT}\n50 g walnuts\n1 tsp rum\n"
    brought = one_of("note.txt", text.encode())
    assert "  - 50 g walnuts\n" in brought.text
    assert any("More amounts stand amid the method" in one.what for one in brought.questions)


@pytest.mark.parametrize(
    "head",
    [
        "Step-by-Step Instructions",
        "Zubereitung der Plätzchen:",
        "How I make it",
        "Method of making",
    ],
)
def test_a_method_is_known_by_other_heads(head: str) -> None:
    text = f"Plum jam\n\nIngredients\n1 kg plums\n1 kg sugar\n{head}\n1. Boil the plums.\n"
    found = one_of("a.txt", text.encode())
    assert f"- {head}" not in found.text
    assert "1. Boil the plums." in found.text
    assert head.rstrip(":") not in found.text.partition("## Method")[2]


def test_who_types_without_capitals_and_full_stops_begins_each_step_on_a_line() -> None:
    text = (
        "Plum jam\n\nPlums 2lb\nSugar: 1 3/4 lb\n\nput plums in pan w/ a splash of water\n"
        "simmer till soft, abt 20 mins\nAdd the sugar\nboil hard till it sets,\n"
        "and pot it\nmakes about 5 pots, keeps a year\n"
    )
    found = one_of("a.txt", text.encode())
    assert "- Plums 2lb\n" in found.text.replace('"', "")
    assert "makes: about 5 pots\n" in found.text
    steps = found.text.partition("## Method\n\n")[2].partition("\n\n")[0].splitlines()
    assert [step.partition(". ")[2] for step in steps] == [
        "put plums in pan w/ a splash of water",
        "simmer till soft, abt 20 mins",
        "Add the sugar",
        "boil hard till it sets, and pot it",
    ]


def test_what_a_page_says_of_keeping_stays_when_its_introduction_goes() -> None:
    page = (
        "<h1>Plum jam</h1><p>A long story.</p><p>Makes 4 jars. Eat it within 2 weeks.</p>"
        "<h2>Ingredients</h2><ul><li>1 kg plums</li><li>1 kg sugar</li></ul>"
        "<h2>Method</h2><ol><li>Boil them.</li></ol><p>Tip: use a wide pan.</p>"
        "<h2>Notes</h2><p>Lovely on toast.</p>"
    )
    found = one_of("a.html", page.encode())
    assert found.text.count("## Notes") == 1
    assert "Eat it within 2 weeks.\n\nUse a wide pan.\n\nLovely on toast.\n" in found.text
    assert "story" not in found.text
    assert any('write "keeps: 2 weeks unopened"' in one.mend for one in found.questions)


LIST = "Plum jam\n\n1 kg plums\n1 kg sugar\n\n"


@pytest.mark.parametrize(
    "method",
    [
        "Method\n1 Stone the plums\n2 Boil them hard\n3 Fill the jars\n",
        "Method\nA) Stone the plums\nB) Boil them hard\nC) Fill the jars\n",
        "Method\nStep one: Stone the plums\nStep two: Boil them hard\nStep three: Fill the jars\n",
        "Method\n1.\nStone the\nplums\n2.\nBoil them hard\n3.\nFill the jars\n",
        "Method\n-Stone the plums\n-Boil them hard\n-Fill the jars\n",
        "Method Plum jam:\n- Stone the plums\n- Boil them hard\n- Fill the jars\n",
    ],
)
def test_steps_are_told_apart_however_they_are_numbered(method: str) -> None:
    found = one_of("a.txt", f"{LIST}{method}".encode())
    assert steps_of(found.text) == ["Stone the plums", "Boil them hard", "Fill the jars"]
    assert "- 1 kg sugar\n---" in found.text.replace('"', "")


def test_a_step_that_begins_with_a_count_keeps_it() -> None:
    text = (
        f"{LIST}Method\nStone the plums.\n2 jars are warmed in the oven for ten minutes.\nFill.\n"
    )
    assert "2 jars are warmed in the oven for ten minutes." in steps_of(
        one_of("a.txt", text.encode()).text
    )


def test_a_method_behind_the_tools_is_the_method() -> None:
    text = (
        "Mead\n\nIngredients:\n- 3lbs of honey\n- yeast\n\nEquipment:\n- a boiler\n- airlock\n\n"
        "Firstly, bring one gallon of water to a boil.\nLet it ferment for about a month or so.\n"
    )
    found = one_of("a.txt", text.encode())
    assert len(steps_of(found.text)) == 2
    assert "## Equipment\n\na boiler\n\nairlock\n" in found.text


def test_how_much_is_no_title_and_times_are_no_steps() -> None:
    text = (
        "Zelf piccalilly maken\n\nRecept voor ongeveer 2 liter piccalilly\n\nIngredienten\n"
        "100 gram suiker\n15 grams mustard or turmeric of the best that you have.\n\n"
        "Details\nTotale tijd: 90 minuten\n\nBereiding\nKook alles.\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Zelf piccalilly maken"
    assert "makes: ongeveer 2 liter piccalilly" in found.text
    assert "15 grams mustard" in found.text.partition("ingredients:")[2].partition("\n---")[0]
    assert steps_of(found.text) == ["Kook alles."]


def test_the_time_of_a_method_is_no_step_of_it() -> None:
    text = (
        "Eierlikör\n- Zubereitung: 15 Min\n- 250 g Puderzucker\n- 8 Eigelb\n"
        "Zubereitung\nAlles rühren.\n"
    )
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Alles rühren."]


def test_times_beside_a_recipe_are_neither_its_title_nor_its_food_nor_its_steps() -> None:
    text = (
        "Liqueur de cassis\n\nMacération : 15 jours + un mois\n\nIngrédients\n"
        "pour deux litres de liqueur\n500 g de cassis\n400 g de sucre\n\nMatériels\nBocal\nÉtapes\n"
        "- Laisser macérer.\n- Filtrer.\nMacération\n2 à 3 semaines\nRepos\n2 semaines\n"
    )
    found = one_of("a.txt", text.encode())
    assert found.title == "Liqueur de cassis"
    assert "makes: deux litres de liqueur" in found.text
    assert list_of(found.text)[-1] == "400 g de sucre"
    assert steps_of(found.text) == ["Laisser macérer.", "Filtrer."]
    # how long it waits is told by no step: a note, and asked about
    assert "Macération: 2 à 3 semaines" in found.text.split("## Notes")[1]
    assert "How long it waits stands beside the method" in found.text


def test_a_numbered_step_may_begin_with_a_count() -> None:
    text = f"{LIST}Method\n1. Stone the plums.\n2. 3 plums are kept whole.\n3. Boil them.\n"
    assert steps_of(one_of("a.txt", text.encode()).text)[1] == "3 plums are kept whole."


@pytest.mark.parametrize("sign", ["1.) ", "1) ", "1: ", "1. "])
def test_however_steps_are_numbered_they_are_steps(sign: str) -> None:
    steps = "".join(
        f"{sign.replace('1', str(number))}{words}\n"
        for number, words in enumerate(("WASH the jars.", "BOIL the jam.", "FILL the jars."), 1)
    )
    text = (
        f"{LIST}Preparation\nStep 1\n{steps}Note: wear gloves.\n"
        f"*Boil 5 minutes more in the hills.\n"
    )
    found = one_of("a.txt", text.encode()).text
    assert steps_of(found) == ["WASH the jars.", "BOIL the jam.", "FILL the jars."]
    assert "Wear gloves." in found
    assert "Boil 5 minutes more in the hills." in found


def test_below_an_only_step_each_line_is_one() -> None:
    text = f"{LIST}Preparation\nStep 1\nWash the jars.\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Wash the jars.", "Boil the jam."]
    two = f"{LIST}Preparation\nStep 1\nWash the jars.\nStep 2\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", two.encode()).text) == ["Wash the jars.", "Boil the jam."]


def test_what_only_the_method_measures_is_asked_about() -> None:
    text = (
        "Mead\n\n3 lb honey\n1 lemon\n\n"
        "Add it to 2 litres of water. Add 10 g wine yeast and 1 cup of lemon juice.\n"
    )
    asked = [question.what for question in one_of("a.txt", text.encode()).questions]
    assert any('"2 litres of water", "10 g wine yeast"' in what for what in asked)
    plain = (
        "Jam\n\n1 kg plums\n800 g sugar\n\n"
        "Boil the plums with 400 g of the sugar in a 2 l pan for 10 minutes.\n"
    )
    asked = [question.what for question in one_of("a.txt", plain.encode()).questions]
    assert not any("method measures" in what for what in asked)


def test_heads_without_a_colon_before_what_they_head() -> None:
    text = (
        "Lemon curd\n\nIngredients 125g (4oz) butter\n\n175g (6oz) caster sugar\n\n"
        "2 medium eggs\n\n"
        "Method Put the butter and the sugar in a bowl over simmering water.\n\n"
        "Stir it until it thickens.\n"
    )
    assert list_of(text) == ["125g (4oz) butter", "175g (6oz) caster sugar", "2 medium eggs"]
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_numbers_that_stand_alone_are_no_steps() -> None:
    text = f"{LIST}Method\n-\n1\nWash the jars.\n-\n2\nBoil the jam.\n"
    assert steps_of(one_of("a.txt", text.encode()).text) == ["Wash the jars.", "Boil the jam."]


def test_headings_of_markdown_stay_headings() -> None:
    text = (
        "# Plum jam\n\n## Ingredients\n\n- 1 kg plums\n- 800 g sugar\n\n## Method\n\n1. Boil it.\n"
    )
    assert one_of("a.md", text.encode()).title == "Plum jam"


def test_sentences_with_bullets_behind_a_list_are_the_method() -> None:
    text = (
        "Ginger bug\nIngredients\nTo Start the Bug\n- 2 cups water\n- 2 tablespoons sugar\n"
        "Preparing the Bug\n- In a jar, combine the warm water and the sugar with a spoon.\n"
        "Using the Bug\n- To use the bug, strain some of the liquid into a bottle of juice.\n"
    )
    assert "In a jar" not in " ".join(list_of(text))
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_a_page_that_made_items_of_all_its_lines_has_its_method() -> None:
    text = (
        "Chestnuts\n- Ingredients\n- 1 kg of chestnuts\n- For the syrup:\n- 800 g of sugar\n"
        "- Instructions\n- Make a cut in the chestnuts.\n- Leave them in the pantry for a week.\n"
    )
    assert "Instructions" not in list_of(text)
    assert len(steps_of(one_of("a.txt", text.encode()).text)) == 2


def test_numbers_glued_to_their_steps_are_taken_off() -> None:
    text = f"{LIST}Preparazione:\n\n1Pulire i vasi.\n\n2Portare a bollore.\n\n3Riempire i vasi.\n"
    steps = steps_of(one_of("a.txt", text.encode()).text)
    assert steps == ["Pulire i vasi.", "Portare a bollore.", "Riempire i vasi."]
