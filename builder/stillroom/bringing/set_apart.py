"""What stands in a list, a method or a title and belongs elsewhere in a draft.

Ways to vary a recipe below its list, addresses and times amid its steps, how much it makes behind
its title.
Leaves out what a sentence of the method says of other ways: other_ways.py.
"""

from __future__ import annotations

import re
from itertools import groupby
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import SPAN_UNIT, says_otherwise
from stillroom.bringing.makes_said import is_only_makes, makes_of

_ADDRESS: Final = re.compile(r"(?:[^\W\d]\w*:\s*)?(?:https?://|www\.)\S+", re.IGNORECASE)
# "Préparation : 15 minutes + 1h d'attente.", "Tilberedning: 6-8 minutter"
_TIME: Final = re.compile(
    r"(?:[^\W\d][^:.\d]{2,30}:\s?)?(?:about\s|approx\.?\s|ca\.?\s|etwa\s|environ\s|circa\s)?"
    rf"\d+(?:\s?(?:-|–|to|bis|à|a|tot|till|til|do)\s?\d+)?\s?{SPAN_UNIT}\.?"
    r"(?:\s?\+\s?[^.:]{1,40})?\.?",
    re.IGNORECASE,
)
_MOST_SHOWN: Final = 4


def set_apart(recipe: Recipe) -> None:
    """Put what belongs elsewhere where it does, and doubt what may not.

    >>> recipe = Recipe(title="Fudge Makes 20 pieces", steps=[("", "Stir."), ("", "www.a.example")])
    >>> recipe.ingredients = [("", "1 kg sugar"), ("Variations", "2 tbsp rum")]
    >>> set_apart(recipe)
    >>> recipe.title, recipe.makes, recipe.ingredients, recipe.steps
    ('Fudge', '20 pieces', [('', '1 kg sugar')], [('', 'Stir.')])
    >>> recipe.notes
    [('Variations', ['2 tbsp rum']), ('Notes', ['www.a.example'])]
    """
    _take_ways(recipe)
    _take_what_is_no_step(recipe)
    _take_makes_of_title(recipe)


def _take_ways(recipe: Recipe) -> None:
    ways = [(head, text) for head, text in recipe.ingredients if head and says_otherwise(head)]
    if not ways or len(ways) == len(recipe.ingredients):
        return
    recipe.ingredients = [one for one in recipe.ingredients if one not in ways]
    for head, rows in groupby(ways, key=lambda one: one[0]):
        texts = [text for _, text in rows]
        recipe.notes.append((head.strip(" :"), texts))
        shown = " · ".join(f'"{text}"' for text in texts[:_MOST_SHOWN])
        more = " …" if len(texts) > _MOST_SHOWN else ""
        recipe.doubt(
            "ingredients",
            f'Kept as a note, since "{head.strip(" :")}" heads it: {shown}{more}.',
            "Write into the list what goes into what is made.",
        )


def _take_what_is_no_step(recipe: Recipe) -> None:
    """Take addresses, and the times that a page states beside its steps, out of a method."""
    found = [
        (head, text)
        for head, text in recipe.steps
        if _ADDRESS.fullmatch(text.strip())
        or (text not in recipe.numbered and _TIME.fullmatch(text.strip()))
    ]
    recipe.steps = [one for one in recipe.steps if one not in found]
    for head, rows in groupby(found, key=lambda one: one[0]):
        recipe.notes.append((head or "Notes", [text for _, text in rows]))
    times = [one for one in recipe.first_steps if _TIME.fullmatch(one.strip())]
    if times:
        recipe.first_steps = [one for one in recipe.first_steps if one not in times]
        recipe.notes.append(("Notes", times))


def _take_makes_of_title(recipe: Recipe) -> None:
    """Part "Berry jam Makes 4-5 small jars", and "Berry jam (makes 4 jars)"."""
    words = recipe.title.split()
    for at in range(1, len(words)):
        tail = " ".join(words[at:])
        if is_only_makes(tail.strip("()")) and any(letter.isdigit() for letter in tail):
            recipe.title = " ".join(words[:at]).rstrip(" ,;:(–—-")
            recipe.say_makes(makes_of(tail.strip("()")))
            return
