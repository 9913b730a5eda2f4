"""A page saved to disk: what it states for machines, and else the words that a reader sees.

Leaves out the tree of its tags (tags.py) and what it states (stated.py).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.around_page import around
from stillroom.bringing.found import Origin, Paper, Row
from stillroom.bringing.furniture import is_furniture
from stillroom.bringing.heads import AMOUNT_ALONE, section_of
from stillroom.bringing.plain_text import decode, rows_of, tidy
from stillroom.bringing.published_at import published_at, said_by_meta
from stillroom.bringing.sorting import is_ingredient, is_sentence
from stillroom.bringing.stated import recipes_in_tags
from stillroom.bringing.tables import rows_of_cells
from stillroom.bringing.tags import BLOCKS, Tag, read_tags
from stillroom.bringing.typed_marks import bare
from stillroom.core.lines.staple_table import staples_named

_TYPED: Final = ("pre", "xmp", "listing")  # text with its lines as they were typed
_CHARSET: Final = re.compile(rb"charset\s*=\s*[\"']?\s*([\w-]+)", re.IGNORECASE)
_PARTS: Final = frozenset(["h1", "h2", "h3", "h4", "ul", "ol", "table", "article", "section"])
_FEW_WORDS: Final = 4
_NAMED: Final = re.compile(r"\S\s+\S*[^\W\d_]{2}")
_LEAST_WORDS: Final = 40
_DEEPEST_STEP: Final = 60
_MOST_IN_STEP: Final = 14
_MOST_OF_A_HEAD: Final = 6
_LEADING: Final = frozenset(["div", "ol", "p", "section", "ul"])
_MOST_BESIDE_LINKS: Final = 3
_LEAST_LINKS: Final = 2
_LEAST_LINES: Final = 3
"""Lines of a cell that is a part of the page and no cell of a list."""
_MOST_STRESSED: Final = 20
"""A heading in bold is all that its paragraph holds, or nearly."""


_ENTRY: Final = re.compile(
    r"(?:^|[\s_-])(?:post|entry|article|recipe)[_-]?title(?:$|\s)", re.IGNORECASE
)
_NUMBER_ALONE: Final = re.compile(r"0?\d{1,2}[.):]?")
_HOME: Final = re.compile(r"(?:https?://[^/\s]+)?/?(?:index\.\w+)?|\./|\.\./")


def is_page(text: str) -> bool:
    """Whether a text is HTML: it begins as a page does, or is full of its tags."""
    head = text[:2000].lstrip()
    if re.match(r"<(?:!doctype html|html|head|body|!--|\?xml)", head, re.IGNORECASE):
        return bool(re.search(r"<(?:html|body|div|p|h1|script|ul|table)\b", text, re.IGNORECASE))
    return len(re.findall(r"</(?:p|li|div|h[1-6]|ul|ol|span|td)>", text, re.IGNORECASE)) >= 4


def decode_page(data: bytes) -> str:
    """Return a page's text, in the letters that it says it is written in."""
    said = _CHARSET.search(data[:4096])
    name = said[1].decode("ascii", "replace").lower() if said else ""
    if name and name not in ("utf-8", "utf8") and not data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return tidy(data.decode(name, errors="replace"))
        except (LookupError, UnicodeError):
            return decode(data)
    return decode(data)


def read_page(text: str, called: str) -> Paper:
    """Return what a page states and the rows that a reader sees."""
    page = read_tags(text)
    entry = _name_by_entry(page)
    title, writer = _title(page), said_by_meta(page, "author")
    origin = Origin(called, published_at(page, title), writer, title, others=True)
    rows = _rows(_main(page))
    above = next((at for at, row in enumerate(rows) if entry and row.text == entry), 0)
    if not any(is_ingredient(row.text) for row in rows[:above]):
        rows = rows[above:]
    stated = tuple(recipes_in_tags(page))
    read = (
        title,
        writer,
        *(row.text for row in rows),
        *(one for had in stated for one in had.texts()),
    )
    return Paper(tuple(rows), origin, stated, around=around(page, read))


def _name_by_entry(page: Tag) -> str:
    """Let the heading that a page marks as its entry's be its first; return it, "" for none.

    The first heading of many a page is the site's name.
    """
    marked = [one for one in page.walk() if _ENTRY.search(one.said.get("class", ""))]
    if len(marked) != 1 or not re.fullmatch("h[1-6]", marked[0].name) or not marked[0].words():
        return ""
    for one in page.walk():
        if one.name == "h1" and one is not marked[0]:
            one.said["hidden"] = ""
    marked[0].name = "h1"
    return bare(tidy(marked[0].words()))


def rows_of_page(text: str) -> tuple[Row, ...]:
    """Return the rows of a letter that is written as a page."""
    return tuple(_rows(read_tags(text)))


def _title(page: Tag) -> str:
    for name in ("h1", "title"):
        for tag in page.walk():
            if tag.name == name and tag.words() and not _leads_home(tag):
                return bare(tag.words())
    return ""


