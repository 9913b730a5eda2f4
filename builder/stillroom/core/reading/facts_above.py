"""The facts above a recipe's method, read line by line as a cook writes them.

One fact to a line, `name: value`; lists under dashes; quotes and brackets as is usual. What other
programs write into such a file reads the same here, but every value stays the words that were
written: `NO` is Norway, `12:30` a time, `1_000` what it says. A colon or a "%" inside a line, a
tab, a list without dashes are read as they are meant, or told at their line. What is not here:
the meaning of a fact (recipe.py).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from stillroom.core.words.frontmatter import Located
from stillroom.core.words.odd_figures import find_endless, find_no_measure
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable
from stillroom.core.words.quoted_text import (
    CLOSES,
    ends_at,
    read_brackets,
    stands_alone,
    unclosed,
    unquote,
)

LISTS_OF_WORDS: Final = frozenset(
    {"vessel", "vessels", "containers", "season", "was", "cautions", "parts"}
)
LISTS_OF_LINES: Final = frozenset({"ingredients", "materials", "timeline"})
DEEPEST: Final = 6
MOST_LINES: Final = 1_000
LONGEST_FACT: Final = 1_000
_BULLET: Final = late_regex(r"(?:[-•·‣▪]\s*|[*–—+](?:\s+|(?=[\d½¼¾])))(?=\S)|[-•·‣▪*–—+]$")
_KEYED: Final = late_regex(
    r"""(?P<key>"(?:[^"\\]|\\.){1,90}"|'[^']{1,60}'|[^\s:"'\[\]{}#,][^:"\[\]{}#,]{0,60}?)\s*:"""
    r"(?:\s+(?P<rest>.*))?$"
)
_GLUED: Final = late_regex(r"(?P<key>[A-Za-z][A-Za-z _]{1,20}):(?P<rest>\S.*)$")
_MEANT: Final = late_regex(r"(?P<key>[A-Za-z_]{2,20})(?:\s*[=：;:–—-]+\s*|\s+)(?P<rest>.*)$")
_TWO_FACTS: Final = late_regex(
    r"\s*[;,|]\s*(?P<key>title|kind|makes|keeps)\s*:\s+(?P<rest>\S.*)$", re.I
)
_NOTE: Final = late_regex(r"(?:^|\s)#(?:\s|$)")
_HASH: Final = late_regex(r"\s#\S")
_BLOCK: Final = late_regex(r"[|>][-+\d]{0,2}\s*(?:#.*)?$")
_WHOLE_ITEM: Final = 'Begin that line with "item:" and write "amount:" below it.'
_WHOLE_FACT: Final = "Take away the blanks before it, if it is a fact like those above."
_FIGURES: Final = late_regex(r"\d\d{9,}")  # begins with one sign: that is sought sooner
_PASSED_OVER: Final = frozenset({"vessel", "vessels", "containers", "timeline", "oven"})


@dataclass(frozen=True, slots=True)
class _Row:
    line: int
    indent: int
    text: str

    @property
    def is_note(self) -> bool:
        """Whether it is a note to oneself, after a "#"."""
        return self.text[0] == "#"

    def short(self) -> str:
        return self.text if len(self.text) <= 48 else f"{self.text[:45]}..."


def read_facts(lines: Sequence[str], file: str, first_line: int, known: frozenset[str]) -> Located:
    """Read the facts whose first line is `first_line` of the file; what is wrong is told beside.

    `known` are the names a fact may have anywhere, in small letters: "Title" is read as "title".
    Raises ProblemsFound only for what is too long to be read at all.
    """
    if len(lines) > MOST_LINES:
        what = f"There are more than {MOST_LINES} lines above the method."
        raise ProblemsFound([Problem(file, first_line, what, "Divide the recipe.")])
    rows = []
    for place, line in enumerate(lines, start=first_line):
        wide = line.expandtabs(2)
        if wide.strip():
            rows.append(_Row(place, len(wide) - len(wide.lstrip()), wide.strip()))
    reader = _Reader(rows, file, known)
    data: dict[str, Any] = reader.facts(rows[0].indent, ()) if rows else {}
    return Located(data, reader.places, tuple(reader.problems), frozenset(reader.doubtful))


