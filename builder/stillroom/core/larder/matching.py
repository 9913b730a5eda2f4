"""Which name stands in a run of words, with every other word harmless beside it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from stillroom.core.larder.harmless import harmless_run, is_all_harmless
from stillroom.core.larder.phrases import Words, forms, phrase_words
from stillroom.core.larder.shelves import Larder, is_hand_made
from stillroom.core.larder.staple import Staple

LONGEST_NAME = 9
# beside other words a colour is one: "white cardamom pods" hold no white of egg
COLOURS = frozenset({"white", "green"})
# tried in turn where the name with the first word is not known
_SAID_OTHERWISE = (
    ("peppers", "pepper"),
    ("canned", "tinned"),
    ("jarred", "tinned"),
    ("chile", "chilli"),
    ("chili", "chilli"),
    ("yoghurt", "yogurt"),
    ("flavored", "flavoured"),
    ("colored", "coloured"),
    ("flavor", "flavour"),
    ("coloring", "colouring"),
    ("dry", "dried"),
)


@dataclass(frozen=True)
class Match:
    """A food and the place of its name, or no food and the words left over at the best try."""

    food: Staple | None
    start: int = 0
    end: int = 0
    leftover: tuple[str, ...] = ()


_MOST_WORDS: Final = 200
"""Words of which a phrase of a food never has so many: nothing is weighed out of such prose."""


def match_name(words: Words, larder: Larder) -> Match:
    """Return the longest name beside which all else is harmless; of equals the last.

    A hand-made staple goes before a longer name of the same food: it has figures, and "toasted
    hazelnut" of the tables has none.
    """
    plain = forms(words)
    if len(plain) > _MOST_WORDS:
        return Match(None, leftover=plain)
    best: tuple[str, ...] | None = None
    found: Match | None = None
    for start, end, food in _names_in(plain, larder):
        left = (*harmless_run(plain[:start], food, False), *harmless_run(plain[end:], food, True))
        if not left:
            if found is None:
                found = Match(food, start, end)
            elif is_hand_made(food) and _alike(food, found.food):
                return Match(food, start, end)
            if found.food and is_hand_made(found.food):
                return found
        elif best is None or len(left) < len(best):
            best = left
    return found or _past_one_within(words, larder) or Match(None, leftover=best or ())


def _past_one_within(words: Words, larder: Larder) -> Match | None:
    """Read a name with one word within that changes none: "dried organic elderberries"."""
    for place in range(1, len(words) - 1):
        if words[place].form in phrase_words("within"):
            without = (*words[:place], *words[place + 1 :])
            food = _named(forms(without), larder)
            if food is not None:
                return Match(food, 0, len(words))
    return None


def _alike(food: Staple, other: Staple | None) -> bool:
    """Whether two foods do not differ in what a careful giver must know."""
    return other is not None and (
        set(food.allergens) == set(other.allergens)
        and set(other.may_contain) <= set(food.may_contain)
        and set(food.animal) == set(other.animal)
        and food.acidity == other.acidity
    )


FREE_OF = frozenset({("free",), ("frei",), ("freie",), ("freier",), ("freies",), ("less",)})
IN_PLACE_OF = frozenset({("substitute",), ("replacement",), ("alternative",), ("replacer",)})


@lru_cache(maxsize=4096)  # a phrase that is not known as a whole is asked again for what it holds
def _names_in(plain: tuple[str, ...], larder: Larder) -> tuple[tuple[int, int, Staple], ...]:
    """Return every name among the words, the longest first, then the last."""
    found = []
    for size in range(min(len(plain), LONGEST_NAME), 0, -1):
        for start in range(len(plain) - size, -1, -1):
            food = _named(plain[start : start + size], larder)
            if food:
                found.append((start, start + size, food))
    return tuple(found)


def _named(words: tuple[str, ...], larder: Larder) -> Staple | None:
    """Look a name up as it is, then with two of its words run into one ("bean sprout")."""
    food = larder.named(" ".join(words))
    if food or len(words) < 2:
        return food
    for word, other in _SAID_OTHERWISE:
        if word in words:
            found = _named(tuple(other if one == word else one for one in words), larder)
            if found or word == "peppers":
                return found
    for place in range(len(words) - 1):
        joined = (*words[:place], words[place] + words[place + 1], *words[place + 2 :])
        food = larder.named(" ".join(joined))
        if food:
            return food
    return None


def hint(words: Words, larder: Larder) -> tuple[tuple[Staple, ...], tuple[Staple, ...]]:
    """Return the foods named in an unknown phrase: those it surely holds, and the doubtful.

    The last name, when nothing but harmless words follow it, is what the phrase says it is a sort
    of: "shea butter" may be no butter. The names before it are what is in it.
    """
    plain = forms(words)
    taken: set[int] = set()
    held: list[Staple] = []
    doubted: list[Staple] = []
    for start, end, food in _names_in(plain, larder):
        place = set(range(start, end))
        if taken & place or " ".join(plain[start:end]) in COLOURS:
            continue
        taken |= place
        behind = plain[end : end + 2]
        if behind[:1] in FREE_OF and behind[1:] != ("range",):
            continue  # "milk-free chocolate" holds none
        if behind[:1] in IN_PLACE_OF:
            doubted.append(food)
            continue
        last = is_all_harmless(plain[end:], food, True)
        (doubted if last else held).append(food)
    return tuple(dict.fromkeys(held)), tuple(dict.fromkeys(doubted))
