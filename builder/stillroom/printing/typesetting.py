"""The one door to Typst: a template and its data in, a PDF out.

Leaves out what is printed. Typst is an extra; without it `typeset` says in plain words how to get
it. The same input gives the same bytes: the time in the file is always 1980-01-01.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stillroom.core.words.problems import Unreadable
from stillroom.looks import PAPER_FONTS

if TYPE_CHECKING:
    import typst

HERE = Path(__file__).parent
TEMPLATES = HERE / "templates"

FIXED_TIME = datetime(1980, 1, 1, tzinfo=UTC)
"""The moment every file says it was made: today's would change the bytes."""

_NO_GLYPH = re.compile(r'the text `"(?P<text>.*?)"` could not be displayed')


class PaperMissing(Exception):
    """Typst is not installed."""

    def __init__(self) -> None:
        super().__init__(
            "Printing to PDF needs Typst, which is not installed. "
            'Install it with: python -m pip install "stillroom[paper]". '
            "Cards and tags print from the browser without it."
        )


@dataclass(frozen=True)
class Typeset:
    """A finished PDF."""

    pdf: bytes


def _typst() -> Any:
    try:
        import typst
    except ImportError:
        raise PaperMissing from None
    return typst


def is_installed() -> bool:
    """Say whether Typst is there, without loading it."""
    return find_spec("typst") is not None


@cache
def _families(folder: Path) -> tuple[str, ...]:
    found = _typst().Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder)]
    )
    return tuple(found.families())


def _compiler(
    template: str, data: Mapping[str, Any], fonts: Path | None, root: Path = TEMPLATES
) -> typst.Compiler:
    if fonts is not None and not fonts.is_dir():
        raise Unreadable(f'There is no folder "{fonts}".', "Name the folder your fonts lie in.")
    own = _families(fonts) if fonts else ()
    inputs = {
        "data": json.dumps(data, ensure_ascii=False, sort_keys=True),
        "fonts": json.dumps(own, ensure_ascii=False),
    }
    compiler: typst.Compiler = _typst().Compiler(
        input=str(root / template),
        root=str(root),
        font_paths=[str(PAPER_FONTS), *([str(fonts)] if fonts else [])],
        ignore_system_fonts=True,
        sys_inputs=inputs,
    )
    return compiler


def typeset(
    template: str,
    data: Mapping[str, Any],
    *,
    fonts: Path | None = None,
    accessible: bool = True,
    root: Path = TEMPLATES,
) -> Typeset:
    """Set a template with its data as a tagged PDF/UA-1.

    `fonts` is a folder of the reader's own fonts for letters the book's faces have not.
    `accessible=False` leaves tags out, for sheets that are folded out of reading order. `root`
    is the folder in which the template and what it reads lie.

    Raises:
        PaperMissing: when Typst is not installed.
        Unreadable: for a letter that no font at hand has.
    """
    compiler = _compiler(template, data, fonts, root)
    with _plain_errors(data):
        pdf = compiler.compile(
            format="pdf",
            pdf_standards=["ua-1"] if accessible else [],
            pdf_tags=accessible,
            timestamp=FIXED_TIME,
        )
    assert isinstance(pdf, bytes)  # one PDF, no output path: Typst returns its bytes
    return Typeset(pdf)


def measure(
    template: str, data: Mapping[str, Any], label: str, *, fonts: Path | None = None
) -> Sequence[Any]:
    """Return the values a template notes under `label`, such as what fits and what does not."""
    compiler = _compiler(template, data, fonts)
    with _plain_errors(data):
        found = compiler.query(f"<{label}>", field="value")
    values: Sequence[Any] = json.loads(found)
    return values


class _plain_errors:
    """Turns Typst's complaint about a missing letter into plain words, and names its word."""

    def __init__(self, data: Mapping[str, Any]) -> None:
        self._data = data

    def __enter__(self) -> None:
        return None

    def __exit__(self, kind: Any, error: BaseException | None, trace: Any) -> None:
        if error is None or not isinstance(error, _typst().TypstError):
            return
        missing = _NO_GLYPH.search(getattr(error, "message", str(error)))
        if missing:
            raise Unreadable(
                f'The book\'s faces have no letter for "{missing["text"]}"'
                f"{self._word_with(missing['text'])}.",
                "Write it in Latin letters, or name a folder of fonts that have it with --fonts.",
            ) from None

    def _word_with(self, letter: str) -> str:
        """Return where a letter stands: ' in "word" of "A title"', as far as the data tell."""
        text = json.dumps(self._data, ensure_ascii=False)
        found = re.search(rf'[^\s"\\]*{re.escape(letter)}[^\s"\\]*', text)
        word = f' in "{found[0]}"' if found and found[0] != letter else ""
        title = _title_with(self._data, letter)
        return f'{word} of "{title}"' if title else word


def _title_with(data: Any, letter: str) -> str:
    """Return the title of the innermost part of the data that has a letter and a title, or ""."""
    parts = data.values() if isinstance(data, Mapping) else data if isinstance(data, list) else ()
    for part in parts:
        if found := _title_with(part, letter):
            return found
    if (
        isinstance(data, Mapping)
        and "title" in data
        and letter in json.dumps(data, ensure_ascii=False)
    ):
        return str(data["title"])
    return ""
