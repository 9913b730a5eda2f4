"""Any file's bytes to drafts of the recipes in it: what it is decides how it is read.

Its content counts and not its ending, but where the content could be two things. What is no text
is said to be what it is, with what to do about it; no bytes raise.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from stillroom.bringing.chat import read_chat
from stillroom.bringing.dividing import divide
from stillroom.bringing.drafting import draft, draft_own
from stillroom.bringing.found import Brought, BroughtRecipe, Origin, Paper, Recipe, Row
from stillroom.bringing.in_draft import lines_of, listed_nowhere, paper_of_each
from stillroom.bringing.letter import is_letter, read_letter, read_pasted, read_rows
from stillroom.bringing.plain_text import decode, read_text
from stillroom.bringing.quoting import is_pasted_letter
from stillroom.bringing.stated import is_json, recipes_in_json
from stillroom.bringing.web_page import decode_page, is_page, read_page
from stillroom.bringing.word import read_word
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.problems import Problem, Unreadable

LARGEST: Final = 20_000_000
LONGEST: Final = 1_000_000
"""The letters of a text or of a page's own words: longer than a cookery book."""
MOST_ROWS: Final = 20_000
MOST_RECIPES: Final = 200
LONGEST_STEP: Final = 20_000
MOST_LINES: Final = 3_000
"""The lines of one recipe, three times as many as its file may have."""
_NO_NUMBER: Final = re.compile(r"\d{200}")
_TOO_LONG: Final = "This file is longer than a cookery book."
_DIVIDE: Final = "Divide it, and bring the recipes in part by part."
_AS_TEXT: Final = 'Open it in its own program and save it as plain text or as ".docx".'
_TAG: Final = re.compile(r"</[a-zA-Z][a-zA-Z0-9]{0,9}>")
_OTHERS: Final = (
    (b"%PDF", "This is a PDF.", "Copy the recipe's words out of it into a text file."),
    (b"\xd0\xcf\x11\xe0", "This is an older word processor's file.", _AS_TEXT),
    (b"{\\rtf", "This is a word processor's own file, not plain text.", _AS_TEXT),
    (b"\xff\xd8\xff", "This is a picture.", "Type out what stands on it: it cannot be read."),
    (b"\x89PNG", "This is a picture.", "Type out what stands on it: it cannot be read."),
    (b"GIF8", "This is a picture.", "Type out what stands on it: it cannot be read."),
    (b"\x1f\x8b", "This is a packed file.", "Unpack it first, and bring what is in it."),
    (b"bplist00", "This is a web archive of one browser.", 'Save the page again as "page source".'),
    (b"SQLite format 3", "This is another program's store.", _AS_TEXT),
    (b"\x7fELF", "This is a program.", "Bring a text, a page, a letter or a Word file."),
    (b"MZ", "This is a program.", "Bring a text, a page, a letter or a Word file."),
)


def bring(name: str, data: bytes, settings: BookSettings, larder: Larder | None = None) -> Brought:
    """Return drafts of every recipe in a file, each with its questions; never raises.

    `name` is how the file is called in messages, `settings` and `larder` the book's.
    """
    try:
        return Brought(name, _named_apart(_drafts(_papers(name, data), settings, larder)))
    except Unreadable as wrong:
        return Brought(name, problems=(Problem(name, 1, wrong.what, wrong.mend),))


def _drafts(
    papers: list[Paper], settings: BookSettings, larder: Larder | None
) -> list[BroughtRecipe]:
    """Return a draft of every recipe of some papers; raises Unreadable where one cannot be had."""
    if any(len(paper.rows) > MOST_ROWS for paper in papers):
        raise Unreadable(_TOO_LONG, _DIVIDE)
    for paper in papers:
        _refuse_no_number("\n".join(row.text for row in paper.rows))
    found = [(paper, _recipes(paper)) for paper in papers]
    many = sum(len(recipes) for _, recipes in found)
    if many > MOST_RECIPES:
        what = f"There are {many} recipes in it; {MOST_RECIPES} are the most at once."
        raise Unreadable(what, _DIVIDE)
    if not many:
        what = "No recipe was found in it."
        mend = (
            "Bring the words of a recipe: a list and a method. What hangs from a letter may be"
            " brought by itself."
        )
        raise Unreadable(what, mend)
    lines = max(len(one.ingredients) + len(one.steps) for _, some in found for one in some)
    if lines > MOST_LINES:
        what = f"One recipe in it has {lines} lines; {MOST_LINES} are the most."
        raise Unreadable(what, _DIVIDE)
    if any(len(step) > LONGEST_STEP for _, some in found for one in some for _, step in one.steps):
        raise Unreadable(_TOO_LONG, _DIVIDE)
    return [one for paper, recipes in found for one in _drafts_of(paper, recipes, settings, larder)]


def _drafts_of(
    paper: Paper, recipes: list[Recipe], settings: BookSettings, larder: Larder | None
) -> list[BroughtRecipe]:
    """Return the drafts of one paper, each with the paper's lines that belong beside it."""
    if paper.own_form:
        return [draft_own(paper, settings, larder)]
    lines, may_go_on = lines_of(paper, recipes)
    drafts = [draft(one, paper.origin, settings, larder) for one in recipes]
    papers = paper_of_each(lines, [one.text for one in drafts], may_go_on)
    for at, recipe in enumerate(recipes):
        if lost := listed_nowhere(papers[at], drafts[at]):
            recipe.doubt("ingredients", *lost)
            drafts[at] = draft(recipe, paper.origin, settings, larder)
    beside = zip(drafts, papers, strict=True)
    return [replace(one, came=came, around=paper.around) for one, came in beside]


