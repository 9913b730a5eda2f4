"""From a giving list to the pack: worked out, looked over, and put together as files.

Nothing is written here but by swap_in, whole. A plan in which a second check finds a breach is
never handed out.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from importlib.resources import files
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from stillroom.core.book import BookSettings
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.giving.batches import make_batches
from stillroom.giving.calendar_file import write_calendar
from stillroom.giving.explaining import explain_missed, explain_shortages
from stillroom.giving.money.costs import CostSheet, reckon_costs
from stillroom.giving.money.shopping import list_shopping
from stillroom.giving.offering import Offering, make_offering
from stillroom.giving.pack_pages import Pack, pack_data
from stillroom.giving.papers import print_papers
from stillroom.giving.planning import plan_gifts
from stillroom.giving.reading import ReadList
from stillroom.giving.second_look import find_breaches
from stillroom.looks import PAPER_FONTS

PLAN_FILE = "plan.json"
_PAGES = {
    "index.html": "The pack",
    "plan.html": "Who gets what",
    "batches.html": "The batches",
    "year.html": "The year",
    "shopping.html": "Shopping",
    "cards.html": "Cards",
    "slips.html": "Packing slips",
    "costs.html": "Costs",
}
_FONTS = (
    "EBGaramond-Regular.ttf",
    "EBGaramond-Italic.ttf",
    "EBGaramond-SemiBold.ttf",
    "AlegreyaSans-Regular.ttf",
    "AlegreyaSans-Bold.ttf",
    "OFL-EBGaramond.txt",
    "OFL-AlegreyaSans.txt",
)
Before = Mapping[tuple[str, int], tuple[str, ...]]


@dataclass(frozen=True)
class Effort:
    """How long to look for a better plan (seconds), and how near the best is near enough."""

    seconds: float = 20
    gap: float = 0


def work_out(
    read: ReadList,
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    today: date,
    effort: Effort | None = None,
    before: Before | None = None,
) -> Pack:
    """Return the pack of a list; raises ProblemsFound when list and book do not fit."""
    effort = effort or Effort()
    offering = make_offering(read, recipes, today, before, settings)
    try:
        plan = plan_gifts(offering.problem, effort.seconds, effort.gap)
    except Unreadable as missing:
        raise ProblemsFound([Problem(read.file, 1, missing.what, missing.mend)]) from None
    if breaches := find_breaches(offering, plan):
        what = f"The second check of the plan found: {' '.join(breaches)}"
        raise ProblemsFound([Problem(read.file, 1, what, "Please report this as a fault.")])
    complaints = (
        *(str(short) for short in explain_shortages(offering.problem, plan, effort.seconds)),
        *explain_missed(offering.problem, plan),
    )
    making = make_batches(offering, plan)
    rows = list_shopping(offering, making)
    costs = reckon_costs(offering, making, rows)
    complaints += tuple(_budgets_not_held(offering, costs)) + tuple(_disagreements(offering))
    return Pack(offering, plan, making, rows, costs, settings, complaints)


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
        if basket.budget is not None and basket.number in costs.open_baskets:
            yield (
                f"Whether the basket of {basket.label} keeps within its budget is not known: "
                "something in it has no price. Add it under prices."
            )


def pack_files(pack: Pack) -> dict[str, bytes]:
    """Return every file of the pack by its path."""
    data = pack_data(pack)
    papers, notes = print_papers(pack, data)
    found: dict[str, bytes] = {
        PACK_MARKER: b"A private pack. It is never published.\n",
        PLAN_FILE: _plan_json(pack),
        "calendar.ics": write_calendar(pack.offering, pack.making),
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
    )
    shown = {**data, "nav": list(_PAGES.items()), "papers": sorted(papers), "paper_notes": notes}
    for name in _PAGES:
        found[name] = environment.get_template(name).render(shown, here=name).encode()
    return found


def _plan_json(pack: Pack) -> bytes:
    """Keep who gets what, so that planning again can change little."""
    gifts: list[dict[str, Any]] = []
    seen: dict[str, int] = {}
    for basket in pack.offering.problem.baskets:
        seen[basket.household] = seen.get(basket.household, 0) + 1
        gifts.append(
            {
                "household": basket.household,
                "basket": seen[basket.household],
                "gifts": list(pack.plan.gifts[basket.number]),
            }
        )
    document = {"giving list": pack.offering.giving.giving_list, "baskets": gifts}
    return (json.dumps(document, indent=1, ensure_ascii=False) + "\n").encode()


def read_before(folder: Path, giving_list: str) -> Before | None:
    """Return the plan of an earlier pack of the same list, or None without one."""
    try:
        document = json.loads((folder / PLAN_FILE).read_text(encoding="utf-8"))
        if document["giving list"] != giving_list:
            return None
        return {
            (row["household"], int(row["basket"])): tuple(row["gifts"])
            for row in document["baskets"]
        }
    except FileNotFoundError:
        return None
    except (ValueError, KeyError, TypeError):
        mend = 'Delete it, or plan with "--afresh".'
        raise ProblemsFound(
            [Problem(str(folder / PLAN_FILE), 1, "The earlier plan cannot be read.", mend)]
        ) from None


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
