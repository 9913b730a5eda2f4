"""Foods that only the method names: they lie in the jar as surely as those of the list.

A word counts as the food it stands for, in the place where it stands: not in a denial, not where it
is taken out or only served with, not as a verb, a tool, a shape, a colour or a comparison. What has
an amount is read as a line of the list is read, and may be unknown. The words are method_words.yml.
Leaves out what follows of it: the rules, and the label.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from stillroom.core.amounts.quantities import Unmeasured
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import staples_tagged
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import words_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.method.bare_words import is_avoided, stands_bare
from stillroom.core.method.listed import Listed
from stillroom.core.method.named import all_named
from stillroom.core.method.not_put_in import (
    put_in_before_served,
    puts_in,
    sentences_of_the_maker,
    without_things,
    without_what_is_served,
)
from stillroom.core.method.of_the_list import (
    is_a_result,
    is_called_by_title,
    is_filled_or_kept,
    is_the_thing_made,
    made_of_the_list,
)
from stillroom.core.method.reading import (
    in_its_plain_case,
    measured_in,
)
from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.method.spoken import tongue_of_recipe
from stillroom.core.method.stones import broken_stones
from stillroom.core.method.taken_out import what_stays_in
from stillroom.core.method.who import said_for_infants
from stillroom.core.method.words import (
    has_phrase,
    heads_a_verb,
    is_a_comparison,
    is_elsewhere,
    is_no_food,
    method_words,
    no_food_in,
    shares_its_noun,
)
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_DECORATES = clause_regex(
    r"\b(?:lay|decorat\w*|garnish\w*|ring\w*|wreath\w*|surround\w*|place|arrang\w*|tuck|tie|stick"
    r"|top|perch|sit|serve)\b",
    re.IGNORECASE,
)
# "make the kimchi paste", "the kimchi will be ready": what is made is no part of itself
# "these quantities make about 18 biscuits", "ergibt etwa 18 Kekse": what comes of it goes not in
_COMES_TO = clause_regex(
    r"(?:^\W*|\b(?:quantit(?:y|ies)|amounts?|recipe|mixture|dough|batch|batter|it|this|that|they|you)"
    r" (?:will |should |ought to )?(?:be enough )?(?:to )?)"
    r"(?:makes?|yields?|gives?|produces?|get)\s+(?:(?:about|around|roughly|approx\.?|approximately"
    r"|some|up to|at least|between)\s+)?$"
    r"|\b(?:ergibt|ergeben|donne(?:nt)?|rinden?|salen|vengono|blir|giver|gir|rende)\s+"
    r"(?:(?:ca\.?|etwa|ungefähr|environ|unos|unas|circa|ongeveer|cirka|cerca de)\s+)?$",
    re.IGNORECASE,
)
_MADE = clause_regex(r"\b(?:make|prepare|making) (?:the |your |this )?$", re.IGNORECASE)
_IS_DONE = clause_regex(
    r"^\w+(?: \w+)? (?:is|are|will be|should be)(?: now)? (?:ready|done|finished)\b", re.IGNORECASE
)
_ITS_LEAVES = clause_regex(
    r"\b(?:their|its|the|with) (?:own )?(?:green )?lea(?:f|ves)\b|\blea(?:f|ves) (?:and|&) "
    r"(?:all|stalks?|stems?)\b|\b(?:stalks?|stems?) (?:and|&) lea(?:f|ves)\b|\btops and all\b",
    re.IGNORECASE,
)
# "a litre of rum, 63% vol": the strength belongs to what stands before the comma
_STRENGTH_BEHIND = clause_regex(
    r"(?:,| of| at)\s+\(?(\d+(?:\.\d+)? ?(?:% ?(?:vol|abv|alc)\w*|%(?! \w)|(?:US |UK )?proof))\)?",
    re.IGNORECASE,
)
_PARTS_OF_EGGS = frozenset({"egg yolk", "egg white"})
_THE = clause_regex(
    r"\b(?:the|your|les|die|den|der|los|las|gli|le|i|de|æggets|os|as)\s+$", re.IGNORECASE
)
_SPOONFUL_G = Fraction(10)
# unmeasured, these may not count for a recipe: nobody knows whether they are enough
PROTECTS = frozenset({"acid", "vinegar", "pasteurised-egg", "curing-salt"})
# of a craft's method only what can do harm is looked for: glue and ribbon are named in every step
_HARMS = frozenset(
    {"toxic", "grave", "essential-oil", "battery", "magnet", "solvent", "epoxy", "caustic"}
    | {"industrial-alcohol", "dry-ice", "needle", "borax"}
)
# and what is no longer to be eaten once it hangs, stands or smells there
_NO_LONGER_FOOD = frozenset({"citrus", "citrus-peel", "spice", "dried-fruit", "nut", "dry-plant"})
# nuts that are chopped go in, though no clause says that they do
_MADE_READY = clause_regex(
    r"\b(?:chop|grind|ground|toast|roast|hack|mahl|gemahl|gehack|gehakt|röst|hach|moud|torréfi|pic(?:ar|ad)"
    r"|mol(?:er|id)|tost|trit|macin|hak|maal|hacka|mal)\w*",
    re.IGNORECASE,
)
# a title names what grows for its taste, and never calls a thing so
_GROWN = frozenset({"herb", "fresh-herb", "spice", "vegetable", "fruit", "citrus", "mushroom"})
# "run a magnet over it" leaves none in it
_A_TOOL = clause_regex(
    r"\b(?:run|pass|drag|hold|move|sweep|test|check|pick up|lift)\w*\b.*\bmagnets?\b", re.IGNORECASE
)


@dataclass(frozen=True)
class MethodFood:
    """A food that only the method names, read as if it stood in the list.

    `grams` is a guess where no amount is said but a little is meant; None where nothing is known.
    """

    ingredient: Ingredient
    clause: str
    measured: bool
    grams: Fraction | None = None


Measured = tuple[int, int, Ingredient]
"""Where in a clause something with an amount begins and ends, and what it is."""


@once_a_recipe  # asked by the label, the heat and the rules
def foods_in_method(recipe: Recipe) -> tuple[MethodFood, ...]:
    """Return each food that only the method names, once, with the clause that brings it in."""
    listed = Listed.of(recipe.ingredients)
    clauses = [(clause, tuple(measured_in(clause, recipe))) for clause in _clauses_of(recipe)]
    found: dict[str, MethodFood] = {}
    for clause, measured in clauses:
        for one in _with_amounts(clause, measured, recipe, listed):
            found.setdefault(_key(one), one)
    # "500 g of onions" brought in, "the onions" of a later step are the same
    listed = Listed.of((*recipe.ingredients, *(one.ingredient for one in found.values())))
    for clause, measured in clauses:
        for one in _without_amounts(clause, measured, recipe, listed):
            found.setdefault(_key(one), one)
    return tuple(found.values())


def _clauses_of(recipe: Recipe) -> Iterator[str]:
    minds, tongue = _minds_what_is_served(recipe), tongue_of_recipe(recipe)
    for sentence in _all_sentences(recipe) if minds else sentences_of_the_maker(recipe):
        told = without_things(_its_strength_before(sentence))
        for clause in affirmed_clauses(told if minds else without_what_is_served(told)):
            for part in what_stays_in(clause):
                yield in_its_plain_case(part, recipe.larder, tongue)


def _its_strength_before(sentence: str) -> str:
    """Return a sentence in which a drink's strength stands with it: "of rum, 63% vol"."""
    if "%" not in sentence and "proof" not in sentence.lower():
        return sentence
    return _STRENGTH_BEHIND.sub(r" \1", sentence)


