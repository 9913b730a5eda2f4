"""Where the words of giving lists stand in what is to be published, however they are written there.

A name is sought with whatever stands between its words, in capitals or small, with and without its
accents, surname first, written as one word, and as older encodings have its letters. What is sought
and why: words.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Iterator, Set
from dataclasses import dataclass, field
from functools import cached_property
from hashlib import blake2b
from typing import Final

from stillroom.core.private.common_names import CommonNames
from stillroom.core.private.hidden_forms import (
    byte_letters,
    every_text,
    is_binary,
    letters,
    read_plain,
    spelt_out,
)
from stillroom.core.private.in_bytes import has_fields, stand_in_fields
from stillroom.core.private.name_forms import (
    LEAST_AS_ONE,
    as_figures,
    forms_of,
    in_other_alphabets,
    of_telephone,
)
from stillroom.core.private.near import stand_near, unmarked
from stillroom.core.private.short_names import (
    TITLES,
    in_address,
    is_addressed,
    is_long_enough,
    is_shortened,
    is_signed,
    mail_boxes,
    slipped,
)
from stillroom.core.private.unpacking import Layers, unpack
from stillroom.core.private.words import PrivateWord, is_whole_name, names_written

LONGEST_SOUGHT: Final = 40_000_000
"""More bytes than this of one file are not read."""
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
        compared = dict.fromkeys((text, False) for text in self._plain)
        for layer in (*self.layers.found, self.layers.points):
            whole = layer.replace(b"\x00", b"")  # letters of two or four bytes, wherever they begin
            binary = layer is self.layers.points or is_binary(whole)
            if binary or len(whole) < len(layer) or not layer.isascii():
                compared[byte_letters(layer), binary] = None
                compared[byte_letters(whole), binary] = None
        return tuple(compared)

    @cached_property
    def _plain(self) -> tuple[str, ...]:
        return tuple(map(letters, self.texts))

    @cached_property
    def _unmarked(self) -> dict[str, str]:
        return {}

    def where(self, *several: str) -> Iterator[str]:
        """Return each text in which all the words of one of several stand.

        It is as it stands, but without the marks over its letters.
        """
        wanted = [frozenset(one.split()) for one in several]
        for text, plain in zip(self.texts, self._plain, strict=True):
            if any(words <= self._words_of[plain] for words in wanted):
                if text not in self._unmarked:
                    self._unmarked[text] = unmarked(text)
                yield self._unmarked[text]

    @cached_property
    def _words_of(self) -> dict[str, frozenset[str]]:
        several = zip(self.compared, self.words, strict=True)
        return {text: words for (text, _), words in several}

    @cached_property
    def words(self) -> tuple[frozenset[str], ...]:
        """The words of each compared text, in the order of these."""
        return tuple(frozenset(text.split()) for text, _ in self.compared)

    @cached_property
    def met(self) -> frozenset[str]:
        """The words of all texts that have gaps between them."""
        several = zip(self.compared, self.words, strict=True)
        return frozenset().union(*(words for (_, binary), words in several if not binary))


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
    `sealed` could not be read in full, `met` are those that were asked about. `earlier` were
    shapeless when the book was last built, perhaps by another version of this program.
    """

    salt: bytes = b""
    shape_key: bytes = b""
    name_key: bytes = b""
    shapeless: set[bytes] = field(default_factory=set)
    nameless: set[bytes] = field(default_factory=set)
    sealed: set[bytes] = field(default_factory=set)
    earlier: set[bytes] = field(default_factory=set)
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
        words = tuple(words)
        self._common = CommonNames(words, is_common)
        for word in words:
            common = is_common(word.words) or tuple(word.words.split()) in self._common.throughout
            if word.alone and not common:
                written = word.written or word.words
                for form in (*forms_of(written), *in_other_alphabets(written)):
                    if form == word.words or not is_common(form):
                        self._know(form, word)
                if figures := of_telephone(word.words):
                    self._figures.setdefault(figures, word)
            elif not common:
                self._know(word.words, word)
        self._own = frozenset(own)
        self._apart = dict(_names_apart(self.known.values(), self._common))
        self._several = dict(_by_surname(self.known.values(), self._common))
        self._begun: dict[str, list[tuple[str, frozenset[str]]]] = {}
        for form in self.known:
            parts = form.split()
            self._begun.setdefault(parts[0], []).append((form, frozenset(parts)))
        alone = {form: word for form, word in self.known.items() if word.alone}
        near = {word: set(forms_of(word.written or word.words)) for word in set(alone.values())}
        plain = [form for form, word in alone.items() if form in near[word]]
        self._glued = [form for form in plain if len(form) >= LEAST_AS_ONE]
        self._alike = {as_figures(form): form for form in plain if form == alone[form].words}
        self._alike_words = {part for form in self._alike for part in form.split()}
        self._alike_lengths = frozenset(map(len, self._alike_words))
        self._surnames: dict[str, list[tuple[str, ...]]] = {}
        for names in self._apart:
            if is_long_enough(names[-1]) and names[-1] not in own:
                self._surnames.setdefault(names[-1], []).append(names)
        self._plain_surnames = frozenset(filter(is_common, self._surnames))

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
        told = ((" ".join(names), False) for names in self._common.throughout)
        return tuple(sorted((*forms, *apart, *short, *figures, *told)))

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
        if not (self.known or self._figures):
            return None
        singles: dict[str, dict[str, PrivateWord]] = {}
        apart: set[tuple[str, ...]] = set()
        for (text, binary), words in zip(held.compared, held.words, strict=True):
            if not binary and (form := self._in_figures(text, words)):
                return self.known[form], 1
            for run in spelt_out(text, words):
                if form := next((one for one in self._glued if one in run), ""):
                    return self.known[form], 1
            apart |= {names for names in self._apart if words.issuperset((names[0], names[-1]))}
            for form in self._found_in(text, words, binary):
                word = self.known[form]
                if not self._common.is_somebody(form, held.where(form)):
                    continue
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
            if any(stand_near(names, text) for text in held.where(f"{names[0]} {names[-1]}")):
                return self._apart[names], 1
        return self._of_several(held) or self._in_fields(held) or self._short_in(held)

    def _of_several(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return whom a file names by a surname of several words, apart or shortened."""
        for names, word in self._several.items():
            given, surname = names
            whole = held.met.issuperset(surname.split())
            first = held.met.issuperset(given.split())
            for text in held.where(surname, given) if whole or first else ():
                apart = whole and first and stand_near(names, text)
                signed = first and is_long_enough(given) and is_signed(names, text)
                if apart or signed or (whole and is_shortened(names, text)):
                    return word, _line(surname if whole else given, held.data)
        return None

    def _in_fields(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return whom a file that is no text names in fields apart."""
        for layer in filter(has_fields, held.layers.found):
            for word in self._apart.values():
                if stand_in_fields(names_written(word.written), layer):
                    return word, 1
        return None

    def _short_in(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return whom a file names by an initial and the surname, or misspelt, and the line."""
        for (text, binary), words in zip(held.compared, held.words, strict=True):
            for names, word in () if binary else self._apart.items():
                if not words.isdisjoint((names[0], names[-1])) and (form := slipped(names, text)):
                    return word, _line(form, held.data)
        for surname, bearers, text in self._surnames_in(held):
            for one in bearers if surname not in self._plain_surnames else ():
                if one[0] not in TITLES and is_shortened(one, text):
                    return self._apart[one], _line(surname, held.data)
        return self._by_first_name(held)

    def _by_first_name(self, held: Held) -> tuple[PrivateWord, int] | None:
        """Return whom a file names by the first name and an initial, or by an address of mail."""
        boxes = set().union(*map(mail_boxes, held.texts))
        for names, word in self._apart.items():
            if names[0] in TITLES or not is_long_enough(names[0]):
                continue
            signed = names[0] in held.met and not self._common.is_common(names[0])
            if signed and any(is_signed(names, text) for text in held.where(names[0])):
                return word, _line(names[0], held.data)
            if names[-1] not in self._own and in_address(names, boxes):
                return word, 1
        return None

    def _surnames_in(self, held: Held) -> Iterator[tuple[str, list[tuple[str, ...]], str]]:
        """Return each surname that stands in a file, who bears it, and each text it may be in."""
        for surname in sorted(self._surnames):
            forms = (surname, f"{surname}s", f"{surname}es")
            if not held.met.isdisjoint(forms):
                yield from ((surname, self._surnames[surname], text) for text in held.where(*forms))

    def doubt(self, held: Held) -> str:
        """Return in what words a file may speak of somebody, "" where it does in none."""
        for surname, names, text in self._surnames_in(held) if self._surnames else ():
            if said := is_addressed(surname, text, plain=surname in self._plain_surnames):
                return _asked(said, self._apart[names[0]], _line(surname, held.data))
        for said, word in self._common.told(held.where):
            return _asked(said, word, _line(letters(said), held.data))
        return ""

    def _found_in(self, text: str, words: Set[str], binary: bool) -> Iterator[str]:
        spaced = f" {text} "
        for begin in words & self._begun.keys():
            for form, parts in self._begun[begin]:
                if parts <= words and f" {form} " in spaced:
                    yield form
        if binary:
            yield from (form for form in self._glued if form in text)

    def _in_figures(self, text: str, words: Set[str]) -> str:
        """Return a form that stands in a text with figures for some of its letters: "M4r1on"."""
        long_enough = (word for word in words if len(word) in self._alike_lengths)
        mixed = (word for word in long_enough if not word.isalpha() and not word.isdecimal())
        if self._alike_words.isdisjoint(map(as_figures, mixed)):
            return ""
        spaced = f" {as_figures(text)} "
        return next((form for sign, form in self._alike.items() if f" {sign} " in spaced), "")

    def _number_in(self, text: str) -> PrivateWord | None:
        if not self._figures:
            return None
        for found in _FIGURES.finditer(text):
            run = found[0].replace(" ", "")
            for figures, word in self._figures.items():
                if run.endswith(figures):
                    return word
        return None


def _names_apart(
    words: Iterable[PrivateWord], common: CommonNames
) -> Iterator[tuple[tuple[str, ...], PrivateWord]]:
    """Return the names of people whose parts are sought also where they stand in fields apart.

    A name of plain words throughout is not: many a table of a book has both words.
    """
    for word in words:
        names = tuple(word.words.split())
        both = (names[0], names[-1])
        told = all(len(name) >= 3 and name.isalpha() for name in both)
        if all(map(common.is_common, both)):
            continue
        if word.alone and word.of_somebody and 2 <= len(names) <= 4 and told:
            yield names, word


def _by_surname(
    words: Iterable[PrivateWord], common: CommonNames
) -> Iterator[tuple[tuple[str, str], PrivateWord]]:
    """Return the first name and the surname of whoever has one of several words: "O'Brien"."""
    for word in words:
        first, *rest = word.written.split() or [""]
        names = (letters(first), letters(" ".join(rest)))
        told = all(len(name) >= 3 and not common.is_common(name) for name in names)
        named = is_whole_name(word.written) and " " in names[1] and len(rest) <= 3
        if word.alone and word.of_somebody and told and named:
            yield names, word


def _asked(said: str, word: PrivateWord, line: int) -> str:
    return f'line {line} says "{said}": somebody of {word.file}:{word.line}?'


def _line(form: str, data: bytes) -> int:
    lines = read_plain(data).splitlines()
    return next((at for at, line in enumerate(lines, 1) if f" {form} " in f" {letters(line)} "), 1)
