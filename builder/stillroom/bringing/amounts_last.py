"""Lists of old books that set the amount behind its food and a comma: "Sugar, 750 grams.".

"Noci (col mallo), n. 30.", "Spirito, litri uno e mezzo.": each is turned round. Leaves out what
the book's own reader takes as it stands, "Sugar, 750 g".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.number_words import languages_with_numbers
from stillroom.core.lines.reader import read_line
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

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


def with_amounts_before(rows: Sequence[Row]) -> list[Row]:
    """Return rows with each amount before its food, where a list has them behind."""
    return with_amounts_turned(with_counts_first(with_amounts_first(rows)))


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


def with_counts_first(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a count before its food where the lines near it have their amounts behind.

    >>> cells = ["Sugar 750 g", "Cinnamon stick 1", "Plums 1 kg", "Orange 1 (juice)", "Page 3"]
    >>> [row.text for row in with_counts_first([Row(one) for one in cells])]
    ['Sugar 750 g', '1 Cinnamon stick', 'Plums 1 kg', '1 Orange (juice)', 'Page 3']
    """
    behind = {at for at, row in enumerate(rows) if _is_cell(row) and _MEASURED.match(row.text)}
    counted = {at for at, row in enumerate(rows) if _is_cell(row) and _COUNTED.fullmatch(row.text)}
    near = {at for at in counted if _runs_on(at, counted, behind)}
    if len(behind) < _FEW or not near:
        return list(rows)
    found = []
    for at, row in enumerate(rows):
        said = _COUNTED.fullmatch(row.text) if at in near else None
        if said and _is_food(said["food"]):
            turned = f"{said['many']} {said['food'].strip()} {said['aside'] or ''}".strip()
            row = replace(row, text=turned, shape="item" if row.shape == "heading" else row.shape)
        found.append(row)
    return found


def with_amounts_turned(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "300 gr farina" for "Farina gr 300", where three or more stand so.

    In whatever language a line and its food are known: "Mąka — 2 szklanki,", "uova n. 3".

    >>> lines = ["Farina gr 300", "uova n. 3", "burro gr 100", "Impastare e cuocere a 180."]
    >>> [row.text for row in with_amounts_turned([Row(one) for one in lines])]
    ['300 gr Farina', '3 uova', '100 gr burro', 'Impastare e cuocere a 180.']
    """
    found: dict[str, dict[int, str]] = {}
    cells = {
        at: said
        for at, row in enumerate(rows)
        if _is_cell(row)
        and (said := _FOOD_FIRST.fullmatch(row.text.strip()))
        and not is_ingredient(row.text)
    }
    if not _LEAST <= len(cells) <= _MOST_CELLS:
        return list(rows)
    for at, said in cells.items():
        unit, many = said["unit"] or "", said["many"].strip(" .,")
        unit = "" if unit.lower().rstrip(".°º") in ("n", "nr") else unit
        turned = " ".join(filter(None, (many, unit, said["rest"], said["food"].strip())))
        for tongue in sorted(languages_with_numbers()):
            if _reads_as_food(turned, tongue):
                found.setdefault(tongue, {})[at] = turned
    best = max(found.values(), key=len, default={})
    if len(best) < _LEAST:
        return list(rows)
    return [replace(row, text=best[at]) if at in best else row for at, row in enumerate(rows)]


@lru_cache(maxsize=1024)
def _reads_as_food(line: str, tongue: str) -> bool:
    try:
        reading = read_line(line, language=tongue)
    except Unreadable:
        return False
    known = isinstance(reading.amount, Amount) and read_food(reading.item, Larder(language=tongue))
    return bool(known and known.known)


# "Farina gr 300", "Mąka — 2 szklanki,", "Uova n. 3"
_FOOD_FIRST: Final = late_regex(
    r"(?P<food>[^\W\d][^\d.,:;!?()|]{1,40}?)(?:\s+[-–—]\s+|\s*[:,]\s*|\s+)(?:(?P<unit>(?i:kg|gr?|hg|lt?|dl|cl|ml|nr?))[.°º]?\s*)?"
    r"(?P<many>[\d½¼¾⅓⅔][\d.,/½¼¾⅓⅔]*)\s*(?P<rest>[^\W\d]{1,14}(?:\s[^\W\d]{1,10})?)?\s*[.,;]?"
)


def _runs_on(at: int, counted: set[int], behind: set[int]) -> bool:
    """Whether lines of a list without a break lead from one to a line with its amount behind."""
    for step in (1, -1):
        place = at + step
        while place in counted:
            place += step
        if place in behind:
            return True
    return False


def _is_cell(row: Row) -> bool:
    shaped = row.shape in ("line", "item", "heading", "row") and len(row.text) <= _LONGEST
    return shaped and not is_only_makes(row.text)  # "Makes 2" names no food


@lru_cache(maxsize=512)
def _is_food(name: str) -> bool:
    """Whether a name is of a food in any language that books are written in."""
    return any(
        read_food(name, Larder(language=tongue)).known
        for tongue in ("en", *sorted(languages_with_numbers()))
    )


_FEW: Final = 2
_MOST_CELLS: Final = 300
"""Lines with a number behind words: of more of them, as a register has, none is read."""
_MEASURED: Final = late_regex(
    rf"(?i)[^\W\d][^\d.!?()]{{1,40}}?[\s,:–-]+[\d½¼¾⅓⅔][\d\s./,½¼¾⅓⅔-]*\s?{_UNIT}\b\.?\s*(?:\([^()]*\))?$"
)
_COUNTED: Final = late_regex(
    r"(?P<food>[^\W\d][^\d.,:;!?()]{1,40}?)\s+(?P<many>\d{1,2}|[½¼])\s*(?P<aside>\([^()]*\))?"
)


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
