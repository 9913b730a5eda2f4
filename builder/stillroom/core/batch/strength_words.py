"""Strength in words and as plain data: what `stillroom strength` prints. Reckoning: strength.py.

A recipe's strength, yield, fold and units of alcohol; a spirit cut with water or syrup; pods.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from stillroom.core.batch.bottling import Yield, estimate_yield
from stillroom.core.batch.cutting import Cut, Pods
from stillroom.core.batch.drinks import DrinkMeasure, Pour, measure_of
from stillroom.core.batch.extracts import Fold
from stillroom.core.batch.mixtures import water_to_reach_ml
from stillroom.core.batch.strength import fold_of_recipe, not_reckoned, not_told, strength_of
from stillroom.core.recipe.model import Recipe

NO_STRENGTH = (
    "no strength is reckoned: it holds no alcohol to speak of, or it is baked or boiled and nobody "
    "can say how much stays."
)
_MILDEST = 30  # % vol: below it nothing is said of cutting
_JUG_ML = 500.0


def strength_text(recipe: Recipe, country: str = "GB") -> str:
    """Say how strong the recipe as written comes out, with rule, source and doubt.

    `country` chooses what alcohol is counted by.
    """
    measure = measure_of(country)
    strength = strength_of(recipe)
    if strength is None:
        return f"{recipe.title}: {_why_none(recipe)}"
    lines = [
        f"{recipe.title}: {strength.text}",
        f"  How: {strength.how}",
        f"  Source: {strength.source}",
        f"  {strength.uncertainty}",
    ]
    there = estimate_yield(recipe)
    if there:
        lines.append(f"To bottle: {_tens(there.low_ml)} to {_tens(there.high_ml)} ml")
        lines += [
            f"  {part.name}: {_ml(float(part.volume_ml))} ml"
            for part in there.parts
            if part.volume_ml
        ]
        lines.append(f"  Source: {there.source}")
    lines += [_pour_text(pour, measure) for pour in strength.pours]
    lines.append(f"  A {measure.one} is {measure.amount} ({measure.source}).")
    fold = fold_of_recipe(recipe)
    return "\n".join([*lines, *(_fold_lines(fold, fold.uncertainty) if fold else ())])


def _why_none(recipe: Recipe) -> str:
    why = not_told(recipe)
    return f"no strength is reckoned: {why}." if why else NO_STRENGTH


def strength_document(recipe: Recipe, country: str = "GB") -> dict[str, Any]:
    """Return the same as plain data: % vol, ml; null where nothing is reckoned."""
    measure = measure_of(country)
    strength = strength_of(recipe)
    there = estimate_yield(recipe)
    fold = fold_of_recipe(recipe)
    return {
        "recipe": recipe.slug,
        "strength": None
        if strength is None
        else {
            "abv_percent": round(strength.abv_percent, 2),
            "low": round(strength.low, 2),
            "high": round(strength.high, 2),
            "how": strength.how,
            "source": strength.source,
            "uncertainty": strength.uncertainty,
            "not_reckoned": list(not_reckoned(recipe)),
        },
        "not_known": not_told(recipe),
        "to_bottle_ml": _yield_document(there) if there else None,
        "servings": [_pour_document(pour, measure) for pour in strength.pours] if strength else [],
        "fold": _fold_document(fold, fold.uncertainty) if fold else None,
    }


def cut_text(cut: Cut) -> str:
    """Say how much to add, what it makes, what shrinks away, and where that is published."""
    added = f"syrup of {cut.brix:g} % sugar by weight" if cut.brix else "water"
    lines = [
        f"{_ml(cut.volume_ml)} ml at {cut.abv:g} % vol to {cut.wanted_abv:g} % vol: add "
        f"{_ml(cut.added_ml)} ml of {added}, which weighs {_ml(cut.added_g)} g (at 20 °C).",
        f"It makes {_ml(cut.gives_ml)} ml.",
    ]
    if cut.shrinks_ml >= 0.5:
        less = f"{_ml(cut.shrinks_ml)} ml less than its parts"
        lines.append(f"That is {less}: spirit and water shrink when they meet.")
    if not cut.brix and cut.added_ml - cut.naive_ml >= 0.5:
        lines.append(f"Adding up volumes would say {_ml(cut.naive_ml)} ml, which is too little.")
    return "\n".join([*lines, f"Source: {cut.source}", cut.uncertainty])


def cut_document(cut: Cut) -> dict[str, Any]:
    """Return a cut as plain data, ml and g at 20 °C."""
    return {
        "spirit_ml": round(cut.volume_ml, 2),
        "abv_percent": cut.abv,
        "wanted_abv_percent": cut.wanted_abv,
        "added": "syrup" if cut.brix else "water",
        "syrup_sugar_percent": cut.brix,
        "added_ml": round(cut.added_ml, 2),
        "added_g": round(cut.added_g, 2),
        "gives_ml": round(cut.gives_ml, 2),
        "shrinks_ml": round(cut.shrinks_ml, 2),
        "source": cut.source,
        "uncertainty": cut.uncertainty,
    }


def pods_text(pods: Pods) -> str:
    """Say the fold of pods in so much spirit."""
    strength = "" if pods.abv is None else f" at {pods.abv:g} % vol"
    head = f"{_ml(float(pods.grams))} g of pods in {_ml(float(pods.volume_ml))} ml{strength}"
    return "\n".join([f"{head}:", *_fold_lines(pods.fold, pods.uncertainty)])


def pods_document(pods: Pods) -> dict[str, Any]:
    """Return the fold of pods as plain data."""
    return {
        "pods_g": float(pods.grams),
        "spirit_ml": float(pods.volume_ml),
        "abv_percent": pods.abv,
        "fold": _fold_document(pods.fold, pods.uncertainty),
    }


def milder_text(abv_percent: float) -> str:
    """Say how much water makes a strong thing milder; "" below 30 % vol.

    >>> milder_text(40), milder_text(29)
    ('about 72 ml of water to each 500 ml brings it to 35 % vol', '')
    """
    if abv_percent < _MILDEST:
        return ""
    # a whole five at least three below, and never above 40: what is drunk as it is
    wanted = min(40, int((abv_percent - 3) // 5) * 5)
    added = water_to_reach_ml(_JUG_ML, abv_percent, wanted)
    return f"about {added:.0f} ml of water to each 500 ml brings it to {wanted} % vol"


def _fold_lines(fold: Fold, doubt: str) -> tuple[str, ...]:
    return (f"Vanilla: {fold.text}", f"  Source: {fold.source}", f"  {doubt}")


def _fold_document(fold: Fold, doubt: str) -> dict[str, Any]:
    return {
        "units_per_us_gallon": round(float(fold.units_per_gallon), 3),
        "fold": fold.fold,
        "text": fold.text,
        "source": fold.source,
        "uncertainty": doubt,
    }


def _yield_document(there: Yield) -> dict[str, Any]:
    return {
        "low": round(float(there.low_ml), 1),
        "likely": round(float(there.volume_ml), 1),
        "high": round(float(there.high_ml), 1),
        "parts": {part.name: round(float(part.volume_ml), 1) for part in there.parts},
        "source": there.source,
    }


def _pour_text(pour: Pour, measure: DrinkMeasure) -> str:
    drinks = f"{pour.drinks(measure):.1f} {measure.many}"
    size = "" if " ml" in pour.name else f" ({_ml(float(pour.volume_ml))} ml)"
    return f"In {pour.name}{size}: {drinks}"


def _pour_document(pour: Pour, measure: DrinkMeasure) -> dict[str, Any]:
    return {
        "name": pour.name,
        "ml": float(pour.volume_ml),
        "drinks": round(pour.drinks(measure), 3),
        "counted_in": measure.many,
        "source": measure.source,
    }


def _ml(value: float) -> str:
    """Show ml or g: whole from 100, else one decimal."""
    shown = f"{value:.0f}" if abs(value) >= 100 else f"{value:.1f}".removesuffix(".0")
    return shown.replace("-", "−")


def _tens(volume_ml: Fraction) -> int:
    return int((volume_ml / 10 + Fraction(1, 2)).__floor__() * 10)
