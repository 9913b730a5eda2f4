"""The papers that go into baskets and onto them, each in the design of its basket.

What lies in one file is laid on one paper and set alike: one design is one file of cards and one of
tags. Leaves out what the papers say (basket_sheets.py, parcel_papers.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, Final

from stillroom.core.book import Book
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.words.problems import Unreadable
from stillroom.giving.sheet_papers import baskets_paper
from stillroom.giving.worked_out import Pack, card_of
from stillroom.looks import LOOKS
from stillroom.looks.card_designs import Design
from stillroom.looks.card_pictures import card_picture, family_mark
from stillroom.looks.set_words import set_words
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.design_data import look_of
from stillroom.printing.typesetting import typeset

ROOT: Final = LOOKS.parent
"""The package: the templates of the papers use those of printing/."""
TEMPLATES: Final = Path("giving/templates/paper")
CARD_SIZES: Final = ("90x65", "a7", "folded-a6")
"""The first that holds every card is taken."""
NAME_TAG_MM: Final = (95.0, 66.0)
"""A basket's tag and an address label, eight to a sheet of A4. Maker's own."""
SHEET_MM: Final = (148.0, 210.0)

Designs = Mapping[int, Design]


def print_designed(
    pack: Pack, data: dict[str, Any], book: Book | None, designs: Designs
) -> Iterator[tuple[str, bytes | Unreadable]]:
    """Yield cards and tags of each design, basket tags, labels and basket sheets, by file name.

    In place of what cannot be printed stands why.
    """
    for design, several in _each_once(designs):
        ending = f"-{design.slug}.pdf" if several else ".pdf"
        numbers = {number for number, one in designs.items() if one == design}
        try:
            jobs, options = _jobs(pack, book, design, numbers)
            if not jobs:
                continue
            yield f"cards{ending}", _first_size(jobs, options)
            tags = replace(options, title=f"Tags for {pack.offering.giving.giving_list}")
            yield f"tags{ending}", print_tags(jobs, tag_shape("rectangle"), tags)
        except Unreadable as wrong:
            yield f"cards{ending}", wrong
    language = pack.settings.language
    if data["baskets"]:
        yield "basket-tags.pdf", _set("basket_tags.typ", _basket_tags(data, designs, language))
        sheets = baskets_paper(data, {n: look_of(one, *SHEET_MM) for n, one in designs.items()})
        yield "baskets.pdf", _set("sheets.typ", sheets | {"language": language.split("_")[0]})
    if data["parcels"]:
        yield "labels.pdf", _set("labels.typ", _labels(data, designs, language))


def _each_once(designs: Designs) -> Iterator[tuple[Design, bool]]:
    found = {design.slug: design for design in designs.values()}
    for design in found.values():
        yield design, len(found) > 1


def _jobs(
    pack: Pack, book: Book | None, design: Design, numbers: set[int]
) -> tuple[list[CardJob], SheetOptions]:
    jobs = [
        CardJob(
            card_of(pack, present),
            present.recipe,
            picture=card_picture(present.recipe, book, design),
        )
        for present in pack.making.presents
        if present.basket in numbers
    ]
    words, svg = family_mark(book, design) if book else ("", "")
    title = f"Cards for {pack.offering.giving.giving_list}"
    language = pack.settings.language
    return jobs, SheetOptions(
        language=language, title=title, design=design, mark_words=words, mark_svg=svg
    )


def _first_size(jobs: list[CardJob], options: SheetOptions) -> bytes:
    """Return cards in the smallest size that holds all of them; raises Unreadable for none."""
    for size in CARD_SIZES[:-1]:
        try:
            return print_cards(jobs, size, options)
        except Unreadable:  # the next is larger
            continue
    return print_cards(jobs, CARD_SIZES[-1], options)


def _set(template: str, data: dict[str, Any]) -> bytes:
    return typeset(str(TEMPLATES / template), data, root=ROOT).pdf


def _basket_tags(data: dict[str, Any], designs: Designs, language: str) -> dict[str, Any]:
    return {
        "title": f"Basket tags for {data['title']}",
        "language": language.split("_")[0],
        "tags": [
            {
                "to": basket["to"],
                "message": set_words(basket["message"], language),
                "sender": data["sender"],
                "look": look_of(designs[basket["number"]], *NAME_TAG_MM),
            }
            for basket in data["baskets"]
        ],
    }


def _labels(data: dict[str, Any], designs: Designs, language: str) -> dict[str, Any]:
    return {
        "title": f"Address labels for {data['title']}",
        "language": language.split("_")[0],
        "labels": [
            {
                "to": one["to"],
                "lines": one["address"],
                "missing": "" if one["address"] else "The address is not on the list.",
                "country": one["country"],
                "from": [part for part in (one["sender"], *one["sender_address"]) if part],
                "look": look_of(designs[one["number"]], *NAME_TAG_MM),
            }
            for one in data["parcels"]
        ],
    }
