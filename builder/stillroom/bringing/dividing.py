"""Which rows of a paper are which recipe's title, list, steps and notes.

Lists are found first, by their headings or as runs of lines that begin with amounts; each list
that has a method before it begins another recipe. What fits nowhere stays in the recipe that it
stands in: words are never lost in silence. Leaves out what a single row may be: sorting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Paper, Recipe, Row
from stillroom.bringing.lists import (
    WIDE,
    List,
    find_lists,
    first_title,
    heads_method,
    is_group,
    is_head,
    join_lists,
    list_begins,
)
from stillroom.bringing.one_line import said_in_prose
from stillroom.bringing.rows import made_ready, numbered_apart
from stillroom.bringing.sorting import (
    besides_makes,
    heads_tools,
    is_empty,
    is_ingredient,
    is_only_makes,
    is_passed,
    is_sentence,
    is_title,
    makes_of,
    number_of,
    plain,
    section_of,
    words,
)
from stillroom.bringing.titles import title_of_list, titled, writer_of

MOST_RECIPES: Final = 200
# "Für den Teig", "For the icing": words that head a part of a list, and are no food
_FOR_A_PART: Final = re.compile(
    r"(?:for\s+the|für\s+(?:de[nrm]|die|das)|pour\s+(?:l[ae]s?|l['’])|per\s+(?:il|la|lo|le|i|gli|l['’])|"
    r"para\s+(?:el|la|los|las)|voor\s+(?:de|het))\s*[^\W\d]+(?:[\s-][^\W\d]+){0,2}$",
    re.IGNORECASE,
)
_ASIDE: Final = re.compile(r"\s*\((?P<said>[^()]+)\)$")
_LONG: Final = 50
_FEW: Final = 6
"""Words of a line above a list that may still be its title."""
_OPEN: Final = re.compile(
    r"(?:[,;–-]|\b(?:and|or|the|an?|of|in|into|with|to|for|from|until|till?|then|und|mit|et|de|e|y))$",
    re.IGNORECASE,
)
_ADDRESS: Final = re.compile(r"https?://[^\s<>\"]+")


def divide(paper: Paper) -> list[Recipe]:
    """Return the recipes of a paper, in order; one without a list where none is found."""
    rows = made_ready(paper.rows)
    lists = join_lists(find_lists(rows), rows)
    if not lists:
        return [_without_list(rows)] if rows else []
    begins = list_begins(lists, rows)
    ends = [*begins[1:], len(rows)]
    recipes = []
    titles = [first_title(rows, lists, begins), *begins[1:]]
    if titles[0] is not None and len(lists) > 1:
        begins[0] = titles[0]  # what stands above the first of several is about them all
    for found, begin, end, title in zip(lists, begins, ends, titles, strict=True):
        recipes.append(_recipe(rows, found, (begin, end), title if title != found.begin else None))
    return recipes[:MOST_RECIPES]


def _recipe(rows: Sequence[Row], found: List, span: tuple[int, int], title: int | None) -> Recipe:
    """Put the rows of one recipe in their places."""
    begin, end = span
    recipe = Recipe()
    if title is not None:
        recipe.title = titled(rows[title].text) or rows[title].text
        if aside := _ASIDE.search(recipe.title):  # "Plum gin (makes 1 litre)"
            recipe.makes = makes_of(aside["said"])
            recipe.title = recipe.title[: aside.start()] if recipe.makes else recipe.title
    if title is None and found.named:  # "Zutaten für Quittengelee:"
        recipe.title = title_of_list(rows[found.begin].text)
    elif title is None and found.begin > begin:  # "Advocaat volgens oud recept:", right above it
        above_it = rows[found.begin - 1].text
        named = above_it.endswith(":") and not is_only_makes(above_it) and is_title(above_it[:-1])
        recipe.title = above_it[:-1].strip() if named and len(above_it.split()) <= _FEW else ""
    if found.named:  # "For 4 jars you need:"
        for row in filter(is_head, rows[found.begin : found.end]):
            recipe.makes = recipe.makes or makes_of(row.text.partition(",")[0])
    listed = {*found.rows, *found.later, *found.tools}
    if tools := [rows[at].text for at in found.tools if not is_only_makes(rows[at].text)]:
        recipe.notes.append(("Equipment", tools))
    for at in found.tools:
        recipe.makes = recipe.makes or makes_of(rows[at].text)
    above = [at for at in range(begin, found.begin) if at != title]
    _read_above(recipe, [rows[at] for at in above])
    _read_list(recipe, [rows[at] for at in found.rows])
    if found.later:
        _read_list(recipe, [rows[at] for at in found.later])
        first = rows[found.later[0]].text
        what = f'More amounts stand amid the method, from "{first}" on: they end the list here.'
        mend = "Look whether they belong to it, or are the same things a second time."
        recipe.doubt("ingredients", what, mend)
    _read_below(recipe, [rows[at] for at in range(found.end, end) if at not in listed])
    return recipe


def _without_list(rows: Sequence[Row]) -> Recipe:
    """Return a recipe that runs on in sentences: its title and its steps."""
    recipe = Recipe()
    at = next((place for place, row in enumerate(rows) if row.shape == "heading"), None)
    if at is None:
        at = 0 if is_title(rows[0].text) and len(rows) > 1 else None
    recipe.title = (titled(rows[at].text) or rows[at].text) if at is not None else ""
    below = [row for place, row in enumerate(rows) if place != at]
    for place, row in enumerate(below[:_FEW]):
        alone = f": {row.text}" if row.text[:1].isdigit() else row.text
        if said := said_in_prose(alone):
            recipe.ingredients = [("", thing) for thing in said.things]
            so_many = re.search(r"\b(?:makes|for|voor|für|pour|per|para)\s+\d.*", said.before, re.I)
            recipe.makes = makes_of(so_many[0]) if so_many else ""
            if not recipe.title and is_title(said.named):
                recipe.title = said.named
            kept = [replace(row, text=said.after)] if said.after else []
            _read_below(recipe, [*below[:place], *kept, *below[place + 1 :]])
            what = f"{len(said.things)} things were told in one sentence, and have a line each now."
            recipe.doubt("ingredients", what, "Look whether they were parted where you would.")
            return recipe
    _read_below(recipe, below)
    recipe.doubt(
        "ingredients",
        "No list of ingredients was found.",
        'Write one ingredient to a line below "ingredients:", each after a dash.',
    )
    return recipe


def _read_above(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read what stands between a title and its list: how much, whose, a few words."""
    greeted = False
    method = next((at for at, row in enumerate(rows) if _is_method_head(row)), len(rows))
    if rows[method + 1 :]:  # the method stands above its list
        _read_steps(recipe, rows[method + 1 :])
    for row in rows[:method]:
        if _greets(row.text):
            greeted = True
        elif is_only_makes(row.text):
            _take_makes(recipe, row.text)
        elif who := writer_of(row.text):
            recipe.writer = recipe.writer or who
        elif found := _ADDRESS.search(row.text):
            recipe.address = recipe.address or found[0].rstrip(".,)")
        elif not is_passed(row.text) and not is_head(row):
            recipe.intro += [] if greeted else [row.text]  # what was written to one person stays so
            recipe.makes = recipe.makes or makes_of(row.text)
    if greeted:
        what = "What the letter says before its recipe is left out: it was written to one person."
        recipe.doubt("title", what, "Write a word of your own about it, if you like.")


