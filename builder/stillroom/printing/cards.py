"""Usage cards, tags and labels as PDF: many recipes, many copies, on one paper.

Leaves out the words on a card (core.labelling), where boxes stand (sheets_of) and how they look
(templates). Nothing is printed unless everything fits at a readable size.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any, Literal

from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, Grid, Size, impose
from stillroom.core.paper.tag_shapes import TagShape, larger_shapes
from stillroom.core.private.shapes import PACK_WORDS
from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import USUAL, Design, choose_design
from stillroom.looks.card_pictures import CardPicture
from stillroom.looks.quotes import set_marks
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
    sheets = partial(_card_sheets, size_name=size_name, options=options)
    found = _fit(parts, sheets, options, run)
    return _set(parts, sheets, found, _name_of(size_name, options), options, run)


LARGER = ("id-1", "90x65", "a7", "folded-a6")
"""The sizes of cards from the smallest: what one does not hold is tried on the next."""


def print_cards_alike(
    parts: Sequence[Sequence[CardJob]],
    size_name: str,
    options: SheetOptions,
    run: Runner,
    *,
    grows: bool,
) -> tuple[list[bytes], str]:
    """Return a PDF of each part's cards, all alike, and the size they took.

    It is the asked one, or a larger where no one arrangement of that holds all of them; where it
    `grows`, as in large type, also where one of them does not go on it at all. A label is as large
    as it is. Raises Unreadable naming what does not fit.
    """
    for name in LARGER[LARGER.index(size_name) :] if options.grid is None else ():
        sheets = partial(_card_sheets, size_name=name, options=options)
        found = _fit(parts, sheets, options, run)
        fits = all(one["fits"] for one in found)
        if name == LARGER[-1] or (fits and not any(one.get("apart") for one in found)):
            return _set(parts, sheets, found, _name_of(name, options), options, run), name
        if not (fits or grows):
            break
    return print_cards_in_parts(parts, size_name, options, run), size_name


def fit_cards(
    jobs: Sequence[CardJob], size_name: str, options: SheetOptions
) -> list[dict[str, Any]]:
    """Return for each card whether it fits, on which sides and at which level of type."""
    return _fit(
        [jobs], partial(_card_sheets, size_name=size_name, options=options), options, run_here
    )


def print_tags(jobs: Sequence[CardJob], shape: TagShape, options: SheetOptions) -> bytes:
    """Return the PDF of tags or labels; raises Unreadable naming what does not fit."""
    (made,) = print_tags_in_parts([jobs], shape, options, run_here)
    return made


def print_tags_in_parts(
    parts: Sequence[Sequence[CardJob]], shape: TagShape, options: SheetOptions, run: Runner
) -> list[bytes]:
    """Return a PDF of each part's tags, all of them alike; raises Unreadable as print_tags."""
    sheets = _tag_sheets(parts, shape, options)
    found = _fit(parts, sheets, options, run)
    return _set(parts, sheets, found, shape.spoken, options, run)


def print_large_tags(
    parts: Sequence[Sequence[CardJob]], shape: TagShape, options: SheetOptions, run: Runner
) -> tuple[list[bytes], TagShape]:
    """Return the PDFs of tags in large type and the shape they took, the asked one or a larger.

    Raises Unreadable naming what not even the largest holds. A label is as large as it is.
    """
    for one in larger_shapes(shape) if options.grid is None else (shape,):
        sheets = _tag_sheets(parts, one, options)
        found = _fit(parts, sheets, options, run)
        if all(row["fits"] for row in found):
            break
    return _set(parts, sheets, found, one.spoken, options, run), one


_Sheets = Callable[[Sequence[CardJob]], tuple[str, dict[str, Any]]]


def _tag_sheets(
    parts: Sequence[Sequence[CardJob]], shape: TagShape, options: SheetOptions
) -> _Sheets:
    """Return what lays some of the tags on sheets; their titles have one size, as all have."""
    titles = sorted({set_marks(job.card.title, options.language) for jobs in parts for job in jobs})

    def sheets(jobs: Sequence[CardJob]) -> tuple[str, dict[str, Any]]:
        data = _sheet_data(jobs, shape.box, options, densest=shape.name == "wrap")
        data["titles"] = titles
        data["shape"] = {"name": shape.name, "width": shape.width_mm, "height": shape.height_mm}
        width, height = (0, 0) if shape.name == "round" else (shape.width_mm, shape.height_mm)
        data["design"] = design_data(options.design, "tag", width, height)
        return "tags.typ", data

    return sheets


_FITTED_AT_ONCE = 48
"""Cards whose type is looked for in one run, where it may run apart: some 150 MB."""


def _fit(
    parts: Sequence[Sequence[CardJob]], sheets: _Sheets, options: SheetOptions, run: Runner
) -> list[dict[str, Any]]:
    """Return for each card or tag of all parts whether it fits, and how, all of them alike."""
    whole = [job for jobs in parts for job in jobs]
    most = max(1, len(whole)) if run is run_here else _FITTED_AT_ONCE
    tried = [sheets(whole[some]) for some in in_slices(len(whole), most)] or [sheets(whole)]
    each = all_alike(tried[0][0], [data for _, data in tried], run, options.fonts)
    return [row for rows in each for row in rows]


def _set(
    parts: Sequence[Sequence[CardJob]],
    sheets: _Sheets,
    found: Sequence[dict[str, Any]],
    name: str,
    options: SheetOptions,
    run: Runner,
) -> list[bytes]:
    """Return a PDF of each part as it was found to fit; raises Unreadable naming what does not."""
    refuse_what_does_not_fit(found, name)
    if options.grid:
        refuse_backs(found)
    asked, begun = [], 0
    for jobs in parts:
        own = found[begun : (begun := begun + len(jobs))]
        template, data = sheets(jobs)
        asked.append(Job("set", template, {**data, "found": own}, len(jobs), options.fonts))
    return run(asked)


def _name_of(size_name: str, options: SheetOptions) -> str:
    if size_name == "folded-a6":
        return "a folded A6 card"
    return (options.grid.box if options.grid else CARD_SIZES[size_name]).name


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
