"""A season played through: what each thing noted changes in the pack, and what it leaves alone."""

from __future__ import annotations

from datetime import date

import pytest

from giving.lists import PRICES, demo_book, demo_recipes, read_dict, small_list
from stillroom.giving.log import ReadLog
from stillroom.giving.log_file import read_log
from stillroom.giving.log_names import Known, named_log
from stillroom.giving.names import with_names_of
from stillroom.giving.pack import Effort, kept_plan, pack_files, work_out
from stillroom.giving.pack_pages import pack_data
from stillroom.giving.second_look import find_breaches

RECIPES = {recipe.slug: recipe for recipe in demo_recipes()}
JANUARY, JUNE, NOVEMBER = date(2027, 1, 10), date(2027, 6, 4), date(2027, 11, 20)
BASKETS = {"small": {"eat": 2, "drink": 1, "cost": 1.2}}
HOUSEHOLDS = [
    {"name": "Ysolde Fennimore", "basket": "small"},
    {"name": "The Cragbies", "basket": {"small": 2}, "avoid": ["gluten"], "adults": 2},
    {"name": "Old Tam", "basket": "small", "delivery": "by post"},
]
DATA = small_list(baskets=BASKETS, households=HOUSEHOLDS, prices=PRICES)


def log_of(rows):
    text = "giving log:\n" + "".join(f"  - {row}\n" for row in rows)
    named = with_names_of(read_dict(DATA), RECIPES)
    return named_log(read_log(text, "log.yml"), Known(named.giving, RECIPES))


def plan(today, rows=(), kept=None):
    log = log_of(rows) if rows else ReadLog()
    pack = work_out(
        read_dict(DATA), demo_recipes(), demo_book().settings, today, Effort(30, 0), kept, log
    )
    assert find_breaches(pack.offering, pack.plan) == ()
    return pack


@pytest.fixture(scope="module")
def january():
    return plan(JANUARY)


def begun_and_filled(pack, less=()):
    """Return the log of a season in which all went as planned, but for the recipes in `less`."""
    rows = []
    for batch in pack.making.batches:
        slug, line = batch.recipe.slug, batch.timeline
        if slug in less:
            continue
        for key, count in batch.fills.items():
            rows.append((line.start, f"begun: {slug}, batches: {batch.count}"))
            number = count + int(batch.spare / pack.offering.offer(key).share)
            if line.made <= NOVEMBER:
                rows.append((line.made, f"bottled: {slug}, number: {number}"))
    return [f"{{day: {day}, {words}}}" for day, words in sorted(rows) if day <= NOVEMBER]


def test_nothing_noted_changes_nothing(january):
    again = plan(JANUARY, kept=kept_plan(january))
    assert again.plan.gifts == january.plan.gifts
    assert pack_data(again)["changes"] == ()


def test_a_batch_that_goes_as_planned_changes_no_present(january):
    rows = begun_and_filled(january)
    assert rows
    later = plan(NOVEMBER, rows, kept_plan(january))
    assert later.plan.gifts == january.plan.gifts
    made = {line.name for line in later.season.of_kind("bottled")}
    assert all(p.from_shelf for p in later.making.presents if p.recipe.slug in made)


def test_a_failed_batch_is_told_as_the_reason_and_the_rest_stays(january):
    first = next(b for b in january.making.batches if b.timeline.made < NOVEMBER)
    slug = first.recipe.slug
    rows = [
        *begun_and_filled(january, less=[slug]),
        f"{{day: {first.timeline.start}, begun: {slug}}}",
        f"{{day: {max(first.timeline.start, JUNE)}, failed: {slug}, words: burnt}}",
    ]
    later = plan(NOVEMBER, rows, kept_plan(january))
    changes = pack_data(later)["changes"]
    told = [words for words in changes if "failed on" in words and "(burnt)" in words]
    assert told, changes
    kept = sum(
        set(january.plan.gifts[n]) & set(later.plan.gifts[n]) == set(january.plan.gifts[n])
        for n in january.plan.gifts
    )
    had = sum(any(key.startswith(slug) for key in keys) for keys in january.plan.gifts.values())
    assert kept >= len(january.plan.gifts) - had


