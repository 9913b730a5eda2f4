"""The lists that stand amid a method, each read as a part of the recipe's own list.

What heads one heads what is done with it too; what leads to one is told with its things. Leaves out
which those are: stages.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import List, Recipe, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.list_lines import read_list
from stillroom.bringing.one_line import foods_named
from stillroom.bringing.stages import stages_of
from stillroom.bringing.titles import part_of

_LEAST: Final = 3


def read_later(recipe: Recipe, rows: Sequence[Row], found: List) -> dict[int, Row]:
    """Read the lists amid a method, each as a part of the list; return rows to stand for others.

    What heads a list is a heading of the method too; what leads to one is told with its things.
    """
    instead: dict[int, Row] = {}
    asked = ""
    for one in stages_of(rows, found):
        things = [rows[at] for at in one.rows]
        again = _say_again(recipe, things)
        head = _bare_head(rows[one.head].text) if one.head is not None else ""
        read_list(recipe, [*([Row(head, "heading", 6)] if head else []), *things])
        if one.head is not None:
            instead[one.head] = replace(rows[one.head], text=head, shape="heading", level=6)
        if one.lead is not None:
            lead = rows[one.lead].text.strip(" :")
            said = ", ".join(row.text.strip(" .,;") for row in things if not is_head(row))
            instead[one.lead] = replace(rows[one.lead], text=f"{lead}: {said}.", gap=True)
        if not one.plainly or again:
            asked = asked or things[0].text
    if asked:
        what = f'More amounts stand amid the method, from "{asked}" on: they end the list here.'
        mend = "Look whether they belong to it, are the same things again, or another recipe's."
        recipe.doubt("ingredients", what, mend)
    return instead


def _bare_head(text: str) -> str:
    part = part_of(text) or text.strip(" :")
    return part[:1].upper() + part[1:]


def _say_again(recipe: Recipe, things: Sequence[Row]) -> bool:
    """Whether most of a list's things were listed before: for another size, or another way."""
    had = {food for _, line in recipe.ingredients for food in foods_named(line)}
    foods = [foods_named(row.text) for row in things]
    known = [one for one in foods if one]
    return len(known) >= _LEAST and sum(set(one) <= had for one in known) * 3 >= len(known) * 2


def head_of_first(recipe: Recipe) -> list[Row]:
    """Return the heading of a recipe's first part, for what is done with it."""
    head = recipe.ingredients[0][0] if recipe.ingredients else ""
    return [Row(head, "heading", 6)] if head else []
