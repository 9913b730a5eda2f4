"""The words of a method or a card cut into clauses, and which of them deny or forbid.

Leaves out what the clauses mean: heat.py, foods_in_method.py and who.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache

from stillroom.core.method.tongue import denied_in
from stillroom.core.method.words import method_words
from stillroom.core.words.patterns import clause_regex

_MOST_KEPT = 2048
"""Texts remembered: each of a recipe's is asked for by the facts, the heat, the foods and more."""
_LONGEST_LIST = 40
"""Parts of a list behind a denial: a sentence is not gone through anew from each of its clauses."""
# "37.5 C", "2,5 l water": no clause ends within a number
_DECIMAL = clause_regex(r"(?<=\d)[.,](?=\d)")
_HELD = str.maketrans({".": "·", ",": "‚"})
_FREED = str.maketrans({"·": ".", "‚": ","})
_BRACE = clause_regex(r"[{}*_`]")
_SENTENCE = clause_regex(r"(?<=[.;!?])\s+")
# "hält ca. 3 Monate", "approx. 2 weeks": the dot ends no sentence
_SHORTENED = clause_regex(
    r"\b(ca|approx|max|mind|abt|env|circa|bzw|evtl|sm|med|lg|lge|pkg|evt|ev|bijv|np|ggf|inkl|incl)"
    r"\.(?=\s*(?-i:[\da-zäöü]))",
    re.IGNORECASE,
)
# "z. B. mit Vanilleeis", "f.eks. fløde": nor do two
_SHORTENED_TWICE = clause_regex(
    r"\b(z|d|u|o|f|t|p|bl|e|i)\. ?(b|h|a|ä|eks|ex|ej|g|e)\.(?=[\s,]*(?-i:[\da-zäöüA-ZÄÖÜ(]))",
    re.IGNORECASE,
)
_CLAUSE = clause_regex(r"\s*[,:();.!?]\s*(?:but\s+)?|\s+but\s+", re.IGNORECASE)
_STOP = clause_regex(r"[,:();.!?]")
FROM_ITS_VESSEL = (
    r"from (?:the |its )?(?:sides?|bowl|basin|pan|pot|tin|dish|mould|bottom|edges?|spoon"
    r"|heat|hob|stove|fire|flame)\b"
)
"""Behind "away", of dough or a pan: what parts so is neither left out nor taken out."""
_NEGATED = clause_regex(
    r"\b((?:leave|leaving|left) out (?:the|any|all)|omit(?:ted|ting)?"
    r"|never|not|no|nor|without|(?:do|does|did|must|should|ca|wo|would|could|is|are|was|were|need|has"
    r"|have|had|sha|may|might)n['’]t|cannot|avoid|instead of|far from"
    # dough "comes away from the bowl", a pan is taken "away from the heat"
    rf"|away (?!{FROM_ITS_VESSEL})from"
    r"|clear of|rather than|free from|(?:to|should|must|best|better|is|are) (?:be )?avoided"
    r"|(?:is|are|should|must|best|better) (?:be )?left out(?! (?:to|of the (?:fridge|refrigerator"
    r"|freezer|larder|cupboard)|for|over ?night|until|till|on|at|in|an?|all|uncovered)\b)"
    r"|(?:is|are) (?:\w+ )?(?:toxic|poisonous|forbidden)"
    r"|(?:harmful|dangerous|unsafe|deadly|bad) (?:to|for)"
    r"|(?:some|most|many|other) (?:[\w-]+ )?(?:recipes|people|cooks|bakers|others|makers)"
    r"(?: (?:even|also|always|sometimes|first|prefer to|like to|tell you to))?"
    r" (?:add|use|put|include|swear|call for|boil|blanch|cook|bake|fry|freeze|heat|simmer|steam"
    r"|peel|soak|dry))\b",
    re.IGNORECASE,
)
# "chocolate, onions and raisins should be avoided": the list began before
_ENDS_IN_DENIAL = clause_regex(
    r"^(?:\w+ ){0,3}(?:and|or) (?:[\w'’-]+ ){1,3}(?:(?:is|are|can be) (?:\w+ )?(?:toxic|poisonous"
    r"|forbidden|harmful|dangerous|unsafe|deadly|bad)|(?:is|are|should|must|can|may|do|does)"
    r"(?: all| both| best)? (?:(?:be )?(?:avoided|left out|omitted)|(?:not|never) (?:be )?(?:used"
    r"|added|given|fed|eaten|included|put|go|belong)))\b",
    re.IGNORECASE,
)
# "bring to the boil without stirring": what stands before it is done all the same
_BESIDE_WHAT_IS_DONE = clause_regex(
    r"\s+(?:without|with no|instead of|rather than"
    r"|until (?:(?:it|they) (?:is|are) )?no (?:longer|more)"
    r"|(?:until|till) (?:[\w'’-]+ ){1,3}?(?:is|are|do|does|wo)n['’]t"
    r"|(?:for )?(?:no|not) (?:more|longer) than|not too|(?:so|so that|or) (?:it|they|the \w+)"
    r" (?:do|does|will|is|are|can)\s?(?:not|n['’]t)|leaving no"
    r"|and (?:[\w'’-]+ ){1,3}(?:do|does|will|should|must|can|may)\s?(?:not|never|n['’]t) (?:boil"
    r"|burn|brown|colou?r|catch|stick|curdle|split|melt|overheat|get|become|foam))\b",
    re.IGNORECASE,
)
# "it must not boil, and then leave it to cool": what comes afterwards is done
_AND_THEN = clause_regex(r"\s+(?:and )?then\s+(.+)", re.IGNORECASE)
# "do not use the leaves, or the stems": the second belongs to what was forbidden
# and so does why: "no garlic, as garlic brings germs"
_GOES_ON = clause_regex(
    r"\s*(?:or|nor|because|since|which|as (?!you\b|soon\b|it (?:cool|boil|warm|thick|melt)))\b",
    re.IGNORECASE,
)
# "never add grapes, raisins or chocolate": the list goes on to its "or", and to no verb
_ENDS_A_LIST = clause_regex(
    r"^(?!.*\b(?:will|would|do|does|is|are|can|may|works?|instead)\b)"
    r"(?:\w+ ){0,3}(?:or|nor) \w+(?: \w+){0,2} ?$",
    re.IGNORECASE,
)
_OF_A_LIST = clause_regex(r"^[\w'’-]+(?: [\w'’-]+){0,2} ?$")
_BEGINS_WITH_A_VERB = clause_regex(
    r"^(?:(?:then|and|now|just) )?(?:add|stir|mix|pour|put|boil|cook|bake|heat|simmer|fill|keep"
    r"|store|strain|use|take|leave|let|cover|warm|melt|beat|whisk|fold|knead|dip|roll|press|spread"
    r"|sprinkle|place|bring|cool|chill|freeze|dry|roast|fry|blend|grind|chop|slice|cut|seal|shake"
    r"|turn|serve|drink|eat|give|tie|hang|glue|light|burn|wash|rinse|drain|season|dissolve|steep"
    r"|soak|top|squeeze|grate|peel|work|rub)\b",
    re.IGNORECASE,
)
_ALL_BUT = clause_regex(r"\b(all|everything) (?:but|except) (?:the )?\w+", re.IGNORECASE)
# "don't forget the egg", "no need to peel the apples", "instead of lard I use butter": it goes in
_DENIES_NOTHING = clause_regex(
    r"\b(?:do not|don['’]t|never|not|no need to|you need(?: not|n['’]t)|without) "
    r"(?:(?:to|be|even) )?(?:forget\w*|skimp\w*|leav(?:e|ing) out|omit\w*|shy|hold(?:ing)? back"
    r"|stint\w*|spar(?:e|ing)|afraid|peel\w*|chop\w*|slic\w+|skin\w*|cor(?:e|ing)|sift\w*)\b"
    r"|\binstead of (?:[\w'’-]+ ){1,3}?(?=(?:I|we|you|she|he|use|try|take)\b)"
    # Portuguese "no" is "in the"
    r"|\bno (?=(?:forno|lume|fogo|fogão|tacho|frigorífico|frio|congelador|liquidificador|copo"
    r"|frasco|fundo|final|fim|meio|azeite|óleo|açúcar|leite|vinho|álcool|banho|recipiente"
    r"|prato|tabuleiro|micro-ondas|dia)\b)",
    re.IGNORECASE,
)
# told to whoever is given it: it lies in no jar and heats none
_FOR_WHOEVER = clause_regex(
    r"\b(?:on the (?:card|label|tag)|to the (?:card|label|tag) add"
    r"|(?<!write )(?<!the )(?:gift )?(?:label|tag|card)(?=:)"
    r"|tell whoever|to (?:cook|bake|serve|use)(?=[,:])"
    r"|(?:auf|ins?) (?:de[rm]|die|das) (?:karte|kärtchen|etikett|anhänger)"
    r"|sur (?:la carte|l['’]étiquette)"
    r"|en la (?:tarjeta|etiqueta)|(?:sul biglietto|sull['’]etichetta)|op het (?:kaartje|etiket))\b",
    re.IGNORECASE,
)


