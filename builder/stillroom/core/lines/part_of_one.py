"""A part of one thing at the head of a line: "1/2 of a 6 oz. bottle", "la moitié d'un citron".

Put as the reader takes it, the part before what it is a part of: "1/2 6 oz. bottle", "1/2 citron".
A part of what is there already ("la moitié du sucre") is none of one, and stays. Leaves out
measures, "3/4 of a cup" (measures.py), and packs told before their size (packs_said.py).
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

PART: Final = r"(?P<part>(?<![\d/.,])\d\s?[/⁄]\s?\d|[½¼¾⅓⅔⅛⅜⅝⅞])"
"""A part of one, in figures."""
_ONE: Final = (
    r"(?:(?:an?|one|une?|un[oa]|uma?|ein(?:e[rsnm]?)?|een|en|ett?|ei|jedn(?:ej|ego)|1)\s+"
    r"|un['’]\s?)"
)
_OF: Final = r"\s+(?:(?:of|de|di|da|von|van|av|af|z)\s+|d['’]\s?)"
# a second number is no article: "1/2 of 1 1/2 cups", "1/2 of one or two lemons"
_NO_MORE: Final = (
    r"(?!\d\s?[/⁄]|[½¼¾⅓⅔⅛⅜⅝⅞–-]"
    r"|(?:or|to|and|bis|oder|und|ou|à|a|et|o|e|y|of|tot|eller|och|og|till?|do|lub|i)\b)"
)
_SIZE: Final = (
    r"(?:\d+(?:[.,]\d+)?[\s-]?(?:k?g|gr|gram(?:me)?s?|m[lL]|c[lL]|d[lL]|l|L|fl|oz|ounces?|lbs?|pounds?"
    r"|pints?|quarts?|lit(?:er|re)s?)\b\.?)"
)
_OF_ONE = late_regex(
    rf"^(?P<lead>\s*){PART}(?:{_OF}{_ONE}{_NO_MORE}(?=\w)|{_OF}(?={_SIZE}[\s-])"
    rf"|\s+an?\s+(?=\d{_SIZE}[\s-]))",
    re.IGNORECASE,
)
# half of one, in the words of dictionaries
_HALF_OF_ONE = late_regex(
    r"^(?P<lead>\s*)(?:(?:une?\s+|la\s+)?moitié\s+d['’]\s?une?\s|(?:la\s+)?mitad\s+de\s+(?:una?|1)\s"
    r"|(?:la\s+)?metà\s+di\s+(?:un[oa]?\s|1\s|un['’])"
    r"|(?:die\s+)?Hälfte\s+(?:von\s+)?(?:ein(?:er|es|em)|1)\s|(?:de\s+)?helft\s+van\s+(?:een|1)\s"
    r"|hälften\s+av\s+(?:ett?|en|1)\s|halvdelen\s+af\s+(?:et|en|1)\s"
    r"|halv(?:parten|delen)\s+av\s+(?:et|en|ei|1)\s|(?:a\s+)?metade\s+de\s+(?:uma?|1)\s"
    rf"|połow[aęy]\s+(?:jedn(?:ej|ego)|1)\s|(?:the\s+)?half\s+of\s+(?:one|1)\s)\s*{_NO_MORE}",
    re.IGNORECASE,
)
_JOINED: Final = r"(?:or|to|bis|oder|ou|à|tot|of|eller|till?|do|lub|a|o|–|-)"
_OF_SOME = late_regex(
    rf"^\s*(?:{PART}|(?:the\s+)?half|(?:la\s+)?(?:moitié|mitad|metà)|(?:a\s+)?metade|(?:die\s+)?Hälfte|(?:de\s+)?helft"
    rf"|hälften|halv(?:parten|delen)|połow[aęy]){_OF}(?:{_ONE.removesuffix(')')}|\d+\s?)){_JOINED}\s?(?=\w+\s+\w)",
    re.IGNORECASE,
)


def part_of_one(text: str) -> str:
    """Return a line with its part of one thing before that thing; any other as it is.

    Raises Unreadable for a part of so many: "1/2 of one or two lemons".

    >>> part_of_one("1/2 of 6 oz. bottle pectin"), part_of_one("la moitié d'un citron")
    ('1/2 6 oz. bottle pectin', '1/2 citron')
    >>> part_of_one("1/2 of 1 1/2 cups milk"), part_of_one("la moitié du sucre")
    ('1/2 of 1 1/2 cups milk', 'la moitié du sucre')
    """
    if some := _OF_SOME.match(text):
        raise Unreadable(
            f'"{some[0].strip()} …" could be a part of one, or of more.',
            "Write how many are used, in figures.",
        )
    halved = _HALF_OF_ONE.sub(r"\g<lead>1/2 ", text)
    return _OF_ONE.sub(r"\g<lead>\g<part> ", halved)
