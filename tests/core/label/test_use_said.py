"""A card takes its use from the tag's text in a method; one jar of a size is that jar.

The cookie mix is one of a newcomer's papers; the others from memory of such gifts.
"""

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.safety import assess_safety
from stillroom.core.method.foods_in_method import foods_in_method
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


WET = "1/2 cup melted butter with 1 egg and 1 tsp vanilla"
# first: sweetpeapatisserie.blogspot.com, September 2008; second: untrainedhousewife.com, the fudge
# cake in a jar (its words shortened); the others from memory of such gifts
TAGS = [
    f"Make a tag with the following instructions: Preheat oven to 350°. Beat {WET}. Bake.",
    "Place it in the jar. Attach these directions: Pour all of the contents of the jar into a bowl."
    " Add 1 cup of softened butter and 5 eggs. Bake for 30 minutes.",
    f"Instructions to attach to jar: Beat {WET}. Add the contents of the jar. Bake.",
    "Schreibe auf ein Etikett: 125 g weiche Butter und 1 Ei verrühren, die Mischung unterkneten.",
    "Collez une étiquette avec le mode d'emploi : ajouter 1 œuf et 100 g de beurre fondu, cuire.",
    "Pega una etiqueta con las instrucciones: añadir 1 huevo y 100 g de mantequilla, hornear.",
    "Attaccate un'etichetta con le istruzioni: aggiungere 1 uovo e 100 g di burro, cuocere.",
    "Maak een kaartje met de bereiding: voeg 1 ei en 100 g boter toe en bak.",
]


@pytest.mark.parametrize("tag", TAGS)
def test_what_the_tag_tells_to_add_is_in_no_jar(tag: str) -> None:
    said = {"ingredients": ["250 g plain flour", "100 g sugar"], "method": ["Layer it.", tag]}
    recipe = recipe_of({**MIX, "title": "Cookie mix", **said})
    assert recipe.card.use
    assert [one.ingredient.item for one in foods_in_method(recipe)] == []
    box = assess_safety(recipe, BookSettings())
    assert {one.rule for one in box.cautions} & {"raw-egg", "hot-glass"} == set()
    assert "raw-flour" in {one.rule for one in box.cautions}


@pytest.mark.parametrize(
    ("method", "foods"),
    [
        (["Tie on a label: Merry Christmas! Top the jar with 50 g almonds."], ["almonds"]),
        (["Attach a label: bake with 1 egg. Top the jar with 50 g almonds and seal."], ["almonds"]),
        (["Beat in 1 egg and dry it. Make a tag with the following: Bake it."], ["egg"]),
    ],
)
def test_what_the_maker_puts_in_beside_the_tag_is_in_it(
    method: list[str], foods: list[str]
) -> None:
    recipe = recipe_of({**MIX, "method": method})
    assert [one.ingredient.item for one in foods_in_method(recipe)] == foods


def test_of_what_is_no_dry_mix_the_tag_hides_nothing() -> None:
    said = {"title": "Plum jam", "kind": "jam", "ingredients": ["1 kg plums", "1 kg sugar"]}
    recipe = recipe_of({**said, "method": ["Boil. Add a label: warm it. Stir in 50 g almonds."]})
    assert [one.ingredient.item for one in foods_in_method(recipe)] == ["almonds"]
