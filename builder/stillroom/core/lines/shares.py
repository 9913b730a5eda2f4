"""What a line says as a share of the whole, or as so much to another thing: asked, never guessed.

"45% sweet almond oil", "olive oil, 50%", "sea salt at 2% by weight", "12 oz sugar to each pint of
purée". Leaves out strengths: strength.py.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shares_said import is_sold_by_its_share
from stillroom.core.lines.parts_of_line import LineReading, either, line_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_PERCENT = r"\d+(?:[.,]\d+)?(?:\s?[-–]\s?\d+(?:[.,]\d+)?)?\s?%"
_SHARE = late_regex(rf"(?P<part>{_PERCENT})\s+(?P<food>[a-zà-ÿ].*)", re.IGNORECASE)
# "olive oil, 50%": the share alone, behind its food
_SHARE_BEHIND = late_regex(rf"(?:at\s+|about\s+)?(?P<part>{_PERCENT})\.?$", re.IGNORECASE)
# "2-4% sea salt by cabbage weight", "water at 38% of total fats": the share says of what
_OF_THE_WHOLE = late_regex(
    rf"(?P<part>{_PERCENT})(?=.*\b(?:by|of|the)\s+(?:[\w-]+\s){{0,2}}weight\b|\s+of\s+(?:the\s+|your\s+)?(?:total|whole|oils?|fats?"
    r"|batch|weight|flour|cabbage|fruit|vegetables?|meat|wax)\b"
    r"|.*\b(?:vom|des)\s+(?:\w+)?gewichts?\b|.*\bdu\s+poids\b|.*\bdel\s+peso\b|.*\bvan\s+het\s+(?:\w+)?gewicht\b)",
    re.IGNORECASE,
)
_NO_FOOD_OF_ITS_OWN = late_regex(r"(?:oil|wax|shea butter|water|salt|sugar)s?$", re.IGNORECASE)
_BEHIND_SHARE = late_regex(
    r"(?:oils?|wax|butter|water|glycerine?|lye|fragrance|huile|öl|cire|wachs|cera|aceite|olio|olie)$",
    re.IGNORECASE,
)
_NUMBER = r"(?:\d+\s+)?[\d½¼¾⅓⅔⅛][\d./½¼¾⅓⅔⅛-]*"
_UNIT = (
    r"(?:k?g|grams?|ml|cl|dl|l|lit(?:re|er)s?|oz|ounces?|lbs?|pounds?|pints?|quarts?|gallons?|cups?|tsps?|tbsps?|teaspoons?"
    r"|tablespoons?|drops?|cloves?|sticks?)"
)
# "12oz sugar to each 1 pint puree", "1/2 pint of brandy to every gallon of wine"
_TO_EACH = late_regex(
    rf"(?P<amount>{_NUMBER}\s*(?:{_UNIT}\b\.?)?)\s+(?:of\s+)?(?P<food>[^\W\d][^\d,;()]*?),?\s+(?:to|for)\s+(?:each|every)\s+"
    rf"(?P<per>(?:{_NUMBER}\s*)?{_UNIT}\b)\.?\s+(?:of\s+)?(?P<of>[^\W\d][^,;()\d]*?)\.?",
    re.IGNORECASE,
)
# "to every lb. of cherries allow 3 oz. of pounded sugar", "to 12 oranges 1 pint of water"
_EACH_FIRST = late_regex(
    rf"(?:and\s+)?(?:(?:to|for)\s+(?P<each>(?:each|every)\s+)?|(?P<alone>(?:each|every)\s+))(?P<per>(?:{_NUMBER}\s*)?(?:{_UNIT}\b\.?)?)\s*(?:of\s+)?"
    rf"(?P<of>[^\W\d][^,;()\d]*?),?\s+(?P<verb>(?:allow|add|take)\s+)?"
    rf"(?P<amount>{_NUMBER}\s*(?:{_UNIT}\b\.?)?)\s*(?:of\s+)?(?P<food>[^\W\d][^\d;()]*?)\.?",
    re.IGNORECASE,
)

_MEASURE = (
    r"(?:kg|kilos?|gr?|gramm?[a-zé]*|ml|cl|dl|l|lit[a-zéê]*|oz|ounces?|lbs?|pounds?|livres?|libr[ae]s?|pfund|pund|pints?|quarts?"
    r"|gallons?|cups?)"
)
# "125 g d'alcool pour 1 litre de vin", "800 g Zucker je Liter Saft", "7 dl socker/l saft"; behind a
# stroke no figure, which says the same again: "1 stick/113 g butter"
_TO_ANOTHER = late_regex(
    rf"(?P<amount>{_NUMBER}\s*"
    rf"(?:(?:{_MEASURE}|c\.? ?à ?[cs]\.?|tsps?|tbsps?|[et]l|[mt]sk|[st]sk)\b\.?)?)\s*"
    rf"(?:(?:of|de|di)\s+|d['’]\s?)?(?P<food>(?!{_MEASURE}\b)[^\W\d][^\d,;()/]*?),?"
    r"(?:\s*/\s*(?=[^\W\d])|\s+(?:(?:per|pr\.?|pro|je|par|por)\s+)(?:(?:ogni|cada|chaque|each)\s+)?"
    r"|\s+(?:to|for|pour|para|auf|für|op|voor|till|til|na|su|per)\s+"
    r"(?:(?:each|every|chaque|cada|ogni|jede[mnrs]?|elke?|hver\w*|varje|każd\w+)\s+(?=[^\W\d])|(?=[\d½¼¾])))"
    rf"(?P<per>(?:{_NUMBER}\s*)?{_MEASURE}\b)\.?\s+(?:(?:of|de|di|van|av|af)\s+|d['’]\s?)?(?P<of>[^\W\d][^,;()\d]*?)\.?",
    re.IGNORECASE,
)
# a packet says itself how much it is for: "1 packet of pectin for 1 kg of fruit"
_PACKED = late_regex(
    r"(?:pack|pk|pck|päck|beutel|tüt|sachet|bustin|sobre|zakje|pakje|pacz|opakow|påse|brev|pose|pakk|envelop|enveloppe)",
    re.IGNORECASE,
)


def refuse_share(reading: LineReading) -> None:
    """Ask about a share of the whole where no amount is given beside it."""
    if isinstance(reading.amount, Amount) or "%" not in f"{reading.item}{reading.note}":
        return
    whole = f"{reading.item}, {reading.note}" if reading.note else reading.item
    told = _OF_THE_WHOLE.search(whole)
    share = _SHARE.match(reading.item)
    behind = _SHARE_BEHIND.match(reading.note)
    if told:
        raise _is_a_share(told["part"], _bare(reading.item))
    if behind and (_BEHIND_SHARE.search(reading.item) or not _is_of_its_own(reading.item)):
        raise _is_a_share(behind["part"], reading.item)
    if share and (not _is_of_its_own(share["food"]) or _NO_FOOD_OF_ITS_OWN.search(share["food"])):
        raise _is_a_share(share["part"], share["food"])


# "every 9 gallons of water", "to each pint of juice": what it is measured to, and nothing measured
_ONLY_EACH = late_regex(
    rf"(?:and\s+)?(?:(?:to|for|in)\s+)?(?:each|every)\s+(?P<per>(?:{_NUMBER}\s*)?{_UNIT}\b)\.?\s+(?:of\s+)?"
    r"(?P<of>[^\W\d][^,;()\d:]*?)(?:\s+(?:allow|add|take))?\s*[,:.]?",
    re.IGNORECASE,
)


def refuse_ratio(text: str) -> None:
    """Ask about so much to each so much of another thing, with the way the book writes that."""
    if alone := _ONLY_EACH.fullmatch(text.strip()):
        raise Unreadable(
            f'"{text.strip(" ,:.")}" says to what the rest is measured, not how much goes in.',
            f"Write how much {alone['of'].strip()} this batch has, and of each other thing how much"
            " goes with that.",
        )
    said = _TO_EACH.fullmatch(text.strip()) or _EACH_FIRST.fullmatch(text.strip())
    other = None if said else _TO_ANOTHER.fullmatch(text.strip())
    said = other if other and not _PACKED.match(other["food"]) else said
    if said is None:
        return
    parts = {name: (words or "").strip(" .") for name, words in said.groupdict().items()}
    each = parts.get("each", "every") or parts.get("alone") or parts["verb"]
    if not parts["per"] or not each:
        return
    per = parts["per"] if re.match(r"[\d½¼¾]", parts["per"]) else f"1 {parts['per']}"
    of = f"of {parts['of']}" if re.search(r"[^\W\d]", per) else parts["of"]
    raise Unreadable(
        f'"{text.strip()}" is so much to another thing, and not how much in all.',
        f'Write "{parts["food"]}, {parts["amount"]} per {per} {of}" where a line of the list is '
        f"called {parts['of']}, else the whole amount.",
    )


def _is_a_share(part: str, food: str) -> Unreadable:
    return Unreadable(
        f'"{part}" of {food} is a share, and no amount.', f'Write how much it is: "45 g {food}".'
    )


def _bare(item: str) -> str:
    """Return a food without the share that is said of it."""
    said = re.sub(rf"\b(?:at|à|zu|al)\s+(?={_PERCENT})", "", item)
    bare = re.split(_PERCENT, said, maxsplit=1)
    kept = bare[0].strip(" ,") or bare[-1]
    return re.split(r"\s+(?:by|of)\s", kept.strip(" ,"), maxsplit=1)[0]


def _is_of_its_own(food: str) -> bool:
    """Whether a food has a percentage of its own: a strength, its fat, its acid."""
    return bool(_percent_of().search(food)) or is_sold_by_its_share(read_food(food).food)


@cache
def _percent_of() -> re.Pattern[str]:
    tables = ("percent_of", "spirits", "drinks", "vinegars_elsewhere")
    of_it = [word for table in tables for word in line_words()[table]]
    return re.compile(rf"\b(?:{either(of_it)})", re.IGNORECASE)
