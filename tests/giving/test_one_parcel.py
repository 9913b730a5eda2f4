"""Baskets of one address go in one parcel; what the plan is told beside it. Sums by hand."""

from __future__ import annotations

from datetime import date
from fractions import Fraction as F
from pathlib import Path

import pytest

from giving.lists import demo_recipes, read_dict, small_list
from stillroom.core.book import BookSettings
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.log_file import read_line
from stillroom.giving.noticing import notices
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.parcel_papers import parcels_data
from stillroom.giving.reading import load_giving_list

BANDS = {"500 g": "3.20", "1 kg": "4.10", "2 kg": "5.90"}
BY_POST = {"basket": "box", "by post": True}
MILL = {**BY_POST, "address": "The Mill, Low Lane, Skerrow"}


SALT = {"recipe": "rosemary-salt", "by post": True}


def _pack(*households, weighs="190 g", bands=BANDS, today=date(2027, 1, 10)):
    """Return a pack of baskets of 100 g, each for one jar of salt."""
    data = small_list(
        **{"giving day": "2027-12-18"},
        baskets={"box": {"eat": 1, "weighs": "100 g"}},
        makes=[
            {"recipe": "rosemary-salt", "by post": True, **({"weighs": weighs} if weighs else {})}
        ],
        posting=[{"service": "post", "last day": "2027-12-10", "bands": bands}],
        households=list(households),
        prices=[],
    )
    return work_out(
        read_dict(data), tuple(demo_recipes()), BookSettings(), today, Effort(seconds=2)
    )


def _postage(pack):
    return pack.costs.postage.total


SAID_ANEW = {**MILL, "address": "the mill,  Low Lane. SKERROW"}
# who, and what all of it costs to post: one of 290 g 3.20, two of 580 g 4.10, four of 1,160 g 5.90
SENT = [
    ([{"name": "A", **MILL}], "3.20"),
    ([{"name": "A", **MILL}, {"name": "B", **MILL}], "4.10"),
    # however it is written
    ([{"name": "A", **MILL}, {"name": "B", **SAID_ANEW}], "4.10"),
    # another house
    ([{"name": "A", **MILL}, {"name": "B", **MILL, "address": "2 Low Lane, Skerrow"}], "6.40"),
    # nobody says where they live: two parcels; two baskets of one household are one
    ([{"name": "A", **BY_POST}, {"name": "B", **BY_POST}], "6.40"),
    ([{"name": "A", **BY_POST, "basket": {"box": 2}}], "4.10"),
    # one is handed over
    ([{"name": "A", **MILL}, {"name": "B", "basket": "box", "address": MILL["address"]}], "3.20"),
]  # fmt: skip


@pytest.mark.parametrize(("households", "paid"), SENT)
def test_what_goes_to_one_address_is_one_parcel(households, paid):
    pack = _pack(*households)
    assert _postage(pack) == F(paid)
    assert pack.costs.paid == sum(pack.costs.households.values())


def test_the_parcel_is_said_once_and_its_label_names_both():
    pack = _pack({"name": "Una Fell", **MILL}, {"name": "Gran", **MILL})
    said = [
        one
        for one in notices(pack.offering, pack.plan, pack.making)
        if "arcel for" in one or "One" in one
    ]
    assert len(said) == 1
    assert "number 1, Una Fell and number 2, Gran" in said[0]
    assert "0.58 kg: postage £4.10" in said[0]
    (slip,) = parcels_data(pack)
    assert (slip["to"], slip["numbers"]) == ("Una Fell and Gran", "1, 2")
    assert slip["address"] == ["The Mill", "Low Lane", "Skerrow"]


def test_what_is_too_heavy_or_not_known_stays_apart():
    heavy = _pack({"name": "A", **MILL}, {"name": "B", **MILL}, bands={"500 g": "3.20"})
    assert _postage(heavy) == F("6.40")
    unknown = _pack({"name": "A", **MILL}, {"name": "B", **MILL}, weighs="")
    assert len(unknown.costs.postage.open) == 2
    dear = _pack({"name": "A", **MILL}, {"name": "B", **MILL}, bands={"500 g": "1.00", "1 kg": "9"})
    assert _postage(dear) == 2


def test_a_giving_day_that_is_past_is_said():
    gone = _pack({"name": "A", **MILL}, today=date(2028, 2, 1))
    assert any("18 December 2027, is past" in one for one in gone.complaints)
    assert not any("is past" in one for one in _pack({"name": "A", **MILL}).complaints)


@pytest.mark.parametrize("ending", [".csv", ".toml", ".xlsx", ".CSV"])
def test_a_table_is_told_what_a_list_is_written_as(tmp_path: Path, ending: str) -> None:
    path = tmp_path / f"list{ending}"
    path.write_text("name,basket\nAnn,small\n", encoding="utf-8")
    with pytest.raises(ProblemsFound) as told:
        load_giving_list(path)
    assert "ends in .yml" in told.value.problems[0].mend


def test_a_log_takes_what_the_command_calls_in():
    line = read_line(
        {"day": "2027-09-05", "bottled": "rosemary-salt", "number": 4, "in": "jar, 60 ml"}, {}
    )
    assert line.container == "jar, 60 ml"


def test_a_name_twice_is_told_however_it_is_written():
    both = [{"name": name, "basket": "small"} for name in ("Ann Marl", "ann  marl")]
    data = small_list(households=both)
    with pytest.raises(ProblemsFound, match="there twice"):
        check_list(read_dict(data), {one.slug: one for one in demo_recipes()})


@pytest.mark.parametrize("age", ["minus 3", "-3", -3])
def test_no_age_is_less_than_nothing(age):
    data = small_list(households=[{"name": "A", "basket": "small", "children": [age]}])
    with pytest.raises(ProblemsFound, match="is less than nothing, and no age"):
        read_dict(data)
