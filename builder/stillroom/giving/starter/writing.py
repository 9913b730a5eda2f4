"""A first giving list as text, from what was answered and the book's recipes: whole, with notes.

It plans at once: a basket asks of no household more of a sort than may go to it, each recipe says
how many a batch gives where that cannot be worked out, and there are batches enough for everybody.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date

import yaml
from babel.numbers import get_decimal_symbol

from stillroom.core.book import BookSettings
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.recipe.model import Recipe
from stillroom.giving.filled_into import count_filled
from stillroom.giving.model import SORTS, Make, Sort
from stillroom.giving.money.stand_ins import FREE
from stillroom.giving.offering import make_offering, sort_of
from stillroom.giving.reading import ReadList, read_giving_list
from stillroom.giving.starter.answers import USUAL, ListAnswers
from stillroom.giving.starter.words import starter_words
from stillroom.giving.who import BREASTFEEDING

_USUAL_BATCHES = 3  # what a list that does not say takes it to be: model.py
_MOST_PRICES = 12


@dataclass(frozen=True)
class _Kinds:
    """The kinds of baskets by what they hold, the first the one that was asked for."""

    rooms: tuple[tuple[tuple[Sort, int], ...], ...]

    def name(self, room: Mapping[Sort, int]) -> str:
        """Return what a kind of basket is called."""
        place = self.rooms.index(tuple(room.items()))
        if place == 0:
            return "full basket"
        return "smaller basket" if place == 1 else f"smaller basket {place}"


def write_first_list(
    answers: ListAnswers,
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    today: date,
    name: str,
) -> str:
    """Return the text of a list called `name`; raises ProblemsFound where it does not read.

    Where nobody was named it shows how somebody is, behind a "#", and plans once somebody is.
    """
    chosen = tuple(one for one in recipes if one.slug in answers.recipes or not answers.recipes)
    if answers.room is None:
        answers = replace(answers, room=_usual_room(chosen))
    asked = dict(answers.room or {})
    if not answers.receivers:
        return _text(answers, chosen, [], settings, name)
    rooms = [asked] * len(answers.receivers)
    draft = _text(answers, chosen, rooms, settings, name)
    rooms = _that_may_go(_read(draft, name, settings), chosen, settings, today, asked)
    text = _text(answers, chosen, rooms, settings, name)
    make_offering(_read(text, name, settings), chosen, today, settings=settings)
    return text


def _usual_room(recipes: tuple[Recipe, ...]) -> dict[Sort, int]:
    there = {sort: sum(sort_of(one) == sort for one in recipes) for sort in SORTS}
    return {sort: min(USUAL[sort], count) for sort, count in there.items() if count}


def _read(text: str, name: str, settings: BookSettings) -> ReadList:
    said = settings
    return read_giving_list(
        text, name, said.currency, said.language, said.country, said.units, said.own_days
    )


def _that_may_go(
    read: ReadList,
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    today: date,
    asked: Mapping[Sort, int],
) -> list[dict[Sort, int]]:
    """Return what each household's basket is asked to hold: of no sort more than may go to it."""
    problem = make_offering(read, recipes, today, settings=settings).problem
    rooms = []
    for basket in problem.baskets:
        fit = [one for one in problem.offers if (basket.number, one.key) not in problem.refused]
        room = {sort: min(n, sum(one.sort == sort for one in fit)) for sort, n in asked.items()}
        # where nothing may go to them the plan says so, and why
        rooms.append(room if any(room.values()) else dict(asked))
    return rooms


def _text(
    answers: ListAnswers,
    recipes: tuple[Recipe, ...],
    rooms: list[dict[Sort, int]],
    settings: BookSettings,
    name: str,
) -> str:
    notes: Mapping[str, str] = starter_words(settings.language)["notes"]
    asked = tuple((answers.room or {}).items())
    kinds = _Kinds(tuple(dict.fromkeys([asked, *(tuple(room.items()) for room in rooms)])))
    parts = (
        _head(answers, notes, name),
        _baskets(kinds, notes),
        _makes(recipes, rooms, notes),
        _households(answers, kinds, rooms, notes),
        _prices(answers, recipes, settings, notes),
    )
    return "\n".join("\n".join(lines) + "\n" for lines in map(list, parts) if lines)


def _head(answers: ListAnswers, notes: Mapping[str, str], name: str) -> Iterator[str]:
    yield f"# {notes['private']}"
    makes_it = notes["makes it" if answers.receivers else "makes it then"]
    yield f"# {makes_it}  stillroom pack giving/{name}"
    yield f"# {notes['guide']}"
    yield f"giving list: {_said(answers.title)}"
    yield f"giving day: {answers.day.isoformat()}"
    if answers.keeper:
        yield f"from: {_said(answers.keeper)}"
    if answers.hours:
        yield _noted(f"hours: {{every month: {_said(answers.hours)}}}", notes["hours"])


