"""Stones of fruit that a method cracks, crushes or opens for their kernels, which hold cyanide.

Some words may mean other seeds and nuts too, and count only where the list holds stone fruit.
Leaves out what follows from it: foods_in_method.py brings the kernels in as a food.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from stillroom.core.words.patterns import clause_regex

_STONES = clause_regex(
    r"\b(?:cherry|apricot|peach|plum|damson|sloe) (?:stones?|kernels?|pits?)\b"
    r"|\bkernels? (?:of|from) (?:the )?"
    r"(?:stones?|cherr\w+|apricots?|peach\w*|plums?)\b"
    r"|\bcrack(?:ed|ing)? (?:\w+ ){0,4}(?:stones?|kernels?|pits)\b"
    r"|\b(?:crush|pound|smash|bash|break|grind|blitz|blend|hammer|bruise)\w* (?:[\w,]+ ){0,8}?"
    r"(?:stones|kernels|pits)\b(?! (?:out|away|removed))"
    r"|\b(?:stones|pits) (?:\w+ )?(?:break|crack|split|shatter|are (?:crushed|broken|cracked))"
    # a book reads the foods of a method in its own language; these must be seen in any
    r"|\bbittere?n? ?mandeln?\b|\bbittermandeln?\b"
    r"|\b(?:aprikosen|marillen|pfirsich|kirsch|zwetschg?en|pflaumen)kerne?n?\b"
    r"|\bamandes? (?:amères?|d['’](?:abricots?|noyaux))|\bnoyaux? (?:d['’]abricots?"
    r"|de (?:pêches?|cerises?|prunes?))\b|\b(?:concass|cass|écras|bris)\w* (?:\w+ ){0,2}noyaux\b"
    r"|\bmandorl[ae] amar[ae]\b|\barmelline?\b|\bnoccioli (?:di|delle) (?:albicocch?[ae]|pesch?[ae]"
    r"|ciliegi?[ae]|prugn[ae])\b|\balmendras? amargas?\b"
    r"|\bhuesos? de (?:los )?(?:albaricoques?|melocoto\w+|cerezas?|ciruelas?)\b"
    r"|\bbittere amandel(?:en)?\b|\b(?:abrikozen|perzik|kersen|pruimen)pit(?:ten)?\b",
    re.IGNORECASE,
)
# of stone fruit alone, since these words may mean other seeds too: "Die Kerne aufknacken"
_BROKEN_ELSEWHERE = tuple(
    clause_regex(
        rf"\b(?:{stones})\b[^.;]{{0,50}}\b(?:{broken})"
        rf"|\b(?:{broken})\w* [^.;]{{0,30}}?\b(?:{stones})\b",
        re.IGNORECASE,
    )
    for stones, broken in (
        (
            "kerne?n?|steine?n?",
            r"(?:auf)?(?:knack|schlag|gebroch|brech|sto(?:ß|ss))|zer\w+|m[öo]rser",
        ),
        ("noyaux", r"concass|cass|écras|bris|ouvr|broy|pil"),
        ("noccioli", r"romp|rott|schiacc|spacc|frantum|pest|apr(?:ire|ite|i)"),
        ("huesos?|carozos?", r"part|romp|machac|machaq|casc|quebr|tritur|abr(?:ir|e|a)"),
        ("stones?|pits?", r"hammer|mallet|nutcracker|(?:cracked |smashed )?open\b"),
        ("inner|inside|bitter", r"nuts?\b|kernels?\b|seeds?\b"),
        ("pitten", r"kraak|kraken|gekraakt|breek|stamp|plet|sla"),
    )
)
_AND_ALL = clause_regex(r"\b(?:stones?|pits?|kernels?) and all\b", re.IGNORECASE)
_POUNDED = clause_regex(r"\b(?:pound|crush|bruis|mash|beat|mill|grind|blend)\w*", re.IGNORECASE)
_THE_NUTS = clause_regex(
    r"\b(?:and|the|these) (?:inner )?(?:nuts?|kernels?|seeds?)\b", re.IGNORECASE
)
_OPENED = clause_regex(
    r"\b(?:stones?|pits?)\b[^.;]{0,60}\b(?:hammer|mallet|nutcracker|open)\b|\binner (?:nut|kernel)",
    re.IGNORECASE,
)


def broken_stones(clause: str, told: Iterable[str] | None) -> str:
    """Return the words of a clause that break stones or put their kernels in, "" of any other.

    `told` are the sentences of a method with stone fruit in its list, None of any other.

    >>> broken_stones("Crack a few of the stones", None), broken_stones("Hit the pits", None)
    ('Crack a few of the stones', '')
    >>> broken_stones("combine the fruit and nuts", ["Hit the pits with a hammer."])
    'and nuts'
    >>> broken_stones("stones and all", ["Pound the cherries, stones and all."])
    'stones and all'
    >>> broken_stones("stones and all", ["Put the plums into a jar, stones and all."])
    ''
    """
    found = _STONES.search(clause)
    if found is None and told is not None:
        found = next(filter(None, (one.search(clause) for one in _BROKEN_ELSEWHERE)), None)
        found = found or _from_what_was_said_before(clause, told)
    return found[0] if found else ""


def _from_what_was_said_before(clause: str, told: Iterable[str]) -> re.Match[str] | None:
    # only of these few words is the whole method gone through
    if found := _AND_ALL.search(clause):
        return found if any(found[0] in one and _POUNDED.search(one) for one in told) else None
    nuts = _THE_NUTS.search(clause)
    return nuts if nuts and any(map(_OPENED.search, told)) else None
