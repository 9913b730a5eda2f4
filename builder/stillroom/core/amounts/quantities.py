"""Amounts as a cook writes them: numbers, fractions, ranges, ratios, "to fill", "to taste".

Exact fractions inside; shown with the kitchen's own fractions or decimals. Units live in
units.py. Leaves out rounding: rounding.py decides what a kitchen can measure.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.units import (
    DECIMAL_UNITS,
    System,
    all_units,
    counted_nouns,
    find_unit,
    offered_words,
    plain_nouns,
    unit_words,
)
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

_VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
# "1 000" is a thousand; other groups after a space are asked: "1 400 g" may be one of 400 g
_SPACED = r"[1-9]\d{0,2}(?:[ \u00a0\u202f\u2009]\d{3})+(?!\d|\s*[/⁄]|[.,]\d)"
_NUMBER = (
    rf"(?:{_SPACED}|\d+\s*[{_VULGAR}]|[{_VULGAR}]|\d+\s+\d+\s*[/⁄]\s*\d+|\d+\s*[/⁄]\s*\d+"
    r"|\d+(?:[.,]\d+)*)"
)
_SURE = late_regex(r"\d+(?:\.\d+)?|[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?")
_COULD_BE_THOUSANDS = late_regex(r"[1-9]\d{0,2}\.\d{3}")
_MOST_SIGNS = 60  # what is longer is a slip of the pen, or worse
_DECIMAL: ContextVar[str] = ContextVar("decimal sign", default=".")
_say = Said("stillroom.core.amounts", "amounts")
_LEADING = late_regex(
    rf"^(?P<about>about|roughly|around|c\.)?\s*(?P<low>{_NUMBER})"
    rf"(?:\s*(?:-|–|to)\s*(?P<high>{_NUMBER}))?(?P<rest>.*)$",
    re.IGNORECASE | re.DOTALL,
)
# what stands close behind a number and makes it none: "½½", "1..2", "1/2/3"
_NO_NUMBER = late_regex(rf"[{_VULGAR}]|[.,]{{2}}|[.,/⁄]\s?\d")
_RATIO = late_regex(r"^(?P<amount>.+?)\s+(?:per|for each|for every|to each)\s+(?P<per>.+)$")
_HOW_TO_WRITE = 'Write a number and a unit, such as "250 g", "1 1/2 tsp", "4-5" or "to taste".'


@dataclass(frozen=True)
class Amount:
    """From `low` to `high` (equal when exact) of a unit id, or of counted things.

    `noun` is the singular of a counted thing ("stick"); `about` keeps the cook's "about".
    """

    low: Fraction
    high: Fraction
    unit: str = ""
    noun: str = ""
    about: bool = False

    @property
    def middle(self) -> Fraction:
        """The value reckoned with: halfway through the range."""
        return self.low if self.low == self.high else (self.low + self.high) / 2

    def times(self, factor: Fraction) -> Amount:
        """Return the amount multiplied, exactly."""
        return replace(self, low=self.low * factor, high=self.high * factor)


@dataclass(frozen=True)
class Ratio:
    """So much of this for each so much of another ingredient, named in `of`."""

    amount: Amount
    per: Amount
    of: str


@dataclass(frozen=True)
class Unmeasured:
    """An amount left to the cook: "to taste" or "to fill"."""

    words: str


AnyAmount = Amount | Ratio | Unmeasured
UNMEASURED = ("to taste", "to fill", "to cover", "as needed")


def parse_number(text: str) -> Fraction:
    """Read a whole, decimal, mixed or vulgar number exactly; raises Unreadable.

    >>> parse_number("1 1/2"), parse_number("1½"), parse_number("2.5"), parse_number("1,000")
    (Fraction(3, 2), Fraction(3, 2), Fraction(5, 2), Fraction(1000, 1))
    """
    bare = text.strip().replace("⁄", "/")
    if len(bare) > _MOST_SIGNS or not re.fullmatch(_NUMBER, bare):
        raise _say.refuse("not_a_number", text=text)
    if re.fullmatch(_SPACED, bare):
        return _spaced(bare)
    total = Fraction(0)
    for sign in _VULGAR:
        if sign in bare:
            numerator, denominator = unicodedata.normalize("NFKC", sign).split("⁄")
            total += Fraction(int(numerator), int(denominator))
            bare = bare.replace(sign, " ")
    for part in re.sub(r"\s*/\s*", "/", bare).split():
        top, _, bottom = part.partition("/")
        if bottom and int(bottom) == 0:
            raise _say.refuse("divides_by_nothing", text=text)
        total += _decimal(top) / Fraction(bottom or "1")
    return total


def _spaced(digits: str) -> Fraction:
    """Read "1 000"; "1 400" is asked, since it may be one thing of 400."""
    first, *groups = digits.split()
    together = "".join((first, *groups))
    if not groups[0].startswith("0"):
        raise _say.refuse(
            "two_amounts", text=digits, together=together, first=first, rest=" ".join(groups)
        )
    return Fraction(int(together))


def _decimal(digits: str) -> Fraction:
    """Read digits as English writes them; what else it could be is asked, never guessed.

    Its twin is decimal() of amounts.js: "1,5" is never 15, nor "1.500" one and a half in silence.
    """
    if _SURE.fullmatch(digits) and not _COULD_BE_THOUSANDS.fullmatch(digits):
        return Fraction(digits.replace(",", ""))
    whole, *rest = re.split("[.,]", digits)
    if len(rest) != 1:
        raise _say.refuse("not_a_number", text=digits)
    point = f"{whole}.{rest[0].rstrip('0') or '0'}"
    if len(rest[0]) != 3:  # nobody parts thousands so
        raise _say.refuse("comma_for_a_point", text=digits, point=point)
    raise _say.refuse("two_ways", text=digits, one=point, other=int(whole + rest[0]))


def parse_leading_amount(text: str, system: System = "metric") -> tuple[Amount | None, str]:
    """Split "1 l vodka" into its amount and what follows; no amount gives (None, text).

    A word after the number that is neither a unit nor a counted noun stays with the rest, so
    that "6 Seville oranges" is six of them. Raises Unreadable for a range that runs backwards.
    """
    text = text.strip()
    found = _LEADING.match(text)
    if not found:
        return None, text
    low = parse_number(found["low"])
    high = parse_number(found["high"]) if found["high"] else low
    if odd := _NO_NUMBER.match(found["rest"]):
        raise _say.refuse("not_a_number", text=text[: found.start("rest") + odd.end()])
    if high < low:
        raise _say.refuse("backwards", low=found["low"], high=found["high"])
    amount = Amount(low, high, about=bool(found["about"]))
    return _take_unit(amount, found["rest"], system)


def _take_unit(amount: Amount, rest: str, system: System) -> tuple[Amount, str]:
    glued = rest[:1].isalpha()
    words = rest.strip().split()
    known = unit_words(system)
    for size in (3, 2, 1):
        phrase = " ".join(words[:size]).rstrip(".,")
        spoken = phrase if phrase in known else phrase.lower()
        if len(words) >= size and spoken in known:
            return replace(amount, unit=known[spoken]), " ".join(words[size:])
    if glued and words:
        mend = did_you_mean(words[0], offered_words(system))
        raise _say.refuse("not_a_unit", word=words[0], mend=mend)
    noun = plain_nouns().get(words[0].lower() if words else "")
    if noun:
        return replace(amount, noun=noun[0]), " ".join(words[1:])
    return amount, " ".join(words)


def parse_amount(text: str, system: System = "metric") -> AnyAmount:
    """Read a whole amount; raises Unreadable saying what is wrong and what to write.

    >>> parse_amount("1 per 250-400 ml of vodka").per
    Amount(low=Fraction(250, 1), high=Fraction(400, 1), unit='ml', noun='', about=False)
    >>> parse_amount("to taste")
    Unmeasured(words='to taste')
    """
    bare = " ".join(str(text).split())
    if bare.lower() in UNMEASURED:
        return Unmeasured(bare.lower())
    ratio = _RATIO.match(bare)
    if ratio:
        return _parse_ratio(ratio["amount"], ratio["per"], system)
    amount, rest = parse_leading_amount(bare, system)
    if amount is None:
        raise Unreadable(f'"{bare}" is not an amount.', _HOW_TO_WRITE)
    if amount.low <= 0:
        raise Unreadable(f'"{bare}" is nothing at all.', "Write an amount above 0.")
    if rest:
        find_unit(rest, system)
        raise Unreadable(f'"{rest}" is left over after the amount.', _HOW_TO_WRITE)
    return amount


def _parse_ratio(amount_text: str, per_text: str, system: System) -> Ratio:
    amount, left = parse_leading_amount(amount_text, system)
    per, rest = parse_leading_amount(per_text, system)
    if amount is None or left:
        raise Unreadable(f'"{amount_text}" is not an amount.', _HOW_TO_WRITE)
    if per is None:  # "1 per litre of vodka"
        per, rest = parse_leading_amount(f"1 {per_text}", system)
    of = re.sub(r"^of\s+", "", rest).strip()
    if per is None or not of:
        raise Unreadable(
            f'"per {per_text}" does not say of what.', 'Write "1 per 250-400 ml of vodka".'
        )
    if amount.low <= 0 or per.low <= 0:
        raise Unreadable("A ratio of nothing cannot be scaled.", "Write amounts above 0.")
    return Ratio(amount, per, of)


_SHOWN_FRACTIONS = {
    (int(part), int(whole)): sign
    for sign in _VULGAR
    for part, whole in [unicodedata.normalize("NFKC", sign).split("⁄")]
    if whole in ("2", "3", "4", "8")
}


def show_number(value: Fraction) -> str:
    """Show a number as a cook writes it: a kitchen fraction where one is exact, else decimals.

    >>> show_number(Fraction(3, 2)), show_number(Fraction(5, 2)), show_number(Fraction(1, 10))
    ('1½', '2½', '0.1')
    """
    whole, part = divmod(value.numerator, value.denominator)
    if sign := _SHOWN_FRACTIONS.get((part, value.denominator)):
        return f"{whole}{sign}" if whole else sign
    return show_decimal(value)


def show_decimal(value: Fraction, places: int = 2) -> str:
    """Show a number in decimals, halves rounded up, without empty zeros.

    >>> show_decimal(Fraction(1234567, 1000)), show_decimal(Fraction(1, 200))
    ('1234.57', '0.01')
    """
    # in whole numbers: a page shows dozens, and each sum of fractions makes new ones
    scaled = (2 * value.numerator * 10**places + value.denominator) // (2 * value.denominator)
    whole, part = divmod(scaled, 10**places)
    return f"{whole}{decimal_sign()}{part:0{places}d}".rstrip("0") if part else str(whole)


def decimal_sign() -> str:
    """Return what stands between whole and part now; what is kept of shown figures hangs on it."""
    return _DECIMAL.get()


@contextmanager
def decimals_of(language: str) -> Iterator[None]:
    """Show decimals within as a language writes them; a point is what stands everywhere else.

    >>> with decimals_of("de_DE"):
    ...     show_decimal(Fraction(6, 5))
    '1,2'
    """
    from babel.numbers import get_decimal_symbol  # late: only a pack asks

    before = _DECIMAL.set(get_decimal_symbol(language))
    try:
        yield
    finally:
        _DECIMAL.reset(before)


def show_amount(amount: AnyAmount) -> str:
    """Show an amount with its unit.

    >>> show_amount(parse_amount("2 1/2 cups", "us")), show_amount(parse_amount("4-5 pods"))
    ('2½ cups', '4–5 pods')
    """
    if isinstance(amount, Unmeasured):
        return amount.words
    if isinstance(amount, Ratio):
        return f"{show_amount(amount.amount)} per {show_amount(amount.per)} of {amount.of}"
    about = "about " if amount.about else ""
    if pounds := _pounds_and_ounces(amount):
        return f"{about}{pounds}"
    show = show_decimal if amount.unit in DECIMAL_UNITS else show_number
    number = show(amount.low)
    if amount.high != amount.low:
        number = f"{number}–{show(amount.high)}"
    return f"{about}{number} {unit_word(amount)}".rstrip()


def _pounds_and_ounces(amount: Amount) -> str:
    """Return "1 lb 2 oz" for what a balance weighs so; "" where a plain fraction says it.

    >>> show_amount(parse_amount("1 1/8 lb")), show_amount(parse_amount("1 1/2 lb"))
    ('1 lb 2 oz', '1½ lb')
    """
    pounds, part = divmod(amount.low, 1)
    plain = amount.unit != "lb" or amount.low != amount.high or part.denominator <= 4
    if plain or not pounds or (part * 32).denominator != 1:
        return ""
    return f"{pounds} lb {show_number(part * 16)} oz"


def unit_word(amount: Amount) -> str:
    """Return the word after the number: the unit or counted noun, plural when it must be."""
    several = amount.high > 1
    if amount.unit:
        unit = all_units()[amount.unit]
        return unit.many if several else unit.shown
    if amount.noun:
        one, many = counted_nouns()[amount.noun]
        return many if several else one
    return ""
