"""The method of a recipe: its steps, and the {braces} in which amounts stand.

`{vodka}` is that ingredient's scaled amount and name; `{100 g sugar}` a scaled part of it.
Leaves out the scaling itself: scaling.py fills the segments.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from stillroom.core.amounts.quantities import Amount, Ratio, show_amount
from stillroom.core.amounts.units import System, size_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.sizes import has_figure, read_leading
from stillroom.core.recipe.model import MethodStep
from stillroom.core.words.joining import join_and
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_BRACES = late_regex(r"\{([^{}]*)\}")
# "1." "1)" "1 -" "(1)" "Step 1:" "**1.**": a number, a sign, and then words
_NUMBERED = late_regex(
    r"\(?\**\(?(?:step\s+\d{1,3}\s*[.):–—-]?|\d{1,3}\s*(?:[.):]|[–—-](?=\s+[^\W\d])))\**"
    r"(?=\D|$)\s*(?P<words>.*)$",
    re.IGNORECASE,
)
_PART_ALONE = late_regex(r"(?P<part>juice|zest|peel|rind) only")
_RUN_ON = late_regex(r"(?P<number>\d{1,2})[.)]\s+[^\W\d]")
_LETTERED = late_regex(r"\(?(?P<letter>[a-z])[.)]\s+(?P<words>\S.*)$", re.IGNORECASE)
# "Procedure: Wash the fruit.", below a heading of its own
_LABEL = late_regex(
    r"^\s*(?:procedure|method|directions|instructions|preparation):\s+(?=[A-Z])", re.IGNORECASE
)
_SENTENCE_ENDS = late_regex(r"[.!?…][\"”’')]*$")
_CIRCLED = late_regex(r"[\u2460-\u2473\u2776-\u2793]\s*(?P<words>.*)$")
_BULLET = late_regex(r"(?:[-*+–—]\s+|[•·‣▪]\s*)(?:\[[ xX]?\]\s*)?(?=\S)")
_GROUP = late_regex(r"(?:#{1,6}\s*(?P<heading>.+?)\s*#*|\*\*(?P<bold>[^*]+?):?\*\*:?)$")
_RULE = late_regex(r"(?:[-*_]\s*){3,}$")

_ONE_MISSING = (
    'A "{" and a "}" belong together, and one of them is missing.',
    'Write "{sugar}" or "{100 g sugar}".',
)


@dataclass(frozen=True)
class Segment:
    """A run of a step: plain words, or an ingredient with its whole or a part of its amount."""

    text: str
    ingredient: int | None = None
    part: Amount | None = None


def has_numbers(lines: Sequence[str]) -> bool:
    """Whether one of the lines begins with the number of a step.

    >>> has_numbers(["Worth it.", "Step 1: Wash the jar."]), has_numbers(["1.5 l will do."])
    (True, False)
    """
    return any(_step_words(line.strip()) is not None for line in lines)


def _step_words(bare: str) -> str | None:
    """Return what follows the number of a step; None when the line begins with none."""
    found = _NUMBERED.match(bare) or _CIRCLED.match(bare)
    if not found:
        return None
    words = found["words"]
    if words.count("**") % 2:  # "**1. Wash the jar.** Dry it."
        words = words.replace("**", "", 1)
    return words.strip()


def read_steps(lines: Sequence[str], first_line: int) -> tuple[MethodStep, ...]:
    """Read the steps of the method; `first_line` is the file line of lines[0].

    A step begins with a number or, where none does, with a dash, or is a paragraph. What stands
    before the first of them is a step of its own, so that nothing is lost. No step at all raises
    Unreadable.
    """
    lines = _sentences_apart(_letters_to_numbers([_LABEL.sub("", line) for line in lines]))
    placed = [(place, one) for place, line in enumerate(lines) for one in steps_in_line(line)]
    lines = [line for _, line in placed]
    numbered = has_numbers(lines)
    bulleted = not numbered and any(_BULLET.match(line) for line in lines)
    steps: list[MethodStep] = []
    group, fresh = "", True
    for offset, line in placed:
        bare = line.strip()
        if not bare or _RULE.fullmatch(bare):
            fresh = fresh or not numbered
            continue
        words = _step_words(bare) if numbered else None
        bullet = _BULLET.match(bare)
        heading = None if words is not None else _GROUP.match(bare)
        if heading:
            group, fresh = (heading["heading"] or heading["bold"]).strip("*_ :"), True
            continue
        outdented = not line[:2].isspace() or not steps
        begins = words is not None or (bulleted and bullet and outdented) or fresh
        said = words if words is not None else bare[bullet.end() :] if bullet else bare
        if begins and (outdented or words is not None):
            steps.append(MethodStep(said, group, first_line + offset))
        else:
            last = steps[-1]
            steps[-1] = MethodStep(f"{last.text} {said}".strip(), last.group, last.line)
        fresh = False
    steps = [step for step in steps if step.text]
    if not steps:
        raise Unreadable("The method has no steps.", 'Write "1. Wash the jar." and so on.')
    return tuple(steps)


def steps_in_line(line: str) -> list[str]:
    """Part the steps that stand in one line; else return the line alone.

    >>> steps_in_line("1. Soak. 2. Stir."), steps_in_line("Soak for 1. 2. Stir.")
    (['1. Soak.', '2. Stir.'], ['Soak for 1. 2. Stir.'])
    """
    first = _RUN_ON.match(line.strip())
    if first is None:
        return [line]
    found: list[str] = []
    rest, wanted = line.strip(), int(first["number"])
    while True:
        wanted += 1
        following = re.search(rf"(?<=[.!?;])\s+(?={wanted}[.)]\s+[^\W\d])", rest)
        if following is None:
            return [*found, rest]
        found.append(rest[: following.start()])
        rest = rest[following.end() :]


def _letters_to_numbers(lines: Sequence[str]) -> list[str]:
    """Give "a." and "b." numbers, where the letters run from "a" on and no line has a number."""
    rows = [_LETTERED.match(line.strip()) for line in lines]
    letters = [row["letter"].lower() for row in rows if row]
    wanted = [chr(ord("a") + place) for place in range(len(letters))]
    if len(letters) < 2 or letters != wanted or has_numbers(lines):
        return list(lines)
    return [
        f"{ord(row['letter'].lower()) - ord('a') + 1}. {row['words']}" if row else line
        for row, line in zip(rows, lines, strict=True)
    ]


def _sentences_apart(lines: Sequence[str]) -> list[str]:
    """Give a number to each line where all are whole sentences: so cooks type steps."""
    bare = [line.strip() for line in lines]
    said = [line for line in bare if line and not _RULE.fullmatch(line) and not _GROUP.match(line)]
    plain = not has_numbers(lines) and not any(_BULLET.match(line) for line in lines)
    if len(said) < 2 or not plain or not all(_SENTENCE_ENDS.search(line) for line in said):
        return list(lines)
    return [f"{place}. {line}" if line in said else line for place, line in enumerate(bare, 1)]


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
        both = join_and([f'"{ingredients[place].item}"' for place in fits])
        raise Unreadable(f'"{{{words}}}" fits {both}.', "Write the whole name.")
    raise Unreadable(f'"{{{words}}}" is not an ingredient.', did_you_mean(words, names))


def find_base(ingredient: Ingredient, ingredients: Sequence[Ingredient]) -> int:
    """Return the place of what the ratio of an ingredient hangs on.

    Raises Unreadable where nothing can be reckoned from it: it is not there, nobody says how much
    of it goes in, its own amount hangs on another, or it is measured otherwise.
    """
    ratio = ingredient.amount
    assert isinstance(ratio, Ratio), "asked of ratios only"
    places = [place for place, other in enumerate(ingredients) if other is not ingredient]
    place = places[find_ingredient(ratio.of, [ingredients[place] for place in places])]
    base, said = ingredients[place].item, ingredients[place].amount
    if not isinstance(said, Amount):
        how = "hangs on another" if isinstance(said, Ratio) else "is left to the cook"
        what = f"The amount of {ingredient.item} hangs on that of {base}, which itself {how}."
        raise Unreadable(what, f'Write how much {base} goes in, or a plain "amount:".')
    if size_of(said.unit) != size_of(ratio.per.unit):
        what = (
            f'"{show_amount(ratio)}" cannot be reckoned: the list says {show_amount(said)} of it.'
        )
        raise Unreadable(what, "Measure it the same way in both, or write a plain amount.")
    return place


def split_step(
    text: str, ingredients: Sequence[Ingredient], system: System, language: str = "en_GB"
) -> tuple[Segment, ...]:
    """Split a step at its braces; raises Unreadable for a name or a part that does not fit."""
    segments = []
    end = 0
    for found in _BRACES.finditer(text):
        if found.start() > end:
            segments.append(Segment(text[end : found.start()]))
        one = _read_brace(found[1], ingredients, system, language)
        segments.append(one)
        if part := _part_alone(one, ingredients, text[: found.start()] + text[found.end() :]):
            segments.append(Segment(f" ({part})"))
        end = found.end()
    rest = text[end:]
    if "{" in rest or "}" in rest:
        raise Unreadable(*_ONE_MISSING)
    if rest:
        segments.append(Segment(rest))
    return tuple(segments)


def _part_alone(one: Segment, ingredients: Sequence[Ingredient], around: str) -> str:
    """Return "juice only" of a lemon whose juice alone goes in, where the step does not say so."""
    note = "" if one.ingredient is None else ingredients[one.ingredient].note
    only = _PART_ALONE.fullmatch(note)
    if only is None or re.search(rf"\b{only['part']}", around, re.IGNORECASE):
        return ""
    return note


def brace_faults(
    text: str, ingredients: Sequence[Ingredient], system: System, language: str = "en_GB"
) -> Iterator[Unreadable]:
    """Yield all that is wrong with the braces of a step, where split_step stops at the first."""
    for found in _BRACES.finditer(text):
        try:
            _read_brace(found[1], ingredients, system, language)
        except Unreadable as wrong:
            yield wrong
    if re.search(r"[{}]", _BRACES.sub("", text)):
        yield Unreadable(*_ONE_MISSING)


def _read_brace(
    words: str, ingredients: Sequence[Ingredient], system: System, language: str
) -> Segment:
    names = [ingredient.item.lower() for ingredient in ingredients]
    said = read_leading(words, system, language) if has_figure(words) else None
    if said is None or words.strip().lower() in names:
        place = find_ingredient(words, ingredients)
        return Segment(ingredients[place].item, place)
    part = said.amount
    name = " ".join(word for word in (said.said, re.sub(r"^of\s+", "", said.rest)) if word)
    place = find_ingredient(name, ingredients)
    whole = ingredients[place].amount
    if isinstance(whole, Amount) and size_of(whole.unit) != size_of(part.unit):
        raise Unreadable(
            f'"{{{words}}}" is not measured as "{ingredients[place].item}" is.',
            "Write the part in the ingredient's own sort of unit.",
        )
    return Segment(said.rest, place, part)
