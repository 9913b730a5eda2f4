"""Letters within a letter: what somebody answers or passes on, and which of them has the recipe.

Leaves out how mail programs head them, mail_heads.py, and what the letter's writer says: letter.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.mail_heads import QUOTED, heads_within, passes_on, wrote
from stillroom.bringing.sorting import begins_with_amount, is_ingredient

# what is measured in a sentence, and no hour or day of a letter
_AMOUNT: Final = re.compile(
    r"\d\s?(?:k?g|gr|ml|cl|dl|l|lbs?|oz|cups?|pints?|lit[a-z]{1,4}|grams?|gramm[aei]?|min[a-z]{0,5}|°)\b",
    re.IGNORECASE,
)
_LEAST_LISTED: Final = 2
_FEW_LINES: Final = 3


def without_older(lines: Sequence[str]) -> list[str]:
    """Return the lines of a letter without the one it answers, where the recipe is in its own.

    Where a list stands in what is quoted, that is what somebody passes on: nothing is taken out.
    """
    quoted = {at for at, line in enumerate(lines) if QUOTED.match(line)}
    told = next((at for at in range(len(lines)) if wrote(lines, at)), None)
    begins = [one.begin for one in heads_within(lines) if any(map(str.strip, lines[: one.begin]))]
    if told is not None and not quoted:
        quoted = set(range(told, len(lines)))
    elif told is None and begins and not quoted:
        quoted = set(range(begins[0], len(lines)))
    own = [line for at, line in enumerate(lines) if at not in quoted]
    older = [QUOTED.sub("", lines[at]) for at in sorted(quoted)]
    few = sum(bool(line.strip()) for line in older)
    asked = 0 < few <= _FEW_LINES and not any(re.search(r"\d", line) for line in older)
    asked = asked and sum(bool(line.strip()) for line in own) > 2 * few
    is_in_own = _listed(own) >= _LEAST_LISTED > _listed(older)
    return own if asked or is_in_own else [*lines]


def beside_recipe(lines: Sequence[str]) -> frozenset[int]:
    """Return the places of the letters of a text in which no recipe stands, where another has one.

    Whoever passes a recipe on writes above it to one person; what they were asked stands below.
    """
    signs = _signs(lines)
    begins = sorted({0, *(at for at in signs if at - 1 not in signs)})
    ends = [*begins[1:], len(lines)]
    letters = [
        (range(begin, end), said)
        for begin, end in zip(begins, ends, strict=True)
        if any(map(str.strip, said := [lines[at] for at in range(begin, end) if at not in signs]))
    ]
    if len(letters) < 2:
        return frozenset()
    listed = [one for one in letters if _listed(one[1]) >= _LEAST_LISTED]
    kept = listed or [max(letters, key=lambda one: _measured(one[1]))]
    return frozenset(at for one in letters if one not in kept for at in one[0])


def _signs(lines: Sequence[str]) -> frozenset[int]:
    """Return the places of the lines that a mail program wrote between one letter and another."""
    found = {at for one in heads_within(lines) for at in range(one.begin, one.end)}
    for at, line in enumerate(lines):
        found.update(range(at, at + wrote(lines, at)))
        if passes_on(QUOTED.sub("", line)):
            found.add(at)
    return frozenset(found)


def _measured(lines: Sequence[str]) -> tuple[int, int]:
    """Return how much is measured in a letter's sentences, and how many words it has."""
    text = " ".join(lines)
    return len(_AMOUNT.findall(text)), len(text.split())


def _listed(lines: Sequence[str]) -> int:
    """Return how many lines may be of a list of ingredients."""
    bare = [re.sub(r"^[-*•–]\s+", "", QUOTED.sub("", line).strip()) for line in lines]
    return sum(is_ingredient(line) and begins_with_amount(line) for line in bare if line)


def is_pasted_letter(text: str) -> bool:
    r"""Whether a text holds the head of a letter passed on, or says who wrote what is quoted.

    >>> is_pasted_letter("Von: Anna\nBetreff: WG: Gelee\n\n1 kg Quitten"), is_pasted_letter("Jam")
    (True, False)
    """
    lines = text.split("\n")
    said = any(wrote(lines, at) or passes_on(line) for at, line in enumerate(lines))
    return said or bool(heads_within(lines))