def _all_sentences(recipe: Recipe) -> Iterator[str]:
    for step in recipe.method:
        yield from split_sentences(step.text)


def _key(one: MethodFood) -> str:
    food = food_of(one.ingredient).food
    return food.name if food else one.ingredient.item


def _with_amounts(
    clause: str, measured: tuple[Measured, ...], recipe: Recipe, listed: Listed
) -> Iterator[MethodFood]:
    for start, _, one in measured:
        if comes_of_it(clause[:start]):
            continue
        forms = tuple(word.form for word in words_of(one.item))
        food = food_of(one).food
        if food is not None and "brine" in (food.name, food.kind_of):
            continue  # "stand in 2 gallons of brine": it is made of the list's water and salt
        part = food is not None and food.name in _PARTS_OF_EGGS and _THE.search(clause[:start])
        if part and any(own.name == "eggs" for own in listed.foods):
            continue  # "the 3 egg yolks" are those of the list's eggs
        known = listed.holds(forms, food) or (food is None and _is_what_is_made(forms, recipe))
        if forms and not known and _wanted(one, clause, recipe):
            yield MethodFood(one, clause.strip(), measured=True)


def comes_of_it(before: str) -> bool:
    """Whether what stands behind some words is how much is made: "the recipe makes about".

    >>> comes_of_it("The recipe makes about "), comes_of_it("Stir in about ")
    (True, False)
    """
    return bool(_COMES_TO.search(before))


