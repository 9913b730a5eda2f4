"""Lists of other countries: their money, the book's own pint, hours and feasts in six languages.

The lists are invented; what a household says of itself is written as it is said there. Every row's
expectation was written before it was tried.
"""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest

from giving.lists import PRICES, TODAY, demo_book, demo_recipes, random_list, read_dict, small_list
from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.explaining import say_how_good
from stillroom.giving.offering import make_offering
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.pack_pages import pack_data
from stillroom.giving.planning import plan_gifts
from stillroom.giving.reading import read_giving_list
from stillroom.giving.replanning import _days
from stillroom.giving.who_else import what_a_name_tells
from stillroom.giving.written import read_day
from stillroom.giving.written_time import read_weight

SETTINGS = demo_book().settings


def in_yen(data: dict) -> dict:
    """Return a list whose every price is a hundred times as many yen."""

    def dearer(pack: str) -> str:
        size, price = pack.split(" for ")
        return f"{size} for {Fraction(price) * 100}"

    prices = [{**row, "packs": [dearer(pack) for pack in row["packs"]]} for row in data["prices"]]
    baskets = {
        kind: {**held, "cost": int(Fraction(str(held["cost"])) * 100)} if "cost" in held else held
        for kind, held in data["baskets"].items()
    }
    households = [
        {**one, "budget": int(Fraction(str(one["budget"])) * 100)} if "budget" in one else one
        for one in data["households"]
    ]
    changed = {"prices": prices, "baskets": baskets, "households": households, "currency": "JPY"}
    return data | changed


@pytest.mark.parametrize("seed", range(6))
def test_money_of_another_size_plans_the_same_gifts(seed: int) -> None:
    """A plan of yen left every basket empty: a pack of butter was dearer than an empty place."""
    data = random_list(seed) | {"prices": PRICES}
    data.pop("hours", None)
    here, there = (
        make_offering(read_dict(one), demo_recipes(), TODAY, settings=SETTINGS).problem
        for one in (data, in_yen(data))
    )
    assert (here.money.step, there.money.step) == (1, 100)
    plans = plan_gifts(here, 30), plan_gifts(there, 30)
    assert [plan.proof for plan in plans] == ["proven best"] * 2
    assert abs(plans[0].points - plans[1].points) < Fraction(1, 4)  # a yen is rounded otherwise
    assert plans[0].empty == plans[1].empty


def test_nothing_on_offer_is_too_dear_to_be_given() -> None:
    """One price with too many noughts is told by the total, and by no empty basket."""
    makes = [{"recipe": "vanilla-sugar"}, {"recipe": "rosemary-salt"}]
    data = small_list(
        makes=makes,
        baskets={"small": {"eat": 2}},
        prices=[{"item": "vanilla pods", "packs": ["10 for 9,999.00"]}, *PRICES],
    )
    offering = make_offering(read_dict(data), demo_recipes(), TODAY, settings=SETTINGS)
    plan = plan_gifts(offering.problem, 30)
    assert plan.empty == {}


def test_a_budget_is_said_and_raised_as_money() -> None:
    data = small_list(makes=[{"recipe": "vanilla-sugar", "cost": 9.5}], baskets={"s": {"eat": 1}})
    data["households"] = [{"name": "Nell", "basket": "s", "budget": 12.5}]
    data["makes"] = [{"recipe": "vanilla-sugar", "cost": 14}]
    for changes, words in (
        ({}, "their budget is £12.50. Raise their budget by £2.00."),
        ({"currency": "JPY"}, "their budget is JP¥1,250. Raise their budget by JP¥200."),
    ):
        if changes:
            data["households"][0]["budget"], data["makes"][0]["cost"] = 1250, 1400
        pack = work_out(read_dict(data | changes), demo_recipes(), SETTINGS, TODAY, Effort(5))
        assert any(words in said for said in pack.complaints), pack.complaints