def test_what_was_filled_was_begun_though_nobody_noted_that(january):
    rows = [row for row in begun_and_filled(january) if "bottled" in row]
    filled = {row.partition("bottled: ")[2].partition(",")[0] for row in rows}
    assert filled
    later = plan(NOVEMBER, rows, kept_plan(january))
    titles = {RECIPES[slug].title for slug in filled}
    for words in pack_data(later)["changes"]:
        assert not (any(title in words for title in titles) and "was not" in words), words


def test_a_basket_that_went_is_planned_no_more_and_keeps_its_number(january):
    things = ", ".join(january.plan.gifts[2])
    rows = [
        *begun_and_filled(january),
        f"{{day: 2027-11-19, given: The Cragbies, things: [{things}]}}",
    ]
    later = plan(NOVEMBER, rows, kept_plan(january))
    assert set(later.plan.gifts) == {1, 3, 4}
    data = pack_data(later)
    assert [(one["number"], one["household"]) for one in data["gone"]] == [(2, "The Cragbies")]
    assert kept_plan(later).gifts["The Cragbies", 1] == january.plan.gifts[2]
    # what is in its jar stays with whom it was made for; what is still to be made may change
    filled = {line.name for line in later.season.of_kind("bottled")}
    for n in (1, 3, 4):
        theirs = {key for key in january.plan.gifts[n] if key.partition(" in ")[0] in filled}
        assert theirs
        assert theirs <= set(later.plan.gifts[n])


def test_pinned_and_struck_are_kept_and_said(january):
    old = january.plan.gifts[1][0].partition(" in ")[0]
    offered = [offer.recipe for offer in january.offering.problem.offers_of("eat")]
    new = next(
        slug
        for slug in offered
        if slug not in {key.partition(" in ")[0] for key in january.plan.gifts[1]}
        and (1, slug) not in january.offering.problem.refused
    )
    rows = [
        f"{{day: 2027-02-01, struck: Ysolde Fennimore, of: {old}}}",
        f"{{day: 2027-02-01, pinned: Ysolde Fennimore, of: {new}}}",
    ]
    later = plan(date(2027, 2, 2), rows, kept_plan(january))
    slugs = {key.partition(" in ")[0] for key in later.plan.gifts[1]}
    assert new in slugs
    assert old not in slugs
    changes = " ".join(pack_data(later)["changes"])
    assert "you struck it out on 1 Feb" in changes or "you pinned that on 1 Feb" in changes


def test_money_spent_stays_spent_and_is_not_to_pay_again(january):
    sugar = next(row for row in january.rows if row.item == "granulated sugar")
    rows = ["{day: 2027-01-12, bought: granulated sugar, amount: 50 kg, paid: 52.50}"]
    later = plan(date(2027, 1, 13), rows, kept_plan(january))
    assert "£52.50" in pack_data(later)["spent"]["total"]
    bought = next(row for row in later.rows if row.item == "granulated sugar")
    assert (bought.to_buy, bought.price) == ("in the house", 0)
    assert later.costs.paid <= january.costs.paid - sugar.price


def test_the_week_shows_what_is_due_ticks_what_is_noted_and_tells_what_is_late(january):
    rows = [
        "{day: 2027-06-01, begun: quince-ratafia}",
        "{day: 2027-06-02, tended: quince-ratafia}",
        "{day: 2027-05-30, gave back: Old Tam, words: a jar of plums}",
    ]
    week = pack_data(plan(JUNE, rows))["week"]
    late = [row["words"] for row in week["late"]]
    assert [words for words in late if words.startswith("Thank Old Tam for a jar of plums")]
    today = [row["words"] for day in week["days"] for row in day["tasks"]]
    assert [words for words in today if "Quince ratafia" in words]
    rows.append("{day: 2027-06-04, tended: quince-ratafia}")
    rows.append("{day: 2027-06-04, thanked: Old Tam}")
    week = pack_data(plan(JUNE, rows))["week"]
    assert not week["late"]
    assert [r for day in week["days"] for r in day["tasks"] if r["done"]]


