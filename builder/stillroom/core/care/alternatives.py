"""What a line names as another choice, or lists: "mint extract or essential oil", "thyme, comfrey".

What each brings of danger is told as the first's is, since any of them may go in. The others have
no weight of their own, for no line says how much of it each is. Leaves out allergens: of_foods.py.
"""

from __future__ import annotations

from stillroom.core.larder.food_reading import FoodReading, read_food
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
# a list brings each of its foods: "almonds, wild garlic and comfrey"
_PARTS = clause_regex(r"\s*[,;()]\s*")
_AND = clause_regex(r"\b(?:and|und|et|y|e|en|och|og|i|ja)\b|[&+/]")
# poisons are told of a list as of one food: safety_facts.py
_LISTED = (_TOLD_OF_ANY - {"toxic", "grave", "cyanide-kernel"}) | {
    *("garlic", "meat", "fish", "shellfish", "mushroom", "low-acid-vegetable")
}
# the candied stem, beside what cakes are strewn with; a fresh one is said to be so
_STREWN = frozenset({"fruit", "dried-fruit", "nut"})
_PICKED = clause_regex(r"\b(?:wild|fresh|picked|foraged|lea(?:f|ves)|stems?|roots?|seeds?)\b")


def alternatives_of(ingredient: Ingredient) -> tuple[tuple[Staple, frozenset[str]], ...]:
    """Return each food that a line offers or lists beside its own, with the tags to tell of it."""
    found = food_of(ingredient)
    words = f"{ingredient.item} {ingredient.note}".lower()
    listed = bool(_AND.search(ingredient.item.lower())) or _lists_more(ingredient, found)
    if found.food is None or not (listed or _OR.search(words)):
        return ()
    graver = _TOLD_OF_ANY if _OR.search(words) else _LISTED
    own = {word.form for word in words_of(found.food.name)}
    return tuple(
        (other, told)
        for other in found.named
        if other != found.food
        and not (
            other.name == "angelica" and found.food.tags & _STREWN and not _PICKED.search(words)
        )
        and not {word.form for word in words_of(other.name)} <= own
        and (told := other.tags & (graver - found.food.tags))
    )


def _lists_more(ingredient: Ingredient, found: FoodReading) -> bool:
    """Whether the note goes on with foods: "thyme, comfrey, sage"; not "butter, softened"."""
    parts = _PARTS.split(ingredient.note)
    return any(part.strip() and read_food(part, found.larder).food for part in parts)
