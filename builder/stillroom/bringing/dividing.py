"""Which rows of a paper are which recipe's title, list, steps and notes.

Lists are found first, by their headings or as runs of lines that begin with amounts; each list
that has a method before it begins another recipe. What fits nowhere stays in the recipe that it
stands in: words are never lost in silence. Leaves out what a single row may be: sorting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.above_list import is_method_head, read_above
from stillroom.bringing.accounted import tell_lost
from stillroom.bringing.amounts_last import with_amounts_before
from stillroom.bringing.below_list import (
    read_below,
)
from stillroom.bringing.broken_lines import made_whole
from stillroom.bringing.farewell import Left, without_private
from stillroom.bringing.found import List, Paper, Recipe, Row
from stillroom.bringing.greetings import tell_beside, without_greeting
from stillroom.bringing.head_rows import is_a_recipe_head, is_head, with_parts_named_twice
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.joining import joined
from stillroom.bringing.later_lists import head_of_first, read_later
from stillroom.bringing.list_lines import read_list, thing_above
from stillroom.bringing.list_parts import FOR_A_PART, heads_further, is_part_alone
from stillroom.bringing.list_titles import first_title, join_lists, list_begins
from stillroom.bringing.lists import find_lists
from stillroom.bringing.makes_said import is_only_makes, makes_of
from stillroom.bringing.one_line import said_in_prose
from stillroom.bringing.outside import (
    ask_of_another_above,
    ask_of_left_out,
    ask_of_no_measure,
    take_first_size,
    take_food_behind_makes,
    tell_dropped,
    with_bare_foods,
    without_its_own_name,
)
from stillroom.bringing.page_marks import without_edit_marks
from stillroom.bringing.prose import measured_in_prose, told_over_lists
from stillroom.bringing.prose_elsewhere import told_elsewhere
from stillroom.bringing.rows import made_ready
from stillroom.bringing.seen_whole import tidy_whole
from stillroom.bringing.series import series_of, weaker_series_of
from stillroom.bringing.several_asked import ask_of_several
from stillroom.bringing.shared_method import share_method
from stillroom.bringing.signatures import without_signatures
from stillroom.bringing.sizes_of_list import take_first_batch
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_ingredient,
    is_sentence,
    is_title,
)
from stillroom.bringing.stages import heads_first_stage
from stillroom.bringing.tails import does_something
from stillroom.bringing.title_choice import named_first, title_taken
from stillroom.bringing.titles import (
    RECIPE_WORD,
    made_of_title,
    title_of_list,
    titled,
    unstopped,
    writer_of,
)
from stillroom.bringing.titles_stopped import is_stopped_title, tells
from stillroom.bringing.told import made_before, made_by_title, told_apart, told_behind
from stillroom.bringing.told_above import keep_story, take_method_above
from stillroom.bringing.tools import take_tools
from stillroom.bringing.ways_below import with_ways_below
from stillroom.bringing.whole_list import things_in_sentences
from stillroom.bringing.yield_lines import amount_of_nothing
from stillroom.core.lines.staple_table import staples_named

_ASIDE: Final = re.compile(r"\s*\((?P<said>[^()]+)\)$")
_A_RECIPE: Final = re.compile(rf"\b{RECIPE_WORD}\b", re.IGNORECASE)
_NUMBER: Final = re.compile(r"^\d{1,2}\s*[.):#]\s+")
_WEIGHED: Final = re.compile(
    r"\b(?:k?g|kilo|libra|libbr|pfund|pund|pond|funt|livre)", re.IGNORECASE
)
_FOODS: Final = 2
"""Foods known for certain, from which on a list is one of foods."""
_LONGEST: Final = 90
"""Letters of a title, and no more."""
_FEW: Final = 6
"""Words of a line above a list that may still be its title."""


def divide(paper: Paper) -> list[Recipe]:
    """Return the recipes of a paper, in order; one without a list where none is found."""
    origin = paper.origin
    if origin.others:
        told, signed = without_signatures(paper.rows)
        left = Left(told, signed=signed)
    else:
        left = without_private(paper.rows, origin.letter)
    rows, recipes = _all_of(made_whole(with_ways_below(without_edit_marks(left.rows))))
    if recipes:
        left.tell(recipes[-1])
        if origin.beside:
            tell_beside(recipes[0])
        if origin.chat:
            what = "Names and hours of the messages are left out, and what the others wrote."
            recipes[0].doubt("title", what, "Write what else was said, if the recipe needs it.")
        for one in recipes if origin.others else ():
            keep_story(one)
        ask_of_several(recipes, rows)
        tell_lost(recipes, rows)
    return recipes


def _all_of(rows: Sequence[Row]) -> tuple[Sequence[Row], list[Recipe]]:
    """Return the rows of a paper made ready, and the recipes in them."""
    series = series_of(with_amounts_before(rows))
    if series is None:
        ready = made_ready(rows)
        recipes = _in_order(ready)
        series = weaker_series_of(rows)
        if series is None or len(series.parts) <= sum(map(_is_told, recipes)):
            return ready, recipes
    above = made_ready(series.above)
    parts = [made_ready(part) for part in series.parts]
    whole = any(map(is_method_head, above)) or bool(find_lists(above))
    first = _in_order(above) if whole else []
    recipes = [one for part in parts for one in _one_of_a_series(part)]
    share_method(recipes)
    if not first:
        tell_dropped(recipes, above)
    read = [row for part in (above if first else [], *parts, series.sections) for row in part]
    return read, [*first, *recipes]


def _is_told(recipe: Recipe) -> bool:
    return bool(recipe.ingredients or recipe.steps)


def _one_of_a_series(rows: Sequence[Row]) -> list[Recipe]:
    """Return the recipe below one of several heads; what it tells in sentences is all its own."""
    return _in_order(rows) if find_lists(rows) else [_without_list(joined(rows))]


def _in_order(rows: Sequence[Row]) -> list[Recipe]:
    lists = join_lists(find_lists(rows), rows)
    if not lists:
        return [_without_list(part) for part in told_apart(joined(rows))] if rows else []
    begins = list_begins(lists, rows)
    ends = [*begins[1:], len(rows)]
    recipes: list[Recipe] = []
    dropped: Sequence[Row] = []
    titles = [first_title(rows, lists, begins), *begins[1:]]
    if titles[0] is not None and len(lists) > 1:
        begins[0] = titles[0]  # what stands above the first of several is about them all
        recipes += _told_above(rows[: titles[0]])
        dropped = [] if recipes else rows[: titles[0]]
    for found, begin, end, title in zip(lists, begins, ends, titles, strict=True):
        behind = told_behind(rows, found, end)
        span = (begin, behind[0] if behind else end)
        recipes.append(_recipe(rows, found, span, title if title != found.begin else None))
        for first, last in pairwise([*behind, end]):
            recipes.append(_without_list(joined(rows[first:last])))
            what = f'It is told in sentences behind "{recipes[-2].title or "another recipe"}".'
            recipes[-1].doubt("title", what, "If it is a part of that one, put it back there.")
    tell_dropped(recipes, dropped)
    share_method(recipes)
    return recipes


def _told_above(rows: Sequence[Row]) -> list[Recipe]:
    """Return the recipes that are told in sentences above the first of several with a list."""
    headed = any(map(is_method_head, rows))
    if not headed and len(measured_in_prose(row.text for row in rows)) < _FOODS:
        return []
    found = [_without_list(part) for part in told_apart(joined(rows))]
    return [one for one in found if one.steps]


def _recipe(rows: Sequence[Row], found: List, span: tuple[int, int], title: int | None) -> Recipe:
    """Put the rows of one recipe in their places."""
    begin, end = span
    rows = with_parts_named_twice(rows, found.rows, end)
    recipe = Recipe()
    left_out = None
    if title is not None and len(rows[title].text) > _LONGEST and is_sentence(rows[title].text):
        title = None  # a paragraph tells
    if title is not None:
        title, left_out = title_taken(recipe, rows, title, (begin, found.begin, end))
    if title is not None:
        recipe.title = _NUMBER.sub("", titled(rows[title].text) or rows[title].text)
        recipe.say_makes(made_of_title(rows[title].text))
        if aside := _ASIDE.search(recipe.title):  # "Plum gin (makes 1 litre)"
            made = makes_of(aside["said"]) or amount_of_nothing(aside["said"])
            recipe.say_makes(made)
            recipe.title = recipe.title[: aside.start()] if made else recipe.title
    if title is None and found.named:  # "Zutaten für Quittengelee:"
        recipe.title = title_of_list(rows[found.begin].text)
    elif title is None and found.begin > begin:  # "Advocaat volgens oud recept:", right above it
        above_it = rows[found.begin - 1].text
        named = above_it.endswith(":") and not is_only_makes(above_it) and is_title(above_it[:-1])
        named = named and plain(above_it) not in words("summed_up") and not tells(above_it)
        named = named and not (_A_RECIPE.search(above_it) and not titled(above_it))
        recipe.title = above_it[:-1].strip() if named and len(above_it.split()) <= _FEW else ""
    if not recipe.title and title is None and found.begin > begin:
        title = _asked_title(recipe, rows, begin, found.begin)
    if found.named:  # "For 4 jars you need:"
        for row in filter(is_head, rows[found.begin : found.end]):
            recipe.say_makes(makes_of(re.split(r",(?!\d)", row.text)[0]))
    listed = {*found.rows, *found.later, *found.tools}
    tools = [rows[at].text for at in found.tools if not is_only_makes(rows[at].text)]
    for at in found.tools:
        recipe.say_makes(makes_of(rows[at].text))
    above = [at for at in range(begin, found.begin) if at not in (title, left_out)]
    if above and title is not None and _heads_first_part(rows, found, above[-1]):
        found.rows.insert(0, above.pop())  # "Pour les oranges confites :", right above its amounts
        thing = None
    else:
        thing = thing_above(recipe, rows, found) if above and title is not None else None
        above = above[:-1] if thing else above
    read_above(recipe, [rows[at] for at in above])
    read_list(recipe, [*([thing] if thing else []), *(rows[at] for at in found.rows)])
    tools += take_tools(recipe)
    if tools:
        recipe.notes.append(("Equipment", tools))
    instead = read_later(recipe, rows, found)
    recipe.first_steps = told_over_lists(recipe)
    below = [instead.get(at, rows[at]) for at in range(found.end, end) if at not in listed]
    read_below(recipe, [*(head_of_first(recipe) if instead else []), *below])
    take_method_above(recipe)
    take_food_behind_makes(recipe)
    take_first_size(recipe)
    take_first_batch(recipe)
    without_its_own_name(recipe)
    ask_of_left_out(recipe)
    ask_of_another_above(recipe)
    ask_of_no_measure(recipe)
    tidy_whole(recipe)
    return recipe


def _asked_title(recipe: Recipe, rows: Sequence[Row], begin: int, end: int) -> int | None:
    """Take a title that a page asks as a question: "Knäck – the sweet of Christmas?"."""
    asks = rows[begin].text.strip()
    alone = end - begin == 1 or rows[begin].shape == "heading"
    if not alone or not asks.endswith("?"):
        return None
    named = re.split(r"\s+[-–—]\s+", asks.rstrip(" ?"), maxsplit=1)[0]
    if not is_title(named):
        return None
    recipe.title = named
    what = f'"{asks}" is taken for the title, without what it asks.'
    recipe.doubt("title", what, "If that is not what it is called, write it.")
    return begin


def _heads_first_part(rows: Sequence[Row], found: List, at: int) -> bool:
    """Whether the line right above a list heads its first part, as others head those below."""
    text = rows[at].text
    if FOR_A_PART.match(text.strip(" :")) or heads_further(rows[at]) or is_part_alone(rows[at]):
        return True
    if heads_first_stage(rows, found, at):
        return True
    close = at == found.begin - 1 and text.endswith(":") and len(text.split()) <= _FEW
    more = any(
        rows[one].text.endswith(":") and not is_ingredient(rows[one].text) for one in found.rows
    )
    return close and more and not is_head(rows[at]) and not is_only_makes(text)


def _without_list(rows: Sequence[Row]) -> Recipe:
    """Return a recipe that runs on in sentences: its title and its steps."""
    recipe = Recipe()
    rows = without_greeting(rows, recipe)
    if not rows:
        return recipe
    heads = [place for place, row in enumerate(rows) if row.shape == "heading"]
    heads = [place for place in heads if not is_sentence(rows[place].text)]
    at = next((place for place in heads if section_of(rows[place].text) is None), None)
    if at is None:
        rest = " ".join(row.text for row in rows[1:]).lower()
        named = is_title(unstopped(rows[0].text)) or is_stopped_title(rows[0].text, rest)
        at = 0 if named and rest else None
    begins = next((place for place, row in enumerate(rows) if is_sentence(row.text)), 0)
    left_out = None
    at = named_first(rows, begins) if at is None else at
    if at is not None and at < begins:
        at, left_out = title_taken(recipe, rows, at, (0, begins, len(rows)))
    if at is not None:
        recipe.title = unstopped(titled(rows[at].text) or rows[at].text).rstrip(". ")
    recipe.makes = made_by_title(recipe.title)
    told = [row for place, row in enumerate(rows) if place not in (at, left_out)]
    if told[1:] and told[0].text.startswith("By ") and (who := writer_of(told[0].text)):
        recipe.writer = who
        told = told[1:]
    below = with_bare_foods(recipe, told)
    for place, row in enumerate(below[:_FEW]):
        alone = f": {row.text}" if row.text[:1].isdigit() else row.text
        if said := said_in_prose(alone):
            recipe.ingredients = [("", thing) for thing in said.things]
            recipe.makes = recipe.makes or made_before(said.before)
            if not recipe.title and is_title(said.named) and not is_a_recipe_head(said.named):
                recipe.title = said.named
            kept = [replace(row, text=said.after)] if said.after else []
            read_above(recipe, below[:place])
            read_below(recipe, [*kept, *below[place + 1 :]])
            what = f"{len(said.things)} things were told in one sentence, and have a line each now."
            recipe.doubt("ingredients", what, "Look whether they were parted where you would.")
            return recipe
    bare = list(filter(None, map(_bare_thing, below)))
    read_below(recipe, [row for row in below if not _bare_thing(row)])
    texts = [text for _, text in recipe.steps]
    recipe.told = not recipe.ingredients
    things = measured_in_prose(texts) if recipe.told else []
    whole = things_in_sentences(texts) if recipe.told else []
    elsewhere = told_elsewhere(texts) if recipe.told else None
    recipe.unread = list(elsewhere.unknown) if elsewhere else []
    goes_in = {one.casefold() for one in (*things, *recipe.unread)}
    if _WEIGHED.search(recipe.makes) and recipe.makes.casefold() in goes_in:
        recipe.makes = (
            ""  # "Para tres libras de manteca, un cuartillo de leche": none of it is made
        )
    is_whole = len(whole) > len(things) or (len(whole) == len(things) and elsewhere is None)
    if things := [*bare, *(whole if is_whole else things)]:
        recipe.ingredients = [("", thing) for thing in things]
        few = (
            "1 thing that its sentences measure stands"
            if len(things) == 1
            else (f"{len(things)} things that its sentences measure stand")
        )
        what = f"It has no list of ingredients: {few} in one now."
        recipe.doubt("ingredients", what, "Look whether each is right.")
        return recipe
    if not recipe.ingredients:
        what = "No list of ingredients was found."
        mend = 'Write one ingredient to a line below "ingredients:", each after a dash.'
        recipe.doubt("ingredients", what, mend)
    return recipe


def _bare_thing(row: Row) -> str:
    """Return what a point of a numbered method puts in, where nothing is done: "1. 3 lb honey"."""
    thing = _NUMBER.sub("", row.text) if row.shape == "step" else ""
    measured = is_ingredient(thing) and begins_with_amount(thing) and not is_sentence(thing)
    is_bare = measured and staples_named(thing) and not does_something(thing)
    return thing if is_bare else ""
