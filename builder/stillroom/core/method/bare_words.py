"""When a word that is often no food put in stands for one: "cheese", "sugar", "liqueur", "oil".

These are method_words.yml's `only_measured`: what is made is called so too, or what is done. Leaves
out words of one meaning: foods_in_method.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.larder.staple import Staple
from stillroom.core.method.words import has_phrase
from stillroom.core.words.patterns import clause_regex

# "the beer" may be what is made; "deglaze with beer" never is
_DRINKS: Final = frozenset({"beer", "ale", "stout", "cider", "wine", "liqueur", "spirit", "port"})
_SOME_DRINK: Final = clause_regex(
    r"\b(?:with|add|in|some|(?:splash|dash|glug|drop|slosh|glass|wineglass|glassful|cup|shot"
    r"|measure|tot|nip|dram|bottle|spoonful|tablespoon|teaspoon)s? of)"
    r"(?: (?:dry|red|white|dark|light|pale|sweet|good|strong|your favourite|any))* $",
    re.IGNORECASE,
)
# "a pinch of salt" goes in; "salt" in prose is often the word for what is done
_PINCHED: Final = frozenset({"salt", "sugar", "oil"})
_A_PINCH: Final = clause_regex(
    r"(?:\b(?:pinch(?:es)?|dash|grain|touch|sprinkl(?:e|ing)|dusting|spoonful|drizzle|splash|glug"
    r"|drops?|knob) of|\ba little|\bsome"
    r"|\bseason\w* (?:\w+ )?with|\b(?:prisen?|messerspitze|etwas|schuss|spritzer)"
    r"|\b(?:pincée|un peu|filet|trait) (?:de |d['’])"
    r"|\b(?:pizzico|po['’]|filo|goccio) (?:di |d['’])|\b(?:pizca|poco|chorrito|chorro|hilo|pitada"
    r"|pouco|fio) de"
    r"|\b(?:snufje|scheutje|scheut|beetje|nypa|nip|skvätt|skvæt|sjat|skvett|lidt|lite|klype|litt)"
    r"|\bszczypt\w+|\bodrobin\w+|\bripaus)\s*(?:(?:fine|coarse|sea|flaky|feines?|fin|fino|fint)\s+)?$",
    re.IGNORECASE,
)
_WITH: Final = clause_regex(
    r"\bwith (?:(?:a little|some|more|plenty of|fine|coarse|sea|flaky|freshly ground|\w+ and) )*$",
    re.IGNORECASE,
)
_ADDED: Final = clause_regex(
    r"\b(?:with|in|and|add|more|some|enough|of)(?: (?:more|extra|caster|granulated|white|brown"
    r"|plain|fine|a mixture of))* $",
    re.IGNORECASE,
)
# "soy sauce, sugar, and cornflour": one of a list
_ALONE: Final = clause_regex(
    r"^\W*(?:(?:and|the|some|more|caster|granulated|il|lo|le|les?|la|el|los|d[ei]r|den|die|das|het"
    r"|de|du|e|et|y|und|en|och|og) )*(?:l['’])?$",
    re.IGNORECASE,
)
_ENDS: Final = clause_regex(
    r"^(?: (?:and|or|und|et|ed|e|y|en|och|og) \w+)?(?: \w+)?\W*$", re.IGNORECASE
)
_RINSES: Final = clause_regex(
    r"\b(?:rins|wash|clean|swill|wip|sterili[sz]|disinfect|saniti[sz])\w*\b", re.IGNORECASE
)
# what a shop sells by these words
_BROUGHT: Final = frozenset(
    {"cheese", "cracker", "crispbread", "crumb", "fish", "crab", "cod", "mince"}
)
# and what a recipe makes, too: "the biscuits" of a recipe of them
_BROUGHT_OR_MADE: Final = frozenset(
    {"biscuit", "cookie", "cereal", "custard", "caramel", "toffee", "fudge", "truffle", "bread"}
)
_PUT_IN: Final = clause_regex(
    r"(?:\b(?:add|with|stir in|fold in|mix in|beat in|whisk in|scatter over|sprinkle over|sprinkle"
    r"|crumble in|crumble over|crush|some|a little|a few|more|extra|and)"
    r"|\b(?:grated|crumbled|crushed|broken|melted|flaked|chopped|shaved|sliced|cubed|diced|soft"
    r"|hard|smoked|dried|cooked|bought))"
    r"(?: (?:the|grated|crumbled|crushed|broken|melted|flaked|chopped|plain|soft|hard|smoked|dried"
    r"|cooked|any|your favourite|of|bought|strong|mild))* $",
    re.IGNORECASE,
)


def stands_bare(
    spoken: str, food: Staple, where: tuple[str, int, int], elsewhere: bool, title: frozenset[str]
) -> bool:
    """Whether such a word is of a food that is put in.

    `spoken` is the food in the words of method_words.yml, `where` its clause and its place in it;
    `elsewhere` says that the clause is in another language than English, `title` the title's words.
    """
    clause, start, end = where
    before = clause[:start]
    if spoken == "oil" and (food.allergens or has_phrase(clause, "covers")):
        return True  # "huile de sésame" is an allergen, and none of the oil that fries
    if spoken in _PINCHED and not _RINSES.search(clause):
        if _A_PINCH.search(before) or (_ALONE.match(before) and _ENDS.match(clause[end:])):
            return True
        if spoken == "oil" and has_phrase(clause, "little_verbs"):
            return True
        if has_phrase(clause, "seasons") and (elsewhere or _WITH.search(before)):
            return True
        if spoken == "sugar" and (elsewhere or _ADDED.search(before)):
            return True
    if spoken in _DRINKS and _SOME_DRINK.search(before) and not _RINSES.search(before):
        return True
    if set(spoken.split()) & title or not is_avoided(food):
        return False
    if elsewhere:
        return spoken in _BROUGHT
    return spoken in _BROUGHT | _BROUGHT_OR_MADE and bool(_PUT_IN.search(before))


def is_avoided(food: Staple) -> bool:
    """Whether a food has an allergen, or is spirit, meat or fish.

    >>> from stillroom.core.larder.food_reading import read_food
    >>> is_avoided(read_food("bacon").food), is_avoided(read_food("thyme").food)
    (True, False)
    """
    return bool(food.allergens or food.tags & {"meat", "fish", "alcohol"})
