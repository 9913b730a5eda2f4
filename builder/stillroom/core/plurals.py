"""One and many of a counted item: "egg" and "eggs", "bay leaf" and "bay leaves".

Plain English rules on the last word, with the kitchen's own exceptions; enough for ingredients.
"""

from __future__ import annotations

import re

_ODD = {
    "leaf": "leaves",
    "loaf": "loaves",
    "half": "halves",
    "tomato": "tomatoes",
    "potato": "potatoes",
    "mango": "mangoes",
    "box": "boxes",
    "bunch": "bunches",
    "peach": "peaches",
    "radish": "radishes",
    "brush": "brushes",
}
MANY_TO_ONE = {many: one for one, many in _ODD.items()}
SAME = ("muslin", "thread", "scissors", "molasses", "hops", "asparagus", "citrus")


def plural(item: str) -> str:
    """Return the plural of an item, by its last word.

    >>> plural("Seville orange"), plural("bay leaf"), plural("sheet of paper"), plural("berry")
    ('Seville oranges', 'bay leaves', 'sheets of paper', 'berries')
    """
    counted, rest = _head(item)
    head, last = _split(counted)
    word = last.lower()
    if word in SAME or word != singular(last).lower():
        return item
    if word in _ODD:
        return head + _ODD[word] + rest
    if re.search(r"[^aeiou]y$", word):
        return head + last[:-1] + "ies" + rest
    return head + last + ("es" if re.search(r"(s|x|z|ch|sh)$", word) else "s") + rest


def singular(item: str) -> str:
    """Return the singular of an item, by its last word.

    >>> singular("unwaxed Seville oranges"), singular("star anise"), singular("quinces")
    ('unwaxed Seville orange', 'star anise', 'quince')
    """
    counted, rest = _head(item)
    head, last = _split(counted)
    word = last.lower()
    if word in SAME or not word.endswith("s") or word.endswith("ss"):
        return item
    if word in MANY_TO_ONE:
        return head + MANY_TO_ONE[word] + rest
    return head + (last[:-3] + "y" if word.endswith("ies") else last[:-1]) + rest


def _split(item: str) -> tuple[str, str]:
    head, space, last = item.rpartition(" ")
    return head + space, last


def _head(item: str) -> tuple[str, str]:
    """Split "sheet of baking paper" after the word that is counted."""
    found = re.search(r"\s(?:of|or|for|with|in|to)\s|,", item)
    return (item[: found.start()], item[found.start() :]) if found else (item, "")
