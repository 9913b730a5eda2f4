"""One shopping list for the whole plan: by month of first need and shop section, in whole packs.

What is in the house is taken off first. What has no price is listed by its amount. Leaves out
money shared over batches and baskets: costs.py does that.
"""

from __future__ import annotations

import math
import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.money import to_decimal
from stillroom.core.amounts.quantities import show_decimal, show_number
from stillroom.core.amounts.units import size_of
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.staple_table import Staple, find_staple
from stillroom.core.words.day_words import say_month
from stillroom.core.words.plurals import counted, singular
from stillroom.giving.batches import Batch, Making
from stillroom.giving.buying_near import name_in, spoils
from stillroom.giving.model import container_words
from stillroom.giving.money.buying import Basketful, PackOffer, buy_cheapest
from stillroom.giving.money.costing import BASE, PricedItem, measure_as
from stillroom.giving.money.stand_ins import FREE
from stillroom.giving.offering import Offering, stock_of
from stillroom.giving.plan_model import Month

_BY_WEIGHT = frozenset({"sugar and baking", "spices and herbs", "dried goods"})
_LIQUID = re.compile(r"\b(?:milk|cream|juice|water|extract|essence|oil|syrup|colouring|liquid)\b")
# wide strips pared lengthwise from one lemon or orange: common practice, no published source
STRIPS_OF_A_FRUIT = 6
_SPOONFULS = 60  # ml


@dataclass(frozen=True)
class Row:
    """One thing to have: how much in all, when first, what is there, what to buy and what is left.

    Amounts are in `unit` (ml, g, mm or "" for counted, `noun` then says what is counted: "strip");
    `bought` is None without a price. `words` are what the recipes call it, `loose` what they want
    without an amount. `density` in g per ml is that of what a shop sells by weight, else None.
    """

    item: str
    section: str
    unit: str
    need: Fraction
    there: Fraction
    months: tuple[tuple[Month, Fraction], ...]
    uses: Mapping[str, Fraction]
    packs: tuple[PackOffer, ...] = ()
    bought: Basketful | None = None
    noun: str = ""
    words: tuple[str, ...] = ()
    loose: bool = False
    density: Fraction | None = None

    @property
    def said(self) -> str:
        """The recipes' own words for it, behind what it is priced as where they differ."""
        plain = normal_form(self.item)
        others = [one for one in self.words if normal_form(one) != plain]
        one_thing = len({singular(one) for one in others}) == 1  # "lemon" and "lemons"
        if len(others) == len(self.words) and one_thing and not self.packs:
            return max(others, key=len)
        return f"{self.item} ({', '.join(others)})" if others else self.item

    @property
    def first(self) -> Month:
        """The month in which it is first needed."""
        return self.months[0][0]

    @property
    def price(self) -> Fraction:
        """What it costs; nothing when there is none to buy."""
        return self.bought.price if self.bought else Fraction(0)

    @property
    def to_buy(self) -> str:
        """The packs in words: "2 x 700 ml", or the amount when no packs are priced."""
        if self.loose:
            return "to taste"
        short = self.need - self.there
        if short <= 0:
            return "in the house"
        if self.bought is None:
            return self._without_packs(short)
        if any(pack.sold == "own" for pack in self.packs):
            return f"{self._without_packs(short)}, your own"
        return " + ".join(
            say_packs(count, pack, self.unit)
            for count, pack in zip(self.bought.counts, self.packs, strict=True)
            if count
        )

    def _without_packs(self, short: Fraction) -> str:
        return say_counted(short, self.noun, self.item) or self._by_weight(short)

    def _by_weight(self, short: Fraction) -> str:
        """Say what is sold by weight so, beside the spoons and cups that the recipes want."""
        spoons = "" if _LIQUID.search(self.item) else say_spoons(short, self.unit)
        if self.density is None or self.unit != "ml":
            return spoons or show_size(as_bought(short, self.unit), self.unit)
        size = spoons or show_size(short, self.unit)
        grams = short * self.density
        step = next((step for step, least in ((50, 500), (10, 100), (5, 20)) if grams >= least), 1)
        return f"about {show_size(Fraction(math.ceil(grams / step) * step), 'g')} ({size})"

    @property
    def left(self) -> str:
        """What remains afterwards."""
        over = self.there + (self.bought.bought if self.bought else Fraction(0)) - self.need
        finest = max((pack.size for pack in self.packs if pack.by_weight), default=Fraction(0))
        is_own = any(pack.sold == "own" for pack in self.packs)
        return show_size(over, self.unit) if over > finest and not is_own else ""


