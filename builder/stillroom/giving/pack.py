"""From a giving list to the pack: worked out, looked over, and put together as files.

Nothing is written here but by swap_in, whole. A plan in which a second check finds a breach is
never handed out.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from importlib.resources import files
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from stillroom.core.amounts.quantities import decimals_of
from stillroom.core.book import Book, BookSettings
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.day_words import say_day
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.giving.against_book import check_list
from stillroom.giving.batches import make_batches
from stillroom.giving.calendar_file import write_calendar
from stillroom.giving.explaining import explain_missed, explain_shortages, say_shortages
from stillroom.giving.log import ReadLog
from stillroom.giving.mip import Watch
from stillroom.giving.money.costs import CostSheet, reckon_costs
from stillroom.giving.money.shopping import list_shopping
from stillroom.giving.names import with_names_of
from stillroom.giving.offering import Offering, make_offering
from stillroom.giving.pack_pages import pack_data
from stillroom.giving.papers import print_papers
from stillroom.giving.plan_file import PLAN_FILE, KeptBatch, KeptPlan, days_of, write_plan
from stillroom.giving.plan_model import Plan
from stillroom.giving.planning import plan_gifts
from stillroom.giving.reading import ReadList
from stillroom.giving.season import read_season
from stillroom.giving.second_look import find_breaches
from stillroom.giving.standing import Standing, numbered, stand
from stillroom.giving.worked_out import Pack
from stillroom.looks import PAPER_FONTS
from stillroom.looks.set_words import tie_measures

_PAGES = {
    "index.html": "The pack",
    "week.html": "This week",
    "plan.html": "Who gets what",
    "batches.html": "The batches",
    "year.html": "The year",
    "shopping.html": "Shopping",
    "filling.html": "The filling day",
    "baskets.html": "The baskets",
    "parcels.html": "Parcels",
    "cards.html": "Cards",
    "thanks.html": "Thanks",
    "costs.html": "Costs",
}
_SORTS_OF_FILES = ("cards", "tags", "baskets")
_LITTLE_S = 8.0
"""So long is looked for why somebody goes without, though the search took all its time."""
_FONTS = (
    "EBGaramond-Regular.ttf",
    "EBGaramond-Italic.ttf",
    "EBGaramond-SemiBold.ttf",
    "AlegreyaSans-Regular.ttf",
    "AlegreyaSans-Bold.ttf",
    "OFL-EBGaramond.txt",
    "OFL-AlegreyaSans.txt",
)


@dataclass(frozen=True)
class Effort:
    """How long to look for a better plan (seconds), how near is near enough, who watches."""

    seconds: float = 20
    gap: float = 0
    watch: Watch | None = None


def work_out(
    read: ReadList,
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    today: date,
    effort: Effort | None = None,
    kept: KeptPlan | None = None,
    log: ReadLog | None = None,
) -> Pack:
    """Return the pack of a list; raises ProblemsFound when list and book do not fit.

    `kept` is the earlier pack's plan, `log` what happened since, as the file has it.
    """
    effort = effort or Effort()
    standing = _as_it_stands(read, recipes, log or ReadLog())
    before = kept.gifts if kept else None
    starts = days_of(kept) if kept else None
    offering = make_offering(standing.read, recipes, today, before, settings, standing.gone, starts)
    try:
        plan = plan_gifts(offering.problem, effort.seconds, effort.gap, effort.watch)
    except Unreadable as missing:
        raise ProblemsFound([Problem(read.file, 1, missing.what, missing.mend)]) from None
    if breaches := find_breaches(offering, plan):
        what = f"The second check of the plan found: {' '.join(breaches)}"
        raise ProblemsFound(
            [Problem(read.file, 1, what, "Please show this list to those who make Stillroom.")]
        )
    patience_s = _time_to_explain(effort, plan)
    with decimals_of(settings.language):
        try:
            complaints = _explain(offering, plan, patience_s)
        except KeyboardInterrupt:  # the plan is there: only why somebody goes without is cut short
            complaints = _explain(offering, plan, 0)
        making = make_batches(offering, plan)
    rows = list_shopping(offering, making)
    costs = reckon_costs(offering, making, rows)
    complaints += tuple(_budgets_not_held(offering, costs)) + tuple(_disagreements(offering))
    complaints = (*_day_gone(offering, plan), *complaints)
    return Pack(offering, plan, making, rows, costs, settings, complaints, standing, kept)


def _day_gone(offering: Offering, plan: Plan) -> Iterator[str]:
    """Say that the giving day is past while somebody is still to be given something."""
    day = offering.giving.giving_day
    if day < offering.today and any(
        basket.number in plan.gifts for basket in offering.problem.baskets
    ):
        yield (
            f"The giving day, {say_day(day)}, is past: nothing can be begun for it any more. Write "
            "the day on which the baskets go out this year."
        )


def _explain(offering: Offering, plan: Plan, patience_s: float) -> tuple[str, ...]:
    return (
        *say_shortages(
            explain_shortages(offering.problem, plan, patience_s),
            offering.problem,
            plan.proof == "proven best",
        ),
        *explain_missed(offering.problem, plan, patience_s),
    )


def _time_to_explain(effort: Effort, plan: Plan) -> float:
    """Return for how many seconds may be sought why somebody goes without.

    What the plan left of its time, and a little more; little where somebody ended the search.
    """
    ended_by_hand = plan.proof == "stopped by time" and plan.seconds < effort.seconds - 1
    little = min(effort.seconds, _LITTLE_S)
    return little if ended_by_hand else max(little, effort.seconds - plan.seconds)


def _as_it_stands(read: ReadList, recipes: tuple[Recipe, ...], log: ReadLog) -> Standing:
    """Return the list after all that was noted; raises ProblemsFound."""
    if not log.lines:
        return Standing(read, read_season(log, read.giving))
    book = {recipe.slug: recipe for recipe in recipes}
    named = with_names_of(read, book)
    check_list(named, book)
    season = read_season(log, named.giving)
    return stand(named, book, log, season)


def _disagreements(offering: Offering) -> Iterator[str]:
    """Say of which presents the two checks disagree: they are withheld, and somebody must look."""
    told: dict[str, None] = {}
    titles = {offer.key: offer.title for offer in offering.problem.offers}
    for (number, key), reasons in offering.problem.refused.items():
        name = offering.households[number].name
        told |= {
            f"{titles[key]} is kept from {name}: it {reason.one}. Look at its ingredients.": None
            for reason in reasons
            if reason.disagrees
        }
    yield from told


def _budgets_not_held(offering: Offering, costs: CostSheet) -> Iterator[str]:
    """Say whose budget could not be held to, because something in the basket has no price."""
    for basket in offering.problem.baskets:
        if basket.budget is None or basket.number not in costs.open_baskets:
            continue
        why = "something in it has no price. Add it under prices."
        if basket.number in costs.postage.open:
            why = (
                "its postage is not. Write what its things weigh, and what so much costs to post "
                "under posting."
            )
        yield (f"Whether the basket of {basket.label} keeps within its budget is not known: {why}")


def pack_files(pack: Pack, book: Book | None = None) -> dict[str, bytes]:
    """Return every file of the pack by its path; decimals are those of the book's language."""
    with decimals_of(pack.settings.language):
        return _files(pack, book)


