"""What the lines of a list of ingredients are: things that go in, heads, and words beside them.

Leaves out where a list begins and ends: lists.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.below_list import ADDRESS, take_row
from stillroom.bringing.each_of import EACH_BELOW
from stillroom.bringing.found import List, Recipe, Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.joining import rejoined
from stillroom.bringing.known_work import TONGUES, is_work, tongues_of
from stillroom.bringing.labelled_spans import take_behind_label
from stillroom.bringing.labelled_things import is_for_the_end
from stillroom.bringing.list_marks import without_stops_between
from stillroom.bringing.list_parts import (
    FOR_A_PART,
    heads_further,
    heads_stage,
    is_between_items,
    is_group,
)
from stillroom.bringing.lists import WIDE, ends_open
from stillroom.bringing.makes_said import is_only_makes, makes_of
from stillroom.bringing.makes_taken import take_makes
from stillroom.bringing.one_line import foods_named, foods_on
from stillroom.bringing.said_to_one import greets
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_empty,
    is_ingredient,
    is_passed,
    is_remark,
    is_sentence,
)
from stillroom.bringing.titles import writer_of
from stillroom.bringing.tools import jars_of

_ADDED_LATER: Final = re.compile(r"\b(?:to be added|to add|once (?:gifted|given))\b", re.IGNORECASE)
_MAY: Final = re.compile(
    r"(?:you|one) (?:can|could|may|might)\b|(?:man|du|ihr|sie) (?:kann|kannst|könnt|können)\b"
    r"|(?:on|vous) (?:peut|pouvez)\b|si (?:può|possono)\b|se (?:puede|pode)\b|(?:je|men) kunt?\b"
    r"|(?:man|du) kan\b",
    re.IGNORECASE,
)
_USED_FOR: Final = re.compile(  # "oil for greasing" is no heading
    r"^\w+\s+for\s+(?:the|your|an?)\s|\bfor\s+(?:greasing|dusting|rolling|frying|brushing|sprinkling|coating|oiling)|\bto\s+(?:dust|taste|serve|grease)\b",
    re.IGNORECASE,
)
# "2 lemons*", "the peel of three lemons **": the sign of a note that stands below
_NOTED: Final = re.compile(r"(?<=[^*\s])\s?\*{1,3}$")
_LONGEST_THING: Final = 900
_PART_WORDS: Final = 3
_LEAST_SAID: Final = 12
_SHOWN: Final = 60
_LEAST_OF_A_TIP: Final = 7
_MOST_ABOVE: Final = 6
_BRACKETED: Final = re.compile(r"\([^()]*\)")
_MOST_OF_A_LINE: Final = 14


def read_list(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read the lines of a list into a recipe, each under the heading that it stands below."""
    rows, group, so_much = [_as_told(row) for row in rejoined(rows)], "", ""
    if before := _said_first(rows):
        recipe.notes.append(("Notes", [" ".join(row.text for row in rows[:before])]))
        recipe.say_makes(makes_of(recipe.notes[-1][1][0]))
        rows = rows[before:]
    outer = -1  # how far in the item stands that heads the items further in
    rest = 0  # the row behind a tip that goes on over lines
    for place, row in enumerate(rows):
        if place < rest:
            continue
        if row.shape == "item" and row.indent <= outer:
            group, so_much, outer = "", "", -1
        if row.shape in ("row", "sizes"):
            take_row(recipe, row)
        elif row.shape == "heading" or _heads_group(rows, place):
            inner = section_of(row.text) == "ingredients"
            group = "" if inner and not _ADDED_LATER.search(row.text) else row.text.strip(" :")
            below = rows[place + 1 : place + 2]
            nested = row.shape == "item" and below and below[0].indent > row.indent
            outer = row.indent if nested else -1
            each = EACH_BELOW.search(group)
            so_much = f"{each['first'] or each['last']} " if each else ""
            if each:
                what = f'"{group}" gives one amount for several: it stands at each of them now.'
                recipe.doubt("ingredients", what, "Look which of those below it is for.")
            if _is_asked_head(rows, place):
                what = f'"{group}" was taken for a heading within the list.'
                mend = "If it is something that goes in, write it in the list, with its amount."
                recipe.doubt("ingredients", what, mend)
        elif is_only_makes(row.text):
            take_makes(recipe, row.text)
        elif row.text.startswith("* ") and is_sentence(row.text.lstrip("* ")):
            recipe.notes.append(("Notes", [row.text.lstrip("* ")]))
        elif recipe.ingredients and _is_tip(row.text):
            tip = _with_rest(rows, place)
            _take_note(recipe, " ".join(one.text for one in tip))
            rest = place + len(tip)
        elif ADDRESS.fullmatch(row.text):
            recipe.address = recipe.address or row.text
        elif jars := jars_of(row.text):
            recipe.say_makes(jars)
        elif (
            recipe.ingredients
            and _is_rest(rows, place)
            and len(recipe.ingredients[-1][1]) < _LONGEST_THING
        ):
            kept, said = recipe.ingredients[-1]
            recipe.ingredients[-1] = (kept, f"{said} {row.text}")
        elif (len(rows) > 1 and is_remark(row.text)) or (
            row.shape == "line"
            and len(rows) > 1
            and is_sentence(_BRACKETED.sub("", row.text))
            and not begins_with_amount(row.text)
            and not foods_on(row.text)
            and not is_for_the_end(row.text)
            and not _ends_as_all_do(rows, row.text)
        ):
            _take_sentence(recipe, rows, place, group)
        elif take_behind_label(recipe, row.text):  # "Shelf life: 6 months", below the last thing
            continue
        elif not is_empty(row.text) and (is_ingredient(row.text) or not is_passed(row.text)):
            few = len(row.text.split()) <= _PART_WORDS
            bare = so_much and few and not re.search(r"[\d½¼¾⅓⅔]", row.text)
            thing = _NOTED.sub("", row.text)
            recipe.ingredients.append((group, f"{so_much}{thing}" if bare else thing))
    recipe.ingredients = without_stops_between(recipe.ingredients)


