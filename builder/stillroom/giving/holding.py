"""Which present may go into which basket: whom it harms, when it is ready, what it is filled into.

Puts together the rules of people (rules.py), of parcels (posting.py) and of days. Leaves out likes
and money: planning.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

from stillroom.core.book import BookSettings
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import latest_start_usable, plan_forward
from stillroom.core.words.day_words import say_day
from stillroom.giving.facts import GiftFacts
from stillroom.giving.model import GivingList, Household, Make, container_words
from stillroom.giving.plan_model import Basket, Brew, Lot, Offer, Reason, StartChoice
from stillroom.giving.posting import Parcel, why_not_posted
from stillroom.giving.rules import KEEPS_AFTER_DAYS, KEEPS_AFTER_POST_DAYS, why_refused
from stillroom.giving.starting import keeps_until


def days_left(household: Household) -> int:
    """Return how many days a present must still be good for on the day it is opened."""
    if household.days_left is not None:
        return household.days_left
    return KEEPS_AFTER_POST_DAYS if household.delivery == "by post" else KEEPS_AFTER_DAYS


@dataclass(frozen=True)
class Holding:
    """What decides whether an offer is for a basket."""

    giving: GivingList
    makes: Mapping[str, Make]
    facts: Mapping[str, GiftFacts]
    brews: Mapping[str, Brew]
    parcels: Mapping[str, Parcel]
    settings: BookSettings
    today: date
    recipes: Mapping[str, Recipe]

    def reasons(self, basket: Basket, household: Household, offer: Offer) -> tuple[Reason, ...]:
        """Return every reason against it, the gravest first."""
        make, facts = self.makes[offer.key], self.facts[offer.recipe]
        giving_day, home = self.giving.giving_day, self.settings.country
        return (
            *why_refused(household, facts, giving_day, None, make.by_post, self.settings),
            *why_not_posted(
                self.parcels.get(household.name),
                home,
                facts,
                offer.container,
                self.today,
                make.by_post,
            ),
            *self._in_no_time(basket, household, offer),
            *self._in_no_container(basket, offer),
        )

    def _in_no_time(self, basket: Basket, household: Household, offer: Offer) -> Iterator[Reason]:
        """Yield that neither shelf nor any start has it ready in time and keeping long enough."""
        brew = self.brews.get(offer.recipe)
        sources: list[StartChoice | Lot] = [*(brew.choices if brew else ()), *offer.shelf]
        if not sources or any(basket.takes(source) for source in sources):
            return
        in_time = any(replace(basket, keeps_to=None).takes(source) for source in sources)
        if in_time or self._keeps_too_short(basket, offer):
            day = f"{days_left(household)} days after "
            day += say_day(household.opens) if household.opens else "giving day"
            if self.recipes[offer.recipe].lasts is None:
                words = f"not known to keep until {day}: write how long in the recipe"
                yield Reason(f"is {words}", f"are {words}")
            else:
                yield Reason(f"does not keep until {day}", f"do not keep until {day}")
        else:
            due = f"by {say_day(basket.ready_by or self.giving.giving_day)}, when it is posted"
            yield Reason(f"cannot be ready {due}", f"cannot be ready {due}")

    def _keeps_too_short(self, basket: Basket, offer: Offer) -> bool:
        """Whether what is made as late as can be for the post does not keep until it is opened.

        No start is laid out for that: biscuits baked in the week of posting are ready in time.
        """
        recipe, due = self.recipes[offer.recipe], basket.ready_by
        if due is None or basket.keeps_to is None:
            return False
        start = latest_start_usable(recipe, due)
        timeline = plan_forward(recipe, start, due)
        until = keeps_until(recipe, timeline.made, timeline.keep_until)
        return start >= self.today and until is not None and until < basket.keeps_to

    def _in_no_container(self, basket: Basket, offer: Offer) -> Iterator[Reason]:
        allowed = {container_words(one) for one in self.giving.baskets[basket.kind].containers}
        if allowed and offer.container not in allowed:
            words = f"a {basket.kind} basket's containers"
            yield Reason(f"is not in {words}", f"are not in {words}")
