"""Foods that stand in a list: "almonds, walnuts or pecans", "dried figs, cherries and dates".

What stands before the first of them may be said of all: the dried cherries of "dried cranberries or
cherries" are no fresh ones. Leaves out how each is read: food_reading.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.matching import COLOURS, Match, match_name
from stillroom.core.larder.notes import FOR_EXAMPLE
from stillroom.core.larder.phrases import (
    Phrase,
    Words,
    first_piece,
    forms,
    phrase_words,
    split_joined,
    split_tail,
    without_taste,
)
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import Word, normal_form
from stillroom.core.words.patterns import late_regex

# foods of one family are dried, tinned or smoked alike: "dried figs or honey" shares nothing
_FAMILIES = frozenset(
    {"fruit", "vegetable", "mushroom", "fish", "shellfish", "meat", "pulse", "fresh-herb", "herb"}
)


def as_one_list(phrase: Phrase, larder: Larder) -> Phrase:
    """Join the pieces of a list that commas part into one head, as if "or" stood at each comma.

    Each must be a food by itself, and none a sort of the first: "milk, oat or soya" is no list.
    What the whole list is for stands behind it: "icing sugar, marzipan and nuts to decorate".
    """
    phrase = _without_its_class(_named_plainly(phrase, larder), larder)
    for place, note in enumerate(phrase.notes):
        core = _without_its_end(note)
        own = split_joined(core)
        tasted = without_taste(note) != note
        # "Salz, Senf nach Geschmack": what is said of all of them ends a list as "and" does
        ends = note[0].form in phrase_words("joins") or len(own) > 1 or tasted
        stands = _is_a_food if place or _first_stands(own, phrase.head, larder) else _stands_alone
        if not own or not all(stands(piece, phrase.head, larder) for piece in own):
            return phrase
        # "sel, poivre, gingembre": three that are foods are a list without it
        ends = ends or 0 < place == len(phrase.notes) - 1
        if not ends:
            continue
        if place == 0 and len(own) == 1 and not tasted and not shared_words(phrase.head):
            return phrase
        # "apricots, sugar to taste, puff-paste or short crust": what is to taste ends no list
        pieces = (*map(_without_its_end, phrase.notes[:place]), core)
        joint = _joint(pieces)
        head = phrase.head
        for piece in pieces:
            comma = () if piece[0].form in phrase_words("joins") else (joint,)
            head = (*head, *comma, *piece)
        return Phrase(head, phrase.notes[place + 1 :])
    return phrase


def _without_its_class(phrase: Phrase, larder: Larder) -> Phrase:
    """Return "spices (cinnamon, cloves)" without what only says what they are.

    All that is listed must be known, or the word stays: "spices (mostly cinnamon)".
    """
    classes = phrase_words("classes")
    plain = " ".join(forms(phrase.head))
    own = next((name for name in classes if plain == name or plain.endswith(f" {name}")), "")
    left = phrase.head[: len(phrase.head) - len(own.split())]
    if not own or not phrase.notes or not all_harmless(forms(left)):
        return phrase
    if match_name(phrase.head, larder).food is not None:
        return phrase
    pieces = [split_joined(_without_its_end(note)) for note in phrase.notes]
    if not all(match_name(piece, larder).food for one in pieces for piece in one):
        return phrase
    return Phrase(phrase.notes[0], phrase.notes[1:])


_MIXED = frozenset({"mixed", "assorted", "gemischt", "gemischte"})


def _named_plainly(phrase: Phrase, larder: Larder) -> Phrase:
    """Return a list without "mixed" before it; "such as" before a first sort is said of all."""
    head, notes = phrase.head, phrase.notes
    pieces = split_joined(head)
    first = pieces[0] if pieces and (notes or len(pieces) > 1) else ()
    if len(first) > 1 and first[0].form in _MIXED:
        alone = match_name(first, larder).food is None and match_name(first[1:], larder).food
        head = head[1:] if alone else head
    for place, note in enumerate(notes):
        said = next((one for one in FOR_EXAMPLE if forms(note)[: len(one)] == one), ())
        if said:
            sorts = (_without_its_joint(more) for more in notes[place + 1 :])
            more = tuple(
                sort
                if match_name(sort, larder).food is None and all_harmless(forms(sort))
                else (*note[: len(said)], *sort)
                for sort in sorts
            )
            return Phrase(head, (*notes[: place + 1], *more))
    return Phrase(head, notes)


def _without_its_joint(note: Words) -> Words:
    return note[1:] if len(note) > 1 and note[0].form in phrase_words("joins") else note


def _without_its_end(note: Words) -> Words:
    """Take from a note what its list is for: "flaked almonds and cream to finish"."""
    note = without_taste(note)
    core, tail = split_tail(note)
    return core if tail and tail[0].form in phrase_words("purposes") else note


# behind the last sort of a list: "sunflower or almond oil may be used"
_SAID_OF_SORTS = frozenset(
    {"may", "can", "will", "is", "are", "all", "both", "either", "work", "etc"}
)


def as_sorts(phrase: Phrase, larder: Larder) -> Phrase:
    """Read "oil (almond, sunflower or olive)" as those oils, "nuts (pecans or almonds)" as all.

    Nothing changes where a piece only describes the food, "apples (cooking, peeled or not)", nor
    where what follows stands in its place: "milk, or oat or soya milk".
    """
    listed = _list_of_sorts(phrase)
    if not listed:
        return phrase
    head = match_name(phrase.head, larder).food
    pieces = [_before(piece, _SAID_OF_SORTS) for note in listed for piece in split_joined(note)]
    sorts = [_a_sort(piece, phrase.head, larder) for piece in pieces]
    known = [sort for sort in sorts if sort is not None]
    described = any(one.food == head and one.end - one.start < len(words) for one, words in known)
    apart = any(words in pieces for _, words in known)  # "garlic tops, parsley, or basil"
    if len(known) < 2 or sorts[0] is None or described or (head is None and apart):
        return phrase
    joint = _joint(listed)
    # what is a food by itself may as well stand beside it: "cream, milk or a mixture"
    beside = head is not None and any(match_name(piece, larder).food for piece in pieces)
    joined: Words = phrase.head if beside else ()
    for piece, sort in zip(pieces, sorts, strict=True):
        words = sort[1] if sort else (*piece, *phrase.head)
        joined = (*joined, *((joint,) if joined else ()), *words)
    return Phrase(joined, phrase.notes[len(listed) :])


def _list_of_sorts(phrase: Phrase) -> tuple[Words, ...]:
    """Return the notes that are one list joined by "or" behind a single head; else none."""
    for place, note in enumerate(phrase.notes):
        begins = note[0].form in phrase_words("joins")
        if (begins and place == 0) or note[0].form in phrase_words("prose"):
            return ()
        if begins or len(split_joined(note)) > 1:
            listed = phrase.notes[: place + 1]
            plain = {form for one in listed for form in forms(one)}
            single = len(split_joined(phrase.head)) == 1
            either = _joint(listed).form in phrase_words("either")
            return listed if single and either and "also" not in plain else ()
    return ()


def _before(piece: Words, stops: frozenset[str]) -> Words:
    """Return the words of a piece before the first of some others."""
    end = next((n for n, word in enumerate(piece) if n and word.form in stops), len(piece))
    return piece[:end]


def _a_sort(piece: Words, head: Words, larder: Larder) -> tuple[Match, Words] | None:
    """Return the sort of the head that a piece names, with its words: its own where alone."""
    alone = match_name(piece, larder)
    for words in ((*piece, *head), (*piece, head[-1]), (*head[:-1], *piece)):
        match = match_name(words, larder)
        own = match.food != alone.food or match.end - match.start == len(words)
        if match.food is not None and own and "craft" not in match.food.tags:
            return match, words
    # "granulated" is sugar, and a manner of tapioca
    named = alone.food is not None and "craft" not in alone.food.tags
    return (alone, piece) if named and not all_harmless(forms(piece)) else None


def _joint(notes: Sequence[Words]) -> Word:
    words = [word for note in notes for word in note if word.form in phrase_words("joins")]
    if not words:  # "Salz, Senf nach Geschmack"
        return Word("and", notes[0][0].start, notes[0][0].start)
    return words[0]._replace(end=words[0].start)


def _is_a_food(piece: Words, head: Words, larder: Larder) -> bool:
    """Whether a later piece is a food: behind "salt, pepper" garlic makes no garlic salt."""
    if set(forms(piece)) <= COLOURS | phrase_words("turns") | phrase_words("changes"):
        return False
    food = match_name(piece, larder).food
    return food is not None and "craft" not in food.tags and bool(head)


# what goes in by itself and before others: "salt, garlic and dill" holds no garlic salt
_BY_ITSELF = frozenset({"salt", "butter"})


def _first_stands(own: Sequence[Words], head: Words, larder: Larder) -> bool:
    """Whether the first of several is no sort of the head, so that the head stands by itself.

    "Milk, oat and soya" may be two milks; of salt and butter the sorts hold what both hold apart.
    """
    if len(own) < 2:
        return False
    if _stands_alone(own[0], head, larder):
        return True
    first, piece = (match_name(words, larder).food for words in (head, own[0]))
    sort = match_name((*own[0], *head), larder).food
    if first is None or piece is None or sort is None or not first.tags & _BY_ITSELF:
        return False
    return set(sort.allergens) == {*first.allergens, *piece.allergens}


def _stands_alone(piece: Words, head: Words, larder: Larder) -> bool:
    if not _is_a_food(piece, head, larder):
        return False
    first = match_name(head, larder).food, match_name(head[-1:], larder).food
    # behind "gingembre moulu" canela is no ground cinnamon: only what is done ends that name
    done = (
        len(head) > 1 and larder.language[:2] != "en" and _DONE_ELSEWHERE.fullmatch(head[-1].form)
    )
    heads = (head,) if done else (head, head[-1:])
    sorts = (match_name((*piece, *words), larder).food for words in heads)
    return all(sort is None or sort in first for sort in sorts)


_DONE_ELSEWHERE = late_regex(
    r"molid[oa]s?|rallad[oa]s?|picad[oa]s?|moulue?s?|hache(?:e?s?)|rape(?:e?s?)|macinat[oaie]|tritat[oaie]|grattugiat[oaie]"
    r"|moid[oa]s?|ralad[oa]s?|gemahlen|gerieben|gehackt|gemalen|geraspt|gehakt|malen|malet|stott|rivet|riven|hackad|hakket"
)
_DONE = late_regex(r"(?!\w*seed)\w{2,}(?:[aiu][dt][oaie]|ed)")


def that_name_foods(pieces: list[Words], larder: Larder) -> list[Words]:
    """Leave out what says once more how the first food is: "cebolas descascadas e picadas"."""
    more = (
        piece
        for piece in pieces[1:]
        if not (all_harmless(forms(piece)) and all(_DONE.fullmatch(one.form) for one in piece))
        or match_name(piece, larder).food
    )
    return [pieces[0], *more]


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


def with_other_colours(pieces: list[Words], larder: Larder) -> list[Words]:
    """Put the food to a colour alone: of "poivron jaune ou orangé" the second is no orange.

    In English "pepper or orange" may well be the fruit.
    """
    colours = phrase_words("colours_elsewhere")
    first = pieces[0]
    if larder.language[:2] == "en" or len(first) < 2 or first[-1].form not in colours:
        return pieces
    found = [first]
    for piece in pieces[1:]:
        if len(piece) == 1 and piece[0].form in colours:
            other = (*first[:-1], *piece)
            found += [other] if match_name(other, larder).food else []
        else:
            found.append(piece)
    return found


def is_a_colour(words: Words) -> bool:
    """Whether words name only a colour: "white", "small white", but not "whites"."""
    last = words[-1]
    is_one = last.form in COLOURS and last.end - last.start == len(last.form)
    return is_one and all_harmless(forms(words[:-1]))


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


def named_with_its_number(text: str, larder: Larder) -> Staple | None:
    """Return the food whose name has a number in it: "pink salt #1" is not pink salt."""
    first = first_piece(text)
    return larder.named(normal_form(first)) if re.search(r"\d", first) else None
