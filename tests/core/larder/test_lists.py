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
    # what goes in by itself is no sort of what stands before it
    ("salt, pepper and garlic", {"salt", "black pepper", "garlic"}),
    ("salt, garlic and pepper", {"salt", "garlic", "black pepper"}),
    ("butter, salt and garlic", {"butter", "salt", "garlic"}),
    ("salt, garlic", {"garlic salt"}),
]

# each may be a sort of the first, and then holds another allergen
SORTS_PERHAPS = ["milk, oat and sugar", "butter, peanut and jam", "flour, rice and corn"]


@pytest.mark.parametrize("phrase", SORTS_PERHAPS)
def test_what_may_be_a_sort_of_the_first_is_asked(phrase: str) -> None:
    assert not read_food(phrase).known


@pytest.mark.parametrize(("phrase", "foods"), LISTS, ids=[row[0] for row in LISTS])
def test_every_food_of_a_list_is_read(phrase: str, foods: set[str]) -> None:
    reading = read_food(phrase)
    assert reading.known, reading.leftover
    assert {food.name for food in reading.foods} == foods


# Sorts behind their food, each of which may be meant: shapes of pages read in November 2026 (a
# bath page's "oil (almond, sunflower, coconut …)", a page of wild drinks' "sugar (caster or
# granulated)", the BBC's "apples (Cox or Granny Smith)"); what the list is for stands behind it.
SORTS = [
    (
        "oil (almond, sunflower or coconut)",
        {"oil", "sweet almond oil", "sunflower oil", "coconut oil"},
    ),
    ("sugar (caster or granulated)", {"caster sugar", "granulated sugar"}),
    ("flour (plain or self-raising)", {"flour", "plain flour", "self-raising flour"}),
    ("nuts (almonds, hazelnuts or pecans)", {"nut", "almonds", "hazelnuts", "pecans"}),
    ("curry leaves, fresh or dried", {"fresh curry leaf", "dried curry leaf"}),
    ("tortillas (flour or corn)", {"flour tortilla", "corn tortilla"}),
    ("apples (peeled, cored or not)", {"apple"}),
    ("eggs (medium or large)", {"eggs"}),
    # where a sort is a food by itself the first counts too
    ("milk, oat or soya", {"milk", "oat milk", "soya milk"}),
    ("chocolate, milk or white", {"chocolate", "milk chocolate", "white chocolate"}),
    ("cream, milk or buttermilk", {"cream", "milk", "buttermilk"}),
    ("egg noodles (or rice or soba noodles)", {"egg noodle", "rice noodle", "soba noodle"}),
    ("icing sugar, marzipan and almonds for decorating", {"icing sugar", "marzipan", "almonds"}),
    (
        "caster sugar, double cream and almonds to finish",
        {"caster sugar", "double cream", "almonds"},
    ),
    ("Puderzucker, Marzipan und Mandeln zum Verzieren", {"icing sugar", "marzipan", "almonds"}),
    ("sucre glace, amandes et crème pour décorer", {"icing sugar", "almonds", "cream"}),
    ("butter, the size of an egg", {"butter"}),
    ("100% sodium hydroxide", {"lye"}),
]


@pytest.mark.parametrize(("phrase", "foods"), SORTS, ids=[row[0] for row in SORTS])
def test_each_sort_that_may_be_meant_counts(phrase: str, foods: set[str]) -> None:
    reading = read_food(phrase)
    assert reading.known, reading.leftover
    assert {food.name for food in reading.foods} == foods


NO_LISTS = [
    "fresh green garlic tops, parsley, or basil",
    "quick-cooking tapioca (granulated or instant)",
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


@pytest.mark.parametrize(
    ("phrase", "foods"),
    [
        ("wine, champagne, or mead yeast", {"wine yeast", "champagne yeast", "mead yeast"}),
        ("ale or wine yeast", {"ale yeast", "wine yeast"}),
        ("wine and yeast", {"wine", "yeast"}),
        ("rum or vanilla extract", {"rum", "vanilla extract"}),
    ],
)
def test_a_yeast_is_named_for_what_it_makes_and_holds_none(phrase: str, foods: set[str]) -> None:
    found = read_food(phrase).foods
    if phrase.startswith("rum"):
        assert {food.name for food in found} >= {"rum"}
    else:
        assert {food.name for food in found} == foods


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("pink salt #1", "curing salt"),
        ("curing salt no. 1, weighed", "curing salt"),
        ("Prague powder no 1", "curing salt"),
        ("himalayan pink salt", "salt"),
        ("2 pinches salt", "salt"),
    ],
)
def test_a_number_may_make_it_another_food(name: str, food: str) -> None:
    # pink curing salt holds nitrite, pink salt of the mountains none: from memory
    found = read_food(name).food
    assert found
    assert found.name == food


@pytest.mark.parametrize("name", ["pink salt", "coarse pink salt", "2 tsp pink salt"])
def test_pink_salt_alone_may_be_the_cure(name: str) -> None:
    """Of the mountains or with nitrite: which is not said, and the second is dangerous."""
    assert not read_food(name).known


def test_a_sentence_without_an_end_is_read_for_its_names_alone() -> None:
    """Whoever types a page where a food is asked for waits for no reckoning of all its joints."""
    reading = read_food("flour and butter or sugar with milk and " * 40)
    assert reading.food is None
    assert {"milk", "butter", "flour"} <= {food.name for food in reading.hinted}
