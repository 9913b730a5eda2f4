"""The pack on paper: cards, container tags and basket tags, and everything else in one PDF.

Typst does the setting, through printing/. Without it the pack has its pages all the same, and
says so. Leaves out what the papers say (pack_pages.py).
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from typing import Any

from stillroom.core.book import Book
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.words.problems import Unreadable
from stillroom.giving.sheet_papers import baskets_paper, filling_paper, week_paper
from stillroom.giving.worked_out import Pack, card_of
from stillroom.looks.card_designs import USUAL, Design, choose_design
from stillroom.looks.card_pictures import card_picture, family_mark
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.typesetting import PaperMissing, typeset

TEMPLATES = Path(__file__).parent / "templates" / "paper"
CARD_SIZES = ("90x65", "a7", "folded-a6")  # the first that holds every card


def print_papers(
    pack: Pack, data: dict[str, Any], book: Book | None = None
) -> tuple[dict[str, bytes], tuple[str, ...]]:
    """Return the PDFs by file name, and what could not be printed and why.

    Cards and tags have the design of the list, else of the book; without a book there are no
    drawings but those of the kinds.
    """
    language = pack.settings.language
    title = pack.offering.giving.giving_list
    notes: list[str] = []
    design = _design_of(pack, book, notes)
    jobs = [
        CardJob(
            card_of(pack, present),
            present.recipe,
            picture=card_picture(present.recipe, book, design),
        )
        for present in pack.making.presents
    ]
    words, svg = family_mark(book, design) if book else ("", "")
    options = SheetOptions(
        language=language, title=f"Cards for {title}", design=design, mark_words=words, mark_svg=svg
    )
    files: dict[str, bytes] = {}
    try:
        if jobs:
            _print_cards(jobs, options, files, notes)
            _print_tags(jobs, replace(options, title=f"Tags for {title}"), files, notes)
        short = language.split("_")[0]
        if data["baskets"]:
            tags = _basket_tags(pack, data) | {"language": short}
            files["basket-tags.pdf"] = typeset("basket_tags.typ", tags, root=TEMPLATES).pdf
        if data["parcels"]:
            labels = _labels(data) | {"language": short}
            files["labels.pdf"] = typeset("labels.typ", labels, root=TEMPLATES).pdf
        for name, sheets in _tick_sheets(data).items():
            files[name] = typeset("sheets.typ", sheets | {"language": short}, root=TEMPLATES).pdf
        papers = paper_data(data) | {"language": short}
        files["papers.pdf"] = typeset("papers.typ", papers, root=TEMPLATES).pdf
    except PaperMissing as missing:
        return {}, (str(missing),)
    except Unreadable as wrong:
        notes.append(str(wrong))
    return files, tuple(notes)


def _tick_sheets(data: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """Return the sheets to tick off, by file; a pack without baskets left has none of theirs."""
    sheets = {"week.pdf": week_paper(data)}
    if data["baskets"]:
        sheets |= {"filling.pdf": filling_paper(data), "baskets.pdf": baskets_paper(data)}
    return sheets


def _design_of(pack: Pack, book: Book | None, notes: list[str]) -> Design:
    """Return the list's design, else the book's; one that is not there is told."""
    try:
        return choose_design(pack.offering.giving.design or pack.settings.design, book)
    except Unreadable as wrong:
        notes.append(str(wrong))
        return choose_design(USUAL, book)


def _print_cards(
    jobs: list[CardJob], options: SheetOptions, files: dict[str, bytes], notes: list[str]
) -> None:
    for size in CARD_SIZES:
        try:
            files["cards.pdf"] = print_cards(jobs, size, options)
        except Unreadable as wrong:
            why = wrong
        else:
            return
    notes.append(f"The cards are on their page, but not as PDF: {why}")


def _print_tags(
    jobs: list[CardJob], options: SheetOptions, files: dict[str, bytes], notes: list[str]
) -> None:
    try:
        files["tags.pdf"] = print_tags(jobs, tag_shape("rectangle"), options)
    except Unreadable as wrong:
        notes.append(f"There are no container tags: {wrong}")


def _basket_tags(pack: Pack, data: dict[str, Any]) -> dict[str, Any]:
    return {
        "title": f"Basket tags for {data['title']}",
        "tags": [
            {"to": basket["to"], "message": basket["message"], "sender": data["sender"]}
            for basket in data["baskets"]
        ],
    }


def _labels(data: dict[str, Any]) -> dict[str, Any]:
    return {
        "title": f"Address labels for {data['title']}",
        "labels": [
            {
                "to": one["to"],
                "lines": one["address"] or ["The address is not on the list."],
                "country": one["country"],
                "from": [part for part in (one["sender"], *one["sender_address"]) if part],
            }
            for one in data["parcels"]
        ],
    }


def _customs_parts(data: dict[str, Any]) -> list[dict[str, Any]]:
    """Return what customs asks of each parcel that goes abroad, as a table."""
    parts = []
    for one in data["parcels"]:
        if one["customs"]:
            rows = [[row["what"], row["weight"], row["value"]] for row in one["customs"]["rows"]]
            rows.append(["In all, a gift", one["customs"]["weight"], one["customs"]["value"]])
            table = _table(["What is in it", "Weight", "Value"], rows, "lrr", [6, 0, 0])
            heading = f"{one['number']}  {one['household']}, {one['country']}"
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
        ["Paid", costs["paid"]],
        [f"Like things in a shop, {costs['shop_known']} of {costs['presents']}", costs["shop"]],
    ]
    households = [[row["name"], row["cost"]] for row in costs["households"]]
    return [
        _part("The whole", _table(["", ""], whole, "lr", [4, 1])),
        _part("By household", _table(["Household", "Costs"], households, "lr", [4, 1])),
    ]
