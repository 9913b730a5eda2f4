"""How much a recipe makes, where a cook says it in the steps ("It gives about 4 bottles").

And where words of other languages say it, on any line: "goed voor 3 potjes". Leaves out what stands
behind "makes": sorting.py.
"""

from __future__ import annotations

import re
from typing import Final

_NUMBER: Final = (
    r"(?:about\s+|around\s+|roughly\s+|approx\.?\s+|approximately\s+|at\s+least\s+|up\s+to\s+|nearly\s+|some\s+)?"
    r"(?:\d+\s+\d/\d|\d/\d|\d+(?:[.,]\d+)?\s*[½¼¾]?(?:\s*(?:-|–|to|or)\s*\d+)?|[½¼¾]|an?(?=\s+dozen)|one|two|three|four|five|six"
    r"|seven|eight|nine|ten|eleven|twelve)"
)
_HELD: Final = (
    r"(?:jars?|jarfuls?|bottles?|bottlefuls?|pots?|tins?|bags?|boxes|tubs?|packets?|demijohns?)"
)
_MADE: Final = (
    r"(?:dozen|biscuits?|cookies?|cakes?|buns?|pieces?|squares?|bars?|fingers?|slices?|balls?|truffles?|sweets?|loaf|loaves|muffins?"
    r"|scones?|pies|tarts?|candles?|soaps?|servings?|cups?|pints?|pts?|quarts?|gallons?|lit(?:re|er)s?|l|ml|lbs?|pounds?|kg|g"
    r"|oz|ounces?)"
)
_SIZE: Final = (
    r"(?:[^\W\d][\w'’-]*\s+|\d+\s?-?(?:ml|g|oz|lb|l|cl)\.?\s+"
    r"|\d[\d/]*\s*-?(?:pint|pound|ounce)\s+){0,3}?"
)
_SAYS: Final = re.compile(
    r"(?:^|(?<=[.!;)]\s)|(?<=[.!;)]\s\s)|(?<=\s[-–]\s))"
    r"(?:(?:it|this|that|these|they|we|i|you|mine|he|she|(?:my|our)\s+[^\W\d]+|the\s+recipe|this\s+recipe|this\s+amount|the\s+lot|a\s+batch)\s+)?"
    r"(?:(?:should|will|would|usually|always|just|only|can)\s+){0,2}"
    r"(?:gives?|gave|made|makes?|fills?|filled|yields?|yielded|produces?|got|get|comes?\s+to|cuts?\s+into|divides?\s+into"
    r"|(?:is\s+)?enough\s+(?:for|to\s+fill)|(?:is\s+)?sufficient\s+for)\s+"
    r"(?:me\s+|us\s+|you\s+|enough\s+(?:for|to\s+fill)\s+)?"
    rf"(?P<said>{_NUMBER}\s+{_SIZE}(?:{_HELD}|{_MADE})\b)"
    r"(?!\s+(?:of|more|less|extra|each)\b(?!\s+(?:this|it|these|that|them)\b))",
    re.IGNORECASE,
)
# "Cuts into 8 petticoat tails.": whatever it is cut into is what is counted
_CUT: Final = re.compile(
    r"(?:^|[.!;]\s+)(?:it\s+|this\s+)?cuts\s+(?:up\s+)?into\s+(?P<said>(?:about\s+)?\d+\s+[^\W\d][\w'’-]*(?:\s[^\W\d][\w'’-]*){0,2}?)(?=[.,;!(]|$)",
    re.IGNORECASE,
)
# "Fill 4 jars": what is done
_ORDERS: Final = re.compile(
    r"\W*(?:give|make|fill|yield|produce|get|cut|divide|come)\s", re.IGNORECASE
)
_NO_YIELD: Final = re.compile(r"\b(?:more|less|extra|each|per|every|time|times)\b", re.IGNORECASE)


