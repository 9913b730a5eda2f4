"""A condiment's fish is an allergen and no fish that must be eaten within days; fish itself is.

The lines are of families' relishes and chutneys, written before the code.
"""

from __future__ import annotations

import pytest

from care_cases import ask
from stillroom.core.book import BookSettings

CONDIMENTS = """
Worcester sauce
Worcestershire sauce
Worcester sauce to taste
1 splash Worcester sauce
1 bottle Worcester sauce
2 tbsp Worcester sauce
Lea-style Worcester sauce
fish sauce
a dash of fish sauce
3 tbsp Thai fish sauce
2 tbsp nam pla
anchovy paste
1 tsp anchovy paste
anchovy essence
1 tsp anchovy essence
"""
FISH = """
300 g smoked mackerel
300 g bacon
smoked salmon
300 g anchovy paste
300 g salmon in Worcester sauce
"""


def _says(line: str) -> tuple[frozenset[str], frozenset[str]]:
    written = {
        "title": "Tomato relish",
        "kind": "preserve",
        "ingredients": ["1 kg tomatoes", "300 g sugar", "300 ml cider vinegar", line],
        "keeps": {"unopened": "3 weeks", "where": "in the fridge"},
        "method": ["Simmer everything 1 hour and pot."],
    }
    said = ask(written, BookSettings())
    return said.cautions | said.refusals, said.allergens


@pytest.mark.parametrize("line", CONDIMENTS.strip().splitlines())
def test_a_condiment_is_an_allergen_alone(line: str) -> None:
    rules, allergens = _says(line)
    assert "fish" in allergens
    assert not rules & {"potted-cold", "keeps-too-long"}


@pytest.mark.parametrize("line", FISH.strip().splitlines())
def test_fish_and_meat_are_eaten_within_days(line: str) -> None:
    assert "potted-cold" in _says(line)[0]
