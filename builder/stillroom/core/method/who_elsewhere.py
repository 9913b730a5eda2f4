"""Whom a recipe is said to be for in another language than English: "für Babys", "podać dzieciom".

Ten languages from German to Polish. Whom it is kept from is told by nobody here ("von Kindern
fernhalten", "nicht für Babys unter einem Jahr"). Leaves out English, and where it is looked for:
who.py.
"""

from __future__ import annotations

import re

from stillroom.core.words.patterns import clause_regex

_NOT_FOR = clause_regex(
    r"\b(?:nichts?|keine?[nmrs]?|nie|niemals|ohne|vor|fern\w*|unter (?:einem|1|12|zwölf)"
    r"|reichweite|pas|jamais|sans|moins d['’e]|portée|loin|interdit\w*|déconseillé\w*|non|mai"
    r"|meno di|sotto|lontano|portata|nunca|sin|menos de|menores|lejos|alcance|niet|geen|nooit"
    r"|jonger|onder (?:de|een|1|12)|bereik|inte|ej|aldrig|under (?:ett|1|12|et)|räckhåll|ikke"
    r"|aldri|utilgængelig\w*|utilgjengelig\w*|rækkevidde|rekkevidde|não|longe|fora|bez|nigdy"
    r"|poniżej|niedostępn\w*|zasięg\w*|stat(?:t|t dessen)|anstatt|instead|ersetz\w*|weglass\w*)\b",
    re.IGNORECASE,
)
# a party for one not yet born is none of theirs
_INFANTS = clause_regex(
    r"\bfür (?:\w+ )?(?:babys?|säuglinge?|neugeborene|zahnende)\b|\bbabys? ab\b|\bbeikost\w*"
    r"|\bbaby-?(?:kekse?|breie?|nahrung|snacks?|kost|zwieback|plätzchen|waffeln?|brot|riegel)\b"
    r"|\bpour (?:\w+ )?(?:bébés?|nourrissons?|tout-petits)\b|\b(?:de|des) bébés?\b|\bbébés? dès\b"
    r"|\bper (?:\w+ )?(?:neonat[oi]|lattant[ei]|bebè)\b|\bsvezzamento\b|\bdello svezzamento\b"
    r"|\bpara (?:\w+ )?(?:beb[eéê]s?|lactantes?|lactentes?|rec[ié]{1,2}m?n[- ]nacidos?"
    r"|recém-nascidos?)\b|\bdestete\b|\bintrodução alimentar\b"
    r"|\bvoor (?:\w+ )?(?:baby(?:['’]?s)?|zuigelingen)\b|\bbaby(?:hap|koek|voeding|pap)\w*"
    r"|\b(?:för|till|åt) (?:\w+ )?(?:bebis(?:ar|arna|en)?|spädbarn)\b|\bbebis(?:kex|mat|gröt)\w*"
    r"|\btil (?:\w+ )?(?:baby(?:en|er|erne|ene)?|spædbørn|spedbarn)\b"
    r"|\bbaby(?:mad|grød|kiks|mat|grøt|kjeks)\w*"
    r"|\bdla (?:\w+ )?(?:niemowl\w+|noworodk\w+|bobas\w+)\b",
    re.IGNORECASE,
)
_FOUR_TO_ELEVEN = (
    r"(?:[4-9]|1[01]|vier|fünf|sechs|sieben|acht|neun|zehn|elf|quatre|cinq|six|sept|huit|neuf"
    r"|dix|onze"
    r"|quattro|cinque|sei|sette|otto|nove|dieci|undici|cuatro|cinco|seis|siete|ocho|nueve|diez|once"
    r"|vijf|zes|zeven|negen|tien|fyra|fem|sex|sju|åtta|nio|tio|elva|fire|seks|syv|otte|åtte|ni|ti"
    r"|elleve|quatro|sete|oito|dez|czterech|pięciu|sześciu|siedmiu|ośmiu|dziewięciu|dziesięciu"
    r"|jedenastu|czwartego|piątego|szóstego|siódmego|ósmego|dziewiątego|dziesiątego)\.?"
)
_FROM_MONTHS = clause_regex(
    rf"\b(?:ab(?: dem)?|dès(?: les?)?|à partir de|dai|da|a partire d(?:a|ai|al)|desde(?: los)?"
    rf"|a partir d(?:e|e los|os|o)|vanaf|från|fra|od|powyżej) {_FOUR_TO_ELEVEN}(?:\s?(?:bis|-|–"
    rf"|à|a|tot|till|til|do)"
    rf"\s?{_FOUR_TO_ELEVEN})?\s(?:monat\w*|lebensmonat\w*|mois|mesi|meses|mês|maand\w*|månad\w*"
    rf"|måned\w*"
    r"|miesi[ąę]\w+)",
    re.IGNORECASE,
)
# what a drink, a cheese or a jar does by then
_RIPENS = clause_regex(
    r"\b(?:reif\w*|gereift\w*|trink\w*|genie(?:ß|ss)\w*|genuss\w*|lager\w*|haltbar\w*|fertig|mûr\w*"
    r"|conserv\w*|boire|prêt\w*|affin\w*|pront[oaie]|matur\w*|bere|stagion\w*|invecch\w*|list[oa]s?"
    r"|beb\w+|consum\w*|envejec\w*|rijp\w*|drink\w*|klaar|bewa\w*|houdbaar\w*|lagra\w*|mogna\w*"
    r"|mogen"
    r"|drick\w*|färdig\w*|hållbar\w*|lagr\w+|moden|modne\w*|drik\w*|klar|holdbar\w*|gotow\w*"
    r"|dojrz\w*"
    r"|pić|przechow\w*|trwał\w*|leżak\w*|pront[oa]s?|envelhec\w*)\b",
    re.IGNORECASE,
)
_GIVEN = (
    r"(?:geben|gibt|gib|servier\w*|reich(?:en|t)|schenk\w*|verteil\w*|donn\w+|serv\w+|offr\w+"
    r"|distribu\w*|da(?:re|rl[oiae]|te|i)|dar(?:l[oae]s?|sel[oae]s?|-\w+)?|d[aá]r?sel[oae]s?|dad"
    r"|gee?f\w*|geven|deel\w*|ge|giv|gi|podać|podawać|podaj|podajemy|dać|daj|częstow\w*)"
)
_THE_CHILDREN = (
    r"(?:(?:den|unseren|allen|kleinen) kindern|aux (?:petits )?enfants|ai bambini|a los niños"
    r"|aan (?:de )?kinderen|till (?:alla )?barnen|til (?:børnene|barna|ungene)|às crianças"
    r"|dzieciom)"
)
_CHILDREN = clause_regex(
    rf"\b{_GIVEN}\b.*\b{_THE_CHILDREN}\b|\b{_THE_CHILDREN}\b.*\b{_GIVEN}\b"
    r"|\bfür (?:\w+ ){0,2}kinder\b|\bpour (?:\w+ ){0,2}enfants\b|\bper (?:\w+ ){0,2}bambini\b"
    r"|\bpara (?:\w+ ){0,2}(?:niñ[oa]s|crianças)\b|\bvoor (?:\w+ ){0,2}kinderen\b"
    r"|\b(?:för|till|åt) (?:\w+ )?barn(?:en)?\b|\btil (?:\w+ )?(?:børn|barn)\b"
    r"|\bdla (?:\w+ ){0,2}dzieci\b",
    re.IGNORECASE,
)