COUNT_ALONE: Final = re.compile(
    r"(?:ca\.?|c:a|cirka|about|etwa|circa|environ|ongeveer|unos|ergibt)\s*\d+(?:\s*[-–]\s*\d+)?\s*"
    r"(?:st\.?|stycken|stk\.?|stück|pieces|pièces|pezzi|piezas|stuks|bitar|cookies|biscuits|kakor|plätzchen|biscotti|galletas|koekjes)",
    re.IGNORECASE,
)
_VESSELS: Final = (
    r"(?:jars?|bottles?|gläser|gläschen|flaschen|pots?|bocaux|bouteilles?|vasett[io]|barattol[io]|bottigli[ae]|tarros?|frascos?|botellas?|garrafas?|potjes?|potten|flessen"
    r"|burk(?:ar)?|flask(?:or|a|er?)|glass?|krukker|słoik\w{0,3}|butel\w{2,3})"
)
_ABOUT_THEM: Final = (
    r"(?:about|ca\.?|c:a|cirka|circa|etwa|environ|env\.?|ongeveer|unos|cerca\s+de|około|ok\.)"
)
# "4 Gläser à 250 ml", "Ca. 4 glas": jars of a size, or about so many of them, and no word of food
JARS_ALONE: Final = re.compile(
    rf"(?:{_ABOUT_THEM}\s*\d+(?:\s*[-–]\s*\d+)?\s+{_VESSELS}"
    rf"|(?:{_ABOUT_THEM}\s*)?\d+(?:\s*[-–]\s*\d+)?\s+{_VESSELS}\s+(?:of|à|a|von|zu|de|d[ai]|van|på|po|med)\s+(?:je\s+|ca\.?\s+)?\d+(?:[.,]\d+)?"
    r"\s*(?:m?l|cl|dl|g|gr|oz|lb|liter|litres?|litri)\b)\.?",
    re.IGNORECASE,
)
PEOPLE_ALONE: Final = re.compile(
    r"\d+(?:\s*[-–]\s*\d+)?\s+(?:person(?:s|nes|en|as|e)|people|guests|leute|pers\.|personer|portions?|portionen|porzioni|porciones|porties|servings?)",
    re.IGNORECASE,
)
# "une quarantaine de pièces": a number by its word, and about so many
_ROUND: Final = {
    "dizaine": 10, "douzaine": 12, "quinzaine": 15, "vingtaine": 20, "trentaine": 30,
    "quarantaine": 40, "cinquantaine": 50, "soixantaine": 60, "centaine": 100, "decina": 10,
    "dozzina": 12, "quindicina": 15, "ventina": 20, "trentina": 30, "quarantina": 40,
    "cinquantina": 50, "decena": 10, "docena": 12, "veintena": 20, "treintena": 30,
    "cuarentena": 40, "tiental": 10, "dozijn": 12, "twintigtal": 20, "dertigtal": 30,
    "veertigtal": 40, "dutzend": 12, "dussin": 12, "tiotal": 10, "tjugotal": 20,
}  # fmt: skip
_ABOUT_SO_MANY: Final = re.compile(
    r"\b(?:pour|donne|obtient|obtenez|obtiendrez|per|circa|para|salen?|voor|für|ergibt|ger|blir|till)\s+(?:environ\s+|ca\.?\s+|etwa\s+)?"
    r"(?:une?|una|een|ein|ett)\s+(?:bonne\s+|petite\s+|buona\s+|buena\s+)?"
    rf"(?P<number>{'|'.join(_ROUND)})\s+"
    r"(?!(?:d['’]|(?:de|di)\s+)?(?:minut|seconde|secondi|segundos|heure|hour|jour|giorn|día|dag|tag|wochen|woche|stunden|semaine|settiman|semana|ore\b|hora|mois|mesi|meses|uur|we[e]?k"
    r"|degr|grad|cm|fois|volte|veces|keer))"
    r"(?:d['’]|(?:de|di)\s+)?"
    r"(?P<what>[^\W\d][\w'’-]*(?:\s+(?!(?:et|e|y|en|und|och|qui|che|que|die|som)\b)[^\W\d][\w'’-]*){0,2})",
    re.IGNORECASE,
)
_PEOPLE: Final = r"people|persons?|guests|adults|personen|leute|personnes|persone|personas|personer"
# "Will serve 4 to 6 people", "Goed voor 3 kleine potjes"
_GOOD_FOR: Final = re.compile(
    rf"\b(?:(?:(?:will|should|would|enough\sto|can)\s(?:serve|feed)|feeds)\s(?P<served>{_NUMBER}(?:\s(?:{_PEOPLE}))?)"
    r"|(?:goed|genoeg|voldoende)\s+voor\s+(?P<good>(?:(?:ca\.?|ongeveer|zo['’]n)\s+)?\d[\d\s./½¼¾–-]*[^\W\d][^.;,!()\d]{1,40})"
    r"|(?:reicht|reichen|genügt|genug|ausreichend)\s+für\s+(?P<enough>(?:(?:ca\.?|etwa|ungefähr)\s+)?\d[\d\s./½¼¾–-]*[^\W\d][^.;,!()\d]{1,40}))"
    r"(?=[\s.;,!)(]|$)",
    re.IGNORECASE,
)
_ABOUT: Final = (
    r"(?:ca\.?|circa|etwa|ungefähr|rund|environ|unos|unas|ongeveer|ungefär|cirka"
    r"|omtrent|omkring|cerca\s+de|około|ok\.|about|una?)\s+"
)
_SO_MANY: Final = r"\d+(?:\s*(?:-|–|bis|à|o|a|of|tot|till)\s*\d+)?\s+"
# what is counted: what things are kept in and what is given, or any at the sentence's end
_COUNTED: Final = (
    rf"(?:(?:{_ABOUT})?{_SO_MANY}(?:[^\W\d]+\s+){{0,2}}?(?:gläser|gläschen|flaschen|stück|plätzchen|kekse|pots|bocaux|bouteilles|biscuits"
    r"|pièces|sablés|vasetti|barattoli|bottiglie|biscotti|tarros|frascos|botellas|galletas|potjes|potten|flessen|koekjes|burkar|flaskor|kakor|bitar|glas|glass|krukker|flasker|stykker|frikadeller|småkager|kjeks|słoik\w{0,4}|słoiczk\w{1,3}|butel\w{2,3}|pierni\w{1,5}|ciast\w{2,4}|sztuk\w{0,3}|biscoitos|kerzen)"
    rf"|{_ABOUT}{_SO_MANY}(?!gram|millil|lit[er]|kilo|grad|degr|minut|stund|heure|horas|tagen?\b|jours|días|giorn|dagar|dagen|woche|semain|semana|settim|weken|weeks|month|monat|meses|month|maand|månad|gånger|veces|volte)"
    r"[^\W\d]{5,}(?=\s*(?:[.!;,]|$)))"
)
# "Das ergibt ungefähr 6 Gläser.", but "Das ergibt 500 ml Saft", which goes on into something
_GIVES: Final = re.compile(
    r"\b(?:(?:das|es|dies|menge|rezept|zutaten|man|ich|wir)\s+(?:ergibt|ergab|ergeben|erhält|bekommt|bekam|bekomme|hatte)|(?:ça|cela|qui|on|recette)\s+(?:donne|fait|obtient)|(?:j['’]en\s+ai|on\s+a)\s+(?:eu|fait)|si\s+ottengono|(?:ne|mi|mi\s+sono)\s+(?:vengono|venuti|escono)|(?:me\s+|te\s+|nos\s+)?(?:salen|salieron)|(?:dit|het|je|recept)\s+(?:geeft|levert|krijgt)|(?:det|receptet|satsen)\s+(?:blir|ger|räcker\s+till)"
    r"|(?:det|der|opp?skrifte?n|portionen|porsjonen)\s+(?:blir|bliver(?:\s+(?:der|det|til))?|gi(?:ve)?r|rækker\s+til|holder\s+til|er\s+til)|(?:bliver|blir)\s+(?:der|det)"
    r"|(?:porcja|porcji|ilość|ilości|proporcji|przepis|przepisu)\s+(?:wystarcza\s+na|starcza\s+na|wychodzi|wyszło(?:\s+mi)?)|(?:bekommt|erhaltet)\s+ihr|rendem?|dá\s+para|mixture\s+makes|(?:la\s+)?ricetta\s+è\s+per|(?:dit\s+)?recept\s+is\s+voor"
    r"|(?:cette|la)\s+quantité\s+(?:permet\s+(?:de\s+remplir|d['’]obtenir)|donne|suffit\s+pour))"
    rf"\s+(?P<said>{_COUNTED})\b(?!\s+(?:(?-i:[A-ZÄÖÜ])|de\s|d['’]|di\s|je\s|à\s\d))",
    re.IGNORECASE,
)
# "Die oben genannten Mengen ergeben in etwa 500 ml Fruchtaufstrich."
_WHOLE_GIVES: Final = re.compile(
    r"\b(?:(?:(?:oben\s+)?(?:genannten?|angegebenen?)|obigen?|diese)\s+(?:mengen?|zutaten|angaben)\s+(?:ergeben|reichen\s+für)"
    r"|(?:the|these)\s+(?:above\s+)?(?:quantities|amounts|ingredients)\s+(?:above\s+)?(?:will\s+|should\s+)?(?:(?:are|is|be)\s+)?"
    r"(?:give|make|yield|(?:enough|sufficient)\s+(?:to\s+make|for|to\s+fill))"
    r"|ces\s+(?:quantités|ingrédients)\s+(?:donnent|suffisent\s+pour|permettent\s+d['’e]\s?(?:obtenir|faire|préparer))(?:\s+faire)?"
    r"|quest[ei]\s+(?:dosi|quantità|ingredienti)\s+(?:danno|bastano\s+per|sono\s+sufficienti\s+per)(?:\s+(?:fare|preparare|ottenere))?"
    r"|(?:est[ao]s|l[ao]s)\s+(?:cantidades|ingredientes)\s+(?:indicad[ao]s\s+)?(?:dan|rinden|alcanzan\s+para|son\s+(?:suficientes\s+)?para)(?:\s+(?:hacer|preparar|obtener))?"
    r"|deze\s+(?:hoeveelheden|ingrediënten)\s+(?:geven|zijn\s+(?:genoeg|goed|voldoende)\s+voor)"
    r"|(?:dessa|de\s+här)\s+(?:mängder(?:na)?|ingredienser(?:na)?)\s+(?:ger|räcker\s+till))"
    r"\s+(?:in\s+etwa\s+)?(?P<said>(?:(?:about|around|approximately|etwa|ca\.?|circa|rund|ungefähr|environ|unos|aproximadamente|ongeveer|cirka)\s+)?"
    r"(?:\d|(?:tres|cuatro|cinco|seis|ocho|diez|doce|veinte|treinta|cuarenta|trois|quatre|cinq|huit|dix|vingt|drei|vier|fünf|zehn|zwanzig|quattro|cinque|dieci|venti|trenta|vier|vijf|tien|twintig)\b)[\d.,/½¼¾]*(?:\s*[-–]\s*\d+)?\s+[^\W\d][\w'’-]*)",
    re.IGNORECASE,
)
_MOST_OF_WHOLE: Final = 16
_SPANS: Final = re.compile(
    r"\b(?:minut|stunde|tag|woche|monat|jahr|uur|uren|dag|we[e]?k|maand|jaar|keer|mal\b)",
    re.IGNORECASE,
)
# "Para: 6 personas"
_FOR_PEOPLE: Final = re.compile(
    rf"(?:for|für|pour|per|para|voor|för|till)\s*:\s*(?P<said>\d+(?:\s*(?:-|–|to|bis|à|a|tot|till)\s*\d+)?\s+(?:{_PEOPLE}))\.?",
    re.IGNORECASE,
)
_MOST_ALONE: Final = 9
LABEL_ALONE: Final = re.compile(
    r"makes|yields?|(?:makes|yields?|serves|servings|ergibt|ergiebigkeit|portionen|rendement|donne|resa|rendimiento|rinde|raciones|porciones|porzioni"
    r"|opbrengst|porties|portioner)\s*:",
    re.IGNORECASE,
)
"""How much is made follows on the next line."""


