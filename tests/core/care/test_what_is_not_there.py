"""What pages of strangers made the book say that was not so: a food that is none, a heat of nothing.

The cases are recipes read on 30 November 2026, each named beside it, the expectation fixed before
the book was asked; beside each stands one where the same words do mean it.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe

BOOK = BookSettings()


def _contents(title: str, kind: str, lines: list[str], *steps: str) -> str:
    recipe = recipe_of({"title": title, "kind": kind, "ingredients": lines, "method": list(steps)})
    return " | ".join(one.text for one in label_recipe(recipe, BOOK).contents).casefold()


def _said(title: str, kind: str, lines: list[str], *steps: str) -> set[str]:
    recipe = recipe_of({"title": title, "kind": kind, "ingredients": lines, "method": list(steps)})
    box = assess_safety(recipe, BOOK)
    return {one.rule for one in (*box.cautions, *box.refusals)}


RAMSONS = ["120 g Bärlauch", "120 g Olivenöl", "90 g Walnüsse"]


# title, kind, list, method, what stands among the contents, and what does not
@pytest.mark.parametrize(
    ("title", "kind", "lines", "method", "there", "not_there"),
    [
        # gesundmitnatur.at: the pesto of its title brought milk
        ("Bärlauchpesto", "preserve", RAMSONS, "Mixen. Das Pesto in Gläser füllen.", "", "milk"),
        ("Nudeln mit Pesto", "preserve", ["1 kg Nudeln"], "Das Pesto unterrühren.", "milk", ""),
        ("Courgette pesto", "preserve", ["1 courgette"], "Blend. Stir in pesto.", "milk", ""),
        # mehlspeiskoenig.at: advocaat was an ingredient of itself
        ("Eierlikör", "infusion", ["5 Eidotter", "200 ml Rum, 40% vol"], "Rühren. Den Eierlikör kühl aufbewahren.", "", "likör"),
        # curingandsmoking.blogspot.com
        ("Homemade bacon", "preserve", ["2 kg pork belly", "40 g salt"], "Smoke. Cool the bacon.", "", "bacon"),
        ("Bacon jam", "preserve", ["200 g onions", "100 g sugar"], "Fry the bacon, add the onions.", "bacon", ""),
        # earthdancefarm.net
        ("Hot sauce", "ferment", ["300 g hot peppers", "10 g salt"], "The hot sauce will store for months.", "", "hot sauce"),
        # younggums.com: oats that are ground are no wheat
        ("Biscuits", "bake", ["100 g oats"], "Whizz the oats until you have fine flour. Bake.", "", "wheat"),
        ("Kekse", "bake", ["100 g Haferflocken"], "Haferflocken zu feinem Mehl mahlen. Backen.", "", "wheat"),
        ("Biscuits", "bake", ["100 g oats"], "Whizz the oats. Add flour until it is stiff. Bake.", "wheat", ""),
        # holisticole.com: a clove of garlic is no spice
        ("Honey", "infusion", ["1 head garlic", "300 g honey"], "Crush each clove.", "", "cloves"),
        ("Onion", "preserve", ["1 onion", "300 ml vinegar"], "Add 5 g cloves.", "cloves", ""),
    ],
)  # fmt: skip
def test_what_is_made_is_no_part_of_itself(
    title: str, kind: str, lines: list[str], method: str, there: str, not_there: str
) -> None:
    found = _contents(title, kind, lines, method)
    assert there in found
    assert not (not_there and not_there in found)


MIX = ["200 g plain flour", "1 tsp baking powder", "100 g brown sugar", "100 g oats"]


@pytest.mark.parametrize(
    "steps",
    [
        # electricscotland.com, and others of its family
        ("Attach the following baking instructions to the jar.", "110 g butter, 1 egg. Heat oven. Add butter and egg. Bake."),
        ("Attach a card with these directions.", "Beat 110 g butter with 1 egg. Stir in the mix. Bake."),
        ("Include this recipe with the jar.", "Cookies: Cream 110 g butter and 1 egg. Add jar contents."),
        ("Print the baking instructions and tie them on.", "Add 110 g melted butter and 1 egg. Bake."),
        ("Instructions for baking", "Mix with 110 g butter and 1 egg. Bake for 10 minutes."),
        ("Baking directions: Beat 110 g butter with 1 egg and add the contents of the jar.",),
    ],
)  # fmt: skip
def test_directions_handed_on_are_not_the_makers(steps: tuple[str, ...]) -> None:
    found = _contents("Cookie mix in a jar", "dry mix", MIX, "Layer it all in a jar.", *steps)
    assert "butter" not in found
    assert "egg" not in found


def test_what_goes_in_before_the_jar_is_closed_does() -> None:
    step = "Toast the oats in 20 g butter and let them cool, then layer in the jar."
    assert "butter (" in _contents("Cookie mix in a jar", "dry mix", MIX, "Mix the rest.", step)


GARLIC_HONEY = ["2 heads garlic", "300 g raw honey"]
PEPPERS = ["300 g peppers", "240 ml water", "15 g salt"]
JERKY = ["1 kg venison", "100 g salt"]
COFFEE = ["400 ml water", "400 g sugar", "1 vanilla pod", "350 ml vodka, 40% vol"]
MEAD = ["1.4 kg honey", "4 l water", "10 g wine yeast"]
SAUCE = ["10 kg tomatoes", "1 kg minced beef", "200 g onions"]
KOMBUCHA = ["2 l kombucha", "20 g fresh ginger", "20 g sugar"]
PATE = ["1 kg pork", "200 g onions", "20 g salt"]
GUIDE = "Process in a pressure canner by the USDA guide: pints 60 minutes at 11 lb."


# rule, whether it speaks, the recipe
@pytest.mark.parametrize(
    ("rule", "speaks", "kind", "lines", "steps"),
    [
        # homesteadingsuburbia.com: only the empty jar meets boiling water
        ("hot-glass", False, "ferment", GARLIC_HONEY, ["Sterilize the mason jar and lid by dipping it into boiling water.", "Fill the jar with garlic and honey."]),
        ("hot-glass", True, "preserve", ["1 kg apples", "500 g sugar"], ["Boil. Pour into hot jars."]),
        ("hot-glass", True, "preserve", ["1 kg beans", "1 l vinegar"], ["Fill the jars. Sterilise the filled jars in boiling water for an hour."]),
        # earthdancefarm.net: a blender processes, and no jar stands in it
        ("hot-glass", False, "ferment", PEPPERS, ["Put them in a jar.", "Process until smooth.", "Keep in the fridge."]),
        # keyingredient.com: heated when it was dry
        ("hot-glass", False, "preserve", JERKY, ["Place in a dehydrator until it cracks when bent.", "Cook for 10 minutes at 80 C."]),
        # thecoffeebloke.blogspot.com: the syrup is cold when they meet
        ("spirit-heated", False, "infusion", COFFEE, ["Boil the water and sugar. Add the vanilla to the vodka; then combine the cooled syrup with the vodka."]),
        ("spirit-heated", True, "infusion", COFFEE, ["Boil the water and sugar. Add the vodka and the vanilla."]),
        # lighthacker.org: the yeast goes in with the honey
        ("resugared-glass", False, "ferment", MEAD, ["Prepare a bottle that can take a fermentation lock.", "Pour in the honey solution, add the yeast. Close the bottle with the lock."]),
        ("resugared-glass", True, "ferment", MEAD, ["Mix all and ferment for 4 weeks.", "Add 2 tbsp sugar, and cap the bottles."]),
        # makehealthierchoices.com: ginger in a drink is no crock of vegetables
        ("vegetable-ferment", False, "ferment", KOMBUCHA, ["Bottle it all and leave overnight."]),
        ("vegetable-ferment", True, "ferment", PEPPERS, ["Leave for 2 weeks."]),
        # astray.com, after USDA AIB 539: a guide's pressure needs no lemon
        ("borderline-acid-bare", False, "preserve", SAUCE, ["Boil until thick. Fill jars.", GUIDE]),
        ("borderline-acid-bare", True, "preserve", SAUCE, ["Boil until thick. Fill jars and seal."]),
        # secretsculinaires.com: two hours at 100 °C are cooked
        ("raw-meat-fish", False, "preserve", PATE, ["Mélanger et remplir les bocaux. Stériliser les bocaux à 100°C pendant 2 heures."]),
        ("raw-meat-fish", True, "preserve", PATE, ["Mélanger, saler et suspendre à 12 °C pendant 5 jours."]),
        # 3catsfoodie.com: 80 g of syrup in a pan of raspberries
        ("boiling-sugar", False, "preserve", ["300 g raspberries", "80 g agave syrup"], ["Bring to the boil."]),
        ("boiling-sugar", True, "preserve", ["300 g raspberries", "200 g sugar"], ["Bring to the boil."]),
        # asckat.com: milk boils away, and what went in with 23 % of sugar is a caramel
        ("boiling-sugar", True, "confection", ["1 l whole milk", "300 g sugar"], ["Cocina a fuego bajo durante 1 hora y media."]),
        ("boiling-sugar", True, "confection", ["1 l whole milk", "300 g sugar"], ["Cook over low heat for 2 hours, stirring."]),
        ("boiling-sugar", False, "confection", ["1 l whole milk", "300 g sugar"], ["Warm the milk, stir in the sugar, leave for 2 hours."]),
        # foodandwine.ie
        ("flaming", True, "preserve", ["225 g chicken livers", "30 ml brandy, 40% vol"], ["Fry, add the brandy, allow to flame."]),
        ("flaming", False, "preserve", ["225 g chicken livers", "30 ml brandy, 40% vol"], ["Fry over a low flame, add the brandy."]),
        # eatplaycook.blogspot.com, and chilli oils of its family
        ("hot-oil", True, "infusion", ["1500 ml olive oil", "60 g dried chilli flakes"], ["Heat oil until a thermometer inserted in oil reads 300-350 degrees F. Add the flakes."]),
        ("hot-oil", True, "infusion", ["1500 ml oil", "60 g dried chilli flakes"], ["Pour the oil over the flakes while still hot."]),
        ("hot-oil", False, "infusion", ["1500 ml olive oil", "60 g dried chilli flakes"], ["Warm the oil gently to 60 C with the flakes."]),
        # cakesbymartyn.com: a curd over its pan is cooked; a mousse that is whisked is not
        ("raw-egg", False, "preserve", ["240 g eggs", "5 lemons", "350 g sugar"], ["Place a bowl onto the saucepan.", "Put the eggs in the bowl, add the rest and stir constantly until the mixture thickens."]),
        ("raw-egg", True, "preserve", ["240 g eggs", "5 lemons", "350 g sugar"], ["Whisk the eggs and sugar until thick, stir in the juice."]),
    ],
)  # fmt: skip
def test_a_rule_speaks_of_what_is_done(
    rule: str, speaks: bool, kind: str, lines: list[str], steps: list[str]
) -> None:
    assert (rule in _said("Something", kind, lines, *steps)) is speaks


@pytest.mark.parametrize(("lines", "speaks"), [(["200 ml epoxy resin"], False), ([], True)])
def test_flowers_in_resin_do_not_catch_fire(lines: list[str], speaks: bool) -> None:
    """tongyitangusa.com, Flowers in epoxy resin."""
    found = _said("Flowers for a wreath", "craft", ["1 handful dried flowers", *lines], "Lay them.")
    assert ("dry-decoration" in found) is speaks
