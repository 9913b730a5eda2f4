"""What a line of a paper may be: the head of a list or a method, an ingredient, how much it makes.

Each question is answered from the line alone. Leaves out what its neighbours make of it:
dividing.py.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import Final

from stillroom.bringing.heads import (
    STEP_WORD,
    TIMED,
    counts_stage,
    is_wish,
    plain,
    section_of,
    words,
)
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.page_figures import is_nutrition, is_page_number, is_time
from stillroom.bringing.page_foot import is_posted
from stillroom.bringing.titles import speaks_of_a_recipe, titled, without_guide, writer_of
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.number_words import languages_that_begin
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.problems import Unreadable

_LONGEST_HEAD: Final = 48
_LONGEST_ITEM: Final = 200
_LONGEST_TITLE: Final = 80
_LONGEST_SAID: Final = 2_000
_MOST_WORDS: Final = 12
_DAY_WORDS: Final = 6
_MOST_MEASURED: Final = 12
_MEASURED: Final = re.compile(
    r"(?:\d+\s+)?[\d½¼¾][\d.,/½¼¾]*\s*(?:k?g|gr|grams?|ml|cl|dl|l|lit(?:re|er)s?|ounces?|oz|lbs?|pounds?|cups?|tbsps?|tsps?|tablespoons?"
    r"|teaspoons?|EL|TL)\b",
    re.IGNORECASE,
)
# "100g of brown sugar, I used dark brown, and added another tablespoon as it was a bit tart."
_MEASURED_AND_SAID: Final = re.compile(
    rf"{_MEASURED.pattern}\.?\s+(?:of\s+)?(?:[^\W\d]+\s?){{1,4}},\s+(?:I|we|but|or)\b",
    re.IGNORECASE,
)
_AMOUNT: Final = re.compile(
    r"(?:(?:about|approx\.?|approximately|ca\.?|circa|scant|heaping|up to|generous|etwa)\s+)?"
    r"(?:[\d½⅓⅔¼¾⅛⅜⅝⅞⅕⅙\ufffd]|"
    r"(?:an?|one|two|three|four|five|six|eight|ten|twelve)\s+\(?[\d½⅓⅔¼¾][\d\s./½⅓⅔¼¾-]*"
    r"(?:oz|ounces?|lbs?|pounds?|k?g|grams?|ml|l|lit(?:re|er)s?|pints?|quarts?)\b|"
    r"(?:a|an|one|two|three|four|five|six|half|ein|eine|einen|une?|uno|una|un|een)\s+"
    r"(?:[a-zäöüß]+\s+)?"
    r"(?:poignée|bouquet|branche|brin|feuille|cuill[eè]r\w*|zeste|sachet|paquet|filet|bâton|"
    r"zweig|stange|scheibe|becher|packung|dose|messerspitze|stück|zehe|tropfen|schuss|"
    r"manciata|rametto|foglia|spicchio|stecca|bustina|baccello|puñado|cucharad\w+|vaso|taza|rama|hoja|diente|"
    r"chorro|handje|handvol|eetlepel|theelepel|kopje|takje|stokje|zakje|snuf|scheutje|teentje|blaadje|"
    r"pinch|handful|dash|splash|bunch|sprig|knob|clove|cup|pint|quart|pound|dozen|tin|can|jar|"
    r"teaspoon|tablespoon|stick|packet|bottle|lemon|orange|egg|vanilla|lb|prise|handvoll|bund|päckchen|"
    r"pincée|gousse|bouteille|pizzico|cucchiai\w*|pizca|snufje|tasse|glas|verre|bicchiere)|"
    r"(?:quelques|einige|alcun[ie]|algun[oa]s|enkele|wat)\s+[^\W\d]{3}|"
    r"(?:szklank[ai]|łyż(?:ecz)?k[ai]|szczypt[ay]|garść|kieliszek|lžíce|lžičk[ay]|hrn(?:ek|ky)|špetka|tasse|tazas?|cucchiai(?:no)?|theelepel|eetlepel|kopje|kopp|matsked|tesked|spiseskje|teskje|spiseske|teske|xícara|colher)\s+[^\W\d]|(?:a\s+)?(?:few|some|several)\s+(?:drops?|sprigs?|leaves|slices|strips|twists|pieces)\b|"
    r"(?:a|an|one|two)\s+(?:(?:large|small|clean|wide|deep|tall|sterili[sz]ed|glass|big|heavy)\s+)+"
    r"(?:bowls?|jars?|bottles?|pans?|pots?|saucepans?|sieve|funnel|muslin)\b|"
    r"enough\s+(?!to\b)[^.!?]{3,60}$|"
    r"(?:florets?|flowers?|petals?|blossoms?|heads|leaves|sprigs|seeds|kernels|flesh|pulp)\s+(?:of|from)\s+(?:about\s+)?\d|"
    r"(?:(?:muslin|spice|cheesecloth|cloth)\s+bag\s+(?:w/\s?\d+|with|of|containing)|pinch|handful|juice|zest|rind|peel|dash|salt|schale|saft|prise|zeste|jus)\b)",
    re.IGNORECASE,
)
# "Schale dünn abschälen, Saft auspressen." says what is done, as German does: at its end
_GERMAN_STEP: Final = re.compile(
    r"^(?=[^\d½¼¾])(?:[^\d½¼¾]|(?<!\d)\d+(?:[-–]\d+)?\s?(?:Min|Std|Stund|Tag|Woch|Grad|°|x\s|[Mm]al\s))*\s[a-zäöüß]{3,}(?:en|ern|eln)\.$"
)
_NUMBERED: Final = re.compile(
    rf"\(?(?:{STEP_WORD}\s*)?(\d{{1,2}})\s*[.):\]]{{1,2}}\s*(?=[^\W\d])"
    rf"|{STEP_WORD}\s+(?:\d{{1,2}}|one|two|three|four|five|six|seven|eight|nine|ten)"
    r"\s*(?:[.):]|\s[-–—])\s*(?=[^\W\d])"
    r"|\(?[A-H]\)\s+(?=[^\W\d])",
    re.IGNORECASE,
)
# "Sloes 1 lb", "Gin: 75 cl": the amount behind its food
_BEHIND_ITS_FOOD: Final = re.compile(
    r"[^\W\d][^\d.!?()]{1,40}?(?:\([^()\d]*\))?[\s,:–-]+(?:about\s+)?[\d½¼¾⅓⅔][\d\s./,½¼¾⅓⅔-]*\s?"
    r"(?:k?g|gr|gms?|grams?|lbs?|pounds?|ozs?|ounces?|ml|cl|dl|l|lt|litres?|liters?|pints?|pts?|cups?|"
    r"gramm(?:es?|i)?|gramos?|litr[eio]s?|litros?|tbsps?|tsps?|tablespoons?|teaspoons?|EL|TL|fl\.?\s?oz)\b\.?\s*(?:\([^()]*\))?",
    re.IGNORECASE,
)
# "Lime - 10 medium sized (chop 6 of them)": a known food, a dash, and how many
_COUNTED_BEHIND: Final = re.compile(
    r"(?P<food>[^\W\d][^\d.!?:]{1,40}?)\s*(?:[-–—]|:)\s+[\d½]{1,3}(?:\s?[-–]\s?\d{1,3})?"
    r"(?:\s+(?!(?:day|week|month|year|hour|min|tag|woche|monat|jour|semaine|mois|día|mes|giorn|settiman|dag|we[ek]{2}k?|veck|uge|uke|dni|tydz)[^\W\d]*\b)"
    r"[^\W\d]+(?:[\s-]sized?)?)?"
)
_META: Final = re.compile(
    r"(?:prep(?:aration)?(?:\s+time)?|cook(?:ing)?(?:\s+time)?|total(?:\s+time)?|active(?:\s+time)?|"
    r"time|ready\s+in|course|cuisine|calories|author|category|difficulty|keywords|tags|print|"
    r"posted|published|updated|rating|servings?|serves|level|zubereitungszeit|kochzeit|gesamtzeit|schwierigkeit|"
    r"repos|macération|ruhezeit|wartezeit|ziehzeit|reposo|riposo|coût|costo|rusttijd|"
    r"voorbereiding|totale?\s+tijd|soort\s+keuken|bron|temps|niveau|difficulté|votre\s+avis|difficolt[aà]|tempi?\s+di|tiempo|dificultad|bereidingstijd|kooktijd|moeilijkheid)\b"
    r"[^:]{0,20}(?::|\|)",
    re.IGNORECASE,
)
_DATE: Final = re.compile(
    r"(?:(?:mon|tues|wednes|thurs|fri|satur|sun)day\b|\d{1,2}(?:st|nd|rd|th)?\s|\w+\s+\d{1,2},?\s).*\b(?:19|20)\d\d\b"
    r"(?:\W+(?:at\s+|um\s+|à\s+)?\d{1,2}[:.h]\d\d\s*(?:[ap]\.?m\.?|uhr)?)?\W*(?:[—–|]\s*[^\W\d][^\d.!?:]{1,40})?$"
    r"|\d{1,4}[./-]\d{1,2}[./-]\d{1,4}$",
    re.IGNORECASE,
)
_SQUARE: Final = re.compile(r"\[[^\[\]]*\]")
_BRACKETED: Final = re.compile(r"\([^()]*\)[.!]?")
LEADERS: Final = re.compile(r"(?:…|\.{3})[….]*\s*\d")
"""Dots that lead to a figure, as tables are typed."""
# "(If using green apples, I add a little curry powder)"
_REMARK: Final = re.compile(
    r"\((?P<said>(?=[^()]*\b(?:if|when|i|we|you|my|wenn|falls|ich|wir|si|j['’]|vous|se|io|cuando|yo|als|ik|om|jag|du|hvis|jeg|eu|você|jeśli|gdy)\b)[^()]+)\)[.!]?",
    re.IGNORECASE,
)
_LEAST_OF_A_REMARK: Final = 7
_CREDIT: Final = re.compile(
    r"(?:(?:text|ord|texte|testo|texto|recipe|recept|rezept|recette|tekst|styling)\s(?:och|and|und|et|e|y|og|en|&|\+)\s)?"
    r"(?:photo(?:graph(?:s|y|er|ies)?|grafie|graphie|s)?|picture|image|foto(?:grafía|graf(?:ie|ia|i)?|s)?|bild(?:er)?|billeder?|video)\s*"
    r"(?:(?:by|credits?|courtesy|©|von|di|de|par|door|av|af)\b|:).{2,60}"
    r"|©\s?(?:(?:19|20)\d\d\s?)?[A-ZÀ-Ý].{2,50}",
    re.IGNORECASE,
)
# "× Expand Photo by Ann Berg": a page's button or a few words before whose picture it is
_CAPTION: Final = re.compile(
    r"(?:\W{0,3}[^\W\d]+\W{1,3}){0,3}?\W{0,3}(?:photo(?:graph)?|picture|image|foto|bild|billede|bilde|imagen|imagem|zdjęcie)s?"
    r"\s(?:by|courtesy(?:\sof)?|credit|von|par|di|de|door|av|af|przez)\s(?-i:[A-ZÀ-Ý]).{2,50}",
    re.IGNORECASE,
)
# "Til 5 liter champagne", "Für 4 Gläser Gelee": how much is made
_FOR_SO_MUCH: Final = re.compile(
    r"(?:til|till|für|pour|per|para|voor|for|na|do)\s(?:about\s|ca\.?\s|etwa\s|environ\s|ongeveer\s|circa\s|unos\s|około\s)?"
    r"\d[\d.,/½¼]*\s?[^\W\d]",
    re.IGNORECASE,
)
_GLUED_TIME: Final = re.compile(
    r"(?:(?:prep(?:aration)?|cook(?:ing)?|cool(?:ing)?|rest(?:ing)?|chill(?:ing)?|total|active|additional)\s+time)"
    r"\s*\d+\s*[a-z]+.{0,30}",
    re.IGNORECASE,
)
# "Peel the plums. Boil them with the sugar until"
_ENDS_WITHIN: Final = re.compile(r"[a-zà-ÿ]{3}[.!?]\s+[A-ZÀ-Ý][a-zà-ÿ]+\s")
_LEADS_BACK: Final = re.compile(r"[«←‹➜→]\s*(?:[^\s«»›]+\s*){1,9}|(?:[^\s«»→]+\s+){1,9}[→➜]")
# what a blog sets below each of its pages: to the one before and behind, and by what it is made
_BLOG_FOOT: Final = re.compile(
    r"(?:(?:newer|older) posts?|entrada (?:más reciente|antigua)"
    r"|(?:message|article) plus (?:récent|ancien)"
    r"|(?:neuerer|älterer) post|post più (?:recente|vecchio)|postagem mais (?:recente|antiga)"
    r"|(?:nieuwere|oudere) post|(?:senare|äldre) inlägg"
    r"|(?:nyere|ældre|eldre) (?:opslag|innlegg)"
    r"|(?:nowszy|starszy) post|home|inicio|accueil|startseite|home page|página inicial|homepage"
    r"|startsida?|startside|strona główna|\s)+"
    r"|(?:powered by|con la tecnología de|fourni par|bereitgestellt von|con tecnologia"
    r"|tecnologia do|mogelijk gemaakt door|drevet a[fv]|drivs av|technologia"
    r"|obsługiwane przez(?: usługę)?)\s\S{1,40}",
    re.IGNORECASE,
)
# a page's buttons for another size: "Scale 1x 2x 3x"
_OTHER_SIZES: Final = re.compile(
    r"(?:[^\W\d]+\s*:?\s*)?(?:[½¼]|\d{1,2}(?:/\d)?(?:[.,]\d)?)\s?[x×](?:[\s|/·]+(?:[½¼]|\d{1,2}(?:/\d)?(?:[.,]\d)?)\s?[x×]){1,4}",
    re.IGNORECASE,
)
_LONGEST_FOOT: Final = 90
# "image659", "IMG_2041.jpg": where a page has a picture
_PICTURE: Final = re.compile(
    r"(?:image|img|dsc[nf]?|photo|foto|bild|picture)[\s_-]?\d{2,8}(?:\.(?:jpe?g|png|gif|webp))?",
    re.IGNORECASE,
)
_LEAST_TOLD: Final = 3
_COUNTED_TITLE: Final = re.compile(
    r"(?:\d{1,3}[\s-](?:ingredients?|minutes?|minut\w*|min|days?|hours?|steps?|layers?|zutaten|minuten|tage|ingrédients|ingredienti|ingredientes"
    r"|ingrediënten|ingredienser|składnik\w*)|\d-\d-\d)[\s-]+(?P<named>[^\W\d][^.!?:;,\d]{3,50})",
    re.IGNORECASE,
)
# "cover for the jar", "line for hanging": a thing, and what it is for
_WHAT_FOR: Final = re.compile(r"^[^\W\d]+\s+(?:for|of)\s", re.IGNORECASE)


@lru_cache(maxsize=4096)
def is_ingredient(text: str) -> bool:
    """Whether a line may be one of a list of ingredients: it begins with an amount, and is short.

    >>> is_ingredient("2 cups sugar"), is_ingredient("1. Wash the jar."), is_ingredient("Boil it.")
    (True, False, False)
    >>> is_ingredient("Sloes 1lb"), is_ingredient("Boil it for 20 min")
    (True, False)
    """
    if len(text) > _LONGEST_ITEM:
        short = len(text) <= _LONGEST_SAID and len(_BRACKETED.sub("", text)) <= _LONGEST_ITEM
        return short and is_ingredient(_BRACKETED.sub("", text).strip())
    if number_of(text) or is_counted_title(text) or counts_stage(text):
        return False
    if is_time(text) or _DATE.match(text) or LEADERS.search(text) or is_posted(text):
        return False
    behind = bool(_BEHIND_ITS_FOOD.fullmatch(text.strip())) and not makes_of(text)
    begins = bool(_AMOUNT.match(text)) or behind or _counts_a_food(text)
    begins = begins or begins_in_words(text)
    if (
        _MEASURED.match(text)
        and not re.search(r"[.!?]\s", text)
        and len(text.split()) <= _MOST_MEASURED
    ):
        return True  # "15 grams fragrance oil or essential oil of your choice."
    if _MEASURED_AND_SAID.match(text):
        return True
    # "8 cups of herbs (I used sage, but thyme is good too)": what stands in brackets is said of it
    bare = _BRACKETED.sub("", text).strip()
    return begins and not is_sentence(bare) and not _GERMAN_STEP.search(bare)


def _counts_a_food(text: str) -> bool:
    counted = _COUNTED_BEHIND.fullmatch(_BRACKETED.sub("", text).strip())
    return counted is not None and find_staple(counted["food"]) is not None and not makes_of(text)


def is_counted_title(text: str) -> bool:
    """Whether a title begins with a number: "2 Ingredient Lip Balm", "5-Minute Fudge".

    >>> is_counted_title("2 Ingredient Fudge"), is_counted_title("3-2-1 Shortbread")
    (True, True)
    >>> is_counted_title("10 minute eggs"), is_counted_title("2 ingredients")
    (False, False)
    """
    found = _COUNTED_TITLE.fullmatch(text.strip())
    return found is not None and says_its_kind(found["named"])


def begins_with_amount(text: str) -> bool:
    """Whether a line begins with an amount, however long it is and however it ends.

    >>> begins_with_amount("1 1/2Kg Cooking Apples, peeled and diced, with care and patience.")
    True
    """
    return not number_of(text) and bool(_AMOUNT.match(text) or begins_in_words(text))


def begins_in_words(text: str) -> bool:
    """Whether a line begins with an amount in words of one of the book's other languages.

    >>> begins_in_words("Medio litro de aguardiente"), begins_in_words("Die Quitten waschen")
    (True, False)
    """
    if len(text.split()) > _MOST_WORDS or not languages_that_begin(text, 0):
        return False
    try:
        return isinstance(read_line(text).amount, Amount)
    except Unreadable:
        return False


@lru_cache(maxsize=4096)
def is_sentence(text: str) -> bool:
    """Whether a line is a sentence of a method or of a story: long, and ended as one.

    >>> is_sentence("Wash, sort, and hull the strawberries, and crush them.")
    True
    >>> is_sentence("1 lb. butter.")
    False
    """
    count = len(text.split())
    ends = bool(re.search(r"[.!?…][\"”’')]*$", text))
    within = text[:1].isalpha() and _ENDS_WITHIN.search(text)
    return bool((ends or within) and count >= 7) or count > 28


def is_remark(text: str) -> bool:
    """Whether all of a row stands in brackets, and a writer says something with it.

    >>> is_remark("(If using green apples, I add a little curry powder)")
    True
    >>> is_remark("(icing sugar for dusting)"), is_remark("(2 cups raisins, if you like them)")
    (False, False)
    """
    said = _REMARK.fullmatch(text.strip())
    few = said is None or len(said["said"].split()) < _LEAST_OF_A_REMARK
    return not few and said is not None and not begins_with_amount(said["said"])


def is_told(text: str) -> bool:
    """Whether a short line says what is done, though it ends as no sentence does.

    >>> is_told("Soak the flowers in the water"), is_told("Laver les fruits")
    (True, True)
    >>> is_told("Mixed spice"), is_told("Cover for the jar"), is_told("Dry white wine")
    (False, False, False)
    """
    said = plain(text).split()
    if len(said) < _LEAST_TOLD or said[0] not in words("told_first"):
        return False
    article = said[1] in words("told_within") or any(
        one in words("told_within") for one in said[2:]
    )
    return article and not _WHAT_FOR.search(text) and find_staple(" ".join(said[:2])) is None


def number_of(text: str) -> str:
    """Return the words behind the number of a step; "" for a line without one."""
    found = _NUMBERED.match(text)
    return text[found.end() :].strip() if found else ""


def is_empty(text: str) -> bool:
    """Whether a line is nobody's words: signs alone, or a button of a page."""
    bare = text.strip()
    if (
        _OTHER_SIZES.fullmatch(bare)
        or _PICTURE.fullmatch(bare)
        or _LEADS_BACK.fullmatch(bare)
        or (len(bare) <= _LONGEST_FOOT and _BLOG_FOOT.fullmatch(bare))
    ):
        return True
    lone = len(bare) == 1 and not bare.isascii()  # what is left of a blank in the wrong letters
    return not re.search(r"[^\W_]", text) or lone or plain(text) in words("passed") or is_wish(text)


