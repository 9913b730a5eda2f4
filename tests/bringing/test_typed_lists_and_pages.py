"""Lists typed with dots or tabs, pages that show them as they were typed, lines without a stop.

Measured on 18 sheets of one recipe in the ways that papers of strangers set one (November 2026),
fixed before the code: 9 lists and 4 pages were lost or misread; none after it.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps

METHOD = "Wash and stone the plums. Boil them with the water, add the sugar and boil until it sets."
THINGS = ["4 lb plums", "3 lb sugar", "1/2 pint water"]
LISTS = {
    "dots": "plums ........ 4 lb.\nsugar ........ 3 lb.\nwater ........ 1/2 pint",
    "dots behind": "4 lb ........ plums\n3 lb ........ sugar\n1/2 pint .... water",
    "spaced dots": "plums . . . . 4 lb.\nsugar . . . . 3 lb.\nwater . . . 1/2 pint",
    "ellipses": "plums…… 4 lb.\nsugar……3 lb.\nwater……1/2 pint",
    "dashes": "plums ------ 4 lb.\nsugar ------ 3 lb.\nwater ----- 1/2 pint",
    "strokes": "plums_____4 lb.\nsugar_____3 lb.\nwater____1/2 pint",
    "columns": "plums ..... 4 lb.    Sugar ..... 3 lb.\nwater ..... 1/2 pint",
    "tabs": "4 lb\tplums\n3 lb\tsugar\n1/2 pint\twater",
}


@pytest.mark.parametrize("head", ["", "Ingredients\n"], ids=["bare", "headed"])
@pytest.mark.parametrize("way", LISTS)
def test_a_list_is_read_however_it_is_typed(way: str, head: str) -> None:
    below = f"Method\n{METHOD}" if head else METHOD
    (found,) = brought(f"Plum jam\n\n{head}{LISTS[way]}\n\n{below}\n")
    assert [row.lower() for row in listed(found)] == THINGS
    assert len(steps(found)) == 1


@pytest.mark.parametrize("way", LISTS)
def test_a_page_shows_a_recipe_as_it_was_typed(way: str) -> None:
    typed = f"<pre>\nPLUM JAM\n\n{LISTS[way]}\n\n{METHOD}\n</pre>"
    (found,) = brought(f"<html><body><h1>Our house</h1>{typed}</body></html>", name="a.html")
    assert found.title == "Plum jam"
    assert [row.lower() for row in listed(found)] == THINGS
    assert steps(found) == [METHOD]


def test_two_recipes_of_a_typed_page_are_two() -> None:
    method = "Boil the {1}, add the sugar\nand boil until\nit sets."
    one = f"{{0}} JAM\n\n4 lb {{1}}\n3 lb sugar\n\n{method}\n\n\n"
    typed = one.format("PLUM", "plums") + one.format("PEAR", "pears")
    found = brought(f"<html><body><pre>{typed}</pre></body></html>", name="a.html")
    assert [each.title for each in found] == ["Plum jam", "Pear jam"]
    assert [len(steps(each)) for each in found] == [1, 1]


@pytest.mark.parametrize(
    "lines",
    [
        "Plum jam ........ 12\nPear chutney .... 14\nQuince jelly .... 31",
        "Wait for it...\nand it sets...",
    ],
    ids=["contents", "trailing off"],
)
def test_other_dots_measure_nothing(lines: str) -> None:
    (found,) = brought(f"Plum jam\n\n4 lb plums\n3 lb sugar\n\n{METHOD}\n\n{lines}\n")
    assert listed(found) == THINGS[:2]


@pytest.mark.parametrize(
    ("lines", "language"),
    [
        ("Wash the plums and take the stones out of every single one\n"
         "Put them into a large pan with half a pint of cold water in it\n"
         "Boil them gently until they are soft and the skins are tender\nPot it", "en_GB"),
        ("Die Pflaumen gründlich waschen und alle Steine herausnehmen\n"
         "Mit dem Zucker in einem großen Topf über Nacht stehen lassen\n"
         "Am nächsten Tag unter ständigem Rühren zwei Stunden kochen", "de_DE"),
    ],
    ids=["en", "de"],
)  # fmt: skip
def test_lines_that_each_bid_something_are_a_step_each(lines: str, language: str) -> None:
    (found,) = brought(f"Jam\n\n4 kg plums\n3 kg sugar\n\n{lines}\n", language)
    assert steps(found) == lines.split("\n")


def test_lines_that_a_machine_broke_off_are_one_step() -> None:
    lines = (
        "Wash the plums and take the stones out of every single one of\n"
        "them, and put them into a large pan with half a pint of water.\n"
        "Boil them gently until they are soft and the skins are tender."
    )
    (found,) = brought(f"Jam\n\n4 kg plums\n3 kg sugar\n\n{lines}\n")
    assert steps(found) == [lines.replace("\n", " ")]
    assert "Is this part" not in asked(found)
