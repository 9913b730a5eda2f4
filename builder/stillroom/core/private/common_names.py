"""Names of which a part is a plain word too: "Sara Perry", "Rosemary Hughes", "Basil Rice".

Perry is a drink and "pat lamb dry" speaks of nobody, so such a name is sought as somebody's: with
its capitals, or put together by a sign. Where every part is a plain word, it is told and stops
nothing. Which words are plain is for the caller to say; how all other names are sought: seeking.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Final

from stillroom.core.private.hidden_forms import letters
from stillroom.core.private.words import PrivateWord

_MOST_NAMES: Final = 4
_GAP: Final = r"(?:[\s*_~`./]|<[^<>]{0,200}>){1,20}"
_SIGN: Final = "[-_.+]"


class CommonNames:
    """The names of a list with a plain word in them, by the form in which each is compared."""

    def __init__(self, words: Iterable[PrivateWord], is_common: Callable[[str], bool]) -> None:
        """Take the words of a list; `is_common` says which word or name is no one's alone."""
        self.parted: dict[str, tuple[str, ...]] = {}  # these want their capitals
        self.throughout: dict[tuple[str, ...], PrivateWord] = {}  # these can only be told
        self._is_common = is_common
        for word in words:
            names = tuple(letters(word.written or word.words).split())
            if not (word.alone and word.of_somebody and 2 <= len(names) <= _MOST_NAMES):
                continue
            common = [self.is_common(name) for name in names]
            if all(common) and not is_common(word.words):
                self.throughout[names] = word
            elif any(common):
                self.parted[word.words] = names

    def is_common(self, name: str) -> bool:
        """Say whether one word is a plain one."""
        return self._is_common(name)

    def is_somebody(self, form: str, texts: Iterable[str]) -> bool:
        """Say whether a form that stands in a file is somebody's name there.

        The texts are as they stand, without marks over their letters.
        """
        names = self.parted.get(form)
        if names is None:
            return True
        joined = not self.is_common(names[0])
        return any(find_written(names, text, joined=joined) for text in texts)

    def told(self, where: Callable[[str], Iterable[str]]) -> Iterator[tuple[str, PrivateWord]]:
        """Return how each name of plain words throughout stands in texts, where it does.

        `where` gives the texts that hold its words.
        """
        for names, word in self.throughout.items():
            texts = where(" ".join(names))
            said = next(filter(None, (find_written(names, text) for text in texts)), "")
            if said:
                yield said, word


def find_written(names: Sequence[str], text: str, *, joined: bool = False) -> str:
    """Return how a name stands in a text as somebody's, "" where it does not.

    >>> find_written(["pat", "lamb"], "For Pat Lamb"), find_written(["pat", "lamb"], "Pat lamb dry")
    ('Pat Lamb', '')
    >>> [find_written(["sara", "perry"], said) for said in ("PERRY, Sara", "sara-perry")]
    ['PERRY, Sara', '']
    >>> find_written(["sara", "perry"], "u/sara-perry/", joined=True)
    'sara-perry'
    """
    for pattern in _patterns(tuple(names), joined):
        if found := pattern.search(text):
            return found[0]
    return ""


@lru_cache(maxsize=4096)
def _patterns(names: tuple[str, ...], joined: bool) -> tuple[re.Pattern[str], ...]:
    written = [f"{re.escape(name[0].upper())}(?i:{re.escape(name[1:])})" for name in names]
    behind = rf"{written[-1]},\s*{_GAP.join(written[:-1])}"
    several = [_GAP.join(written), behind]
    if joined:
        several.append(rf"(?i:{_SIGN.join(map(re.escape, names))})")
    return tuple(re.compile(rf"(?<![^\W_]){one}(?![^\W_])") for one in several)
