"""The box of a book's own foods: however they are typed, the book reads them."""

from __future__ import annotations

import pytest

from stillroom.core.larder.own import read_own_larder
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.own_foods import set_in, with_food

# as cooks type into the box, with the foods that are to be read of it
TYPED = [
    ("samphire dust\ncontains: nothing\nfrom: plant", ["samphire dust"]),
    ("samphire dust:\ncontains: nothing", ["samphire dust"]),
    ("samphire dust:\n  contains: nothing", ["samphire dust"]),
    ("samphire dust:\n\tcontains: nothing", ["samphire dust"]),
    ("our butter\nis: butter\n\nfig syrup\ncontains: nothing", ["our butter", "fig syrup"]),
    ("our gin:\nis: gin\nprice:\n- 700 ml for 14.50\n- 1 l for 18", ["our gin"]),
    ("# ours\nour gin:\n  is: gin # the good one\n", ["our gin"]),
]


@pytest.mark.parametrize(("typed", "foods"), TYPED)
def test_foods_are_read_however_they_are_set(typed: str, foods: list[str]) -> None:
    text = set_in(typed)
    read = read_own_larder(text, "larder.yml")
    assert [food.name for food in read.larder.own] == foods
    assert set_in(text) == text, "what is right stays as it is"


@pytest.mark.parametrize("typed", ["what is this", "contains: milk", "gin: cheap", "- gin"])
def test_what_says_nothing_of_a_food_is_told_as_before(typed: str) -> None:
    assert set_in(typed) == typed
    with pytest.raises(ProblemsFound):
        read_own_larder(set_in(typed), "larder.yml")


def test_a_food_that_is_only_named_is_asked_about() -> None:
    text = with_food("", "samphire dust: <b>")
    assert text.startswith("samphire dust b:\n")
    with pytest.raises(ProblemsFound, match="samphire dust b"):
        read_own_larder(set_in(text), "larder.yml")
