"""A line as old books, programs and Swedish pages leave it, put as the reader takes it.

"1/2 a cup of sugar", "1 cup {240 ml} milk", "flour ((sifted))", "0.66666666667 cup". Leaves out
what is glued together: unglued.py.
"""

from __future__ import annotations

import re
from fractions import Fraction

from stillroom.core.amounts.units import System, counted_nouns, plain_nouns, unit_words
from stillroom.core.lines.part_of_one import PART
from stillroom.core.words.patterns import late_regex

# "1/2 a cup", "3/4 of a pound": a part of one of a measure
_PART_OF_ONE = late_regex(
    rf"{PART}\s+(?:of\s+)?an?\s+(?P<unit>[A-Za-z]+)\b"
    r"(?!\s+(?:scant\s+)?measure)",
    re.IGNORECASE,
)
_BRACES = str.maketrans("{}", "()")
# a program's "((sifted))" and "(, melted)", and brackets within brackets
_DOUBLED = late_regex(r"\(\(([^()]*)\)\)")
_WITHIN = late_regex(r"\(([^()]*?)[\s,]*\(([^()]*)\)")
_OPENED_BY_SIGN = late_regex(r"\(\s*[,;]\s*")
_PLUS = late_regex(r"(?<=[a-z]\s)\+(?=[\d½¼¾⅓⅔⅛])")
_LONG_DECIMAL = late_regex(r"(?<![\d.,])(?P<whole>\d{1,3})\.(?P<part>\d{5,18})(?!\d)")
_KITCHEN_PARTS = (2, 3, 4, 6, 8, 16)
_CLOSE = Fraction(1, 10_000)
_PIECES = late_regex(
    r"(?<=[\d½¼¾])\s*(?:stk|st|stycken|styck|stykker)\b\.?(?=[\s)]|$)", re.IGNORECASE
)
_NORTHERN = frozenset({"sv", "da", "nb", "no", "nn"})
# "1 e 1/2 xícara": a part that is joined to its number
_AND_A_PART = late_regex(r"(?<=\d)\s(?:e|y|et|og|och|und)\s(?=\d\s?[/⁄]\s?\d|[½¼¾⅓⅔⅛])")
# "de 500 à 600 g de sucre": from so much to so much
_FROM_TO = late_regex(
    r"^\s*(?P<from>de|da|von|van|från|fra|od|from|entre|zwischen|tra|fra|tussen|mellan|mellem|between)\s+"
    r"(?P<low>\d[\d.,/]*)\s?(?P<unit>[a-z]{1,3}\.?)?\s*(?P<to>à|a|bis|tot|till|til|do|to|et|e|und|y|en|och|og|and)\s+(?=\d)",
    re.IGNORECASE,
)
_TIN = late_regex(r"(?<=\d\s)ds\b\.?")  # in Danish a tin, elsewhere a dash
_PACK = late_regex(r"(?<=[\d½¼¾])\s?pk\b\.?")  # in Danish and Norwegian; an American peck
_UP_TO = late_regex(r"^(?P<low>\s*\d{1,3})\s?\(\s?[-–]\s?(?P<high>\d{1,3})\)\s")
_CUBIC = late_regex(r"(?<=\d)(\s*)c\.\s?c\b\.?", re.IGNORECASE)
# "1 #2 can", "2 No. 303 cans": the size of a tin by the number of its trade
_NUMBERED_TIN = late_regex(
    r"^(?P<many>\s*[\d½¼¾]+)\s+(?P<number>(?:#|no\.?|nr\.?)\s?\d{1,3}½?)\s+(?P<tin>cans?|tins?)\b(?P<rest>.*)$",
    re.IGNORECASE,
)
# "(about) 15 heads", "(ca.) 200 g"
_ABOUT_ASIDE = late_regex(
    r"^\s*\((?P<about>about|approx\.?|ca\.?|circa)\)\s*(?=[\d½¼¾⅓⅔⅛])", re.IGNORECASE
)
# "2 "bâtons" de cannelle": marks about a word alone, and none of an inch
_QUOTED_WORD = late_regex(r"[\"“”„«]\s?(?P<word>[^\W\d_]{3,}(?:[ -][^\W\d_]+){0,2})\s?[\"“”»]")
# "2 x 15 ml spoons", "1 level 5ml spoon": a spoon by what it holds, as British books had it
_METRIC_SPOON = late_regex(
    r"^\s*(?P<many>[\d½¼¾⅓⅔][\d./–-]*)\s*(?:[x×]\s*|(?<=[\d½¼¾⅓⅔])\s+)(?P<full>[a-z]+\s+)?"
    r"(?P<ml>15|10|5)\s?-?ml\s+spoon(?:ful)?s?\b(?:\s*\([\d½¼¾⅓⅔/ ]+\s*[a-z]+\.?\))?",
    re.IGNORECASE,
)
_SPOONS = {"15": "tbsp", "10": "dsp", "5": "tsp"}
# "1 (or 2) clove(s) of garlic", "15~20 ml", "2 tsp [garam masala](garam-masala.html)"
_OR_SO_MANY = late_regex(
    r"^(?P<low>\s*\d{1,3})\s*\((?:or|oder|ou|o|of|eller)\s+(?P<high>\d{1,3})\)\s+"
)
_ONE_OR_MANY = late_regex(r"(?<=[^\W\d_])\((?:s|es|n|en|er|e|x)\)(?!\w)")
_WAVE = late_regex(r"(?<=\d)\s?[~〜～]\s?(?=\d)")
_LINK = late_regex(r"\[(?P<said>[^\[\]]{1,80})\]\([^()\s]{1,200}\)")
# "2 colheres (sopa) de salsa", "1 xícara (chá) de açúcar": which spoon, in Portuguese
_WHICH_SPOON = late_regex(
    r"\b(?P<spoon>colher(?:es)?|col\.?|x[íi]caras?|xíc\.?|ch[áa]venas?)\s*\(\s*(?:de\s+)?(?P<of>sopa|ch[áa]|sobremesa|caf[ée])"
    r"(?:\s+(?:bem\s+)?(?P<full>cheias?|rasas?))?\s*\)\s*(?P<more>(?=[^\W\d]))?",
    re.IGNORECASE,
)
# "a casca de 1 limão": the article, and no English "a"
_ARTICLE_OF_A_PART = late_regex(
    r"^\s*[ao]s?\s+(?=(?:cascas?|raspas?|sumo|suco|polpa|gemas?|claras?)\b)", re.IGNORECASE
)
# "Gr 300 aceto", "Kg. 1,5 di zucca", "n. 3 uova": the unit first, and then how many of it
_UNIT_AT_HEAD = late_regex(
    r"^\s*(?:(?P<unit>kg|gr?|hg|mg|lt|ltr|l|dl|cl|ml)\.?|(?:n|nr)[.°º]|num\.)\s+(?P<about>circa\s+|ca\.?\s+)?"
    r"(?P<number>\d+(?:[.,]\d+)?(?:\s?/\s?\d+)?|[½¼¾⅓⅔])\s+(?=[^\W\d]{2})",
    re.IGNORECASE,
)
_UNITS_FIRST = frozenset({"it", "es", "pt", "fr", "nl", "de", "pl"})
# "40-prozentiger Rum", "12-procentig ättika"
_PER_CENT_OF = late_regex(
    r"(?<=\d)[\s-]*(?:prozent|procent|prosent)(?:ig(?:e[rsnm]?|t|a)?)?\b(?=\s)", re.IGNORECASE
)
# "eine 400-g-Dose Tomaten", "a 14-oz-can": a size that is joined to its pack
_JOINED_SIZE = late_regex(r"(?<=\d)-(?P<unit>k?g|m?l|cl|dl|oz)-(?=[^\W\d_]{3})")
_ABOUT_SO_MANY = late_regex(r"^(\s*\d+)-(?:ish|tal)\s+", re.IGNORECASE)


