"""What keeps for shorter than its kind steeps is not given its kind's dates.

Ten yolks in brandy that keep two weeks in the fridge are not shaken for two months and best after
eight. What steeps, and keeps beyond it, has its kind's dates as before. Written before the code.
"""

from __future__ import annotations

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import dates_of_kind, warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.stage_dates import usable_after_days

EGGNOG = ("10 egg yolks", "700 ml brandy", "300 ml cream", "200 g sugar")
CREAM = ("300 ml whisky", "400 ml double cream", "1 tin condensed milk")
SYRUP = ("500 g sugar", "500 ml water", "4 sprigs rosemary")
FRUIT = ("700 ml gin, 40% vol", "350 g sloes", "200 g sugar")
HORCHATA = ("200 g rice", "1 l water", "500 ml milk")

SHORT = [
    (EGGNOG, "Whisk. Bottle. Keeps 2 weeks in the fridge.", "", 0),
    (EGGNOG, "Whisk the yolks with the sugar, add cream and brandy, bottle.",
     "keeps: 2 weeks in the fridge\n", 0),
    (EGGNOG, "Whisk all. Bottle. Chill overnight before drinking. Keeps 2 weeks in the fridge.",
     "", 1),
    (EGGNOG, "Whisk and bottle. Keep it in the fridge.", "", 0),
    (CREAM, "Blend and pour into bottles. Keep in the fridge for up to 2 weeks.", "", 0),
    (SYRUP, "Boil 5 minutes, strain, bottle. Keeps 3 weeks in the fridge.", "", 0),
    (HORCHATA, "Soak the rice overnight, blend, strain. Keeps 3 days in the fridge.", "", 1),
]  # fmt: skip
LONG = [
    (FRUIT, "Steep, shaking now and then. Strain and bottle. Keeps 2 years.", "", 59),
    (FRUIT, "Put all into a jar.", "keeps: 1 year\n", 59),
    (FRUIT, "Put all into a jar.", "", 59),
    (("700 ml vodka", "6 fresh red chillies"), "Put the chillies into the vodka.", "", 59),
    (("700 ml whisky", "100 g butter"), "Leave it all for 6 days, freeze, strain.", "", 6),
    (EGGNOG, "Whisk and bottle. Keep in the fridge.",
     "keeps: 2 weeks in the fridge\ntimeline:\n  - rest: 1 week\n", 7),
    (FRUIT, "Put all into a jar. Leave for 6 weeks, strain, bottle. Keeps 2 years.", "", 42),
]  # fmt: skip


def _recipe(lines: tuple[str, ...], method: str, more: str) -> Recipe:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: A bottle\nkind: infusion\nmakes: 1 l\n{more}ingredients:\n{listed}---\n"
    return read_recipe(f"{head}\n## Method\n\n1. {method}\n", "recipes/a.md", "a")


@pytest.mark.parametrize(("lines", "method", "more", "days"), [*SHORT, *LONG])
def test_a_kind_lends_no_dates_past_keeping(
    lines: tuple[str, ...], method: str, more: str, days: int
) -> None:
    assert usable_after_days(_recipe(lines, method, more).stages) == days


@pytest.mark.parametrize(("lines", "method", "more", "days"), SHORT)
def test_it_is_said_and_asked(lines: tuple[str, ...], method: str, more: str, days: int) -> None:
    short = _recipe(lines, method, more)
    said = dates_of_kind(short)
    assert said
    assert "cannot be those of any infusion" in said.text
    assert ("names no wait" in said.text) is (days == 0)
    assert warn_of_dates(short)


def test_what_stands_for_a_time_that_is_not_told_is_asked_about() -> None:
    method = "Steep until it tastes of it, strain and bottle. Keeps 3 weeks in the fridge."
    said = dates_of_kind(_recipe(SYRUP, method, ""))
    assert said
    assert "how long it stands first is not known" in said.text
