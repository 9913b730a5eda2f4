"""Money, exact: read as typed, kept as fractions, shown and shared out to the penny.

A sum is a Fraction of the currency's main unit (pounds, not pence). Leaves out prices and
packs: buying.py and costing.py know those.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import cache

from babel import Locale
from babel.numbers import format_currency, get_currency_precision

from stillroom.core.amounts.units import unit_words
from stillroom.core.words.problems import Unreadable, say_written

# a sign or three letters may stand on either side: "£14.50", "14,50 €", "CHF 12.-"
_SIGN = r"(?:[^\d\s.,'’-]{1,3}|[A-Za-z]{3})?"
_AROUND = re.compile(rf"^({_SIGN})\s*(.*?)\s*({_SIGN})$")
_BLANKS = "\\s\u00a0\u202f"


def parse_money(
    typed: str | int | float | Decimal, currency: str = "GBP", language: str = "en_GB"
) -> Fraction:
    """Read a price as typed; raises Unreadable for anything finer than the smallest coin.

    What parts thousands and what stands before the pence is the language's. A dot before one or
    two figures is read in every language; a comma only where the language has it so.

    >>> parse_money("£14.50"), parse_money(3), parse_money("1.450,50 €", "EUR", "de")
    (Fraction(29, 2), Fraction(3, 1), Fraction(2901, 2))
    >>> parse_money("1.205")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
        ...
    stillroom.core.words.problems.Unreadable: "1.205" is finer than a penny. Write it with ...
    """
    text = str(typed).strip()
    around = _AROUND.match(text)
    # "3.50 for 500 g": what a measure stands behind is no price
    measured = around and not unit_words("metric").keys().isdisjoint((around[1], around[3]))
    plain = _plain_number(around[2] if around and not measured else "", language)
    if plain is None:
        example = "14,50" if _signs(language)[0] == "," else "14.50"
        raise Unreadable(f"{say_written(typed)} is not a price.", f'Write "{example}".')
    value = Decimal(plain)
    places = get_currency_precision(currency)
    finer = len(plain.partition(".")[2]) > max(places, 2)
    if finer or value != value.quantize(Decimal(1).scaleb(-places)):
        raise Unreadable(f'"{typed}" is finer than a penny.', f"Write it with {places} decimals.")
    return Fraction(value)


@cache
def _signs(language: str) -> tuple[str, str]:
    """Return what stands before the pence and what parts thousands, as CLDR has it."""
    symbols = Locale.parse(language.replace("-", "_")).number_symbols["latn"]
    return str(symbols["decimal"]), str(symbols["group"])


@cache
def _written(language: str) -> re.Pattern[str]:
    decimal, group = _signs(language)
    apart = f"[{_BLANKS}]" if group.isspace() else "['’]" if group in "'’" else re.escape(group)
    whole = rf"[0-9]{{1,9}}|[0-9]{{1,3}}(?:{apart}[0-9]{{3}}){{1,2}}"
    # with a comma before the pence, a dot before one or two figures parts no thousands
    point = r"\.[0-9]{1,2}(?![0-9])|" if decimal == "," else ""
    part = rf"{point}{re.escape(decimal)}[0-9]{{1,9}}"
    return re.compile(rf"(?P<whole>{whole})(?:(?P<part>{part})|[.,][-–])?")


def _plain_number(text: str, language: str) -> str | None:
    found = _written(language).fullmatch(text)
    if not found:
        return None
    part = (found["part"] or "")[1:]
    return re.sub(r"[^0-9]", "", found["whole"]) + (f".{part}" if part else "")


def to_coins(value: Fraction, currency: str = "GBP") -> int:
    """Return the sum in smallest coins, halves rounded up (common commercial practice).

    >>> to_coins(Fraction(1, 3)), to_coins(Fraction("0.005"))
    (33, 1)
    """
    exact: Fraction = value * 10 ** get_currency_precision(currency)
    return math.floor(exact + Fraction(1, 2))


def to_decimal(value: Fraction, currency: str = "GBP") -> Decimal:
    """Return the sum as a decimal rounded to the smallest coin.

    >>> to_decimal(Fraction(2, 3))
    Decimal('0.67')
    """
    places = get_currency_precision(currency)
    whole = Decimal(to_coins(value, currency)).scaleb(-places)
    return whole.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)


def show_money(value: Fraction, currency: str = "GBP", language: str = "en_GB") -> str:
    """Show a sum in the book's currency and language.

    >>> show_money(Fraction(1205, 100)), show_money(Fraction(1500), "JPY", "ja_JP")
    ('£12.05', '￥1,500')
    """
    return str(format_currency(to_decimal(value, currency), currency, locale=language))


def share_out(
    total: Fraction, weights: Sequence[Fraction], currency: str = "GBP"
) -> tuple[Fraction, ...]:
    """Share a sum by weight in whole coins that add up to it exactly.

    The coins left over by rounding down go to the largest remainders, first come first on a
    tie. No weight at all shares evenly.

    >>> [str(part) for part in share_out(Fraction(1), [Fraction(1)] * 3)]
    ['17/50', '33/100', '33/100']
    """
    if not weights:
        return ()
    coin = Fraction(1, 10 ** get_currency_precision(currency))
    coins = to_coins(total, currency)
    whole = sum(weights)
    parts = [weight / whole if whole else Fraction(1, len(weights)) for weight in weights]
    exact = [coins * part for part in parts]
    given = [share.__floor__() for share in exact]
    order = sorted(range(len(exact)), key=lambda place: (given[place] - exact[place], place))
    for place in order[: coins - sum(given)]:
        given[place] += 1
    return tuple(count * coin for count in given)
