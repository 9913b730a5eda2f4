"""What a plan's maker must know beside the plan: parcels, seasons, pans, what is left over.

Each is said with what is not known about it. Leaves out what a plan cannot do: explaining.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.amounts.money import show_money
from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.countries import country_name
from stillroom.core.words.day_words import say_day
from stillroom.core.words.patterns import late_regex
from stillroom.giving.batches import Batch, Making
from stillroom.giving.in_season import foods_in_the_house, season_of, why_begun
from stillroom.giving.likes_missed import say_likes_missed
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Plan
from stillroom.giving.posting import to_ask
from stillroom.giving.taking import pans_not_known
from stillroom.giving.together import Shipment, shipments

_LIKES = late_regex(
    r"(?:(?:s?he|they|we|i) )?(?:really |absolutely |just )*"
    r"(?:loves?|likes?|adores?|enjoys?|(?:is|are) (?:very )?(?:fond of|partial to))\b",
    re.IGNORECASE,
)


def notices(offering: Offering, plan: Plan, making: Making) -> tuple[str, ...]:
    """Return everything to know, parcels first, each once."""
    said = [
        *_parcels(offering, plan),
        *_allowed_again(offering),
        *say_likes_missed(offering.problem, plan.gifts),
        *_of_batches(offering, making),
        *(left for batch in making.batches if (left := left_over(offering, plan, batch))),
    ]
    return tuple(dict.fromkeys(said))


def _allowed_again(offering: Offering) -> Iterator[str]:
    """Say of what a household's needs allow again that it is left out all the same."""
    for household in offering.giving.households:
        for word in household.avoid:
            found = read_avoided(word)
            for allowed in found.allowed if found else ():
                if _LIKES.match(allowed):
                    yield (
                        f"{household.name}: “{allowed}” is no need, and no reason for the plan. "
                        'Write the recipes that they like under "likes".'
                    )
                    continue
                yield (
                    f"{household.name}: “{allowed}” makes no difference here. Where it allows "
                    "something that they avoid, that is left out all the same."
                )


def _parcels(offering: Offering, plan: Plan) -> Iterator[str]:
    asked: dict[str, list[str]] = {}
    for one in shipments(offering, lambda number: plan.gifts[number]):
        yield _parcel(offering, one)
        gifts = [
            (offering.facts[offer.recipe], offer.container)
            for basket in one.baskets
            for key in plan.gifts[basket.number]
            for offer in [offering.offer(key)]
        ]
        for words, source in to_ask(one.parcel, offering.settings.country, gifts):
            names = (basket.household for basket in one.baskets)
            asked.setdefault(f"{words} Source: {source}.", []).extend(names)
    for words, households in asked.items():
        yield f"{words} For {', '.join(dict.fromkeys(households))}."


def _parcel(offering: Offering, one: Shipment) -> str:
    """Say when and how one parcel is posted, what it weighs and costs, and what is not known."""
    giving, settings, parcel = offering.giving, offering.settings, one.parcel
    to = f" to {country_name(parcel.country)}" if parcel.abroad else ""
    by = f" by {parcel.service.service}" if parcel.service else ""
    if parcel.day is None:
        when = f"the last day to post it{by}{to} is not known: ask, and write it under posting"
    else:
        when = f"post it{by}{to} on {say_day(parcel.day)} at the latest"
    if one.grams is None:
        weight = "What it weighs is not known, so neither is the postage."
    else:
        cost = parcel.postage(one.grams)
        price = (
            "the postage is not known"
            if cost is None
            else f"postage {show_money(cost, giving.currency, settings.language)}"
        )
        weight = f"It weighs {show_decimal(one.grams / 1000, 2)} kg: {price}."
    many = "Parcel" if len(one.baskets) == 1 else "One parcel, for they go to one address,"
    return f"{many} for {one.label}: {when}. {weight}"


def _of_batches(offering: Offering, making: Making) -> Iterator[str]:
    for batch in making.batches:
        if batch.aside:
            yield batch.aside
        country, month = offering.settings.country, batch.timeline.start.month
        season = season_of(batch.recipe, country, foods_in_the_house(offering.giving))
        if said := why_begun(batch.recipe, season, country, month):
            yield said
        if pans := pans_not_known(offering.giving, batch.recipe, batch.count):
            yield f"{batch.recipe.title}, {batch.name}: {pans}"


def left_over(offering: Offering, plan: Plan, batch: Batch) -> str:
    """Name what is left of a batch and a use for it; "" where nothing is."""
    if not batch.spare:
        return ""
    offers = [offer for offer in offering.problem.offers if offer.recipe == batch.recipe.slug]
    offer = min(offers, key=lambda one: one.share)
    whole = int(batch.spare / offer.share)
    named = f"{batch.recipe.title}, {batch.name}"
    if not whole:
        part = show_decimal(batch.spare * 100, 0)
        return (
            f"{named}: {part} % of the recipe is left, less than one {offer.container}: taste it."
        )
    until = batch.timeline.keep_until
    keeps = f", good until {say_day(until)}" if until else ""
    could = next(
        (
            basket.household
            for basket in offering.problem.baskets
            if (basket.number, offer.key) not in offering.problem.refused
            and not any(
                offering.offer(key).recipe == offer.recipe for key in plan.gifts[basket.number]
            )
        ),
        None,
    )
    use = f", or one more for {could}" if could else ""
    return (
        f"{named}: {whole} x {offer.container} left over{keeps}: for the house, to stand in for "
        f"one that breaks{use}. Find what to fill it into: the shopping counts what is given."
    )
