"""One amount said of several foods: "1 tsp each cumin, mace", "100 g vardera mandel, kokos".

Read as one ingredient, all but one of them would be lost, and "each" would be the name of a food.
The words are those of dictionaries, in the languages that lines are read in.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from stillroom.core.amounts.quantities import Amount
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

if TYPE_CHECKING:
    from stillroom.core.lines.parts_of_line import LineReading

_OF_SEVERAL: Final = (
    r"jeweils|je(?=\s)|jede[mr]|chaque|chacune?s?|ciascun[oaie]?|cadaun[oa]|ognun[oa]|cada(?:\s+um?[ao]?n?[oa]?)?|c/u|ieder|"
    # in English an animal
    r"elk(?!\s+(?:breakfast|sausages?|loin|meat|steaks?|roasts?|chops?|backstraps?|stew|venison|burgers?|mince|tenderloin)\b)|"
    r"vardera|var\s+(?:av|för)|varje|hver|każd(?:ego|ej|y|a|e)|kutakin|kumpaakin"
)
"""Nobody says so of one food: "1 tsk vardera" is of two at the least."""
EACH: Final = rf"(?:each|apiece|ea\.|ea(?=\s)|{_OF_SEVERAL})"
"""What says that an amount is of each, as a part of a pattern."""
_OF: Final = r"(?:(?:of|de|di|da|van|av|af|von|z)\s+|d['’]\s*)"
EACH_OF: Final = rf"(?:{_OF}?{EACH}(?![^\W\d_])(?:\s+(?:of|de|di|van|av|af|for)(?![^\W\d_]))?)"
"""The same with what joins it to its amount and its foods: "of each", "vardera av"."""

# "each celery seed, mustard seed", "of each: salt, pepper", "vardera av kanel och nejlika"
_FIRST: Final = late_regex(
    rf"{_OF}?(?:(?P<english>each|apiece|ea\.?)|{_OF_SEVERAL})(?![^\W\d_])(?P<more>.*)",
    re.IGNORECASE,
)
_SEVERAL: Final = late_regex(r"\band\b|[&/,:]|^\s*of\s", re.IGNORECASE)
_LAST: Final = late_regex(
    rf".*(?:\b(?:and|und|et|e|y|en|och|og|i|ja)\b|[&/]).*\s{_OF}?{EACH}", re.IGNORECASE
)
# "1 tsp (each) celery seed, mustard seed": the word stands before the rest of what is listed
_NOTED: Final = late_regex(rf"{_OF}?{EACH}\s*,\s*\S", re.IGNORECASE)
# "Zimt, Nelken, Sesam, je 1 TL": an amount at the end, of each of what stands before
_BEHIND: Final = late_regex(
    rf"[^,;]+[,;].*[,;]\s*"
    rf"(?:{EACH}\s+[\d½¼¾⅓⅔][^,;]*|[\d½¼¾⅓⅔][^,;]*\s{_OF}?{EACH})",
    re.IGNORECASE,
)
# "1 teaspoon ground: cloves, mace, nutmeg"
_HEADED: Final = late_regex(r"[^\W\d]+\s?:\s+\S")


def refuse_each(reading: LineReading, text: str) -> None:
    """Ask about a line that says one amount of several foods; it may be parted before it is read.

    >>> from stillroom.core.lines.reader import read_line
    >>> refuse_each(read_line("3 lemons (100 g each)"), "3 lemons (100 g each)")
    """
    if _names_several(reading, text.strip()):
        raise Unreadable(
            f'"{text.strip()}" says one amount of several things.', "Write a line for each of them."
        )


def _names_several(reading: LineReading, text: str) -> bool:
    item, note = reading.item, reading.note
    if not isinstance(reading.amount, Amount):
        return _BEHIND.fullmatch(text) is not None
    if first := _FIRST.fullmatch(item):
        return not first["english"] or bool(note or _SEVERAL.search(first["more"]))
    headed = bool(note) and _HEADED.match(item) is not None
    return headed or _LAST.fullmatch(item) is not None or _NOTED.match(note) is not None
