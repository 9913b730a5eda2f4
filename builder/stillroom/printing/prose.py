"""A cook's Markdown as blocks of runs that a Typst template can set.

Paragraphs, lists, headings and table rows with their emphasis are kept; pictures and raw HTML in
the words are left out, links keep their words. Leaves out how any of it looks.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import markdown

from stillroom.core.reading.markup import LenientHTML

_BLOCKS = {"p": "p", "li": "item", "h3": "heading", "h4": "heading", "blockquote": "p", "tr": "row"}
_STYLES = {"em": "em", "i": "em", "strong": "strong", "b": "strong"}


def to_html(text: str) -> str:
    """Turn Markdown into XHTML: every element closed, as an EPUB asks."""
    return markdown.markdown(text, extensions=["tables", "sane_lists"], output_format="xhtml")


def to_blocks(text: str) -> list[dict[str, Any]]:
    """Return blocks as `{"kind": "p"|"item"|"heading"|"row", "number", "runs": [...]}`.

    A run is `{"text", "em", "strong"}`; `number` counts the items of a numbered list from 1.

    >>> to_blocks("Made in *October*.")[0]["runs"][1]
    {'text': 'October', 'em': True, 'strong': False}
    """
    reader = _Reader()
    reader.feed(to_html(text))
    reader.close()
    return [block for block in reader.blocks if block["runs"]]


def to_runs(line: str) -> list[dict[str, Any]]:
    """Return one line of Markdown as runs.

    >>> [run["text"] for run in to_runs("Stir *well*.")]
    ['Stir ', 'well', '.']
    """
    return [run for block in to_blocks(line) for run in block["runs"]]


@dataclass
class _Reader(LenientHTML):
    blocks: list[dict[str, Any]] = field(default_factory=list)
    styles: list[str] = field(default_factory=list)
    numbers: list[int | None] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open a block or a style."""
        if tag in ("ol", "ul"):
            self.numbers.append(0 if tag == "ol" else None)
        elif tag in _STYLES:
            self.styles.append(_STYLES[tag])
        elif tag in ("td", "th"):
            self._cell()
        elif tag in _BLOCKS and not (tag == "p" and self._in_empty_block()):
            self.blocks.append({"kind": _BLOCKS[tag], "number": self._next(tag), "runs": []})

    def _in_empty_block(self) -> bool:
        return bool(self.blocks) and not self.blocks[-1]["runs"]

    def _next(self, tag: str) -> int:
        if tag != "li" or not self.numbers or self.numbers[-1] is None:
            return 0
        self.numbers[-1] += 1
        return self.numbers[-1]

    def _cell(self) -> None:
        if self.blocks and self.blocks[-1]["runs"]:
            self.blocks[-1]["runs"].append({"text": " · ", "em": False, "strong": False})

    def handle_endtag(self, tag: str) -> None:
        """Close a style or a list."""
        if tag in _STYLES and self.styles:
            self.styles.pop()
        elif tag in ("ol", "ul") and self.numbers:
            self.numbers.pop()

    def handle_data(self, data: str) -> None:
        """Add words to the open block."""
        words = " ".join(data.split("\n")) if data.strip() else (" " if " " in data else "")
        if words and self.blocks and (words.strip() or self.blocks[-1]["runs"]):
            run = {
                "text": words,
                "em": "em" in self.styles,
                "strong": "strong" in self.styles,
            }
            self.blocks[-1]["runs"].append(run)
