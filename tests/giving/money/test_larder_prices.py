"""A price in the book's own larder serves the giving list, and the list's own price goes first."""

from __future__ import annotations

from fractions import Fraction

from giving.lists import read_dict, small_list
from stillroom.core.larder.own import read_own_larder
from stillroom.giving.money.larder_prices import with_larder_prices

LARDER = """
moon dust:
  contains: nothing
  from: plant
  price: [500 g for 3.50, 1 kg for 6]
granulated sugar:
  is: granulated sugar
  price: 1 kg for 99
"""


def test_a_price_of_the_larder_stands_behind_the_lists_own() -> None:
    listed = [{"item": "granulated sugar", "packs": ["1 kg for 1.15"]}]
    read = read_dict(small_list(prices=listed))
    prices = with_larder_prices(read, read_own_larder(LARDER, "larder.yml").prices).giving.prices
    found = {price.item: [pack[1] for pack in price.packs] for price in prices}
    assert found == {
        "granulated sugar": [Fraction(115, 100)],
        "moon dust": [Fraction(350, 100), Fraction(6)],
    }