def _papers(name: str, data: bytes) -> list[Paper]:
    """Return what a file holds: one paper, or a letter's words and the files that hang from it."""
    if len(data) > LARGEST:
        most = f"{LARGEST // 1_000_000} MB"
        raise Unreadable(f"This file is larger than {most}.", "Bring the recipe alone.")
    if not data.strip(b" \t\r\n\x00"):
        raise Unreadable("This file is empty.", "Bring the words of a recipe.")
    for begin, what, mend in _OTHERS:
        if data.startswith(begin):
            raise Unreadable(what, mend)
    if data.startswith(b"PK\x03\x04") or data.startswith(b"PK\x05\x06"):
        rows = read_word(data)
        if rows is None:
            raise Unreadable("This is a packed file.", "Unpack it first, and bring what is in it.")
        return [_of_word(rows, Origin(name))]
    text = decode_page(data)
    if _is_no_text(text, data):
        raise Unreadable("This file is no text.", "Bring a text, a page, a letter or a Word file.")
    if name.lower().endswith((".eml", ".mht", ".mhtml")) or is_letter(text):
        return _of_letter(name, data)
    if is_page(text) or (name.lower().endswith((".html", ".htm")) and _TAG.search(text[:LONGEST])):
        return [read_page(text, name)]
    if is_json(text):
        stated = recipes_in_json(text)
        if not stated:
            what = "This is a program's file, and it states no recipe in the open way."
            raise Unreadable(what, "Bring the words of the recipe as plain text.")
        return [Paper((), Origin(name, others=True), tuple(stated))]
    if len(text) > LONGEST:
        raise Unreadable(_TOO_LONG, _DIVIDE)
    _refuse_no_number(text)
    if chat := read_chat(decode(data), name):
        return [chat]
    if is_pasted_letter(text):
        return [read_pasted(decode(data), name)]
    return [read_text(decode(data), Origin(name))]


def _of_word(rows: tuple[Row, ...], origin: Origin) -> Paper:
    """Return what a word processor's file holds; a letter that was put into it is read as one."""
    if is_pasted_letter("\n".join(row.text for row in rows)):
        return Paper(*read_rows(rows, origin))
    return Paper(rows, origin)


def _refuse_no_number(text: str) -> None:
    """Raise Unreadable where a number has more figures than anybody reads, or looks through."""
    if _NO_NUMBER.search(text):
        raise Unreadable("A number of hundreds of figures stands in it.", "Take it out.")


def _is_no_text(text: str, data: bytes) -> bool:
    """Whether bytes are no text at all: many of them are nothing that anybody types."""
    odd = sum(data.count(bytes([sign])) for sign in (*range(9), *range(14, 27)))
    wide = data[:2] in (b"\xff\xfe", b"\xfe\xff")
    return not text.strip() or (odd * 50 > len(data) and not wide)


def _of_letter(name: str, data: bytes) -> list[Paper]:
    rows, origin, hung = read_letter(data, name)
    papers = []
    for called, content in hung:
        try:
            inner = [] if called.lower().endswith(".eml") else _papers(called, content)
        except Unreadable:
            continue  # a picture or a signature that hangs from a letter is no recipe
        papers += [
            replace(one, origin=replace(one.origin, writer=one.origin.writer or origin.writer))
            for one in inner
        ]
    own = Paper(rows, origin)
    worth = [one for one in papers if _recipes(one)]
    return worth if worth and not _has_list(own) else [own, *worth]


def _has_list(paper: Paper) -> bool:
    return any(one.ingredients for one in divide(paper))


def _recipes(paper: Paper) -> list[Recipe]:
    """Return the recipes that a paper states, gaps filled from its words, or those of its words."""
    if paper.own_form:
        return [Recipe()]
    seen = divide(paper) if paper.rows else []
    if not paper.stated:
        return [one for one in seen if one.ingredients or one.steps]
    if len(paper.stated) == 1:
        one = paper.stated[0]
        for other in seen:
            if not one.ingredients and other.ingredients:
                one.ingredients = other.ingredients
            if not one.steps and other.steps and other.ingredients:
                one.steps = other.steps
            _take_groups(one, other)
        _take_keeping(one, paper)
    return list(paper.stated)


def _take_keeping(one: Recipe, paper: Paper) -> None:
    """Take what only the words of a page say of keeping; it is asked about as any note is."""
    has = " ".join(
        [*one.intro, *(step for _, step in one.steps), *(" ".join(row) for _, row in one.notes)]
    )
    said = (found[0] for found in map(may_say_keeping, (row.text for row in paper.rows)) if found)
    if more := [sentence for sentence in dict.fromkeys(said) if sentence not in has]:
        one.notes.append(("Storage", more[:3]))


def _take_groups(one: Recipe, other: Recipe) -> None:
    """Take the headings of a list from the words of the page, where the lines are the same."""
    if [row for _, row in one.ingredients] == [row for _, row in other.ingredients]:
        one.ingredients = other.ingredients


def _named_apart(drafts: list[BroughtRecipe]) -> tuple[BroughtRecipe, ...]:
    """Give two recipes of one file names of their own."""
    taken: set[str] = set()
    found = []
    for one in drafts:
        slug, number = one.slug, 2
        while slug in taken:
            slug, number = f"{one.slug}-{number}", number + 1
        taken.add(slug)
        found.append(replace(one, slug=slug))
    return tuple(found)
