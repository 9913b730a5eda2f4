"""No plan gives a soap of lye by a timeline that is shorter than its cure."""

from __future__ import annotations

from datetime import date

import pytest

from giving.test_charities import read_household
from stillroom.core.reading.loading import read_recipe
from stillroom.giving.facts import facts_of
from stillroom.giving.rules import why_refused


@pytest.mark.parametrize(("rest", "refused"), [("1 week", True), ("6 weeks", False)])
def test_young_soap_is_for_nobody(rest: str, refused: bool) -> None:
    lines = "  - 700 g olive oil\n  - 90 g caustic soda\n  - 200 ml water\n"
    head = f"---\ntitle: Soap\nkind: craft\nmakes: 10 bars\ntimeline:\n  - rest: {rest}\n"
    text = f"{head}ingredients:\n{lines}---\n\n## Method\n\n1. Stir the soda into the water. Mix.\n"
    facts = facts_of(read_recipe(text, "recipes/s.md", "s"))
    household = read_household({"needs": {"adults": 2}})
    assert household is not None
    assert bool(why_refused(household, facts, date(2026, 12, 18))) is refused
