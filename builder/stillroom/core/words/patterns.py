"""Patterns that wait: each is made when it is first asked, not when its module is loaded.

A command that reads one recipe asks a third of those that the house knows, and making them all
took it longer than reading. What a pattern finds is as `re.compile` would find it. A module's own
patterns are written so; what is made of data inside a function waits there already, behind a cache.
One that is asked of every clause of a method is, once it was asked often, asked only of those in
which a word begins as a match's must (word_heads.py).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cache
from typing import Any, AnyStr, Final, cast

from stillroom.core.words.made_patterns import make_pattern
from stillroom.core.words.word_heads import ask_for, asked_in, heads_of, of_texts

_ASKED: Final = ("search", "match", "fullmatch", "finditer", "findall", "split", "sub", "subn")
_OFTEN: Final = 24
"""Asks after which it pays to look how a pattern's words begin: more than one recipe's card."""
OUTSIDE_BRACKETS: Final = r"(?![^()]{0,300}\))"
"""Behind a sign that parts things: it stands within no brackets. No bracket is longer, so that a
long line is gone through once and not anew from each of its commas."""

SMALL: Final = "".join(filter(str.islower, map(chr, range(0x61, 0x250))))
"""Small letters as they stand in a class of letters: "é" as "e"."""
CAPITAL: Final = rf"[^\W\d_{SMALL}]"
"""A letter that is no small one; of a script that has none, any."""


def late_regex(words: AnyStr, flags: int = 0) -> re.Pattern[AnyStr]:
    """Return a pattern that is made once it is asked something.

    >>> late_regex("[a-z]+", re.IGNORECASE).fullmatch("Quince")[0]
    'Quince'
    """
    return cast("re.Pattern[AnyStr]", LateRegex(words, flags))


def clause_regex(words: str, flags: int = 0) -> re.Pattern[str]:
    r"""Return a late pattern that is asked of every clause, sentence or line of many recipes.

    >>> clause_regex(r"\bboil\w*").search("Then boiled it is")[0]
    'boiled'
    """
    return cast("re.Pattern[str]", ClauseRegex(words, flags))


@cache
def clause_pattern(words: str) -> re.Pattern[str]:
    """Return the pattern of clauses that a row of data writes, in any capitals."""
    return clause_regex(words, re.IGNORECASE)


def any_word(words: Iterable[str]) -> re.Pattern[str]:
    """Return the pattern of whole words in any capitals; "back*" is all that begins so.

    >>> pattern = any_word(["back*", "Ei"])
    >>> [found[0] for found in pattern.finditer("Eier backen, ein Ei")]
    ['backen', 'Ei']
    """
    longest = sorted(words, key=len, reverse=True)
    either = "|".join(re.escape(word).replace(r"\*", r"\w*") for word in longest)
    return clause_regex(rf"(?<!\w)(?:{either})(?!\w)", re.IGNORECASE)


class LateRegex:
    """Stands where a pattern is wanted, and answers all that one answers."""

    def __init__(self, words: str | bytes, flags: int) -> None:
        self.words, self.flags_given = words, flags

    def __getattr__(self, asked: str) -> Any:
        """Make the pattern, and keep its ways of searching, so that no search comes here again."""
        if asked.startswith("__"):
            raise AttributeError(asked)
        made = make_pattern(self.words, self.flags_given)
        self.keep(made)
        return self.__dict__.get(asked) or getattr(made, asked)

    def keep(self, made: re.Pattern[Any]) -> None:
        """Keep the ways in which a pattern that was just made is asked."""
        self.__dict__.update({way: getattr(made, way) for way in _ASKED})


class ClauseRegex(LateRegex):
    """Once it was asked often, looks first how the words of a text begin."""

    def keep(self, made: re.Pattern[str]) -> None:
        """Ask the pattern itself, until it was asked so often that it is worth a closer look."""
        super().keep(made)
        left = _OFTEN

        def counted(way: Callable[..., Any]) -> Callable[..., Any]:
            def ask(*asked: Any) -> Any:
                nonlocal left
                left -= 1
                if left == 0:
                    self.__dict__.update(_quickest(made))
                return way(*asked)

            return ask

        self.__dict__.update(search=counted(made.search), sub=counted(made.sub))


def _quickest(made: re.Pattern[str]) -> dict[str, Callable[..., Any]]:
    """Return ways of searching that leave out texts in which no word begins as it must."""
    found_in, replaced_in = made.search, made.sub
    # one word is found as quickly as its beginning
    known = heads_of(made) if "|" in made.pattern else None
    if known is None:
        return {"search": found_in, "sub": replaced_in}
    bit = ask_for(known)

    def search(text: str, *where: int) -> re.Match[str] | None:
        asked = of_texts[0].get(text)
        if asked is None:
            asked = asked_in(text)
        return found_in(text, *where) if asked & bit else None

    def sub(new: Any, text: str, count: int = 0) -> str:
        asked = of_texts[0].get(text)
        if asked is None:
            asked = asked_in(text)
        return replaced_in(new, text, count) if asked & bit else text

    return {"search": search, "sub": sub}
