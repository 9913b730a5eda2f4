"""What a food was soaked, fried or rolled in: "sultanas, soaked overnight in Marsala" hold wine.

A place ("in a warm room") and water name no food. Leaves out what a note makes of the food itself:
notes.py.
"""

from __future__ import annotations

from stillroom.core.larder.matching import match_name
from stillroom.core.larder.phrases import Words, forms, phrase_words
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple

_LONGEST = 4
"""Words that the name of what it is done with may have."""


def done_with(head: Words, note: Words, food: Staple | None, larder: Larder) -> tuple[Words, ...]:
    """Return the names of foods that a note says the food before it was put in or done with.

    >>> from stillroom.core.larder.phrases import cut_phrase
    >>> from stillroom.core.larder.shelves import common_larder
    >>> phrase = cut_phrase("sultanas, soaked overnight in Marsala and lemon juice")
    >>> found = done_with(phrase.head, phrase.notes[0], None, common_larder())
    >>> [" ".join(forms(words)) for words in found]
    ['marsala', 'lemon juice']
    """
    said = forms(note)
    if not phrase_words("done_with").intersection(said) and said[0] not in phrase_words("put_in"):
        return ()
    if said[0] in phrase_words("put_in") and match_name((*head, *note), larder).food:
        return ()  # "tuna, in oil" is a food by itself
    found: list[Words] = []
    for place, form in enumerate(said):
        if form in phrase_words("put_in"):
            found += foods_behind(note[place + 1 :], food, larder)
    return tuple(found)


def foods_behind(words: Words, food: Staple | None, larder: Larder) -> list[Words]:
    """Return the food that words begin with, and those joined to it; past "a little hot".

    Each once, none that is `food` itself or water.
    """
    found: list[Words] = []
    while words:
        while words and words[0].form in phrase_words("before_it"):
            words = words[1:]
        name = _name_before(words, larder)
        if not name and not found and len(words) > 1:  # "in good brandy", "in dark rum"
            words = words[1:]
            name = _name_before(words, larder)
        if not name:
            return found
        named = match_name(name, larder).food
        if named is not None and named != food and "water" not in named.tags:
            found.append(name)
        words = words[len(name) :]
        if not words or words[0].form not in phrase_words("joins"):
            return found
        words = words[1:]
    return found


def _name_before(words: Words, larder: Larder) -> Words:
    for size in range(min(_LONGEST, len(words)), 0, -1):
        named = match_name(words[:size], larder).food
        if named is not None and "craft" not in named.tags:
            return words[:size]
    return ()
