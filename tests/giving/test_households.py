"""More than sixty households, as they would write themselves, against fifty presents: two-sided.

Nothing that must be refused is let through, and nothing that is theirs is withheld but what
stands in `WITHHELD`, each with why. That list may only shrink.
"""

from __future__ import annotations

import re
from functools import cache

import pytest

from giving.households import Outcome, household_of, outcomes, presents, rows
from giving.lists import TODAY, demo_book, demo_recipes, read_dict, small_list
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.book import BookSettings
from stillroom.core.care.safety_table import all_rules
from stillroom.core.lines.staple_table import all_staples
from stillroom.giving.facts import facts_of
from stillroom.giving.label_words import label_words, words_showing
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.receivers import receivers_of
from stillroom.giving.rules import check_twice, why_refused
from stillroom.giving.second_check import needs_of_household, print_label

# household and present ("*" any), and why it is withheld all the same
WITHHELD = {
    ("*", "sprinkle-biscuits"): "sweets of which only the packet tells",
    ("*", "xmas-pudding"): "breadcrumbs and stout of which only the packet tells",
    ("*", "soup-mix"): "a stock powder of which only the packet tells",
    ("*", "chorizo-jam"): "a sausage of which only the packet tells",
    ("sulphites", "pistachio-bark"): "dried raspberries are taken for sulphited dried fruit",
}


@cache
def found() -> list[Outcome]:
    return list(outcomes())


def test_every_household_is_read():
    assert [one for one in found() if one.wrong == "unread"] == []
    assert len({one.household for one in found()}) == len(rows("households.yml")) >= 60
    assert len(presents()) >= 40


def test_nothing_goes_to_whom_it_would_harm():
    assert [(one.household, one.present) for one in found() if one.wrong == "unsafe"] == []


def test_nothing_is_refused_for_nothing():
    kept = [one for one in found() if one.wrong == "refused for nothing"]
    new = [
        (one.household, one.present, one.reasons)
        for one in kept
        if (one.household, one.present) not in WITHHELD and ("*", one.present) not in WITHHELD
    ]
    assert new == []
    named = {(one.household, one.present) for one in kept}
    gone = [row for row in WITHHELD if row[0] != "*" and row not in named]
    assert gone == []


def test_the_two_checks_agree_on_every_present_of_the_table():
    """They are made in different ways, and here are right alike."""
    apart = []
    for row in rows("households.yml"):
        for avoid in needs_of_household(household_of(row)):
            for name, (_, recipe) in presents().items():
                pair = check_twice(recipe, avoid, print_label(recipe, BookSettings()))
                if {"free", "contains"} <= set(pair):
                    apart.append((row["name"], name, pair))
    assert apart == []


def test_a_disagreement_withholds_the_gift_and_is_told():
    """The word "honeyed" of a food that its maker calls plain stands for a fault of the larder."""
    row = {"name": "A", "avoid": ["milk"], "never": []}
    _, recipe = presents()["plum-jam"]
    line = recipe.ingredients[0]
    spoiled = line.__class__(**{**line.__dict__, "item": "plums in whey"})
    wrong = recipe.model_copy(update={"ingredients": (spoiled, *recipe.ingredients[1:])})
    told = why_refused(household_of(row), facts_of(wrong), TODAY)
    assert [reason.one for reason in told if reason.disagrees] == [
        "contains milk by the words of its label (“whey”), and not by what it is made of: "
        "the two checks disagree"
    ]


# needs of label_words.yml that are no allergen, and what the larder says of a food that has them
ANIMALS = {"insect": "insect", "beeswax": "beeswax", "honey": "honey", "meat": "meat"}
# the printed words find what the larder does not; each was looked at, and the words are right
WORDS_KNOW_BETTER = {
    "nuts": {"nougat paste", "praline paste"},
    "soya": {"lupin tofu"},
    # extracts are made with spirit, a ferment of tea makes some, and beer without it keeps a trace
    "alcohol": {"cannabis tincture", "cbd tincture", "ginger ale", "ginger beer", "kombucha",
                "malt beer", "nonalcoholic beer", "nonalcoholic lager", "raw kombucha",
                "starter kombucha"},
    # a salt that is put on nothing but meat
    "meat": {"jerky cure", "meat cure", "meat curing mix", "meat curing mixture", "sausage cure"},
}  # fmt: skip


