"""What heads a part of a recipe: its list, its method, what stands beside them.

Each question is answered from the line alone, by the words of words.yml. Leaves out any other line:
sorting.py.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Final, Literal

import yaml

from stillroom.bringing.accents import without_accents
from stillroom.bringing.titles import LIST_FOR, titled
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.data_files import read_data

Section = Literal["ingredients", "method", "aside"]
STEP_WORD: Final = r"(?:step|schritt|[ée]tape|paso|passo|passaggio|fase|stap|steg)"
"""What a page calls a step by, before its number."""
SENTENCE_ENDS: Final = re.compile(r"(?<=[.!?…])[\"”’)]*\s+")
_LONGEST_ITEM: Final = 200
_LONGEST_HEAD: Final = 48
_LONGEST_NEEDED: Final = 70
_LONGEST_LED: Final = 30
_MOST_OF_A_WISH: Final = 9
# "Wir wünschen euch viel Spaß beim Backen und Frohe Weihnachten!"
_WE_WISH: Final = re.compile(
    r"^(?:(?:ich|wir)\s+wünschen?\s+(?:(?:euch|dir|ihnen|allen)\s+)*|(?:i|we)\s+wish\s+you\s+(?:all\s+)?(?:an?\s+)?|wishing\s+you\s+(?:all\s+)?(?:an?\s+)?"
    r"|(?:je|nous)\s+(?:vous|te)\s+souhait\w+\s+(?:une?\s+)?|(?:ti|vi)\s+augur\w+\s+|(?:os|te)\s+dese\w+\s+|(?:ik|wij|we)\s+wens\w*\s+(?:je|jullie|u)\s+"
    r"|jag\s+önskar\s+(?:er|dig)\s+(?:en\s+)?|vi\s+(?:önskar|ønsker)\s+(?:er|jer|dere|dig)\s+(?:en\s+)?)"
)
_SIGNS: Final = re.compile(r"^[#>*_=~\s•\-–—]+|[*_=~\s:.]+$")
# "Stuff you'll need:", "Pour 4 pots, il vous faut": the head of a list says so at its end
NEED: Final = (
    r"(?:you(?:['’]ll|\s+will)?\s+need|il\s+(?:vous\s+)?faut|braucht\s+man|brauchst\s+du|brauchen\s+sie"
    r"|benötigt\s+(?:ihr|man|du)|(?:man|du|ihr)\s+(?:braucht?|benötigt)|heb\s+je\s+nodig|occorrono|necesitas"
    r"|se\s+necesita|(?:behöver|trenger|behøver)\s+(?:du|man|ni)|(?:du|man|ni)\s+(?:behöver|trenger|behøver)"
    r"|skal\s+(?:du|man)\s+br(?:uge|uke)|(?:du|man)\s+skal\s+br(?:uge|uke)"
    r"|precisa(?:r|mos|rá|s)?(?:\s+de)?|potrzebuje(?:my|cie|sz))"
)
"""How a page says what is needed, at the end of a list's head."""
_NEEDED: Final = re.compile(
    rf"(?:.*[^\W\d])?[\s,]*\b{NEED}(?:\s+(?:about|roughly|ungefähr|etwa|circa|environ))?\s*:?",
    re.IGNORECASE,
)
# "Ingredients for 4 jars", "Zutaten für 6 Gläser"
_HEAD_AND_STOP: Final = re.compile(
    r"(?P<head>[^\W\d]{6,16})\.(?:\s*[-–—])?\s+(?P<rest>\S.*)", re.DOTALL
)
_LIST_AND_METHOD: Final = re.compile(
    r"(zutaten|ingredients|ingrédients|ingredienti|ingredientes|ingrediënten)\s*:?\s+(?=[\d½¼¾])(\S.*?)\s+"
    r"((?-i:Zubereitung|Method|Directions|Instructions|Préparation|Preparazione|Procedimento|Preparación|Elaboración"
    r"|Bereiding))\s*:?\s+(?=[^\W\d])(\S.*)",
    re.IGNORECASE | re.DOTALL,
)
_SUPPLIES: Final = re.compile(
    r"supplies(?: (?:needed|required|list))?|stuff|what goes in(?:to it)?"
    r"|(?:materials|things) (?:needed|required)",
    re.IGNORECASE,
)
# "Zubereitung der Plätzchen:": the head of a method that says once more of what
_JOINED: Final = re.compile(r" (?:und|and|et|e|y|en|och) ")
_METHOD_OF: Final = re.compile(
    r"(?:the\s+)?(?P<head>[^\W\d]+)\s+(?:of|for|der|des|dieser|vom|von|für|de|du|des|della|del|di|van)\s"
    r"(?!.*\b(?:use|using|serving|storage|storing|care|giving|gift)\b).+:$",
    re.IGNORECASE,
)
# "Zubereitung Quittengelee:", "Method - Sloe Gin": the head of a method, and what is made
_METHOD_NAMED: Final = re.compile(
    r"(?P<head>zubereitung|herstellung|method|directions|instructions|préparation|preparazione|procedimento|preparación"
    r"|elaboración|bereiding)\s*[-–:]?\s+(?!.*\b(?:use|using|serving|storage|storing|care|giving|gift|time|temps|tempo)\b)"
    r"(?:[^\W\d]+[\s-]*){1,4}:",
    re.IGNORECASE,
)
# "Method summary", "Kookinstructies", "Detailed instructions": a word before it or behind
_METHOD_WORD: Final = (
    r"(?:method|directions|instructions|procedure|zubereitung\w*|herstellung\w*|anleitung|préparation|étapes|preparazione"
    r"|procedimento|preparación|elaboración|pasos|bereiding\w*|werkwijze|\w{0,8}instructies)"
)
_METHOD_SO: Final = re.compile(
    r"(?!.*\b(?:ingredients?|zutaten|use|using|serving|storage|storing|care|giving|gift|tag|label|washing|times?"
    r"|temps|tempo|tiempo|tijd|video|notes?|nutrition|of|for|to|the|your|de|du|des|della?|para|pour|voor)\b)"
    rf"(?:[^\W\d]+ )?{_METHOD_WORD}(?: (?:summary|overview|steps|schritte|in short|in brief|kurz"
    r"|paso a paso|step by step|schritt für schritt|étape par étape|passo passo|stap voor stap))?"
)
_HEAD_ALONE: Final = re.compile(
    r"(?:(?P<list>(?i:Ingredients|Zutaten|Ingrédients|Ingredienti|Ingredientes|Ingrediënten))\s+(?:[-–—]\s+)?(?=[\d½¼¾])"
    r"|(?:Method|Directions|Instructions|Zubereitung|Préparation|Preparazione|Procedimento|Preparación|Bereiding)\s+"
    r"(?:(?:\+|&|and)\s+[^\W\d]+(?:\s[^\W\d]+)?\s+)?(?:[-–—]\s+)?"
    r"(?!(?:Time|Tips?|Notes?|Summary|Steps?|Instructions)\b)(?=[A-ZÄÖÜÉ][a-zäöüß]+\s))(?P<rest>\S.*)",
    re.DOTALL,
)
_ARTICLES: Final = re.compile(r"(?:the|di?e|der|das|las?|les|il|lo|gli|i|el|los|het|os?|as?)\s")
_ENDED: Final = re.compile(r"[.,;!?]$")
# "Para hacer mermelada, necesitarás los siguientes ingredientes:"
_FOLLOWING: Final = re.compile(
    r"(?:[^\W\d][\w'’,-]*\s+){1,9}(?:following|siguientes|suivants|folgenden?|seguenti|volgende)\s+"
    r"(?:ingredients?|zutaten|ingrédients|ingredienti|ingredientes|ingrediënten|things)\s*:",
    re.IGNORECASE,
)
# "Ingrédients et ustensiles": the head of a list, and what else it heads
_INGREDIENTS: Final = (
    r"(?:ingredients|zutaten|ingr[eé]dients|ingredienti|ingredientes|ingredi[eë]nten"
    r"|ingredienser(?:na|ne)?|składniki)"
)
_LIST_AND_TOOLS: Final = re.compile(
    rf"{_INGREDIENTS} (?:and|und|et|e|y|en|och|og|i) (?:equipment|tools|utensils|materials?"
    r"|materiale?s?|matériel|ustensiles|geräte|zubehör|utensilien|attrezz\w+|utensili|utensilios"
    r"|materiales|utensílios|materiais|benodigdheden|keukengerei"
    r"|redskap\w*|utstyr|udstyr|utrustning|przybory|sprzęt)(?: [^\W\d]+){0,3}"
)
# "Hope's Story", "Meine Geschichte zum Rezept", "About this cake"
_STORY: Final = re.compile(
    r"(?:[^\W\d]+ ){0,3}(?:story|geschichte|histoire|storia|historia|verhaal)(?: [^\W\d]+){0,4}"
    r"|about (?:the|this|my|me|our)(?: [^\W\d]+){0,4}"
)
# "Jam-making tips:", "Some hints:"
_TIPS: Final = re.compile(r"(?:[^\W\d]+ ){1,4}(?:tips|hints|tipps)")
# "Family notes", "Notes from the cook"
_NOTES: Final = re.compile(
    r"(?:[^\W\d]+ ){1,2}notes|notes (?:from|by|on|about)(?: [^\W\d]+){1,3}"
    r"|(?:an? )?(?:quick |short |last |final )?(?:note|word) (?:on|about)(?: [^\W\d]+){1,4}"
)
# "Tipps zum Sammeln und Verarbeiten", "Tips for a good set"
_TIPS_FOR: Final = re.compile(
    r"(?:tipps?|tips?|hints?|conseils?|astuces?|consigli|consejos|trucos|dicas|råd|porady|rady)"
    r"(?: [^\W\d]+)? (?:zum|zur|zu|für|for|on|to|pour|per|para|voor|bij|om|till|vom|von|from"
    r"|de|del|dei|della"
    r"|do|da|dos|das|van|fra|från|av|af|od|dla)"
    r"(?: [^\W\d]+){1,7}"
)
# "Storage instructions", "Serving tips"
_BESIDE: Final = re.compile(
    r"(?:storage|storing|keeping|serving|care|washing|gift|label|freezing)"
    r"(?: and [^\W\d]+)? (?:instructions|directions|tips|notes?|advice|suggestions?"
    r"|information|ideas)"
)
# "Variantes gourmandes des truffes", "Variationen": the word first, and of what
_VARIATIONS: Final = re.compile(
    r"(?:variant[es]s?|variantes?|varianten|varianti|variationen|variations|variazioni|variaciones|variações"
    r"|variaties|variationer|variasjoner|warianty|wariacje|obměny)(?: [^\W\d]+){0,6}"
)
# "Possible variations", "Alternative preparations", "Other ways to use it"
_OTHERWISE: Final = re.compile(
    r"(?:(?:possible|other|some|more|easy|suggested|optional|flavou?r|recipe|my) )?"
    r"(?:variations?|alternatives?|substitutions?|swaps|adaptations?)(?: (?:and|or) [^\W\d]+)?"
    r"|alternative (?:preparations?|flavou?rs?|versions?|ingredients)"
    r"|(?:other|different|more|further) (?:flavou?rs?|versions?|ways|variants?|combinations?)"
    r"|for a change|flavou?r (?:ideas|variations?|options)|variants?"
)
# "RECOMMENDED PROCESS TIMES FOR", above a table of a guide
_PROCESS_TIMES: Final = re.compile(r"(?:table \w+ )?(?:recommended )?process(?:ing)? times?\b")
_COMMENTS: Final = re.compile(
    r"(?:\d+|no|keine|nessun|sin|sem|geen|aucun|one|inga|ingen|brak|en|ett|et|un)\s+(?:comments?|thoughts?|repl(?:y|ies)|responses?|kommentar(?:e[rn]?|er)?|commenti?o?"
    r"|commentaires?|comentarios?|comentários?|reacties?|komentarz[ey]?|komentarzy|opmerkingen)(?:\s+(?:on|to|zu|su|sur|en|op)\b.*)?\s*:?",
    re.IGNORECASE,
)
_TOOLS: Final = re.compile(
    r"(?:[^\W\d]+ ){0,4}(?:utensils|equipment|tools|utensilios|utensili|ustensiles|geräte"
    r"|zubehör|attrezzi|keukengerei)"
    r"(?: [^\W\d]+){0,3}"
)
# "To decorate the jar you will need:"
_TO_DRESS_IT: Final = re.compile(
    r"(?:(?:here is )?what you(?:ll| will) need )?(?:to|for) "
    r"(?:decorat\w+|wrap\w*|packag\w+|dress\w*|finish\w*)"
    r"(?: (?:the|your) (?:jars?|bottles?|gifts?|presents?|packages?))?(?: you(?:ll| will)? need)?"
)
# "20 min", "1 h 30 min", "5.0/5", as pages set them on lines of their own
SPAN_UNIT: Final = (
    r"(?:mins?|mn|minut\w+|h|hrs?|hours?|heures?|std|stunden?|ore|ora|horas?|uur|days?|jours?|tage?n?|giorni|días"
    r"|dagen|weeks?|semaines?|wochen?|settiman[ae]|semanas?|weken|months?|mois|monate?n?|mesi|meses|maanden)"
)
# "Macération : 15 jours + un mois", "Zubereitung: 15 Min"
TIMED: Final = re.compile(
    rf"[^\W\d][^:.!?]{{2,30}}:[^:.!?]{{0,20}}\d+\s*{SPAN_UNIT}\b[^:.!?]{{0,25}}", re.IGNORECASE
)


