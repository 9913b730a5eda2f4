"""Which presents are never for which household, each with its reason, before any planning.

What the household avoids, and the rules of rules.yml (children, pregnancy, post). Only the
answer "free" is safe; "not known" is not. Leaves out likes and money: planning.py weighs those.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from importlib.resources import files
from typing import Any

import yaml

from stillroom.core.allergens.avoiding import avoided_by_name, read_avoided
from stillroom.giving.facts import Answer, Facts
from stillroom.giving.model import Household
from stillroom.giving.plan_model import Reason

KEEPS_AFTER_DAYS = 7  # common practice, no published source: a week to get round to it
KEEPS_AFTER_POST_DAYS = 14
YOUNG_MONTHS = 60  # NHS, What to feed young children: what chokes and what harms, to five years


@dataclass(frozen=True)
class HouseholdRule:
    """A row of rules.yml."""

    row: dict[str, Any]

    @property
    def reason(self) -> Reason:
        """Why, of one thing and of several."""
        return Reason(self.row["one"], self.row["many"])

    def concerns(self, household: Household) -> bool:
        """Whether the rule holds for a household."""
        when = self.row["when"]
        if when == "children only":
            return household.adults == 0
        if when == "pregnant":
            return household.pregnant
        if when == "no pets":
            return not household.pets
        if when == "by post":
            return household.delivery == "by post"
        return any(age < self.row["months"] for age in household.children)

    def catches(self, facts: Facts) -> bool:
        """Whether a recipe falls under the rule; what is not known does."""
        if self.row.get("alcohol"):
            return facts.alcohol != "free"
        kind = facts.recipe.kind.name
        if kind in self.row.get("kinds", ()):
            return True
        if "kinds_and_tags" in self.row and kind not in self.row["kinds_and_tags"]:
            return False
        if "above_strength" in self.row:
            return facts.strength > self.row["above_strength"] and _stays_strong(facts)
        if not (self.row.get("tags") or self.row.get("animal")):
            return False
        return any(self._in(item, staples) for item, staples in self._looked_at(facts))

    def _looked_at(self, facts: Facts) -> list[tuple[str, tuple[Any, ...]]]:
        only_left = self.row.get("left_in", False)
        return [
            (held.ingredient.item.lower(), held.staples)
            for held in facts.held
            if held.stays or not only_left
        ]

    def _in(self, item: str, staples: tuple[Any, ...]) -> bool:
        if any(word in item for word in self.row.get("except_words", ())):
            return False
        tags = frozenset(self.row.get("tags", ()))
        animal = frozenset(self.row.get("animal", ()))
        return any(
            staple is None or staple.tags & tags or animal & set(staple.animal)
            for staple in staples
        )


def _stays_strong(facts: Facts) -> bool:
    """Whether the spirit is not let down with water or syrup."""
    return not any(staple and staple.tags & {"water", "syrup"} for staple in facts.staples)


@cache
def household_rules() -> tuple[HouseholdRule, ...]:
    """Return the rules of rules.yml."""
    text = (files("stillroom.giving") / "rules.yml").read_text(encoding="utf-8")
    return tuple(HouseholdRule(row) for row in yaml.safe_load(text))


def why_refused(
    household: Household,
    facts: Facts,
    giving_day: date,
    keep_until: date | None = None,
    by_post: bool | None = None,
) -> tuple[Reason, ...]:
    """Return every reason why a present is not for a household, the gravest first; none is safe.

    `keep_until` is the day it keeps to unopened (None: not known), `by_post` the maker's own word.
    """
    reasons = list(_unchecked(household, facts))
    reasons += [reason for word in household.avoid for reason in _avoided(word, household, facts)]
    reasons += [
        reason
        for words in household.avoid_ingredients
        for reason in _reasons(words, facts.answer(avoided_by_name(words)), False)
    ]
    reasons += [
        rule.reason
        for rule in household_rules()
        if rule.concerns(household) and rule.catches(facts)
    ]
    if any(age < facts.youngest_months for age in household.children):
        years = facts.youngest_months // 12
        words = f"not for children under {years}, by the maker's own caution"
        reasons.append(Reason(f"is {words}", f"are {words}"))
    posted = household.delivery == "by post"
    if posted and by_post is False:
        reasons.append(Reason("never goes by post", "never go by post"))
    margin = timedelta(days=KEEPS_AFTER_POST_DAYS if posted else KEEPS_AFTER_DAYS)
    if keep_until is not None and keep_until < giving_day + margin:
        words = f"until {margin.days} days after giving day"
        reasons.append(Reason(f"does not keep {words}", f"do not keep {words}"))
    if facts.recipe.slug in household.never:
        reasons.append(Reason("is on their list of never", "are on their list of never"))
    return tuple(dict.fromkeys(reasons))


def _unchecked(household: Household, facts: Facts) -> tuple[Reason, ...]:
    """Refuse what could not be checked to whoever has something to be checked for."""
    young = any(age < YOUNG_MONTHS for age in household.children)
    wary = household.avoid or household.avoid_ingredients or household.pregnant or young
    if not facts.unknown or not wary or not facts.recipe.kind.is_eaten:
        return ()
    named = " and ".join(f"“{word}”" for word in facts.unknown)
    words = f"could not be checked, because {named} is not known"
    return (Reason(words, words),)


def _avoided(word: str, household: Household, facts: Facts) -> tuple[Reason, ...]:
    avoid = read_avoided(word)
    if avoid is None or avoid.ask:
        return _reasons(word, "not known", False)
    traces_fine = word in household.traces_are_fine
    return _reasons(avoid.said, facts.answer(avoid), traces_fine)


def _reasons(word: str, answer: Answer, traces_fine: bool) -> tuple[Reason, ...]:
    if answer == "free" or (answer == "may contain" and traces_fine):
        return ()
    if answer == "contains":
        return (Reason(f"contains {word}", f"contain {word}"),)
    if answer == "may contain":
        return (Reason(f"may contain {word}", f"may contain {word}"),)
    words = f"not known to be free of {word}"
    return (Reason(f"is {words}", f"are {words}"),)
