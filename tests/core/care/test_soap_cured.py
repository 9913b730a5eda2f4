"""Young soap of lye has its dates by its cure, and none is planned for anybody before it.

iqdidactic.com, Your first cold process batch (cured for 4 to 6 weeks), the source of the warning.
Written before the code.
"""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import make_card
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import dates_of_kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import plan_forward

LYE = ("700 g olive oil", "300 g coconut oil", "140 g caustic soda", "330 ml water")
MELTED = ("500 g soap base", "10 drops lavender oil")
MIX = "Stir the soda into the water, then into the oils. "
START = date(2026, 12, 10)


def _recipe(lines: tuple[str, ...], method: str, more: str = "") -> Recipe:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: Soap\nkind: craft\nmakes: 10 bars\n{more}ingredients:\n{listed}---\n"
    return read_recipe(f"{head}\n## Method\n\n1. {method}\n", "recipes/s.md", "s")


@pytest.mark.parametrize(
    ("lines", "method", "days", "young"),
    [
        (LYE, f"{MIX}Into the mould for 24h. Cut. Ready to use after a week.", 28, True),
        (LYE, f"{MIX}Use the next day.", 28, True),
        (LYE, f"{MIX}Pour into the mould.", 28, True),
        (LYE, f"{MIX}Leave to cure for 6 weeks.", 42, False),
        (LYE, f"{MIX}Leave to cure for 4 weeks.", 28, False),
        (LYE, f"{MIX}Cook in a slow cooker for 3 hours. Leave for a week.", 7, False),
        (MELTED, "Melt, pour, leave overnight.", 1, False),
    ],
)
def test_it_is_usable_when_it_is_cured(
    lines: tuple[str, ...], method: str, days: int, young: bool
) -> None:
    soap = _recipe(lines, method)
    assert (plan_forward(soap, START).usable - START).days == days
    box = assess_safety(soap, BookSettings())
    assert ("soap-young" in {one.rule for one in box.cautions}) is young
    said = dates_of_kind(soap)
    assert said
    assert ("used too soon: it is counted as usable from 4 weeks" in said.text) is young
    assert not young or "usable from: 4 weeks" in said.offer


@pytest.mark.parametrize(("weeks", "young"), [(1, True), (2, True), (4, False), (6, False)])
def test_a_timeline_of_its_own_stands_and_its_card_says_that_it_is_young(
    weeks: int, young: bool
) -> None:
    soap = _recipe(LYE, MIX, f"timeline:\n  - rest: {weeks} weeks\n")
    assert (plan_forward(soap, START).usable - START).days == 7 * weeks
    said = " ".join(make_card(soap, BookSettings()).cautions)
    assert ("four to six weeks" in said) is young
