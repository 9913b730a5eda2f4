"""What stands between a title and its list: how much, whose it is, words, a method told first.

Leaves out which rows those are: dividing.py; what a letter says there to one: greetings.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.afterwords import is_name
from stillroom.bringing.below_list import (
    ADDRESS,
    CAPTION,
    notes_above,
    read_steps,
    take_row,
)
from stillroom.bringing.callings import yield_alone
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.greetings import tell_greeting
from stillroom.bringing.head_rows import is_a_recipe_head, is_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.labelled_spans import take_behind_label
from stillroom.bringing.makes_said import is_only_makes, makes_of
from stillroom.bringing.makes_taken import take_makes
from stillroom.bringing.page_figures import is_labelled_time
from stillroom.bringing.page_foot import poster_of
from stillroom.bringing.said_to_one import greets
from stillroom.bringing.sorting import is_passed, is_sentence
from stillroom.bringing.titles import beside_writer, speaks_of_a_recipe, writer_of
from stillroom.bringing.tools import is_tool

_FEW: Final = 6
"""Words of a line that may say the title again."""


def read_above(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read what stands between a title and its list: how much, whose, a few words."""
    greeted = any(greets(row.text) for row in rows)
    method = next((at for at, row in enumerate(rows) if is_method_head(row)), len(rows))
    if rows[method + 1 :]:  # the method stands above its list
        read_steps(recipe, rows[method + 1 :])
    above = notes_above(recipe, rows[:method])
    tools = [row for row in above if not is_sentence(row.text) and is_tool(row.text)]
    tools = tools if len(tools) > 1 else []  # one may be whose page it is: "The Big Ladle"
    for row in above:
        if row.shape in ("row", "sizes"):
            take_row(recipe, row)
        elif greets(row.text):
            recipe.say_makes(makes_of(row.text))
        elif is_only_makes(row.text):
            take_makes(recipe, yield_alone(row).text if greeted else row.text)
        elif who := writer_of(row.text) or poster_of(row.text):
            recipe.writer = recipe.writer or ("" if plain(who) in words("nobodys") else who)
            if beside := beside_writer(row.text):
                recipe.say_makes(makes_of(beside))
                recipe.intro += [] if is_only_makes(beside) or is_passed(beside) else [beside]
        elif row is above[0] and recipe.title and row.shape == "line" and is_name(row.text):
            recipe.writer = recipe.writer or row.text
            what = f'"{row.text}" stands below the title, and is taken for whose recipe it is.'
            recipe.doubt("author", what, "If it is no name, take out whose recipe it is.")
        elif found := ADDRESS.search(row.text):
            recipe.address = recipe.address or found[0].rstrip(".,)")
        elif row in tools:
            recipe.notes.append(("Equipment", [row.text]))
        elif is_labelled_time(row.text):  # "Cuisson 1 heure 15"
            continue
        elif CAPTION.match(row.text) and not is_passed(row.text):  # "Foto: Ann Berg" is a name
            recipe.notes.append(("Notes", [row.text]))
        elif take_behind_label(recipe, row.text):  # "Shelf life: 6 months"
            continue
        elif not (is_passed(row.text) or is_head(row) or _only_leads_in(row.text)):
            again = _says_the_title(row.text, recipe.title)
            kept = recipe.to_one if greeted else recipe.intro  # what was for one stays so
            kept += [] if again else [row.text]
            recipe.say_makes(makes_of(row.text))
    if greeted:
        tell_greeting(recipe)


def _says_the_title(text: str, title: str) -> bool:
    """Whether a few words say the title again, or a part of it: "Irish Cream"."""
    few = len(text.split()) <= _FEW and not re.search(r"[.!?:]$", text.strip())
    return bool(few and plain(text)) and f" {plain(text)} " in f" {plain(title)} "


def _only_leads_in(text: str) -> bool:
    """Whether a line says that the recipe follows: "Recipe:", "Here is the recipe:"."""
    return is_a_recipe_head(text) or speaks_of_a_recipe(text)


def is_method_head(row: Row) -> bool:
    """Whether a row heads the method."""
    return is_head(row) and section_of(row.text) == "method"
