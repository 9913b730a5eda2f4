"""What was meant by words that nobody knows: the things named in them, or a slip of letters.

Only a question is made of it: nothing is avoided, and nothing given, by a word that is near.
"""

from __future__ import annotations

from difflib import SequenceMatcher
from functools import lru_cache

from stillroom.core.allergens.avoiding import (
    family_names,
    group_called,
    known_by_name,
    read_phrase,
)
from stillroom.core.allergens.laws import all_allergens
from stillroom.core.allergens.phrases import bare_forms, parts_said
from stillroom.core.larder.food_reading import Span, read_food
from stillroom.core.larder.nearest import nearest_foods
from stillroom.core.larder.shelves import common_larder
from stillroom.core.words.nearest import nearest
from stillroom.core.words.patterns import late_regex

_WORD = late_regex(r"[^\W_]+(?:-[^\W_]+)*")
_JOIN = frozenset({"and", "or", "nor", "no", "free", "und", "et", "y", "e", "en"})
_LONGEST = 3  # "evening primrose oil"
_MOST_PARTS = 12  # of one line; more are no slip of the pen
_A_WORD = 0.7  # so like is each word of a name of several to one of those written


def nearest_avoided(word: str) -> tuple[str, ...]:
    """Return what to avoid was meant, each by its own word; none where nothing is near.

    A diet is never taken for a nut: a food is offered only where hardly a letter differs.

    >>> nearest_avoided("glutten"), nearest_avoided("vegatarian"), nearest_avoided("carnivore")
    (('gluten',), ('vegetarian',), ())
    >>> nearest_avoided("no wine vinegar for her asthma"), nearest_avoided("no almons or hazlenuts")
    (('wine vinegar', 'asthma'), ('almond', 'hazelnut'))
    """
    if named := named_in(word):
        return named
    parts = [list(bare_forms(part))[-1:] for part in parts_said(word.lower())[:_MOST_PARTS]]
    near = [_slip(bare[0]) for bare in parts if bare]
    return tuple(dict.fromkeys(near)) if all(near) else tuple(filter(None, [_slip(word)]))


def named_in(phrase: str) -> tuple[str, ...]:
    """Return the families, allergens and foods named among other words, the longest names first.

    >>> named_in("latex-fruit: banana and chestnut")
    ('latex-fruit', 'banana', 'chestnut')
    """
    words, found, place = _WORD.findall(phrase.lower()), [], 0
    while place < len(words):
        for length in range(min(_LONGEST, len(words) - place), 0, -1):
            name = " ".join(words[place : place + length])
            if is_name(name):
                found.append(name)
                place += length
                break
        else:
            place += 1
    return tuple(dict.fromkeys(found))


def only_names(phrase: str) -> tuple[str, ...]:
    """Return the names in a phrase where it is nothing but two or more of them, else none.

    >>> only_names("a coeliac vegetarian"), only_names("nuts and zorple"), only_names("nuts")
    (('coeliac', 'vegetarian'), (), ())
    """
    for bare in bare_forms(phrase):
        names = named_in(bare)
        words = [word for word in _WORD.findall(bare) if word not in _JOIN]
        if len(names) > 1 and " ".join(names).replace("-", " ").split() == [
            part for word in words for part in word.split("-")
        ]:
            return names
    return ()


def is_name(name: str) -> bool:
    """Whether it is the name of a family, an allergen or a food."""
    return bool(known_by_name(name)) or _is_food(name)


def _is_food(name: str) -> bool:
    """Whether it is the name of a food, and not a phrase of which a food could be read."""
    if len(name) < 4:
        return False
    read = read_food(name)
    food = read.food
    if food is None or read.leftover or len(read.foods) > 1:
        return False
    # a name in another language stands in no staple: it is one where it is read as a food wholly;
    # "oils" among other words are not all there are
    whole = read.spans == (Span(0, len(name), "food"),) and not group_called(food, name)
    return whole or all(word in " ".join((food.name, *food.also)) for word in name.split())


@lru_cache(maxsize=1024)
def _slip(word: str) -> str:
    """Return the word that this is a slip of, "" for none."""
    plain = word.strip().lower()
    said = [one.say.lower() for one in all_allergens().values()]
    names = [*family_names(), *said]
    same = [name for name in names if name[:1] == plain[:1]]  # a slip is seldom in the first letter
    found = nearest(plain, same, 0.82) or nearest(plain, names, 0.82)
    if found is None or read_phrase(found) is None or not _each_word_is_near(found, plain):
        foods = nearest_foods(plain, common_larder())
        found = next((name for name in foods if nearest(plain, [name], 0.85)), None)
    return found or ""


def _each_word_is_near(found: str, plain: str) -> bool:
    """Whether no word of it is another one: "DAO deficiency" is no "G6PD deficiency"."""
    written = plain.split()
    return all(
        any(SequenceMatcher(None, one, other).ratio() >= _A_WORD for other in written)
        for one in found.split()
    )
