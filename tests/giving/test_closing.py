"""Closing a year: the next list is seeded, and it reads and fits the book."""

from __future__ import annotations

from collections import Counter
from datetime import date, timedelta

import click
import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from giving.lists import demo_book, demo_recipes, read_dict, small_list
from stillroom.commands.terminal import read_day
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.closing import _MOVED, _MOVED_AT_FIRST, _without_head, close_year
from stillroom.giving.larder_stock import LarderStock
from stillroom.giving.log import ReadLog
from stillroom.giving.log_file import read_log
from stillroom.giving.log_names import Known, named_log
from stillroom.giving.names import with_names_of
from stillroom.giving.reading import read_giving_list

RECIPES = {recipe.slug: recipe for recipe in demo_recipes()}
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
    return close_year(read, yaml.safe_dump(data, sort_keys=False), GIVEN, RECIPES)


def test_the_next_list_reads_and_fits_the_book():
    read = read_giving_list(closed(), "next.yml")
    check_list(read, RECIPES)
    assert read.giving.giving_list == "Winter 2028"
    assert read.giving.giving_day == date(2028, 12, 16)  # the Saturday of the same week
    assert read.giving.batches == ()


def test_what_was_given_and_ages_are_carried_on():
    cragbies, tam = read_giving_list(closed(), "next.yml").giving.households
    assert cragbies.had == {2027: ("quince-ratafia", "rosemary-salt")}
    assert tam.had == {2027: ("bramble-jelly",), 2026: ("rosemary-salt",)}
    assert cragbies.children == (20, 30, 84)
    assert (tam.pregnant, tam.children) == (False, (6,))


def test_whoever_was_pregnant_among_what_is_avoided_is_not_next_year():
    rows = [{"name": "Old Tam", "basket": "small", "avoid": "schwanger, keine Nüsse"}]
    given = {("Old Tam", 1): ("bramble-jelly",)}
    data = small_list(households=rows)
    text = close_year(read_dict(data), yaml.safe_dump(data, sort_keys=False), given, RECIPES)
    (tam,) = read_giving_list(text, "next.yml").giving.households
    assert (tam.avoid, tam.pregnant, tam.children) == (("keine Nüsse",), False, (6,))


def test_twins_are_two_and_stay_two():
    twins = {"name": "The Marches", "basket": "small", "children": "twins aged 3"}
    households = [*HOUSEHOLDS, twins]
    *_, marches = read_giving_list(closed(households=households), "next.yml").giving.households
    assert marches.children == (48, 48)


def test_what_is_over_goes_to_the_stock():
    (made,) = read_giving_list(closed(), "next.yml").giving.stock.made
    assert (made.recipe, made.number, made.made_on) == ("rosemary-salt", 3, date(2027, 5, 14))


def test_a_pack_of_strangers_is_refused():
    with pytest.raises(ProblemsFound, match="Old Tam, who are not on this list"):
        closed(households=HOUSEHOLDS[:1])


WRITTEN = """\
# Nan's list, in pencil
giving list: Winter 2027          # the year of the gale
day: Saturday 18 December 2027
from: Hob and Nan

baskets:
  small: 2 to eat, 1 drink

makes:            # what we make
  - Rosemary salt
  - Bramble jelly
  - {recipe: quince-ratafia, container: "bottle, 100 ml"}
  - cocoa-marshmallow-mix

people:
  # by the ferry
  The Cragbies:
    allergies: gluten
    kids: 8 months, 6
  Old Tam:

have:
  containers: {"jar, 200 ml": 9, "bottle, 100 ml": 2}
  ingredients:
    - 5 kg granulated sugar   # from the cash and carry
    - 500 g quinces           # in the loft
  made:
    - {recipe: rosemary-salt, number: 3, made on: 2027-02-01}

prices:
  - granulated sugar: 1 kg for 1.15     # as of May
"""
LOG = [
    "{day: 2027-08-20, begun: bramble-jelly}",
    "{day: 2027-08-20, bottled: bramble-jelly, number: 6, container: 'jar, 200 ml'}",
    "{day: 2027-11-02, begun: quince-ratafia}",
    "{day: 2027-12-18, given: The Cragbies, things: [bramble-jelly, rosemary-salt]}",
    "{day: 2027-12-24, liked: The Cragbies, of: bramble-jelly, words: gone in a day}",
    "{day: 2027-12-24, disliked: The Cragbies, of: rosemary-salt}",
]


