"""A price in the place of one that is not known, so that a plan does not drift to what has none.

What has no price would cost nothing in a plan that spends as little as it can. Until its price is
written, a batch with something unpriced in it is taken to cost what the priced presents on offer
usually do, in the planning alone: no sum that is shown has any of it.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from fractions import Fraction
from statistics import median

from stillroom.giving.money.buying import PackOffer
from stillroom.giving.money.costing import Need, cost_batch
from stillroom.giving.plan_model import Brew, Offer, Purchase

FREE = frozenset({"water"})
"""What costs nothing and is never bought."""


def unpriced_recipes(
    needs: Mapping[str, tuple[Need, ...]], in_the_house: Collection[str]
) -> frozenset[str]:
    """Return the recipes that need something without a price that is not in the house."""
    known = FREE | set(in_the_house)
    return frozenset(
        slug
        for slug, lines in needs.items()
        for one in lines
        if one.entry is None and one.item not in known and not one.tool
    )


def with_stand_ins(
    offers: tuple[Offer, ...],
    brews: tuple[Brew, ...],
    needs: Mapping[str, tuple[Need, ...]],
    in_the_house: Collection[str],
) -> tuple[tuple[Offer, ...], tuple[Brew, ...], tuple[Purchase, ...]]:
    """Return offers, brews and what stands in for prices not known; all as they were without any.

    The usual cost is the median of the presents whose every ingredient has a price.
    """
    unpriced = unpriced_recipes(needs, in_the_house)
    worths = [one.worth for one in offers if one.recipe not in unpriced and one.worth]
    if not unpriced or not worths:
        return offers, brews, ()
    usual = _to_pence(Fraction(median(worths)))
    raised = tuple(
        replace(one, worth=max(one.worth, usual)) if one.recipe in unpriced else one
        for one in offers
    )
    filled = {one.recipe: max(1 / each.share for each in offers if each.recipe == one.recipe)
              for one in brews}  # fmt: skip
    changed, bought = [], []
    for brew in brews:
        short = usual * filled[brew.recipe] - cost_batch(needs[brew.recipe]).total
        if brew.recipe not in unpriced or short <= 0:
            changed.append(brew)
            continue
        item = f"what has no price: {brew.title}"
        changed.append(replace(brew, needs={**brew.needs, item: Fraction(1)}))
        bought.append(Purchase(item, (PackOffer(Fraction(1), _to_pence(short)),)))
    return raised, tuple(changed), tuple(bought)


def _to_pence(value: Fraction) -> Fraction:
    return Fraction(round(value * 100), 100)
