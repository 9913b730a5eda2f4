"""The rows of a paper made ready: what a page parts is joined, what it joins is parted.

"Method: chop the mint" is a heading and a line, "50 g" above "Sucre" one line, "Repos" above "2
semaines" nothing of the recipe. Leaves out which rows are what: dividing.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.amounts_last import with_amounts_before
from stillroom.bringing.bylines import with_bylines_told
from stillroom.bringing.cells_on_lines import with_amounts_joined, with_cells_joined
from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_a_recipe_head, is_head
from stillroom.bringing.heads import (
    after_section,
    heads_tools,
    list_and_method,
    section_of,
)
from stillroom.bringing.labelled_spans import labelled_span
from stillroom.bringing.labelled_things import with_labels_behind
from stillroom.bringing.leaders import with_leaders_taken
from stillroom.bringing.list_marks import with_marks_taken, with_numbered_lists
from stillroom.bringing.list_titles import with_first_line_named
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.old_books import made_new
from stillroom.bringing.one_line import foods_named, listed_and_told
from stillroom.bringing.outside_recipe import without_furniture
from stillroom.bringing.page_figures import is_time
from stillroom.bringing.page_marks import without_page_marks
from stillroom.bringing.shared_method import with_titles_over_lists
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_ingredient,
    is_remark,
    is_sentence,
    is_title,
    number_of,
)
from stillroom.bringing.step_labels import (
    with_dashed_numbers_apart,
    with_glued_numbers_apart,
    with_labels_apart,
    with_signed_numbers_apart,
)
from stillroom.bringing.things_apart import with_things_apart
from stillroom.bringing.titles import names_writer, title_and_writer
from stillroom.bringing.titles_made import with_makes_apart
from stillroom.bringing.titles_set import with_set_titles_bared
from stillroom.bringing.titles_stopped import with_title_unstopped
from stillroom.bringing.typed_notes import with_notes_told
from stillroom.bringing.whole_list import with_lists_apart
from stillroom.bringing.worked_lists import with_work_told
from stillroom.bringing.yield_lines import with_yields_told
from stillroom.bringing.yields import LABEL_ALONE

_DOTS: Final = re.compile(r"\s*[•·‣▪●○◦❤♥★☆✿❀♦♡✦]\ufe0f?\s+")
_DOTTED: Final = 3
_TITLE_WORDS: Final = 6
_LEAST_OF_ALL: Final = 120
"""Letters from which on a paragraph may be a list and its method."""
# "ANZAC BISCUITS – MAKES ABOUT 35", "Granola [makes about 5 cups]"
_TITLE_MAKES: Final = re.compile(
    r"(?P<title>[^\W\d][^.!?:\d]{2,60}?)\s*[-–—(\[]\s*(?P<makes>(?:makes|yields?|ergibt|donne)\s+(?:about\s+|ca\.?\s+)?\d[^\])]*)[\])]?",
    re.IGNORECASE,
)
_RUN_ON: Final = re.compile(
    r"(?P<title>[^\W\d](?:(?![.!?:]\s).){2,70}?)[.:]?\s+(?P<head>Ingredients|Zutaten|Ingrédients|Ingredienti|Ingredientes|Ingrediënten)"
    r"\s*:\s*(?P<list>.{8,1500}?)\s+(?P<method>Method|Directions|Instructions|Zubereitung|Préparation|Preparazione|Procedimento"
    r"|Preparación|Elaboración|Bereiding)\s*:\s*(?P<rest>\S.*)",
    re.DOTALL,
)
# "Rezept: Wenn man Quitten verarbeitet, ...": the method, told below its list
_TOLD: Final = re.compile(
    r"(?:recipe|rezept|recette|ricetta|receta|recept)\s*:\s*(?P<said>[^\W\d](?:\S+\s+){10,}.*[.!])",
    re.IGNORECASE | re.DOTALL,
)
_GLUED: Final = re.compile(
    r"(?P<makes>(?:für|for|pour|per|para|voor|makes|ergibt)\s.{0,20}?\d\s*[^\W\d]{3,})(?P<rest>\d+\s?(?:k?g|m?l|cl)\s+[^\W\d].*)",
    re.IGNORECASE,
)
_COMMAS: Final = 2
"""Lines above that end in a comma, from which on it is how the list is written."""
_LEAST_FACTS: Final = 3
_REST_OF_TITLE: Final = 3
_LONG_TITLE: Final = 8
# "tied into a bag", right below the spices
_OR_ELSE: Final = re.compile(
    r"(?:the|or|oder|ou|oppure|o|of|eller|lub|nebo|not|nicht|pas|non|no|without|ohne|see|about|ca\.?|\d)\b",
    re.I,
)
_HOW_IT_IS: Final = re.compile(
    r"(?:tied|wrapped|packed|cut|ground|[a-z]{3,}ed)\s+(?:in|into|up|with|to|and)\b"
)
_MOST_OF_A_REST: Final = 6
_ENDS_IN_OF: Final = re.compile(
    r"\b(?:juice|rind|zest|peel|saft|schale|abrieb|jus|zestes?|écorces?|succo|scorza|zumo|ralladura|piel|sap|schil|rasp|saft|skal)"
    r"\s+(?:of|from|von|de|di|van|av|af|fra)$",
    re.IGNORECASE,
)
_IN_BRACKETS: Final = re.compile(r"\([^()]+\)[.,]?")
_OPEN_LINE: Final = re.compile(
    r"(?:,|\b(?:and|or|of|the|with|for|to|just|in|into|an?))$", re.IGNORECASE
)
_CARD_FACT: Final = re.compile(
    r"(Prep Time|Cook Time|Total Time|Active Time|Cure Time|Course|Cuisine|Featuring|Servings"
    r"|Yield|Calories|Author|Skill Level|Project Type|Category|Keyword|Difficulty)\s+(?=\w)"
)


def made_ready(rows: Sequence[Row]) -> list[Row]:
    """Return rows without a page's times, with what it joined parted and what it parted joined."""
    plainly = without_furniture(without_page_marks(with_amounts_before(with_leaders_taken(rows))))
    marked = with_yields_told(with_set_titles_bared(with_marks_taken(plainly)))
    bare = with_notes_told(with_first_line_named(with_title_unstopped(with_bylines_told(marked))))
    named = _with_title_ended(with_labels_apart(_with_numbers_apart(bare)))
    apart = _apart(_without_times(_with_card_facts(_with_halves_joined(made_new(named)))))
    apart = with_makes_apart(with_things_apart(apart))
    joined = _with_makes_joined(_with_dots_apart(with_cells_joined(apart)))
    joined = with_labels_behind(with_amounts_joined(joined))
    listed = with_titles_over_lists(with_lists_apart(with_numbered_lists(joined)))
    return with_work_told(listed)


