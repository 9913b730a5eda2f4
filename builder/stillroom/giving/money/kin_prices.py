"""Of what has no price, what has one that may be taken for it: lemons, beside their juice.

Nothing is reckoned of it: how much juice a lemon gives nobody knows, so its price is asked for.
"""

from __future__ import annotations

from collections.abc import Iterable

from stillroom.core.larder.food_reading import read_food
from stillroom.core.words.plurals import singular
from stillroom.giving.model import Price


def prices_of_kin(unpriced: Iterable[str], prices: Iterable[Price]) -> tuple[tuple[str, str], ...]:
    """Return what has no price, each with the price on the list that is of something it is made of.

    >>> lemons = Price(item="lemons", packs=["4 for 1.20"])
    >>> prices_of_kin(["lemon juice", "salt"], [lemons])
    (('lemon juice', 'lemons'),)
    """
    known = [(price.item, words) for price in prices if (words := _words(price.item))]
    found = []
    for item in unpriced:
        of = _words(item)
        near = (name for name, words in known if words != of and _within(words, of))
        if of and (name := next(near, "")):
            found.append((item, name))
    return tuple(found)


def _words(item: str) -> tuple[str, ...]:
    """Return the words by which the larder knows a food, each as one of its kind."""
    food = read_food(item).food
    return tuple(map(singular, food.name.lower().split())) if food else ()


def _within(words: tuple[str, ...], of: tuple[str, ...]) -> bool:
    """Whether words stand side by side among others: "lemon" in "dried lemon peel"."""
    size = len(words)
    return any(of[at : at + size] == words for at in range(len(of) - size + 1))
