"""What a new plan changes against the pack before it, and why, in words.

What is made, bought or given stays: it is no part of the new plan. Of the rest each change is
said, with the line of the log that brought it where there is one; where there is none, that is
said as well. Pure.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from datetime import date

from stillroom.core.words.day_words import say_day, say_day_and_month
from stillroom.giving.log import LogLine
from stillroom.giving.log_names import IN
from stillroom.giving.plan_file import KeptBatch, KeptPlan
from stillroom.giving.plan_model import agree
from stillroom.giving.standing import numbered
from stillroom.giving.worked_out import Pack

_OTHERWISE = "since the plan for all of them together is better so"
"""Nothing that was noted asked for it."""
_TOLD = ("failed", "spoiled", "used", "bottled")


def say_changes(pack: Pack) -> tuple[str, ...]:
    """Return what changed since the pack before; nothing without one, or when nothing did."""
    if pack.kept is None:
        return ()
    reasons = _Reasons(pack, pack.kept)
    changes = [*_gifts(pack, pack.kept, reasons), *_batches(pack, pack.kept, reasons)]
    if changes and pack.kept.paid:
        paid = pack.money(pack.costs.paid, pack.costs.whole)
        if paid != pack.kept.paid:
            changes.append(f"Still to pay: {paid}; in the pack before: {pack.kept.paid}.")
    return tuple(changes)


class _Reasons:
    """Why a recipe is had no longer, from what was noted since the pack before."""

    def __init__(self, pack: Pack, kept: KeptPlan) -> None:
        self.pack, self.kept = pack, kept
        self.since = kept.planned_on or date.min
        self.lines = [line for line in pack.season.lines if line.day >= self.since]

    def of_recipe(self, recipe: str) -> str:
        """Return why there is less of a recipe than was planned; "" when nothing tells."""
        own = [line for line in self.lines if line.name == recipe and line.kind in _TOLD]
        for kind in _TOLD:
            for line in own:
                if line.kind == kind and (kind != "bottled" or self._short(line)):
                    return self._say(line)
        return self._not_begun(recipe)

    def of_gift(self, number: int, household: str, gone: str, come: str) -> str:
        """Return why a household has one thing and not another."""
        for line in reversed(self.lines):
            if line.name == household and line.kind in ("struck", "pinned"):
                if line.kind == "struck" and gone in line.of:
                    return f"you struck it out on {say_day_and_month(line.day)}"
                if line.kind == "pinned" and come in line.of:
                    return f"you pinned that on {say_day_and_month(line.day)}"
        problem = self.pack.offering.problem
        for offer in problem.offers:
            why = problem.refused.get((number, offer.key), ())
            if offer.recipe == gone and why:
                return f"it {why[0].one}"
        if gone and gone not in {offer.recipe for offer in problem.offers}:
            return "it is no longer among the makes"
        return self.of_recipe(gone) if gone else ""

    def _say(self, line: LogLine) -> str:
        day = say_day_and_month(line.day)
        words = f" ({line.words})" if line.words else ""
        number = "all" if line.number is None else str(line.number)
        said = {
            "failed": f"it failed on {day}{words}",
            "spoiled": f"{number} of it spoiled by {day}{words}",
            "used": f"{number} of it went elsewhere on {day}{words}",
            "bottled": f"it gave only {line.number} on {day}{words}",
        }
        return said[line.kind]

    def _short(self, line: LogLine) -> bool:
        """Say whether a batch gave fewer than its recipe does."""
        shares = [o.share for o in self.pack.offering.problem.offers if o.recipe == line.name]
        for batch in self.pack.season.batches:
            made = [fill for fill in batch.fills if fill.made_on == line.day]
            if batch.recipe == line.name and made and shares:
                got = sum(fill.number or 0 for fill in batch.fills)
                return got < int(batch.batches / max(shares))
        return False

    def begun(self, recipe: str) -> int:
        """Return how often a recipe was begun; what was filled must have been."""
        return sum(
            one.recipe == recipe and not one.from_list and one.started >= self.since
            for one in self.pack.season.batches
        )

    def _not_begun(self, recipe: str) -> str:
        today = self.pack.offering.today
        starts = sorted(one.start for one in self.kept.batches if one.recipe == recipe)
        missed = [day for day in starts[self.begun(recipe) :] if day < today]
        return f"it was to be begun on {say_day_and_month(missed[0])} and was not" if missed else ""


def _gifts(pack: Pack, kept: KeptPlan, reasons: _Reasons) -> Iterator[str]:
    changed: dict[str, list[str]] = {}
    for number, household, nth in numbered(pack.offering.giving):
        before = kept.gifts.get((household, nth))
        if before is None or number not in pack.plan.gifts:
            continue
        now = pack.plan.gifts[number]
        gone = [key for key in before if key not in now]
        come = [key for key in now if key not in before]
        for place in range(max(len(gone), len(come))):
            old = gone[place] if place < len(gone) else ""
            new = come[place] if place < len(come) else ""
            slugs = [key.partition(IN)[0] for key in (old, new)]
            why = reasons.of_gift(number, household, *slugs)
            words = f"{_swap(pack, old, new)}, {f'since {why}' if why else _OTHERWISE}"
            changed.setdefault(words, []).append(household)
    for words, names in changed.items():
        yield f"{', '.join(dict.fromkeys(names))}: {words}."


def _swap(pack: Pack, old: str, new: str) -> str:
    if old and new:
        return f"{_title(pack, new)} in place of {_title(pack, old)}"
    return f"{_title(pack, new)} besides" if new else f"no {_title(pack, old)}"


def _title(pack: Pack, key: str) -> str:
    slug, _, container = key.partition(IN)
    recipe = pack.offering.recipes.get(slug)
    same = sum(offer.recipe == slug for offer in pack.offering.problem.offers)
    name = recipe.title if recipe else slug
    return f"{name} ({container})" if container and same > 1 else name


def _batches(pack: Pack, kept: KeptPlan, reasons: _Reasons) -> Iterator[str]:
    """Yield what is made more, less or on another day; what was begun is as planned."""
    before: dict[str, list[KeptBatch]] = {}
    for one in sorted(kept.batches, key=lambda one: one.start):
        before.setdefault(one.recipe, []).append(one)
    now: dict[str, list[date]] = {}
    for batch in pack.making.batches:
        now.setdefault(batch.recipe.slug, []).append(batch.timeline.start)
    for recipe in sorted({*before, *now}):
        waiting = [one.start for one in before.get(recipe, [])[reasons.begun(recipe) :]]
        why = reasons.of_recipe(recipe)
        yield from _days(_title(pack, recipe), waiting, now.get(recipe, []), why)


def _days(title: str, before: list[date], now: list[date], why: str) -> Iterator[str]:
    """Yield which days of a recipe's making are others; a day that stays is nothing changed."""
    stay = Counter(before) & Counter(now)
    old, new = (list((Counter(days) - stay).elements()) for days in (before, now))
    since = f", since {why}" if why else ""
    verb = agree(title, "is", "are")
    for place in range(max(len(old), len(new))):
        if place >= len(new):
            on = f" on {say_day_and_month(old[place])}" if now else ""
            yield f"{title} {verb} no longer to be begun{on}{since}."
        elif place >= len(old):
            yield f"{title} {verb} to be begun on {say_day(new[place])}{since}."
        else:
            late = since if "was not" in why else ""
            days = f"{say_day(new[place])}, not on {say_day_and_month(old[place])}"
            yield f"{title} {verb} to be begun on {days}{late}."
