"""What heads a part of a list of ingredients, and where the part that it heads ends.

"Optional ingredients", "Spice blend", "For the top:". Leaves out where a list begins and ends:
lists.py; and what its lines are: list_lines.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import FARTHEST, Recipe, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import counts_stage, plain, section_of, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.one_line import foods_named, names_a_food
from stillroom.bringing.sorting import is_ingredient, is_sentence, is_told

MOST_OF_A_THING: Final = 14
_MOST_OF_A_BARE_ONE: Final = 6
_FEW_WORDS: Final = 3
_MOST_OF_A_HEAD: Final = 6
# "Für den Teig", "For the icing": words that head a part of a list, and are no food
FOR_A_PART: Final = re.compile(
    r"(?:for\s+the|für\s+(?:de[nrm]|die|das)|pour\s+(?:l[ae]s?|l['’])|per\s+(?:il|la|lo|le|i|gli|l['’])|"
    r"para\s+(?:el|la|los|las)|voor\s+(?:de|het))\s*[^\W\d]+(?:[\s-][^\W\d]+){0,2}"
    # "For the spice bag or bouquet garni – if you will"
    r"(?:\s(?:or|and|&|oder|und|ou|et|o|e|y|of|en)\s[^\W\d]+(?:\s[^\W\d]+)?)?"
    r"(?:\s*[-–(,]\s*(?:if|optional|falls|wenn|wer|nach|si\s|se\s|au\s|facult|facolt|opcion|optioneel|als)[^.!?:]{0,24})?$",
    re.IGNORECASE,
)


def heads_stage(row: Row) -> bool:
    """Whether a row counts a stage of the work and says no more: "STEP #2", "8th day:".

    >>> [heads_stage(Row(one)) for one in ("STEP #2", "8th day:", "Day 1 - the brine")]
    [True, True, True]
    >>> [heads_stage(Row(one)) for one in ("Day 1: Drain the plums.", "14 day pickles")]
    [False, False]
    """
    return row.shape in ("line", "heading") and counts_stage(row.text)


def heads_further(row: Row) -> bool:
    """Whether a row says by its words that more of the list follows: "Optional ingredients".

    >>> heads_further(Row("Zutaten nach Belieben")), heads_further(Row("Ingredients"))
    (True, False)
    >>> heads_further(Row("Mix the dry ingredients")), heads_further(Row("Optional: rum"))
    (False, False)
    """
    said = plain(row.text).split()
    bare = row.shape in ("line", "heading")
    bare = bare and not re.search(r"[.!?,;]$|:.|\d", row.text.strip())
    if not bare or not 0 < len(said) <= _MOST_OF_A_HEAD or section_of(row.text) is not None:
        return False
    if " ".join(said) in words("further"):
        return True
    named = bool(set(said) & words("list_words")) and not {*said} & words("column_heads")
    named = named and len(said) > 1
    return named and said[0] not in words("told_first") and not is_plainly_work(row.text)


def is_part_alone(row: Row) -> bool:
    """Whether a heading is the name of a part and no more: "Topping", never "Candy cookies".

    >>> [is_part_alone(Row(one, "heading", 2)) for one in ("Topping", "Candy cookies", "Biscuits")]
    [True, False, False]
    """
    named = row.shape == "heading" and plain(row.text) in words("parts")
    return named and not says_its_kind(row.text)


def further_end(rows: Sequence[Row], at: int) -> int:
    """Return the row behind the things that "Optional ingredients" heads; `at` where it heads none.

    They may stand without an amount, or be told in a sentence that names them and does nothing.
    """
    if not heads_further(rows[at]):
        return at
    end = at + 1
    while end < len(rows) and _is_further(rows, end, end == at + 1):
        end += 1
    return end if end > at + 1 else at


def _is_further(rows: Sequence[Row], at: int, first: bool) -> bool:
    row = rows[at]
    if row.shape not in ("line", "item") or is_head(row) or is_only_makes(row.text):
        return False
    if is_ingredient(row.text):
        return True
    if is_told(row.text) or is_plainly_work(row.text):
        return False
    if is_sentence(row.text):
        return first and bool(foods_named(row.text))
    few = len(row.text.split()) <= _MOST_OF_A_BARE_ONE and not re.search(r"[.!?:]$", row.text)
    return row.shape == "item" or (few and (not row.gap or first or names_a_food(row.text)))


def with_further_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows behind a list with "Optional ingredients" as the label of the sentence below it.

    It heads that one alone, and none of the steps that follow.

    >>> [row.text for row in with_further_told([Row("Optional:"), Row("Add rum."), Row("Stir.")])]
    ['Optional: Add rum.', 'Stir.']
    """
    found: list[Row] = []
    label = ""
    for row in rows:
        if label and row.shape == "line":
            found[-1] = replace(row, text=f"{label}: {row.text}", gap=True)
        else:
            found.append(row)
        label = row.text.strip(" :") if not label and heads_further(row) else ""
    return found


def takes_further(recipe: Recipe, row: Row) -> bool:
    """Whether "Step two ingredients" heads a food amid the method: it is taken into the list."""
    label, colon, said = row.text.partition(":")
    listed = bool(colon) and not words("list_words").isdisjoint(plain(label).split())
    thing = listed and heads_further(Row(label)) and bool(foods_named(said))
    if not thing or is_sentence(said) or is_plainly_work(said) or is_told(said):
        return False
    recipe.ingredients.append((label.strip(), said.strip()))
    what = f'"{said.strip()}" stood amid the method below "{label}", and is of the list now.'
    recipe.doubt("ingredients", what, "Look whether it is there, and how much of it.")
    return True


