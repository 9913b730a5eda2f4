"""The pages of recipes as they are written: each body made late and let go, each whole page known.

MkDocs holds every page's HTML from before the first is written until after the last, a thousand
of them at once; here a page gets its own as it is written. While a book is served, a page of which
nothing changed is not set again: it is known by what was worked out, by its facts and by where all
files stand; and that its frame is what it was is told by one such page that is set all the same.
Both only where nobody but this book and its search has a hand in pages.
"""

from __future__ import annotations

import hashlib
import zlib
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from mkdocs.structure.pages import Page
from mkdocs.structure.toc import get_toc

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.files import Files

AS_IT_WAS: Final = "as-it-was.html"
"""The template of a page that is written as it was; it holds nothing else."""
_ASKING: Final = frozenset({"template", "search", "tags"})
"""Facts by which a page asks to be set or sought in a way of its own."""
_EVENTS: Final = ("page_content", "env", "page_context", "post_page", "post_build")
_OF_THE_HOUSE: Final = ("stillroom.", "material.plugins.search.", "mkdocs.contrib.search")


def is_ours_alone(config: MkDocsConfig) -> bool:
    """Say whether nobody but this book and a search has a hand in pages."""
    hands = (hand for event in _EVENTS for hand in config.plugins.events[event])
    return all(
        type(getattr(hand, "__self__", None)).__module__.startswith(_OF_THE_HOUSE) for hand in hands
    )


def render_page(page: Page, config: MkDocsConfig, files: Files) -> None:
    """Turn a page's Markdown into HTML, of which an empty page's reader makes nothing."""
    if page.markdown is None or page.markdown.strip():
        Page.render(page, config, files)
        return
    page.content, page.toc = "", get_toc([])
    page.present_anchor_ids, page.links_to_anchors = set(), {}


@dataclass
class LatePages:
    """The bodies of pages that are yet to be written, by the file each stands for."""

    waiting: dict[str, Callable[[], str]] = field(default_factory=dict)

    def read_when_empty(self, page: Page) -> None:
        """Let a page that is made of no file be read as what it is: nothing."""
        page.render = partial(render_page, page)  # type: ignore[method-assign]

    def body_of(self, page: Page) -> str:
        """Return the body of a page: the one that waits for it, or what it has."""
        waiting = self.waiting.pop(page.file.src_uri, None)
        return waiting() if waiting else page.content or ""


@dataclass
class _Known:
    """A page as it was last written, and what it was made of."""

    made_of: tuple[Any, ...]
    packed: bytes


@dataclass
class PagesAsTheyWere:
    """Whole pages of the build before this one, in one process that serves a book.

    All that are known were set in one frame: where it is seen to be another, all are forgotten.
    """

    known: dict[str, _Known] = field(default_factory=dict)
    around: bytes = b""
    now: dict[str, tuple[Any, ...]] = field(default_factory=dict)
    pages: list[Page] = field(default_factory=list)
    frame_was_seen: bool = False

    def begin(self, config: MkDocsConfig, files: Files) -> None:
        """Begin a build: forget pages that are gone, or all if what is around them changed."""
        around = _sum_around(config, files)
        gone = self.known.keys() if around != self.around else self.known.keys() - self.now.keys()
        for name in tuple(gone):
            del self.known[name]
        self.around, self.frame_was_seen = around, False
        self.now.clear()
        self.pages.clear()

    def watch(self, page: Page, *made_of: Any) -> None:
        """Note what a page is made of; one that the navigation leads to has another frame."""
        alone = page.parent is None and page.previous_page is None and page.next_page is None
        if alone and not _ASKING & page.meta.keys():
            self.now[page.file.src_uri] = (*made_of, dict(page.meta))
            self.pages.append(page)

    def of(self, page: Page) -> str | None:
        """Return a page as it was, where it is one that is written so."""
        if page.meta.get("template") != AS_IT_WAS:
            return None
        return zlib.decompress(self.known[page.file.src_uri].packed).decode()

    def keep(self, page: Page, output: str) -> None:
        """Keep a page that was just set; the first that ought to be as it was tells of frames."""
        name = page.file.src_uri
        if page.meta.get("template") == AS_IT_WAS:
            del page.meta["template"]
        elif name in self.now:
            data = output.encode("utf-8", "xmlcharrefreplace")
            if not self.frame_was_seen and self._is_known(name):
                self._see_frame(zlib.decompress(self.known[name].packed) == data)
            self.known[name] = _Known(self.now[name], zlib.compress(data, level=1))

    def _see_frame(self, holds: bool) -> None:
        self.frame_was_seen = True
        if not holds:
            self.known.clear()
        for page in self.pages:
            if self._is_known(page.file.src_uri):
                page.meta["template"] = AS_IT_WAS

    def _is_known(self, name: str) -> bool:
        known = self.known.get(name)
        return known is not None and known.made_of == self.now[name]


def _sum_around(config: MkDocsConfig, files: Files) -> bytes:
    """Return the sum of what pages stand in: the settings, own templates, where all files are."""
    whole = hashlib.sha256(repr([(file.src_uri, file.url) for file in files]).encode())
    if config.config_file_path:
        whole.update(config.config_file_path.encode())
        whole.update(Path(config.config_file_path).read_bytes())
    own = Path(config.theme.custom_dir) if config.theme.custom_dir else None
    for path in sorted(own.rglob("*")) if own else ():
        found = path.stat()
        whole.update(f"{path} {found.st_mtime_ns} {found.st_size}".encode())
    return whole.digest()