_GLUED_SPOON = late_regex(
    r"\bc\.à\s?(?=thé|soupe|café|table|[sct]\b)", re.IGNORECASE
)  # "1 c.à thé"


def put_plainly(text: str, system: System, language: str) -> str:
    """Return a line as the reader takes it; one without such a shape as it is.

    >>> put_plainly("1/2 a cup of sugar", "us", "en"), put_plainly("½ a lemon", "us", "en")
    ('1/2 cup of sugar', '½ a lemon')
    >>> put_plainly("1 cup {240 ml} milk ((warm))", "us", "en")
    '1 cup (240 ml) milk (warm)'
    >>> put_plainly("0.66666668653488 cup Parmesan", "us", "en")
    '2/3 cup Parmesan'
    >>> put_plainly("Kg 1,5 di zucca", "metric", "it"), put_plainly("n. 3 uova", "metric", "it")
    ('1,5 Kg di zucca', '3 uova')
    """
    text = _CUBIC.sub(r"\1cc", text.translate(_BRACES))
    if first := _UNIT_AT_HEAD.match(text):
        text = _number_first(first, text, language)
    if "(" in text:
        text = _ABOUT_ASIDE.sub(r"\g<about> ", text)
        text = _OPENED_BY_SIGN.sub("(", text)
        text = _WITHIN.sub(r"(\1, \2", _DOUBLED.sub(r"(\1)", text))
        text = _ONE_OR_MANY.sub(lambda found: found[0][1:-1], _LINK.sub(r"\g<said>", text))
        text = _UP_TO.sub(r"\g<low>-\g<high> ", _OR_SO_MANY.sub(r"\g<low>-\g<high> ", text))
        text = _WHICH_SPOON.sub(_which_spoon, text)
    text = _JOINED_SIZE.sub(r" \g<unit> ", _WAVE.sub("-", _PER_CENT_OF.sub("%", text)))
    text = _QUOTED_WORD.sub(r"\g<word>", text)
    text = _LONG_DECIMAL.sub(_as_fraction, _PLUS.sub("+ ", text))
    tin = _NUMBERED_TIN.match(text)
    if tin:
        text = f"{tin['many']} {tin['tin']}{tin['rest']}, {tin['number']}"
    spoon = _METRIC_SPOON.match(text) if "spoon" in text else None
    if spoon:
        said = f"{spoon['many']} {spoon['full'] or ''}{_SPOONS[spoon['ml']]}"
        text = said + text[spoon.end() :]
    part = _PART_OF_ONE.search(text)
    if part and _is_measure(part["unit"], system):
        text = f"{text[: part.end('part')]} {text[part.start('unit') :]}"
    if language == "de" and "e" in text:
        text = _UNDOTTED.sub(lambda found: _dotted(found, system), text)
    if language == "pt":
        text = _ARTICLE_OF_A_PART.sub("", text)
    if language == "fr":
        text = _GLUED_SPOON.sub("c. à ", _BARE.sub(_with_accents, text))
    text = _AND_A_PART.sub(" ", _FROM_TO.sub(r"\g<low>-", text))
    if language in _NORTHERN:
        text = _ABOUT_SO_MANY.sub(r"ca \1 ", _PIECES.sub("", text))
        text = _PACK.sub(" pakke", text) if language != "sv" else text
        text = _TIN.sub("dåse", text) if language == "da" else text
    return text