def further_notes(rows: Sequence[Row]) -> frozenset[int]:
    """Return the rows that tell of what is optional above the head of a method: they are notes."""
    head = next(
        (at for at, row in enumerate(rows) if is_head(row) and section_of(row.text) == "method"), 0
    )
    labels = ((at, row.text.partition(":")) for at, row in enumerate(rows[:head]))
    return frozenset(at for at, said in labels if said[2] and heads_further(Row(said[0])))


def items_up_to_a_head(rows: Sequence[Row], at: int) -> bool:
    """Whether nothing but items stands between a row and the head of the method: all are a list.

    A line that ends in a colon heads more of them, and a sentence may follow the last.
    """
    listed = (row.shape != "item" and row.text[-1:] != ":" for row in rows[at : at + FARTHEST])
    below = next((place for place, other in enumerate(listed, at) if other), len(rows))
    said = below + 1 < len(rows) and is_sentence(rows[below].text) and rows[below].shape == "line"
    below += said and not is_head(rows[below])
    return below < len(rows) and is_head(rows[below])


def heads_bare_foods(rows: Sequence[Row], at: int) -> bool:
    """Whether a line ends in a colon and foods alone stand below it: "½ tsp of each:"."""
    row = rows[at]
    if row.shape != "line" or not row.text.endswith(":") or is_head(row):
        return False
    below = [one.text for one in rows[at + 1 : at + 3]]
    return len(below) == 2 and all(map(is_bare_food, below)) and any(map(names_a_food, below))


def closes_a_list(rows: Sequence[Row], at: int) -> bool:
    """Whether a row is the last thing of a list whose lines all end in a comma, or in a stop.

    "1/4 a cake of chocolate." below "2 cups of sugar,"; "Saffron." below "4 pints water.".

    >>> old = [Row("14 lbs. white sugar."), Row("4 pints water."), Row("Saffron coloring.")]
    >>> closes_a_list(old, 2), closes_a_list([*old[:2], Row("Boil them together.")], 2)
    (True, False)
    """
    row, above = rows[at], [one.text.rstrip() for one in rows[max(at - 2, 0) : at]]
    if len(above) < 2 or row.gap or row.shape != "line" or not all(map(is_ingredient, above)):
        return False
    if is_told(row.text) or is_plainly_work(row.text) or is_only_makes(row.text):
        return False
    named = bool(foods_named(row.text)) and len(row.text.split()) <= MOST_OF_A_THING
    if all(text.endswith(",") for text in above):
        return named
    stopped = all(text.endswith(".") for text in above) and row.text.endswith((".", ","))
    return stopped and len(row.text.split()) <= (_MOST_OF_A_HEAD if named else _FEW_WORDS)


def is_bare_food(text: str) -> bool:
    """Whether a few words may be a food alone, as they stand below "½ tsp of each:"."""
    return len(text.split()) <= _FEW_WORDS and not re.search(r"[.!?:]$", text)


def says_much(text: str) -> bool:
    """Whether a line is of several sentences: it tells what is done, and is not said of a thing."""
    return len(re.findall(r"[.!?](?:\s|$)", text)) >= 3


def heads_last_items(rows: Sequence[Row], at: int) -> bool:
    """Whether a heading parts items from others that are all of the list: a method's head follows.

    "Pacharán suave" heads its few things, though none of them has an amount.
    """
    heads = rows[at].shape == "heading" and not is_head(rows[at]) and at + 1 < len(rows)
    if not heads or rows[at - 1].shape != "item" or not items_up_to_a_head(rows, at + 1):
        return False
    items = [row for row in rows[at + 1 :][:MOST_OF_A_THING] if row.shape == "item"]
    return bool(items) and not any(is_sentence(row.text) or is_told(row.text) for row in items)


def loose_part_end(rows: Sequence[Row], at: int) -> int:
    """Return the row behind a part of a list whose things have no amount; `at` for none.

    "For the top:" and below it "- chopped pistachios", when the list above is of items too.
    """
    row = rows[at]
    heads = row.shape in ("line", "heading") and row.text.endswith(":") and not is_head(row)
    if not heads or not at or rows[at - 1].shape != "item":
        return at
    end = at + 1
    while end < len(rows) and rows[end].shape == "item" and _is_bare_thing(rows[end].text):
        end += 1
    told = end < len(rows) and rows[end].shape == "item"
    return end if end > at + 1 and not told else at


def _is_bare_thing(text: str) -> bool:
    return len(text.split()) <= _MOST_OF_A_BARE_ONE and not re.search(r"[.!?:]$", text)


def is_between_items(rows: Sequence[Row], at: int) -> bool:
    """Whether a bare line parts two runs of items: it heads what follows, though a food's name."""
    if not 0 < at < len(rows) - 1 or rows[at].shape != "line" or says_much(rows[at].text):
        return False
    parts = rows[at - 1].shape == rows[at + 1].shape == "item" and rows[at].text[:1].isupper()
    if not parts or is_ingredient(rows[at].text):
        return False
    food = names_a_food(rows[at].text)
    return not food or (
        len(rows[at].text.split()) <= _FEW_WORDS and not re.search(r"[,;()]", rows[at].text)
    )


def is_group(rows: Sequence[Row], at: int) -> bool:
    """Whether a row is a heading within a list: more amounts stand right below it."""
    row = rows[at]
    if is_between_items(rows, at):
        return is_ingredient(rows[at + 1].text)
    if at + 1 >= len(rows) or (rows[at + 1].gap and row.shape != "heading"):
        return False
    short = len(row.text) <= 60 and not is_sentence(row.text) and not is_ingredient(row.text)
    below = rows[at + 1]
    return (
        short
        and row.shape in ("heading", "line")
        and section_of(row.text) is None
        and not is_only_makes(row.text)
        and below.shape in ("line", "item")
        and is_ingredient(below.text)
        and (row.shape == "heading" or row.gap or row.text.endswith(":"))
    )
