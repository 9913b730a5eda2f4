"""The private calendar: every batch's work and the giving day, as one iCalendar file (RFC 5545)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import replace

from stillroom.core.recipe.kind_dates import ferments_untimed
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.calendar_entries import MORNING_HOUR, CalendarEntry, make_entries
from stillroom.core.when.calendar_files import make_calendar
from stillroom.giving.batches import Batch
from stillroom.giving.this_week import going_timeline
from stillroom.giving.worked_out import Pack


def write_calendar(pack: Pack) -> bytes:
    """Return the calendar of all batches, planned and on their way, and of the giving day.

    An entry is known by its recipe, the giving day and which making of that recipe it is, so that a
    calendar moves it, and makes no second one, when the plan changes elsewhere. What was begun
    counts among the makings: the batch that was planned first keeps its entries once it is begun.
    """
    entries = (replace(entry, uid=f"private-{entry.uid}") for entry in _entries(pack))
    name = pack.offering.giving.giving_list
    return make_calendar(name, entries, pack.offering.today, private=True)


def _entries(pack: Pack) -> Iterator[CalendarEntry]:
    giving = pack.offering.giving
    begun: Counter[str] = Counter()
    for going in pack.season.batches:
        if going.from_list:
            continue
        begun[going.recipe] += 1
        recipe = pack.offering.recipes[going.recipe]
        if going.is_open and not ferments_untimed(recipe):
            slug = f"{recipe.slug}.{giving.giving_day}"
            timeline, name = going_timeline(pack, going), f"batch {begun[going.recipe]}"
            yield from _of_a_batch(make_entries(slug, recipe.title, timeline, name), recipe)
    for batch in pack.making.batches:
        slug, title = f"{batch.recipe.slug}.{giving.giving_day}", _title(batch)
        ordinal = begun[batch.recipe.slug] + batch.ordinal
        entries = make_entries(slug, title, batch.timeline, f"batch {ordinal}")
        yield from _of_a_batch(entries, batch.recipe)
    count = len(pack.offering.problem.baskets)
    yield CalendarEntry(
        uid=f"giving.{giving.giving_day:%Y-%m-%d}@stillroom",
        title=f"Give the baskets: {count} of them",
        description=giving.giving_list,
        day=giving.giving_day,
        rule=None,
        reminders=(-15, MORNING_HOUR),
    )


def _of_a_batch(entries: Iterable[CalendarEntry], recipe: Recipe) -> Iterator[CalendarEntry]:
    """Yield the entries of one batch: the giving day is one for all, and no ornament is used up."""
    for entry in entries:
        kept = ".keep-" in entry.uid and recipe.kind.eaten_by == "nobody"
        if ".give-" not in entry.uid and not kept:
            yield entry


def _title(batch: Batch) -> str:
    return f"{batch.recipe.title} ({batch.name}, {batch.scaled.makes})"
