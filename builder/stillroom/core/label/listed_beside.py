"""What a line lists beside its first food: "walnuts, raisins and almonds" are three on the label.

A note that says how a food is, what else it is called or what may stand in its place names nothing
more. Leaves out the choice of one other food, which contents_list.py says with its "or".
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.notes import FOR_EXAMPLE
from stillroom.core.larder.phrases import (
    cut_phrase,
    forms,
    phrase_words,
    with_own_joints,
    without_taste,
)
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form, words_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.words.patterns import clause_regex

_PARTS: Final = clause_regex(r"\s*[();:\[\]]\s*|\s*,\s+")
_FOR_WHAT: Final = clause_regex(
    r"\s+(?:to|for|zum|zur|für|pour|para|per|voor|till|til|om te) .*$", re.IGNORECASE
)
_JOINT: Final = clause_regex(r"^(?:\W*)(?P<joint>[^\W\d_]+)\s+(?P<rest>\S.*)$")


def listed_beside(ingredient: Ingredient) -> str:
    """Return the foods that stand in a note beside the item, as written; "" where none does.

    >>> from stillroom.core.lines.ingredient import read_ingredient
    >>> listed_beside(read_ingredient("walnuts, raisins and almonds", "metric"))
    'raisins and almonds'
    >>> listed_beside(read_ingredient("butter, softened", "metric"))
    ''
    """
    reading = food_of(ingredient)
    if not ingredient.note or len(reading.named) + len(reading.leftover) < 2:
        return ""
    own = read_food(ingredient.item, reading.larder)
    parts = list(_parts(ingredient.note))
    known = [part for part in parts if _brings(part, own, reading)]
    if not known or all(_is_a_choice(part, reading) for part in known):
        return ""
    # of a list each food counts, though what stands before the first is said of it: "dried figs"
    kept = [part for part in parts if part in known or _is_listed(part, own, reading)]
    if (
        len(kept) == 1
        and not _joins(kept[0], reading)
        and _is_its_other_name(kept[0], own, reading)
    ):
        return ""
    return ", ".join(kept)


def _parts(note: str) -> Iterator[str]:
    """Yield what commas and brackets part, without "such as", "to taste" and what it is for."""
    for part in _PARTS.split(note):
        plain = _FOR_WHAT.sub("", part).strip(" .,;")
        words = words_of(plain)
        said = next((len(one) for one in FOR_EXAMPLE if forms(words)[: len(one)] == one), 0)
        left = without_taste(words[said:])
        if left and not phrase_words("packet_says").intersection(forms(left)):
            yield plain[left[0].start : left[-1].end]


def _is_listed(part: str, own: FoodReading, reading: FoodReading) -> bool:
    """Whether a part of a list is a food, or what no larder knows."""
    form = normal_form(_without_joint(part, reading))
    unknown = set(reading.leftover) - set(own.leftover)
    if any(form == left or form.startswith(f"{left} ") for left in unknown):
        return True
    food = read_food(_without_joint(part, reading), reading.larder).food
    return food is not None and food not in own.named


def _brings(part: str, own: FoodReading, reading: FoodReading) -> bool:
    """Whether a part of a note names a food that the line was read as, and its item was not."""
    more = set(reading.named) - set(own.named)
    return bool(more & set(_foods_of(part, reading)))


def _foods_of(part: str, reading: FoodReading) -> tuple[Staple, ...]:
    return read_food(_without_joint(part, reading), reading.larder).named


def _joint_of(part: str, reading: FoodReading) -> str:
    """Return what a part begins with and is joined by, as English has it; else ""."""
    found = _JOINT.match(part)
    form = normal_form(found["joint"]) if found else ""
    joints: dict[str, str] = read_larder_data("phrases.yml")["own_joints"].get(
        reading.larder.language[:2], {}
    )
    form = joints.get(form, form)
    return form if form in phrase_words("joins") else ""


def _without_joint(part: str, reading: FoodReading) -> str:
    found = _JOINT.match(part)
    return found["rest"] if found and _joint_of(part, reading) else part


def _is_a_choice(part: str, reading: FoodReading) -> bool:
    return _joint_of(part, reading) in phrase_words("either")


def _joins(part: str, reading: FoodReading) -> bool:
    phrase = with_own_joints(cut_phrase(part), reading.larder.language[:2])
    return any(word.form in phrase_words("joins") for word in phrase.head)


def _is_its_other_name(part: str, own: FoodReading, reading: FoodReading) -> bool:
    """Whether one food in a note is of the same sort: "courgettes (zucchini)"."""
    food = own.food
    other = next(iter(_foods_of(part, reading)), None)
    if food is None or other is None:
        return False
    akin = other.section == food.section or bool(other.tags & food.tags)
    return akin and set(other.allergens) <= set(food.allergens)