@pytest.mark.parametrize(
    ("written", "currency", "language", "value"),
    [
        ("Rs. 65", "INR", "en_IN", "65"),
        ("₹65/-", "INR", "en_IN", "65"),
        ("₹1,05,000", "INR", "en_IN", "105000"),  # a lakh and five thousand
        ("260円", "JPY", "ja", "260"),
        ("14.90 NIS", "ILS", "en", "14.90"),
        ("12 lei", "RON", "ro", "12"),
        ("S$12.50", "SGD", "en_SG", "12.50"),
        ("25 dhs", "AED", "en", "25"),
        ("1 017,50 kr", "SEK", "sv", "1017.50"),
    ],
)
def test_prices_as_they_are_written_elsewhere(written, currency, language, value) -> None:
    assert parse_money(written, currency, language) == Fraction(value)


def _read(rows: str, language: str = "en_GB", country: str = "GB", units: str = "metric"):
    head = "giving list: L\ngiving day: 2027-12-18\nbaskets: {s: 1 eat}\nmakes: [vanilla-sugar]\n"
    people = "" if "households" in rows else "households: [Ann]\n"
    return read_giving_list(
        f"{head}{people}{rows}", "l.yml", "EUR", language, country, units
    ).giving


def test_a_pint_and_an_ounce_are_the_books_own() -> None:
    """A book of the US was read by the imperial pint: a fifth too much, in money as well."""
    rows = "prices: {milk: 1 pint for 2}\nstock: [1 pint brandy]\n"
    us, metric = _read(rows, units="us"), _read(rows)
    for one, unit in ((us, "us_pint"), (metric, "imp_pint")):
        assert one.prices[0].packs[0][0].unit == unit
        assert one.stock.ingredients[0][0].unit == unit


def test_two_measures_are_one_amount() -> None:
    assert read_weight("1 lb 6 oz") == 22 * read_weight("1 oz")
    assert read_weight("16 oz") == read_weight("1 lb")
    giving = _read("stock: [2 lb 4 oz flour]\nprices: {rice: 1 lb 4 oz for 3}\n")
    (amount, item) = giving.stock.ingredients[0]
    assert (amount.low, amount.unit, item) == (Fraction(9, 4), "lb", "flour")
    assert giving.prices[0].packs[0][0].low == Fraction(5, 4)


@pytest.mark.parametrize(
    ("said", "month"),
    [
        ("hours: 5 hours a month", 5),
        ("hours: {jeden Monat: 6}", 6),
        ("heures: {chaque mois: 4}", 4),
        ("horas: {cada mes: 10, diciembre: 12}", 10),
        ("uren: 3 uur per maand", 3),
        ("ore: {ogni mese: '2,5'}", Fraction(5, 2)),
        ("Stunden: 6 Stunden im Monat", 6),
    ],
)
def test_hours_of_a_month_in_six_languages(said: str, month) -> None:
    assert _read(f"{said}\n").hours[3] == month


@pytest.mark.parametrize("said", ["5 hours a week", "5 Stunden pro Woche", "5 heures par semaine"])
def test_hours_of_a_week_are_no_hours_of_a_month(said: str) -> None:
    for key in ("hours", "hours a week"):
        giving = _read(f"{key}: {said}\n")
        assert (giving.hours_a_week, giving.hours) == (5, {})


@pytest.mark.parametrize(
    ("word", "delivery"),
    [
        ("oui", "by post"),
        ("ja", "by post"),
        ("sí", "by post"),
        ("nein", "by hand"),
        ("non", "by hand"),
    ],
)
def test_yes_and_no_in_six_languages(word: str, delivery: str) -> None:
    rows = f"households:\n  - {{name: Ann, by post: {word}, country: FR}}\n"
    assert _read(rows).households[0].delivery == delivery


@pytest.mark.parametrize("said", ["4 en 6", "4 und 6", "4 et 6", "4 y 6", "4 e 6"])
def test_two_ages_joined_in_six_languages(said: str) -> None:
    (ann,) = _read(f"households:\n  - {{name: Ann, children: {said}}}\n").households
    assert ann.children == (48, 72)


