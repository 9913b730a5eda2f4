"""What goes in one parcel: the baskets of one household, and of households at one address.

A plan reckons with a parcel for each basket, which is never too little; what is paid, and said, is
that of the parcels as they are packed. Leaves out when and how one is posted: posting.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.money import share_out
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Basket
from stillroom.giving.postage import Postage, postage_of
from stillroom.giving.posting import Parcel, weight_of

_WORD = re.compile(r"\w+")


@dataclass(frozen=True)
class Shipment:
    """One parcel: which baskets are in it, what it weighs and costs as far as that is known.

    `grams` is None where the weight of something in it is not known; `whole` says whether
    `postage` is all that it costs.
    """

    baskets: tuple[Basket, ...]
    parcel: Parcel
    grams: Fraction | None
    postage: Fraction
    whole: bool

    @property
    def label(self) -> str:
        """Name its baskets: "number 1, Una Fell and number 2, Granny Fell"."""
        return " and ".join(basket.label for basket in self.baskets)


def shipments(offering: Offering, keys_of: Callable[[int], Sequence[str]]) -> tuple[Shipment, ...]:
    """Return the parcels still to be posted; `keys_of` tells what is in a basket by its number.

    Two baskets are one parcel where both go to one address by one service, what each weighs is
    known, the heaviest band takes both, and it is not dearer so.
    """
    places: dict[tuple[object, ...], list[Basket]] = {}
    for basket in offering.problem.baskets:
        parcel = offering.parcels.get(basket.household)
        if parcel is not None and keys_of(basket.number):
            places.setdefault(_place(offering, basket, parcel), []).append(basket)
    found: list[Shipment] = []
    for own in places.values():
        alone = [_packed(offering, (basket,), keys_of) for basket in own]
        one = _packed(offering, tuple(own), keys_of) if len(own) > 1 else None
        dearer = sum((each.postage for each in alone), Fraction(0))
        known = one is not None and one.grams is not None and one.whole
        found += [one] if one is not None and known and one.postage <= dearer else alone
    return tuple(sorted(found, key=lambda each: each.baskets[0].number))


def _place(offering: Offering, basket: Basket, parcel: Parcel) -> tuple[object, ...]:
    """Return by what two parcels go to one place: their address, else the household itself."""
    household = offering.households[basket.number]
    words = " ".join(_WORD.findall(household.address.casefold()))
    service = parcel.service.service if parcel.service else ""
    return (words or (household.name,), parcel.country, service, parcel.day)


def _packed(
    offering: Offering, baskets: tuple[Basket, ...], keys_of: Callable[[int], Sequence[str]]
) -> Shipment:
    parcel = offering.parcels[baskets[0].household]
    things = [offering.offer(key).weighs for one in baskets for key in keys_of(one.number)]
    empty = weight_of([offering.giving.baskets[one.kind].weighs for one in baskets], Fraction(0))
    grams = weight_of(things, empty)
    postage, whole = postage_of(parcel, things, empty)
    return Shipment(baskets, parcel, grams, postage, whole)


def postage_by_basket(
    offering: Offering, keys_of: Callable[[int], Sequence[str]], currency: str
) -> Postage:
    """Return what each basket costs to post: of one parcel for several, its share by weight."""
    known: dict[int, Fraction] = {}
    open_ones: set[int] = set()
    for one in shipments(offering, keys_of):
        weights = [
            weight_of(
                [offering.offer(key).weighs for key in keys_of(basket.number)],
                offering.giving.baskets[basket.kind].weighs,
            )
            or Fraction(1)
            for basket in one.baskets
        ]
        shares = share_out(one.postage, weights, currency)
        for basket, share in zip(one.baskets, shares, strict=True):
            known[basket.number] = share
            open_ones |= set() if one.whole else {basket.number}
    return Postage(known, frozenset(open_ones))
