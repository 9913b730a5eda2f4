"""How words begin rules out no text in which a pattern would find anything.

Expectations are Python's own `re`, asked of the same texts without the look before.
"""

from __future__ import annotations

import gc
import importlib
import pkgutil
import random
import re
from functools import cache
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from stillroom.core.method.heat_elsewhere import _any_of as heat_elsewhere
from stillroom.core.method.said_elsewhere import _patterns as said_elsewhere
from stillroom.core.words.patterns import ClauseRegex, LateRegex, clause_regex
from stillroom.core.words.word_heads import ask_for, asked_in, heads_of

ROOT = Path(__file__).parents[3]


@cache
def _patterns() -> tuple[re.Pattern[str], ...]:
    """Return every pattern of the house that is asked so, and those that data writes."""
    hazards = (ROOT / "builder/stillroom/core/staples/hazards.yml").read_text(encoding="utf-8")
    written = {(one.words, one.flags_given) for one in _late() if isinstance(one, ClauseRegex)}
    written |= {(words, int(re.IGNORECASE)) for words in _clauses_asked(yaml.safe_load(hazards))}
    return tuple(re.compile(words, flags) for words, flags in sorted(written))


@cache
def every_pattern() -> tuple[re.Pattern[str], ...]:
    """Return every pattern of the house that waits until it is asked."""
    written = {(one.words, int(one.flags_given)) for one in _late()}
    return tuple(re.compile(words, flags) for words, flags in sorted(written, key=str))


@cache
def _late() -> tuple[LateRegex, ...]:
    core = importlib.import_module("stillroom.core")
    for found in pkgutil.walk_packages(core.__path__, "stillroom.core."):
        importlib.import_module(found.name)
    gc.unfreeze()
    said_elsewhere()
    for name in ("denied", "something_else", "cooked", "baked", "oven", "apart", "everything"):
        heat_elsewhere(name)
    # by its type: what stands for a thing that is gone is asked nothing
    return tuple(one for one in gc.get_objects() if issubclass(type(one), LateRegex))


@cache
def _telling() -> tuple[re.Pattern[str], ...]:
    """Return those of them that tell how a word of every match begins."""
    return tuple(pattern for pattern in _patterns() if heads_of(pattern))


def _clauses_asked(part: object) -> set[str]:
    if isinstance(part, dict):
        own = {value for key, value in part.items() if key in ("clause", "sugar_boils", "said")}
        return own.union(*map(_clauses_asked, part.values()))
    return set().union(*map(_clauses_asked, part)) if isinstance(part, list) else set()


@cache
def _texts() -> tuple[str, ...]:
    """Return sentences and clauses of the recipes and of the cases of care, some written oddly."""
    dice = random.Random(14)
    found: set[str] = set()
    for path in [*(ROOT / "recipes").glob("*.md"), *(ROOT / "tests/golden").rglob("*.yml")]:
        for line in path.read_text(encoding="utf-8").splitlines():
            found.update(part for part in re.split(r"(?<=[.,;:])\s+", line) if part.strip())
    texts = sorted(found)
    odd = [
        dice.choice((str.upper, str.title, str.swapcase))(text).replace("s", "ſ").replace("i", "ı")
        for text in dice.sample(texts, 200)
    ]
    return tuple(dice.sample(texts, min(len(texts), 1200)) + odd)


def test_most_patterns_of_clauses_tell_how_a_word_begins() -> None:
    assert len(_patterns()) > 180
    assert len(_telling()) > 0.7 * len(_patterns())


def test_no_text_of_the_house_is_ruled_out_that_a_pattern_finds_something_in() -> None:
    looked = found = 0
    asking = [(pattern, ask_for(heads_of(pattern) or frozenset())) for pattern in _telling()]
    for pattern, bit in asking:
        for text in _texts():
            looked += 1
            if not asked_in(text) & bit:
                assert pattern.search(text) is None, (pattern.pattern, text)
            else:
                found += 1
    assert 0 < found < looked / 3  # and most texts need no closer look


@settings(max_examples=120, suppress_health_check=list(HealthCheck), deadline=None)
@given(st.data())
def test_what_a_pattern_makes_is_never_ruled_out(data: st.DataObject) -> None:
    pattern = data.draw(st.sampled_from(_telling()))
    text = data.draw(st.from_regex(pattern))
    if pattern.search(text):
        bit = ask_for(heads_of(pattern) or frozenset())
        assert asked_in(text) & bit, (pattern.pattern, text)


def test_a_text_that_was_looked_at_before_a_pattern_asked_is_looked_at_again() -> None:
    pattern, text = clause_regex(r"\b(?:quinc\w*|medlar)", re.IGNORECASE), "a jar of quinces"
    for _ in range(23):
        assert pattern.search("nothing of it") is None
    before = asked_in(text)
    assert pattern.search(text)  # the last that it is asked without a look at the words before
    assert asked_in(text).bit_length() > before.bit_length()
    assert pattern.search(text)
    assert pattern.search("a jar of pears") is None


@pytest.mark.parametrize(
    ("pattern", "text"),
    [
        (r"\b(?:salt|fish)", "a ſalt"),
        (r"\b(?:ice|oil)\b", "ıce"),
        (r"\b(?:istanbul|rome)", "İstanbul"),
        (r"\b(?:kilo|pound)", "\u212ailo"),
        (r"\b(?:to|at) (?:7\d|80)", "at 75"),
        (r"(?<!\w)(?:über|öl)", "ÜBER"),
        (r"(?:x|yz)boil", "xboil"),
        (r"\b(?:[4-9]|1[01])[ -]?months", "9months"),
        (r"-(?:boil|bake)", "par-boil"),
        (r"(?:the )*(?:jar|lid)s?", "ajars"),
        (r"(?:a|b)?\bfig|\bplum", "fig"),
    ],
)
def test_odd_letters_and_joints_are_found_as_re_finds_them(pattern: str, text: str) -> None:
    asked = clause_regex(pattern, re.IGNORECASE)
    plain = re.compile(pattern, re.IGNORECASE)
    assert plain.search(text)
    for _ in range(60):  # so often that it looks first how words begin
        assert asked.search(text)[0] == plain.search(text)[0]  # type: ignore[index]
        assert asked.sub("#", text) == plain.sub("#", text)
        assert asked.search("nothing of it") is None
    assert asked.sub("#", "nothing of it") == "nothing of it"
