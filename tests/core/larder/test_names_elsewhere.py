"""Names of foods in books in the language that has them: Danish, Polish and more.

Expectations written before the table was made, on 30 November 2026: words of public recipe pages
and of a list of false friends.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.data import read_larder_data
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder, staple_named
from stillroom.core.larder.words import normal_form
from stillroom.core.method.spoken import spoken_in

TABLE: dict[str, dict[str, list[str]]] = read_larder_data("names_elsewhere.yml")

KNOWN = [
    ("da_DK", "øl", "beer"),  # was vegetable oil, as German "Öl"
    ("nb_NO", "øl", "beer"),
    ("no_NO", "øl", "beer"),
    ("pt_BR", "óleo", "oil"),  # was margarine, as English "oleo"
    ("pt_PT", "salsa", "parsley"),
    ("pt_PT", "batata", "potato"),  # was a sweet potato, as in Spanish
    ("pt_BR", "mostarda", "mustard"),
    ("pt_BR", "leite de coco", "coconut milk"),
    ("pt_BR", "castanha-do-pará", "brazil nuts"),
    ("da_DK", "kærnemælk", "buttermilk"),
    ("da_DK", "citron", "lemon"),
    ("da_DK", "hvedemel", "plain flour"),
    ("nb_NO", "hjortetakk", "ammonium bicarbonate"),
    ("pl_PL", "mąki pszennej", "plain flour"),
    ("pl_PL", "miód pitny", "mead"),
    ("pl_PL", "jajka", "eggs"),
    ("en_GB", "øl", "beer"),
    ("de_DE", "Öl", "vegetable oil"),
    ("sv_SE", "öl", "beer"),
    ("en_GB", "oleo", "margarine"),
    ("nb_NO", "rips", "redcurrant"),
    ("nn_NO", "rips", "redcurrant"),
    ("nb_NO", "solbær", "blackcurrant"),
    ("nn_NO", "solbær", "blackcurrant"),
    ("nb_NO", "bjørnebær", "bramble"),
    ("da_DK", "ribs", "redcurrant"),
    ("de_DE", "Johannisbeeren", "redcurrant"),
    ("de_DE", "schwarze Johannisbeeren", "blackcurrant"),
    ("sv_SE", "vinbär", "redcurrant"),
    ("es_ES", "grosellas", "redcurrant"),
    ("pl_PL", "czarne porzeczki", "blackcurrant"),
]

# The open taxonomy of ingredients (openfoodfacts/openfoodfacts-server, file ingredients.txt
# of 25 November 2018, ODbL, read 1 December 2026) gives each of these beside its English name.
# Of its 956 names of what holds an allergen none is known here as a food without one.
OF_THE_TAXONOMY = [
    ("pl_PL", "olej arachidowy", "peanut oil"),
    ("pl_PL", "brzoskwinia", "peach"),
    ("pl_PL", "kalafior", "cauliflower"),
    ("pl_PL", "olej lniany", "linseed oil"),
    ("pl_PL", "woda gazowana", "sparkling water"),
    ("pl_PL", "syrop glukozowy", "glucose syrup"),
    ("da_DK", "rosin", "raisins"),  # was pine resin, as in English
    ("nb_NO", "rosin", "raisins"),
    ("da_DK", "rosenkål", "brussels sprout"),
    ("da_DK", "daddel", "dates"),
    ("da_DK", "fennikel", "fennel bulb"),
    ("da_DK", "kornblomst", "cornflower"),
    ("nb_NO", "druekjerneolje", "grapeseed oil"),
    ("nb_NO", "valnøttolje", "walnut oil"),
    ("nb_NO", "vannmelon", "watermelon"),
    ("sv_SE", "vassla", "whey"),
    ("sv_SE", "rosévin", "rosé wine"),
    ("sv_SE", "palmolja", "palm oil"),
    ("sv_SE", "clementin", "clementine"),
    ("sv_SE", "vetestärkelse", "wheat starch"),
    ("pt_PT", "funcho", "fennel bulb"),
    ("pt_BR", "melancia", "watermelon"),
    ("pt_PT", "groselha negra", "blackcurrant"),
    ("pt_PT", "trigo mourisco", "buckwheat"),
    ("nl_NL", "room", "cream"),
    ("nl_NL", "taptemelk", "skimmed milk"),
    ("nl_NL", "komijnzaden", "cumin seeds"),
    ("fr_FR", "sel marin", "sea salt"),
    ("fr_FR", "abricots séchés", "dried apricot"),
    ("de_DE", "Schafmilch", "sheep's milk"),
    ("de_DE", "Citronensäure", "citric acid"),
    ("es_ES", "sal ahumada", "smoked salt"),
    ("it_IT", "rosato", "rosé wine"),
]


@pytest.mark.parametrize(("language", "name", "food"), [*KNOWN, *OF_THE_TAXONOMY])
def test_a_name_means_what_it_means_in_the_book_s_language(
    language: str, name: str, food: str
) -> None:
    reading = read_food(name, Larder(language=language))
    assert reading.known
    assert [one.name for one in reading.foods] == [food]


@pytest.mark.parametrize(
    ("language", "name"),
    [
        ("pt_BR", "castanha"),  # of which tree is not said
        ("pt_BR", "suco de caju"),
        ("pl_PL", "pasta"),
        ("pl_PL", "orzechy"),
        ("da_DK", "is"),
        ("en_GB", "ribs"),  # meat there, whatever it is in Danish
        ("fi_FI", "keksi"),
        ("cs_CZ", "mouka"),
        ("en_GB", "room"),
        ("fr_FR", "room"),
        ("en_GB", "Malta"),
    ],
)
def test_what_may_be_several_foods_is_not_known(language: str, name: str) -> None:
    assert not read_food(name, Larder(language=language)).known


@pytest.mark.parametrize("language", sorted(TABLE))
def test_each_name_stands_once_and_for_a_food_there_is(language: str) -> None:
    names = [normal_form(name) for listed in TABLE[language].values() for name in listed]
    assert len(names) == len(set(names))
    for food in TABLE[language]:
        assert food == "?" or staple_named(food).name == food


@pytest.mark.parametrize(
    ("name", "vegetarian"),
    [("scotch egg", False), ("lamb's quarters", True), ("crispy duck", False), ("lamb", False)],
)
def test_an_animal_in_a_name_is_in_the_food_or_not(name: str, vegetarian: bool) -> None:
    food = read_food(name).food
    assert food is not None
    assert food.vegetarian is vegetarian


@pytest.mark.parametrize(
    ("phrase", "never"),
    [
        ("milk-free chocolate", "milk"),
        ("nut-free granola", "nut"),
        ("honey substitute", "honey"),
        ("milk substitute", "milk"),
    ],
)
def test_what_a_food_is_free_of_is_not_in_it(phrase: str, never: str) -> None:
    reading = read_food(phrase)
    assert not reading.known
    assert never not in [food.name for food in reading.hinted]


def test_a_pastry_behind_a_comma_is_not_passed_over() -> None:
    assert not read_food("whole black pepper, a bunch of savoury herbs, plain crust").known
    held = {
        name
        for food in read_food("eggs, puff-paste, a little jam").foods
        for name in food.allergens
    }
    assert held == {"eggs", "wheat"}


def test_two_pastries_behind_a_comma_both_count() -> None:
    reading = read_food("apricots, sugar to taste, puff-paste or short crust")
    assert "wheat" in {allergen for food in reading.foods for allergen in food.allergens}


def test_with_in_dutch_is_no_mead() -> None:
    reading = read_food("of bloem met theelepel bakpoeder", Larder(language="nl_NL"))
    assert "mead" not in [food.name for food in reading.named]
    assert read_food("Met", Larder(language="de_DE")).known


@pytest.mark.parametrize("name", ["Irish coffee", "Spanish coffee", "liqueur coffee"])
def test_a_coffee_with_a_spirit_is_no_coffee(name: str) -> None:
    food = read_food(name).food  # "Irish" and "Spanish" only said where the coffee was from
    assert food is not None
    assert "alcohol" in food.tags
    assert "milk" in food.allergens


@pytest.mark.parametrize(
    ("language", "method", "items", "read_in"),
    [
        ("da_DK", "Rør smør og sukker. Bag i ovnen.", ["smør", "hvedemel"], "da_DK"),
        ("nb_NO", "Rør smør og sukker. Stek i ovnen.", ["smør", "hvetemel"], "nb_NO"),
        ("pt_BR", "Bata a manteiga com o açúcar.", ["manteiga", "açúcar"], "pt_BR"),
        ("da_DK", "Stir the butter and the sugar until pale.", ["butter"], "en"),
        ("en_GB", "Rør smöret med sockret. Grädda i ugnen.", ["smör", "vetemjöl"], "sv"),
    ],
)
def test_a_book_s_language_is_not_taken_for_a_near_one(
    language: str, method: str, items: list[str], read_in: str
) -> None:
    assert spoken_in(method, items, Larder(language=language)).language == read_in