@pytest.mark.parametrize("need", sorted(set(label_words()) - {"rennet", "wool", "gelatine"}))
def test_no_word_of_a_label_names_what_the_larder_knows_to_be_free_of_it(need):
    """Ten thousand foods by name: a word that means something else would refuse for nothing."""
    wrong = {
        food.name
        for food in all_staples().values()
        if words_showing(need, food.name)
        and need not in {*food.allergens, *food.may_contain}
        and ANIMALS.get(need, "-") not in food.animal
        and not (need == "alcohol" and food.tags & {"alcohol", "spirit", "wine"})
        and not food.tags & {"read-its-packet", "craft", "toxic"}
    }
    assert wrong == WORDS_KNOW_BETTER.get(need, set())


SPEAKS = re.compile(
    r"child|\bbab(?:y|ies)|infant|pregnan|\bdogs?\b|\bcats?\b|\bpets?\b|animal", re.I
)
# cautions that name somebody and keep nothing from them: how to hang, light or measure it
ONLY_TOLD = {
    "alcohol-for-children",
    "caffeine",
    "candle",
    "cords",
    "pet-sweetener",
    "pet-treat",
    "seaweed",
}


def test_every_caution_that_names_a_receiver_counts():
    named = {name for name, rule in all_rules().items() if SPEAKS.search(rule.to_receiver)}
    silent = {name for name in named if not receivers_of(all_rules()[name].to_receiver, name)}
    assert silent == ONLY_TOLD
    assert len(named) > 30


@pytest.mark.parametrize(
    ("caution", "months"),
    [
        ("Not for children under 3.", 36),
        ("Not for children under three: a button can come off", 36),
        ("Never give it to a baby", 12),
        ("Unsuitable for children under 8 years", 96),
        ("Not suitable for toddlers", 36),
        ("Give it to the children at once", 0),
        ("Not for the dishwasher.", 0),
    ],
)
def test_a_makers_own_caution_counts_by_its_words(caution, months):
    assert max((one.months for one in receivers_of(caution)), default=0) == months


def test_every_word_of_a_list_is_meant_by_what_the_page_says_of_it():
    """Diets and conditions say what is checked, what that cannot promise, and who says so."""
    for word in ("vegan", "vegetarian", "halal", "kosher", "coeliac", "gluten", "lactose", "milk",
                 "alcohol", "diabetic", "meat", "favism", "weak immunity", "asthma",
                 # the headings of Regulation (EU) 1169/2011, Annex II, and what is asked for
                 "nuts", "tree nuts", "peanuts", "wheat", "crustaceans", "molluscs", "shellfish",
                 "fish", "mustard", "lupin", "celery", "eggs", "soya", "sesame", "sulphites",
                 "pork", "beef", "gelatine", "honey"):  # fmt: skip
        found = read_avoided(word)
        assert found is not None
        assert found.means, word
        assert found.cannot, word
        assert found.source, word


def test_the_pack_says_what_was_checked_for_whom_and_what_that_cannot_promise():
    households = [
        {"name": "Ysolde", "basket": "small", "avoid": "vegan"},
        {"name": "The Cragbies", "basket": "small", "avoid": ["halal", "coconut"]},
    ]
    read = read_dict(small_list(households=households))
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.05))
    page = pack_files(pack)["plan.html"].decode()
    assert "animal products: Ysolde" in page
    assert "Whether it is halal is not ours to say" in page
    assert "Vegetarian Society" in page
    assert "coconut: The Cragbies" in page  # any food of the larder as well
    assert "all that is known to be made of it" in page


@pytest.mark.parametrize(
    ("present", "words"),
    [
        ("almond-shortbread", "contains sugar (diabetic), about 5 g in one wedge"),
        ("salted-honey-toffee", "about 73 g in 100 g of it, in a serving not known"),
        ("coffee-cacao-extract", "contains sugar (diabetic), how much is not known"),
    ],
)
def test_whoever_counts_sugar_is_told_how_much_or_that_nobody_knows(present, words):
    row = {"name": "A", "avoid": ["diabetic type 2"], "never": []}
    recipes = {recipe.slug: recipe for recipe in demo_recipes()}
    told = why_refused(household_of(row), facts_of(recipes[present]), TODAY)
    # the same thing in two words is told once
    assert [reason.one for reason in told if "sugar" in reason.one] == [
        reason.one for reason in told if reason.one.endswith(words)
    ]
