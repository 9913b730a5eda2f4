"""What is known, read from the data files that lie in the rooms of core."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

from stillroom.core.words.plain_yaml import read_plain


@cache
def read_data(name: str, room: str = "staples") -> Any:
    """Return a data file of a room, of the staples where none is named: ``units.yml``."""
    return read_plain((files("stillroom.core") / room / name).read_text(encoding="utf-8"))
