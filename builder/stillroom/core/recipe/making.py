"""What one batch makes, in the words of cooks: "900 ml", "24 biscuits", "6 jars of 200 ml".

Every word is used or asked about: a size that stays among the words would be lost to scaling and
bottling. Leaves out amounts themselves: line_sizes.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache
from typing import Final, TypeGuard

from stillroom.core.amounts.quantities import Amount, show_number
from stillroom.core.amounts.units import System, convert, counted_nouns, size_of
from stillroom.core.lines.measures import read_about
from stillroom.core.lines.number_words import whole_numbers_elsewhere
from stillroom.core.lines.pairs import compare
from stillroom.core.lines.sizes import read_first
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_HOW: Final = 'Write "900 ml", "24 biscuits", "6 jars of 200 ml" or so.'
_BEFORE: Final = late_regex(
    r"(?:(?:it|(?:this|the)(?: recipe| batch| quantity| amount| mixture)?)(?: will| should)? )?"
    r"(?:makes?|yields?|gives?|fills?|produces?|enough for|for|für|ergibt|pour|para|per|voor)"
    r"[: ]\s*",
    re.IGNORECASE,
)
_SERVES: Final = late_regex(r"(?:serves|feeds|enough for|for)[: ]\s*(.+)", re.IGNORECASE)
_PEOPLE: Final = late_regex(r"\s*(?:people|persons|portions|servings)?\s*$", re.IGNORECASE)
_CIRCA: Final = late_regex(r"\s+(?:circa|ca\.?|environ|aprox\.?|ongeveer)\s*$", re.IGNORECASE)
_NEARLY: Final = late_regex(
    r"(?:knappt|drygt|knapp|gut|gute|scant|a scant|m[aá]s o menos|poco m[aá]s de|un po' pi[uù] di"
    r"|ruim|bijna),?\s+",
    re.IGNORECASE,
)
_AT_LEAST: Final = late_regex(r"(?:up to|at least|max(?:imum|\.)|min(?:imum|\.))\s", re.IGNORECASE)
_NUMBERS: Final = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12,
}  # fmt: skip
_WORDS: Final = frozenset({"once", "elf", "cent", "a"})
_DOZEN: Final = late_regex(
    r"(?:(?P<many>half a|a|one|two|three|four|\d{1,6})"
    r"(?:\s*(?:-|–|to|or)\s*(?P<most>\d{1,6}))?\s+)?"
    r"(?:dozen\b|doz\b\.?)(?:\s+of\b)?",
    re.IGNORECASE,
)
_DOZENS: Final = {"half a": 6, "a": 12, "one": 12, "": 12, "two": 24, "three": 36, "four": 48}
# "of 300 ml", "à 300 ml", "(300 ml)", ", 300 ml each": each of the things counted before
_EACH: Final = late_regex(
    r"(?P<things>[^\d(,]*?)\s*(?:\bof\b|\bde\b|\bvon\b|\bda\b|\bvan\b|\bzu\b|\bà\b|\bat\b|\bholding\b|@|,|\()?\s*"
    r"(?P<size>(?:about )?\d[^()]*?)"
    r"(?:\s+(?:each|apiece|l['’]un[oa]|cadauno|ciascuno|chacun|cada\s+uno|elk|per\s+stuk))?\s*\)?$",
    re.IGNORECASE,
)
_LONGEST: Final = 400
_TIMES: Final = late_regex(r"[x×]\s*(?=\d)", re.IGNORECASE)
_AGAIN: Final = late_regex(
    r"\s*(?:/\s*(?P<slash>\d.*)|\((?P<round>(?:about |approx\.? )?\d[^()]*)\))$"
)
_SAID_AGAIN: Final = late_regex(
    r"(?:/\s*(?P<slash>\d[^()/\s]*(?:\s(?:oz|fl\.? oz|lb|g|ml)\.?)?)(?=\s)"
    r"|\((?P<round>\d[^()]*)\))\s*",
    re.I,
)
_SIZE_IN_BRACKETS: Final = late_regex(
    r"^\((?P<size>(?:\d|half)[^()]*)\)\s+(?=[^\W\d][^\d]*$)", re.IGNORECASE
)
_LENGTH: Final = late_regex(
    r"\d+(?:\.\d+)?\s*[- ]?(?:cm|mm|in|inch|inches|\")(?![a-z])", re.IGNORECASE
)
# what is said of the whole stands in brackets behind a count, and is no size of each
_IN_ALL: Final = late_regex(r"\((?:.*\b)?(?:yields?|makes?|total(?:ling)?|in all|altogether)\b.*\)")
_OR_ENDS: Final = late_regex(r"\b(?:or|oder|ou|of|o)$", re.IGNORECASE)
_VAGUE: Final = late_regex(
    r"(?:good |great |fair |large |small )?"
    r"(?:little|lot|few|bit|amount|quantity|deal|number|many)\b"
    r"|.* or (?:so|two|more)\b"
)
_INTO: Final = late_regex(r",?\s*(?:in|into|for|filling|fills|to fill|enough for)\s")
# "d'un demi-litre": a size in words
_HALF_IN_WORDS: Final = late_regex(
    r"\b(?:half|demi|halb\w*|mezzo|medio|halve)[\s-]*(?:a\s+)?(?:lit\w+|kilo\w*|pints?|pounds?)\b",
    re.I,
)
# digits of any sort; and a sign that would belong to a number before it
_DIGIT: Final = late_regex(r"[\d½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞①-⑳²³]")
_SIGN: Final = late_regex(r"[.:*+=%^/]")
_HOLDS: Final = r"(?:jar|bottle|glass|tin|pot|bag|tub|carton|mould|basin)"
_VESSELS: Final = late_regex(rf"(?:small |large |little |big )?{_HOLDS}e?s$", re.IGNORECASE)
# "1 quart jar", "500 ml Kilner jar": one of that size
_ONE_VESSEL: Final = late_regex(
    rf"(?!(?:in|into|for|to|a|an|per)\b)(?:[a-z-]+ ){{0,2}}{_HOLDS}", re.I
)
# from so many on, each of so much in grams or millilitres is what all of them are together
_MANY: Final = 5
_MOST_OF_A_PIECE: Final = 120
_MOST_OF_A_JAR: Final = 1000
_BESIDE: Final = late_regex(
    r"^(?!.*\b(?:each|apiece|a piece|chacun|je|cada|elk|ciascuno|cadauno)\b).*[^\d\s]\s*"
    r"[,(;:/–-]\s*"
    r"(?:(?:about|approx\.?|ca\.?|circa|roughly|around)\s+)?\d",
    re.IGNORECASE,
)
_VESSEL: Final = late_regex(
    rf"\b(?:{_HOLDS}|flask|demijohn|kilner|box)(?:e?s)?\b"
    r"|gläser|flaschen|bocaux|pots|vasetti|tarros|potten|flessen",
    re.IGNORECASE,
)
_LARGE: Final = late_regex(
    r"\b(?:loa(?:f|ves)|cakes?|puddings?|pies?|tarts?|stollen|panettoni?|logs?|wreaths?|salamis?|bricks?"
    r"|bars?|blocks?|slabs?|cheeses?|candles?|kuchen|brote|pains|tortas?)\b",
    re.IGNORECASE,
)


_ROUND_NUMBER: Final = late_regex(r"(?<=\d)(?:\s?-?ish|[ -]odd)\b", re.IGNORECASE)
_SO: Final = late_regex(
    r"[,\s]+(?:approx(?:imately)?\.?|or thereabouts|give or take(?: an? (?:few|bit|couple))?"
    r"|more or less"
    r"|(?:and|plus) an? (?:wee |tiny |little )?(?:bit|little|drop|splash)(?: over| more| extra)*"
    r"|at a pinch|maybe|perhaps)\s*$",
    re.IGNORECASE,
)
_GOOD_MEASURE: Final = late_regex(
    r"^an? (?:good|generous|scant|bare|full) (?=(?:litre|liter|pint|quart|gallon|kilo|pound)\b)",
    re.IGNORECASE,
)
_ABOUT: Final = late_regex(r"(?:about|approx\w*\.?|roughly|around|circa|ca\.?|some|~)\s*", re.I)
_COUPLE: Final = late_regex(r"^(?:an? )?couple (?:of )?", re.IGNORECASE)


@dataclass(frozen=True)
class Makes:
    """What one batch makes: an amount, or a count of things each holding `each`."""

    amount: Amount
    things: str = ""
    each: Amount | None = None

    @property
    def total(self) -> Amount:
        """The whole as one amount: six jars of 200 ml are 1200 ml."""
        return self.each.times(self.amount.middle) if self.each else self.amount


def _more_or_less(written: str) -> str:
    """Return "about 6 jars" for "6 jars and a bit" and "6-ish jars", other words as they are."""
    plain = _COUPLE.sub("2 ", written.strip())
    told = _GOOD_MEASURE.sub("1 ", _SO.sub("", _ROUND_NUMBER.sub("", plain)))
    already = _ABOUT.match(told)
    return plain if told == plain else f"{'' if already else 'about '}{told}"


def read_making(written: str, system: System, language: str = "en_GB") -> Makes:
    """Read what a batch makes; raises Unreadable where a size would be lost or guessed.

    >>> read_making("two jars (300 ml)", "metric").total.middle
    Fraction(600, 1)
    """
    if len(written) > _LONGEST:
        raise Unreadable(f'"{written}" is longer than what a batch makes can be.', _HOW)
    ways = (system, language)
    plain = _more_or_less(written)
    if _IN_ALL.search(plain.lower()):
        raise Unreadable(f'"{written}" says more than one amount.', _HOW)
    text = _once(_counted(plain), ways)
    amount, rest = read_first(text, *ways)
    if amount is None or amount.low <= 0:
        raise Unreadable(f'"{written}" does not say how much is made.', _HOW)
    if amount.unit and size_of(amount.unit) == "length":  # "24 cm cake": one of that size
        return Makes(Amount(Fraction(1), Fraction(1)), text)
    if amount.unit:
        return _measured(plain, amount, rest)
    noun = counted_nouns()[amount.noun][1] if amount.noun else ""
    bare = replace(amount, noun="")
    if _SIGN.match(rest):
        raise Unreadable(f'"{written}" says more than one amount.', _HOW)
    if sized := _sized(bare, noun, rest, ways):
        if sized.each and sized.each.low <= 0:
            raise Unreadable(f'"{written}" holds nothing.', "Write a size above 0.")
        if sized.each and _OR_ENDS.search(sized.things):  # "48 squares or 1½ pounds"
            raise Unreadable(f'"{written}" says more than one amount.', _HOW)
        if _is_all_of_them(sized, plain):
            count = f"{show_number(bare.high)} {sized.things.strip(' ,;-–')}"
            mend = f'Write "{count}" or what all of it weighs.'
            raise Unreadable(f'"{written}" may be what all of them weigh together.', mend)
        return sized
    named = " ".join(word for word in (noun, rest) if word)
    if not named or named == "or so":
        raise Unreadable(f'"{written}" does not say of what.', 'Write "24 biscuits" or "900 ml".')
    if _DIGIT.search(_LENGTH.sub("", named)) or _HALF_IN_WORDS.search(named):
        what = f'"{written}" holds a size that this book cannot tell from the rest.'
        raise Unreadable(what, 'Write "6 jars of 200 ml" or so.')
    return Makes(bare, named)


def _is_all_of_them(made: Makes, written: str) -> bool:
    """Whether a size behind a comma is too much for each: "30 truffles, 500 g"."""
    if made.each is None or made.amount.high < _MANY or not _BESIDE.search(written):
        return False
    most = _MOST_OF_A_JAR if _VESSEL.search(made.things) else _MOST_OF_A_PIECE
    plain = "g" if size_of(made.each.unit) == "mass" else "ml"
    return not _LARGE.search(made.things) and convert(made.each.high, made.each.unit, plain) > most


def _counted(text: str) -> str:
    """Return words with what goes before the amount taken off, and a number in words as figures."""
    serves = _SERVES.fullmatch(text)
    if serves and not re.search(r"[a-z]", re.sub(r"\bto\b", "", _PEOPLE.sub("", serves[1]))):
        return f"{_PEOPLE.sub('', serves[1])} servings"
    text = _BEFORE.sub("", text, count=1)
    circa = _CIRCA.search(text)  # "5 vasetti da 320 g circa"
    text = _NEARLY.sub("about ", text.rstrip(" ."))
    said = None if _AT_LEAST.match(text) else read_about().match(text)
    if said or circa:
        text = f"about {text[said.end() if said else 0 : circa.start() if circa else None].strip()}"
    about = "about " if text.lower().startswith("about ") else ""
    bare = text[len(about) :]
    if dozen := _DOZEN.match(bare):
        many = (dozen["many"] or "").lower()
        count = f"{_DOZENS[many] if many in _DOZENS else 12 * int(many)}"
        reach = f"-{12 * int(dozen['most'])}" if dozen["most"] else ""
        return f"{about}{count}{reach} {bare[dozen.end() :].strip()}".strip()
    first, _, rest = bare.partition(" ")
    number = _NUMBERS.get(first.lower()) or _numbers_elsewhere().get(first.lower())
    if number and rest:
        return f"{about}{number} {rest}"
    if first.lower() in ("a", "an") and rest and not _VAGUE.match(rest.lower()):
        return f"{about}1 {rest}"
    return text


@cache
def _numbers_elsewhere() -> dict[str, int]:
    """Return "due", "zwei" and the like; without what is a word of English too."""
    return {word: count for word, count in whole_numbers_elsewhere().items() if word not in _WORDS}


def _once(text: str, ways: tuple[System, str]) -> str:
    """Leave out the same amount measured again: "900 g/2 lb", "900 g (2 lb)"."""
    again = _AGAIN.search(text)
    if not again:
        return text
    first, left = read_first(text[: again.start()], *ways)
    other, rest = read_first(again["slash"] or again["round"], *ways)
    sizes = first and first.unit and other and other.unit and not (left or rest)
    if not sizes or first is None or other is None:
        return text
    if first.unit == "oz" and size_of(other.unit) == "volume":  # poured: "35 oz / 1 litre"
        return ("about " if first.about else "") + (again["slash"] or again["round"])
    compare(first, (other,))
    return text[: again.start()].strip()


def _measured(written: str, amount: Amount, rest: str) -> Makes:
    """Return an amount with a unit; what could be a count as well is asked."""
    if _VESSELS.fullmatch(rest):
        size = written[: -len(rest)].strip()
        what = f'"{written}" could be the size of each or of all.'
        raise Unreadable(what, f'Write "{size}" for all, or "6 {rest} of 200 ml" or so.')
    if _ONE_VESSEL.fullmatch(rest) and size_of(amount.unit) != "length":
        return Makes(Amount(Fraction(1), Fraction(1)), rest, replace(amount, about=False))
    if (_DIGIT.search(rest) and not _INTO.match(rest)) or _SIGN.match(rest):
        # "1 l 2 l" is not one litre, nor "1..2 l" one of something
        raise Unreadable(f'"{written}" says more than one amount.', _HOW)
    return Makes(amount, re.sub(r"^(?:(?:of|de|du|des|di|von|van|av)\s+|d['’])", "", rest))


def _sized(amount: Amount, noun: str, rest: str, ways: tuple[System, str]) -> Makes | None:
    """Read so many things of a size: "jars of 300 ml", "x 300 ml jars", "300 ml jars"."""
    found = _EACH.fullmatch(rest)
    if found and not _TIMES.match(rest):
        each, left = read_first(found["size"], *ways)
        if (
            _is_size(each)
            and not re.search(r"\d", left)
            and (not left or not found["things"].strip())
        ):
            things = " ".join(word for word in (noun, found["things"].strip(), left) if word)
            return Makes(amount, things, each)
    rest = _SIZE_IN_BRACKETS.sub(r"\g<size> ", rest)  # "8 (8-ounce) jars"
    each, left = read_first(_TIMES.sub("", rest, count=1), *ways, in_words=True)
    if _is_size(each):
        left = _without_second(each, left, ways)
        left = left.lower() if left.isupper() else left
        things = " ".join(word for word in (noun, left) if word)
        things = things or ("jars" if size_of(each.unit) == "volume" else "")  # "9 half-pints"
        return Makes(amount, things, each)
    return None


def _without_second(each: Amount | None, left: str, ways: tuple[System, str]) -> str:
    """Leave out a size said again before the things: "340g/12oz jars", "half-pint (8 oz.) jars"."""
    again = _SAID_AGAIN.match(left)
    other, rest = read_first(again["slash"] or again["round"], *ways) if again else (None, "")
    if again is None or not _is_size(other) or rest.strip(" ."):
        return left
    if each is not None and size_of(each.unit) == size_of(other.unit):
        compare(each, (other,))
    return left[again.end() :].strip()


def _is_size(amount: Amount | None) -> TypeGuard[Amount]:
    return amount is not None and bool(amount.unit) and size_of(amount.unit) != "length"
