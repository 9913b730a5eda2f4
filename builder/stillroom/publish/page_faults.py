"""What may not stand in a page that the book's maker wrote, told with its file and line."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from mkdocs.structure.files import File

from stillroom.core.words.problems import Problem
from stillroom.publish.clean_html import find_faults

_MEND = (
    "A page of the book runs no script, sends nothing and fetches nothing from elsewhere: "
    "leave it out, or put the picture among the book's own."
)


def find_page_faults(html: str, file: File) -> Iterator[Problem]:
    """Return a problem for each thing in the HTML of a page that may not be published."""
    for what, written in find_faults(html):
        yield Problem(file.src_uri, _line_of(written, file), f"{what}.", _MEND)


def _line_of(written: str, file: File) -> int:
    """Return the line of a page's file that holds a tag as it is written; 1 where none does."""
    if not file.abs_src_path:
        return 1
    lines = Path(file.abs_src_path).read_text(encoding="utf-8-sig", errors="replace").splitlines()
    begin = written.split("\n")[0][:40]
    exact = [number for number, line in enumerate(lines, 1) if begin in line]
    tag = written.lstrip("<").split(maxsplit=1)[0].rstrip(">").lower()
    like = [number for number, line in enumerate(lines, 1) if f"<{tag}" in line.lower()]
    return next(iter([*exact, *like]), 1)
