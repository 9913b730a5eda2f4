"""Dates that are the kind's and not the recipe's own: that they are, and where the method differs.

A recipe that states no timeline is given its kind's. The page says so, and where the method names
other times it says that too and offers the lines to write. Where the method waits longer than the
kind does, its waits are the recipe's dates until somebody writes them: a plan must not give away in
two days what is to cure for six weeks. So are all of what is steeped, and shorter ones of what is
salted: three weeks in a cupboard are no eight months. Leaves out how a method's words are read:
method_times.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import lru_cache
from typing import Final

from stillroom.core.larder.staple import Staple
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.recipe.method_order import course_of, fills_first, lines_in_order
from stillroom.core.recipe.method_times import Said, total_days
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.times_not_read import ends_by_itself, times_not_read
from stillroom.core.when.spans import Span
from stillroom.core.when.stage_dates import lay_out, usable_after_days
from stillroom.core.when.stages import MILESTONES, Stage, parse_stage
from stillroom.core.when.timeline_checks import check_timeline
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, Unreadable

# any start will do to compare lengths
_A_START: Final = date(2027, 2, 1)
_NEAR: Final = Fraction(3, 4)
_SOME_DAYS: Final = 5
# a night in salt only draws the water out
_SALTED_DAYS: Final = 2
# vegetables in salt; whatever else may feed yeast, whose gas bursts bottles
_SOURS_IN_SALT: Final = frozenset(
    {
        "low-acid-vegetable",
        "vegetable",
        "salt",
        "spice",
        "herb",
        "dried-herb",
        "fresh-herb",
        "water",
    }
    | {"garlic", "chilli"}
)
# drunk while it still works: nobody lets a ginger beer of two days stand for three months
_DRUNK_YOUNG: Final = late_regex(
    r"\b(?:ginger (?:beer|ale|bug)|root beer|small beer|kombucha|jun|kefir|tepache|kvass|fizz|soda"
    r"|pop|lemonade|switchel|sima|boza|(?:elder\w*|rhubarb|lilac|nettle) (?:champagne|beer))\b",
    re.IGNORECASE,
)
# what may stand for a while that nobody tells
_STANDS: Final = late_regex(
    r"\b(?:steep|infus|macerat|leave|left|stand|rest|matur|ripen|age[ds]?\b|ziehen|stehen|macér|laiss"
    r"|ripos|macer|repos)",
    re.IGNORECASE,
)
# egg, milk and cream; "perishable" is said of fresh vegetables too
_FRESH: Final = frozenset({"egg", "pasteurised-egg", "perishable"})
_OF_THE_GARDEN: Final = frozenset({"vegetable", "mushroom", "fruit", "low-acid-vegetable"})
_NOT_TOLD: Final = (
    "How long it ferments, and so when it is ready, is not known: neither recipe nor method says."
)
_WORK: Final = frozenset({"prepare", "strain", "bottle", "finish", "give"})


@dataclass(frozen=True)
class KindDates:
    """What to say beside dates that are a kind's; `differs` is empty when the method agrees."""

    whose: str
    differs: str = ""
    offer: tuple[str, ...] = ()
    line: int = 0

    @property
    def text(self) -> str:
        """All of it in one run, for a page or a sheet."""
        return f"{self.whose} {self.differs}".strip()


