"""The giving list as it stands today: the list, and all that the log says happened since.

The shelf has counted itself down, batches on their way are on it, what was bought is in the house
and what was begun has used it, baskets that went are out of the plan. Pure: a list in, a list out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Any

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.day_words import say_day
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.facts import facts_of
from stillroom.giving.filled_into import container_of, more_than_it_gives, times_filled
from stillroom.giving.larder_stock import LarderStock, is_container
from stillroom.giving.log import LogLine, ReadLog, read_bought
from stillroom.giving.log_names import IN
from stillroom.giving.model import (
    GivingList,
    Household,
    LoggedBatch,
    MadeBefore,
    Make,
    container_words,
)
from stillroom.giving.reading import ReadList
from stillroom.giving.rules import why_refused
from stillroom.giving.season import Fill, Going, Season


@dataclass(frozen=True)
class Standing:
    """A list as it stands, the numbers of the baskets that have gone, and what to look at."""

    read: ReadList
    season: Season
    gone: frozenset[int] = frozenset()
    notes: tuple[str, ...] = ()


def stand(
    read: ReadList,
    recipes: Mapping[str, Recipe],
    log: ReadLog,
    season: Season,
    assumed: tuple[LogLine, ...] = (),
) -> Standing:
    """Return a list with whole names as it stands after its season; raises ProblemsFound.

    `assumed` are baskets that went as planned, though nobody noted it: they leave the shelf too.
    """
    giving = read.giving
    check_pins(log, season, giving, recipes)
    shelf = _Shelf(giving, season)
    for line in season.taken:
        shelf.take(line)
    notes = tuple(shelf.notes)
    for line in assumed:
        shelf.take(line, assumed=True)
    larder = _larder(giving, recipes, season)
    gone = frozenset(n for n, household, nth in numbered(giving) if season.has_gone(household, nth))
    stock = larder.as_stock(giving.stock).model_copy(update={"made": shelf.made_before()})
    changed = {
        "stock": stock,
        "batches": shelf.batches(),
        "makes": tuple(_still_to_make(make, season) for make in giving.makes),
        "households": tuple(_household(one, season) for one in giving.households),
    }
    now = read.model_copy(update={"giving": giving.model_copy(update=changed)})
    return Standing(now, season, gone, (*notes, *larder.notes))


def numbered(giving: GivingList) -> Iterator[tuple[int, str, int]]:
    """Return every basket's number, whose it is, and which of theirs, counted from 1."""
    number = 0
    for household in giving.households:
        for nth in range(1, sum(household.basket.values()) + 1):
            number += 1
            yield number, household.name, nth


def check_pins(
    log: ReadLog, season: Season, giving: GivingList, recipes: Mapping[str, Recipe]
) -> None:
    """Raise ProblemsFound for a present pinned that is not on offer, or that could harm them."""
    problems = []
    offered = {make.recipe for make in giving.makes}
    people = {household.name: household for household in giving.households}
    for line in season.of_kind("pinned"):
        for slug in line.of:
            if (line.name, slug) not in season.pinned or line.name not in people:
                continue
            where = (log.file, line.line)
            if slug not in offered:
                what = f"{slug} is pinned for {line.name} and is not among the makes."
                problems.append(Problem(*where, what, "Add it to makes, or take the line out."))
            elif why := why_refused(people[line.name], facts_of(recipes[slug]), giving.giving_day):
                title = recipes[slug].title
                what = f"{title} is pinned for {line.name}, but it {why[0].one}."
                problems.append(Problem(*where, what, "Take the line out."))
    problems += _bottled_too_many(log, season, giving, recipes)
    if problems:
        raise ProblemsFound(problems)


def _bottled_too_many(
    log: ReadLog, season: Season, giving: GivingList, recipes: Mapping[str, Recipe]
) -> Iterator[Problem]:
    """Yield each batch out of which more is said to have come than its recipe gives."""
    for batch in season.batches:
        filled = _filled(batch)
        unsaid = batch.from_list or not batch.begun_noted
        if unsaid or batch.recipe not in recipes or not filled:
            continue
        more = more_than_it_gives(giving, recipes[batch.recipe], filled, batch.batches)
        if not more:
            continue
        last = batch.fills[-1].made_on
        lines = [
            line.line
            for line in season.of_kind("bottled")
            if line.name == batch.recipe and line.day == last
        ]
        mend = 'Write how many there were, or at its beginning how often it was made: "batches: 2".'
        yield Problem(log.file, lines[-1] if lines else 1, more, mend)


