"""Prices of a weight: what is sold loose is bought as it is wanted, packets whole, one's own free.

The forms are those of farms' price lists (sbv-usp.ch, direct sale: "kg 4.70", "250g 3.75"), market
stalls (europe1.fr, "1,30 € le kilo") and shoppers' notes (bless2cents, "@$.49/lb"); the sums are
reckoned by hand beside each case.
"""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.book import BookSettings
from stillroom.core.words.problems import Unreadable
from stillroom.giving.money.buying import buy_cheapest
from stillroom.giving.money.costing import priced_item
from stillroom.giving.money.shopping import say_taken
from stillroom.giving.pack import Effort, work_out

# item, prices, how much is wanted in g, what it costs to the penny, how it was taken
WEIGHED = [
    # 1.5 kg at 2.80: 4.20, and no second kilo
    ("quinces", ["2.80/kg"], 1500, "4.20", "by weight"),
    # 15 g at 24 a kilo: 0.36
    ("dried rosemary", ["£24/kg"], 15, "0.36", "by weight"),
    # 240 g at 50p for each 100 g: 1.20
    ("walnuts", ["50p/100g"], 240, "1.20", "by weight"),
    # a thing that nobody knows: 300 g at 5 a kilo
    ("moon dust", ["5.00 a kilo"], 300, "1.50", "by weight"),
    # sugar comes in packets: 1.2 kg are two of them
    ("granulated sugar", ["1.15/kg"], 1200, "2.30", "packet"),
    ("butter", ["8.00 per kg"], 200, "8.00", "packet"),
    # said to be loose: 1.2 kg at 1.15 are 1.38
    ("granulated sugar", ["1.15 a kilo, loose"], 1200, "1.38", "loose"),
    # a bag named with its weight is a bag
    ("quinces", ["1 kg for 2.80"], 1500, "5.60", ""),
    ("quinces", ["a bag of 1 kg for 2.80"], 1500, "5.60", ""),
    # of both the cheaper: a bag of 1 kg for 2.00 and 500 g at 2.80 a kilo
    ("quinces", ["2.80/kg", "1 kg for 2.00"], 1500, "3.40", "by weight"),
]


@pytest.mark.parametrize(("item", "packs", "grams", "price", "sold"), WEIGHED)
def test_what_has_the_price_of_a_weight_is_bought_so(item, packs, grams, price, sold):
    entry = priced_item(item, [parse_pack(pack) for pack in packs])
    bought = buy_cheapest(F(grams), entry.packs)
    assert round(bought.price, 2) == F(price)
    assert bought.bought >= grams
    assert entry.packs[0].sold == sold


def test_pounds_are_weighed_out_too():
    entry = priced_item("apples", [parse_pack("$1.49/lb", "USD", "us", "en_US")])
    bought = buy_cheapest(F("1814.36948"), entry.packs)  # 4 lb
    assert round(bought.price, 2) == F("5.96")


# the price of one told beside a number: never that of all
OF_EACH = [("6 zu je 0,40", "0.40"), ("6 Eier je 0,40", "0.40"), ("4 je 1,20", "1.20")]
ONE_OR_ALL = ["3 Töpfe zu je 1,99", "4 à 0,50", "12 Stück à 0,50", "6 zu 2,40"]


@pytest.mark.parametrize(("said", "each"), OF_EACH)
def test_the_price_of_each_is_not_that_of_all(said, each):
    amount, price, at_least = parse_pack(said, "EUR", language="de")
    assert (amount.low, price, at_least) == (1, F(each), 1)


@pytest.mark.parametrize("said", ONE_OR_ALL)
def test_what_may_be_of_one_or_of_all_is_asked(said):
    with pytest.raises(Unreadable):
        parse_pack(said, "EUR", language="de")


OWN = [
    "from the garden", "from our own hives", "our own", "picked ourselves", "free, from the hedge",
    "home-grown", "aus dem eigenen Garten", "selbst gepflückt", "du jardin", "cueillies par nous",
    "del huerto", "dell'orto", "uit eigen tuin", "zelf geplukt", "från trädgården", "fra haven",
    "gratis", "own hens", "from next door's tree",
]  # fmt: skip
NOT_OWN = [
    "from the garden centre", "own brand", "free with a coupon", "free range", "from the shop",
    "from the", "a present from Mum", "Gartencenter", "free 2", "du marché", "",
]  # fmt: skip


@pytest.mark.parametrize("said", OWN)
def test_what_is_ones_own_costs_nothing(said):
    amount, price, at_least = parse_pack(said)
    assert (amount.unit, price, at_least) == ("", 0, 0)


@pytest.mark.parametrize("said", NOT_OWN)
def test_what_is_bought_or_not_known_is_asked_about(said):
    with pytest.raises(Unreadable):
        parse_pack(said)


def test_a_list_is_paid_to_the_penny_and_says_what_was_taken():
    # 250 g of salt in its packet 1.90; 15 g of rosemary at 24.00 a kilo 0.36; peel of one's own;
    # four jars at 0.60 are 2.40: 4.66
    data = small_list(
        makes=[{"recipe": "rosemary-salt"}],
        baskets={"small": {"eat": 1, "cost": "0.00"}},
        households=[{"name": name, "basket": "small"} for name in ("Ann", "Ben", "Cyd", "Dot")],
        prices=[
            {"item": "coarse sea salt", "packs": "250 g for 1.90"},
            {"item": "dried rosemary", "packs": "£24/kg"},
            {"item": "lemon peel", "packs": "from the garden"},
            {"item": "jar, 60 ml", "packs": "60p each"},
        ],
    )
    recipes = tuple(demo_recipes())
    pack = work_out(read_dict(data), recipes, BookSettings(), TODAY, Effort(seconds=2))
    assert pack.costs.paid == F("4.66") == sum(pack.costs.households.values())
    assert not pack.costs.unpriced
    said = " ".join(say_taken(pack.rows))
    assert "dried rosemary" in said
    assert not {"salt", "peel"} & set(said.replace(",", "").split())
    rows = {row.item: row.to_buy for row in pack.rows}
    assert rows["dried rosemary"] == "15 g loose"
    assert rows["lemon peel"].endswith("your own")
