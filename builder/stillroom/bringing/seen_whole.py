"""What is seen only once a recipe is read whole: heads told as steps, a caption behind them.

Also a list that stands twice, once as a sum of its parts. Leaves out how a method's rows are read:
below_list.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.doubted import quoted
from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, says_otherwise
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.lines.staple_table import staples_named

_MOST_OF_A_HEAD: Final = 6
_LEAST_HEADS: Final = 2
_LEAST_OF_A_CAPTION: Final = 5
_MOST_SHOWN: Final = 4
_SUMS: Final = re.compile(
    r"(?:in )?total(?:e|t)?|gesamt|insgesamt|au total|en total|in totale|in totaal|totaal|totalt"
    r"|i alt|tilsammen|sammanlagt|no total|w sumie|razem|łącznie|all together|altogether",
)


def tidy_whole(recipe: Recipe) -> None:
    """Put right what a recipe's parts tell of each other, and ask where that is no more certain."""
    _take_heads(recipe)
    _take_caption(recipe)
    _ask_of_sum(recipe)
    _ask_of_ways(recipe)


def _take_heads(recipe: Recipe) -> None:
    """Take numbered steps that only head those below them for heads: "1. Mix the dough:".

    >>> told = [("", "Make the dough:"), ("", "Mix it."), ("", "Bake:"), ("", "Bake it all.")]
    >>> recipe = Recipe(steps=told)
    >>> tidy_whole(recipe)
    >>> recipe.steps
    [('Make the dough', 'Mix it.'), ('Bake', 'Bake it all.')]
    """
    steps = recipe.steps
    if any(head for head, _ in steps):
        return
    heads = [at for at, (_, text) in enumerate(steps) if _is_only_head(text)]
    headed = all(at + 1 < len(steps) and not _is_only_head(steps[at + 1][1]) for at in heads)
    things = any(is_ingredient(steps[at + 1][1]) for at in heads if at + 1 < len(steps))
    if len(heads) < _LEAST_HEADS or not headed or things:
        return
    group = ""
    recipe.steps = []
    for at, (_, text) in enumerate(steps):
        if at in heads:
            group = text.strip(" :")
            recipe.numbered.discard(text)
        else:
            recipe.steps.append((group, text))


def _is_only_head(text: str) -> bool:
    return text.rstrip().endswith(":") and len(text.split()) <= _MOST_OF_A_HEAD


def _take_caption(recipe: Recipe) -> None:
    """Keep a line in capitals behind steps that are in none as a note: it stood at a picture.

    >>> told = [("", "Boil the jam."), ("", "SERVE ONION JAM WITH CHEESE AND NUTS")]
    >>> recipe = Recipe(steps=told)
    >>> tidy_whole(recipe)
    >>> recipe.steps, recipe.notes
    ([('', 'Boil the jam.')], [('Notes', ['SERVE ONION JAM WITH CHEESE AND NUTS'])])
    """
    if len(recipe.steps) < _LEAST_HEADS:
        return
    last = recipe.steps[-1][1]
    above = any(text.isupper() for _, text in recipe.steps[:-1])
    if not last.isupper() or above or len(last.split()) < _LEAST_OF_A_CAPTION:
        return
    recipe.steps.pop()
    recipe.notes.append(("Notes", [last]))
    what = f"Behind the last step, in capitals, kept as a note: {quoted(last)}"
    recipe.doubt("title", what, "If it is a step, write it into the method.")


def _ask_of_sum(recipe: Recipe) -> None:
    """Ask about a part of the list that may be the sum of the others: "Total", "Insgesamt"."""
    heads = list(dict.fromkeys(head for head, _ in recipe.ingredients))
    summed = next((head for head in heads if _SUMS.fullmatch(plain(head))), "")
    if summed and len(heads) > 1:
        what = f'"{summed}" may be the sum of the other parts of the list: then all is in it twice.'
        recipe.doubt("ingredients", what, "If so, take out the lines below it.")


def _ask_of_ways(recipe: Recipe) -> None:
    """Ask about variations that put in what somebody avoids and the list does not have.

    >>> recipe = Recipe(ingredients=[("", "1 kg sugar")])
    >>> recipe.notes = [("Variations", ["Add a handful of walnuts.", "Add an orange."])]
    >>> tidy_whole(recipe)
    >>> [what for _, what, _ in recipe.doubts]
    ['Kept as a note, since "Variations" heads it: "Add a handful of walnuts".']
    """
    listed = {food.name for _, row in recipe.ingredients for food in staples_named(row)}
    for head, rows in recipe.notes:
        told = [row for row in rows if says_otherwise(head) and _brings(row, listed)]
        if told:
            shown = " · ".join(map(quoted, told[:_MOST_SHOWN]))
            what = f'Kept as a note, since "{head}" heads it: {shown}.'
            recipe.doubt("ingredients", what, "Write into the list what goes into what is made.")


def _brings(text: str, listed: set[str]) -> bool:
    """Whether words name a food with an allergen, or a spirit, that a list does not have."""
    foods = [food for food in staples_named(text) if food.name not in listed]
    return any(food.allergens or food.may_contain or food.strength for food in foods)
