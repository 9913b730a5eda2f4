"""Whom a household's needs name beside what they avoid: "egg (the baby)", "xylitol, for our dog".

A baby must not have honey and a dog no raisins: who is named and told of nowhere else is asked for.
Leaves out what is avoided: core/allergens.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from stillroom.core.allergens.avoiding import known_by_name, says_of_somebody
from stillroom.core.allergens.phrases import bare_forms
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.model import Household
from stillroom.giving.who import read_pets

_SMALL = re.compile(
    r"\b(?:bab(?:y|ies)|newborn|infant|toddler|weaning|breast-?fed"
    r"|(?:little|young|small) (?:one|boy|girl|son|daughter|child|kid)s?)\b"
    r"(?! (?:corn|sweetcorn|spinach|carrots?|leaves|food|milk|plum))"
    r"|\b\d{1,2} (?:months?|weeks?)[- ]old\b",
    re.IGNORECASE,
)
_PET = re.compile(
    # who "eats like a horse" keeps none
    r"(?<!like )\b(?:the|our|my|his|her|their|a|an|two|three|for|assistance|guide) "
    r"(?P<kind>dogs?|pupp(?:y|ies)|cats?|kittens?|parrots?|budgies?|rabbits?|hamsters?"
    r"|guinea pigs?|horses?|pon(?:y|ies)|hens?)\b",
    re.IGNORECASE,
)


# what stands beside a name: "Jo (coeliac)", "Kim - vegan", "The Patels (Asha 6, baby Dev)"
_BESIDE = re.compile(r"\s*[(\[]|\s[-–—:]\s|:\s|[,;|]\s*")
_AGES = re.compile(
    r"\b(?:bab(?:y|ies)|twins?|triplets|toddlers?|newborn|kids?|child(?:ren)?|born)\b"
    r"|\b\d+ ?(?:months?|mths?|weeks?|wks?|years?|yrs?)\b"
    r"|\b(?!(?:Flat|No|Unit|Apt|House|Room|Number|Lane|Box)\b)[A-Z]\w+,? \d{1,2}\b(?![a-z])"
)


def what_a_name_tells(name: str) -> Unreadable | None:
    """Return what to write where a household's name tells needs or ages, which it must not.

    >>> what_a_name_tells("Jo (coeliac), small").mend
    'Write it by itself: "name: Jo", "avoid: coeliac".'
    >>> what_a_name_tells("The Rowans (next door)"), what_a_name_tells("Mr Rice")
    (None, None)
    """
    who, *beside = [part.strip(" )]") for part in _BESIDE.split(name)]
    if ages := _AGES.search(", ".join(beside)) if beside else None:
        mend = f'Write them by themselves: "name: {who}", "children: [6, 8 months]".'
        return Unreadable(f'{say_written(name)} is a name, and "{ages[0]}" tells an age.', mend)
    for part in beside:
        need = next((one for one in bare_forms(part) if known_by_name(one)), "")
        if need or says_of_somebody(part):
            mend = f'Write it by itself: "name: {who}", "avoid: {part}".'
            return Unreadable(f'{say_written(name)} is a name, and "{part}" tells a need.', mend)
    return None


def who_else_is_named(household: Household) -> Iterator[Unreadable]:
    """Yield what to ask where needs name a small child or an animal that is told of nowhere."""
    for word in household.avoid:
        if not household.children and (small := _SMALL.search(word)):
            yield Unreadable(
                f'{say_written(word)} names "{small[0]}", and no child of theirs is told of.',
                'Write the age on giving day as well: "children: [8 months]".',
            )
        pet = _PET.search(word)
        if pet and not read_pets(pet["kind"].lower()) <= household.pets:
            yield Unreadable(
                f'{say_written(word)} names "{pet["kind"]}", and no such animal is told of.',
                f'Write it as well: "pets: [{pet["kind"].lower()}]".',
            )
