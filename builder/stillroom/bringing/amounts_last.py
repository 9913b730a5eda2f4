"""Lists of old books that set the amount behind its food and a comma: "Sugar, 750 grams.".

"Noci (col mallo), n. 30.", "Spirito, litri uno e mezzo.": each is turned round. Leaves out what
the book's own reader takes as it stands, "Sugar, 750 g".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.words.patterns import late_regex

_UNIT: Final = (
    r"(?:k?g|gr|grams?|grammes?|gramm[oi]|grammi|gramos?|kilos?|chil[oi]|chilogramm[oi]|kilogramos?|pfund|libras?|libbre?|once|onz[ae]s?"
    r"|ounces?|oz|pounds?|lbs?|pints?|quarts?|gallons?|lit(?:re|er|ro|ri|ros)s?|d[ée]cilit\w+|dl|cl|centilit\w+|ml|cups?|cucchiai\w*|cucharad\w*|cuiller\w*"
    r"|spoonfuls?|teaspoons?|tablespoons?|bicchier[ei]|drops?|gocce|pieces?)"
)
_WORDS: Final = {
    word: number
    for number, said in {
        "½": "mezzo mezza half medio media",
        "1": "un uno una a an one",
        "2": "due dos two deux",
        "3": "tre tres three trois",
        "4": "quattro cuatro four quatre",
        "5": "cinque cinco five cinq",
        "6": "sei seis six",
        "8": "otto ocho eight huit",
        "10": "dieci diez ten dix",
        "12": "dodici doce twelve douze",
    }.items()
    for word in said.split()
}
_COUNT: Final = (
    r"(?:[\d½¼¾⅓⅔][\d\s.,/½¼¾⅓⅔]*|" + "|".join(sorted(_WORDS, key=len, reverse=True)) + ")"
)
_LAST: Final = late_regex(
    rf"(?i)(?P<food>[^\W\d][^\d,:;.!?]{{1,50}}?),\s+(?:(?:n|no|nr|num|number|numero)\.?\s*(?P<number>\d+)"
    rf"|(?P<unit>{_UNIT})\.?\s+(?P<many>{_COUNT})(?P<half>\s+(?:e|y|and|et)\s+(?:mezz[oa]|medi[oa]|a\s+half|demie?))?"
    rf"|(?P<first>{_COUNT})(?P<too>\s+(?:and\s+a\s+half|e\s+mezz[oa]|y\s+medi[oa]))?\s*(?P<behind>{_UNIT})?)\.?"
)
_LEAST: Final = 3
_LONGEST: Final = 90


def with_amounts_first(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the amount before its food, where three or more have it behind a comma.

    >>> old = ["Noci, n. 30.", "Spirito, litri uno e mezzo.", "Zucchero, grammi 750.", "Mescere."]
    >>> [row.text for row in with_amounts_first([Row(one) for one in old])]
    ['30 Noci', '1½ litri Spirito', '750 grammi Zucchero', 'Mescere.']
    """
    turned = {
        at: text
        for at, row in enumerate(rows)
        if row.shape in ("line", "item") and (text := _turned(row.text))
    }
    known = sum(bool(foods_named(text)) for text in turned.values())
    if len(turned) < _LEAST or known * 2 < len(turned):
        return list(rows)
    return [
        replace(row, text=turned[at]) if at in turned and not is_ingredient(row.text) else row
        for at, row in enumerate(rows)
    ]


def _turned(text: str) -> str:
    """Return "750 grammi zucchero" of "Zucchero, grammi 750."; "" for any other line."""
    if len(text) > _LONGEST:
        return ""
    found = _LAST.fullmatch(text.strip())
    if found is None:
        return ""
    many = found["number"] or found["many"] or found["first"]
    many = _WORDS.get(many.strip().lower(), many.strip(" .,"))
    half = "½" if found["half"] or found["too"] else ""
    return " ".join(
        filter(None, [f"{many}{half}", found["unit"] or found["behind"], found["food"]])
    )