def _is_method_head(row: Row) -> bool:
    return is_head(row) and section_of(row.text) == "method"


def _greets(text: str) -> bool:
    first = plain(text).split(" ")[0]
    return first in words("greeting") and len(text.split()) <= 5


def _read_list(recipe: Recipe, rows: Sequence[Row]) -> None:
    group = ""
    for place, row in enumerate(rows):
        if row.shape == "heading" or _heads_group(rows, place):
            inner = section_of(row.text) == "ingredients"
            group = "" if inner else row.text.strip(" :")
        elif is_only_makes(row.text):
            _take_makes(recipe, row.text)
        elif recipe.ingredients and _is_rest(rows, place):
            kept, said = recipe.ingredients[-1]
            recipe.ingredients[-1] = (kept, f"{said} {row.text}")
        elif row.shape == "line" and is_sentence(row.text) and not is_ingredient(row.text):
            recipe.notes.append(("Notes", [row.text]))
        elif not is_empty(row.text) and (is_ingredient(row.text) or not is_passed(row.text)):
            recipe.ingredients.append((group, row.text))


def _heads_group(rows: Sequence[Row], place: int) -> bool:
    row = rows[place]
    if row.shape != "line" or is_ingredient(row.text):
        return False
    named = bool(_FOR_A_PART.match(row.text))
    return row.text.endswith(":") or named or (row.gap and is_group(rows, place))


def _is_rest(rows: Sequence[Row], place: int) -> bool:
    """Whether a row goes on with the one above it, which a machine broke off."""
    row, above = rows[place], rows[place - 1]
    if not row.wraps or row.gap or row.shape != "line":
        return False
    if above.shape == "item":
        return row.indent > above.indent
    return len(above.text) >= WIDE and row.text[:1].islower()


