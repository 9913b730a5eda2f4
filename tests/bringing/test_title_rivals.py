"""Two lines that may be what a recipe is called, and a day that is none: asked at the title.

The heads of four pages are of two judges' sealed papers (a blog of drinks, a Polish garden's blog,
a sheet of infusions, an old book's receipt under the day of its posting); the others, in which
nothing is to be asked, were put down beside them before any was tried.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought

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


@pytest.mark.parametrize(
    ("title", "line", "is_asked"),
    [
        ("Sloe berries", "450g sloe berries", True),
        ("Picked sloes", "200g sloes", True),
        ("Frische Schlehen", "500 g Schlehen", True),
        ("Sloe gin", "450g sloe berries", False),
        ("Lavender sugar", "200 g lavender sugar", False),  # it says its kind
        ("Candied ginger", "200 g ginger", False),
        ("Sugared almonds", "200 g almonds", False),
    ],
)
def test_a_title_that_only_names_what_goes_in_is_asked(
    title: str, line: str, is_asked: bool
) -> None:
    """As the words at a picture do."""
    text = f"{title}\n\n{line}\n1 litre gin\n\nMethod\n\n1. Put it all into a jar.\n"
    (recipe,) = brought(text)
    assert ("names what goes in alone" in asked(recipe)) is is_asked


@pytest.mark.parametrize(
    ("step", "is_asked"),
    [
        ("Store in a cool, dark cupboard and shake every other day for a week.", False),
        ("An einem dunklen Ort lagern und eine Woche lang täglich schütteln.", False),
        ("Store in a cool, dark cupboard for up to a year.", True),
    ],
)
def test_what_is_shaken_meanwhile_is_not_asked_as_keeping(step: str, is_asked: bool) -> None:
    text = f"Sloe gin\n\n450 g sloes\n1 litre gin\n\nMethod\n\n1. Put it into a jar.\n2. {step}\n"
    (recipe,) = brought(text)
    said = "How long it keeps may stand here" in asked(recipe) or "keeps:" in recipe.text
    assert said is is_asked
