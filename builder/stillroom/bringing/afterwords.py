"""What a writer or a page says behind the last step of a method, and what is no step.

"I halved the recipe and it still filled a tin", "About the author: …", a name. Read from the end
upwards, and only so far as nothing is done in it: a step is never taken for a remark where it names
what is on the list, a heat, or a place to keep it. Leaves out remarks between numbered steps:
remarks.py, and what leads elsewhere: outside_recipe.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, words
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import is_passed, is_sentence, is_title, is_told
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.method.reading import named_in

_LONGEST: Final = 600
_MOST_SENTENCES: Final = 8
_NAME: Final = re.compile(r"[A-ZÀ-Ý][a-zà-ÿ'’-]+")
_MOST_OF_A_TITLE: Final = 5
_LEAST_NAMES, _MOST_NAMES = 2, 3
# what somebody tells of her own making: it may speak of its foods and of days
_TRIED: Final = re.compile(
    r"(?:i|we|she|he)(?:['’](?:ve|d)| have| had)? (?:\w+ly |also |only |just |even )?"
    r"(?:halved|doubled|tripled|made|tried|used|baked|got|found|skipped|left\sout|ended\sup|gave|sent)\b"
    r"|(?:mine|ours)\b|(?:my|our)\s(?:\w+\s){1,3}(?:loved?|loves|liked?|adores?|ate|asked|says?|said|never|always)\b"
    r"|(?:ich|wir)\s(?:habe?n?\s)?(?:das|die|den|es|sie|mal|nur|auch)\b|j['’]ai\b|ho\s(?:fatto|usato|dimezzato|raddoppiato)\b"
    r"|he (?:hecho|usado)\b|ik heb\b|jag (?:har|gjorde)\b",
    re.IGNORECASE,
)
# how one goes on that tells of the thing, wishes well or says goodbye
_TELLS: Final = re.compile(
    r"(?:i['’](?:m|ll|d)|i\s(?:hope|think|know|love|like|am|will|can|was|never|always|just|still)|we\s(?:love|like|hope|all|always)"
    r"|let\sme\sknow|look\sat|and,?\sthe\s(?:great|best)|(?:very|so|too|really)\s\w+|come\s|hic\b|cheers|until\snext\stime|till\snext\stime"
    r"|so\sthere\syou|there\syou\s(?:have|go)|that['’]?s\s(?:it|all)|voil[aà]|if\syou\s(?:try|make|like|love|enjoy|have\s(?:any\s)?questions)|before\sthe|after\sall"
    r"|the\s(?:kids|children|boys|girls|family|whole)|every(?:one|body)|nobody|best\sof\sall|p\.?\s?s\.?\b|happy\s\w+ing|stay\stuned|more\s(?:soon|next)"
    r"|[¡!]?(?:y\s)?listo\b|et\svoil[aà]\b|fertig\b|ecco\sfatto\b|klaar\b|klart\b"
    r"|this\s(?:is|was)\s(?:\w+\s)?(?:one\sof|from|for|my|our|a|an|the|so|such)|you(?:['’]ll|\swill)\s(?:love|like|enjoy|not\sregret|never)"
    r"|they\s(?:are|were)\s(?:gone|so|such|a)|it(?:['’]s|\sis|\swas)\s(?:so|such|gone|a|an|my|our|really|very|one\sof)|what\sa|enjoy\b|thanks?\b|thank\syou|with\sthanks"
    r"|hope\s|good\sluck|have\sfun|bis\sbald|bis\szum\snächsten|viel\sspaß|lasst\ses|guten|à\s(?:bientôt|la\sprochaine)|(?:ich|wir)\swünschen?\b|bon(?:ne)?\s|régalez|"
    r"alla\sprossima|a\spresto|buon\w*|hasta\s(?:pronto|la\spróxima)|espero|que\s(?:lo|la|os)|tot\s(?:snel|de\svolgende)|veel\s(?:plezier|succes)|hoppas|lycka)",
    re.IGNORECASE,
)
_GOODBYE: Final = re.compile(
    r"(?:until|till) next time\b|see you (?:next|soon)|bis zum nächsten mal|à la prochaine"
    r"|alla prossima|hasta la próxima|tot de volgende keer",
    re.IGNORECASE,
)
# what is done or kept: a step, whoever tells it
_DOES: Final = re.compile(
    r"\b(?:keep|keeps|kept|store[ds]?|fridge|refrigerat\w*|freez\w*|until|matur\w*|degrees?|minutes?|hours?|strain\w*|bottle[ds]?|pour\w*"
    r"|put|left|leave|let\s(?:it|them|this|the|stand|cool|rest|sit)|months?|weeks?|days?|cupboard|pans?|pots?|cool\w*|cut|roll\w*|dip\w*|spread\w*|boil\w*|simmer\w*|stir\w*|bake[ds]?|add(?:ed)?|mix(?:ed)?|steep\w*|shake[ns]?|shook|seal\w*|steril\w*|process\w*|jars?)\b|°|\b\d+\s?(?:k?g|m?l|oz|lbs?|cups?)\b",
    re.IGNORECASE,
)
# the same may be told of a trial: not how it is to be kept, and no heat
_KEPT: Final = re.compile(
    r"\b(?:keeps?(?! (?:costs?|it simple|us|me|him|her|on|going|hand))|kept|store[ds]?|fridge"
    r"|refrigerat\w*|freez\w*|degrees?|minutes?|hours?)\b|°",
    re.IGNORECASE,
)
# another thing to make it of: "this recipe works equally well with vodka"
_OTHERWISE: Final = re.compile(
    r"\b(?:works?|tastes?|goes|is) (?:equally|just as|also|as) (?:well|good|nice|lovely) with\b"
    r"|\b(?:passt|passen|schmeckt|schmecken)\b[^.!?]*\b(?:zu[mr]?|auf|mit|super|gut|hervorragend|wunderbar|lecker|perfekt)\b"
    r"|\b(?:parfaite?s?|délicieu(?:x|se)s?|se marie\w*|accompagne\w*)\b"
    r"[^.!?]*\b(?:avec|pour|sur|des|les|vos)\b"
    r"|\b(?:ottim[oaie]|perfett[oaie]|deliziosi?)\b[^.!?]*\b(?:con|per|su|anche)\b|\b(?:ideal|perfect[oa]|delicios[oa]|ric[oa])\b[^.!?]*\b(?:con|para)\b"
    r"|\b(?:heerlijk|lekker)\b[^.!?]*\b(?:op|bij|met|door)\b|\b(?:passar|gott|god|goda)\b[^.!?]*\b(?:till|på|med)\b"
    r"|\bmay be (?:used|substituted) (?:instead|in place|for)\b|\bcan be substituted\b",
    re.IGNORECASE,
)
# "Rezept: Petra Muster", which names no food
WHOSE: Final = re.compile(
    r"(?:recipe|rezept|recette|ricetta|receta|recept|text|texte|testo|texto|author|autorin|autor|auteur|autore|autora)\s*:\s*(?P<who>\S.{3,40})",
    re.IGNORECASE,
)
_CREDIT: Final = re.compile(
    r"(?:https?://|www\.)\S+|with\s+(?:many\s+)?thanks\s+to\b|(?:recipe\s+)?(?:adapted|courtesy|taken)\b",
    re.IGNORECASE,
)
# what it is good for: "Enjoy your chutney with crusty bread", "This makes a good gift"
_PRAISES: Final = re.compile(
    r"enjoy\s(?:your|it|them|this|with|on|over)\b|(?:it|this|that|they|these|those)(?:\s[^\W\d]+){0,3}?\s(?:is|are|makes?|pairs?|goes|tastes?)"
    r"\s(?:(?:also|an?|really|very|so|especially|particularly|wonderful\w*)\s){0,2}(?:good|nice|lovely|delicious|well|great|perfect|tasty|excellent|wonderful)\b",
    re.IGNORECASE,
)
# what somebody else says who read it: "Karen, thanks for posting this."
_READERS: Final = re.compile(
    r"(?:[A-ZÀ-Ý][a-zà-ÿ]+,\s)?(?:many\s)?(?:thanks|thank\syou)(?:\s(?:so|very)\smuch)?\sfor\s(?:posting|sharing|the\srecipe|this)\b",
    re.IGNORECASE,
)
# "The cost of this present is under $1.", "Salt is among the cheapest things in the shop."
_COSTS: Final = re.compile(
    r"\b(?:costs?|cost\sof|price[ds]?|cheap(?:er|est)?|inexpensive|kostet|kosten|günstig\w*|coûte|pas\scher|costa(?:no)?|cuesta|kost)\b|[$£€]\s?\d",
    re.IGNORECASE,
)
_SHOP: Final = re.compile(
    r"\b(?:grocery|food|dollar|thrift|craft|corner)\s+stores?\b", re.IGNORECASE
)
_BIO: Final = re.compile(
    r"about\s+the\s+(?:author|writer|blogger)\b.*|about\s+me\s*[:–-].*"
    r"|(?:über\s+(?:den\s+autor|die\s+autorin|mich)|à\s+propos\s+de\s+l['’]auteur\w*|sull['’]autor\w+|sobre\s+(?:el|la)\s+autora?"
    r"|over\s+de\s+auteur|om\s+författaren)\b.*"
    r"|.{0,60}\bis\s+an?\s+(?:[\w,&-]+\s+){0,4}(?:chef|writer|author|blogger|host|journalist|columnist)\b.*"
    r"|.{0,60}\b(?:writes|blogs|is\s+a\s+(?:food\s+)?(?:writer|blogger))\s+(?:on|about|at|from|who|and|based)\b.*",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Behind:
    """Which rows of a method are left, and what stood behind them."""

    rows: tuple[Row, ...]
    remarks: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    begun: str = ""


def without_afterwords(rows: Sequence[Row], recipe: Recipe) -> Behind:
    """Return the rows of a method without what its writer says when it is done.

    The first row always stays: a method is not all afterwords.
    """
    kept = list(rows)
    remarks: list[str] = []
    dropped: list[str] = []
    names: list[str] = []
    begun = ""
    if len(kept) > 1 and begins_another(kept[-1], kept[-2]):
        begun = kept.pop().text
    credits: list[Row] = []
    while len(kept) > 1 and kept[-1].shape in ("line", "heading"):
        text = kept[-1].text.strip()
        if (
            _CREDIT.match(text) or WHOSE.fullmatch(text) or is_passed(text)
        ):  # whose it is, and where it stood: read with the steps
            credits.insert(0, kept.pop())
            continue
        if _BIO.fullmatch(text):
            dropped.insert(0, text)
        elif is_name(text) or _signs(text, kept[-2].text, recipe):
            names.insert(0, text)
        elif kept[-1].shape == "line" and _is_remark(text, recipe):
            remarks.insert(0, text)
        else:
            break
        kept.pop()
    return Behind((*kept, *credits), tuple(remarks), tuple(dropped), tuple(names), begun)


def begins_another(row: Row, above: Row) -> bool:
    """Whether a title ends the paper: of a recipe whose words were not copied."""
    bare = row.text.strip().rstrip(".")
    named = is_title(bare) and (bare.isupper() or says_its_kind(bare))
    few = len(bare.split()) <= _MOST_OF_A_TITLE
    return (
        row.shape in ("line", "heading") and row.gap and named and few and is_sentence(above.text)
    )


def _signs(text: str, above: str, recipe: Recipe) -> bool:
    """Whether one word below what somebody tells of herself is her name."""
    named = bool(_NAME.fullmatch(text)) and find_staple(text) is None
    told = plain(text) in words("told_first") | words("no_names") | words("passed")
    return named and not told and _is_remark(above, recipe)


def is_name(text: str) -> bool:
    """Whether a line is somebody's name and nothing else: "Louise Windham".

    >>> is_name("Louise Windham"), is_name("Family Favourite"), is_name("Apple Jelly")
    (True, False, False)
    """
    said = text.split()
    if any(plain(one) in words("no_names") for one in said):
        return False
    return (
        _LEAST_NAMES <= len(said) <= _MOST_NAMES
        and all(_NAME.fullmatch(one) for one in said)
        and plain(text).split(" ")[0] not in words("told_first")
        and find_staple(text) is None
        and not staples_named(text)
    )


def _is_remark(text: str, recipe: Recipe) -> bool:
    """Whether a paragraph tells of the thing and does nothing, each sentence of it."""
    told = [one for one in SENTENCE_ENDS.split(text) if re.search(r"[^\W\d_]", one)]
    if len(text) > _LONGEST or len(told) > _MOST_SENTENCES or may_say_keeping(text):
        return False
    if not told or is_told(text):
        return False
    tells = [_tells(one, recipe) for one in told]
    # what follows "I got the washing done" goes on with it: "Very windy today, sunny at last."
    return tells[0] and all(
        one or not _does(two, recipe) for one, two in zip(tells, told, strict=True)
    )


def _tells(sentence: str, recipe: Recipe) -> bool:
    if _GOODBYE.match(sentence) or _READERS.match(sentence):
        return True
    first = plain(sentence).split(" ")[0]
    bids = first in words("told_first") or _DOES.search(_SHOP.sub("", sentence))
    if _COSTS.search(sentence) and not bids:
        return True
    if _OTHERWISE.search(sentence) or _PRAISES.match(sentence):
        return not _KEPT.search(sentence)
    if _TRIED.match(sentence):
        return not _KEPT.search(sentence) and not _brings_in(sentence, recipe)
    own = re.search(r"\b(?:I|I['’]\w+|i['’]\w+|[Mm]y|[Mm]e)\b", sentence)  # Swedish has an "i"
    return bool(_TELLS.match(sentence) or own) and not _does(sentence, recipe)


def _does(sentence: str, recipe: Recipe) -> bool:
    """Whether a sentence may be something that is done: with its foods, a vessel, or a heat."""
    first = plain(sentence).split(" ")[0]
    if first in words("told_first") or _DOES.search(sentence):
        return True
    return any(
        True for _, _, food in named_in(sentence, common_larder()) if "craft" not in food.tags
    )


def _brings_in(sentence: str, recipe: Recipe) -> bool:
    """Whether a sentence names a food that the list does not have: "I used almonds"."""
    listed = {food.name for _, line in recipe.ingredients for food in staples_named(line)}
    named = (food for _, _, food in named_in(sentence, common_larder()) if "craft" not in food.tags)
    return any(not any(food.name.endswith(one) for one in listed) for food in named)
