"""Whether a sentence gives something to children under one, by their age: "for under-ones".

Eleven languages. It does where it says that it suits them, or says nothing else at all; a warning
of it ("not for children under one", "leave out the honey") is none. Leaves out other words for
babies: who.py and who_elsewhere.py.
"""

from __future__ import annotations

import re

from stillroom.core.words.patterns import clause_regex

_ONE = (
    r"(?:one|1|a year|1[02] months|twelve months)(?! ?(?:/|\d|hundred|and a half))"
    r"(?: years?(?: old)?\b| year of age\b)?"
)
_THEY = (
    r"(?:children|kids|kiddies|babies|infants|little ones|toddlers|tots|grandchildren|anyone|those)"
)
_ONE_ELSEWHERE = (
    r"(?:(?:einem|een|één|ett?|ei[nt]|en|un[oa]?|um|1|d['’]un|l['’]|dell['’]|jednego"
    r"|pierwszego)?\s?"
    r"(?:jahr(?:es)?|an|anno|año|ano|jaar|års?|rok[u]?(?: życia)?)|(?:12|zwölf|douze|dodici|doce"
    r"|twaalf|tolv|doze|dwunast\w+)\.?\s(?:monat\w*|mois|mesi|meses|maanden|månader|måneder"
    r"|miesi\w+))"
)
_UNDER_ONE = clause_regex(
    rf"\b(?P<they>{_THEY}(?: aged| of| who are)? (?:under|below|younger than|less than|not yet)"
    rf" (?:the age of )?{_ONE}|under[- ](?:ones?|1['’]?s|one-year-olds?|(?:12|twelve)[- ]months?)\b"
    r"(?! (?:roof|pot|pan|hour|condition|name|cover|lid|minute|day|week|degree))"
    rf"|(?:klein)?kinder[n]? (?:unter|bis|im ersten) (?:{_ONE_ELSEWHERE}|lebensjahr)"
    r"|unter[- ]?(?:einjährigen?|1-jährigen?)"
    rf"|(?:enfants|petits|bébés|tout-petits) (?:âgés )?de moins (?:de "
    rf"|d['’])(?:un )?{_ONE_ELSEWHERE}"
    rf"|(?:bambini|bimbi|piccoli) (?:sotto|di meno di|con meno di|al di sotto (?:di|dei?)?"
    rf"|fino a)\s?(?:i |dei )?{_ONE_ELSEWHERE}"
    rf"|(?:(?:niñ[oa]s|bebés|peques|crianças|bebês|meninos) )?(?:com |de )?(?:menores"
    rf"|menos) de {_ONE_ELSEWHERE}"
    rf"|(?:kinderen|kindjes|baby['’]?s|kleintjes|peuters) (?:onder|jonger dan) (?:de "
    rf"|het )?{_ONE_ELSEWHERE}"
    rf"|(?:barn|småbarn|bebisar|børn|småbørn|babyer) (?:under|yngre (?:än|end"
    rf"|enn)) {_ONE_ELSEWHERE}"
    rf"|(?:dzieci|maluch\w+|maluszk\w+|niemowl\w+) (?:poniżej|do|przed ukończeniem"
    rf"|młodsz\w+ niż) {_ONE_ELSEWHERE})",
    re.IGNORECASE,
)
_SUITS = clause_regex(
    r"\b(?:suit(?:s|able|ed)|fine|safe|good|ideal|perfect|made|great|ok(?:ay)?|meant|even|also"
    r"|too|as well|love[ds]?"
    r"|geeignet|passend|ideal|perfekt|gut|prima|toll|super|auch|sogar|schon|gemacht|lecker"
    r"|convien\w+|adapté\w*|idéa\w+|parfait\w*|aussi|même|bon(?:ne)?s?|dès"
    r"|adatt\w+|ideal\w*|perfett\w+|anche|indicat\w+|buon\w+"
    r"|apt\w+|adecuad\w+|perfect\w+|también|incluso|buen\w*"
    r"|geschikt|ideaal|ook|zelfs|lekker|passar|lämplig\w*|även|också|bra|passer|egnet|egnede"
    r"|velegne\w+|også|god\w*|fin"
    r"|adequad\w+|apropriad\w+|também|até|perfeit\w+|bom|boa|indicad\w+"
    r"|odpowiedni\w*|nada(?:je|ją)|idealn\w+|także|również|dobr\w+|świetn\w+|już)\b",
    re.IGNORECASE,
)
_LEFT_OUT = clause_regex(
    r"\b(?:leave (?:it |them |the \w+ )?out|omit\w*|skip\w*|swap\w*|without|instead|weglass\w*"
    r"|ohne|sans|senza|sin"
    r"|zonder|utan|uden|uten|sem|bez)\b",
    re.IGNORECASE,
)
_WARNS = clause_regex(
    r"\b(?:no|not|never|avoid\w*|wait\w*|leave|keep|away|only|unless|danger\w*|risk\w*|harm\w*"
    r"|unsafe|unsuitable|unfit"
    r"|poison\w*|botuli\w*|ill|sick\w*|illness|disease|krank\w*|malades?|maladie|ammala\w*"
    r"|enferm\w*|ziek\w*|sjuk\w*|syge?|syke?|doen\w*|chor\w*|warn\w*|caution|careful|nichts?"
    r"|keine?[nmrs]?|nie|niemals|vor|fern\w*"
    r"|gefähr\w+"
    r"|ungeeignet|giftig|achtung|vorsicht|tabu|verboten|verzicht\w+|erst|pas|jamais|loin|portée"
    r"|interdit\w*"
    r"|déconseill\w+|attention|risque\w*|non|mai|lontano|portata|pericolos\w+|attenzione"
    r"|vietat\w+|sconsigliat\w+"
    r"|nunca|lejos|alcance|peligros\w+|evit\w+|prohibid\w+|niet|geen|nooit|bereik|gevaarlijk\w*"
    r"|ongeschikt|inte|ej"
    r"|aldrig|räckhåll|farlig\w*|olämplig\w*|undvik\w*|varning|ikke|aldri|\w*tilgængelig\w*"
    r"|\w*tilgjengelig\w*"
    r"|rækkevidde|rekkevidde|uegne\w+|advarsel|undgå\w*|unngå\w*|não|longe|perigos\w+|cuidado"
    r"|desaconselh\w+|proibid\w+"
    r"|nigdy|niedostępn\w*|zasięg\w*|niebezpiecz\w+|uwaga|unika\w+|niewskazan\w+|zakazan\w+"
    r"|gd[yż]\w*)\b",
    re.IGNORECASE,
)
_CONTAINS = clause_regex(
    r"\b(?:contain\w*|enthält|contient|contiene|bevat|innehåller|indeholder|inneholder|contém"
    r"|zawiera|use|used|replace\w*)\b",
    re.IGNORECASE,
)
_GIVEN_TO = clause_regex(
    r"\b(?:for|to|give|für|pour|aux?|per|ai|para|a|voor|aan|för|till|åt|til|dla)\b", re.IGNORECASE
)
_BARE_WORDS = 9


def said_under_one(clause: str, sentence: str) -> str:
    """Return the words of a clause that give it to children under one; "" where none do.

    >>> said_under_one("Suitable for under-ones", "Suitable for under-ones, and for us.")
    'under-ones'
    >>> said_under_one("Für Kinder unter einem Jahr", "Für Kinder unter einem Jahr nicht geeignet.")
    ''
    """
    found = _UNDER_ONE.search(clause)
    if found is None or _WARNS.search(clause) or _LEFT_OUT.search(sentence):
        return ""
    bare = len(sentence.split()) <= _BARE_WORDS and _GIVEN_TO.search(clause, 0, found.start())
    warned = _WARNS.search(sentence) or _CONTAINS.search(sentence)
    return found["they"].strip() if _SUITS.search(clause) or (bare and not warned) else ""