def _leads_home(tag: Tag) -> bool:
    """Whether a heading is nothing but a link to the site's first page: the site's own name."""
    links = [one for one in tag.walk() if one.name == "a"]
    [link] = links if len(links) == 1 else [None]
    leads = link.said.get("href", "") if link and link.words() == tag.words() else ""
    return bool(leads and _HOME.fullmatch(leads))


def _main(page: Tag) -> Tag:
    """Return the part of a page that its own words are in."""
    for wanted in ("main", "article"):
        found = [
            tag
            for tag in page.walk()
            if tag.name == wanted or (wanted == "main" and tag.said.get("role") == "main")
        ]
        if len(found) == 1 and len(found[0].words().split()) >= _LEAST_WORDS:
            return found[0]
    return page


def _rows(tag: Tag) -> list[Row]:
    rows: list[Row] = []
    _add_rows(tag, rows, "line", 0)
    return _with_numbers_told(rows)


def _with_numbers_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows without those that hold a step's number alone, where they count on from 1."""
    alone = [at for at, row in enumerate(rows[:-1]) if _NUMBER_ALONE.fullmatch(row.text)]
    counted = [int(re.sub(r"\D", "", rows[at].text)) for at in alone]
    worded = all(_NAMED.search(rows[at + 1].text) for at in alone)
    if len(alone) < _LEAST_LINKS or counted != [*range(1, len(alone) + 1)] or not worded:
        return list(rows)
    told = {at + 1 for at in alone}
    return [
        replace(row, shape="step") if at in told and row.shape == "line" else row
        for at, row in enumerate(rows)
        if at not in alone
    ]


def _add_rows(tag: Tag, rows: list[Row], shape: str, depth: int) -> None:
    """Add the rows of an element; words that stand among others are one row."""
    if is_furniture(tag) or depth > 200:
        return
    if tag.name == "table" and (listed := _listed_in(tag)) is not None:
        rows += listed
        return
    if tag.name in _TYPED and not any(one.name in BLOCKS for one in [*tag.walk()][1:]):
        rows += rows_of(tidy(tag.typed()).expandtabs(4).split("\n"))
        return
    cells = [one for one in tag.inner if isinstance(one, Tag)] if tag.name == "tr" else []
    alone = len(cells) == 1 and _holds_blocks(cells[0])
    if tag.name == "tr" and not alone and not any(map(_lays_out, cells)):
        words = [said for one in cells if (said := one.words())]
        for said in words if _are_things(words) else [" ".join(words)]:
            _add(rows, said, "item")
        return
    if tag.name == "td" and (_is_caption(tag) or _only_links(tag)):
        return
    if tag.name in _LEADING and _leads_within(tag):
        return
    if tag.name in ("ol", "ul") and _only_leads(tag, rows):
        if rows and rows[-1].shape == "heading":  # what heads it goes with it
            rows.pop()
        return
    if re.fullmatch("h[1-6]", tag.name) and _leads_home(tag):
        return
    if re.fullmatch("h[1-6]", tag.name):
        _add(rows, tag.words(), "heading", int(tag.name[1]))
        return
    if tag.name in ("ol", "ul"):
        shape = "step" if tag.name == "ol" else "item"
    elif tag.name == "li" and shape == "step" and depth < _DEEPEST_STEP and (whole := _step(tag)):
        rows.append(whole)
        return
    run: list[str] = []
    for one in tag.inner:
        if isinstance(one, Tag) and _holds_blocks(one):
            _add_run(rows, run, shape, tag)
            run = []
            _add_rows(one, rows, shape if tag.name in ("ol", "ul", "li") else "line", depth + 1)
        elif isinstance(one, Tag):
            run.append("\n" if one.name == "br" else "" if is_furniture(one) else _inline(one))
        else:
            run.append(re.sub(r"\s+", " ", one))
    _add_run(rows, run, shape, tag)


def _step(item: Tag) -> Row | None:
    """Return a numbered item that holds several blocks as one step; None for any other.

    "Prepare the jar" in bold and what is done below it, a list of what goes in behind a colon.
    """
    if not _holds_blocks_within(item):
        return None
    rows: list[Row] = []
    for one in item.inner:
        if isinstance(one, Tag):
            _add_rows(one, rows, "line", _DEEPEST_STEP)
        elif one.strip():
            _add(rows, one, "line")
    texts = [row.text for row in rows]
    parts = any(row.shape == "heading" for row in rows) or any(map(is_ingredient, texts))
    if not 1 < len(rows) <= _MOST_IN_STEP or parts:
        return None
    said = texts[0]
    for above, row in pairwise(rows):
        bold = len(above.text.split()) <= _MOST_OF_A_HEAD and above is rows[0]
        open_ended = re.search(r"[.!?:;,”\"]$", above.text)
        both = above.shape == row.shape == "item"
        said += (" " if open_ended else ", " if both else ": " if bold else ". ") + row.text
    return Row(said, "step")


def _holds_blocks_within(item: Tag) -> bool:
    inner = [one for one in item.walk() if one is not item]
    blocks = sum(one.name in ("p", "div", "ul", "ol", "blockquote") for one in inner)
    return blocks > 1 or (blocks == 1 and any(one.name == "br" for one in inner))


