"""A page of an old book by a machine's eye: chapters, page numbers, lists broken over two lines.

The page is shaped after one that a stranger brought in (two raspberry vinegars of a book of 1915 on
wines and cordials); words changed.
"""

from __future__ import annotations

from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

PAGE: Final = """                IV
   FRUIT VINEGARS AND WATERS

A generation or two ago every housewife who
was proud of her table was very sure to have
in her cellar fruit vinegars of many kinds.

          RASPBERRY VINEGAR
             (date 1845)

  2 quarts of raspberries, 1 pint of vinegar,
                  Sugar.

To two quarts of raspberries take one pint of
vinegar. Allow this to stand for three days;
then strain it. To every pint of juice add a
pound of sugar. Boil this for twenty
minutes, skim and bottle when cold.

          CHERRY VINEGAR

  10 quarts of cherries, Vinegar,
                  Sugar.

Look over ten quarts of cherries and cover
with vinegar. Strain and press the juice
from the fruit.

                 61
"""


def test_two_recipes_of_a_page_are_two_with_their_lists_and_no_page_number() -> None:
    found = brought(PAGE)
    assert [fact(one, "title") for one in found] == ["Raspberry vinegar", "Cherry vinegar"]
    assert listed(found[0]) == ["2 quarts of raspberries", "1 pint of vinegar", "Sugar"]
    assert listed(found[1]) == ["10 quarts of cherries", "Vinegar", "Sugar"]
    assert [len(steps(one)) for one in found] == [1, 1]
    assert steps(found[0])[0].endswith("Boil this for twenty minutes, skim and bottle when cold.")
    assert not any("61" in one.text or "IV" in one.text for one in found)
    assert "above the first of several recipes is left out" in asked(found[0])


@pytest.mark.parametrize("last", ["61", "XII"])
@pytest.mark.parametrize("first", ["IV\n\n", "CHAPTER IV.\n\n", ""])
def test_marks_of_a_page_are_neither_title_nor_step(first: str, last: str) -> None:
    jam = "Plum jam\n\n1 kg plums\n800 g sugar\n\nBoil them for an hour.\nPour into jars."
    (found,) = brought(f"{first}{jam}\n\n{last}\n")
    assert fact(found, "title") == "Plum jam"
    assert steps(found) == ["Boil them for an hour.", "Pour into jars."]


def test_who_types_without_capitals_keeps_a_step_a_line() -> None:
    (found,) = brought(
        "Plum jam\n\n1 kg plums\n800 g sugar\n\nboil them for an hour\npour into jars\n"
    )
    assert steps(found) == ["boil them for an hour", "pour into jars"]


@pytest.mark.parametrize(
    "said", ["500 g plums, stoned, sliced.", "2 weeks later, strain it, bottle."]
)
def test_what_is_said_of_one_thing_is_no_list_of_three(said: str) -> None:
    (found,) = brought(f"Plum jam\n\n{said}\n\nBoil them with 800 g sugar for an hour.\n")
    assert len(listed(found)) < 3
