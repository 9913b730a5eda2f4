"""What the search finds on a page: the words a reader looks for, handed to Material's own index.

The theme's search reads a page by parsing all of it, four fifths of which say that they are not to
be searched (drawings, forms, cards, dates). Here it is given the rest alone. Where another search
stands in its place, that one reads the page as it always does.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

from stillroom.publish.search_reader import read_sections

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.pages import Page

Found = dict[str, Any]
"""One entry of the search: its place, its title and its words."""

_NOT_SEARCHED = (
    ('<section class="how-much"', '<div class="making">'),
    ('<section class="when"', '<script type="application/json" id="recipe-data">'),
)
"""From where to where templates/pages/recipe.html asks not to be searched."""


_MARK = "data-search-"
_ASKS = re.compile(r'\w+="[^"]+"')


def searched_part(html: str) -> str:
    """Return a page of the book without the sections of a recipe that are not searched.

    >>> searched_part('<h1>Quince</h1><section class="how-much">1 l</section><div class="making">')
    '<h1>Quince</h1><div class="making">'
    """
    for begin, end in _NOT_SEARCHED:
        from_ = html.find(begin)
        to = html.find(end, from_)
        if 0 <= from_ < to:
            html = html[:from_] + html[to:]
    return html


def index_of(config: MkDocsConfig) -> Any:
    """Return the index of the theme's own search, or None where there is none that works so."""
    found: Any = config.plugins.get("search") or config.plugins.get("material/search")
    if found is None or not type(found).__module__.startswith("material."):
        return None
    return found.search_index if found.config.enabled else None


def find_words(html: str, title: str) -> tuple[Found, ...]:
    """Return what the theme's search finds on a recipe's page; places are counted from the page."""
    # late: a check waits for no theme
    from material.plugins.search.plugin import SearchIndex  # type: ignore[import-untyped]

    index = SearchIndex()
    _index(index, _like_page("", title, {}, ()), searched_part(html))
    return tuple(index.entries)


def _index(index: Any, page: SimpleNamespace, html: str) -> None:
    """Add what is found in HTML to an index, as its own `add_entry_from_context` does."""
    for number, title, text in _sections_of(html):
        section = SimpleNamespace(id=number, title=list(title), text=list(text))
        index.create_entry_for_section(section, page.toc, page.url, page)


_Found = tuple[str | None, tuple[str, ...], tuple[str, ...]]


@lru_cache(maxsize=8)  # `mkdocs serve` builds the book's own long lists again as they were
def _sections_of(html: str) -> tuple[_Found, ...]:
    """Return the sections that are searched: id, words of title and text."""
    return tuple(
        (one.id, tuple(one.title), tuple(one.text))
        for one in read_sections(html)
        if not one.excluded
    )


def forget_sections() -> None:
    """Let go of long lists that nobody builds again: each is kept with all its HTML."""
    _sections_of.cache_clear()


def index_page(index: Any, page: Page, html: str) -> None:
    """Let the theme's search read `html` as the words of a page."""
    _index(index, _like_page(page.url, page.title, page.meta, page.toc), html)


def index_words(index: Any, page: Page, words: Iterable[Found]) -> None:
    """Hand the theme's search what was found on a page before."""
    index.entries.extend({**one, "location": page.url + one["location"]} for one in words)


def _like_page(url: str, title: Any, meta: Any, toc: Any) -> SimpleNamespace:
    return SimpleNamespace(meta=meta, toc=toc, url=url, title=title)


def without_marks(html: str) -> str:
    """Return a page without what it asks of the search, as the theme's search leaves it.

    >>> without_marks('<p data-search-exclude="1" id="a">Quince</p>')
    '<p id="a">Quince</p>'
    """
    first, *rest = html.split(_MARK)
    kept = [first]
    for part in rest:
        found = _ASKS.match(part)
        if found is None:
            kept.append(_MARK + part)
            continue
        kept[-1] = kept[-1][:-1] if kept[-1][-1:].isspace() else kept[-1]
        kept.append(part[found.end() :])
    return "".join(kept)


def pass_over_search(page: Page) -> None:
    """Let the theme's search pass over a page that it has been handed; `read_again` undoes it."""
    page.meta["search"] = {**(page.meta.get("search") or {}), "exclude": True}


def read_again(page: Page, before: Any) -> None:
    """Put back what a page said of the search before `pass_over_search`."""
    if before is None:
        page.meta.pop("search", None)
    else:
        page.meta["search"] = before
