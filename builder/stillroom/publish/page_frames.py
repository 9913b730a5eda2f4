"""The frame of recipes' pages: what the theme sets around each is set once, and then only filled.

A thousand recipes' pages differ in their body and in a handful of facts in their head, and in
nothing else: the theme's templates are set once with marks in the places of these, and once with
the page's own words; where the frame filled with them comes to the same, the pages of its kind are
filled. Only where nobody but this book has a hand in pages, and the theme is nobody's own.
"""

from __future__ import annotations

import copy
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, Final

from markupsafe import Markup, escape

from stillroom.publish.late_pages import AS_IT_WAS

if TYPE_CHECKING:
    from jinja2 import Environment, Template
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.pages import Page

_TAG, _BEGIN, _END, _HEADING = "\ue010", "\ue011z9q", "z9q\ue012", "<h1 \ue013>"
"""Signs that no keyboard types; the heading tells the theme that a body brings its own."""
_ANYHOW: Final = "z9q"
"""What stands where a fact was, in whatever way a template writes it."""
_MARK: Final = re.compile(
    rf"(?P<plain><{_TAG}>&amp;)?(?P<escaped>&lt;{_TAG}&gt;&amp;amp;)?(?P<bare>&amp;)?"
    rf"{_BEGIN}(?P<name>\w+){_END}"
)
_WRITTEN: Final[Mapping[str, Callable[[str], str]]] = {
    "plain": str,
    "escaped": lambda words: str(escape(words)),
    "bare": lambda words: str(escape(Markup(words).striptags())),
}
"""The ways in which the templates write a fact: as it is, escaped, its tags taken off as well."""

_Part = str | tuple[str, str]
"""What stands in every page of a kind, or which fact stands there and how it is written."""


def _mark(name: str) -> str:
    return f"<{_TAG}>&amp;{_BEGIN}{name}{_END}"


@dataclass
class PageFrames:
    """The frames of one build, by what decides what is set around a page."""

    template: Template | None = None
    known: dict[tuple[Any, ...], tuple[_Part, ...] | None] = field(default_factory=dict)

    def begin(self, env: Environment) -> None:
        """Forget the frames of the build before this one."""
        self.template = env.get_template("main.html")
        self.known.clear()

    def ask_for(self, page: Page, facts: Mapping[str, Any], config: MkDocsConfig) -> None:
        """Ask for a page to be filled, where it has no more facts than the book gives it."""
        alone = page.parent is None and page.previous_page is None and page.next_page is None
        if alone and not config.theme.custom_dir and page.meta.keys() == facts.keys():
            page.meta["template"] = AS_IT_WAS

    def fill(self, page: Page, context: Mapping[str, Any], body: str) -> str | None:
        """Return a whole page; None of one that is not to be filled."""
        if page.meta.get("template") != AS_IT_WAS or self.template is None:
            return None
        said = {name: words for name, words in page.meta.items() if name != "template"}
        words = {name: one for name, one in said.items() if one and isinstance(one, str)}
        others = {name: one for name, one in said.items() if name not in words}
        words |= {"body": body, "address": page.canonical_url or ""}
        kind = (
            context["base_url"],
            tuple(context["scripts_asked"]),
            tuple(words),
            repr(others),
            bool(words["address"]),
            "<h1" in body,
        )
        if kind not in self.known:
            self.known[kind] = self._try_frame(page, context, words)
        frame = self.known[kind]
        return self._set(page, context, body) if frame is None else _filled(frame, words)

    def _try_frame(
        self, page: Page, context: Mapping[str, Any], words: Mapping[str, str]
    ) -> tuple[_Part, ...] | None:
        """Return the frame around a page; None where the page is set otherwise than it says."""
        marked = copy.copy(page)
        marked.meta = {
            name: _mark(name) if name in words else page.meta[name] for name in page.meta
        }
        marked.title = _mark("title")
        marked.canonical_url = _mark("address") if words["address"] else None
        heading = _HEADING if "<h1" in words["body"] else ""
        frame = _parts_of(self._set(marked, context, f"{heading}{_mark('body')}"), heading)
        if frame is None or _filled(frame, words) != self._set(page, context, words["body"]):
            return None
        return frame

    def _set(self, page: Page, context: Mapping[str, Any], body: str) -> str:
        """Set a page as the theme does."""
        assert self.template is not None
        page.content = body
        try:
            return self.template.render({**context, "page": page})
        finally:
            page.content = ""


def _parts_of(marked: str, heading: str) -> tuple[_Part, ...] | None:
    parts: list[_Part] = []
    place = 0
    marked = marked.replace(heading, "") if heading else marked
    for found in _MARK.finditer(marked):
        ways = [way for way in _WRITTEN if found[way]]
        if len(ways) != 1:
            return None
        parts += [marked[place : found.start()], (found["name"], ways[0])]
        place = found.end()
    parts.append(marked[place:])
    fixed = "".join(part for part in parts if isinstance(part, str)).casefold()
    return None if _ANYHOW in fixed or _TAG in fixed else tuple(parts)


def _filled(frame: tuple[_Part, ...], words: Mapping[str, str]) -> str:
    return "".join(
        part if isinstance(part, str) else _WRITTEN[part[1]](words[part[0]]) for part in frame
    )