def made_in_words(text: str) -> str:
    """Return how much a line says is made, in words that are no label of it; "" for any other.

    >>> made_in_words("Comme promis (pour une quarantaine de pièces)."), made_in_words("Serve 4.")
    ('about 40 pièces', '')
    >>> made_in_words("Will serve 4 to 6 people."), made_in_words("Goed voor 3 kleine potjes.")
    ('4 to 6 people', '3 kleine potjes')
    >>> made_in_words("Das ergibt etwa 6 Gläser."), made_in_words("Das ergibt 500 ml Saft.")
    ('etwa 6 Gläser', '')
    >>> made_in_words("Ces quantités suffisent pour 4 pots."), made_in_words("Make the amounts 4.")
    ('4 pots', '')
    >>> made_in_words("These ingredients are enough to make about 4 jars of jam.")
    'about 4 jars'
    >>> made_in_words("Laisser pour une dizaine de minutes"), made_in_words("Goed voor 3 weken.")
    ('', '')
    """
    if many := _ABOUT_SO_MANY.search(text):
        return f"about {_ROUND[many['number'].lower()]} {' '.join(many['what'].split())}"
    if given := _FOR_PEOPLE.fullmatch(text.strip()) or _GIVES.search(text):
        return " ".join(given["said"].split())
    if whole := _WHOLE_GIVES.search(text):
        said = " ".join(whole["said"].split())
        return re.sub(r"^(?:aproximadamente|unos|environ)\s", "about ", said, flags=re.IGNORECASE)
    good = _GOOD_FOR.search(text)
    if good is None:
        return ""
    said = " ".join((good["served"] or good["good"] or good["enough"]).split())
    if good["served"]:
        return said if re.search(_PEOPLE, said, re.IGNORECASE) else f"{said} servings"
    return "" if _SPANS.search(said) else said


