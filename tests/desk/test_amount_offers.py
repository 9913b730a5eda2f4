"""What is offered beside a step: the amount where a food is named without one, and never twice."""

from __future__ import annotations

import pytest

from stillroom.core.lines.ingredient import read_ingredient
from stillroom.desk.amount_offers import find_offers
from stillroom.desk.recipe_form import CLOSE, OPEN

LIST = [read_ingredient(one, "metric") for one in ("500 g sugar", "2 tsp salt", "1 kg plums")]


@pytest.mark.parametrize(
    ("step", "offered"),
    [
        ("Stir in the salt.", ["Stir in the <salt>."]),
        ("Add the sugar plus 2 tsp salt.", ["Add the <sugar> plus 2 tsp salt.",
                                            "Add the sugar plus <salt>."]),
        ("Add 2 tsp of salt.", ["Add <salt>."]),
        ("Add 1 tsp of the salt.", []),
        ("Add 1 tsp salt.", []),
        ("Boil for 10 minutes, add salt.", ["Boil for 10 minutes, add <salt>."]),
        ("Weigh out 500 g sugar.", ["Weigh out <sugar>."]),
    ],
)  # fmt: skip
def test_an_amount_is_offered_where_none_stands(step: str, offered: list[str]) -> None:
    found = [line.replace(OPEN, "<").replace(CLOSE, ">") for _, line in find_offers(step, LIST)]
    assert found == offered
