"""The paragraphs of a tagged PDF as a reader hears them, with the lines in which they stand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pdfplumber

_BREAKS_UNSEEN = str.maketrans("", "", "\u200b\u00ad\u2060")
_HYPHENS = ("-", "\u00ad", "\u2010")


@dataclass(frozen=True)
class Paragraph:
    """What one mark of a PDF's structure holds: its kind, and its letters line by line."""

    kind: str
    page: int
    lines: tuple[tuple[dict[str, Any], ...], ...]

    @property
    def said(self) -> list[str]:
        """Its lines as words, breaks that nobody sees left out."""
        return [" ".join(_text(line).split()) for line in self.lines]

    @property
    def text(self) -> str:
        """All its words in one line."""
        return " ".join(self.said)

    @property
    def parted(self) -> list[str]:
        """What stands before a hyphen at the end of its lines, but of its last."""
        raw = ["".join(char["text"] for char in line).rstrip() for line in self.lines[:-1]]
        return [line[:-1].split()[-1] for line in raw if line.endswith(_HYPHENS)]

    def ends(self, line: int) -> tuple[float, float]:
        """Where a line begins and ends, in points from the left."""
        seen = [char for char in self.lines[line] if char["text"].strip()]
        return min(char["x0"] for char in seen), max(char["x1"] for char in seen)

    def width(self, line: int) -> float:
        """How long a line is, in points."""
        left, right = self.ends(line)
        return right - left


def paragraphs_of(pdf: pdfplumber.PDF) -> list[Paragraph]:
    """Return every paragraph, heading and caption of a PDF in the order they are heard."""
    return [one for page in pdf.pages for one in _on_page(page)]


def _on_page(page: Any) -> Iterator[Paragraph]:
    by_mark: dict[int, list[dict[str, Any]]] = {}
    for char in page.chars:
        if char.get("mcid") is not None:
            by_mark.setdefault(char["mcid"], []).append(char)
    for kind, marks in _leaves(page.structure_tree):
        chars = [char for mark in marks for char in by_mark.get(mark, ())]
        lines = _lines(chars)
        if lines:
            yield Paragraph(kind, page.page_number, lines)


def _leaves(tree: list[dict[str, Any]]) -> Iterator[tuple[str, list[int]]]:
    """Yield each block of words with the marks of all that stands within it."""
    for node in tree:
        children = node.get("children", [])
        if node["type"] in ("P", "Caption", "LBody") or node["type"].startswith("H"):
            yield node["type"], _marks(node)
        else:
            yield from _leaves(children)


def _marks(node: dict[str, Any]) -> list[int]:
    found = list(node.get("mcids", []))
    for child in node.get("children", []):
        found += _marks(child)
    return sorted(found)


def _lines(chars: list[dict[str, Any]]) -> tuple[tuple[dict[str, Any], ...], ...]:
    """Return letters by the line they stand on: those of one baseline, small and large alike."""
    lines: list[list[dict[str, Any]]] = []
    for char in chars:
        if char["text"] in ("\u200b", "\u2060"):
            continue
        base = char["matrix"][5]
        if lines and abs(lines[-1][-1]["matrix"][5] - base) < 1:
            lines[-1].append(char)
        else:
            lines.append([char])
    return tuple(tuple(line) for line in lines if any(char["text"].strip() for char in line))


def _text(line: tuple[dict[str, Any], ...]) -> str:
    return "".join(char["text"].translate(_BREAKS_UNSEEN) for char in line)
