"""What everything costs, to the penny, so that the parts add up to what is paid in the shops.

A pack's price is shared over the batches that use it and what is left of it, by amount; a
batch's cost over the presents it fills, spares too. What was in the house costs nothing here.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.money import share_out
from stillroom.giving.batches import Making
from stillroom.giving.money.kin_prices import prices_of_kin
from stillroom.giving.money.shopping import Row
from stillroom.giving.offering import Offering
from stillroom.giving.postage import Postage
from stillroom.giving.together import postage_by_basket

LEFT = "left over"


@dataclass(frozen=True)
class CostSheet:
    """Costs by batch, present, basket and household; all of it is `paid`.

    Baskets of which nobody said what an empty one costs are the `open_empty`.

    `paid` = presents + spares + left over + empty baskets + postage. Sums are whole pennies. A
    batch that needs something without a price is among the `open_batches`: it costs more than its
    sum, and so does a parcel whose postage is not wholly known. `of_kin` says of what has no price
    which price on the list may be taken for it.
    """

    batches: Mapping[str, Fraction]
    presents: Mapping[tuple[int, str], Fraction]
    baskets: Mapping[int, Fraction]
    households: Mapping[str, Fraction]
    spares: Fraction
    left_over: Fraction
    empty_baskets: Fraction
    paid: Fraction
    shop: Fraction
    shop_known: int
    unpriced: tuple[str, ...]
    of_kin: tuple[tuple[str, str], ...]
    open_batches: frozenset[str]
    open_baskets: frozenset[int]
    open_empty: frozenset[int]
    postage: Postage

    @property
    def whole(self) -> bool:
        """Whether everything has a price, empty baskets and postage too."""
        return not self.unpriced and not self.open_empty and not self.postage.open


def reckon_costs(offering: Offering, making: Making, rows: Sequence[Row]) -> CostSheet:
    """Return the cost sheet of a plan."""
    currency = offering.giving.currency
    by_batch: dict[str, Fraction] = defaultdict(Fraction)
    left_over = Fraction(0)
    for row in rows:
        names, weights = _weights(row)
        for name, share in zip(names, share_out(row.price, weights, currency), strict=True):
            if name == LEFT:
                left_over += share
            else:
                by_batch[name] += share
    presents, spares = _share_batches(offering, making, by_batch)
    postage = postage_by_basket(
        offering, lambda number: [one.key for one in making.of_basket(number)], currency
    )
    baskets, households = _by_basket(offering, presents, postage)
    kinds = offering.giving.baskets
    filled = [one for one in offering.problem.baskets if making.of_basket(one.number)]
    open_empty = frozenset(one.number for one in filled if kinds[one.kind].cost is None)
    empty = sum((kinds[one.kind].cost or Fraction(0) for one in filled), Fraction(0))
    prices = [
        price
        for present in making.presents
        if (price := offering.makes[present.key].shop_price) is not None
    ]
    without_price = [row for row in rows if row.bought is None and row.need > row.there]
    open_batches = frozenset(name for row in without_price for name in row.uses)
    unpriced = tuple(sorted({row.said for row in without_price}))
    return CostSheet(
        batches=dict(by_batch),
        presents=presents,
        baskets=baskets,
        households=households,
        spares=spares,
        left_over=left_over,
        empty_baskets=empty,
        paid=sum((row.price for row in rows), Fraction(0)) + empty + postage.total,
        shop=sum(prices, Fraction(0)),
        shop_known=len(prices),
        unpriced=unpriced,
        of_kin=prices_of_kin(unpriced, offering.giving.prices),
        open_batches=open_batches,
        open_baskets=postage.open
        | {present.basket for present in making.presents if present.batch in open_batches},
        open_empty=open_empty,
        postage=postage,
    )


def _by_basket(
    offering: Offering, presents: Mapping[tuple[int, str], Fraction], postage: Postage
) -> tuple[dict[int, Fraction], dict[str, Fraction]]:
    baskets: dict[int, Fraction] = {}
    households: dict[str, Fraction] = defaultdict(Fraction)
    for basket in offering.problem.baskets:
        own = sum((cost for (n, _), cost in presents.items() if n == basket.number), Fraction(0))
        posted = postage.of_baskets.get(basket.number, Fraction(0))
        empty = offering.giving.baskets[basket.kind].cost or Fraction(0)
        filled = any(n == basket.number for n, _ in presents)
        baskets[basket.number] = own + (empty if filled else 0) + posted
        households[basket.household] += baskets[basket.number]
    return baskets, dict(households)


def _weights(row: Row) -> tuple[list[str], list[Fraction]]:
    """Return who uses how much of what is bought: each batch its share, the rest left over."""
    bought = row.bought.bought if row.bought else Fraction(0)
    from_shop = max(row.need - row.there, Fraction(0))
    names, weights = [*row.uses, LEFT], []
    for amount in row.uses.values():
        weights.append(amount * from_shop / row.need if row.need else Fraction(0))
    return names, [*weights, bought - from_shop if bought else Fraction(0)]


def _share_batches(
    offering: Offering, making: Making, by_batch: Mapping[str, Fraction]
) -> tuple[dict[tuple[int, str], Fraction], Fraction]:
    presents: dict[tuple[int, str], Fraction] = {
        (present.basket, present.key): Fraction(0) for present in making.presents
    }
    spares = Fraction(0)
    for batch in making.batches:
        own = [present for present in making.presents if present.batch == batch.name]
        weights = [offering.offer(present.key).share for present in own]
        # less than one present's worth cannot be given: it belongs to what was filled
        least = min(weights, default=Fraction(1))
        spare = batch.spare if batch.spare >= least else Fraction(0)
        shares = share_out(
            by_batch.get(batch.name, Fraction(0)), [*weights, spare], offering.giving.currency
        )
        for present, cost in zip(own, shares, strict=False):
            presents[present.basket, present.key] += cost
        spares += shares[-1]
    return presents, spares
