"""Usage cards, tags and labels as PDF: many recipes, many copies, on one paper.

Leaves out the words on a card (core.labelling), where boxes stand (sheets_of) and how they look
(templates). Nothing is printed unless everything fits at a readable size.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, Grid, Size, impose
from stillroom.core.paper.tag_shapes import TagShape
from stillroom.core.private.shapes import PACK_WORDS
from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import USUAL, Design, choose_design
from stillroom.looks.card_pictures import CardPicture
from stillroom.printing.apart import Job, Runner, all_alike, in_slices, run_here
from stillroom.printing.card_data import card_data
from stillroom.printing.design_data import design_data
from stillroom.printing.language import split_language
from stillroom.printing.sheets_of import (
    cut_edges,
    lay_sheets,
    refuse_backs,
    refuse_what_does_not_fit,
)

PADDING_MM = {"90x65": 4.6, "a7": 5.2, "id-1": 3.6, "folded-a6": 9.0}
"""The white edge of each card. Maker's own; most printers leave 3 to 5 mm of paper blank."""


@dataclass(frozen=True)
class CardJob:
    """A card, how many of it, and its picture; without one that of its kind stands there."""

    card: UsageCard
    recipe: Recipe
    copies: int = 1
    picture: CardPicture | None = None


@dataclass(frozen=True)
class SheetOptions:
    """How cards are laid: paper, cut lines, the first free place of a half-used sheet.

    `grid` is that of a bought sheet of labels, which have no back. With `hand` there are lines to
    write names on where none were typed; the mark is a family's letters, or its drawing. `used` are
    places of the first sheet that are gone, `shift_mm` what the printer is told to move.
    """

    paper: Size = PAPERS["a4"]
    cut_lines: bool = True
    ruler: bool = False
    start_at: int = 1
    language: str = "en_GB"
    title: str = ""
    fonts: Path | None = None
    grid: Grid | None = None
    design: Design = field(default_factory=lambda: choose_design(USUAL))
    hand: bool = False
    mark_words: str = ""
    mark_svg: str = ""
    used: tuple[int, ...] = ()
    shift_mm: tuple[float, float] = (0.0, 0.0)


def print_cards(jobs: Sequence[CardJob], size_name: str, options: SheetOptions) -> bytes:
    """Return the PDF of usage cards; raises Unreadable naming what does not fit."""
    (made,) = print_cards_in_parts([jobs], size_name, options, run_here)
    return made


def print_cards_in_parts(
    parts: Sequence[Sequence[CardJob]], size_name: str, options: SheetOptions, run: Runner
) -> list[bytes]:
    """Return a PDF of each part's cards, all of them alike; raises Unreadable as print_cards."""
    folded = size_name == "folded-a6"
    size = options.grid.box if options.grid else CARD_SIZES[size_name]
    name = "a folded A6 card" if folded else size.name
    return _print(parts, lambda jobs: _card_sheets(jobs, size_name, options), name, options, run)


LARGER = ("id-1", "90x65", "a7", "folded-a6")
"""The sizes of cards from the smallest: large type takes the first that holds it."""


def print_large(
    jobs: Sequence[CardJob], size_name: str, options: SheetOptions
) -> tuple[bytes, str]:
    """Return the PDF of cards in large type and the size it took, the asked one or a larger.

    Raises Unreadable naming what not even the fold holds. A label is as large as it is.
    """
    if options.grid:
        return print_cards(jobs, size_name, options), size_name
    for name in LARGER[LARGER.index(size_name) : -1]:
        if all(one["fits"] for one in fit_cards(jobs, name, options)):
            return print_cards(jobs, name, options), name
    return print_cards(jobs, LARGER[-1], options), LARGER[-1]


def fit_cards(
    jobs: Sequence[CardJob], size_name: str, options: SheetOptions
) -> list[dict[str, Any]]:
    """Return for each card whether it fits, on which sides and at which level of type."""
    template, data = _card_sheets(jobs, size_name, options)
    (found,) = all_alike(template, [data], run_here, options.fonts)
    return found


def print_tags(jobs: Sequence[CardJob], shape: TagShape, options: SheetOptions) -> bytes:
    """Return the PDF of tags or labels; raises Unreadable naming what does not fit."""
    (made,) = print_tags_in_parts([jobs], shape, options, run_here)
    return made


