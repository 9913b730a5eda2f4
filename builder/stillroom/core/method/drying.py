"""Whether a method dries a thing through: what is dry in its jar is no moist food without air.

Leaves out how dry is dry enough: nobody can read that from a recipe, so only plain words count.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from stillroom.core.words.patterns import clause_regex

_DRIED = clause_regex(
    r"\bdehydrat\w*|\bdry\w*\b[^.]*\b(?:until|till|to|at) (?:they |it |he |is "
    r"|are |quite |completely "
    r"|bone |fully |leathery and )*(?:leather\w*|brittle|crisp\w*|crack\w*"
    r"|snap\w*|dry|rattl\w*|crumbl\w*"
    r"|\d\d ?°? ?c|1[0-9]\d ?°? ?f)",
    re.IGNORECASE,
)
_ONLY_THE_SURFACE = clause_regex(
    r"\bpat(?:ted)? dry|\bdry (?:the|your|clean) (?:jars?|bottles?)", re.I
)
_WET_AGAIN = clause_regex(
    r"\b(?:cover|top up|add|pour)\w*\b[^.]*\b(?:water|stock|brine|juice|oil)\b", re.I
)


def dried_through(clauses: Iterable[str]) -> str:
    """Return the clause that dries it through, "" where none does or it is wetted again.

    >>> dried_through(["halve and dry the tomatoes at 60 C until leathery", "pack into a jar"])
    'halve and dry the tomatoes at 60 C until leathery'
    >>> dried_through(["pat dry with a cloth"])
    ''
    """
    found = ""
    for clause in clauses:
        if _DRIED.search(_ONLY_THE_SURFACE.sub(" ", clause)):
            found = clause
        elif found and _WET_AGAIN.search(clause):
            found = ""
    return found
