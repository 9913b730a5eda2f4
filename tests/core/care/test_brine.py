"""The salt of a ferment of vegetables is reckoned and held against what guidance asks.

2.25 to 2.5 % of the vegetables: USDA, Complete Guide to Home Canning, 2015 revision, Guide 6 (3
tablespoons to 5 lb of cabbage). Gas in closed jars, in the fridge too: Pickl-It, "Can I store
fermented foods in a vacuum-sealed glass jar?".
"""

from typing import Any

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.safety import assess_safety
from stillroom.core.recipe.settings import BookSettings

PRESS = "Press it under its own brine and leave it for four weeks."


def _box(lines: list[str], method: str = PRESS, **more: Any) -> Any:
    written = {"title": "Kraut", "kind": "ferment", "ingredients": lines, "method": [method]}
    return assess_safety(recipe_of({**written, **more}), BookSettings())


def _said(lines: list[str], **more: Any) -> str:
    (told,) = (one for one in _box(lines, **more).cautions if one.rule == "vegetable-ferment")
    return str(told.to_maker)


@pytest.mark.parametrize(
    ("lines", "salt"),
    [
        (["2 kg Weißkohl", "40 g Meersalz", "1 TL Kümmel"], "about 2 %, which is less."),
        (["1 kg cabbage", "25 g salt"], "about 2.5 %."),
        (["1 kg cabbage", "22.5 g salt"], "about 2.25 %."),
        (["1 kg cabbage", "5 g salt"], "about 0.5 %, which is less."),
        (["1 kg cucumbers", "1 l water", "80 g salt", "some garlic"], "could not be reckoned"),
        (["1 kg cucumbers", "1 l water", "80 g salt", "40 g garlic"], "about 3.9 %."),
        (["1 cabbage", "salt"], "could not be reckoned"),
        (["2 heads cabbage", "3 tbsp salt"], "could not be reckoned"),
        (["1 kg cabbage"], "no salt is weighed"),
    ],
)  # fmt: skip
def test_how_much_salt_it_is_is_said(lines: list[str], salt: str) -> None:
    assert salt in _said(lines)


def test_gas_is_spoken_of_and_never_denied() -> None:
    box = _box(["2 kg cabbage", "50 g salt"], containers="jar, 500 ml, clip-top")
    (gas,) = (look for look in box.looked if look.what == "Gas in a closed bottle")
    assert gas.answer == "said above"
    (told,) = (one for one in box.cautions if one.rule == "vegetable-ferment")
    assert "let the gas out each day" in told.to_maker
    assert "slowly" in told.to_receiver


@pytest.mark.parametrize(
    ("method", "shut"),
    [
        ("Screw the lid on tightly and leave it for two weeks.", True),
        ("Seal the jar firmly and let it ferment for a month.", True),
        ("Die Gläser luftdicht verschließen und drei Wochen gären lassen.", True),
        ("Pack the cabbage tightly into the jar and leave it for two weeks.", False),
        ("Press it down firmly and cover it with a cloth.", False),
        ("Close the lid tightly and open it every day to burp it.", False),
        ("Close it tightly with an airlock.", False),
    ],
)
def test_a_jar_shut_tight_while_it_works_is_a_danger(method: str, shut: bool) -> None:
    box = _box(["2 kg cabbage", "50 g salt"], method)
    assert any(one.rule == "closed-ferment" for one in box.cautions) == shut


@pytest.mark.parametrize(
    ("vessel", "shut"),
    [
        ("Bügelglas, 1.5 l", True),
        ("Schraubglas, 1 l", True),
        ("1 l clip-top jar", True),
        ("3 l Gärtopf", False),
        ("5 l crock", False),
        ("1 l clip-top jar with an airlock", False),
    ],
)
def test_a_jar_that_lets_no_gas_out_is_known_by_its_name(vessel: str, shut: bool) -> None:
    box = _box(["2 kg cabbage", "50 g salt"], vessel=vessel)
    assert any(one.rule == "closed-ferment" for one in box.cautions) == shut