@pytest.mark.parametrize(
    ("said", "country", "day"),
    [
        ("Pâques 2027", "FR", date(2027, 3, 28)),
        ("Ostern 2027", "DE", date(2027, 3, 28)),
        ("Heiligabend 2027", "DE", date(2027, 12, 24)),
        ("Nochebuena 2027", "ES", date(2027, 12, 24)),
        ("Día de Reyes 2027", "ES", date(2027, 1, 6)),
        ("Natale 2027", "IT", date(2027, 12, 25)),
        ("pakjesavond 2027", "NL", date(2027, 12, 5)),
        ("Nikolaus 2027", "DE", date(2027, 12, 6)),
    ],
)
def test_feasts_by_their_own_names(said: str, country: str, day: date) -> None:
    assert read_day(said, country) == day


def test_a_name_that_tells_a_need_is_asked_for_however_it_is_parted() -> None:
    for name in ("Ann; small; no nuts", "Ann | vegan"):
        wrong = what_a_name_tells(name)
        assert wrong is not None
        assert "is a name, and" in wrong.what


def test_a_book_in_a_language_without_words_of_its_own_is_planned() -> None:
    """What only looks like a food is known of six languages: a Swedish book broke."""
    recipes = tuple(
        one.model_copy(update={"larder": replace(one.larder, language="sv")})
        for one in demo_recipes()
    )
    offering = make_offering(read_dict(small_list()), recipes, TODAY, settings=SETTINGS)
    assert offering.problem.offers


def test_hours_that_lack_on_one_day_of_the_week_are_said_of_that_day() -> None:
    """A jar that is shaken every day is shaken on Sundays: no day lacks its longest hour."""
    makes = [{"recipe": "quince-ratafia"}]
    data = small_list(makes=makes, baskets={"s": {"drink": 1}})
    data |= {"households": [{"name": "Nell", "basket": "s"}]}
    data["hours a day"] = {"every day": 1.5, "saturday": 4, "sunday": 0}
    pack = work_out(read_dict(data), demo_recipes(), SETTINGS, date(2027, 1, 5), Effort(5))
    (said,) = pack.complaints
    assert "asks for 1 min in one day, Sunday too, and there is none on a Sunday" in said


def test_how_many_presents_a_batch_is_is_asked_with_what_it_makes() -> None:
    data = small_list(makes=["felted-bauble", "dried-orange-garland"], baskets={"s": {"craft": 1}})
    data |= {"households": [{"name": "Nell", "basket": "s"}]}
    with pytest.raises(ProblemsFound) as found:
        make_offering(read_dict(data), demo_recipes(), TODAY)
    (problem,) = found.value.problems  # one garland is one present
    assert problem.what == (
        "A batch of felted-bauble makes 3 baubles: how many presents that is is not said."
    )
    assert "{recipe: felted-bauble, per batch: 4}" in problem.mend


def test_a_search_that_came_to_its_end_is_not_called_ended_by_time() -> None:
    plan = plan_gifts(make_offering(read_dict(small_list()), demo_recipes(), TODAY).problem, 30)
    searched = replace(plan, proof="searched through", gap=Fraction(1, 10**6))
    assert say_how_good(searched) == (
        "The plan is as good as can be told: another could better it by 0.1 % at most."
    )


def test_packs_are_named_as_their_labels_name_them() -> None:
    """A shopper in the US was sent for "3 x 340 g"; pods left over were a tenth too many."""
    text = """giving list: L
giving day: 2027-12-18
baskets: {s: 1 eat}
makes: [vanilla-sugar]
households: [Ann]
prices: {superfine sugar: 12 oz for 2.99, vanilla beans: 10 for 22}
"""
    read = read_giving_list(text, "l.yml", "USD", "en_US", "US", "us")
    pack = work_out(read, demo_recipes(), SETTINGS, date(2027, 3, 1), Effort(5))
    rows = {row.item: row for row in pack.rows}
    assert rows["superfine sugar"].to_buy == "3 x 12 oz (340 g)"
    beans = rows["vanilla beans"]
    assert beans.need + Fraction(25, 4) == 10  # the scraped one is of those
    assert beans.left == "6¼"


