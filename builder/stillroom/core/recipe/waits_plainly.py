"""Lengths of time in another language said plainly: "une semaine ou deux", "ein halbes Jahr".

Leaves out what waits so long: waits_elsewhere.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.words.patterns import late_regex

# "durante a noite" is a night, whatever else it says
DURING: Final = late_regex(
    r"\bdurante\b(?! (?:a|la|uma|una|toda a|toda la) no(?:ite|che))", re.IGNORECASE
)
PLAINLY: Final = (
    (
        late_regex(
            r"\b(?:entre|zwischen|tra|fra|tussen|mellan)\s+(\w+)\s+(?:y|et|und|e|en|och)\s+(\w+)"
            r"(?=\s+[^\W\d])",
            re.IGNORECASE,
        ),
        r"\1-\2",
    ),
    # "une semaine ou deux", "en uge eller to"
    (
        late_regex(
            r"\b(?:1|une?|un[ao]|uma?|een|eine?n?|en|ett?|ei|jeden|jedną)\s+([^\W\d]+)"
            r"\s+(?:ou|oder|o|of|eller|lub)\s+(?:2|deux|dos|due|duas|dois|zwei|twee|två|to|dwa"
            r"|dwie)\b"
            r"(?!\s+(?:semain|jour|mois|woche|tage|monat|settiman|giorn|mes|d[ií]as|week|dag|maand"
            r"|veck|månad|uger|uker|måned|tygod|dni)\w*)",
            re.IGNORECASE,
        ),
        r"1-2 \1",
    ),
    (late_regex(r"\b(tydzień|miesiąc|dzień|rok) lub (?:2|dwa)\b", re.IGNORECASE), r"1-2 \1"),
    (
        late_regex(
            r"(?<!nacht )\b(?:en|ei|ett?) (?=(?:vecka|månad|timme|dag|dygn|natt|uge|uke|måned"
            r"|time|døgn|nat|år)\b)",
            re.IGNORECASE,
        ),
        "1 ",
    ),
    # "na tydzień" is for one, "po roku" after one
    (
        late_regex(
            r"\b(na|przez|za|po|około|ok\.|najmniej|minimum|jeszcze|kolejny)\s+"
            r"(?=(?:tydzień|miesiąc|dobę|rok|tygodniu|miesiącu|roku|tygodnia|miesiąca|godzinę)\b)",
            re.IGNORECASE,
        ),
        r"\1 1 ",
    ),
    (DURING, "por"),  # and no word of keeping: "dura"
    (
        late_regex(
            r"((?:macera|infus|fermenta)\w*(?:\s+[^\W\d]+){0,3}?)\s+(?:suele\s+)?d[ue]r(?!ante\b)\w+",
            re.IGNORECASE,
        ),
        r"\1",
    ),
)
# loose lengths at the least that they can mean, since what is shorter is safe
LOOSE_LENGTHS: Final = (
    (r"\b(?:(?:ein|ett?) )?(?:gut(?:es)? )?(?:halbe[sn]? ?jahr|halvår|half ?jaar)\b", "6 Monate"),
    (r"\b(?:et )?halvt år\b|\bmeio ano\b|\bpół roku\b|\bpůl roku\b", "6 Monate"),
    (r"(?<=\bdo )roku\b", "1 rok"),
    (r"(?<=\botwarciu )miesiąc\b", "1 miesiąc"),
    (r"(?<=\botwarciu )tydzień\b", "1 tydzień"),
    (r"(?<=\bprzechowywać )rok\b|(?<=\bprzez )rok\b|(?<=\bvydrží )rok\b", "1 rok"),
    (r"\b(?:medio año|mezz['’]anno|mezzo anno|une demi-année)\b", "6 Monate"),
    (r"\b(?:ein )?vierteljahr\b", "3 Monate"),
    (
        r"\b(?:mehrere|viele|vele|många|mange|wiele|much[ao]s|molt[ei]|muit[ao]s|plusieurs"
        r"|varios|varias|diversi|diverse|parecchi\w*|meerdere|flera|flere|vários|várias"
        r"|kilka|několik)\b",
        "3",
    ),
    (r"\b(?:einige|ein paar|quelques|algun[oa]s|un[oa]s poc[oa]s|alcun[ei]|qualche)\b", "2"),
    (r"\b(?:enkele|enige|een paar|några|noen|nogle|alguns|algumas)\b", "2"),
)
# of them those with their unit: "ein halbes Jahr"
_HALF_YEARS: Final = tuple(
    (late_regex(words, re.IGNORECASE), least)
    for words, least in LOOSE_LENGTHS
    if not least.isdigit()
)


def plainly(sentence: str) -> str:
    """Return a sentence with what would part or hide its length said otherwise.

    >>> plainly("Suele durar entre 3 y 6 meses."), plainly("Låt stå en vecka.")
    ('Suele durar 3-6 meses.', 'Låt stå 1 vecka.')
    """
    for pattern, said in (*_HALF_YEARS, *PLAINLY):
        sentence = pattern.sub(said, sentence)
    return sentence
