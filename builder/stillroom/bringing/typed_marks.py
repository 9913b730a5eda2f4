"""The marks that writing programs leave in a text: notes at its foot, boxes, small pictures, names.

reStructuredText's and Markdown's, as people's own collections have them. They are taken out and
the words stay. Leaves out headings, items and stress: plain_text.py.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from typing import Final

# ".. index:: Plum", ".. _plum_jam:": for a machine alone
_FOR_A_MACHINE: Final = re.compile(
    r"\s*\.\.\s+(?:_[^\s:]+:|\[[^\]]+\]"
    r"|(?:index|image|figure|include|contents|toctree|meta|raw|highlight)::.*)\s*$"
)
# "> [!INFO]", ":::two-columns", "#drink #easy": a writing program's own
_OWN_MARK: Final = re.compile(
    r"\s*(?:(?:>\s*)*\[![A-Za-z]{2,20}\][+-]?|:{3,}\s*[\w{} .-]{0,60}"
    r"|(?:#[^\W\d_][\w/-]*\s*){2,})\s*$"
)
# "> [!note] For the hampers", "# Chili rub #gifts", "==1 teaspoon=="
_BOX_NAMED: Final = re.compile(r"^(\s*(?:>\s*)*)\[![A-Za-z]{2,20}\][+-]?\s+(?=\S)")
_TAGS_BEHIND: Final = re.compile(r"^(#{1,6}\s+[^#\n]{1,200}?)(?:\s+#[^\W\d_][\w/-]*)+\s*$")
_MARKED: Final = re.compile(r"==([^=\n]{1,300})==")
# "[[smoked paprika]]", "[[Paprika|smoked paprika]]": a leaf of the same notes
NAMED_LEAF: Final = re.compile(r"(?<!!)\[\[(?:[^\[\]|\n]{0,200}\|)?([^\[\]|\n]{1,200})\]\]")
"""A link to another leaf of a note program; the words that are shown are its group."""
# "#. Stir.": numbered by whoever shows it
_NUMBERS_ITSELF: Final = re.compile(r"(\s*)#\.\s+(?=\S)")
_LINK_ENDS: Final = re.compile(r"^[^`]{0,400}>`__?")
_LONG_STEP: Final = re.compile(r"\s{0,12}\d{1,2}[.)]\s.{40}")
_ENDS_OPEN: Final = re.compile(r"[^.:;!?)\s]\s*$")
_TAIL: Final = 20
_INDENTED_WORDS: Final = re.compile(r"\s{2,}(?!\d{1,2}[.)]\s|[-*+•]\s)\S")
# ".. note:: Stir.", "!!! tip", '???+ example "Proportions"': a box round the words below it
_BOX: Final = re.compile(
    r"\s*(?:\.\.\s+(?P<rest>note|tip|hint|warning|caution|attention|important|danger|error|seealso)::\s*(?P<said>.*)"
    r"|(?:!!!|\?\?\?\+?)\s+[\w -]+?(?:\s+\"(?P<title>[^\"]*)\")?)\s*$"
)
# ":lucide-chef-hat:", ":cookie:" alone at an end of the line or between blanks
_SMALL_PICTURE: Final = re.compile(
    r"(?:(?<=\s)|^):[a-z][a-z0-9]*(?:[-_+][a-z0-9]+)*:(?:\{[^{}\n]{0,80}\})?(?=\s|$|[|])"
)
# small pictures before the words of a line: a page's signs for a pan, a clock, the cooks
_PICTURES_FIRST: Final = re.compile(
    r"^(?:[\U0001f000-\U0001faff\u2600-\u27bf\ufe0f]+\s*)+(?=[^\W\d_])"
)
_SAID_OF_A_LINK: Final = re.compile(r"(?<=[)\]])\{:?\s*[^{}\n]{0,80}\}")
_LINK: Final = re.compile(r"`(?P<words>[^`<>\n]{1,200})\s<(?P<to>[^<>\s]{1,400})>`__?")
_FOOTNOTE: Final = re.compile(r"\s*\[\^[^\]\s]{1,20}\]:\s+(?=\S)")
_FOOTNOTE_SIGN: Final = re.compile(r"(?<=\S)\[\^[^\]\s]{1,20}\]")
_TICKS: Final = re.compile(r"(?<![`\w])`([^`\n]{1,80})`(?![`\w])")
# "* Note: bottled juice is best", "*optional", typed below the method for a star above it
_STARRED: Final = re.compile(r"^\s*\*\s*(?=[^\W_])")
_STAR_BEHIND: Final = re.compile(r"^[^*]*[^\W_]\)?\*(?=[\s,;:.)]|$)")
_MOST_NOTES: Final = 2
_PICTURE: Final = re.compile(r"!\[[^\[\]\n]{0,300}\]\([^)\n]{0,500}\)")
_LINKED: Final = re.compile(
    r"\[([^\[\]\n]{1,300})\]\([^()\n]{0,500}(?:\([^()\n]{0,200}\)[^()\n]{0,300})?\)"
)
_ADDRESS: Final = re.compile(r"<(https?://[^\s<>]+)>")
_TAG: Final = re.compile(r"</?[A-Za-z][^<>\n]{0,200}>")
_STRESS: Final = re.compile(r"(?<![\w*])(\*{1,3}|__)(?=\S)(.+?)(?<=\S)\1(?![\w*])")
WIDEST: Final = 2_000
"""Letters of a line that are looked at in one go; a longer one is a whole chapter's."""


