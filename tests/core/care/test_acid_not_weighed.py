"""What keeps the acid of a jar from being judged is named; what is small is weighed at its most.

A newcomer's chutney (30 November 2026): two pints of vinegar, and refused for a thumb of ginger.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety

CHUTNEY = ["1 kg plums", "500 g onions", "1 l malt vinegar, 5%", "500 g sugar"]


@pytest.mark.parametrize(
    ("line", "unweighed"),
    [
        ("thumb of ginger, grated", ""),
        ("2 thumbs of ginger", ""),
        ("1 piece of ginger", ""),
        ("3 coins of ginger", ""),
        ("2 cm fresh turmeric", ""),
        ("20 g ginger", ""),
        ("some ginger", '"ginger" has no weight'),
        ("some garlic", '"garlic" has no weight'),
    ],
)
def test_what_has_no_weight_is_named(line: str, unweighed: str) -> None:
    refused = refusals([*CHUTNEY, line])
    assert [unweighed in one for one in refused] == ([True] if unweighed else [])
    assert all("with too little acid" not in one for one in refused)


def test_too_little_vinegar_is_still_too_little() -> None:
    [because] = refusals(["1 kg onions", "100 ml malt vinegar, 5%", "1 thumb of ginger"])
    assert "with too little acid" in because


def refusals(lines: list[str]) -> list[str]:
    method = ["Boil, and fill hot into jars."]
    case = {"title": "Chutney", "kind": "preserve", "ingredients": lines, "method": method}
    box = assess_safety(recipe_of(case), BookSettings())
    return [one.because for one in box.refusals if one.rule == "low-acid-sealed"]


def test_what_is_counted_says_that_it_was_taken_at_its_heaviest() -> None:
    """Two heads of cabbage have no weight; a kilo of it has one, and says nothing of that."""
    said = {}
    for line in ("2 heads cabbage", "6 kg cabbage"):
        lines = [line, "1 l vinegar", "1 tbsp salt"]
        front = {"title": "Chow-chow", "kind": "preserve", "ingredients": lines}
        recipe = recipe_of({**front, "method": ["Chop. Boil with vinegar 10 minutes. Fill jars."]})
        (refused,) = assess_safety(recipe, BookSettings()).refusals
        said[line] = refused.because
    assert "cabbage counted, not weighed: taken at the heaviest" in said["2 heads cabbage"]
    assert "heaviest" not in said["6 kg cabbage"]
