"""A page's sections as the theme's search reads them, of HTML that is closed and escaped.

It judges as Material's own reader of pages does (material/plugins/search/plugin.py, `Parser`, whose
lists of elements to keep and to skip it takes), and knows an element by its name as that one does;
to make an object of each element and to compare all of them at each word takes that one four times
as long. A test holds both against each other. HTML of any other sort is left to the theme's reader.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import cache
from html import escape, unescape
from math import inf
from typing import Any, Final

_TAG: Final = r'<([a-z][a-z0-9-]*)((?:\s+[a-zA-Z][\w:-]*(?:="[^"<]*"|=\'[^\'<]*\')?)*)\s*(/?)>'
_PARTS: Final = re.compile(rf"{_TAG}|</([a-z][a-z0-9-]*)>|([^<]+)")
"""A tag in small letters with its attributes in quotes, an end, or the words between two."""
_ASKED: Final = re.compile(
    r"""\s(id|class|data-search-exclude)(?:="([^"]*)"|='([^']*)')?(?![\w:-])"""
)
"""The attributes that the theme's search asks for."""
_PERMALINK: Final = "headerlink"
_HEADINGS: Final = frozenset(f"h{rank}" for rank in range(1, 7))
_STAY_SKIPPED: Final = ("script", "style", "object")
_NO_HEADING: Final = "hx"


@dataclass
class Section:
    """Words behind a heading, and its own: `within` is the heading's element."""

    within: str
    depth: float = 0
    excluded: bool = False
    id: str | None = None
    title: list[str] = field(default_factory=list)
    text: list[str] = field(default_factory=list)


def read_sections(html: str) -> list[Section]:
    """Return the sections of a page, those too that are not to be searched."""
    parts = _PARTS.findall(html)
    if _PERMALINK in html or sum(not text for *_, text in parts) != html.count("<"):
        return _as_the_theme_reads(html)
    reader = _Reader()
    for tag, attributes, alone, end, text in parts:
        if text:
            reader.hear(unescape(text) if "&" in text else text)
            continue
        if tag:
            reader.begin(tag, attributes)
        if end or alone:
            reader.end(end or tag)
    return reader.sections


def _as_the_theme_reads(html: str) -> list[Section]:
    parser = _theme().Parser()
    parser.feed(html)
    parser.close()
    return [
        Section(one.el.tag, one.depth, one.is_excluded(), one.id, one.title, one.text)
        for one in parser.data
    ]


@cache
def _theme() -> Any:
    from material.plugins.search import plugin  # type: ignore[import-untyped]  # late: for no check

    return plugin


@cache
def _elements() -> tuple[frozenset[str], frozenset[str], frozenset[str]]:
    """Return the names of the elements that the theme skips, keeps, and that hold nothing."""
    parser = _theme().Parser()
    return frozenset(parser.skip), frozenset(parser.keep), frozenset(_theme().void)


class _Reader:
    """Reads a page part by part."""

    def __init__(self) -> None:
        """Begin outside of every section."""
        skip, self.keep, self.void = _elements()
        self.skip = set(skip)
        self.around: list[str] = []
        self.sections: list[Section] = []
        self.section: Section | None = None

    def begin(self, tag: str, attributes: str) -> None:
        """Go into an element."""
        if tag in self.void:
            return
        self.around.append(tag)
        asked = {}
        if attributes:
            asked = {name: one or two for name, one, two in _ASKED.findall(attributes)}
        if tag in _HEADINGS and "id" in asked:
            if tag != "h1" and not self.sections:
                self._open(Section(_NO_HEADING, len(self.around)))
            known = unescape(asked["id"]) if self.sections else None
            excluded = "data-search-exclude" in asked
            self._open(Section(tag, len(self.around), excluded, known))
        section = self._here()
        if "data-search-exclude" in asked or asked.get("class") == "linenodiv":
            self.skip.add(tag)
        elif tag in self.keep and self.skip.isdisjoint(self.around):
            self._list(section).append(f"<{tag}>")

    def end(self, tag: str) -> None:
        """Go out of an element, and out of a section whose heading lay deeper."""
        if not self.around or self.around[-1] != tag:
            return
        depth = len(self.around)
        if self._here().depth > depth:
            self._leave(depth)
        self.around.pop()
        if tag in self.skip:
            if tag not in _STAY_SKIPPED:
                self.skip.remove(tag)
        elif tag in self.keep and self.skip.isdisjoint(self.around):
            _close(tag, self._list(self._here()))

    def hear(self, words: str) -> None:
        """Take the words between two tags."""
        if not self.skip.isdisjoint(self.around):
            return
        blank = words.isspace()
        if "pre" not in self.around:
            words = " " if blank else words.replace("\n", " ")
        section = self._here()
        if section.within in self.around:
            section.title.append(escape(words, quote=False))
        elif not blank:
            section.text.append(escape(words, quote=False))
        elif not section.text or not section.text[-1].isspace() or "pre" in self.around:
            section.text.append(words)

    def _here(self) -> Section:
        return self.section or self._open(Section(_NO_HEADING))

    def _open(self, section: Section) -> Section:
        self.section = section
        self.sections.append(section)
        return section

    def _list(self, section: Section) -> list[str]:
        return section.title if section.within in self.around else section.text

    def _leave(self, depth: int) -> None:
        outer = next((one for one in reversed(self.sections) if one.depth <= depth), None)
        if outer is not None:
            self._here().depth, self.section = inf, outer


def _close(tag: str, kept: list[str]) -> None:
    """Write the end of an element, or take it out where nothing was in it."""
    begun = kept.index(f"<{tag}>")
    if any(not part.isspace() for part in kept[begun + 1 :]):
        kept.append(f"</{tag}>")
    else:
        del kept[begun:]
