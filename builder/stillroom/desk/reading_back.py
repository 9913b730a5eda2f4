"""How each line of what goes in was read, and each step; what is doubtful is asked, with answers.

An answer is a whole line that reads. None is offered that says more than the line did: what a cook
meant is hers to say.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final

from stillroom.bringing.doubted import quoted
from stillroom.core.amounts.quantities import Amount, Unmeasured, show_amount
from stillroom.core.amounts.units import System
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of, name_of
from stillroom.core.method.spoken import spoken_in
from stillroom.core.recipe.method import split_step
from stillroom.core.words.joining import join_and
from stillroom.core.words.plurals import plural
from stillroom.core.words.problems import Unreadable
from stillroom.desk.amount_offers import find_offers
from stillroom.desk.boxes import Line, box_lines, bullet_off, step_lines
from stillroom.desk.looking import plainly
from stillroom.desk.recipe_form import CLOSE, MORE, OPEN, braced
from stillroom.desk.recipe_rows import Row

_QUOTED: Final = re.compile(r'"([^"]+)"')
_WORD: Final = re.compile(r"[^\W\d_]+")
_FIGURE: Final = re.compile(r"\d")


@dataclass(frozen=True)
class Answer:
    """What may be pressed: its words, and the line that it puts in place of the one asked about."""

    words: str
    line: str


@dataclass(frozen=True)
class ReadBack:
    """How one line was read: "known", "unknown", "asked", "heading" or "step".

    `first` and `last` are a step's lines in its box; `named` is how a question names it that asks
    whether it is one; `known_as` is what the book calls the food
    where the line calls it otherwise.
    """

    row: int
    state: str
    amount: str = ""
    food: str = ""
    note: str = ""
    question: str = ""
    answers: tuple[Answer, ...] = ()
    said: str = ""
    first: int = 0
    last: int = 0
    known_as: str = ""
    named: str = ""


@dataclass(frozen=True)
class Ways:
    """How a book reads: its measures, its language, its foods."""

    system: System
    language: str
    larder: Larder

    def spoken(self, method: str, listed: str) -> Ways:
        """Return how it reads a recipe of this method and list: foods in the recipe's language."""
        return replace(self, larder=spoken_in(method, listed.splitlines(), self.larder))


def read_box(text: str, rows: Sequence[Row], ways: Ways) -> list[ReadBack]:
    """Read each line of the box of what goes in; `rows` are those that the file says more of."""
    more = {
        _bare(one): row.value
        for row in rows
        if isinstance(row.value, dict) and (one := _shown(row))
    }
    found = []
    for place, line in _placed(text):
        if line.is_heading:
            found.append(ReadBack(place, "heading", said=line.text))
        else:
            found.append(_read_line(place, line.text, more.get(_bare(line.text)), ways))
    return found


def _shown(row: Row) -> str:
    from stillroom.desk.recipe_form import shown

    return shown(row.value)


def _bare(text: str) -> str:
    return text.removesuffix(MORE.strip()).strip()


def _placed(text: str) -> Iterator[tuple[int, Line]]:
    """Yield each line of a box that says something, and which line it is."""
    for place, raw in enumerate(text.replace("\r\n", "\n").split("\n")):
        lines = box_lines(raw)
        if lines:
            yield place, lines[0]


def _read_line(place: int, text: str, written: object, ways: Ways) -> ReadBack:
    try:
        one = _read(written if written is not None else _bare(text), ways)
    except Unreadable as wrong:
        answers = tuple(_answers(_bare(text), wrong, ways))
        return ReadBack(
            place,
            "asked",
            said=text,
            question=f"{plainly(wrong.what)} {plainly(wrong.mend)}".strip(),
            answers=answers,
        )
    reading = food_of(one)
    amount = one.amount.words if isinstance(one.amount, Unmeasured) else show_amount(one.amount)
    name = name_of(one)
    if reading.known or one.parts:
        foods = [food.name for food in reading.foods] if reading.known else []
        known_as = join_and(_not_said(foods, f"{name}, {one.note}"))
        return ReadBack(place, "known", amount, name, one.note, known_as=known_as)
    # the food is known and what is said of it is not: "lemon, its juice"
    whole = f"{name}, {one.note}" if one.note and name in reading.nearest else name
    question = (
        f'"{whole}" is not a food that this book knows: its allergens and dangers '
        "cannot be checked, and the page says so."
    )
    counted = isinstance(one.amount, Amount) and not one.amount.unit and one.amount.high > 1
    answers = tuple(
        Answer(near, text.replace(one.item, plural(near) if counted else near, 1))
        for near in reading.nearest
        if one.item in text and near not in (one.item, name)
    )
    return ReadBack(place, "unknown", amount, name, one.note, question, answers)


def _not_said(foods: Sequence[str], words: str) -> list[str]:
    """Return the foods where a line does not name one of them itself: "cotton" for muslin."""
    said = set(normal_form(words).split())
    return [] if all(set(normal_form(food).split()) <= said for food in foods) else list(foods)


def _read(value: object, ways: Ways) -> Ingredient:
    if isinstance(value, str):
        return _read_words(value, ways.system, ways.language, ways.larder)
    return find_foods(read_ingredient(value, ways.system, ways.language), ways.larder, ways.system)


