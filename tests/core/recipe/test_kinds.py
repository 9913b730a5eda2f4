"""Everyday words lead to a kind, or to a question; what animals eat is never people's food."""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kinds import all_kinds, find_kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.problems import Unreadable

# a cook's word -> its kind; fixed before the tables were filled, in British and American spelling
WORDS = {
    "infusion": "liqueur|liqueurs|Liqueur|sloe-gin|damson gin|tincture|tinctures|bitters|limoncello"
    "|ratafia|vanilla extract|extracts|flavored vodka|flavoured gin|infused rum|essence",
    "infused sugar": "vanilla sugar|lavender sugar|flavored sugar|Scented sugars",
    "infused salt": "herb salt|celery salt|chili salt|flavoured salts|rosemary salt",
    "preserve": "jam|Jams|a jam|homemade jam|jelly|jellies|marmalade|marmalades|chutney|chutneys"
    "|relish|relishes|ketchup|lemon curd|apple butter|mincemeat|membrillo|quince paste|compote"
    "|syrup|syrups|squash|squashes|piccalilli|pickled onions|sauce|tomato sauce|mustard|salsa",
    "ferment": "mead|wine|country wine|cider|hard cider|perry|beer|ginger beer|kombucha|kefir",
    "dry mix": "soup mix|soup mixes|spice mix|spice blend|tea|tea blend|herbal tea|rub|dry rub"
    "|cookie mix|hot chocolate mix|muesli|curry powder|garam masala|dried fruit|trail mix",
    "bake": "cookie|cookies|biscuit|biscuits|cake|cakes|bread|breads|loaf|loaves|shortbread"
    "|gingerbread|brownie|brownies|muffins|scones|crackers|oatcakes|granola|biscotti|mince pies"
    "|pies|tart|meringues|stollen|panettone|macarons|flapjacks|Christmas cake|cupcakes",
    "confection": "sweet|sweets|candy|candies|fudge|toffee|toffees|truffle|truffles|caramels"
    "|chocolates|brittle|peanut brittle|marshmallows|nougat|marzipan|Turkish delight|honeycomb"
    "|candied peel|lollipops|peppermint creams|fruit leather|tablet|taffy|gumdrops|humbugs",
    "craft": "soap|soaps|candle|candles|bath salts|bath bombs|potpourri|pot pourri|pot-pourri"
    "|wreath|wreaths|garlands|bauble|ornaments|lip balm|body scrub|sugar scrub|beeswax wraps"
    "|knitted socks|knitted scarf|crocheted bag|sewn apron|scarves|mittens|sachets|room spray"
    "|bird feeder|felted bauble|greeting cards|jewelry|quilts|macrame hanger",
    "pet treat": "dog treats|dog biscuits|Dog biscuit|cat treats|pet food|horse treats|bird cakes",
}
PAIRS = [(word, kind) for kind, words in WORDS.items() for word in words.split("|")]
# what may be two kinds, or brings dates that are not its own: asked, never chosen
ASKED = """pickle|pickles|vinegar|vinegars|cordial|cordials|shrub|hot sauce|chili sauce|honey|nuts
spiced nuts|sauerkraut|kimchi|sourdough starter|yogurt|flavoured oil|chilli oil|garlic oil
chili oil|advocaat|cream liqueur|pesto|peanut butter|salt|sugar|butter|treats|pudding
preserved lemons|rumtopf|mulled wine|energy balls|miso|gherkins|scrub""".replace("\n", "|").split(
    "|"
)


@pytest.mark.parametrize(("word", "kind"), PAIRS)
def test_a_word_leads_to_its_kind(word: str, kind: str) -> None:
    assert find_kind(word).name == kind


@pytest.mark.parametrize("word", ASKED)
def test_a_word_of_two_kinds_is_asked_about(word: str) -> None:
    with pytest.raises(Unreadable) as asked:
        find_kind(word)
    assert asked.value.what.startswith(f'"{word}" ')
    assert 'rite "kind: ' in asked.value.mend


