"""The print room: every card of the book on one page, and the choices of what to print.

Without JavaScript it prints as it stands; print-room-element.js lays what was chosen on sheets.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from stillroom.publish.card_page import emblem_address, paper_data
from stillroom.publish.gift_cuts_view import make_gift_cuts
from stillroom.publish.library import Library, Link
from stillroom.publish.listed import card_of
from stillroom.publish.templating import render


@dataclass(frozen=True)
class PrintRoomLeaf:
    """The page on which cards, tags and labels are printed from the browser."""

    src_uri: str = "print-room.md"
    in_nav: bool = True

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return the page's title."""
        return {
            "title": "Print room",
            "description": "Cards, tags and labels to print at their true size.",
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the whole page below its header."""
        cards = [
            replace(card_of(recipe, library), emblem=emblem_address(recipe.kind, link))
            for recipe in library.recipes
        ]
        return render(
            "pages/print_room.html",
            {
                "cards": cards,
                "tags": cards,
                "paper_data": paper_data(),
                "cuts": make_gift_cuts(),
            },
        )
