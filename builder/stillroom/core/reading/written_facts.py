"""A recipe's facts as written, made ready for the model.

Other words for a name, empty lines, headings among the ingredients are seen to here. Nothing is
dropped in silence: what is not understood is a problem at its line. Leaves out the reading of
each value: parts.py, stages.py.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from stillroom.core.amounts.units import System
from stillroom.core.lines.ingredient import INGREDIENT_KEYS
from stillroom.core.lines.sizes import comma_parts, has_figure, read_amount, read_leading
from stillroom.core.recipe.keeps import KEEPING_KEYS
from stillroom.core.recipe.model import Acidity, Card, FrontMatter, InGroup, Override
from stillroom.core.words.data_files import read_data
from stillroom.core.words.frontmatter import Located
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, Unreadable

WRITTEN_AS: Final = {"ingredients": "materials", "vessels": "vessel"}
KNOWN_KEYS: Final = tuple(sorted({*FrontMatter.model_fields, *WRITTEN_AS.values()}))
_NEEDED: Final = ("title", "kind", "makes", "ingredients", "materials")
NAMES: Final = frozenset(
    {*KNOWN_KEYS, *INGREDIENT_KEYS, *KEEPING_KEYS}
    | {name for model in (Card, Acidity, Override) for name in model.model_fields}
)
_BOLD: Final = late_regex(r"\*\*([^*]+?):?\*\*:?")
_NUMBER: Final = late_regex(r"(\d{1,2})[.)]\s+(?=\S)")


@dataclass(frozen=True)
class Ready:
    """The facts by the model's names, the line of each by its path, and what is wrong so far.

    `doubtful` are facts of which something was told already, so that none is called missing;
    `unread` the ingredients among them; `method_above` whether the method stands there too.
    """

    data: dict[str, Any]
    lines: dict[str, int]
    problems: tuple[Problem, ...]
    doubtful: frozenset[str] = frozenset()
    method_above: bool = False
    unread: tuple[str, ...] = ()


def make_ready(located: Located, file: str, system: System, language: str = "en_GB") -> Ready:
    """Return what a cook wrote under the names and in the order that the model knows."""
    lines = located.lines
    kept = {key: value for key, value in located.data.items() if key in KNOWN_KEYS}
    problems = []
    for key, value in located.data.items():
        if key in KNOWN_KEYS:
            continue
        what = f'A recipe has no "{key}:".'
        problems.append(Problem(file, lines.get(key, 2), what, _mend(key)))
        meant = _meant(key)
        if meant and meant not in kept:  # told once, under its own name, and read as it is meant
            kept[meant] = value
            lines = _moved(lines, key, meant)
    for key, written in WRITTEN_AS.items():
        if key in kept and written in kept:
            what = f'"{written}" and "{key}" both stand here.'
            mend = "Put all under one of them."
            problems.append(Problem(file, lines.get(written, 2), what, mend))
    named = _by_key(lines)
    unread: list[str] = []
    for key, value in kept.items():
        if isinstance(value, list) and key not in ("ingredients", "materials"):
            kept[key] = list(_without_empty(key, value, named, file, problems))
    kept = {key: _filled(value) for key, value in kept.items()}
    kept = {key: value for key, value in kept.items() if value is not None}
    for key in ("ingredients", "materials"):
        if isinstance(kept.get(key), list | str):
            lines_of = _Lines(file, named, "ingredients")
            kept[key] = lines_of.ingredients(kept[key], (system, language))
            problems += lines_of.problems
            unread += lines_of.unread
            named |= lines_of.moved
    above = any(_plain(key) in read_data("recipe_words.yml")["method"] for key in located.data)
    return Ready(kept, named, tuple(problems), located.doubtful, above, tuple(unread))


def _by_key(lines: Mapping[str, int]) -> dict[str, int]:
    """Give lines under "materials" and "vessel" the names the model knows them by."""
    named = dict(lines)
    for key, written in WRITTEN_AS.items():
        for path, line in lines.items():
            head, slash, rest = path.partition("/")
            if head == written:
                named[f"{key}{slash}{rest}"] = line
    return named


@cache
def _meanings() -> dict[str, str]:
    rows = read_data("recipe_words.yml")["means"]
    return {word: means for means, words in rows.items() for word in words}


@cache
def _elsewhere() -> dict[str, str]:
    rows = read_data("recipe_words.yml")["says"]
    return {word: row["mend"] for row in rows for word in row["words"]}


def _plain(key: str) -> str:
    return key.lower().replace("_", " ").replace("-", " ").strip()


def _mend(key: str) -> str:
    word = _plain(key)
    if word in _elsewhere():
        return _elsewhere()[word]
    if word not in _meanings() and nearest(key, KNOWN_KEYS):
        return did_you_mean(key, KNOWN_KEYS)
    meant = _meanings().get(nearest(word, _meanings(), 0.8) or "")
    if meant:
        return f'Did you mean "{meant}"?'
    return "Take it out, or put it below the method under a heading of its own."


def _meant(key: str) -> str:
    """Return the fact that a misnamed one is read as: a slip, or another word for a needed one."""
    word = _plain(key)
    if word in _elsewhere():
        return ""
    known = _meanings().get(word)
    if known is None:
        return nearest(key, KNOWN_KEYS, 0.75) or ""
    return known if known in (*_NEEDED, "keeps") else ""


def _moved(lines: Mapping[str, int], key: str, meant: str) -> dict[str, int]:
    """Return the lines with those of a misnamed fact under the name it is read as."""
    moved = dict(lines)
    for path, line in lines.items():
        if path == key or path.startswith(f"{key}/"):
            moved[f"{meant}{path[len(key) :]}"] = line
    return moved


def _filled(value: Any) -> Any:
    """Return a fact without what is empty in it; None when nothing is left to say."""
    if isinstance(value, dict):
        inner = {key: _filled(one) for key, one in value.items()}
        return {key: one for key, one in inner.items() if one is not None} or None
    return None if value is None or value == "" or value == [] else value


def _without_empty(
    key: str, items: list[Any], lines: dict[str, int], file: str, problems: list[Problem]
) -> Iterator[Any]:
    """Yield the items that say something, their lines moved up with them; tell of the others."""
    place = 0
    for written, item in enumerate(items):
        if item is None or item == "":
            problems.append(_empty(key, written, lines, file))
            continue
        for path, line in list(lines.items()) if place < written else ():
            if path == f"{key}/{written}" or path.startswith(f"{key}/{written}/"):
                lines[f"{key}/{place}{path[len(f'{key}/{written}') :]}"] = line
        place += 1
        yield item


def _empty(key: str, place: int, lines: Mapping[str, int], file: str) -> Problem:
    line = lines.get(f"{key}/{place}", lines.get(key, 2))
    what = f'Line {place + 1} under "{key}" is empty.'
    return Problem(file, line, what, "Write something there, or take it out.")


class _Lines:
    """The lines of a list of ingredients, with headings among them taken as groups."""

    def __init__(self, file: str, lines: Mapping[str, int], key: str) -> None:
        self.file, self.lines, self.key = file, lines, key
        self.by_name = sorted(lines)
        self.problems: list[Problem] = []
        self.moved: dict[str, int] = {}
        self.found: list[Any] = []
        self.unread: list[str] = []

    def ingredients(self, written: Any, ways: tuple[System, str]) -> list[Any]:
        """Return one entry to each ingredient; `moved` has the line of each by its new place."""
        group = ""
        items = written if isinstance(written, list) else self._parted(str(written), ways)
        for place, item in enumerate(_unnumbered(items)):
            path = f"{self.key}/{place}"
            heading = _heading_of(item)
            if item is None or item == "":
                self.problems.append(_empty(self.key, place, self.lines, self.file))
            elif isinstance(item, str) and (bold := _BOLD.fullmatch(item)):
                group = bold[1]
            elif heading is None:
                self._add(InGroup(item, group) if group else item, path)
            elif item[heading] is None:
                group = heading
            elif isinstance(item[heading], list):
                named = heading.capitalize() if heading in INGREDIENT_KEYS else heading
                for inner, one in enumerate(item[heading]):
                    self._add(InGroup(one, named), f"{path}/{heading}/{inner}")
            else:
                self._colon(heading, str(item[heading]), path, ways, group)
        return self.found

    def _parted(self, written: str, ways: tuple[System, str]) -> list[Any]:
        """Return what stands on one line; several ingredients on one line are told, and parted."""
        pieces = [piece.strip() for piece in re.split(r"[,;]\s", written)]
        if sum(_begins_with_amount(piece, ways) for piece in pieces) < 2:
            return [written]
        line = self.lines.get(self.key, 2)
        what = "Several ingredients stand on one line."
        mend = f'Write each on a line of its own, after a dash: "- {pieces[0]}".'
        self.problems.append(Problem(self.file, line, what, mend))
        return list(pieces)

    def _add(self, item: Any, path: str) -> None:
        place = f"{self.key}/{len(self.found)}"
        start = len(path)
        first, end = (bisect_left(self.by_name, f"{path}{sign}") for sign in "/0")  # "0" is next
        for old in ({path} & self.lines.keys()) | {*self.by_name[first:end]}:
            self.moved[f"{place}{old[start:]}"] = self.lines[old]
        self.found.append(item)

    def _colon(self, name: str, said: str, path: str, ways: tuple[System, str], group: str) -> None:
        """Take "sugar: 250 g" and "1 kg plums: halved" as meant; ask about "Icing: 9 g sugar"."""
        amount, *notes = comma_parts(said, 1)
        if _begins_with_amount(name, ways) and not _begins_with_amount(said, ways):
            text = f"{name}, {said}"
            self._add(InGroup(text, group) if group else text, path)
            return
        try:
            read_amount(amount, *ways)
        except Unreadable:
            line = self.lines.get(path, 2)
            what = f'The line "{name}: {said}" has a colon in it.'
            mend = (
                f'For a heading write "- {name}:" and below it "- {said}"; '
                "if it is one ingredient, write it without the colon."
            )
            self.problems.append(Problem(self.file, line, what, mend))
            self.unread.append(f"{name} {said}")
            return
        text = ", ".join((f"{amount} {name}", *notes))
        self._add(InGroup(text, group) if group else text, path)


def _begins_with_amount(text: str, ways: tuple[System, str]) -> bool:
    try:
        said = read_leading(text, *ways) if has_figure(text) else None
    except Unreadable:
        return False
    return said is not None and bool(said.rest)


def _unnumbered(items: list[Any]) -> list[Any]:
    """Return lines without numbers of their own, where every one is numbered from 1 on."""
    texts = [str(item) for item in items if isinstance(item, str)]
    rows = [_NUMBER.match(text) for text in texts]
    numbers = [int(row[1]) for row in rows if row]
    if len(items) < 2 or len(texts) < len(items) or numbers != list(range(1, len(items) + 1)):
        return items
    return [text[row.end() :] for text, row in zip(texts, rows, strict=True) if row]


def _heading_of(item: Any) -> str | None:
    """Return the one name of an entry that is no part of an ingredient."""
    if isinstance(item, dict) and len(item) == 1:
        name = next(iter(item))
        # "Optional:" above a list of things; the parts of a mixture alone stand in one
        if name not in INGREDIENT_KEYS or (isinstance(item[name], list) and name != "parts"):
            return str(name)
    return None