def pieces(text: str, most: int = WIDEST) -> Iterator[str]:
    """Yield a long text in pieces, parted at blanks; what looks at each stays quick.

    >>> list(pieces("one two three", 8))
    ['one two', 'three']
    """
    start = 0
    while len(text) - start > most:
        end = text.rfind(" ", start, start + most)
        end = end if end > start else start + most
        yield text[start:end]
        start = end + (text[end : end + 1] == " ")
    yield text[start:]


def bare(text: str) -> str:
    """Return words without HTML, marks of stress, pictures and the addresses of links.

    >>> bare("**Beat** the [egg](https://a.example/egg) &amp; <b>stir</b>.")
    'Beat the egg & stir.'
    """
    if len(text) > WIDEST:
        return " ".join(bare(piece) for piece in pieces(text))
    text = _ADDRESS.sub(r"\1", _LINKED.sub(r"\1", _PICTURE.sub("", text)))
    text = _PICTURES_FIRST.sub("", html.unescape(_TAG.sub("", text)))
    return " ".join(_STRESS.sub(r"\2", _STRESS.sub(r"\2", text)).split())


def without_marks(lines: list[str]) -> list[str]:
    """Return lines without the marks of a writing program, their words kept.

    >>> without_marks([".. index:: Jam", ".. note:: Stir well.", "salt[^1]", "[^1]: or none"])
    ['', 'Note: Stir well.', 'salt', '*or none']
    """
    lines = _with_wrapped_steps(_with_own_numbers(_without_what_machines_read(lines)))
    return _with_stars_as_notes([_line(line) for line in lines])


def _without_what_machines_read(lines: list[str]) -> list[str]:
    """Return lines without what is indented below a mark for a machine, and links put together."""
    kept: list[str] = []
    within = -1
    for line in lines:
        indent = len(line) - len(line.lstrip())
        if within >= 0 and (indent > within or not line.strip()):
            continue
        within = indent if _FOR_A_MACHINE.match(line) else -1
        if kept and kept[-1].count("`") % 2 and _LINK_ENDS.search(line):
            kept[-1] = f"{kept[-1]} {line.strip()}"
        else:
            kept.append(line)
    return kept


def _with_own_numbers(lines: list[str]) -> list[str]:
    """Return lines with "#. Stir." numbered as they follow each other.

    >>> _with_own_numbers(["#. Stir.", "   Wait.", "#. Boil.", "", "Other", "", "#. Cut."])
    ['1. Stir.', '   Wait.', '2. Boil.', '', 'Other', '', '1. Cut.']
    """
    kept, number = [], 0
    for line in lines:
        if found := _NUMBERS_ITSELF.match(line):
            number += 1
            line = f"{found[1]}{number}. {line[found.end() :]}"
        elif line.strip() and not line[:1].isspace():
            number = 0
        kept.append(line)
    return kept


def _with_wrapped_steps(lines: list[str]) -> list[str]:
    """Return lines with a long numbered step on one, where its writer's program broke it.

    >>> step = "3. Roll the dough into balls and put them on sheets, each"
    >>> _with_wrapped_steps([step, "   2 inches from it.", "   Bake."])[0][-22:]
    'each 2 inches from it.'
    """
    kept: list[list[str]] = []
    open_ended = False
    for line in lines:
        if open_ended and _INDENTED_WORDS.match(line):
            kept[-1].append(line.strip())
            open_ended = _ENDS_OPEN.search(line[-_TAIL:]) is not None
            continue
        kept.append([line])
        begins = _LONG_STEP.match(line)
        open_ended = begins is not None and _ENDS_OPEN.search(line[-_TAIL:]) is not None
    return [" ".join(parts) for parts in kept]


def _line(line: str) -> str:
    if _FOR_A_MACHINE.match(line) or _OWN_MARK.match(line):
        return ""
    if box := _BOX.match(line):
        said = (box["said"] or "").strip()
        return f"Note: {said}" if said else (box["title"] or "").strip()
    line = _TAGS_BEHIND.sub(r"\1", _BOX_NAMED.sub(r"\1", _FOOTNOTE.sub("*", line)))
    if "==" in line:
        line = _MARKED.sub(r"\1", line)
    if "`" in line:
        line = _TICKS.sub(r"\1", _LINK.sub(r"\g<words> \g<to>", line))
    return _FOOTNOTE_SIGN.sub("", _SAID_OF_A_LINK.sub("", _SMALL_PICTURE.sub("", line)))


def _with_stars_as_notes(lines: list[str]) -> list[str]:
    """Return lines with "* See below" as a note where a word above it bears the star.

    One or two such lines stand apart; three and more are a list.
    """
    starred = [at for at, line in enumerate(lines) if _STARRED.match(line)]
    if not 1 <= len(starred) <= _MOST_NOTES:
        return lines
    above = [at for at, line in enumerate(lines) if at not in starred and _STAR_BEHIND.search(line)]
    if not above:
        return lines
    return [
        "*" + _STARRED.sub("", line) if at in starred and above[0] < at else line
        for at, line in enumerate(lines)
    ]
