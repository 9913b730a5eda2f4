"""How the words of a text begin, so that most patterns need no closer look at it.

A pattern of a hundred words is asked of every clause of a method and finds none of them in most. A
match must hold a word that begins in one of a few ways: those are read off the pattern as Python's
own parser sees it, as Russ Cox's "Regular Expression Matching with a Trigram Index" (2012) reads
trigrams off it, and all patterns together are held once against how the text's words begin: which
may find anything is one whole number, a pattern a bit. Where nothing is sure nothing is ruled out.
Leaves out the patterns themselves: patterns.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import count
from re import _constants as said  # type: ignore[attr-defined]
from re import _parser  # type: ignore[attr-defined]
from threading import Lock
from typing import Any, Final

Heads = frozenset[str]
Item = tuple[Any, Any]
"""One part of a pattern, as Python's parser gives it: what it is, and its parts or its letter."""

_LONGEST: Final = 5
_LEAST: Final = 2
"""Letters of a word that are looked at: at most, and for a beginning to tell anything. By five
"without" is another than "with", by four it was not."""
_SIZES: Final = range(_LEAST, _LONGEST + 1)
_MOST: Final = 800
"""Beginnings beyond which a pattern is asked at once."""
_LETTERS: Final = frozenset("abcdefghijklmnopqrstuvwxyz0123456789_àáâãäåæçèéêëìíîïðñòóôõöøùúûüýþ")
"""Letters that a pattern in any capitals finds by `str.lower` alone, but for those put right."""
_FIGURES: Final = "0123456789"
_EVERYDAY: Final = frozenset(
    {"the ", "and ", "for ", "with", "from", "into", "that", "this", "all "}
)
"""Words so common that to look for them rules hardly anything out."""
_REPEATS: Final = (said.MAX_REPEAT, said.MIN_REPEAT, said.POSSESSIVE_REPEAT)
_NO_WORD: Final = (said.CATEGORY_SPACE, said.CATEGORY_NOT_WORD)


_MOST_KEPT: Final = 2**13
"""Texts and words that are remembered: the same words stand in recipe after recipe."""
heads_before: Final[dict[tuple[str, int], Heads | None]] = {}
"""What was read off each pattern and its flags."""
_askers: Final[dict[str, int]] = {}
"""Who asks for a beginning, a pattern a bit."""
_bits: Final = count()
_asking: Final = Lock()
_of_words: Final[list[dict[str, int]]] = [{}]
of_texts: Final[list[dict[str, int]]] = [{}]
"""What was found of words, with the stops beside them, and of texts since a pattern was the last
to begin asking."""


@cache
def _words() -> Callable[[str], list[str]]:
    """Return what divides a text into words; made when it is first asked."""
    return re.compile(r"\w+").findall


def ask_for(heads: Heads) -> int:
    """Let a pattern ask for words that begin so; return its bit in what `asked_in` finds.

    What was found before tells nothing of it and is let go of, once everything is in its place:
    another thread that is reading a text meanwhile keeps what it finds where nobody looks again.
    """
    with _asking:
        bit = 1 << next(_bits)
        for head in heads:
            _askers[head] = _askers.get(head, 0) | bit
        _of_words[0] = {}
        of_texts[0] = {}
    return bit


def asked_in(text: str) -> int:
    """Return every pattern that may find something in a text; `of_texts` holds what is known."""
    known, of_words = of_texts[0], _of_words[0]
    found = 0
    for words in text.split():
        asked = of_words.get(words)
        if asked is None:
            asked = of_words[words] = _asked_of_words(words)
        found |= asked
    if len(known) > _MOST_KEPT:
        known.clear()
    if len(of_words) > _MOST_KEPT:
        of_words.clear()
    known[text] = found
    return found


def _asked_of_words(words: str) -> int:
    found = 0
    for word in _words()(small_letters(words)):
        for head in heads_of_word(word):
            found |= _askers.get(head, 0)
    return found


