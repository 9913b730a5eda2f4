"""What was asked when a recipe was brought in: rows "# ?" of its file, until they are answered."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

ANSWERED: Final = "answered-"
"""Begins the name of a box that is ticked when a question is answered."""
_ASKED: Final = re.compile(r"^\s*#\s*\?\s*(?P<words>.*?)\s*$", re.MULTILINE)


def asked_in(raw: str) -> list[str]:
    r"""Return the questions that stand in a file.

    >>> asked_in("---\n# ? How much is \"some\"?\ntitle: A\n---\n")
    ['How much is "some"?']
    """
    return [found["words"] for found in _ASKED.finditer(raw)]


def without_answered(raw: str, posted: Mapping[str, str]) -> str:
    """Return a file without the questions that were ticked; every other line stays."""
    ticked = {words for name, words in posted.items() if name.startswith(ANSWERED)}
    kept = []
    for line in raw.splitlines(keepends=True):
        found = _ASKED.match(line.rstrip("\r\n"))
        if found is None or found["words"] not in ticked:
            kept.append(line)
    return "".join(kept)