@lru_cache(maxsize=_MOST_KEPT)
def is_for_whoever(sentence: str) -> bool:
    """Whether a sentence speaks to whoever is given it, not to the maker.

    >>> is_for_whoever("On the card: bake at 180 C."), is_for_whoever("Bake at 180 C.")
    (True, False)
    """
    return bool(_FOR_WHOEVER.search(sentence))


def split_sentences(text: str) -> list[str]:
    """Return the sentences of a text, its marks for amounts and people's names taken off.

    >>> split_sentences("A bag each for Holly, Ivy and Rosemary. Lay holly on it.")
    ['A bag each for them, them and them.', 'Lay holly on it.']
    """
    return list(_sentences_of(text))


@lru_cache(maxsize=_MOST_KEPT)
def _sentences_of(text: str) -> tuple[str, ...]:
    text = _SHORTENED_TWICE.sub(r"\1\2", _BRACE.sub("", text))
    plain = _ALL_BUT.sub(r"\1", _SHORTENED.sub(r"\1", text))
    plain = _without_people(plain)
    return tuple(sentence for sentence in _SENTENCE.split(plain) if sentence.strip())


def _without_people(text: str) -> str:
    """Take out the names of people that are also plants', which stand behind "for" or "Aunt"."""
    before = ""
    while before != text:
        before = text
        text = _people().sub(r"\1them", text)
    return text


