"""The pack on paper: what goes into the baskets in their designs, and everything else in one PDF.

Typst does the setting, through printing/. Without it the pack has its pages all the same, and
says so. Leaves out what the papers say (pack_pages.py).
"""

from __future__ import annotations

from typing import Any

from stillroom.core.book import Book
from stillroom.core.words.problems import Unreadable
from stillroom.giving.basket_designs import basket_designs
from stillroom.giving.designed_papers import ROOT, TEMPLATES, print_designed
from stillroom.giving.sheet_papers import filling_paper, week_paper
from stillroom.giving.worked_out import Pack
from stillroom.printing.apart import Apart, Job
from stillroom.printing.typesetting import PaperMissing

_PIECES = 8
"""A paper of lists takes as much memory as so many cards."""


def print_papers(
    pack: Pack, data: dict[str, Any], book: Book | None = None
) -> tuple[dict[str, bytes], tuple[str, ...]]:
    """Return the PDFs by file name, and what could not be printed and why.

    Without a book there are no drawings but those of the kinds.
    """
    notes: list[str] = []
    files: dict[str, bytes] = {}
    try:
        with Apart() as run:
            for name, made in print_designed(pack, data, book, basket_designs(pack, book), run):
                if isinstance(made, Unreadable):
                    notes.append(f"There is no {name}; what it would say is on the pages. {made}")
                else:
                    files[name] = made
            short = {"language": pack.settings.language.split("_")[0]}
            plain = {name: ("sheets.typ", sheets) for name, sheets in _tick_sheets(data).items()}
            plain["papers.pdf"] = ("papers.typ", paper_data(data))
            jobs = [
                Job("set", str(TEMPLATES / template), said | short, _PIECES, root=ROOT)
                for template, said in plain.values()
            ]
            files |= zip(plain, run(jobs), strict=True)
    except PaperMissing as missing:
        return {}, (str(missing),)
    except Unreadable as wrong:
        notes.append(str(wrong))
    return files, tuple(notes)


def _tick_sheets(data: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Return the sheets to tick off, by file; a pack without baskets left has none of theirs."""
    sheets = {"week.pdf": week_paper(data)}
    return sheets | ({"filling.pdf": filling_paper(data)} if data["baskets"] else {})


def _customs_parts(data: dict[str, Any]) -> list[dict[str, Any]]:
    """Return what customs asks of each parcel that goes abroad, as a table."""
    parts = []
    for one in data["parcels"]:
        if one["customs"]:
            rows = [[row["what"], row["weight"], row["value"]] for row in one["customs"]["rows"]]
            rows.append(["In all, a gift", one["customs"]["weight"], one["customs"]["value"]])
            table = _table(["What is in it", "Weight", "Value"], rows, "lrr", [6, 0, 0])
            heading = f"{one['numbers']}  {one['household']}, {one['country']}"
            parts.append(_part(heading, table))
    return parts


def _table(
    head: list[str], rows: list[list[str]], align: str, widths: list[int], turned: bool = False
) -> dict[str, Any]:
    return {"head": head, "rows": rows, "align": list(align), "widths": widths, "turned": turned}


def _part(
    heading: str, table: dict[str, Any] | None = None, lead: list[str] | None = None
) -> dict[str, Any]:
    empty = _table([], [], "", [])
    return {"heading": heading, "lead": lead or [], "table": table or empty}


def _section(
    heading: str, parts: list[dict[str, Any]], lead: list[str] | None = None, flipped: bool = False
) -> dict[str, Any]:
    return {"heading": heading, "lead": lead or [], "parts": parts, "flipped": flipped}


def paper_data(data: dict[str, Any]) -> dict[str, Any]:
    """Return the sections of the papers from what the pages say."""
    sections = [
        _section(data["title"], [_batches_part(data)], _opening(data)),
        _section("Who gets what", [_part("", _matrix_table(data))], _key(), flipped=True),
        _section("The year", [_part(month["month"], _days_table(month)) for month in data["year"]]),
        _section(
            "Shopping", [_part(month["month"], _shop_table(month)) for month in data["shopping"]]
        ),
        _section("Costs", _cost_parts(data)),
    ]
    if customs := _customs_parts(data):
        sections.append(_section("For customs", customs))
    foot = f"{data['title']} · {data['giving_day']} · private"
    return {"title": f"{data['title']}: the pack", "foot": foot, "sections": sections}


def _opening(data: dict[str, Any]) -> list[str]:
    baskets, costs = len(data["baskets"]), data["costs"]
    lead = [
        f"{baskets} baskets for {data['households']} households, going out on "
        f"{data['giving_day']}. To pay: {costs['paid']}."
    ]
    return lead + list(data["complaints"])


def _key() -> list[str]:
    return ["● given   × not for them   ○ had it lately"]


def _batches_part(data: dict[str, Any]) -> dict[str, Any]:
    rows = [
        [
            batch["name"].removeprefix("batch "),
            batch["title"],
            batch["start"],
            ", ".join(fill["words"] for fill in batch["fills"]),
            batch["minutes"],
            batch["cost"],
        ]
        for batch in data["batches"]
    ]
    head = ["", "Batch", "Begin", "To give", "Work", "Costs"]
    return _part("The batches", _table(head, rows, "rllllr", [0, 3, 3, 3, 0, 0]))


def _matrix_table(data: dict[str, Any]) -> dict[str, Any]:
    matrix = data["matrix"]
    marks = {"given": "●", "no": "×", "had": "○", "free": ""}
    rows = [
        [f"{row['number']} {row['household']}", *(marks[cell["mark"]] for cell in row["cells"])]
        for row in matrix["rows"]
    ]
    offers = [offer["title"] for offer in matrix["offers"]]
    rows.append(["In all", *(str(offer["count"] or "") for offer in matrix["offers"])])
    return _table(
        ["", *offers], rows, "l" + "c" * len(offers), [6] + [1] * len(offers), turned=True
    )


def _days_table(month: dict[str, Any]) -> dict[str, Any]:
    rows = [[row["day"], row["words"]] for row in month["rows"]]
    return _table(["Day", "What to do"], rows, "ll", [1, 8])


def _shop_table(month: dict[str, Any]) -> dict[str, Any]:
    rows = [
        ["☐", row["item"], section["name"], row["buy"], row["price"], row["left"]]
        for section in month["sections"]
        for row in section["rows"]
    ]
    head = ["", "What", "Shelf", "Buy", "Price", "Left"]
    return _table(head, rows, "llllrl", [0, 3, 3, 3, 1, 2])


def _cost_parts(data: dict[str, Any]) -> list[dict[str, Any]]:
    costs = data["costs"]
    whole = [
        ["In the presents given", costs["given"]],
        ["In presents to spare", costs["spares"]],
        ["In packs left over", costs["left_over"]],
        ["Empty baskets, paper and string", costs["empty"]],
        *([["Postage", costs["postage"]]] if costs["postage"] else []),
        ["To pay", costs["paid"]],
        [f"Like things in a shop, {costs['shop_known']} of {costs['presents']}", costs["shop"]],
    ]
    households = [[row["name"], row["cost"]] for row in costs["households"]]
    return [
        _part("The whole", _table(["", ""], whole, "lr", [4, 1])),
        _part("By household", _table(["Household", "Costs"], households, "lr", [4, 1])),
    ]
