"""Whether a draft may hold more than one recipe: names of things made that stand amid its method.

A last net below dividing.py and series.py: what they could not part is asked about by its names.
"""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.list_parts import FOR_A_PART
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import is_sentence

_MOST_OF_A_NAME: Final = 8
_LEAST_TOLD: Final = 7
"""Words of a line from which on it tells how something is made."""
_MOST_NAMED: Final = 6
# "How to make the jelly", "Sådan laver du brunkager": the work of this one
_HOW: Final = frozenset(
    [
        "how",
        "como",
        "cómo",
        "comment",
        "come",
        "wie",
        "so",
        "hoe",
        "zo",
        "sådan",
        "slik",
        "så",
        "jak",
    ]
)
HOW_TO_PART: Final = (
    'Where the next one begins, choose "another recipe begins here"; or cut the paper there and'
    " bring each by itself."
)


def asked_of_several(recipe: Recipe, doubted: Collection[str]) -> tuple[str, str] | None:
    """Return what is asked of a recipe whose method names other things made, and how to mend it.

    `doubted` are its steps that are not known to be work.

    >>> steps = ["Boil the sloes with the gin.", "Plum wine.", "Put the plums in a pan, and boil."]
    >>> recipe = Recipe(title="Sloe gin", steps=[("", step) for step in steps])
    >>> asked_of_several(recipe, ["Plum wine."])[0]
    'This looks like more than one recipe: "Sloe gin" · "Plum wine".'
    >>> asked_of_several(recipe, ())
    """
    names = _other_names(recipe, doubted)
    if not names:
        return None
    named = dict.fromkeys((recipe.title, *names)) if recipe.title else dict.fromkeys(names)
    shown = some_of([quoted(name) for name in named], _MOST_NAMED)
    return f"This looks like more than one recipe: {shown}.", HOW_TO_PART


def _other_names(recipe: Recipe, doubted: Collection[str]) -> list[str]:
    """Return the names of other things made, each above words that tell how."""
    parts = {plain(head) for head, _ in recipe.ingredients if head}
    found: list[str] = []
    under = ""
    for at, (head, step) in enumerate(recipe.steps):
        if head != under and head and plain(head) not in parts and _may_name(head, recipe.title):
            found.append(head)
        under = head
        goes_on = any(len(one.split()) >= _LEAST_TOLD for _, one in recipe.steps[at + 1 : at + 3])
        if step in doubted and goes_on and _may_name(step, recipe.title):
            found.append(step)
    return found


def _may_name(text: str, title: str) -> bool:
    said = plain(text)
    few = 0 < len(said.split()) <= _MOST_OF_A_NAME and not is_sentence(text)
    if not few or any(sign.isdigit() for sign in said) or FOR_A_PART.fullmatch(text.strip(" :")):
        return False
    known = said in words("parts") or section_of(text) is not None or said in plain(title)
    known = known or said.split()[0] in _HOW | words("told_first")
    return not known and says_its_kind(text)
