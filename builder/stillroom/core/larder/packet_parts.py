"""One part of a bought compound, read as its packet writes it: "emulsifier (soya lecithin)"."""

from __future__ import annotations

import re
from dataclasses import replace

from stillroom.core.larder.food_reading import FoodReading, read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.words.patterns import late_regex

_BRACKET = late_regex(r"\(([^()]*)\)")
# what an additive does, before its name
_DOES = late_regex(
    r"^\s*(?:emulsifier|raising agent|colour|color|thickener|acid|acidity regulator|stabiliser"
    r"|stabilizer|preservative|gelling agent|antioxidant|humectant|sweetener|firming agent"
    r"|flavour enhancer|anti-?caking agent|glazing agent|flour treatment agent)s?\b",
    re.IGNORECASE,
)


def read_part(part: str, larder: Larder) -> FoodReading:
    """Read one part of a compound as its packet writes it; what its brackets name counts too.

    >>> from stillroom.core.larder.shelves import common_larder
    >>> [food.name for food in read_part("emulsifier (soya lecithin)", common_larder()).foods]
    ['soya lecithin']
    """
    outside, inside = _BRACKET.sub(" ", part), " , ".join(_BRACKET.findall(part))
    named = read_food(_DOES.sub("", outside).strip(" :,"), larder)
    within = [read_food(piece, larder) for piece in re.split(r"[,;]", inside) if piece.strip()]
    if not within:
        return named
    # "emulsifier" alone says nothing; of "milk chocolate (sugar, milk)" either half is enough
    whole = [reading for reading in within if reading.known]
    known = len(whole) == len(within) or named.known
    readings = [named, *within]
    foods = tuple(dict.fromkeys(food for one in readings for food in one.foods))
    return replace(
        named,
        text=part,
        food=named.food or (foods[0] if foods else None),
        foods=foods,
        hinted=tuple(dict.fromkeys(food for one in readings for food in one.hinted)),
        doubted=tuple(dict.fromkeys(food for one in within for food in one.doubted)),
        leftover=() if known else named.leftover,
    )
