"""The papers that go into baskets and onto them, each in the design of its basket.

What lies in one file is laid on one paper and set alike: one design is one file of cards and one of
tags, or several where the baskets are many. Leaves out what the papers say (basket_sheets.py,
parcel_papers.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
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
from stillroom.looks.quotes import curl_all
from stillroom.looks.set_words import set_words
from stillroom.printing.apart import Job, Runner
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    print_cards_alike,
    print_large_tags,
    print_tags_in_parts,
)
from stillroom.printing.design_data import look_of

ROOT: Final = LOOKS.parent
"""The package: the templates of the papers use those of printing/."""
TEMPLATES: Final = Path("giving/templates/paper")
CARD_SIZE: Final = "90x65"
"""The first that holds every card is taken."""
NAME_TAG_MM: Final = (95.0, 66.0)
"""A basket's tag and an address label, eight to a sheet of A4. Maker's own."""
CARDS_A_FILE: Final = 96
SHEETS_A_FILE: Final = 96
"""So much is printed in one go, and set in the memory of one run. Maker's own."""
SHEET_MM: Final = (148.0, 210.0)

Designs = Mapping[int, Design]


def print_designed(
    pack: Pack, data: dict[str, Any], book: Book | None, designs: Designs, run: Runner
) -> Iterator[tuple[str, bytes | Unreadable]]:
    """Yield cards and tags of each design, basket tags, labels and basket sheets, by file name.

    In place of what cannot be printed stands why. `run` runs Typst.
    """
    for design, several in _each_once(designs):
        ending = f"-{design.slug}" if several else ""
        own = [
            basket.number
            for basket in pack.offering.problem.baskets
            if designs[basket.number] == design
        ]
        try:
            yield from _print_cards(pack, book, design, own, ending, run)
        except Unreadable as wrong:
            yield f"cards{ending}.pdf", wrong
    language = pack.settings.language
    if data["baskets"]:
        tags = _basket_tags(data, designs, language)
        yield "basket-tags.pdf", _set("basket_tags.typ", tags, len(tags["tags"]), run)
        yield from _print_sheets(data, designs, language, run)
    if data["parcels"]:
        labels = _labels(data, designs, language)
        yield "labels.pdf", _set("labels.typ", labels, len(labels["labels"]), run)


def _each_once(designs: Designs) -> Iterator[tuple[Design, bool]]:
    found = {design.slug: design for design in designs.values()}
    for design in found.values():
        yield design, len(found) > 1


def _print_cards(
    pack: Pack, book: Book | None, design: Design, numbers: list[int], ending: str, run: Runner
) -> Iterator[tuple[str, bytes]]:
    """Yield the cards and tags of baskets, in files of whole baskets and not too many cards."""
    cards = {number: len(pack.making.of_basket(number)) for number in numbers}
    runs = list(runs_of({number: count for number, count in cards.items() if count}, CARDS_A_FILE))
    if not runs:
        return
    parts = [_jobs(pack, book, design, set(some)) for some in runs]
    options = _options(pack, book, design)
    names = [f"{ending}{between(some, len(runs))}.pdf" for some in runs]
    printed, _ = print_cards_alike(parts, CARD_SIZE, options, run, grows=True)
    for name, made in zip(names, printed, strict=True):
        yield f"cards{name}", made
    tags = replace(options, title=f"Tags for {pack.offering.giving.giving_list}")
    printed = _print_tags(parts, tags, run)
    for name, made in zip(names, printed, strict=True):
        yield f"tags{name}", made


def runs_of(counts: Mapping[int, int], most: int) -> Iterator[list[int]]:
    """Yield runs of baskets that hold at most so many things together, and one basket at least.

    >>> list(runs_of({1: 3, 2: 4, 5: 3, 6: 9, 7: 1}, 8))
    [[1, 2], [5], [6], [7]]
    """
    run: list[int] = []
    held = 0
    for number, count in counts.items():
        if run and held + count > most:
            yield run
            run, held = [], 0
        run.append(number)
        held += count
    if run:
        yield run


def between(numbers: Sequence[int], of: int) -> str:
    """Return what a file of some of the baskets is called after; nothing for one of all.

    >>> between([1, 2, 5], 3), between([1, 2, 5], 1)
    ('-baskets-1-to-5', '')
    """
    return f"-baskets-{numbers[0]}-to-{numbers[-1]}" if of > 1 else ""


def _jobs(pack: Pack, book: Book | None, design: Design, numbers: set[int]) -> list[CardJob]:
    return [
        CardJob(
            card_of(pack, present),
            present.recipe,
            picture=card_picture(present.recipe, book, design),
        )
        for present in pack.making.presents
        if present.basket in numbers
    ]


def _options(pack: Pack, book: Book | None, design: Design) -> SheetOptions:
    words, svg = family_mark(book, design) if book else ("", "")
    title = f"Cards for {pack.offering.giving.giving_list}"
    language = pack.settings.language
    return SheetOptions(
        language=language, title=title, design=design, mark_words=words, mark_svg=svg
    )


def _print_tags(parts: list[list[CardJob]], options: SheetOptions, run: Runner) -> list[bytes]:
    """Return tags; large type takes the first shape that holds all of them."""
    shape = tag_shape("rectangle")
    if not options.design.large:
        return print_tags_in_parts(parts, shape, options, run)
    return print_large_tags(parts, shape, options, run)[0]


def _print_sheets(
    data: dict[str, Any], designs: Designs, language: str, run: Runner
) -> Iterator[tuple[str, bytes]]:
    looks = {number: look_of(design, *SHEET_MM) for number, design in designs.items()}
    numbers = {basket["number"]: 1 for basket in data["baskets"]}
    runs = list(runs_of(numbers, SHEETS_A_FILE))
    for some in runs:
        own = [basket for basket in data["baskets"] if basket["number"] in some]
        sheets = baskets_paper({**data, "baskets": own}, looks)
        made = _set("sheets.typ", sheets | {"language": language.split("_")[0]}, len(some), run)
        yield f"{between(some, len(runs)).removeprefix('-') or 'baskets'}.pdf", made


def _set(template: str, data: dict[str, Any], pieces: int, run: Runner) -> bytes:
    words = curl_all(data, data["language"])
    (made,) = run([Job("set", str(TEMPLATES / template), words, pieces, root=ROOT)])
    return bytes(made)


def _basket_tags(data: dict[str, Any], designs: Designs, language: str) -> dict[str, Any]:
    return {
        "title": f"Basket tags for {data['title']}",
        "language": language.split("_")[0],
        "tags": [
            {
                "to": basket["to"],
                "message": set_words(basket["message"], language),
                "sender": data["sender"],
                "kitchen": set_words(basket["kitchen"], language),
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
                "country": one["country"],
                "from": [part for part in (one["sender"], *one["sender_address"]) if part],
                "look": look_of(designs[one["number"]], *NAME_TAG_MM),
            }
            for one in data["parcels"]
        ],
    }
