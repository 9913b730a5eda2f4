"""Figures that a page gives beside a recipe: lengths of time, readers' marks, what it feeds.

Leaves out what else is no part of a recipe: sorting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.heads import SPAN_UNIT

_TIME_OR_MARK: Final = re.compile(
    rf"(?:\d+(?:\s*(?:[-–]|à|to|bis|a|tot)\s*\d+)?\s*{SPAN_UNIT}\b\.?\s*)+"
    r"|\d(?:[.,]\d+)?\s*/\s*(?:5|10)(?:[.,]0)?",
    re.IGNORECASE,
)
_LABELLED_TIME: Final = re.compile(
    r"(?:prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|active|hands[-\s]on|zubereitung|kochen|vorbereitung"
    r"|préparation|cuisson|preparazione|cottura|preparación|cocción|elaboración|bereiding|voorbereiding|tillagning|tilberedning|preparação|cozedura"
    r"|[^\W\d_]{3,}(?:zeit|tijd|tid)|(?:temps|tempo|tiempo|durée|duración)\s(?:de|di)\s[^\W\d_]+)(?:\stime)?\s?:?\s"
    r"(?:(?:ca\.?|about|etwa|environ|circa)\s)?(?:\d+(?:\s?[-–]\s?\d+)?\s?"
    r"(?:min\w*|mn|h|hrs?|hours?|heures?|std|stunden?|ore|ora|horas?|uur|tim(?:m\w+)?|timer)\.?\s?(?:et\s|and\s|und\s|e\s|y\s)?)+(?:\d{1,2})?",
    re.IGNORECASE,
)
_PAGE_WORD: Final = r"(?:pages?|pag\.|p\.|seite|s\.|pagina|página|sida|side|strona|strana)"
_OF_ALL: Final = r"(?:\s{0,3}(?:of|von|/|de|sur|di|van|av|af|z|ze)\s{0,3}\d{1,4})?"
_PAGE: Final = re.compile(
    rf"[-–—\s]{{0,3}}{_PAGE_WORD}\s{{0,3}}\d{{1,4}}{_OF_ALL}[-–—.\s]{{0,3}}", re.IGNORECASE
)
# the same without its word, as the leaves of old books are copied: "[12]", "- 12 -"
_LEAF: Final = re.compile(r"[-–—\s\[(]{0,3}\d{1,4}[-–—.\s\])]{0,3}")
_NUTRITION: Final = re.compile(
    r"\d\s*(?:k?cal(?:ories)?|kj)\b|\d\s*(?:m?g|(?:milli)?grams)\s+(?:sat\.?\s+)?"
    r"(?:fat|protein|carbohydrates?|fib(?:er|re)|sugars|sodium|cholesterol|calcium|fett|kohlenhydrate|eiweiß|ballaststoffe|lipides"
    r"|glucides|protéines|fibres|grassi|carboidrati|proteine|grasas|hidratos|proteínas|vet|koolhydraten|eiwit|kolhydrater)\b"
    r"|\b(?:calories|dietary\sfib(?:er|re)|cholesterol|(?:un)?saturated\sfat|total\sfat|carbohydrates?)\s*[:,]\s*\d",
    re.IGNORECASE,
)


_NUTRIENT: Final = re.compile(
    r"(?:of which|davon|dont|di cui|waarvan|varav"
    r"|energy|calories|kcal|proteins?|carb(?:ohydrate)?s|saturates|(?:saturated|total|trans) fat"
    r"|cholesterol|sodium|fib(?:re|er)|brennwert|energie|eiwei(?:ß|ss)|kohlenhydrate|ballaststoffe"
    r"|kalorien|énergie|protéines|glucides|lipides|fibres|calorías|energía|proteínas|carbohidratos"
    r"|energia|proteine|carboidrati|grassi|eiwitten?|koolhydraten|vetten|energi|kolhydrater"
    r"|kulhydrat|karbohydrater|kalorier)\b",
    re.IGNORECASE,
)


_WEAK_NUTRIENT: Final = re.compile(
    r"(?:(?:total |saturated )?fats?|sugars?|salt|fett|zucker|salz|gras|matières grasses|graisses"
    r"|sucres?|sel|grasas|azúcar(?:es)?"
    r"|sal|grassi|zuccheri|sale|vet|suikers?|zout|fett?|socker|salt|fedt|sukker|gordura|açúcar(?:es)?"
    r"|tłuszcz|cukry?|sól)\b[^\d]{0,20}$",
    re.IGNORECASE,
)


def tells_nutrition(table: Sequence[Sequence[str]]) -> bool:
    """Whether a table's rows are nutrients and not ingredients: some are no food, all may be none.

    >>> tells_nutrition([["Energy", "250 kcal"], ["Sugar", "12 g"], ["Salt", "0.1 g"]])
    True
    >>> tells_nutrition([["1 kg", "plums"], ["1 tbsp", "protein powder"]])
    False
    """
    named = sum(any(_NUTRIENT.match(cell) for cell in row) for row in table)
    weak = sum(
        any(_WEAK_NUTRIENT.match(cell) for cell in row)
        and not any(_NUTRIENT.match(cell) for cell in row)
        for row in table
    )
    most = named >= 2 and named * 3 >= len(table)
    return most or (named >= 1 and len(table) > 1 and named + weak == len(table))


def is_page_number(text: str) -> bool:
    """Whether a line is the number of a page and nothing else.

    >>> is_page_number("Page 7 of 24"), is_page_number("Seite 3"), is_page_number("7 of 24 jars")
    (True, True, False)
    """
    return bool(_PAGE.fullmatch(text.strip()))


def is_leaf_number(text: str) -> bool:
    """Whether a line is a page's number with its word or without: "[12]", "Page 12".

    >>> is_leaf_number("[12]"), is_leaf_number("p. 12"), is_leaf_number("12 plums")
    (True, True, False)
    """
    return is_page_number(text) or bool(_LEAF.fullmatch(text.strip()))


def is_nutrition(text: str) -> bool:
    """Whether a line gives figures of what a helping feeds.

    >>> is_nutrition("Voedingswaarde: 62 kcal, 3 g vet, 8 g koolhydraten"), is_nutrition("3 g fat")
    (True, False)
    """
    return len(_NUTRITION.findall(text)) >= 2


def is_labelled_time(text: str) -> bool:
    """Whether a line says by a word and figures how long the work takes: above a list, no step.

    >>> is_labelled_time("Cuisson 1 heure 15"), is_labelled_time("Prep 20 minutes")
    (True, True)
    >>> is_labelled_time("Cook 20 minutes."), is_labelled_time("Riposo 2 settimane")
    (False, False)
    """
    bare = text.strip()
    stopped = bare.endswith(".") and not re.search(r"\b(?:min|std|h|hr)\.$", bare, re.IGNORECASE)
    return bool(_LABELLED_TIME.fullmatch(bare)) and not stopped


def is_time(text: str) -> bool:
    """Whether a line is a length of time, or a mark of what others liked, and nothing else.

    >>> is_time("2 à 3 semaines"), is_time("5.0/5"), is_time("3 jars")
    (True, True, False)
    """
    return bool(_TIME_OR_MARK.fullmatch(text.strip()))
