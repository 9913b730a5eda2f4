"""The forms in which a name or address of a giving list is sought, each as texts are compared.

As one word, by an initial, letter by letter, without its marks or its vowels, as another address
book or another encoding has it. Where they stand in a text is found in seeking.py.
"""

from __future__ import annotations

import re
import string
import unicodedata
from collections.abc import Iterator, Sequence
from typing import Final

from stillroom.core.private.hidden_forms import byte_letters, letters

_ENCODINGS: Final = ("utf-8", "latin-1", "cp437", "cp850", "cp852", "cp1250", "cp1254",
                     "iso8859_2", "mac_roman", "utf-16-le", "utf-16-be", "utf-7")  # fmt: skip
_ALPHABET: Final = string.ascii_lowercase
_ALPHABETS: Final = (
    *(str.maketrans(_ALPHABET, _ALPHABET[by:] + _ALPHABET[:by]) for by in range(1, 26)),
    str.maketrans(_ALPHABET, _ALPHABET[::-1]),
)
_FIGURES_ALIKE: Final = str.maketrans("oilzeastbg", "0112345789")
"""Figures that are read as the letters they look like: "Qui11", "M4r1on"."""
_ROADS: Final = {
    "avenue": "ave", "close": "cl", "court": "ct", "crescent": "cres", "drive": "dr",
    "gardens": "gdns", "lane": "ln", "road": "rd", "square": "sq", "street": "st",
    "strasse": "str", "terrace": "ter",
}  # fmt: skip
_ROADS.update({short: long for long, short in _ROADS.items()})
_LONGEST_CODE: Final = 9
_GERMAN: Final = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "Ä": "Ae", "Ö": "Oe", "Ü": "Ue"})
_NORTHERN: Final = _GERMAN | str.maketrans({"å": "aa", "Å": "Aa", "ø": "oe", "Ø": "Oe"})
LEAST_AS_ONE: Final = 9
"""A name written as one word, or among other bytes, is told from a common word by its length."""
_LEAST_FIGURES: Final = 7


def forms_of(written: str) -> Iterator[str]:
    """Return each form in which a name or address is sought, compared as all else is.

    >>> list(forms_of("Nell Tarrowby"))  # doctest: +NORMALIZE_WHITESPACE
    ['nell tarrowby', 'nelltarrowby', 'ntarrowby', 'tarrowbyn', 'n e l l t a r r o w b y',
    'nell tarrovvby', 'nll trrwby', 'ybworrat llen', 'llen ybworrat']
    """
    plain = letters(written)
    words = plain.split()
    yield plain
    if 2 <= len(words) <= 4 and len("".join(words)) >= LEAST_AS_ONE:
        yield "".join(words)
        yield from _joined_by_initial(words)
        yield " ".join("".join(words))  # letter by letter, with gaps between
    yield from _by_surname(written)
    yield from _as_scanned(plain)
    if any(sign.isdigit() for sign in plain):
        yield from _of_streets(words)
    if "'" in written or "’" in written:
        yield letters(re.sub("['’]", "", written))
    if len(plain) >= LEAST_AS_ONE and not plain.replace(" ", "").isdecimal():
        yield from _without_vowels(words)
        yield plain[::-1]  # from its end, as a style may turn it round
        yield " ".join(word[::-1] for word in words)
    if written.isascii():
        return
    bare = unicodedata.normalize("NFKD", written).encode("ascii", "ignore")
    yield letters(bare.decode())  # what is no letter with a mark is lost: "Yldrm"
    yield letters(written.translate(_GERMAN))
    yield letters(written.translate(_NORTHERN))
    twice = written
    for _ in range(2):  # read wrongly and saved, and once more
        twice = twice.encode().decode("cp1252", errors="replace")
        yield letters(twice)
    for encoding in _ENCODINGS:
        encoded = written.encode(encoding, errors="replace")
        yield byte_letters(encoded)
        yield byte_letters(encoded.replace(b"\x00", b""))
        yield letters(encoded.decode("latin-1"))
        yield letters(encoded.decode("cp1252", errors="replace"))


def _joined_by_initial(words: Sequence[str]) -> Iterator[str]:
    """Return a name as addresses of mail have it: "zquillfeather", "quillfeatherz"."""
    if len(words) == 2 and len(words[1]) >= LEAST_AS_ONE - 1 and "".join(words).isalpha():
        yield f"{words[0][0]}{words[1]}"
        yield f"{words[1]}{words[0][0]}"


def _by_surname(written: str) -> Iterator[str]:
    """Return a name of more than two words with its surname first, and its surname as one word.

    >>> list(_by_surname("Joris van der Berg"))[:2]
    ['van der berg joris', 'joris vanderberg']
    >>> list(_by_surname("Sinéad O'Brien")), list(_by_surname("Nell Tarrowby"))
    (['o brien sinead', 'sinead obrien'], [])
    """
    parts = list(filter(None, map(letters, written.replace(",", " ").split())))
    several = len(parts) > 2 or any(" " in part for part in parts)
    if several and 2 <= len(parts) <= 4 and not any(map(str.isdigit, written)):
        for at in range(1, len(parts)):
            given, surname = parts[:at], parts[at:]
            yield " ".join((*surname, *given))
            yield " ".join((*given, "".join("".join(surname).split())))


def _as_scanned(plain: str) -> Iterator[str]:
    """Return a name as a machine reads it from paper, which takes letters for others."""
    for seen, read in (("w", "vv"), ("m", "rn"), ("rn", "m")):
        if seen in plain:
            yield plain.replace(seen, read)


def _of_streets(words: Sequence[str]) -> Iterator[str]:
    """Return an address as other address books have it.

    >>> list(_of_streets("3 tanners row".split())), list(_of_streets(["qx51", "9zz"]))
    (['3 tanner s row'], ['qx519zz'])
    >>> list(_of_streets("12 mill road".split()))
    ['12 mill rd']
    """
    joined = "".join(words)
    if len(words) == 2 and len(joined) <= _LONGEST_CODE and not joined.isdigit():
        yield joined
    apart = [f"{word[:-1]} s" if len(word) > 4 and word[-1] == "s" else word for word in words]
    short = [_ROADS.get(word, word) for word in words]
    yield from (" ".join(form) for form in (apart, short) if form != list(words))


def _without_vowels(words: Sequence[str]) -> Iterator[str]:
    bare = [re.sub("[aeiou]", "", word) for word in words]
    if len(words) == 2 and all(len(word) >= 3 for word in bare):
        yield " ".join(bare)


def in_other_alphabets(written: str) -> Iterator[str]:
    """Return a name in other letters throughout, as a riddle has it.

    Each letter so many further on, round the alphabet, or as many from the alphabet's end.

    >>> "aryy gneebjol" in in_other_alphabets("Nell Tarrowby")
    True
    """
    plain = letters(written)
    if plain.isascii() and len(plain) >= LEAST_AS_ONE and " " in plain:
        yield from (plain.translate(table) for table in _ALPHABETS)


def as_figures(plain: str) -> str:
    """Return a compared text with each letter for which figures stand as that figure.

    >>> as_figures("m4r10n h3ddl3wick") == as_figures("marion heddlewick")
    True
    """
    return plain.translate(_FIGURES_ALIKE)


def of_telephone(words: str) -> str:
    """Return a telephone number's figures without what is dialled before it, or ""."""
    figures = words.replace(" ", "")
    if not figures.isdecimal() or len(figures) < _LEAST_FIGURES:
        return ""
    return figures.lstrip("0")[-9:]
