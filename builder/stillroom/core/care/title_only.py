"""What a title names that can poison, and neither list nor method does: "garlic oil" of oil alone.

Leaves out what list and method name: the rules see it there.
"""

from __future__ import annotations

import re

from stillroom.core.care.toxic_words import toxic_plants_in
from stillroom.core.method.sentences import affirmed_clauses
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_IN_OIL = clause_regex(
    r"\b(?:wild garlic|garlic|chill?i|herb|basil|rosemary|thyme|sage|oregano|lemon|orange|onion"
    r"|shallot|mushroom|truffle|ginger)(?:[- ](?:infused|flavou?red))? (?:olive )?oil\b"
    r"|\b(?:knoblauch|kräuter|basilikum|rosmarin|zitronen|bärlauch|chili|trüffel)öl\b"
    r"|\bhuile (?:à l['’]ail|au basilic|au romarin|pimentée|au citron|aux herbes|à la truffe)"
    r"|\baceite de (?:ajo|albahaca|romero|guindilla|trufa)\b"
    r"|\bolio (?:all['’]aglio|al basilico|al rosmarino|al peperoncino|al limone|al tartufo)"
    r"|\b(?:knoflook|kruiden|basilicum)olie\b|\b(?:vitlöks|ört|basilika|chili)olja\b",
    re.IGNORECASE,
)
_GIVES_FLAVOUR = frozenset(
    {
        "garlic",
        "fresh-herb",
        "dried-herb",
        "herb",
        "chilli",
        "spice",
        "low-acid-vegetable",
        "vegetable",
    }
    | {"mushroom", "wild-mushroom", "citrus", "citrus-peel", "ginger-root", "flavouring", "flower"}
    | {"dried-vegetable", "dried-garlic", "foraged", "essential-oil"}
)
# what is made of it, so that the plant is no person, place or shape: "yew berry jam"
_MADE_OF_IT = (
    r"(?:[- ](?:berr(?:y|ies)|lea(?:f|ves)|roots?|seeds?|flowers?|blossoms?|petals?|bark|fruit))?"
    r" (?:jam|jelly|syrup|cordial|tea|wine|liqueur|gin|vodka|tincture|oil|vinegar|chutney|infusion"
    r"|extract|salt|sugar|powder|pesto|soup|sauce|compote|fritters)\b"
)


def named_in_title_only(recipe: Recipe, tags: frozenset[str]) -> str:
    """Return what the title alone names, "" where list or method says what it is made of."""
    title = ", ".join(affirmed_clauses(recipe.title))
    told = " . ".join(
        (
            *(f"{one.item} {one.note}" for one in recipe.ingredients),
            *(s.text for s in recipe.method),
        )
    ).casefold()
    for plant in toxic_plants_in([title]):
        made = re.search(rf"\b{re.escape(plant)}{_MADE_OF_IT}", title, re.IGNORECASE)
        if made and plant.casefold().split()[0] not in told and not toxic_plants_in([told]):
            return f"{made[0]}, and {plant} stands in the title only"
    found = _IN_OIL.search(title)
    if found and "oil" in tags and not tags & _GIVES_FLAVOUR:
        return f"{found[0]}, and what gives the oil its flavour stands in the title only"
    return ""