def _as_told(row: Row) -> Row:
    """Return a sentence in bold as the line that it is, and any other row as it stands."""
    told = row.shape == "heading" and is_sentence(row.text) and not is_head(row)
    return replace(row, shape="line", level=0) if told else row


def _is_tip(text: str) -> bool:
    """Whether a line of a list gives advice below a head of it: "TIPS: take care".

    >>> _is_tip("CONSIGLI: serve un calderone molto grande, di ferro o di acciaio.")
    True
    >>> _is_tip("Note: 2 cups")
    False
    """
    head, colon, said = text.partition(":")
    tip = plain(head) in words("tip_heads") | words("aside")
    told = len(said.split()) >= _LEAST_OF_A_TIP and not begins_with_amount(said.strip())
    return bool(colon) and tip and told


def _with_rest(rows: Sequence[Row], at: int) -> Sequence[Row]:
    """Return the row of a tip with those that it goes on in, as typed text is broken."""
    end = at + 1
    while end < len(rows) and rows[end].shape == "line" and not rows[end].gap:
        if not rows[end - 1].wraps or is_ingredient(rows[end].text):
            break
        end += 1
    return rows[at:end]


def _take_sentence(recipe: Recipe, rows: Sequence[Row], place: int, group: str) -> None:
    """Take a sentence amid a list: a thing where it names a food and does nothing, else a note.

    Either is asked about where it names one: "Plenty of chopped walnuts for rolling them in."
    """
    text = rows[place].text
    recipe.say_makes(makes_of(text))
    if is_remark(text):
        _take_note(recipe, text.strip(" ()"))
        return
    eaten = foods_named(text)
    tongues = tongues_of([one.text for one in rows]) or TONGUES
    amid = 0 < place < len(rows) - 1
    done = is_work(text, tongues) or _MAY.match(text)
    if eaten and amid and not makes_of(text) and not done:
        recipe.ingredients.append((group, text))
        what = f'"{text[:_SHOWN]}" stands amid the list, and is a line of it now.'
        recipe.doubt("ingredients", what, "If it does not go in, take it out.")
        return
    _take_note(recipe, text)


def _take_note(recipe: Recipe, text: str) -> None:
    """Take a line of a list as a note; it is asked about where it names a food."""
    recipe.notes.append(("Notes", [text]))
    if foods_named(text):
        what = f'"{text[:_SHOWN]}" stood in the list, and is a note now.'
        recipe.doubt("ingredients", what, "If it names something that goes in, write that there.")


def thing_above(recipe: Recipe, rows: Sequence[Row], found: List) -> Row | None:
    """Return the row right above a list's first amount as one of the list; None where it is none.

    "Crabmeat or shrimp", above "2 tablespoons butter": a food lost is an allergen lost. It is asked
    about, and so is one of which nobody can say whether it goes in.
    """
    row, below = rows[found.begin - 1], rows[found.begin]
    if row.shape == "heading" and not is_head(row):  # of two versions the first one's
        return row if any(_heads_as(row, rows[at]) for at in found.rows) else None
    close = row.shape == "line" and row.gap and not below.gap and not found.named
    few = len(_BRACKETED.sub("", row.text).split()) <= _MOST_ABOVE
    if not (close and few) or _is_said_of_it(row.text) or plain(row.text) == plain(recipe.title):
        return None
    tongues = tongues_of([one.text for one in rows[found.begin : found.end]]) or TONGUES
    if is_work(row.text, tongues) and not _USED_FOR.search(row.text):
        return None
    if foods_named(row.text) or row.text.endswith(":"):
        what = f'"{row.text}" stands right above the first amount, and begins the list now.'
        recipe.doubt("ingredients", what, "If it is no part of what goes in, take it out.")
        heads = row.text.endswith(":") or _names_a_part(rows, found.begin - 1)
        return row if heads else replace(row, shape="item", gap=False)
    what = f'"{row.text}" stands right above the first amount. Does it go in?'
    recipe.doubt("ingredients", what, "If it does, write it in the list.")
    return None


