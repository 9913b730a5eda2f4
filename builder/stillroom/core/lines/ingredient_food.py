"""The food of an ingredient: of its item, its counted noun and its note together.

Leaves out what follows of it: allergens.py, safety.py and the computations of amounts.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from typing import TYPE_CHECKING

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.amounts.units import counted_nouns, nouns_before
from stillroom.core.larder.egg_sizes import egg_of_size
from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.packet_parts import read_part
from stillroom.core.larder.phrases import phrase_words
from stillroom.core.larder.shelves import Larder, common_larder
from stillroom.core.larder.tinned import tinned_of
from stillroom.core.larder.unknown_in_lists import with_unknown_beside
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.done_to import names_before_what_is_done
from stillroom.core.lines.drink_or_food import by_its_amount
from stillroom.core.lines.sizes import comma_parts
from stillroom.core.words.patterns import late_regex

if TYPE_CHECKING:
    from stillroom.core.lines.ingredient import Ingredient


# of a craft's table what would lie in the food; beeswax, shellac and carnauba wax are eaten
_STUFF_OF_CRAFTS = late_regex(
    r"(?<!bees)(?<!\bsealing )(?<!\bcarnauba )wax(?: nf)?$"
    r"|\b(?:butter|oil|clay|pigment|oxide|dye|mica|sand|(?:soap|diffuser) base"
    r"|stearin|stearic acid|lanolin|petroleum jelly|petrolatum|glycol|pumice"
    r"|paint|varnish|glue|resin|cement|plaster|fragrance oil)$"
)
_LEAVES = frozenset({"Blatt", "feuille", "foglia", "hoja", "blad", "blaadje"})
# whatever it smells of: "cinnamon and orange fragrance oil" holds neither, and no essential oil
_FRAGRANCE = late_regex(
    r"^(?!.*\b(?:essential|free|without)\b).*\b(?:fragrance|perfume|candle scent) ?(?:oils?)?$",
    re.IGNORECASE,
)
_FRUIT = frozenset({"fruit", "citrus", "stone-fruit", "borderline-acid"})
_PLANTS_OF_CRAFTS = frozenset({"dry-plant", "foraged-craft"})


def find_foods(ingredient: Ingredient, larder: Larder, system: str = "metric") -> Ingredient:
    """Return the ingredient with what its larder knows of it and of its written parts.

    `system` is that of the recipe's measures: an egg's size is its country's.
    """
    ingredient, reading = _apart_from_what_is_done(ingredient, larder)
    words = (counted_noun(ingredient), ingredient.item, ingredient.note)
    return replace(
        ingredient,
        found=egg_of_size(reading, words, system),
        found_parts=tuple(read_part(part, larder) for part in ingredient.parts),
    )


def _apart_from_what_is_done(
    ingredient: Ingredient, larder: Larder
) -> tuple[Ingredient, FoodReading]:
    """Move what is done to a food from behind its name to the note: "2 onions diced".

    The food is the same without it, or the words stay: "tomatoes dried" are another.
    """
    reading = read_ingredient_food(ingredient, larder)
    if ingredient.staple or not reading.known:
        return ingredient, reading
    for name, done in names_before_what_is_done(ingredient.item, larder.language[:2]):
        note = f"{done}, {ingredient.note}" if ingredient.note else done
        bare = replace(ingredient, item=name)
        both = replace(bare, note=note)
        read = [read_ingredient_food(one, larder) for one in (bare, both)]
        if all(one.known and one.foods == reading.foods for one in read):
            return both, read[1]
    return ingredient, reading


def as_eaten(ingredient: Ingredient) -> Ingredient:
    """Return an ingredient of what is eaten, plants of a craft's table taken for not known.

    "Dried flowers" and "moss" say of no plant that it may be eaten, and shea butter is a thing for
    the skin: a wrapping is left out of a list, and what lies in the food never is.
    """
    found = ingredient.found
    food = found.food if found else None
    if found is None or food is None:
        return ingredient
    stuff = "craft" in food.tags and _STUFF_OF_CRAFTS.search(food.name)
    if not (stuff or food.tags & _PLANTS_OF_CRAFTS):
        return ingredient
    unknown = replace(found, food=None, foods=(), hinted=(), leftover=(found.text,))
    return replace(ingredient, found=unknown)


def food_of(ingredient: Ingredient) -> FoodReading:
    """Return what an ingredient was read as; in the common larder where no book was asked."""
    return ingredient.found or read_ingredient_food(ingredient, common_larder())


def parts_of(ingredient: Ingredient) -> tuple[FoodReading, ...]:
    """Return what each written part of an ingredient was read as."""
    if len(ingredient.found_parts) == len(ingredient.parts):
        return ingredient.found_parts
    return tuple(read_part(part, common_larder()) for part in ingredient.parts)


def read_ingredient_food(ingredient: Ingredient, larder: Larder) -> FoodReading:
    """Read an ingredient's food: the one it says it is, else its noun, item and note together.

    "3 star anise" is read as three stars of "anise", "1 tin chickpeas" as a tin of them: the noun
    may be part of the name.
    """
    if ingredient.staple:
        return read_food(ingredient.staple, larder)
    if _FRAGRANCE.search(ingredient.item) and (scent := larder.named("fragrance oil")):
        return FoodReading(ingredient.item, scent, (scent,), larder=larder)
    item = f"{ingredient.item}, {ingredient.note}" if ingredient.note else ingredient.item
    noun = counted_noun(ingredient) or _noun_of_a_few(ingredient)
    packed = noun or comma_parts(ingredient.note, 1)[0]  # "400 g tin chickpeas" are so much
    if "unsweetened" in ingredient.note:  # "1 tin condensed milk, unsweetened" is no sweet one
        together = f"unsweetened {ingredient.item}"
        food = larder.named(normal_form(together))
        if food:
            return FoodReading(together, food, (food,), larder=larder)
    if packed in phrase_words("tins"):
        tinned = read_food(f"tin of {item}", larder)
        if tinned.known:
            return tinned
    if normal_form(noun) in phrase_words("tins_elsewhere") and (tin := _in_a_tin(item, larder)):
        return tin
    if noun and noun not in nouns_before():  # "a nut of butter" is no nut butter
        forms = counted_nouns().get(noun, (noun,))  # "chicchi di caffè" of "10 chicchi"
        joined = [
            f"{form} {of} {ingredient.item}" for form in forms for of in ("de", "di", "d'", "van")
        ]
        for together in (f"{noun} {ingredient.item}", f"{ingredient.item} {noun}", *joined):
            food = larder.named(normal_form(together))
            if food:
                return FoodReading(together, food, (food,), larder=larder)
    reading = read_food(item, larder)
    reading = with_unknown_beside(reading, not isinstance(ingredient.amount, Unmeasured))
    return by_its_amount(_of_its_leaf(reading, noun, larder), ingredient)


def _in_a_tin(item: str, larder: Larder) -> FoodReading | None:
    """Read what is counted in tins as a tin of it in any language: "1 boîte de tomates"."""
    reading = read_food(item, larder)
    food = reading.food if len(reading.foods) == 1 and reading.known else None
    tin = tinned_of(food, larder) if food else None
    return replace(reading, food=tin, foods=(tin,)) if tin and tin != food else None


def _of_its_leaf(reading: FoodReading, noun: str, larder: Larder) -> FoodReading:
    """Read leaves counted in another language as leaves: "2 foglie di rabarbaro" are no rhubarb."""
    food = reading.food
    if food is None or noun not in _LEAVES or not food.tags & _FRUIT:
        return reading
    leaf = larder.named(normal_form(f"{food.name} leaf"))
    if leaf is None:
        return replace(reading, food=None, foods=(), hinted=(), leftover=(reading.text,))
    return FoodReading(reading.text, leaf, (leaf,), larder=larder)


def _noun_of_a_few(ingredient: Ingredient) -> str:
    """Return the noun of a number that is not told: "unos granos" of coffee."""
    if not isinstance(ingredient.amount, Unmeasured):
        return ""
    last = ingredient.amount.words.rpartition(" ")[2]
    return _noun_by_form().get(last, "")


@cache
def _noun_by_form() -> dict[str, str]:
    """Return every noun that is counted, by itself and by its one and its many."""
    nouns = counted_nouns()
    forms = {form: one for one in reversed(nouns) for form in nouns[one]}
    return forms | {one: one for one in nouns}


def counted_noun(ingredient: Ingredient) -> str:
    """Return the noun that is counted, "" when something is measured."""
    return ingredient.amount.noun if isinstance(ingredient.amount, Amount) else ""


def name_of(ingredient: Ingredient) -> str:
    """Return what an ingredient is called: its item, with the noun when that is part of the name.

    "3 star anise" is read as three stars of "anise", and called "star anise" again here.
    """
    noun = counted_noun(ingredient)
    whole = f"{noun} {ingredient.item}"
    larder = ingredient.found.larder if ingredient.found else common_larder()
    return whole if noun and larder.named(normal_form(whole)) else ingredient.item


def not_known_of(ingredient: Ingredient) -> str:
    """Return the words of an ingredient that no food explains; "" where all are explained.

    Of "500 ml vodka, or other clear liquor" it is all of it: vodka alone is known.
    """
    reading = food_of(ingredient)
    if reading.known:
        return ""
    name = name_of(ingredient)
    alone = ingredient.note and not ingredient.staple and read_food(name, reading.larder).known
    return f"{name}, {ingredient.note}" if alone else name
