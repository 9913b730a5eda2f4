"""Titles that end in a full stop, and names signed below a recipe with a sign before them.

"Lovade lingon." and "/Hanna" are of a Swedish letter in which lingonberries are stirred with sugar;
the rest of each family was written for it, beside what must not be taken for one.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, steps

LIST = "\n\n- 500 g plums\n- 250 g sugar\n\n"
METHOD = "## Method\n\n1. Boil the plums with the sugar.\n2. Fill into jars.\n3. Label the jars.\n"


@pytest.mark.parametrize(
    ("line", "title"),
    [
        ("Lovade lingon.", "Lovade lingon"),
        ("Plum jam.", "Plum jam"),
        ("Gelée de coings.", "Gelée de coings"),
        ("Mum's best plums.", "Mum's best plums"),
        # nothing is named, or it is told or done
        ("We love plums.", ""),
        ("Plums again.", ""),
        ("Enjoy.", ""),
        ("Serves four.", ""),
        ("Pflaumen waschen.", ""),
        ("Wash plums.", ""),
        ("Merry Christmas.", ""),
        ("Easy to make.", ""),
    ],
)
def test_a_title_may_end_in_a_stop(line: str, title: str) -> None:
    below = LIST.replace("plums", "lingon") if "lingon" in line else LIST
    (one,) = brought(line + below + METHOD)
    assert fact(one, "title") == title
    assert ("No title was found." in asked(one)) is (title == "")


def test_a_stopped_title_gives_way_to_a_title_below_it() -> None:
    (one,) = brought(f"Plum season.\n\nPlum jam{LIST}{METHOD}")
    assert fact(one, "title") == "Plum jam"


def test_a_recipe_told_in_sentences_may_have_one_too() -> None:
    told = "Take 1 kg of plums and 500 g sugar, boil them for an hour and fill them into jars."
    (one,) = brought(f"Plum jam.\n\n{told} Keep in the dark.\n")
    assert fact(one, "title") == "Plum jam"
    assert steps(one)[0].startswith("Take 1 kg")


@pytest.mark.parametrize("note", ["", "We love it on toast.\n", "## Notes\n\nGood on toast.\n"])
@pytest.mark.parametrize(
    "name",
    [
        "/Hanna",
        "// Hanna",
        "~ Hanna",
        "– Hanna",
        "-Hanna",
        "/Hanna & Per",
        "/H",
        "Signed: Hanna B.",
        "by Hanna",
    ],
)
def test_a_signed_name_is_left_out_and_told(name: str, note: str) -> None:
    (one,) = brought(f"Plum jam{LIST}{METHOD}\n{note}\n{name}\n")
    assert "Hanna" not in one.text
    assert "/H" not in one.text
    assert "Names that stood behind the method are left out." in asked(one)
    assert len(steps(one)) == 3


@pytest.mark.parametrize(
    "last", ["- Cinnamon", "/Brandy", "/eller smör", "- Ribbon", "- Walnuts and Almonds", "- Vegan"]
)
def test_a_thing_behind_a_sign_stays(last: str) -> None:
    (one,) = brought(f"Plum jam{LIST}{METHOD}\n{last}\n")
    assert last.lstrip("-/ ") in one.text
    assert "Names that stood" not in asked(one)
