"""What the page of the whole book shows of a recipe: its own page, without what is worked with."""

from __future__ import annotations

import re
from typing import Final

_KEPT: Final = (
    ("<h1 ", '<section class="how-much"'),
    ('<div class="making">', '<section class="when"'),
    ('<section class="take-care"', '<section class="the-card"'),
)
"""From where to where templates/pages/recipe.html says what is read and not worked with."""
_LOOKED: Final = re.compile(r'<details class="take-care__looked">.*?</details>', re.DOTALL)
_NAMES: Final = re.compile(
    r'="(?:(?<=\bid=")|(?<=\bfor=")|(?<=\baria-labelledby=")|(?<=\baria-describedby="))([^"]+)"'
)
"""A name of something on the page, sought by its sign: a page has fewer of them than of letters."""
_HEADS: Final = re.compile(r"(</?h)([1-4])\b")
_UNDATED: Final = 'data-when="undated">'


def when_of(page: str) -> str:
    """Return what a recipe's page says of when, of no day in particular; "" where it says nothing.

    >>> when_of('<p data-when="undated">In all: 3 weeks.</p>')
    '3 weeks.'
    """
    _, _, said = page.partition(_UNDATED)
    return said.partition("</p>")[0].partition(":")[2].strip()


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
    kept = _NAMES.sub(lambda found: f'="{_own(found[1], slug)}"', kept)
    # "Method" is twenty regions' name on this page; the recipe's own goes before it
    kept = kept.replace('aria-labelledby="', f'aria-labelledby="{slug}-{slug} ')
    kept = kept.replace('href="#', f'href="#{slug}-').replace("url(#", f"url(#{slug}-")
    return _HEADS.sub(lambda found: f"{found[1]}{int(found[2]) + 1}", kept)


def _own(names: str, slug: str) -> str:
    return " ".join(f"{slug}-{name}" for name in names.split())
