"""What is known, read from the data files that lie in the rooms of core."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

import yaml


@cache
def read_data(name: str, room: str = "staples") -> Any:
    """Return a data file of a room, of the staples where none is named: ``units.yml``."""
    text = (files("stillroom.core") / room / name).read_text(encoding="utf-8")
    # the C reader where PyYAML brings it: the staples are a second of every command otherwise
    return yaml.load(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
