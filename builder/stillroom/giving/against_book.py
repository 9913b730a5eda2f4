"""A giving list held against the recipes: what only the two together can show to be wrong.

Names of recipes and baskets, words of "avoid", what must and must never be had, packs measured
alike. Nothing is guessed: a word that is not known is a problem, since a misspelt allergen
would else protect nobody.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.giving.asked_back import asked_about_all
from stillroom.giving.facts import facts_of
from stillroom.giving.filled_into import more_than_it_gives
from stillroom.giving.model import SORTS, GivingList, container_words
from stillroom.giving.money.costing import PricedItem, priced_item
from stillroom.giving.names import plain_name
from stillroom.giving.reading import ReadList
from stillroom.giving.rules import why_refused
from stillroom.giving.who_else import what_a_name_tells, who_else_is_named
from stillroom.giving.written_time import read_countries


def check_list(read: ReadList, recipes: Mapping[str, Recipe]) -> tuple[PricedItem, ...]:
    """Return the priced items once everything fits the book; raises ProblemsFound with all."""
    problems = [
        *_recipe_names(read, recipes),
        *_households(read, recipes),
        *_containers(read),
        *_baskets(read),
        *_batches(read, recipes),
    ]
    items = []
    for place, price in enumerate(read.giving.prices):
        try:
            items.append(priced_item(_priced_as(price.item), price.packs, price.section))
        except Unreadable as wrong:
            mend = wrong.mend or "Give every pack of one thing by weight, or every one by volume."
            what = f'"{price.item}": {wrong.what}'
            problems.append(read.problem(("prices", place, "packs"), what, mend))
    if problems:
        raise ProblemsFound(problems)
    return tuple(items)


def problems_alone(read: ReadList) -> Iterator[Problem]:
    """Yield what is wrong in a list whatever the recipes are."""
    yield from (*_households(read, {}), *_containers(read), *_baskets(read))


def _priced_as(item: str) -> str:
    """Return a container's name as it is counted; an ingredient's as it is written."""
    return container_words(item) if "," in item else item


_LIKES = 'Name a recipe that stands under "makes", or a food that one of them holds.'
_MOST_MEANT = 100
"""Of more names than this that are none of the book's, the others are told without a likely one."""
_Named = tuple[str, bool, tuple[str | int, ...]]


def _names_written(giving: GivingList) -> Iterator[_Named]:
    """Yield every recipe named, whether it must be on offer, and where it stands."""
    for n, make in enumerate(giving.makes):
        yield make.recipe, False, ("makes", n, "recipe")
    for n, made in enumerate(giving.stock.made):
        yield made.recipe, False, ("stock", "made", n, "recipe")
    for n, batch in enumerate(giving.batches):
        yield batch.recipe, False, ("batches", n, "recipe")
    for n, household in enumerate(giving.households):
        place = ("households", n)
        yield from ((name, True, (*place, "must have")) for name in household.must_have)
        yield from ((name, False, (*place, "likes")) for name in household.likes)
        yield from ((name, False, (*place, "never")) for name in household.never)
        for year, names in household.had.items():
            yield from ((name, False, (*place, "had", str(year))) for name in names)


def _recipe_names(read: ReadList, recipes: Mapping[str, Recipe]) -> Iterator[Problem]:
    offered = {make.recipe for make in read.giving.makes}
    meant: dict[tuple[str, bool], str] = {}
    of_book, of_offered = _by_name(recipes, recipes), _by_name(sorted(offered), recipes)
    for name, on_offer, path in _names_written(read.giving):
        if name not in recipes:
            what, known = f'"{name}" is not a recipe of the book.', of_book
        elif on_offer and name not in offered:
            what, known = f'"{name}" is not among the makes.', of_offered
        else:
            continue
        if path[-1] == "likes" and (food := read_avoided(name)) and not food.ask:
            what, mend = f'Nothing under "makes" is known to hold "{name}".', _LIKES
        else:
            if (name, known is of_book) not in meant:
                meant[name, known is of_book] = (
                    _meant(name, known) if len(meant) < _MOST_MEANT else ""
                )
            mend = meant[name, known is of_book]
        yield read.problem(path, what, mend)
    seen: set[tuple[str, str]] = set()
    for n, make in enumerate(read.giving.makes):
        if (make.recipe, make.container) in seen:
            yield read.problem(("makes", n), f'"{make.recipe}" is offered twice.', "Keep one.")
        seen.add((make.recipe, make.container))


