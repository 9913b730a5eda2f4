"""Whether everything that a sentence names is left out by what was read of it: no need is lost.

However a sentence was read, each family, allergen and food named in it has to be part of what is
left out, or of what was said to be allowed, or of where a thing hides ("sulphites in wine").
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.avoiding import is_part_of, is_why, known_by_name, read_phrase
from stillroom.core.allergens.near import is_name
from stillroom.core.allergens.plainly import is_ordinary, words_of
from stillroom.core.words.patterns import late_regex

_LONGEST = 6  # words of a name
# where a thing hides, whom it is for, since when: what is named right behind tells only that
_TELLS_WHERE = frozenset(
    {"in", "for", "after", "since", "as", "until", "till", "during", "of", "like", "by", "than"}
    | {"because", "to", "from", "on", "bei", "für", "wegen", "dans", "pour", "en", "por", "per"}
)
_BESIDE = frozenset(
    {"a", "an", "the", "his", "her", "their", "my", "our", "its", "some", "any", "most", "many"}
    | {"certain", "all", "every", "of", "cheap", "hidden", "even", "bought", "cooked", "made"}
)
_FRENCH = late_regex(
    r"\b(?:mange|boit|supporte|pas|sans|du|des|aux|une?|allergique|végét\w+)\b", re.I
)
# of a drink; "drop" by itself is liquorice to a Dutchman
# "doesn't drink milk", "don't eat or drink dairy": what is drunk is named behind it
_DRINKS = frozenset({"drink", "drinks", "drinking"})
_A_DROP = late_regex(r"\b(?:a|one|single|another|odd) drop\b", re.IGNORECASE)
_LISTED = late_regex(r"\b(?:or|nor|and)\b", re.IGNORECASE)
_PARTS = late_regex(r"[,;:.()\[\]&+/]|\s[-–—]\s")


def also_named(text: str, found: Avoided) -> tuple[Avoided, ...]:
    """Return what a text names beside all that was read of it.

    >>> nuts = read_phrase("nuts")
    >>> [one.meant for one in also_named("nuts for Ann and milk for Bob", nuts)]
    ['milk']
    >>> also_named("nuts in chocolate, hazelnuts as well", nuts)
    ()
    """
    allowed = " ".join(_allowed_of(found)).lower().replace("’", "'")
    more: list[Avoided] = []
    for name in _names_in(text):
        other = read_phrase(name)
        if other is None or other.ask or name in allowed or _covers(found, other, name):
            continue
        more.append(other)
    return tuple(dict.fromkeys(more))


def _names_in(text: str) -> Iterator[str]:
    """Yield the longest names of each part of a text, but where a thing hides."""
    french = bool(_FRENCH.search(text))
    parted = "," in text or ";" in text
    for part in _PARTS.split(_A_DROP.sub(" ", text)):
        listed = not parted and bool(_LISTED.search(part))
        words, place, hidden = words_of(part), 0, False
        if french:  # "mais" is no maize there
            words = ["but" if word == "mais" else word for word in words]
        while place < len(words):
            name = _name_at(words, place)
            if name in _DRINKS and _names_what(words, place + 1):
                name = ""
            if name and not hidden:
                yield name
                if listed and is_two_things(name):
                    yield from name.split()
            if words[place] in _TELLS_WHERE:
                hidden = place > 0
            elif words[place] not in _BESIDE:
                hidden = False
            place += len(name.split()) if name else 1


def _names_what(words: list[str], place: int) -> bool:
    while place < len(words) and words[place] in _BESIDE:
        place += 1
    return place < len(words) and bool(_name_at(words, place))


def _name_at(words: list[str], place: int) -> str:
    for length in range(min(_LONGEST, len(words) - place), 0, -1):
        part = words[place : place + length]
        if length > 1 and known_by_name(" ".join(part)):
            return " ".join(part)
        if is_ordinary(part[0]) or is_ordinary(part[-1]):
            continue
        name = " ".join(part)
        if not is_why(name) and is_name(name):
            return name
    return ""


def is_two_things(name: str) -> bool:
    """Whether a name may as well be two: of "no mint chocolate or tomato" nobody knows it.

    >>> is_two_things("mint chocolate"), is_two_things("peanut butter"), is_two_things("raw egg")
    (True, False, False)
    """
    each = [known_by_name(word) for word in name.split()]
    if len(each) != 2 or None in each:
        return False
    return all(one is not None and one.said_in(name) == "contains" for one in each)


def _covers(found: Avoided, other: Avoided, name: str) -> bool:
    """Whether what was read leaves out what is named as well."""
    if any(_covers(one, other, name) for one in found.of):
        return True
    if other.of:
        return all(_covers(found, one, one.meant) for one in other.of)
    if is_part_of(other, found) or found.said_in(name) == "contains":
        return True
    return bool(other.foods) and all(found.held_by(food) != "free" for food in other.foods)


def _allowed_of(found: Avoided) -> Iterator[str]:
    yield from found.allowed
    for one in found.of:
        yield from _allowed_of(one)
