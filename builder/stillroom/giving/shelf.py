"""What is made already: presents on the shelf and batches on their way, by the day they were made.

From "stock: made" and the batch log. A batch of the log whose presents also stand under stock
with the same day is counted once. Whatever would be too young or too old on giving day is set
apart and told.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import plan_from_batch
from stillroom.core.words.day_words import say_day
from stillroom.giving.holding import days_left
from stillroom.giving.model import GivingList, LoggedBatch, Make, container_words


@dataclass(frozen=True)
class Shelved:
    """Presents of one making: which offer, how many, when started and filled, until when good."""

    key: str
    recipe: str
    number: int
    made_on: date
    keep_until: date | None


@dataclass(frozen=True)
class Shelf:
    """What can be given from the shelf, oldest first, and what cannot, in words."""

    things: tuple[Shelved, ...] = ()
    notes: tuple[str, ...] = ()

    def count(self, key: str) -> int:
        """Return how many of an offer are on the shelf."""
        return sum(thing.number for thing in self.things if thing.key == key)


def read_shelf(
    giving: GivingList,
    makes: Mapping[str, Make],
    recipes: Mapping[str, Recipe],
    shares: Mapping[str, Fraction],
) -> Shelf:
    """Return the shelf of a list."""
    things: list[Shelved] = []
    notes: list[str] = []
    stocked = {(made.recipe, made.made_on) for made in giving.stock.made}
    for made in giving.stock.made:
        key = _offered(makes, made.recipe, made.container)
        recipe = recipes[made.recipe]
        if key is None:
            notes.append(f"{made.number} of {recipe.title} on the shelf: not among the makes.")
            continue
        until = _until(recipe, made.made_on)
        thing = Shelved(key, made.recipe, made.number, made.made_on, until)
        _put(thing, recipe, giving, things, notes)
    for batch in giving.batches:
        if (batch.recipe, batch.made_on) in stocked:
            continue
        key = _offered(makes, batch.recipe, batch.container)
        recipe = recipes[batch.recipe]
        if key is not None and batch.made_on is None and ferments_untimed(recipe):
            notes.append(
                f"{recipe.title} begun {say_day(batch.started)}: when it is ready is not known. "
                "Note the day on which it is filled, and it counts."
            )
        elif key is not None:
            _put(_logged(batch, key, recipe, giving, shares[key]), recipe, giving, things, notes)
    things.sort(key=lambda thing: (thing.made_on, thing.key))
    return Shelf(tuple(things), tuple(notes))


def _until(recipe: Recipe, made_on: date) -> date | None:
    keep = recipe.lasts
    return keep.after(made_on, longest=False) if keep else None


def _offered(makes: Mapping[str, Make], recipe: str, container: str) -> str | None:
    """Return the offer these belong to: the same container, or the recipe's only offer."""
    own = {key: make for key, make in makes.items() if make.recipe == recipe}
    for key, make in own.items():
        if not (container and make.container):
            return key if len(own) == 1 else None
        if container_words(container) == container_words(make.container):
            return key
    return None


def _logged(
    batch: LoggedBatch, key: str, recipe: Recipe, giving: GivingList, share: Fraction
) -> Shelved:
    expected = int(batch.batches / share)
    number = (batch.number if batch.number is not None else expected) - batch.given
    dated = plan_from_batch(recipe, batch.started, giving.giving_day, batch.made_on)
    return Shelved(
        key=key,
        recipe=batch.recipe,
        number=max(0, number),
        made_on=batch.made_on or dated.made,
        keep_until=dated.keep_until,
    )


def _put(
    thing: Shelved, recipe: Recipe, giving: GivingList, things: list[Shelved], notes: list[str]
) -> None:
    """Shelve what is ready and keeps long enough for anybody; tell of the rest.

    Whose basket it is good for is seen basket by basket: what is too old to be posted may be given
    by hand.
    """
    last = min(
        (
            (household.opens or giving.giving_day) + timedelta(days=days_left(household))
            for household in giving.households
        ),
        default=giving.giving_day,
    )
    if thing.number == 0:
        return
    if thing.keep_until is not None and thing.keep_until < last:
        words = f"keeps only to {say_day(thing.keep_until)}: too old to give"
    elif thing.made_on > giving.giving_day:
        words = f"is ready only on {say_day(thing.made_on)}: too late"
    else:
        things.append(thing)
        return
    notes.append(f"{thing.number} of {recipe.title} made {say_day(thing.made_on)} {words}.")