_NUMERAL: Final = (
    r"(?:\d{1,2}|[IVX]{1,4}|one|two|three|four|five|six|seven|eight|nine|ten|first|last|eins|zwei|drei|vier|une?|deux|trois|quatre|uno"
    r"|due|tre|quattro|dos|tres|cuatro|een|twee|drie|vier)"
)
# "STEP #2", "Day 4 - the brine", "8th day:", "Second stage"
_STAGE: Final = re.compile(
    rf"(?:(?:step|stage|part|phase|day|schritt|teil|stufe|tag|[ée]tape|partie|jour|paso|parte|etapa|d[ií]a|passo|passaggio|fase|giorno|stap"
    rf"|deel|dag|steg|del|krok|dzie[nń]|dia)\s*(?:n[°ºo]\.?|no\.?|nr\.?|\#)?\s*{_NUMERAL}"
    r"|(?:\d{1,2}(?:st|nd|rd|th|\.|er|e|º|°|ª)|first|second|third|fourth|fifth|sixth|seventh|last|next|erster|zweiter|dritter|nächster"
    r"|premier|premi[eè]re|deuxi[eè]me|troisi[eè]me|primo|secondo|terzo|primer|segundo|tercer|eerste|tweede|derde)\s+"
    r"(?:day|step|stage|part|tag|schritt|teil|jour|[ée]tape|partie|giorno|passo|d[ií]a|paso|dag|stap|deel))"
    r"\s*(?:[-–—:(]\s?[^.!?]{0,40})?",
    re.IGNORECASE,
)