def _read_below(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read the method and what follows it."""
    part, name = "method", ""
    body: list[Row] = []
    parts: list[tuple[str, str, list[Row]]] = [(part, name, body)]
    for place, row in enumerate(rows):
        section = section_of(row.text) if is_head(row) else None
        if section is None and row.shape == "heading" and part == "aside" and row.level <= 2:
            section = (
                "method"
                if any(one.shape == "step" for one in rows[place + 1 : place + 3])
                else None
            )
        if section in ("aside", "method"):
            part, name, body = section, row.text.strip(" :"), []
            parts.append((part, name, body))
        elif section == "ingredients":
            continue
        else:
            body.append(row)
    if not any(body for part, _, body in parts if part == "method"):
        parts = [one for each in parts for one in _method_behind_tools(*each)]
    for part, name, body in parts:
        if part == "method":
            _read_steps(recipe, body)
        elif plain(name) not in words("dropped"):
            _read_notes(recipe, name, body)


def _method_behind_tools(part: str, name: str, body: list[Row]) -> list[tuple[str, str, list[Row]]]:
    """Part the sentences that follow a list of tools from it: they are the method."""
    first = next((at for at, row in enumerate(body) if at and is_sentence(row.text)), 0)
    if not heads_tools(f"{name}:") or not first:
        return [(part, name, body)]
    return [(part, name, body[:first]), ("method", "", body[first:])]


def _read_notes(recipe: Recipe, name: str, rows: Sequence[Row]) -> None:
    kept: list[str] = []
    for row in _joined(rows):
        if not is_passed(row.text) and not (row.shape == "heading" and is_passed(row.text)):
            kept.append(row.text)
            recipe.makes = recipe.makes or makes_of(row.text)
        if found := _ADDRESS.search(row.text):
            recipe.address = recipe.address or found[0].rstrip(".,)>")
    if kept:
        recipe.notes.append((name, kept))


def _read_steps(recipe: Recipe, rows: Sequence[Row]) -> None:
    group = ""
    for row in numbered_apart(_joined(rows)):
        text = number_of(row.text) or (
            re.sub(r"^\d{1,2}\s*[.):]\s+", "", row.text) if row.shape == "step" else row.text
        )
        if row.shape == "heading":
            group = row.text.strip(" :")
        elif not recipe.steps and heads_method(row):
            continue
        elif is_only_makes(row.text):
            _take_makes(recipe, row.text)
        elif not is_passed(row.text) and not _is_furniture(row.text):
            tip = re.match(r"(?:tip|note|hint|tipp)s?:\s*(.+)", text, re.IGNORECASE)
            if tip and row.shape != "step":
                recipe.notes.append(("Notes", [tip[1]]))
            else:
                recipe.steps.append((group, text))
            recipe.makes = recipe.makes or makes_of(text)


def _take_makes(recipe: Recipe, text: str) -> None:
    """Take how much a line says is made, and what else it says as a note."""
    recipe.makes = recipe.makes or makes_of(text)
    if said := besides_makes(text):
        recipe.notes.append(("Notes", [said]))


def _is_furniture(text: str) -> bool:
    """Whether a line in capitals without an end leads to other recipes: "MORE CANNING RECIPES"."""
    return text.isupper() and "RECIPE" in text and len(text.split()) <= 6


def _joined(rows: Sequence[Row]) -> list[Row]:
    """Return rows with lines that a machine broke off put together again."""
    found: list[Row] = []
    wide = _blocks_that_wrap(rows)
    for place, row in enumerate(rows):
        above = found[-1] if found else None
        goes_on = above is not None and row.wraps and not row.gap and row.shape == "line"
        if goes_on and above is not None and above.shape != "heading":
            broken = above.shape in ("item", "step") or place in wide
            if broken or _is_broken_off(rows, place) or not re.search(r"[^\W_]", row.text):
                text = f"{above.text} {row.text}" if re.search(r"[^\W_]", row.text) else above.text
                found[-1] = Row(text, above.shape, above.level, above.gap, True, above.indent)
                continue
        found.append(row)
    return found


def _is_broken_off(rows: Sequence[Row], place: int) -> bool:
    """Whether a small letter goes on with the line above: one that is long, or ends in mid-air.

    Who types without capitals begins each step so.
    """
    above = rows[place - 1].text
    return rows[place].text[:1].islower() and (len(above) >= _LONG or bool(_OPEN.search(above)))


def _blocks_that_wrap(rows: Sequence[Row]) -> set[int]:
    """Return the rows of paragraphs whose lines, but for the last, all run to the edge."""
    wide: set[int] = set()
    begin = 0
    for at in range(1, len(rows) + 1):
        if at < len(rows) and not rows[at].gap and rows[at].shape == "line":
            continue
        block = rows[begin:at]
        lengths = [len(row.text) for row in block]
        ended = sum(bool(re.search(r"[.!?]$", row.text)) for row in block[:-1])
        if len(block) > 1 and min(lengths[:-1]) >= WIDE and ended * 2 <= len(block) - 1:
            wide.update(range(begin, at))
        begin = at
    return wide
