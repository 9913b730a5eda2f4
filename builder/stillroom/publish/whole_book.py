"""The whole book on one page, to be printed from the browser: recipes as text, no card, no script.

It is put together from the recipes' own pages, which are there already, and costs a build nothing
else. A long book is parted, so that no page is more than a telephone holds. It stands in no search
and is asked out of the indexes of others: it says nothing that the recipes' pages do not.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from markupsafe import Markup

from stillroom.core.recipe.model import Recipe
from stillroom.publish.card_page import CardView
from stillroom.publish.library import Library, Link
from stillroom.publish.listed import card_of
from stillroom.publish.recipe_page import RecipeLeaf
from stillroom.publish.templating import render
from stillroom.publish.whole_words import when_of, words_of

MOST_ON_PAGE: Final = 60
"""Recipes on one page of a long book: half a megabyte, some sixty kilobytes of which are sent."""

WHOLE: Final = "whole-book.md"


@dataclass(frozen=True)
class Shown:
    """A recipe as the page holds it: its own page's words, when in words, what the giver says."""

    recipe: Recipe
    kind: str
    words: Markup
    when: Markup
    card: CardView


def list_wholes(library: Library) -> tuple[WholeBookLeaf, ...]:
    """Return the page of the whole book, or that of a long one and the parts it leads to."""
    recipes = _in_order(library)
    if len(recipes) <= MOST_ON_PAGE:
        return (WholeBookLeaf(recipes, WHOLE),)
    firsts = range(0, len(recipes), MOST_ON_PAGE)
    parts = [
        WholeBookLeaf(recipes[at : at + MOST_ON_PAGE], f"whole-book/{number}.md", number)
        for number, at in enumerate(firsts, start=1)
    ]
    return (WholeBookLeaf((), WHOLE, parts=tuple(parts)), *parts)


def _in_order(library: Library) -> tuple[Recipe, ...]:
    """Return the recipes kind by kind, both in the order of their names."""
    return tuple(
        sorted(library.recipes, key=lambda one: (one.kind.many.capitalize(), one.title.casefold()))
    )


@dataclass(frozen=True)
class WholeBookLeaf:
    """A page that prints the book or a part of it, or that leads to its parts."""

    recipes: Sequence[Recipe]
    src_uri: str
    number: int = 0
    parts: tuple[WholeBookLeaf, ...] = ()
    in_nav: bool = False

    @property
    def title(self) -> str:
        """What the page is called."""
        return f"The whole book, part {self.number}" if self.number else "The whole book"

    @property
    def ends(self) -> str:
        """The first and the last recipe of a part."""
        return f"{self.recipes[0].title} to {self.recipes[-1].title}"

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return its title, and that no search is to find it."""
        return {
            "title": self.title,
            "description": "Every recipe as text, to print from the browser.",
            "search": {"exclude": True},
            "robots": "noindex",
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the whole page below its header."""
        shown = tuple(self._show(library, link, url))
        return render(
            "pages/whole_book.html",
            {
                "title": self.title,
                "book": library.settings.title,
                "shown": shown,
                "parts": self.parts,
                "link": link,
            },
        )

    def _show(self, library: Library, link: Link, url: str) -> Iterator[Shown]:
        for recipe in self.recipes:
            worked = library.worked.get(recipe.slug)
            if worked is None:
                page = RecipeLeaf(recipe).body(library, "", link, url)
                words, when = words_of(page, recipe.slug), when_of(page)
            else:
                words, when = worked.in_whole(link)
            yield Shown(
                recipe=recipe,
                kind=recipe.kind.many.capitalize(),
                words=Markup(words),
                when=Markup(when),
                card=card_of(recipe, library),
            )
