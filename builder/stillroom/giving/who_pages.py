"""Who gets what, as a table, and why not: what the page of the plan says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.sentences import avoided_by_name
from stillroom.core.care.unchecked import could_not_check
from stillroom.giving.asked_back import leaves_out
from stillroom.giving.plan_model import Reason
from stillroom.giving.worked_out import Pack

# what a page says of any food that no row of avoided.yml explains
_ANY_FOOD = "the food of that name and all that is known to be made of it"
_CANNOT = "What only a packet tells is not known. Traces in a home kitchen cannot be ruled out."
_OWN = "the book's own larder"


def matrix_data(pack: Pack) -> dict[str, Any]:
    """Return baskets against offers, and household by household what they cannot have."""
    problem, plan = pack.offering.problem, pack.plan
    rows = []
    for basket in problem.baskets:
        cells = []
        for offer in problem.offers:
            reasons = problem.refused.get((basket.number, offer.key), ())
            given = offer.key in plan.gifts[basket.number]
            since = problem.years_since_had.get((basket.number, offer.recipe))
            cells.append(
                {
                    "mark": "given" if given else "no" if reasons else "had" if since else "free",
                    "why": "; ".join(reason.one for reason in reasons)
                    or (f"had {since} year{'s' if since != 1 else ''} ago" if since else ""),
                }
            )
        rows.append(
            {
                "number": basket.number,
                "household": basket.household,
                "kind": basket.kind,
                "cells": cells,
            }
        )
    offers = [
        {
            "title": offer.title,
            "sort": offer.sort,
            "count": plan.count_of(offer.key),
            "container": offer.container,
        }
        for offer in problem.offers
    ]
    return {"offers": offers, "rows": rows, "refusals": _refusals(pack)}


def _refusals(pack: Pack) -> list[dict[str, Any]]:
    """Return, household by household, what they cannot have and why."""
    problem, seen, found = pack.offering.problem, set(), []
    for basket in problem.baskets:
        if basket.household in seen:
            continue
        seen.add(basket.household)
        by_reason: dict[Reason, list[str]] = {}
        for offer in problem.offers:
            for reason in problem.refused.get((basket.number, offer.key), ())[:1]:
                by_reason.setdefault(reason, []).append(offer.title)
        if by_reason:
            found.append(
                {
                    "household": basket.household,
                    "lines": [reason.said_of(titles) for reason, titles in by_reason.items()],
                }
            )
    return found


def unchecked_data(pack: Pack) -> list[dict[str, Any]]:
    """Return every make with a food that is not known, why, and who is given it all the same."""
    given: dict[str, list[str]] = {}
    for number, keys in pack.plan.gifts.items():
        household = pack.offering.households[number]
        there = ["children"] if household.children else []
        there += ["animals"] if household.pets else []
        who = f"{household.name} ({' and '.join(there)} there)" if there else household.name
        for key in keys:
            given.setdefault(pack.offering.makes[key].recipe, []).append(who)
    slugs = dict.fromkeys(make.recipe for make in pack.offering.makes.values())
    return [
        {
            "title": pack.offering.recipes[slug].title,
            "whys": could_not_check(pack.offering.recipes[slug]),
            "to": tuple(dict.fromkeys(given.get(slug, ()))),
        }
        for slug in slugs
        if slug in pack.offering.recipes and could_not_check(pack.offering.recipes[slug])
    ]


def checked_data(pack: Pack) -> list[dict[str, Any]]:
    """Return what was looked for on whose behalf, and what that cannot promise."""
    found: dict[str, dict[str, Any]] = {}
    for household in pack.offering.giving.households:
        for word in filter(leaves_out, household.avoid):
            for avoid in _explained(avoided_by_name(word)):
                said = {"means": avoid.means, "cannot": avoid.cannot, "source": avoid.source}
                row = found.setdefault(avoid.meant, {"word": avoid.meant, "who": [], **said})
                if household.name not in row["who"]:
                    row["who"].append(household.name)
    return list(found.values())


def _explained(avoid: Avoided) -> Iterator[Avoided]:
    """Yield every part of what is avoided, with what a page says it means."""
    if avoid.means:
        yield avoid
    elif avoid.of:
        for one in avoid.of:
            yield from _explained(one)
    elif not avoid.ask:
        meant = avoid.meant or avoid.word
        yield replace(avoid, meant=meant, means=_ANY_FOOD, cannot=_CANNOT, source=_OWN)
