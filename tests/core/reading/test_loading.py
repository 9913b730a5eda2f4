"""A recipe file that is right becomes the model; the mistakes are in the goldens."""

from fractions import Fraction
from pathlib import Path

import pytest

from stillroom.core.amounts.quantities import Amount, Ratio
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.reading.loading import gather_recipes, read_recipe
from stillroom.core.recipe.method import split_step
from stillroom.core.recipe.model import Recipe

TEXT = """---
title: Bitter-orange drops
kind: infusion
makes: 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - 6 unwaxed oranges (about 900 g), thinly peeled
  - 100 g sugar
  - item: cinnamon stick
    amount: 1 per 250-400 ml of vodka
  - salt, to taste
vessel: 1.5 l clip-top jar
keeps: 3 years unopened, 1 year once opened
season: [January, February]
---

Worth making.

## Method

1. Wash the jar.
   Dry it.
2. Pour in {vodka} and {50 g sugar}.

## Notes

None.
"""


@pytest.fixture(scope="module")
def recipe() -> Recipe:
    return read_recipe(TEXT, "drops.md", "drops")


def test_ingredient_line_gives_all_it_says(recipe: Recipe) -> None:
    vodka, oranges = recipe.ingredients[:2]
    assert (vodka.item, vodka.strength) == ("vodka", 40)
    assert oranges.each_g == 150
    assert oranges.note == "about 900 g, thinly peeled"
    assert isinstance(recipe.ingredients[3].amount, Ratio)


def test_kind_brings_what_is_not_said(recipe: Recipe) -> None:
    assert [stage.role for stage in recipe.stages].count("tend") == 3
    assert recipe.filled_into[0].size == Amount(Fraction(100), Fraction(100), "ml")
    assert not recipe.stays_in(recipe.ingredients[1])


def test_lines_are_those_of_the_file(recipe: Recipe) -> None:
    rows = TEXT.splitlines()
    for path, word in [
        (("ingredients", 1), "oranges"),
        (("vessels",), "vessel"),
        (("keeps",), "keeps"),
    ]:
        assert word in rows[recipe.line_of(*path) - 1]


def test_step_over_two_lines_is_one(recipe: Recipe) -> None:
    assert next(step.text for step in recipe.method) == "Wash the jar. Dry it."


def test_braces_name_an_ingredient_or_a_part_of_it(recipe: Recipe) -> None:
    segments = split_step(recipe.method[1].text, recipe.ingredients, "metric")
    assert [segment.ingredient for segment in segments] == [None, 0, None, 2, None]
    assert segments[3].part == Amount(Fraction(50), Fraction(50), "g")


def test_other_sections_are_kept(recipe: Recipe) -> None:
    assert [(section.heading, section.text) for section in recipe.sections] == [("Notes", "None.")]


def test_byte_order_mark_and_windows_lines_are_read(tmp_path: Path) -> None:
    from stillroom.core.reading.loading import load_recipe

    path = tmp_path / "drops.md"
    path.write_bytes(b"\xef\xbb\xbf" + TEXT.replace("\n", "\r\n").encode())
    assert load_recipe(path).title == "Bitter-orange drops"


def test_counted_word_alone_is_the_thing_itself() -> None:
    cloves = read_ingredient("16 cloves, lightly crushed", "metric")
    assert (cloves.item, cloves.note) == ("cloves", "lightly crushed")
    assert cloves.amount == Amount(Fraction(16), Fraction(16))


def test_two_names_that_differ_by_capitals_are_told_once(tmp_path: Path) -> None:
    for name in ("orange", "Orange"):
        (tmp_path / f"{name}.md").write_text(TEXT, encoding="utf-8")
    paths = list(tmp_path.iterdir())
    if len(paths) < 2:
        pytest.skip("this disk takes both names for one")
    _, _, problems = gather_recipes(paths, tmp_path)
    assert [problem.what for problem in problems] == ['"Orange.md" cannot become an address.']


@pytest.mark.parametrize("word", ["Optional", "optional", "Note", "Icing"])
def test_a_list_below_a_word_is_a_group_whatever_the_word(word: str) -> None:
    text = TEXT.replace("  - salt, to taste\n", f"  - {word}:\n      - salt, to taste\n")
    recipe = read_recipe(text, "drops.md", "drops")
    assert (recipe.ingredients[-1].item, recipe.ingredients[-1].group) == (
        "salt",
        word.capitalize(),
    )


# a newcomer's cordial (30 November 2026): "Stir in 500 g caster sugar and 1 lemon"
@pytest.mark.parametrize(
    ("step", "shown"),
    [
        ("Stir in {lemon}.", "Stir in lemon (juice only)."),
        ("Stir in the juice of {lemon}.", "Stir in the juice of lemon."),
        ("Stir in {lemon} juice.", "Stir in lemon juice."),
        ("Stir in {oranges}.", "Stir in oranges."),
    ],
)
def test_a_step_says_of_which_part_an_amount_is(step: str, shown: str) -> None:
    lines = [read_ingredient(line, "metric") for line in ("juice of 1 lemon", "2 oranges")]
    assert "".join(one.text for one in split_step(step, lines, "metric")) == shown
