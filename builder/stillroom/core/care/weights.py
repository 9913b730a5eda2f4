"""What a line weighs for the rules, where no source gives its weight: never lighter than it is.

A rule that asks whether acid is enough must not be misled by a vegetable taken too light, nor by
vinegar taken too heavy. Leaves out the weights that are shown to anybody: contents.py.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.amounts.units import convert, counted_nouns, size_of
from stillroom.core.batch.contents import is_poured, middle_of
from stillroom.core.larder.staple import Staple
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import counted_noun
from stillroom.core.lines.staple_table import staple_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex

# the heaviest cup of cut vegetables in USDA SR is 0.75 g per ml (cooked beans 177 g, corn 154,
# onions 160, peppers 149, carrots 128, cucumber 104 to 133, cabbage 89); mashed pumpkin has 245 g
_CUT_G_PER_ML = Fraction(3, 4)
_MASHED_G_PER_ML = Fraction(105, 100)
_MASHED = clause_regex(r"\b(?:pur[eé]e[ds]?|mash\w*|pulp\w*|paste|crushed|cooked down)\b", re.I)
# USDA SR 11670: one hot pepper 45 g; a jalapeño is less
_ONE_CHILLI_G = 45
_ONE_DRIED_CHILLI_G = 2
# nouns that hold nobody knows how many
_BULK = frozenset(
    {"bag", "box", "tray", "basket", "punnet", "bunch", "handful", "bundle", "bagful", "basketful"}
    | {"armful", "armload", "Armvoll", "brassée", "brazada", "bracciata"}
    | {"carrier bag", "bucketful", "bowlful", "jar", "tin", "can", "packet", "pack", "package"}
    | {"Bund", "Bündel", "Handvoll", "Tüte", "Dose", "Glas", "botte", "poignée", "boîte", "lata"}
    | {"puñado", "mazzetto", "bosje", "blik", "blikje"}
)
_FAT = frozenset({"oil", "fat", "butter"})
_SOLID = frozenset({"vegetable", "fruit", "cooked-pulse", "mushroom", "low-acid"})


def weigh_for_rules(
    ingredient: Ingredient, tags: frozenset[str], recipe: Recipe
) -> Fraction | None:
    """Return the grams of a line that no source weighs, on the safe side; None when it cannot."""
    measured = middle_of(ingredient, recipe)
    if measured is None:
        return None
    value, unit = measured
    if size_of(unit) == "count":
        one = _ONE_DRIED_CHILLI_G if "spice" in tags else _ONE_CHILLI_G
        return value * one if "chilli" in tags and not unit else None
    if size_of(unit) != "volume":
        return None
    if "spirit" in tags:  # as water: a little more than it is
        return convert(value, unit, "ml")
    if "acid" in tags:  # vinegar or juice as water: a little less than it is
        return convert(value, unit, "ml")
    if tags & _SOLID:
        mashed = _MASHED.search(f"{ingredient.item} {ingredient.note}")
        return convert(value, unit, "ml") * (_MASHED_G_PER_ML if mashed else _CUT_G_PER_ML)
    if "spice" in tags:  # USDA SR: ground spices 0.3 to 0.5 g per ml
        return convert(value, unit, "ml") / 2
    staple = staple_of(ingredient)
    if staple is not None and staple.density is None and is_poured(staple):  # juices: as water
        return convert(value, unit, "ml")
    return None


def weigh_at_most(ingredient: Ingredient, recipe: Recipe) -> Fraction | None:
    """Return the most grams that a counted or measured vegetable can have; None when unknown.

    For the rule that asks for vinegar enough, and for no share: too heavy is as wrong there.
    """
    measured = middle_of(ingredient, recipe)
    staple = staple_of(ingredient)
    little = _little_spirit(ingredient, staple, recipe)
    if measured is None or little is not None:
        return _smeared(ingredient, staple) if little is None else little
    value, unit = measured
    if size_of(unit) == "length":
        per_cm = _by_name("by_length", staple)
        return convert(value, unit, "cm") * Fraction(str(per_cm)) if per_cm else None
    one = None if unit else _heaviest(staple, counted_noun(ingredient))
    return value * one if one is not None else None


def _smeared(ingredient: Ingredient, staple: Staple | None) -> Fraction | None:
    """Return the most grams of fat that greases a tin, or that a line calls a little of it."""
    words = ingredient.amount.words if isinstance(ingredient.amount, Unmeasured) else ""
    grams = read_data("heaviest.yml", "care")["smeared"].get(words)
    is_fat = staple is not None and staple.tags & _FAT
    return Fraction(grams) if grams is not None and is_fat else None


def _little_spirit(
    ingredient: Ingredient, staple: Staple | None, recipe: Recipe
) -> Fraction | None:
    """Return the most grams of a splash of spirit in a dough or a sweet; a pour fills a jar."""
    poured = recipe.kind.is_("put up") or recipe.kind.is_("drink")
    if poured or staple is None or "alcohol" not in staple.tags:
        return None
    amount = ingredient.amount
    if isinstance(amount, Unmeasured):
        words, many = amount.words, Fraction(1)
    elif isinstance(amount, Amount):
        words, many = amount.noun, amount.high
    else:
        return None
    grams = read_data("heaviest.yml", "care")["little_spirit"].get(words.lower())
    return Fraction(grams) * many if grams is not None else None


def _heaviest(staple: Staple | None, noun: str) -> Fraction | None:
    """Return the grams that one of it weighs at most, by heaviest.yml."""
    many = _by_name("many", staple) or {}
    singular = counted_nouns().get(noun, (noun, ""))[0]
    many = read_data("heaviest.yml", "care")["small"] | many
    grams = many.get(singular, None if singular in _BULK else _by_name("one", staple))
    return None if grams is None else Fraction(str(grams))


def _by_name(table: str, staple: Staple | None) -> Any:
    """Return the row of a food in a table of heaviest.yml, or of the food it is a kind of."""
    rows = read_data("heaviest.yml", "care")[table]
    return rows.get(staple.name, rows.get(staple.kind_of)) if staple else None