def _without_amounts(
    clause: str, measured: tuple[Measured, ...], recipe: Recipe, listed: Listed
) -> Iterator[MethodFood]:
    taken = [(start, end) for start, end, _ in measured]
    if not _minds_what_is_served(recipe):
        clause = put_in_before_served(clause)
    tongue = tongue_of_recipe(recipe)
    for start, end, food in all_named(clause, recipe):
        if any(start < stop and begin < end for begin, stop in taken):
            continue
        if clause[start:end].lower() in _false_friends() and (
            is_elsewhere(clause) or _is_told_elsewhere(recipe)
        ):
            continue
        forms = tuple(word.form for word in words_of(clause[start:end]))
        if listed.holds(forms, food) or listed.tells_all_of(food) or "water" in food.tags:
            continue
        if made_of_the_list(food, listed) or is_the_thing_made(forms, clause[:start], recipe.title):
            continue
        if is_a_result(food, clause[:start], clause[end:]):
            continue
        if is_called_by_title(food, forms, recipe.title, tongue or recipe.larder.language):
            continue
        if is_filled_or_kept(food, listed, (clause, start, end), recipe.title):
            continue
        if forms == tuple(word.form for word in words_of(recipe.title)) and _is_made(clause, start):
            continue
        plain = not (is_avoided(food) or food.tags & _GROWN)
        of_title = plain and forms[-1] in _words_of_title(recipe)
        if tongue and (_is_listed_oil(food, listed) or of_title):
            continue
        spoken = _spoken(forms, food, tongue)
        if not _stands_as_food(food, (clause, start, end), spoken, recipe) and not (
            spoken == ("nut",) and _are_other_nuts(clause, start, end, listed)
        ):
            continue
        if "alcohol" in food.tags and shares_its_noun(clause[end:]):
            continue
        one = _called(clause[start:end] if tongue else food.name, food, recipe)
        if _wanted(one, clause, recipe) and "toxic" not in food.tags - _craft_tags(recipe):
            yield MethodFood(one, clause.strip(), False, _guess(clause, start, food))
    yield from _unnamed_parts(clause, listed, recipe)


def _called(words: str, food: Staple, recipe: Recipe) -> Ingredient:
    """Return a food as the method calls it, where its book reads that as the same food."""
    for name in (words, food.name):
        one = find_foods(Ingredient(name, Unmeasured("to taste")), recipe.larder)
        if food_of(one).food == food:
            break
    return one


@once_a_recipe
def _is_told_elsewhere(recipe: Recipe) -> bool:
    """Whether the whole method is in another language than English: "Laver" is to wash there."""
    return is_elsewhere(" ".join(step.text for step in recipe.method))


@cache
def _false_friends() -> frozenset[str]:
    elsewhere = ("fr", "de", "it", "es", "nl", "sv")
    return method_words("false_friends").union(*(no_food_in(language) for language in elsewhere))


def _is_listed_oil(food: Staple, listed: Listed) -> bool:
    """Whether an oil is that of the list: "mit Öl bedecken" is of the 400 ml Olivenöl."""
    return "oil" in food.tags and any(
        "oil" in own.tags and set(food.allergens) <= set(own.allergens) for own in listed.foods
    )


def _words_of_title(recipe: Recipe) -> frozenset[str]:
    return frozenset(word.form for word in words_of(recipe.title))


def _spoken(forms: tuple[str, ...], food: Staple, tongue: str) -> tuple[str, ...]:
    """Return a food's name in the words of method_words.yml, which are English."""
    if not tongue:
        return forms
    return ("oil",) if "oil" in food.tags else tuple(food.name.split())


def _is_what_is_made(forms: tuple[str, ...], recipe: Recipe) -> bool:
    """Whether words that are no food are the thing's own name: "2 oz of the fire cider a day"."""
    return set(forms) <= _words_of_title(recipe)