@cache
def words(which: str) -> frozenset[str]:
    """Return the words of one list, those of the recipe's own reader among them."""
    text = (Path(__file__).parent / "words.yml").read_text(encoding="utf-8")
    own: dict[str, Any] = yaml.safe_load(text)
    known = read_data("recipe_words.yml")
    found = {*own[which], *(known[which] if isinstance(known.get(which), list) else [])}
    return frozenset(str(word) for word in found)


# an amount with nothing behind it: "50 g", "3 pièce"
AMOUNT_ALONE: Final = re.compile(
    r"[\d½¼¾⅓⅔⅛][\d\s.,/½¼¾⅓⅔⅛-]*(?:to\s+\d+\s*)?(?:k?g|gr|grams?|mg|ml|cl|dl|l|lit(?:re|er)s?|cups?|tbsps?|tsps?"
    r"|tablespoons?|teaspoons?|ozs?|ounces?|lbs?|pounds?|pints?|quarts?|gallons?|EL|TL|pi[eè]ces?"
    r"|stück|pincées?|c\.?\s?à\.?\s?[cs]\.?|cuill[eè]res?\s+à\s+\w+)\.?",
    re.IGNORECASE,
)


_WAYS: Final = re.compile(
    r"\((?:[^()]{0,40}\s)?(?:ways|ideas|variations?|suggestions?|to (?:enjoy|use|serve))\b"
    r"[^()]{0,40}\)"
    r"|^\W*(?:\d+ )?(?:(?:more|other|different) )?ways to (?:enjoy|use|serve|eat|drink)\b",
    re.IGNORECASE,
)


