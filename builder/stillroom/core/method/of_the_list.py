"""What a method calls by a new name and is nothing new: what is made of the list, the thing itself.

"Add the sugar syrup" is of the sugar and the water above it, "until the pâté is smooth" is what is
being made. Leaves out what stands on the list by its own name: reading.py.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import words_of
from stillroom.core.method.listed import Listed
from stillroom.core.method.words import method_words
from stillroom.core.words.patterns import clause_regex

# what a cook makes of a food before it goes in
_MADE_OF_IT = frozenset(
    {
        *("juice", "zest", "peel", "rind", "puree", "purée", "pulp", "seeds", "infusion"),
        *("segment", "wedge", "ring", "slice", "round", "strip", "stick", "piece", "cubes"),
    }
)
# the seeds scraped out of the pod that is listed, spirit called what it is
_ITS_OTHER_NAMES = {"vanilla": "vanilla pod"}
# what is filled, kept or ready has been made by then
_FILLED = clause_regex(
    r"\b(?:pour|spoon|ladle|pack|put|transfer|funnel|decant|strain|divide|scoop|tip)\w*"
    r"(?: (?:the|your|this|all|of|hot|warm|cooled|cold|finished|homemade|fermented))* $",
    re.IGNORECASE,
)
_INTO_GLASS = clause_regex(
    r"^[^.;]{0,30}\b(?:in|into|to|between|among)\b[^.;]{0,40}"
    r"\b(?:jars?|bottles?|tins?|containers?|bags?|boxes)\b",
    re.IGNORECASE,
)
_KEPT = clause_regex(
    r"\b(?:store|keep|refrigerate|label|seal|wrap|give|bottle|jar)"
    r"(?: (?:the|your|this|all|finished|homemade))* $",
    re.IGNORECASE,
)
_READY = clause_regex(
    r"^ (?:is|are|will be|should be)(?: now)? (?:ready|done|finished)\b"
    r"|^ (?:(?:will|should|can|may) )?(?:keep|store|last|hold)s?\b",
    re.IGNORECASE,
)
_YOURS = clause_regex(
    r"\W*(?:(?:and|now|then|there|voil[àa]),? )?(?:your|our|my)(?: (?:own|home[- ]?made|delicious"
    r"|very|fresh|fragrant|lovely|finished|\w+ed))* ",
    re.IGNORECASE,
)
# "noodles with pesto" are no pesto
_GOES_WITH = clause_regex(
    r"\b(?:with|and|on|in|mit|und|auf|avec|et|au|aux|con|y|e|al|alla|met|en|med|och)"
    r" (?:\w+ )?\w+\W*$",
    re.IGNORECASE,
)
# "Bärlauchpesto zum Einfrieren", "Pesto aus Bärlauch": what it is stands before that
_OF_WHAT_OR_FOR = clause_regex(
    r"\s(?:for|with|without|from|in|im|zum|für|mit|ohne|aus|vom|de|du|des|à|au|aux|pour|avec|sans"
    r"|di|da|del|della|al|alla|per|con|senza|para|sin|al|van|voor|met|zonder|uit|av|för|med|utan"
    r"|af|til|uden|do|da|com|sem)\s.*",
    re.IGNORECASE,
)
# "grind the oats to a fine flour", "réduire en farine": no flour of the shop goes in
_GROUND = frozenset({"flour", "raw-flour"})
_GRINDS = (
    r"(?:grind|ground|whizz|blitz|blend|process|mill|pulse|pulveri[sz]e|turn|reduc|rédui|mahl|mixe"
    r"|moud|mixer|tritur|mol|macin|frull|mal|mix)"
)
_GROUND_TO = clause_regex(
    rf"\b(?:{_GRINDS}\w*\b[^.;]*\b(?:to|into|like|zu|en|hasta (?:obtener|que quede)|in|tot|till?)"
    r"|zu|until (?:you have|it (?:is|becomes|resembles)))"
    r"(?: (?:a|an|the|ein(?:em)?|una?|une))?(?: (?:very|fine|coarse|rough|smooth|feine[mn]?|fina?"
    r"|fijn))* $",
    re.IGNORECASE,
)
# "la farina di noci" is the walnuts ground
_OF_ANOTHER = clause_regex(
    r"^ (?:di|de|d['’]|of) ?(?!(?:grano|frumento|trigo|blé|wheat|seigle|segale|centeno|the|la"
    r"|el|il)\b)[^\W\d]{3,}",
    re.IGNORECASE,
)
# "until you have a mayonnaise", "jusqu'à obtenir une crème": what comes of it goes not in
_COMES_OF_IT = clause_regex(
    r"\b(?:(?:beat|work|rub|whip|whisk|pound|reduc|boil|cook|mash|stir)\w*\b[^.;]{0,40} to"
    r"|until (?:you (?:have|get)|it (?:is|becomes|forms|makes|resembles)"
    r"|they form)|to (?:form|make)"
    r"|obtenir|obtienne|obtiens|formar?|forme|ottenere|ottiene|obtener|obtenga|quede|obter|obtenha"
    r"|bis|ontstaat|krijgt|får|fås|blir til|bliver til|aż (?:powstanie|uzyskamy))"
    r" (?:an?|une?|una?|um|uma|uno|eine?|een|ett|en|et) "
    r"(?:(?:smooth|thick|fine|light|pale|stiff|creamy|clear|soft|rough|\w+mente|bien|belle) )*$",
    re.IGNORECASE,
)
# "make a custard with the eggs", "monta mayonesa con yemas"
_MAKES_ONE = clause_regex(
    r"\b(?:make|prepare|monta|montar|prepara|preparar|préparer|prépare|montare|preparare|faire|fais"
    r"|haz|hacer|fare|fai)(?: (?:an?|une?|una?|um|uma|ein|eine))? $",
    re.IGNORECASE,
)
_OF_THESE = clause_regex(
    r"^ (?:\w+ ){0,2}(?:with|from|of|using|con|com|avec|à partir|usando) ", re.IGNORECASE
)
# what a thing is called, and no more harm than its parts bring
_OF_ITS_SORT = frozenset(
    {"condiment", "sauce", "spread", "bread", "perishable", "beverage", "syrup", "read-its-packet"}
)


def made_of_the_list(food: Staple, listed: Listed) -> bool:
    """Whether a named food is made of a listed one: its juice, the syrup of its sugar."""
    own = {name for one in listed.foods for name in (one.name, one.kind_of) if name}
    tags = {tag for one in listed.foods for tag in one.tags}
    if food.name == "high-proof spirit":  # "l'alcool", "el alcohol": what is on the list
        return "alcohol" in tags
    if food.name == "sugar syrup":
        return "sugar" in tags
    if _ITS_OTHER_NAMES.get(food.name) in own:
        return True
    if food.name == "cloves" and "garlic" in tags:
        return True  # "crush each garlic clove"
    if food.name == "herbs" and "herb" in tags:
        return True  # "die Kräuter hacken": the rosemary and thyme of the list
    if food.name == "vanilla" and any(name.startswith("vanilla ") for name in own):
        return True  # "in Vanille-Puderzucker wälzen": the vanilla sugar of the list
    whole, _, part = food.name.rpartition(" ")
    roots = own | {name.rpartition(" ")[2] for name in own}
    return part in _MADE_OF_IT and bool(whole) and whole in roots


def is_the_thing_made(forms: tuple[str, ...], before: str, title: str) -> bool:
    """Whether words name what the recipe makes, by the end of its title: "the eggnog".

    >>> is_the_thing_made(("eggnog",), "Pour ", "Nellie's Favourite Eggnog")
    True
    >>> is_the_thing_made(("pesto",), "Stir in ", "Courgette pesto")
    False
    >>> is_the_thing_made(("pesto",), "Toss them in the ", "Noodles with pesto")
    False
    >>> is_the_thing_made(("pesto",), "Danach kann das ", "Bärlauchpesto für den Keller")
    True
    """
    said = " ".join(forms)
    title = _OF_WHAT_OR_FOR.sub("", title.partition("(")[0])
    if said not in _dishes() or _GOES_WITH.search(title):
        return False
    named = tuple(word.form for word in words_of(title))
    # "Bärlauchpesto", and in the method "das Pesto"
    compound = len(forms) == 1 and bool(named) and named[-1].endswith(forms[0])
    behind = before.lower().rstrip().removesuffix(" the").rstrip()
    put_in = any(behind.endswith(word) for word in method_words("stirred_in"))
    return (compound or named[-len(forms) :] == forms) and not put_in


def is_called_by_title(food: Staple, forms: tuple[str, ...], title: str, language: str) -> bool:
    """Whether words are of the bakery that a title names: "i biscotti" of "Biscotti alle noci".

    In the languages of the South what a thing is stands first, elsewhere last.

    >>> from stillroom.core.larder.food_reading import read_food
    >>> pizza = read_food("pizza").food
    >>> is_called_by_title(pizza, ("pizza",), "Massa de pizza", "pt")
    True
    >>> is_called_by_title(read_food("bread").food, ("bread",), "Bread pudding", "en")
    False
    """
    if not (food.tags & {"bread", "read-its-packet"} and "wheat" in food.allergens):
        return False
    named = [word.form for word in words_of(title.partition("(")[0])]
    ends = named[-1:] + (named[:1] if language[:2] in ("fr", "it", "es", "pt") else [])
    return forms[-1] in ends


def is_a_result(food: Staple, before: str, behind: str = "") -> bool:
    """Whether words name what comes of the making: "until you have fine flour", "a custard".

    >>> from stillroom.core.larder.food_reading import read_food
    >>> flour, cream = read_food("flour").food, read_food("cream").food
    >>> is_a_result(flour, "whizz the oats until you have fine "), is_a_result(flour, "add the ")
    (True, False)
    >>> is_a_result(cream, "jusqu'à obtenir une ", " lisse"), is_a_result(cream, "ajouter une ")
    (True, False)
    """
    if food.tags & _GROUND and (_GROUND_TO.search(before) or _OF_ANOTHER.match(behind)):
        return True
    made = _MAKES_ONE.search(before) and _OF_THESE.match(behind)
    return bool(made or _COMES_OF_IT.search(before))


def is_filled_or_kept(
    food: Staple, listed: Listed, where: tuple[str, int, int], title: str
) -> bool:
    """Whether a clause fills, keeps or ends what its title ends with: "pour the hot sauce".

    `where` is the clause and where in it the food begins and ends. A food that would bring what
    nothing listed does, an allergen, spirit or vinegar, is never the thing itself.
    """
    clause, start, end = where
    own = {tag for one in listed.foods for tag in one.tags}
    known = {allergen for one in listed.foods for allergen in one.allergens}
    if not set(food.allergens) <= known:
        return False
    # "your home-made garam masala is ready": that is what was made, whatever its title says
    if _YOURS.fullmatch(clause[:start]) and _READY.match(clause[end:]):
        return True
    if food.tags - _OF_ITS_SORT - own:
        return False
    forms = tuple(word.form for word in words_of(clause[start:end]))
    named = tuple(word.form for word in words_of(re.split("[(,:]", title)[0]))
    if named[-len(forms) :] != forms:
        return False
    before, behind = clause[:start], clause[end:]
    filled = _FILLED.search(before) and _INTO_GLASS.search(behind)
    return bool(filled or _KEPT.search(before) or _READY.search(behind))


@cache
def _dishes() -> frozenset[str]:
    return frozenset(
        " ".join(word.form for word in words_of(name)) for name in method_words("dishes")
    )
