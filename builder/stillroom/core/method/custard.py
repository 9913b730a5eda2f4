"""Whether an egg thickens over the heat that a step before named: a curd, a custard.

"Melt the butter over simmering water. Whisk in the eggs and stir until it coats a spoon (80 C)."
Leaves out heat that a clause names itself (heat.py) and other languages (heat_elsewhere.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from stillroom.core.words.patterns import clause_regex

_ON_THE_HEAT = clause_regex(
    r"\b(?:over|on|onto|to) (?:the |a |an |your )?(?:(?:very )?(?:low|gentle|medium|moderate) )?"
    r"(?:heat|hob|stove|double boiler|bain[- ]marie)\b"
    r"|\b(?:over|in|above) (?:a (?:pan|saucepan|pot) of )?(?:just |barely |gently )*"
    r"(?:simmering|hot|boiling) water\b|\b(?:double boiler|bain[- ]marie)\b",
    re.IGNORECASE,
)
_OFF_IT = clause_regex(
    r"\b(?:off (?:the )?(?:heat|hob|stove)|from (?:the )?(?:heat|hob|stove|pan)"
    r"|(?:cool|chill|ice|freez|refrigerat)\w*|cold|bak(?:e|ed|ing)|set aside|leave to stand"
    r"|(?:another|separate|clean|second|large|mixing) bowl|separately|meanwhile)\b",
    re.IGNORECASE,
)
# what neither icing nor syrup is told to do, unless it is as hot as that
_AS_A_CUSTARD = clause_regex(
    r"\b(?:stir|whisk|cook|heat|beat|warm|keep)\w*\b.*\b(?:un)?till?\b.*"
    r"\b(?:coats?\b.{1,20}\bspoon|7[1-9] ?°? ?c|8\d ?°? ?c|1[67]\d ?°? ?f)\b",
    re.IGNORECASE,
)


def thickens_on_the_heat(clauses: Iterable[str]) -> Iterator[bool]:
    """Yield for each clause of a method whether it thickens over heat that still stands under it.

    >>> melt, stir = "Melt the butter over simmering water", "stir them in till it coats a spoon"
    >>> list(thickens_on_the_heat([melt, stir])), list(thickens_on_the_heat(["Cool", stir]))
    ([False, True], [False, False])
    """
    hot = False
    for clause in clauses:
        if _OFF_IT.search(clause):
            hot = False
        elif _ON_THE_HEAT.search(clause):
            hot = True
        yield hot and bool(_AS_A_CUSTARD.search(clause))