def heads_of_word(word: str) -> Heads:
    """Return the first two to five letters of a word in small letters.

    Of a short word also all of it, with a blank behind; of a figure also the first sign.

    >>> sorted(heads_of_word("boil")), sorted(heads_of_word("to")), sorted(heads_of_word("12"))
    (['bo', 'boi', 'boil', 'boil '], ['to', 'to '], ['1', '12', '12 '])
    """
    heads = {word[:size] for size in _SIZES}
    if len(word) < _LONGEST:
        heads.add(f"{word} ")
    if word[0] in _FIGURES:
        heads.add(word[0])
    return frozenset(heads)


def small_letters(text: str) -> str:
    """Return a text in small letters, as a pattern of them in any capitals takes it.

    >>> small_letters("ſALZ İN")
    'salz in'
    """
    low = text.lower()
    return low if low.isascii() else low.replace("i̇", "i").replace("ı", "i").replace("ſ", "s")


def heads_of(pattern: re.Pattern[str]) -> Heads | None:
    r"""Return how a word of every match begins, one of these at least; None where that is not sure.

    >>> sorted(heads_of(re.compile(r"\b(?:boil\w*|the whisks?)\b")))
    ['boil', 'whisk']
    >>> heads_of(re.compile(r"\w+ing")) is None
    True
    """
    key = (pattern.pattern, pattern.flags)
    if key not in heads_before:
        heads_before[key] = _read_heads(pattern)
    return heads_before[key]


def _read_heads(pattern: re.Pattern[str]) -> Heads | None:
    if pattern.flags & (re.ASCII | re.LOCALE) or "(?a" in pattern.pattern:
        return None
    parts = _parser.parse(pattern.pattern, pattern.flags & ~re.UNICODE)
    return _surest(parts.data, starts=False)


def _surest(items: Sequence[Item], starts: bool) -> Heads | None:
    """Return the beginnings that tell most, of all words that a sequence must hold.

    `starts` tells whether no letter can stand before it.
    """
    found: list[Heads] = []
    for place, (what, parts) in enumerate(items):
        if starts and (heads := _beginnings(items[place:])):
            found.append(heads)
        if inner := _surest_within(what, parts, starts):
            found.append(inner)
        starts = _starts_behind(what, parts, starts)
    return max(found, key=lambda heads: (min(map(_tells, heads)), -len(heads)), default=None)


def _tells(head: str) -> int:
    """Return how much a beginning tells, as a number of letters; too little is under the least.

    A short word that is whole tells no more than its letters: "in" stands in every other sentence.
    """
    if head in _EVERYDAY:
        return _LEAST
    if head[:1].isdigit():
        return _LEAST + 1
    return max(len(head) - 1, _LEAST) if head[-1:] == " " else len(head)


def _surest_within(what: Any, parts: Any, starts: bool) -> Heads | None:
    if what is said.SUBPATTERN:
        return _surest(parts[3].data, starts)
    if what in _REPEATS and parts[0]:
        return _surest(parts[2].data, starts)
    if what is said.BRANCH:
        each = [_surest(one.data, starts) for one in parts[1]]
        return frozenset().union(*each) if all(each) else None  # type: ignore[arg-type]
    return None


def _starts_behind(what: Any, parts: Any, starts: bool) -> bool:
    """Say whether behind a part of a pattern a letter can only be the first of its word."""
    if what is said.AT:
        return starts or parts is not said.AT_NON_BOUNDARY
    if what is said.ASSERT_NOT:
        way, inner = parts
        alone = way < 0 and len(inner) == 1 and inner[0][0] is said.IN
        return starts or (alone and (said.CATEGORY, said.CATEGORY_WORD) in inner[0][1])
    if what is said.ASSERT:
        return starts
    if what is said.LITERAL:
        return not (chr(parts).isalnum() or chr(parts) == "_")
    if what is said.IN:
        return all(_is_no_letter(*one) for one in parts)
    if what is said.SUBPATTERN:
        return _start_behind_all(parts[3].data, starts)
    if what is said.BRANCH:
        return all(_start_behind_all(one.data, starts) for one in parts[1])
    if what in _REPEATS:
        return (starts or parts[0] > 0) and _start_behind_all(parts[2].data, starts)
    return False