def _heads_as(row: Row, other: Row) -> bool:
    return other.shape == "heading" and other.level == row.level and not is_head(other)


def _is_said_of_it(text: str) -> bool:
    """Whether a line above a list says something of the recipe: whose, how much, a sentence."""
    said = is_sentence(text) or text.endswith((".", "!", "?")) or greets(text) or is_passed(text)
    return said or bool(writer_of(text)) or is_only_makes(text)


def _said_first(rows: Sequence[Row]) -> int:
    """Return how many rows say something in sentences before a list of nothing but items."""
    first = next((place for place, row in enumerate(rows) if row.shape == "item"), 0)
    said = " ".join(row.text for row in rows[:first])
    lines = all(row.shape == "line" and not begins_with_amount(row.text) for row in rows[:first])
    items = len(rows) - first >= 2 and all(row.shape == "item" for row in rows[first:])
    told = is_sentence(said) and len(said.split()) >= _LEAST_SAID and said.endswith((".", "!"))
    return first if lines and items and told else 0


def _ends_as_all_do(rows: Sequence[Row], text: str) -> bool:
    """Whether a short line of a list ends in a stop as most of its lines do, and names a food."""
    stopped = sum(row.text.rstrip().endswith(".") for row in rows)
    return (
        len(text.split()) <= _MOST_OF_A_LINE and stopped * 2 > len(rows) and bool(foods_named(text))
    )


def _heads_group(rows: Sequence[Row], place: int) -> bool:
    row = rows[place]
    if heads_stage(row):
        return True
    if row.text.endswith(":") and row.shape != "heading" and is_ingredient(row.text.rstrip(": ")):
        return False  # an amount heads no part, whatever sign stands behind it
    said = row.text.endswith(":") or (len(rows) > 2 and bool(FOR_A_PART.fullmatch(row.text)))
    if row.shape == "item" and said:  # "- For the jelly:", as pages copy it
        return not is_ingredient(row.text)
    if row.shape != "line" or is_ingredient(row.text):
        return False
    bare = place == 0 and not makes_of(row.text) and not is_sentence(row.text)
    items = [one.shape == "item" for one in rows[1:4]]
    if bare and len(items) == _PART_WORDS and all(items[:2]):
        # no bullet before it, and one before all below it, or before those of a further part
        return items[2] or is_between_items(rows, _PART_WORDS)
    named = bool(FOR_A_PART.match(row.text.strip(" :"))) or _names_a_part(rows, place)
    amid = is_between_items(rows, place) and not is_sentence(row.text)
    apart = row.gap or amid
    heads = apart and is_group(rows, place) and not _USED_FOR.search(row.text)
    return row.text.endswith(":") or named or heads or heads_further(row)


def _is_asked_head(rows: Sequence[Row], place: int) -> bool:
    """Whether a row that was taken for a heading may be a thing that goes in all the same."""
    row = rows[place]
    plainly = row.shape != "line" or row.text.endswith(":") or heads_further(row)
    if plainly or FOR_A_PART.match(row.text):
        return False
    return _names_a_part(rows, place) or bool(foods_named(row.text))


def _names_a_part(rows: Sequence[Row], place: int) -> bool:
    """Whether a word alone above an amount heads a part of the list: "Icing", "Füllung"."""
    said = plain(rows[place].text).split()
    if not said or len(said) > _PART_WORDS or place + 1 >= len(rows):
        return False
    part = said[-1] in words("parts") or any(said[-1].endswith(one) for one in words("part_ends"))
    return part and is_ingredient(rows[place + 1].text)


def _is_rest(rows: Sequence[Row], place: int) -> bool:
    """Whether a row goes on with the one above it, which a machine broke off."""
    row, above = rows[place], rows[place - 1]
    if not row.wraps or row.gap or row.shape != "line":
        return False
    if above.shape == "item":
        return row.indent > above.indent
    if ends_open(above.text):
        return True
    counted = is_ingredient(row.text) and re.search(
        r"\b(?:\d+|one|two|three|half)\b", row.text, re.IGNORECASE
    )
    ended = above.text.endswith((".", "!", "?"))
    return len(above.text) >= WIDE and row.text[:1].islower() and not (counted or ended)
