"""Several recipes on one sheet, parted by heads of one form: marks, capitals, numbers, dashes.

Measured on 65 papers of others with 241 recipes (23 books of 1740 to 1950 in seven languages,
pages, leaflets), expectations fixed before the code (November 2026); these are invented after them.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

PLUM = "Take four pounds of plums and three of sugar; boil them until the syrup is thick."
PEAR = "Pare six pounds of pears, put them into a quart of cider and stew them very gently."
MINT = "Stew four handfuls of mint in a quart of brandy for nine days, and then strain it."


def page(form: str, gap: str = "\n\n") -> str:
    names = ("Plum jam", "Pear preserve", "Mint cordial")
    told = (PLUM, PEAR, MINT)
    return gap.join(
        form.format(name=name, upper=name.upper(), number=number, told=text)
        for number, (name, text) in enumerate(zip(names, told, strict=True), 310)
    )


@pytest.mark.parametrize(
    "form",
    [
        "{upper}.--{told}",
        "{upper}.—{told}",
        "_{name}._--{told}",
        "{upper}.\n\n{told}",
        "{upper}\n\n{told}",
        "={name}.=\n\n{told}",
        "_{name}._\n\n{told}",
        "{number}. {name}.\n\n{told}",
        "{number}. _To make_ {upper}.\n\n{told}",
        "R. {number}. {name}. {told}",
        "                    {name}.\n\n{told}",
        "{name}: {told}",
        "{upper}. MRS. ANN VANE.\n\n{told}",
    ],
)
def test_heads_of_one_form_part_a_page_into_its_recipes(form: str) -> None:
    found = brought(page(form))
    assert [one.title for one in found] == ["Plum jam", "Pear preserve", "Mint cordial"]
    assert [steps(one) for one in found] == [[PLUM], [PEAR], [MINT]]


@pytest.mark.parametrize("gap", ["\n", "\n\n"])
def test_short_lines_that_name_their_kind_part_what_is_told(gap: str) -> None:
    found = brought(f"Plum jam{gap}{PLUM}\nPear jam{gap}{PEAR}\n")
    assert [one.title for one in found] == ["Plum jam", "Pear jam"]
    assert [steps(one) for one in found] == [[PLUM], [PEAR]]


def test_what_heads_nothing_is_a_sections_head_and_what_stands_twice_a_label() -> None:
    sweet = "PLUM DROPS.\n\n2 lbs. sugar\n1 pint plum juice\n\nPROCESS.--Boil it to the crack."
    other = "PEAR DROPS.\n\n3 lbs. sugar\n1 pint pear juice\n\nPROCESS.--Boil it as before."
    found = brought(f"CHAPTER IV. SWEETS\n\n{sweet}\n\nPRESERVES.\n\n{other}\n", "en_US")
    assert [one.title for one in found] == ["Plum drops", "Pear drops"]
    assert [len(listed(one)) for one in found] == [2, 2]
    assert not any("PRESERVES" in one.text for one in found)


def test_a_name_below_its_title_or_behind_it_is_whose_it_is() -> None:
    text = f"PLUM JAM.\n\nMISS VANE.\n\n{PLUM}\n\nPEAR JAM. MRS. DR. FINCH.\n\n{PEAR}\n"
    first, second = brought(text)
    assert (first.title, second.title) == ("Plum jam", "Pear jam")
    assert (fact(first, "author"), fact(second, "author")) == ("Miss Vane", "Mrs. Dr. Finch")


def test_a_short_recipe_that_leads_to_another_is_its_own() -> None:
    text = (
        f"PLUM JELLY.\n\n{PLUM}\n\nSLOE JELLY.\n\nMake the same as plum jelly.\n\nPEAR JELLY.\n\n"
    )
    found = brought(f"{text}{PEAR}\n")
    assert [one.title for one in found] == ["Plum jelly", "Sloe jelly", "Pear jelly"]
    assert steps(found[1]) == ["Make the same as plum jelly."]


def test_two_lists_below_one_head_are_one_recipe() -> None:
    double = "DOUBLE FUDGE\n\n2 cups sugar\n1 cup cream\n\nBoil seven minutes; pour into a tin.\n\n"
    more = "2 cups brown sugar\n1 cup cream\n\nBoil ten minutes; pour on top of the fudge.\n\n"
    found = brought(f"{double}{more}PLUM FUDGE\n\n3 cups sugar\n1 cup plums\n\nBoil it well.\n")
    assert [one.title for one in found] == ["Double fudge", "Plum fudge"]


@pytest.mark.parametrize(
    "text",
    [
        "Plum cake\n\nDOUGH\n\n500 g flour\n200 g butter\n\nKnead it well and let it rest.\n\n"
        "ICING\n\n200 g sugar\n1 egg white\n\nBeat it until it is stiff and spread it.\n",
        "Plum jam\n\n1 kg plums\n800 g sugar\n\n1. Stone the plums and cut them into pieces.\n"
        "2. Boil them with the sugar until the jam sets on a plate.\n3. Pot it while it is hot.\n",
        "Plum jam\n\n1 kg plums\n800 g sugar\n\nFor the syrup\n\n200 g sugar\n1 l water\n\n"
        "Boil the syrup. Add the plums and boil them until they are soft.\n",
        "Plum jam\n\n1 kg plums\n800 g sugar\n\n1. Boil the plums\nPut them into a pan with the"
        " sugar and boil them for an hour.\n\n2. Pot the jam\nFill it into jars while it is hot.\n",
    ],
    ids=["parts", "steps", "for a part", "headed steps"],
)
def test_heads_of_parts_and_numbered_steps_part_no_recipe(text: str) -> None:
    (found,) = brought(text)
    assert found.title in ("Plum cake", "Plum jam")


def test_the_end_of_another_recipe_above_the_first_head_is_told_and_left_out() -> None:
    tail = "pint of juice add one pound of sugar, and boil it until it is a syrup. Bottle it.\n\n"
    found = brought(f"WHAT TO DRINK\n\n62\n\n{tail}PLUM SHRUB\n\n{PLUM}\n\nPEAR SHRUB\n\n{PEAR}\n")
    assert [one.title for one in found] == ["Plum shrub", "Pear shrub"]
    assert "above the first of several recipes is left out" in asked(found[0])


def test_a_page_over_several_gives_way_to_the_numbered_head_of_the_one_it_has() -> None:
    (found,) = brought(
        "7 classic Norwegian biscuits\n\nThey are baked at the end of the year.\n\n1# Almond"
        " biscuits\n\nYou will need:\n\n200 g flour\n100 g butter\n\nKnead the dough and bake the"
        " biscuits for ten minutes.\n"
    )
    assert found.title == "Almond biscuits"


def test_a_list_whose_lines_end_in_a_sign_ends_with_its_last() -> None:
    commas = "PLUM FUDGE\n\n2 cups of sugar,\n1 cup of cream,\n1/4 a cake of plain chocolate.\n\n"
    stops = "PEAR DROPS\n\n4 lbs. sugar.\n2 pints water.\nSaffron colouring.\n\nBoil it well.\n"
    first, second = brought(f"{commas}Boil it until it is a fudge.\n\n{stops}", "en_US")
    assert listed(first)[-1] == "1/4 a cake of plain chocolate"
    assert listed(second)[-1] == "Saffron colouring."


@pytest.mark.parametrize(
    ("above", "title"),
    [
        ("× Expand Photo by Theresa Vane\n\nPlum jam\n\n", "Plum jam"),
        ("Plum jam\n\nPicture by Ann Berg\n\n", "Plum jam"),
        ("Plum jam [edit]\n\nIngredients [edit]\n\n", "Plum jam"),
        ("GOOD LUCK BEAN SOUP\n\n", "Good luck bean soup"),
        ("Plum jam\n\nWe love them all.\n\nFor 4 jars of jam\n\n", "Plum jam"),
    ],
)
def test_a_caption_a_mark_and_how_much_are_no_title(above: str, title: str) -> None:
    (found,) = brought(
        f"{above}1 kg plums\n800 g sugar\n\nBoil the plums with the sugar for an hour.\n"
    )
    assert found.title == title


def test_the_first_line_of_what_somebody_tells_is_no_title() -> None:
    (found,) = brought(
        "For years I have always made a DIY\nhamper for my friends, and they are fond of it.\n\n"
        "1 kg plums\n800 g sugar\n\nBoil the plums with the sugar for an hour.\n"
    )
    assert "No title was found" in asked(found)


def test_a_page_that_says_its_title_twice_is_one_recipe() -> None:
    story = "We boil it every year and give most of it away, for there is more than we can eat."
    text = f"Plum jam / Simple jam\n\n{story}\n\nPlum jam / Jam\n\n1 kg plums\n800 g sugar\n\n"
    (found,) = brought(f"{text}Boil the plums with the sugar for an hour.\n")
    assert found.title.startswith("Plum jam")


@pytest.mark.parametrize(
    "form",
    ["{number}. ={name}.= — {told}", "={name}.= — {told}", "_{name}._ No. {number}.\n\n{told}"],
)
def test_heads_with_a_number_and_marks_part_a_page(form: str) -> None:
    found = brought(page(form))
    assert [one.title.split(",")[0] for one in found] == [
        "Plum jam",
        "Pear preserve",
        "Mint cordial",
    ]


def test_short_lines_over_a_line_of_things_are_titles_in_any_words() -> None:
    told = "Mix it all well and let it stand in a cool place for one night."
    text = f"Old Friend\n\n2 cups flour, 1 cup sugar, 2 eggs\n\n{told}\n\nNew Neighbour\n\n"
    found = brought(f"{text}3 cups rye flour, 1 cup honey, 1 egg\n\n{told}\n", "en_US")
    assert [one.title for one in found] == ["Old Friend", "New Neighbour"]
    assert [len(listed(one)) for one in found] == [3, 3]


def test_two_lists_under_the_same_bare_head_with_methods_are_two_recipes() -> None:
    plums = "Ingredients\n\n1 kg plums\n800 g sugar\n\nMethod\n\n1. Boil the plums.\n2. Pot it.\n\n"
    milk = "Ingredients\n\n1 l milk\n100 g sugar\n\nMethod\n\n1. Warm it.\n"
    first, second = brought(f"{plums}And this is the other one:\n\n{milk}")
    assert listed(first) == ["1 kg plums", "800 g sugar"]
    assert listed(second) == ["1 l milk", "100 g sugar"]


def test_heads_within_a_method_are_none_of_recipes() -> None:
    text = "Membrillo\n\n1 kg membrillos\n500 g azúcar\n\nPreparación de los membrillos\n\n"
    told = "Lava bien los membrillos, retira las semillas y corta todo en trozos."
    (found,) = brought(f"{text}{told}\n\nCocción de los membrillos\n\n{told}\n")
    assert len(listed(found)) == 2


def test_main_ingredients_head_a_list_and_name_nothing() -> None:
    told = "Przygotowanie:\n- Ugotować.\n"
    (found,) = brought(f"Główne składniki\n- 1 kg dyni\n- 350 g cukru\n{told}")
    assert "No title was found" in asked(found)


def test_what_stands_amid_a_list_heads_nothing() -> None:
    sweets = (
        "6 lbs. sugar.\n2 quarts cream.\nEssence of vanilla.\n15 lbs. butter.\n4 lbs. glucose.\n"
    )
    first = f"CHOCOLATE CARAMELS.\n\n{sweets}\nPROCESS.--Boil it to the crack.\n\n"
    other = f"Vanilla caramels, best quality.\n\n{sweets}\nPROCESS.--Boil it as before.\n"
    found = brought(first + other, "en_US")
    assert all("vanilla" not in one.title.lower() or "caramel" in one.title for one in found)