# a word no table has -> what its message must offer
NEAREST = {
    "blackcurrant jam": 'Write "kind: preserve" if it is a jam.',
    "infuson": 'Did you mean "infusion"?',
    "chutny": 'Did you mean "chutney"? It is the kind "preserve".',
    "doggy biscuits": 'Write "kind: pet treat" if animals eat it.',
    "the dogs' biscuits": 'Write "kind: pet treat" if animals eat it.',
    "brandy butter": 'Write "kind: preserve" for one of fruit or for the table',
    "granny's smoked fish": "knows no safe way to give it",
    "hot dog relish": 'Write "kind: pet treat" if animals eat it.',
    "dog soap": 'Write "kind: pet treat" if animals eat it.',
    "xyzzy": "It may be: infusion",
    "": "It may be: infusion",
    "rose petal jelly": 'Write "kind: preserve" if it is a jelly.',
    "rosemary garlic oil": "in oil can poison: a few days in the fridge, never the shelf",
    "whole lemon pickle": 'Write "kind: preserve" if vinegar keeps it',
}


@pytest.mark.parametrize("word", NEAREST)
def test_a_word_that_is_not_known_gets_the_nearest(word: str) -> None:
    with pytest.raises(Unreadable) as asked:
        find_kind(word)
    assert asked.value.what == f'"{word}" is not a kind.'
    assert NEAREST[word] in asked.value.mend


def test_there_are_words_enough_and_none_leads_two_ways() -> None:
    rows = read_data("kinds.yml")
    words = [word for name, row in rows.items() for word in (name, *row.get("also", []))]
    table = read_data("kind_words.yml")
    asked = [word for group in ("either", "own") for row in table[group] for word in row["words"]]
    assert len(words) + len(asked) >= 400
    assert sorted({word for word in words if words.count(word) > 1}) == []
    assert not set(words) & set(asked)
    for word, name in ((word, name) for name, row in rows.items() for word in row.get("also", [])):
        assert find_kind(word).name == name
    for group in ("either", "own"):
        for row in table[group]:
            for word in row["words"]:
                with pytest.raises(Unreadable):
                    find_kind(word)


def test_the_cooks_word_is_what_the_page_calls_it() -> None:
    assert (find_kind("Jams").spoken, find_kind("preserve").spoken) == ("jam", "preserve")


TREAT = """---
title: Carrot bones
kind: {kind}
makes: 24 bones
ingredients:
  - 200 g oat flour
  - 100 g carrots
  - 1 egg
keeps: 4 weeks
---

## Method

1. Mix {{oat flour}}, {{carrots}} and {{egg}}, and bake until hard.
"""


def treat(kind: str = "dog biscuits") -> Recipe:
    return read_recipe(TREAT.format(kind=kind), "bones.md", "bones")


def test_only_a_treat_for_animals_is_eaten_by_them() -> None:
    eaters = {name: kind.eaten_by for name, kind in all_kinds().items()}
    assert [name for name, who in eaters.items() if who == "pets"] == ["pet treat"]
    assert [name for name, who in eaters.items() if who == "nobody"] == ["craft"]


def test_what_animals_eat_is_no_food_of_peoples() -> None:
    from stillroom.core.book import BookSettings
    from stillroom.core.care.safety import assess_safety
    from stillroom.core.label.labelling import label_recipe

    recipe = treat()
    assert recipe.kind.is_eaten
    assert not recipe.kind.edible
    label = label_recipe(recipe, BookSettings())
    assert label.contents
    # whoever feeds it has it in the hand, and an animal may be allergic too
    assert label.allergens
    assert label.free_from == ()
    assert recipe.kind.contents_heading == "For animals, not people"
    box = assess_safety(recipe, BookSettings())
    assert "pet-treat" in [caution.rule for caution in box.cautions]
    assert "vet" in box.deference


def test_the_same_for_people_has_its_allergens() -> None:
    from stillroom.core.book import BookSettings
    from stillroom.core.label.labelling import label_recipe

    label = label_recipe(treat("biscuits"), BookSettings())
    assert label.allergens
