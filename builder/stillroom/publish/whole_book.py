"""The whole book on one page, to be printed from the browser: recipes as text, no card, no script.

It is put together from the recipes' own pages, which are there already, and costs a build nothing
else. A long book is parted, so that no page is more than a telephone holds. It stands in no search
and is asked out of the indexes of others: it says nothing that the recipes' pages do not.
"""

from __future__ import annotations

import re
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
from stillroom.publish.working import WorkedLeaf

MOST_ON_PAGE: Final = 60
"""Recipes on one page of a long book: half a megabyte, some sixty kilobytes of which are sent."""

WHOLE: Final = "whole-book.md"
_KEPT: Final = (
    ("<h1 ", '<section class="how-much"'),
    ('<div class="making">', '<section class="when"'),
    ('<section class="take-care"', '<section class="the-card"'),
)
"""From where to where templates/pages/recipe.html says what is read and not worked with."""
_LOOKED: Final = re.compile(r'<details class="take-care__looked">.*?</details>', re.DOTALL)
_UNDATED: Final = re.compile(r'data-when="undated">[^:]*:(?P<said>.*?)</p>', re.DOTALL)
_NAMES: Final = re.compile(r'\b(id|for|aria-labelledby|aria-describedby)="([^"]+)"')
_POINTS: Final = re.compile(r'(href="#|url\(#)')


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
            leaf = RecipeLeaf(recipe) if worked is None else WorkedLeaf(worked)
            page = leaf.body(library, "", link, url)
            when = _UNDATED.search(page)
            yield Shown(
                recipe=recipe,
                kind=recipe.kind.many.capitalize(),
                words=Markup(words_of(page, recipe.slug)),
                when=Markup(when["said"].strip()) if when else Markup(""),
                card=card_of(recipe, library),
            )


def words_of(page: str, slug: str) -> str:
    """Return what is read of a recipe's page, its headings a step lower, its names its own.

    >>> words_of('<h1 id="a">Gin</h1><section class="how-much">', "gin")
    '<h2 id="gin-a">Gin</h2>'
    """
    kept = ""
    for begin, end in _KEPT:
        start = page.find(begin)
        if start >= 0:
            stop = page.find(end, start)
            kept += page[start : stop if stop >= 0 else len(page)]
    kept = _LOOKED.sub("", kept).replace('loading="lazy"', 'loading="eager"')
    kept = _NAMES.sub(lambda found: f'{found[1]}="{_own(found[2], slug)}"', kept)
    # "Method" is twenty regions' name on this page; the recipe's own goes before it
    kept = kept.replace('aria-labelledby="', f'aria-labelledby="{slug}-{slug} ')
    kept = _POINTS.sub(lambda found: f"{found[1]}{slug}-", kept)
    for level in (4, 3, 2, 1):
        kept = re.sub(rf"(</?)h{level}\b", rf"\g<1>h{level + 1}", kept)
    return kept


def _own(names: str, slug: str) -> str:
    return " ".join(f"{slug}-{name}" for name in names.split())
