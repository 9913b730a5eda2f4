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
from unicodedata import category

from babel import Locale, UnknownLocaleError
from babel.numbers import (
    format_currency,
    get_currency_name,
    get_currency_precision,
    get_currency_symbol,
    list_currencies,
)

from stillroom.core.amounts.units import unit_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable, say_written

# a sign or three letters may stand on either side: "£14.50", "14,50 €", "CHF 12.-"; only letters
# are cut short by a dot ("Fr. 2.50"): that of "£.99" stands before the pence
_SIGN = r"(?:[^\W\d_]{1,7}\.|[^\d\s.,'’:–—-]{1,9})?"
# a hundredth of the money, as it is written behind a sum: "85p", "85 ct"
COINS = frozenset(
    {"p", "pence", "penny", "c", "ct", "cts", "cent", "cents", "¢", "centime", "centimes", "rp"}
    | {"rappen", "céntimo", "céntimos", "centesimo", "centesimi", "öre", "øre"}
)
_IN_THE_MIDDLE = late_regex(r"^(\d{1,6})\s?([^\w\s.,'’-])\s?(\d{2})$")  # "1€50"
_AROUND = late_regex(rf"^({_SIGN})\s*(.*?)\s*({_SIGN})$")
_BLANKS = "\\s\u00a0\u202f"


