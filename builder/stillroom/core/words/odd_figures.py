"""Figures that are no decimals: in rings and brackets, high and low ones, Roman ones in one letter.

Whatever they say, nothing is reckoned with them; where a number may stand they are told of.
"""

from __future__ import annotations

from typing import Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

ODD_FIGURE: Final = late_regex(
    "[\u00b2\u00b3\u00b9\u2070-\u2089\u215f-\u2189\u2460-\u24ff\u2776-\u2793\u3251-\u325f\u32b1-\u32bf"
    "\U0001f100-\U0001f10c]"
)


def refuse_odd_figure(text: str) -> None:
    """Raise Unreadable where such a figure begins a word: "②", "①00"; behind one it may belong."""
    for odd in ODD_FIGURE.finditer(text):
        if not text[: odd.start()][-1:].isalnum():
            what = f'"{odd[0]}" is not a number here.'
            raise Unreadable(what, 'Write it with figures: "1", "2".')


_BY_POWER: Final = late_regex(
    r"(?<![\w./-])[-+]?\d+(?:[.,]\d+)?[eE][+-]?\d+(?=\s|[%°]|$)|(?<!\w)0x[0-9a-fA-F]+(?=\s|[%°]|$)"
)
# a book's number has as many figures, and measures nothing
_TOO_LONG: Final = late_regex(
    r"(?<![\d.,])\d{10,}(?:[.,]\d+)?\s?"
    r"(?=[°%]|(?:k?g|m?l|[cm]m|oz|lb|psi|seconds?|minutes?|hours?|days?|weeks?|months?|years?)\b)"
)


_UNIT: Final = (
    r"(?:k?g|mg|[mcd]?l|[cm]m|oz|lbs?|gr(?:am(?:me)?)?s?|kilos?|lit(?:re|er)s?|ounces?|pounds?|pints?|cups?"
    r"|tsp|tbsp|teaspoons?|tablespoons?|minutes?|hours?|days?|weeks?|months?|years?|%|jars?|bottles?"
    r"|Tassen?|EL|TL)(?!\w)|°"
)
_ENDLESS: Final = late_regex(
    rf"[\d½⅓⅔¼¾⅛]\s?∞|∞\s?(?={_UNIT}|[CF]\b)|(?<![\w-])[+−-]?(?:NaN|inf) ?(?={_UNIT}|[CF]\b)"
)
# what a table writes where it knows no number: before a unit its word is no food
_WORD_FOR_NONE: Final = late_regex(
    rf"^\W*(?:[Nn]a[Nn]|NAN|[Ii]nf|INF|[Ii]nfinity|infinite|undefined|null|None) ?(?={_UNIT})"
)
_ENDLESS_LINE: Final = late_regex(r"∞|#(?:REF|VALUE|DIV/0|NUM|NAME|N/A)\b[!?]?|^\W*NaN\W*$")
_SIGNS: Final = ("∞", "NaN", "inf")
"""What stands in all that has no end: most texts need no closer look."""
_SAYS_NONE: Final = "Write how much it is in figures."


def refuse_endless(text: str) -> None:
    """Raise Unreadable where a line measures with what is no number: "∞ g", "NaN g", "½∞"."""
    found = _ENDLESS.search(text) or _ENDLESS_LINE.search(text) or _WORD_FOR_NONE.match(text)
    if found:
        raise Unreadable(f'"{found[0].strip()}" is not a number.', _SAYS_NONE)


def find_endless(text: str) -> tuple[str, str]:
    """Return what is wrong with a measure in prose that is no number, and its mend; "" for none.

    >>> find_endless("Bake at NaN °C.")[0], find_endless("It keeps, infused, for ever.")[0]
    ('"NaN" is not a number.', '')
    """
    if not any(map(text.__contains__, _SIGNS)):
        return "", ""
    found = _ENDLESS.search(text)
    return (f'"{found[0].strip()}" is not a number.', _SAYS_NONE) if found else ("", "")


_PERHAPS_NONE: Final = late_regex(r"\d(?:[eE]|(?<=0)x|\d{9})")
"""What stands in every number that nobody measures: most texts need no closer look."""


def find_no_measure(text: str) -> tuple[str, str]:
    """Return what is wrong with a number that nobody measures, and how to mend it; "" for none.

    >>> find_no_measure("Bake at 1e999 °C.")[0], find_no_measure("ISBN 9780306406157")[0]
    ('"1e999" is a number as a calculator shows it.', '')
    """
    if not _PERHAPS_NONE.search(text):
        return "", ""
    if found := _BY_POWER.search(text):
        what = f'"{found[0][:24]}" is a number as a calculator shows it.'
        return what, "Write it out in figures."
    if found := _TOO_LONG.search(text):
        what = f'"{found[0][:12]}..." is a number of {len(found[0].strip())} figures.'
        return what, "Write it shorter, in a larger unit."
    return "", ""