@dataclass
class _Reader:
    """The rows of a file and how far they are read; each method leaves behind what it read."""

    rows: list[_Row]
    file: str
    known: frozenset[str]
    at: int = 0
    problems: list[Problem] = field(default_factory=list)
    places: dict[str, int] = field(default_factory=dict)
    doubtful: set[str] = field(default_factory=set)

    def tell(self, line: int, what: str, mend: str) -> None:
        self.problems.append(Problem(self.file, line, what, mend))

    def next(self) -> _Row | None:
        """Return the next row that is no note to oneself."""
        while self.at < len(self.rows) and self.rows[self.at].is_note:
            self.at += 1
        return self.rows[self.at] if self.at < len(self.rows) else None

    def facts(self, indent: int, path: tuple[str, ...]) -> dict[str, Any]:
        """Read `name: value` rows that stand at `indent`."""
        found: dict[str, Any] = {}
        while row := self.next():
            bullet = bool(_BULLET.match(row.text))
            if path and (row.indent < indent or bullet):
                break
            keyed = None if bullet else _KEYED.match(row.text) or self._glued(row.text)
            if not keyed:
                meant = self._no_fact(row, bullet)
                if meant and not path:  # told, and read as it is meant
                    found.setdefault(*meant)
                    self.places.setdefault(meant[0], row.line)
                continue
            if row.indent != indent:
                what = f'"{row.short()}" does not stand in line with those above it.'
                self.tell(row.line, what, "Begin it below the others, or further in under its own.")
            name = self._name(keyed["key"])
            here = (*path, name)
            if name in found:
                self.tell(row.line, f'"{name}" stands here twice.', "Keep one of them.")
            self.places.setdefault("/".join(here), row.line)
            self.at += 1
            told = len(self.problems)
            rest = keyed["rest"] or ""
            if not path and (two := _TWO_FACTS.search(rest)) and two["key"].lower() in self.known:
                rest = self._two_facts(two, row, found)
            found[name] = self.value(rest, row, here)
            if len(self.problems) > told:
                self.doubtful.add(here[0])
        return found

    def _two_facts(self, two: re.Match[str], row: _Row, found: dict[str, Any]) -> str:
        """Tell of "title: Plum jam; kind: jam", read both, and return the rest of the first."""
        name = self._name(two["key"])
        what = f'"{row.short()}" says two things on one line.'
        self.tell(row.line, what, f'Write "{name}: {two["rest"]}" on a line of its own.')
        found.setdefault(name, two["rest"])
        self.places.setdefault(name, row.line)
        return two.string[: two.start()].strip()

    def _glued(self, text: str) -> re.Match[str] | None:
        """Take "title:Plum gin", which wants a blank, where the name is a known one."""
        glued = _GLUED.match(text)
        return glued if glued and glued["key"].strip().lower() in self.known else None

    def _name(self, written: str) -> str:
        closed = written[:1] == '"' and ends_at(written) == len(written)
        bare = " ".join((unquote(written) if closed else written.strip("\"'")).split())
        lower = bare.lower()
        for spelling in (bare, lower, lower.replace(" ", "_"), lower.replace("_", " ")):
            if spelling in self.known:
                return spelling
        return bare

    def _no_fact(self, row: _Row, bullet: bool) -> tuple[str, str] | None:
        """Tell of a row that states no fact; return the one it was meant for, where it is plain."""
        self.at += 1
        while (more := self.next()) and more.indent > row.indent:
            self.at += 1  # what hangs from it is as little a fact
        bare = _BULLET.sub("", row.text, count=1) if bullet else row.text
        meant = _MEANT.match(bare)
        name = self._name(meant["key"]) if meant else ""
        if meant and name in self.known and meant["rest"]:
            self.doubtful.add(name)
            what = f'"{row.short()}" is not quite how a fact is written.'
            self.tell(row.line, what, f'Write "{name}: {meant["rest"][:60]}".')
            return name, meant["rest"]
        if bullet:
            mend = 'Put a line such as "ingredients:" above it, or take the dash away.'
            self.tell(row.line, f'"{row.short()}" belongs to no list.', mend)
        elif row.text[0] in "\"'[{" and ends_at(row.text) is None:
            wrong = unclosed(row.text)
            self.tell(row.line, wrong.what, wrong.mend)
        else:
            mend = 'Write a name, a colon, a blank and the fact: "title: Plum gin".'
            self.tell(row.line, f'"{row.short()}" does not say which fact it is.', mend)
        return None

    def value(self, rest: str, row: _Row, path: tuple[str, ...]) -> Any:
        """Read what stands after a colon or a dash, there and on the rows that belong to it."""
        rest = rest.strip()
        if not rest or _NOTE.match(rest):
            return self._below(row, path)
        if _BLOCK.match(rest):
            return self._block(row, path)
        if rest[0] in "\"'[{":
            closed = self._closed(rest, row, path)
            if closed is not self:
                return closed
        return self._plain(rest, row, path)

    def _below(self, row: _Row, path: tuple[str, ...]) -> Any:
        below = self.next()
        if below is None:
            return None
        bullet = bool(_BULLET.match(below.text))
        flush = below.indent == row.indent and not bullet
        if below.indent < row.indent or (flush and not self._lists_flush(below, path)):
            return None
        if len(path) > DEEPEST:
            self.tell(below.line, "This stands too far in.", f"{DEEPEST} steps in are the most.")
            self.at = len(self.rows)
            return None
        bare = path[-1] in LISTS_OF_WORDS | LISTS_OF_LINES or self._is_heading(path)
        if bullet and _BULLET.match(row.text) and below.indent == row.indent:
            return None  # the next of the same list
        if bullet or bare:
            return self._items(below.indent, row.indent, path, dashes=bullet)
        if _KEYED.match(below.text):
            return self.facts(below.indent, path)
        self.at += 1
        return self._plain(below.text, row, path, below.line)

    def _lists_flush(self, row: _Row, path: tuple[str, ...]) -> bool:
        """Whether a row below "ingredients:" is the first of its lines, with no dash or blank."""
        keyed = _KEYED.match(row.text) or self._glued(row.text)
        known = keyed is not None and self._name(keyed["key"]) in self.known
        return len(path) == 1 and path[0] in LISTS_OF_LINES and not known

    def _is_heading(self, path: tuple[str, ...]) -> bool:
        """Whether a place is a heading among the ingredients: "For the icing:"."""
        listed = len(path) == 3 and path[0] in ("ingredients", "materials")
        return listed and path[2] not in self.known

    def _items(self, indent: int, outer: int, path: tuple[str, ...], dashes: bool) -> list[Any]:
        """Read rows with a dash each or, where the first has none, rows that are one item each."""
        found: list[Any] = []
        only_words = path[-1] in LISTS_OF_WORDS
        while row := self.next():
            bullet = _BULLET.match(row.text)
            flush = indent == outer and not dashes and not bullet
            ends = row.indent == outer and not (bullet and indent == outer)
            if row.indent < outer or (ends and not (flush and self._lists_flush(row, path))):
                break
            if bool(bullet) != dashes:
                self._mixed(row, dashes)
            here = (*path, str(len(found)))
            self.places["/".join(here)] = row.line
            start = bullet.end() if bullet else 0
            text = row.text[start:] if not bullet or len(row.text) > 1 else ""
            keyed = None if only_words else _KEYED.match(text)
            if keyed and bullet:
                self.rows[self.at] = _Row(row.line, row.indent + max(start, 1), text)
                found.append(self.facts(row.indent + max(start, 1), here))
                continue
            self.at += 1
            if keyed:
                name = self._name(keyed["key"])
                found.append({name: self.value(keyed["rest"] or "", row, (*here, name))})
            else:
                found.append(self.value(text, row, here))
        return found

    def _mixed(self, row: _Row, dashes: bool) -> None:
        if dashes:
            what = f'"{row.short()}" stands in a list and has no dash before it.'
            self.tell(row.line, what, f'Write "- {row.short()}" below the other dashes.')
        else:
            what = f'"{row.short()}" has a dash, and the line above it has none.'
            self.tell(row.line, what, "Put a dash and a blank before every line of the list.")

    def _block(self, row: _Row, path: tuple[str, ...]) -> Any:
        """Read the rows under a "|" or ">": one text or, for a list, one item to each."""
        rows = []
        while self.at < len(self.rows) and self.rows[self.at].indent > row.indent:
            rows.append(self.rows[self.at])
            self.at += 1
        if path[-1] not in LISTS_OF_LINES | LISTS_OF_WORDS:
            return self._measure(" ".join(one.text for one in rows), row.line, path) or None
        for place, one in enumerate(rows):
            self.places["/".join((*path, str(place)))] = one.line
        return [self._measure(_BULLET.sub("", one.text, count=1), one.line, path) for one in rows]

    def _closed(self, text: str, row: _Row, path: tuple[str, ...]) -> Any:
        """Read a value in quotes or brackets; returns self when plain words follow them."""
        end = ends_at(text)
        start = self.at
        while end is None and (more := self.next()):
            if more.indent <= row.indent and more.text[0] not in "]}":
                break
            self.at += 1
            text = f"{text} {more.text}"
            end = ends_at(text)
        if end is not None and not stands_alone(text, end):
            self.at = start
            return self
        if end is None:
            self.at = start
            wrong = unclosed(text)
            self.tell(row.line, wrong.what, wrong.mend)
            while (more := self.next()) and more.indent > row.indent:
                self.at += 1
            return text[1:].strip() if text[0] not in CLOSES else None
        try:
            value = read_brackets(text[:end]) if text[0] in CLOSES else unquote(text[:end])
        except Unreadable as wrong:
            self.tell(row.line, wrong.what, wrong.mend)
            return None
        self._measure(text, row.line, path)
        return self._named(value if isinstance(value, list | dict) else " ".join(value.split()))

    def _named(self, value: Any) -> Any:
        if isinstance(value, dict):
            return {self._name(key): self._named(inner) for key, inner in value.items()}
        if isinstance(value, list):
            return [self._named(inner) for inner in value]
        return value[:LONGEST_FACT] if isinstance(value, str) else value

    def _plain(self, text: str, row: _Row, path: tuple[str, ...], line: int = 0) -> str:
        """Read plain words, which may run on in the rows below where those stand further in."""
        pieces = [self._without_note(text, line or row.line)]
        while (more := self.next()) and more.indent > row.indent:
            if _BULLET.match(more.text):
                break
            keyed = _KEYED.match(more.text)
            if keyed and self._name(keyed["key"]) in self.known:
                what = f'"{more.short()}" stands below a line that is whole already.'
                self.tell(more.line, what, _WHOLE_ITEM if len(path) > 1 else _WHOLE_FACT)
            self.at += 1
            pieces.append(self._without_note(more.text, more.line))
        said = " ".join(" ".join(pieces).split())
        said = self._measure(said, row.line, path)
        quoted = said.startswith(("“", "„")) and said.count("“") < 2
        return re.sub(r"^[“„](.*)[”“]$", r"\1", said) if quoted else said

    def _without_note(self, text: str, line: int) -> str:
        if "#" not in text:
            return text.strip()
        bare = _NOTE.split(text, maxsplit=1)[0].strip()
        if found := _HASH.search(bare):
            what = f'It is not clear what the "{found[0].strip()}" is for.'
            mend = 'Put the whole line in "quotes" if it belongs there, or a blank after the "#".'
            self.tell(line, what, mend)
        return bare

    def _measure(self, said: str, line: int, path: tuple[str, ...]) -> str:
        """Return a text, no more of it than is read on once it was told to be too long."""
        found = _FIGURES.search(said)
        if found and path[-1] != "source":  # what it makes the line too long by needs no word more
            what = f'"{found[0][:12]}..." is a number of {len(found[0])} figures.'
            self.tell(line, what, "Write it shorter, in a larger unit.")
        elif (wrong := find_no_measure(said))[0] and path[-1] not in ("source", "title", "author"):
            self.tell(line, *wrong)
        elif (none := find_endless(said))[0] and _is_passed_over(said, path[0]):
            self.tell(line, *none)
        elif len(said) > LONGEST_FACT:
            what = f'"{path[-1]}" says {len(said)} letters; {LONGEST_FACT} are the most.'
            self.tell(line, what, "Write it shorter; the rest may stand below the method.")
        return said[:LONGEST_FACT]


def _is_passed_over(said: str, fact: str) -> bool:
    """Whether a fact's own reader takes what is no number for words of its own."""
    return fact in _PASSED_OVER or (fact == "makes" and said[:1].isnumeric())
