"""What parcels cost to post: by the bands of the list, and never nothing where that is not known.

For a plan, a thing whose weight nobody stated weighs what the others do on the average, so that no
plan drifts towards it. What is paid is reckoned from what is stated: else it is "at least" so much.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.giving.plan_model import Offer
from stillroom.giving.posting import Parcel

Bands = tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True)
class Postage:
    """What the baskets cost to post, by number; of those that are `open` at least so much."""

    of_baskets: Mapping[int, Fraction]
    open: frozenset[int] = frozenset()

    @property
    def total(self) -> Fraction:
        """Return all that is known."""
        return sum(self.of_baskets.values(), Fraction(0))


def with_usual_weights(offers: tuple[Offer, ...]) -> tuple[Offer, ...]:
    """Return the offers, each with what it weighs where nobody stated it."""
    known = [offer.weighs for offer in offers if offer.weighs is not None]
    if not known:
        return offers
    usual = Fraction(math.ceil(sum(known, Fraction(0)) / len(known)))
    return tuple(replace(offer, usual_grams=usual) for offer in offers)


def bands_of(parcel: Parcel | None, empty: Fraction | None) -> Bands:
    """Return what a parcel costs up to so many grams in it; none where nobody says.

    An empty basket whose weight nobody stated is taken to weigh nothing: all of its kind do.
    """
    if parcel is None or parcel.service is None:
        return ()
    less = ((most - (empty or 0), price) for most, price in parcel.service.bands)
    rising: list[tuple[Fraction, Fraction]] = []
    for most, price in less:
        # a heavier band that costs no more takes the place of a lighter one
        while rising and rising[-1][1] >= price:
            rising.pop()
        if most >= 0:
            rising.append((most, price))
    return tuple(rising)


def postage_of(
    parcel: Parcel, weights: list[Fraction | None], empty: Fraction | None
) -> tuple[Fraction, bool]:
    """Return what a parcel costs to post, and whether that is all of it."""
    known = sum((one for one in weights if one is not None), empty or Fraction(0))
    whole = empty is not None and None not in weights
    price = parcel.postage(known)
    if price is None:
        return Fraction(0), False
    # where it is in the dearest band already, no weight makes it dearer
    dearest = parcel.service is not None and price == max(p for _, p in parcel.service.bands)
    return price, whole or dearest
