"""Closing a year: the next list is seeded, and it reads and fits the book."""

from __future__ import annotations

from datetime import date

import pytest
import yaml

from giving.lists import demo_recipes, read_dict, small_list
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.closing import close_year
from stillroom.giving.reading import read_giving_list

HOUSEHOLDS = [
    {"name": "The Cragbies", "basket": "small", "children": ["8 months", "18 months", 6]},
    {"name": "Old Tam", "basket": "small", "had": {2026: ["rosemary-salt"]}, "pregnant": True},
]
BATCHES = [
    {"recipe": "rosemary-salt", "started": "2027-05-01", "made on": "2027-05-14", "number": 8,
     "given": 5},
    {"recipe": "bramble-jelly", "started": "2027-08-01", "made on": "2027-08-02", "number": 6,
     "given": 6},
]  # fmt: skip
GIVEN = {
    ("The Cragbies", 1): ("rosemary-salt", "quince-ratafia in bottle, 100 ml"),
    ("Old Tam", 1): ("bramble-jelly",),
}


def closed(**changes):
    data = small_list(households=HOUSEHOLDS, batches=BATCHES) | changes
    read = read_dict(data)
    return close_year(read, yaml.safe_dump(data, sort_keys=False), GIVEN)


def test_the_next_list_reads_and_fits_the_book():
    read = read_giving_list(closed(), "next.yml")
    check_list(read, {recipe.slug: recipe for recipe in demo_recipes()})
    assert read.giving.giving_list == "Winter 2028"
    assert read.giving.giving_day == date(2028, 12, 16)  # the Saturday of the same week
    assert read.giving.batches == ()


def test_what_was_given_and_ages_are_carried_on():
    cragbies, tam = read_giving_list(closed(), "next.yml").giving.households
    assert cragbies.had == {2027: ("quince-ratafia", "rosemary-salt")}
    assert tam.had == {2027: ("bramble-jelly",), 2026: ("rosemary-salt",)}
    assert cragbies.children == (20, 30, 84)
    assert (tam.pregnant, tam.children) == (False, (6,))


def test_what_is_over_goes_to_the_stock():
    (made,) = read_giving_list(closed(), "next.yml").giving.stock.made
    assert (made.recipe, made.number, made.made_on) == ("rosemary-salt", 3, date(2027, 5, 14))


def test_a_pack_of_strangers_is_refused():
    with pytest.raises(ProblemsFound, match="Old Tam, who are not on this list"):
        closed(households=HOUSEHOLDS[:1])