def for_infants_elsewhere(clause: str) -> str:
    """Return the words of a clause that say it is for a child under one; "" where none do.

    >>> for_infants_elsewhere("Für Babys ab 8 Monaten"), for_infants_elsewhere("Babyparty")
    ('Für Babys', '')
    >>> for_infants_elsewhere("Nicht für Babys unter einem Jahr")
    ''
    """
    return _said(_INFANTS, clause)


def from_months_elsewhere(clause: str) -> str:
    """Return the months from which a clause says that a baby may have it; "" where it ripens.

    >>> from_months_elsewhere("Ab 8 Monaten"), from_months_elsewhere("Trinkreif ab 8 Monaten")
    ('Ab 8 Monaten', '')
    """
    return "" if _RIPENS.search(clause) else _said(_FROM_MONTHS, clause)


def for_children_elsewhere(clause: str) -> str:
    """Return the words of a clause that say it is for children; "" where none do.

    >>> for_children_elsewhere("podać dzieciom"), for_children_elsewhere("Von Kindern fernhalten")
    ('podać dzieciom', '')
    >>> for_children_elsewhere("förvaras utom räckhåll för barn")
    ''
    """
    return _said(_CHILDREN, clause)


def _said(pattern: re.Pattern[str], clause: str) -> str:
    found = pattern.search(clause)
    return "" if found is None or _NOT_FOR.search(clause) else found[0].strip()
