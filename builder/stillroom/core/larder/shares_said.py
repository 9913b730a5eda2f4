"""How fat, sour or dark a food is said to be: "Sahne mit 30 % Fett", "vinegar (5% acidity)".

A share of fat, acid or cocoa adds no food and makes no other of it: its words are left out before
the food is looked up. A bare "30%" counts as one beside what is sold by such a share
(harmless.py). The words are those of dictionaries and packets, in the languages of the lines. How
strong a spirit is: lines/strength.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.larder.staple import Staple
from stillroom.core.words.patterns import late_regex

AT_LEAST: Final = (
    r"at least|minimum|min\.?|mind(?:estens|\.)?|almeno|al menos|au moins|mínimo|minst|mindst"
    r"|minimaal|minimalnie|co najmniej|pelo menos"
)
"""What makes a share the least of what will do."""
JOINS: Final = (
    rf"{AT_LEAST}|at|of|with|à|al|ao|a|de|di|da|mit|met|med|van|von|på|con|com|avec|z|o(?:\s+mocy)?"
    r"|about|ca\.?|circa|env\.?|environ|etwa|ongeveer|über|over|mere end"
)
"""What joins a share to its food: "alcool al 95%", "Sahne mit 30 %"."""
FAT: Final = (
    r"M\.?\s?G\.?|mat(?:ières?|\.)?\s*gr(?:asses?|\.)?|graisses?|grasses?"
    r"|Fett(?:gehalt|anteil)?(?:\s+i(?:n der|\.)?\s?Tr(?:ockenmasse|\.)?)?|F\.?\s?i\.?\s?Tr?\.?"
    r"|(?:milk[\s-]?|butter[\s-]?)?fat(?:\s+content)?|fett(?:halt|prosent|innhold)?"
    r"|fedt(?:procent|indhold)?|vet(?:gehalte)?|(?:materia )?grasa|(?:sostanza )?grass[ai]"
    r"|gordura|tłuszczu|tł\.?|rasvaa|lean"
)
"""What a share of fat is of."""
_ACID: Final = (
    r"(?:acetic )?acid(?:ity)?|acidité|acide(?: acétique)?|acidità|acido(?: acetico)?|acidez"
    r"|ácido(?: acético)?|(?:Essig)?säure(?:gehalt)?|(?:ättik)?syra|(?:eddik(?:e)?)?syre"
    r"|(?:azijn)?zuur(?:graad)?|kwasu(?: octowego)?|kwasowości|etikkahappoa"
)
_COCOA: Final = (
    r"coc[oa]a(?: (?:solids?|mass|content))?|cacao(?:gehalte)?(?: (?:solids?|minimum|mini))?"
    r"|kakao(?:anteil|gehalt|masse|halt|indhold|innhold)?|cacau"
)
_NUMBER: Final = (
    r"\d{1,3}(?:[.,]\d{1,2})?(?:\s?[-–]\s?\d{1,3}(?:[.,]\d)?)?\s*(?:%|per\s?cent|Prozent)"
)
_WHAT: Final = rf"(?:{FAT}|{_ACID}|{_COCOA})(?![^\W\d_])"
_SHARE = late_regex(
    rf"(?:(?<![^\W\d_])(?:{JOINS})\s+)*(?<![\d.,/]){_NUMBER}(?:-?ige[rsnm]?|-?ig)?"
    rf"\s*(?:(?:of|de|di|av|af|an|in)\s+|d['’]\s?)*{_WHAT}"
    rf"|(?<![^\W\d_])(?:teneur en |contenuto di |contenido de |teor de )?{_WHAT}[\s:]+"
    rf"(?:(?:{JOINS})\s+)*{_NUMBER}",
    re.IGNORECASE,
)
# what stands about a bare share: "panna al 35%", "5%iger Essig"
_JOINED_BEFORE = late_regex(
    rf"(?<=[^\W\d_] )(?:(?:{JOINS})\s+)+(?=\d{{1,3}}(?:[.,]\d{{1,2}})?\s?%\s*(?:$|[,;()]))",
    re.IGNORECASE,
)
_DARK = late_regex(rf"(?:{_COCOA})$", re.IGNORECASE)
_IG = late_regex(r"(?<=%)-?ige[rsnm]?\b", re.IGNORECASE)
_SOLD_BY_A_SHARE: Final = frozenset({"dairy", "vinegar", "chocolate", "cocoa"})


def without_shares(text: str) -> str:
    """Return a text with blanks for the shares said in it, so that all keeps its place.

    >>> without_shares("aceto al 6% di acidità").rstrip(), without_shares("Sahne, 30 % Fett")
    ('aceto', 'Sahne,          ')
    >>> without_shares("30% cream")
    '30% cream'
    """
    plain = without_told_shares(text)
    if "%" not in plain:
        return plain
    return _IG.sub(_blank, _JOINED_BEFORE.sub(_blank, plain))


def without_told_shares(text: str) -> str:
    """Return a text with blanks for those shares alone that say what they are of.

    >>> without_told_shares("vino, 6% de acidez"), without_told_shares("brandy at least 40%")
    ('vino,             ', 'brandy at least 40%')
    """
    if "%" not in text and not any(cent in text.lower() for cent in ("cent", "zent")):
        return text
    return _SHARE.sub(_blank, text)


def _blank(found: re.Match[str]) -> str:
    """Return blanks as long as what was found; "100% cocoa" at the head of a line is the food."""
    is_head = not found.string[: found.start()].strip() and _DARK.search(found[0])
    return found[0] if is_head else " " * len(found[0])


def is_sold_by_its_share(food: Staple | None) -> bool:
    """Whether a bare percentage beside a food is its fat, acid or cocoa: "Sahne 30%"."""
    return food is not None and bool(food.tags & _SOLD_BY_A_SHARE)
