"""How much a line says that a recipe makes: "Makes 36 pieces", "Ergibt 4 Gläser", "Pour 6 pots".

Leaves out what is told in a sentence, yields.py, and labels of one word or two: yield_labels.py.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from stillroom.bringing.heads import SPAN_UNIT, plain, words
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.titles import LIST_FOR
from stillroom.bringing.yield_labels import labelled_yield
from stillroom.bringing.yields import (
    COUNT_ALONE,
    JARS_ALONE,
    PEOPLE_ALONE,
    is_made_alone,
    made_in_words,
)
from stillroom.core.lines.staple_table import staples_named

_LONGEST_TITLE: Final = 80
_LONGEST_SAID: Final = 2_000
_MOST_SAID: Final = 12
# "makes 4 8 oz. jars": a stop that shortens a unit, and no sentence's end
_UNIT_STOP = (
    # "1 tart of ca. 25 cm": a stop that shortens "about"
    r"(?:(?<=\sca)|(?<=\song)|(?<=\senv)|(?<=\sung)|(?<=\sapprox)|(?<=\scirc))\.(?=\s?\d)|"
    r"(?:(?<=\d\soz)|(?<=\doz)|(?<=-oz)|(?<=[\s-]pt)|(?<=\spts)|(?<=[\s-]qt)|(?<=\sqts)|(?<=\slb)|(?<=\slbs)|(?<=\sdoz)|(?<=\sgal)|(?<=\sfl)"
    r"|(?<=\sgl))\.(?=\s(?-i:(?!and\b|and\s|then\b|it\b)[a-zà-ÿ]))"
)
MAKES: Final = re.compile(
    r"(?:^|[.!;]\s+|\s[-–—]\s+|[({]|(?:,|\bwhich)\s+(?=(?:makes|yields)\s+(?:about\s+|around\s+)?\d)|\band\s+(?=(?:makes|yields)\s+(?:about\s+)?\d)|[({](?=to\s+make\s)|\b(?=rinden?\s+(?:para\s+)?(?:un[oa]s\s+)?\d)|\bingredients\s+(?=have\s+\d+\s+servings))(?:this\s+|these\s+|the\s+|one\s+|following\s+|ingredients\s+|quantities\s+|recipe\s+|it\s+|should\s+|will\s+){0,3}"
    r"(?:to\s+make(?=\s+(?:about\s+)?\d)|(?<=\()for(?=\s+(?:about\s+)?\d+\s+(?:people|persons|servings|cookies|biscuits|pieces|jars|bottles|bars|loaves|muffins|scones)\b)|makes(?=\s+(?:two|three|four|five|six|eight|ten|twelve)\s)|rinden?(?:\s+para)?|(?:ger|blir|räcker\s+till)(?=\s+(?:ca\.?\s+|cirka\s+|ungefär\s+)?\d)|(?:bekommt|erhält)\s+man\b[^.\d]{0,30}?(?=(?:etwa\s+|ca\.?\s+)?\d)|makes?(?=\s+(?:about\s+|around\s+)?\d)|makes|(?:serves|makes)\s*/\s*yields?|y(?:ie|ei)lds?|have(?=\s+\d+\s+servings)|servings?|serves|recipe\s+yields?|ergibt|für\s+ca\.?|für\s+etwa|donne|"
    r"pour(?!\s+[\d\s/½¼¾⅓⅔.-]*(?:cups?|bottles?|tablespoons?|teaspoons?|tbsps?|tsps?|ounces?|oz|quarts?"
    r"|gallons?|pints?|lit(?:er|re)s?\s+of|inch|jars?|half|quarter|third)\b|[^.;]*\b(?:of|into|in|onto|over|through|and|it|them|the|with|each|water|milk|cream|oil|vinegar|juice|syrup|gin|vodka|rum|brandy)\b)"
    r"(?:\s+environs?)?(?=\s+:?\s*\d|\s+(?:deux|trois|quatre|cinq|six|huit|dix|douze)\s+(?:lit|bout|pot|boc|pers))|per(?=\s+(?:circa\s+|ca\.?\s+)?\d+\s+(?:vas|baratt|bottigli|persone|biscott|porzion|pezz))|"
    r"(?:nodig\s+)?voor(?=\s+(?:±\s*|ca\.?\s+|ongeveer\s+)?\d)|für(?=\s+\d)|"
    r"quantity|(?:quantités?|quantità|cantidad(?:es)?|hoeveelheid|menge|mängd)(?=\s*:)|portions|portionen|porzioni|dosi\s+per|raciones|porciones|porties|resa|rendimiento|rendement|para(?=\s+(?:un[oa]s\s+)?(?:\d|dos|tres|cuatro|cinco|seis|ocho|diez|doce)\b)|opbrengst|"
    r"(?:n[úu]mero\s+d[ei]|nombre\s+de|aantal|anzahl(?:\s+der)?)\s+[^\W\d]+|yield\s+is|"
    r"(?:recipe\s+for|rezept\s+für|recept\s+voor|recette\s+pour|ricetta\s+per|receta\s+para)"
    r"(?=\s+(?:(?:about|ongeveer|etwa|circa|environ|unos)\s+)?\d))"
    r"(?:\b|(?<=ca\.))\s*(?::|is|=)?\s*"
    r"(?P<said>(?:about|approx(?:imately|\.)?|around|circa|ongeveer|etwa|ca\.?|roughly|up to|[~±]"
    r"|aproximadamente|unos|unas"
    r"|env(?:iron|\.))?\s*"
    rf"[\dA-Za-z½¼¾](?:[^.;!()|{{}}]|(?<=\d)\.(?=\d)|{_UNIT_STOP})*(?:\([^()]*\)(?:[^.;!()|]|{_UNIT_STOP})*)?)",
    re.IGNORECASE,
)
KEPT_TOO: Final = re.compile(
    r",?\s*\b(?:and\s+|which\s+)?(?:will\s+)?(?:keeps?|kps|lasts?|stores?|hält|halten|se\s+conserve|,\s*(?:perfect|ideal|enough))\b",
    re.IGNORECASE,
)
# "2.5 kg (5-6 lbs in old money)"; but "4 (8 ounce) jars" and "6 jars (250 ml each)" stay
_IN_OTHER_MEASURE: Final = re.compile(
    r"(?<=\d)(?P<unit>\s*(?:k?g|m?l|cl|lit(?:re|er)s?|lbs?|pounds?|oz|ounces?|pints?|cups?))"
    r"\s*\((?:about\s+)?\d[^()]*\)$",
    re.IGNORECASE,
)
_DEPENDS: Final = re.compile(
    r"[,(\s]*\b(?:depending|according|dependiendo|según|selon|je\s+nach|a\s+seconda|afhankelijk)\b|,\s+(?:which|so|but|enough)\s",
    re.IGNORECASE,
)
# "16 (yields 1 cup)": what is made stands in the brackets
_MADE_WITHIN: Final = re.compile(
    r"\d+\s*(?:servings?\s*)?\((?:makes|yields)\s+(?P<said>[^()]+)\)", re.IGNORECASE
)
_SERVES_WITHIN: Final = re.compile(r"\s*\((?:makes|serves|yields|about)\s[^()]*servings?\)$", re.I)
# "about 8 jars (see page 135)"
_LEADS_ON: Final = re.compile(
    r"\s*\((?:see|siehe|s\.|voir|vedi|v[ée]ase|ver|zie|se|patrz|zob\.)\s[^()]*\)", re.IGNORECASE
)
_LONG_ASIDE: Final = re.compile(r"\s*\((?:[^()\s]+\s+){5,}[^()]*\)?$")
_CIRCA: Final = re.compile(
    r"\b(?:ca|circa|etwa|environs?|ongeveer|aproximadamente|unos|unas)\b|±", re.IGNORECASE
)


_SO_MANY: Final = re.compile(
    r"\D{0,12}\d|(?:(?:etwa|ungefähr|environ|circa|unos|about|ca\.?)\s+)?(?:two|three|four|five|six|eight|zwei|drei|vier|fünf|sechs|acht|deux|trois|quatre|cinq"
    r"|six|huit|due|tre|quattro|cinque|sei|otto|dos|tres|cuatro|cinco|seis|ocho|dois|duas|três|twee|drie|vier|vijf|zes|två|tre|fyra|fem|sex|to|fire|dwa|dwie|trzy|cztery)\s",
    re.IGNORECASE,
)
# "makes enough jam for two pint jars"
_ENOUGH: Final = re.compile(
    r"^(?:enough|sufficient|genoeg|genug)\s+(?:[^\W\d]+\s+){0,3}?(?:for|to\s+fill|to\s+make|voor|für)\s+(?=\d|\w+\s)",
    re.IGNORECASE,
)
_FOR: Final = re.compile(r"\W*(?:für|pour|para|per|voor)\W*", re.IGNORECASE)
_SPAN: Final = re.compile(rf"\d+\s?{SPAN_UNIT}", re.IGNORECASE)
_MEASURED_OF: Final = re.compile(
    r"(?:about\s)?\d[\d.,/½¼¾]*\s?(?:k?g|gr|kilos?|lbs?|m?l|dl|cl|lit(?:re|er|ro)s?)\s(?:(?:de|di|of|von|van)\s|d['’])?(?P<what>[^\W\d].*)",
    re.IGNORECASE,
)
_BATCH: Final = re.compile(
    r"\W*(?:makes\s+)?(?:an?\s+)?(?P<said>(?:about\s+)?[\d½¼¾][\d\s./½¼¾-]{0,8}(?:gallons?|gal|lit(?:re|er)s?|l|quarts?|pints?|cups?|kg|lbs?|pounds?|jars?|bottles?))\s+batch\W*"
    r"|batch\s+size\s*:\s*(?P<size>(?:about\s+)?\d[^:;.]{0,30})",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def makes_of(text: str) -> str:
    """Return how much a line says the recipe makes; "" where it does not.

    >>> makes_of("Cut while warm. Makes 36 pieces."), makes_of("Yield: 10 half-pint jars.")
    ('36 pieces', '10 half-pint jars')
    """
    headed = LIST_FOR.fullmatch(text.strip()) if len(text) <= _LONGEST_TITLE else None
    if headed and _SO_MANY.match(headed["what"]):
        return re.sub(r"\s*\(([^()]*)\)", r" \1", headed["what"]).strip(
            " -–—"
        )  # "4 Gläser (à 500 ml)"
    if batch := _BATCH.fullmatch(text.strip()):  # "1 gallon batch", "Batch size: 1 gallon"
        return str(batch["said"] or batch["size"])
    if any(one.fullmatch(text.strip()) for one in (PEOPLE_ALONE, COUNT_ALONE, JARS_ALONE)):
        return text.strip().rstrip(".")
    if told := made_in_words(text[-_LONGEST_SAID:]) or labelled_yield(text):
        return told
    found = MAKES.search(text[-_LONGEST_SAID:])
    if found and plain(found["said"]).split(" ")[0] in words("told_first"):
        return ""  # "Portions: chill for 2 hours"
    said = " ".join(found["said"].split()).strip(" ,:") if found else ""
    said = _ENOUGH.sub("", said)
    said = re.sub(
        r"^(?:[~±]|(?:aproximadamente|unos|unas|environ)\b)\s*", "about ", said, flags=re.I
    )
    before = found[0][: found.start("said") - found.start()] if found else ""
    if _CIRCA.search(before) and said[:1].isdigit():
        said = f"about {said}"
    said = _DEPENDS.split(KEPT_TOO.split(said)[0])[0]
    within = _MADE_WITHIN.fullmatch(said)
    said = said if within else _SERVES_WITHIN.sub("", said)
    said = _LONG_ASIDE.sub("", within["said"] if within else said)
    said = _LEADS_ON.sub("", said)
    said = _IN_OTHER_MEASURE.sub(r"\g<unit>", said).strip(" ,(")
    if _FOR.fullmatch(before) and _is_of_a_food_or_time(said):
        return ""  # "Für 2 kg Quitten:", "Pour 3 heures"
    if not re.search(
        r"\d|[½¼¾]|\b(?:one|two|three|four|six|eight|ten|dozen|an?\s+(?:dozen|half|couple|few|(?:(?:large|small|big|full|whole|single|generous)\s+)?(?:lit(?:re|er)|pint|quart|gallon|jar|bottle|loaf|kilo|pound|cup|batch|tin|tray|cake|bowl|pan))|deux|trois|quatre|cinq|zwei|drei|vier|fünf|sechs|acht|zehn|due|tre|quattro|cinque|dos|tres|cuatro|cinco|twee|drie|vijf|zes|två|fyra|fem|fire|três|quatro|dwa|dwie|trzy|cztery|pięć)\b",
        said,
        re.I,
    ):
        return ""
    serves = found and re.match(r"\W*(?:serves|servings?|portions)", found[0], re.IGNORECASE)
    bare = serves and re.fullmatch(r"[\d\s–-]+|[\d\s]+(?:to\s*\d+)?", said)
    said = said if len(said.split()) <= _MOST_SAID else said.split(",")[0]
    return f"{said} servings" if bare else said if len(said.split()) <= _MOST_SAID else ""


def _is_of_a_food_or_time(said: str) -> bool:
    """Whether so much is of what goes in, or so long: "2 kg de coings", but "2 kg de gelée"."""
    measured = _MEASURED_OF.fullmatch(said)
    if measured is None:
        return bool(_SPAN.fullmatch(said))
    return bool(staples_named(measured["what"])) and not says_its_kind(measured["what"])


@lru_cache(maxsize=4096)
def is_only_makes(text: str) -> bool:
    """Whether a line says how much it makes and hardly anything else."""
    if any(one.fullmatch(text.strip()) for one in (PEOPLE_ALONE, COUNT_ALONE, JARS_ALONE, _BATCH)):
        return True
    if is_made_alone(text) or labelled_yield(text):
        return True
    return (
        bool(makes_of(text))
        and bool(
            re.match(
                r"\W*(?:this |the |recipe |it ){0,2}"
                r"(?:to make (?:about )?\d|(?:serves ?/ ?)?makes|(?<=\()for \d|y(?:ie|ei)ld|serv|"
                r"ergibt|für|donne|pour (?:environs? |: ?)?(?:\d|deux |trois |quatre |six )|"
                r"per (?:circa |ca\.? )?\d|"
                r"(?:n[úu]mero d[ei]|nombre de|aantal|anzahl)\s|porciones|rendimiento|rendement|"
                r"(?:nodig )?voor |quantity|portion|porzioni|dosi per|raciones|porties|resa|para|"
                r"opbrengst|(?:quantités?|quantità|cantidad(?:es)?|hoeveelheid|menge|mängd)\s*:|"
                r"(?:recipe for|rezept für|recept voor|recette pour|ricetta per|"
                r"receta para) (?:\w+ )?\d)",
                text,
                re.IGNORECASE,
            )
        )
        and len(text.split()) <= 16
    )
