"""Word (.docx) and OpenDocument (.odt) files to rows, by their own open forms.

Both are a zip with XML in it. Only the parts that are needed are read, each up to a limit however
it was packed; XML that makes up letters of its own is refused. Nothing in such a file is run.
"""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ElementTree
import zipfile
import zlib
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.columns import add_columns
from stillroom.bringing.found import Row, Shape
from stillroom.bringing.plain_text import tidy
from stillroom.bringing.sorting import number_of
from stillroom.bringing.tables import rows_of_cells
from stillroom.bringing.typed_marks import bare
from stillroom.core.words.problems import Unreadable

MOST_XML: Final = 20_000_000
MOST_FILES: Final = 5_000
_W: Final = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_T: Final = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_TABLE: Final = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_OFFICE: Final = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
_BROKEN: Final = "Open it in your word processor and save it again, or save it as plain text."
_DEEPEST: Final = 60
_MOST_IN_CELL: Final = 2
"""Paragraphs in a cell of a list: more of them are a part of the sheet."""


def read_word(data: bytes) -> tuple[Row, ...] | None:
    """Return the rows of a Word or OpenDocument text; None for a zip that is neither.

    Raises Unreadable for one that is broken, locked or larger than it says.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as packed:
            names = set(packed.namelist()[:MOST_FILES])
            if "word/document.xml" in names:
                return _from_word(packed, names)
            if "content.xml" in names:
                return _from_open_document(packed)
    except Unreadable:
        raise
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, NotImplementedError, OSError):
        raise Unreadable("This file is broken.", _BROKEN) from None
    except RuntimeError:  # what zipfile says of one with a password
        what = "This file is locked with a password."
        raise Unreadable(what, "Open it in your word processor and save it without one.") from None
    return None


def _part(packed: zipfile.ZipFile, name: str) -> ElementTree.Element:
    """Return one part of the zip as a tree, never more of it than the limit."""
    with packed.open(name) as file:
        text = file.read(MOST_XML + 1)
    if len(text) > MOST_XML:
        what = f"This file holds more than {MOST_XML // 1_000_000} MB of words."
        raise Unreadable(what, "Copy the recipe out of it into a file of its own.")
    if re.search(rb"<!\s*(?:DOCTYPE|ENTITY)", text) or b"<\x00!\x00" in text:
        raise Unreadable("This file makes up letters of its own.", _BROKEN)
    try:
        return ElementTree.fromstring(text)
    except (ElementTree.ParseError, LookupError, RecursionError):
        raise Unreadable("This file is broken.", _BROKEN) from None


def _from_word(packed: zipfile.ZipFile, names: set[str]) -> tuple[Row, ...]:
    styles = _part(packed, "word/styles.xml") if "word/styles.xml" in names else None
    levels = _word_levels(styles)
    numbers = _part(packed, "word/numbering.xml") if "word/numbering.xml" in names else None
    counted = _counted(numbers)
    body = _part(packed, "word/document.xml")
    rows: list[Row] = []
    gap = True
    for paragraph in _word_blocks(body):
        if isinstance(paragraph, list):
            rows += [
                replace(row, gap=row.gap and place == 0) for place, row in enumerate(paragraph)
            ]
            gap = True
            continue
        text = _word_text(paragraph)
        if not text.strip():
            gap = True
            continue
        shape, level = _word_shape(paragraph, levels, counted)
        for line in text.split("\n"):
            _add(rows, line, shape, level, gap)
            gap = False
    return tuple(rows)


def _word_levels(styles: ElementTree.Element | None) -> dict[str, int]:
    """Return the level of each style that is a heading, whatever language named it."""
    found: dict[str, int] = {}
    for style in styles.iter(f"{_W}style") if styles is not None else ():
        name = style.find(f"{_W}name")
        called = (name.get(f"{_W}val") or "").lower() if name is not None else ""
        if heading := re.fullmatch(r"heading (\d)", called):
            found[style.get(f"{_W}styleId") or ""] = int(heading[1])
        elif called == "title":
            found[style.get(f"{_W}styleId") or ""] = 0
        elif called.startswith("list number"):
            found[style.get(f"{_W}styleId") or ""] = -2
        elif called.startswith(("list bullet", "list paragraph")):
            found[style.get(f"{_W}styleId") or ""] = -1
    return found


def _counted(numbers: ElementTree.Element | None) -> frozenset[str]:
    """Return the lists that are numbered and not dotted."""
    if numbers is None:
        return frozenset()
    dotted = {
        one.get(f"{_W}abstractNumId")
        for one in numbers.iter(f"{_W}abstractNum")
        if any(fmt.get(f"{_W}val") == "bullet" for fmt in list(one.iter(f"{_W}numFmt"))[:1])
    }
    found = set()
    for one in numbers.iter(f"{_W}num"):
        link = one.find(f"{_W}abstractNumId")
        if link is not None and link.get(f"{_W}val") not in dotted:
            found.add(one.get(f"{_W}numId") or "")
    return frozenset(found)


def _word_blocks(body: ElementTree.Element) -> Iterator[ElementTree.Element | list[Row]]:
    """Yield every paragraph once, and the lists of ingredients that are drawn as tables.

    What Word writes twice for older programs is passed over.
    """
    waiting = [body]
    while waiting:
        one = waiting.pop()
        if one.tag == f"{_W}p":
            yield one
        elif one.tag == f"{_W}tbl" and (listed := _listed_in(one)) is not None:
            yield listed
        elif not one.tag.endswith("}Fallback"):
            waiting.extend(reversed(list(one)))


def _listed_in(table: ElementTree.Element) -> list[Row] | None:
    """Return the rows of a table of ingredients; None for one that only says where things stand."""
    cells = [
        [
            [said for one in cell.iter(f"{_W}p") if (said := _word_text(one).strip())]
            for cell in row.iter(f"{_W}tc")
        ]
        for row in table.iter(f"{_W}tr")
    ]
    return _rows_of_cells(cells)


def _rows_of_cells(cells: Sequence[Sequence[Sequence[str]]]) -> list[Row] | None:
    """Return the list in a table whose cells hold some paragraphs each; None for no list."""
    if any(len(cell) > _MOST_IN_CELL for row in cells for cell in row):
        return None
    return rows_of_cells(
        [[tidy(" ".join(" ".join(cell).split())) for cell in row] for row in cells]
    )


def _word_text(paragraph: ElementTree.Element) -> str:
    parts: list[str] = []
    waiting = [paragraph]
    while waiting:
        one = waiting.pop()
        if one.tag == f"{_W}t":
            parts.append(one.text or "")
        elif one.tag in (f"{_W}br", f"{_W}cr"):
            parts.append("\n")
        elif one.tag == f"{_W}tab":
            parts.append("\t")
        elif one.tag == f"{_W}noBreakHyphen":
            parts.append("-")
        elif not one.tag.endswith(("}Fallback", "}del", "}instrText", "}pPr", "}rPr")):
            waiting.extend(reversed(list(one)))
    return "".join(parts)


def _word_shape(
    paragraph: ElementTree.Element, levels: dict[str, int], counted: frozenset[str]
) -> tuple[Shape, int]:
    style = paragraph.find(f"{_W}pPr/{_W}pStyle")
    level = levels.get(style.get(f"{_W}val") or "", 9) if style is not None else 9
    if 0 <= level < 9:
        return "heading", level + 1
    listed = paragraph.find(f"{_W}pPr/{_W}numPr/{_W}numId")
    if listed is not None:
        return ("step" if listed.get(f"{_W}val") in counted else "item"), 0
    return ("step" if level == -2 else "item" if level == -1 else "line"), 0


def _from_open_document(packed: zipfile.ZipFile) -> tuple[Row, ...]:
    content = _part(packed, "content.xml")
    text = content.find(f"{_OFFICE}body/{_OFFICE}text")
    if text is None:
        return ()
    rows: list[Row] = []
    _add_open(text, rows, "line", 0)
    return tuple(rows)


def _add_open(tag: ElementTree.Element, rows: list[Row], shape: Shape, depth: int) -> None:
    if depth > _DEEPEST:
        raise Unreadable("This file's lists stand too deep in each other.", _BROKEN)
    gap = not rows
    for one in tag:
        if one.tag == f"{_T}h":
            level = int(one.get(f"{_T}outline-level") or 1)
            _add(rows, _open_text(one), "heading", level, True)
        elif one.tag == f"{_T}p":
            for line in _open_text(one).split("\n"):
                if line.strip():
                    _add(rows, line, shape, 0, gap)
                gap = not line.strip()
        elif one.tag == f"{_TABLE}table" and (listed := _listed_openly(one)) is not None:
            rows += listed
            gap = True
        elif one.tag == f"{_TABLE}table-row" and not _lays_out(one):
            cells = [" ".join(_open_text(cell).split()) for cell in one]
            _add(rows, " ".join(filter(None, cells)), "item", 0, False)
        elif one.tag not in (f"{_T}tracked-changes", f"{_OFFICE}annotation"):
            _add_open(one, rows, "item" if one.tag == f"{_T}list" else shape, depth + 1)


def _cells_openly(row: ElementTree.Element) -> list[list[str]]:
    cells = [one for one in row if one.tag == f"{_TABLE}table-cell"]
    return [
        [said for one in cell.iter(f"{_T}p") if (said := _open_text(one).strip())] for cell in cells
    ]


def _listed_openly(table: ElementTree.Element) -> list[Row] | None:
    return _rows_of_cells([_cells_openly(row) for row in table.iter(f"{_TABLE}table-row")])


def _lays_out(row: ElementTree.Element) -> bool:
    """Whether a row of cells is a part of the sheet: one of them holds several paragraphs."""
    return any(len(cell) > _MOST_IN_CELL for cell in _cells_openly(row))


def _open_text(tag: ElementTree.Element) -> str:
    parts: list[str] = []
    waiting: list[ElementTree.Element | str] = [tag]
    while waiting:
        one = waiting.pop()
        if isinstance(one, str):
            parts.append(one)
            continue
        if one.tail and one is not tag:
            waiting.append(one.tail)
        if one.tag in (f"{_OFFICE}annotation", f"{_T}note"):
            continue
        parts.append({f"{_T}line-break": "\n", f"{_T}tab": "\t", f"{_T}s": " "}.get(one.tag, ""))
        waiting.extend(reversed(list(one)))
        waiting.append(one.text or "")
    return "".join(parts)


def _add(rows: list[Row], text: str, shape: Shape, level: int, gap: bool) -> None:
    if shape in ("line", "item") and "\t" in text.strip() and add_columns(rows, text, gap):
        return
    said = bare(tidy(text.replace("\t", " ")))
    if not said:
        return
    if shape == "line" and number_of(said):
        shape = "step"
    elif shape == "line" and (found := re.match(r"[-*•·‣▪–]\s+(?=\S)", said)):
        shape, said = "item", said[found.end() :]
    rows.append(Row(said, shape, level, gap))
