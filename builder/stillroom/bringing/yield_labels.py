"""How much is made, behind a word that says so, or two of them: "Portioner/mängd: ca 25 stycken".

The words are those of words.yml. Leaves out yields told in a sentence: yields.py, sorting.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.heads import SPAN_UNIT, plain, words

_LABELLED: Final = re.compile(r"(?P<head>[^:=\d]{2,48}?)\s*[:=]\s*(?P<said>[^\s:(][^:(]{0,60})")
# "Salen unos 40", "Da circa 30 biscotti": a verb, and how many
_SAID: Final = re.compile(
    r"(?P<head>[^\W\d]+(?:\s(?:de|sich))?)\s+(?P<said>(?:(?:ca\.?|circa|cirka|etwa|ungefähr|environ|unos|unas|około|ongeveer|omkring|omtrent|about)\s+)?"
    r"\d+(?:\s*(?:-|–|a|à|bis|tot|till|til|do)\s*\d+)?(?:\s+[^\W\d][\w'’-]*){0,3}?"
    r"(?:\s(?:de|da|di|à|von|van|of|på|po)\s\d+\s?(?:g|gr|ml|cl|dl|l|kg|oz))?)\.?",
    re.IGNORECASE,
)
_AND: Final = re.compile(
    r"\s*[/&+,]\s*|\s+(?:and|or|und|oder|et|ou|e|o|y|en|of|och|eller|og|i|lub)\s+", re.IGNORECASE
)
_COUNTED: Final = re.compile(r"\d|[½¼¾]|\b(?:one|two|three|four|six|ein|une?|een|en|ett|due|dos)\b")
_ABOUT: Final = re.compile(r"^(?:[~±]|(?:aproximadamente|unos|unas|environ)\b)\s*", re.IGNORECASE)
_BARE: Final = re.compile(r"(?:(?:ca\.?|about|circa|etwa)\s*)?\d+(?:\s*(?:-|–|to|bis|à)\s*\d+)?")
_LONGEST: Final = 60
_SPAN: Final = re.compile(rf"\d\s*{SPAN_UNIT}\b", re.IGNORECASE)


def labelled_yield(text: str) -> str:
    """Return how much a line says is made behind words that head it; "" for any other line.

    >>> labelled_yield("Portions/quantity: 25 biscuits"), labelled_yield("Antal portioner: 8")
    ('25 biscuits', '8 servings')
    >>> labelled_yield("Salen unos 40"), labelled_yield("Da circa 30 biscotti.")
    ('about 40', 'circa 30 biscotti')
    >>> labelled_yield("Rende 4 frascos de 300 g"), labelled_yield("Antall porsjoner = 4")
    ('4 frascos de 300 g', '4 servings')
    >>> labelled_yield("Da 2 a 3 giorni"), labelled_yield("Ger 2 dl")
    ('', '2 dl')
    >>> labelled_yield("Quantity of sugar: 2 lb"), labelled_yield("Portions: chill for 2 hours")
    ('', '')
    """
    bare = text.strip()
    verb = _SAID.fullmatch(bare) if len(bare) <= _LONGEST else None
    found = verb if verb and plain(verb["head"]) in words("yield_verbs") else None
    found = found or _LABELLED.fullmatch(bare)
    if found is None or not _COUNTED.search(found["said"]) or _SPAN.search(found["said"]):
        return ""
    said = _ABOUT.sub("about ", " ".join(found["said"].split()).strip(" ."))
    if found is verb:
        return said
    whole = plain(found["head"])
    heads = [whole] if whole in words("yield_served") else _AND.split(found["head"])
    served = [plain(head) in words("yield_served") for head in heads]
    made = [plain(head) in words("yield_made") for head in heads]
    if not all(one or two for one, two in zip(served, made, strict=True)):
        return ""
    return f"{said} servings" if all(served) and _BARE.fullmatch(said) else said
