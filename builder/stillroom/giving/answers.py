"""The four answers a check of a gift gives, and which of two is the worse."""

from __future__ import annotations

import re
from typing import Literal

from stillroom.core.recipe.model import Recipe

Answer = Literal["free", "may contain", "contains", "not known"]
WORSE: tuple[Answer, ...] = ("free", "may contain", "not known", "contains")
# what is put on the skin is taken in like food; an ornament's threads and glue are not
_ON_THE_SKIN = re.compile(
    r"\b(?:soaps?|balms?|lips?|bath|scrubs?|lotions?|creams?|salves?|skin|body|hair|massage"
    r"|perfumes?|shampoo|ointments?|play ?dough|butters?|wraps?)\b",
    re.IGNORECASE,
)


def is_taken_in(recipe: Recipe) -> bool:
    """Whether it is eaten, put on the skin or wrapped round food: what is unknown in it matters."""
    said = f"{recipe.title} {recipe.summary}"
    return recipe.kind.is_eaten or bool(_ON_THE_SKIN.search(said))
