"""What is in the house as the season goes: bought adds to it, begun and filled takes from it.

Foods are held in the unit in which they were first counted, or measured into it by density or the
weight of one. What cannot be measured is no longer counted on, and that is told. Pure.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import size_of
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.recipe.model import Recipe
from stillroom.giving.model import GivingList, Stock, container_words
from stillroom.giving.money.costing import BASE, Need, PriceBook, measure_as, needs_of


@dataclass
class _Held:
    """So much of a food, in a base unit, under the words in which it was first written."""

    words: str
    unit: str
    amount: Fraction


@dataclass
class LarderStock:
    """Ingredients by their food, containers by their name, and what is not known of either."""

    foods: dict[str, _Held] = field(default_factory=dict)
    containers: dict[str, int] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)

    @classmethod
    def of_list(cls, giving: GivingList) -> LarderStock:
        """Return what a list says is in the house."""
        stock = cls()
        for words, count in giving.stock.containers.items():
            name = container_words(words)
            stock.containers[name] = stock.containers.get(name, 0) + count
        for amount, item in giving.stock.ingredients:
            stock.add(amount, item)
        return stock

    def add(self, amount: Amount, item: str) -> None:
        """Add so much of a food."""
        key = _key(item)
        unit = BASE[size_of(amount.unit)]
        held = self.foods.setdefault(key, _Held(item, unit, Fraction(0)))
        more = measure_as(amount.low, amount.unit, held.unit, find_staple(item))
        if more is None:
            # in another measure than before, and its density is not known: the two lie side by side
            held = self.foods.setdefault(f"{key} {unit}", _Held(item, unit, Fraction(0)))
            more = measure_as(amount.low, amount.unit, unit, None) or Fraction(0)
        held.amount += more

    def add_containers(self, name: str, count: int) -> None:
        """Add empty containers."""
        self.containers[name] = self.containers.get(name, 0) + count

    def use(self, recipe: Recipe, batches: Fraction | int) -> None:
        """Take what so many batches of a recipe use up; never more than is there."""
        for need in needs_of(recipe, PriceBook()):
            if not (need.per_container or need.tool or need.loose):
                self._take(need, need.amount * batches, recipe.title)

    def fill(self, recipe: Recipe, container: str, count: int) -> None:
        """Take the containers of so many presents, and what each has for itself."""
        if container in self.containers:
            self.containers[container] = max(0, self.containers[container] - count)
        for need in needs_of(recipe, PriceBook()):
            if need.per_container and not need.loose:
                self._take(need, need.amount * count, recipe.title)

    def _take(self, need: Need, amount: Fraction, title: str) -> None:
        for key in _keys_of(need.item):
            for name in [name for name in self.foods if name == key or name.startswith(f"{key} ")]:
                held = self.foods[name]
                used = measure_as(amount, need.unit, held.unit, find_staple(need.item))
                if used is None:
                    words = f"How much {held.words} is left after {title} is not known: count it."
                    self.notes += [words] if held.amount and words not in self.notes else []
                    held.amount = Fraction(0)
                    return
                taken = min(used, held.amount)
                held.amount -= taken
                if taken == used:
                    return

    def as_stock(self, stock: Stock) -> Stock:
        """Return the list's stock with what is there now; presents made earlier stay."""
        lines = tuple(
            (Amount(held.amount, held.amount, held.unit), held.words)
            for held in self.foods.values()
            if held.amount > 0
        )
        return stock.model_copy(update={"ingredients": lines, "containers": dict(self.containers)})


def food_key(item: str, unit: str, held: Mapping[str, object]) -> str:
    """Return under which name a food of such a unit is held."""
    key = _key(item)
    apart = f"{key} {BASE[size_of(unit)]}"
    return apart if apart in held else key


def _key(item: str) -> str:
    staple = find_staple(item)
    return staple.name if staple else normal_form(item)


def _keys_of(item: str) -> Iterable[str]:
    """Return the food itself, and the one it is a kind of: unsalted butter is taken off butter."""
    yield _key(item)
    staple = find_staple(item)
    if staple and staple.kind_of:
        yield staple.kind_of


def is_container(name: str, giving: GivingList, recipes: Mapping[str, Recipe]) -> bool:
    """Say whether a thing bought is something that presents are filled into."""
    known = [*giving.stock.containers, *(make.container for make in giving.makes)]
    known += [price.item for price in giving.prices if price.section == "containers"]
    for make in giving.makes:
        if recipe := recipes.get(make.recipe):
            known += [holder.name for holder in recipe.filled_into]
    return normal_form(name) in {normal_form(one) for one in known if one}
