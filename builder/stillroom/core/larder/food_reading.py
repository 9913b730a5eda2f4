"""What food a phrase means: by the whole of it, or not at all.

A food is known only when every word is used up: by its name, or by words that harmless.yml declares
to leave it the same food. "White chocolate" is no chocolate with a word before it. What stands in
brackets or behind a comma is read for what makes it another food ("milk, skimmed"). Of foods joined
by "or", "and" or a stroke every one counts, and the first is reckoned with.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from typing import Final

from stillroom.core.larder.allergen_words import told_beside
from stillroom.core.larder.food_read import FoodReading as FoodReading
from stillroom.core.larder.food_read import Span as Span
from stillroom.core.larder.harmless import all_harmless, says_how_alone
from stillroom.core.larder.lists import (
    after_the_same,
    as_one_list,
    as_sorts,
    is_a_colour,
    named_twice,
    named_with_its_number,
    shared_words,
    split_plurals,
    that_name_foods,
    with_other_colours,
    with_shared,
)
from stillroom.core.larder.made_from import made_from, source_in
from stillroom.core.larder.matching import Match, hint, match_name
from stillroom.core.larder.notes import joins_more, read_note
from stillroom.core.larder.phrases import (
    Phrase,
    Words,
    cut_phrase,
    forms,
    is_choice,
    phrase_words,
    split_joined,
    split_of,
    split_tail,
    with_own_joints,
)
from stillroom.core.larder.shelves import Larder, common_larder, is_hand_made
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.tinned import tinned_by
from stillroom.core.larder.unknown_in_lists import unknown_in_list

_OF_MANY_SORTS = frozenset({"dairy", "nut", "flour", "seed", "alcohol"})
# of these another sort may hold nothing of the allergen: "milk of choice" may be of oats
_OF_PLANTS_TOO = frozenset({"dairy", "flour"})


_MOST_WORDS: Final = 40  # beyond it a phrase without a comma is prose: only names are sought


@lru_cache(maxsize=16384)
def read_food(text: str, larder: Larder | None = None) -> FoodReading:
    """Read the food that a phrase names.

    >>> read_food("unwaxed Seville oranges, thinly peeled").food.name
    'seville orange'
    >>> read_food("cashew butter biscuits").known
    False
    >>> [food.name for food in read_food("butter or margarine").foods]
    ['butter', 'margarine']
    """
    shelf = larder or common_larder()
    phrase = cut_phrase(text)
    if not phrase.head:
        return FoodReading(text, leftover=(text,) if text else (), larder=shelf)
    phrase = as_one_list(with_own_joints(phrase, shelf.language[:2]), shelf)
    phrase = as_sorts(phrase, shelf)
    head, notes, reading = _read_first(phrase.head, phrase.notes, shelf)
    if numbered := named_with_its_number(text, shelf):
        reading = replace(reading, food=numbered, foods=(numbered,), hinted=(), leftover=())
    reading = replace(reading, text=text, larder=shelf)
    bare, listed = reading.food, False
    for note in notes:
        more = match_name(note, shelf).food if listed and reading.known else None
        if more:  # "pecans (or walnuts, coconut)": each may be meant
            reading = replace(reading, foods=(*reading.foods, more))
            continue
        listed = joins_more(note)
        changed = reading.food if reading.food != bare else None
        reading = _with_note(reading, head, note, shelf)
        if changed and changed not in reading.foods and reading.food:
            # "oil (almond, coconut …)": the second does not take the first away
            reading = replace(reading, foods=(*reading.foods, changed))
    if listed_unknown := unknown_in_list(Phrase(head, notes), reading.named, shelf):
        named = dict.fromkeys((*reading.named, *listed_unknown.beside))
        left = tuple(dict.fromkeys((*reading.leftover, *listed_unknown.words)))
        reading = replace(
            reading, food=None, foods=(), hinted=tuple(named), doubted=(), leftover=left
        )
    told = told_beside(text, notes, reading.named, reading.known, shelf)
    if told and reading.known:  # "flour, hasselnødder"
        left = tuple(form for note in notes for form in forms(note))
        reading = replace(reading, food=None, foods=(), hinted=reading.foods, leftover=left)
    return replace(reading, hinted=(*reading.hinted, *told)) if told else reading


def _read_first(
    head: Words, notes: tuple[Words, ...], larder: Larder
) -> tuple[Words, tuple[Words, ...], FoodReading]:
    """Read the head; what stands before commas may only describe it: "large, ripe figs"."""
    reading = _read_head(head, larder)
    longer = head
    for place, note in enumerate(notes):
        plain = forms(longer)
        if reading.food is not None or not (all_harmless(plain) or says_how_alone(plain)):
            break
        longer = (*longer, *note)
        found = _read_head(longer, larder)
        if found.food is not None:
            return longer, notes[place + 1 :], found
    return head, notes, reading


def _read_head(words: Words, larder: Larder) -> FoodReading:
    """Read a phrase without commas: whole, then cut by its tail, its joints, its "of"."""
    whole = match_name(words, larder)
    if whole.food:
        return _found(whole, words)
    if len(words) > _MOST_WORDS or says_how_alone(forms(words)):  # "bone-in" is no bone
        return _not_found(words, larder)
    before, tail = split_tail(words)
    if tail and tail[0].form == "from" and before[-1].form in phrase_words("turns"):
        before, tail = words, ()
    if tail and len(before) > 1 and before[-1].form in phrase_words("made_so"):
        before = before[:-1]  # "flour made from almonds"
    if tail:
        return _with_tail(_read_head(before, larder), before, tail, larder)
    pieces = split_joined(words)
    if len(pieces) > 1:
        return _read_parts_joined(pieces, larder) or _read_joined(pieces, words, larder)
    twice = named_twice(words, larder)
    if twice:
        return _found(twice, words)
    return _read_of(words, larder) or _not_found(words, larder)


def _found(match: Match, words: Words) -> FoodReading:
    assert match.food is not None
    spans = [
        Span(word.start, word.end, "food" if match.start <= place < match.end else "harmless")
        for place, word in enumerate(words)
    ]
    return FoodReading("", match.food, (match.food,), spans=tuple(spans))


def _not_found(words: Words, larder: Larder) -> FoodReading:
    hinted, doubted = hint(words, larder)
    left = match_name(words, larder).leftover or forms(words)
    over = frozenset(left)
    spans = tuple(
        Span(word.start, word.end, "left over" if word.form in over else "food") for word in words
    )
    return FoodReading("", hinted=hinted, doubted=doubted, leftover=left, spans=spans)


def _with_tail(reading: FoodReading, head: Words, tail: Words, larder: Larder) -> FoodReading:
    """Count what stands "in" or "with" it when it is another food; the rest is prose.

    "Milk of your choice" may be of almonds: of what differs so in its allergens nothing is known.
    """
    if is_choice(tail) and any(food.tags & _OF_MANY_SORTS for food in reading.foods):
        left = (*reading.leftover, " ".join(forms(tail)))
        sure = tuple(food for food in reading.foods if not food.tags & _OF_PLANTS_TOO)
        perhaps = tuple(food for food in reading.foods if food.tags & _OF_PLANTS_TOO)
        return replace(reading, food=None, foods=(), hinted=sure, doubted=perhaps, leftover=left)
    tin = tinned_by(reading.food, tail, larder) if reading.food else None
    if tin:
        return replace(reading, food=tin, foods=(tin, *reading.foods[1:]))
    source = source_in(tail)
    made, brought = made_from(head, source, reading.named, larder) if source else (None, ())
    if made:
        return replace(reading, food=made, foods=(made,), hinted=(), doubted=(), leftover=())
    if brought:
        left = (*reading.leftover, " ".join(forms(tail)))
        hinted = tuple(dict.fromkeys((*reading.named, *brought)))
        return replace(reading, food=None, foods=(), hinted=hinted, doubted=(), leftover=left)
    if tail[0].form not in phrase_words("tails") or tail[0].form == "without":
        return reading
    hinted, doubted = hint(tail[1:], larder)
    foods = tuple(food for food in (*hinted, *doubted) if "water" not in food.tags)
    own = {food.name for food in reading.foods}
    others = tuple(food for food in foods if food.name not in own)
    if not others and not phrase_words("changes") & set(forms(tail)):
        return reading
    return replace(
        reading,
        food=None,
        hinted=tuple(dict.fromkeys((*reading.foods, *reading.hinted, *others))),
        foods=(),
        leftover=(*reading.leftover, " ".join(forms(tail))),
    )


def _read_parts_joined(pieces: list[Words], larder: Larder) -> FoodReading | None:
    """Read "lime zest and juice": parts of the one food that the first piece names."""
    turns = phrase_words("turns")
    first = pieces[0]
    if len(first) < 2 or not all(set(forms(piece)) <= turns for piece in (first[-1:], *pieces[1:])):
        return None
    known = [match_name((*first[:-1], *piece), larder) for piece in (first[-1:], *pieces[1:])]
    foods = tuple(dict.fromkeys(match.food for match in known if match.food))
    if not foods or not all(match.food for match in known):
        return None
    words = tuple(word for piece in pieces for word in piece)
    return replace(_found(known[0], words), foods=foods)


def _read_joined(pieces: list[Words], words: Words, larder: Larder) -> FoodReading:
    """Read foods joined in one phrase; "almond or cashew butter" shares its last word.

    "cake or plain flour" is no cake; but "milk or dark chocolate" may be milk, and both count.
    """
    pieces = with_other_colours(split_plurals(that_name_foods(pieces, larder), larder), larder)
    readings = [
        _sharing(_read_head(piece, larder), pieces[place:], larder)
        for place, piece in enumerate(pieces)
    ]
    either = any(word.form in phrase_words("either") for word in words)
    readings = [
        _said_of_all(reading, readings[0], (pieces[0], piece), either, larder)
        for piece, reading in zip(pieces, readings, strict=True)
    ]
    first = next((one.food for one in readings if one.food), None)
    whole = _read_of(words, larder)
    if whole and not all(one.known for one in readings):
        return whole
    return FoodReading(
        "",
        food=first,
        foods=tuple(dict.fromkeys(food for one in readings for food in one.foods)),
        hinted=tuple(dict.fromkeys(food for one in readings for food in one.hinted)),
        doubted=tuple(dict.fromkeys(food for one in readings for food in one.doubted)),
        leftover=tuple(word for one in readings for word in one.leftover),
        spans=tuple(dict.fromkeys(span for one in readings for span in one.spans)),
    )


def _said_of_all(
    reading: FoodReading,
    first: FoodReading,
    pieces: tuple[Words, Words],
    either: bool,
    larder: Larder,
) -> FoodReading:
    """Read a later food of a list by what stands before the first: "dried cranberries or cherries".

    Where it may be meant and names no known food, it is not known: the fresh one is only doubted.
    """
    food = reading.food
    if reading is first or first.food is None:
        return reading
    if food is None:
        match = after_the_same(*pieces, larder)
        return _found(match, pieces[1]) if match else reading
    found = with_shared(*pieces, (first.food, food), either, larder)
    if found is None:
        left = forms(shared_words(pieces[0]))
        return replace(reading, food=None, foods=(), doubted=reading.foods, leftover=left)
    if food in found:
        return replace(reading, foods=tuple(dict.fromkeys((*reading.foods, *found))))
    return replace(reading, food=found[0], foods=found)


def _sharing(reading: FoodReading, pieces: list[Words], larder: Larder) -> FoodReading:
    """Read the first piece with the last words of a later one, as joined foods share them.

    The most words that name a food count: "fresh or dried bay laurel leaf" holds no laurel leaf.
    """
    piece, alone = pieces[0], reading.food
    if is_a_colour(piece):  # "white or cider vinegar" holds no white of egg
        alone, reading = None, _not_found(piece, larder)
    for shared in pieces[1:]:
        if alone and piece[-1].form in forms(shared):
            continue  # "canned tomatoes or tomato purée" shares nothing
        for size in range(len(shared) - 1, 0, -1):
            longer = match_name((*piece, *shared[-size:]), larder)
            if longer.food is None:
                made = shared[-1].form in phrase_words("made_of")
                if size > 1 and not made and larder.named(" ".join(forms(shared[-size:]))):
                    break  # fewer words would cut a name in two
                continue
            made_of_it = shared[-1].form in phrase_words("made_of")
            if shared[-1].form in phrase_words("named_for"):
                return _found(longer, (*piece, *shared[-size:]))
            if alone and _may_be_meant(alone) and not (made_of_it and _is_no_drink_or_fat(alone)):
                return replace(reading, foods=tuple(dict.fromkeys((*reading.foods, longer.food))))
            return _found(longer, (*piece, *shared[-size:]))
    return reading


def _may_be_meant(food: Staple) -> bool:
    return is_hand_made(food) and "craft" not in food.tags


def _is_no_drink_or_fat(food: Staple) -> bool:
    """Whether "lemon or lime juice" cannot mean it by itself, as "rum or vanilla extract" may."""
    return not food.tags & {"alcohol", "dairy", "butter", "fat", "oil", "honey", "syrup"}


def _read_of(words: Words, larder: Larder) -> FoodReading | None:
    """Read "juice and zest of 2 limes", "a knob of butter", "essential oil of lavender"."""
    left, right = split_of(words)
    if not left and len(words) > 1 and words[0].form in phrase_words("turns_before"):
        left, right = words[:1], words[1:]
    if not right:
        return None
    if set(forms(right)) <= set(forms(left)):  # "orange peel from 1 orange"
        return _read_head(left, larder)
    if left[-1].form in phrase_words("tins"):
        for word in sorted(phrase_words("tinned")):
            tinned = match_name((left[-1]._replace(form=word), *right), larder)
            if tinned.food:
                return _found(tinned, right)
        return None
    turned = [match_name((*right, *piece), larder) for piece in split_joined(left)]
    known = tuple(match.food for match in turned if match.food)
    if known and len(known) == len(turned):
        return replace(_found(turned[0], (*right, *left)), foods=tuple(dict.fromkeys(known)))
    # "dried peel of 2 oranges": how the part is stays in front of what it is a part of
    before = match_name((*left[:-1], *right, left[-1]), larder)
    if len(left) > 1 and before.food:
        return _found(before, (*left[:-1], *right, left[-1]))
    holders = [word for word in left if word.form not in phrase_words("holds")]
    inner = _read_head(right, larder)
    if inner.food and match_name((*holders, *right), larder).food:
        return inner
    return None


def _with_note(reading: FoodReading, head: Words, note: Words, larder: Larder) -> FoodReading:
    """Let a note change the food, add another to it, or leave it unknown."""
    effect = read_note(head, note, reading.food, larder)
    for other in effect.others:
        more = _read_head(other, larder)
        reading = replace(
            reading,
            foods=tuple(dict.fromkeys((*reading.foods, *more.foods))),
            hinted=(*reading.hinted, *more.hinted),
            doubted=(*reading.doubted, *more.doubted),
            leftover=(*reading.leftover, *more.leftover),
        )
    if effect.food:
        others = tuple(food for food in reading.foods if food != reading.food)
        reading = replace(
            reading,
            food=effect.food,
            foods=(effect.food, *others),
            leftover=(),
            hinted=(),
            doubted=(),
        )
    if effect.leftover:
        doubted = reading.foods if not reading.leftover else ()
        # "almonds, wild garlic": what it names is no less dangerous for being asked about
        named = match_name(note, larder).food
        reading = replace(
            reading,
            food=None,
            foods=(),
            hinted=(*reading.hinted, *((named,) if named else ())),
            doubted=tuple(dict.fromkeys((*reading.doubted, *doubted))),
            leftover=(*reading.leftover, *effect.leftover),
        )
    return reading
