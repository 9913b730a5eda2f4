"""Whether a soap's lye can be used up by its fats, and whether it has stood long enough.

Lye that finds no fat stays in the soap and burns. The charts of saponification.yml say how much a
fat takes. Leaves out how lye is handled: the rules.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import size_of
from stillroom.core.batch.contents import Content, contents_of
from stillroom.core.recipe.kind_dates import waits_to_go_by
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.stage_dates import usable_after_days
from stillroom.core.when.stages import MILESTONES, Stage, parse_stage
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex

_FATS = frozenset({"oil", "fat", "butter", "wax", "nut-oil"})
_CURED_DAYS = 21
# iqdidactic.com, Your first cold process batch: 4 to 6 weeks, the same as rule soap-young names
_CURED = parse_stage("usable from", "4 weeks")
_BY_NAME = clause_regex(
    r"\b(?:oils?|butter|fat|tallow|lard|suet|wax|beeswax|shortening|margarine|dripping)\b",
    re.IGNORECASE,
)
_POTASH = clause_regex(r"\b(?:potash|potassium|koh|kalilauge|potasse)\b", re.IGNORECASE)
_HOT = clause_regex(
    r"\bhot[- ]process|\b(?:slow cooker|crock ?pot)\b|\bcook\w*\b.*\bhours?\b", re.IGNORECASE
)


@cache
def _figures() -> dict[str, Any]:
    found: dict[str, Any] = read_data("saponification.yml", "care")
    return found


def lye_left_over(recipe: Recipe) -> str:
    """Say how much lye there is for how much at most that the fats take; "" where not too much.

    Nothing is said where one of them is not weighed.
    """
    held = contents_of(recipe)
    lye = [one for one in held if _is_lye(one)]
    fats = [one for one in held if _is_fat(one)]
    weights = [one.grams for one in (*lye, *fats)]
    if not lye or not fats or None in weights:
        return ""
    put_in = sum((_as_lye(one) for one in lye), Fraction(0))
    taken = sum((_takes(one) for one in fats), Fraction(0))
    if put_in <= taken * _figure("allowed"):
        return ""
    return f"{round(put_in)} g of lye, where these fats take {round(taken)} g at most"


def lye_not_weighed(recipe: Recipe) -> str:
    """Say what of a soap's lye is measured otherwise than by weight, "" where all is weighed."""
    held = contents_of(recipe)
    if not any(map(_is_fat, held)):
        return ""
    loose = [one.ingredient for one in held if _is_lye(one) and not _is_weighed(one)]
    return ", ".join(f"{one.item}, not by weight" for one in loose)


def stands_too_short(recipe: Recipe) -> str:
    """Say after how many days a cold soap is to be used, where that is too soon; else ""."""
    held = contents_of(recipe)
    hot = any(_HOT.search(step.text) for step in recipe.method)
    if (
        hot
        or not any(map(_is_lye, held))
        or not any(one.staple and one.staple.tags & _FATS for one in held)
    ):
        return ""
    # what is dated by the cure for want of a timeline is young all the same by its own method
    said = recipe.timeline or waits_to_go_by(recipe) or recipe.stages_of_kind
    days = usable_after_days(said)
    return f"to be used after {days} days" if days < _CURED_DAYS else ""


def cured_stages(recipe: Recipe) -> tuple[Stage, ...]:
    """Return the timeline of the method; a cold soap is not usable there before it is cured.

    A timeline that the recipe states stands as it is.
    """
    if recipe.timeline or not stands_too_short(recipe):
        return recipe.waits_of_method
    return (*(one for one in recipe.stages if one.role not in MILESTONES), _CURED)


def _is_lye(content: Content) -> bool:
    return content.staple is not None and "lye" in content.staple.tags


def _is_weighed(content: Content) -> bool:
    amount = content.ingredient.amount
    return isinstance(amount, Amount) and size_of(amount.unit) == "mass"


def _is_fat(content: Content) -> bool:
    tags = content.staple.tags if content.staple else frozenset()
    by_name = bool(_BY_NAME.search(content.ingredient.item))
    return "essential-oil" not in tags and (bool(tags & _FATS) or by_name)


def _as_lye(content: Content) -> Fraction:
    grams = content.grams or Fraction(0)
    potash = bool(_POTASH.search(content.ingredient.item))
    return grams / _figure("potash_for_lye") if potash else grams


def _takes(fat: Content) -> Fraction:
    name = fat.staple.name if fat.staple else ""
    known = _figures()["lye_per_g"].get(name, _figures()["other"])
    return (fat.grams or Fraction(0)) * Fraction(str(known))


def _figure(name: str) -> Fraction:
    return Fraction(str(_figures()[name]))
