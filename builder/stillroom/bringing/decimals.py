"""Decimals that a whole list writes as another language does: "1,5 kg" in an English book.

One line of them may be a slip, and is asked about where it stands; a list of them is written anew
in the book's own way, and asked about once. Thousands ("1,500 g") make it doubtful, and stay.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.known_work import tongues_of
from stillroom.core.lines.numbers import marks_of

_LEAST: Final = 2
_PLAINLY: Final = 6
"""Small words by which a paper is plainly in its language."""
_NUMBER: Final = r"(?<![\d.,])(?P<whole>\d{1,3})%s(?P<part>\d{1,2})(?![\d.,]*\d)(?=\s*[^\W\d])"
_COMMA: Final = re.compile(_NUMBER % ",")
_STOP: Final = re.compile(_NUMBER % r"\.")
_IN_A_STEP: Final = {  # never "1.30 h", which is an hour and a half
    own: re.compile(
        rf"(?<![\d.,])(?P<whole>\d{{1,3}}){sign}(?P<part>\d|[27]5)(?![\d.,]*\d)"
        r"(?=\s?(?:k?g|[dcm]?l|kilos?|lit)\b)"
    )
    for own, sign in ((".", ","), (",", r"\."))
}
_SPOON: Final = re.compile(r"(?:about\s)?[\d½¼¾⅓⅔⅛][\d\s./½¼¾⅓⅔⅛-]*\s?([Tt])(?=\s)")
_EITHER: Final = re.compile(
    r"(?<![\d/.,])(?P<low>[1-9]\d{1,3})\s?/\s?(?P<high>[1-9]\d{1,3})(?=\s?(?:k?g|gr|[mcd]?l)\b)"
)
_THOUSANDS: Final = re.compile(r"\d[.,]\d{3}(?!\d)")


def write_own_decimals(recipe: Recipe, language: str) -> None:
    """Write the decimals of a list as the book's language does, and ask about them once.

    >>> recipe = Recipe(ingredients=[("", "1,5 kg plums"), ("", "0,5 l water"), ("", "1 lemon")])
    >>> write_own_decimals(recipe, "en_GB")
    >>> [row for _, row in recipe.ingredients]
    ['1.5 kg plums', '0.5 l water', '1 lemon']
    """
    own = marks_of(language).decimal
    if own not in ",.":
        return
    other, same, sign = (_COMMA, _STOP, ".") if own == "." else (_STOP, _COMMA, ",")
    rows = [row for _, row in recipe.ingredients]
    found = [match[0] for row in rows if (match := other.search(row))]
    doubtful = any(same.search(row) or _THOUSANDS.search(row) for row in rows)
    # "0,7 l" in a paper that is German as a whole
    elsewhere = own == "." and _is_foreign([*rows, *(step for _, step in recipe.steps)])
    # of "1.5 kg" nobody has thousands, where a comma is the decimals' own sign
    least = 1 if elsewhere or own == "," else _LEAST
    if len(found) < least or doubtful:
        return
    recipe.ingredients = [
        (group, other.sub(rf"\g<whole>{sign}\g<part>", row)) for group, row in recipe.ingredients
    ]
    anew, form = _IN_A_STEP[own], rf"\g<whole>{own}\g<part>"
    recipe.steps = [(group, anew.sub(form, step)) for group, step in recipe.steps]
    recipe.numbered = {anew.sub(form, step) for step in recipe.numbered}
    if elsewhere or own == ",":  # "2.5 dl" can be nothing else
        return
    said = ", ".join(f'"{one}"' for one in found[:4])
    what = f"{said} and their like were written as another language does: they are decimals here."
    recipe.doubt("ingredients", what, "Look whether each is the number that was meant.")


def write_plain_measures(recipe: Recipe) -> None:
    """Write what a list measures in the one way that it can mean: "2 T", "1 t", "600/700 g".

    A capital and a small letter in one list are a tablespoon and a teaspoon; of so many
    hundredths nobody has a part.

    >>> recipe = Recipe(ingredients=[("", "2 T salt"), ("", "1 t mace"), ("", "600/700 g berries")])
    >>> write_plain_measures(recipe)
    >>> [row for _, row in recipe.ingredients]
    ['2 tbsp salt', '1 tsp mace', '600-700 g berries']
    """
    rows = [row for _, row in recipe.ingredients]
    spoons = {found[1] for row in rows if (found := _SPOON.match(row))}
    if spoons == {"T", "t"}:
        rows = [_SPOON.sub(_in_full, row) for row in rows]
    rows = [_EITHER.sub(_as_range, row) for row in rows]
    groups = (group for group, _ in recipe.ingredients)
    recipe.ingredients = list(zip(groups, rows, strict=True))


def _in_full(found: re.Match[str]) -> str:
    return found[0][: -len(found[1])] + ("tbsp" if found[1] == "T" else "tsp")


def _as_range(found: re.Match[str]) -> str:
    low, high = int(found["low"]), int(found["high"])
    return f"{low}-{high}" if low < high else found[0]


def _is_foreign(texts: Sequence[str]) -> bool:
    """Whether a paper is plainly in a language that writes "1,5"."""
    tongues = tongues_of(texts, _PLAINLY)
    return bool(tongues) and "en" not in tongues