@lru_cache(maxsize=4096)
def plain(text: str) -> str:
    """Return a line in small letters, without signs: as words.yml has it.

    >>> plain("## What you'll need:")
    'what youll need'
    """
    text = text if len(text) <= _LONGEST_ITEM else text[:_LONGEST_ITEM]
    bare = re.sub(r"['’`]", "", _SIGNS.sub("", text).lower())
    return " ".join(re.findall(r"[^\W_]+", re.sub(r"\([^)]*\)", "", bare)))


def _is_one_of(said: str, which: str) -> bool:
    """Whether words are one of a list, with its accents or typed without: "skladniki"."""
    return said in words(which) or (said.isascii() and said in _unaccented(which))


@cache
def _unaccented(which: str) -> frozenset[str]:
    return frozenset(map(without_accents, words(which)))


@lru_cache(maxsize=4096)  # each line of a paper is asked about from many sides
def section_of(text: str) -> Section | None:
    """Return which part of a recipe a heading begins; None for any other line.

    >>> section_of("Method summary"), section_of("Storage instructions"), section_of("Steps of oak")
    ('method', 'aside', None)
    >>> section_of("To make it you will want the following ingredients:")
    'ingredients'

    >>> section_of("INGREDIENTS:"), section_of("Zubereitung"), section_of("2 cups sugar")
    ('ingredients', 'method', None)
    >>> section_of("Zubereitung der Plätzchen:"), section_of("Directions for use:")
    ('method', 'aside')
    """
    if len(text) <= 2 * _LONGEST_HEAD and _FOLLOWING.fullmatch(text.strip()):
        return "ingredients"
    far = len(text) > _LONGEST_NEEDED
    headed = not far and (_NEEDED.fullmatch(text.strip()) or LIST_FOR.fullmatch(text.strip()))
    if far or (len(text) > _LONGEST_HEAD and not headed):
        return None
    bare = plain(text)
    first = _JOINED.split(bare, maxsplit=1)[
        0
    ]  # "Tipps und Hinweise", "Conservation et présentation"
    if {bare, first} & (words("aside") - {"ingredients", "you will need", "what you need"}):
        return "aside"
    if heads_tools(text) or _STORY.fullmatch(bare) or _BESIDE.fullmatch(bare):
        return "aside"
    if _NOTES.fullmatch(bare) and not text.strip().endswith((".", "!", "?")):
        return "aside"
    if _TIPS_FOR.fullmatch(bare) and not text.strip().endswith((".", "!")):
        return "aside"
    if says_otherwise(text) or (text.strip().endswith(":") and _TIPS.fullmatch(bare)):
        return "aside"
    if heads_comments(text) or _PROCESS_TIMES.match(bare):
        return "aside"
    if _WAYS.search(text):  # "Methods (Ways to Enjoy)"
        return "aside"
    needed = _NEEDED.fullmatch(text.strip()) and not titled(text)
    for_what = LIST_FOR.fullmatch(text.strip())
    if _LIST_AND_TOOLS.fullmatch(bare):
        return "ingredients"
    if _is_one_of(bare, "ingredients") or needed or for_what or _SUPPLIES.fullmatch(bare):
        return "ingredients"
    of_what = _METHOD_OF.match(text.strip()) or _METHOD_NAMED.fullmatch(text.strip())
    again = of_what and of_what["head"].lower() in words("method")
    article = _ARTICLES.match(bare)
    named = bare[article.end() :] if article else bare
    if again or _is_one_of(bare, "method") or _is_one_of(named, "method"):
        return "method"
    if _is_one_of(named, "ingredients"):
        return "ingredients"
    return "method" if _METHOD_SO.fullmatch(bare) and not _ENDED.search(text.strip()) else None


