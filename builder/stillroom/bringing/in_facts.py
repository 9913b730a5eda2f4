"""A recipe told in the facts above a page of Markdown, as sites keep theirs: each list by its name.

Leaves out the book's own form, in which no steps stand there, and facts that say less.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any, Final

import yaml

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import section_of
from stillroom.bringing.sorting import number_of
from stillroom.bringing.typed_marks import bare

_MAKES: Final = ("makes", "yield", "yields", "servings", "serves")
# what the book's own form alone says
_OWN: Final = frozenset({"kind", "keeps", "card", "timeline", "containers", "vessel"})
_APART: Final = (
    ("amount", "quantity", "qty", "value"),
    ("unit", "units"),
    ("name", "item", "ingredient", "food"),
)
_COLUMNS: Final = 2
_MARKED: Final = re.compile(r"\s*(?:[-*+]\s+|\d{1,2}[.)]\s+)")
_SAID: Final = ("summary", "description", "excerpt")


def recipe_in_facts(front: Sequence[str], below: Sequence[str]) -> Recipe | None:
    """Return the recipe of facts that name steps and what goes in; None where they do not.

    >>> facts = ["title: Plum gin", "servings: 2 bottles", "ingredients: [1 kg plums, 1 l gin]"]
    >>> found = recipe_in_facts([*facts, "steps:", "- 1. Steep them."], ["It is dark."])
    >>> found.ingredients, found.steps, found.makes
    ([('', '1 kg plums'), ('', '1 l gin')], [('', 'Steep them.')], '2 bottles')
    >>> recipe_in_facts(facts, []) is None
    True
    """
    try:
        data = yaml.safe_load("\n".join(front))
    except (yaml.YAMLError, ValueError, RecursionError):
        return None
    if not isinstance(data, dict):
        return None
    named = {str(key).strip().replace("_", " "): value for key, value in data.items()}
    recipe = Recipe(title=_words(named.get("title")) or _words(named.get("name")))
    for key, value in named.items():
        part = section_of(key)
        if part == "ingredients":
            recipe.ingredients += _rows(value)
        elif part == "method":
            recipe.steps += [(head, number_of(row) or row) for head, row in _rows(value)]
    if recipe.ingredients and not recipe.steps and not _OWN & named.keys():
        recipe.steps, recipe.notes = _steps_below(below)
    if not (recipe.ingredients and recipe.steps):
        return None
    recipe.makes = next(filter(None, (_words(named.get(key)) for key in _MAKES)), "")
    recipe.writer = _words(named.get("author"))
    recipe.intro = [said for key in _SAID if (said := _words(named.get(key)))]
    if not _has_heads(below):  # else it says the same again
        paragraphs = [" ".join(one.split()) for one in "\n".join(below).split("\n\n")]
        recipe.notes = [("Notes", kept)] if (kept := [one for one in paragraphs if one]) else []
    return recipe


def _has_heads(below: Sequence[str]) -> bool:
    return any(section_of(line.strip("# ")) for line in below)


def _steps_below(below: Sequence[str]) -> tuple[list[tuple[str, str]], list[tuple[str, list[str]]]]:
    """Return the steps below a method's heading, and what stands below the heading of notes."""
    steps: list[tuple[str, str]] = []
    notes: list[tuple[str, list[str]]] = []
    part = name = ""
    for block in "\n".join(below).split("\n\n"):
        head, _, rest = block.strip().partition("\n")
        named = section_of(head.strip("# ")) if head.startswith("#") else None
        if named:
            part, name = named, head.strip("# ")
            block = rest
        lines = [one for one in block.split("\n") if one.strip()]
        parts = lines if all(map(_MARKED.match, lines)) else [" ".join(lines)]
        for said in filter(None, (" ".join(bare(one).split()) for one in parts)):
            if part == "method":
                steps.append(("", number_of(said) or re.sub(_MARKED, "", said)))
            elif part == "aside":
                notes.append((name, [said]))
    return steps, notes


def _words(value: Any) -> str:
    said = str(value) if isinstance(value, str | int | float) else ""
    return "" if isinstance(value, bool) else " ".join(said.split())


def _rows(value: Any, head: str = "") -> list[tuple[str, str]]:
    return list(_each(value, head))


def _each(value: Any, head: str) -> Iterator[tuple[str, str]]:
    """Yield the rows of a list, or of several by their names, each with its heading."""
    if isinstance(value, str):
        yield from ((head, row) for line in value.splitlines() if (row := _words(line)))
    elif isinstance(value, dict) and not head:
        for name, rows in value.items():
            yield from _each(rows, _words(name))
    elif isinstance(value, list):
        # "- Note: stir it" is a line, though a colon stands in it
        for row in map(_measured, value):
            said = f"{next(iter(row))}: {_words(row[next(iter(row))])}" if _is_line(row) else row
            if words := _words(said):
                yield head, words


def _measured(row: Any) -> Any:
    """Return a thing whose measure stands apart as one line; anything else as it is.

    >>> _measured({"name": "sugar", "amount": 200, "unit": "g"}), _measured(["syrup", "1,5 dl"])
    ('200 g sugar', '1,5 dl syrup')
    """
    if isinstance(row, dict) and len(row) > 1:
        named = {str(key).lower(): _words(value) for key, value in row.items()}
        parts = [next(filter(None, (named.get(key) for key in keys)), "") for keys in _APART]
        return " ".join(filter(None, parts)) if parts[-1] else row
    if isinstance(row, list) and len(row) == _COLUMNS and all(map(_words, row)):
        name, amount = map(_words, row)
        behind = re.search(r"\d", amount) and not re.search(r"\d", name)
        return f"{amount} {name}" if behind else f"{name} {amount}"
    return row


def _is_line(row: Any) -> bool:
    return isinstance(row, dict) and len(row) == 1