def test_biscuits_that_could_be_ready_for_the_post_are_told_to_keep_too_short() -> None:
    """Baked in the week of posting they are ready, and three weeks do not last until then."""
    data = small_list(makes=[{"recipe": "almond-shortbread", "per batch": 3}])
    data["baskets"] = {"s": {"eat": 1}}
    data["posting"] = [{"service": "sea", "last day": "2027-12-01"}]
    data["households"] = [
        {"name": "Nell", "basket": "s"},
        {"name": "Jo", "basket": "s", "by post": True, "opens": "2027-12-24"},
    ]
    pack = work_out(read_dict(data), demo_recipes(), SETTINGS, date(2027, 3, 1), Effort(5))
    (said,) = pack.complaints
    assert "does not keep until 14 days after Friday 24 December 2027" in said


def test_a_list_of_a_thousand_rows_is_gone_through_row_by_row() -> None:
    """Every key of every row went through all lines: minutes for a long list with mistakes."""
    rows = [f"  House {n}: {{allergies: nuts, kids: [{n % 9 + 1}]}}" for n in range(1000)]
    giving = _read("households:\n" + "\n".join(rows) + "\n")
    assert [one.children for one in giving.households[:2]] == [(12,), (24,)]
    with pytest.raises(ProblemsFound) as found:
        _read("households:\n" + "\n".join([*rows, "  Last: {allergies: nuts, kids: [x]}"]) + "\n")
    (problem,) = found.value.problems
    assert problem.line == 1006


def test_what_is_planned_by_its_kinds_dates_says_whose_they_are() -> None:
    """A recipe without a timeline is planned by its kind's: its page said so, its batch did not."""
    recipes = tuple(
        one.model_copy(update={"timeline": ()}) if one.slug == "rosemary-salt" else one
        for one in demo_recipes()
    )
    data = small_list(makes=[{"recipe": "rosemary-salt"}], baskets={"s": {"eat": 1}})
    data["households"] = [{"name": "Nell", "basket": "s"}]
    pack = work_out(read_dict(data), recipes, SETTINGS, TODAY, Effort(5))
    (batch,) = pack_data(pack)["batches"]
    assert "These dates are those of any" in batch["whose_dates"]


def test_a_day_that_stays_is_no_change_of_the_plan() -> None:
    """Two batches became one: "not on 27 May" and "no longer to be begun" were said of both."""
    may, june = date(2028, 5, 27), date(2028, 6, 24)
    said = list(_days("Beeswax wraps", [may, june], [june], "it was to be begun and was not"))
    assert said == [
        "Beeswax wraps are no longer to be begun on 27 May, since it was to be begun and was not."
    ]
    assert list(_days("Salt", [may], [june], "")) == [
        "Salt is to be begun on Saturday 24 June 2028, not on 27 May."
    ]
    assert list(_days("Salt", [may], [], "")) == ["Salt is no longer to be begun."]
    assert list(_days("Salt", [may, may], [may, may], "")) == []


