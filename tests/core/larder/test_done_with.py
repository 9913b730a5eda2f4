"""What a food was soaked, fried or rolled in counts as much as the food: no note hides an allergen.

The notes are such as recipes have behind the comma; put down, with what they hold, before they were
tried. Half of them were read as holding none of it.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food

_HOLDS = """
sultanas, soaked overnight in Marsala | marsala
sultanas (soaked overnight in 3 tbsp rum) | rum
sultanas, soaked in rum | rum
sultanas, steeped for 24 hours in Armagnac | armagnac
sultanas, plumped up in hot brandy | brandy
sultanas, macerated in kirsch for a week | kirsch
sultanas, washed, dried and soaked in whisky | whisky
sultanas, left overnight in sherry | sherry
sultanas, in rum | rum
sultanas, well soaked with brandy | brandy
pears, poached in red wine | red wine
onions, fried in butter | butter
onions, softened in a little butter | butter
onions, tossed in flour | flour
apples, peeled and fried in butter | butter
oats, soaked overnight in milk | milk
dates, rolled in ground almonds | ground almonds
dates, stuffed with walnuts | walnuts
dates, chopped and dusted with flour | flour
plums, brushed with egg white | egg white
chickpeas, mixed with tahini | tahini
tofu, marinated overnight in soy sauce | soy sauce
prunes, each stuffed with an almond | almonds
cherries, dipped in milk chocolate | milk chocolate
bread, cut in cubes and fried in butter | butter
sultanas, soaked overnight in Marsala and cream | cream
apricots, dried and soaked in tea | dried apricot
haddock, smoked and poached in milk | milk
raisins, soaked in rum rather than water | rum
""".strip().splitlines()
_HOLDS_NO_MORE = """
sultanas, soaked in hot water for an hour
sultanas, soaked and drained
butter, softened in a warm place
dates, chopped in a food processor
lemons, scrubbed in hot water
beans, soaked overnight
apples, cored, in slices
chocolate, melted in a bowl
eggs, beaten with a fork
orange, cut into wedges
salmon, cut in fillets
peas, in the pod
plums, with the stones in
""".strip().splitlines()


@pytest.mark.parametrize("row", _HOLDS)
def test_what_it_was_put_in_counts(row: str) -> None:
    phrase, food = row.split(" | ")
    reading = read_food(phrase)
    assert food in [one.name for one in reading.foods], reading


@pytest.mark.parametrize("phrase", _HOLDS_NO_MORE)
def test_a_place_and_water_name_no_food(phrase: str) -> None:
    reading = read_food(phrase)
    assert len(reading.foods) == 1
    assert reading.known


@pytest.mark.parametrize(
    "phrase",
    [
        "dark chocolate (may contain traces of peanut)",
        "dark chocolate, may contain nuts",
        "oats (made in a factory with wheat)",
        "sultanas (packed in a facility that handles peanuts)",
        "Schokolade (kann Spuren von Nüssen enthalten)",
    ],
)
def test_what_a_packet_leaves_open_is_not_known(phrase: str) -> None:
    assert not read_food(phrase).known


def test_what_a_packet_contains_counts() -> None:
    assert [one.name for one in read_food("dark chocolate (contains nuts)").foods] == [
        "dark chocolate",
        "nut",
    ]
    assert read_food("oats (nut free)").known


@pytest.mark.parametrize(
    ("phrase", "food"),
    [
        ("breadcrumbs, gluten free", "gluten-free breadcrumb"),
        ("flour (gluten free)", "gluten-free flour"),
        ("chocolate, dairy-free", "dairy-free chocolate"),
        ("peanut butter (xylitol free)", "peanut butter"),
    ],
)
def test_free_behind_a_comma_is_read_as_before_the_name(phrase: str, food: str) -> None:
    reading = read_food(phrase)
    assert reading.food is not None
    assert reading.food.name == food