def _files(pack: Pack, book: Book | None) -> dict[str, bytes]:
    data = pack_data(pack)
    papers, notes = print_papers(pack, data, book)
    found: dict[str, bytes] = {
        PACK_MARKER: b"A private pack. It is never published.\n",
        PLAN_FILE: write_plan(pack.offering.giving.giving_list, kept_plan(pack)),
        "calendar.ics": write_calendar(pack),
        "shopping.csv": shopping_csv(pack),
        "shopping.txt": shopping_text(data).encode(),
        "pack.css": (files("stillroom.giving") / "templates" / "pack.css").read_bytes(),
        **papers,
    }
    found |= {f"fonts/{name}": (PAPER_FONTS / name).read_bytes() for name in _FONTS}
    environment = Environment(
        loader=PackageLoader("stillroom.giving"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_set,
    )
    shown = {**data, "nav": list(_PAGES.items()), "papers": sorted(papers), "paper_notes": notes}
    shown["to_print"] = {what: _to_print(what, shown["papers"]) for what in _SORTS_OF_FILES}
    for name in _PAGES:
        found[name] = environment.get_template(name).render(shown, here=name).encode()
    return found


def _set(value: Any) -> Any:
    """Return what a page shows: no line ends between a figure and its unit."""
    return tie_measures(value) if isinstance(value, str) and "__html__" not in dir(value) else value


def _to_print(what: str, papers: list[str]) -> list[tuple[str, str]]:
    """Return the files of cards, tags or baskets and what each is called: by design and baskets.

    >>> _to_print("cards", ["cards-brown-card.pdf", "cards-plain.pdf", "tags-plain.pdf"])
    [('cards-brown-card.pdf', 'brown card'), ('cards-plain.pdf', 'plain')]
    >>> _to_print("baskets", ["baskets-101-to-160.pdf", "baskets-1-to-100.pdf"])
    [('baskets-1-to-100.pdf', '1 to 100'), ('baskets-101-to-160.pdf', '101 to 160')]
    """
    found = [name for name in papers if name == f"{what}.pdf" or name.startswith(f"{what}-")]
    return [
        (name, name.removeprefix(f"{what}-").removesuffix(".pdf").replace("-", " "))
        for name in sorted(found, key=_as_counted)
    ]


def _as_counted(name: str) -> list[tuple[int, str]]:
    """Return a name as it is put in order: what is counted in it by its number."""
    return [(int(part or 0), words) for words, part in re.findall(r"(\D*)(\d*)", name)]


def kept_plan(pack: Pack) -> KeptPlan:
    """Return the plan as the next pack will want to know it; what was given stands in it too."""
    gifts: dict[tuple[str, int], tuple[str, ...]] = {}
    for number, household, nth in numbered(pack.offering.giving):
        if gone := pack.season.has_gone(household, nth):
            gifts[household, nth] = gone.things
        else:
            gifts[household, nth] = tuple(pack.plan.gifts[number])
    batches = tuple(
        KeptBatch(one.recipe.slug, one.timeline.start, one.count) for one in pack.making.batches
    )
    paid = pack.money(pack.costs.paid, pack.costs.whole)
    return KeptPlan(gifts, pack.offering.today, batches, paid, len(pack.season.lines))


def shopping_csv(pack: Pack) -> bytes:
    """Return the shopping as a table (UTF-8, comma, CRLF as RFC 4180 has it)."""
    out = io.StringIO()
    writer = csv.writer(out)
    writer.writerow(["month", "section", "item", "need", "in the house", "buy", "price", "left"])
    for month in pack_data(pack)["shopping"]:
        for section in month["sections"]:
            for row in section["rows"]:
                cells = (
                    row["item"],
                    row["need"],
                    row["there"],
                    row["buy"],
                    row["price"],
                    row["left"],
                )
                writer.writerow([month["month"], section["name"], *map(_harmless, cells)])
    return ("\ufeff" + out.getvalue()).encode()


def _harmless(cell: str) -> str:
    """Keep a spreadsheet from taking a typed word for a formula."""
    return f"'{cell}" if cell[:1] in ("=", "+", "-", "@") else cell


def shopping_text(data: dict[str, Any]) -> str:
    """Return the shopping as plain text to send to oneself."""
    lines = [f"Shopping for {data['title']}", ""]
    for month in data["shopping"]:
        lines.append(month["month"].upper())
        for section in month["sections"]:
            lines.append(f"  {section['name']}")
            for row in section["rows"]:
                price = f"  {row['price']}" if row["price"] else ""
                lines.append(f"    [ ] {row['item']}: {row['buy']}{price}")
        lines.append("")
    lines.append(f"To pay in all: {data['costs']['paid']}")
    return "\n".join(lines) + "\n"
