"""An oven that none is, told; every heat of bread, pizza, drying and proving left alone.

Lines of our own; "no oven" are slips seen in typed recipes (a figure too many, °F called C). Dials
of kitchens end at 250 to 300 °C: common practice, no published source.
"""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.size.oven_limits import check_ovens
from stillroom.core.words.problems import ProblemsFound


def said_of(
    oven: str = "", step: str = "Mix.", title: str = "A bake", units: str = ""
) -> list[str]:
    facts = (f'oven: "{oven}"\n' if oven else "") + (f"units: {units}\n" if units else "")
    text = (
        f"---\ntitle: {title}\nkind: bake\nmakes: 12 biscuits\n{facts}"
        f"ingredients:\n  - 100 g sugar\n---\n\n## Method\n\n1. {step}\n"
    )
    return [str(one) for one in check_ovens(read_recipe(text, "bake.md", "bake"))]


@pytest.mark.parametrize(
    "oven",
    ["9999 C", "9999", "350", "350 C", "29 C", "0 C", "-180 C", "180-9999 C", "gas mark 44", "70 F",
     "99999 F", "100000000 C"],
)  # fmt: skip
def test_a_fact_that_is_no_oven_is_told_at_its_line(oven: str) -> None:
    (said,) = said_of(oven)
    assert said.startswith("bake.md:5: ")
    assert "no heat of an oven" in said


@pytest.mark.parametrize(
    "oven",
    ["30 C", "180", "300 C", "350 F", "600 F", "gas mark 4", "gas 10", "a low oven", "85 °C",
     "160 C (140 C with a fan)", "180C/350F/gas 4"],
)  # fmt: skip
def test_every_heat_of_an_oven_is_left_alone(oven: str) -> None:
    assert said_of(oven) == []


def test_bare_degrees_of_an_american_book_are_fahrenheit() -> None:
    assert said_of("350", units="us") == []


def test_a_stone_oven_is_hotter() -> None:
    assert said_of("450 C", title="Pizza bases") == []
    assert said_of("", "Bake in a wood-fired oven at 430 °C.") == []
    assert "30 to 500 °C" in said_of("900 C", title="Pizza bases")[0]


def test_what_is_hot_in_fahrenheit_is_asked_so() -> None:
    assert 'Write "350 F" if that is meant' in said_of("", "Bake at 350 °C for 20 minutes.")[0]


@pytest.mark.parametrize(
    "step",
    ["Bake at 9999 °C for 20 minutes.", "Bake the biscuits at 5 °C.", "Heat the oven to 20 °C.",
     "Roast at -180 °C.", "Bake at gas mark 44.", "Heat the oven to 1800 C/350 F.",
     "Im Backofen bei 9999 °C backen.", "Bake at 3500 F."],
)  # fmt: skip
def test_a_step_at_no_heat_of_an_oven_is_told_at_its_line(step: str) -> None:
    (said,) = said_of("", step)
    assert said.startswith("bake.md:11: ")


@pytest.mark.parametrize(
    "step",
    ["Bake at 180 °C, then cool to 20 °C.", "Bake at 350° for 20 minutes.", "Bake at 350 °F.",
     "Heat the oven to 28 °C and let the dough rise in it.", "Dry in the oven at 50 °C.",
     "Take from the oven and freeze at -18 °C.", "Boil the sugar to 154 °C.",
     "Fire the clay beads at 1000 °C.", "Bake at 180 °C until the middle reaches 96 °C.",
     "Bake at 150 °C. Melt the chocolate to 45 °C and cool it to 27 °C.",
     "Bake for 9999 minutes at 180 °C."],
)  # fmt: skip
def test_other_heats_of_a_method_are_no_ovens(step: str) -> None:
    assert said_of("", step) == []


@pytest.mark.parametrize("said", ["NaN °C", "∞ °C", "inf °C"])
def test_a_heat_that_is_no_number_is_told_by_the_reader(said: str) -> None:
    with pytest.raises(ProblemsFound, match="is not a number"):
        said_of("", f"Bake at {said}.")
