"""A finished plan looked over again, by rules written a second time and in another way.

The planner filters by rules.py before it solves. This goes from the baskets back to the labels
and never asks rules.py or the solver: a mistake in one of them shows here, and the pack is not
written.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from stillroom.core.allergens.of_foods import answer_avoid, know_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.giving.model import Household
from stillroom.giving.offering import Offering
from stillroom.giving.plan_model import Plan

HONEY_MONTHS = 12
CHOKING_MONTHS = 60
_PEANUT_TOO = {"nuts": ("nuts", "peanut")}


def find_breaches(offering: Offering, plan: Plan) -> tuple[str, ...]:
    """Return every gift that breaks a rule, and every count that is not covered, in words."""
    return tuple(_unsafe(offering, plan)) + tuple(_uncovered(offering, plan))


def _unsafe(offering: Offering, plan: Plan) -> Iterator[str]:
    for basket in offering.problem.baskets:
        household = offering.households[basket.number]
        for key in plan.gifts[basket.number]:
            make = offering.makes[key]
            recipe = offering.recipes[make.recipe]
            for why in why_unsafe(household, recipe):
                yield f"{basket.label}: {recipe.title}: {why}."
            if household.delivery == "by post" and make.by_post is False:
                yield f"{basket.label}: {recipe.title}: it never goes by post."
            if recipe.slug in household.never:
                yield f"{basket.label}: {recipe.title}: on their list of never."


def why_unsafe(household: Household, recipe: Recipe) -> Iterator[str]:
    """Yield every reason against a recipe for a household, from its label alone."""
    for word in (*household.avoid, *household.avoid_ingredients):
        plain = word.strip().lower()
        asked = _PEANUT_TOO.get(plain) or (word,)
        fine = {"free", "may contain"} if word in household.traces_are_fine else {"free"}
        answers = {answer_avoid(recipe, name) for name in asked}
        if not answers <= fine:
            yield f"{word}: {', '.join(sorted(answers - fine))}"
    youngest = min(household.children, default=10_000)
    tags = {tag for one in know_recipe(recipe) for staple in one.staples for tag in staple.tags}
    animals = {
        name for one in know_recipe(recipe) for staple in one.staples for name in staple.animal
    }
    if (household.pregnant or household.adults == 0) and answer_avoid(recipe, "alcohol") != "free":
        yield "alcohol where nobody may have it"
    if youngest < HONEY_MONTHS and ("honey" in tags or "honey" in animals):
        yield "honey where there is a baby"
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
