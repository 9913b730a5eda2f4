"""Whether only the liquid of a thing goes into its bottles: a syrup, a jelly.

Then what stays in the bag has left no steam behind, and the water it was boiled in is in the
bottle. Leaves out how much steam there was: contents_list.py.
"""

from __future__ import annotations

from fractions import Fraction

from stillroom.core.allergens.of_foods import Known
from stillroom.core.amounts.units import size_of
from stillroom.core.batch.contents import contents_by_place
from stillroom.core.care.drained import drained_rows
from stillroom.core.label.fruit_in_spirit import STRAINS, clauses_of
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_LIQUID = clause_regex(
    r"\b(?:syrups?|cordials?|squash|juices?|jell(?:y|ies)|shrubs?|sirops?|gel[ée]es?|jus|jarabes?"
    r"|zumos?|jugos?|sciropp[oi]|gelatin[ae]|succh?[oi]|gelei)\b"
    r"|(?:sirupe?|säfte|saft(?:en)?|gelee|siroop|diksap)\b"
)
_DRAINS = clause_regex(r"\b(?:drain(?:ed|ing|s)?|rins(?:e|ed|ing)|pour(?:ed)? off)\b")
_SALTS = clause_regex(r"\bsalt(?:ed|s)?\b")
# without one of these no steam leaves it; boiling water that is poured on is none
_STEAMS = clause_regex(
    r"\b(?:simmer|boil(?!ing (?:hot )?water|ed water)|cook|reduc|heat|stew)\w*|koch\w*|köchel\w*"
    r"|\b(?:cui(?:re|sez|sson)|bouill(?:ir|ez|on)|ébullition|mijot\w*|herv\w*|hierv\w*|coc(?:er|ed)"
    r"|cuece"
    r"|cocin\w*|fuego|boll\w*|cuoc\w*|fuoco|ko(?:ok|ken)|sudder\w*|koka\w*|sjud\w*)\b"
)
# of soft fruit about so much goes through the bag; common practice, no published source
_JUICE = Fraction(65, 100)
_JUICY = frozenset({"fruit", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "vegetable"})
_DISSOLVES = frozenset({"water", "sugar", "honey", "syrup", "salt", "acid", "alcohol", "beverage"})


def is_strained_off(recipe: Recipe) -> bool:
    """Tell whether its method strains it and it is a liquid, by its name or its measure."""
    if not recipe.kind.is_("put up"):
        return False
    liquid = _LIQUID.search(recipe.title.lower()) or size_of(recipe.makes.total.unit) == "volume"
    return bool(liquid) and any(map(STRAINS.search, _clauses_of(recipe)))


def is_made_cold(recipe: Recipe) -> bool:
    """Tell whether a liquid that is put up is never boiled: all its water stays in it.

    Hot water that is poured on is no boiling; nothing is cold of which no method is written.
    """
    clauses = _clauses_of(recipe)
    liquid = bool(_LIQUID.search(recipe.title.lower()))
    return liquid and bool(clauses) and not any(map(_STEAMS.search, clauses))


@once_a_recipe
def poured_off(recipe: Recipe) -> frozenset[int]:
    """Return the places of the water in which something was only soaked: it is in no jar.

    Of what ends as a liquid nothing is said here: its water may be what is bottled.
    """
    clauses = _clauses_of(recipe)
    jarred = recipe.kind.is_("put up") or recipe.kind.is_("living")
    if not jarred or _LIQUID.search(recipe.title.lower()) or not any(map(_DRAINS.search, clauses)):
        return frozenset()
    rows = [
        content.grams or Fraction(0)
        if content and content.staple and "water" in content.staple.tags
        else None
        for content in contents_by_place(recipe)
    ]
    return drained_rows(rows, clauses)


def salt_is_rinsed_off(recipe: Recipe) -> bool:
    """Tell whether vegetables stood in dry salt that is rinsed or drained off them afterwards."""
    clauses = _clauses_of(recipe)
    salted = next((at for at, one in enumerate(clauses) if _SALTS.search(one)), len(clauses))
    jarred = recipe.kind.is_("put up") or recipe.kind.is_("living")
    behind = clauses[salted + 1 :]
    again = any(map(_SALTS.search, behind))
    return jarred and not again and any(map(_DRAINS.search, behind))


@once_a_recipe
def _clauses_of(recipe: Recipe) -> tuple[str, ...]:
    return clauses_of(recipe)


def goes_into_the_liquid(known: Known) -> Fraction:
    """Return which part of an ingredient goes through the bag."""
    tags = {tag for food in known.staples for tag in food.tags}
    if tags & _DISSOLVES:
        return Fraction(1)
    if not known.staples or "dried-fruit" in tags:
        return Fraction(0)
    return _JUICE if tags & _JUICY else Fraction(0)
