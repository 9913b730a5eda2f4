"""Facts as they are written above a method, so that the book's own reader finds the same words.

What cannot stand there as it is gets quotes; nothing else is touched. Leaves out which facts a
recipe has: recipe.py, and whoever else drafts one.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from stillroom.core.reading.facts_above import read_facts
from stillroom.core.reading.written_facts import NAMES
from stillroom.core.words.text_files import clean


def fact(name: str, value: str) -> str:
    """Return the line of one fact.

    >>> fact("title", "Plum gin"), fact("title", "Gin: the plum one #3")
    ('title: Plum gin', 'title: "Gin: the plum one #3"')
    """
    value = _plain(value)
    return f"{name}: {_said(value, name)}"


def facts(name: str, values: Iterable[str]) -> list[str]:
    """Return the lines of a list, one to each value.

    >>> facts("ingredients", ["250 g sugar", "salt: to taste"])
    ['ingredients:', '  - 250 g sugar', '  - "salt: to taste"']
    """
    return [f"{name}:", *(f"  - {item(value)}" for value in values)]


def item(value: str) -> str:
    """Return a value as it is written behind a dash, where a colon would make a fact of it.

    >>> item("250 g sugar"), item("sugar: 110 g")
    ('250 g sugar', '"sugar: 110 g"')
    """
    value = _plain(value)
    rows = ["ingredients:", f"  - {value}"]
    return value if _read(rows, "ingredients") == [value] else _quoted(value)


def _plain(value: str) -> str:
    return " ".join(clean(value, "").split())


def _said(value: str, name: str) -> str:
    elsewhere = not re.search(r":(?:\s|$)", value)  # other programs read a fact within a fact
    same = elsewhere and _read([f"{name}: {value}"], name) == value
    return value if same else _quoted(value)


def _read(rows: list[str], name: str) -> object:
    found = read_facts(rows, "", 1, NAMES)
    return None if found.problems else found.data.get(name)


def _quoted(value: str) -> str:
    escaped = value.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
