"""A list as a cook first writes it: read, or told in plain words, its line and what to write."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from giving.lists import TODAY, demo_recipes
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.giving.offering import make_offering
from stillroom.giving.reading import ReadList, read_giving_list
from stillroom.giving.who import read_age_months, read_pets
from stillroom.giving.written import read_day

# written the way people write such things, by nobody who had seen the model's words
FIRST_TRY = """\
giving list: Christmas baskets
Giving Day: 24 December 2026
from: Jo and Sam
baskets:
  small: 2 to eat, 1 drink
gifts:
  - Quince chutney
  - Rosemary salt
  - recipe: Bramble jelly
    by post: no
people:
  Nan:
    allergies: nuts and dairy
    by post: yes
  The Rowans:
    kids: [a baby of 8 months, "Wren, 3"]
    pets: dog
    avoid: none
    never: [coconut, bramble jelly]
    likes: [quince]
  Uncle Bo: small
prices:
  - granulated sugar: 1 kg for 1.15
  - {item: brandy, pack: 700 ml for 16.50}
hours: 6
stock:
  - 500 g caster sugar
"""


def read_first_try(text: str = FIRST_TRY, **said: str) -> ReadList:
    return read_giving_list(text, "list.yml", **said)


def test_a_first_try_is_read_whole():
    read = read_first_try()
    nan, rowans, bo = read.giving.households
    assert read.giving.giving_day == date(2026, 12, 24)
    assert read.giving.baskets["small"].eat == 2
    assert (nan.avoid, nan.delivery, nan.basket) == (("nuts", "dairy"), "by post", {"small": 1})
    assert (rowans.children, rowans.pets, rowans.avoid) == ((8, 36), frozenset({"dog"}), ())
    assert (bo.name, bo.basket) == ("Uncle Bo", {"small": 1})
    assert [price.packs[0][1] for price in read.giving.prices] == [
        Fraction(115, 100), Fraction(33, 2),
    ]  # fmt: skip
    assert read.giving.hours[5] == 6
    assert read.giving.stock.ingredients[0][1] == "caster sugar"


def test_its_names_are_those_of_the_book_and_every_line_is_kept():
    read = read_first_try()
    giving = make_offering(read, demo_recipes(), TODAY).giving
    assert [make.recipe for make in giving.makes] == [
        "quince-chutney", "rosemary-salt", "bramble-jelly",
    ]  # fmt: skip
    rowans = giving.households[1]
    assert (rowans.never, rowans.avoid_ingredients) == (("bramble-jelly",), ("coconut",))
    assert rowans.likes == ("quince-chutney",)
    assert read.line_of("households", 0, "avoid") == 13
    assert read.line_of("households", 1, "children") == 16
    assert read.line_of("prices", 0, "packs") == 23


MISTAKES = [
    ("24 December 2026", "24 December", 'list.yml:2: "giving day"',
     'Say the year as well: "24 December 2027".'),
    ("24 December 2026", "6/12/2026", "list.yml:2:",
     'Write "6 December 2026" or "12 June 2026".'),
    ("by post: yes", "by post: by goat", "list.yml:14:", 'Did you mean "by post"?'),
    ("nuts and dairy", "vegn", "list.yml:13:", 'Did you mean "vegan"?'),
    ("nuts and dairy", "gestational diabetes", "list.yml:13:",
     'Write "pregnant: yes" for the household.'),
    ("nuts and dairy", "allergies", "list.yml:13:",
     'Write what they cannot have: "avoid: [milk, hazelnuts]".'),
    ("pets: dog", "pets: unicorn", "list.yml:17:", "It may be: dog, cat, bird"),
    ("a baby of 8 months", "quite small", "list.yml:16:", "Write the age on giving day:"),
    ("Uncle Bo: small", "Uncle Bo: smal", "list.yml:21:", 'Did you mean "small"?'),
    ("- Quince chutney", "- Quince chutny", "list.yml:7:", 'Did you mean "quince-chutney"?'),
    ("1 kg for 1.15", "1 kg for 1,15", "list.yml:23:", 'Write "1.15".'),
    ("Giving Day: 24 December 2026\n", "", "list.yml:1:",
     'Say when the baskets go out: "giving day: 24 December 2027".'),
    ("  small: 2 to eat, 1 drink", "  small: plenty", "list.yml:5:", "it wants lines of its own"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "where", "mend"), MISTAKES, ids=lambda text: text[:20])
def test_what_is_not_read_is_told_with_its_line_and_what_to_write(old, new, where, mend):
    assert old in FIRST_TRY
    with pytest.raises(ProblemsFound) as found:
        make_offering(read_first_try(FIRST_TRY.replace(old, new, 1)), demo_recipes(), TODAY)
    told = str(found.value)
    assert where in told
    assert mend in told
    for word in ("YAML", "mapping", "dict", "NoneType", "Traceback"):
        assert word not in told


DAYS = [
    ("24 December 2026", (2026, 12, 24)), ("24th December 2026", (2026, 12, 24)),
    ("the 24th of December 2026", (2026, 12, 24)), ("December 24, 2026", (2026, 12, 24)),
    ("Dec 24, 2026", (2026, 12, 24)), ("24 Dec. 2026", (2026, 12, 24)),
    ("24. Dezember 2026", (2026, 12, 24)), ("1. März 2027", (2027, 3, 1)),
    ("Donnerstag, 24. Dezember 2026", (2026, 12, 24)), ("24 décembre 2026", (2026, 12, 24)),
    ("1er janvier 2027", (2027, 1, 1)), ("24 de diciembre de 2026", (2026, 12, 24)),
    ("24 dicembre 2026", (2026, 12, 24)), ("5 mei 2027", (2027, 5, 5)),
    ("Thursday 24 December 2026", (2026, 12, 24)), ("24/12/2026", (2026, 12, 24)),
    ("12/24/2026", (2026, 12, 24)), ("24.12.2026", (2026, 12, 24)), ("2026-12-24", (2026, 12, 24)),
    ("Christmas Eve 2026", (2026, 12, 24)), ("Easter 2027", (2027, 3, 28)),
    ("the Saturday before Christmas 2027", (2027, 12, 18)),
    ("soon", None), ("24 December", None), ("6/12/2026", None), ("31 February 2027", None),
    ("2026", None), ("", None),
]  # fmt: skip


@pytest.mark.parametrize(("said", "day"), DAYS, ids=lambda value: str(value)[:30])
def test_a_day_is_read_as_it_is_said_or_asked_for(said, day):
    if day:
        assert read_day(said) == date(*day)
        return
    with pytest.raises(Unreadable) as found:
        read_day(said)
    assert found.value.mend


AGES = [
    (4, 48), ("4", 48), ("4 years", 48), ("four", 48), ("4-year-old", 48), ("2 1/2", None),
    ("2 and a half", 30), ("8 months", 8), ("8 mths", 8), ("a baby of 8 months", 8),
    ("baby, 6 weeks", 1), ("Wren, 3", 36), ("Wren (3)", 36), ("twins aged 2", 24),
    ("newborn", 0), ("10 days", 0), ("teenager", None), ("", None), (True, None), ("-3", None),
    ("300", None),
]  # fmt: skip


@pytest.mark.parametrize(("said", "months"), AGES, ids=lambda value: str(value))
def test_an_age_is_read_as_it_is_said_and_never_older(said, months):
    if months is not None:
        assert read_age_months(said) == months
        return
    with pytest.raises(Unreadable):
        read_age_months(said)


@pytest.mark.parametrize(
    ("said", "kinds"),
    [
        ("dog", {"dog"}), (["dog", "cat"], {"dog", "cat"}),
        ("two cats and a puppy", {"cat", "dog"}),
        ("guinea pigs", {"rodent"}), (False, set()), ("none", set()), ("no", set()),
    ],
)  # fmt: skip
def test_animals_are_read_by_their_kind(said, kinds):
    assert read_pets(said) == kinds


def test_any_animal_may_be_meant_by_yes():
    assert {"dog", "cat", "bird"} <= read_pets(True)


# one list as four people might write it, and what the plain form of it says
PLAIN = {"name": "Mrs Finch", "basket": {"small": 1}, "avoid": ("eggs", "nuts")}
WAYS = [
    "households:\n  Mrs Finch: nuts, eggs\n",
    "households:\n  - Mrs Finch: nuts, eggs\n",
    "households:\n  - Mrs Finch: {avoid: nuts and eggs}\n",
    "Families:\n  - who: Mrs Finch\n    allergies: nuts and eggs\n",
    "households:\n  Mrs Finch: {cannot eat: [nuts, eggs]}\n",
    "PEOPLE:\n- {family: Mrs Finch, no: nuts & eggs, gets: Small}\n",
]
HEAD = (
    "Giving List: for the lane\ngiving-day: 24 Dec 2027\nbaskets: {small: 2 to eat}\nmakes: [a]\n"
)


@pytest.mark.parametrize("way", WAYS)
def test_a_household_is_read_however_it_is_written(way):
    (found,) = read_giving_list(HEAD + way, "list.yml").giving.households
    assert (found.name, found.basket, tuple(sorted(found.avoid))) == tuple(PLAIN.values())


@pytest.mark.parametrize(("said", "months"), [
    ("3 and 6", (36, 72)), ("3, 6", (36, 72)), ("Wren, 3", (36,)),
    ("Wren (3) and Ash (5)", (36, 60)),
    ("Wren, 3, and a baby of 8 months", (36, 8)),
    ("two and a half", (30,)), ("2 and a half", (30,)),
    ("three", (36,)), ("three and five", (36, 60)), ("eleven and nine", (132, 108)),
    ("Wren", None), ("3 and Ash", None),
])  # fmt: skip
def test_children_are_read_one_by_one(said, months):
    text = HEAD + f"households: [{{name: A, children: '{said}'}}]\n"
    if months is None:
        with pytest.raises(ProblemsFound, match="is not an age"):
            read_giving_list(text, "list.yml")
        return
    assert read_giving_list(text, "list.yml").giving.households[0].children == months


PRICES = [
    "prices: [{item: sugar, packs: [1 kg for 1.15]}]", "prices: {sugar: 1 kg for 1.15}",
    "prices:\n  - sugar: 1.15 / kg", "prices:\n  - 1 kg sugar: 1.15",
    "prices:\n  1 kg of sugar: £1.15", "prices:\n  - sugar, 1 kg for 1.15",
    "prices:\n  - 1 kg sugar for £1.15", "prices:\n  - sugar £1.15/kg",
]  # fmt: skip


@pytest.mark.parametrize("written", PRICES)
def test_a_price_is_read_however_it_is_written(written):
    text = HEAD + "households: [A]\n" + written
    (price,) = read_giving_list(text, "list.yml").giving.prices
    amount, cost, at_least = price.packs[0]
    assert (price.item, amount.low, amount.unit, cost, at_least) == (
        "sugar", 1, "kg", Fraction("1.15"), 0 if "/" in written else 1)  # fmt: skip


@pytest.mark.parametrize(("key", "mend"), [
    ("people: 4", "adults: 2"), ("age: 6", "children"),
])  # fmt: skip
def test_what_may_mean_two_things_is_asked(key, mend):
    text = HEAD + f"households: [{{name: A, {key}}}]\n"
    with pytest.raises(ProblemsFound, match=mend):
        read_giving_list(text, "list.yml")
