"""Whether a draft may hold more than one recipe: names of things made that stand amid its method.

A last net below dividing.py and series.py. Leaves out what a paper's rows show: several_asked.py.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import Final

from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.list_parts import FOR_A_PART
from stillroom.bringing.naming import says_kind_or_doubt
from stillroom.bringing.several_asked import HOW_TO_PART, SEVERAL
from stillroom.bringing.sorting import begins_with_amount, is_sentence
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_MOST_OF_A_NAME: Final = 8
_LEAST_TOLD: Final = 7
"""Words of a line from which on it tells how something is made."""
_MOST_NAMED: Final = 6
_LEAST_RUN_IN: Final = 2
_MOST_RUN_IN: Final = 4
"""Words of a name that its paragraph begins with."""
# "Ratafia de cassis. Laissez macérer", "Timian: Pluk en lille buket"
_RUN_IN: Final = late_regex(
    rf"(?P<name>[^\W\d_][^.!?:;,()]{{2,40}})[.:]\s+(?=[^\W\d_])\S+(?:\s+\S+){{{_LEAST_TOLD - 1},}}",
    re.DOTALL,
)
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


def asked_of_several(recipe: Recipe, doubted: Collection[str]) -> tuple[str, str] | None:
    """Return what is asked of a recipe whose method names other things made, and how to mend it.

    `doubted` are its steps that are not known to be work.

    >>> steps = ["Boil the sloes with the gin.", "Plum wine.", "Put the plums in a pan, and boil."]
    >>> recipe = Recipe(title="Sloe gin", steps=[("", step) for step in steps])
    >>> asked_of_several(recipe, ["Plum wine."])[0]
    'More than one recipe may stand here: "Plum wine" may begin another.'
    >>> asked_of_several(recipe, ())
    >>> steps = ["Plums: Cover them with gin and let them stand."]
    >>> steps += ["Mint: Cover its leaves with gin, a week or so."]
    >>> recipe = Recipe(told=True, steps=[("", step) for step in steps])
    >>> asked_of_several(recipe, ())[0]
    'More than one recipe may stand here: "Plums" · "Mint" may each begin another.'
    """
    if any(what.startswith(SEVERAL) for _, what, _ in recipe.doubts):
        return None
    named = dict.fromkeys(_other_names(recipe, doubted) or _names_run_in(recipe))
    if not named:
        return None
    shown = some_of([quoted(name) for name in named], _MOST_NAMED)
    each = " each" if len(named) > 1 else ""
    return f"{SEVERAL} {shown} may{each} begin another.", HOW_TO_PART


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


def _names_run_in(recipe: Recipe) -> list[str]:
    """Return what paragraphs of a recipe without a list begin with, where several name a thing.

    A list of its own says that what its steps begin with are the things in it: "Apples: Peel them".
    """
    steps = (step for _, step in recipe.steps)
    names = list(dict.fromkeys(name for step in steps for name in _run_in(step)))
    return names if recipe.told and len(names) >= _LEAST_RUN_IN else []


def _run_in(step: str) -> Iterator[str]:
    """Yield the name that a paragraph begins with: a food's, or one that says its kind."""
    found = _RUN_IN.match(step)
    name = found["name"].strip() if found else ""
    last = plain(name).split(" ")[-1]
    is_part = any(map(last.endswith, words("part_ends"))) or last in words("parts")
    known = is_part or section_of(name) is not None or bool(FOR_A_PART.match(name))
    bids = plain(name).split(" ")[0] in words("told_first") or begins_with_amount(name)
    few = 0 < len(name.split()) <= _MOST_RUN_IN and not (known or bids)
    if few and (says_kind_or_doubt(name) or staples_named(name)):
        yield name


def _may_name(text: str, title: str) -> bool:
    said = plain(text)
    few = 0 < len(said.split()) <= _MOST_OF_A_NAME and not is_sentence(text)
    if not few or any(sign.isdigit() for sign in said) or FOR_A_PART.fullmatch(text.strip(" :")):
        return False
    known = said in words("parts") or section_of(text) is not None or said in plain(title)
    known = known or said.split()[0] in _HOW | words("told_first")
    return not known and says_kind_or_doubt(text)
