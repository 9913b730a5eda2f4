"""What may be taken in place of a food is a food of the line too, and what is said of it is none.

The notes were put down with what must be found before any was tried, in the words of cooks' pages;
eighteen of them lost the second food, or made the first one unknown.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder

# language | the phrase | the foods it names
ROWS = """
en | cornmeal (substitute rye flour if you prefer) | cornmeal;rye flour
en | cornmeal (sub rye flour) | cornmeal;rye flour
en | butter (substitute margarine if you like) | butter;margarine
en | honey (use maple syrup if vegan) | honey;maple syrup
en | almonds (replace with hazelnuts if liked) | almonds;hazelnuts
en | almonds (can be replaced with hazelnuts) | almonds;hazelnuts
en | almonds (can be substituted with walnuts) | almonds;walnuts
en | almonds, can use walnuts | almonds;walnuts
en | butter (can use coconut oil) | butter;coconut oil
en | milk (swap for oat milk) | milk;oat milk
en | flour (use a gluten free blend if needed) | flour
en | butter (use unsalted) | butter
en | lemons (use organic) | lemon
en | pecans (you can also use walnuts) | pecans;walnuts
en | pecans (walnuts work too) | pecans;walnuts
en | pecans (walnuts are fine too) | pecans;walnuts
en | pecans (walnuts may be used instead) | pecans;walnuts
en | brandy (use apple juice for a non-alcoholic version) | brandy;apple juice
en | sugar (use less if you like) | granulated sugar
en | sugar (use more to taste) | granulated sugar
en | vegetable oil (use enough to cover) | vegetable oil
en | vanilla (substitute almond extract) | vanilla;almond extract
en | dark chocolate (milk chocolate is fine too) | dark chocolate;milk chocolate
de | Mandeln (ersatzweise Haselnüsse) | almonds;hazelnuts
de | Butter (alternativ Margarine) | butter;margarine
de | Mandeln (durch Walnüsse ersetzbar) | almonds;walnuts
de | Honig (man kann auch Ahornsirup nehmen) | honey;maple syrup
de | Mandeln (stattdessen gehen auch Walnüsse) | almonds;walnuts
fr | amandes (ou noisettes) | almonds;hazelnuts
fr | amandes (à remplacer par des noisettes) | almonds;hazelnuts
fr | beurre (peut être remplacé par de la margarine) | butter;margarine
fr | amandes (à défaut des noix) | almonds;walnuts
it | mandorle (in alternativa nocciole) | almonds;hazelnuts
it | mandorle (si possono sostituire con noci) | almonds;walnuts
es | almendras (se pueden sustituir por nueces) | almonds;walnuts
es | almendras (en su defecto avellanas) | almonds;hazelnuts
nl | amandelen (te vervangen door hazelnoten) | almonds;hazelnuts
sv | mandel (kan bytas ut mot hasselnötter) | almonds;hazelnuts
"""


def _cases() -> list[tuple[str, ...]]:
    return [tuple(part.strip() for part in row.split("|")) for row in ROWS.strip().splitlines()]


@pytest.mark.parametrize(("language", "phrase", "foods"), _cases(), ids=lambda one: one)
def test_both_foods_of_a_choice_are_named(language: str, phrase: str, foods: str) -> None:
    found = read_food(phrase, Larder(language=language))
    wanted = foods.split(";")
    assert found.food is not None
    assert len(found.named) == len(wanted)
    assert all(want in one.name for want, one in zip(wanted, found.named, strict=True))
