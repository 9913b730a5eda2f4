"""Boxes back into a recipe's file, with the smallest change: what stays keeps its very lines.

Notes, order, line ends and the way in which lists are set stay. What is new is written as the rows
around it are. Whoever writes reads the outcome again (`differing`), so that nothing is lost unseen.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any, Final

from stillroom.core.recipe.body import Body
from stillroom.desk.boxes import Line, box_lines, quoted, step_lines
from stillroom.desk.recipe_form import FIELDS, LISTS, MORE, UNDER, WORDS, braced, form_of, shown
from stillroom.desk.recipe_rows import Fact, Laid, Row, lay_out, lines_between
from stillroom.desk.steps_writing import new_steps, steps_anew

ORDER: Final = (
    *("title", "kind", "summary", "makes", "ingredients", "vessels", "containers", "oven"),
    *(
        "timeline",
        "season",
        "keeps",
        "acidity",
        "card",
        "cautions",
        "picture",
        "picture_alt",
        "picture_focus",
    ),
    *("author", "units", "date"),
)
"""The order of facts that are new to a file."""
_WRITTEN: Final = {"vessels": "vessel"}
# with none of the signs that a file reads as its own
_STAGE: Final = re.compile(r"[A-Za-z][^:#\"',\[\]{}]{0,50}:(?:\s|$)")
_NO_BODY: Final = Body()


@dataclass(frozen=True)
class _Change:
    first: int
    last: int
    new: tuple[str, ...]


def write_form(raw: str, name: str, form: Mapping[str, str]) -> str:
    """Return the file's words with what the boxes say now; raises ProblemsFound.

    An empty file becomes a whole new one.
    """
    if not raw.strip():
        return _new_file(form)
    laid = lay_out(raw, name)
    before = form_of(laid)
    changed = [key for key in FIELDS if key in form and _plain(form[key]) != _plain(before[key])]
    changes = list(_changes(laid, form, changed))
    lines = list(laid.lines)
    for change in sorted(changes, key=lambda one: (one.first, one.last), reverse=True):
        if change.first >= len(lines) and lines and not lines[-1].endswith("\n"):
            lines[-1] += laid.end_of_line
        lines[change.first : change.last] = [
            f"{line}{laid.end_of_line}" if not line.endswith("\n") else line for line in change.new
        ]
    return "".join(lines)


def _plain(text: str) -> str:
    return text.replace("\r\n", "\n").strip()


def differing(raw: str, name: str, form: Mapping[str, str]) -> dict[str, str]:
    """Return the boxes that a file does not say as they were filled, with the first such words."""
    read = form_of(lay_out(raw, name))
    found = {}
    for key in FIELDS:
        said, had = _said(key, form.get(key, "")), _said(key, read[key])
        if key in form and said != had:
            found[key] = next((words for words in said if words not in had), said[0])[0]
    return found


def _said(key: str, text: str) -> list[tuple[str, bool]]:
    """Return what a box says, row by row, with which of them are headings."""
    if key == "method":
        return [(braced(line.text), line.is_heading) for line in step_lines(text)]
    if key == "ingredients" or key in LISTS:
        return [
            (line.text.removesuffix(MORE.strip()).strip(), line.is_heading)
            for line in box_lines(text, key == "ingredients")
        ]
    if key in ("intro", "after"):
        return [(words, False) for line in text.split("\n") if (words := " ".join(line.split()))]
    return [(" ".join(text.split()), False)]


def _changes(laid: Laid, form: Mapping[str, str], changed: Sequence[str]) -> Iterator[_Change]:
    new_facts: dict[str, list[str]] = {}
    for key in changed:
        if key == "method":
            yield _method(laid, form[key])
        elif key in ("intro", "after"):
            yield _prose(laid, key, form[key])
        elif key == "ingredients" and laid.listed:
            yield _list(laid, laid.listed, box_lines(form[key]))
        elif key in WORDS or key in LISTS or key == "ingredients":
            fact = laid.facts.get(key)
            if fact is None:
                new_facts[key] = _fact_lines(key, form[key])
            else:
                yield from _fact(laid, fact, form[key])
    for group, names in UNDER.items():
        if any(key.startswith(f"{group}_") for key in changed):
            lines = _under(laid, group, names, form)
            fact = laid.facts.get(group)
            if fact is not None:
                yield _Change(fact.first, fact.last, tuple(lines))
            else:
                new_facts[group] = lines
    yield from _insert(laid, new_facts)


def _insert(laid: Laid, new: Mapping[str, Sequence[str]]) -> Iterator[_Change]:
    """Put new facts behind the nearest of those that usually stand before them."""
    at: dict[int, list[str]] = {}
    for key in sorted((key for key in new if new[key]), key=ORDER.index):
        earlier = [laid.facts[one].last for one in ORDER[: ORDER.index(key)] if one in laid.facts]
        place = max(earlier) if earlier else min((f.first for f in laid.facts.values()), default=1)
        at.setdefault(place, []).extend(new[key])
    for place, lines in at.items():
        yield _Change(place, place, tuple(lines))


def _fact(laid: Laid, fact: Fact, text: str) -> Iterator[_Change]:
    if not _plain(text):
        yield _Change(fact.first, fact.last, ())
    elif fact.key in WORDS:
        yield _Change(fact.first, fact.last, (_one_line(laid, fact, " ".join(text.split())),))
    elif fact.rows:
        yield _list(laid, fact.rows, box_lines(text, fact.key == "ingredients"))
    else:
        name = laid.lines[fact.first].partition(":")[0].strip()
        yield _Change(fact.first, fact.last, tuple(_fact_lines(fact.key, text, name)))


def _one_line(laid: Laid, fact: Fact, words: str) -> str:
    """Return a fact's line with other words; a note behind it stays."""
    line = laid.lines[fact.first].rstrip("\r\n")
    found = re.match(r"\s*[^:]+:\s*", line)
    before = found[0] if found else f"{fact.key}: "
    before = before if before.endswith(" ") else f"{before} "
    return f"{before}{quoted(words)}{_note_behind(line)}"


