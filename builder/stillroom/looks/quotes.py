"""Curly quotes by language for straight ones, and fractions. Leaves out the rest (set_words).

publish/assets/js/words/quotes.js does the same for what a reader types; its marks come from here.
"""

from __future__ import annotations

import re
from typing import Any, Final

NO_BREAK: Final = "\u00a0"

QUOTES: Final = {
    "en": "“”‘’", "nl": "“”‘’", "es": "«»“”", "pt": "«»“”", "it": "«»“”",
    "de": "„“‚‘", "cs": "„“‚‘", "da": "»«›‹", "sv": "””’’", "fi": "””’’", "nb": "«»‘’",
    "pl": "„”«»", "fr": "«»“”",
}  # fmt: skip
"""Outer and inner quotes by language: as the Unicode CLDR's delimiters have them, from memory."""

_WITHIN: Final = re.compile(
    r"(?<=[^\W\d])'(?=\w)|(?<=\d)'(?=[^\W\d])|(?<!\d)'(?=\d\ds?\b)"
    r"|'(?=(?:tis|twas|til|em|n)\b)|(?<=\bn)'",
    re.I,
)
"""An apostrophe within a word, or for what is left out at its ends: 'tis, rock 'n' roll, '68.
Between two figures it is a foot's mark."""
_FRACTIONS: Final = {
    "1/2": "½", "1/3": "⅓", "2/3": "⅔", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝",
    "7/8": "⅞",
}  # fmt: skip
_FRACTION: Final = re.compile(
    rf"(?<![^\s(“‘„«–—])(?:(\d+)[ \u00a0])?({'|'.join(_FRACTIONS)})(?![\d/]|[.,]\d)"
)
_FRENCH_SIGN: Final = re.compile(r" (?=[:;!?»])|(?<=«) ")
_OPENS_AFTER: Final = frozenset(" \u00a0\n(/[—–-«“„»›‹‚‘")


def marks_of(language: str) -> tuple[str, str, str, str]:
    """Return how a language opens and closes a quotation, and one within it.

    >>> marks_of("de_AT")
    ('„', '“', '‚', '‘')
    """
    spoken = language.replace("-", "_").split("_")[0]
    opens, closes, inner_opens, inner_closes = tuple(QUOTES.get(spoken, QUOTES["en"]))
    if spoken == "fr":
        opens, closes = f"{opens}{NO_BREAK}", f"{NO_BREAK}{closes}"
    return opens, closes, inner_opens, inner_closes


def curl(text: str, language: str) -> str:
    r"""Return a text whose straight quotes are those of its language; inches and feet keep theirs.

    >>> curl('"so"', "de_DE"), curl('"so"', "fr").replace(NO_BREAK, "_")
    ('„so“', '«_so_»')
    >>> curl("Mum's \"best\" fudge, 'tis said, in a 9\" tin", "en_GB")
    'Mum’s “best” fudge, ’tis said, in a 9" tin'
    """
    if '"' not in text and "'" not in text:
        return text
    opens, closes, inner_opens, inner_closes = marks_of(language)
    text = _pair(text, '"', opens, closes, closes)
    return _pair(_WITHIN.sub("’", text), "'", inner_opens, inner_closes, "’")


def _pair(text: str, straight: str, opens: str, closes: str, single: str) -> str:
    """Replace one sort of straight mark; `single` is one that closes nothing."""
    done: list[str] = []
    is_open = False
    for at, letter in enumerate(text):
        if letter != straight:
            done.append(letter)
            continue
        before, after = text[at - 1 : at] if at else " ", text[at + 1 : at + 2]
        begins = before in _OPENS_AFTER and not after.isspace()
        if is_open and not begins:
            done.append(closes)
            is_open = False
        elif begins and (straight == '"' or straight in text[at + 1 :]):
            done.append(opens)
            is_open = True
        else:
            done.append(straight if before.isnumeric() else single)
    return "".join(done)


def join_fractions(text: str) -> str:
    """Return a text whose usual fractions are one sign; what else has a stroke keeps it.

    >>> join_fractions("1 1/2 cups, 24/7, from 1/2/2027 on, page 11/24")
    '1½ cups, 24/7, from 1/2/2027 on, page 11/24'
    """
    return _FRACTION.sub(lambda found: (found[1] or "") + _FRACTIONS[found[2]], text)


def set_marks(text: str, language: str) -> str:
    """Return a text with the marks of its language, as a title is set.

    A usual fraction is one sign; a French sign begins no line.

    >>> set_marks("Bliss in a 3 1/2-cup jar (1/2 for you)", "en_GB")
    'Bliss in a 3½-cup jar (½ for you)'
    >>> set_marks("Qui veut du nougat ?", "fr_FR").replace(NO_BREAK, "_")
    'Qui veut du nougat_?'
    """
    text = join_fractions(curl(text, language))
    return _FRENCH_SIGN.sub(NO_BREAK, text) if language.startswith("fr") else text


def curl_all(data: Any, language: str) -> Any:
    """Return plain data for a template with the marks of its language; drawings stay."""
    if isinstance(data, str):
        return data if data.startswith("<") else set_marks(data, language)
    if isinstance(data, dict):
        return {name: curl_all(value, language) for name, value in data.items()}
    if isinstance(data, list | tuple):
        return [curl_all(value, language) for value in data]
    return data
