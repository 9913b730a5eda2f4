"""A file is changed with the smallest change however its rows are set in."""

from __future__ import annotations

import difflib
from typing import Any

import pytest
import yaml

from stillroom.saving.yaml_files import change_yaml

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