def _by_name(known: Iterable[str], recipes: Mapping[str, Recipe]) -> dict[str, str]:
    """Return recipes by their titles and their files' names, as names are compared."""
    names: dict[str, str] = {}
    for slug in known:
        titles = (slug, recipes[slug].title) if slug in recipes else (slug,)
        names |= {plain_name(title): slug for title in titles}
    return names


def _meant(name: str, names: Mapping[str, str]) -> str:
    """Say which recipe was probably meant, by its title or its file's name: "plum jamm"."""
    near = nearest(plain_name(name), names, 0.75)
    return f'Did you mean "{names[near]}"?' if near else did_you_mean(name, set(names.values()))


def _households(read: ReadList, recipes: Mapping[str, Recipe]) -> Iterator[Problem]:
    names: set[str] = set()
    for n, household in enumerate(read.giving.households):
        if plain_name(household.name) in names:
            what = f'"{household.name}" is there twice.'
            yield read.problem(("households", n, "name"), what, "Give one another name.")
        names.add(plain_name(household.name))
        if wrong := what_a_name_tells(household.name):
            yield read.problem(("households", n, "name"), wrong.what, wrong.mend)
        if (countries := _country_named(household.to)) and not household.country:
            what = f'"to: {household.to}" is the name on the card, and no country.'
            mend = f'Write "country: {countries}" for a parcel; leave "to" out, or say who.'
            yield read.problem(("households", n, "to"), what, mend)
        if household.adults == 0 and not household.children:
            what = f"{household.name}: nobody lives there."
            yield read.problem(("households", n, "adults"), what, "Say who.")
        yield from _avoided(read, n)
        for slug in household.must_have:
            if slug in recipes and (
                reasons := why_refused(household, facts_of(recipes[slug]), read.giving.giving_day)
            ):
                what = f"{household.name} must have {slug}, but it {reasons[0].one}."
                mend = "Take it out of one or the other."
                yield read.problem(("households", n, "must have"), what, mend)


def _country_named(to: str) -> str:
    """Return the name on a card where it is a country's: "to: France"."""
    try:
        return to if to and read_countries(to) else ""
    except Unreadable:
        return ""


def _avoided(read: ReadList, n: int) -> Iterator[Problem]:
    household = read.giving.households[n]
    for asked in (*asked_about_all(household.avoid), *who_else_is_named(household)):
        yield read.problem(("households", n, "avoid"), asked.what, asked.mend)
    for word in household.traces_are_fine:
        if word not in household.avoid:
            what = f'"{word}" is not among what {household.name} avoids.'
            mend = did_you_mean(word, household.avoid or ["gluten"])
            yield read.problem(("households", n, "traces are fine"), what, mend)


def _containers_written(giving: GivingList) -> Iterator[tuple[str, tuple[str | int, ...]]]:
    for n, make in enumerate(giving.makes):
        yield make.container, ("makes", n, "container")
    for n, made in enumerate(giving.stock.made):
        yield made.container, ("stock", "made", n)
    for words in giving.stock.containers:
        yield words, ("stock", "containers")
    for kind, basket in giving.baskets.items():
        for words in basket.containers:
            yield words, ("baskets", kind, "containers")


def _containers(read: ReadList) -> Iterator[Problem]:
    """Try every container's words, since a misread size would count the wrong jar."""
    for words, path in _containers_written(read.giving):
        if not words:
            continue
        try:
            container_words(words)
        except Unreadable as wrong:
            yield read.problem(path, wrong.what, wrong.mend)


def _baskets(read: ReadList) -> Iterator[Problem]:
    kinds = read.giving.baskets
    for kind, basket in kinds.items():
        if not any(basket.room(sort) for sort in SORTS):
            what = f'The basket "{kind}" holds nothing.'
            yield read.problem(("baskets", kind), what, 'Say "eat: 2".')
    for n, household in enumerate(read.giving.households):
        for kind in household.basket:
            if kind not in kinds:
                what = f'"{kind}" is not a kind of basket.'
                yield read.problem(("households", n, "basket"), what, did_you_mean(kind, kinds))


def _batches(read: ReadList, recipes: Mapping[str, Recipe]) -> Iterator[Problem]:
    for n, batch in enumerate(read.giving.batches):
        recipe = recipes.get(batch.recipe)
        if recipe is None or batch.number is None:
            continue
        filled = {batch.container: batch.number}
        try:
            more = more_than_it_gives(read.giving, recipe, filled, batch.batches)
        except Unreadable as wrong:
            yield read.problem(("batches", n, "container"), wrong.what, wrong.mend)
            continue
        if more:
            mend = 'Write how many there were, or how often it was made: "batches: 2".'
            yield read.problem(("batches", n, "number"), more, mend)
