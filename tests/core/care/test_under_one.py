"""Honey in what is said to suit children under one is refused; a warning of it is none.

Honey is not for infants under a year: NHS, Foods to avoid giving babies and young children; CDC,
Foods and drinks to avoid or limit. The sentences are ours.
"""

from __future__ import annotations

import pytest

from care_cases import rules_of_text


def rules_of(said: str) -> frozenset[str]:
    return rules_of_text(
        "---\ntitle: Oat bars\nkind: bake\nmakes: 12 biscuits\ningredients:\n  - 200 g oats\n"
        f"  - 100 g honey\n---\n\n{said}\n\n## Method\n\n1. Mix and bake.\n"
    )


@pytest.mark.parametrize(
    "said",
    [
        "For children under one too.",
        "It is suitable for children under 12 months.",
        "Good for babies under one.",
        "Made for kids under 1 year.",
    ],
)
def test_what_suits_them_is_refused(said: str) -> None:
    assert "honey-for-infants" in rules_of(said)


@pytest.mark.parametrize(
    "said",
    [
        "Not suitable for children under one.",
        "Unsuitable for children under one.",
        "Honey is dangerous for children under one.",
        "For children under one, leave out the honey.",
        "Keep away from children under one.",
        "Fine for children under 10.",
        "A treat for children under twelve.",
    ],
)
def test_a_warning_and_older_children_are_only_cautioned(said: str) -> None:
    rules = rules_of(said)
    assert "honey-for-infants" not in rules
    assert "honey-infants" in rules
