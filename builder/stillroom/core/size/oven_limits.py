"""Whether an oven is as hot as ovens get: "9999 °C" is a slip, "350 °C" is °F most often.

Told as a problem, since a page would print it in three scales. Leaves out how hot a dish gets
inside, what is boiled in a pan, and a kiln.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import (
    IN_AN_OVEN,
    SENTENCES,
    UNTIL_ITSELF,
    Heat,
    read_heats,
    with_scale,
)
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem

# A dial of a kitchen's oven ends at 250 to 300 °C and begins, where dough is proved in it, at 30; a
# stone oven for pizza reaches 500. Common practice, no published source.
_COOLEST_C: Final = 30
_HOTTEST_C: Final = 320
_HOTTEST_STONE_C: Final = 500
_DIAL_ENDS_F: Final = 600
_HIGHEST_MARK: Final = 10
_STONE: Final = late_regex(
    r"pizz|flammkuchen|tandoor|\b(?:wood|stone|clay|brick|charcoal|kamado|bbq|barbecue|smoker|holzofen|steinofen)",
    re.IGNORECASE,
)
_NO_OVEN: Final = late_regex(
    r"\b(?:kiln|torch|furnace|enamel\w*|glaz\w*|glass|clay|fire[sd]?|firing|pyroly\w*)\b",
    re.IGNORECASE,
)
# "bake at 5 °C", "heat the oven to 3 °C"; dough is proved and fruit dried in one hardly warm
_SET_COOL: Final = late_regex(
    r"\b(?:(?:bak(?:e|ed|ing)|roast(?:ed|ing)?)(?: [a-z]+){0,3} at"
    r"|heat(?:ed)? (?:the|an|your) oven to"
    r"|oven (?:set )?(?:at|to)) (?=[-−]?\d)",
    re.IGNORECASE,
)
_NOT_TO_BAKE: Final = late_regex(
    r"\b(?:prov\w+|proof\w*|ris(?:e|es|en|ing)|dr(?:y|ied|ying)|ferment\w*|incubat\w*|yogh?urt|warm\w*|cool\w*)\b",
    re.IGNORECASE,
)
_BELOW: Final = late_regex(r"(?:^|(?<=\s))[-−]\s?\d")
_MARK: Final = late_regex(
    r"\b(?:gas|regulo)(?: ?mark| ?no\.?)?:? ?(?P<mark>\d{2,6})(?![\d°º]| ?°)", re.IGNORECASE
)


def check_ovens(recipe: Recipe) -> Iterator[Problem]:
    """Find an oven, among the facts or in the method, that is hotter or cooler than any is."""
    if recipe.oven:
        text = with_scale(recipe)
        hottest = _hottest(f"{recipe.title} {text}")
        wrong = _outside(read_heats(text), _COOLEST_C, hottest) or _odd_mark(text)
        wrong = wrong or (recipe.oven if _BELOW.match(recipe.oven) else "")
        if wrong:
            yield _problem(recipe, recipe.line_of("oven"), wrong, hottest)
    for step in recipe.method:
        if not IN_AN_OVEN.search(step.text):
            continue
        hottest = _hottest(f"{recipe.title} {step.text}")
        for sentence in SENTENCES.split(step.text):
            if _NO_OVEN.search(sentence):
                continue
            told = UNTIL_ITSELF.split(sentence, maxsplit=1)[0]
            wrong = _outside(read_heats(told), None, hottest) or _odd_mark(told)
            wrong = wrong or _too_cool(told)
            if wrong:
                yield _problem(recipe, step.line or recipe.line_of("method"), wrong, hottest)
                break


def _hottest(text: str) -> int:
    return _HOTTEST_STONE_C if _STONE.search(text) else _HOTTEST_C


def _too_cool(sentence: str) -> str:
    found = _SET_COOL.search(sentence)
    if not found or _NOT_TO_BAKE.search(sentence):
        return ""
    rest = sentence[found.end() :]
    if rest[:1] in "-−":
        return f"-{_shown(heats[0])}" if (heats := read_heats(rest[1:])) else ""
    return _outside(read_heats(rest)[:1], _COOLEST_C, _HOTTEST_STONE_C)


def _outside(heats: tuple[Heat, ...], coolest: int | None, hottest: int) -> str:
    for heat in heats:
        if heat.high > hottest or (coolest is not None and heat.low < coolest):
            return _shown(heat)
    return ""


def _shown(heat: Heat) -> str:
    ends = dict.fromkeys((heat.low, heat.high))
    if heat.written_f:
        return "-".join(show_decimal(end * Fraction(9, 5) + 32, 1) for end in ends) + " °F"
    return "-".join(show_decimal(end, 1) for end in ends) + " °C"


def _odd_mark(text: str) -> str:
    found = _MARK.search(text)
    return found[0] if found and int(found["mark"]) > _HIGHEST_MARK else ""


def _problem(recipe: Recipe, line: int, said: str, hottest: int) -> Problem:
    what = f'"{said}" is no heat of an oven.'
    degrees = said.removesuffix(" °C")
    meant = degrees if degrees.isdigit() and _HOTTEST_C < int(degrees) <= _DIAL_ENDS_F else ""
    mend = (
        f'Write "{meant} F" if that is meant' if meant else 'Write "180 C", "350 F" or "gas mark 4"'
    )
    return Problem(recipe.file, line, what, f"{mend}; an oven has {_COOLEST_C} to {hottest} °C.")
