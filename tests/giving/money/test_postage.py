"""Postage is money: in each basket's cost, its budget and the sum, and never nothing unknown."""

from __future__ import annotations

from fractions import Fraction

import pytest

from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.book import BookSettings
from stillroom.giving.model import Service
from stillroom.giving.offering import make_offering
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.postage import bands_of, postage_of
from stillroom.giving.posting import Parcel

BANDS = {"500 g": "3.00", "1 kg": "4.50"}
SALT = {"recipe": "rosemary-salt", "weighs": "190 g", "cost": "2.00"}
WRAPS = {
    "recipe": "beeswax-wraps",
    "per batch": 2,
    "weighs": "700 g",
    "cost": "2.00",
    "sort": "eat",
}


def posted(makes=(SALT,), bands=BANDS, weighs="100 g", eat=1, **household):
    data = small_list()
    data["baskets"] = {
        "parcel": {"eat": eat, "cost": "1.00", **({"weighs": weighs} if weighs else {})}
    }
    data["makes"] = list(makes)
    data["households"] = [{"name": "Nell", "basket": "parcel", "by post": True, **household}]
    service = {"service": "post", "last day": "2027-12-10"}
    data["posting"] = [service | ({"bands": bands} if bands else {})]
    data["giving day"] = "2027-12-18"
    return data


def packed(data):
    return work_out(read_dict(data), demo_recipes(), BookSettings(), TODAY, Effort(5))


def test_postage_is_in_the_basket_and_in_what_is_paid():
    by_post = packed(posted())
    assert by_post.costs.postage.of_baskets == {1: 3}
    by_hand = packed(posted(**{"by post": False}))
    assert by_post.costs.baskets[1] - by_hand.costs.baskets[1] == 3
    assert by_post.costs.paid - by_hand.costs.paid == 3
    assert by_hand.costs.postage.of_baskets == {}
    assert not by_post.costs.postage.open


@pytest.mark.parametrize(
    ("change", "least"),
    [
        ({"makes": [{"recipe": "rosemary-salt", "cost": "2.00"}]}, 3),
        ({"weighs": ""}, 3),
        ({"bands": None}, 0),
    ],
    ids=["no weight of a present", "no weight of the empty box", "no postage"],
)
def test_postage_that_is_not_known_is_said_and_never_nothing(change, least):
    found = packed(posted(**change))
    assert found.costs.postage.of_baskets == {1: least}
    assert found.costs.postage.open == {1}
    assert 1 in found.costs.open_baskets
    assert not found.costs.whole


def test_a_budget_that_postage_breaks_is_told_and_kept_to():
    assert packed(posted(budget="5.00")).plan.gifts[1]
    too_dear = packed(posted(budget="4.99"))
    assert too_dear.plan.gifts[1] == ()
    assert "budget" in too_dear.complaints[0]


def test_whether_a_budget_is_kept_is_not_known_while_its_postage_is_not():
    found = packed(posted(bands=None, budget="50"))
    assert any("its postage is not" in words for words in found.complaints)
    assert not any("its postage is not" in w for w in packed(posted(budget="50")).complaints)


def test_of_two_things_that_cost_alike_the_lighter_goes_by_post():
    data = posted(makes=(WRAPS, SALT))
    plan = packed(data).plan
    assert plan.gifts[1] == ("rosemary-salt",)


def test_what_nobody_weighed_is_no_lighter_for_it():
    makes = ({**WRAPS, "weighs": "900 g"}, SALT, {"recipe": "vanilla-sugar", "sort": "craft"})
    offers = make_offering(read_dict(posted(makes=makes)), demo_recipes(), TODAY).problem.offers
    assert [offer.heft for offer in offers] == [900, 190, 545]


def parcel(**bands):
    pairs = tuple((Fraction(most[1:]), Fraction(price)) for most, price in bands.items())
    return Parcel("GB", False, Service.model_construct(service="post", bands=pairs), None)


def test_a_heavier_band_that_is_no_dearer_takes_the_place_of_a_lighter():
    assert bands_of(parcel(g100=3, g200=2, g500=4), Fraction(20)) == ((180, 2), (480, 4))
    assert bands_of(parcel(g100=3, g200=5), Fraction(150)) == ((50, 5),)
    assert bands_of(None, None) == ()


def test_in_the_dearest_band_no_weight_makes_it_dearer():
    one = parcel(g100=3, g500=4)
    assert postage_of(one, [Fraction(300), None], Fraction(10)) == (4, True)
    assert postage_of(one, [Fraction(30), None], Fraction(10)) == (3, False)
    assert postage_of(one, [Fraction(600)], Fraction(10)) == (0, False)
