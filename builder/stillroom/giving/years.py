"""What each household had in earlier years, and that nobody has the same twice running.

Unless they like it, or must have it. Pure.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from stillroom.giving.model import GivingList, Household
from stillroom.giving.plan_model import Basket, Offer, Reason

_LAST_YEAR = Reason(
    "was theirs last year, and is not among what they like",
    "were theirs last year, and are not among what they like",
)
Refused = Mapping[tuple[int, str], tuple[Reason, ...]]


def years_since_had(
    giving: GivingList, baskets: tuple[Basket, ...], households: Mapping[int, Household]
) -> dict[tuple[int, str], int]:
    """Return how many years ago each basket's household had a recipe; what they like is no matter.

    What they must have is none either.
    """
    found: dict[tuple[int, str], int] = {}
    for basket in baskets:
        household = households[basket.number]
        wanted = {*household.likes, *household.must_have}
        for year, slugs in household.had.items():
            for slug in slugs:
                if slug in wanted:
                    continue
                since = giving.giving_day.year - year
                known = found.get((basket.number, slug), since)
                found[basket.number, slug] = max(1, min(since, known))
    return found


def without_last_year(
    refused: Refused, offers: tuple[Offer, ...], since: Mapping[tuple[int, str], int]
) -> dict[tuple[int, str], tuple[Reason, ...]]:
    """Return what is refused, and besides what a household had last year."""
    found = dict(refused)
    for (number, slug), years in since.items():
        if years > 1:
            continue
        for offer in offers:
            if offer.recipe == slug:
                found[number, offer.key] = (*found.get((number, offer.key), ()), _LAST_YEAR)
    return found


def years_data(giving: GivingList, titles: Mapping[str, str]) -> list[dict[str, Any]]:
    """Return who had what in which year, and their word on it, the latest year first."""
    rows = []
    for household in giving.households:
        years = sorted({*household.had, *household.said}, reverse=True)
        told = [
            {
                "year": year,
                "things": [titles.get(slug, slug) for slug in household.had.get(year, ())],
                "said": list(household.said.get(year, ())),
            }
            for year in years
        ]
        if told:
            rows.append({"household": household.name, "years": told})
    return rows
