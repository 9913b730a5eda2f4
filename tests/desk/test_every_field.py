"""Every fact that a file may hold has a box at the desk, or is named as the file's, with a reason.

The facts are those of the models: one that is new there fails here until somebody decides.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest
import yaml
from pydantic import BaseModel

from stillroom.core.reading.written_facts import KNOWN_KEYS
from stillroom.core.recipe.family_book import FamilyBook
from stillroom.core.recipe.keeps import KEEPING_KEYS
from stillroom.core.recipe.model import Acidity, Card
from stillroom.core.recipe.settings import BookSettings
from stillroom.desk import book_form, giving_form, recipe_form
from stillroom.desk.giving_form import ROWS, TOP, Ask, boxed, change_list, rows_of, value_of
from stillroom.desk.giving_lines import lines_of
from stillroom.desk.giving_told import LINES
from stillroom.giving.model import (
    BasketKind,
    GivingList,
    Household,
    LoggedBatch,
    Make,
    Service,
    Stock,
)
from stillroom.giving.reading import read_giving_list
from stillroom.saving.yaml_files import change_yaml

PARTS = {
    "list": (GivingList, TOP),
    "household": (Household, ROWS["households"]),
    "make": (Make, ROWS["makes"]),
    "basket": (BasketKind, ROWS["baskets"]),
    "posting": (Service, ROWS["posting"]),
    "batch": (LoggedBatch, ROWS["batches"]),
}


def keys_of(model: type[BaseModel]) -> Iterator[str]:
    """Yield each fact of a model as the file writes it."""
    for name, field in model.model_fields.items():
        yield field.alias or name


@pytest.mark.parametrize("part", PARTS)
def test_every_fact_of_a_giving_list_has_a_box_or_a_reason(part: str) -> None:
    model, asks = PARTS[part]
    has = {ask.key for ask in asks} | ({*LINES, *ROWS} if part == "list" else set())
    only = giving_form.FILE_ONLY.get(part, {})
    assert set(keys_of(model)) - has == set(only)
    assert all(len(reason) > 15 for reason in only.values())


def test_what_is_in_the_house_stands_in_boxes_of_lines() -> None:
    inside = {"containers": "stock", "ingredients": "stock", "vessels": "vessels", "made": "made"}
    assert set(keys_of(Stock)) == set(inside)
    assert set(inside.values()) <= set(LINES)


def test_every_fact_of_a_recipe_has_a_box_or_a_reason() -> None:
    boxes = set(recipe_form.FIELDS)
    alone = set(KNOWN_KEYS) - boxes - set(recipe_form.UNDER)
    assert alone == set(recipe_form.FILE_ONLY)
    inside = {"keeps": KEEPING_KEYS, "card": (*keys_of(Card),), "acidity": (*keys_of(Acidity),)}
    for group, names in inside.items():
        assert {f"{group}_{name}" for name in names} <= boxes


def test_every_setting_has_a_box_or_a_reason() -> None:
    boxes = {"title", "site_url", "send_us", "giving_days", "labels", "family_book", *book_form.OWN}
    assert set(keys_of(BookSettings)) - boxes == set(book_form.FILE_ONLY)
    assert set(keys_of(FamilyBook)) == {*book_form.BOUND, "photographs"}


LIST = """\
giving list: Winter 2027
giving day: 2027-12-18
baskets:
  small: {eat: 1}
makes:
  - plum-jam
households:
  - {name: The Marrables, basket: small}
"""


def kept(sent: dict[str, str], text: str = LIST) -> str:
    """Return the list with what boxes say, read by its reader so that nothing in it is wrong."""
    written = change_yaml(text, "l.yml", lambda said: change_list(said, sent))
    read_giving_list(written, "l.yml")
    return written


def test_post_is_said_in_boxes() -> None:
    written = kept(
        {
            "posting|new|service": "second class",
            "posting|new|last day": "18 December 2027",
            "posting|new|bands": "1 kg 3.70; 2 kg 5.60",
            "posting|new|to": "France, Germany",
            "households|0|country": "France",
            "households|0|service": "second class",
            "households|0|opens": "25 December 2027",
            "households|0|days left": "30",
            "households|0|address": "1 Rue Haute, 29000 Quimper",
            "address": "3 Net Lane, Skerrow",
            "hours a week": "6",
            "hours a day": "every day 1; saturday 6",
            "days off": "2 August 2027 to 14 August 2027",
        }
    )
    read = read_giving_list(written, "l.yml").giving
    (service,) = read.posting
    assert [(float(grams), float(price)) for grams, price in service.bands] == [
        (1000, 3.7),
        (2000, 5.6),
    ]
    (home,) = read.households
    assert (home.country, home.days_left) == (("FR",), 30)
    assert len(read.days_off) == 13
    again = yaml.safe_load(written)
    assert rows_of(again, "posting")[0][1]["bands"] == "1 kg 3.70; 2 kg 5.60"
    assert kept({"posting|0|bands": "1 kg 3.70; 2 kg 5.60"}, written) == written


def test_vessels_and_what_was_made_before_are_said_in_lines() -> None:
    made = "plum-jam: 6; jar, 200 ml; 3 August 2027"
    written = kept({"vessels": "5 l preserving pan: 1\noven: 1", "made": made})
    said = yaml.safe_load(written)
    assert said["stock"]["vessels"] == {"5 l preserving pan": 1, "oven": 1}
    assert said["stock"]["made"][0]["container"] == "jar, 200 ml"
    assert lines_of(said, "made") == made
    assert kept({"vessels": "5 l preserving pan: 1\noven: 1", "made": made}, written) == written
    without = kept({"vessels": "", "made": ""}, written)
    assert not (yaml.safe_load(without).get("stock") or {}).get("vessels")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1 kg 3.70; 2 kg 5.60", {"1 kg": 3.7, "2 kg": 5.6}),
        ("1 kg: 3,70, 2 kg: 5,60", {"1 kg": "3,70", "2 kg": "5,60"}),
        ("2", 2),
        ("every day 2", {"every day": 2}),
        ("as it comes", "as it comes"),
    ],
)
def test_amounts_by_name_in_one_box(text: str, value: object) -> None:
    assert value_of(text, Ask("bands", "", "pairs")) == value


def test_containers_of_a_basket_keep_their_sizes() -> None:
    ask = Ask("containers", "", "holders")
    assert value_of("jar, 200 ml; bottle, 100 ml", ask) == ["jar, 200 ml", "bottle, 100 ml"]
    assert boxed(ask, ["jar, 200 ml", "bottle"]) == "jar, 200 ml; bottle"
    kept({"baskets|small|containers": "jar, 200 ml; bottle, 100 ml"})
    kept({"baskets|small|containers": "jar, 200 ml"})


def test_a_day_about_the_giving_day_needs_no_year() -> None:
    sent = {
        "posting|new|service": "second class",
        "posting|new|last day": "11 December",
        "households|0|opens": "2 January",
    }
    giving = read_giving_list(kept(sent), "l.yml").giving
    assert str(giving.posting[0].last_day) == "2027-12-11"
    assert str(giving.households[0].opens) == "2028-01-02"