def _note_behind(line: str) -> str:
    bare = re.sub(r"\"[^\"]*\"|'[^']*'", lambda quote: "x" * len(quote[0]), line)
    found = re.search(r"\s+#(?:\s.*)?$", bare)
    return line[found.start() :] if found else ""


def _fact_lines(key: str, text: str, name: str = "") -> list[str]:
    """Return the lines of a fact that is new, or written anew as a whole."""
    name = name or key
    if key in WORDS:
        return [f"{name}: {quoted(' '.join(text.split()))}"] if text.strip() else []
    rows = box_lines(text, key == "ingredients")
    if not rows:
        return []
    if len(rows) == 1 and key in ("vessels", "containers", "season"):
        return [f"{_WRITTEN.get(name, name)}: {quoted(rows[0].text)}"]
    return [f"{name}:", *(_row_line(row, "  - ", key) for row in rows)]


def _row_line(row: Line, before: str, key: str = "ingredients") -> str:
    if row.is_heading:
        return f"{before}{quoted(row.text)}:"
    indent = before if not row.depth else f"    {before}"
    if key == "timeline" and _STAGE.match(row.text):
        word, _, rest = row.text.partition(":")
        return f"{indent}{word.strip()}: {quoted(rest.strip())}".rstrip()
    return f"{indent}{quoted(row.text, '- ')}"


def _list(laid: Laid, rows: Sequence[Row], lines: Sequence[Line]) -> _Change:
    """Return the rows of a list as the box has them: those that stay keep their very lines."""
    if not lines:
        return _Change(rows[0].first, rows[-1].last, ())
    key = "timeline" if any(_is_stage(row.value) for row in rows) else "ingredients"
    before = {row.depth: row.before for row in reversed(rows) if not row.is_heading}
    before = {row.depth: row.before for row in reversed(rows)} | before
    flat = before.get(0, "  - ")
    deep = before.get(1, f"    {flat}")
    old = [(shown(row.value), row.is_heading) for row in rows]
    new = [(line.text, line.is_heading) for line in lines]
    out: list[str] = []
    for way, i1, i2, j1, j2 in SequenceMatcher(a=old, b=new, autojunk=False).get_opcodes():
        if way == "equal":
            for row, line in zip(rows[i1:i2], lines[j1:j2], strict=True):
                out += lines_between(laid, rows, row)
                out += _moved(laid, row, line.depth, flat, deep)
            continue
        paired = min(i2 - i1, j2 - j1)
        for place, row in enumerate(rows[i1:i2]):
            out += lines_between(laid, rows, row, only_notes=place >= paired)
            if place < paired:
                out += _row_anew(laid, row, lines[j1 + place], (flat, deep), key)
        for line in lines[j1 + paired : j2]:
            out.append(
                _row_line(Line(line.text, line.is_heading), deep if line.depth else flat, key)
            )
    return _Change(rows[0].first, rows[-1].last, tuple(out))


def _is_stage(value: Any) -> bool:
    return isinstance(value, dict) and len(value) == 1


def _moved(laid: Laid, row: Row, depth: int, flat: str, deep: str) -> list[str]:
    """Return a row's own lines, further in or out where its heading came or went."""
    own = list(laid.lines[row.first : row.last])
    if row.is_heading or row.depth == depth:
        return own
    by = (len(deep) - len(flat)) * (depth - row.depth)
    if by > 0:
        return [f"{' ' * by}{line}" for line in own]
    return [line[min(-by, len(line) - len(line.lstrip(" "))) :] for line in own]


def _row_anew(laid: Laid, row: Row, line: Line, before: tuple[str, str], key: str) -> list[str]:
    first = laid.lines[row.first].rstrip("\r\n")
    if isinstance(row.value, dict) and "item" in row.value and line.text.endswith(MORE.strip()):
        changed = _within(laid, row, line.text.removesuffix(MORE.strip()).strip())
        if changed:
            return changed
    note = _note_behind(first) if row.last == row.first + 1 else ""
    text = line.text.removesuffix(MORE.strip()).strip()
    start = before[1] if line.depth else before[0]
    return [f"{_row_line(Line(text, line.is_heading), start, key)}{note}"]


