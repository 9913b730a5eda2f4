"""The questions for a first giving list, one after another; what cannot be read is asked again.

Who asks is an argument: a function that is told the question and what is usual, and returns what is
typed; and one that tells what was wrong. So the terminal asks, and tests do.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import partial
from typing import Protocol, TypeVar

from stillroom.core.book import BookSettings
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.day_words import say_day
from stillroom.core.words.joining import join_and
from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.model import SORTS, Sort
from stillroom.giving.offering import sort_of
from stillroom.giving.starter.answers import (
    USUAL,
    ListAnswers,
    Needs,
    Receiver,
    read_ages,
    read_animals,
    read_budget,
    read_count,
    read_giving_day,
    read_month_hours,
    read_needs,
    read_recipes,
    read_yes,
)
from stillroom.giving.starter.wishes import read_likes, read_prices
from stillroom.giving.starter.words import starter_words

_Read = TypeVar("_Read")


class Ask(Protocol):
    """Whoever asks: is told the question and what an empty answer means, returns what is typed."""

    def __call__(self, question: str, usual: str) -> str:
        """Return the answer as it was typed, the usual one for an empty line."""


@dataclass(frozen=True)
class Asker:
    """Who asks, who tells what was wrong, and the words of the book's language."""

    ask: Ask
    tell: Callable[[str], None]
    words: Mapping[str, str]

    def until_read(
        self, question: str, read: Callable[[str], _Read], usual: str = "", **blanks: object
    ) -> _Read:
        """Ask until the answer can be read, and say each time what to write instead."""
        while True:
            said = self.ask(self.words[question].format(**blanks), usual)
            try:
                return read(" ".join(said.split()))
            except Unreadable as wrong:
                self.tell(f"{wrong.what} {wrong.mend}".strip())


def ask_for_list(
    ask: Ask,
    tell: Callable[[str], None],
    recipes: tuple[Recipe, ...],
    settings: BookSettings,
    today: date,
    keeper: str = "",
) -> ListAnswers:
    """Ask for all that a first list wants; `recipes` are the book's."""
    asker = Asker(ask, tell, starter_words(settings.language)["questions"])
    day, title = _day(asker, settings, today)
    receivers = _receivers(asker)
    tell(asker.words["recipes there"].format(titles=join_and([one.title for one in recipes])))
    chosen = asker.until_read(
        "recipes", partial(_some, read=lambda text: read_recipes(text, recipes)), asker.words["all"]
    )
    room = _room(asker, tuple(one for one in recipes if one.slug in chosen))
    money = partial(read_budget, currency=settings.currency, language=settings.language)
    made = {one.slug: one for one in recipes if one.slug in chosen}
    likes = partial(read_likes, names=[one.name for one in receivers], recipes=made)
    costs = partial(
        read_prices,
        currency=settings.currency,
        language=settings.language,
        system="us" if settings.units == "us" else "metric",
    )
    return ListAnswers(
        title=title,
        day=day,
        keeper=keeper,
        recipes=chosen,
        room=room,
        receivers=receivers,
        hours=asker.until_read("hours", read_month_hours),
        budget=asker.until_read("budget", money, currency=settings.currency),
        likes=asker.until_read("likes", likes),
        prices=asker.until_read("prices", costs),
    )


def usual_day(settings: BookSettings, today: date) -> tuple[date, str]:
    """Return the next giving day of the book, and what its list is called."""
    days = [(find_day(one.day, today, settings.country), one.name) for one in settings.giving_days]
    day, name = min(days)
    return day, f"{name} {day.year}"


def _day(asker: Asker, settings: BookSettings, today: date) -> tuple[date, str]:
    usual, title = usual_day(settings, today)
    read = partial(read_giving_day, today=today, country=settings.country, own=settings.own_days)
    day = asker.until_read("day", read, usual.isoformat())
    return day, title if day == usual else say_day(day)


def _some(text: str, read: Callable[[str], tuple[str, ...]]) -> tuple[str, ...]:
    found = read(text)
    if not found:
        raise Unreadable(f"{say_written(text)} names no recipe.", 'Write "all", or their names.')
    return found


def _room(asker: Asker, recipes: tuple[Recipe, ...]) -> dict[Sort, int]:
    """Ask how much of each sort a basket holds; a sort that the book has not is not asked for."""
    there = {sort: sum(sort_of(one) == sort for one in recipes) for sort in SORTS}
    while True:
        room = {
            sort: asker.until_read(
                f"room {sort}",
                partial(read_count, most=there[sort]),
                str(min(USUAL[sort], there[sort])),
                there=there[sort],
            )
            for sort in SORTS
            if there[sort]
        }
        if any(room.values()):
            return room
        asker.tell(asker.words["room nothing"])


def _receivers(asker: Asker) -> tuple[Receiver, ...]:
    found: list[Receiver] = []
    while True:
        taken = {one.name.casefold() for one in found}
        name = asker.until_read(
            "next" if found else "first", partial(_name, taken=taken, needed=not found)
        )
        if not name:
            return tuple(found)
        found.append(_receiver(asker, name))


def _receiver(asker: Asker, name: str) -> Receiver:
    adults = asker.until_read("adults", read_count, "1", name=name)
    children = asker.until_read("children", partial(_ages, adults=adults), name=name)
    needs: Needs = asker.until_read("needs", read_needs, name=name)
    pets = asker.until_read("pets", read_animals, name=name)
    by_post = asker.until_read("post", read_yes, asker.words["no"], name=name)
    return Receiver(name, adults, children, needs, by_post, pets)


def _name(text: str, taken: set[str], needed: bool) -> str:
    if not text and needed:
        raise Unreadable("A list wants somebody on it.", 'Write who: "Grandmother", "The Rowans".')
    if text.casefold() in taken:
        raise Unreadable(f"{say_written(text)} is there already.", "Write another name.")
    return text


def _ages(text: str, adults: int) -> tuple[str, ...]:
    ages = read_ages(text)
    if not ages and not adults:
        raise Unreadable("Then nobody lives there.", 'Write the ages of the children: "8, 11".')
    return ages
