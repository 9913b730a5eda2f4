"""Where an amount could be put into a step: what of the list it names without saying how much.

What stands under the step's own heading goes before another's, and what a step names as a little,
or as the name of a vessel, is no line of the list. Leaves out how a step is read (reading_back.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final

from stillroom.core.amounts.quantities import Unmeasured, show_amount
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.recipe.method import find_ingredient
from stillroom.core.words.problems import Unreadable
from stillroom.desk.recipe_form import CLOSE, OPEN

MOST_OFFERS: Final = 12
_MOST_SOUGHT: Final = 120
"""Ingredients that are sought in a step, each beside all others: no recipe has as many."""
_BESIDE_WATER: Final = re.compile(
    r"\b(boiling|simmering|soapy|running|iced?|sink of|pan of)[\s-]+(?:hot\s+)?$", re.IGNORECASE
)
_BATH: Final = re.compile(r"[\s-]+(?:bath|canner|kettle)\b", re.IGNORECASE)
_A_LITTLE: Final = re.compile(
    r"\b(?:a (?:very )?(?:little|few|bit of|splash of|drop of|dash of|touch of|sprinkling of"
    r"|dusting of)|some|more|extra|any)(?: (?:more|extra|of the|cold|cool|warm|hot|boiled))*\s+$",
    re.IGNORECASE,
)
"""What stands before a food that is not the line of the list: "with a little water"."""
_FORMS: Final = frozenset(
    {"powder", "seed", "seeds", "stick", "sticks", "pod", "pods", "leaf", "leaves", "floret"}
    | {"florets", "granules", "flakes", "zest", "peel", "rind", "juice", "extract", "essence"}
    | {"oil", "vinegar", "sauce", "paste", "syrup", "water", "cream", "milk", "butter", "jam"}
)
"""Behind a food's name these make it another: "mustard seeds" are not the mustard powder."""
_SHORTENED: Final = frozenset({"powder", "stick", "sticks", "pod", "pods", "leaf", "leaves"})
"""Forms that a step leaves out: "the mustard" is "English mustard powder"."""
_OPENING: Final = re.compile(r"(?:for|to make) (?:the |your )?([^,:;.]{1,60})[,:;]", re.IGNORECASE)
_WORD: Final = re.compile(r"[^\W\d_]{3,}")
_ANOTHER_AMOUNT: Final = re.compile(r"[\d½¼¾⅓⅔⅛]\s?[^\W\d_]{0,12}\.?\s+(?:of\s+(?:the\s+)?)?$")
"""A part of what goes in, told where it goes in: "1 tsp of the salt" is not all of it."""
_EMPTY: Final = frozenset({"for", "the", "and", "make", "ones", "your"})


def find_offers(
    text: str, ingredients: Sequence[Ingredient], heading: str = ""
) -> Iterator[tuple[str, str]]:
    """Yield an amount's words and the step with it put in, for what the step names without one.

    `heading` is that under which the step stands; its own part of the list goes first.
    """
    ingredients = ingredients[:_MOST_SOUGHT]
    outside = re.sub(rf"{OPEN}[^{CLOSE}]*{CLOSE}|\{{[^}}]*\}}", lambda f: " " * len(f[0]), text)
    own = _own_places(text, ingredients, heading)
    if own and (opening := _OPENING.match(outside)):  # "For the brandy ones, …" puts nothing in
        outside = " " * opening.end() + outside[opening.end() :]
    named: dict[int, tuple[int, int]] = {}
    for place, one in enumerate(ingredients):
        is_told = isinstance(one.amount, Unmeasured) or f"{OPEN}{one.item}{CLOSE}" in text
        beside = [ingredients[at] for at in own] if place in own else ingredients
        if not is_told:
            at = _where(one, beside, outside)
            if at is not None:
                named[place] = at
    kept = {
        place: span
        for place, span in named.items()
        if _can_be_named(ingredients[place], place, ingredients)
        and not any(_covers(other, span) for other in named.values())
        and (place in own or not any(_meets(named[at], span) for at in named if at in own))
    }
    for place in sorted(kept, key=lambda place: (place not in own, place))[:MOST_OFFERS]:
        (start, end), one = kept[place], ingredients[place]
        amount = re.search(
            rf"{re.escape(show_amount(one.amount))}\s+(?:of\s+(?:the\s+)?)?$", text[:start]
        )
        if amount:  # "plus 2 tsp salt": the words that are there are the amount's
            start = amount.start()
        elif _ANOTHER_AMOUNT.search(text[:start]):
            continue
        line = f"{text[:start]}{OPEN}{one.item}{CLOSE}{text[end:]}"
        yield f"{show_amount(one.amount)} {one.item}", line


def _covers(other: tuple[int, int], span: tuple[int, int]) -> bool:
    """Whether another name holds this one: "boiling water" is not the water beside it."""
    return other[0] <= span[0] and span[1] <= other[1] and other != span


def _meets(other: tuple[int, int], span: tuple[int, int]) -> bool:
    return other[0] < span[1] and span[0] < other[1]


def _can_be_named(one: Ingredient, place: int, ingredients: Sequence[Ingredient]) -> bool:
    """Whether its name between marks means this line, and not another of the same name."""
    try:
        return find_ingredient(one.item, ingredients) == place
    except Unreadable:
        return False


def _own_places(text: str, ingredients: Sequence[Ingredient], heading: str) -> frozenset[int]:
    """Return the lines of the part of the list that a step's heading, or its opening, names."""
    opening = _OPENING.match(text)
    for said in (opening[1] if opening else "", heading):
        wanted = _stems(said)
        found = frozenset(
            place for place, one in enumerate(ingredients) if wanted & _stems(one.group)
        )
        if found:
            return found
    return frozenset()


def _stems(words: str) -> set[str]:
    found = {word.removesuffix("s") for word in _WORD.findall(words.lower())}
    return found - {word.removesuffix("s") for word in _EMPTY}


def _where(one: Ingredient, beside: Sequence[Ingredient], outside: str) -> tuple[int, int] | None:
    """Return where a step names an ingredient: by its whole name, or a word of its own of it."""
    for name in _names(one.item):
        is_part = name != one.item
        shared = [other for other in beside if re.search(rf"\b{re.escape(name)}\b", other.item)]
        if is_part and len(shared) > 1:
            continue
        for found in re.finditer(rf"(?<![\w-]){re.escape(name)}(?![\w-])", outside, re.IGNORECASE):
            behind = _WORD.match(outside[found.end() :].lstrip())
            is_other = behind is not None and behind[0].lower() in _FORMS
            little = _A_LITTLE.search(outside[: found.start()])
            said = f"{one.item} {one.note}"
            if not (is_other or little or _is_for_the_pan(found, outside, said)):
                return found.span()
    return None


def _names(item: str) -> Iterator[str]:
    """Yield by what a step may call a food: its name, the last word of it, what it is a form of.

    >>> list(_names("English mustard powder")), list(_names("plain flour"))
    (['English mustard powder', 'powder', 'mustard'], ['plain flour', 'flour'])
    """
    words = item.split()
    yield item
    if len(words) > 1 and len(words[-1]) > 2:
        yield words[-1]
    if len(words) > 1 and words[-1].lower() in _SHORTENED:
        yield words[-2]


def _is_for_the_pan(found: re.Match[str], text: str, said: str) -> bool:
    """Whether water is named that stands round a jar or a bowl and goes into nothing."""
    if found[0].lower() != "water":
        return False
    before = _BESIDE_WATER.search(text[: found.start()])
    if before and before[1].lower() not in said.lower():
        return True
    return bool(_BATH.match(text[found.end() :]))