@lru_cache(maxsize=1024)
def dates_of_kind(recipe: Recipe) -> KindDates | None:
    """Return what to say of a recipe's dates; None when it states a timeline of its own."""
    if recipe.timeline:
        return None
    kind = recipe.kind
    said = course_of(recipe.method).said
    line = said[0].line if said else recipe.method[-1].line if recipe.method else 0
    if undated := why_undated(recipe):
        return KindDates(undated, "", (), line)
    if cured := _waits_for_care(recipe):
        offer = tuple(f"{one.word}: {one.text}" for one in recipe.waits_of_method)
        return KindDates(cured, "", offer, line)
    unread = _unread_words(recipe)
    states = "" if unread else ", which states none"
    if said:
        states = f"; its method says much the same (step {said[0].step}): “{said[0].words}”"
    whose = (
        f"These dates are those of any {kind.name}, not of this recipe{states} "
        f"({kind.timeline_source})."
    )
    if not said and cannot_steep_so_long(recipe):
        return KindDates(_instead_of_kind(recipe), "", _lines_to_write(recipe), line)
    if not said or (_agrees(recipe, said) and not recipe.waits_of_method):
        return KindDates(f"{whose} {unread}".strip())
    if cannot_steep_so_long(recipe):
        return KindDates(_instead_of_kind(recipe), "", _lines_to_write(recipe), line)
    first = said[0]
    whose = (
        f"These dates are those of any {kind.name}, not of this recipe, which states no timeline "
        f"({kind.timeline_source})."
    )
    if recipe.waits_of_method:
        whose = (
            f"This recipe states no dates. These are read from its method (step {first.step}): "
            f"“{first.words}”. Look whether they are right; the rest is as for any {kind.name} "
            f"({kind.timeline_source})."
        )
        whose = f"{whose} {unread}".strip()
        return KindDates(whose, "", _lines_to_write(recipe), line)
    differs = f"Its method says otherwise (step {first.step}): “{first.words}”. Go by the method."
    differs = f"{differs} {unread}".strip()
    return KindDates(whose, differs, _lines_to_write(recipe), line)


def _waits_for_care(recipe: Recipe) -> str:
    """Say that it is dated by what its cautions ask for, and not by its method; "" where it is."""
    written = _lines_to_write(recipe) if recipe.waits_of_method else ()
    for stage in recipe.waits_of_method:
        if stage.role == "usable" and f"{stage.word}: {stage.text}" not in written:
            return (
                f"This recipe states no timeline, and by its method it is used too soon: it is "
                f"counted as usable from {stage.age}, as the cautions on it ask."
            )
    return ""


def cannot_steep_so_long(recipe: Recipe) -> str:
    """Say why its kind's dates cannot be a recipe's own, "" where they can.

    It keeps for shorter than its kind steeps, or holds egg or milk.
    """
    if recipe.timeline or not recipe.kind.is_("steeped"):
        return ""
    keeps = recipe.keeps.unopened
    if keeps is not None and _days(keeps) < _usable_of_kind(recipe):
        return f"this keeps {keeps}"
    fresh = next((one.item for one in recipe.ingredients if _is_fresh(food_of(one).food)), "")
    return f"there is {fresh} in it" if fresh else ""


def _is_fresh(food: Staple | None) -> bool:
    return food is not None and bool(food.tags & _FRESH) and not food.tags & _OF_THE_GARDEN


def waits_within_keeping(recipe: Recipe) -> tuple[Stage, ...]:
    """Return the timeline to go by, where a kind's dates run past the keeping: work and own waits.

    Of a recipe of which is known how long it keeps.
    """
    if recipe.waits_of_method or not cannot_steep_so_long(recipe):
        return recipe.waits_of_method
    return _written_out(recipe)


def _instead_of_kind(recipe: Recipe) -> str:
    """Say why its kind's dates are not its own, and what is taken in their place."""
    kind = recipe.kind
    said = course_of(recipe.method).said
    why = (
        f"This recipe states no dates, and they cannot be those of any {kind.name}, which stands "
        f"{_usable_of_kind(recipe)} days before it is used: {cannot_steep_so_long(recipe)}."
    )
    if said:
        taken = f"They are read from its method (step {said[0].step}): “{said[0].words}”."
    elif any(_STANDS.search(step.text) for step in recipe.method):
        taken = (
            "In its method how long it stands first is not known: it is counted as ready when made."
        )
    else:
        taken = "Its method names no wait: it is counted as ready on the day it is made."
    return f"{why} {taken} If it waits otherwise, write a timeline. {_unread_words(recipe)}".strip()


