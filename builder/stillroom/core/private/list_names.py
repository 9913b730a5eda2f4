"""Whom a giving list names in any form its reader takes, and where: by name alone, by other words.

"Mrs Finch: no nuts", "people: Ada Thistle; The Rowans", "- who: Ada Thistle" and a log's "gave: Ada
Thistle" name somebody as "name: Ada Thistle" does. What of a name is sought: words.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Final

import yaml

from stillroom.core.private.shapes import GIVING_LOG_KEY
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import nearest

_PARTS: Final = re.compile(r"\s*[,;\n]\s*")
_LOADER: Final = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""PyYAML's quick one where it has one: here nobody is told of a mistake, so words do not matter."""
_LONGEST: Final = 400_000
"""More letters than this no list has; its names by their keys alone are sought then."""
Said = tuple[str, int, bool]
"""What is said, at which line, and whether it is somebody's name, not a place."""


@cache
def _keys() -> dict[str, frozenset[str]]:
    said = read_data("list_names.yml", "private")
    return {part: frozenset(map(_plain, words)) for part, words in said.items()}


def _plain(word: str) -> str:
    return " ".join(re.split(r"[\s_-]+", word.strip().lower()))


def names_in_list(text: str) -> Iterator[Said]:
    r"""Return each name and address of a list or its log, with its line.

    >>> list(names_in_list("giving list: A\npeople:\n  - Ada Thistle\n  - Mrs Finch: no nuts\n"))
    [('Ada Thistle', 3, True), ('Mrs Finch', 4, True)]
    >>> list(names_in_list("giving log:\n  - {day: 2027-06-01, gave: Ada Thistle}\n"))
    [('Ada Thistle', 2, True)]
    """
    if len(text) > _LONGEST:
        return
    try:
        top = yaml.compose(text.lstrip("\ufeff").encode("utf-8", "replace"), _LOADER)
    except (yaml.YAMLError, RecursionError):
        return  # its reader tells of it; what has a key of its own is found by that
    for key, value in _rows(top):
        word = _plain(key.value)
        if word == GIVING_LOG_KEY:
            yield from (said for row in _items(value) for said in _of_log(row))
        elif word in _keys()["households"] or nearest(word, ["households"], 0.8):
            yield from _of_households(value)


def _rows(node: yaml.Node | None) -> Iterator[tuple[yaml.ScalarNode, yaml.Node]]:
    for key, value in node.value if isinstance(node, yaml.MappingNode) else ():
        if isinstance(key, yaml.ScalarNode):
            yield key, value


def _items(node: yaml.Node) -> list[yaml.Node]:
    return node.value if isinstance(node, yaml.SequenceNode) else []


def _of_households(node: yaml.Node) -> Iterator[Said]:
    if isinstance(node, yaml.ScalarNode):
        for one in _PARTS.split(node.value):
            yield one, _line(node), True
    yield from _of_household(node, alone=False)
    for row in _items(node):
        if isinstance(row, yaml.ScalarNode):
            yield row.value, _line(row), True
        yield from _of_household(row, alone=True)


def _of_household(node: yaml.Node, alone: bool) -> Iterator[Said]:
    """Return what a mapping names: a household of its own, or each under its name."""
    for place, (key, value) in enumerate(_rows(node)):
        word = _plain(key.value)
        somebody = word in _keys()["name"]
        if somebody or word in _keys()["place"]:
            if isinstance(value, yaml.ScalarNode):
                yield value.value, _line(value), somebody
        elif place == 0 or not alone:
            yield key.value, _line(key), True
            yield from _of_household(value, alone=True)


def _of_log(row: yaml.Node) -> Iterator[Said]:
    for key, value in _rows(row):
        if _plain(key.value) in _keys()["log"] and isinstance(value, yaml.ScalarNode):
            yield value.value, _line(value), True


def _line(node: yaml.Node) -> int:
    return int(node.start_mark.line) + 1
