"""A word that no larder knows in a list of foods: "walnuts, frobnicates, raisins".

Behind one food a strange word may say how it is ("butter, frobnicated"); between two foods it is a
third one, and what is not known of it holds for the whole line. Leaves out lists in which every
food is known: lists.py.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import takewhile
from typing import get_args

from stillroom.core.amounts.units import System, counted_nouns, unit_words
from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.food_read import FoodReading
from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.matching import COLOURS, hint, match_name
from stillroom.core.larder.notes import FOR_EXAMPLE
from stillroom.core.larder.phrases import (
    Phrase,
    Words,
    cut_phrase,
    forms,
    phrase_words,
    split_joined,
    split_tail,
    without_taste,
)
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import Word, normal_form
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_LONGEST = 3
"""Words that a food without a name in the larder may have; more of them are a sentence."""
# "deribbed", "unsoaked"; linseed and seaweed are foods
_DONE = late_regex(r"(?!\w*(?:seed|weed)s?$)\w{3,}ed")
# said of a food, and of none by itself
_SAID = (
    "prose", "tails", "ends", "purposes", "measures", "sentence", "changes", "choice", "denials",
    "turns", "turns_elsewhere", "parts_of_any", "holds", "tins", "tins_elsewhere", "tinned",
    "within", "colours_elsewhere", "or_nothing", "before_it", "beside_parts", "not_of_it", "shared",
    "no_food_alone", "packet_says", "done_with", "put_in", "what_for", "who_uses", "of",
    "spoons",
)  # fmt: skip


@dataclass(frozen=True)
class UnknownInList:
    """What stands in a list of foods and is none that is known, and the foods told beside it."""

    words: tuple[str, ...]
    beside: tuple[Staple, ...]


def unknown_in_list(
    phrase: Phrase, named: Sequence[Staple], larder: Larder
) -> UnknownInList | None:
    """Return what no larder knows in the notes of a phrase that are a list of foods; else None.

    `named` are the foods that the phrase was read as. Its notes are a list where one of them is a
    food of its own beside another.

    >>> from stillroom.core.larder.phrases import cut_phrase
    >>> from stillroom.core.larder.shelves import common_larder, staple_named
    >>> phrase = cut_phrase("walnuts, frobnicates, raisins")
    >>> unknown_in_list(phrase, [staple_named("walnuts")], common_larder()).words
    ('frobnicate',)
    """
    pieces = [piece for note in phrase.notes for piece in _pieces(note, larder)]
    found = [match_name(piece, larder).food for piece in pieces]
    beside = tuple(food for food in found if food and "craft" not in food.tags)
    several = {forms(piece) for piece in pieces if larder.is_several(forms(piece))}
    if len({*named, *beside}) + len(several) < 2 or not (beside or several):
        return None
    words = tuple(
        " ".join(forms(piece))
        for piece, food in zip(pieces, found, strict=True)
        if food is None
        and _may_be_food(piece, larder)
        and not _is_a_sort(piece, phrase.head, larder)
    )
    return UnknownInList(words, tuple(dict.fromkeys(beside))) if words else None


def with_unknown_beside(reading: FoodReading, measured: bool = False) -> FoodReading:
    """Return what a line was read as, not known where it is a list of two and one of them strange.

    "Salt, frobnicates" names a thing by its plural, German "Salz, Frobnikat" by its capital; words
    that say how a food is have neither. Behind what is `measured` German nouns say where it comes
    from ("Kichererbsen, am liebsten aus dem Glas"): there only one by itself is a thing.

    >>> from stillroom.core.larder.food_reading import read_food
    >>> with_unknown_beside(read_food("walnuts, frobnicates")).leftover
    ('frobnicate',)
    >>> with_unknown_beside(read_food("walnuts, frobnicate")).known
    True
    """
    if not reading.known:
        return reading
    larder = reading.larder
    phrase = cut_phrase(reading.text)
    told = _tells() if measured else frozenset[str]()
    listed = takewhile(lambda note: not told.intersection(forms(note)), phrase.notes)
    pieces = [piece for note in listed for piece in _pieces(note, larder)]
    words = tuple(
        " ".join(forms(piece))
        for piece in pieces
        if _is_a_thing(piece[-1], reading.text, larder.language[:2])
        and piece[0].form not in phrase_words("tails")
        and not (measured and larder.language[:2] == "de" and len(piece) > 1)
        and match_name(piece, larder).food is None
        and _may_be_food(piece, larder)
        and not _is_a_sort(piece, phrase.head, larder)
    )
    if not words:
        return reading
    return replace(reading, food=None, foods=(), hinted=reading.named, leftover=words)


def _is_a_thing(word: Word, text: str, language: str) -> bool:
    written = text[word.start : word.end]
    if language == "de":
        return written[:1].isupper() and not written.isupper()
    many = written.lower() == f"{word.form}s"
    return language == "en" and many and text[word.end :].lstrip()[:1] in ("", ",", ";")


def _is_a_sort(piece: Words, head: Words, larder: Larder) -> bool:
    """Whether words name a sort of the head: "seeds (pumpkin, sunflower)"."""
    sorts = ((*piece, *head), (*piece, *head[-1:]))
    return any(match_name(words, larder).food is not None for words in sorts)


def _pieces(note: Words, larder: Larder) -> Iterator[Words]:
    """Yield what a note joins, without what it is for and without "such as" before it.

    Behind the first words of a sentence nothing is listed any more.
    """
    note = without_taste(note)
    said = next((len(one) for one in FOR_EXAMPLE if forms(note)[: len(one)] == one), 0)
    note = note[said:]
    if not note or note[0].form in phrase_words("prose") | phrase_words("denials") | _for_what():
        return
    end = next((at for at, word in enumerate(note) if at and word.form in _for_what()), len(note))
    core, _ = split_tail(note[:end])
    for piece in split_joined(core):
        if phrase_words("sentence").intersection(forms(piece)):
            return
        if not (larder.language[:2] != "en" and set(forms(piece)) <= _colours()):
            yield piece


@cache
def _for_what() -> frozenset[str]:
    return phrase_words("ends") | phrase_words("purposes") | phrase_words("what_for")


@cache
def _tells() -> frozenset[str]:
    """Return who tells of what was taken: "apples (I used 750 g cookers, 500 g cox, windfalls)"."""
    return phrase_words("who_uses") | phrase_words("sentence")


@cache
def _colours() -> frozenset[str]:
    return COLOURS | phrase_words("colours_elsewhere")


def _may_be_food(piece: Words, larder: Larder) -> bool:
    """Whether words say nothing that is said of foods, so that they may name one."""
    plain = forms(piece)
    if len(plain) > _LONGEST or plain[-1] == "free":
        return False
    if any(hint(piece, larder)):
        return False
    left = [form for form in plain if not (all_harmless((form,)) or form in _said_of_foods())]
    return bool(left) and not (larder.language[:2] == "en" and _DONE.fullmatch(left[-1]))


@cache
def _said_of_foods() -> frozenset[str]:
    words = frozenset[str]().union(*(phrase_words(name) for name in _SAID))
    lines: dict[str, list[str]] = read_data("line_words.yml")
    measured = (
        *(word for system in get_args(System) for word in unit_words(system)),
        *counted_nouns(),
        *(word for name in ("sizes", "fullness", "vague", "about") for word in lines[name]),
    )
    parts: dict[str, list[str]] = read_larder_data("phrases.yml")["parts_elsewhere"]
    measured = (*measured, *(word for names in parts.values() for word in names))
    own = frozenset(form for said in measured for form in normal_form(said).split())
    return words | own | COLOURS | {"only", "very"}
