"""What a line names by its part: the zest of a lemon however it is cut, the leaf of a plant."""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of


# pages on amaretti (almostitalian.blog) and others, November 2026
@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("finely grated zest of 1 lemon", "lemon peel"),
        ("coarsely grated zest of 2 oranges", "orange peel"),
        ("very finely grated zest of 1 lemon", "lemon peel"),
        ("finely chopped peel of 2 lemons", "lemon peel"),
        ("finely grated zest and juice of 1 lemon", "lemon"),
    ],
)
def test_a_part_is_known_however_finely_it_is_cut(line: str, food: str) -> None:
    reading = food_of(find_foods(read_ingredient(line, "metric", "en_GB"), Larder(language="en")))
    assert reading.known
    assert [one.name for one in reading.foods] == [food]


# leaves of what is known by its fruit or stalk, as pages on liqueurs and nocino count them
@pytest.mark.parametrize(
    ("line", "locale", "foods"),
    [
        ("2 feuilles de cassis", "fr_FR", ["blackcurrant leaf"]),
        ("3 Blätter Rhabarber", "de_DE", ["rhubarb leaf"]),
        ("2 foglie di rabarbaro", "it_IT", ["rhubarb leaf"]),
        ("2 hojas de tomate", "es_ES", ["tomato leaf"]),
        ("2 Blätter Pfirsich", "de_DE", []),  # no food of the larder, and no peach
        ("5 Blätter Minze", "de_DE", ["mint"]),
        ("2 foglie di alloro", "it_IT", ["bay leaf"]),
    ],
)
def test_leaves_counted_in_another_language_are_no_fruit(
    line: str, locale: str, foods: list[str]
) -> None:
    larder = Larder(language=locale[:2])
    reading = food_of(find_foods(read_ingredient(line, "metric", locale), larder))
    assert [one.name for one in reading.foods] == foods


# lines of Spanish, French, Italian, German, Dutch and Swedish cooks; the first is a newcomer's
@pytest.mark.parametrize(
    ("line", "locale", "food"),
    [
        ("la piel de 1 naranja", "es_ES", "orange peel"),
        ("1 limón, la cáscara", "es_ES", "lemon peel"),
        ("el zumo de 2 limones", "es_ES", "lemon juice"),
        ("le zeste de 2 citrons", "fr_FR", "lemon peel"),
        ("le jus et le zeste de 1 orange", "fr_FR", "orange"),
        ("la scorza di 1 limone", "it_IT", "lemon peel"),
        ("1 Bio-Orange, nur die Schale", "de_DE", "orange peel"),
        ("Saft und Schale von 1 Orange", "de_DE", "orange"),
        ("de schil van 1 citroen", "nl_NL", "lemon peel"),
        ("skalet av 1 apelsin", "sv_SE", "orange peel"),
        ("1 kg Walnüsse, in der Schale", "de_DE", "walnuts"),
        ("2 Äpfel, mit Schale", "de_DE", "apple"),
        ("1 naranja", "es_ES", "orange"),
    ],
)
def test_a_part_is_told_in_any_of_the_languages(line: str, locale: str, food: str) -> None:
    one = find_foods(read_ingredient(line, "metric", locale), Larder(language=locale))
    reading = food_of(one)
    assert ([known.name for known in reading.foods], reading.known) == ([food], True)
