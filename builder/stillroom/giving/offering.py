"""A giving list and the book's recipes to a planning problem: offers, brews, purchases, rules.

Leaves out solving (planning.py) and what follows from a plan (batches.py, shopping.py).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.batch.contents import contents_of
from stillroom.core.book import BookSettings
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.recipe.model import Recipe
from stillroom.giving.against_whole import check_whole
from stillroom.giving.brewing import brew_of, to_a_sixtieth
from stillroom.giving.buying_near import buy_near
from stillroom.giving.facts import GiftFacts, facts_of
from stillroom.giving.filled_into import container_of, key_of
from stillroom.giving.holding import Holding, days_left
from stillroom.giving.in_season import foods_in_the_house, season_of
from stillroom.giving.model import GivingList, Household, Make, Sort, container_words
from stillroom.giving.money.buying import PackOffer
from stillroom.giving.money.costing import (
    Need,
    PriceBook,
    cost_batch,
    cost_of_use,
    measure_as,
    needs_of,
)
from stillroom.giving.money.points import money_of_a_point, weights_of
from stillroom.giving.money.stand_ins import with_stand_ins
from stillroom.giving.names import with_names_of
from stillroom.giving.plan_model import (
    Basket,
    Brew,
    Lot,
    Money,
    Month,
    Offer,
    PlanProblem,
    Purchase,
)
from stillroom.giving.postage import bands_of, with_usual_weights
from stillroom.giving.posting import Parcel, due_of, parcel_of
from stillroom.giving.reading import ReadList
from stillroom.giving.shelf import Shelf, read_shelf
from stillroom.giving.starting import Frame, keeps_until
from stillroom.giving.taking import with_limits
from stillroom.giving.years import without_last_year, years_since_had


@dataclass(frozen=True)
class Offering:
    """The problem and all it was made from, by the offer's key or the recipe's slug."""

    giving: GivingList
    recipes: Mapping[str, Recipe]
    makes: Mapping[str, Make]
    facts: Mapping[str, GiftFacts]
    needs: Mapping[str, tuple[Need, ...]]
    prices: PriceBook
    shelf: Shelf
    households: Mapping[int, Household]
    problem: PlanProblem
    today: date
    settings: BookSettings = field(default_factory=BookSettings)
    parcels: Mapping[str, Parcel] = field(default_factory=dict)

    def offer(self, key: str) -> Offer:
        """Return an offer by its key."""
        return next(offer for offer in self.problem.offers if offer.key == key)


def make_offering(
    read: ReadList,
    book_recipes: tuple[Recipe, ...],
    today: date,
    before: Mapping[tuple[str, int], tuple[str, ...]] | None = None,
    settings: BookSettings | None = None,
    gone: frozenset[int] = frozenset(),
    starts: Mapping[str, frozenset[date]] | None = None,
) -> Offering:
    """Return the problem of a list; raises ProblemsFound when list and book do not fit.

    `before` is an earlier plan: offer keys by household and basket, counted from 1 in each.
    `gone` are the numbers of the baskets that were given: the others keep theirs.
    `starts` are the days on which that plan began each recipe.
    `settings` are the book's: its country chooses the label and the safety box.
    """
    settings = settings or BookSettings()
    recipes = {recipe.slug: recipe for recipe in book_recipes}
    read = with_names_of(read, recipes)
    giving = read.giving
    items, shares = check_whole(read, recipes, settings.country)
    prices = PriceBook(items, giving.currency)
    makes = {key_of(make): make for make in giving.makes}
    offered = {make.recipe: recipes[make.recipe] for make in giving.makes}
    needs = {slug: needs_of(recipe, prices) for slug, recipe in offered.items()}
    facts = {slug: facts_of(recipe) for slug, recipe in offered.items()}
    shelf = read_shelf(giving, makes, recipes, shares)
    offers = tuple(
        _offer(key, make, offered[make.recipe], needs[make.recipe], shares[key], shelf, prices)
        for key, make in makes.items()
    )
    offers = with_usual_weights(offers)
    home = settings.country
    parcels = {
        household.name: parcel
        for household in giving.households
        if (parcel := parcel_of(giving, household, home))
    }
    baskets, households = _baskets(giving, parcels, gone)
    frame = _frame(giving, baskets, today)
    house = foods_in_the_house(giving)
    brews = tuple(
        brew_of(
            giving,
            recipe,
            needs[slug],
            replace(
                frame,
                kept=(starts or {}).get(slug, frozenset()),
                season=season_of(recipe, settings.country, house),
            ),
            _shares_of(slug, makes, shares),
        )
        for slug, recipe in offered.items()
    )
    brews, limits = with_limits(giving, brews, recipes)
    offers, brews, stand_ins = with_stand_ins(offers, brews, needs, house)
    held = stock_of(giving, prices)
    brews, fresh = buy_near(brews, prices, held)
    brews = tuple(_as_before(brew, starts or {}) for brew in brews)
    holding = Holding(
        giving, makes, facts, {one.recipe: one for one in brews}, parcels, settings, today, offered
    )
    had = years_since_had(giving, baskets, households)
    refused = {
        (basket.number, offer.key): reasons
        for basket in baskets
        for offer in offers
        if (reasons := holding.reasons(basket, households[basket.number], offer))
    }
    point = money_of_a_point(giving, prices)
    problem = PlanProblem(
        baskets=baskets,
        offers=offers,
        brews=brews,
        purchases=(*_purchases(prices, needs, offers, held, fresh), *stand_ins),
        hours=_hours(giving, today),
        refused=without_last_year(refused, offers, had),
        years_since_had=had,
        liked=frozenset((b.number, slug) for b in baskets for slug in households[b.number].likes),
        must_have=frozenset((h.name, slug) for h in giving.households for slug in h.must_have),
        before=_before(giving, baskets, before),
        limits=limits,
        money=Money(giving.currency, settings.language, point),
    )
    problem = replace(problem, weights=weights_of(problem, point))
    return Offering(
        giving,
        recipes,
        makes,
        facts,
        needs,
        prices,
        shelf,
        households,
        problem,
        today,
        settings,
        parcels,
    )


def _as_before(brew: Brew, starts: Mapping[str, frozenset[date]]) -> Brew:
    """Return a brew whose choices know whether the plan before began it on another day."""
    days = starts.get(brew.recipe)
    if not days:
        return brew
    choices = tuple(replace(one, moved=one.start not in days) for one in brew.choices)
    return replace(brew, choices=choices)


def _frame(giving: GivingList, baskets: tuple[Basket, ...], today: date) -> Frame:
    dues = {basket.ready_by for basket in baskets if basket.ready_by} | {giving.giving_day}
    keeps = [basket.keeps_to or giving.giving_day for basket in baskets]
    least = min(keeps, default=giving.giving_day)
    return Frame(
        today,
        tuple(sorted(dues)),
        least,
        giving.days_off,
        hours_a_day=giving.hours_a_day,
    )


def _shares_of(
    slug: str, makes: Mapping[str, Make], shares: Mapping[str, Fraction]
) -> dict[str, Fraction]:
    return {key: shares[key] for key, make in makes.items() if make.recipe == slug}


def _offer(
    key: str,
    make: Make,
    recipe: Recipe,
    needs: tuple[Need, ...],
    share: Fraction,
    shelf: Shelf,
    prices: PriceBook,
) -> Offer:
    container = container_of(make, recipe)
    entry = prices.find(container)
    per_batch = 1 / share
    each = {need.item: need.amount for need in needs if need.per_container and need.entry}
    worth = cost_batch(needs).total / per_batch
    worth += (
        sum(
            (
                cost_of_use(n.amount * per_batch, n.entry)
                for n in needs
                if n.per_container and n.entry
            ),
            Fraction(0),
        )
        / per_batch
    )
    if entry:
        each[entry.item] = Fraction(1)
        worth += cost_of_use(Fraction(per_batch), entry) / per_batch
    return Offer(
        key=key,
        recipe=recipe.slug,
        title=recipe.title,
        sort=make.sort or sort_of(recipe),
        container=container,
        share=share,
        worth=make.cost if make.cost is not None else to_pence(worth),
        on_hand=shelf.count(key),
        needs={item: to_a_sixtieth(amount) for item, amount in each.items()},
        weighs=make.weighs,
        lots=tuple(
            Lot(
                thing.number,
                thing.made_on,
                keeps_until(recipe, thing.made_on, thing.keep_until),
            )
            for thing in shelf.things
            if thing.key == key
        ),
    )


def to_pence(value: Fraction) -> Fraction:
    """Return a reckoned cost to the hundredth, the half upwards."""
    return Fraction(math.floor(value * 100 + Fraction(1, 2)), 100)


def pack_sizes(packs: tuple[PackOffer, ...]) -> tuple[PackOffer, ...]:
    """Return packs with what is in each rounded down likewise; the smallest stay as they are."""
    return tuple(
        replace(pack, size=Fraction(math.floor(pack.size * 60), 60)) if pack.size >= 1 else pack
        for pack in packs
    )


def sort_of(recipe: Recipe) -> Sort:
    """Return what a recipe counts as in a basket; what people do not eat is no food of it."""
    if not recipe.kind.edible:
        return "craft"
    drunk = recipe.kind.is_("drink") and not (_is_for_dressing(recipe) or _is_in_salt(recipe))
    return "drink" if drunk else "eat"


def _is_for_dressing(recipe: Recipe) -> bool:
    """Whether most of it is oil, or vinegar that nothing sweetens: steeped, and no drink."""
    parts = contents_of(recipe)
    most = max(parts, key=lambda one: one.grams or 0, default=None)
    if most is None or most.staple is None:
        return False
    sweet = any(one.grams_of("sugar") * 10 > (most.grams or 0) for one in parts)
    return "oil" in most.staple.tags or ("vinegar" in most.staple.tags and not sweet)


_SALTED = Fraction(1, 100)
"""Of what is in it: no drink is as salty. Common practice (2 % and more), no published source."""


def _is_in_salt(recipe: Recipe) -> bool:
    """Whether it sours in salt, as sauerkraut does, and is eaten; a pinch is none."""
    parts = contents_of(recipe)
    tags = {tag for one in parts if one.staple for tag in one.staple.tags}
    if not recipe.kind.is_("living") or "yeast" in tags:
        return False
    salts = (one for one in parts if one.staple and "salt" in one.staple.tags)
    salt = sum((one.grams or Fraction(0) for one in salts), Fraction(0))
    whole = sum((one.grams or Fraction(0) for one in parts), Fraction(0))
    return salt > 0 and salt >= _SALTED * whole


def _baskets(
    giving: GivingList, parcels: Mapping[str, Parcel], gone: frozenset[int]
) -> tuple[tuple[Basket, ...], dict[int, Household]]:
    baskets: list[Basket] = []
    households: dict[int, Household] = {}
    for household in giving.households:
        for kind, count in household.basket.items():
            for _ in range(count):
                number = len(households) + 1
                households[number] = household
                if number not in gone:
                    baskets.append(_basket(giving, household, kind, number, parcels))
    return tuple(baskets), households


def _basket(
    giving: GivingList, household: Household, kind: str, number: int, parcels: Mapping[str, Parcel]
) -> Basket:
    pattern, parcel = giving.baskets[kind], parcels.get(household.name)
    room: dict[Sort, int] = {"eat": pattern.eat, "drink": pattern.drink, "craft": pattern.craft}
    due = due_of(giving, parcel)
    heaviest = parcel.heaviest if parcel else None
    return Basket(
        number,
        household.name,
        kind,
        room,
        household.budget,
        ready_by=due if due < giving.giving_day else None,
        keeps_to=(household.opens or giving.giving_day) + timedelta(days=days_left(household)),
        carries=None if heaviest is None else max(Fraction(0), heaviest - (pattern.weighs or 0)),
        bands=bands_of(parcel, pattern.weighs),
    )


def _purchases(
    prices: PriceBook,
    needs: Mapping[str, tuple[Need, ...]],
    offers: tuple[Offer, ...],
    held: Mapping[str, Fraction],
    fresh: Mapping[str, tuple[str, ...]],
) -> tuple[Purchase, ...]:
    """Return what may be bought; what spoils once for every month in which it is used."""
    wanted = {need.item for lines in needs.values() for need in lines if need.entry}
    wanted |= {item for offer in offers for item in offer.needs}
    found = []
    for entry in prices.items:
        there = Fraction(math.floor(held.get(entry.item, Fraction(0)) * 60), 60)
        names = fresh.get(entry.item, (entry.item,)) if entry.item in wanted else ()
        found += [Purchase(name, pack_sizes(entry.packs), there) for name in names]
    return tuple(found)


def stock_of(giving: GivingList, prices: PriceBook) -> dict[str, Fraction]:
    """Return what is in the house of each priced item, measured as its packs are."""
    held: dict[str, Fraction] = {}
    for words, count in giving.stock.containers.items():
        if entry := prices.find(container_words(words)):
            held[entry.item] = held.get(entry.item, Fraction(0)) + count
    for amount, item in giving.stock.ingredients:
        staple = find_staple(item)
        if entry := prices.find(item, staple):
            there = measure_as(amount.low, amount.unit, entry.unit, staple)
            held[entry.item] = held.get(entry.item, Fraction(0)) + (there or 0)
    return held


def _hours(giving: GivingList, today: date) -> dict[Month, Fraction] | None:
    if not giving.hours:
        return None
    months = {}
    year, month = today.year, today.month
    while (year, month) <= (giving.giving_day.year, giving.giving_day.month):
        months[year, month] = giving.hours[month]
        year, month = (year, month + 1) if month < 12 else (year + 1, 1)
    return months


def _before(
    giving: GivingList,
    baskets: tuple[Basket, ...],
    before: Mapping[tuple[str, int], tuple[str, ...]] | None,
) -> frozenset[tuple[int, str]] | None:
    if before is None:
        return None
    planned = {basket.number for basket in baskets}
    found = set()
    number = 0
    for household in giving.households:
        for nth in range(1, sum(household.basket.values()) + 1):
            number += 1
            if number in planned:
                found |= {(number, key) for key in before.get((household.name, nth), ())}
    return frozenset(found)
