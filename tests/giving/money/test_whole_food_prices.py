"""A price is that of the whole food; what has none is not cheap; shopping speaks as recipes do."""

from __future__ import annotations

from fractions import Fraction

import pytest

from care_cases import recipe_of
from giving.lists import TODAY, demo_book, demo_recipes, read_dict, small_list
from stillroom.core.amounts.packs import parse_pack
from stillroom.giving.money.costing import PriceBook, needs_of, priced_item
from stillroom.giving.money.stand_ins import unpriced_recipes
from stillroom.giving.offering import make_offering
from stillroom.giving.pack import Effort, pack_files, work_out

BOOK = PriceBook(
    tuple(
        priced_item(item, [parse_pack("1 kg for 2.00")])
        for item in ("milk", "rice", "butter", "sugar", "flour", "pepper", "hazelnuts", "salt",
                     "cream", "vanilla", "almonds", "potatoes", "vinegar", "oats")
    )
)  # fmt: skip
# what a recipe asks for, and whose price it is; each holds the word of another food
OTHER_FOODS = [
    "coconut milk", "oat milk", "rice flour", "rice vinegar", "peanut butter", "cocoa butter",
    "buckwheat flour", "almond flour", "chilli pepper", "cream of tartar", "coconut cream",
    "milk chocolate", "rice wine", "almond milk", "sweet potatoes", "butter beans",
    "evaporated milk", "potato flour", "salt cod", "vanilla ice cream",
]  # fmt: skip
SAME_FOODS = [
    ("unsalted butter", "butter"), ("Rice", "rice"), ("hazelnuts, chopped", "hazelnuts"),
    ("whole almonds", "almonds"), ("waxy potatoes", "potatoes"), ("large potatoes", "potatoes"),
    ("softened butter", "butter"),
]  # fmt: skip


@pytest.mark.parametrize("words", OTHER_FOODS)
def test_a_word_within_a_name_is_no_price(words):
    assert BOOK.find(words) is None


@pytest.mark.parametrize(("words", "item"), SAME_FOODS)
def test_the_same_food_has_the_same_price(words, item):
    found = BOOK.find(words)
    assert found is not None
    assert found.item == item


def test_what_has_no_amount_is_on_the_list_and_never_reckoned():
    made = {"title": "A", "kind": "bake", "ingredients": ["200 g rice", "salt, to taste"]}
    needs = needs_of(recipe_of({**made, "method": ["Bake."]}), BOOK)
    assert [(need.words, need.loose) for need in needs] == [("rice", False), ("salt", True)]
    assert unpriced_recipes({"a": needs}, ()) == frozenset()


def test_the_shopping_says_what_the_recipes_say():
    read = read_dict(small_list(prices=[{"item": "lavender", "packs": ["50 g for 3.00"]}],
                                makes=[{"recipe": "lavender-sugar"}],
                                baskets={"small": {"eat": 1}}))  # fmt: skip
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.05))
    said = [row.said for row in pack.rows]
    assert any("dried lavender" in words for words in said), said
    assert b"dried lavender" in pack_files(pack)["shopping.txt"]


def _offering(prices):
    made = [{"recipe": "lavender-sugar"}, {"recipe": "rosemary-salt"}, {"recipe": "vanilla-sugar"}]
    return make_offering(read_dict(small_list(prices=prices, makes=made)), demo_recipes(), TODAY)


def test_what_has_no_price_is_planned_at_the_usual_cost_and_shown_as_not_known():
    priced = [{"item": "coarse sea salt", "packs": ["250 g for 4.00"]},
              {"item": "dried rosemary", "packs": ["10 g for 1.00"]},
              {"item": "dried lemon peel", "packs": ["10 strips for 1.00"]}]  # fmt: skip
    problem = _offering(priced).problem
    stand_ins = [one.item for one in problem.purchases if one.item.startswith("what has no price")]
    assert len(stand_ins) == 2
    worth = {offer.recipe: offer.worth for offer in problem.offers}
    assert worth["lavender-sugar"] == worth["rosemary-salt"] > 0
    assert _offering([]).problem.purchases == ()  # with no price at all nothing is dearer


def test_a_price_in_a_language_with_commas_is_read_so():
    row = {"item": "vodka", "packs": ["0,7 l für 14,50"]}
    read = read_dict(small_list(language="de", currency="EUR", prices=[row]))
    amount, price, _ = read.giving.prices[0].packs[0]
    assert (amount.low, price) == (Fraction(7, 10), Fraction(29, 2))
    text = "1.450,50"
    dear = read_dict(small_list(language="de", baskets={"small": {"eat": 1, "cost": text}}))
    assert dear.giving.baskets["small"].cost == Fraction(2901, 2)
