"""Buying in whole packs at the least price, price breaks included.

A pack offer is a size for a price, and may hold only from so many packs on ("10 or more for
0.60 each"). Exact: integers and fractions throughout. Leaves out what is needed and why.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

_MANY_BREAKS = 6
_MOST_STEPS = 20_000


@dataclass(frozen=True)
class PackOffer:
    """One pack to be had: its size, its price, and from how many packs the price holds."""

    size: Fraction
    price: Fraction
    at_least: int = 1


@dataclass(frozen=True)
class Basketful:
    """What to buy: how many of each offer (same order), what it holds, costs and leaves."""

    counts: tuple[int, ...]
    bought: Fraction
    price: Fraction
    left_over: Fraction


def buy_cheapest(need: Fraction, offers: Sequence[PackOffer]) -> Basketful:
    """Buy at least `need` for the least money; of equal prices the one that leaves least.

    A covering knapsack solved by dynamic programming, once for each set of price breaks that may
    be taken up; exact unless sizes or amounts are far beyond a kitchen's (see _coarser). Raises
    ValueError when something is needed and nothing sold.

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
    """Return the cheapest counts covering `need`, each offer free to be bought any number."""
    counts = [0] * len(offers)
    if need <= 0:
        return counts
    scale = math.lcm(*(offer.size.denominator for offer in offers))
    sizes = [int(offer.size * scale) for offer in offers]
    step = math.gcd(*sizes)
    sizes = [size // step for size in sizes]
    units = math.ceil(need * scale / step)
    sizes, units = _coarser(sizes, units)
    # Fewer than s of the other packs are ever worth buying, s being the size of the pack
    # cheapest by measure: any s of them hold some that it replaces. The rest is that pack.
    kept = [place for place, size in enumerate(sizes) if size]
    best = min(kept, key=lambda place: (offers[place].price / sizes[place], place))
    bulk = max(0, (units - sizes[best] * max(sizes)) // sizes[best])
    counts[best] = bulk
    still = units - bulk * sizes[best]
    prices = [offers[place].price for place in kept]
    for place in _fewest(still, [sizes[place] for place in kept], prices):
        counts[kept[place]] += 1
    return counts


def _coarser(sizes: list[int], units: int) -> tuple[list[int], int]:
    """Return sizes and need in larger steps where there would be too many to look at.

    A pack counts for no more than it holds and the need for no less, so that it is still covered.
    """
    if min(units, max(sizes) ** 2) + max(sizes) <= _MOST_STEPS:
        return sizes, units
    # what holds all that is needed holds enough, however much more it holds
    sizes = [min(size, units) for size in sizes]
    top = min(units, max(sizes) ** 2) + max(sizes)
    coarse = min(-(-top // _MOST_STEPS), max(sizes))
    return [size // coarse for size in sizes], -(-units // coarse)


def _fewest(units: int, sizes: Sequence[int], prices: Sequence[Fraction]) -> list[int]:
    """Return the places of the packs bought to hold at least `units`, cheapest, then least."""
    top = units + max(sizes) - 1
    best: list[tuple[Fraction, int] | None] = [None] * (top + 1)
    came_by = [-1] * (top + 1)
    best[0] = (Fraction(0), 0)
    for held in range(1, top + 1):
        for place, size in enumerate(sizes):
            before = best[held - size] if held >= size else None
            if before is None:
                continue
            reached = (before[0] + prices[place], before[1] + 1)
            known = best[held]
            if known is None or reached < known:
                best[held], came_by[held] = reached, place
    ends = [(cost[0], held, cost[1]) for held in range(units, top + 1) if (cost := best[held])]
    held = min(ends)[1]
    places = []
    while held:
        places.append(came_by[held])
        held -= sizes[came_by[held]]
    return places
