"""What a batch costs: its ingredients matched to packs and prices, exact to the penny.

A price book lists what can be bought and in what packs. A batch is charged for what it uses, at
the measure's price of the packs that one batch would be bought in; what is bought whole for the
year and what is left over is reckoned from all batches together, by whoever plans them. Uses
staples for densities (a cup of honey against a jar sold by weight).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, Ratio, show_amount
from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.contents import middle_of
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.staple_table import Staple, find_staple, staple_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex
from stillroom.giving.money.buying import PackOffer, buy_cheapest

BASE = {"volume": "ml", "mass": "g", "length": "mm", "count": ""}


@dataclass(frozen=True)
class PricedItem:
    """Something that can be bought: its packs measured in `unit` (ml, g, mm or "" for counted).

    `many` is what a pack is called of which nobody knows how many are in it: a bulb.
    """

    item: str
    unit: str
    packs: tuple[PackOffer, ...]
    section: str = ""
    many: str = ""

    @property
    def staple(self) -> Staple | None:
        """Return the staple it is."""
        return find_staple(self.item)

    @property
    def own(self) -> bool:
        """Whether it grows in the garden: it costs nothing, by whatever measure."""
        return any(pack.sold == "own" for pack in self.packs)


@dataclass(frozen=True)
class PriceBook:
    """All that is priced, in one currency."""

    items: tuple[PricedItem, ...] = ()
    currency: str = "GBP"

    def find(self, words: str, staple: Staple | None = None) -> PricedItem | None:
        """Return the entry of an ingredient: the same words, or the same whole food; else None.

        "Coconut milk" is no milk and "rice flour" no rice: a price of another food is no price.
        Of a food that is a kind of another ("unsalted butter") the other's price holds, where its
        words stand among its own.
        """
        plain = normal_form(words)
        for entry in self.items:
            if normal_form(entry.item) == plain:
                return entry
        food = staple or find_staple(words)
        if food is None or "container-item" in food.tags:
            return None  # a tin is no jar, and a jar of another size another jar
        same = [entry for entry in self.items if entry.staple and entry.staple.name == food.name]
        if "craft" in food.tags:  # a jelly bag and a wooden spoon are both a "kitchen tool"
            same = [entry for entry in same if _alike(entry.item, plain) > 0]
        if not same and food.kind_of:
            own = set(plain.split())
            same = [
                entry
                for entry in self.items
                if entry.staple
                and entry.staple.name == food.kind_of
                and set(normal_form(entry.item).split()) <= own
            ]
        return max(same, key=lambda entry: _alike(entry.item, plain), default=None)


def _alike(item: str, plain: str) -> int:
    """Return how many words an entry shares with an ingredient, less those it has besides."""
    entry, own = set(normal_form(item).split()), set(plain.split())
    return 2 * len(entry & own) - len(entry - own)


@dataclass(frozen=True)
class Need:
    """So much of one thing for a batch, in `unit` (ml, g, mm or ""); `entry` is None unpriced.

    `noun` is what is counted of an unpriced thing: "strip" of lemon peel. `words` are the recipe's
    own, `loose` what it wants without an amount: "salt, to taste".
    """

    item: str
    amount: Fraction
    unit: str
    section: str
    entry: PricedItem | None
    per_container: bool = False
    tool: bool = False
    noun: str = ""
    words: str = ""
    loose: bool = False


@dataclass(frozen=True)
class BatchCost:
    """The cost of one batch's ingredients, line by line, and what has no price."""

    lines: tuple[tuple[str, Fraction], ...]
    unpriced: tuple[str, ...]

    @property
    def total(self) -> Fraction:
        """Return the sum, exact."""
        return sum((cost for _, cost in self.lines), Fraction(0))


