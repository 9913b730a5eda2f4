"""What a phrase was read as: its food, all that it names, and the words that nothing explains.

Leaves out how it is read: food_reading.py.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from stillroom.core.larder.nearest import nearest_foods
from stillroom.core.larder.phrases import cut_phrase, forms
from stillroom.core.larder.shelves import Larder, common_larder
from stillroom.core.larder.staple import Staple


@dataclass(frozen=True)
class Span:
    """Which letters of the phrase were read as what: "food", "harmless" or "left over"."""

    start: int
    end: int
    read_as: str


@dataclass(frozen=True)
class FoodReading:
    """What a phrase was read as.

    `food` is reckoned with, None when the phrase is not known; `foods` are all that it names, more
    than one where they stand joined. `hinted` are foods whose names stand in a phrase that is not
    known as a whole: "almond biscuits" hold almond; `doubted` those that it may not be at all:
    "shea butter". `leftover` are the words that no name and no harmless word used up.
    """

    text: str
    food: Staple | None = None
    foods: tuple[Staple, ...] = ()
    hinted: tuple[Staple, ...] = ()
    doubted: tuple[Staple, ...] = ()
    leftover: tuple[str, ...] = ()
    spans: tuple[Span, ...] = ()
    larder: Larder = field(default_factory=common_larder, repr=False, compare=False)

    @property
    def known(self) -> bool:
        """Whether every food that the phrase names is known."""
        return self.food is not None and not self.leftover

    @property
    def named(self) -> tuple[Staple, ...]:
        """Every food whose name stands in the phrase, known as a whole or not, each once."""
        return tuple(dict.fromkeys((*self.foods, *self.hinted, *self.doubted)))

    @property
    def nearest(self) -> tuple[str, ...]:
        """The names of known foods that an unknown phrase may mean."""
        if self.known:
            return ()
        named = tuple(staple.name for staple in (*self.doubted, *self.hinted))
        spelt = nearest_foods(" ".join(forms(cut_phrase(self.text).head)), self.larder)
        return tuple(dict.fromkeys((*spelt, *named)))[:3]
