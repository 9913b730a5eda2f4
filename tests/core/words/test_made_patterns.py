"""A pattern made by its numbers is the one that Python's own `re.compile` makes.

Two patterns are equal to Python where all their numbers, flags and words are.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from types import SimpleNamespace

import pytest

from core.words.test_word_heads import every_pattern
from stillroom.core.words import made_patterns
from stillroom.core.words.made_patterns import engine_of_python, made_before, make_pattern


@pytest.fixture(autouse=True)
def _noted(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    known = dict(made_before)
    made_before.clear()
    monkeypatch.setattr(made_patterns, "notes", [True])
    yield
    made_before.clear()
    made_before.update(known)


def test_every_pattern_of_the_house_is_made_alike_a_first_and_a_second_time() -> None:
    patterns = every_pattern()
    assert len(patterns) > 800
    for pattern in patterns:
        first = make_pattern(pattern.pattern, pattern.flags)
        second = make_pattern(pattern.pattern, pattern.flags)
        assert first == second == pattern
        assert first.groupindex == second.groupindex == pattern.groupindex
        assert second.groups == pattern.groups
    assert {(one.pattern, int(one.flags)) for one in patterns} <= made_before.keys()


@pytest.mark.parametrize(
    ("words", "flags", "text"),
    [
        (r"(?P<year>\d{4})-(?P<month>\d\d)", 0, "on 2027-12"),
        (r"(a)|(?P<other>[^\W\d_]+)", re.IGNORECASE, "Öl"),
        (rb"\x78[\x01\x9c]", 0, b"..\x78\x9c"),
        (r"^b$", re.MULTILINE, "a\nb\nc"),
        ("[°º˚é-ž\U0001f36f]", 0, "a 🍯"),
    ],
)
def test_what_it_finds_is_the_same(words: str, flags: int, text: str) -> None:
    asked = re.compile(words, flags).search(text)
    for _ in range(2):
        found = make_pattern(words, flags).search(text)
        assert found is not None
        assert asked is not None
        assert (found.span(), found.groupdict()) == (asked.span(), asked.groupdict())
        assert found.lastgroup == asked.lastgroup


def test_what_cannot_be_read_is_told_as_python_tells_it() -> None:
    with pytest.raises(re.error, match="missing \\)"):
        make_pattern("(a", 0)
    assert made_before == {}


def test_flags_part_patterns_of_the_same_words() -> None:
    assert make_pattern("a", 0).search("A") is None
    assert make_pattern("a", re.IGNORECASE).search("A")
    assert make_pattern("a", 0).search("A") is None


def test_nothing_is_noted_where_nothing_is_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(made_patterns, "notes", [False])
    assert make_pattern("quince", 0).search("a quince")
    assert made_before == {}


def _elsewhere(name: str) -> object:
    raise ImportError(name)


def _otherwise(name: str) -> object:
    return SimpleNamespace(CODESIZE=4, MAGIC=1, parse=lambda *_: SimpleNamespace(state=None))


@pytest.mark.parametrize("python", [_elsewhere, _otherwise])
def test_a_python_that_has_its_parts_elsewhere_makes_every_pattern_itself(
    python: Callable[[str], object], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(made_patterns, "import_module", python)
    engine_of_python.cache_clear()
    try:
        assert engine_of_python() is None
        assert make_pattern("quince", 0) == re.compile("quince")
        assert made_before == {}
    finally:
        monkeypatch.undo()
        engine_of_python.cache_clear()
    assert engine_of_python() is not None
