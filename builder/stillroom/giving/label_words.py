"""What the printed words of a label show, read by words alone: the ground of the second check.

It knows no food and asks no larder. Leaves out what a household must not have: second_check.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files

import yaml

_KEYS = frozenset({"need", "not", "holds", "source", "read"})


@dataclass(frozen=True)
class LabelWords:
    """One row of label_words.yml."""

    need: str
    holds: re.Pattern[str]
    other: re.Pattern[str]
    source: str

    def shown_by(self, words: str) -> str:
        """Return the first words that show it, "" when none do."""
        left = self.other.sub(" ", words.lower().replace("’", "'"))
        found = self.holds.search(left)
        return found[0] if found else ""


@cache
def label_words() -> dict[str, LabelWords]:
    """Return the rows by what they show; raises ValueError for a faulty row."""
    text = (files("stillroom.giving") / "label_words.yml").read_text(encoding="utf-8")
    found: dict[str, LabelWords] = {}
    for row in yaml.safe_load(text):
        if set(row) != _KEYS:
            raise ValueError(f"label_words.yml: {row.get('need')}: a row has just its five facts.")
        found[row["need"]] = LabelWords(
            row["need"],
            re.compile(row["holds"], re.IGNORECASE),
            re.compile(rf"\b(?:{row['not']})", re.IGNORECASE),
            row["source"],
        )
    return found


@lru_cache(maxsize=16384)
def words_showing(need: str, words: str) -> str:
    """Return the words that show a need ("milk", "gelatine"), "" when none do.

    >>> words_showing("milk", "coconut milk, cocoa butter, whey powder")
    'whey'
    >>> words_showing("nuts", "nutmeg and butternut squash")
    ''
    """
    return label_words()[need].shown_by(words)
