"""Buying in whole packs at the least price, price breaks included.

A pack offer is a size for a price, and may hold only from so many packs on ("10 or more for
0.60 each"). Exact: integers and fractions throughout. Leaves out what is needed and why.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import combinations
from typing import Literal

Sold = Literal["", "loose", "by weight", "packet", "own"]
_MANY_BREAKS = 6
_MANY_STEPS = 30_000
_MOST_COINS = 100_000
_MOST_AMOUNTS = 20_000


@dataclass(frozen=True)
class PackOffer:
    """One pack to be had: its size, its price, and from how many packs the price holds.

    `words` are what its label says where that is another measure: "12 oz". `sold` is what was taken
    of a price by weight: "loose" or "by weight" (a gram is a pack, `per` of them what the price was
    named for), "packet"; or "own", which costs nothing.
    """

    size: Fraction
    price: Fraction
    at_least: int = 1
    words: str = field(default="", compare=False)
    sold: Sold = ""
    per: Fraction = Fraction(1)

    @property
    def by_weight(self) -> bool:
        """Whether as much is bought as is wanted, and no more."""
        return self.sold in ("loose", "by weight")


@dataclass(frozen=True)
class Basketful:
    """What to buy: how many of each offer (same order), what it holds, costs and leaves."""

    counts: tuple[int, ...]
    bought: Fraction
    price: Fraction
    left_over: Fraction


def buy_cheapest(need: Fraction, offers: Sequence[PackOffer]) -> Basketful:
    """Buy at least `need` for the least money; of equal prices the one that leaves least.

    Exact in the price, whatever units the packs are in, and in what is left where not thousands of
    packs are bought: once for each set of price breaks that may
    be taken up, the most that each sum of coins buys is worked out (see _cover). Raises ValueError
    when something is needed and nothing sold.

    >>> buy_cheapest(Fraction(14), [PackOffer(Fraction(1), Fraction("0.95")),
    ...     PackOffer(Fraction(12), Fraction("7.20"))]).counts
    (2, 1)
    """
    if need <= 0:
        return Basketful(tuple(0 for _ in offers), Fraction(0), Fraction(0), -need)
    if not offers:
        raise ValueError("something is needed and no pack of it is offered")
    broken = [place for place, offer in enumerate(offers) if offer.at_least > 1]
    plain = [place for place, offer in enumerate(offers) if offer.at_least <= 1]
    found: Basketful | None = None
    most = len(broken) if len(broken) <= _MANY_BREAKS else 2
    for taken in (set_ for size in range(most + 1) for set_ in combinations(broken, size)):
        base = [offer.at_least if place in taken else 0 for place, offer in enumerate(offers)]
        open_to = [*plain, *taken]
        if not open_to:
            continue
        start = sum(count * offer.size for count, offer in zip(base, offers, strict=True))
        more = _cover(need - start, [offers[place] for place in open_to])
        for place, count in zip(open_to, more, strict=True):
            base[place] += count
        candidate = _weigh(need, offers, base)
        if found is None or _rank(candidate) < _rank(found):
            found = candidate
    assert found is not None
    return found


def _rank(basketful: Basketful) -> tuple[Fraction, Fraction, int]:
    return basketful.price, basketful.bought, sum(basketful.counts)


def _weigh(need: Fraction, offers: Sequence[PackOffer], counts: Sequence[int]) -> Basketful:
    bought = sum((n * offer.size for n, offer in zip(counts, offers, strict=True)), Fraction(0))
    price = sum((n * offer.price for n, offer in zip(counts, offers, strict=True)), Fraction(0))
    return Basketful(tuple(counts), bought, price, bought - need)


def _cover(need: Fraction, offers: Sequence[PackOffer]) -> list[int]:
    """Return the cheapest counts covering `need`, each offer free to be bought any number.

    For each sum of coins the most that it buys (an unbounded knapsack by price): a step for each
    offer and coin of the price, so sizes may be 250 g and 1 lb side by side. Where that would be
    many, so many of the pack that is cheapest by measure are taken off first as are surely bought:
    of p others, p its price in coins, some cost just so many times p, and it holds no less for that
    money. What a mixture wastes beside it is less than p as well.
    """
    counts = [0] * len(offers)
    if need <= 0:
        return counts
    free = [place for place, offer in enumerate(offers) if not offer.price]
    if free:
        counts[free[0]] = math.ceil(need / offers[free[0]].size)
        return counts
    prices, sizes, units = _whole_numbers(need, offers)
    best = min(range(len(offers)), key=lambda n: (Fraction(prices[n], sizes[n]), n))
    steps = -(-units // sizes[best]) * prices[best] * len(offers)
    bulk = _surely(best, prices, sizes, units) if steps > _MANY_STEPS else 0
    counts[best] = bulk
    for place in _fewest_coins(units - bulk * sizes[best], best, prices, sizes):
        counts[place] += 1
    return counts


def _whole_numbers(need: Fraction, offers: Sequence[PackOffer]) -> tuple[list[int], list[int], int]:
    """Return prices in coins, sizes and the need in one small measure that all are whole in."""
    cents = math.lcm(*(offer.price.denominator for offer in offers))
    prices = [int(offer.price * cents) for offer in offers]
    coin = math.gcd(*prices)
    scale = math.lcm(need.denominator, *(offer.size.denominator for offer in offers))
    return (
        [price // coin for price in prices],
        [int(offer.size * scale) for offer in offers],
        int(need * scale),
    )


def _surely(best: int, prices: list[int], sizes: list[int], units: int) -> int:
    """Return how many of the pack cheapest by measure are bought in some cheapest basket."""
    price, size = prices[best], sizes[best]
    slack = -(-units // size) * price * size - units * price  # what buying it alone wastes, x size
    others = 0
    for place, own in enumerate(sizes):
        waste = prices[place] * size - own * price  # of one of these, x size
        if place != best:
            others += own * min(price - 1, slack // waste if waste else price - 1)
    others = min(others, (price - 1) * max(sizes))
    bulk = max(0, (units - others) // size)
    # far beyond a kitchen (a ton of saffron by the gram) the rest is held to so many coins' worth
    return max(bulk, (units - _MOST_COINS * size // price) // size)


def _fewest_coins(units: int, best: int, prices: list[int], sizes: list[int]) -> list[int]:
    """Return the places of the packs that hold `units` for the fewest coins, then hold least."""
    if units <= 0:
        return []
    top = -(-units // sizes[best]) * prices[best]
    most = [0] + [-1] * top  # the most that just so many coins buy; -1: no packs cost just that
    cost = top
    for coins in range(1, top + 1):
        held = max(
            (
                most[coins - price] + size
                for price, size in zip(prices, sizes, strict=True)
                if price <= coins and most[coins - price] >= 0
            ),
            default=-1,
        )
        most[coins] = held
        if held >= units:
            cost = coins
            break
    return _least_left(units, cost, most, prices, sizes)


def _least_left(
    units: int, cost: int, most: list[int], prices: list[int], sizes: list[int]
) -> list[int]:
    """Return the packs that cost just `cost` and hold `units`, the least that does, then fewest.

    Every amount that so many coins can buy is followed, as long as the rest can still cover.
    """
    reached: dict[int, dict[int, tuple[int, int]]] = {0: {0: (0, -1)}}
    seen = 0
    for coins in range(cost):
        for held, (count, _) in reached.get(coins, {}).items():
            for place, (price, size) in enumerate(zip(prices, sizes, strict=True)):
                after = coins + price
                rest = most[cost - after] if after <= cost else -1
                if rest < 0 or held + size + rest < units:
                    continue
                known = reached.setdefault(after, {}).get(held + size)
                if known is None or count + 1 < known[0]:
                    reached[after][held + size] = (count + 1, place)
                    seen += 1
        if seen > _MOST_AMOUNTS:
            return _any_at(cost, most, prices, sizes)
    held, coins, places = min(reached[cost]), cost, []
    while coins:
        place = reached[coins][held][1]
        places.append(place)
        coins, held = coins - prices[place], held - sizes[place]
    return places


def _any_at(cost: int, most: list[int], prices: list[int], sizes: list[int]) -> list[int]:
    """Return the packs that hold the most for just `cost`."""
    places: list[int] = []
    while cost:
        place = next(
            n
            for n, price in enumerate(prices)
            if price <= cost
            and most[cost - price] >= 0
            and most[cost - price] + sizes[n] == most[cost]
        )
        places.append(place)
        cost -= prices[place]
    return places
