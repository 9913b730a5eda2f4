"""Whether a note names a food of its own: "flour, flaked almonds to decorate" holds both.

One bare word behind a name turns it round ("butter, almond"); a plural, or what it is for, makes
two foods of them. Leaves out what a note makes of the food before it: notes.py.
"""

from __future__ import annotations

from collections.abc import Sequence

from stillroom.core.larder.matching import COLOURS, hint, match_name
from stillroom.core.larder.phrases import Words, forms, phrase_words
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import NOT_ANIMAL, Staple

_BEFORE_WHAT_FOR = ("ends", "tails", "purposes", "what_for")


def own_words(note: Words) -> Words:
    """Return what stands in a note before what it is for; none of it where it denies something.

    >>> from stillroom.core.larder.phrases import cut_phrase
    >>> forms(own_words(cut_phrase("ei om te bestrijken").head))
    ('ei',)
    """
    said = set(forms(note))
    if note[-1].form == "free" or said & (phrase_words("denials") | phrase_words("not_of_it")):
        return ()
    if note[0].form in phrase_words("prose"):
        return ()
    cuts = frozenset[str]().union(*(phrase_words(name) for name in _BEFORE_WHAT_FOR))
    start = 1 if note[0].form in phrase_words("joins") else 0
    end = next((at for at in range(start, len(note)) if note[at].form in cuts), len(note))
    return note[start:end]


def named_apart(
    head: Words, note: Words, food: Staple, made: Staple | None, larder: Larder
) -> bool:
    """Whether a note that would make `made` of a food names another beside it.

    It does where the food's own allergen would be gone, and where the words are no bare singular;
    only English catalogues turn a name round at the cost of an allergen: "milk, oat".
    """
    own = own_words(note)
    named = match_name(own, larder).food if made and own else None
    if made is None or named is None or _names_none(own):
        return False
    lost = not set(food.allergens) <= set(made.allergens)
    if not lost and not named.allergens:
        return False
    if own != note or _is_plural(own):
        return True
    turned = larder.named(" ".join(forms((*own, *head)))) == made
    holds_it = set(named.allergens) <= set(made.allergens)  # "butter, cream" is no buttercream
    one_word = len(own) == 1 and larder.language[:2] == "en"
    one_word = one_word and own[0].form not in phrase_words("never_turn")
    return lost and not (turned and holds_it and one_word)


def turned_round(
    head: Words, own: Words, food: Staple, made: Staple | None, larder: Larder
) -> bool:
    """Whether a note only turns a name round: "apples, crab" hold no crab, "yeast, wine" no wine.

    What it makes is a sort of the same food, and its words are bare.
    """
    if made is None or _is_plural(own) or not made.tags & food.tags:
        return False
    turned = match_name((*own, *head), larder)
    return turned.food == made and turned.start == 0


def _names_none(words: Words) -> bool:
    """Whether words only sound like a food: "chocolate, white", "seeds, toast until brown"."""
    return set(forms(words)) <= COLOURS | phrase_words("no_food_alone")


def _is_plural(words: Words) -> bool:
    """Whether the last word was written longer than its normal form: "almonds"."""
    return words[-1].end - words[-1].start > len(words[-1].form)


def brings_more(words: Words, beside: Sequence[Staple], larder: Larder) -> bool:
    """Whether words name a food with an allergen, alcohol or an animal that none beside has."""
    if not words or _names_none(words):
        return False
    named = match_name(words, larder).food
    foods = (named,) if named else tuple(food for one in hint(words, larder) for food in one)
    held = {name for food in beside for name in (*avoided_in(food), *food.may_contain)}
    # French "le jus" is no gravy, and "meat only" is that of the coconut or the crab
    parts = phrase_words("turns_elsewhere") | phrase_words("parts_of_any")
    return any(not avoided_in(food) <= held for food in foods if food.name not in parts)


def avoided_in(food: Staple) -> set[str]:
    """Return what somebody may not have of a food: its allergens, its alcohol, its animals."""
    alcohol = {"alcohol"} & food.tags
    return {*food.allergens, *alcohol, *(set(food.animal) - NOT_ANIMAL)}
