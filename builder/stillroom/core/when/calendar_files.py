"""Calendar entries as a file to open or to subscribe to: a recipe's own, and a pack's.

Lines of RFC 5545, written here: a book has a thousand such files, and a general writer takes as
long over one of them as the rest of its page does. A file holds what its entries say and no more.
SEQUENCE is the day it was made as a number, so that a later file replaces an earlier one. The
browser's calendar.js writes the same, to the byte.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from typing import Final

from stillroom.core.when.calendar_entries import CalendarEntry, Rule

PRODUCT: Final = "-//Stillroom//Stillroom book//EN"
PRIVATE_PRODUCT: Final = "-//Stillroom//Private pack//EN"
_SEQUENCE_FROM: Final = date(2020, 1, 1)
_LINE: Final = 75  # octets, RFC 5545, 3.1
_RULE_ORDER: Final = ("FREQ", "COUNT", "INTERVAL", "BYMONTHDAY", "BYSETPOS")


def make_calendar(
    name: str,
    entries: Iterable[CalendarEntry],
    made_on: date,
    url: str = "",
    *,
    private: bool = False,
) -> bytes:
    """Return a calendar of these entries; `made_on` stamps it and numbers its revision.

    Those of a `private` one are marked so, for a calendar that others can look into.
    """
    plain = " ".join(name.split())  # no property of the standard: calendars read it as it stands
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        f"PRODID:{PRIVATE_PRODUCT if private else PRODUCT}",
        "METHOD:PUBLISH",
        f"X-WR-CALNAME:{plain}",
    ]
    for entry in entries:
        lines += _event(entry, made_on, url, private)
    lines.append("END:VCALENDAR")
    return "".join(f"{_fold(line)}\r\n" for line in lines).encode("utf-8")


def _event(entry: CalendarEntry, made_on: date, url: str, private: bool) -> Iterator[str]:
    title = _escape(entry.title)
    yield "BEGIN:VEVENT"
    yield f"SUMMARY:{title}"
    yield f"DTSTART;VALUE=DATE:{_plain_day(entry.day)}"
    yield f"DTEND;VALUE=DATE:{_plain_day(entry.day + timedelta(days=1))}"
    yield f"DTSTAMP:{_plain_day(made_on)}T000000Z"
    yield f"UID:{_escape(entry.uid)}"
    yield f"SEQUENCE:{(made_on - _SEQUENCE_FROM).days}"
    if entry.rule:
        yield f"RRULE:{_rule(entry.rule)}"
    if private:
        yield "CLASS:PRIVATE"
    yield "CATEGORIES:Stillroom"
    if entry.description:
        yield f"DESCRIPTION:{_escape(entry.description)}"
    yield "TRANSP:TRANSPARENT"
    if url:
        yield f"URL:{url}"
    for hours in entry.reminders:
        yield "BEGIN:VALARM"
        yield "ACTION:DISPLAY"
        yield f"DESCRIPTION:{title}"
        yield f"TRIGGER:{'-' if hours < 0 else ''}PT{abs(hours)}H"
        yield "END:VALARM"
    yield "END:VEVENT"


def _plain_day(day: date) -> str:
    """Return a day as section 3.3.4 writes it.

    >>> _plain_day(date(2026, 12, 1))
    '20261201'
    """
    return day.isoformat().replace("-", "")


def _rule(rule: Rule) -> str:
    """Return a rule as section 3.3.10 writes it."""
    parts = rule.parts
    said = []
    for name in _RULE_ORDER:
        if name in parts:
            value = parts[name]
            text = ",".join(map(str, value)) if isinstance(value, list) else str(value)
            said.append(f"{name}={text}")
    return ";".join(said)


def _escape(text: str) -> str:
    r"""Return words as section 3.3.11 writes them.

    >>> _escape("Shake; turn, and\ntaste")
    'Shake\\; turn\\, and\\ntaste'
    """
    text = text.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return text.replace("\r\n", "\\n").replace("\n", "\\n").replace("\r", "\\n")


def _fold(line: str) -> str:
    """Return a line in pieces of fewer than 75 octets: between two letters, and in no escape."""
    if len(line) < _LINE and line.isascii():
        return line
    pieces: list[str] = []
    begin = octets = 0
    for place, letter in enumerate(line):
        size = len(letter.encode("utf-8"))
        if place > begin and octets + size >= _LINE:
            # a sign that escapes goes with what it escapes (RFC 5545, RFC 6868)
            end = place - 1 if line[place - 1] in "\\^" and place - 1 > begin else place
            pieces.append(line[begin:end])
            begin, octets = end, place - end
        octets += size
    return "\r\n ".join([*pieces, line[begin:]])