def written_closed(text=WRITTEN, rows=LOG, given=None):
    read = read_giving_list(text, "list.yml")
    log = read_log("giving log:\n" + "".join(f"  - {row}\n" for row in rows), "log.yml")
    named = with_names_of(read, RECIPES)
    log = named_log(log, Known(named.giving, RECIPES)) if rows else ReadLog()
    return close_year(read, text, given or {}, RECIPES, None, log)


def test_a_list_keeps_its_notes_and_its_own_words():
    after = written_closed()
    assert (
        after
        == """\
# Seeded from the list of 2027 when it was closed. Look over every household: ages
# are a year on, and a child expected then is put down as six months old. Strike out of
# the stock what has been eaten or has spoiled since. Private.
# Nan's list, in pencil
giving list: Winter 2028          # the year of the gale
day: 2028-12-16
follows: Winter 2027
from: Hob and Nan

baskets:
  small: 2 to eat, 1 drink

makes:            # what we make
  - Rosemary salt
  - Bramble jelly
  - {recipe: quince-ratafia, container: "bottle, 100 ml"}
  - cocoa-marshmallow-mix

people:
  # by the ferry
  The Cragbies:
    allergies: gluten
    kids: [20 months, 7]
    had: {2027: [bramble-jelly, rosemary-salt]}
    said: {2027: ['liked bramble-jelly: gone in a day', did not like rosemary-salt]}
    likes: [bramble-jelly]
    never: [rosemary-salt]
  Old Tam:

have:
  containers: {"jar, 200 ml": 3, "bottle, 100 ml": 2}
  ingredients:
    - 3.9 kg granulated sugar # from the cash and carry
  made:
    - {recipe: rosemary-salt, number: 2, made on: 2027-02-01}
    - {recipe: bramble-jelly, number: 5, container: 'jar, 200 ml', made on: 2027-08-20}
prices:
  - granulated sugar: 1 kg for 1.15     # as of May
batches:
  - recipe: quince-ratafia
    started: 2027-11-02
"""
    )


def test_what_is_on_its_way_stays_on_its_way():
    (batch,) = read_giving_list(written_closed(), "next.yml").giving.batches
    assert (batch.recipe, batch.started, batch.made_on) == (
        "quince-ratafia", date(2027, 11, 2), None
    )  # fmt: skip


def test_a_basket_nobody_noted_is_taken_to_have_gone_as_planned():
    given = {("The Cragbies", 1): ("bramble-jelly",), ("Old Tam", 1): ("rosemary-salt",)}
    giving = read_giving_list(written_closed(given=given), "next.yml").giving
    assert giving.households[1].had == {2027: ("rosemary-salt",)}
    assert {m.recipe: m.number for m in giving.stock.made} == {
        "rosemary-salt": 1, "bramble-jelly": 5
    }  # fmt: skip


def in_the_house(text):
    """Return all that a list says is there, of every food, container and present."""
    read = with_names_of(read_giving_list(text, "list.yml"), RECIPES)
    stock = LarderStock.of_list(read.giving)
    found = Counter({key: held.amount for key, held in stock.foods.items()})
    found.update(stock.containers)
    for made in read.giving.stock.made:
        found[f"made {made.recipe}"] += made.number
    for batch in read.giving.batches:
        found[f"made {batch.recipe}"] += (batch.number or 0) - batch.given
        found[f"going {batch.recipe}"] += batch.batches
    return found


SLUGS = ("rosemary-salt", "bramble-jelly", "quince-ratafia")
NOTED = st.lists(
    st.one_of(
        st.tuples(st.just("begun"), st.sampled_from(SLUGS)),
        st.tuples(st.just("bottled"), st.sampled_from(SLUGS), st.integers(0, 9)),
        st.tuples(st.just("used"), st.sampled_from(SLUGS), st.integers(0, 9)),
        st.tuples(st.just("spoiled"), st.sampled_from(SLUGS)),
        st.tuples(st.just("given"), st.sampled_from(("The Cragbies", "Old Tam"))),
    ),
    max_size=8,
)


