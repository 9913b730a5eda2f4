"""Foods in tins, in lists and by the size of a nut, as other people's lines name them.

The lines are of American, British, French, Italian and Spanish pages read in November 2026, and of
old cookery books (Waterman's and Bradley's candy books, a South African book of 1891); each stands
with all the foods that must be told, and with whether the book knows what it is.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of

# line, language -> the foods it names, known
NAMED = [
    ("400g tin chickpeas, drained", "en_GB", {"canned chickpea"}, True),
    ("400 g tin apricots", "en_GB", {"tinned apricot"}, True),
    ("1 tin peach slices in juice", "en_GB", {"canned peach"}, True),
    ("1 (15 oz) can sliced peaches in heavy syrup", "en_US", {"canned peach"}, True),
    ("2 x 400g tins apricot halves in natural juice", "en_GB", {"tinned apricot"}, True),
    ("1 jar quinces in syrup", "en_GB", set(), False),
    (
        "300g mixed sultanas, raisins and currants",
        "en_GB",
        {"sultanas", "raisins", "currants"},
        True,
    ),
    ("1 tbsp mixed nutmeg, cloves and cinnamon", "en_GB", {"nutmeg", "cloves", "cinnamon"}, True),
    ("2 cups mixed nuts and seeds", "en_US", {"mixed nut", "mixed seed"}, True),
    (
        "1 tbsp carrier oil like jojoba, sweet almond, or coconut oil",
        "en_US",
        {"jojoba oil", "sweet almond oil", "coconut oil"},
        False,
    ),
    (
        "2 cups dried fruit like apricots, cherries, and hazelnuts",
        "en_US",
        {"dried fruit", "hazelnuts"},
        True,
    ),
    ("toppings such as chopped almonds, coconut", "en_US", {"almonds", "coconut"}, False),
    ("a nut of butter", "en_GB", {"butter"}, True),
    ("1 walnut of butter", "en_GB", {"butter"}, True),
    ("Butter size of walnut", "en_US", {"butter"}, True),
    ("une noix de beurre", "fr_FR", {"butter"}, True),
    ("1 noisette de beurre", "fr_FR", {"butter"}, True),
    ("una noce di burro", "it_IT", {"butter"}, True),
    ("1 nuez de mantequilla", "es_ES", {"butter"}, True),
    ("1 noix de coco", "fr_FR", {"coconut"}, True),
    ("1 noce moscata", "it_IT", {"nutmeg"}, True),
    ("6 walnuts", "en_GB", {"walnuts"}, True),
    (
        "1 tbsp vanille ou 4 sachets de sucre vanillé",
        "fr_FR",
        {"vanilla", "vanilla sugar"},
        True,
    ),
    ("1 cup glycerin", "en_US", {"glycerin"}, True),
    ("2 hot red peppers, seeded and chopped", "en_US", {"hot red pepper"}, True),
    ("2 red peppers, seeded and chopped", "en_US", {"red pepper"}, True),
    ("2 ears sweet corn, kernels cut off", "en_US", {"sweetcorn"}, True),
    ("50 g gehackte süße Mandeln", "de_DE", {"almonds"}, True),
    ("50 g bittere Mandeln", "de_DE", {"bitter almond"}, True),
    ("4 Päckchen Vanillinzucker", "de_DE", {"vanilla sugar"}, True),
    # other people's other choice, and what goes in of a thing
    ("200 ml Sahne (alternativ Mandelmilch)", "de_DE", {"cream", "almond milk"}, True),
    ("200 ml cream (alternatively almond milk)", "en_GB", {"cream", "almond milk"}, True),
    ("1 cup chopped leek (white part only)", "en_US", {"leek"}, True),
    ("32 crushed soda crackers", "en_US", {"soda cracker"}, True),
    ("125 ml de aceite de oliva suave", "es_ES", {"olive oil"}, True),
    ("freshly milled pepper", "en_GB", {"black pepper"}, True),
]


@pytest.mark.parametrize(
    ("line", "language", "foods", "known"),
    NAMED,
    ids=lambda v: v[:40] if isinstance(v, str) else "",
)
def test_all_that_a_line_names_is_told(
    line: str, language: str, foods: set[str], known: bool
) -> None:
    system = "us" if language == "en_US" else "metric"
    read = read_ingredient(line, system, language)  # type: ignore[arg-type]
    reading = food_of(find_foods(read, Larder(language=language), system))
    assert reading.known is known
    assert {food.name for food in reading.foods} == foods
