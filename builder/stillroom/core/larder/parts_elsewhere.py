"""A note that says, in another language than English, of which part of a fruit a line is.

"naranja, la piel" is orange peel as "orange, peel only" is. Leaves out English: notes.py.
"""

from __future__ import annotations

from functools import cache

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.matching import match_name
from stillroom.core.larder.phrases import Words, forms, phrase_words, split_joined
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import normal_form, words_of


def tells_a_part(note: Words) -> bool:
    """Whether a note says nothing but a part, or several: "le jus et le zeste"."""
    return all(len(_parts(piece)) == 1 for piece in split_joined(note))


def food_of_part(note: Words, food: Staple, larder: Larder) -> Staple | None:
    """Return the food that such a part is; None where the whole is taken, or it has no name."""
    pieces = split_joined(note)
    if len(pieces) != 1:
        return None
    [part] = _parts(pieces[0])
    named = match_name(words_of(f"{food.name} {part}"), larder).food
    return named if named and named != food else None


def _parts(piece: Words) -> frozenset[str]:
    """Return the parts that a piece names, nothing where it says anything else."""
    said = [form for form in forms(piece) if form not in _beside()]
    table = _table()
    return (
        frozenset(table[form] for form in said)
        if all(form in table for form in said)
        else frozenset()
    )


@cache
def _table() -> dict[str, str]:
    rows: dict[str, list[str]] = read_larder_data("phrases.yml")["parts_elsewhere"]
    return {normal_form(word): part for part, words in rows.items() for word in words}


@cache
def _beside() -> frozenset[str]:
    return frozenset(map(normal_form, phrase_words("beside_parts")))
