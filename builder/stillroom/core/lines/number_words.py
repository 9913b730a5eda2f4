"""Numbers in words, in English and in the other languages that a book may be written in.

"half a", "a dozen", "one and a half"; "ein halbes", "dos y medio", "mezza". Each is exact. Leaves
out figures: line_numbers.py.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache, lru_cache

from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_WORD = late_regex(r"[^\W\d_]+")
_HALF_A = late_regex(r"(?:half|quarter|third)(?:\s+of)?\s+(?:a|an)\s+(?=[a-z0-9])", re.IGNORECASE)
_PART = late_regex(
    r"(?:(?P<count>one|two|three|five|seven|an?)[\s-])(?P<part>halves|half|thirds?|quarters?|fourths?|eighths?|tenths?)\b"
    r"(?:\s+of)?(?:\s+(?:a|an))?",
    re.IGNORECASE,
)
_AND_PART = late_regex(
    r"\s+and\s+(?:(?P<count>one|two|three|five|seven|an?)[\s-])(?P<part>half|thirds?|quarters?|fourths?|eighths?)\b",
    re.IGNORECASE,
)
_COUPLE = late_regex(r"(?:a\s+)?couple(?:\s+of)?\b", re.IGNORECASE)
_TENS = late_regex(r"-(one|two|three|four|five|six|seven|eight|nine)\b", re.IGNORECASE)
_DOZEN = late_regex(r"\s*(dozen|doz|score|hundred|thousand)\b\.?(?:\s+of\b)?", re.IGNORECASE)
_MORE = late_regex(r"\s+(?:(?:and|und|y|e|och|en)\s+)?(?=[^\W\d_])", re.IGNORECASE)
_TEN = 10
_HUNDRED = 100
# parts that are counted: "one fourth"; alone "fourth" is no number of anything
_PARTS = {
    "halves": Fraction(1, 2),
    "half": Fraction(1, 2),
    "third": Fraction(1, 3),
    "quarter": Fraction(1, 4),
    "fourth": Fraction(1, 4),
    "eighth": Fraction(1, 8),
    "tenth": Fraction(1, 10),
}


@cache
def _words() -> dict[str, Fraction]:
    return {
        word: Fraction(str(value)) for word, value in read_data("line_words.yml")["numbers"].items()
    }


@cache
def _words_of(language: str, table: str) -> dict[str, Fraction]:
    own = read_data("line_words.yml")[table].get(language, {})
    return {word: Fraction(str(value)) for word, value in own.items()}


@cache
def languages_with_numbers() -> frozenset[str]:
    """Return the languages besides English whose numbers in words are known."""
    return frozenset(read_data("line_words.yml")["numbers_elsewhere"])


@cache
def whole_numbers_elsewhere() -> dict[str, int]:
    """Return the words of whole numbers of all other languages, in small letters.

    >>> whole_numbers_elsewhere()["zwei"], "halbe" in whole_numbers_elsewhere()
    (2, False)
    """
    tables = read_data("line_words.yml")["numbers_elsewhere"].values()
    counts = ((word, count) for table in tables for word, count in table.items())
    return {word.lower(): count for word, count in counts if isinstance(count, int)}


# words that begin an amount in another language, and something else in English
_ENGLISH_TOO = frozenset(
    {
        "a",
        "elf",
        "half",
        "once",
        "six",
        "mark",
        "sap",
        "rasp",
        "die",
        "en",
        "sex",
        "halva",
        "quince",
        "to",
        "fire",
        "et",
        "um",
        "o",
        "os",
        "as",
        "den",
        "det",
        "ni",
        "ei",
    }
)


@cache
def _beginnings() -> dict[str, frozenset[str]]:
    """Return the languages in which a word may begin an amount: a number, or a part of a food."""
    data = read_data("line_words.yml")
    found: dict[str, set[str]] = {}
    for language, taken in data["taken_elsewhere"].items():
        tables = ("numbers_elsewhere", "parts_elsewhere", "multiples_elsewhere")
        counts = [word for table in tables for word in data[table].get(language, {})]
        for words in (*counts, *taken["parts"], *taken["how"]):
            found.setdefault(words.lower().split()[0], set()).add(language)
    return {word: frozenset(found[word]) for word in set(found) - _ENGLISH_TOO}


def languages_that_begin(text: str, at: int) -> frozenset[str]:
    """Return the languages besides English in which the word at `at` may begin an amount.

    >>> languages_that_begin("mezzo litro di acqua", 0), languages_that_begin("salt", 0)
    (frozenset({'it'}), frozenset())
    """
    word = _WORD.match(text, at)
    said = word[0].lower() if word else ""
    return _beginnings().get(said) or _languages_of_hundreds(said)


def begins_number_in(text: str, at: int, language: str) -> bool:
    """Whether the word at `at` is a number in words of one language, or counts parts of one.

    >>> begins_number_in("sei uova", 0, "it"), begins_number_in("sei uova", 0, "de")
    (True, False)
    """
    word = _WORD.match(text, at)
    said = word[0].lower() if word else ""
    tables = ("numbers_elsewhere", "parts_elsewhere", "multiples_elsewhere")
    if any(said in _words_of(language, table) for table in tables):
        return True
    return bool(said) and _glued(said, language) is not None


@lru_cache(maxsize=4096)
def _languages_of_hundreds(word: str) -> frozenset[str]:
    tongues = read_data("line_words.yml")["hundreds_elsewhere"]
    return frozenset(one for one, said in tongues.items() if _glued(word, one))


@cache
def _parts_of(language: str) -> re.Pattern[str] | None:
    """Return the pattern of a part elsewhere: "media", "ein halbes", "tres cuartos de"."""
    parts = _words_of(language, "parts_elsewhere")
    if not parts:
        return None
    counts = "|".join(_words_of(language, "numbers_elsewhere"))
    either = "|".join(sorted(parts, key=len, reverse=True))
    return re.compile(
        rf"(?:(?P<count>{counts})[\s-]+)?(?P<part>{either})(?![\w])-?"
        rf"(?:\s+d(?:e|i)\b(?:\s+un[aeo]?\b)?|\s+d['’](?:une?\b)?)?",
        re.IGNORECASE,
    )


@cache
def _and_part_of(language: str) -> re.Pattern[str] | None:
    parts = _words_of(language, "parts_elsewhere")
    joined = read_data("line_words.yml")["and_elsewhere"].get(language)
    if not parts or not joined:
        return None
    either = "|".join(sorted(parts, key=len, reverse=True))
    return re.compile(
        rf"\s+{joined}\s+(?:(?:une?|een|ein|eine)\s+)?(?P<part>{either})(?![\w])", re.IGNORECASE
    )


def _part_value(part: str) -> Fraction:
    bare = part.lower()
    return _PARTS.get(bare) or _PARTS[bare.removesuffix("s")]


def read_and_part(text: str, at: int, language: str) -> tuple[Fraction, int] | None:
    """Read the part that is said after a number or a measure: "and a half", "et demi"."""
    if text[at : at + 1] not in (" ", "\u00a0", "\t"):
        return None
    spoken = _AND_PART.match(text, at)
    if spoken:
        return _words()[spoken["count"].lower()] * _part_value(spoken["part"]), spoken.end()
    pattern = _and_part_of(language)
    elsewhere = pattern.match(text, at) if pattern else None
    if elsewhere is None:
        return None
    return _words_of(language, "parts_elsewhere")[elsewhere["part"].lower()], elsewhere.end()


_HALVES = late_regex(
    r"\s+(?:halb(?:e[rsn]?)?|demie?|mezz[oa]|medi[oa]|halve)\b(?![\s-]+(?:und|et|e|y|en)\b)[\s-]*",
    re.IGNORECASE,
)


def read_half_behind(text: str, at: int, language: str) -> tuple[Fraction, int] | None:
    """Read the half that "1" counts in other languages: "1 halbe Zitrone", "1 demi citron".

    >>> read_half_behind("1 halber TL Salz", 1, "de"), read_half_behind("1 half-pint jar", 1, "en")
    ((Fraction(1, 2), 9), None)
    """
    found = _HALVES.match(text, at) if language != "en" else None
    return (Fraction(1, 2), found.end()) if found else None


def read_number_words(text: str, at: int, language: str = "en") -> tuple[Fraction, int] | None:
    """Read a number in words that begins at `at`, with where it ends; None where none does.

    >>> read_number_words("half a dozen eggs", 0), read_number_words("ein halbes Kilo", 0, "de")[0]
    ((Fraction(6, 1), 12), Fraction(1, 2))
    """
    couple = _COUPLE.match(text, at)
    if couple:
        return read_dozen(text, couple.end(), Fraction(2)) or (Fraction(2), couple.end())
    part = _PART.match(text, at)
    if part:
        return _words()[part["count"].lower()] * _part_value(part["part"]), part.end()
    word = _WORD.match(text, at)
    if word is None:
        return read_dozen(text, at, Fraction(1))
    return _elsewhere(text, at, word, language) or _english(text, at, word)


def _elsewhere(
    text: str, at: int, word: re.Match[str], language: str
) -> tuple[Fraction, int] | None:
    pattern = _parts_of(language)
    part = pattern.match(text, at) if pattern else None
    if part:
        count = _words_of(language, "numbers_elsewhere").get((part["count"] or "").lower())
        value = (count or Fraction(1)) * _words_of(language, "parts_elsewhere")[
            part["part"].lower()
        ]
        return read_dozen(text, part.end("part"), value, language) or (value, part.end())
    whole = _words_of(language, "numbers_elsewhere").get(word[0].lower())
    if whole is None:
        whole = _glued(word[0].lower(), language)
    if whole is None:
        return read_dozen(text, at, Fraction(1), language)
    if ones := _ones_apart(text, word.end(), whole, language):
        return whole + ones[0], ones[1]
    if many := read_dozen(text, word.end(), whole, language):
        return many
    if whole >= _HUNDRED and whole % _HUNDRED == 0:
        return _with_more(text, word.end(), whole, language)
    more = read_and_part(text, word.end(), language)
    return (whole + more[0], more[1]) if more else (whole, word.end())


def _glued(word: str, language: str) -> Fraction | None:
    """Return 250 of "zweihundertfünfzig" or "duecentocinquanta"; None of other words."""
    numbers = _words_of(language, "numbers_elsewhere")
    for hundred in read_data("line_words.yml")["hundreds_elsewhere"].get(language, ()):
        before, found, after = word.partition(hundred)
        after = after.removeprefix("und")
        if found and (not before or before in numbers) and (not after or after in numbers):
            return numbers.get(before, Fraction(1)) * _HUNDRED + numbers.get(after, Fraction(0))
    return _tens_glued(word, language)


def _tens_glued(word: str, language: str) -> Fraction | None:
    """Return 32 of "zweiunddreißig", "trentadue" or "tjugofem"; None of other words."""
    how = read_data("line_words.yml")["tens_elsewhere"].get(language, {})
    if "glued" not in how or len(word) < _SHORTEST_GLUED:
        return None
    ones, tens, between = _ones_of(language), _tens_of(language), how["glued"]
    if how.get("ones_first"):
        for said in (between, f"ë{between[1:]}") if language == "nl" else (between,):
            for ten in tens:
                first = word.removesuffix(ten).removesuffix(said)
                if word == f"{first}{said}{ten}" and first in ones:
                    return ones[first] + tens[ten]
        return None
    for ten, value in tens.items():
        for start in (ten, ten[:-1]):  # "trentuno"
            if word.startswith(start) and word[len(start) :] in ones:
                return value + ones[word[len(start) :]]
    return None


_SHORTEST_GLUED = 7


@cache
def _ones_of(language: str) -> dict[str, Fraction]:
    words = _words_of(language, "numbers_elsewhere").items()
    return {word: value for word, value in words if value.denominator == 1 and 0 < value < _TEN}


@cache
def _tens_of(language: str) -> dict[str, Fraction]:
    words = _words_of(language, "numbers_elsewhere").items()
    return {word: value for word, value in words if value % _TEN == 0 and _TEN < value < _HUNDRED}


def _ones_apart(text: str, at: int, tens: Fraction, language: str) -> tuple[Fraction, int] | None:
    """Read the ones behind tens: "trente-deux", "dix-huit", "treinta y dos"."""
    joined = read_data("line_words.yml")["tens_elsewhere"].get(language, {}).get("apart")
    if not joined or tens % _TEN or not _TEN <= tens < _HUNDRED:
        return None
    between = re.compile(joined, re.IGNORECASE).match(text, at)
    word = _WORD.match(text, between.end()) if between else None
    value = _words_of(language, "numbers_elsewhere").get(word[0].lower()) if word else None
    if word is None or value is None or value.denominator != 1:
        return None
    most = 2 * _TEN if tens in (60, 80) and language == "fr" else _TEN  # "soixante-quinze"
    least = 7 if tens == _TEN else 1
    return (value, word.end()) if least <= value < most else None


def _with_more(text: str, at: int, value: Fraction, language: str) -> tuple[Fraction, int]:
    """Add what is said behind hundreds: "two hundred and fifty", "deux cent cinquante"."""
    joined = _MORE.match(text, at)
    word = _WORD.match(text, joined.end()) if joined else None
    numbers = _words() if language == "en" else _words_of(language, "numbers_elsewhere")
    more = numbers.get(word[0].lower(), Fraction(0)) if word else Fraction(0)
    if word is None or not 1 < more < _HUNDRED:
        return value, at
    ones = _TENS.match(text, word.end()) if language == "en" else None
    if ones and more % 10 == 0:
        return value + more + _words()[ones[1].lower()], ones.end()
    return value + more, word.end()


@cache
def _multiples_of(language: str) -> re.Pattern[str] | None:
    """Return the pattern of "une dizaine de", "mezza dozzina di", "zwei Dutzend"."""
    many = _words_of(language, "multiples_elsewhere")
    if not many:
        return None
    return re.compile(
        rf"[\s-]*(?P<many>{'|'.join(many)})\b(?:\s+(?:de|di|van)\b|\s+d['’])?", re.IGNORECASE
    )


def _english(text: str, at: int, word: re.Match[str]) -> tuple[Fraction, int] | None:
    if word[0].lower() not in _words():
        return read_dozen(text, at, Fraction(1))
    half = _HALF_A.match(text, at)
    value = _words()[word[0].lower()]
    tens = _TENS.match(text, word.end())
    if tens and value in range(20, 100, 10):
        return value + _words()[tens[1].lower()], tens.end()
    end = half.end() if half else word.end()
    if half:
        end = len(text[:end].rstrip())
    mixed = _AND_PART.match(text, end)
    if mixed and value >= 1:
        part = _words()[mixed["count"].lower()] * _part_value(mixed["part"])
        return value + part, mixed.end()
    return read_dozen(text, end, value) or (value, end)


def read_dozen(
    text: str, at: int, count: Fraction, language: str = "en"
) -> tuple[Fraction, int] | None:
    """Read "dozen" or "score", "douzaine de" or "Dutzend", as so many times the count."""
    found = _DOZEN.match(text, at)
    if found:
        value = count * read_data("line_words.yml")["multiples"][found[1].lower()]
        if found[1].lower() in ("hundred", "thousand"):
            return _with_more(text, found.end(), value, "en")
        return value, found.end()
    pattern = _multiples_of(language)
    elsewhere = pattern.match(text, at) if pattern else None
    if elsewhere is None:
        return None
    many = _words_of(language, "multiples_elsewhere")[elsewhere["many"].lower()]
    if many >= _HUNDRED:
        return _with_more(text, elsewhere.end(), count * many, language)
    return count * many, elsewhere.end()
