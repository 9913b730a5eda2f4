"""Whether an everyday word for a kind names all of what a title names, or a part of it.

"Lemon salt" is a salt of its own; of "Rosemary-lemon salt" it is the half, and no name for it.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.lines.staple_table import staples_named

_HYPHEN: Final = re.compile(r"(?<=[^\W\d_])[-–—/](?=[^\W\d_])")
_WORD: Final = re.compile(r"[^\W\d_]+")
_JOINING: Final = frozenset(["and", "und", "et", "y", "e", "en", "och", "og"])


def without_hyphens(title: str) -> str:
    """Return a title whose words are parted where a sign joins them; "" where none does.

    >>> without_hyphens("Rosemary-lemon salt"), without_hyphens("Lemon salt")
    ('Rosemary lemon salt', '')
    """
    parted = _HYPHEN.sub(" ", title)
    return parted if parted != title else ""


def names_a_part(word: str, title: str) -> bool:
    """Whether a title names another food before the one that an everyday word begins with.

    >>> [names_a_part("lemon salt", title) for title in ("Rosemary & lemon salt", "Lemon salt")]
    [True, False]
    >>> names_a_part("christmas cake", "Hazelnut Christmas cake")
    False
    """
    own = word.lower().split()
    said = [one for one in _WORD.findall(title.lower()) if one not in _JOINING]
    at = next((at for at in range(1, len(said)) if said[at] == own[0]), 0)
    if len(own) < 2 or not at:
        return False
    return bool(staples_named(own[0]) and staples_named(said[at - 1]))
