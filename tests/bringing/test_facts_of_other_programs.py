"""Facts above a page of Markdown as other programs write them, and lists of what is worked with.

In the shape of a family's pages in a public repository (8 read on 1 December 2026: all 8 lost their
title, one was called "Cookware", and "Makes 2" became a food).
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed

_PAGE = """---
author: Wren Alder
time: 30 minutes
servings: "{served}"
type: snack
{name}: Savoury straws
---

{tools}:

- Baking tray, 1
- Butter dish, 1

Ingredients:

- Thyme, 1/2 tsp
- Butter, 1 stick
- Bread, 1 loaf
- Garlic, 4 cloves
- Paprika, to taste

Steps:

- Heat the oven to 350 F.
- Melt the butter and stir in the thyme and the minced garlic.
- Spread it on the bread and bake it for 10 minutes.
"""


def _page(name: str = "name", served: str = "2", tools: str = "Cookware") -> str:
    return _PAGE.format(name=name, served=served, tools=tools)


@pytest.mark.parametrize(
    "name", ["name", "title", "Recipe", "recipe_name", "titel", "nom", "nombre"]
)
def test_the_name_among_the_facts_is_the_title(name: str) -> None:
    (one,) = brought(_page(name), name="a.md")
    assert fact(one, "title") == "Savoury straws"


def test_a_title_goes_before_a_name() -> None:
    text = _page("title").replace("type: snack", "name: wren")
    (one,) = brought(text, name="a.md")
    assert fact(one, "title") == "Savoury straws"


@pytest.mark.parametrize(
    ("served", "makes"), [("2", "2 servings"), ("1 cup", "1 cup"), ("12 straws", "12 straws")]
)
def test_how_much_is_made_is_no_food(served: str, makes: str) -> None:
    (one,) = brought(_page(served=served), name="a.md")
    assert fact(one, "makes") == makes
    assert [line for line in listed(one) if "Makes" in line or "Wren" in line] == []
    assert len(listed(one)) == 5


@pytest.mark.parametrize(
    "tools", ["Cookware", "Kitchen tools", "Bakeware", "Equipment", "Required tools", "Utensils"]
)
def test_what_is_worked_with_is_neither_title_nor_food(tools: str) -> None:
    (one,) = brought(_page(tools=tools), name="a.md")
    assert fact(one, "title") == "Savoury straws"
    assert not [line for line in listed(one) if "tray" in line or "dish" in line]
    assert "tray" in one.text.partition("## Method")[2]
    assert "not a food" not in asked(one)