def _unread_words(recipe: Recipe) -> str:
    """Return what to say of waits that the method names without a length to count."""
    own_end = ends_by_itself(recipe.method) if ferments_untimed(recipe) else None
    unread = (*times_not_read(recipe.method), *([own_end] if own_end else []))
    if not unread:
        return _NOT_TOLD if ferments_untimed(recipe) else ""
    step, words = unread[0]
    return (
        f"Its method names a wait that cannot be counted (step {step}): “{words}”. Look whether "
        "these dates go with it, or write a timeline."
    )


def why_undated(recipe: Recipe) -> str:
    """Say why nobody knows when it is ready, "" where that is known.

    Its kind's three months are a guess of what this one does, and no date may hang on a guess.
    """
    if not ferments_untimed(recipe):
        return ""
    unread = (*times_not_read(recipe.method), ends_by_itself(recipe.method))
    step, words = next(filter(None, unread), (0, ""))
    wait = "Its method names a wait that cannot be counted"
    told = f" {wait} (step {step}): “{words}”." if words else ""
    return f"{_NOT_TOLD}{told} Write a timeline, and it has its dates."


def ferments_untimed(recipe: Recipe) -> bool:
    """Whether something ferments for a time that nothing tells."""
    untold = not recipe.timeline and not course_of(recipe.method).said
    return recipe.kind.is_("living") and untold


def feeds_yeast_untimed(recipe: Recipe) -> bool:
    """Whether something feeds yeast for a time that nothing tells.

    Of vegetables that have soured in salt, however long it took, a guide says how long they keep.
    """
    return ferments_untimed(recipe) and not _sours_in_salt(recipe)


def _sours_in_salt(recipe: Recipe) -> bool:
    foods = [food_of(one).food for one in recipe.ingredients]
    return all(food is not None and food.tags & _SOURS_IN_SALT for food in foods)


def waits_to_go_by(recipe: Recipe) -> tuple[Stage, ...]:
    """Return a timeline with the waits of the method, where those of the kind will not do; else ().

    Nothing either where they do not go together, as what is past its keeping before it is ready.
    """
    said = () if recipe.timeline else course_of(recipe.method).said
    if not said:
        return ()
    longer = _longest(said) > _longest_of_kind(recipe) or _outwaits(recipe, said)
    # what is strained after two months no longer steeps in the eighth, though both are near
    agrees = _agrees(recipe, said) and not recipe.kind.is_("steeped")
    if _fills_otherwise(recipe) or (not agrees and (longer or _is_all_its_waiting(recipe, said))):
        return _written_out(recipe)
    return ()


def _written_out(recipe: Recipe) -> tuple[Stage, ...]:
    """Return the lines to write as stages; () where they do not go together."""
    try:
        written = [line.partition(": ") for line in _lines_to_write(recipe)]
        stages = tuple(parse_stage(word, text) for word, _, text in written)
    except Unreadable:
        return ()
    return () if any(check_timeline(stages, recipe.keeps.unopened)) else stages


def _fills_otherwise(recipe: Recipe) -> bool:
    """Whether its kind has it filled on another day than its method: before its brine, in a year.

    What is put up stands in its brine first; what ferments is bottled when its method says so.
    """
    kind, course = recipe.kind, course_of(recipe.method)
    first = next(i for i, one in enumerate(course.events) if isinstance(one, Said))
    done = [one for one in course.events[first:] if isinstance(one, frozenset)]
    if kind.is_("put up"):
        told = bool(done) or total_days(course.said) > _usable_of_kind(recipe)
        return told and not fills_first(course, recipe.stages_of_kind)
    told = any("bottle" in one for one in done)
    if kind.is_("steeped"):
        return told and not times_not_read(recipe.method)
    return kind.is_("living") and told