def test_nobody_has_the_same_twice_running_unless_they_like_it():
    def gifts_of(**more):
        households = [{"name": "Old Tam", "basket": "small", **more}]
        data = DATA | {"households": households, "makes": DATA["makes"][3:7]}
        pack = work_out(read_dict(data), demo_recipes(), demo_book().settings, JANUARY)
        return pack, {key.partition(" in ")[0] for keys in pack.plan.gifts.values() for key in keys}

    pack, gifts = gifts_of()
    assert "cocoa-marshmallow-mix" in gifts
    had = {"had": {2026: sorted(gifts)}}
    pack, again = gifts_of(**had)
    assert not again & gifts
    assert any("last year" in words for words in pack.complaints), pack.complaints
    pack, liked = gifts_of(**had, likes=sorted(gifts))
    assert liked == gifts
    pack, _ = gifts_of(had={2025: sorted(gifts)})
    assert pack.complaints == ()


def test_a_parcel_abroad_has_its_label_and_what_is_not_known_is_said():
    households = [
        {"name": "Old Tam", "to": "Tam", "basket": "small", "delivery": "by post",
         "country": "FR", "address": "3 rue du Puits, 29000 Quimper, France"},
        {"name": "Near Nell", "basket": "small", "delivery": "by post"},
        {"name": "By Hand", "basket": "small"},
    ]  # fmt: skip
    makes = [dict(make) for make in DATA["makes"]]
    makes[4] |= {"weighs": "90 g", "shop price": 4.5}
    data = DATA | {"households": households, "makes": makes, "address": "1 Loft Lane, Skerrow"}
    pack = work_out(read_dict(data), demo_recipes(), demo_book().settings, JANUARY)
    tam, nell = pack_data(pack)["parcels"]
    assert (tam["to"], tam["address"], tam["country"]) == (
        "Tam", ["3 rue du Puits", "29000 Quimper"], "France"
    )  # fmt: skip
    assert (nell["address"], nell["country"], nell["customs"]) == ([], "", None)
    rows = {row["what"].partition(":")[0]: row for row in tam["customs"]["rows"]}
    assert len(rows) == len(pack.plan.gifts[1])
    for what, row in rows.items():
        salt = what == "1 Rosemary salt"
        assert row["weight"] == ("90 g" if salt else "not known")
        assert row["value"] == "£4.50" if salt else row["value"]
    assert tam["customs"]["weight"] == "not known"
    html = pack_files(pack)["parcels.html"].decode()
    assert "The address is not on the list." in html
    assert "By Hand" not in html


def test_what_a_shelf_sends_abroad_has_the_value_of_one_made_again():
    """By hand: salt 1.90, 15 g rosemary 0.75, 2 g peel 0.08, of which a jar has a quarter: 0.68."""
    prices = [
        {"item": "coarse sea salt", "packs": ["250 g for 1.90"]},
        {"item": "dried rosemary", "packs": ["20 g for 1.00"]},
        {"item": "lemon peel", "packs": ["50 g for 2.00"]},
        {"item": "jar, 60 ml", "packs": ["1 for 0.60"], "section": "containers"},
    ]
    made = {"recipe": "rosemary-salt", "number": 3, "made on": "2027-01-05"}
    data = DATA | {
        "baskets": {"small": {"eat": 1}},
        "households": [
            {"name": "Old Tam", "basket": "small", "delivery": "by post", "country": "FR"}
        ],
        "makes": [{"recipe": "rosemary-salt", "container": "jar, 60 ml"}],
        "stock": {"made": [made | {"container": "jar, 60 ml"}]},
        "prices": prices,
    }
    pack = work_out(read_dict(data), demo_recipes(), demo_book().settings, JANUARY)
    (tam,) = pack_data(pack)["parcels"]
    assert [row["value"] for row in tam["customs"]["rows"]] == ["£1.28"]
    assert not tam["customs"]["within_union"]
    unpriced = data | {"prices": prices[1:]}
    pack = work_out(read_dict(unpriced), demo_recipes(), demo_book().settings, JANUARY)
    (tam,) = pack_data(pack)["parcels"]
    assert [row["value"] for row in tam["customs"]["rows"]] == ["not known"]