def is_made_alone(text: str) -> bool:
    """Whether a line says in such words how much is made, and nothing beside it."""
    bare = re.sub(
        r"^(?:this|it|these|they|the|recipe|dit|das|es)\s+", "", text.strip(" ("), flags=re.I
    )
    begins = (
        _FOR_PEOPLE.match(text.strip())
        or _GOOD_FOR.match(bare)
        or _ABOUT_SO_MANY.match(bare)
        or _GIVES.match(text.strip())
    )
    if _WHOLE_GIVES.search(text) and len(text.split()) <= _MOST_OF_WHOLE:
        return not re.search(r"[.!?]\s", text.strip())
    return begins is not None and bool(made_in_words(text)) and len(text.split()) <= _MOST_ALONE


def yield_told(text: str) -> str:
    """Return how much the sentences of a step say is made; "" where they say nothing of it.

    >>> yield_told("Boil it. It gives about 4 bottles."), yield_told("We got 7 jars out of this.")
    ('about 4 bottles', '7 jars')
    >>> yield_told("Enough for 3 big jars."), yield_told("Makes 2-3 dozen.")
    ('3 big jars', '2-3 dozen')
    >>> yield_told("This gives 2 cups of juice."), yield_told("Fill 4 jars.")
    ('', '')
    """
    found = _CUT.search(text) or _SAYS.search(text)
    if found is None or _NO_YIELD.search(found["said"]):
        return ""
    if _ORDERS.match(found[0]):
        return ""
    return " ".join(found["said"].split())