def parse_money(
    typed: str | int | float | Decimal,
    currency: str = "GBP",
    language: str = "en_GB",
    *,
    beside_size: bool = False,
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
    >>> parse_money("85p"), parse_money("£.99"), parse_money("1€50", "EUR", "fr")
    (Fraction(17, 20), Fraction(99, 100), Fraction(3, 2))
    """
    text = with_point(str(typed).strip(), language)
    around = _AROUND.match(_IN_THE_MIDDLE.sub(rf"\1{_signs(language)[0]}\3 \2", text))
    signs = [sign for sign in (around[1], around[3]) if sign] if around else []
    coins = around is not None and around[3].lower() in COINS and not around[1]
    # "3.50 for 500 g": what a measure stands behind is no price
    units = [
        one for one in signs if not (beside_size and is_money_and_weight(one, currency, language))
    ]
    measured = not coins and not unit_words("metric").keys().isdisjoint(units)
    plain = _plain_number(around[2] if around and not measured else "", language)
    if plain is not None and not coins:
        foreign = [sign for sign in signs if not _is_of(sign, currency, language)]
        if any(_is_money(sign) for sign in foreign):
            raise Unreadable(
                f'"{text}" is not in the money used here, which is {currency}.',
                f"Write the sum in {currency}.",
            )
        plain = None if foreign else plain
    if plain is None:
        example = "14,50" if _signs(language)[0] == "," else "14.50"
        if pence := re.search(r"(?<![.,\d])(\d+)[.,](\d{2})(?![.,]?\d)", text):
            example = f"{pence[1]}{_signs(language)[0]}{pence[2]}"
        raise Unreadable(f"{say_written(typed)} is not a price.", f'Write "{example}".')
    value = Decimal(plain)
    if coins:
        value /= 100
    places = get_currency_precision(currency)
    finer = len(plain.partition(".")[2]) > (0 if coins else max(places, 2))
    if finer or value != value.quantize(Decimal(1).scaleb(-places)):
        raise Unreadable(f'"{typed}" is finer than a penny.', f"Write it with {places} decimals.")
    return Fraction(value)


def with_point(text: str, language: str) -> str:
    """Return a text with the colon of Swedish prices as a comma: "29:90 kr", but "smör: 500 g".

    >>> with_point("500 g 29:90", "sv_SE"), with_point("29:90", "en_GB")
    ('500 g 29,90', '29:90')
    """
    return _COLON.sub(r"\1,\2", text) if language[:2] == "sv" else text


_COLON = late_regex(r"(?<![\d.,:])(\d{1,5}):(\d{2})(?![\d:.,])")


@cache
def _is_of(sign: str, currency: str, language: str) -> bool:
    """Whether a sign stands for a currency: its code, its sign, "$" for any dollar, "Euro"."""
    said = sign.rstrip(".").lower()
    own = {currency.lower(), *SIGNS_AT_HOME.get(currency, ())}
    for spoken in dict.fromkeys((language.replace("-", "_"), "en")):
        symbol = get_currency_symbol(currency, locale=spoken).rstrip(".").lower()
        own |= {symbol, re.sub(r"[a-z ]", "", symbol) or symbol}
        for count in (None, 1, 2, 5):  # "Krone", "Kronen"; "korun" of five
            name = get_currency_name(currency, count=count, locale=spoken).lower()
            own |= {name, *name.split()}
    return not {said, said.removesuffix("s")}.isdisjoint(own)


def is_money_and_weight(word: str, currency: str, language: str) -> bool:
    """Whether a word is this money and a weight too: "pounds"."""
    weighs = word.lower().rstrip(".") in ("pound", "pounds")
    return weighs and _is_of(word, currency, language)


def _is_money(sign: str) -> bool:
    """Whether a sign stands for any currency at all."""
    if sign.upper() in list_currencies() or any(category(one) == "Sc" for one in sign):
        return True
    return any(_is_of(sign, currency, "en") for currency in _SPOKEN_OF)


# whose names are known abroad, so that "5 euros" in a book of pounds is told to be other money
_SPOKEN_OF = ("EUR", "USD", "GBP", "CHF", "SEK", "NOK", "DKK", "PLN", "CZK")
# the sign that a currency has where it is at home
SIGNS_AT_HOME = {
    "CHF": ("fr", "sfr"), "SEK": ("kr",), "NOK": ("kr",), "DKK": ("kr",), "ISK": ("kr",),
    "PLN": ("zł",), "CZK": ("kč",), "HUF": ("ft",), "GBP": ("quid",), "USD": ("buck", "us$"),
    "INR": ("rs", "re"), "PKR": ("rs", "re"), "LKR": ("rs", "re"), "NPR": ("rs", "re"),
    "JPY": ("円",), "CNY": ("元", "rmb"), "ILS": ("nis",), "RON": ("lei",), "SGD": ("s$", "sg$"),
    "AED": ("dh", "dhs"), "MAD": ("dh", "dhs"), "ZAR": ("rand",), "BRL": ("reais",),
    "AUD": ("au$", "aus$"), "NZD": ("nz$",), "CAD": ("ca$", "c$", "can$"),
}  # fmt: skip


@cache
def knows_language(language: str) -> bool:
    """Say whether it is known how a language writes its prices.

    >>> knows_language("de"), knows_language("en-US"), knows_language("Greman")
    (True, True, False)
    """
    try:
        return "latn" in Locale.parse(language.replace("-", "_")).number_symbols
    except (UnknownLocaleError, ValueError):
        return False


@cache
def knows_currency(code: str) -> bool:
    """Say whether three capitals are those of a currency.

    >>> knows_currency("NOK"), knows_currency("pounds")
    (True, False)
    """
    return code in list_currencies()


@cache
def _signs(language: str) -> tuple[str, str]:
    """Return what stands before the pence and what parts thousands, as CLDR has it."""
    symbols = Locale.parse(language.replace("-", "_")).number_symbols["latn"]
    return str(symbols["decimal"]), str(symbols["group"])


@cache
def _written(language: str) -> re.Pattern[str]:
    decimal, group = _signs(language)
    apart = f"[{_BLANKS}]" if group.isspace() else "['’]" if group in "'’" else re.escape(group)
    alone = rf"(?=[.{re.escape(decimal)}][0-9]{{2}}$)"  # ".99"
    # lakhs, as India parts them: "1,05,000"
    by_twos = Locale.parse(language.replace("-", "_")).decimal_formats[None].grouping == (3, 2)
    lakhs = r"[0-9]{1,2}(?:,[0-9]{2}){1,2},[0-9]{3}|" if by_twos else ""
    # "-,65 €": no euro, and so many cents
    lakhs += rf"[-–—](?={decimal}[0-9]{{2}}$)|" if decimal == "," else ""
    whole = rf"[0-9]{{1,9}}|[0-9]{{1,3}}(?:{apart}[0-9]{{3}}){{1,2}}|{lakhs}{alone}"
    # with a comma before the pence, a dot before one or two figures parts no thousands
    point = r"\.[0-9]{1,2}(?![0-9])|" if decimal == "," else ""
    part = rf"{point}{re.escape(decimal)}[0-9]{{1,9}}"
    return re.compile(rf"(?P<whole>{whole})(?:(?P<part>{part})|[.,:][-–—]{{1,2}}|/[-–—])?")


def _plain_number(text: str, language: str) -> str | None:
    found = _written(language).fullmatch(text)
    if not found:
        return None
    part = (found["part"] or "")[1:]
    return (re.sub(r"[^0-9]", "", found["whole"]) or "0") + (f".{part}" if part else "")


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
