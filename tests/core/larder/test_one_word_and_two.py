"""Names that are one food as one word and another as two; taken for each other, one would harm.

"Ground nuts" are nuts of any sort, ground; groundnuts are peanuts. "Sweet bread" is a loaf.
"""

from __future__ import annotations

import pytest

from stillroom.core.lines.staple_table import find_staple


@pytest.mark.parametrize(
    ("words", "allergens", "animal"),
    [
        ("ground nuts", ("nuts",), ("plant",)),
        ("mixed ground nuts", ("nuts",), ("plant",)),
        ("groundnuts", ("peanut",), ("plant",)),
        ("sweet bread", ("wheat",), ("plant",)),
        ("sweetbreads", (), ("meat",)),
    ],
)
def test_two_words_are_not_one(
    words: str, allergens: tuple[str, ...], animal: tuple[str, ...]
) -> None:
    found = find_staple(words)
    assert found is not None
    assert (found.allergens, found.animal) == (allergens, animal)


@pytest.mark.parametrize(
    ("short", "whole"),
    [
        ("cinn. sticks", "cinnamon stick"),
        ("choc. chips", "chocolate chips"),
        ("marge", "margarine"),
        ("oleo", "margarine"),
        ("evap. milk", "evaporated milk"),
        ("vanilla ext.", "vanilla extract"),
        ("veg oil", "vegetable oil"),
        ("saleratus", "bicarbonate of soda"),
        ("coloring", "food colouring"),
    ],
)
def test_a_card_shortens_and_means_the_same(short: str, whole: str) -> None:
    one, other = find_staple(short), find_staple(whole)
    assert one is not None
    assert other is not None
    assert one.name == other.name


@pytest.mark.parametrize(
    ("short", "whole"),
    [
        ("demerara", "demerara sugar"),
        ("golden caster", "caster sugar"),
        ("granulated", "granulated sugar"),
        ("soft brown", "light brown sugar"),
        ("dark brown soft", "dark brown sugar"),
        ("self-raising", "self-raising flour"),
        ("strong white", "bread flour"),
        ("plain wholemeal", "wholemeal flour"),
        ("balsamic", "balsamic vinegar"),
        ("dijon", "prepared mustard"),
    ],
)
def test_the_last_word_is_left_out_in_a_shop_and_on_a_card(short: str, whole: str) -> None:
    one, other = find_staple(short), find_staple(whole)
    assert one is not None
    assert other is not None
    assert one.allergens == other.allergens
    assert one.tags == other.tags


@pytest.mark.parametrize("short", ["tartaric", "evaporated", "rapeseed", "chipotles"])
def test_what_may_be_more_than_one_thing_stays_not_known(short: str) -> None:
    assert find_staple(short) is None
