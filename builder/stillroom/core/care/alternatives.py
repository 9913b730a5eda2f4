"""What a line names as another choice: "peppermint extract or 3 drops of essential oil".

Whoever makes it may take either, so what the second brings of danger is told as the first's is. It
has no weight of its own, for only one of the two goes in. Leaves out allergens: of_foods.py.
"""

from __future__ import annotations

from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import words_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.words.patterns import clause_regex

_OR = clause_regex(r"\b(?:or|oder|ou|oppure|of)\b")
# what is told however little of it goes in
_TOLD_OF_ANY = frozenset(
    {"toxic", "grave", "cyanide-kernel", "cannabis", "essential-oil", "industrial-alcohol"}
    | {"raw-elder", "raw-rowan", "raw-cassava", "foraged", "look-alike", "look-alike-conifer"}
    | {"wild-mushroom", "medicine-herb", "remedy-herb", "thujone", "pyrrolizidine", "liver-harm"}
    | {"salicylate", "coumarin", "coumarin-herb", "liquorice", "star-anise", "quinine", "xylitol"}
    | {"honey", "caffeine", "caffeine-powder", "unpasteurised", "kidney-bean", "lectin-bean"}
    | {"fava", "curing-salt", "lye", "caustic", "seaweed", "grapefruit", "liver"}
)


def alternatives_of(ingredient: Ingredient) -> tuple[tuple[Staple, frozenset[str]], ...]:
    """Return each food that a line offers for its own, with the tags that must be told of it."""
    found = food_of(ingredient)
    if found.food is None or not _OR.search(f"{ingredient.item} {ingredient.note}".lower()):
        return ()
    own = {word.form for word in words_of(found.food.name)}
    return tuple(
        (other, told)
        for other in found.named
        if other != found.food
        and not {word.form for word in words_of(other.name)} <= own
        and (told := other.tags & _TOLD_OF_ANY - found.food.tags)
    )