def _with_numbers_apart(rows: Sequence[Row]) -> list[Row]:
    return with_dashed_numbers_apart(with_glued_numbers_apart(with_signed_numbers_apart(rows)))


def _with_title_ended(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a title at the head of a page that trails off in dots, without those."""
    first = rows[0] if rows else None
    bare = first.text.rstrip(" .…") if first else ""
    if first and first.text.endswith(("..", "…")) and len(bare.split()) <= _TITLE_WORDS:
        return [replace(first, text=bare), *rows[1:]]
    return list(rows)


def _with_halves_joined(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the rest of a title, or of a line of the list, behind its beginning.

    As a photograph's words are copied: "Max's mom's coffee flavoured" above "liqueur", "12 tsp
    coffee" above "(regular or decaf)", "½ pint water, to just" above "cover".
    """
    found: list[Row] = []
    for place, row in enumerate(rows):
        above = found[-1] if found else None
        close = above is not None and row.shape == "line" and not row.gap and above.shape == "line"
        close = close and not (above and _tells_of_another(row.text, above.text))
        own = _food_in_brackets(row.text, above.text) if close and above is not None else ""
        if above and _ENDS_IN_OF.search(above.text) and _is_of(row, above):
            found[-1] = replace(above, text=f"{above.text} {row.text}")
        elif own:  # "(icing sugar for dusting)", below a thing that it is no part of
            found.append(replace(row, text=own))
        elif close and above is not None and _is_half(rows, place, above.text):
            sign = ", " if _HOW_IT_IS.match(row.text) else " "
            found[-1] = replace(above, text=f"{above.text.rstrip(sign)}{sign}{row.text}")
        else:
            found.append(row)
    return found


def _is_of(row: Row, above: Row) -> bool:
    """Whether a row is what the one above it is of: "Rind and juice of", and below it "1 lemon"."""
    few = len(above.text.split()) <= _MOST_OF_A_REST and len(row.text.split()) <= _MOST_OF_A_REST
    listed = row.shape == above.shape and row.shape in ("line", "item")
    return few and listed and begins_with_amount(row.text) and not is_sentence(row.text)


def _food_in_brackets(text: str, above: str) -> str:
    """Return the words of a line in brackets that names a food of its own; "" for any other."""
    inner = text[1:-1].strip() if _IN_BRACKETS.fullmatch(text) else ""
    if not inner or not is_ingredient(above) or _OR_ELSE.match(inner):
        return ""
    return inner if foods_named(inner) - foods_named(above) else ""


def _tells_of_another(text: str, above: str) -> bool:
    """Whether a remark in brackets is of another food than the thing above it."""
    return is_remark(text) and bool(foods_named(text) - foods_named(above))


def _is_half(rows: Sequence[Row], place: int, above: str) -> bool:
    text = rows[place].text
    if place == 1 and place + 1 < len(rows) and rows[place + 1].gap:
        few = len(text.split()) <= _REST_OF_TITLE and len(above.split()) <= _LONG_TITLE
        few = few and not names_writer(text)
        return few and text[:1].islower() and not re.search(r"[.:;!?]$", above)
    if not is_ingredient(above):
        return False
    open_above = (
        text[:1].islower() and len(text.split()) <= _REST_OF_TITLE and _OPEN_LINE.search(above)
    )
    how = _HOW_IT_IS.match(text) and len(text.split()) <= _MOST_OF_A_REST
    if open_above and not how and _ends_each_in_a_comma(rows, place):
        return False
    return bool(_IN_BRACKETS.fullmatch(text) or open_above or how)


def _ends_each_in_a_comma(rows: Sequence[Row], place: int) -> bool:
    """Whether a list's writer ends each line in a comma: one that names a food is a thing."""
    above = [row.text.endswith(",") for row in rows[max(place - _COMMAS, 0) : place]]
    return len(above) == _COMMAS and all(above) and bool(foods_named(rows[place].text))


def _with_card_facts(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a colon in "Prep Time 15 minutes", "Course Dessert", as cards are copied."""
    told = [bool(_CARD_FACT.match(row.text)) and row.shape in ("line", "item") for row in rows]
    if sum(told) < _LEAST_FACTS:
        return list(rows)
    return [
        replace(row, text=_CARD_FACT.sub(r"\1: ", row.text)) if fact else row
        for row, fact in zip(rows, told, strict=True)
    ]


def _without_times(rows: Sequence[Row]) -> list[Row]:
    """Return rows without "Repos" and the "2 semaines" below it; how it keeps stays."""
    kept: list[Row] = []
    for row in rows:
        if is_time(row.text) and row.shape in ("line", "heading"):
            above = kept[-1] if kept else None
            joined = f"{above.text.strip(' :')}: {row.text}" if above else ""
            if above and section_of(above.text) == "aside":
                kept.append(row)
            elif above and above.shape in ("line", "heading") and labelled_span(joined):
                kept[-1] = replace(above, text=joined, shape="line", level=0)
            elif len(kept) == 1 or (above and above.level == 1):
                continue  # its title, which may be one word
            elif above and above.shape in ("line", "heading") and len(above.text.split()) <= 2:
                kept.pop()
        else:
            kept.append(row)
    return kept


def _apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "Method: chop the mint" as a heading and a line of its own."""
    found: list[Row] = []
    for row in _titles_apart(rows):
        told = list_and_method(row.text) if row.shape == "line" else None
        if told:
            found += [Row(told[0], "heading", 6, row.gap), Row(told[1], "line", 0, False)]
            found += [Row(told[2], "heading", 6, False), Row(told[3], "line", 0, False, row.wraps)]
            continue
        both = after_section(row.text) if row.shape != "heading" else None
        if told_below := _TOLD.fullmatch(row.text) if row.shape == "line" else None:
            found += [Row("Method", "heading", 6, row.gap)]
            found += [Row(told_below["said"], "line", 0, False, row.wraps)]
            continue
        if both and (both[0] != "aside" or heads_tools(row.text.partition(":")[0])):
            head = row.text[: row.text.rfind(both[1])].rstrip(" :.–—-")
            found.append(Row(head, "heading", 6, row.gap))
            run_on = listed_and_told(both[1]) if both[0] == "ingredients" else None
            if run_on:
                found += [Row(thing, "item") for thing in run_on[0]]
                found += [Row("Method", "heading", 6), Row(run_on[1], "line")]
                continue
            found.append(Row(both[1], "line", 0, False, row.wraps))
        else:
            found.append(row)
    return _steps_numbered(found)


def _titles_apart(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the title that runs on into a list as a row of its own.

    "Mostarda Ingredienti: 2 kg frutta. Procedimento: ...", and "für 1 Liter500 g Quitten".
    """
    found: list[Row] = []
    for row in rows:
        parts = [row.text]
        if row.shape == "line" and (run := _RUN_ON.fullmatch(row.text)):
            parts = [
                run["title"],
                f"{run['head']}: {run['list']}",
                f"{run['method']}: {run['rest']}",
            ]
        elif row.shape in ("line", "heading") and (of_whom := title_and_writer(row.text)):
            found += [replace(row, text=of_whom[0]), Row(f"By: {of_whom[1]}", "line")]
            continue
        elif row.shape in ("line", "heading") and (made := _TITLE_MAKES.fullmatch(row.text)):
            found += [replace(row, text=made["title"]), Row(made["makes"], "line")]
            continue
        elif row.shape == "line" and (listed := _list_and_rest(row.text)):
            found += [Row(thing, "item", 0, row.gap) for thing in listed[0]]
            found += [Row("Method", "heading", 6), Row(listed[1], "line", 0, False, row.wraps)]
            continue
        elif row.shape == "line" and (all_in_one := _title_and_list(row.text)):
            title, things, rest = all_in_one
            if not is_a_recipe_head(title):  # "Recipe: 1 c. milk, ...": no name of it
                found.append(Row(title, "heading", 1, row.gap))
            found += [Row(thing, "item") for thing in things]
            found += [Row("Method", "heading", 6), Row(rest, "line", 0, False, row.wraps)]
            continue
        elif row.shape == "line" and (glued := _GLUED.fullmatch(row.text)):
            parts = [glued["makes"], glued["rest"]]
        gaps = (row.gap, False, False)
        found += [replace(row, text=part, gap=gap) for part, gap in zip(parts, gaps, strict=False)]
    return found


def _list_and_rest(text: str) -> tuple[tuple[str, ...], str] | None:
    """Return things and method of a paragraph that begins with an amount and has no sign."""
    if not re.match(r"[\d½¼¾]", text) or len(text) < _LEAST_OF_ALL or number_of(text):
        return None
    return listed_and_told(text)


def _title_and_list(text: str) -> tuple[str, tuple[str, ...], str] | None:
    """Return title, things and method of a paragraph that runs them together without a sign."""
    first = re.search(r"(?<=\s)[\d½¼¾]", text)
    title = text[: first.start()].strip(" :.-–") if first else ""
    if first is None or not title or len(title.split()) > _TITLE_WORDS or not is_title(title):
        return None
    told = listed_and_told(text[first.start() :])
    return (title, *told) if told else None


def _with_dots_apart(rows: list[Row]) -> list[Row]:
    """Return rows with "• 250 g sugar • 2 eggs • 1 tsp salt" on one line as three items."""
    found: list[Row] = []
    for row in rows:
        parts = [part.strip() for part in _DOTS.split(row.text) if part.strip()]
        if row.shape in ("line", "item") and len(parts) >= _DOTTED:
            headed = parts[0].endswith(":") and row.shape == "line"
            found += [replace(row, text=part) for part in parts[:headed]]
            found += [replace(row, text=part, shape="item", gap=False) for part in parts[headed:]]
        else:
            found.append(row)
    return found


def _with_makes_joined(rows: list[Row]) -> list[Row]:
    """Return rows with "Yield: 8 to 9" and "pints", "Ergibt:" and "2 Gläser" on one line."""
    found: list[Row] = []
    for place, row in enumerate(rows):
        above = found[-1] if found else None
        broken = row.wraps and not row.gap and row.shape == "line" and row.text[:1].islower()
        counted = above and above.shape == "line" and re.search(r"\d$", above.text)
        if above and broken and counted and is_only_makes(above.text) and len(row.text.split()) < 4:
            found[-1] = replace(above, text=f"{above.text} {row.text}")
        elif above and _is_value(rows, place, above):
            found[-1] = replace(above, text=f"{above.text} {row.text}", shape="line", level=0)
        else:
            found.append(row)
    return found


def _is_value(rows: Sequence[Row], place: int, above: Row) -> bool:
    """Whether a row says how much is made, below a label of that alone, and begins no list."""
    row = rows[place]
    told = row.shape in ("line", "item") and len(row.text.split()) <= _MOST_OF_A_REST
    made = bool(LABEL_ALONE.fullmatch(above.text.strip())) and not number_of(row.text)
    listed = any(not one.gap and is_ingredient(one.text) for one in rows[place + 1 : place + 2])
    return told and made and not listed and is_only_makes(f"{above.text} {row.text}")


def _steps_numbered(rows: list[Row]) -> list[Row]:
    """Return the rows below a method's heading as steps where they count on from 1: "1 Peel"."""
    heads = [place for place, row in enumerate(rows) if is_head(row)]
    for place, below in pairwise([*heads, len(rows)]):
        if section_of(rows[place].text) == "method":
            rows[place + 1 : below] = numbered_apart(rows[place + 1 : below])
    return rows


def numbered_apart(rows: Sequence[Row]) -> list[Row]:
    """Return steps without the numbers they begin with, where those count on from 1: "1 Peel"."""
    found = [
        (place, re.match(r"(\d{1,2})(?:\s+(?=[^\W\d])|(?=[A-ZÄÖÜÉÈÀ][a-zà-ÿ]))", row.text))
        for place, row in enumerate(rows)
    ]
    counted = [(place, one) for place, one in found if one and rows[place].shape != "heading"]
    if len(counted) < 2 or [int(one[1]) for _, one in counted] != [*range(1, len(counted) + 1)]:
        return list(rows)
    bare = {place: rows[place].text[one.end() :] for place, one in counted}
    return [
        replace(row, text=bare[place], shape="step") if place in bare else row
        for place, row in enumerate(rows)
    ]