def _number_first(first: re.Match[str], text: str, language: str) -> str:
    """Return "300 Gr aceto" of "Gr 300 aceto"; of a letter alone and "n." where it is usual."""
    unit = first["unit"] or ""
    if len(unit) < _PLAIN_UNIT and language not in _UNITS_FIRST:
        return text
    words = (first["about"] or "", first["number"], f" {unit}" if unit else "")
    return f"{''.join(words)} {text[first.end() :]}"


_PLAIN_UNIT = 2


def _which_spoon(found: re.Match[str]) -> str:
    full = f" {found['full']}" if found["full"] else ""
    return f"{found['spoon']} de {found['of']}{full}{'' if found['more'] is None else ' '}"


def _is_measure(word: str, system: System) -> bool:
    known = unit_words(system)
    return word in known or word.lower() in known or word.lower() in plain_nouns()


# "1 Stueck", "2 Essloeffel": a measure typed without its dots
_UNDOTTED = late_regex(r"(?<=[\d½¼¾⅓⅔]\s)[A-Za-z]*[AOUaou]e[a-z]+\b")
_DOTS = {"ae": "ä", "oe": "ö", "ue": "ü", "Ae": "Ä", "Oe": "Ö", "Ue": "Ü"}


def _dotted(found: re.Match[str], system: System) -> str:
    word = re.sub("[AOUaou]e", lambda pair: _DOTS[pair[0]], found[0])
    return word if word in counted_nouns() or _is_measure(word, system) else found[0]


# "1 boite", "2 cuilleres a soupe": the same in French, typed without its accents
_BARE = late_regex(
    r"(?:(?<=[\d½¼¾⅓⅔]\s)|(?<=\bune\s)|(?<=\bdeux\s))"
    r"(?P<noun>boite|pincee|poignee|cuilleree?)(?P<many>s?)\b"
    r"(?: a (?P<of>soupe|caf[eé]|dessert)\b)?"
)
_ACCENTS = {"boite": "boîte", "pincee": "pincée", "poignee": "poignée"} | {
    "cuillere": "cuillère",
    "cuilleree": "cuillerée",
}


def _with_accents(found: re.Match[str]) -> str:
    of = f" à {found['of'].replace('cafe', 'café')}" if found["of"] else ""
    return f"{_ACCENTS[found['noun']]}{found['many']}{of}"


def _as_fraction(found: re.Match[str]) -> str:
    """Return a calculator's decimal as the part of one that it is; any other as it stands."""
    exact = Fraction(f"0.{found['part']}")
    for below in _KITCHEN_PARTS:
        above = round(exact * below)
        if 0 < above < below and abs(exact - Fraction(above, below)) < _CLOSE:
            whole = int(found["whole"])
            part = Fraction(above, below)
            return f"{whole} {part}" if whole else str(part)
    return found[0]