def _start_behind_all(items: Any, starts: bool) -> bool:
    for what, parts in items:
        starts = _starts_behind(what, parts, starts)
    return starts


def _is_no_letter(what: Any, parts: Any) -> bool:
    if what is said.CATEGORY:
        return parts in _NO_WORD
    return what is said.LITERAL and _starts_behind(what, parts, starts=False)


def _beginnings(items: Sequence[Item]) -> Heads | None:
    """Return the beginnings of a word at the head of a sequence; None where one tells nothing."""
    spelled = _spell(items, _LONGEST)
    heads = frozenset().union(*spelled) if spelled else frozenset()
    return heads if heads and min(map(_tells, heads)) >= _LEAST else None


Spelled = tuple[set[str], set[str]]
"""Ways in which a text may begin: those that are whole, and those behind which more can be put."""


def _spell(items: Sequence[Item], size: int) -> Spelled | None:
    """Return how texts of a sequence begin, up to so many letters of one word."""
    whole: set[str] = set()
    still = {""}
    for what, parts in items:
        if not still:
            break
        if what is said.LITERAL and (letter := _letter(parts)):
            longer = {text + letter for text in still}
        elif what is said.AT or _is_no_word(what, parts):
            whole |= {f"{text} " for text in still if text}
            goes_on = "" in still and what is said.AT
            if "" in still and not goes_on:
                whole.add("")
            still = {""} if goes_on else set()
            continue
        else:
            more = _spell_one(what, parts, size)
            if more is None or (len(whole) + len(still)) * (len(more[0]) + len(more[1])) > _MOST:
                return None
            whole |= {(text + behind)[:size] for text in still for behind in more[0]}
            longer = {text + behind for text in still for behind in more[1]}
        still = {text for text in longer if len(text) < size}
        if len(still) < len(longer):
            whole |= {text[:size] for text in longer if len(text) >= size}
    return whole, still


def _is_no_word(what: Any, parts: Any) -> bool:
    """Say whether what stands here is no letter, or says that none does."""
    if what is said.ASSERT_NOT:
        return tuple(parts) == (1, [(said.IN, [(said.CATEGORY, said.CATEGORY_WORD)])])
    return what in (said.LITERAL, said.IN) and _starts_behind(what, parts, starts=False)


def _spell_one(what: Any, parts: Any, size: int) -> Spelled | None:
    if what is said.LITERAL:
        return _spell_letter(parts)
    if what is said.IN and all(one[0] in (said.LITERAL, said.RANGE) for one in parts):
        return _together(_spell_any(*one) for one in parts)
    if what is said.ASSERT or what is said.ASSERT_NOT:
        return set(), {""}
    if what is said.SUBPATTERN:
        return _spell(parts[3].data, size)
    if what is said.BRANCH:
        return _together(_spell(one.data, size) for one in parts[1])
    if what in _REPEATS:
        least, most, inner = parts
        once = _spell(inner.data, size)
        if once is not None and most != 1:
            once = once[0] | once[1], set()
        return once if least else _together([(set(), {""}), once])
    return {""}, set()


def _spell_any(what: Any, parts: Any) -> Spelled:
    if what is said.LITERAL:
        return _spell_letter(parts)
    first, last = parts
    if last - first > 10:
        return {""}, set()
    whole, still = zip(*(_spell_letter(code) for code in range(first, last + 1)), strict=True)
    return set().union(*whole), set().union(*still)


def _spell_letter(code: int) -> Spelled:
    letter = _letter(code)
    return (set(), {letter}) if letter else ({""}, set())


@cache
def _letter(code: int) -> str:
    """Return a letter as a small one, "" of one whose capital may be another's."""
    letter = chr(code).lower()
    return letter if letter in _LETTERS else ""


def _together(each: Iterator[Spelled | None] | Sequence[Spelled | None]) -> Spelled | None:
    whole: set[str] = set()
    still: set[str] = set()
    for one in each:
        if one is None:
            return None
        whole |= one[0]
        still |= one[1]
    return (whole, still) if len(whole) + len(still) <= _MOST else None
