"""One measure as it stands in a line: a number with its unit or noun, and its characters.

"about 4-5 heaped tbsp", "14-oz", "2 large sprigs", "a pinch". Leaves out pairs, sums and packs of
measures: line_amounts.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import (
    System,
    counted_nouns,
    nouns_before,
    offered_words,
    unit_words,
)
from stillroom.core.lines.number_words import languages_that_begin, read_and_part
from stillroom.core.lines.numbers import Marks, Range, read_number, read_range
from stillroom.core.lines.spoons import end_before_drink, is_one_spoon
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

GLUE = late_regex(r",?\s*-?\s*")
# "1 cup or more", "1+ tablespoon"
OR_MORE = late_regex(r"(?i:\s+or\s+(?:more|so|thereabouts|less)\b)|(?<=\d)\+(?=\s[A-Za-z])")


@dataclass(frozen=True)
class Measure:
    """One measure: its amount, its characters, and words such as "heaped" or "large"."""

    amount: Amount
    start: int
    end: int
    fullness: str = ""


_WORDS = late_regex(
    r"[Cc]\.à\.?[CcSs]\b\.?"  # "1 c.à.s. de miel"
    r"|[Ff][Ll]\.[Oo][Zz]s?\b\.?"  # "5 fl.oz brandy"
    r"|[A-Za-zÀ-ſ]+(?:-[A-Za-zÀ-ſ]+)*\.?(?:[ \t]+[A-Za-zÀ-ſ]+\.?){0,2}"
)
_GAP = late_regex(r"[ \t]+")
_BEHIND_IT = late_regex(r"\s*,\s*|\s+|$")
_TOKEN = late_regex(r"[^ \t]+")


def _look_up(text: str, at: int, table: Mapping[str, Any], most: int = 3) -> tuple[str, int] | None:
    """Return the longest entry of a table that stands at `at`, and where it ends.

    As written first, since "T" and "t" are two spoons; then without regard to capitals. A dot may
    follow a word, a letter may not.
    """
    found = _WORDS.match(text, at)
    if found is None:
        return None
    ends = [word.end() for word in _TOKEN.finditer(found[0])]
    for size in range(min(most, len(ends)), 0, -1):
        end = ends[size - 1]
        written = found[0][:end]
        if size > 1:
            written = _GAP.sub(" ", written)
        for form in _forms(written):
            if form in table:
                return form, at + end
            lower = form.lower()
            if lower in table:
                return lower, at + end
    return None


def _forms(written: str) -> Iterator[str]:
    """Yield a word as written, without its dots, without its hyphen or its blank."""
    yield written
    if "." in written:
        yield written.rstrip(".")
        yield written.replace(".", "")
    if "-" in written or " " in written:
        yield from _joined(written)


def _joined(written: str) -> tuple[str, ...]:
    """Return a word without its hyphen or blank: "table-spoonful", "wine glass", "Hand voll"."""
    pieces = re.split(r"[ -]", written)
    if len(pieces) != 2 or min(len(piece) for piece in pieces) < 3:
        return ()
    return ("".join(pieces),)


@cache
def _qualifiers() -> dict[str, bool]:
    data = read_data("line_words.yml")
    return dict.fromkeys([*data["fullness"], *data["sizes"]], True)


@dataclass(frozen=True)
class _Words:
    """Words such as "heaped" or "large" before a unit or noun, and where they end."""

    said: str
    end: int


def read_qualifier(text: str, at: int) -> _Words | None:
    """Read "heaped", "large, thick" and the like before a unit or noun; None where none stand."""
    begin = at
    while True:
        word = _look_up(text, at, _qualifiers(), most=2)
        if word is None:
            break
        gap = _BEHIND_IT.match(text, word[1])
        if gap is None:
            break
        at = gap.end()
    return _Words(text[begin:at].strip(" ,"), at) if at > begin else None


@cache
def read_about() -> re.Pattern[str]:
    """Return the pattern of "about", "approx." and the like before a number."""
    ordered = sorted(read_data("line_words.yml")["about"], key=len, reverse=True)
    words = "|".join(re.escape(word) for word in ordered)
    return late_regex(rf"(?:(?:{words})(?![A-Za-z])\s*)+(?=[0-9½⅓⅔¼¾⅛a-z])", re.IGNORECASE)


# other words with a unit before their hyphen are no measure: "T-bone steaks", "cup-shaped leaves"
_INCH_THICK = late_regex(
    r"(inch|inches|in|cm|mm)(?=-(?:thick|long|wide|square|deep|high|diameter|round|size|sized|thin)\b)",
    re.IGNORECASE,
)


_FOR_EXAMPLE = late_regex(r"\.?\s?ex\b")


def read_unit(text: str, at: int, system: System) -> tuple[str, int] | None:
    """Read a unit word that begins at `at`, as (unit id, end); None where none does."""
    words = unit_words(system)
    found = _look_up(text, at, words)
    if found is None:  # "5-pound", "28-oz", "1/2-inch-thick"
        head = _INCH_THICK.match(text, at)
        return (words[head[1].lower()], head.end(1)) if head else None
    if (end := end_before_drink(text, at, found[1])) and not (
        found := _look_up(text[:end], at, words)
    ):
        return None
    if found[0] == "t" and _FOR_EXAMPLE.match(text, found[1]):
        return None  # Swedish "t.ex."
    if found[0] in ("T", "t") and system != "us":
        raise Unreadable(
            f'"{found[0]}" could be a tablespoon or a teaspoon.', 'Write "tbsp" or "tsp".'
        )
    return words[found[0]], found[1]


def read_noun(text: str, at: int) -> tuple[str, int] | None:
    """Read a counted noun that begins at `at`, as (its singular, end)."""
    found = _look_up(text, at, counted_nouns())
    if found and (end := end_before_drink(text, at, found[1])):
        found = _look_up(text[:end], at, counted_nouns()) or found
    only = nouns_before().get(found[0]) if found else None
    if found is None or (only and not only.match(text, found[1])):
        return None
    return counted_nouns()[found[0]][0], found[1]


def read_measure(text: str, at: int, system: System, marks: Marks) -> Measure | None:
    """Read one measure: "about 4-5 heaped tbsp", "14-oz", "2 large sprigs", "a pinch"."""
    start = at
    about = read_about().match(text, at)
    at = about.end() if about else at
    before = read_qualifier(text, at)
    number = read_range(text, at, marks)
    if number is None and before:
        number = read_range(text, before.end, marks)
        if number is None:  # "medio litro" is half of one in Spanish, no litre of a middle size
            one = read_noun(text, before.end) or read_unit(text, before.end, system)
            if one is None or languages_that_begin(text, at):
                return None
            number = Range(Fraction(1), Fraction(1), before.end, before.end)
    elif number is None:
        noun = read_noun(text, at)
        counted = noun and not _is_the_food(text, at, noun) and counts_it(text, at, noun[1])
        if not counted and not _is_one_of(text, at, noun, system):
            return None
        number = Range(Fraction(1), Fraction(1), at, at)
    lead = before.said if before and before.end <= number.start else ""
    found = _with_unit(text, start, number, bool(about), lead, system)
    return _with_behind(text, found, number, marks)


def _is_the_food(text: str, at: int, noun: tuple[str, int]) -> bool:
    """Whether a noun at the head, with no number before it, is the food: "cloves", "stock cube"."""
    follows = re.match(r"[A-Za-zÀ-ÿ(]", text[noun[1] :].strip())
    word = text[at : noun[1]].lower()
    several = word == counted_nouns()[noun[0]][1].lower() != noun[0].lower()  # not one, how many?
    return not follows or several or word in _NEVER_BARE


_OF = late_regex(
    r"\s+(?:of\s+(?!your|the|a\b)|d[ei]\s|d['’]|van\s)(?=\s*[A-Za-zÀ-ÿ])", re.IGNORECASE
)


def _is_one_of(text: str, at: int, noun: tuple[str, int] | None, system: System) -> bool:
    """Whether a vessel or a unit begins the line as one of it: "bottle of vodka", "cup of tea"."""
    if noun:
        return text[at : noun[1]].lower() in _ONE_OF and bool(_OF.match(text, noun[1]))
    if is_one_spoon(text, at):
        return True
    unit = None if text[at : at + 2] in ("T ", "t ") else read_unit(text, at, system)
    return unit is not None and unit[1] - at > 2 and bool(_OF.match(text, unit[1]))


_ONE_OF = frozenset(
    {"stick", "bottle", "jar", "can", "tin", "glass", "bag", "pack", "box", "pot", "cube", "ball"}
    | {"square", "block", "log", "wheel"}
)
# "Loaf of", "head of" and the like begin an amount; these as often begin a food's own name
_NEVER_BARE = frozenset(
    {
        "star",
        "stick",
        "part",
        "round",
        "pot",
        "berry",
        "flower",
        "bean",
        "beans",
        "needle",
        "stem",
        "rack",
    }
    | {
        "cube",
        "log",
        "ball",
        "square",
        "wheel",
        "bead",
        "length",
        "glass",
        "box",
        "tray",
        "cob",
        "ear",
    }
    | {
        "pack",
        "bag",
        "jar",
        "bottle",
        "can",
        "tin",
        "leaf",
        "leaves",
        "flowers",
        "berries",
        "cloves",
        "block",
    }
)


def _with_unit(
    text: str, start: int, number: Range, about: bool, lead: str, system: System
) -> Measure:
    amount = Amount(number.low, number.high, about=about)
    more = OR_MORE.match(text, number.end)
    said = more[0].strip().replace("+", "or more") if more else ""
    lead = ", ".join(part for part in (lead, said) if part)
    end = more.end() if more else number.end
    glue = GLUE.match(text, end)
    at = glue.end() if glue else end
    unit = read_unit(text, at, system)
    of = _OF_A.match(text, end) if unit is None else None
    if of:  # "3/4 of a cup", "1/8 de litre", "2/3 de taza"
        unit = read_unit(text, of.end(), system)
        noun = read_noun(text, of.end()) if unit is None and amount.high < 1 else None
        if noun and counts_it(text, of.end(), noun[1]):
            return Measure(replace(amount, noun=noun[0]), start, noun[1], lead)
    if unit:
        return Measure(replace(amount, unit=unit[0]), start, unit[1], lead)
    between = read_qualifier(text, at)
    after = between.end if between else at
    unit = read_unit(text, after, system) if between else None
    words = " ".join(part for part in (lead, between.said if between else "") if part)
    if unit and between:
        return Measure(replace(amount, unit=unit[0]), start, unit[1], words)
    noun = read_noun(text, after)
    if noun and counts_it(text, after, noun[1]):
        return Measure(replace(amount, noun=noun[0]), start, noun[1], words)
    glued = number.end > number.start and text[number.end - 1 : number.end + 1].isalnum()
    glued = glued and text[number.end : number.end + 1].isalpha()
    if glued and not re.match(r"(?:[x×]\s?(?=[\d½¼¾])|(?:x|st|nd|rd|th|er)\b)", text[number.end :]):
        word = re.match(r"[^\s,()]+", text[number.end :])
        written = word[0] if word else ""
        mend = did_you_mean(written, offered_words(system)) or 'Write "g", "ml", "tsp" or "cup".'
        raise Unreadable(f'"{written}" is not a unit.', mend)
    return Measure(amount, start, end, lead)


_OF_A = late_regex(
    r"\s+(?:of\s+(?:an?\s+)?|d[ei]\s+(?:un[aeo]?\s+)?|d['’]\s?(?:une?\s+)?|van\s+(?:een\s+)?)",
    re.IGNORECASE,
)
_PART_OF_IT = late_regex(
    r"\s+(?:and\s+)?(?P<part>[½¼¾⅓⅔⅛]|[1-7]/[2-8])(?=\s+(?:of(?!\s+an?\b)|de|di)\s|\s+d['’]|\s*(?:,|$))",
    re.IGNORECASE,
)
_GRAMS_OF_IT = late_regex(r"\s+(?P<grams>[1-9]\d\d)(?=\s+(?:of|de|di)\s|\s+d['’])", re.IGNORECASE)
_OF_FOOD = late_regex(r"\s+(?:d[ei]l?\s|d['’]|dell[ao'’])", re.IGNORECASE)


def _with_behind(text: str, found: Measure, number: Range, marks: Marks) -> Measure:
    """Add what is said behind a unit or a noun: "a pint and a half", "1 kg 500 de", "colmada"."""
    own = found.amount
    if not own.unit and not own.noun:
        return found
    if number.low == number.high and number.low.denominator == 1:
        more = read_and_part(text, found.end, marks.language) or _bare_part(text, found, marks)
        if more:
            whole = own.low + more[0]
            return replace(found, amount=replace(own, low=whole, high=whole), end=more[1])
    behind = _look_up(text, found.end + 1, _behind(), most=1) if marks.language != "en" else None
    if behind and _OF_FOOD.match(text, behind[1]):
        said = " ".join(part for part in (found.fullness, behind[0]) if part)
        return replace(found, end=behind[1], fullness=said)
    return found


def _bare_part(text: str, found: Measure, marks: Marks) -> tuple[Fraction, int] | None:
    """Read "a cup and 1/2 of", "4 litres 1/2 d'eau", "1 kg 500 de cassis": the rest has no unit."""
    part = _PART_OF_IT.match(text, found.end) if found.amount.unit else None
    number = read_number(text, part.start("part"), marks) if part else None
    if number:
        return number
    grams = _GRAMS_OF_IT.match(text, found.end) if found.amount.unit in ("kg", "l") else None
    return (Fraction(int(grams["grams"]), 1000), grams.end()) if grams else None


@cache
def _behind() -> dict[str, bool]:
    return dict.fromkeys(read_data("line_words.yml")["fullness_behind"], True)


def counts_it(text: str, at: int, end: int) -> bool:
    """Whether a noun after a number is counted, and not the food: "2 bean sprouts"."""
    if text[end : end + 1] == "-":  # "1 packet-trimmed brisket"
        return False
    if text[at - 1 : at] == "-" and text[at:end].lower() in ("square", "round"):
        return False  # "14 ½-inch-square sticks"
    follows = re.match(r"\s+([A-Za-zÀ-ÿ]+)", text[end:])
    pair = f"{text[at:end]} {follows[1]}".lower() if follows else ""
    joined = re.match(r"\s+(?:or|and)\s+(?!two|three|so\b|more|less|[0-9])", text[end:])
    return pair not in _FOOD_PAIRS and not joined


_FOOD_PAIRS = frozenset(
    {
        "bean sprouts",
        "bouquet garni",
        "star anise",
        "bulb fennel",
        "leaf lettuce",
        "leaf spinach",
        "berry fruit",
        "wafer sheets",
        "wafer sheet",
        "wafer papers",
        "wafer paper",
    }
    | {"pak choi", "pak choy", "pak soi", "pot roast", "pot roasts", "wafer biscuits"}
    | {"fillet steak", "fillet steaks", "rib steak", "rib steaks", "rib chop", "rib chops"}
    | {"round steaks", "cube steaks", "filet mignon", "filet mignons", "filets mignons"}
    | {"rib roasts", "stick blender", "bottle gourd", "bottle gourds", "ball chilli"}
    | {"cube steak", "flower water", "head lettuce", "box grater", "stem ginger", "pot barley"}
    | {
        "round steak",
        "rib roast",
        "rib eye",
        "rack ribs",
        "berry jam",
        "ball chillies",
        "leaf gelatine",
    }
    - {"bulb fennel", "head lettuce", "leaf gelatine"}
)
