"""Words as they are set on a card: what belongs together stays together, quotes are curly.

Page and paper set the same words. Leaves out the words themselves (core/label).
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from stillroom.core.label.labelling import UsageCard
from stillroom.looks.quotes import NO_BREAK, curl, set_marks

_FIGURE: Final = re.compile("[\\d½⅓⅔¼¾⅛⅜⅝⅞⅕%]")
_AMOUNT: Final = re.compile(r"(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞⅕]) (?=[^\W\d_]|%|°|€|[½⅓⅔¼¾⅛])")
_MEASURE: Final = re.compile(
    r"(?<=[\d½⅓⅔¼¾⅛⅜⅝⅞⅕]) (?=(?:kg|g|mg|l|ml|cl|dl|m|cm|mm|lb|oz|fl|tsp|tbsp)\b|%|°)"
)
_UNIT_THEN: Final = re.compile(r"(?<=%) (?=vol\b)|(?<=\d%) (?=[^\W\d_])")
_SIGN_BEFORE: Final = re.compile(r"(?<=[£$€×]) (?=\d)|(?<=\d) (?=×)")
_DAY: Final = re.compile(
    r"(?<=\d\.) (?=(?:Jan|Jän|Feb|Mär|Apr|Mai|Jun|Jul|Aug|Sep|Okt|Nov|Dez)[a-zä]*\b)"
    r"|(?<=\d\u00a0de) (?=[^\W\d_])| (?=de[ \u00a0](?:19|20)\d\d\b)"
)
"""Between a day and its month as German and Spanish write them: "12. November", "12 de mayo"."""
_SHORTENED: Final = re.compile(r"(?<=\b[^\W\d_]\.) (?=[^\W\d_]\.)")
_BRACKET: Final = re.compile(r"([^\W\d_]{2,}) (\([^\W\d_]{1,12}\))")
_YEAR: Final = re.compile(r"(?<=[^\W\d_]) (?=(?:19|20)\d\d\b)")
LEAST_WORDS: Final = 5
"""Fewer words go on one line, or a title's two: nothing is tied to their last. Maker's own."""
LEAST_OF_FACT: Final = 3
"""Behind a head, in the narrow column of a label, already so few go on two. Maker's own."""
MOST_TIED: Final = 18
"""Letters that stay together at the end of a paragraph: more could not be parted in a column."""


def set_card(card: UsageCard, language: str) -> UsageCard:
    """Return a card whose every sentence is set."""

    def said(text: str) -> str:
        return set_words(text, language)

    return replace(
        card,
        title=set_marks(card.title, language),
        to=curl(card.to, language),
        sender=curl(card.sender, language),
        what=said(card.what),
        contents=tuple(
            replace(
                one,
                lead=curl(tie_amounts(one.lead), language),
                text=curl(tie_bracket(tie_amounts(one.text)), language),
            )
            for one in card.contents
        ),
        allergens=tuple(map(tie_bracket, card.allergens)),
        may_contain=tuple(map(tie_bracket, card.may_contain)),
        unknown=tuple(curl(one, language) for one in card.unknown),
        packets=tuple(curl(one, language) for one in card.packets),
        use=tie_last(said(card.use), LEAST_OF_FACT),
        keep=tie_last(said(card.keep), LEAST_OF_FACT),
        once_opened=said(card.once_opened),
        strength_text=tie_amounts(card.strength_text),
        cautions=tuple(said(one) for one in card.cautions),
        made_on_text=tie_amounts(card.made_on_text),
        date_mark=replace(card.date_mark, text=tie_amounts(card.date_mark.text)),
        message=set_marks(card.message, language),
    )


def set_words(text: str, language: str) -> str:
    r"""Return a sentence as it is set.

    >>> set_words("Keeps 6 months from 12 November 2026.", "en_GB").replace(NO_BREAK, "_")
    'Keeps 6_months from 12_November_2026.'
    >>> set_words('Say "thanks", it\'s Ana\'s.', "en")
    'Say “thanks”, it’s Ana’s.'
    """
    return tie_last(tie_amounts(set_marks(text, language)))


def tie_amounts(text: str) -> str:
    """Tie a figure to its unit, a day to its month and year.

    >>> tie_amounts("Net 200 g, about 40 % vol.").replace(NO_BREAK, "_")
    'Net 200_g, about 40_%_vol.'
    >>> tie_amounts("z. B. am 12. November, el 12 de mayo de 2027").replace(NO_BREAK, "_")
    'z._B. am 12._November, el 12_de_mayo_de_2027'
    """
    if ". " not in text and not _FIGURE.search(text):
        return text  # nothing of what is tied is without a figure but "z. B."
    for pattern in (_AMOUNT, _UNIT_THEN, _SIGN_BEFORE, _DAY, _SHORTENED, _YEAR):
        text = pattern.sub(NO_BREAK, text)
    return text


def tie_measures(text: str) -> str:
    """Tie a figure to the sign of its unit, and to nothing else.

    >>> tie_measures("0.84 kg of sugar, 12 jars of 200 ml").replace(NO_BREAK, "_")
    '0.84_kg of sugar, 12 jars of 200_ml'
    """
    return _MEASURE.sub(NO_BREAK, text)


def tie_last(text: str, least: int = LEAST_WORDS) -> str:
    """Tie the last word of a sentence to the one before it, so that it never stands alone.

    >>> tie_last("Well away from candles and lamps.").replace(NO_BREAK, "_")
    'Well away from candles and_lamps.'
    >>> tie_last("At room temperature.", LEAST_OF_FACT).replace(NO_BREAK, "_")
    'At room_temperature.'
    """
    parts = text.split(" ")
    if len(parts) < least or len(parts[-2]) + len(parts[-1]) > MOST_TIED:
        return text
    return " ".join(parts[:-1]) + NO_BREAK + parts[-1]


def tie_bracket(text: str) -> str:
    """Tie a bracket of one word to the word before it, where both are short.

    >>> tie_bracket("nuts (almond)").replace(NO_BREAK, "_")
    'nuts_(almond)'
    >>> tie_bracket("plain flour (wheat)").replace(NO_BREAK, "_")
    'plain flour_(wheat)'
    >>> tie_bracket("dried shrimp (crustaceans)")
    'dried shrimp (crustaceans)'
    """
    return _BRACKET.sub(_tie_short, text)


def _tie_short(found: re.Match[str]) -> str:
    return found[1] + (NO_BREAK if len(found[1] + found[2]) < MOST_TIED else " ") + found[2]
