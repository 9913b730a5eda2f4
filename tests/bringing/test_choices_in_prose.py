"""What a sentence offers in the place of a food stays with it: "cider or wine vinegar"."""

from __future__ import annotations

import pytest

from stillroom.bringing.prose import measured_in_prose


@pytest.mark.parametrize(
    ("sentence", "things"),
    [
        (
            "Pour one pint good cider or wine vinegar over one cup herbs.",
            ["one pint good cider or wine vinegar", "one cup herbs"],
        ),
        ("Put half a pound of almonds or walnuts into it.", ["half a pound of almonds or walnuts"]),
        ("Boil two quarts of brandy or rum with it.", ["two quarts of brandy or rum"]),
        ("Add a cup of brandy or more.", ["a cup of brandy"]),
        ("Beat in two eggs or three.", ["two eggs"]),
        ("Take a pint of milk or until it is thick.", ["a pint of milk"]),
        ("Peel two and a half pounds of plums.", ["two and a half pounds of plums"]),
    ],
)
def test_a_choice_is_kept_whole(sentence: str, things: list[str]) -> None:
    assert measured_in_prose([sentence]) == things