@lru_cache(maxsize=4096)  # with each letter that is typed all other lines are read again
def _read_words(text: str, system: System, language: str, larder: Larder) -> Ingredient:
    return find_foods(read_ingredient(text, system, language), larder, system)


def _answers(text: str, wrong: Unreadable, ways: Ways) -> Iterator[Answer]:
    """Yield the lines that a message proposes: those that keep every word of the line, and read."""
    own = _words(text)
    about = [quote for quote in _QUOTED.findall(plainly(wrong.what)) if quote in text]
    for offer in dict.fromkeys(_QUOTED.findall(plainly(wrong.mend))):
        lines = [offer, *(text.replace(quote, offer, 1) for quote in about)]
        for line in lines:
            words = _words(line)
            ratio = _RATIO_WORDS if " per " in line else frozenset[str]()
            kept = own - ratio <= words and words - own <= _MEASURES | ratio
            fits = kept and _FIGURE.search(line)
            if fits and line != text and _reads(line, ways):
                yield Answer(line, line)
                break


def _words(text: str) -> set[str]:
    return {word.lower() for word in _WORD.findall(text)}


def _reads(line: str, ways: Ways) -> bool:
    try:
        _read(line, ways)
    except Unreadable:
        return False
    return True


_MEASURES: Final = frozenset(
    {"vol", "g", "kg", "ml", "l", "oz", "lb", "tbsp", "tsp", "each", "about", "plus", "fluid", "x"}
)
"""What an answer may say more than the line: a measure, never a food."""
_RATIO_WORDS: Final = frozenset({"to", "for", "each", "every", "per", "of"})
"""What says that an amount is one to another, in the line and in the book's own way."""


def read_steps_box(
    text: str, ingredients: Sequence[Ingredient], ways: Ways, doubted: Collection[str] = ()
) -> list[ReadBack]:
    """Read each step: its words with the amounts in them, and where an amount could be put.

    `doubted` are lines of which it is asked whether they are steps, as that question names them.
    """
    found = []
    number = 0
    heading = ""
    rows, lines = text.replace("\r\n", "\n").split("\n"), step_lines(text)
    for line in lines:
        if line.is_heading:
            heading = line.text
            found.append(ReadBack(-1, "heading", said=line.text))
            continue
        number += 1
        first, last = line.at
        step = _read_step(number, line.text, heading, ingredients, ways)
        beside = [one for one in lines if one.at == line.at]
        named = quoted(line.text) if len(beside) == 1 else ""
        named = named if named in doubted else ""
        answers = tuple(
            replace(answer, line=_row_of(answer.line, line, beside, rows[first]))
            for answer in step.answers
        )
        found.append(replace(step, first=first, last=last, named=named, answers=answers))
    return found


def _row_of(words: str, step: Line, beside: Sequence[Line], row: str) -> str:
    """Return what stands in a step's row of the box once it says `words`.

    Its bullet stays, and so do the other steps of the same row, each on a row of its own.
    """
    bare = " ".join(row.split())
    bullet = bare.removesuffix(bullet_off(bare)) if len(beside) == 1 else ""
    said = [words if one is step else one.text for one in beside]
    return "\n".join(
        f"{bullet or f'{place}. ' * (len(said) > 1)}{one}" for place, one in enumerate(said, 1)
    )


def _read_step(
    number: int, text: str, heading: str, ingredients: Sequence[Ingredient], ways: Ways
) -> ReadBack:
    offers = tuple(Answer(words, line) for words, line in find_offers(text, ingredients, heading))
    try:
        segments = split_step(braced(text), ingredients, ways.system, ways.language)
    except Unreadable as wrong:
        question = f"{plainly(wrong.what)} {plainly(wrong.mend)}".strip()
        bare = text.replace(OPEN, "").replace(CLOSE, "").replace("{", "").replace("}", "")
        answers = (Answer("no amount here", bare), *offers)
        return ReadBack(number, "asked", said=text, question=question, answers=answers)
    said = []
    for segment in segments:
        if segment.ingredient is None:
            said.append(segment.text)
        else:
            one = ingredients[segment.ingredient]
            amount = segment.part or one.amount
            words = "" if isinstance(amount, Unmeasured) else show_amount(amount)
            said.append(f"{words} {segment.text}".strip())
    return ReadBack(number, "step", said="".join(said), answers=offers)


def readable(text: str, rows: Sequence[Row], ways: Ways) -> list[Ingredient]:
    """Return the ingredients of a box that do read."""
    more = {_bare(_shown(row)): row.value for row in rows if isinstance(row.value, dict)}
    found, group = [], ""
    for line in box_lines(text):
        if line.is_heading:
            group = line.text
            continue
        try:
            one = _read(more.get(_bare(line.text), _bare(line.text)), ways)
        except Unreadable:
            continue
        found.append(replace(one, group=group if line.depth else ""))
    return found


def all_asked(read: Sequence[ReadBack]) -> int:
    """Return how many lines are asked about."""
    return sum(one.state == "asked" for one in read)
