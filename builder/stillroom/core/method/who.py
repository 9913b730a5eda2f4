"""Whom a recipe is said to be for: a child under one, a cat or another pet.

"Not for babies" and a baby shower say nobody. Leaves out what they must not be given: the rules;
and other languages: who_elsewhere.py.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.method.under_one import said_under_one
from stillroom.core.method.who_elsewhere import (
    for_children_elsewhere,
    for_infants_elsewhere,
    from_months_elsewhere,
)
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_NUMBER = r"(?:[4-9]|1[01]|four|five|six|seven|eight|nine|ten|eleven)"
_MONTHS = rf"{_NUMBER}(?:[ -]?(?:to|-|–|or) ?{_NUMBER})?[ -]?(?:months?|mths?|mo)\b"
_INFANT = clause_regex(
    rf"\b(?:teething|weaning|infants?|newborns?|first (?:foods?|solids)|toothless|finger food"
    rf"|(?:for|to|give|feed|suits?) (?:a |an |the |your |our |her |his |tiny |little "
    rf"|hungry )*bab(?:y|ies)\b"
    rf"|bab(?:y|ies)(?:['’]s?)? (?:first|food|rusks?|biscuits?|snacks?|cereal|porridge"
    rf"|pur[eé]es?)"
    rf"|bab(?:y|ies)['’]s? (?:\w+ ){{0,2}}(?:bars?|bites?|fingers?|sticks?|melts?|puffs?|muffins?"
    rf"|pancakes?|pudding|custard|yoghurt|yogurt|loa(?:f|ves)|bread|toasts?|soup|stew|mash|juice"
    rf"|drink|syrup|crackers?|cookies?|oat\w*)\b"
    rf"|bab(?:y|ies) (?:of|aged?|from|over|at) {_MONTHS}"
    rf"|{_MONTHS} (?:old|of age|and (?:up|over|older)|\+|upwards)"
    rf"|{_NUMBER} ?(?:m|mo|months?) ?\+|{_NUMBER}[ -]months?[ -]olds?)",
    re.IGNORECASE,
)
_FROM_MONTHS = clause_regex(rf"\bfrom (?:the age of |about |age )?{_MONTHS}", re.IGNORECASE)
_RIPENS = clause_regex(
    r"\b(?:best|usable|ready|drink|matur\w*|keeps?|age[sd]?|rest\w*)\b", re.IGNORECASE
)
# a party, a size, a sweet; and what is only for the grown-up beside it
_NO_INFANT = clause_regex(
    r"\bbaby(?:['’]s)? (?:showers?|gender|carrots?|lea(?:f|ves)|spinach|corn"
    r"|potato(?:es)?|beet\w*|onions?"
    r"|tomato(?:es)?|courgettes?|bottles?|pink|blue)\b|\bjelly bab(?:y|ies)\b|\b(?:for"
    r"|to) (?:the |a )?(?:baby|babies) shower"
    r"|\b(?:parents?|mothers?|fathers?) of (?:a |the )?\w*\s?bab(?:y|ies)",
    re.IGNORECASE,
)
_DENIES = clause_regex(r"\b(?:not|never|no|without|keep|away)\b", re.IGNORECASE)
_YOUNG_OR_PET = clause_regex(
    r"\b(?:cats?|kittens?|dogs?|pupp(?:y|ies)|pets?|birds?|hamsters?|nursery|cots?"
    r"|cradles?|newborns?|infants?|toddlers?|bab(?:y|ies)['’]?s?)\b",
    re.IGNORECASE,
)


@once_a_recipe  # asked for each clause that might be served with it
def said_for_infants(recipe: Recipe) -> str:
    """Return the words that say it is for a child under one, "" when none do."""
    for clause, sentence in _clauses(recipe):
        plain = _NO_INFANT.sub(" ", clause)
        found = _INFANT.search(plain)
        if not found and not recipe.kind.is_("drink"):
            found = None if _RIPENS.search(plain) else _FROM_MONTHS.search(plain)
        words = found[0].strip() if found else for_infants_elsewhere(plain)
        if not (words or recipe.kind.is_("drink") or _RIPENS.search(plain)):
            words = from_months_elsewhere(plain)
        if words := words or said_under_one(plain, sentence):
            return words
    return ""


_CHILD = (
    r"(?:child(?:ren)?|kids?|kiddies?|kiddos?|toddlers?|tots|pupils?|school ?children|little ones"
    r"|boys and girls|youngsters|(?:grand|god)(?:child(?:ren)?|sons?|daughters?|kids?)|niblings?"
    r"|under[- ](?:tens?|twelves?|1[0-7])"
    r"|(?:[1-9]|1[0-7]|two|three|four|five|six|seven|eight|nine|ten)[- ]year[- ]olds?"
    r"(?! (?:\w+ )?(?:rum|whisk(?:e?)y|brandy|bourbon|malt|scotch|cognac|calvados|port|tawny|sherry"
    r"|vinegar|balsamic|cheddar|cheese|starter)\b))"
)
_THEIR_SCHOOL = (
    r"(?:nursery(?: school)?|kindergarten|playgroup|pre-?school|(?:primary|infant) school"
    r"|cr[eè]che)"
)
_FOR_CHILDREN = clause_regex(
    rf"\b(?:for|to|made for|treat for|given? to) (?:all |the |our |your |my |his |her |their |a "
    rf"|an |little |small |young |school |hungry |excited )*(?:{_CHILD}|{_THEIR_SCHOOL})\b"
    rf"|\b(?:{_CHILD}(?:['’]s|s['’]|['’])?|{_THEIR_SCHOOL}|(?<!old[- ])school"
    r"|(?<!world[- ])(?<!first[- ])class) (?:parties|party"
    r"|birthday|christmas party|treats?|snacks?|lunch ?box\w*|lunch boxes|stockings?|party bags?)\b"
    rf"|\b{_CHILD}(?:['’]s|s['’]|['’])? table\b"
    r"|\b(?:kid|child|toddler)s?[- ](?:friendly|pleasing|approved)\b|\bparty bags?\b"
    rf"|\b{_CHILD} (?:just |really |all |absolutely )?(?:love|adore|enjoy|devour|go mad for)"
    r" (?:it|this|these|them|this one|the taste)\b"
    r"|\b(?:loved by|popular with|a hit with|(?:a )?favourites? (?:of|with)) (?:all |the |our "
    rf"|my )*{_CHILD}\b"
    r"|\bkinder(?:geburtstag|party|fest|feier|tüte|garten)\w*"
    r"|\bgoûters? (?:des|d['’]) ?enfants\b",
    re.IGNORECASE,
)
# a title says for whom by a word alone: "Kids' rum balls", "Toddler bites", "Kinder-Kugeln"
_TITLED_CHILDREN = clause_regex(
    r"\b(?:kid|kiddie|toddler|pupil)['’]?s?\b|\bchild(?:rens?(?:['’]s)?|['’]?s)\b(?! of\b)"
    r"|\b(?:tots|little ones)['’]"
    rf"|\b{_THEIR_SCHOOL} (?!shop|rhyme|food|pudding|slope)|(?<!old )(?<!old-)\bschool party\b"
    r"|\bkinder-?(?!leicht|spiel|schok|riegel)\w+|\bdes (?:petits )?enfants\b",
    re.IGNORECASE,
)
# who looks after them, what only holds the word, and whom it is kept from
_NO_CHILD = clause_regex(
    rf"\b(?:{_CHILD}(?:['’]s|s['’]|['’])?|{_THEIR_SCHOOL}|school|class) (?:\w+ )?(?:teachers?"
    r"|parents?|mothers?|fathers?|nann(?:y|ies)|staff|helpers?|ward|hospital|charity|nurses?)\b"
    r"|\bkid(?:skin)?[- ](?:gloves?|leather|skin)\b|\b(?:garden|plant|tree) nursery\b"
    r"|\b(?:hen|stag|wedding|office|cocktail|adults?|grown[- ]ups?)['’]?s? party bags?\b"
    rf"|\b(?:no|not for|hide from|away from|from|without|unsuitable for|when|once|after)"
    rf"[- ](?:the |your |all )?{_CHILD}\b|\b(?:unsuitable|unfit|off limits|out of bounds)\b.*"
    r"|\b(?:portée|loin|interdit\w*|déconseillé\w*|pas) (?:pour |aux? |des? |d['’]|les )*enfants\b"
    r"|\b(?:nichts?|keine?) (?:für )?(?:\w+ )?kinder\b"
    r"|\bkinder (?:schoko\w*|bueno|riegel|chocolate)",
    re.IGNORECASE,
)
# "for the kids use juice instead": theirs is without it
_DRINK = (
    r"(?:rum|brandy|whisk(?:e?)y|bourbon|vodka|gin|sherry|port|wine|spirits?|liqueur|liquor|alcohol"
    r"|booze|kirsch|amaretto|cognac|alkohol|likör|alcool|schnaps)"
)
_LEFT_OUT_FOR_THEM = clause_regex(
    rf"\b(?:leav\w+ out|omit\w*|skip\w*|instead of|replac\w+|swap\w*|without|sans|statt|ohne"
    rf"|remplac\w*) (?:it\b|(?:\w+ )?{_DRINK}\b)|\bleav\w+ (?:it|the {_DRINK}) out\b"
    rf"|\b{_DRINK} (?:\w+ )?(?:weglass\w*|ersetz\w*|weg)\b",
    re.IGNORECASE,
)


def said_for_children(recipe: Recipe) -> str:
    """Return the words that say it is for children, "" when none do."""
    for place, text in enumerate(_texts(recipe)):
        for sentence in split_sentences(text):
            if _LEFT_OUT_FOR_THEM.search(sentence):
                continue
            for clause in affirmed_clauses(_NO_CHILD.sub(" ", sentence)):
                found = _FOR_CHILDREN.search(clause)
                if not found and place == 0:
                    found = _TITLED_CHILDREN.search(clause)
                words = found[0].strip() if found else for_children_elsewhere(clause)
                if words:
                    return words
    return ""


_ANIMAL = (
    r"(?:dogs?|pupp(?:y|ies)|hounds?|terriers?|spaniels?|labradors?|cats?|kittens?|pets?|horses?"
    r"|pon(?:y|ies)|donkeys?|rabbits?|bunn(?:y|ies)|hamsters?|guinea pigs?|gerbils?|rats?|mice"
    r"|ferrets?"
    r"|parrots?|budgies?|budgerigars?|canar(?:y|ies)|cockatiels?|hens?|chickens?|ducks|(?:wild "
    r"|garden )?birds?"
    r"|tortoises?|hedgehogs?|squirrels?)"
)
_PETS = clause_regex(
    rf"\b(?:for|to) (?:\w+,? )?(?:the |our |your |my |his |her |their |a |an |old |little |good "
    rf"|every )*"
    rf"{_ANIMAL}\b(?! (?:lovers?|owners?|people|walkers?|sitters?|biscuits? (?:tin|cutter)))"
    rf"|\b{_ANIMAL}(?:['’]s?)? (?:treats?|biscuits?|cookies|chews?|snacks?|food|cake|bones?"
    rf"|birthday)\b"
    rf"|\btreats? for [A-Z]\w+, (?:the|our|my) {_ANIMAL}\b",
    re.IGNORECASE,
)
# cats' tongues and hot dogs are people's food; a party, a shape or a picture is none
_NO_PET = clause_regex(
    r"\b(?:hot[- ]dogs?|cats?['’]? tongues?|dog rose|horse chestnut|horse ?radish|cat ?mint"
    r"|hen party"
    r"|chicken (?:stock|soup|liver|wings?|breast|thigh)s?|duck (?:fat|egg|breast|confit)s?"
    r"|ducks? eggs?"
    r"|bird['’]?s? eye|birds? nests?|rabbit (?:stew|pie)|\w+[- ](?:shaped?|cutters?))\b",
    re.IGNORECASE,
)


def said_for_pets(recipe: Recipe) -> str:
    """Return the words that say it is for an animal, "" when none do."""
    for text in (recipe.title, recipe.summary, recipe.intro, recipe.card.what, recipe.card.use):
        for sentence in split_sentences(text):
            for clause in _with_commas(sentence):
                found = _PETS.search(_NO_PET.sub(" ", clause))
                if found:
                    return found[0].strip()
    return ""


def _with_commas(sentence: str) -> list[str]:
    """Return a sentence whole where it denies nothing: "for Rex, our dog" is one thing."""
    return affirmed_clauses(sentence) if _DENIES.search(sentence) else [sentence]


def said_near_young_or_pets(recipe: Recipe) -> str:
    """Return the words that put it beside a baby, a cat or another pet, "" when none do."""
    for clause, _ in _clauses(recipe):
        found = _YOUNG_OR_PET.search(_NO_INFANT.sub(" ", clause))
        if found:
            return found[0]
    return ""


@once_a_recipe
def _clauses(recipe: Recipe) -> tuple[tuple[str, str], ...]:
    return tuple(
        (clause, sentence)
        for text in _texts(recipe)
        for sentence in split_sentences(text)
        for clause in affirmed_clauses(sentence)
    )


def _texts(recipe: Recipe) -> tuple[str, ...]:
    """Return what is said of a recipe, its title first."""
    said = (recipe.title, recipe.summary, recipe.intro, recipe.card.what, recipe.card.use)
    return (*said, recipe.makes.things, *(step.text for step in recipe.method))
