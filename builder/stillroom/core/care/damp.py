"""Which fresh leaves, peel, flowers or fruit lie in a dry mix, a sugar or a salt and bring water.

The rule that tells of it and how long such a thing keeps ask the same. Leaves out how much water it
takes: nobody can read that from a recipe, so anything fresh that no plain word dries counts.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Protocol, TypeVar

from stillroom.core.words.patterns import clause_regex

_FRESH = frozenset({"fresh-herb", "citrus-peel", "citrus"})
_FRUIT = frozenset({"fruit", "mushroom", "low-acid-fruit"})
_DRY = frozenset(
    {"dried-fruit", "dried-herb", "dried-vegetable", "dried-garlic", "spice", "nut"}
    | {"confectionery", "sugar", "syrup", "acid", "chocolate", "starch", "essential-oil"}
)
_SAID_DRY = clause_regex(
    r"\b(?:dried|dry|freeze\w*|dehydrat\w*|powder\w*|crisp\w*|crystalli\w*|candied|glac[ée]\w*"
    r"|sugared|flakes?|ground|granul\w*|essence|extract|oil|getrocknet\w*|séch[ée]\w*"
    r"|sec(?:o|a|os|as|co|ca|chi|che)|essiccat\w*|gedroogd\w*|deshidratad\w*|lyophilis\w*"
    r"|liofilizzat\w*)\b"
)
_FRESH_BY_NAME = clause_regex(
    r"^(?!.*\b(?:dried|dry|powder\w*|granul\w*|flakes?|dehydrat\w*|freeze\w*|crisp\w*|fried"
    r"|salt)\b).*\b(?:garlic cloves?|garlic|fresh (?:ginger|chill\w+|garlic)|shallots?|onions?"
    r"|fresh (?:\w+ )?(?:herbs?|flowers?|petals?|blossoms?|heads)|flower ?heads?"
    r"|elderflower heads?|(?:fresh|just|newly)(?:ly)?[- ](?:picked|cut|gathered)"
    r"|frische[rsn]? \w*(?:blüten|blätter|kräuter)|fleurs fraîches|pétales frais|fiori freschi"
    r"|petali freschi|flores frescas|pétalos frescos|verse (?:bloemen|bloesem))\b"
)
# what dries it through, and no cloth, no jar and no cupboard
_DRIES = clause_regex(
    r"\b(?:trocknen|getrocknet|ged[öo]rrt\w*|dörren|im (?:back)?ofen|sécher|au four|secar|al horno"
    r"|essiccare|al forno|in de oven|drogen)\b"
    r"|\b(?:dried|dehydrat\w*|oven|air[- ]?dry\w*|dry(?:ing)? out)\b"
    r"|\b(?:to|and|then|leave|let|hang|spread)\b[^.]*\bdry\b(?= ?$|[,;]| (?:for|in|over|at|on"
    r"|overnight|until|till|completely|thoroughly|slowly|again|through|out|naturally|somewhere"
    r"|near|above|before|and crumble))"
    r"|^\W*(?:\w+ )?dry(?:ing)?\b[^.]*\b(?:until|till|for|at|in the (?:sun|air)|overnight|hours?"
    r"|days?|weeks?|through|leaves|herbs?|peels?|zest|petals|flowers|them|it|mixture|salt|sugar"
    r"|sprigs?|rosemary|sage|thyme)\b"
)
_SURFACE = clause_regex(
    r"\b(?:wash|rins|pat|wip|spin)\w*\b[^.]*?\bdry(?: (?:well|thoroughly|completely|with|on"
    r"|in a)\b[^.]*)?|\b(?:wash|rins)\w*\b[^.]*\band dried\b"
    r"|\b(?:waschen|abspülen|spülen|gläser|laver|lavar|lavare|wassen)\b[^.]*"
    r"\b(?:trocknen|getrocknet|sécher|secar|asciugare|drogen)\b"
    r"|\b(?:cool|clean|sterile|sterilised|dark|airtight|keep\w*|stor\w+|stay\w*|in a|in the|very"
    r"|and)[,;]? (?:and )?dry,? (?:and (?:cool|dark) )?(?:place|jars?|bottles?|containers?|tins?"
    r"|cupboard|pantry|spot|bowl|cloth|lid|pan|frying)\b"
    r"|\bdry (?:the |your |a )?(?:clean )?(?:jars?|bottles?|lids?|hands|bowl|pan)\b"
    r"|\b(?:keep|stor|stay)\w*\b[^.]*\bdry\b"
)


class Line(Protocol):
    """One line of a recipe, as far as its water is concerned."""

    @property
    def words(self) -> str:
        """Its words and its note, in small letters."""

    @property
    def tags(self) -> frozenset[str]:
        """What the rules look for in it."""


AnyLine = TypeVar("AnyLine", bound=Line)


def damp_lines(lines: Iterable[AnyLine], clauses: Sequence[str]) -> tuple[AnyLine, ...]:
    """Return the lines that bring water, nothing where a clause dries something through."""
    if any(_DRIES.search(_SURFACE.sub(" ", clause)) for clause in clauses):
        return ()
    return tuple(line for line in lines if _is_damp(line))


def _is_damp(line: Line) -> bool:
    if _FRESH_BY_NAME.search(line.words):
        return True
    if _SAID_DRY.search(line.words):
        return False
    if line.tags & _FRESH and not line.tags & {"dried-fruit", "dried-herb"}:
        return True
    return bool(line.tags & _FRUIT) and not line.tags & _DRY
