"""Whether only the liquid of a thing goes into its bottles: a syrup, a jelly; or fruit stays in it.

Then what stays in the bag has left no steam behind, and the water it was boiled in is in the
bottle. The fruit of a rum pot stays in its spirit. Leaves out how much steam there was:
contents_list.py.
"""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from stillroom.core.allergens.of_foods import Known
from stillroom.core.amounts.units import size_of
from stillroom.core.batch.contents import contents_by_place
from stillroom.core.care.drained import drained_rows
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_LIQUID = clause_regex(
    r"\b(?:syrups?|cordials?|squash|juices?|jell(?:y|ies)|shrubs?|sirops?|gel[ée]es?|jus|jarabes?"
    r"|zumos?|jugos?|sciropp[oi]|gelatin[ae]|succh?[oi]|gelei)\b"
    r"|(?:sirupe?|säfte|saft(?:en)?|gelee|siroop|diksap)\b"
)
_STRAINS = clause_regex(
    r"\b(?:strain|filter|sieve|drip)\w*\b|\b(?:jelly bag|muslin|cheesecloth)\b"
    r"|abseih\w*|\babsieb\w*|passier\w*|abgeseiht|durch ein (?:\w+ )?(?:sieb|tuch)|\bfiltr\w*"
    r"|\bpasser\b"
    r"|passoire|étamine|chinois|\bcol(?:ar|ad|amos|ador)\b|\bcuela\b|\btamiz\w*|\bcolino\b"
    r"|\bzeef\b|\bzeven\b|gezeefd|\bdoek\b|\bsila(?:s|r)?\b|silduk"
)
_DRAINS = clause_regex(r"\b(?:drain(?:ed|ing|s)?|rins(?:e|ed|ing)|pour(?:ed)? off)\b")
# without one of these no steam leaves it; boiling water that is poured on is none
_STEAMS = clause_regex(
    r"\b(?:simmer|boil(?!ing (?:hot )?water|ed water)|cook|reduc|heat|stew)\w*|koch\w*|köchel\w*"
    r"|\b(?:cui(?:re|sez|sson)|bouill(?:ir|ez|on)|ébullition|mijot\w*|herv\w*|hierv\w*|coc(?:er|ed)"
    r"|cuece"
    r"|cocin\w*|fuego|boll\w*|cuoc\w*|fuoco|ko(?:ok|ken)|sudder\w*|koka\w*|sjud\w*)\b"
)
# of soft fruit about so much goes through the bag; common practice, no published source
_JUICE = Fraction(65, 100)
_JUICY = frozenset({"fruit", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "vegetable"})
# fruit that is given in the spirit it lies in; a liqueur of it is strained
_IN_SPIRIT = (
    r"rum|rhum|brandy|cognac|armagnac|kirsch\w*|gin|vodka|whisk(?:e)?y|bourbon|spirits?|alcohol|port"
    r"|weinbrand|korn|schnaps|alkohol|grappa|calvados|amaretto"
)
_LIES_IN_SPIRIT = clause_regex(
    r"\b(?:rum(?: |-)?(?:topf|pot)|bachelor['’]?s?['’]? (?:jam|preserve|confiture|pot)"
    r"|confiture de vieux garçon|boeren(?:jongens|meisjes)|rumkruka|romkrukke|romtopf"
    r"|(?:brandied|boozy|drunken|rum-soaked) \w+|(?:rum|schnaps|brandy)(?:früchte|kirschen|rosinen)"
    r"|\w+(?:s|n|te|en|gen|ries|fruit) in (?:\w+ )?(?:" + _IN_SPIRIT + r")"
    r"|\w+s (?:à l['’](?:eau[- ]de[- ]vie|alcool|armagnac)|au (?:rhum|rum|cognac|kirsch|calvados))"
    r"|sotto (?:spirito|alcool|grappa)|\w+s (?:en (?:aguardiente|alcohol|orujo|brandy|ron|anís))"
    r"|op (?:brandewijn|sterk water|alcohol|rum|cognac)|i (?:konjak|brännvin|rom|sprit))\b",
    re.IGNORECASE,
)
_OF_THE_DRINK = clause_regex(
    r"liqueur|lik[öe]u?r|\blicor|\bliquore|\bdrink|\bessen[cz]e?|\bextra[ck]t|\bsyrup|\bsauce",
    re.IGNORECASE,
)
_FRUIT_OUT = clause_regex(
    r"\b(?:remove|take out|fish out|lift out|discard|spoon out) (?:all )?(?:the )?"
    r"(?:fruits?|\w*berr(?:y|ies)|cherries|plums|sloes|peaches|apricots|solids)\b"
    r"|\b(?:früchte|obst|beeren|kirschen)\b.*\b(?:entfern|herausn)"
    r"|\b(?:retire|enleve|ôte)\w* les (?:fruits|cerises)",
    re.IGNORECASE,
)
_FRUIT_TAGS = frozenset(
    {"fruit", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "dried-fruit", "stone-fruit"}
)
_DISSOLVES = frozenset({"water", "sugar", "honey", "syrup", "salt", "acid", "alcohol", "beverage"})


