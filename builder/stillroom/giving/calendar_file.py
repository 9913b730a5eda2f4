"""The private calendar: every batch's work and the giving day, as one iCalendar file (RFC 5545)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from stillroom.core.when.calendar_entries import MORNING_HOUR, CalendarEntry, make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.giving.batches import Batch, Making
from stillroom.giving.offering import Offering


def write_calendar(offering: Offering, making: Making) -> bytes:
    """Return the calendar of all batches and of the giving day.

    An entry is known by its recipe, the giving day and which making of that recipe it is, so that a
    calendar moves it, and makes no second one, when the plan changes elsewhere.
    """
    entries = (replace(entry, uid=f"private-{entry.uid}") for entry in _entries(offering, making))
    name = offering.giving.giving_list
    return make_calendar(name, entries, offering.today, private=True)


def _entries(offering: Offering, making: Making) -> Iterator[CalendarEntry]:
    giving = offering.giving
    for batch in making.batches:
        slug, title = f"{batch.recipe.slug}.{giving.giving_day}", _title(batch)
        for entry in make_entries(slug, title, batch.timeline, f"batch {batch.ordinal}"):
            if ".give-" not in entry.uid:
                yield entry
    count = len(offering.problem.baskets)
    yield CalendarEntry(
        uid=f"giving.{giving.giving_day:%Y-%m-%d}@stillroom",
        title=f"Give the baskets: {count} of them",
        description=giving.giving_list,
        day=giving.giving_day,
        rule=None,
        reminders=(-15, MORNING_HOUR),
    )


def _title(batch: Batch) -> str:
    return f"{batch.recipe.title} ({batch.name}, {batch.scaled.makes})"
