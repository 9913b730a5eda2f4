"""A calendar file for each recipe and the giving day it is aimed at, to open or to subscribe to.

RFC 5545 through the icalendar library. It holds what the recipe's page says and nothing private.
SEQUENCE is the day of the build as a number, so that a later file replaces an earlier one.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, date, datetime, time, timedelta
from typing import Final

from icalendar import Alarm, Calendar, Event, vRecur

from stillroom.core.calendar_entries import CalendarEntry

PRODUCT: Final = "-//Stillroom//Stillroom book//EN"
_SEQUENCE_FROM: Final = date(2020, 1, 1)


def make_calendar(
    name: str, entries: Iterable[CalendarEntry], made_on: date, url: str = ""
) -> bytes:
    """Return a calendar of these entries; `made_on` stamps it and numbers its revision."""
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("method", "PUBLISH")
    calendar.add("x-wr-calname", name)
    for entry in entries:
        calendar.add_component(_event(entry, made_on, url))
    return bytes(calendar.to_ical())


def _event(entry: CalendarEntry, made_on: date, url: str) -> Event:
    event = Event()
    event.add("uid", entry.uid)
    event.add("dtstamp", datetime.combine(made_on, time(), UTC))
    event.add("sequence", (made_on - _SEQUENCE_FROM).days)
    event.add("summary", entry.title)
    event.add("dtstart", entry.day)
    event.add("dtend", entry.day + timedelta(days=1))
    if entry.rule:
        event.add("rrule", vRecur(entry.rule.parts))
    if entry.description:
        event.add("description", entry.description)
    if url:
        event.add("url", url)
    event.add("transp", "TRANSPARENT")
    event.add("categories", ["Stillroom"])
    for hours in entry.reminders:
        alarm = Alarm()
        alarm.add("action", "DISPLAY")
        alarm.add("description", entry.title)
        alarm.add("trigger", timedelta(hours=hours))
        event.add_component(alarm)
    return event