@lru_cache(maxsize=4096)
def is_passed(text: str) -> bool:
    """Whether a line that is no ingredient is a page's furniture, a time or nutrition's figures.

    >>> is_passed("Prep time: 20 minutes"), is_passed("184 calories, 2 grams fat, 15 grams protein")
    (True, True)
    >>> is_passed("Stir in 200 g fat-free yogurt.")
    False
    >>> is_passed("Cook: stir the sugar and milk until they boil."), is_passed("Cook: 20 min")
    (False, True)
    """
    found = _META.match(text.strip()) or (len(text.split()) <= _DAY_WORDS and _DATE.match(text))
    if is_empty(text) or (found and not is_sentence(text.strip()[found.end() :])):
        return True  # but "Cook: the sugar and the milk until they boil, stirring." is a step
    if _CREDIT.fullmatch(text.strip()) or _CAPTION.fullmatch(text.strip()):
        return True
    if _GLUED_TIME.fullmatch(text.strip()):
        return True
    head, _, value = text.partition(":")
    bids = plain(value).split(" ")[0] in words("told_first")  # "Portions: chill for 2 hours"
    if section_of(head) != "aside" and TIMED.fullmatch(text.strip()) and not bids:
        return True
    return is_nutrition(text) or is_page_number(text) or is_posted(text)


