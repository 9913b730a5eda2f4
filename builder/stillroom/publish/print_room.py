"""The print room: every card of the book on one page, and the choices of what to print.

Without JavaScript it prints as it stands; print-room-element.js lays what was chosen on sheets. In
a long book each card lies in a file beside its recipe, to be fetched when it is chosen: a page of a
thousand cards would be too much for a telephone. Without JavaScript they are then on their recipes'
own pages.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, Final

from stillroom.core.recipe.model import Recipe
from stillroom.publish.book_files import MadeFile
from stillroom.publish.card_page import CardView, paper_data, place_card
from stillroom.publish.gift_cuts_view import make_gift_cuts
from stillroom.publish.library import Library, Link, address_path
from stillroom.publish.listed import card_of
from stillroom.publish.templating import render

MOST_ON_PAGE: Final = 100
"""Cards that one page holds: half a megabyte, some forty kilobytes of which are sent."""


def is_long(library: Library) -> bool:
    """Say whether a book has more cards than its print room's page holds."""
    return len(library.recipes) > MOST_ON_PAGE


def card_path(slug: str) -> str:
    """Return where a long book has a recipe's card.

    >>> card_path("quince-ratafia")
    'r/quince-ratafia/card.html'
    """
    return f"{address_path(slug)}card.html"


def list_card_files(library: Library) -> Iterator[MadeFile]:
    """Return each card and tag of a long book for the print room to fetch; none of another.

    Their addresses of other files go from the file itself.
    """
    for recipe in library.recipes if is_long(library) else ():
        worked, place = library.worked.get(recipe.slug), card_path(recipe.slug)
        if worked and worked.card_file:
            yield MadeFile(place, packed=worked.card_file)
        else:
            yield MadeFile(place, content=make_card_file(card_of(recipe, library), recipe, library))


def make_card_file(view: CardView, recipe: Recipe, library: Library) -> str:
    """Return the file that a long book's print room fetches for one recipe."""
    card = place_card(view, recipe, library, lambda uri: f"../../{uri}")
    return render("pages/card_file.html", {"card": card, "tag": card})


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
        long = is_long(library)
        cards = [
            place_card(card_of(recipe, library), recipe, library, link)
            for recipe in (() if long else library.recipes)
        ]
        return render(
            "pages/print_room.html",
            {
                "recipes": library.recipes,
                "files": {one.slug: link(card_path(one.slug)) for one in library.recipes},
                "long": long,
                "link": link,
                "cards": cards,
                "tags": cards,
                "paper_data": paper_data(library),
                "design": library.settings.design,
                "cuts": make_gift_cuts(library),
                "has_address": bool(library.settings.site_url),
            },
        )