def _is_all_its_waiting(recipe: Recipe, said: tuple[Said, ...]) -> bool:
    """Whether waits that are shorter than the kind's are all that is waited for.

    Some days in spirit, sugar or salt are, fewer where it is then strained and bottled; a must that
    has bubbled for a week is not ready.
    """
    kind = recipe.kind
    if kind.is_("living") and _DRUNK_YOUNG.search(f"{recipe.title} {kind.called}"):
        return True
    if kind.is_("living") and _sours_in_salt(recipe):  # a hot sauce of "1-14 days" is ready then
        return max((one.span.after(_A_START) - _A_START).days for one in said) >= _SALTED_DAYS
    if max(_days(one.span) for one in said) < _SOME_DAYS:
        return kind.is_("steeped") and course_of(recipe.method).ends_in_work
    return kind.is_("steeped")


def _lines_to_write(recipe: Recipe) -> tuple[str, ...]:
    """Return the timeline to write: the kind's own work, with the method's times in their place.

    Without the work the day of making would count no hands at all.
    """
    of_kind = recipe.stages_of_kind
    course = course_of(recipe.method)
    own, fills = lines_in_order(
        course, of_kind, recipe.kind.is_("steeped"), recipe.kind.is_("living")
    )
    if fills and _works_on(recipe, course.said):
        own += tuple(f"{one.word}: {one.text}" for one in of_kind if one.role in MILESTONES)
    named = {line.partition(":")[0] for line in own}
    roles = [stage.role for stage in of_kind]
    aged = next((place for place, role in enumerate(roles) if role in MILESTONES), len(roles))
    made, behind = (
        tuple(
            f"{stage.word}: {stage.text}"
            for stage in stages
            if stage.role in _WORK
            and stage.word not in named
            and not (fills and stage.role in ("strain", "bottle"))
        )
        for stages in (of_kind[:aged], of_kind[aged:])
    )
    return (*made, *own, *behind)


def _works_on(recipe: Recipe, said: tuple[Said, ...]) -> bool:
    """Whether it ferments and is older, when it may be drunk, than all that its method waits."""
    if not recipe.kind.is_("living") or any(one.role != "wait" for one in said):
        return False
    short = total_days(said) < _usable_of_kind(recipe)
    return short and not _is_all_its_waiting(recipe, said)


def _agrees(recipe: Recipe, said: tuple[Said, ...]) -> bool:
    """Whether the method's own times lie within those of the kind, or near them."""
    within = _usable_of_kind(recipe) * _NEAR <= _longest(said) <= _longest_of_kind(recipe)
    return within and not _outwaits(recipe, said)


def _outwaits(recipe: Recipe, said: tuple[Said, ...]) -> bool:
    """Whether it still steeps on the day on which its kind would be usable: "leave 6 months"."""
    return total_days(said) * _NEAR > max(_usable_of_kind(recipe), 1)


def _usable_of_kind(recipe: Recipe) -> int:
    return usable_after_days(recipe.stages_of_kind)


def _longest_of_kind(recipe: Recipe) -> Fraction:
    """Return the days beyond which a method says another time than its kind."""
    laid = lay_out(recipe.stages_of_kind, _A_START)
    return max((laid.usable - _A_START).days, (laid.best - _A_START).days, 1) / _NEAR


def _longest(said: tuple[Said, ...]) -> int:
    """Return the days of all waits together, or of the age at which it is ready."""
    named = [_days(one.span) for one in said if one.role != "wait"]
    return max([total_days(said), *named])


def _days(span: Span) -> int:
    return (span.after(_A_START, longest=False) - _A_START).days


def warn_of_dates(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a warning where the method differs from the kind's dates, with what to write."""
    found = dates_of_kind(recipe)
    if found is None or not found.offer:
        return ()
    if _agrees(recipe, course_of(recipe.method).said) and not recipe.kind.is_("steeped"):
        return ()  # no other day than its kind's: only what is filled when is its own
    what = f"The dates are those of any {recipe.kind.name}, and the method says otherwise."
    if why := cannot_steep_so_long(recipe):
        what = f"The dates cannot be those of any {recipe.kind.name}: {why}."
    elif recipe.waits_of_method:
        what = "The dates are read from the method, since no timeline is written."
    lines = ", ".join(f'"- {line}"' for line in found.offer)
    mend = f'Write "timeline:" and below it {lines}.'
    return (Problem(recipe.file, found.line, what, mend),)
