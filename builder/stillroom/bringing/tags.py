"""A page's HTML as a small tree, read by Python's own reader whatever is wrong with it.

Leaves out what the page says: web_page.py and stated.py look for that.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Final

from stillroom.core.reading.markup import LenientHTML

VOID: Final = frozenset(
    [
        "area",
        "base",
        "br",
        "col",
        "embed",
        "hr",
        "img",
        "input",
        "link",
        "meta",
        "param",
        "source",
        "track",
        "wbr",
    ]
)
BLOCKS: Final = frozenset(
    [
        "address",
        "article",
        "aside",
        "blockquote",
        "body",
        "center",
        "dd",
        "details",
        "div",
        "dl",
        "dt",
        "fieldset",
        "figcaption",
        "figure",
        "footer",
        "form",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "header",
        "hr",
        "html",
        "legend",
        "li",
        "listing",
        "main",
        "nav",
        "ol",
        "p",
        "pre",
        "section",
        "summary",
        "table",
        "tbody",
        "td",
        "tfoot",
        "th",
        "thead",
        "tr",
        "ul",
        "xmp",
    ]
)
_CLOSED_BY: Final = {
    "li": {"li"},
    "p": BLOCKS - {"html", "body"},
    "dt": {"dt", "dd"},
    "dd": {"dt", "dd"},
    "tr": {"tr"},
    "td": {"td", "th", "tr"},
    "th": {"td", "th", "tr"},
    "option": {"option"},
}
_DEEPEST: Final = 150
_MOST: Final = 60_000


@dataclass
class Tag:
    """One element: its name, what is written in its tag, what it holds."""

    name: str
    said: dict[str, str] = field(default_factory=dict)
    inner: list[Tag | str] = field(default_factory=list)

    def walk(self) -> Iterator[Tag]:
        """Yield this element and every one within it, in order."""
        waiting = [self]
        while waiting:
            one = waiting.pop()
            yield one
            waiting.extend(inner for inner in reversed(one.inner) if isinstance(inner, Tag))

    def text(self) -> str:
        """Return the words within, a line break where the page has one."""
        parts: list[str] = []
        waiting: list[Tag | str] = [self]
        while waiting:
            one = waiting.pop()
            if isinstance(one, str):
                parts.append(one)
            elif one.name == "br":
                parts.append("\n")
            elif one.name not in ("script", "style", "template", "noscript"):
                block = one.name in BLOCKS
                waiting.extend(["\n"] if block else [])
                waiting.extend(reversed(one.inner))
                waiting.extend(["\n"] if block else [])
        lines = (" ".join(line.split()) for line in "".join(parts).split("\n"))
        return "\n".join(line for line in lines if line)

    def typed(self) -> str:
        """Return the words within as they were typed, with all their blanks and lines."""
        return "".join(
            one if isinstance(one, str) else "\n" if one.name == "br" else one.typed()
            for one in self.inner
        )

    def words(self) -> str:
        """Return the words within on one line."""
        return " ".join(self.text().split())


def read_tags(text: str) -> Tag:
    """Return a page as a tree; what is too deep hangs from the last that is not."""
    reader = _Reader()
    reader.feed(text)
    reader.close()
    return reader.root


class _Reader(LenientHTML):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.root = Tag("page")
        self.open = [self.root]
        self.count = 0
        self.comments: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.count += 1
        if self.count > _MOST:
            return
        while len(self.open) > 1 and tag in _CLOSED_BY.get(self.open[-1].name, ()):
            self.open.pop()
        if tag == "li":
            self._close_to("li", {"ul", "ol"})
        new = Tag(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inner.append(new)
        if tag not in VOID and len(self.open) < _DEEPEST:
            self.open.append(new)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        if tag not in VOID:
            self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        places = [place for place, one in enumerate(self.open) if one.name == tag]
        if places and places[-1] > 0:
            del self.open[places[-1] :]

    def handle_data(self, data: str) -> None:
        self.open[-1].inner.append(data)

    def handle_comment(self, data: str) -> None:
        if data.strip().startswith("saved from url"):
            self.root.said["saved from"] = data.partition(")")[2].strip()

    def _close_to(self, tag: str, within: set[str]) -> None:
        for place in range(len(self.open) - 1, 0, -1):
            if self.open[place].name in within:
                return
            if self.open[place].name == tag:
                del self.open[place:]
                return
