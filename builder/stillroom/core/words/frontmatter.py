"""Giving lists and settings: read them with the line of every name, as plain words and numbers.

They are YAML, as the tools around them want it. Names that stand twice are refused, since the
last would silently win, and so is whatever could make a small file endless. A recipe's own facts
are read more kindly: facts_above.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Final

import yaml

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import BY_NUMBER, is_unprintable

DEEPEST: Final = 12


@dataclass(frozen=True)
class Located:
    """Plain data, and the line of each name or item by its path joined with "/".

    `problems` is what did not read, `doubtful` the names of the facts in which something did not.
    """

    data: Any
    lines: dict[str, int]
    problems: tuple[Problem, ...] = ()
    doubtful: frozenset[str] = frozenset()


class _Refused(Exception):
    """What may not stand in a file, at a line counted from 0."""

    def __init__(self, line: int, what: str, mend: str) -> None:
        self.line, self.what, self.mend = line, what, mend
        super().__init__(what)


class _Loader(yaml.SafeLoader):
    """Words, whole numbers, decimals, true and false; dates and the rest stay words."""

    depth = 0

    def compose_node(self, parent: yaml.Node | None, index: Any) -> yaml.Node | None:
        """Refuse what points back to another place, and what stands too deep."""
        event = self.peek_event()  # type: ignore[no-untyped-call]
        line = event.start_mark.line
        if isinstance(event, yaml.AliasEvent):
            what = f'"*{event.anchor}" points to another place of the file.'
            raise _Refused(line, what, 'Write it out; or put it in "quotes" if it is meant so.')
        self.depth += 1
        if self.depth > DEEPEST:
            raise _Refused(line, "This stands too deep in other things.", "Write it simpler.")
        node = super().compose_node(parent, index)
        self.depth -= 1
        return node


_Loader.yaml_implicit_resolvers = {}
_WORDS: Final[dict[str, tuple[str, str]]] = {
    "bool": (r"true|True|TRUE|false|False|FALSE|yes|no", "tfTFyn"),
    # "0123" is no number, "12:30" no minutes, "1_000" nothing a cook writes
    "int": (r"[-+]?(?:0|[1-9][0-9]{0,14})", "-+0123456789"),
    "float": (r"[-+]?(?:0|[1-9][0-9]{0,14})\.[0-9]{1,15}", "-+0123456789"),
}
for _tag, (_pattern, _first) in _WORDS.items():
    _Loader.add_implicit_resolver(
        f"tag:yaml.org,2002:{_tag}", late_regex(rf"(?:{_pattern})$"), list(_first)
    )
_Loader.add_implicit_resolver("tag:yaml.org,2002:null", late_regex(r"(?:~|null|)$"), ["~", "n", ""])


class _WithoutDecimals(_Loader):
    """Decimals stay words as well: "1.450" is a thousand and more in some languages."""


_WithoutDecimals.yaml_implicit_resolvers = {
    first: [row for row in rows if not row[0].endswith(":float")]
    for first, rows in _Loader.yaml_implicit_resolvers.items()
}


class _OnlyWords(_Loader):
    """Nothing but words: "yes" and "1.10" are said again as they were written."""


_OnlyWords.yaml_implicit_resolvers = {
    first: [row for row in rows if row[0].endswith(":null")]
    for first, rows in _Loader.yaml_implicit_resolvers.items()
}


def read_yaml(
    text: str, file: str, first_line: int = 1, decimals: bool = True, only_words: bool = False
) -> Located:
    """Read a text whose first line is `first_line` of the file; raises ProblemsFound.

    Without `decimals` a number with a point in it stays the words it is written in, with
    `only_words` so does everything.
    """
    lines: dict[str, int] = {}
    problems: list[Problem] = []
    try:
        some = _Loader if decimals else _WithoutDecimals
        loader = (_OnlyWords if only_words else some)(text)
        try:
            node = loader.get_single_node()
            if node is None:
                return Located({}, {})
            _walk(node, (), lines, problems, file, first_line)
            data = loader.construct_document(node)
        finally:
            loader.dispose()
    except _Refused as wrong:
        problem = Problem(file, wrong.line + first_line, wrong.what, wrong.mend)
        raise ProblemsFound([problem]) from None
    except yaml.MarkedYAMLError as error:
        raise ProblemsFound([say_in_words(error, file, first_line)]) from None
    except (yaml.YAMLError, ValueError, RecursionError):
        what = "The file could not be read: it holds what no cook writes."
        raise ProblemsFound([Problem(file, first_line, what, _QUOTES)]) from None
    if problems:
        raise ProblemsFound(problems)
    return Located(data, lines)


def _walk(
    node: yaml.Node,
    path: tuple[str, ...],
    lines: dict[str, int],
    problems: list[Problem],
    file: str,
    first_line: int,
) -> None:
    lines["/".join(path)] = node.start_mark.line + first_line
    if isinstance(node, yaml.MappingNode):
        seen: set[str] = set()
        for key, value in node.value:
            name = str(key.value)
            line = key.start_mark.line + first_line
            if not isinstance(key, yaml.ScalarNode):
                what = "A list or brackets stand where a name should."
                problems.append(Problem(file, line, what, 'Write "name: what it is".'))
            key.tag = "tag:yaml.org,2002:str"  # a name stays as it is written: "null", "yes", 2026
            if name in seen:
                problems.append(
                    Problem(file, line, f'"{name}" stands here twice.', "Keep one of them.")
                )
            seen.add(name)
            _walk(value, (*path, name), lines, problems, file, first_line)
            lines["/".join((*path, name))] = line
    elif isinstance(node, yaml.SequenceNode):
        for place, value in enumerate(node.value):
            _walk(value, (*path, str(place)), lines, problems, file, first_line)
    elif is_unprintable(node.value):  # a sign may also be written by its number: "\\u0007"
        line = node.start_mark.line + first_line
        problems.append(Problem(file, line, BY_NUMBER, "Take it out."))


_QUOTES: Final = 'Put a text with a sign such as ":", "#", "@" or "%" in it in "quotes".'
_LINE_UP: Final = "Line it up with the lines above it, and put a dash before each of a list."
# what the reader of such files says of itself, and what a cook can do about it; first match wins
_IN_WORDS: Final[tuple[tuple[str, str, str], ...]] = (
    ("mapping values are not allowed", "This line has a second colon in it.", _QUOTES),
    ("'\\t' that cannot start any token", "There is a tab in this line.",
     "Write blanks in its place."),
    ("cannot start any token", "This line begins with a sign that it may not begin with.", _QUOTES),
    ("end of stream", "It begins with a quotation mark that is never closed.",
     "Put the same mark behind the last word, or take the first one away."),
    ("could not find expected ':'", "This line says no name with a colon after it.",
     'Write "name: what it is".'),
    ("expected <block end>", "This line does not stand in line with those above it.", _LINE_UP),
    ("expected ',' or", "A bracket is opened and not closed.",
     "Close it behind the last word of the list."),
    ("unknown escape", 'A "\\" stands in "quotes".', 'Take it out, or write "/" instead.'),
    ("expected alphabetic", 'This begins with "*" or "&".', _QUOTES),
    ("constructor for the tag", 'This begins with "!".', _QUOTES),
    ("but found another document", "The file has a second line of three dashes.",
     "Take it out: all belongs together."),
)  # fmt: skip


_WITHIN: Final = (
    "Quotes stand within quotes in this line.",
    "Take the inner ones out, or set the whole in 'single' quotes that it does not hold itself.",
)


def _has_quotes_within(mark: yaml.Mark | None) -> bool:
    """Whether a line was given up behind words in quotes: "Auntie "the best" Jo's"."""
    if mark is None or mark.buffer is None:
        return False
    line = mark.buffer[: mark.pointer].rpartition("\n")[2]
    return bool(re.search(r"""[:-]\s+(?:"[^"]*"|'[^']*')\s*$""", line))


def say_in_words(error: yaml.MarkedYAMLError, file: str, first_line: int) -> Problem:
    """Return in a cook's words what a reader of such files found wrong."""
    said = error.problem or ""
    what, mend = next(
        ((what, mend) for words, what, mend in _IN_WORDS if words in said),
        ("This line could not be read.", f"{_QUOTES} {_LINE_UP}"),
    )
    # a quotation mark without its fellow is found at the end and was set at the beginning
    opened = "end of stream" in said or "expected ',' or" in said
    if "expected <block end>" in said and _has_quotes_within(error.problem_mark):
        what, mend = _WITHIN
    mark = (error.context_mark if opened else None) or error.problem_mark or error.context_mark
    return Problem(file, (mark.line if mark else 0) + first_line, what, mend)
