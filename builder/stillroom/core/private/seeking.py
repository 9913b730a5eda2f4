"""Where the words of giving lists stand in what is to be published, however they are written there.

A name is sought with whatever stands between its words, in capitals or small, with and without its
accents, surname first, written as one word, and as older encodings have its letters. What is sought
and why: words.py.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from hashlib import blake2b
from typing import Final

from stillroom.core.private.hidden_forms import (
    byte_letters,
    every_text,
    is_binary,
    letters,
    read_plain,
)
from stillroom.core.private.near import stand_near, unmarked
from stillroom.core.private.short_names import (
    TITLES,
    is_addressed,
    is_long_enough,
    is_shortened,
    slipped,
)
from stillroom.core.private.unpacking import Layers, unpack
from stillroom.core.private.words import PrivateWord

_ENCODINGS: Final = ("utf-8", "latin-1", "cp437", "cp850", "mac_roman", "utf-16-le", "utf-16-be",
                     "utf-7")  # fmt: skip
_GERMAN: Final = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue"})
LONGEST_SOUGHT: Final = 40_000_000
"""More bytes than this of one file are not read."""
_LEAST_AS_ONE: Final = 9
"""A name written as one word, or among other bytes, is told from a common word by its length."""
_LEAST_FIGURES: Final = 7
_FIGURES_ALIKE: Final = tuple(
    str.maketrans(said, figures)
    for said, figures in (("l", "1"), ("i", "1"), ("o", "0"), ("lo", "10"), ("ilo", "110"),
                             ("eilo", "3110"), ("aeilo", "43110"))
)  # fmt: skip
"""Figures that are read as the letters they look like: "Qui11"."""
SUM_BYTES: Final = 20
_FIGURES: Final = re.compile(r"\d(?: ?\d){6,}")


@dataclass(frozen=True)
class Held:
    """What a file holds: its texts, and each text as it is compared."""

    data: bytes
    layers: Layers
    texts: tuple[str, ...]
    sealed: str = ""
    """What of the file could not be read, in words."""

    @cached_property
    def compared(self) -> tuple[tuple[str, bool], ...]:
        """Each text's letters, and whether words may stand in it without a gap between them."""
        compared = dict.fromkeys((letters(text), False) for text in self.texts)
        for layer in (*self.layers.found, self.layers.points):
            whole = layer.replace(b"\x00", b"")  # letters of two or four bytes, wherever they begin
            binary = layer is self.layers.points or is_binary(whole)
            if binary or len(whole) < len(layer) or not layer.isascii():
                compared[byte_letters(layer), binary] = None
                compared[byte_letters(whole), binary] = None
        return tuple(compared)


def hold(data: bytes) -> Held:
    """Return all that bytes hold, unpacked and undone."""
    layers = unpack(data)
    texts = tuple(text for layer in layers.found for text in every_text(layer))
    too_long = "longer than can be looked through" if len(data) >= LONGEST_SOUGHT else ""
    return Held(data, layers, texts, layers.sealed or too_long)


@dataclass
class Memory:
    """Sums of files that were looked through; their keys make them tell nothing to others.

    `shapeless` are no private thing by their shape, in `nameless` stands no word that is sought;
    `sealed` could not be read in full, `met` are those that were asked about.
    """

    salt: bytes = b""
    shape_key: bytes = b""
    name_key: bytes = b""
    shapeless: set[bytes] = field(default_factory=set)
    nameless: set[bytes] = field(default_factory=set)
    sealed: set[bytes] = field(default_factory=set)
    met: set[bytes] = field(default_factory=set)

    def shape_sum(self, data: bytes) -> bytes:
        """Return by what bytes are known among those without a private shape."""
        return self._sum(data, self.shape_key)

    def name_sum(self, data: bytes) -> bytes:
        """Return by what bytes are known among those without a private word."""
        return self._sum(data, self.name_key)

    def _sum(self, data: bytes, key: bytes) -> bytes:
        known_by = blake2b(data, digest_size=SUM_BYTES, key=key).digest()
        self.met.add(known_by)
        return known_by


