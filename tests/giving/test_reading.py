"""The giving list's reader: the documented example, and every mistake with its line and mend."""

from __future__ import annotations

import json
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from giving.lists import demo_recipes
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.list_schema import giving_list_schema
from stillroom.giving.reading import load_giving_list, read_giving_list

EXAMPLE = Path(__file__).parent / "data" / "small-list.yml"


def test_the_example_reads_and_fits_the_book():
    read = load_giving_list(EXAMPLE)
    check_list(read, {recipe.slug: recipe for recipe in demo_recipes()})
    giving = read.giving
    rowans = giving.households[0]
    assert giving.giving_day == date(2027, 12, 18)
    assert (rowans.basket, rowans.children, rowans.budget) == ({"large": 1}, (72, 8), Fraction(9))
    assert giving.hours[12] == 10
    assert giving.hours[1] == 6
    assert read.line_of("households", 1, "avoid") == 56


def test_every_key_of_the_list_is_in_the_example():
    schema = giving_list_schema()
    text = EXAMPLE.read_text(encoding="utf-8")
    unused = {
        "currency",
        "language",
        "cost",
        "pregnant",
        "pets",
        "adults",
        "batches",
        "follows",
        "said",
    }  # said in words or elsewhere
    keys = set(schema["properties"])
    for part in schema["$defs"].values():
        keys |= set(part.get("properties", ()))
    assert [key for key in sorted(keys - unused) if key not in text] == []


def test_the_schema_takes_plain_json():
    assert json.loads(json.dumps(giving_list_schema()))["title"] == "A giving list"


# what is replaced in the example, by what, and the whole message
MISTAKES = [
    ("giving day: 2027-12-18", "giving day: 18 December",
     'x.yml:4: "giving day": "18 December" is not a day of the calendar. Say the year as well: '
     '"18 December 2027".'),
    ("sort: drink  ", "sort: drik  ",
     'x.yml:19: "quince-ratafia, sort" is not right: it has to be one of: eat, drink, craft.'
     ' It says "drik".'),
    ("adults: 2", "adullts: 2",
     'x.yml:44: "adullts" has no place here. Did you mean "adults"?'),
    ("8 months", "8 moons",
     'x.yml:45: "The Rowans at Ferry Cottage, children, no. 2": "8 moons" is not an '
     'age. Write the age on giving day: "4" for years, "8 months" or "6 weeks".'),
    ("avoid: [gluten, milk]", "avoid: [glutten, milk]",
     'x.yml:42: "glutten" is nothing that can be avoided. Did you mean "gluten"?'),
    ("traces are fine: [milk]", "traces are fine: [gluten]", ""),
    ("1 l for 18.00", "12 for 18.00",
     'x.yml:72: "vodka": "a count" does not measure the same thing as "ml". Give every pack of '
     "one thing by weight, or every one by volume."),
    ("1 l for 18.00", "1 l for 18.005",
     'x.yml:72: "vodka, packs, no. 2": "18.005" is finer than a penny. Write it with 2 '
     "decimals."),
    ("basket: large ", "basket: larg ",
     'x.yml:41: "larg" is not a kind of basket. Did you mean "large"?'),
    ("likes: [quince-chutney]", "likes: [quince-chutny]",
     'x.yml:46: "quince-chutny" is not a recipe of the book. Did you mean "quince-chutney"?'),
    ("name: Old Torquil", "name: The Rowans at Ferry Cottage",
     'x.yml:49: "The Rowans at Ferry Cottage" is there twice. Give one another name.'),
    ("must have: [cocoa-marshmallow-mix]", "must have: [quince-ratafia]",
     "x.yml:58: Old Torquil must have quince-ratafia, but it contains alcohol. Take it out of one "
     "or the other."),
    ("hours: {every month: 6", "hours: {evry month: 6",
     'x.yml:77: "hours": "evry month" is not a month. Did you mean "every month"?'),
    ("delivery: by post", "delivery: by boat",
     'x.yml:51: "Old Torquil, delivery": "by boat" is not a way to deliver. Did you '
     'mean "by post"?'),
    ("giving list: Christmas 2027", "a list: Christmas 2027",
     'x.yml:1: This is not a giving list. Begin it with "giving list: Christmas 2027".'),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "message"), MISTAKES, ids=lambda text: text[:24])
def test_mistake(old, new, message):
    text = EXAMPLE.read_text(encoding="utf-8")
    assert old in text
    text = text.replace(old, new, 1)
    if not message:
        check_list(read_giving_list(text, "x.yml"), {r.slug: r for r in demo_recipes()})
        return
    with pytest.raises(ProblemsFound) as found:
        check_list(read_giving_list(text, "x.yml"), {r.slug: r for r in demo_recipes()})
    assert message in [str(problem) for problem in found.value.problems]


def test_all_mistakes_come_out_in_one_run():
    text = EXAMPLE.read_text(encoding="utf-8").replace("8 months", "8 moons")
    text = text.replace("adults: 2", "adults: a few").replace("by post   ", "by goat   ")
    with pytest.raises(ProblemsFound) as found:
        read_giving_list(text, "x.yml")
    assert len(found.value.problems) == 3
