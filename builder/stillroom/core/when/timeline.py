"""The dates of a batch: forward from a start, back from a giving day, or of a batch begun.

What the dates mean:

* `usable` and `best` are ages of the batch, counted from its start day.
* `ready` is the day by which every stage is done (strained, bottled, finished).
* `give` is the giving day asked for; with none, the natural one: the first day on which the
  batch is at its best and all is done. What is made, strained, bottled or finished on a day goes
  out the day after at the earliest: the giving day itself is for giving.
* `keep_until` counts the unopened keeping time, its shorter end, from the day it is strained
  or bottled; for a thing that is neither, from the last day of its making.
* A batch that cannot reach its best by giving day is finished early, at or after its usable
  age. One that cannot even be usable is given with its stages unfinished.

Today is an argument. What is not here: laying out stages (stage_dates.py), the words of a
verdict (verdicts.py), what a page or calendar says (timeline_words.py, calendar_entries.py).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Final, Protocol

from stillroom.core.when.spans import Span
from stillroom.core.when.stage_dates import DatedStage, Laid, lay_out
from stillroom.core.when.stages import Stage
from stillroom.core.when.verdicts import PlanFacts, Verdict, give_verdict

ONE_DAY: Final = timedelta(days=1)


class Keeps(Protocol):
    """How long a recipe's product keeps."""

    @property
    def unopened(self) -> Span | None:
        """How long it keeps unopened."""

    @property
    def opened(self) -> Span | None:
        """How long it keeps once opened."""


class Timed(Protocol):
    """What the engine needs of a recipe."""

    @property
    def stages(self) -> tuple[Stage, ...]:
        """The lines of its timeline, its own or its kind's."""

    @property
    def keeps(self) -> Keeps:
        """How long it keeps."""

    @property
    def lasts(self) -> Span | None:
        """How long it is planned to keep unopened: by its card, where that is shorter."""


@dataclass(frozen=True, slots=True)
class Timeline:
    """All dates of one batch; see the module for what each means."""

    start: date
    usable: date
    best: date
    ready: date
    made: date
    give: date
    asked: bool
    keep_until: date | None
    stages: tuple[DatedStage, ...]
    tending: tuple[date, ...]
    verdict: Verdict
    latest_start_best: date
    latest_start_usable: date
    earliest_start_fresh: date | None

    @property
    def hands_on_minutes(self) -> int:
        """All hands-on minutes of the batch."""
        return sum(stage.all_minutes for stage in self.stages)


def plan_forward(
    recipe: Timed, start: date, giving_day: date | None = None, today: date | None = None
) -> Timeline:
    """Return the dates of a batch started on `start`, for a giving day if there is one."""
    return _plan(recipe, start, giving_day, today, "forward")


def plan_back(recipe: Timed, giving_day: date, today: date | None = None) -> Timeline:
    """Return the dates of a batch for a giving day.

    It starts on the latest day that has it at its best by then; when `today` is later than
    that, today.
    """
    start = latest_start_best(recipe, giving_day)
    if today is not None and start < today:
        start = today
    return _plan(recipe, start, giving_day, today, "back")


def plan_from_batch(
    recipe: Timed,
    start: date,
    giving_day: date | None = None,
    bottled: date | None = None,
    today: date | None = None,
) -> Timeline:
    """Return the dates of a batch that was begun; `bottled` is when it really was bottled."""
    return _plan(recipe, start, giving_day, today, "batch", bottled)


def kept_until(recipe: Timed, start: date, giving_day: date) -> date | None:
    """Return until when a batch begun on `start` for a giving day keeps; None: for ever."""
    keep = recipe.lasts
    made = _fitted(recipe.stages, start, giving_day).made
    return keep.after(made, longest=False) if keep else None


def latest_start_best(recipe: Timed, giving_day: date) -> date:
    """Return the last start day that has it at its best and finished by the giving day."""
    return _latest(recipe.stages, giving_day, natural_giving_day)


def latest_start_usable(recipe: Timed, giving_day: date) -> date:
    """Return the last start day that has it usable and finished by the giving day."""
    return _latest(recipe.stages, giving_day, first_giving_day)


def natural_giving_day(stages: Iterable[Stage], start: date) -> date:
    """Return the first day it can go out at its best."""
    stages = tuple(stages)
    return _out_from(stages, lay_out(stages, start))


def first_giving_day(stages: Iterable[Stage], start: date) -> date:
    """Return the first day it can go out usable, finished before its best."""
    stages = tuple(stages)
    return _out_from(stages, _laid_usable(stages, start))


def first_usable_day(stages: Iterable[Stage], start: date) -> date:
    """Return the first day it is usable and finished, if it is finished before its best."""
    laid = _laid_usable(tuple(stages), start)
    return max(laid.usable, laid.ready)


def _laid_usable(stages: tuple[Stage, ...], start: date) -> Laid:
    natural = lay_out(stages, start)
    if natural.usable_held is None or natural.usable >= natural.best:
        return natural
    return lay_out(stages, start, stop=max(natural.usable, natural.usable_held))


