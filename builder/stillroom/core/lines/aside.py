"""An amount in brackets behind what is said of a food: "oil, for deep frying (about 1 litre)".

"Shallot, chopped (1 large)", "Kichererbsen, abgetropft (1 Dose à 400 g)". Leaves out amounts right
behind their food: behind.py.
"""

from __future__ import annotations

import re
from dataclasses import replace

from stillroom.core.amounts.units import System, size_of
from stillroom.core.lines.amounts import Measured, read_measured
from stillroom.core.lines.measures import read_qualifier
from stillroom.core.lines.numbers import Marks
from stillroom.core.lines.parts_of_line import LineReading, line_words
from stillroom.core.words.patterns import late_regex

_IN_BRACKETS = late_regex(
    r"(?:\(|^)\s*(?:(?:about|roughly|approx\.?|approximately|around|ca\.?|circa|environ|etwa)\s+)?(?=[0-9½⅓⅔¼¾⅛])",
    re.IGNORECASE,
)
_SIZE_BEHIND = late_regex(
    r"\s+(?P<size>[^\W\d]+(?:-[^\W\d]+)?)(?:\s+(?:ones?|size))?\s*(?=\))", re.IGNORECASE
)
# how thick it is cut is not how much of it there is: "carrots, sliced (2 cm)"
_CUT_SO = late_regex(
    r"\b(?:slic|cut|dic|cub|chop|halv|strip|chunk|piece|ring|geschnitten|Scheib|Stück|Würfel|rondell"
    r"|tranch|dés\b|coup|cort|rodaja|tagli|fett|gesneden|plakje|blokje|skiv|skur|tärn|bit)",
    re.IGNORECASE,
)
_MOST_COUNTED = 12  # "milk, warm (37)", "flour, sifted (405)"


def read_aside(reading: LineReading, system: System, marks: Marks) -> LineReading | None:
    """Read what the note of a line without an amount measures; None where it measures nothing."""
    opened = _IN_BRACKETS.search(reading.note)
    measured = read_measured(reading.note, opened.end(), system, marks) if opened else None
    if opened is None or measured is None:
        return None
    bracket = opened[0].startswith("(")
    if bracket:
        measured = _with_what_one_holds(reading.note, measured, system, marks)
        measured = _with_its_size(reading.note, measured)
    own = measured.amount
    counted = bool(own.unit or own.noun)
    if not counted and not _counts(reading.note, opened.start(), measured, bracket):
        return None
    if measured.each and not (bracket and own.noun):
        return None
    said = reading.note[: opened.start()]
    if own.unit and size_of(own.unit) == "length" and _CUT_SO.search(said):
        return None
    closed = re.match(r"\s*\)" if bracket else r"\s*(?:,|$)", reading.note[measured.end :])
    if closed is None:
        return None
    rest = reading.note[measured.end + closed.end() :]
    note = ", ".join(part for part in (said.strip(" ,"), rest.strip(" ,")) if part)
    amount = own if not counted or measured.each else replace(own, about=True)
    return replace(
        reading,
        amount=amount,
        also=measured.also,
        each=measured.each,
        fullness=measured.fullness,
        note=note,
    )


_OF_ONE = late_regex(r"\s+(?:à|a|á|de|di|von|zu|van|of|@)\s+(?=\d)", re.IGNORECASE)


def _with_what_one_holds(note: str, measured: Measured, system: System, marks: Marks) -> Measured:
    """Take what one tin holds: "(1 Dose à 400 g)", "(1 boîte de 400 g)"."""
    of_one = _OF_ONE.match(note, measured.end)
    if of_one is None or measured.each or not measured.amount.noun:
        return measured
    one = read_measured(note, of_one.end(), system, marks)
    if one is None or not one.amount.unit or one.each:
        return measured
    return replace(measured, end=one.end, each=one.amount)


def _with_its_size(note: str, measured: Measured) -> Measured:
    """Take the size behind a count: "(1 large)", "(2 medium-sized)", "(1 stor)"."""
    own = measured.amount
    behind = _SIZE_BEHIND.match(note, measured.end)
    if own.unit or own.noun or measured.each or behind is None:
        return measured
    size = behind["size"]
    if size.lower() not in line_words()["sizes_behind"] and read_qualifier(f"{size} ", 0) is None:
        return measured
    said = ", ".join(part for part in (measured.fullness, size) if part)
    return replace(measured, end=behind.end(), fullness=said)


_CUT_INTO = late_regex(r"\b(?:in|into|for|with|of|to|at|by|no|see|page|step|note)\b", re.IGNORECASE)


def _counts(note: str, until: int, measured: Measured, bracket: bool) -> bool:
    """Whether a number alone counts the food: not the wedges that it is cut into.

    One at the head of a note counts it too: "garlic clove (3, minced)".
    """
    if measured.each or measured.amount.high > _MOST_COUNTED:
        return False
    behind = note[measured.end :].strip()
    if not bracket:
        return behind.startswith(",") and not re.search(r"\d", behind)
    return behind == ")" and not _CUT_INTO.search(note[:until])
