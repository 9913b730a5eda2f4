"""The facts of a recipe that are one word or number by themselves: title, date, acidity.

Leaves out what is measured or kept in something: holders.py, keeps.py.
"""

from __future__ import annotations

import re
from datetime import date
from fractions import Fraction
from typing import Any

from stillroom.core.words.problems import Unreadable, say_written


def read_title(title: str) -> str:
    """Return a title as it is written; raises Unreadable where it says no word: "~", "?"."""
    if title.strip() and not any(map(str.isalnum, title)):
        raise Unreadable(f"{say_written(title)} is no title.", "Write what it is called.")
    return title


def read_date(written: str) -> str:
    """Return when a recipe was written down, as its writer says it: "1978", "one wet June".

    Raises Unreadable for what has the shape of a day and is none in the calendar.
    """
    found = re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", written.strip())
    try:
        if found:
            date(int(found[1]), int(found[2]), int(found[3] or 1))
    except ValueError:
        what = f"{say_written(written)} is no day of the calendar."
        raise Unreadable(what, 'Write year, month, day: "2021-05-03".') from None
    return written


def read_ph(value: Any) -> Fraction:
    """Return a measured acidity; raises Unreadable."""
    # a number with a power of ten in it can be longer than any computer holds
    if not re.fullmatch(r"[0-9]{1,4}(?:[.,][0-9]{1,6})?", str(value)):
        raise Unreadable(f"{say_written(value)} is not a pH.", 'Write a number such as "3.4".')
    found = Fraction(str(value).replace(",", "."))
    if not 0 <= found <= 14:
        raise Unreadable(f"{say_written(value)} is not a pH.", "It lies between 0 and 14.")
    return found
