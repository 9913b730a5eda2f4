"""How long a thing keeps, or waits, behind a label: "Shelf life: 6 months", "Ziehzeit: 4 Wochen".

A page's times in minutes and hours are its own affair and left out; days and longer are the
recipe's. Leaves out sentences: keeping.py.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from re import IGNORECASE
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, words
from stillroom.bringing.season_said import take_season
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.when.spans import Span
from stillroom.core.words.patterns import late_regex

_LONGEST: Final = 100
_LABELLED: Final = late_regex(
    r"[-–•*\s]{0,3}(?P<head>[^\W\d][^:!?\d]{2,40}?)\s?:\s{0,3}"
    r"(?:(?:about|ca\.?|circa|cirka|approx\.?|approximately|around|up\sto|at\sleast|etwa|ungefähr|bis\szu|mindestens"
    r"|environ|jusqu['’]à|au\smoins|minimum|min\.|max\.|fino\sa|almeno|hasta|unos|unas|al\smenos|até|cerca\sde"
    r"|ongeveer|tot|minstens|upp\still|minst|ungefär|op\stil|mindst|omkring|do|około|okolo)\s){0,2}"
    r"(?P<low>\d{1,3}|an?|one|eine?n?|une?|uno|una|een|ett?|en|uma?)(?:\s?(?:-|–|to|bis|à|a|o|of|tot|till|til|do|ou|oder|or|al)\s?(?P<high>\d{1,3}))?"
    r"\s?(?P<unit>[^\W\d_]{2,12})\b(?P<more>[^:!?]{0,40})",
    IGNORECASE,
)
_IN_A_STEP: Final = late_regex(r"(\d{1,3})(?:\s?[-–]\s?\d{1,3})?\s?([^\W\d_]{2,12})")
_MOST_BEHIND: Final = 6
# the sum of all that a page's recipe takes
_SUMS_UP: Final = late_regex(
    r"(?:total|gesamt|insgesamt|totaal|i alt|totalt|ready in|klar på|fertig in|temps total"
    r"|tempo total|tiempo total|celkem|łącznie|razem)"
)
_OPENED: Final = late_regex(
    r"\b(?:open\w*|geöffnet|öffnen|anbruch|ouvert\w*|ouverture|apert\w*|abiert\w*|abrir|geopend|öppn\w*|åbn\w*|åpn\w*"
    r"|abert\w*|otwar\w*|otevř\w*)\b",
    IGNORECASE,
)


@dataclass(frozen=True)
class Labelled:
    """A length of a day or more behind a label, whether it is of keeping, and of one opened."""

    said: str
    span: Span
    keeps: bool
    opened: bool


@lru_cache(maxsize=4096)
def labelled_span(text: str) -> Labelled | None:
    """Return the length of days or longer that a line gives behind a label; None for any other.

    >>> lines = "Shelf life: 6 months", "Ziehzeit: 4-6 Wochen", "Holdbarhed: ca. 3 måneder i køl"
    >>> [(one.keeps, str(one.span)) for one in map(labelled_span, lines) if one]
    [(True, '6 months'), (False, '4-6 weeks'), (True, '3 months')]
    >>> labelled_span("Cook time: 20 minutes"), labelled_span("Note: 3 weeks ago I made it again.")
    (None, None)
    """
    found = _LABELLED.fullmatch(text.strip()) if len(text) <= _LONGEST else None
    unit = _units().get(found["unit"].lower()) if found else None
    if found is None or unit is None or len(found["more"].split()) > _MOST_BEHIND:
        return None
    head = plain(found["head"])
    if head in words("tip_heads") or head in words("yield_made") or _SUMS_UP.match(head):
        return None
    low = int(found["low"]) if found["low"].isdigit() else 1  # "a year"
    span = Span(low, max(low, int(found["high"] or low)), unit)
    keeps = any(head == one or head.startswith(f"{one} ") for one in words("kept_labels"))
    return Labelled(text.strip(), span, keeps, bool(_OPENED.search(text)))


def take_behind_label(recipe: Recipe, text: str) -> bool:
    """Take the length or the season that a line gives behind a label; False where it gives none."""
    if labelled_span(text):
        recipe.notes.append(("Notes", [text.strip()]))
        return True
    return take_season(recipe, text)


def may_say_it_keeps(text: str) -> tuple[str, Span] | None:
    """Return the words that may say how long a thing keeps, in a sentence or behind a label."""
    labelled = labelled_span(text)
    behind = (labelled.said, labelled.span) if labelled and labelled.keeps else None
    return may_say_keeping(text) or behind


def waits_beside(recipe: Recipe) -> list[tuple[str, Span]]:
    """Return the waits that notes label and no step names, each with its line."""
    told = {
        (int(low), _units().get(unit.lower()))
        for _, step in recipe.steps
        for low, unit in _IN_A_STEP.findall(step)
    }
    rows = (row for _, notes in recipe.notes for row in notes)
    found = (one for one in map(labelled_span, rows) if one and not one.keeps and not one.opened)
    return [(one.said, one.span) for one in found if (one.span.low, one.span.unit) not in told]


@cache
def _units() -> dict[str, str]:
    """Return the book's own word for a length, by those of the languages papers come in."""
    of = {name: words(f"span_{name}s") for name in ("day", "week", "month", "year")}
    return {word: name for name, said in of.items() for word in said}