def _within(laid: Laid, row: Row, text: str) -> list[str]:
    """Return an ingredient's several lines with its name, amount or note as the box says them."""
    item, _, rest = text.partition(", ")
    amount, _, note = rest.partition(", ")
    said = {"item": item, "amount": amount, "note": note}
    lines = [line.rstrip("\r\n") for line in laid.lines[row.first : row.last]]
    if not item or not amount or str(row.value["item"]).count(", "):
        return []
    for name, words in said.items():
        had = str(row.value.get(name) or "")
        if words == had:
            continue
        at = [i for i, line in enumerate(lines) if re.match(rf"[\s-]*{name}:", line)]
        if len(at) != 1 or not words:
            return []
        start = re.match(rf"[\s-]*{name}:\s*", lines[at[0]])
        assert start, "it matched just now"
        lines[at[0]] = f"{start[0].rstrip()} {quoted(words)}{_note_behind(lines[at[0]])}"
    return lines


def _under(laid: Laid, group: str, names: Sequence[str], form: Mapping[str, str]) -> list[str]:
    """Return a fact with lines of its own, such as the card; what the boxes do not show stays."""
    prefix = f"{group}_"
    said = {name: " ".join(form.get(f"{prefix}{name}", "").split()) for name in names}
    fact = laid.facts.get(group)
    had = fact.value if fact and isinstance(fact.value, dict) else {}
    if fact and not had and not any(said[name] for name in names[1:]):
        return [_one_line(laid, fact, said[names[0]])] if said[names[0]] else []
    if fact is None and group == "keeps" and not any(said[name] for name in names[1:]):
        return [f"{group}: {quoted(said[names[0]])}"] if said[names[0]] else []
    lines = _lines_under(laid, fact, had, said, names)
    return [f"{group}:", *lines] if lines else []


def _lines_under(
    laid: Laid,
    fact: Fact | None,
    had: Mapping[str, Any],
    said: Mapping[str, str],
    names: Sequence[str],
) -> list[str]:
    own = [line.rstrip("\r\n") for line in laid.lines[fact.first + 1 : fact.last]] if fact else []
    out: list[str] = []
    seen: set[str] = set()
    keeping = True
    for line in own if had else ():
        found = re.match(r"(\s+)([A-Za-z_ ]+?):\s*", line)
        name = found[2] if found else ""
        if found and name in names:
            seen.add(name)
            same = said[name] == " ".join(str(had.get(name) or "").split())
            keeping = same
            if not same and said[name]:
                out.append(f"{found[1]}{name}: {quoted(said[name])}{_note_behind(line)}")
            if same:
                out.append(line)
        elif keeping or found or line.lstrip().startswith("#"):
            out.append(line)
    indent = next((re.match(r"\s+", line)[0] for line in out if line[:1].isspace()), "  ")  # type: ignore[index]
    out += [
        f"{indent}{name}: {quoted(said[name])}" for name in names if name not in seen and said[name]
    ]
    return out


def _prose(laid: Laid, key: str, text: str) -> _Change:
    first, last = laid.intro if key == "intro" else laid.after
    lines = text.replace("\r\n", "\n").strip("\n").split("\n") if text.strip() else []
    if not lines:
        return _Change(first, last, ())
    if first == last:
        lines = ["", *lines] if key == "after" else ["", *lines, ""]
        following = laid.lines[first : first + 1]
        if key == "intro" and following and not following[0].strip():
            lines.pop()
    return _Change(first, last, tuple(lines))


def _method(laid: Laid, text: str) -> _Change:
    lines = step_lines(text)
    if not laid.steps:
        end = len(laid.lines)
        return _Change(end, end, ("", "## Method", "", *new_steps(lines)) if lines else ())
    first, last = laid.steps[0].first, laid.steps[-1].last
    if not lines:
        return _Change(first, last, ())
    return _Change(first, last, tuple(steps_anew(laid, lines)))


def _new_file(form: Mapping[str, str]) -> str:
    """Return a whole new file of what the boxes say."""
    facts: dict[str, list[str]] = {}
    for key in (*WORDS, *LISTS, "ingredients"):
        facts[key] = _fact_lines(key, form.get(key, ""))
    nothing = Laid((), {}, 0, _NO_BODY)
    for group, names in UNDER.items():
        facts[group] = _under(nothing, group, names, form)
    lines = ["---"]
    for key in sorted((key for key in facts if facts[key]), key=ORDER.index):
        lines += facts[key]
    lines.append("---")
    if form.get("intro", "").strip():
        lines += ["", _plain(form["intro"])]
    lines += ["", "## Method", "", *new_steps(step_lines(form.get("method", "")))]
    if form.get("after", "").strip():
        lines += ["", _plain(form["after"])]
    return "\n".join(lines) + "\n"