def rows_of(noted):
    """Return lines of a log, and how many of each were filled."""
    rows, filled = [], Counter()
    day = date(2027, 3, 1)
    for place, (kind, name, *number) in enumerate(noted):
        more = f", number: {number[0]}" if number else ""
        more += ", things: [bramble-jelly, rosemary-salt]" if kind == "given" else ""
        if kind == "bottled":
            filled[f"made {name}"] += number[0]
        rows.append(f"{{day: {day + timedelta(days=place)}, {kind}: {name}{more}}}")
    return rows, filled


@settings(max_examples=60, deadline=None)
@given(NOTED)
def test_closing_never_breeds_stock(noted):
    rows, filled = rows_of(noted)
    try:
        after = written_closed(rows=rows)
    except ProblemsFound as found:  # told, and nothing is closed
        told = ("are going", "has gone already", "are more than")
        if not any(words in str(found) for words in told):
            raise
        return
    before, now = in_the_house(WRITTEN), in_the_house(after)
    begun = Counter(f"going {name}" for kind, name, *_ in noted if kind == "begun")
    for thing, number in now.items():
        assert 0 <= number <= before[thing] + filled[thing] + begun[thing], thing
    # a second year in which nothing happens changes nothing of it
    assert in_the_house(written_closed(text=after, rows=())) == now


def test_what_stands_under_stock_and_batches_is_one_and_gone_once():
    batch = "\nbatches:\n  - {recipe: rosemary-salt, started: 2027-01-05, made on: 2027-02-01, "
    text = WRITTEN + batch + "number: 9, given: 6}\n"
    rows = [f"{{day: 2027-12-18, given: {name}, things: [rosemary-salt]}}" for name in (
        "The Cragbies", "Old Tam",
    )]  # fmt: skip
    rows.append("{day: 2027-12-19, used: rosemary-salt, number: 1}")
    giving = read_giving_list(written_closed(text=text, rows=rows), "next.yml").giving
    assert giving.stock.made == ()
    assert giving.batches == ()


def test_the_days_of_the_list_move_with_giving_day_and_that_is_said():
    posting = [
        {"service": "post", "last day": "11 December 2027", "bands": {"1 kg": 4}},
        {"service": "by hand"},
    ]
    households = [
        HOUSEHOLDS[0] | {"opens": "19 December 2027"},
        HOUSEHOLDS[1] | {"opens": "24 December 2027"},
    ]
    text = closed(
        posting=posting,
        households=households,
        **{"days off": ["31 July to 1 August 2027", "26 September 2027"]},
    )
    giving = read_giving_list(text, "next.yml").giving
    assert [service.last_day for service in giving.posting] == [date(2028, 12, 9), None]
    assert giving.households[0].opens == date(2028, 12, 17)
    assert giving.households[1].opens == date(2028, 12, 24)
    assert giving.days_off == {date(2028, 7, 29), date(2028, 7, 30), date(2028, 9, 24)}
    assert "nobody has named this year's" in text
    assert "nobody has named" not in closed()
    bare = [{"service": "post", "last day": "11 December"}]
    moved = read_giving_list(closed(posting=bare), "next.yml").giving
    assert moved.posting[0].last_day == date(2028, 12, 9), "a day without its year moves as well"


def test_a_day_after_a_command_is_read_with_its_year_as_one_says_it():
    after, book = date(2027, 12, 18), demo_book()
    said = ("16 December 2028", "16. Dezember 2028", "2028-12-16", "16 Dec 2028")
    assert {read_day(one, "--give", after, book) for one in said} == {date(2028, 12, 16)}
    assert read_day("24 June", "--give", after, book) == date(2028, 6, 24)
    for wrong in ("31 February 2028", "4/5/2028", "someday"):
        with pytest.raises(click.BadParameter):
            read_day(wrong, "--give", after, book)


@pytest.mark.parametrize("moved", [_MOVED, _MOVED_AT_FIRST, ""])
@pytest.mark.parametrize("more", ["Private.", "Strike out of\n# the stock all of it. Private."])
def test_the_head_of_an_earlier_closing_is_taken_off_whole(moved, more):
    head = "# Seeded from the list of 2026 when it was closed. Look over every household: ages\n"
    head += f"# are a year on, and a child expected then is put down as six months old. {more}\n"
    own = "# Nan's list. Private.\ngiving list: Winter 2027\n"
    assert _without_head(head + moved + own) == own
