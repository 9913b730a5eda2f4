"""Which presents are never for which household, each with its reason, before any planning.

What the household avoids, the rules of rules.yml (children, pregnancy, post) and the cautions of
the safety box. What is avoided is looked for twice, in the foods (facts.py) and on the label
(second_check.py); only what both call "free" is safe. Leaves out likes and money: planning.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

import yaml

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.sentences import avoided_by_name
from stillroom.core.book import BookSettings
from stillroom.core.care.soap import stands_too_short
from stillroom.core.method.heat import cooked_places
from stillroom.core.recipe.model import Recipe
from stillroom.giving.answers import WORSE, Answer
from stillroom.giving.facts import GiftFacts, Held, facts_of
from stillroom.giving.model import Household
from stillroom.giving.plan_model import Reason
from stillroom.giving.receivers import pets_named
from stillroom.giving.second_check import Printed, needs_of_household, print_label

KEEPS_AFTER_DAYS = 7  # common practice, no published source: a week to get round to it
KEEPS_AFTER_POST_DAYS = 14
_ONLY_EATEN = frozenset({"salt", "sugar"})
"""Counted by whoever eats them: salts for the bath are no matter."""
EXPECTING = "{expecting}"
"""Stands in a limit for what was said of them: "pregnant", or "breastfeeding"."""
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
        if when == "anyone":
            return True
        if when == "children only":
            return household.adults == 0
        if when == "pregnant":
            return bool(household.pregnant)
        if when == "no pets":
            return not household.pets & set(self.row["pets"])
        if when == "pets":
            return bool(household.pets & set(self.row["pets"]))
        if when == "by post":
            return household.delivery == "by post"
        return any(age < self.row["months"] for age in household.children)

    def catches(self, facts: GiftFacts) -> bool:
        """Whether a recipe falls under the rule; what is not known does."""
        if "young_soap" in self.row:
            return bool(facts.recipe.timeline and stands_too_short(facts.recipe))
        kind = facts.recipe.kind.name
        if kind in self.row.get("kinds", ()):
            return True
        if "kinds_and_tags" in self.row and kind not in self.row["kinds_and_tags"]:
            return False
        if "above_strength" in self.row:
            return facts.strength > self.row["above_strength"] and _stays_strong(facts)
        if not (self.row.get("tags") or self.row.get("animal")):
            return False
        steps = " ".join(step.text for step in facts.recipe.method)
        if "when_method" in self.row and not re.search(self.row["when_method"], steps, re.I):
            return False
        if "unless_method" in self.row and re.search(self.row["unless_method"], steps, re.I):
            return False
        return any(self._in(item, staples, facts) for item, staples in self._looked_at(facts))

    def is_warned_of(self, facts: GiftFacts, printed: Printed) -> bool:
        """Whether the safety box warns of it by a caution that the rule names."""
        if facts.recipe.kind.name in self.row.get("not_kinds", ()):
            return False
        if self.row.get("unless_alcohol") and facts.alcohol == "contains":
            return False
        return any(name in self.row["cautions"] for name, _ in printed.cautions)

    def _looked_at(self, facts: GiftFacts) -> list[tuple[str, tuple[Any, ...]]]:
        only_left = self.row.get("left_in", False)
        heated = cooked_places(facts.recipe) if self.row.get("unless_heated") else frozenset()
        return [
            (held.ingredient.item.lower(), held.staples)
            for place, held in enumerate(facts.held)
            if (held.stays or not only_left) and place not in heated and self._speaks_of(held)
        ]

    def _speaks_of(self, held: Held) -> bool:
        """Whether the words of a line are those of the rule: "cider vinegar, unpasteurised"."""
        said = f"{held.ingredient.item} {held.ingredient.note}"
        return bool(re.search(self.row.get("only_words", ""), said, re.IGNORECASE))

    def _in(self, item: str, staples: tuple[Any, ...], facts: GiftFacts) -> bool:
        if any(word in item for word in self.row.get("except_words", ())):
            return False
        tags = frozenset(self.row.get("tags", ()))
        animal = frozenset(self.row.get("animal", ()))
        return any(
            (staple is None and facts.unread)
            or (staple and (staple.tags & tags or animal & set(staple.animal)))
            for staple in staples
        )


def _stays_strong(facts: GiftFacts) -> bool:
    """Whether the spirit is not let down with water or syrup."""
    return not any(staple and staple.tags & {"water", "syrup"} for staple in facts.staples)


@cache
def household_rules() -> tuple[HouseholdRule, ...]:
    """Return the rules of rules.yml."""
    text = (files("stillroom.giving") / "rules.yml").read_text(encoding="utf-8")
    return tuple(HouseholdRule(row) for row in yaml.safe_load(text))


def limits_of(household: Household) -> tuple[str, ...]:
    """Return what a household must not get for who lives there, as a basket's sheet says it."""
    expecting = "pregnant" if household.pregnant is True else household.pregnant
    told = (
        rule.row["limit"].replace(EXPECTING, str(expecting))
        for rule in household_rules()
        if "limit" in rule.row and rule.concerns(household)
    )
    return tuple(told)


