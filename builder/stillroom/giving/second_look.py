"""A finished plan looked over again, by rules written a second time and in another way.

The planner filters by rules.py before it solves. This goes from the baskets back to the labels
and never asks rules.py or the solver, only the second check (second_check.py): a mistake in one of
them shows here, and the pack is not written.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from stillroom.core.allergens.of_foods import answer_avoid
from stillroom.core.book import BookSettings
from stillroom.core.recipe.model import Recipe
from stillroom.giving.model import Household
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Plan
from stillroom.giving.second_check import needs_of_household, print_label
from stillroom.giving.second_post import find_late_and_heavy

CHOKING_MONTHS = 60


def find_breaches(offering: Offering, plan: Plan) -> tuple[str, ...]:
    """Return every gift that breaks a rule, is late or heavy, and every count not covered."""
    return (
        *_unsafe(offering, plan),
        *find_late_and_heavy(offering, plan),
        *_uncovered(offering, plan),
    )


def _unsafe(offering: Offering, plan: Plan) -> Iterator[str]:
    for basket in offering.problem.baskets:
        household = offering.households[basket.number]
        for key in plan.gifts[basket.number]:
            make = offering.makes[key]
            recipe = offering.recipes[make.recipe]
            for why in why_unsafe(household, recipe, offering.settings):
                yield f"{basket.label}: {recipe.title}: {why}."
            if household.delivery == "by post" and make.by_post is False:
                yield f"{basket.label}: {recipe.title}: it never goes by post."
            if recipe.slug in household.never:
                yield f"{basket.label}: {recipe.title}: kept from them by the list or the log."


def why_unsafe(household: Household, recipe: Recipe, settings: BookSettings) -> Iterator[str]:
    """Yield every reason against a recipe for a household, from its label and safety box alone."""
    printed = print_label(recipe, settings)
    words = (*household.avoid, *household.avoid_ingredients)
    for word, avoid in zip(words, needs_of_household(household), strict=True):
        fine = {"free", "may contain"} if word in household.traces_are_fine else {"free"}
        answer = printed.answer(avoid)
        if avoid.ask or answer not in fine:
            yield f"{word}: {answer}"
    for caution, _ in printed.against(household):
        yield caution
    alone = household.pregnant or household.adults == 0
    if alone and answer_avoid(recipe, "alcohol") != "free" and recipe.kind.is_eaten:
        yield "alcohol where nobody may have it"
    youngest = min(household.children, default=10_000)
    if youngest < CHOKING_MONTHS and recipe.kind.is_("sweet"):
        yield "a sweet to choke on where there is a small child"
    if household.delivery == "by post" and recipe.kind.is_("living"):
        yield "a ferment in the post"


def _uncovered(offering: Offering, plan: Plan) -> Iterator[str]:
    problem = offering.problem
    made = Counter({brew.recipe: 0 for brew in problem.brews})
    for batch in plan.batches:
        made[batch.recipe] += batch.count
    for brew in problem.brews:
        taken = sum(
            offer.share * max(0, plan.count_of(offer.key) - offer.on_hand)
            for offer in problem.offers
            if offer.recipe == brew.recipe
        )
        if taken > made[brew.recipe]:
            yield f"{brew.title}: {made[brew.recipe]} batches do not give what the plan gives away."
