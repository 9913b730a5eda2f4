"""Answers for a first giving list that say several things at once: what is liked, what costs what.

Each is one line, its parts with semicolons between. Raises Unreadable with what to write instead.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from stillroom.core.amounts.packs import parse_pack
from stillroom.core.amounts.units import System
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.as_written import several
from stillroom.giving.names import plain_name, recipes_liked

_LIKES = 'Write "Nan: quince chutney, chocolate; The Rowans: mead", or leave it empty.'
_PRICES = 'Write "granulated sugar: 1 kg for 1.15; brandy: 700 ml for 16.50", or leave it empty.'


def _parts(text: str) -> list[str]:
    return [part.strip() for part in text.split(";") if part.strip()] if several(text) else []


def read_likes(
    text: str, names: Sequence[str], recipes: Mapping[str, Recipe]
) -> dict[str, tuple[str, ...]]:
    """Return what each likes best: a recipe by its file's name, or a food that one of them holds.

    Where only one is given something, they need not be named.
    """
    found: dict[str, tuple[str, ...]] = {}
    for part in _parts(text):
        who, colon, what = part.rpartition(":")
        if not colon and len(names) > 1:
            raise Unreadable(f"{say_written(part)} does not say who likes it.", _LIKES)
        name = _name(who.strip(), names) if colon else names[0]
        found[name] = (*found.get(name, ()), *(_liked(one, recipes) for one in several(what)))
    return found


def _name(who: str, names: Sequence[str]) -> str:
    plain = {plain_name(name): name for name in names}
    if plain_name(who) in plain:
        return plain[plain_name(who)]
    near = nearest(who, names, 0.75)
    mend = f'Did you mean "{near}"?' if near else _LIKES
    raise Unreadable(f"{say_written(who)} is not among them.", mend)


def _liked(word: str, recipes: Mapping[str, Recipe]) -> str:
    slugs = recipes_liked(word, recipes)
    if not slugs:
        mend = did_you_mean(word, [one.title for one in recipes.values()]) or _LIKES
        raise Unreadable(
            f"Nothing that you make is known to be or to hold {say_written(word)}.", mend
        )
    own = [slug for slug in slugs if plain_name(word) in (slug, plain_name(recipes[slug].title))]
    return own[0] if own else word


def read_prices(
    text: str, currency: str, language: str, system: System = "metric"
) -> tuple[tuple[str, str], ...]:
    """Return what things cost as it is said: each thing, and its pack with its price.

    >>> read_prices("sugar: 1 kg for 1.15; brandy: 700 ml for 16.50", "GBP", "en_GB")
    (('sugar', '1 kg for 1.15'), ('brandy', '700 ml for 16.50'))
    """
    found = []
    for part in _parts(text):
        item, colon, pack = part.partition(":")
        if not colon or not item.strip():
            raise Unreadable(f"{say_written(part)} is not a thing with its price.", _PRICES)
        parse_pack(pack.strip(), currency, system, language)
        found.append((item.strip(), pack.strip()))
    return tuple(found)
