"""Which water of a recipe is poured off before anything is filled: it dilutes no vinegar.

Counted as poured off only where the method leaves no doubt; what is doubtful stays in the jar.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

_DRAIN = re.compile(r"\b(?:drain\w*|pour(?:ed)? off|press(?:ed)? out|rins(?:e|ed|ing))\b", re.I)
_COVERS = re.compile(r"\b(?:water|brine|liquid|liquor|solution|syrup|ice)\b", re.I)
_NO_WATER_IN_IT = re.compile(
    r"\bboiling[- ]water (?:canner|bath)|\bwater[- ]bath\b|\b(?:over|in) (?:a pan of )?"
    r"(?:simmering|boiling|hot) water\b|\bcold water to (?:cool|rinse)\w*",
    re.I,
)


def drained_rows(rows: Sequence[bool], clauses: Sequence[str]) -> frozenset[int]:
    """Return the places of the water that is poured off; `rows` says which lines are water.

    >>> sorted(drained_rows([False, True], ["salt them in the water overnight and drain", "boil"]))
    [1]
    >>> drained_rows([False, True], ["stand in brine and drain", "cover with the boiling liquid"])
    frozenset()
    """
    water = [place for place, is_water in enumerate(rows) if is_water]
    pours = [place for place, clause in enumerate(clauses) if _DRAIN.search(clause)]
    if not water or not pours:
        return frozenset()
    before = " . ".join(clauses[: pours[-1] + 1])
    after = " . ".join(_NO_WATER_IN_IT.sub(" ", clause) for clause in clauses[pours[-1] + 1 :])
    if not _COVERS.search(_NO_WATER_IN_IT.sub(" ", before)):
        return frozenset()
    if not _COVERS.search(after):
        return frozenset(water)
    return frozenset(water[:1]) if len(water) > 1 else frozenset()