class Seeker:
    """Looks for the words of giving lists in files; knows its words once for all of them."""

    def __init__(
        self,
        words: Iterable[PrivateWord],
        is_common: Callable[[str], bool] = lambda _: False,
        own: Collection[str] = (),
    ) -> None:
        """Take the words to be sought; what `is_common` says nothing of anybody by itself.

        `own` are words the book says of itself: its own family's name is nobody else's.
        """
        self.known: dict[str, PrivateWord] = {}
        self.memory = Memory()
        self.sealed: dict[str, str] = {}  # files that could not be read in full, and why
        self.doubts: dict[str, str] = {}  # files that may speak of somebody, and in what words
        self._figures: dict[str, PrivateWord] = {}
        for word in words:
            common = is_common(word.words)
            if word.alone and not common:
                for form in forms_of(word.written or word.words):
                    if form == word.words or not is_common(form):
                        self._know(form, word)
                if figures := _of_telephone(word.words):
                    self._figures.setdefault(figures, word)
            elif not common:
                self._know(word.words, word)
        self._apart = dict(_names_apart(self.known.values(), is_common))
        self._parts = {form: frozenset(form.split()) for form in self.known}
        self._surnames: dict[str, list[tuple[str, ...]]] = {}
        for names in self._apart:
            if is_long_enough(names[-1]) and names[-1] not in own:
                self._surnames.setdefault(names[-1], []).append(names)

    def _know(self, form: str, word: PrivateWord) -> None:
        before = self.known.get(form)
        if before is None or (word.alone and not before.alone):
            self.known[form] = word

    @property
    def sought(self) -> tuple[tuple[str, bool], ...]:
        """Every form and number that is sought; a name found in part is told from a whole one."""
        forms = ((form, word.alone) for form, word in self.known.items())
        apart = ((" … ".join(names), True) for names in self._apart)
        short = ((f"… {surname}", True) for surname in self._surnames)
        figures = ((figures, True) for figures in self._figures)
        return tuple(sorted((*forms, *apart, *short, *figures)))

    def take_sealed(self) -> Iterator[str]:
        """Say once of each file that could not be read in full why not."""
        for name in sorted(self.sealed):
            why = self.sealed.pop(name)
            yield f"{name}: whether a private name stands in this is not known: it is {why}."

    def take_doubts(self) -> Iterator[str]:
        """Say once of each file in what words it may speak of somebody on a list."""
        told: set[str] = set()
        for name in sorted(self.doubts):
            said = self.doubts.pop(name)
            what = said.partition(" says ")[2]
            if what not in told:  # a page says again what its file says
                yield f"{name}: {said}"
            told.add(what)

    def seek(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return a word that stands in a file, and the line; 1 where no line has it plain."""
        singles: dict[str, dict[str, PrivateWord]] = {}
        apart: set[tuple[str, ...]] = set()
        for text, binary in held.compared if self.known or self._figures else ():
            words = set(text.split())
            apart |= {names for names in self._apart if words.issuperset((names[0], names[-1]))}
            for form in self._found_in(text, words, binary):
                word = self.known[form]
                if word.alone:
                    return word, _line(form, held.data)
                singles.setdefault(word.file, {})[form] = word
            if number := self._number_in(text):
                return number, 1
        for several in singles.values():
            if len(several) >= 3:
                form = min(several)
                return several[form], _line(form, held.data)
        for names in sorted(apart):
            if any(stand_near(names, unmarked(text)) for text in held.texts):
                return self._apart[names], 1
        return self._short_in(held)

    def _short_in(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return whom a file names by an initial and the surname, or misspelt, and the line."""
        for text, binary in held.compared:
            words = frozenset() if binary else frozenset(text.split())
            for names, word in self._apart.items():
                if not words.isdisjoint((names[0], names[-1])) and (form := slipped(names, text)):
                    return word, _line(form, held.data)
        for surname, bearers, text in self._surnames_in(held):
            for one in bearers:
                if one[0] not in TITLES and is_shortened(one, text):
                    return self._apart[one], _line(surname, held.data)
        return None

    def _surnames_in(self, held: Held) -> Iterator[tuple[str, list[tuple[str, ...]], str]]:
        """Return each surname that stands in a file, who bears it, and each text it may be in."""
        met = {word for text, binary in held.compared if not binary for word in text.split()}
        texts: list[str] = []
        for surname in sorted(self._surnames):
            if surname in met:
                texts = texts or [unmarked(text) for text in held.texts]
                yield from ((surname, self._surnames[surname], text) for text in texts)

    def doubt(self, held: Held) -> str:
        """Return in what words a file may speak of somebody, "" where it does in none."""
        for surname, names, text in self._surnames_in(held) if self._surnames else ():
            if said := is_addressed(surname, text):
                word = self._apart[names[0]]
                line = _line(surname, held.data)
                return f'line {line} says "{said}": somebody of {word.file}:{word.line}?'
        return ""

    def _found_in(self, text: str, words: set[str], binary: bool) -> Iterator[str]:
        spaced = f" {text} "
        for form, parts in self._parts.items():
            glued = binary and len(form) >= _LEAST_AS_ONE and self.known[form].alone
            if (parts <= words and f" {form} " in spaced) or (glued and form in text):
                yield form

    def _number_in(self, text: str) -> PrivateWord | None:
        if not self._figures:
            return None
        for found in _FIGURES.finditer(text):
            run = found[0].replace(" ", "")
            for figures, word in self._figures.items():
                if run.endswith(figures):
                    return word
        return None


def forms_of(written: str) -> Iterator[str]:
    """Return each form in which a name or address is sought, compared as all else is.

    >>> list(forms_of("Nell Tarrowby"))  # doctest: +NORMALIZE_WHITESPACE
    ['nell tarrowby', 'nelltarrowby', 'ntarrowby', 'tarrowbyn', 'n e l l t a r r o w b y',
    'tarrowby nell', 'ne11 tarrowby', 'nell tarrowby', 'nell tarr0wby', 'ne11 tarr0wby',
    'ne11 tarr0wby', 'n311 tarr0wby', 'n311 t4rr0wby', 'ybworrat llen', 'llen ybworrat',
    'aryy gneebjol']
    """
    plain = letters(written)
    words = plain.split()
    yield plain
    if 2 <= len(words) <= 4 and len("".join(words)) >= _LEAST_AS_ONE:
        yield "".join(words)
        yield from _joined_by_initial(words)
        yield " ".join("".join(words))  # letter by letter, with gaps between
    if 2 <= len(words) <= 3 and plain.replace(" ", "").isalpha():
        yield " ".join([words[-1], *words[:-1]])
    if len(plain) >= _LEAST_AS_ONE and not plain.replace(" ", "").isdecimal():
        yield from (letters(plain.translate(table)) for table in _FIGURES_ALIKE)
        yield from _turned(plain)
    if written.isascii():
        return
    yield letters(written.translate(_GERMAN))
    for encoding in _ENCODINGS:
        encoded = written.encode(encoding, errors="replace")
        yield byte_letters(encoded)
        yield byte_letters(encoded.replace(b"\x00", b""))
        yield letters(encoded.decode("latin-1"))
        yield letters(encoded.decode("cp1252", errors="replace"))


def _joined_by_initial(words: Sequence[str]) -> Iterator[str]:
    """Return a name as addresses of mail have it: "zquillfeather", "quillfeatherz"."""
    if len(words) == 2 and len(words[1]) >= _LEAST_AS_ONE - 1 and "".join(words).isalpha():
        yield f"{words[0][0]}{words[1]}"
        yield f"{words[1]}{words[0][0]}"


def _turned(plain: str) -> Iterator[str]:
    """Return a name from its end, as a style may turn it round, and each letter 13 further on."""
    yield plain[::-1]
    yield " ".join(word[::-1] for word in plain.split())
    if plain.isascii():
        yield codecs.encode(plain, "rot13")


def _names_apart(
    words: Iterable[PrivateWord], is_common: Callable[[str], bool]
) -> Iterator[tuple[tuple[str, ...], PrivateWord]]:
    """Return the names of people whose parts are sought also where they stand in fields apart.

    A name that is partly a food's is not: many a table of a book has both words.
    """
    for word in words:
        names = tuple(word.words.split())
        told = all(len(name) >= 3 and name.isalpha() and not is_common(name) for name in
                   (names[0], names[-1]))  # fmt: skip
        if word.alone and word.of_somebody and 2 <= len(names) <= 4 and told:
            yield names, word


def _of_telephone(words: str) -> str:
    """Return a telephone number's figures without what is dialled before it, or ""."""
    figures = words.replace(" ", "")
    if not figures.isdecimal() or len(figures) < _LEAST_FIGURES:
        return ""
    return figures.lstrip("0")[-9:]


def _line(form: str, data: bytes) -> int:
    lines = read_plain(data).splitlines()
    return next((at for at, line in enumerate(lines, 1) if f" {form} " in f" {letters(line)} "), 1)
