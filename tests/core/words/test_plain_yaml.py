"""Our own data files read the quick way say what PyYAML says of them, and so do odd texts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from stillroom.core.words.plain_yaml import read_plain

BUILDER = Path(__file__).resolve().parents[3] / "builder"
FILES = sorted(BUILDER.rglob("*.yml"))


def same(one: Any, other: Any) -> bool:
    """Whether two values are equal and of one type all through: 1 is not 1.0, nor True."""
    return repr(one) == repr(other)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(BUILDER).as_posix())
def test_every_data_file_says_the_same(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert same(read_plain(text), yaml.safe_load(text))


ODD = [
    "", "~", "# nothing", "word", "12", "[]", "{}",
    "- 1\n- 1.5\n- 1e3\n- 0x1f\n- 012\n- 1_000\n- 12:30",
    "a: yes\nb: 'yes'\nc: \"1\"\nd: null\ne:\nf: .inf\ng: =",
    "day: 2026-12-24\nat: 2026-12-24 10:00:00",
    "1: one\n2.5: half\ntrue: yes\nnull: none", "a: 1\na: 2", "? [1, 2]\n: pair",
    "base: &it {x: 1}\nother:\n  <<: *it\n  y: 2", "- &one [1]\n- *one", "a: !!str 12", "'<<': 1",
    "text: |\n  two\n  lines\nfolded: >\n  two\n  lines",
]  # fmt: skip


@pytest.mark.parametrize("text", ODD)
def test_what_our_files_have_no_need_of_is_read_all_the_same(text: str) -> None:
    try:
        expected = yaml.safe_load(text)
    except yaml.YAMLError as error:
        with pytest.raises(type(error)):
            read_plain(text)
    else:
        assert same(read_plain(text), expected)


@pytest.mark.parametrize("text", ["a: [1", "- a\nb: 1", "a: b: c", "one\n---\ntwo"])
def test_what_is_no_yaml_is_refused(text: str) -> None:
    with pytest.raises(yaml.YAMLError):
        read_plain(text)
