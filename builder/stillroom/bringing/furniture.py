"""What stands about the words of a web page and is none of them: menus, comments, what is related.

Told by an element's name, by its role, and by the words of its class. Leaves out which rows the
words make: web_page.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.sorting import is_ingredient
from stillroom.bringing.tags import Tag

_PASSED: Final = frozenset(
    [
        "aside",
        "button",
        "datalist",
        "dialog",
        "figcaption",
        "footer",
        "form",
        "iframe",
        "nav",
        "noscript",
        "object",
        "option",
        "script",
        "select",
        "style",
        "svg",
        "template",
        "textarea",
        "video",
        "audio",
        "head",
    ]
)
_FURNITURE: Final = re.compile(
    r"(?:^|[\s_-])(?:comments?|sidebar|related|share|sharing|social|nav(?:bar|igation)?|menu|toc|breadcrumbs?|cookie|"
    r"advert\w*|ads?|adsby\w+|share(?:daddy|buttons?)|relatedposts|newsletter|subscribe|rating|reviews?|footer|masthead|widget)(?:$|[\s_-])",
    re.IGNORECASE,
)
# "body-navigation-container", "has-sidebar": what holds the page beside its furniture
_BESIDE: Final = re.compile(
    r"(?:^|[\s_-])(?:nav(?:bar|igation)?|menu|sidebar|toc|share|footer)[_-](?:container|wrap(?:per)?|layout|holder"
    r"|page|content)(?:$|[\s_-])|(?:^|[\s_-])(?:has|with|without|no|left|right)[_-](?:sidebar|nav|menu)(?:$|[\s_-])",
    re.IGNORECASE,
)
# what a site's machinery calls the box of the page's own words, within "widget Blog" and the like
_OWN_WORDS: Final = re.compile(
    r"(?:^|[\s_-])(?:post[_-]body|entry[_-]content|post[_-]content|article[_-]?(?:body|content)"
    r"|blog[_-]posts)(?:$|[\s_-])",
    re.IGNORECASE,
)
# what page builders call every piece of a page, its own words too
_ANY_PIECE: Final = re.compile(
    r"\belementor-widget(?:-(?:container|wrap|text-editor|heading|theme-post-content|image|html"
    r"|icon-list))?(?![\w-])|(?:^|(?<=[\s_-]))widget(?=$|[\s_-])",
    re.IGNORECASE,
)
_LEAST_SAID: Final = 60
"""Words outside links from which on a piece is no box of a few lines beside the page."""
_LEAST_LISTED: Final = 2


def is_furniture(tag: Tag) -> bool:
    """Whether an element stands about a page's own words."""
    if tag.name in _PASSED or tag.said.get("role") in ("navigation", "banner", "contentinfo"):
        return True
    if "hidden" in tag.said or tag.said.get("aria-hidden") == "true":
        return True
    marks = f"{tag.said.get('class', '')} {tag.said.get('id', '')}"
    if tag.name in ("html", "body", "main", "article") or not _FURNITURE.search(marks):
        return False
    if not _FURNITURE.search(_ANY_PIECE.sub(" ", marks)) and _says_much(tag):
        return False
    return not ((_BESIDE.search(marks) and _holds_a_list(tag)) or _holds_the_page(tag))


def _says_much(tag: Tag) -> bool:
    """Whether a piece says more than a box beside the page does, or lists what goes in."""
    linked = sum(len(one.words().split()) for one in tag.walk() if one.name == "a")
    return len(tag.words().split()) - linked >= _LEAST_SAID or _holds_a_list(tag)


def _holds_the_page(tag: Tag) -> bool:
    """Whether the box of the page's own words stands in an element: a side box has none."""
    return any(
        _OWN_WORDS.search(f"{one.said.get('class', '')} {one.said.get('id', '')}")
        or one.said.get("itemprop") == "articleBody"
        for one in tag.walk()
    )


def _holds_a_list(tag: Tag) -> bool:
    """Whether things that go in stand in it, each in a block of its own."""
    listed = 0
    for one in tag.walk():
        if (
            one.name in ("p", "li", "td", "div")
            and len(one.inner) == 1
            and is_ingredient(one.words())
        ):
            listed += 1
            if listed == _LEAST_LISTED:
                return True
    return False
