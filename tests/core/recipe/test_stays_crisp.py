"""What stays crisp for so long keeps, and waits for nothing; what is not opened for so long waits.

"They stay crisp for 3 weeks" was read as a rest of 3 weeks, so that the biscuits were begun in
November and were past their date on the day they were ready (a newcomer, 30 November 2026).
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of

JARS = {"kind": "preserve", "ingredients": ["1 kg apples", "500 ml vinegar", "400 g sugar"]}
BISCUITS = {"kind": "bake", "ingredients": ["200 g plain flour", "100 g butter", "100 g sugar"]}


def waits(facts: dict[str, object], last: str) -> set[tuple[str, str]]:
    recipe = recipe_of(facts | {"title": "Present", "method": ["Cook at 180 C for 40 min.", last]})
    told = [one for one in recipe.stages if one.role in ("rest", "tend", "usable", "best")]
    return {(one.word, str(one.lasts or one.text)) for one in told} - {
        ("usable from", "1 day"),
        ("best from", "1 day"),
        ("cool", "2 hours"),
    }


@pytest.mark.parametrize(
    "last",
    [
        "They stay crisp for 3 weeks.",
        "Cool completely before bagging. They stay crisp for 3 weeks.",
        "They will stay fresh for 2 weeks in a tin.",
        "It stays good for 3 months.",
        "They remain crunchy for 10 days.",
        "Håller sig krispiga i 3 veckor.",
    ],
)
@pytest.mark.parametrize("facts", [JARS, BISCUITS], ids=["jars", "biscuits"])
def test_what_stays_crisp_waits_for_nothing(facts: dict[str, object], last: str) -> None:
    assert waits(facts, last) == set()


@pytest.mark.parametrize(
    ("last", "found"),
    [
        ("Let it stay in the dark for 3 weeks.", ("rest", "3 weeks")),
        ("Resist opening it for six weeks.", ("usable from", "6 weeks")),
        ("Bäst efter en månad.", ("best from", "1 month")),
        ("Vor dem Öffnen mindestens 4 Wochen durchziehen lassen.", ("mature", "4 weeks")),
        ("Leave for 3 weeks.", ("rest", "3 weeks")),
    ],
)
def test_what_is_left_alone_waits(last: str, found: tuple[str, str]) -> None:
    assert found in waits(JARS, last)
