"""The private calendar: every batch's work and the giving day, as one iCalendar file (RFC 5545)."""

from __future__ import annotations

from datetime import UTC, date, datetime, time, timedelta

from icalendar import Calendar, Event, vRecur

from stillroom.core.when.calendar_entries import CalendarEntry, make_entries
from stillroom.giving.batches import Batch, Making
from stillroom.giving.offering import Offering


def write_calendar(offering: Offering, making: Making) -> bytes:
    """Return the calendar of all batches and of the giving day.

    An entry is known by its recipe, the giving day and which making of that recipe it is, so that a
    calendar moves it, and makes no second one, when the plan changes elsewhere.
    """
    giving = offering.giving
    calendar = Calendar()
    calendar.add("prodid", "-//Stillroom//Private pack//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", giving.giving_list)
    for batch in making.batches:
        slug, title = f"{batch.recipe.slug}.{giving.giving_day}", _title(batch)
        for entry in make_entries(slug, title, batch.timeline, f"batch {batch.ordinal}"):
            if ".give-" not in entry.uid:
                calendar.add_component(_event(entry, offering.today))
    count = len(offering.problem.baskets)
    given = CalendarEntry(
        uid=f"giving.{giving.giving_day:%Y-%m-%d}@stillroom",
        title=f"Give the baskets: {count} of them",
        description=giving.giving_list,
        day=giving.giving_day,
        rule=None,
        reminders=(),
    )
    calendar.add_component(_event(given, offering.today))
    return bytes(calendar.to_ical())


def _title(batch: Batch) -> str:
    return f"{batch.recipe.title} ({batch.name}, {batch.scaled.makes})"


def _event(entry: CalendarEntry, today: date) -> Event:
    event = Event()
    event.add("uid", f"private-{entry.uid}")
    event.add("dtstamp", datetime.combine(today, time(), UTC))
    event.add("summary", entry.title)
    event.add("dtstart", entry.day)
    event.add("dtend", entry.day + timedelta(days=1))
    if entry.rule:
        event.add("rrule", vRecur(entry.rule.parts))
    if entry.description:
        event.add("description", entry.description)
    event.add("class", "PRIVATE")
    event.add("transp", "TRANSPARENT")
    return event
