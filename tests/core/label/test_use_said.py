"""A card takes its use from the tag's text in a method; one jar of a size is that jar.

The cookie mix is one of a newcomer's papers; the others from memory of such gifts.
"""

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.safety import assess_safety
from stillroom.core.recipe.holders import container_made, read_makes
from stillroom.core.recipe.settings import BookSettings

MIX = {"title": "Soup mix", "kind": "dry mix", "ingredients": ["200 g lentils"]}
COOKIES = [
    "Layer in a clean quart mason jar in the order given, pressing down firmly.",
    "Attach a tag: Empty jar into a bowl. Add 1 stick melted butter, 1 egg, and 1 tsp vanilla. Mix,"
    " roll into balls and bake at 350°F for 10-12 minutes. Makes 2 1/2 dozen.",
]


@pytest.mark.parametrize(
    ("steps", "use"),
    [
        (COOKIES, COOKIES[1].removeprefix("Attach a tag: ")),
        (["Layer. On the card: simmer with 1 l water."], "Simmer with 1 l water."),
        (["Write on the label: “Stir 2 tsp into hot milk.”"], "Stir 2 tsp into hot milk."),
        (["Auf das Etikett schreiben: Mit 1 l Wasser kochen."], "Mit 1 l Wasser kochen."),
        (["Étiquette : ajouter 1 œuf et cuire."], "Ajouter 1 œuf et cuire."),
        (["To the label add the following instructions: Bake it."], "Bake it."),
        (["Tie on a label: Merry Christmas!"], ""),
        (["Cover with a lid, label: name and date."], ""),
        (["Label with the date: use within 6 months."], ""),
        (["Tag: add {lentils} and boil."], ""),
        (["Add the date to the label."], ""),
    ],
)
def test_a_tag_in_the_method_is_the_cards_use(steps: list[str], use: str) -> None:
    assert recipe_of({**MIX, "method": steps}).card.use == use


def test_what_the_maker_wrote_goes_before_it() -> None:
    recipe = recipe_of({**MIX, "method": COOKIES, "card": {"use": "Boil it."}})
    assert recipe.card.use == "Boil it."


def test_what_whoever_is_given_it_bakes_makes_no_glass_hot() -> None:
    said = {"ingredients": ["250 g plain flour", "100 g sugar"], "method": COOKIES}
    box = assess_safety(recipe_of({**MIX, **said}), BookSettings())
    assert "hot-glass" not in {one.rule for one in box.cautions}
    poured = {**said, "method": ["Boil the sugar.", "Pour it hot into the jar."]}
    box = assess_safety(recipe_of({**MIX, **poured}), BookSettings())
    assert "hot-glass" in {one.rule for one in box.cautions}


@pytest.mark.parametrize(
    ("text", "name", "unit"),
    [
        ("1 quart jar", "jar", "us_quart"),
        ("one quart mason jar", "jar", "us_quart"),
        ("a pint jar", "jar", "us_pint"),
        ("500 ml bottle", "bottle", "ml"),
        ("1.5 l Kilner jar", "jar", "l"),
    ],
)
def test_one_jar_of_a_size_is_that_jar(text: str, name: str, unit: str) -> None:
    makes = read_makes(text, "us")
    held = container_made(makes)
    assert held is not None
    assert held.size is not None
    assert (held.name, held.size.unit, makes.amount.middle) == (name, unit, 1)


@pytest.mark.parametrize("text", ["1 quart", "900 g in a jar", "250 g fudge"])
def test_what_names_no_jar_of_a_size_is_measured(text: str) -> None:
    assert read_makes(text, "us").each is None