def priced_item(
    item: str, packs: Sequence[tuple[Amount, Fraction, int]], section: str = ""
) -> PricedItem:
    """Make an entry of packs as read, all measured as the first is; raises Unreadable otherwise.

    A food may be sold by weight in one pack, by the jug or the piece in another: its density or
    the weight of one tells how much that is.
    """
    unit = BASE[size_of(packs[0][0].unit)]
    staple = find_staple(item)
    offers = tuple(_offer(*pack, unit, staple) for pack in packs)
    nouns = [amount.noun for amount, _, _ in packs if _is_many(amount.noun, staple)]
    return PricedItem(item, unit, offers, section, nouns[0] if nouns and not unit else "")


def _offer(
    amount: Amount, price: Fraction, at_least: int, unit: str, staple: Staple | None
) -> PackOffer:
    """Return a pack as read; the price of a weight is that of what is sold loose, or of packets."""
    if at_least:
        return PackOffer(in_base(amount, unit, staple), price, at_least, _own_measure(amount))
    if not amount.unit:
        return PackOffer(Fraction(1), Fraction(0), sold="own")
    said_loose = amount.noun == "loose"
    if not said_loose and staple and staple.section in _IN_PACKETS:
        size = in_base(amount, unit, staple)
        return PackOffer(size, price, words=_own_measure(amount), sold="packet")
    grams = convert(amount.low, amount.unit, "g")
    gram = in_base(Amount(Fraction(1), Fraction(1), "g"), unit, staple)
    words = "" if amount.unit in _METRIC else amount.unit
    return PackOffer(
        gram, price / grams, words=words, sold="loose" if said_loose else "by weight", per=grams
    )


# what lies in a shop in packets, boxes and bottles; all else that has the price of a weight is
# taken to be weighed out. Common practice, no published source; the pack says which was taken
_IN_PACKETS = frozenset({"sugar and baking", "dairy and eggs", "oils and vinegars"})


def _is_many(noun: str, staple: Staple | None) -> bool:
    """Whether a pack is so called for nobody knows how many: a bulb of cloves."""
    return noun in _OF_CLOVES and staple is not None and "clove" in staple.each_of


_OF_CLOVES = frozenset({"bulb", "head"})
_METRIC = frozenset({"g", "kg", "ml", "cl", "dl", "l", "mm", "cm", "m", ""})


def _own_measure(amount: Amount) -> str:
    """Return what stands on a pack in ounces, pints or cups; "" where it is a metric one."""
    return "" if amount.unit in _METRIC else show_amount(amount)


def in_base(amount: Amount, unit: str, staple: Staple | None = None) -> Fraction:
    """Return an amount's value in a base unit; raises Unreadable when it cannot be told."""
    measured = measure_as(amount.low, amount.unit, unit, staple)
    return convert(amount.low, amount.unit, unit) if measured is None else measured


def measure_as(
    value: Fraction, unit: str, to_unit: str, staple: Staple | None, each_g: Fraction | None = None
) -> Fraction | None:
    """Return an amount measured another way, by density or the weight of one; None if unknown.

    >>> measure_as(Fraction(2), "l", "ml", None)
    Fraction(2000, 1)
    """
    have, want = size_of(unit), size_of(to_unit)
    if have == want:
        return value if have == "count" else convert(value, unit, to_unit)
    each = each_g or (staple.each_g if staple else None)
    density = staple.density if staple else None
    grams: Fraction | None = None
    if have == "mass":
        grams = convert(value, unit, "g")
    elif have == "volume" and density:
        grams = convert(value, unit, "ml") * density
    elif have == "count" and each:
        grams = value * each
    if grams is None:
        return None
    if want == "mass":
        return convert(grams, "g", to_unit)
    if want == "volume" and density:
        return convert(grams / density, "ml", to_unit)
    return grams / each if want == "count" and each else None


def needs_of(recipe: Recipe, prices: PriceBook) -> tuple[Need, ...]:
    """Return what one batch as written needs; what has no amount is `loose`: "salt, to taste".

    A need is measured as its price is, or as the recipe does when no price fits it. A craft's
    material used once per batch is a tool: it is had, not used up. What is left of another
    ingredient is not bought beside it: the scraped pod is that of the sugar.
    """
    return tuple(
        _need(recipe, ingredient, measured, prices)
        if (measured := middle_of(ingredient, recipe)) is not None
        else _loose(ingredient)
        for ingredient in recipe.ingredients
        if not _is_left_of_another(ingredient, recipe)
    )


