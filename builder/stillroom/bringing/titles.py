"""What a recipe is called, as lines of a paper give it out, and whose it is.

"Recipe: Plum jam", "For plum gin you will need", "Zutaten für Quittengelee". Leaves out whether any
other line may be a title: sorting.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.lines.staple_table import staples_named
from stillroom.core.recipe.kinds import kind_called
from stillroom.core.words.problems import Unreadable

RECIPE_WORD: Final = r"(?:recipe|rezept|recette|ricetta|receta|receita|recept|opskrift|oppskrift)"
"""What a recipe is called, in the languages that papers come in: for use inside patterns."""
_TITLE_WORDS: Final = 5
_SAID_OF_IT: Final = re.compile(r"\b(?:it|them|this|these|until|till|then)\b", re.IGNORECASE)
_LONGEST_HEAD: Final = 48
_LONGEST_ITEM: Final = 200
_BY: Final = re.compile(
    r"(?:from\s+the\s+kitchen\s+of|by|from|recipe\s+(?:by|from)|(?:contributed|submitted|shared|sent\s+in|posted)\s+by"
    r"|(?:given|passed|handed)\s+(?:(?:on|down|to\s+(?:me|us))\s+){0,2}(?:by|from)"
    r"|author|autorin|autor[ae]?|auteure?|autrice|författare|forfatter|autorka|words\s+by|words(?=\s*:)|written\s+by|von|rezept\s+von|par|di|de|(?-i:av|af|fra|från|van|naar|od|door))"
    r"\b\s*:?\s+(?P<who>[^\W\d](?:(?!(?<!\s(?-i:[A-Z]))(?<!Mrs)(?<!Mr)(?<!Dr)(?<!St)[.!?]\s)[^:;]){1,60})$",
    re.IGNORECASE,
)
_A_KNOWN_ONE: Final = re.compile(
    r"my|our|the|an?|mein\w*|unser\w*|d(?:er|em|ie)|einer?|m(?:on|a|es)|notre|la|le|mi[ao]?|mijn|onze|de|min|mitt|vår",
    re.IGNORECASE,
)
_OF_WHAT: Final = re.compile(r"(?:from|von|par|di|de|av|af|fra|från|van|od)\b", re.IGNORECASE)
# "From Aunt Bea, who made it every year": what she does is no part of her name
_WHO_DOES: Final = re.compile(
    r",\s+(?:and\s+)?(?=(?:she|he|who|they|it|die|der|sie|er|qui|elle|il|che|lei|lui|que|ella|él|som|hon|han|hun|zij|hij)\b)"
)
# "Recipe by Ann Sedge from a garden magazine of June"
_SAYS_BY: Final = re.compile(r"(?:recipe|submitted|contributed|shared)\s+by\b", re.IGNORECASE)
_FROM: Final = re.compile(r"\s+(?:from|for|in)\s+(?=[A-Z]|an?\s)")
_BY_LABEL: Final = re.compile(
    r"(?:from|by|von|par|de|di|van|från|fra|recipe\s+(?:by|from)|rezept\s+von|recette\s+de|ricetta\s+di|receta\s+de|recept\s+van)\s*:\s+"
    r"(?P<who>(?-i:[A-ZÀ-Ý])[^:;!?]{1,70})",
    re.IGNORECASE,
)
_A_RECIPE_OF: Final = re.compile(
    rf"(?P<a>(?:an?|ein|une?|una|een|en|ett?)\s+)?{RECIPE_WORD}"
    r"\s+(?:(?P<by>by)|of|from|von|de|di|van|av|af|fra|från)\s+"
    r"(?P<who>(?-i:[A-ZÀ-Ý][\w.'’-]*(?:\s+(?:(?:van|de|der|von|di|la|le)\s+)?[A-ZÀ-Ý][\w.'’-]*){1,3}))(?=[\s,.;(\"“„]|$)[^\d]{0,80}$",
    re.IGNORECASE,
)
_DATED: Final = re.compile(
    r"[,(]?\s*(?:[^\W\d]{3,9}\.?\s+)?(?:\d{1,2}(?:st|nd|rd|th)?,?\s+)?(?:19|20)\d\d\)?\s*$"
)
# "Posted by Ann Bell on December 3, 2019", "By Mary Lee, 12 May 2018", "By Ann • 14/02/2020"
_MONTH: Final = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?"
    r"|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\b\.?"
)
_ON_A_DAY: Final = re.compile(
    r"(?:\s*[,(|•·–—-]\s*|\s+)(?:(?:on|le|am|den|vom|il|el|op|em|dne|dnia)\s+)?(?:(?:mon|tues?|wednes|thurs?|fri|satur|sun)day\b,?\s+)?"
    rf"(?:\d{{1,2}}(?:st|nd|rd|th|er|\.)?\s+(?:(?:of|de|di)\s+)?{_MONTH}|{_MONTH}\s+\d|\d{{1,2}}\.?\s+(?:de\s+)?[^\W\d]{{3,10}}\.?\s+(?:de\s+)?(?:19|20)\d\d|\d{{1,4}}[./-]\d{{1,2}}[./-]\d).*$",
    re.IGNORECASE,
)
# "Recept van oma: Speculoosjes", "Oma's recept: Speculoosjes"
_RECIPE_OF: Final = re.compile(
    r"(?:(?:recipe\s+(?:of|from)|rezept\s+von|recette\s+de|ricetta\s+d(?:i|ella|el)|receta\s+de(?:\s+la)?|recept\s+(?:van|av|från)"
    r"|opskrift\s+fra|oppskrift\s+fra|przepis|receita\s+d[ae])\s+(?P<who>[^:\d]{2,30})"
    r"|(?P<whose>[^\W\d][^:\d]{1,24}?)['’]?s\s+(?:recipe|rezept|recept|opskrift|oppskrift))\s*:\s+(?P<title>\S.*)",
    re.IGNORECASE,
)
_OF: Final = re.compile(r"(?:di|de|av|af|fra|från|od)\b", re.IGNORECASE)
_KIN: Final = re.compile(
    r"(?:oma|opa|mutti|mama|papa|tante|onkel|mamie|mémé|mamy|papi|maman|tata|nonn[ao]|mamma|zia|abuel[ao]|mamá|tía"
    r"|yaya|(?:far|mor)(?:mor|far)|moster|faster|bestemor|mor|babci?a|babci|ciocia|avó|vovó|tia|nana?|nanny"
    r"|gran(?:ny|dma|dmother|dad)?|mum|mom|aunt(?:ie)?|uncle)",
    re.IGNORECASE,
)
# "From my neighbour - makes 6 jars", "By Ann, serves 8"
_BESIDE: Final = re.compile(
    r"\s+[-–—|]\s+|[,;.!(]?\s+(?=\(?(?:makes|serves|yields?|ergibt|donne|voor|für|pour|per)\s+(?:about\s+|ca\.?\s+)?\d)",
    re.IGNORECASE,
)
_RECIPE: Final = re.compile(
    r"(?:(?:recipe|rezept|recette|ricetta|receta|recept)\s*(?:name|title|(?:n[°ºo]\.?|no\.|nr\.?|#)\s*\d{1,2}\s*[-–.)]?)?|title|titel|titre|titolo|título)\s*(?:(?<=\d)|(?<=[-–.)])|:)\s*(?P<title>\S.*)"
    r"|(?:recept|rezept|recette|ricetta|receta|RECEPT|REZEPT|RECETTE|RICETTA|RECETA)\s+(?P<called>(?!voor\b|für\b|pour\b|per\b|para\b|d[ei]\b|n[°ºor]\b)[^\W\d][^:.!?]{2,50}):$"
    r"|(?:(?:my|our|the|[\w'’]+['’]s)\s+)?(?:\w+\s+)?(?:recipe\s+(?:for|of(?=\s+(?!the\b|an?\b|my\b|our\b|his\b|her\b|this\b|your\b|course\b)[^\W\d]+(?:\s[^\W\d]+)?\s*:?$))|rezept\s+für|recette\s+d[eu]|"
    r"receta\s+de|recept\s+voor)\s+(?P<for>\S.*?)\s*:?$"
    r"|(?:[\w'’]+,?\s+){1,5}(?:das|mein|unser|het|la|il|el)\s+(?:rezept\s+für|recept\s+voor|recette\s+d[eu]|ricetta\s+(?:per|del)|receta\s+de)"
    r"\s+(?:(?:d(?:ie|en|as)|eine?n?|de|het|il|la)\s+)?(?P<that>[^\W\d](?:[^\s.:]*\s?){1,5}):$"
    r"|how\s+(?:to|i|we)\s+make\s*:\s*(?P<made>(?-i:[A-Z][\w'’&-]*)(?:[ -][\w'’&-]+){0,5})"
    # "for the filling you will need" heads a part of a list, "for plum jam you will need" a recipe
    r"|(?:for|to\s+make|für)\s+(?!(?:the|an?|this|these|it|your|(?:jar|bottle|label|gift)s?|decorat\w+|wrapping|packaging"
    r"|d(?:ie|en|as)|eine?n?)\b)"
    r"(?P<need>\S.*?),?\s+(?:you\s*(?:['’]ll|will)?\s+need\b|(?:braucht|benötigt)\s+(?:man|ihr)\b"
    r"|(?:brauchst|benötigst)\s+du\b|brauchen\s+wir\b).*",
    re.IGNORECASE,
)
_SO_MANY: Final = re.compile(
    r"(?:(?:about|approx\w*|ongeveer|etwa|ca\.?|circa|environ|unos)\s+)?\d+\s*[^\W\d]",
    re.IGNORECASE,
)
# "This recipe for jerky is not heavily brined", "the perfect recipe for you."
_OF_A_SENTENCE: Final = re.compile(
    r"[.!?;]$|^(?:you|me|us|it|them|this|that|these|those|people|anyone|everyone)\b"
    r"|\b(?:is|are|was|were|will|has|have|had|can|came|comes|makes|made|uses|calls|ist|sind|hat|est|sont|è|es|zijn)\b"
    r"|(?:\S+\s+){8}",
    re.IGNORECASE,
)
LIST_FOR: Final = re.compile(
    # "Rezept für ca. 6 Gläser:", right above a list
    rf"(?:(?:{RECIPE_WORD}|przepis)\s+(?:for|für|pour|per|para|voor|till|til|na)\s+"
    r"(?=(?:about|ca\.?|circa|cirka|etwa|environ|ungefär|unos|około|omkring)?\s*\d)|(?:(?:the|die|les|gli|los|de|os)\s+)?(?:(?:basic|main|key|simple)\s+|grund|haupt)?"
    r"(?:ingredients|zutaten|ingr[eé]dients(?:\s+de\s+base)?|ingredienti|ingredientes|ingrediënten|ingredienser|składniki|nodig)\s*\(?\s*"
    r"(?:for|of|to\s+make|(?:[-–—]\s*)?(?:makes|serves|yields?|ergibt|pour\s+faire|rinde)(?=\s+\D{0,8}\d)|für|pour|per|para|voor|till|til|na|do)\s+)(?P<what>[^()]+?(?:\s*\((?:(?:à|a|of|je|von|mit|zu|de|di|da|van|om|po|på|per|each)\s+|\d)[^()]+\))?)\s*\)?\s*:?",
    re.IGNORECASE,
)
_SO_MUCH_OF: Final = re.compile(
    r"(?P<said>(?:about\s+)?(?:\d[\d\s./½¼¾]*|½|an?|one|two|three|four|five|six)\s*"
    r"(?:quarts?|gallons?|lit(?:re|er)s?|l|ml|pints?|cups?|jars?|bottles?|dozen|pounds?|lbs?|kg|g)\b(?:\s*\([^()]*\))?)\s+of\s+(?=[^\W\d])",
    re.IGNORECASE,
)
_A_RECIPE: Final = re.compile(
    r"(?:(?:so|and|now|ok(?:ay)?|well|voilà|alors|donc|allora|ecco|dunque|bueno|pues|bien|also|nun|jetzt|dann)[\s,]+){0,3}(?:here(?:['’]s|\s+is|\s+are|\s+it\s+is)?\s+|hier\s+(?:ist|kommt)\s+|voici\s+|aquí\s+(?:está|va)\s+|hier\s+is\s+)?"
    r"(?:the|this|my|our|his|her|das|dies(?:es)?|mein|unser|la|cette|ma|notre|il|questa|mia|esta|mi|het|dit|mijn|ons)\s+"
    r"(?:(?:original|basic|full|whole|actual|simple|easy|quick|old|family|alte|ganze|einfache)\s+)*"
    r"(?:recipe|rezept|recette|ricetta|receta|recept)(?:\s+(?:itself|below|i\s+use[d]?|selbst))?"
    r"|(?:pour|für|per|para|voor|for)\s+(?:cette|dieses|questa|esta|dit|this)\s+(?:recette|rezept|ricetta|receta|recept|recipe)\b.{0,60}",
    re.IGNORECASE,
)
# "Check out our recipe below", "Das Rezept findet ihr unten"
_CALLS_TO_IT: Final = re.compile(
    rf"(?:check\s+out|see|try|get|find|scroll|jump|go|click|read|watch|view|follow)\s(?:[^.!?:]{{0,40}}\s)?{RECIPE_WORD}s?(?:\s[^.!?:]{{0,30}})?"
    rf"|(?:[^.!?:]{{0,40}}\s)?{RECIPE_WORD}(?:\s[^.!?:]{{0,30}})?\s(?:below|unten|ci-dessous|qui\s+sotto|(?:aquí\s+)?abajo|hieronder|nedan|nedenfor)",
    re.IGNORECASE,
)
# "Chapter 4. Olive oil soap"
_CHAPTER: Final = re.compile(
    r"^(?:chapter|kapitel|chapitre|capitolo|capítulo|hoofdstuk)\s+\w+\s*[.:–-]\s*", re.IGNORECASE
)
# "Sloe gin - an easy step by step guide": what a page puts behind a title
_GUIDE: Final = re.compile(
    r"\s+[-–—:|,]?\s*\(?(?:an?\s+|the\s+)?(?:(?:easy|simple|complete|ultimate|quick|full|beginner['’]?s?)\s+)*"
    r"(?:step[\s-]by[\s-]step(?:\s+(?:guide|recipe|instructions|tutorial))?|guide|tutorial)\)?$",
    re.IGNORECASE,
)


def writer_of(text: str) -> str:
    """Return whose recipe a line says it is; "" where it says nothing of that, or more besides.

    >>> writer_of("By Mrs. J. Finch"), writer_of("From the kitchen of Ann - makes 6 jars")
    ('Mrs. J. Finch', 'Ann')
    """
    bare = text.strip("*_ ")
    if found := _A_RECIPE_OF.match(bare):  # "Ein Rezept von Anna Berg, Hainburg."
        who = str(found["who"]).strip(" .")
        if found["by"] or not _names_what_is_made(who, sure=bool(found["a"])):
            return who
    bare = bare[1:-1] if bare[:1] == "(" and bare.find(")") == len(bare) - 1 else bare
    if labelled := _BY_LABEL.fullmatch(bare):  # "From: M.A. Whitmer, December 2, 1966"
        return _DATED.sub("", labelled["who"]).strip(" ,")
    head = _WHO_DOES.split(_BESIDE.split(bare, maxsplit=1)[0], maxsplit=1)[0]
    head = _FROM.split(head, maxsplit=1)[0] if _SAYS_BY.match(head) else head
    found = _BY.match(_ON_A_DAY.sub("", head))
    who = found["who"].strip(" ,!") if found and len(head.split()) <= 9 else ""
    # "from windfalls and old plums" says of what it is
    first = (who or "-").split()[0]
    named = who[:1].isupper() or _KIN.fullmatch(first) or _A_KNOWN_ONE.fullmatch(first)
    return who if named or not _OF_WHAT.match(head) else ""


def _names_what_is_made(who: str, sure: bool) -> bool:
    """Whether words in capitals are a dish's and no person's: "Dulce de Membrillo".

    Where it is `sure` that somebody is named, "Rose" is no flower.
    """
    for word in who.lower().split():
        try:
            if kind_called(word) is not None:
                return True
        except Unreadable:  # "may be two kinds": a kind all the same
            return True
    return not sure and bool(staples_named(who))


def title_and_writer(text: str) -> tuple[str, str] | None:
    """Return what a line names and whose it says it is; None for any other line.

    >>> title_and_writer("Recept van oma: Speculoosjes"), title_and_writer("Ann's recipe: Plum jam")
    (('Speculoosjes', 'oma'), ('Plum jam', 'Ann'))
    >>> title_and_writer("Recette de base: la pâte")
    """
    found = _RECIPE_OF.fullmatch(text.strip()) if len(text) <= _LONGEST_ITEM else None
    who = (found["who"] or found["whose"]).strip() if found else ""
    named = who[:1].isupper() or (who and _KIN.fullmatch(who.split()[0]) is not None)
    return (found["title"], who) if found and named else None


def names_writer(text: str) -> bool:
    """Whether a line right below a title says whose it is, and not what it is made of.

    >>> names_writer("from Sherry"), names_writer("von Oma Else"), names_writer("van oma")
    (True, True, True)
    >>> names_writer("from windfalls"), names_writer("di Prugne"), names_writer("de la Bretagne")
    (False, False, False)
    """
    who = writer_of(text).split()
    kin = bool(who) and _KIN.fullmatch(who[0]) is not None
    if not who or _OF.match(text):  # "de", "di", "av" say of what a thing is as well
        return kin
    return kin or who[-1][:1].isupper()


def beside_writer(text: str) -> str:
    """Return what a line says beside whose recipe it is: behind a dash, or how many it makes.

    >>> beside_writer("From my neighbour - makes 6 jars"), beside_writer("By Mrs. J. Finch")
    ('makes 6 jars', '')
    """
    parts = _BESIDE.split(text.strip("*_ "), maxsplit=1)
    return parts[1].strip() if len(parts) > 1 else ""


def titled(text: str) -> str:
    """Return the title that a line gives out as one; else "".

    >>> titled("Recipe: Plum jam"), titled("My recipe for plum gin:"), titled("Plum jam")
    ('Plum jam', 'Plum gin', '')
    >>> titled("How to make: Plum gin"), titled("How to make: Boil the plums until soft.")
    ('Plum gin', '')
    >>> titled("For plum jam you will need:"), titled("For the filling you will need:")
    ('Plum jam', '')
    >>> titled("The perfect recipe for you."), titled("My recipe for jam is quickly made, and good")
    ('', '')
    """
    if _A_RECIPE_OF.match(text.strip()) and writer_of(text):  # "Recette de Mamie Jeanne"
        return ""
    found = _RECIPE.fullmatch(text.strip()) if len(text) <= _LONGEST_ITEM else None
    named = ("title", "called", "for", "that", "made", "need")
    said = next(filter(None, (found[one] for one in named)), "").strip(" :–") if found else ""
    if _SO_MANY.match(said):  # "Recept voor ongeveer 2 liter": how much, not of what
        return ""
    said = _SO_MUCH_OF.sub("", said)  # "To make one quart of ginger beer, you'll need"
    if found and found["for"] and _OF_A_SENTENCE.search(said):
        return ""
    return said[:1].upper() + said[1:] if found and found["title"] is None else said


def made_of_title(text: str) -> str:
    """Return how much a line that gives out a title says is made; "" where it does not say.

    >>> made_of_title("To make one quart (960 ml) of ginger beer, you'll need the following:")
    'one quart (960 ml)'
    >>> made_of_title("To make ginger beer, you'll need:"), made_of_title("A pint of gin")
    ('', '')
    """
    found = _RECIPE.fullmatch(text.strip()) if len(text) <= _LONGEST_ITEM else None
    said = _SO_MUCH_OF.match((found["need"] or found["made"] or "").strip()) if found else None
    return said["said"].strip() if said else ""


def title_of_list(text: str) -> str:
    """Return what a list's heading says its things are for, where that is the whole recipe.

    >>> title_of_list("Zutaten für Quittengelee:"), title_of_list("Ingredients for the icing")
    ('Quittengelee', '')
    """
    found = LIST_FOR.fullmatch(text.strip()) if len(text) <= _LONGEST_HEAD else None
    what = found["what"].strip(" :") if found else ""
    part = re.match(
        r"(?:the|an?|this|your|it|d(?:ie|en|as|er)|eine?n?|l[ae]s?|il|lo|i|gli|el|los|las|de|het|\d)\b",
        what,
        re.I,
    )
    return "" if part or re.search(r"\d", what) else what[:1].upper() + what[1:]


def part_of(text: str) -> str:
    """Return what a list's heading amid a method says its things are for; "" for any other line.

    >>> part_of("Ingredients for the icing:"), part_of("Zutaten für 4 Gläser"), part_of("Sugar")
    ('the icing', '', '')
    """
    found = LIST_FOR.fullmatch(text.strip()) if len(text) <= _LONGEST_HEAD else None
    what = found["what"].strip(" :") if found else ""
    return "" if re.search(r"\d", what) else what


def speaks_of_a_recipe(text: str) -> bool:
    """Whether a line says that a recipe follows and does not name it.

    >>> speaks_of_a_recipe("The recipe:"), speaks_of_a_recipe("Pour cette recette facile")
    (True, True)
    >>> speaks_of_a_recipe("The best fudge recipe"), speaks_of_a_recipe("My recipe for gin")
    (False, False)
    """
    bare = text.strip(" *_:.!–-")
    return bool(_A_RECIPE.fullmatch(bare) or _CALLS_TO_IT.fullmatch(bare))


def without_guide(text: str) -> str:
    """Return a title without what says that it is explained.

    >>> without_guide("Sloe gin – a step by step guide"), without_guide("Guide biscuits")
    ('Sloe gin', 'Guide biscuits')
    """
    return _CHAPTER.sub("", _GUIDE.sub("", text)).strip()


def unstopped(text: str) -> str:
    """Return a title without the stop that old books set behind it.

    >>> unstopped("damascene wine."), unstopped("Boil it hard."), unstopped("GINGER BEER.")
    ('Damascene wine', 'Boil it hard.', 'GINGER BEER')
    """
    bare = re.sub(r"^to\s+make\s+", "", text.strip(), flags=re.IGNORECASE).removesuffix(".")
    few = len(bare.split()) <= _TITLE_WORDS and not re.search(r"[\d.,;:]", bare)
    named = bare.isupper() or bare.islower() or bare != text.strip().removesuffix(".")
    if not text.strip().endswith(".") or not (few and named) or _SAID_OF_IT.search(bare):
        return text
    return bare[:1].upper() + bare[1:]