def print_tags_in_parts(
    parts: Sequence[Sequence[CardJob]], shape: TagShape, options: SheetOptions, run: Runner
) -> list[bytes]:
    """Return a PDF of each part's tags, all of them alike; raises Unreadable as print_tags."""
    titles = sorted({job.card.title for jobs in parts for job in jobs})

    def sheets(jobs: Sequence[CardJob]) -> tuple[str, dict[str, Any]]:
        data = _sheet_data(jobs, shape.box, options, densest=shape.name == "wrap")
        data["titles"] = titles
        data["shape"] = {"name": shape.name, "width": shape.width_mm, "height": shape.height_mm}
        width, height = (0, 0) if shape.name == "round" else (shape.width_mm, shape.height_mm)
        data["design"] = design_data(options.design, "tag", width, height)
        return "tags.typ", data

    return _print(parts, sheets, f"a {shape.name} tag", options, run)


_FITTED_AT_ONCE = 48
"""Cards whose type is looked for in one run, where it may run apart: some 150 MB."""


def _print(
    parts: Sequence[Sequence[CardJob]],
    sheets: Callable[[Sequence[CardJob]], tuple[str, dict[str, Any]]],
    name: str,
    options: SheetOptions,
    run: Runner,
) -> list[bytes]:
    whole = [job for jobs in parts for job in jobs]
    most = max(1, len(whole)) if run is run_here else _FITTED_AT_ONCE
    tried = [sheets(whole[some]) for some in in_slices(len(whole), most)] or [sheets(whole)]
    template = tried[0][0]
    each = all_alike(template, [data for _, data in tried], run, options.fonts)
    found = [row for rows in each for row in rows]
    refuse_what_does_not_fit(found, name)
    if options.grid:
        refuse_backs(found)
    asked, begun = [], 0
    for jobs in parts:
        own = found[begun : (begun := begun + len(jobs))]
        data = {**sheets(jobs)[1], "found": own}
        asked.append(Job("set", template, data, len(jobs), options.fonts))
    return run(asked)


def _card_sheets(
    jobs: Sequence[CardJob], size_name: str, options: SheetOptions
) -> tuple[str, dict[str, Any]]:
    """Return the template and its data; a folded card lies on its sheet opened, A5 lying.

    On a bought sheet a card is as large as its label.
    """
    size = box = options.grid.box if options.grid else CARD_SIZES[size_name]
    template = "cards.typ"
    if size_name == "folded-a6":
        box = Size("A6 opened", 2 * size.width_mm, size.height_mm, size.source)
        template = "folded_cards.typ"
    data = _sheet_data(jobs, box, options)
    thing: Literal["card", "folded"] = "folded" if size_name == "folded-a6" else "card"
    data["design"] = design_data(
        options.design, thing, float(size.width_mm), float(size.height_mm),
        has_back=options.grid is None,
    )  # fmt: skip
    data["size"] = {
        "width": float(size.width_mm),
        "height": float(size.height_mm),
        "pad": PADDING_MM[size_name],
    }
    return template, data


def _sheet_data(
    jobs: Sequence[CardJob], box: Size, options: SheetOptions, *, densest: bool = False
) -> dict[str, Any]:
    language, region = split_language(options.language)
    grid = options.grid or impose(options.paper, box, densest=densest)
    copies = [index for index, job in enumerate(jobs) for _ in range(job.copies)]
    xs, ys = cut_edges(grid, options.shift_mm)
    return {
        "title": options.title or "Usage cards",
        "language": language,
        "region": region,
        "paper": {
            "width": float(options.paper.width_mm),
            "height": float(options.paper.height_mm),
        },
        "turned": grid.box.width_mm != box.width_mm,
        "measuring": False,
        "first": 0,
        "found": [],
        "cards": [card_data(job.card, job.recipe, job.picture, options.language) for job in jobs],
        "sheets": lay_sheets(grid, copies, options.start_at, options.used, options.shift_mm),
        "cut_lines": options.cut_lines,
        "cut_x": xs,
        "cut_y": ys,
        "ruler": options.ruler,
        "hand": options.hand,
        "mark": {"words": options.mark_words, "svg": options.mark_svg},
        "keywords": [PACK_WORDS] if any(map(_is_personal, jobs)) else [],
    }


def _is_personal(job: CardJob) -> bool:
    """Say whether a card bears somebody's name or words: then it is no page of a book."""
    return bool(job.card.to or job.card.sender or job.card.message)