def say_packs(count: int, pack: PackOffer, unit: str) -> str:
    """Say how many of a pack are bought, or how much is weighed out.

    >>> say_packs(2, PackOffer(Fraction(500), Fraction(1)), "g")
    '2 x 500 g'
    >>> say_packs(1815, PackOffer(Fraction(1), Fraction(1), words="lb", sold="loose", per=454), "g")
    '4 lb (1.82 kg) loose'
    """
    if pack.by_weight:
        grams = show_size(Fraction(count), "g")
        named = f"{show_decimal(Fraction(count) / pack.per, 1)} {pack.words} ({grams})"
        return f"{named if pack.words else grams} loose"
    return f"{count} x {say_pack(pack, unit)}" if pack.size != 1 or unit else f"{count}"


def say_pack(pack: PackOffer, unit: str) -> str:
    """Say how much is in a pack, as its label does and as the recipes measure.

    >>> say_pack(PackOffer(Fraction("340.2"), Fraction(3), words="12 oz"), "g")
    '12 oz (340 g)'
    """
    size = show_size(pack.size, unit)
    return f"{pack.words} ({size})" if pack.words else size


def as_bought(amount: Fraction, unit: str) -> Fraction:
    """Return what is asked for in a shop, never less: whole pods, kilos to the tenth, grams to ten.

    >>> as_bought(Fraction(3111), "g"), as_bought(Fraction(241), "g"), as_bought(Fraction(6, 5), "")
    (Fraction(3200, 1), Fraction(250, 1), Fraction(2, 1))
    """
    if not unit:
        return Fraction(math.ceil(amount))
    if unit not in ("g", "ml"):
        return amount
    step = 100 if amount >= 1000 else 10 if amount >= 100 else 1
    return Fraction(math.ceil(amount / step) * step)


def say_spoons(amount: Fraction, unit: str) -> str:
    """Say little of what is dry by the spoon, as it is measured; "" for much.

    >>> [say_spoons(Fraction(ml), "ml") for ml in (5, 20, 99)]
    ['1 tsp', '1 tbsp + 1 tsp', '']
    """
    if unit != "ml" or not 0 < amount <= _SPOONFULS:
        return ""
    tablespoons, left = divmod(amount, 15)
    teaspoons = math.ceil(left / 5 * 2)  # by the half
    said = [f"{tablespoons} tbsp"] if tablespoons else []
    half = "½" if teaspoons % 2 else ""
    said += [f"{teaspoons // 2 or ''}{half} tsp"] if teaspoons else []
    return " + ".join(said)


def show_size(amount: Fraction, unit: str) -> str:
    """Show an amount as on a packet.

    >>> show_size(Fraction(1500), "g"), show_size(Fraction(3), "")
    ('1.5 kg', '3')
    """
    for small, large in (("g", "kg"), ("ml", "l"), ("mm", "m")):
        if unit == small and amount >= 1000:
            return f"{show_decimal(amount / 1000)} {large}"
    if not unit and amount.denominator <= 4:  # pods and lemons: 5¾
        return show_number(amount)
    whole = Fraction((amount + Fraction(1, 2)).__floor__())
    shown = show_decimal(whole if amount >= 10 else amount, 1)
    return f"{shown} {unit}".rstrip()


def say_counted(count: Fraction, noun: str, item: str) -> str:
    """Say a counted thing as it is bought: peel by the fruit; "" for what has no noun.

    >>> say_counted(Fraction(14), "strip", "lemon peel"), say_counted(Fraction(2), "leaf", "bay")
    ('14 strips, from 3 lemons', '2 leaves')
    """
    if not noun:
        return ""
    number = count.__ceil__()
    words = counted(number, noun)
    if noun != "strip" or not item.endswith(" peel"):
        return words
    fruit = (count / STRIPS_OF_A_FRUIT).__ceil__()
    return f"{words}, from {counted(fruit, item.removesuffix(' peel'))}"


@dataclass(frozen=True)
class _Use:
    """So much of a thing for one batch, wanted in a month."""

    item: str
    unit: str
    section: str
    entry: PricedItem | None
    batch: str
    month: Month
    amount: Fraction
    tool: bool = False
    noun: str = ""
    words: str = ""
    loose: bool = False

    @property
    def staple(self) -> Staple | None:
        """Return the food it is; None for what nobody knows."""
        return self.entry.staple if self.entry else find_staple(self.item)


