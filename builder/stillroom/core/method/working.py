"""Whether a ferment makes alcohol: the safety box and a giving list ask the same, and get the same.

Yeast makes it, brought in or wild; a culture that lives on sweet tea or juice may make some, and
nobody can say how much. Leaves out what is poured in, and how strong it gets.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

Tags = frozenset[str]

# drinks that yeast makes, whoever brought it in
_WORKS_BY_NAME = clause_regex(
    r"\b(?:ciders?|perry|mead|melomel|metheglin|wines?|champagne|beers?|ales?|hooch|kvass|tepache"
    r"|pulque|chicha|toddy|sima|boza|fizz|ginger bug|root beer|lemonade|soda|pop)\b",
    re.IGNORECASE,
)
# of these a culture makes little alcohol, and now and then a good deal
_LIVING_DRINK = clause_regex(
    r"\b(?:kombucha|jun|kefir|tibicos?|scoby|lemonade|soda|pop|fizz)\b", re.IGNORECASE
)
_CULTURES: Final = frozenset({"kombucha", "jun", "kefir", "tibico", "tibicos", "scoby"})
_VINEGAR = clause_regex(r"\bvinegar\b", re.IGNORECASE)
_SWEET: Final = frozenset({"sugar", "honey", "syrup"})
_SALTED: Final = frozenset({"pulse", "cooked-pulse", "dairy"})


def works_by_itself(recipe: Recipe, tags: Tags) -> str:
    """Return the words of a ferment that wild yeasts work: no yeast is among what goes in.

    `tags` are those of all that goes in.
    """
    named = _named(recipe)
    if not recipe.kind.is_("living") or "yeast" in tags or _VINEGAR.search(named):
        return ""
    living = _LIVING_DRINK.search(named)
    cultured = "live-culture" in tags or (living and living[0].lower() in _CULTURES)
    if (found := _WORKS_BY_NAME.search(named)) and not (cultured and living):
        return found[0]
    sugared = tags & _SWEET and "water" in tags and not cultured and not _in_brine(tags)
    return "sugar and water, left to work" if sugared else ""


def may_make_alcohol(recipe: Recipe, tags: Tags) -> str:
    """Return the words of a living drink that may make some alcohol, "" where that is not so."""
    if not recipe.kind.is_("living") or "yeast" in tags or works_by_itself(recipe, tags):
        return ""
    if _VINEGAR.search(_named(recipe)):
        return ""
    if found := _LIVING_DRINK.search(_named(recipe)):
        return found[0]
    drink = tags & {"tea", "beverage", "water"} and tags & _SWEET and not _in_brine(tags)
    return "a living culture in something sweet" if drink and "live-culture" in tags else ""


def makes_alcohol(recipe: Recipe, tags: Tags) -> bool:
    """Whether yeast works in it, brought in or wild."""
    if not recipe.kind.is_("living"):
        return False
    return "yeast" in tags or bool(works_by_itself(recipe, tags))


def _in_brine(tags: Tags) -> bool:
    """Whether it is food to eat: turmeric in honey and water, without salt, is a drink."""
    return bool(tags & _SALTED) or {"low-acid-vegetable", "salt"} <= tags


def _named(recipe: Recipe) -> str:
    return f"{recipe.title} {recipe.kind.called}"
