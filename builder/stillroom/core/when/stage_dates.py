"""Lay the stages of a recipe onto the calendar from a start day.

How a cook counts is how this counts:

* Lines follow one another. Making begins in the morning of the start day; what would run past
  twelve hours goes on the next day.
* Made today, first shaken tomorrow: the dates of `every 3 days` are 3, 6, 9 ... days after the
  stage begins, up to and including its last day, counted from the stage's beginning each time
  (so the 31st, 28 February, 31 March).
* A range ("2-4 weeks") is planned by its longer end; the earliest end is kept beside it.
* `usable from` and `best from` are ages: the lines below one wait for it. A rest without a
  length fills the wait.
* Lines with the same `while it ...` share one window.

What is not here: giving days, keeping and verdicts (timeline.py, verdicts.py).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from functools import lru_cache
from typing import Final

from stillroom.core.when.spans import Span
from stillroom.core.when.stages import MILESTONES, Role, Stage

WORKING_DAY_MINUTES: Final = 12 * 60
DAY_MINUTES: Final = 24 * 60
# any start will do to count the days between
_A_START: Final = date(2027, 2, 1)


@dataclass(frozen=True, slots=True)
class DatedStage:
    """A stage with its days; `dates` are the days that want hands, `hands_on_minutes` each time.

    `begins_minute` and `ends_minute` count from the start of the making and serve drawings of
    things made within a day or two. `to_earliest` is before `to` when the length is a range.
    """

    name: str
    word: str
    role: Role
    from_: date
    to: date
    to_earliest: date
    dates: tuple[date, ...]
    hands_on_minutes: int
    times: int = 1
    every: Span | None = None
    condition: str = ""
    where: str = ""
    open_ended: bool = False
    begins_minute: int = 0
    ends_minute: int = 0

    @property
    def all_minutes(self) -> int:
        """All hands-on minutes of the stage."""
        return self.hands_on_minutes * self.times * len(self.dates)

    @property
    def first(self) -> date:
        """The first day of it that a maker sees: what is made today is first shaken tomorrow."""
        return self.dates[0] if self.role == "tend" else self.from_


@dataclass(frozen=True, slots=True)
class Laid:
    """Stages on the calendar: when it is usable and best, when all is done, when it is kept from.

    `usable_held` and `best_held` are the days on which the lines below that age begin;
    `making_done` is when the last work or counted rest ends, after which it only ages;
    `hands_done` is the last day that wants hands, `work_done` the last that wants more than
    tending.
    """

    start: date
    usable: date
    best: date
    usable_held: date | None
    best_held: date | None
    ready: date
    made: date
    making_done: date
    hands_done: date
    work_done: date
    rows: tuple[DatedStage, ...]


def lay_out(stages: Iterable[Stage], start: date, stop: date | None = None) -> Laid:
    """Return the stages dated from `start`.

    With `stop`, whatever waits for an age waits no longer than that day: this is how a batch is
    finished early for a giving day before its best. Lines counted back from the giving day are
    left out.
    """
    return _lay_out(tuple(stages), start, stop)


def usable_after_days(stages: Iterable[Stage]) -> int:
    """Return how many days after its start a making is first usable."""
    return (lay_out(stages, _A_START).usable - _A_START).days


@lru_cache(maxsize=4096)  # the search for a latest start comes by the same days again and again
def _lay_out(stages: tuple[Stage, ...], start: date, stop: date | None) -> Laid:
    listed = tuple(
        stage for stage in stages if stage.before_giving is None and stage.role != "give"
    )
    last_age = max((i for i, stage in enumerate(listed) if stage.role in MILESTONES), default=-1)
    walk = _Walk(start, stop)
    for index, stage in enumerate(listed):
        if index > last_age:
            walk.stop = None
        walk.take(stage)
    return walk.laid()


@dataclass(slots=True)
class _Walk:
    """The walk down a timeline: the day and minute reached, and what was dated so far."""

    start: date
    stop: date | None
    day: date = field(init=False)
    minute: int = 0
    rows: list[DatedStage] = field(default_factory=list)
    open_rest: int | None = None
    ages: dict[str, date] = field(default_factory=dict)
    held: dict[str, date] = field(default_factory=dict)
    before_ages: date | None = None

    def __post_init__(self) -> None:
        self.day = self.start

    def take(self, stage: Stage) -> None:
        if stage.role in MILESTONES:
            self._milestone(stage)
        elif stage.role == "rest":
            self._rest(stage)
        elif stage.role == "tend" and stage.every:
            self._tend(stage)
        else:
            self._work(stage)

    def _clip(self, day: date) -> date:
        return day if self.stop is None else min(day, self.stop)

    def _go(self, day: date) -> None:
        day = self._clip(day)
        if day > self.day:
            self.day, self.minute = day, 0

    def _move_to(self, day: date) -> None:
        """Go on to a day; a rest without a length lasts until then."""
        self._go(day)
        if self.open_rest is not None:
            row = self.rows[self.open_rest]
            end = max(row.from_, self.day)
            self.rows[self.open_rest] = replace(
                row, to=end, to_earliest=end, ends_minute=self._at(self.day, self.minute)
            )
            self.open_rest = None

    def _pass_minutes(self, minutes: int) -> None:
        self.minute += minutes
        while self.minute > WORKING_DAY_MINUTES:
            self.day += timedelta(days=1)
            self.minute = max(0, self.minute - DAY_MINUTES)

    def _at(self, day: date, minute: int) -> int:
        return (day - self.start).days * DAY_MINUTES + minute

    def _begin(self, stage: Stage) -> None:
        """Go to where a stage begins: its own age, its neighbour's window, or just here."""
        if stage.after:
            self._move_to(stage.after.after(self.start))
        else:
            self._move_to(self.day)

    def _shared_window(self, stage: Stage) -> DatedStage | None:
        if stage.condition and self.rows and self.rows[-1].condition == stage.condition:
            return self.rows[-1]
        return None

    def _milestone(self, stage: Stage) -> None:
        if self.before_ages is None:
            self.before_ages = self.day
        due = stage.age.after(self._age_base(stage)) if stage.age else self.day
        self.ages[stage.role] = due
        # a rest without a length goes on through an age, until the next thing is done
        self._go(due)
        self.held[stage.role] = self.day

    def _age_base(self, stage: Stage) -> date:
        bottled = [row.to for row in self.rows if row.role == "bottle"]
        return bottled[-1] if stage.age_from == "bottling" and bottled else self.start

    def _rest(self, stage: Stage) -> None:
        self._begin(stage)
        from_, begins = self.day, self._at(self.day, self.minute)
        earliest = self.day
        if stage.until:
            self._move_to(stage.until.after(self.start))
            earliest = self.day
        elif stage.lasts and stage.lasts.is_within_a_day:
            self._pass_minutes(stage.lasts.minutes())
            earliest = self.day
        elif stage.lasts:
            earliest = self._clip(stage.lasts.after(from_, longest=False))
            self._move_to(stage.lasts.after(from_))
        self._add(stage, from_, begins, self.day, earliest, ())
        if self.rows[-1].open_ended:
            self.open_rest = len(self.rows) - 1

    def _tend(self, stage: Stage) -> None:
        """Date a rhythm; it runs beside a rest that shares its condition."""
        assert stage.every is not None
        shared = self._shared_window(stage)
        if shared is None:
            self._begin(stage)
        from_ = shared.from_ if shared else self.day
        begins = shared.begins_minute if shared else self._at(self.day, self.minute)
        end, earliest = self._end_of(stage, from_)
        self._move_to(end)
        last, dates, count = self._clip(end), [], 1
        while (day := stage.every.after(from_, longest=False, times=count)) <= last:
            dates.append(day)
            count += 1
        if dates:
            self._add(stage, from_, begins, last, min(earliest, last), tuple(dates))

    def _end_of(self, stage: Stage, from_: date) -> tuple[date, date]:
        if stage.until:
            end = max(from_, stage.until.after(self.start))
            return end, end
        assert stage.lasts is not None
        return stage.lasts.after(from_), stage.lasts.after(from_, longest=False)

    def _work(self, stage: Stage) -> None:
        self._begin(stage)
        from_, begins = self.day, self._at(self.day, self.minute)
        if stage.lasts and not stage.lasts.is_within_a_day:
            # work over two days is done today and tomorrow
            days = max(1, (stage.lasts.after(from_) - from_).days)
            dates = tuple(self._clip(from_ + timedelta(days=step)) for step in range(days))
            dates = tuple(dict.fromkeys(dates))
            self._move_to(dates[-1])
            share = -(-stage.hands_on_minutes // len(dates))
            self._add(
                replace(stage, hands_on_minutes=share), from_, begins, self.day, self.day, dates
            )
            return
        self._pass_minutes(stage.lasts.minutes() if stage.lasts else stage.hands_on_minutes)
        self._add(stage, from_, begins, self.day, self.day, (from_,))

    def _add(
        self,
        stage: Stage,
        from_: date,
        begins: int,
        to: date,
        earliest: date,
        dates: tuple[date, ...],
    ) -> None:
        ends = max(begins, self._at(self.day, self.minute) if to == self.day else self._at(to, 0))
        self.rows.append(
            DatedStage(
                name=stage.say,
                word=stage.word,
                role=stage.role,
                from_=from_,
                to=max(from_, to),
                to_earliest=max(from_, earliest),
                dates=dates,
                hands_on_minutes=stage.hands_on_minutes,
                times=stage.times,
                every=stage.every,
                condition=stage.condition,
                where=stage.where,
                open_ended=stage.role == "rest" and not (stage.until or stage.lasts),
                begins_minute=begins,
                ends_minute=ends,
            )
        )

    def laid(self) -> Laid:
        self._move_to(self.day)
        done = self.day
        usable = self.ages.get("usable", self.before_ages or done)
        best = max(self.ages.get("best", usable), usable)
        made = [row.to for row in self.rows if row.role in ("strain", "bottle")]
        made = made or [row.to for row in self.rows if row.role == "prepare"]
        making = [row.to for row in self.rows if row.role == "prepare" or _is_counted_rest(row)]
        work = [row.to for row in self.rows if row.role not in ("tend", "rest")]
        return Laid(
            start=self.start,
            usable=usable,
            best=best,
            usable_held=self.held.get("usable", self.before_ages),
            best_held=self.held.get("best", self.held.get("usable")),
            ready=max(done, self.held.get("best", self.held.get("usable", done))),
            made=made[-1] if made else self.start,
            making_done=max(making, default=self.start),
            hands_done=max((row.dates[-1] for row in self.rows if row.dates), default=self.start),
            work_done=max(work, default=self.start),
            rows=tuple(self.rows),
        )


def _is_counted_rest(row: DatedStage) -> bool:
    return row.role == "rest" and not row.open_ended
