"""Who is given nothing of what they like best, and why of each liking.

A liking that may not be given them weighs nothing in a plan, and is told all the same. Leaves out
what must be had: explaining.py.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping

from stillroom.giving.model import SORT_WORDS
from stillroom.giving.plan_model import Basket, Offer, PlanProblem, agree

Gifts = Mapping[int, tuple[str, ...]]


def of_liked(problem: PlanProblem, gifts: Gifts) -> dict[str, dict[str, Offer]]:
    """Return the households that have nothing they like: the liked offers of each, by recipe."""
    recipes = {offer.key: offer.recipe for offer in problem.offers}
    first: dict[str, int] = {}
    liked: dict[str, dict[str, Offer]] = defaultdict(dict)
    served: set[str] = set()
    for basket in problem.baskets:
        own = first.setdefault(basket.household, basket.number)
        for offer in problem.offers:
            if (own, offer.recipe) in problem.liked:
                liked[basket.household].setdefault(offer.recipe, offer)
        if any((own, recipes[key]) in problem.liked for key in gifts[basket.number]):
            served.add(basket.household)
    return {name: offers for name, offers in liked.items() if name not in served}


def say_likes_missed(problem: PlanProblem, gifts: Gifts) -> Iterator[str]:
    """Yield a sentence for each household without anything they like, with why of each liking."""
    for name, offers in of_liked(problem, gifts).items():
        baskets = [one for one in problem.baskets if one.household == name]
        whys = [_why(problem, baskets, offer) for offer in offers.values()]
        yield f"{name}: nothing of what they like is given them. {' '.join(dict.fromkeys(whys))}"


def _why(problem: PlanProblem, baskets: list[Basket], offer: Offer) -> str:
    open_to = [one for one in baskets if one.room.get(offer.sort)]
    refused = [problem.refused.get((one.number, offer.key), ()) for one in open_to or baskets]
    kept = f"{refused[0][0].said_of([offer.title]).rstrip('.')}" if all(refused) else ""
    if not open_to:
        no_room = f"their basket has no place for a {SORT_WORDS[offer.sort]}"
        return f"{kept}, and {no_room}." if kept else f"{offer.title}: {no_room}."
    if kept:
        return f"{kept}."
    brew = next((one for one in problem.brews if one.recipe == offer.recipe), None)
    if brew and not brew.choices and not offer.shelf:
        return f"{(brew.too_late or f'It is too late for {offer.title}').rstrip('.')}."
    verb = agree(offer.title, "was", "were")
    return f"{offer.title} {verb} left out for the sake of everything else."
