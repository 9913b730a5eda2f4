"""What a method measures though no list names it: "add to 2 litres of water", "10 g wine yeast".

Leaves out what is only named, unmeasured: the book's own check.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.words.problems import Unreadable

_MOST: Final = 4
_MEASURED: Final = re.compile(
    r"(?<![\w.,/-])(?P<said>(?:\d+\s+)?[\d½¼¾⅓⅔⅛][\d.,/]*\s*"
    r"(?:k?g|grams?|ml|cl|dl|l|lit(?:re|er)s?|ounces?|oz|lbs?|pounds?|cups?|pints?|quarts?|gallons?|tbsps?|tsps?"
    r"|tablespoons?|teaspoons?|EL|TL)\.?\s+(?:of\s+|d[ei]\s+|d['’]|van\s+)?"
    r"(?!(?:pan|pot|bowl|jug|dish|tin)s?\b)(?P<food>[^\W\d]+(?:\s+[^\W\d]+){0,2}))",
    re.IGNORECASE,
)
_BEHIND: Final = re.compile(
    r"\s+(?:in|into|from|with|to|and|or|over|per|for|at|on|und|et|e|y|en|dans|mit)\b"
)


def measured_beside(recipe: Recipe) -> tuple[str, ...]:
    """Return the measured foods of a method, as it says them, that the list names nowhere.

    >>> recipe = Recipe(ingredients=[("", "3 lb honey")], steps=[("", "Add to 2 l of water.")])
    >>> measured_beside(recipe)
    ('"2 l of water"',)
    """
    if not recipe.ingredients:
        return ()
    listed = {food.name for _, row in recipe.ingredients for food in staples_named(_item(row))}
    words_listed = set(
        re.findall(r"[^\W\d]{3,}", " ".join(row for _, row in recipe.ingredients).lower())
    )
    found: dict[str, str] = {}
    for _, step in recipe.steps:
        for one in _MEASURED.finditer(step):
            words = _BEHIND.split(one["food"])[0].split()
            for size in range(len(words), 0, -1):
                food = find_staple(" ".join(words[:size]))
                if food is not None:
                    named = " ".join(words[:size])
                    said = one["said"][: one["said"].index(named) + len(named)]
                    # "3 cups of vinegar" of a list's cider vinegar; jars are what it is put in
                    other = food.name not in listed and words[size - 1].lower() not in words_listed
                    if other and not food.tags & {"craft"}:
                        found.setdefault(food.name, f'"{said}"')
                    break
    return tuple(found.values())[:_MOST]


def _item(row: str) -> str:
    try:
        return read_line(row).item
    except Unreadable:
        return row