def _is_made(clause: str, start: int) -> bool:
    """Whether what stands at a place of a clause is what is being made: "make the kimchi paste"."""
    return bool(_MADE.search(clause[:start])) or bool(_IS_DONE.search(clause[start:]))


def _craft_tags(recipe: Recipe) -> frozenset[str]:
    # in food an unmeasured plant is judged where the method lays it (toxic_words.py)
    return frozenset() if recipe.kind.edible else frozenset({"toxic"})


def _minds_what_is_served(recipe: Recipe) -> bool:
    """Whether even what is only served with it must be minded: for animals and infants."""
    return recipe.kind.eaten_by == "pets" or bool(said_for_infants(recipe))


def _wanted(one: Ingredient, clause: str, recipe: Recipe) -> bool:
    reading = food_of(one)
    food = reading.food
    if food is None:
        named = {tag for other in reading.named for tag in other.tags}
        return recipe.kind.is_eaten or bool(named & _HARMS)
    if not recipe.kind.is_eaten:
        if "magnet" in food.tags and _A_TOOL.search(clause):
            return False
        harms = food.tags & (_HARMS | _NO_LONGER_FOOD)
        return bool(harms) or isinstance(one.amount, Unmeasured) is False
    if "toxic" in food.tags and _DECORATES.search(clause):
        return False
    return "craft" not in food.tags or bool(food.tags & _HARMS)


def _stands_as_food(
    food: Staple, where: tuple[str, int, int], forms: tuple[str, ...], recipe: Recipe
) -> bool:
    clause, start, end = where
    if is_no_food(clause[end:]) or is_a_comparison(clause[:start]):
        return False
    spoken = " ".join(forms)
    if spoken in method_words("only_measured"):
        elsewhere = bool(tongue_of_recipe(recipe))
        return stands_bare(spoken, food, where, elsewhere, _words_of_title(recipe))
    return not heads_a_verb(clause, start, end, spoken)


def _are_other_nuts(clause: str, start: int, end: int, listed: Listed) -> bool:
    """Whether "stir in the nuts" is of no nut of the list; "a nut of butter" is none at all."""
    of_the_list = any(food.tags & {"nut", "peanut"} for food in listed.foods)
    said = clause[start:end].casefold() != "nut" and not is_no_food(clause[end:])
    return said and not of_the_list and bool(puts_in(clause) or _MADE_READY.search(clause))


def _guess(clause: str, start: int, food: Staple) -> Fraction | None:
    """Guess a spoonful where a little is said, or where fat, salt or flour only helps."""
    if has_phrase(clause[:start][-24:], "a_little") or has_phrase(clause, "little_verbs"):
        return _SPOONFUL_G
    bulk = food.tags & {"salt", "sugar", "flour", "raw-flour", "butter"}
    return _SPOONFUL_G if bulk and not has_phrase(clause, "covers") else None


def _unnamed_parts(clause: str, listed: Listed, recipe: Recipe) -> Iterator[MethodFood]:
    """Yield the stones of listed fruit that are cracked, and rhubarb's leaves, by their part."""
    if not recipe.kind.is_eaten:
        return
    own = {word for line in listed.lines for word in line}
    if not any("cyanide-kernel" in food.tags for food in listed.foods):
        fruit = _kernels_of(listed)
        if stones := broken_stones(clause, _all_sentences(recipe) if fruit else None):
            kernel = staples_tagged("cyanide-kernel")[0]
            yield from _as_food(kernel, clause, recipe, fruit or stones)
    if _ITS_LEAVES.search(clause) and "rhubarb" in own and not _DECORATES.search(clause):
        food = read_food("rhubarb leaves").food
        if food:
            yield from _as_food(food, clause, recipe)


def _kernels_of(listed: Listed) -> str:
    """Return what the stones of the listed fruit hold, "" where no such fruit is listed."""
    fruit = [food.name for food in listed.foods if "stone-fruit" in food.tags]
    return f"{fruit[0]} kernels" if fruit else ""


def _as_food(food: Staple, clause: str, recipe: Recipe, called: str = "") -> Iterator[MethodFood]:
    """Yield a food that stands in no list; `called` is what this recipe's own is named."""
    one = find_foods(Ingredient(food.name, Unmeasured("to taste")), recipe.larder)
    yield MethodFood(replace(one, item=called or one.item), clause.strip(), measured=False)
