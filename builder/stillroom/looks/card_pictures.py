"""The picture on a card: the recipe's own, else its kind's, in as many inks as the design has.

A photograph is cut to the frame of a card. Leaves out how large it stands (the templates).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from stillroom.core.book import Book
from stillroom.core.paper.contrast import luminance
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import Unreadable
from stillroom.looks.card_designs import Design
from stillroom.looks.inked import emblem_of, picture_of
from stillroom.looks.link_previews import frame_of
from stillroom.looks.photographs import PHOTOGRAPHS

FRAME: Final = (3, 2)
"""The shape of a picture on a card, wide to high: that of the book's drawings. Maker's own."""

_PALE: Final = 0.6
_VALUE: Final = re.compile(
    r"(?P<what>\b(?:fill|stroke|stop-color|color)\s*(?:=\s*[\"']|:)\s*)(?P<value>#[0-9a-fA-F]{3,8}\b|rgba?\([^)]*\)|[a-zA-Z]+\b)"
)
_KEPT: Final = frozenset({"none", "transparent", "inherit", "currentcolor", "url"})
_BOX: Final = re.compile(
    r'<svg[^>]*viewBox="[\d.-]+ [\d.-]+ ([\d.]*[1-9][\d.]*) ([\d.]*[1-9][\d.]*)"'
)
_VIEW: Final = re.compile(r'viewBox="0 0 (\d+) (\d+)" width="\d+" height="\d+"')


@dataclass(frozen=True)
class CardPicture:
    """A picture as SVG, and whether it is a photograph or the small drawing of a kind."""

    svg: str
    is_photograph: bool = False
    is_emblem: bool = False

    @property
    def ratio(self) -> float:
        """How high it is for its width; a drawing that says no size is square.

        >>> CardPicture('<svg viewBox="0 0 480 320"/>').ratio
        0.6666666666666666
        """
        found = _BOX.search(self.svg[:2000])
        return float(found[2]) / float(found[1]) if found else 1.0


def picture_file(recipe: Recipe) -> str:
    """Return the name of a recipe's own picture: the one it names, or one named like itself."""
    return recipe.picture or f"{recipe.slug}.svg"


def card_picture(recipe: Recipe, book: Book | None, design: Design) -> CardPicture:
    """Return what a card of this design shows.

    One ink makes a blot of a photograph: a drawing named like the recipe takes its place, else that
    of its kind.
    """
    name = picture_file(recipe)
    photograph = any(name.lower().endswith(ending) for ending in PHOTOGRAPHS)
    if photograph and design.one_ink:
        name, photograph = f"{recipe.slug}.svg", False
    own = "" if book is None else picture_of(book, name)
    if own and photograph:
        return CardPicture(cut_to_frame(own, recipe.picture_focus), is_photograph=True)
    svg = own or emblem_of(recipe.kind.slug)
    inked = in_one_ink(svg, design.inks.ink) if design.one_ink else svg
    return CardPicture(inked, is_emblem=not own)


def family_mark(book: Book, design: Design) -> tuple[str, str]:
    """Return a book's mark: its letters, its drawing; raises Unreadable for one not there."""
    mark = book.settings.family_mark
    if not mark.lower().endswith(".svg"):
        return mark, ""
    svg = picture_of(book, mark)
    if not svg:
        raise Unreadable(
            f'There is no drawing "{mark}" among the pictures.',
            "Put it there, or write a few letters as family_mark.",
        )
    return "", in_one_ink(svg, design.inks.accent)


@lru_cache(maxsize=256)  # most recipes of a book share the drawings of their kinds
def in_one_ink(svg: str, ink: str) -> str:
    """Return a drawing whose every colour is one ink, as strong as it was; pale ones are left out.

    >>> in_one_ink('<path fill="#8f5a26" stroke="none"/><path style="fill:#fff"/>', "#1f140b")
    '<path fill="#1f140b" stroke="none"/><path style="fill:none"/>'
    """

    def changed(found: re.Match[str]) -> str:
        value = found["value"]
        if value.lower().split("(")[0] in _KEPT:
            return found[0]
        return found["what"] + ("none" if _is_pale(value) else ink)

    return _VALUE.sub(changed, svg)


def _is_pale(value: str) -> bool:
    if not value.startswith("#"):
        return value.lower() in ("white", "ivory", "snow", "linen", "seashell", "floralwhite")
    digits = value[1:]
    whole = digits[:6] if len(digits) >= 6 else "".join(digit * 2 for digit in digits[:3])
    return luminance(f"#{whole}") > _PALE


def cut_to_frame(svg: str, focus: str) -> str:
    """Return a photograph cut to the frame of a card, round the point that must be seen.

    >>> cut_to_frame('<svg viewBox="0 0 300 300" width="300" height="300"/>', "50% 0%")
    '<svg viewBox="0 0 300 200" width="300" height="200"/>'
    """
    found = _VIEW.search(svg)
    if not found:
        return svg
    width, height = int(found[1]), int(found[2])
    left, top, wide, high = frame_of(width, height, *FRAME, focus)
    view = f'viewBox="{left} {top} {wide} {high}" width="{wide}" height="{high}"'
    return svg[: found.start()] + view + svg[found.end() :]