def _listed_in(table: Tag) -> list[Row] | None:
    """Return the list of ingredients that a table draws; None for any other table."""
    drawn = [
        [one for one in row.inner if isinstance(one, Tag) and one.name in ("td", "th")]
        for row in table.walk()
        if row.name == "tr"
    ]
    if any(_lays_out(cell) for row in drawn for cell in row):
        return None
    return rows_of_cells([[bare(tidy(cell.words())) for cell in row] for row in drawn])


def _are_things(cells: Sequence[str]) -> bool:
    """Whether each cell of a row is a thing of its own, as a list set in two columns has them."""
    things = [is_ingredient(cell) and not AMOUNT_ALONE.fullmatch(cell) for cell in cells]
    return len(cells) > 1 and all(things) and all(_NAMED.search(cell) for cell in cells)


def _is_caption(cell: Tag) -> bool:
    """Whether the words of a cell are those of the picture in it, or nearly: "FRESH DATES"."""
    said = cell.words()
    if len(said.split()) > _FEW_WORDS or is_ingredient(said):
        return False
    shown = [one.said.get("alt", "") for one in cell.walk() if one.name == "img"]
    return any(one and one.casefold() in said.casefold() for one in shown)


def _only_leads(tag: Tag, above: Sequence[Row]) -> bool:
    """Whether a list is one of links to elsewhere, a few words each, and none an amount.

    Foods may be links too, but not close below steps: those are other recipes.
    """
    last = above[-_FEW_WORDS:]
    headed = bool(last) and section_of(last[-1].text) == "ingredients"
    told = not headed and any(row.shape == "step" or is_sentence(row.text) for row in last)
    rows = [one for one in tag.inner if isinstance(one, Tag) and one.name == "li"]
    away = bool(rows) and all(map(_leads_away, rows))
    return away and (told or not any(staples_named(row.words()) for row in rows))


def _leads_within(tag: Tag) -> bool:
    """Whether a part of a page leads to other places on it and says little else: its contents."""
    links = [one for one in tag.walk() if one.name == "a" and one.words()]
    if len(links) < _LEAST_LINKS or not all(map(_stays_here, links)):
        return False
    said = len(tag.words())
    return sum(len(one.words()) for one in links) * 3 > said * 2


def _stays_here(link: Tag) -> bool:
    return bool(re.match(r"#.", link.said.get("href", "")))


def _only_links(cell: Tag) -> bool:
    """Whether a cell holds links and next to no other words: where else the site leads.

    Its name, or what heads them, may stand beside: "COOKS | Home | Recipe Box". No amount does.
    """
    links = [one for one in cell.walk() if one.name == "a" and one.words()]
    led = re.findall(r"[^\W_]+", " ".join(one.words() for one in links))
    said = re.findall(r"[^\W_]+", cell.words())
    beside = len(said) - len(led)
    bare = beside <= min(_MOST_BESIDE_LINKS, len(led)) and not re.search(r"[\d½¼¾]", cell.words())
    return len(links) > 1 and (beside == 0 or bare)


def _leads_away(row: Tag) -> bool:
    said = row.words()
    links = [one for one in row.inner if isinstance(one, Tag) and one.name == "a"]
    short = len(said.split()) <= _FEW_WORDS and not re.search(r"[\d½¼¾]", said)
    return short and len(links) == 1 and links[0].words() == said


def _inline(tag: Tag) -> str:
    text = tag.text()
    return f" {text} " if tag.name in ("td", "th") else text


def _lays_out(cell: Tag) -> bool:
    """Whether a cell holds parts of a page, and its table only says where they stand."""
    if any(one.name in _PARTS for one in cell.walk()):
        return True
    lines = cell.text().split("\n")
    return len(lines) >= _LEAST_LINES or (len(lines) > 1 and all(map(is_ingredient, lines)))


def _holds_blocks(tag: Tag) -> bool:
    return any(one.name in BLOCKS for one in tag.walk())


def _add_run(rows: list[Row], run: list[str], shape: str, tag: Tag) -> None:
    if not any(part.strip() for part in run):
        return
    inner = tag.inner[:_MOST_STRESSED]
    stressed = [one for one in inner if isinstance(one, Tag) and one.name in ("b", "strong")]
    for place, line in enumerate(one for one in "".join(run).split("\n") if one.strip()):
        said = bare(tidy(line))
        alone = len(stressed) == 1 and said == bare(stressed[0].words()) and len(said) <= 60
        if alone and tag.name in ("p", "div", "td") and section_of(said):
            _add(rows, said, "heading", 5)
        else:
            _add(rows, said, shape if tag.name == "li" else "line")
            if place and said and rows[-1].shape == "line":  # a line of the paragraph above
                small = said[:1].islower() and not any(is_ingredient(one.text) for one in rows[-2:])
                rows[-1] = replace(rows[-1], gap=False, wraps=small)


def _add(rows: list[Row], text: str, shape: str, level: int = 0) -> None:
    said = bare(tidy(text))
    if said:
        kind = shape if shape in ("heading", "item", "step") else "line"
        rows.append(Row(said, kind, level, gap=kind in ("heading", "line")))  # type: ignore[arg-type]
