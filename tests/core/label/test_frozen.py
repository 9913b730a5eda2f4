"""What is kept in the freezer has its date for there: thawed, nobody knows how long it keeps.

Written before the code: what is frozen by its method or its "keeps", and what only may be.
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import make_card
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.giving.kept_cold import is_frozen, is_kept_cold

FROZEN = [
    ("Crush and strain. Bottle. Keeps 6 months in the freezer.", ""),
    ("Crush and strain. Freeze for up to 6 months.", ""),
    ("Crush and strain.", "keeps: 6 months in the freezer\n"),
    ("Crush and strain.", "keeps: 6 months frozen\n"),
    ("Crush. Im Gefrierschrank aufbewahren, 6 Monate haltbar.", ""),
]
NOT_FROZEN = [
    ("Crush and strain. Keeps 2 weeks in the fridge.", ""),
    ("Freeze for an hour, strain. Keeps 2 weeks in the fridge.", ""),
    ("Boil with the sugar. Keeps 1 year.", ""),
    ("Boil with the sugar. Keeps 1 year in a cupboard, or freeze it.", ""),
]
UNSAID = "how long it keeps is not known"


def _recipe(method: str, more: str) -> Recipe:
    head = "---\ntitle: It\nkind: preserve\nmakes: 3 bottles of 250 ml\n"
    foods = "ingredients:\n  - 500 g blackcurrants\n  - 400 g sugar\n  - 400 ml water\n"
    text = f"{head}{more}{foods}---\n\n## Method\n\n1. {method}\n"
    return read_recipe(text, "recipes/a.md", "a")


@pytest.mark.parametrize(("method", "more"), FROZEN)
def test_a_card_says_that_its_date_is_for_the_freezer(method: str, more: str) -> None:
    keep = make_card(_recipe(method, more), BookSettings()).keep
    assert "freezer" in keep
    assert UNSAID in keep
    assert is_frozen(keep)


@pytest.mark.parametrize(("method", "more"), NOT_FROZEN)
def test_what_only_may_be_frozen_says_nothing_of_it(method: str, more: str) -> None:
    keep = make_card(_recipe(method, more), BookSettings()).keep
    assert UNSAID not in keep
    assert not is_frozen(keep)


def test_how_long_it_keeps_thawed_stands_where_somebody_says_so() -> None:
    more = "keeps: 6 months in the freezer, 3 days once opened\n"
    card = make_card(_recipe("Crush and strain.", more), BookSettings())
    assert "Thawed" in card.keep
    assert "3 days" in card.once_opened


def test_what_is_frozen_is_kept_cold() -> None:
    assert is_kept_cold("In the freezer: its date is for there.")