def _baskets(kinds: _Kinds, notes: Mapping[str, str]) -> Iterator[str]:
    yield "baskets:"
    for place, pairs in enumerate(kinds.rooms):
        room = dict(pairs)
        held = ", ".join(f"{sort}: {count}" for sort, count in room.items() if count)
        note = notes["fewer"] if place else notes["baskets"]
        yield _noted(f"  {kinds.name(room)}: {{{held}}}", note)


def _makes(
    recipes: tuple[Recipe, ...], rooms: list[dict[Sort, int]], notes: Mapping[str, str]
) -> Iterator[str]:
    yield _noted("makes:", notes["makes"])
    for recipe in recipes:
        yield f"  - recipe: {_said(recipe.slug)}"
        given = count_filled(Make(recipe=recipe.slug), recipe)
        if not given:
            yield _noted("    per batch: 1", notes["batch"])
        wanting = sum(bool(room.get(sort_of(recipe))) for room in rooms)
        most = math.ceil(wanting / (given or 1))
        if most > _USUAL_BATCHES:
            yield _noted(f"    batches: {most}", notes["batches"])


def _households(
    answers: ListAnswers, kinds: _Kinds, rooms: list[dict[Sort, int]], notes: Mapping[str, str]
) -> Iterator[str]:
    if not answers.receivers:
        yield from _shown(kinds, answers, notes)
        return
    yield "households:"
    first_avoid, first_children = notes["avoid"], notes["children"]
    for one, room in zip(answers.receivers, rooms, strict=True):
        yield f"  - name: {_said(one.name)}"
        yield f"    basket: {kinds.name(room)}"
        if one.needs.avoid:
            yield _noted(f"    avoid: [{_several(one.needs.avoid)}]", first_avoid)
            first_avoid = ""
        if one.adults != 1:
            yield f"    adults: {one.adults}"
        if one.children:
            yield _noted(f"    children: [{_several(one.children)}]", first_children)
            first_children = ""
        if one.pets:
            yield f"    pets: [{_several(one.pets)}]"
        if one.needs.pregnant:
            said = BREASTFEEDING if one.needs.pregnant == BREASTFEEDING else "yes"
            yield f"    pregnant: {said}"
        if one.by_post:
            yield "    by post: yes"
        if liked := answers.likes.get(one.name):
            yield f"    likes: [{_several(liked)}]"
        if answers.budget:
            yield f"    budget: {_said(answers.budget)}"
    yield f"  # {notes['likes']}"


def _shown(kinds: _Kinds, answers: ListAnswers, notes: Mapping[str, str]) -> Iterator[str]:
    """Yield how a household is written, as notes: none of it is anybody."""
    yield f"# {notes['nobody']}"
    yield "households:"
    yield _noted("#  - name:", notes["name"])
    yield f"#    basket: {kinds.name(dict(answers.room or {}))}"
    yield _noted("#    avoid:", notes["avoid"])
    yield _noted("#    children:", notes["children"])
    yield "#    by post: yes"
    yield f"# {notes['likes']}"


def _prices(
    answers: ListAnswers,
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    notes: Mapping[str, str],
) -> Iterator[str]:
    """Yield what costs so much, and behind a "#" the things of which nobody has said it yet."""
    if answers.prices:
        yield "prices:"
        yield from (f"  - {_said(item)}: {_said(pack)}" for item, pack in answers.prices)
    said = {item.lower() for item, _ in answers.prices}
    names = [
        line.item
        for one in recipes
        for line in one.ingredients
        if line.item and line.item.lower() not in said and not _is_from_the_tap(line.item)
    ]
    decimal = get_decimal_symbol(settings.language)
    pack = f"1 {'lb' if settings.units == 'us' else 'kg'} for 2{decimal}10"
    yield f"# {notes['prices'].format(pack=pack)}"
    if not answers.prices:
        yield "# prices:"
    for name in list(dict.fromkeys(names))[:_MOST_PRICES]:
        yield f"#   - {_said(name)}: ... for ..."


def _is_from_the_tap(item: str) -> bool:
    """Say whether something costs nothing: water, however it is told."""
    staple = find_staple(item)
    return staple is not None and staple.name in FREE


def _said(text: str) -> str:
    """Return words as they may stand in the file, in quotes where they must."""
    if text.isdecimal():
        return text
    inside = yaml.safe_dump([text], default_flow_style=True, allow_unicode=True, width=10_000)
    return inside.strip()[1:-1]


def _several(words: tuple[str, ...]) -> str:
    return ", ".join(_said(word) for word in words)


def _noted(line: str, note: str) -> str:
    return f"{line.ljust(34)}  # {note}" if note else line
