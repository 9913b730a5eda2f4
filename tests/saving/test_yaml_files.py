"""A file is changed with the smallest change however its rows are set in."""

from __future__ import annotations

import difflib
from typing import Any

import pytest
import yaml

from stillroom.saving.yaml_files import change_yaml, put

HEAD, END = "# ours\na: 1   # one\n", "b: 2\n"
SET_IN = {
    "below the key": "rows:\n- name: A\n  likes:\n  - x\n  - y   # best\n- name: B\n",
    "by two": "rows:\n  - name: A\n    likes:\n      - x\n      - y   # best\n  - name: B\n",
    "by four": "rows:\n    - name: A\n      likes:\n          - x\n          - y\n    - name: B\n",
    "first below, then in": "rows:\n- name: A\n  likes:\n    - x\n    - y   # best\n- name: B\n",
    "a note between": "rows:   # all\n\n# them\n- name: A\n  likes: [x, y]   # best\n- name: B\n",
    "on one line": "rows: [{name: A, likes: [x, y]}, {name: B}]\n",
}


def one_more(said: Any) -> None:
    said["rows"].append({"name": "C", "likes": ["z"]})


def another_name(said: Any) -> None:
    said["rows"][1]["name"] = "Bee"


def none_of_them(said: Any) -> None:
    del said["rows"][0]


@pytest.mark.parametrize("ends", ["\n", "\r\n"], ids=["unix", "windows"])
@pytest.mark.parametrize("change", [one_more, another_name, none_of_them])
@pytest.mark.parametrize("way", SET_IN)
def test_rows_set_in_by_any_way(way: str, change: Any, ends: str) -> None:
    text = f"{HEAD}{SET_IN[way]}{END}".replace("\n", ends)
    wanted = yaml.safe_load(text)
    change(wanted)
    written = change_yaml(text, "a.yml", change)
    assert yaml.safe_load(written) == wanted
    assert written.startswith(f"# ours{ends}a: 1   # one{ends}")
    rows = difflib.ndiff(text.splitlines(), written.splitlines())
    touched = [row for row in rows if row[0] in "+-"]
    assert len(touched) <= 5, touched


NOTED = (
    "people:\n  - name: A\n    has: x\n  # more can be said of each\n\n# What things cost:\n"
    "# prices:\n#   - z\nnext: 1\n"
)


def a_fact(said: Any) -> None:
    said["people"][0]["avoid"] = "nuts"


def a_row(said: Any) -> None:
    said["people"].append({"name": "B"})


def both_and_a_part(said: Any) -> None:
    a_fact(said)
    a_row(said)
    said["last"] = 3


FACT, ROW, PART = "    avoid: nuts\n", "  - name: B\n", "last: 3\n"
PLACES = {
    "a fact of the last row": (a_fact, [(FACT, "    has: x\n")]),
    "a row": (a_row, [(ROW, "  # more can be said of each\n")]),
    "each": (
        both_and_a_part,
        [(FACT, "    has: x\n"), (ROW, "  # more can be said of each\n"), (PART, "next: 1\n")],
    ),
}
"""What is put in, and the line that it is to stand under."""


@pytest.mark.parametrize("case", PLACES)
def test_what_is_put_in_stands_above_the_notes_of_what_comes_next(case: str) -> None:
    change, put_in = PLACES[case]
    wanted = NOTED
    for line, below in put_in:
        wanted = wanted.replace(below, below + line)
    assert change_yaml(NOTED, "a.yml", change) == wanted


def test_a_part_at_the_end_stands_below_the_notes_there() -> None:
    text = NOTED.removesuffix("next: 1\n")
    assert change_yaml(text, "a.yml", lambda said: said.update(prices=1)) == f"{text}prices: 1\n"


def test_a_line_of_words_that_begins_like_a_note_is_none() -> None:
    text = "words: |\n  one\n  # two\n\nlast: 1\n"
    written = change_yaml(text, "a.yml", lambda said: said.insert(1, "next", 2))
    assert yaml.safe_load(written) == {"words": "one\n# two\n", "next": 2, "last": 1}


@pytest.mark.parametrize(
    ("rows", "after"),
    [
        (["wheat"], ["      - wheat"]),
        (["wheat", "rye", "milk"], ["      - wheat", "      - rye", "      - milk  # says Ann"]),
        (["nuts", "milk", "wheat"], ["      - nuts", "      - milk  # says Ann", "      - wheat"]),
        (["milk"], ["      - milk  # says Ann"]),
    ],
)
def test_notes_below_and_beside_rows_stay_where_the_rows_change(rows, after):
    # the needs of the last household, at the desk: all that stood below them was lost (2026-11-30)
    head, tail = "who:\n  - name: A\n    avoid:\n", "\n# What it costs:\n#   - vodka: ...\n"
    text = f"{head}      - nuts\n      - milk  # says Ann\n{tail}"
    found = change_yaml(text, "a.yml", lambda said: put(said, ["who", 0, "avoid"], rows))
    assert found == f"{head}{chr(10).join(after)}\n{tail}"
    again = change_yaml(f"{text}b: 1\n", "a.yml", lambda said: put(said, ["who", 0, "avoid"], rows))
    assert again == f"{found}b: 1\n"
