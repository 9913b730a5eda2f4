"""The HTML that Markdown made, looked over once more before it stands in a page.

`clean_prose` keeps only what Markdown itself writes, for a recipe's words; `find_faults` tells what
may not stand in a page that the book's maker wrote, where plain HTML is welcome. Comments are
published by neither: what is commented out is not meant to be read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from html import escape

from stillroom.core.reading.markup import LenientHTML, is_own, is_safe_link

_TAGS = frozenset({
    "a", "abbr", "blockquote", "br", "caption", "code", "dd", "del", "div", "dl", "dt", "em",
    "h1", "h2", "h3", "h4", "h5", "h6", "hr", "img", "ins", "li", "ol", "p", "pre", "small",
    "span", "strong", "sub", "sup", "table", "tbody", "td", "tfoot", "th", "thead", "tr", "ul",
})  # fmt: skip
_ATTRIBUTES = frozenset({
    "alt", "class", "colspan", "dir", "height", "href", "id", "lang", "rowspan", "scope",
    "src", "start", "title", "width",
})  # fmt: skip
_ASIDE = re.compile(r"text-align: ?(left|right|center);?")
_SILENT = ("script", "style", "title", "textarea")
_REFUSED = frozenset({
    "applet", "base", "embed", "form", "frame", "frameset", "iframe", "link", "meta", "object",
    "script", "style",
})  # fmt: skip
_FETCHED = ("src", "srcset", "poster", "background", "data")
_FOLLOWED = ("href", "action", "formaction", "xlink:href")
_MORE = re.compile(
    rf"<(?!/?(?:{'|'.join(sorted(_TAGS - {'br', 'hr', 'img'}))})>)|&(?!(?:amp|lt|gt|quot);)"
)
"""More than words in tags without attributes: of these nothing is left out or written otherwise."""
_SWITCH = re.compile(r'(<input class="md-toggle" [^>]*?) autocomplete="off"')
_COMMENT = re.compile(r"<!--(?:-?>|.*?(?:--!?>|\Z))", re.DOTALL)

Attributes = list[tuple[str, str | None]]


def clean_prose(html: str) -> str:
    """Return HTML with nothing in it that Markdown does not write.

    >>> clean_prose('<p onclick="x()">Stir <em>well</em>.<script>x()</script></p>')
    '<p>Stir <em>well</em>.</p>'
    """
    if not _MORE.search(html):
        return html
    cleaner = _Cleaner()
    cleaner.feed(html)
    cleaner.close()
    return "".join(cleaner.kept)


def drop_comments(html: str) -> str:
    """Return HTML without its comments.

    >>> drop_comments("<p>Quince</p><!-- Aunt Perpetua's -->")
    '<p>Quince</p>'
    """
    return _COMMENT.sub("", html)


def without_autocomplete(output: str) -> str:
    """Return a page whose two switches of the theme have only what HTML gives a checkbox.

    They stand outside every block of the theme's base.html, so no template can leave them out.
    """
    before, header, behind = output.partition("<header")
    return f"{_SWITCH.sub(lambda found: found[1], before)}{header}{behind}"


def find_faults(html: str) -> Iterator[tuple[str, str]]:
    """Return what may not stand in a page: in words, and how it is written."""
    finder = _Finder()
    finder.feed(html)
    finder.close()
    yield from finder.found


class _Cleaner(LenientHTML):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.kept: list[str] = []
        self.silent = 0

    def handle_starttag(self, tag: str, attrs: Attributes) -> None:
        if tag in _SILENT:
            self.silent += 1
        elif tag in _TAGS and not self.silent:
            written = "".join(
                f' {name}="{escape(value or "")}"'
                for name, value in attrs
                if _kept(name, value or "")
            )
            self.kept.append(f"<{tag}{written}>")

    def handle_startendtag(self, tag: str, attrs: Attributes) -> None:
        if tag in _TAGS:
            self.handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        if tag in _SILENT:
            self.silent = max(0, self.silent - 1)
        elif tag in _TAGS and not self.silent:
            self.kept.append(f"</{tag}>")

    def handle_data(self, data: str) -> None:
        if not self.silent:
            self.kept.append(data.replace("<", "&lt;"))

    def handle_entityref(self, name: str) -> None:
        self.handle_data(f"&{name};")

    def handle_charref(self, name: str) -> None:
        self.handle_data(f"&#{name};")


def _kept(name: str, value: str) -> bool:
    if name == "style":
        return _ASIDE.fullmatch(value.strip()) is not None
    if name == "href":
        return is_safe_link(value)
    return name in _ATTRIBUTES and (name != "src" or is_own(value))


class _Finder(LenientHTML):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, str]] = []

    def handle_starttag(self, tag: str, attrs: Attributes) -> None:
        written = self.get_starttag_text() or f"<{tag}"
        if tag in _REFUSED:
            self.found.append((f'"<{tag}>" may not stand in a page', written))
        for name, value in attrs:
            if what := _fault(name, value or ""):
                self.found.append((what, written))

    def handle_startendtag(self, tag: str, attrs: Attributes) -> None:
        self.handle_starttag(tag, attrs)


def _fault(name: str, value: str) -> str:
    if name.startswith("on") or name == "srcdoc":
        return f'"{name}" is script, which may not stand in a page'
    if name in _FETCHED and not all(is_own(part) for part in value.split(",")):
        return f'"{value[:60]}" would be fetched from another host'
    if name in _FOLLOWED and not is_safe_link(value):
        return f'"{value[:60]}" is no link to a page'
    if name == "style" and "url(" in value.lower():
        return "a style may fetch nothing"
    return ""