def is_wish(text: str) -> bool:
    """Whether a line wishes well and says no more: "Viel Spaß beim Backen".

    >>> is_wish("Viel Spaß beim Backen."), is_wish("Enjoy!"), is_wish("Viel Zucker zugeben.")
    (True, False, False)
    """
    said = _WE_WISH.sub("", plain(text)).split()
    few = len(said) <= _MOST_OF_A_WISH and not re.search(r"\d", text)
    named = not re.search(r"[.!?]\s*$|\b[a-zà-ÿ]", text) and bool(staples_named(" ".join(said[2:])))
    return few and " ".join(said[:2]) in words("wishes") and not named


def counts_stage(text: str) -> bool:
    """Whether a line counts a stage of the work and says no more.

    >>> counts_stage("STEP #2"), counts_stage("1st day"), counts_stage("1 day"), counts_stage("Day")
    (True, True, False, False)
    """
    return len(text) <= _LONGEST_NEEDED and bool(_STAGE.fullmatch(text.strip()))


def says_otherwise(text: str) -> bool:
    """Whether a line heads what may be done in another way: "Possible variations".

    >>> says_otherwise("Alternative preparations:"), says_otherwise("Lemon variation")
    (True, False)
    """
    if _ENDED.search(text.strip()):
        return bool(_OTHERWISE.fullmatch(plain(text)))
    return bool(_OTHERWISE.fullmatch(plain(text)) or _VARIATIONS.fullmatch(plain(text)))