class _Shelf:
    """What was filled and what is left of it, as lines take from it, the oldest first."""

    def __init__(self, giving: GivingList, season: Season) -> None:
        self.giving, self.season = giving, season
        self.stocked = [
            (made, Fill(made.number, made.container, made.made_on)) for made in giving.stock.made
        ]
        counted = {(made.recipe, made.made_on) for made in giving.stock.made}
        self.counted = counted
        self.rows: list[tuple[str, Fill]] = [(made.recipe, fill) for made, fill in self.stocked]
        self.rows += [
            (batch.recipe, fill)
            for batch in season.batches
            for fill in batch.fills
            if batch.failed is None and (batch.recipe, fill.made_on) not in counted
        ]
        self.rows.sort(key=lambda row: row[1].made_on)
        self.notes: list[str] = []

    def take(self, line: LogLine, assumed: bool = False) -> None:
        """Take what a line says has left the shelf; if assumed, nothing counted by hand."""
        if line.kind in ("given", "posted"):
            for thing in line.things:
                recipe, _, container = thing.partition(IN)
                self._take(recipe, container, 1, line.day, assumed)
            return
        number = line.number
        if number is None:  # spoiled without a number: all of it that was there
            own = self._fitting(line.name, line.container, line.day)
            number = sum(fill.left or 0 for fill in own)
        self._take(line.name, line.container, number, line.day)

    def _fitting(self, recipe: str, container: str, day: date) -> list[Fill]:
        own = [fill for name, fill in self.rows if name == recipe and fill.made_on <= day]
        same = [f for f in own if container and _in(f.container) == _in(container)]
        return same or [fill for fill in own if not (container and fill.container)]

    def _take(
        self, recipe: str, container: str, number: int, day: date, assumed: bool = False
    ) -> None:
        for fill in self._fitting(recipe, container, day):
            if assumed and fill.by_hand:
                return
            taken = number if fill.left is None else min(number, fill.left)
            fill.gone += taken
            number -= taken
        if number:
            words = f"{number} more of {recipe} left the shelf by {say_day(day)} than were on it"
            self.notes.append(f"{words}: note when they were filled, or count the shelf.")

    def made_before(self) -> tuple[MadeBefore, ...]:
        """Return what is left of what the list has on the shelf."""
        rows = [(made, fill.left or 0) for made, fill in self.stocked]
        return tuple(made.model_copy(update={"number": left}) for made, left in rows if left)

    def batches(self) -> tuple[LoggedBatch, ...]:
        """Return every batch going or filled as the list writes them; one that failed is none."""
        rows = (row for batch in self.season.batches for row in _as_logged(batch))
        return tuple(self._counted_once(row) for row in rows)

    def _counted_once(self, row: LoggedBatch) -> LoggedBatch:
        """Return a batch that the stock counts with nothing left, also once the stock has none."""
        if (row.recipe, row.made_on) not in self.counted or row.number is None:
            return row
        return row.model_copy(update={"given": row.number})


def _in(container: str) -> str:
    return container_words(container) if container else ""


def _as_logged(batch: Going) -> Iterator[LoggedBatch]:
    if batch.failed is not None:
        return
    said: dict[str, Any] = {"recipe": batch.recipe, "started": batch.started}
    said |= {"batches": batch.batches, "tended": tuple(batch.tended)}
    said["notes"] = batch.why
    if batch.is_open:
        yield LoggedBatch(**said, container=batch.container)
    for fill in batch.fills:
        number = fill.number
        given = fill.gone if number is None else min(fill.gone, number)
        yield LoggedBatch(
            **said, made_on=fill.made_on, number=number, container=fill.container, given=given
        )


def _larder(giving: GivingList, recipes: Mapping[str, Recipe], season: Season) -> LarderStock:
    stock = LarderStock.of_list(giving)
    done: list[tuple[date, int, Any]] = [(line.day, 0, line) for line in season.bought]
    for batch in season.batches:
        if not batch.from_list:
            done.append((batch.started, 1, batch))
            done += [(fill.made_on, 2, (batch, fill)) for fill in batch.fills]
    for _, step, what in sorted(done, key=lambda row: row[:2]):
        if step == 0:
            _put_away(what, stock, giving, recipes)
        elif step == 1:
            stock.use(recipes[what.recipe], _times(giving, recipes[what.recipe], what))
        else:
            batch, fill = what
            container = _container(giving, batch.recipe, fill.container, recipes)
            stock.fill(recipes[batch.recipe], container, fill.number or 0)
    return stock


def _put_away(
    line: LogLine, stock: LarderStock, giving: GivingList, recipes: Mapping[str, Recipe]
) -> None:
    amount = read_bought(line.amount, line.units)
    if not amount.unit and is_container(line.name, giving, recipes):
        stock.add_containers(container_words(line.name), int(amount.low))
    else:
        stock.add(amount, line.name)


def _container(giving: GivingList, slug: str, said: str, recipes: Mapping[str, Recipe]) -> str:
    """Return what a batch was filled into: as noted, else the only container it is offered in."""
    if said:
        return container_words(said)
    own = [make for make in giving.makes if make.recipe == slug]
    return container_of(own[0], recipes[slug]) if len(own) == 1 else ""


def _still_to_make(make: Make, season: Season) -> Make:
    """Return a make with as many batches as may still be begun; one that failed is made good."""
    begun = sum(
        batch.batches
        for batch in season.batches
        if batch.recipe == make.recipe and batch.failed is None and not batch.from_list
    )
    return make.model_copy(update={"batches": max(0, make.batches - begun)}) if begun else make


def _household(household: Household, season: Season) -> Household:
    """Return a household with what is pinned and struck out; what is gone asks for nothing."""
    name = household.name
    pinned = [slug for who, slug in sorted(season.pinned) if who == name]
    struck = [slug for who, slug in sorted(season.struck) if who == name]
    must = [slug for slug in (*household.must_have, *pinned) if slug not in struck]
    gone = [gone for gone in season.gone if gone.household == name]
    had = {thing.partition(IN)[0] for one in gone for thing in one.things}
    all_gone = len(gone) == sum(household.basket.values())
    must = [] if all_gone else [slug for slug in must if slug not in had]
    return household.model_copy(
        update={
            "must_have": tuple(dict.fromkeys(must)),
            "never": tuple(dict.fromkeys((*household.never, *struck))),
        }
    )


def _times(giving: GivingList, recipe: Recipe, batch: Going) -> Fraction:
    """Return how often a recipe was made: by what was filled where nobody noted its beginning."""
    filled = _filled(batch)
    if batch.begun_noted or not filled:
        return Fraction(batch.batches)
    return times_filled(giving, recipe, filled) or Fraction(batch.batches)


def _filled(batch: Going) -> dict[str, int]:
    """Return how many of each container were counted of a batch."""
    filled: dict[str, int] = {}
    for fill in batch.fills:
        if fill.number:
            filled[fill.container] = filled.get(fill.container, 0) + fill.number
    return filled
