"""Costs of a batch: hand-worked, and against what is commonly reckoned."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from care_cases import recipe_of
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.reading.loading import load_recipe
from stillroom.core.words.problems import Unreadable
from stillroom.giving.money.costing import PriceBook, cost_batch, measure_as, needs_of, priced_item

RECIPES = Path(__file__).resolve().parents[3] / "recipes"


def book(**items):
    return PriceBook(
        tuple(
            priced_item(name.replace("_", " "), [parse_pack(text) for text in texts])
            for name, texts in items.items()
        )
    )


def cost_of(slug, prices):
    return cost_batch(needs_of(load_recipe(RECIPES / f"{slug}.md"), prices))


def test_sugar_by_hand():
    # 500 g of a 1 kg bag for 1.70 is 0.85, and two bags of 500 g at 0.95 would be 0.95
    cost = cost_of("lavender-sugar", book(caster_sugar=["1 kg for 1.70"]))
    assert cost.total == Fraction("0.85")
    assert cost.unpriced == ("lavender",)


def test_bulk_break_is_used():
    dear = cost_of("lavender-sugar", book(caster_sugar=["500 g for 0.95"]))
    cheap = cost_of("lavender-sugar", book(caster_sugar=["500 g for 0.95", "500 g for 0.80"]))
    assert (dear.total, cheap.total) == (Fraction("0.95"), Fraction("0.80"))


def test_a_vanilla_extract_costs_about_two_fifths_of_the_shops():
    # common practice, no published source: a litre made at home costs roughly two fifths of the
    # shop's price. Pods at 29.00 per 100 g in bulk, vodka at 18.00 a litre; a shop's single-fold
    # extract at 5.80 for 60 ml (the maker's own figures), at half the pods of our double one.
    prices = book(vodka=["1 l for 18.00"], vanilla_pods=["100 g for 29.00"])
    needs = needs_of(load_recipe(RECIPES / "double-vanilla-extract.md"), prices)
    vodka = next(need.amount for need in needs if need.item == "vodka")
    pods = sum(need.amount for need in needs if need.item == "vanilla pods")
    litre = Fraction(18) + pods / vodka * 1000 / 2 * Fraction(29, 100)
    shop = Fraction("5.80") / 60 * 1000
    assert Fraction(3, 10) < litre / shop < Fraction(1, 2)


# amount, unit, wanted unit, staple, expected; each through the density or weight of the staple
MEASURES = [
    ("1", "l", "ml", "vodka", Fraction(1000)),
    ("2", "", "", "oranges", Fraction(2)),
    ("100", "ml", "g", "vodka", Fraction("94.8")),  # 0.948 g per ml, OIML R 22
    ("94.8", "g", "ml", "vodka", Fraction(100)),
]


@pytest.mark.parametrize(("value", "unit", "to", "item", "expected"), MEASURES)
def test_measured_another_way(value, unit, to, item, expected):
    assert measure_as(Fraction(value), unit, to, find_staple(item)) == expected


def test_what_cannot_be_measured_is_not_guessed():
    assert measure_as(Fraction(1), "g", "ml", None) is None


def test_packs_of_one_thing_are_measured_alike():
    with pytest.raises(Unreadable, match="does not measure"):
        book(vodka=["1 l for 18.00", "12 for 18.00"])
    # a food of known density may be sold by weight and by the jug
    (vodka,) = book(vodka=["1 l for 18.00", "1 kg for 18.00"]).items
    assert [round(float(pack.size)) for pack in vodka.packs] == [1000, 1055]


def test_a_container_has_no_other_ones_price_and_a_tool_no_other_tools():
    def entry(item, pack):
        return priced_item(item, (parse_pack(pack, "GBP"),), "containers")

    prices = PriceBook((entry("jar, 1 pint", "12 for 14.40"), entry("jelly bag", "1 for 4.00")))
    assert prices.find("jar, 1 pint") is not None
    assert [prices.find(one) for one in ("tin", "bottle, 100 ml", "jar, 200 ml")] == [None] * 3
    assert prices.find("wooden spoon") is None


@pytest.mark.parametrize(
    ("line", "item", "pack", "cost"),
    [
        ("4 garlic cloves", "garlic", "1 bulb for 0.40", None),
        ("1 garlic bulb", "garlic", "1 bulb for 0.40", "0.40"),
        ("4 garlic cloves", "garlic", "1 for 0.05", "0.20"),
        ("1 fennel bulb", "fennel bulb", "1 bulb for 0.90", "0.90"),
        ("2 lemons", "lemons", "1 for 0.35", "0.70"),
    ],
)
def test_a_clove_of_garlic_is_no_bulb(line, item, pack, cost):
    made = {"title": "A thing", "kind": "preserve", "ingredients": [line], "method": ["Boil."]}
    prices = PriceBook((priced_item(item, (parse_pack(pack, "GBP"),)),))
    found = cost_batch(needs_of(recipe_of(made), prices))
    assert (found.total if not found.unpriced else None) == (Fraction(cost) if cost else None)


# what is left of one that the recipe has whole is not bought beside it; one of its own is
LEFT = [
    (["1 kg caster sugar", "3 vanilla pods", "2 scraped vanilla pods"], 3),
    (["1 kg Zucker", "3 Vanilleschoten", "2 ausgekratzte Vanilleschoten"], 3),
    (["1 kg sucre", "3 gousses de vanille", "2 gousses de vanille grattées"], 3),
    (["500 ml vodka", "4 vanilla pods", "1 spent vanilla pod"], 4),
    # nobody has them from elsewhere: they stay on the list
    (["1 kg caster sugar", "2 used vanilla pods"], 2),
    # no word of being left: two sorts of one food are both bought
    (["1 kg caster sugar", "3 vanilla pods", "2 bourbon vanilla pods"], 5),
]


@pytest.mark.parametrize(("lines", "pods"), LEFT)
def test_what_is_left_of_another_is_not_bought(lines, pods):
    made = recipe_of({"title": "A", "kind": "bake", "ingredients": lines, "method": ["Mix."]})
    prices = PriceBook((priced_item("vanilla pods", (parse_pack("2 for 3.50"),)),))
    needs = needs_of(made, prices)
    assert sum(need.amount for need in needs if need.item == "vanilla pods") == pods
