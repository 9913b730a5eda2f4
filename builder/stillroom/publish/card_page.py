"""The usage card as the browser shows and prints it: what the card and tag fragments read.

Python works out the card for its default made-on day; card-element.js writes names and another day
on it. Leaves out the words themselves (core.labelling) and how many go on a sheet (paper.js).
"""

from __future__ import annotations

import zlib
from dataclasses import dataclass, replace
from typing import Any

from stillroom.core.allergens.laws import Said
from stillroom.core.label.date_marks import date_words
from stillroom.core.label.keeping import Kept
from stillroom.core.label.labelling import ContentsEntry, UsageCard, label_recipe, make_card
from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.paper.sheets import CARD_SIZES, LEAST_LABEL_MM, PAPERS, Size
from stillroom.core.paper.tag_shapes import tag_measures
from stillroom.core.recipe.cooks_word import spoken_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline_data import span_data
from stillroom.looks.quotes import marks_of
from stillroom.looks.set_words import set_card
from stillroom.printing.card_data import join_sentences, plain_address
from stillroom.publish.card_designs_page import CardLook, designs_data, picture_paths
from stillroom.publish.library import Library, Link

ROOM_ON_ONE_SIDE = 300
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
    tag_words: tuple[Said, ...]
    date_text: str
    keeps: dict[str, Any]
    code: bytes
    qr_mm: float
    address: str
    design: str
    sides: int
    level: int
    to: str = ""
    sender: str = ""
    message: str = ""
    picture: str = ""
    picture_src: str = ""
    emblem: str = ""
    photograph: bool = False
    mark: str = ""
    mark_src: str = ""

    @property
    def qr_svg(self) -> str:
        """The square to scan; in each of a thousand cards it lies packed."""
        return zlib.decompress(self.code).decode() if self.code else ""


def view_card(recipe: Recipe, library: Library, link: Link | None = None) -> CardView:
    """Return a recipe's card; without `link` it says nothing of where its picture lies.

    It is of no day: the day it was made is written by hand, or by card-element.js.
    """
    address = library.lasting_address(recipe)
    settings = library.settings
    card = set_card(make_card(recipe, settings, url=address), settings.language)
    kept = label_recipe(recipe, settings).keeping
    code = draw_qr(address) if address else None
    view = CardView(
        slug=recipe.slug,
        kind_words=spoken_of(recipe),
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
        tag_words=card.tag_words,
        date_text=card.date_mark.text,
        keeps=_mark_data(kept, settings.language),
        code=zlib.compress(code.svg.encode(), level=1) if code else b"",
        qr_mm=code.size_mm if code else 0,
        address=plain_address(address),
        design=settings.design,
        sides=1 if _characters(card) <= ROOM_ON_ONE_SIDE else 2,
        level=6,
    )
    return place_card(view, recipe, library, link) if link else view


def place_card(view: CardView, recipe: Recipe, library: Library, link: Link) -> CardView:
    """Return a card with the addresses of its picture and its family's mark."""
    mark = library.settings.family_mark
    look = CardLook.of(recipe, library)
    picture, own = picture_paths(look, library)
    drawn = mark.lower().endswith(".svg")
    return replace(
        view,
        picture=link(picture) if picture else "",
        picture_src=link(own) if own else "",
        emblem=look.emblem,
        photograph=look.is_photograph,
        mark="" if drawn else mark,
        mark_src=link(f"{library.settings.pictures}/{mark}") if drawn else "",
    )


def _mark_data(kept: Kept, language: str) -> dict[str, Any]:
    """Return what date-marks.js needs to mark the card again for another made-on day."""
    return {
        "term": kept.term,
        "span": span_data(kept.unopened),
        "language": language,
        "quotes": list(marks_of(language)),
        "words": date_words(language),
    }


def _characters(card: UsageCard) -> int:
    words = (card.what, card.use, card.keep, card.once_opened, card.strength_text, *card.cautions)
    return sum(map(len, words)) + sum(len(entry.whole) + 2 for entry in card.contents)


def paper_data(library: Library) -> dict[str, Any]:
    """Return the sizes the browser lays cards by, from the tables that Python itself uses."""
    return {
        "papers": [_size(name, PAPERS[name]) for name in ("a4", "letter")],
        "sizes": [_size(name, size) for name, size in CARD_SIZES.items()],
        "tags": tag_measures(),
        "leastLabel": list(LEAST_LABEL_MM),
        "designs": designs_data(library),
        "labels": [one.model_dump() for one in library.settings.labels],
    }


def _size(name: str, size: Size) -> dict[str, Any]:
    return {
        "id": name,
        "name": size.name,
        "width": float(size.width_mm),
        "height": float(size.height_mm),
        "folded": name.startswith("folded"),
    }
