"""What goes with a parcel: its address label, and abroad the list that customs asks for.

What is not known (a weight nobody stated, a present without a price) is said as that. Leaves out
by when and how it is posted: posting.py, noticing.py.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.countries import country_name
from stillroom.giving.batches import Present
from stillroom.giving.plan_model import Basket
from stillroom.giving.worked_out import Pack

NOT_KNOWN = "not known"


def parcels_data(pack: Pack) -> list[dict[str, Any]]:
    """Return every parcel still to be posted: whose, its label, and what is in it when abroad."""
    found = []
    for basket in pack.offering.problem.baskets:
        parcel = pack.offering.parcels.get(basket.household)
        if parcel is None:
            continue
        household = pack.offering.households[basket.number]
        country = country_name(parcel.country) if parcel.abroad else ""
        address = [part.strip() for part in household.address.split(",") if part.strip()]
        if country and address and address[-1].casefold() == country.casefold():
            address.pop()  # it stands below, in letters of its own
        found.append(
            {
                "number": basket.number,
                "household": household.name,
                "to": household.to or household.name,
                "address": address,
                "country": country,
                "sender": pack.offering.giving.from_,
                "sender_address": [
                    part.strip() for part in pack.offering.giving.address.split(",") if part.strip()
                ],
                "customs": _customs(pack, basket) if parcel.abroad else None,
            }
        )
    return found


def _customs(pack: Pack, basket: Basket) -> dict[str, Any]:
    """Return a parcel's contents, each with weight and value, and both in all where known."""
    own = pack.making.of_basket(basket.number)
    weights = [pack.offering.offer(present.key).weighs for present in own]
    values = [_value(pack, present) for present in own]
    return {
        "rows": [
            {"what": _plain_words(present), "weight": _grams(weight), "value": _money(pack, value)}
            for present, weight, value in zip(own, weights, values, strict=True)
        ],
        "weight": _grams(_sum(weights)),
        "value": _money(pack, _sum(values)),
    }


def _plain_words(present: Present) -> str:
    return f"1 {present.recipe.title}: {present.recipe.kind.describes}"


def _value(pack: Pack, present: Present) -> Fraction | None:
    """Return what a present is worth: a like thing in a shop, else what it cost, where known."""
    shop = pack.offering.makes[present.key].shop_price
    if shop is not None:
        return shop
    if present.batch in pack.costs.open_batches or present.from_shelf:
        return None
    return pack.costs.presents[present.basket, present.key] or None


def _sum(values: list[Fraction | None]) -> Fraction | None:
    known = [value for value in values if value is not None]
    return sum(known, Fraction(0)) if len(known) == len(values) else None


def _grams(value: Fraction | None) -> str:
    return NOT_KNOWN if value is None else f"{show_decimal(value, 0)} g"


def _money(pack: Pack, value: Fraction | None) -> str:
    return NOT_KNOWN if value is None else pack.money(value)