def list_and_method(text: str) -> tuple[str, str, str, str] | None:
    """Return the heads and the words of a recipe told in one paragraph, without a colon.

    >>> list_and_method("Zutaten 120 g Mehl, 1 Ei. Zubereitung Alles verkneten.")
    ('Zutaten', '120 g Mehl, 1 Ei.', 'Zubereitung', 'Alles verkneten.')
    """
    found = _LIST_AND_METHOD.fullmatch(text.strip())
    return (found[1], found[2], found[3], found[4]) if found else None


def heads_comments(text: str) -> bool:
    """Whether a line counts what readers wrote below a page: "2 commenti:", "No comments".

    >>> [heads_comments(one) for one in ("2 commenti:", "12 Responses to Plum jam", "2 cups")]
    [True, True, False]
    """
    return bool(_COMMENTS.fullmatch(text.strip()))


def heads_tools(text: str) -> bool:
    """Whether a line heads what is worked with: "Equipment", "Gather together your utensils:".

    >>> heads_tools("GATHER TOGETHER YOUR UTENSILS:"), heads_tools("2 tools")
    (True, False)
    """
    bare = plain(text)
    named = bare in words("tools")
    return named or bool(
        text.strip().endswith(":") and (_TOOLS.fullmatch(bare) or _TO_DRESS_IT.fullmatch(bare))
    )


def after_section(text: str) -> tuple[Section, str] | None:
    """Return the part that begins a line and what follows: "Method: chop the mint"."""
    head, colon, rest = text.partition(":")
    section = section_of(head) if colon and rest.strip() else None
    section = section if len(head) < _LONGEST_LED or section == "ingredients" else None
    if section == "method" and titled(text):  # "How to make: Elderflower cordial"
        return None
    if section and not TIMED.fullmatch(text.strip()):
        return section, rest.strip()
    bare = _HEAD_ALONE.match(text)  # "Ingredients 125 g butter", "Method Put the butter in a pan."
    if bare and (bare["list"] or (len(bare["rest"].split()) >= 5 and text.endswith("."))):
        return ("ingredients" if bare["list"] else "method"), bare["rest"]
    first = _HEAD_AND_STOP.match(text)  # "Preparación. Lavamos las naranjas"
    if first and plain(first["head"]) in words("method"):
        return "method", first["rest"]
    return None
