"""The usage card as the browser shows and prints it: what the card and tag fragments read.

Python works out the card for its default made-on day; card-element.js writes names and another day
on it. Leaves out the words themselves (core.labelling) and how many go on a sheet (paper.js).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from stillroom.core.allergens.laws import Said
from stillroom.core.label.date_marks import date_words
from stillroom.core.label.keeping import Kept
from stillroom.core.label.labelling import ContentsEntry, UsageCard, label_recipe, make_card
from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.paper.sheets import CARD_SIZES, LEAST_LABEL_MM, PAPERS, Size
from stillroom.core.paper.tag_shapes import tag_measures
from stillroom.core.recipe.kinds import Kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline_data import span_data
from stillroom.looks.inked import emblem_of
from stillroom.printing.card_data import join_sentences
from stillroom.publish.book_files import emblem_path
from stillroom.publish.library import Library, Link

ROOM_ON_ONE_SIDE = 330
"""Characters that surely go on one face of 90 x 65 mm. Only the card without JavaScript goes by
this; card-fit.js measures. tests/browser checks the demo book."""


@dataclass(frozen=True)
class CardView:
    """What a card's template reads; names as on the usage card."""

    slug: str
    kind_words: str
    title: str
    what: str
    contents_head: str
    contents: tuple[ContentsEntry, ...]
    strength: str
    use: str
    keep: str
    cautions: tuple[str, ...]
    allergens: tuple[str, ...]
    may_contain: tuple[str, ...]
    allergen_words: tuple[Said, ...]
    date_text: str
    keeps: dict[str, Any]
    qr_svg: str
    qr_mm: float
    emblem: str
    sides: int
    level: int
    to: str = ""
    sender: str = ""
    message: str = ""


def emblem_address(kind: Kind, link: Link) -> str:
    """Return the address of a kind's small drawing, or "" when it has none."""
    return link(emblem_path(kind)) if emblem_of(kind.slug) else ""


def view_card(recipe: Recipe, library: Library, emblem: str = "") -> CardView:
    """Return a recipe's card; `emblem` is the address of its kind's drawing.

    It is of no day: the day it was made is written by hand, or by card-element.js.
    """
    address = library.address_of(recipe)
    settings = library.settings
    card = make_card(recipe, settings, url=address)
    kept = label_recipe(recipe, settings).keeping
    code = draw_qr(address)
    return CardView(
        slug=recipe.slug,
        kind_words=recipe.kind.spoken,
        title=card.title,
        what=card.what,
        contents_head=recipe.kind.contents_heading,
        contents=card.contents,
        strength=card.strength_text,
        use=card.use,
        keep=join_sentences(card.keep, card.once_opened),
        cautions=card.cautions,
        allergens=card.allergens,
        may_contain=card.may_contain,
        allergen_words=card.allergen_words,
        date_text=card.date_mark.text,
        keeps=_mark_data(kept, settings.language),
        qr_svg=code.svg,
        qr_mm=code.size_mm,
        emblem=emblem,
        sides=1 if _characters(card) <= ROOM_ON_ONE_SIDE else 2,
        level=6,
    )


def _mark_data(kept: Kept, language: str) -> dict[str, Any]:
    """Return what date-marks.js needs to mark the card again for another made-on day."""
    return {
        "term": kept.term,
        "span": span_data(kept.unopened),
        "language": language,
        "words": date_words(language),
    }


def _characters(card: UsageCard) -> int:
    words = (card.what, card.use, card.keep, card.once_opened, card.strength_text, *card.cautions)
    return sum(map(len, words)) + sum(len(entry.text) + 2 for entry in card.contents)


def paper_data() -> dict[str, Any]:
    """Return the sizes the browser lays cards by, from the tables that Python itself uses."""
    return {
        "papers": [_size(name, PAPERS[name]) for name in ("a4", "letter")],
        "sizes": [_size(name, size) for name, size in CARD_SIZES.items()],
        "tags": tag_measures(),
        "leastLabel": list(LEAST_LABEL_MM),
    }


def _size(name: str, size: Size) -> dict[str, Any]:
    return {
        "id": name,
        "name": size.name,
        "width": float(size.width_mm),
        "height": float(size.height_mm),
        "folded": name.startswith("folded"),
    }