@lru_cache(maxsize=4096)
def is_title(text: str) -> bool:
    """Whether a line may name a recipe: short, begun with a capital, ended by no sign.

    >>> is_title("Strawberry Jelly"), is_title("Boil it hard."), is_title("2 cups sugar")
    (True, False, False)
    """
    bare = without_guide(text.strip("*_ "))
    if _BRACKETED.fullmatch(bare):
        return False
    named = _BRACKETED.sub("", bare)  # "Spice blend (good on glazed carrots and in rice as well)"
    if not bare or len(bare) > _LONGEST_TITLE or len(named.split()) > 10:
        return False
    if titled(bare):
        return True
    if speaks_of_a_recipe(bare) or _SQUARE.fullmatch(bare):
        return False
    if _DATE.match(bare) or _FOR_SO_MUCH.match(bare):  # of the day it was posted
        return False
    if (
        re.search(r"[.?;,:]$|(?<!recipe)!$", bare)
        or section_of(bare)
        or is_passed(bare)
        or writer_of(bare)
    ):
        return False
    first = re.search(r"[^\W_]", bare)
    if not first or not (bare[first.start()].isupper() or bare[first.start()].isdigit()):
        return False
    return not is_ingredient(bare) and not makes_of(_BRACKETED.sub("", bare))
