"""When a paper says that the thing is in season: "Season: September", "Saison: Juni bis August".

Months are the recipe's own fact; "late summer" names none and stays a note. Leaves out sentences.
"""

from __future__ import annotations

from functools import cache
from typing import Final

from babel.dates import get_month_names

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, words
from stillroom.bringing.known_work import TONGUES
from stillroom.core.words.day_words import MONTH_NAMES, months_through
from stillroom.core.words.patterns import late_regex

_LONGEST: Final = 80
_MOST_WORDS: Final = 6
_LABELLED: Final = late_regex(r"(?P<head>[^\W\d][^:]{2,24}?)\s?:\s{0,3}(?P<said>[^\W\d].*)")
_WORD: Final = late_regex(r"[^\W\d_]+|[-–—,;/&+]")


def take_season(recipe: Recipe, text: str) -> bool:
    """Take the season that a line says; False where it says none.

    >>> recipe = Recipe()
    >>> take_season(recipe, "Saison: September bis November"), recipe.season
    (True, 'September, October, November')
    >>> take_season(recipe, "Season: late summer"), recipe.notes
    (True, [('Notes', ['Season: late summer'])])
    >>> take_season(recipe, "Seasoning: salt"), take_season(recipe, "Season with salt.")
    (False, False)
    """
    found = _LABELLED.fullmatch(text.strip()) if len(text) <= _LONGEST else None
    few = found is not None and len(found["said"].split()) <= _MOST_WORDS
    if found is None or not few or plain(found["head"]) not in words("season_labels"):
        return False
    months = _months(found["said"])
    if not months or recipe.season:
        recipe.notes.append(("Notes", [text.strip()]))
        return True
    recipe.season = ", ".join(MONTH_NAMES[month - 1] for month in months)
    what = f'"{text.strip()}" is taken for when its main produce is to be had.'
    recipe.doubt("season", what, 'If it is when it is eaten, take out "season".')
    return True


def _months(said: str) -> list[int]:
    """Return the months of a line that names nothing else; [] for any other."""
    found: list[int] = []
    through = False
    for word in _WORD.findall(said.lower().rstrip(" .")):
        if month := month_names().get(word):
            found += months_through(found[-1], month)[1:] if through and found else [month]
            through = False
        elif word in words("through") and found:
            through = True
        elif word not in words("beside"):
            return []
    return [] if through else list(dict.fromkeys(found))


@cache
def month_names() -> dict[str, int]:
    """Return the months by their names, whole and shortened, in the languages papers come in."""
    found: dict[str, int] = {}
    for tongue in TONGUES:
        for width in ("wide", "abbreviated"):
            for context in ("format", "stand-alone"):
                for month, name in get_month_names(width, context, tongue).items():
                    found.setdefault(name.lower().strip(" ."), month)
    return found
