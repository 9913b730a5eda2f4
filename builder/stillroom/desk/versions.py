"""The earlier versions of any file that the desk writes: shown beside it now, and brought back.

Of a recipe they come into its boxes first (earlier_room.py); of the rest they are put in place at
once, and what stood there is kept in turn.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

import babel.dates

from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.desk import Desk
from stillroom.desk.in_words import Words, pairs_in_words
from stillroom.desk.keeping import Earlier, find_earlier, keep, list_earlier
from stillroom.desk.place import read_now


def when_words(earlier: Earlier, language: str) -> str:
    """Say when a version gave way, in the book's language and this computer's time."""
    there: datetime = earlier.when.astimezone()
    return str(babel.dates.format_datetime(there, "EEEE d MMMM y, HH:mm:ss", locale=language))


def _language(desk: Desk) -> str:
    try:
        return desk.book().settings.language
    except ProblemsFound:  # its settings are what is to be brought back
        return "en_GB"


def versions_of(desk: Desk, path: Path, at: str, words: Words) -> dict[str, Any]:
    """Return what the page of versions shows, told by `words`; raises NotHere for none."""
    language = _language(desk)
    chosen = find_earlier(desk.place, [path], at) if at else None
    now = read_now(path, path.name)
    return {
        "name": desk.place.short(path),
        "opened": now.sum,
        "versions": [
            (one.name, when_words(one, language)) for one in list_earlier(desk.place, [path])
        ],
        "chosen": at,
        "when": when_words(chosen, language) if chosen else "",
        "pairs": pairs_in_words(chosen.text, now.raw, words) if chosen else [],
    }


def bring_back(desk: Desk, path: Path, sent: Mapping[str, str]) -> None:
    """Put a version in place; raises ChangedElsewhere, NotHere."""
    chosen = find_earlier(desk.place, [path], sent.get("at", ""))
    keep(desk.place, path, chosen.text, sent.get("opened", ""))