# in the languages of the names of foods
_LEFT = late_regex(
    r"^(?:scraped|spent|used|exhausted|emptied|left-?over|ausgekratzte\w?|ausgeschabte\w?"
    r"|gebrauchte\w?|grattée?s?|épuisée?s?|usad[ao]s?|gastad[ao]s?|raspad[ao]s?|usat[aeoi]"
    r"|gebruikte?|uitgeschraapte?|använda?|utskrapade?|brugte?|brukte?)\s"
    r"|\s(?:grattée?s?|épuisée?s?|usad[ao]s?|raspad[ao]s?|usat[aeoi]|svuotat[aeoi])$",
    re.IGNORECASE,
)


def _is_left_of_another(ingredient: Ingredient, recipe: Recipe) -> bool:
    """Whether it is what remains of something that the recipe has whole: a spent vanilla pod."""
    if not _LEFT.search(ingredient.item):
        return False
    staple = staple_of(ingredient)
    others = (one for one in recipe.ingredients if one is not ingredient)
    whole = (one for one in others if not _LEFT.search(one.item))
    return staple is not None and any(
        (other := staple_of(one)) is not None and other.name == staple.name for one in whole
    )


def _loose(ingredient: Ingredient) -> Need:
    """Return what is wanted without an amount: it is listed, and not reckoned."""
    staple = staple_of(ingredient)
    section = staple.section if staple else "other"
    words = ingredient.item
    return Need(words, Fraction(0), "", section, None, tool=True, words=words, loose=True)


def _need(
    recipe: Recipe, ingredient: Ingredient, measured: tuple[Fraction, str], prices: PriceBook
) -> Need:
    value, unit = measured
    staple = staple_of(ingredient)
    entry = prices.find(ingredient.item, staple)
    base = BASE[size_of(unit)]
    if entry and entry.own:
        entry = replace(entry, unit=base)
    amount = measure_as(value, unit, entry.unit, staple, ingredient.each_g) if entry else None
    if entry and entry.many and entry.many not in f"{_noun_of(ingredient)} {ingredient.item}":
        amount = None  # four cloves are no four bulbs
    if entry is None or amount is None:
        entry, amount = None, value if not unit else convert(value, unit, base)
    return Need(
        item=entry.item if entry else (staple.name if staple else ingredient.item),
        amount=amount,
        unit=entry.unit if entry else base,
        section=(entry.section if entry else "") or (staple.section if staple else "other"),
        entry=entry,
        per_container=ingredient.scales == "per container",
        tool=not recipe.kind.is_eaten and ingredient.scales == "per batch",
        noun="" if entry and not entry.own else _noun_of(ingredient),
        words=ingredient.item,
    )


def _noun_of(ingredient: Ingredient) -> str:
    amount = ingredient.amount
    own = amount.amount if isinstance(amount, Ratio) else amount
    return own.noun if isinstance(own, Amount) else ""


def cost_of_use(amount: Fraction, entry: PricedItem) -> Fraction:
    """Return what so much of an item costs, at the measure's price of the packs it comes in."""
    if amount <= 0:
        return Fraction(0)
    bought = buy_cheapest(amount, entry.packs)
    return bought.price * amount / bought.bought


def cost_batch(needs: Sequence[Need], batches: Fraction = Fraction(1)) -> BatchCost:
    """Return the cost of the ingredients of so many batches, per-container things left out."""
    lines, unpriced = [], []
    for need in needs:
        if need.per_container or need.tool or need.loose:
            continue
        if need.entry is None:
            unpriced.append(need.item)
        else:
            lines.append((need.item, cost_of_use(need.amount * batches, need.entry)))
    return BatchCost(tuple(lines), tuple(dict.fromkeys(unpriced)))
