"""The method of a recipe: numbered steps, and the {braces} in which amounts stand.

`{vodka}` is that ingredient's scaled amount and name; `{100 g sugar}` a scaled part of it.
Leaves out the scaling itself: scaling.py fills the segments.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from stillroom.core.parts import Ingredient
from stillroom.core.problems import Unreadable, did_you_mean
from stillroom.core.quantities import Amount, parse_leading_amount
from stillroom.core.recipe import MethodStep
from stillroom.core.units import System, size_of

_BRACES = re.compile(r"\{([^{}]*)\}")
_NUMBERED = re.compile(r"^(\d+)[.)]\s+(.*)$")


@dataclass(frozen=True)
class Segment:
    """A run of a step: plain words, or an ingredient with its whole or a part of its amount."""

    text: str
    ingredient: int | None = None
    part: Amount | None = None


def read_steps(lines: Sequence[str], first_line: int) -> tuple[MethodStep, ...]:
    """Read the numbered steps under "## Method"; `first_line` is the file line of lines[0].

    Words before the first number, or no number at all, raise Unreadable.
    """
    steps: list[MethodStep] = []
    group = ""
    for offset, line in enumerate(lines):
        bare = line.strip()
        found = _NUMBERED.match(bare)
        if bare.startswith("### "):
            group = bare[4:].strip()
        elif found:
            steps.append(MethodStep(found[2], group, first_line + offset))
        elif bare and steps:
            last = steps[-1]
            steps[-1] = MethodStep(f"{last.text} {bare}", last.group, last.line)
        elif bare:
            raise Unreadable("The method does not begin with a number.", 'Write "1. Wash the jar."')
    if not steps:
        raise Unreadable("The method has no steps.", 'Write "1. Wash the jar." and so on.')
    return tuple(steps)


def find_ingredient(words: str, ingredients: Sequence[Ingredient]) -> int:
    """Return the place of the ingredient meant by `words`; raises Unreadable.

    Its whole name wins over words that only stand in it: of "honey" and "honey vinegar",
    "honey" is the first. Words that fit two ingredients are refused.
    """
    wanted = words.strip().lower()
    names = [ingredient.item.lower() for ingredient in ingredients]
    if wanted in names:
        return names.index(wanted)
    whole = re.compile(rf"\b{re.escape(wanted)}(?:e?s)?\b")
    fits = [place for place, name in enumerate(names) if wanted and whole.search(name)]
    if len(fits) == 1:
        return fits[0]
    if fits:
        both = " and ".join(f'"{ingredients[place].item}"' for place in fits)
        raise Unreadable(f'"{{{words}}}" fits {both}.', "Write the whole name.")
    raise Unreadable(f'"{{{words}}}" is not an ingredient.', did_you_mean(words, names))


def split_step(text: str, ingredients: Sequence[Ingredient], system: System) -> tuple[Segment, ...]:
    """Split a step at its braces; raises Unreadable for a name or a part that does not fit."""
    segments = []
    end = 0
    for found in _BRACES.finditer(text):
        if found.start() > end:
            segments.append(Segment(text[end : found.start()]))
        segments.append(_read_brace(found[1], ingredients, system))
        end = found.end()
    rest = text[end:]
    if "{" in rest or "}" in rest:
        raise Unreadable("A brace is not closed.", 'Write "{sugar}" or "{100 g sugar}".')
    if rest:
        segments.append(Segment(rest))
    return tuple(segments)


def _read_brace(words: str, ingredients: Sequence[Ingredient], system: System) -> Segment:
    names = [ingredient.item.lower() for ingredient in ingredients]
    part, name = parse_leading_amount(words, system)
    if part is None or words.strip().lower() in names:
        place = find_ingredient(words, ingredients)
        return Segment(ingredients[place].item, place)
    place = find_ingredient(re.sub(r"^of\s+", "", name), ingredients)
    whole = ingredients[place].amount
    if isinstance(whole, Amount) and size_of(whole.unit) != size_of(part.unit):
        raise Unreadable(
            f'"{{{words}}}" is not measured as "{ingredients[place].item}" is.',
            "Write the part in the ingredient's own sort of unit.",
        )
    return Segment(name, place, part)
