"""Foods that stand in a list: "almonds, walnuts or pecans", "dried figs, cherries and dates".

What stands before the first of them may be said of all: the dried cherries of "dried cranberries or
cherries" are no fresh ones. Leaves out how each is read: food_reading.py.
"""

from __future__ import annotations

from collections.abc import Sequence

from stillroom.core.larder.matching import COLOURS, Match, match_name
from stillroom.core.larder.phrases import Phrase, Words, forms, phrase_words, split_joined
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import Word

# foods of one family are dried, tinned or smoked alike: "dried figs or honey" shares nothing
_FAMILIES = frozenset(
    {"fruit", "vegetable", "mushroom", "fish", "shellfish", "meat", "pulse", "fresh-herb", "herb"}
)


def as_one_list(phrase: Phrase, larder: Larder) -> Phrase:
    """Join the pieces of a list that commas part into one head, as if "or" stood at each comma.

    Each must be a food by itself, and none a sort of the first: "milk, oat or soya" is no list.
    """
    for place, note in enumerate(phrase.notes):
        own = split_joined(note)
        ends = note[0].form in phrase_words("joins") or len(own) > 1
        if not own or not all(_stands_alone(piece, phrase.head, larder) for piece in own):
            return phrase
        if not ends:
            continue
        if place == 0 and len(own) == 1 and not shared_words(phrase.head):
            return phrase
        joint = _joint(phrase.notes[: place + 1])
        head = phrase.head
        for piece in phrase.notes[: place + 1]:
            comma = () if piece[0].form in phrase_words("joins") else (joint,)
            head = (*head, *comma, *piece)
        return Phrase(head, phrase.notes[place + 1 :])
    return phrase


def _joint(notes: Sequence[Words]) -> Word:
    words = [word for note in notes for word in note if word.form in phrase_words("joins")]
    return words[0]._replace(end=words[0].start)


def _stands_alone(piece: Words, head: Words, larder: Larder) -> bool:
    if set(forms(piece)) <= COLOURS | phrase_words("turns") | phrase_words("changes"):
        return False
    food = match_name(piece, larder).food
    if food is None or "craft" in food.tags:
        return False
    first = match_name(head, larder).food, match_name(head[-1:], larder).food
    sorts = (match_name((*piece, *words), larder).food for words in (head, head[-1:]))
    return all(sort is None or sort in first for sort in sorts)


def split_plurals(pieces: list[Words], larder: Larder) -> list[Words]:
    """Part foods that stand together without commas, each of many: "almonds walnuts or pecans"."""
    found: list[Words] = []
    for piece in pieces[:-1]:
        found += _runs_of_many(piece, larder) or [piece]
    return [*found, pieces[-1]]


def _runs_of_many(piece: Words, larder: Larder) -> list[Words]:
    if match_name(piece, larder).food:
        return []
    runs: list[Words] = []
    start = 0
    while start < len(piece):
        ends = range(len(piece), start, -1)
        run = next((piece[start:end] for end in ends if _is_of_many(piece[start:end], larder)), ())
        if not run:
            return []
        runs.append(run)
        start += len(run)
    return runs


def _is_of_many(run: Words, larder: Larder) -> bool:
    many = run[-1].end - run[-1].start > len(run[-1].form)
    return many and match_name(run, larder).food is not None


def named_twice(words: Words, larder: Larder) -> Match | None:
    """Read a food that stands there under two of its names: "spring onions scallions"."""
    for cut in range(1, len(words)):
        halves = match_name(words[:cut], larder), match_name(words[cut:], larder)
        foods = [half.food for half in halves if half.food]
        if len(foods) == 2 and len({food.kind_of or food.name for food in foods}) == 1:
            return halves[0]
    return None


def is_a_colour(words: Words) -> bool:
    """Whether one word is only a colour: "white", but not "whites"."""
    one = words[0]
    return len(words) == 1 and one.form in COLOURS and one.end - one.start == len(one.form)


def shared_words(first: Words) -> Words:
    """Return what the first food of a list may share with the others: "dried" of "dried figs"."""
    return tuple(word for word in first[:-1] if word.form in phrase_words("shared"))


def after_the_same(first: Words, piece: Words, larder: Larder) -> Match | None:
    """Read what is no food by itself behind the words of the first: "chicken legs or thighs"."""
    for size in range(len(first) - 1, 0, -1):
        match = match_name((*first[:size], *piece), larder)
        if match.food:
            return match
    return None


def with_shared(
    first: Words, piece: Words, foods: tuple[Staple, Staple], either: bool, larder: Larder
) -> tuple[Staple, ...] | None:
    """Return what a later food of a list is when what stands before the first is said of it too.

    `foods` are the first and this one as they stand alone; `either` where "or" joins them. None
    where it may be meant so, but is no food that the larder knows.
    """
    first_food, food = foods
    shared = shared_words(first)
    if not shared or (phrase_words("shared") | {"fresh", "raw"}) & set(forms(piece)):
        return (food,)
    together = match_name((*shared, *piece), larder).food
    if together == food:
        return (food,)
    if together:
        return (together,) if either else (together, food)
    surely = phrase_words("surely_shared") & set(forms(shared))
    return None if surely and first_food.tags & food.tags & _FAMILIES else (food,)