def list_shopping(offering: Offering, making: Making) -> tuple[Row, ...]:
    """Return the rows, by month of first need, then section and item."""
    # by its measure too: what has no price is not measured alike by all recipes
    by_item: dict[tuple[str, str], list[_Use]] = defaultdict(list)
    held = stock_of(offering.giving, offering.prices) | _unpriced_stock(offering)
    for batch in making.batches:
        for use in _uses_of(offering, batch):
            near = not held.get(use.item) and not use.loose and spoils(use.staple, use.section)
            item = name_in(use.item, use.month) if near else use.item
            # a tool is had once, however many batches want it
            own = by_item[item, use.unit]
            if use.item not in FREE and not (use.tool and not use.loose and own):
                own.append(use)
    currency = offering.giving.currency
    rows = [
        _row(uses, held.get(item, Fraction(0)), currency)
        for (item, _), uses in by_item.items()
        if uses
    ]
    return tuple(sorted(rows, key=lambda row: (row.first, row.section, row.item)))


def _uses_of(offering: Offering, batch: Batch) -> Iterator[_Use]:
    begun = (batch.timeline.start.year, batch.timeline.start.month)
    filled = (batch.timeline.made.year, batch.timeline.made.month)
    given = sum(batch.fills.values())
    for need in offering.needs[batch.recipe.slug]:
        times = given if need.per_container else 1 if need.tool else batch.amount
        yield _Use(need.item, need.unit, need.section, need.entry, batch.name, begun,
                   need.amount * times, need.tool, need.noun, need.words, need.loose)  # fmt: skip
    for key, count in batch.fills.items():
        container = offering.offer(key).container
        entry = offering.prices.find(container)
        yield _Use(container, "", "containers", entry, batch.name, filled, Fraction(count))


def _unpriced_stock(offering: Offering) -> dict[str, Fraction]:
    """Return what is in the house of things without a price, by the staple's name or container."""
    held: dict[str, Fraction] = defaultdict(Fraction)
    for words, count in offering.giving.stock.containers.items():
        container = container_words(words)
        if offering.prices.find(container) is None:
            held[container] += count
    for amount, item in offering.giving.stock.ingredients:
        staple = find_staple(item)
        if offering.prices.find(item, staple) is None and staple:
            there = measure_as(amount.low, amount.unit, BASE[size_of(amount.unit)], staple)
            held[staple.name] += there or 0
    return dict(held)


def _row(uses: list[_Use], there: Fraction, currency: str) -> Row:
    first = uses[0]
    by_batch: dict[str, Fraction] = defaultdict(Fraction)
    by_month: dict[Month, Fraction] = defaultdict(Fraction)
    for use in uses:
        by_batch[use.batch] += use.amount
        by_month[use.month] += use.amount
    need = sum(by_batch.values(), Fraction(0))
    entry = first.entry
    bought = buy_cheapest(max(need - there, Fraction(0)), entry.packs) if entry else None
    if bought:  # what is weighed out is paid to the penny
        bought = replace(bought, price=Fraction(to_decimal(bought.price, currency)))
    return Row(
        item=first.item,
        section=first.section,
        unit=first.unit,
        need=need,
        there=there,
        months=tuple(sorted(by_month.items())),
        uses=dict(by_batch),
        packs=entry.packs if entry else (),
        bought=bought,
        noun=first.noun,
        words=tuple(dict.fromkeys(use.words for use in uses if use.words)),
        loose=all(use.loose for use in uses),
        density=_density_by_weight(first.item, first.section),
    )


def say_taken(rows: Sequence[Row]) -> Iterator[str]:
    """Say what was taken as sold loose, and what in packets, of all that has a price by weight."""
    bought = [
        (row.item, pack)
        for row in rows
        if row.bought
        for count, pack in zip(row.bought.counts, row.packs, strict=True)
        if count
    ]
    loose = [item for item, pack in bought if pack.sold == "by weight"]
    packets = [item for item, pack in bought if pack.sold == "packet"]
    if loose:
        yield (
            f"Taken as sold loose, since the price is that of a weight: {_named(loose)}. Just what "
            "is wanted is bought. Where it comes in packets, write the packet: “1 kg for …”."
        )
    if packets:
        yield (
            f"Taken as whole packets of the weight that the price is for: {_named(packets)}. Where "
            "it is sold loose, write so: “… a kilo, loose”."
        )


def _named(items: Sequence[str]) -> str:
    return ", ".join(dict.fromkeys(items))


def _density_by_weight(item: str, section: str) -> Fraction | None:
    """Return the density of what lies in a shop by weight; None for a liquid and the unknown."""
    staple = find_staple(item) if section in _BY_WEIGHT else None
    return staple.density if staple and not _LIQUID.search(staple.name) else None


def month_words(month: Month) -> str:
    """Name a month.

    >>> month_words((2027, 3))
    'March 2027'
    """
    return f"{say_month(month[1])} {month[0]}"
