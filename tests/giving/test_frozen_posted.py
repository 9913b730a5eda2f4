"""What lies in the fridge or the freezer goes in no parcel, whoever of a recipe says so."""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.giving.facts import facts_of
from stillroom.giving.posting import Parcel, why_not_posted

PARCEL = Parcel("FR", True, None, None)
DAY = date(2026, 12, 1)


@pytest.mark.parametrize(
    ("method", "more", "refused"),
    [
        ("Crush and strain. Keeps 6 months in the freezer.", "", True),
        ("Crush and strain. Freeze for up to 6 months.", "", True),
        ("Crush and strain.", "keeps: 6 months in the freezer\n", True),
        ("Boil, pot. Keeps 2 weeks in the fridge.", "", True),
        ("Boil and pot.", "keeps: 2 weeks in the fridge\n", True),
        ("Boil, pot. Keeps 1 year.", "", False),
        ("Boil and pot.", "keeps: 1 year, 4 weeks in the fridge once opened\n", False),
        ("Boil, pot. Keeps 1 year. Once opened, keep it in the fridge.", "", False),
    ],
)
def test_what_is_kept_cold_by_its_method_is_in_no_parcel(
    method: str, more: str, refused: bool
) -> None:
    head = "---\ntitle: It\nkind: preserve\nmakes: 3 jars of 250 ml\n"
    foods = "ingredients:\n  - 500 g blackcurrants\n  - 400 g sugar\n"
    text = f"{head}{more}{foods}---\n\n## Method\n\n1. {method}\n"
    facts = facts_of(read_recipe(text, "recipes/a.md", "a"))
    assert bool(why_not_posted(PARCEL, "GB", facts, "jar, 250 ml", DAY)) is refused
