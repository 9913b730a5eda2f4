"""Two-sided cases of care: the whole set of rules that speak, and nothing more."""

from __future__ import annotations

from pathlib import Path

import pytest

from care_cases import READ, Case, judge, load_cases, open_out, rule_words, settings_of

CASES = load_cases()
# what the rules do not yet get wholly right; a line goes when its case does, and none is added
KNOWN = Path(__file__).parents[2] / "golden" / "care" / "not_yet_right.txt"
NOT_YET = set(KNOWN.read_text(encoding="utf-8").splitlines())


def _name(case: Case) -> str:
    return f"{case['area']}: {case['name']}"


def _marked() -> list[object]:
    not_yet = pytest.mark.xfail(reason="listed in not_yet_right.txt", strict=True)
    return [
        pytest.param(case, id=_name(case), marks=[not_yet] if _name(case) in NOT_YET else [])
        for case in CASES
    ]


def test_there_are_cases_enough_and_innocent_ones() -> None:
    assert len(CASES) >= 320
    assert sum(case["innocent"] for case in CASES) >= 130
    assert len({(case["area"], case["name"]) for case in CASES}) == len(CASES)


def test_a_case_uses_the_words_of_the_rules() -> None:
    for case in CASES:
        named = [*case["expect"], *case.get("refuse", []), *case.get("may", [])]
        assert open_out(named) - rule_words() == set(), _name(case)
        assert case["source"], _name(case)
        assert case["read"] in READ, _name(case)
        assert not (case["innocent"] and case.get("refuse")), _name(case)
        assert settings_of(case), _name(case)


def test_what_is_not_yet_right_names_cases_there_are() -> None:
    assert {_name(case) for case in CASES} >= NOT_YET


@pytest.mark.parametrize("case", _marked())
def test_the_whole_set_speaks_and_nothing_more(case: Case) -> None:
    outcome = judge(case)
    assert outcome.right, f"{outcome} by {case['source']}"
