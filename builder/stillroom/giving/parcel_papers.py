"""What goes with a parcel: its address label, and abroad the list that customs asks for.

What is not known (a weight nobody stated, a present without a price) is said as that. Leaves out
by when and how it is posted: posting.py, noticing.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.recipe.cooks_word import spoken_of
from stillroom.core.words.countries import country_name
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import counted
from stillroom.giving.batches import Present
from stillroom.giving.money.costing import cost_batch, cost_of_use, needs_of
from stillroom.giving.plan_model import Basket
from stillroom.giving.together import Shipment, shipments
from stillroom.giving.worked_out import Pack, card_of

NOT_KNOWN = "not known"
_TOLD = 5  # foods of a thing that are named: a customs form has little room. Maker's own.
# Regulation (EU) 952/2013, art. 4: one customs territory, without a few islands; from memory
_UNION = frozenset(
    {"AT", "BE", "BG", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IE"}
    | {"IT", "LT", "LU", "LV", "MT", "NL", "PL", "PT", "RO", "SE", "SI", "SK"}
)


def parcels_data(pack: Pack) -> list[dict[str, Any]]:
    """Return every parcel still to be posted: whose, its label, and what is in it when abroad."""
    return [
        _slip(pack, one)
        for one in shipments(pack.offering, lambda n: [p.key for p in pack.making.of_basket(n)])
    ]


def _slip(pack: Pack, one: Shipment) -> dict[str, Any]:
    """Return one parcel: its numbers, to whom, where they live, and what customs is told."""
    households = [pack.offering.households[basket.number] for basket in one.baskets]
    household, parcel = households[0], one.parcel
    country = country_name(parcel.country) if parcel.abroad else ""
    address = [part.strip() for part in household.address.split(",") if part.strip()]
    if country and address and address[-1].casefold() == country.casefold():
        address.pop()  # it stands below, in letters of its own
    sender = pack.offering.giving.address.split(",")
    return {
        "number": one.baskets[0].number,  # of its design
        "numbers": ", ".join(str(basket.number) for basket in one.baskets),
        "household": join_and(tuple(dict.fromkeys(each.name for each in households))),
        "to": join_and(tuple(dict.fromkeys(each.to or each.name for each in households))),
        "address": address,
        "country": country,
        "sender": pack.offering.giving.from_,
        "sender_address": [part.strip() for part in sender if part.strip()],
        "customs": _customs(pack, one.baskets, parcel.country) if parcel.abroad else None,
    }


def _customs(pack: Pack, baskets: Iterable[Basket], country: str) -> dict[str, Any]:
    """Return a parcel's contents, each with weight and value, and both in all where known."""
    own = [present for basket in baskets for present in pack.making.of_basket(basket.number)]
    weights = [pack.offering.offer(present.key).weighs for present in own]
    values = [_value(pack, present) for present in own]
    return {
        "rows": [
            {
                "what": _plain_words(pack, present),
                "weight": _grams(weight),
                "value": _money(pack, value),
            }
            for present, weight, value in zip(own, weights, values, strict=True)
        ],
        "weight": _grams(_sum(weights)),
        "value": _money(pack, _sum(values)),
        "within_union": {country, pack.offering.settings.country} <= _UNION,
    }


def _plain_words(pack: Pack, present: Present) -> str:
    """Return what a thing is: its title, a cook's word for it, what is in it and how strong it is.

    What a kind is made of in general is never declared: an infusion may be of vinegar.
    """
    recipe, card = present.recipe, card_of(pack, present)
    words = spoken_of(recipe)
    if not recipe.kind.is_eaten:
        return f"1 {recipe.title}: {words}, not to be eaten"
    held = [entry.whole for entry in card.contents]
    more = len(held) - _TOLD
    named = ", ".join(held[:_TOLD]) + (f" and {counted(more, 'thing')} more" if more > 0 else "")
    of = f" ({named})" if held else ""
    strong = f"; {card.strength_text}" if card.strength_text else ""
    animals = "" if recipe.kind.edible else ", for animals"
    return f"1 {recipe.title}: {words}{of}{animals}{strong}"


def _value(pack: Pack, present: Present) -> Fraction | None:
    """Return what a present is worth: a like thing in a shop, else what it cost, where known."""
    shop = pack.offering.makes[present.key].shop_price
    if shop is not None:
        return shop
    if present.from_shelf:
        return _to_make_again(pack, present)
    if present.batch in pack.costs.open_batches:
        return None
    return pack.costs.presents[present.basket, present.key] or None


def _to_make_again(pack: Pack, present: Present) -> Fraction | None:
    """Return what one like it costs to make at the list's prices; None where one has none."""
    prices, offer = pack.offering.prices, pack.offering.offer(present.key)
    batch = cost_batch(needs_of(present.recipe, prices))
    jar = prices.find(offer.container) if offer.container else None
    if set(batch.unpriced) - {"water"} or (offer.container and jar is None):
        return None
    share = Fraction(offer.share) * batch.total
    return share + (cost_of_use(Fraction(1), jar) if jar else 0)


def _sum(values: list[Fraction | None]) -> Fraction | None:
    known = [value for value in values if value is not None]
    return sum(known, Fraction(0)) if len(known) == len(values) else None


def _grams(value: Fraction | None) -> str:
    return NOT_KNOWN if value is None else f"{show_decimal(value, 0)} g"


def _money(pack: Pack, value: Fraction | None) -> str:
    return NOT_KNOWN if value is None else pack.money(value)
