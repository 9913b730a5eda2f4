"""What is next: the seven days from today, out of the plan and of what is noted.

What is noted stands ticked; what should have been done and is not noted is late. Leaves out looks.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.when.stage_dates import DatedStage
from stillroom.core.when.timeline import Timeline, plan_from_batch
from stillroom.core.words.day_words import say_day, say_day_and_month, say_minutes
from stillroom.giving.posting import due_of
from stillroom.giving.season import Going
from stillroom.giving.standing import numbered
from stillroom.giving.worked_out import Pack

DAYS = 7
_DONE_BY = {"tend": "tended", "strain": "strained", "bottle": "filled"}


@dataclass(frozen=True, order=True)
class Task:
    """One thing to do on a day: in words, whether it is noted as done, whether it is late."""

    day: date
    place: int
    words: str
    done: bool = False
    late: bool = False
    note: str = ""
    """What is to be noted so that it is ticked off, as the boxes at the desk ask it."""


def this_week(pack: Pack) -> tuple[Task, ...]:
    """Return the tasks of the seven days from today, what is late before them."""
    today = pack.offering.today
    last = today + timedelta(days=DAYS - 1)
    tasks = [*_planned(pack), *_going(pack), *_buying(pack), *_baskets(pack), *_thanks(pack)]
    return tuple(sorted(task for task in tasks if task.late or today <= task.day <= last))


def going_timeline(pack: Pack, batch: Going) -> Timeline:
    """Return the dates of a batch that was begun, as it really went."""
    recipe, giving = pack.offering.recipes[batch.recipe], pack.offering.giving
    return plan_from_batch(recipe, batch.started, giving.giving_day, None, pack.offering.today)


def _planned(pack: Pack) -> Iterator[Task]:
    for batch in pack.making.batches:
        title = batch.recipe.title
        for place, row in enumerate(batch.timeline.stages):
            for day in row.dates:
                words = f"{row.name}: {title}, {batch.scaled.makes}{_work(row, batch.count)}"
                note = f"begun: {title}" if day == batch.timeline.start else ""
                yield Task(day, place, words, note=note if place == 0 else "")


def _work(row: DatedStage, count: int = 1) -> str:
    minutes = row.hands_on_minutes * row.times * count
    return f" ({say_minutes(minutes)})" if minutes else ""


def _going(pack: Pack) -> Iterator[Task]:
    """Yield what a batch on its way asks for; of what was missed, only the last time is late."""
    today = pack.offering.today
    twice = Counter(batch.recipe for batch in pack.season.batches if batch.is_open)
    for batch in pack.season.batches:
        if not batch.is_open:
            continue
        recipe = pack.offering.recipes[batch.recipe]
        title = recipe.title
        tended_only = ferments_untimed(recipe)  # a day on which it is ready would be a guess
        begun = f"begun {say_day_and_month(batch.started)}"
        for place, row in enumerate(going_timeline(pack, batch).stages):
            if row.role not in _DONE_BY or not row.dates:
                continue
            if tended_only and row.role != "tend":
                continue
            noted = batch.tended if row.role == "tend" else batch.strained
            words = f"{row.name}: {title}, {begun}{_work(row)}"
            what = "bottled" if row.role == "bottle" else _DONE_BY[row.role]
            note = f"{what}: {title}" + (", and how many" if what == "bottled" else "")
            note += f", {begun}" if twice[batch.recipe] > 1 else ""
            missed = [day for day in row.dates if batch.started < day < today]
            is_late = bool(missed) and not any(day >= missed[-1] for day in noted)
            if is_late and not (row.role == "tend" and batch.strained):
                yield Task(missed[-1], place, words, late=True, note=note)
            for day in row.dates:
                if day >= today:
                    yield Task(day, place, words, day in noted, note=note)


def _buying(pack: Pack) -> Iterator[Task]:
    """Yield what is to be bought for what begins within the week, on the day it begins.

    What a batch is filled into is wanted on the day it is filled.
    """
    starts = {batch.name: batch.timeline.start for batch in pack.making.batches}
    fillings = {batch.name: batch.timeline.made for batch in pack.making.batches}
    wanted: dict[date, list[str]] = {}
    for row in pack.rows:
        wanted_on = fillings if row.section == "containers" else starts
        days = [wanted_on[name] for name in row.uses if name in wanted_on]
        if days and row.need > row.there and not row.loose:
            wanted.setdefault(min(days), []).append(f"{row.said} ({row.to_buy})")
    for day, things in wanted.items():
        yield Task(day, -1, f"Have in the house: {'; '.join(things)}")


def _baskets(pack: Pack) -> Iterator[Task]:
    giving, today = pack.offering.giving, pack.offering.today
    for number, household, nth in numbered(giving):
        gone = pack.season.has_gone(household, nth)
        posted = pack.offering.households[number].delivery == "by post"
        words = f"{'Post' if posted else 'Give'} basket {number}, {household}"
        due = due_of(giving, pack.offering.parcels.get(household))
        day = gone.day if gone else due
        note = f"{'posted' if posted else 'given'}: {household}"
        late = gone is None and due < today
        yield Task(day, 100 + number, words, gone is not None, late, "" if gone else note)


def _thanks(pack: Pack) -> Iterator[Task]:
    """Yield whom to thank for what they gave back."""
    for line in pack.season.of_kind("gave back"):
        thanked = [one for one in pack.season.of_kind("thanked") if one.name == line.name]
        if not any(one.day >= line.day for one in thanked):
            words = f"Thank {line.name} for {line.words}"
            yield Task(line.day, 10_000, words, late=True, note=f"thanked: {line.name}")


def week_data(pack: Pack) -> dict[str, object]:
    """Return the week as the pages and the paper show it."""
    today = pack.offering.today
    tasks = this_week(pack)
    days: dict[date, list[Task]] = {}
    for task in tasks:
        if not task.late:
            days.setdefault(task.day, []).append(task)
    return {
        "title": f"{say_day(today)} and the six days after it",
        "late": [_row(task, with_day=True) for task in tasks if task.late],
        "days": [
            {"day": say_day(day), "tasks": [_row(task) for task in own]}
            for day, own in days.items()
        ],
        "next": "" if tasks else _next(pack),
    }


def _row(task: Task, with_day: bool = False) -> dict[str, object]:
    day = f", since {say_day_and_month(task.day)}" if with_day else ""
    return {"words": f"{task.words}{day}", "done": task.done, "note": task.note}


def _next(pack: Pack) -> str:
    """Say when there is something to do again, in a week with nothing."""
    today = pack.offering.today
    coming = [*_planned(pack), *_going(pack), *_baskets(pack)]
    later = sorted(task for task in coming if task.day > today and not task.done)
    return f"The next is on {say_day(later[0].day)}: {later[0].words}." if later else ""
