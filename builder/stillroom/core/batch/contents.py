"""What one batch holds, ingredient by ingredient, in grams and in the millilitres each takes up.

Used by bottling.py, strength.py and preserves.py. Displacement is by the staple's solid density, or
by what it is made of where none is published. Leaves out rounding and scale.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from typing import Any

from stillroom.core.amounts.quantities import Amount, Ratio
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import counted_noun
from stillroom.core.lines.staple_table import Staple, find_staple, staple_of
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.method import find_base
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

# beaten or melted into a drink, however they are measured; butter and cheese are neither poured
_BEATEN_IN = frozenset({"dairy", "egg", "pasteurised-egg", "coconut-milk", "chocolate"})
_HARD = frozenset({"cheese", "butter"})
# what is measured by the jug and bears the name of the beans or leaves it was brewed of
_BREWED = {"coffee beans": "brewed coffee", "tea": "brewed tea"}
_NOT_BREWED = late_regex(r"\b(?:beans?|ground|grounds|lea(?:f|ves)|loose|granules|powder)\b")
_TEA_OR_COFFEE = late_regex(r"\b(?:tea|coffee)$")
_JUG_ML = 60
_JUICY = frozenset({"fruit", "vegetable", "nut"})
_FEW_DROPS = frozenset({"drop", "dash", "splash", "drizzle", "squeeze", "shake", "pinch"})


@dataclass(frozen=True)
class Content:
    """One ingredient of a batch: its grams (None when unknown), its ml, and what it is."""

    ingredient: Ingredient
    staple: Staple | None
    grams: Fraction | None
    volume_ml: Fraction
    liquid: bool
    stays: bool

    def grams_of(self, part: str) -> Fraction:
        """Return the grams of its "water", "sugar", "alcohol", "acid" or "fat"; 0 when unknown."""
        composition = self.staple.composition if self.staple else None
        share = getattr(composition, part) if composition else None
        return (self.grams or Fraction(0)) * (share or 0) / 100

    @property
    def rest_ml(self) -> Fraction:
        """Return the ml that its fat, protein and other solids take up, sugar apart; 0 unknown."""
        composition = self.staple.composition if self.staple else None
        if composition is None and self.dissolves:
            return self.volume_ml
        if composition is None or composition.water is None or self.grams is None:
            return Fraction(0)
        fat = composition.fat or Fraction(0)
        rest = (
            100
            - composition.water
            - fat
            - sum(getattr(composition, part) or Fraction(0) for part in ("sugar", "alcohol"))
        )
        room = fat * figure("ml_per_g", "fat") + max(rest, Fraction(0)) * figure("ml_per_g", "rest")
        return self.grams * room / 100

    @property
    def fresh(self) -> bool:
        """Whether it is a juicy solid, which gives up its water to a spirit."""
        return not self.liquid and self._water_share >= bottling_data()["fresh_from"]

    @property
    def juice_g(self) -> Fraction:
        """Return the grams of water in a juicy solid; of one without figures, as its like has."""
        share = self._water_share if self.fresh else Fraction(0)
        return (self.grams or Fraction(0)) * share / 100

    @property
    def _water_share(self) -> Fraction:
        """Return its water in 100 g; without figures, as its tag has it fresh; 0 unknown."""
        if self.staple is None:
            return Fraction(0)
        if self.staple.composition is not None:
            return self.staple.composition.water or Fraction(0)
        if self.staple.acidity == "dry" or "dried-fruit" in self.staple.tags:
            return Fraction(0)
        shares = bottling_data()["fresh_water"]
        return Fraction(max((shares.get(tag, 0) for tag in self.staple.tags), default=0))

    @property
    def dissolves(self) -> bool:
        """Whether it is sugar that ends up in the liquid; one without figures is so by its tag."""
        if self.liquid or self.staple is None:
            return False
        if self.staple.composition is None:
            return "sugar" in self.staple.tags
        return (self.staple.composition.sugar or 0) >= 75


@cache
def bottling_data() -> dict[str, Any]:
    """Return the figures of staples/bottling.yml."""
    found: dict[str, Any] = read_data("bottling.yml")
    return found


@cache
def figure(group: str, name: str = "") -> Fraction:
    """Return one figure of the bottling data exactly; a kind without its own has the default.

    >>> figure("vessel_share", "bake"), figure("fresh_keeps")
    (Fraction(19, 20), Fraction(3, 4))
    """
    found = bottling_data()[group]
    if isinstance(found, dict):
        found = found.get(name, found.get("default", 0))
    return Fraction(str(found))


def middle_of(ingredient: Ingredient, recipe: Recipe) -> tuple[Fraction, str] | None:
    """Return how much of an ingredient one batch takes, and its unit; None for "to taste"."""
    amount = ingredient.amount
    if isinstance(amount, Amount):
        return amount.middle, amount.unit
    if not isinstance(amount, Ratio):
        return None
    base = recipe.ingredients[find_base(ingredient, recipe.ingredients)].amount
    assert isinstance(base, Amount), "find_base gives no other"
    whole = base.middle
    low = whole / convert(amount.per.high, amount.per.unit, base.unit) * amount.amount.low
    high = whole / convert(amount.per.low, amount.per.unit, base.unit) * amount.amount.high
    return (low + high) / 2, amount.amount.unit


@once_a_recipe  # asked a dozen times for each recipe of a book
def contents_of(recipe: Recipe) -> tuple[Content, ...]:
    """Return what one batch of the recipe as written holds; per-container things are left out."""
    return tuple(
        content
        for content in contents_by_place(recipe)
        if content and content.ingredient.scales != "per container"
    )


@once_a_recipe
def liquids_without_size(recipe: Recipe) -> tuple[str, ...]:
    """Return what is poured and nobody can say how much of it: "1 bottle gin"."""
    return tuple(
        content.ingredient.item
        for content in contents_of(recipe)
        if content.staple
        and content.liquid
        and not content.volume_ml
        and content.grams is None
        and counted_noun(content.ingredient) not in _FEW_DROPS
    )


@once_a_recipe
def juicy_without_weight(recipe: Recipe) -> tuple[str, ...]:
    """Return the fresh fruit whose weight nobody can say, where it is enough to matter.

    "30 green plums" of a kind that has no weight here: each is taken for `fruit_at_most` grams, and
    a measure of them for half as many grams as ml.
    """
    held = contents_of(recipe)
    poured = sum((content.volume_ml for content in held if content.liquid), Fraction(0))
    return tuple(
        content.ingredient.item
        for content in held
        if content.fresh
        and content.grams is None
        and content.staple
        and content.staple.tags & _JUICY
        and _at_most_g(content) >= figure("fruit_matters_from") * poured
    )


def _at_most_g(content: Content) -> Fraction:
    amount = content.ingredient.amount
    if not isinstance(amount, Amount):
        return Fraction(0)
    if size_of(amount.unit) == "volume":
        return convert(amount.middle, amount.unit, "ml") / 2
    return amount.middle * figure("fruit_at_most")


@once_a_recipe
def contents_by_place(recipe: Recipe) -> tuple[Content | None, ...]:
    """Return what each line of the recipe brings, one row per line; None for "to taste"."""
    return tuple(content_of(recipe, ingredient) for ingredient in recipe.ingredients)


def content_of(recipe: Recipe, ingredient: Ingredient) -> Content | None:
    """Return what one line brings, of the list or only of the method; None for "to taste"."""
    measured = middle_of(ingredient, recipe)
    return _content(recipe, ingredient, *measured) if measured else None


def _content(recipe: Recipe, ingredient: Ingredient, value: Fraction, unit: str) -> Content:
    size = size_of(unit)
    staple = _as_poured(ingredient, size, value, unit)
    liquid = _is_liquid(staple, size) or _is_brewed(ingredient, value, unit)
    grams: Fraction | None = None
    volume = Fraction(0)
    if size == "volume":
        bulk_ml = convert(value, unit, "ml")
        density = staple.density if staple else None
        grams = bulk_ml * density if density else None
        volume = bulk_ml if liquid else _displaced(staple, grams or bulk_ml * Fraction(1, 2))
    elif size == "mass":
        grams = convert(value, unit, "g")
        if liquid and staple and staple.density:
            volume = grams / staple.density
        elif liquid and staple and not staple.composition:
            volume = grams  # nothing known: as if it were water
        else:
            volume = _displaced(staple, grams)
    elif size == "count":
        noun = counted_noun(ingredient)
        each = ingredient.each_g or (staple.one_weighs(noun) if staple else None)
        grams = value * each if each else None
        if liquid and staple and staple.density:  # eggs
            volume = (grams or Fraction(0)) / staple.density
        else:
            volume = _displaced(staple, grams) if grams else Fraction(0)
    return Content(ingredient, staple, grams, volume, liquid, recipe.stays_in(ingredient))


def _as_poured(ingredient: Ingredient, size: str, value: Fraction, unit: str) -> Staple | None:
    """Return the staple; "500 ml strong coffee" is the drink, "2 tbsp coffee" the beans."""
    staple = staple_of(ingredient)
    brewed = _BREWED.get(staple.name) if staple else None
    return find_staple(brewed) if brewed and _by_the_jug(ingredient, value, unit) else staple


def _by_the_jug(ingredient: Ingredient, value: Fraction, unit: str) -> bool:
    """Tell whether it is measured as a brew is, and its leaves, beans and powder are not."""
    jugful = size_of(unit) == "volume" and convert(value, unit, "ml") >= _JUG_ML
    return jugful and not _NOT_BREWED.search(ingredient.item.lower())


def _is_brewed(ingredient: Ingredient, value: Fraction, unit: str) -> bool:
    """Tell whether a tea or coffee without figures is the drink: "500 ml chamomile tea"."""
    named = _TEA_OR_COFFEE.search(ingredient.item.lower())
    return bool(named) and _by_the_jug(ingredient, value, unit)


def _is_liquid(staple: Staple | None, size: str) -> bool:
    """Liquids have a density as poured and none for their particles; else their name tells."""
    if staple is None:
        return size == "volume"
    composition = staple.composition
    if staple.tags & _BEATEN_IN and not staple.tags & _HARD and composition is not None:
        return composition.water is not None
    if staple.solid_density is not None:
        return False
    if staple.density is None:
        return is_poured(staple)
    watery = composition is not None and (composition.water or 0) + (composition.alcohol or 0) > 60
    dense = staple.density > Fraction(85, 100)
    spirit = bool(staple.tags & {"alcohol", "spirit"})
    flows = size == "volume" or watery or "honey" in staple.animal or "syrup" in staple.tags
    return spirit or (dense and flows)


def is_poured(staple: Staple) -> bool:
    """Tell whether a food without a published density is poured, by its tags and its name.

    >>> [is_poured(find_staple(name)) for name in ("lemonade", "oat milk", "stock cube", "raisins")]
    [True, True, False, False]
    """
    ends, solid = _poured_words()
    if solid.search(staple.name):
        return False
    if staple.tags & {"alcohol", "spirit"} or ends.search(staple.name):
        return True
    runs = staple.acidity != "dry" or bool(staple.tags & {"oil", "syrup"})
    return runs and bool(staple.tags & set(bottling_data()["poured"]["tags"]))


@cache
def _poured_words() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """Return how names of liquids end, and the words by which one is none after all."""
    told = bottling_data()["poured"]
    return (
        re.compile(rf"\b(?:{'|'.join(told['ends'])})$", re.IGNORECASE),
        re.compile(rf"\b(?:{'|'.join(told['not'])})\b", re.IGNORECASE),
    )


def _displaced(staple: Staple | None, grams: Fraction) -> Fraction:
    """Return the ml that so many grams push aside in a liquid."""
    if staple and staple.solid_density:
        return grams / staple.solid_density
    return grams * _ml_per_g(staple)


@lru_cache(maxsize=4096)
def _ml_per_g(staple: Staple | None) -> Fraction:
    """Return the ml that a gram pushes aside, by what it is made up of."""
    composition = staple.composition if staple else None
    rest = Fraction(1)
    volume = Fraction(0)
    for part in ("water", "sugar", "alcohol", "fat"):
        share = (getattr(composition, part) if composition else None) or Fraction(0)
        volume += share / 100 * figure("ml_per_g", part)
        rest -= share / 100
    return volume + max(rest, Fraction(0)) * figure("ml_per_g", "rest")
