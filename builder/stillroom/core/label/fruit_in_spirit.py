"""Fruit that stays in its spirit, by a recipe's title or method: a rum pot, cherries in brandy."""

from __future__ import annotations

import re
from dataclasses import replace

from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

STRAINS = clause_regex(
    r"\b(?:strain|filter|sieve|drip)\w*\b|\b(?:jelly bag|muslin|cheesecloth)\b"
    r"|abseih\w*|\babsieb\w*|passier\w*|abgeseiht|durch ein (?:\w+ )?(?:sieb|tuch)|\bfiltr\w*"
    r"|\bpasser\b"
    r"|passoire|étamine|chinois|\bcol(?:ar|ad|amos|ador)\b|\bcuela\b|\btamiz\w*|\bcolino\b"
    r"|\bzeef\b|\bzeven\b|gezeefd|\bdoek\b|\bsila(?:s|r)?\b|silduk"
)
_IN_SPIRIT = (
    r"rum|rhum|brandy|cognac|armagnac|kirsch\w*|gin|vodka|whisk(?:e)?y|bourbon|spirits?|alcohol|port"
    r"|weinbrand|korn|schnaps|alkohol|grappa|calvados|amaretto"
)
# what is given in the spirit that it lies in; a liqueur of it is strained
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
_FRUIT = (
    r"(?:fruits?|\w*berr(?:y|ies)|cherries|plums|sloes|peaches|apricots|raisins|prunes|damsons"
    r"|figs)"
)
# "serve the fruit over ice cream", "add each fruit as it ripens": it is given with its fruit
_FRUIT_EATEN = clause_regex(
    rf"\b(?:serve|eat|spoon|enjoy|ladle)\w* (?:\w+ ){{0,3}}{_FRUIT}\b"
    rf"|\b{_FRUIT} (?:is|are|can be|may be) (?:then )?(?:eaten|served|spooned)\b"
    rf"|\bspoon\w* (?:it |them |some )?over (?:\w+ )?(?:ice cream|pudding|cake|custard|yogh?urt)\b"
    rf"|\badd\w* (?:each|every|more|other|another|new) (?:\w+ )?(?:{_FRUIT}|layers?)\b[^.;]*"
    r"\b(?:as|when|while) (?:it|they|each)\b[^.;]*\b(?:ripens?|season|comes?)\b"
    r"|\b(?:früchte|obst|beeren|kirschen|pflaumen)\b[^.;]*\b(?:servier|genieß|essen|löffel)"
    r"|\b(?:servier|genieß|löffel)\w*\b[^.;]*\b(?:früchte|obst|beeren|kirschen|pflaumen)\b"
    r"|\b(?:serv\w+|mange\w*|dégust\w*) (?:\w+ )?(?:les )?(?:fruits|cerises|prunes)\b",
    re.IGNORECASE,
)
_FRUIT_TAGS = frozenset(
    {"fruit", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "dried-fruit", "stone-fruit"}
)


def with_its_fruit(recipe: Recipe) -> Recipe:
    """Return a recipe whose fruit is said to stay in its spirit, where that is what it is.

    By its title, a rum pot or cherries in brandy, or by a method that eats the fruit. Not where
    its method strains it, nor where the recipe has its own word.
    """
    title = recipe.title
    if not recipe.kind.is_("steeped") or recipe.kind.solids_left_in or _OF_THE_DRINK.search(title):
        return recipe
    clauses = clauses_of(recipe)
    if not (_LIES_IN_SPIRIT.search(title) or any(map(_FRUIT_EATEN.search, clauses))):
        return recipe
    if any(STRAINS.search(one) or _FRUIT_OUT.search(one) for one in clauses):
        return recipe
    kept = tuple(
        replace(one, left_in=True) if one.left_in is None and _is_fruit(one) else one
        for one in recipe.ingredients
    )
    return recipe.model_copy(update={"ingredients": kept})


def _is_fruit(ingredient: Ingredient) -> bool:
    food = food_of(ingredient).food
    return food is not None and bool(food.tags & _FRUIT_TAGS)


def clauses_of(recipe: Recipe) -> tuple[str, ...]:
    """Return what a method says is done, clause by clause, in small letters."""
    sentences = (one for step in recipe.method for one in split_sentences(step.text))
    return tuple(clause.lower() for one in sentences for clause in affirmed_clauses(one))
