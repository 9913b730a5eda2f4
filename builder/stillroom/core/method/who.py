"""Whom a recipe is said to be for: a child under one, a cat or another pet.

Leaves out what they must not be given: the rules. "Not for babies" and a baby shower say nobody.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import affirmed_clauses, split_sentences
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
    for clause in _clauses(recipe):
        plain = _NO_INFANT.sub(" ", clause)
        found = _INFANT.search(plain)
        if not found and not recipe.kind.is_("drink"):
            found = None if _RIPENS.search(plain) else _FROM_MONTHS.search(plain)
        if found:
            return found[0].strip()
    return ""


_CHILD = (
    r"(?:child(?:ren)?|kids?|toddlers?|pupils?|school ?children|little ones|boys and girls"
    r"|youngsters|(?:grand|god)(?:child(?:ren)?|sons?|daughters?|kids?)|niblings?"
    r"|under[- ](?:tens?|twelves?|1[0-7])"
    r"|(?:[1-9]|1[0-7]|two|three|four|five|six|seven|eight|nine|ten)[- ]year[- ]olds?)"
)
_FOR_CHILDREN = clause_regex(
    rf"\b(?:for|to|made for|treat for|given? to) (?:all |the |our |your |my |his |her |their |a "
    rf"|an |little |small |young |school |hungry |excited )*{_CHILD}\b"
    r"(?!['’]s (?:teachers?|parents?|mothers?))"
    rf"|\b{_CHILD}(?:['’]s?)? (?:parties|party|table|birthday|christmas party|treats?"
    r"|lunch ?box\w*|stockings?|party bags?)\b",
    re.IGNORECASE,
)


def said_for_children(recipe: Recipe) -> str:
    """Return the words that say it is for children, "" when none do."""
    for clause in _clauses(recipe):
        if found := _FOR_CHILDREN.search(clause):
            return found[0].strip()
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
    for clause in _clauses(recipe):
        found = _YOUNG_OR_PET.search(_NO_INFANT.sub(" ", clause))
        if found:
            return found[0]
    return ""


@once_a_recipe
def _clauses(recipe: Recipe) -> tuple[str, ...]:
    texts = [recipe.title, recipe.summary, recipe.intro, recipe.card.what, recipe.card.use]
    texts += [recipe.makes.things, *(step.text for step in recipe.method)]
    return tuple(
        clause
        for text in texts
        for sentence in split_sentences(text)
        for clause in affirmed_clauses(sentence)
    )
