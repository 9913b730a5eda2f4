"""One recipe's list given for two sizes, each under its yield: "for 24 pieces", "for 48 pieces".

The first is taken and the others are asked about. Leaves out a second row of amounts behind the
foods: outside.py.
"""

from __future__ import annotations

from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.yield_lines import amount_of_nothing, yield_of_line
from stillroom.core.lines.staple_table import staples_named

_LEAST: Final = 2


def take_first_batch(recipe: Recipe) -> None:
    """Take the first of several lists of the same foods that stand under how much they make.

    >>> rows = [("for 24 pieces", "1 lb flour"), ("for 24 pieces", "1 egg")]
    >>> more = [("for 48 pieces", "2 lb flour"), ("for 48 pieces", "2 eggs")]
    >>> recipe = Recipe(ingredients=[*rows, *more])
    >>> take_first_batch(recipe)
    >>> recipe.ingredients, recipe.makes
    ([('', '1 lb flour'), ('', '1 egg')], '24 pieces')
    """
    heads = list(dict.fromkeys(head for head, _ in recipe.ingredients if head))
    makes = {head: _made(head) for head in heads}
    sizes = [head for head in heads if makes[head]]
    if len(sizes) < _LEAST or sizes != heads or any(not head for head, _ in recipe.ingredients):
        return
    first, *others = ([row for head, row in recipe.ingredients if head == one] for one in sizes)
    foods = _foods(first)
    if any(len(foods & _foods(other)) * 2 <= len(foods) for other in others):
        return
    recipe.ingredients = [("", row) for row in first]
    recipe.say_makes(makes[sizes[0]])
    said = " and ".join(f'"{makes[one]}"' for one in sizes[1:])
    what = (
        f'The list stands for several sizes: that of "{makes[sizes[0]]}" is taken, not of {said}.'
    )
    recipe.doubt("ingredients", what, "Look whether that is the size you mean.")


def _made(head: str) -> str:
    bare = head.strip(" :")
    return yield_of_line(bare) or amount_of_nothing(bare) or makes_of(bare)


def _foods(rows: list[str]) -> set[str]:
    return {food.name for row in rows for food in staples_named(row)}