def _out_from(stages: tuple[Stage, ...], laid: Laid) -> date:
    """Return the first day it can go out: done, wrapped, its last work the day before."""
    before = max((stage.before_giving or 0 for stage in stages), default=0)
    return max(laid.usable, laid.ready + timedelta(days=before), laid.work_done + ONE_DAY)


@lru_cache(maxsize=2**15)  # every list of a book asks it of each recipe for the same days
def _latest(stages: tuple[Stage, ...], giving_day: date, out: _Out) -> date:
    """Return the last start whose `out` is not after the giving day; `out` never falls."""
    start = giving_day - (out(stages, giving_day) - giving_day)
    while out(stages, start) > giving_day:
        start -= ONE_DAY
    while out(stages, start + ONE_DAY) <= giving_day:
        start += ONE_DAY
    return start


class _Out(Protocol):
    def __call__(self, stages: Iterable[Stage], start: date) -> date: ...


@lru_cache(maxsize=2**15)
def _earliest_fresh(stages: tuple[Stage, ...], keep: Span | None, giving_day: date) -> date | None:
    """Return the first start whose product still keeps on giving day; None: it keeps for ever."""
    if keep is None:
        return None

    def kept_until(start: date) -> date:
        return keep.after(lay_out(stages, start).made, longest=False)

    start = giving_day - (kept_until(giving_day) - giving_day)
    while kept_until(start) < giving_day:
        start += ONE_DAY
    while kept_until(start - ONE_DAY) >= giving_day:
        start -= ONE_DAY
    return start


def _fitted(stages: tuple[Stage, ...], start: date, give: date) -> Laid:
    """Lay out a batch so that it is finished by the giving day if it can be."""
    natural = lay_out(stages, start)
    early = _out_from(stages, natural) - give
    if early <= timedelta(0) or natural.best_held is None:
        return natural
    usable = _laid_usable(stages, start)
    spare = give - _out_from(stages, usable)
    held = usable.usable_held or usable.best_held or start
    stop = max(natural.usable, held) + max(spare, timedelta(0))
    return lay_out(stages, start, stop=stop)


def _anchored(stages: tuple[Stage, ...], laid: Laid, give: date) -> tuple[DatedStage, ...]:
    """Date the lines counted back from the giving day, never before what they wrap is done."""
    rows = []
    for stage in stages:
        if stage.before_giving is None:
            continue
        day = max(give - timedelta(days=stage.before_giving), min(laid.ready, give), laid.start)
        row = DatedStage(
            name=stage.say,
            word=stage.word,
            role=stage.role,
            from_=day,
            to=day,
            to_earliest=day,
            dates=(day,),
            hands_on_minutes=stage.hands_on_minutes,
            where=stage.where,
            begins_minute=(day - laid.start).days * 1440,
            ends_minute=(day - laid.start).days * 1440 + stage.hands_on_minutes,
        )
        rows.append(row)
    return tuple(rows)


def _facts(
    recipe: Timed,
    laid: Laid,
    give: date,
    keep_until: date | None,
    way: str,
    asked: bool,
    today: date | None,
) -> PlanFacts:
    return PlanFacts(
        way=way,
        asked=asked,
        today=today,
        start=laid.start,
        usable=laid.usable,
        best=laid.best,
        making_done=laid.making_done,
        hands_done=laid.hands_done,
        give=give,
        first_usable=first_usable_day(recipe.stages, laid.start),
        first_out=first_giving_day(recipe.stages, laid.start),
        natural_out=natural_giving_day(recipe.stages, laid.start),
        keep_until=keep_until,
        latest_start_best=latest_start_best(recipe, give),
        latest_start_usable=latest_start_usable(recipe, give),
        earliest_start_fresh=_earliest_fresh(recipe.stages, recipe.lasts, give),
    )


def _plan(
    recipe: Timed,
    start: date,
    giving_day: date | None,
    today: date | None,
    way: str,
    bottled: date | None = None,
) -> Timeline:
    stages, keep = recipe.stages, recipe.lasts
    give = giving_day or natural_giving_day(stages, start)
    laid = _fitted(stages, start, give)
    if bottled is not None:
        laid = replace(laid, made=bottled)
    keep_until = keep.after(laid.made, longest=False) if keep else None
    rows = laid.rows + _anchored(stages, laid, give)
    facts = _facts(recipe, laid, give, keep_until, way, giving_day is not None, today)
    return Timeline(
        start=start,
        usable=laid.usable,
        best=laid.best,
        ready=laid.ready,
        made=laid.made,
        give=give,
        asked=giving_day is not None,
        keep_until=keep_until,
        stages=rows,
        tending=tuple(sorted({day for row in rows if row.role == "tend" for day in row.dates})),
        verdict=give_verdict(facts),
        latest_start_best=facts.latest_start_best,
        latest_start_usable=facts.latest_start_usable,
        earliest_start_fresh=facts.earliest_start_fresh,
    )
