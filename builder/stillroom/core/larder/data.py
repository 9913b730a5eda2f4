"""The one place that reads the larder's own data files."""

from __future__ import annotations

from functools import cache
from typing import Any

from stillroom.core.larder.index_file import HOUSE, held_index


@cache
def read_larder_data(name: str) -> Any:
    """Return one of the YAML files of the larder, for example ``acidity.yml``.

    It stands in the index too, where that is true: reading it there is many times quicker.
    """
    held = held_index()
    return held["data"][name] if held and name in held["data"] else read_yaml(name)


def read_yaml(name: str) -> Any:
    """Return one of the YAML files of the larder, read from the file itself."""
    from stillroom.core.words.plain_yaml import read_plain  # late: the index has what is needed

    return read_plain((HOUSE / name).read_text(encoding="utf-8"))
