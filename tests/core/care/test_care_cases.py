"""Two-sided cases of care: the whole set of rules that speak, and nothing more."""

from __future__ import annotations

import os

import pytest

from care_cases import READ, Case, judge, load_cases, open_out, rule_words, settings_of

CASES = load_cases()
ON = os.environ.get("STILLROOM_CARE_CASES") == "1"
held = pytest.mark.skipif(not ON, reason="on with STILLROOM_CARE_CASES=1 until the rules stand")


def test_there_are_cases_enough_and_innocent_ones() -> None:
    assert len(CASES) >= 320
    assert sum(case["innocent"] for case in CASES) >= 130
    assert len({(case["area"], case["name"]) for case in CASES}) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=[f"{case['area']}: {case['name']}" for case in CASES])
def test_a_case_uses_the_words_of_the_rules(case: Case) -> None:
    named = [*case["expect"], *case.get("refuse", []), *case.get("may", [])]
    assert open_out(named) - rule_words() == set()
    assert case["source"]
    assert case["read"] in READ
    assert not (case["innocent"] and case.get("refuse"))
    assert settings_of(case)


@held
@pytest.mark.parametrize("case", CASES, ids=[f"{case['area']}: {case['name']}" for case in CASES])
def test_the_whole_set_speaks_and_nothing_more(case: Case) -> None:
    outcome = judge(case)
    assert outcome.right, f"{outcome} by {case['source']}"