@cache
def _people() -> re.Pattern[str]:
    names = "|".join(method_words("people"))
    leads = "|".join(method_words("before_people"))
    return clause_regex(
        rf"((?:\b(?i:{leads})|\bthem(?:, (?:and)?| and| &))\s*)\b(?:{names})\b(?:['’]s)?"
        r"(?! (?:lea|berr|branch|sprig|twig|flower|seed|root|bark|needle|plant|petal))"
    )


def affirmed_clauses(sentence: str) -> list[str]:
    """Return the clauses of a sentence that bring something in; those that deny are left out.

    >>> affirmed_clauses("Never use the leaves, or the roots, but wash the stalks at 37.5 C.")
    ['wash the stalks at 37.5 C']
    >>> affirmed_clauses("Never add grapes, raisins or chocolate.")
    []
    >>> affirmed_clauses("Chocolate, onions and raisins should be avoided.")
    []
    >>> affirmed_clauses("Bring to the boil without stirring, and do not let it boil over.")
    ['Bring to the boil']
    >>> affirmed_clauses("It mustn't boil and then leave it to cool.")
    ['leave it to cool']
    >>> affirmed_clauses("2,5 l Wasser aufkochen, abkühlen lassen")
    ['2,5 l Wasser aufkochen', 'abkühlen lassen']
    >>> affirmed_clauses("Add flour until it comes away from the bowl. Keep away from nuts.")
    ['Add flour until it comes away from the bowl']
    >>> affirmed_clauses("Do not forget the almonds.")
    [' the almonds']
    """
    return list(_affirmed_of(sentence))


@lru_cache(maxsize=_MOST_KEPT)
def _affirmed_of(sentence: str) -> tuple[str, ...]:
    kept: list[str] = []
    denied = False
    sentence = denied_in(_DENIES_NOTHING.sub("", sentence))
    parts = _parted(_DECIMAL.sub(lambda found: found[0].translate(_HELD), sentence))
    listed = 0
    for place, part in enumerate(parts):
        denied = bool(_NEGATED.search(part)) or (denied and bool(_GOES_ON.match(part)))
        if denied:
            behind = parts[place + 1 : place + 1 + _LONGEST_LIST]
            listed = max(listed, place + _rest_of_list(behind))
            kept = kept[: len(kept) - _list_before(part, kept)]
        denied = denied or 0 < place <= listed
        done = _BESIDE_WHAT_IS_DONE.split(part)[0] if denied else part
        if done.strip() and not (denied and (done == part or _NEGATED.search(done))):
            kept.append(done.translate(_FREED))
        behind_it = _AND_THEN.search(part) if denied else None
        if behind_it and not _NEGATED.search(behind_it[1]):
            kept.append(behind_it[1].translate(_FREED))
    return tuple(kept)


def _parted(sentence: str) -> list[str]:
    """Return what stands between a sentence's stops, and on both sides of its "but".

    >>> _parted("Stir , then (if you like) sweeten but do not boil")
    ['Stir', 'then', 'if you like', 'sweeten', 'do not boil']
    """
    if "but" in sentence.lower():
        return _CLAUSE.split(sentence)
    parts = _STOP.split(sentence)  # no blank is tried as the first of a stop: that is sooner done
    parts[1:] = map(str.lstrip, parts[1:])
    parts[:-1] = map(str.rstrip, parts[:-1])
    return parts


def _list_before(part: str, kept: Sequence[str]) -> int:
    """Return how many of the clauses before a denial are of the list that it ends."""
    count = 0
    if _ENDS_IN_DENIAL.match(part.strip()):
        while count < len(kept) and _OF_A_LIST.match(kept[-1 - count].strip()):
            if _BEGINS_WITH_A_VERB.match(kept[-1 - count]):
                break
            count += 1
    return count


def _rest_of_list(parts: Sequence[str]) -> int:
    """Return how many parts behind a denial are still of its list, up to the one with "or"."""
    for place, part in enumerate(parts, 1):
        if _BEGINS_WITH_A_VERB.match(part):
            return 0
        if _ENDS_A_LIST.match(part.strip()):
            return place
        if not _OF_A_LIST.match(part.strip()):
            return 0
    return 0