def test_a_german_pack_writes_its_decimals_as_german_does() -> None:
    """Beside "70,45 €" stood "1.2 kg" and "weighs 0.69 kg"."""
    data = small_list(makes=[{"recipe": "bramble-jelly", "weighs": "430 g"}])
    data |= {"baskets": {"s": {"eat": 1, "weighs": "255 g"}}, "language": "de_DE"}
    data["posting"] = [{"service": "Paket", "last day": "2027-12-01", "bands": {"2 kg": "5,49"}}]
    data["households"] = [{"name": n, "basket": "s", "delivery": "by post"} for n in ("Jo", "Nell")]
    data["hours"] = {"every month": "2,5"}
    settings = SETTINGS.model_copy(update={"language": "de_DE", "currency": "EUR"})
    pack = work_out(read_dict(data), demo_recipes(), settings, date(2027, 3, 1), Effort(5))
    texts = {name: body.decode() for name, body in pack_files(pack).items()
             if name.endswith((".html", "shopping.txt", ".csv", ".ics"))}  # fmt: skip
    texts["calendar.ics"] = re.sub(r"(?m)^(?:VERSION|UID).*$", "", texts["calendar.ics"])
    shown = {n: re.sub(r"(?s)<style.*?</style>|<[^>]*>", " ", text) for n, text in texts.items()}
    pointed = {n: found for n, text in shown.items() if (found := re.findall(r"\d\.\d", text))}
    assert pointed == {}
    assert "0,69 kg" in re.sub(r"\s+", " ", shown["index.html"])
    # what is shown elsewhere is as before
    assert show_decimal(Fraction(6, 5)) == "1.2"


def test_a_basket_with_nothing_in_it_is_not_posted_and_costs_nothing() -> None:
    data = small_list(makes=[{"recipe": "almond-shortbread", "per batch": 3, "weighs": "200 g"}])
    data["baskets"] = {"s": {"eat": 1, "weighs": "300 g", "cost": "1.20"}}
    data["posting"] = [{"service": "parcel", "last day": "2027-12-12", "bands": {"2 kg": "4.45"}}]
    by_post = {"basket": "s", "delivery": "by post", "address": "4 Ferry Brae, Inchmoor"}
    data["households"] = [{"name": "Jo", **by_post}, {"name": "Nell", "avoid": "nuts", **by_post}]
    pack = work_out(read_dict(data), demo_recipes(), SETTINGS, date(2027, 3, 1), Effort(5))
    assert (pack.plan.gifts[1], pack.plan.gifts[2]) == (("almond-shortbread",), ())
    assert pack.costs.postage.of_baskets == {1: Fraction("4.45")}
    assert pack.costs.empty_baskets == Fraction("1.20")
    assert [one["household"] for one in pack_data(pack)["parcels"]] == ["Jo"]
    assert not any("Parcel for number 2" in said for said in pack_data(pack)["notices"])


def test_a_keeping_that_nobody_told_is_not_called_too_short() -> None:
    unknown = tuple(
        one.model_copy(update={"plans_by": lambda _: None})
        if one.slug == "almond-shortbread"
        else one
        for one in demo_recipes()
    )
    data = small_list(makes=[{"recipe": "almond-shortbread", "per batch": 3}])
    data |= {"baskets": {"s": {"eat": 1}}, "households": [{"name": "Jo", "basket": "s"}]}
    data["households"][0]["days left"] = 30
    pack = work_out(read_dict(data), unknown, SETTINGS, date(2027, 3, 1), Effort(5))
    (said,) = pack.complaints
    assert "too short" not in said
    assert "nobody says how long Almond shortbread keeps" in said


def test_what_a_comma_parts_is_put_together_or_told_with_its_quotes() -> None:
    kinds = "{s: {eat: 1, containers: [bottle, 100 ml, jar, 200 ml]}}"
    rows = {"baskets": kinds, "makes": "[vanilla-sugar]", "households": "[Ann]"}

    def read(**changes: str):
        parts = "".join(f"{key}: {value}\n" for key, value in (rows | changes).items())
        text = f"giving list: L\ngiving day: 2027-12-18\n{parts}"
        return read_giving_list(text, "l.yml", "EUR", "en_GB", "GB", "metric").giving

    assert read().baskets["s"].containers == ("bottle, 100 ml", "jar, 200 ml")
    with pytest.raises(ProblemsFound) as found:
        read(makes="[{recipe: bramble-jelly, container: jar, 200 ml, batches: 1}]")
    assert [one.mend for one in found.value.problems] == [
        'Put what has a comma in it in quotes: container: "jar, 200 ml".'
    ]
    with pytest.raises(ProblemsFound) as found:
        read(households="[{name: Smith, John, basket: s}]")
    assert 'name: "Smith, John"' in found.value.problems[0].mend
