"""What an egg weighs by the size that is written and where: egg_sizes.yml.

A "large" egg of an American recipe is a British medium. Leaves out yolks and whites, which are
weighed alike everywhere.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.food_reading import FoodReading
from stillroom.core.larder.words import normal_form


def egg_of_size(reading: FoodReading, texts: Sequence[str], system: str) -> FoodReading:
    """Return a reading of eggs with the weight of the size that one of `texts` names.

    >>> from stillroom.core.larder.food_reading import read_food
    >>> [float(egg_of_size(read_food("large eggs"), ["large eggs"], system).food.each_g)
    ...  for system in ("us", "metric")]
    [50.0, 59.0]
    """
    food = reading.food
    if food is None or "eggs" not in (food.name, food.kind_of):
        return reading
    sizes = read_larder_data("egg_sizes.yml")["us" if system == "us" else "others"]
    words = " ".join(f" {normal_form(text)} " for text in texts)
    said = [size for size in sizes if f" {size} " in words]
    if not said:
        return reading
    size = max(said, key=len)
    sized = replace(
        food,
        each_g=Fraction(sizes[size]),
        sources={**food.sources, "each": f"egg_sizes.yml: {size}"},
    )
    foods = tuple(sized if one is food else one for one in reading.foods)
    return replace(reading, food=sized, foods=foods)
