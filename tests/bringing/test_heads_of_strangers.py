"""What heads papers nobody here wrote: titles, times, facts above a page, what is said beside.

Each case is in the form of a page that was read on 2026-11-29, its words cut down to the fact.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, fact, listed, steps
from stillroom.bringing.heads import section_of

LIST = "1.8 kg sugar\n1.2 litres water\n75 g citric acid\n\n"
METHOD = "1. Put sugar and water into a pan and bring it to the boil.\n2. Strain it into bottles.\n"
TITLES = {
    # ecolist.blogspot.com 2008/05
    "how to make": ("How to make: Elderflower cordial\n\n", "Elderflower cordial"),
    # christmas126.blogspot.com 2005/10
    "trails off": ("Spiced Pecans...\n\n", "Spiced Pecans"),
    "trails off in one sign": ("Spiced Pecans…\n\n", "Spiced Pecans"),
    # lviss/recipes-website, src/assets/recipes/limoncello.md
    "a time below it": ("# Limoncello\n\n2 hours\n## Ingredients\n\n", "Limoncello"),
    "a time below a typed one": ("Limoncello\n30 minutes\n\nIngredients\n", "Limoncello"),
}


@pytest.mark.parametrize("case", TITLES)
def test_a_title_is_neither_a_step_nor_lost(case: str) -> None:
    head, title = TITLES[case]
    (one,) = brought(f"{head}{LIST}{METHOD}")
    assert fact(one, "title") == title
    assert len(steps(one)) == 2
    assert len(listed(one)) == 3


def test_how_to_make_it_told_in_one_line_stays_a_method() -> None:
    (one,) = brought(
        f"Plum gin\n\n{LIST}How to make: Boil the sugar and the water, and bottle it.\n"
    )
    assert fact(one, "title") == "Plum gin"
    assert steps(one) == ["Boil the sugar and the water, and bottle it."]


def test_the_first_of_two_has_the_title_right_above_its_list() -> None:
    # fulltummies.blogspot.com 2008/12
    text = (
        "Sweet Spice Pecans\n\nI have been making these for years now, as presents.\n\n"
        "Sweet Spice Blend (also good on glazed carrots and in rice)\n"
        "  • 2 tablespoons light brown sugar\n  • 2 tablespoons ground cinnamon\n"
        "Mix all together and store it in an airtight tin.\n\n"
        "Sweet Spice Pecans\n  • 3/4 cup sugar\n  • 1 egg white\n  • 1 pound pecan halves\n\n"
        "  1. Beat the egg white until it is foamy.\n  2. Bake the pecans until they are dry.\n"
    )
    blend, pecans = brought(text)
    assert fact(blend, "title").startswith("Sweet Spice Blend")
    assert fact(pecans, "title") == "Sweet Spice Pecans"
    assert (len(listed(blend)), len(listed(pecans))) == (2, 3)


def test_so_many_flowers_head_a_list_like_any_amount() -> None:
    # hopsandvineshomebrew.co.uk, elderflower cordial
    (one,) = brought(f"Cordial\n\nFlorets from 20-25 elderflower sprays\n{LIST}{METHOD}")
    assert listed(one)[0] == "Florets from 20-25 elderflower sprays"
    assert len(listed(one)) == 4


HEADS = {
    "Alternative preparations": "aside",  # claesto/awaycello, recipes.md
    "Possible Variations": "aside",  # hopsandvineshomebrew.co.uk
    "Variations and substitutions": "aside",
    "Contribution": "aside",  # based.cooking
    "Alternative method": "method",
    "Lemon variation": None,  # may be a recipe of its own
    "Preparations": None,
}


@pytest.mark.parametrize("head", HEADS)
def test_what_is_done_otherwise_is_no_step(head: str) -> None:
    assert section_of(head) == HEADS[head]


def test_what_is_done_otherwise_keeps_its_heading() -> None:
    (one,) = brought(f"Cordial\n\n{LIST}{METHOD}\nPossible Variations\n\nAdd a pod of vanilla.\n")
    assert len(steps(one)) == 2
    assert "## Possible Variations\n\nAdd a pod of vanilla." in one.text


FACTS = (
    "---\ntitle: Seville orange marmalade\ntags:\n- new\nservings: 6 jars\ntime: 1d 3h\n\n"
    "ingredients:\n- 1 kg oranges\n- 2 kg sugar\n\ndirections:\n- Pour 2 litres water into a pan.\n"
    "- 'Next day: boil it.'\n- Note: stir it.\n---\n"
)
"""ChristopherBarrington/ainsley, content/recipes: list and steps stand above the page."""


def test_a_recipe_in_the_facts_above_a_page_is_read() -> None:
    (one,) = brought(f"{FACTS}\nMy grandmother's.\n", name="a.md")
    assert fact(one, "title") == "Seville orange marmalade"
    assert fact(one, "makes") == "6 jars"
    assert listed(one) == ["1 kg oranges", "2 kg sugar"]
    assert steps(one)[1:] == ["Next day: boil it.", "Note: stir it."]
    assert "My grandmother's." in one.text
    assert "tags" not in one.text


def test_lists_on_one_line_and_under_heads_are_read_from_facts() -> None:
    # as pages for machines have theirs: ingredients: ["1 cup butter", ...]
    text = (
        '---\ntitle: Shortbread\nserves: 30\ningredients: ["1 cup butter", "2 cups flour"]\n'
        'instructions: ["Cream the butter.", "Bake it."]\n---\n'
    )
    (one,) = brought(text, name="a.md")
    assert listed(one) == ["1 cup butter", "2 cups flour"]
    assert steps(one) == ["Cream the butter.", "Bake it."]
    under = text.replace('["1 cup butter", "2 cups flour"]', "{Dough: [1 cup butter], Top: [salt]}")
    (one,) = brought(under, name="a.md")
    assert "Dough:" in one.text
    assert listed(one)[-1] == "salt"


def test_the_books_own_form_stays_its_own() -> None:
    facts = "title: Jam\nkind: jam\nmakes: 1 kg\ningredients:\n  - 1 kg plums\n"
    own = f"---\n{facts}---\n\n## Method\n\n1. Boil.\n"
    (one,) = brought(own, name="a.md")
    assert one.text.replace("\n", "").endswith("## Method1. Boil.")
    assert "## Source" not in one.text
