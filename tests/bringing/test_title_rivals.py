"""Two lines that may be what a recipe is called, and a day that is none: asked at the title.

The heads of four pages are of two judges' sealed papers (a blog of drinks, a Polish garden's blog,
a sheet of infusions, an old book's receipt under the day of its posting); the others, in which
nothing is to be asked, were put down beside them before any was tried.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought

LIST = "Ingredients\n\n2 lb rhubarb\n1 lb sugar\n1 l gin\n\nMethod\n\n1. Steep it. Strain it.\n"
POLISH = "Polecam Wam mój.\n\n15 baldachów bzu\n1/2 kg cukru\n\nGotujemy syrop z cukru.\n"


def titles_asked(text: str, language: str) -> list[str]:
    (recipe, *_) = brought(text, language)
    return [row for row in recipe.text.splitlines() if "taken for the title" in row]


@pytest.mark.parametrize(
    ("language", "text", "named"),
    [
        ("en_US", f"Great Mixed Drinks\n\nOriginal Rhubarb Gin\n\n{LIST}", "Original Rhubarb Gin"),
        ("en_GB", f"Christmas infusions\n\nRhubarb Gin\n\n{LIST}", "Rhubarb Gin"),
        (
            "pl_PL",
            f"Ogrodniczka po godzinach\n\nSyrop z kwiatów bzu czarnego\n\n{POLISH}",
            "Syrop z kwiatów bzu czarnego",
        ),
    ],
)
def test_another_line_that_may_be_the_title_is_asked_about(
    language: str, text: str, named: str
) -> None:
    (said,) = titles_asked(text, language)
    assert named in said


@pytest.mark.parametrize(
    "head",
    [
        "Rhubarb Gin",
        "Rhubarb Gin\n\nServes 4",
        "Rhubarb Gin\n\nA pink gin for the cold months.",
        "Rhubarb Gin\n\nOur rhubarb gin",
        "Rhubarb Gin\n\nFor the gin",
    ],
)
def test_nothing_is_asked_where_one_line_is_the_title(head: str) -> None:
    assert titles_asked(f"{head}\n\n{LIST}", "en_GB") == []
