"""What batches take of a week's and a day's hours, and of the pans and jars there are.

A vessel is taken from the day a batch is begun in it until it is filled. What a list does not say
is not taken for plenty: of a vessel that it does not name, while it names others, there is one.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction

from stillroom.core.larder.words import normal_form
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.timeline import Timeline, plan_forward
from stillroom.core.words.day_words import say_day
from stillroom.giving.model import GivingList
from stillroom.giving.plan_model import Brew, Limit
from stillroom.giving.starting import minutes_by_day

_Takes = dict[str, Fraction]
_SMALL_WORDS = frozenset(
    {"a", "an", "one", "two", "of", "the", "with", "or", "our", "big", "large"}
)
_PARTS = {"½": ".5", "¼": ".25", "¾": ".75"}
_UNITS = {
    **dict.fromkeys(("l", "litre", "litres", "liter", "liters", "ltr"), "l"),
    **dict.fromkeys(("ml", "millilitre", "millilitres"), "ml"),
    **dict.fromkeys(("cm", "centimetre", "centimetres"), "cm"),
    **dict.fromkeys(("qt", "quart", "quarts"), "qt"),
    **dict.fromkeys(("pt", "pint", "pints"), "pt"),
    **dict.fromkeys(("gal", "gallon", "gallons"), "gal"),
    **dict.fromkeys(("kg", "kilo", "kilos"), "kg"),
}
_SIZE = re.compile(rf"(\d*\.?\d+)[\s-]*({'|'.join(sorted(_UNITS, key=len, reverse=True))})\b")


def with_limits(
    giving: GivingList, brews: Sequence[Brew], recipes: Mapping[str, Recipe]
) -> tuple[tuple[Brew, ...], tuple[Limit, ...]]:
    """Return the brews with what each start takes, and the limits of it; pure.

    A start that alone takes more than there is, is left out.
    """
    limits: dict[str, Limit] = {}
    begun = {
        (brew.recipe, place): plan_forward(recipes[brew.recipe], one.start, one.due)
        for brew in brews
        for place, one in enumerate(brew.choices)
    }
    taken: dict[tuple[str, int], _Takes] = defaultdict(dict)
    for key, timeline in begun.items():
        taken[key] |= _hours(giving, timeline, limits)
    _vessels(giving, brews, recipes, begun, taken, limits)
    changed = []
    for brew in brews:
        rows = [(one, taken[brew.recipe, place]) for place, one in enumerate(brew.choices)]
        fits = [
            replace(one, takes=takes)
            for one, takes in rows
            if all(amount <= limits[key].most for key, amount in takes.items())
        ]
        none_fits = "" if fits or not rows else _why_none(brew.title, rows[0][1], limits)
        changed.append(
            replace(brew, choices=tuple(fits), too_late=none_fits or brew.too_late),
        )
    return tuple(changed), tuple(limits.values())


def _why_none(title: str, takes: _Takes, limits: Mapping[str, Limit]) -> str:
    """Return why no day can be used for a recipe, by what its latest start would take."""
    words = next(limits[key].words for key, amount in takes.items() if amount > limits[key].most)
    return f"no day will do for {title}: for one, {words}."


def _hours(giving: GivingList, timeline: Timeline, limits: dict[str, Limit]) -> _Takes:
    """Return the hours of each week and day, where a list limits them."""
    takes: _Takes = defaultdict(Fraction)
    for day, minutes in minutes_by_day(timeline).items():
        if not minutes:
            continue
        hours = Fraction(minutes, 60)
        if giving.hours_a_day:
            key, most = f"day {day}", giving.hours_a_day[day.weekday()]
            name = f"on {say_day(day)}"
            limits[key] = Limit(
                key, most, f"{_some_hours(most)} {name}", f"Give {{n}} hour{{s}} more {name}."
            )
            takes[key] += hours
        if giving.hours_a_week is not None:
            monday = day - timedelta(days=day.weekday())
            key, most, name = (
                f"week {monday}",
                giving.hours_a_week,
                f"in the week of {say_day(monday)}",
            )
            limits[key] = Limit(
                key, most, f"{_some_hours(most)} {name}", f"Give {{n}} hour{{s}} more {name}."
            )
            takes[key] += hours
    return takes


def _some_hours(hours: Fraction) -> str:
    said = str(hours.numerator) if hours.denominator == 1 else f"{float(hours):g}"
    return f"there {'is' if hours == 1 else 'are'} {said} hour{'' if hours == 1 else 's'}"


def _vessels(
    giving: GivingList,
    brews: Sequence[Brew],
    recipes: Mapping[str, Recipe],
    begun: Mapping[tuple[str, int], Timeline],
    taken: dict[tuple[str, int], _Takes],
    limits: dict[str, Limit],
) -> None:
    """Let no more stand in the vessels of one sort at a time than there are."""
    there = giving.stock.vessels
    if not there:
        return
    at_once = _at_a_time(giving)
    standing: dict[str, list[tuple[tuple[str, int], date, date, Fraction]]] = defaultdict(list)
    for (slug, place), timeline in begun.items():
        for words in _vessels_of(recipes[slug]):
            name = _named(words, there)
            first, last = timeline.start, max(timeline.start, timeline.made)
            # a pan that is free again the same day may take several times the recipe in one go
            each = Fraction(1, at_once.get(slug, 1)) if last == first else Fraction(1)
            standing[name].append(((slug, place), first, last, each))
    for name, rows in standing.items():
        most = Fraction(there.get(name, 1))
        count = f"there is one {name}" if most == 1 else f"there are {most} of “{name}”"
        unsaid = "" if name in there else ", since the list names no other"
        for day in sorted({first for _, first, _, _ in rows}):
            key = f"{name} {day}"
            words = f"{count}{unsaid}, and it is taken on {say_day(day)}"
            limits[key] = Limit(key, most, words, f"Have {{n}} more of “{name}”.")
            for begun_at, first, last, each in rows:
                if first <= day <= last:
                    taken[begun_at][key] = each


def _at_a_time(giving: GivingList) -> dict[str, int]:
    return {make.recipe: make.at_a_time for make in giving.makes if make.at_a_time}


def _vessels_of(recipe: Recipe) -> list[str]:
    words = [vessel.words for vessel in recipe.vessels]
    return [*words, "oven"] if recipe.oven or recipe.kind.name == "bake" else words


def _named(words: str, there: Mapping[str, int]) -> str:
    """Return the name under which the list has a vessel, or the recipe's own words for it.

    "2 l clip-top jar" is the list's "clip-top jar, 2 l"; a jar of another size is another one.
    """
    own = _plain(words)
    same = [name for name in there if _plain(name) == own]
    within = [name for name in there if _plain(name) and _plain(name) <= own]
    nearest = sorted(within, key=lambda name: -len(_plain(name)))
    # "our old brass preserving pan, 5 litres" is what the recipe calls a 5 l preserving pan
    round_it = [name for name in there if own and own <= _plain(name)]
    return (same or nearest or round_it or [words])[0]


def _plain(words: str) -> frozenset[str]:
    """Return the words of a vessel, its size as one word: "1.5 litres" is "1.5l"."""
    sized = words.lower().replace(",", " ")
    for part, decimal in _PARTS.items():
        sized = sized.replace(part, decimal)
    sized = _SIZE.sub(lambda found: f"{found[1]}{_UNITS[found[2]]} ", sized)
    return frozenset(normal_form(sized).split()) - _SMALL_WORDS


def pans_not_known(giving: GivingList, recipe: Recipe, count: int) -> str:
    """Say that several are wanted of a vessel whose number the list does not give; "" otherwise."""
    if giving.stock.vessels or count <= 1 or recipe.vessel is None:
        return ""
    fits = _at_a_time(giving).get(recipe.slug, 1)
    goes = -(-count // fits)
    if goes <= 1:
        return ""
    return (
        f"It is made in “{recipe.vessel.words}”: {count} times the recipe takes {goes} goes, or as "
        "many vessels. How many you have is not known."
    )