def why_refused(
    household: Household,
    facts: GiftFacts,
    giving_day: date,
    keep_until: date | None = None,
    by_post: bool | None = None,
    settings: BookSettings | None = None,
) -> tuple[Reason, ...]:
    """Return every reason why a present is not for a household, the gravest first; none is safe.

    `keep_until` is the day it keeps to unopened (None: not known), `by_post` the maker's own word,
    `settings` those of the book, whose country chooses the safety box and the label.
    """
    printed = print_label(facts.recipe, settings or BookSettings())
    reasons = list(_unchecked(household, facts))
    for word, avoid in zip(
        (*household.avoid, *household.avoid_ingredients), needs_of_household(household), strict=True
    ):
        reasons += _avoided(avoid, facts, printed, word in household.traces_are_fine)
    for rule in household_rules():
        if rule.concerns(household):
            reasons += _by_rule(rule, facts, printed)
    reasons += _for_other_animals(household, facts)
    for caution, _ in printed.against(household):
        reasons.append(Reason(f"is not for them: “{caution}”", f"are not for them: “{caution}”"))
    posted = household.delivery == "by post"
    if posted and by_post is False:
        reasons.append(Reason("never goes by post", "never go by post"))
    margin = timedelta(days=KEEPS_AFTER_POST_DAYS if posted else KEEPS_AFTER_DAYS)
    if keep_until is not None and keep_until < giving_day + margin:
        words = f"until {margin.days} days after giving day"
        reasons.append(Reason(f"does not keep {words}", f"do not keep {words}"))
    if facts.recipe.slug in household.never:
        reasons.append(
            Reason("is kept from them by your own word", "are kept from them by your own word")
        )
    return tuple(dict.fromkeys(reasons))


def _by_rule(rule: HouseholdRule, facts: GiftFacts, printed: Printed) -> tuple[Reason, ...]:
    """Return why a rule keeps a present away; whether it holds alcohol is asked of both checks."""
    if "cautions" in rule.row:
        return (rule.reason,) if rule.is_warned_of(facts, printed) else ()
    if not rule.row.get("alcohol"):
        return (rule.reason,) if rule.catches(facts) else ()
    alcohol = avoided_by_name("alcohol")
    answer = max(check_twice(facts.recipe, alcohol, printed), key=WORSE.index)
    return (rule.reason,) if answer == "contains" else _reasons(alcohol, answer, False)


def _unchecked(household: Household, facts: GiftFacts) -> tuple[Reason, ...]:
    """Refuse what could not be checked to whoever has something to be checked for."""
    if not facts.unknown or not is_wary(household) or not facts.recipe.kind.is_eaten:
        return ()
    named = " and ".join(f"“{word}”" for word in facts.unknown)
    words = f"could not be checked, because {named} is not known"
    return (Reason(words, words),)


def _for_other_animals(household: Household, facts: GiftFacts) -> tuple[Reason, ...]:
    """Refuse biscuits for dogs to a house with a cat."""
    kinds = pets_named(facts.recipe.title) or pets_named(facts.recipe.summary)
    if facts.recipe.kind.eaten_by != "pets" or not kinds or kinds & household.pets:
        return ()
    words = f"for a {' or a '.join(sorted(kinds))}, and none is said to live there"
    return (Reason(f"is {words}", f"are {words}"),)


def is_wary(household: Household) -> bool:
    """Whether anything at all must be kept from a household: then nothing unknown goes to it."""
    young = any(age < YOUNG_MONTHS for age in household.children)
    named = household.avoid or household.avoid_ingredients
    return bool(named or household.pregnant or young or household.adults == 0)


def _avoided(avoid: Avoided, facts: GiftFacts, printed: Printed, traces_fine: bool) -> list[Reason]:
    """Hold one thing avoided against both checks; where they differ it is withheld and told."""
    if avoid.ask:
        return list(_reasons(avoid, "not known", False))
    if avoid.meant in _ONLY_EATEN and not facts.recipe.kind.is_eaten:
        return []
    if avoid.of and not avoid.meant:  # a sentence: what of it a present holds is told by its name
        each = (_avoided(one, facts, printed, traces_fine) for one in avoid.of)
        return list(dict.fromkeys(reason for reasons in each for reason in reasons))
    first, second = check_twice(facts.recipe, avoid, printed)
    much = _how_much_sugar(facts) if avoid.meant == "sugar" else ""
    reasons = list(_reasons(avoid, max(first, second, key=WORSE.index), traces_fine, much))
    if "contains" in (first, second) and "free" in (first, second):
        shown = printed.shown(avoid)
        by = f"the words of its label (“{shown}”)" if shown else "its label or its safety box"
        if first == "contains":
            words = f"contain {avoid.said} by what it is made of, and not by its label"
        else:
            words = f"contain {avoid.said} by {by}, and not by what it is made of"
        told = f"{words}: the two checks disagree"
        reasons = [Reason(told.replace("contain", "contains", 1), told, disagrees=True)]
    return reasons


@lru_cache(maxsize=65536)
def check_twice(recipe: Recipe, avoid: Avoided, printed: Printed) -> tuple[Answer, Answer]:
    """Return the answers of the two checks: by the foods and their parts, and by the label."""
    facts = facts_of(recipe)
    return facts.answer(avoid), printed.answer(avoid)


def _how_much_sugar(facts: GiftFacts) -> str:
    """Say how much sugar a present holds, which whoever counts it must know, or that nobody can."""
    sugar = facts.sugar
    if sugar is None:
        return ", how much is not known"
    return f", {sugar.text}{'' if sugar.is_serving else ', in a serving not known'}"


def _reasons(
    avoid: Avoided, answer: Answer, traces_fine: bool, much: str = ""
) -> tuple[Reason, ...]:
    if answer == "free" or (answer == "may contain" and traces_fine):
        return ()
    word = avoid.said
    if answer == "contains":
        return (Reason(f"contains {word}{much}", f"contain {word}{much}"),)
    if answer == "may contain":
        return (Reason(f"may contain {word}", f"may contain {word}"),)
    words = f"not known to be free of {word}"
    return (Reason(f"is {words}", f"are {words}"),)