def is_strained_off(recipe: Recipe) -> bool:
    """Tell whether its method strains it and it is a liquid, by its name or its measure."""
    if not recipe.kind.is_("put up"):
        return False
    liquid = _LIQUID.search(recipe.title.lower()) or size_of(recipe.makes.total.unit) == "volume"
    return bool(liquid) and any(map(_STRAINS.search, _clauses_of(recipe)))


def with_its_fruit(recipe: Recipe) -> Recipe:
    """Return a recipe whose fruit is said to stay in its spirit, where that is what it is.

    By its title: a rum pot, cherries in brandy. Not where its method strains it, nor where the
    recipe has its own word.
    """
    title = recipe.title
    named = _LIES_IN_SPIRIT.search(title) and not _OF_THE_DRINK.search(title)
    if not named or not recipe.kind.is_("steeped") or recipe.kind.solids_left_in:
        return recipe
    clauses = _clauses(recipe)
    if any(_STRAINS.search(one) or _FRUIT_OUT.search(one) for one in clauses):
        return recipe
    kept = tuple(
        replace(one, left_in=True) if one.left_in is None and _is_fruit(one) else one
        for one in recipe.ingredients
    )
    return recipe.model_copy(update={"ingredients": kept})


def _is_fruit(ingredient: Ingredient) -> bool:
    food = food_of(ingredient).food
    return food is not None and bool(food.tags & _FRUIT_TAGS)


def is_made_cold(recipe: Recipe) -> bool:
    """Tell whether a liquid that is put up is never boiled: all its water stays in it.

    Hot water that is poured on is no boiling; nothing is cold of which no method is written.
    """
    clauses = _clauses_of(recipe)
    liquid = bool(_LIQUID.search(recipe.title.lower()))
    return liquid and bool(clauses) and not any(map(_STEAMS.search, clauses))


@once_a_recipe
def poured_off(recipe: Recipe) -> frozenset[int]:
    """Return the places of the water in which something was only soaked: it is in no jar.

    Of what ends as a liquid nothing is said here: its water may be what is bottled.
    """
    clauses = _clauses_of(recipe)
    jarred = recipe.kind.is_("put up") or recipe.kind.is_("living")
    if not jarred or _LIQUID.search(recipe.title.lower()) or not any(map(_DRAINS.search, clauses)):
        return frozenset()
    rows = [
        content.grams or Fraction(0)
        if content and content.staple and "water" in content.staple.tags
        else None
        for content in contents_by_place(recipe)
    ]
    return drained_rows(rows, clauses)


@once_a_recipe
def _clauses_of(recipe: Recipe) -> tuple[str, ...]:
    return _clauses(recipe)


def _clauses(recipe: Recipe) -> tuple[str, ...]:
    sentences = (one for step in recipe.method for one in split_sentences(step.text))
    return tuple(clause.lower() for one in sentences for clause in affirmed_clauses(one))


def goes_into_the_liquid(known: Known) -> Fraction:
    """Return which part of an ingredient goes through the bag."""
    tags = {tag for food in known.staples for tag in food.tags}
    if tags & _DISSOLVES:
        return Fraction(1)
    if not known.staples or "dried-fruit" in tags:
        return Fraction(0)
    return _JUICE if tags & _JUICY else Fraction(0)
