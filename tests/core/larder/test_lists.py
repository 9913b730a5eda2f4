"""Foods in a list: each is read, and as what it is: dried cherries are no fresh ones."""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food

# phrase, every food that must be read, and no other
LISTS = [
    ("dried cranberries or cherries", {"dried cranberry", "dried cherry"}),
    ("dried cranberries, or cherries", {"dried cranberry", "dried cherry"}),
    ("dried figs cherries or dates", {"dried fig", "dried cherry", "dates"}),
    ("dried apricots or figs", {"dried apricot", "dried fig"}),
    ("dried thyme or oregano", {"dried thyme", "dried oregano"}),
    ("fresh or dried cranberries", {"cranberry", "dried cranberry"}),
    ("dried mint or lemon juice", {"dried mint", "lemon juice"}),
    ("dried figs or honey", {"dried fig", "honey"}),
    ("canned black beans or kidney beans", {"canned black bean", "canned kidney bean"}),
    ("tinned pears, peaches or plums", {"tinned pear", "tinned peach", "tinned plum"}),
    ("candied orange or lemon peel", {"candied orange peel", "candied lemon peel"}),
    ("smoked trout or salmon", {"smoked trout", "smoked salmon"}),
    ("smoked salmon or gravlax", {"smoked salmon", "gravlax"}),
    ("almonds, hazelnuts and walnuts", {"almonds", "hazelnuts", "walnuts"}),
    ("almonds walnuts or pecans", {"almonds", "walnuts", "pecans"}),
    ("butter, margarine or lard", {"butter", "margarine", "lard"}),
    ("carrots, celery, and onion, finely chopped", {"carrot", "celery", "onion"}),
    ("semi-skimmed or skimmed milk", {"semi-skimmed milk", "skimmed milk"}),
    # with "and" the fresh one may be meant as well: both count
    ("dried cranberries and cherries", {"dried cranberry", "dried cherry", "cherry"}),
    ("lemons, zest and juice", {"lemon"}),
    ("limes, grated zest and juice of", {"lime"}),
    ("butter, salted or unsalted", {"butter"}),
    # one food under two names, as a stroke or a bracket leaves them
    ("ghee clarified butter", {"clarified butter"}),
    ("double cream heavy cream", {"double cream"}),
    ("pasta of your choice", {"pasta"}),
    ("lemon, grated zest of", {"lemon peel"}),
]


@pytest.mark.parametrize(("phrase", "foods"), LISTS, ids=[row[0] for row in LISTS])
def test_every_food_of_a_list_is_read(phrase: str, foods: set[str]) -> None:
    reading = read_food(phrase)
    assert reading.known, reading.leftover
    assert {food.name for food in reading.foods} == foods


NO_LISTS = [
    "milk, oat or soya",
    "chocolate, milk or white",
    "dried quinces or medlars",
    "raspberries or strawberries, dried",
    "milk of your choice",
    "nuts of your choice",
    "vanilla vanilla sugar",
    "tomato tomato paste",
    "coconut rum or whisky liqueur cake",
]


@pytest.mark.parametrize("phrase", NO_LISTS)
def test_what_may_be_another_food_stays_unknown(phrase: str) -> None:
    assert not read_food(phrase).known
