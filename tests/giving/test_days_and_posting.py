"""Hours, days off, pans, keeping, seasons and parcels: what they allow, what is not known."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from itertools import pairwise

import pytest

from care_cases import recipe_of
from giving.lists import MAKES, TODAY, demo_book, demo_recipes, read_dict, small_list
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.batches import make_batches
from stillroom.giving.brewing import can_be_measured
from stillroom.giving.in_season import season_of
from stillroom.giving.noticing import notices
from stillroom.giving.offering import make_offering
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.plan_model import Basket, Brew, Offer, PlanProblem, StartChoice
from stillroom.giving.planning import plan_gifts
from stillroom.giving.posting import parcel_of, weight_of
from stillroom.giving.starting import Frame, minutes_by_day, start_choices

_FEW = {"almond-shortbread", "rosemary-salt", "quince-chutney", "bramble-jelly"} | {
    "cocoa-marshmallow-mix", "quince-ratafia", "salted-honey-toffee"
}  # fmt: skip
FEW = [make for make in MAKES if make["recipe"] in _FEW]


def offered(**changes):
    """Return the offering of a list, its plan and what is made for it."""
    read = read_dict(small_list(**{"makes": FEW, **changes}))
    offering = make_offering(read, demo_recipes(), TODAY, settings=demo_book().settings)
    plan = plan_gifts(offering.problem)
    return offering, plan, make_batches(offering, plan)


def work_days(making):
    """Return the hands-on hours of every day."""
    days: dict[date, Fraction] = {}
    for batch in making.batches:
        for day, minutes in minutes_by_day(batch.timeline).items():
            days[day] = days.get(day, Fraction(0)) + Fraction(minutes * batch.count, 60)
    return days


@pytest.mark.parametrize("hours", [2, 3, 5])
def test_no_day_and_no_week_takes_more_hours_than_it_has(hours):
    _, plan, making = offered(**{"hours a day": hours, "hours": {"every week": hours + 1}})
    days, weeks = work_days(making), making.hours_by_week
    assert max(days.values()) <= hours
    assert max(weeks.values()) <= hours + 1
    assert plan.proof == "proven best"


def test_months_that_are_not_named_beside_hours_of_a_week_are_limited_by_the_week_alone():
    _, plan, making = offered(hours={"every week": 4, "december": 1})
    assert plan.proof == "proven best"
    assert max(making.hours_by_week.values()) <= 4
    assert any(day.month in range(2, 12) for day in work_days(making))
    assert sum(h for day, h in work_days(making).items() if day.month == 12) <= 1


def test_where_no_start_leaves_it_at_its_best_one_that_is_usable_is_taken():
    """A fortnight away has each day of the week: nothing tended weekly is begun before its end."""
    written = {
        "title": "Sloe gin",
        "kind": "infusion",
        "ingredients": ["450 g sloes", "200 g caster sugar", "1 l gin, 40% vol"],
        "timeline": [
            {"prepare": "30 minutes"},
            {"shake": "every week for 3 months"},
            {"strain and bottle": "45 minutes"},
            {"usable from": "3 months"},
            {"best from": "6 months"},
        ],
        "keeps": "3 years",
        "method": ["Shake.", "Strain."],
    }
    due = date(2027, 12, 19)
    away = frozenset(date(2027, 8, 1) + timedelta(days=n) for n in range(15))
    frame = Frame(date(2027, 6, 14), (due,), due + timedelta(days=7), away, weekly=True)
    starts = start_choices(recipe_of(written), frame)
    assert min(one.start for one in starts) == date(2027, 8, 16)
    assert all(one.start <= date(2027, 9, 19) and not one.at_best for one in starts)
    # a day on which the plan before began it may stay, whatever day of the week it is
    kept = replace(frame, kept=frozenset({date(2027, 9, 1), date(2027, 6, 1)}))
    assert date(2027, 9, 1) in {one.start for one in start_choices(recipe_of(written), kept)}
    # with the jar begun in time nothing is young
    early = start_choices(recipe_of(written), replace(frame, today=date(2027, 1, 10)))
    assert all(one.at_best for one in early)


def test_a_batch_of_two_days_is_begun_so_that_neither_is_a_day_without_hours():
    makes = [make for make in FEW if make["recipe"] in ("rosemary-salt", "bramble-jelly")]
    hours = {"hours a day": {"every day": 2, "sunday": 0}}
    _, plan, making = offered(makes=makes, baskets={"small": {"eat": 2}}, **hours)
    assert plan.empty == {}
    assert {day.weekday() for day, h in work_days(making).items() if h} <= {0, 1, 2, 3, 4, 5}


def test_why_no_day_will_do_is_said_and_no_present_that_they_must_not_have_is_named():
    households = [{"name": "Nell Skarrow", "basket": "small", "avoid": ["nuts"]}]
    makes = [make for make in FEW if make["recipe"] in ("almond-shortbread", "quince-chutney")]
    read = read_dict(
        small_list(
            makes=[*makes, {"recipe": "rosemary-salt"}],
            households=households,
            baskets={"small": {"eat": 2}},
            **{"hours a day": 1},
        )
    )
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5))
    (said,) = pack.complaints
    assert "Quince chutney asks for 2 h 25 min in one day, more than there is" in said
    assert "shortbread" not in said


def test_only_saturdays_are_worked_where_only_saturdays_have_hours():
    _, _, making = offered(**{"hours a day": {"every day": 0, "saturday": 8}})
    assert making.batches
    assert {day.weekday() for day, hours in work_days(making).items() if hours} == {5}


def test_nothing_is_done_on_a_day_off():
    off = ["1 November 2027 to 17 December 2027", "25 April 2027"]
    offering, _, making = offered(**{"days off": off})
    assert len(offering.giving.days_off) == 48
    assert making.batches
    assert not offering.giving.days_off & set(work_days(making))


def test_an_oven_takes_no_more_in_a_day_than_the_list_says():
    makes = [{**make, "at a time": 1, "batches": 4} for make in FEW]
    people = [{"name": f"House {n}", "basket": "small"} for n in range(8)]
    _, _, making = offered(makes=makes, households=people)
    assert all(batch.count == 1 for batch in making.batches)


def test_no_two_batches_stand_in_one_jar_at_a_time():
    people = [{"name": f"House {n}", "basket": "big"} for n in range(9)]
    offering, _, making = offered(
        households=people,
        baskets={"big": {"drink": 1}},
        makes=[{"recipe": "quince-ratafia", "container": "bottle, 500 ml", "batches": 4}],
        stock={"vessels": {"clip-top jar, 2 l": 1}},
        **{"giving day": "2028-12-18"},
    )
    spans = sorted((batch.timeline.start, batch.timeline.made) for batch in making.batches)
    assert all(batch.count == 1 for batch in making.batches)
    assert all(first[1] < second[0] for first, second in pairwise(spans))
    assert offering.problem.limits


def test_a_vessel_that_is_not_named_beside_others_is_taken_to_be_one():
    offering, _, _ = offered(stock={"vessels": {"oven": 2}})
    words = [limit.words for limit in offering.problem.limits]
    assert any("there is one" in one and "since the list names no other" in one for one in words)


@pytest.mark.parametrize("posted", ["2027-12-10", "2027-12-01", "2027-11-20"])
def test_what_is_posted_is_finished_before_its_posting_day(posted):
    people = [
        {"name": "Far", "basket": "small", "delivery": "by post", "country": "Ireland"},
        {"name": "Near", "basket": "small"},
    ]
    services = [{"service": "parcels", "to": ["IE"], "last day": posted}]
    offering, plan, making = offered(households=people, posting=services)
    due = date.fromisoformat(posted)
    assert plan.gifts[1]
    for present in making.of_basket(1):
        assert present.made_on <= due
        batch = next((b for b in making.batches if b.name == present.batch), None)
        assert batch is None or all(day <= due for day in minutes_by_day(batch.timeline))
    assert any(f"on {due:%A} {due.day}" in said for said in notices(offering, plan, making))


def test_after_the_last_posting_day_nothing_is_posted():
    people = [{"name": "Far", "basket": "small", "delivery": "by post"}]
    services = [{"service": "parcels", "last day": "2026-11-20"}]
    _, plan, _ = offered(households=people, posting=services)
    assert plan.gifts[1] == ()


def test_a_day_and_a_weight_that_nobody_states_are_said_to_be_unknown():
    people = [{"name": "Far", "basket": "small", "delivery": "by post"}]
    offering, plan, making = offered(households=people)
    said = " ".join(notices(offering, plan, making))
    assert "the last day to post it is not known" in said
    assert "What it weighs is not known, so neither is the postage." in said


def test_postage_goes_by_the_weight_with_its_box_and_no_parcel_is_too_heavy():
    makes = [{**make, "weighs": "400 g"} for make in FEW]
    people = [{"name": "Far", "basket": "box", "delivery": "by post"}]
    bands = {"1 kg": "3.70", "1.2 kg": "5.10"}
    services = [{"service": "parcels", "last day": "2027-12-10", "bands": bands}]
    baskets = {"box": {"eat": 3, "weighs": "300 g"}}
    offering, plan, making = offered(
        makes=makes, households=people, posting=services, baskets=baskets
    )
    assert len(plan.gifts[1]) == 2  # 300 + 3 x 400 g is more than 1.2 kg
    said = " ".join(notices(offering, plan, making))
    assert "It weighs 1.1 kg: postage £5.10." in said
    parcel = parcel_of(offering.giving, offering.giving.households[0], "GB")
    assert parcel is not None
    assert parcel.postage(weight_of([Fraction(1), None], Fraction(300))) is None
    assert parcel.postage(Fraction(1201)) is None
    assert parcel.postage(Fraction(1000)) == Fraction(37, 10)


# where it is posted, to where, the maker's own word, and whether a 500 ml bottle of ratafia goes
SPIRITS = [
    ("GB", "GB", None, True),
    ("GB", "FR", None, False),
    ("US", "US", None, False),
    ("US", "US", True, False),
    ("CA", "CA", None, False),
    ("CA", "CA", True, True),
    ("GB", "GB", False, False),
]


@pytest.mark.parametrize(("home", "to", "own_word", "goes"), SPIRITS)
def test_a_spirit_goes_where_a_carrier_is_known_to_take_it(home, to, own_word, goes):
    make = {"recipe": "quince-ratafia", "container": "bottle, 100 ml"}
    make |= {} if own_word is None else {"by post": own_word}
    people = [{"name": "Far", "basket": "small", "delivery": "by post", "country": to}]
    data = small_list(makes=[make], households=people, baskets={"small": {"drink": 1}})
    settings = demo_book().settings.model_copy(update={"country": home})
    offering = make_offering(read_dict(data), demo_recipes(), TODAY, settings=settings)
    assert ((1, "quince-ratafia in bottle, 100 ml") not in offering.problem.refused) is goes


def test_what_is_kept_in_the_fridge_is_in_no_parcel():
    people = [{"name": "Far", "basket": "small", "delivery": "by post", "days left": 0}]
    offering, _, _ = offered(households=people, makes=[{"recipe": "sea-buckthorn-curd"}])
    reasons = offering.problem.refused[1, "sea-buckthorn-curd"]
    assert "is to be kept cold and no parcel is" in [reason.one for reason in reasons]
    # what goes into the fridge only once it is opened may travel
    offering, _, _ = offered(households=people, makes=[{"recipe": "quince-chutney"}])
    assert (1, "quince-chutney") not in offering.problem.refused


@pytest.mark.parametrize("days", [0, 7, 20, 60])
def test_what_is_given_keeps_so_many_days_after_it_is_opened(days):
    people = [
        {"name": "A", "basket": "small", "opens": "2027-12-25", "days left": days},
        {"name": "B", "basket": "small", "days left": days},
    ]
    offering, plan, making = offered(households=people)
    for basket in offering.problem.baskets:
        opened = date(2027, 12, 25) if basket.household == "A" else date(2027, 12, 18)
        for present in making.of_basket(basket.number):
            assert present.keep_until is not None
            assert present.keep_until >= opened + timedelta(days=days)
    assert plan.proof == "proven best"


def test_what_nobody_knows_the_keeping_of_is_short_and_never_for_ever():
    slug = "almond-shortbread"
    recipe = next(one for one in demo_recipes() if one.slug == slug)
    unknown = recipe.model_copy(update={"plans_by": lambda _: None})
    others = tuple(one for one in demo_recipes() if one.slug != slug)
    makes = [{"recipe": slug, "per batch": 3}]
    data = small_list(makes=makes, baskets={"small": {"eat": 1}})
    offering = make_offering(read_dict(data), (*others, unknown), TODAY)
    assert not plan_gifts(offering.problem).gifts[1]
    for household in data["households"]:
        household["days left"] = 2
    offering = make_offering(read_dict(data), (*others, unknown), TODAY)
    plan = plan_gifts(offering.problem)
    assert plan.gifts[1]
    assert all(batch.choice.start >= date(2027, 12, 10) for batch in plan.batches)


def test_a_start_out_of_season_is_said_and_one_in_season_comes_alone():
    offering, plan, making = offered()
    for brew in offering.problem.brews:
        recipe = next(one for one in demo_recipes() if one.slug == brew.recipe)
        season = season_of(recipe, offering.settings.country)
        for choice in brew.choices:
            assert choice.in_season is season.has(choice.start.month)
            assert bool(choice.aside) is not choice.in_season
    said = notices(offering, plan, making)
    assert all(batch.choice.aside in said for batch in plan.batches if batch.choice.aside)


def test_what_spoils_is_bought_for_its_month_and_what_keeps_for_the_year():
    prices = [{"item": "cooking apples", "packs": ["1 kg for 2.10"]},
              {"item": "granulated sugar", "packs": ["1 kg for 1.15"]}]  # fmt: skip
    offering, _, _ = offered(prices=prices)
    names = [purchase.item for purchase in offering.problem.purchases]
    assert "granulated sugar" in names
    apples = [name for name in names if name.startswith("cooking apples")]
    assert apples
    assert all(", for " in name for name in apples)


def test_two_sizes_of_one_recipe_over_two_batches_fit_their_pots():
    # 3/5 and 2/5 of a batch: five of the first take five pots, and no bottle is filled from two
    big = Offer("big", "r", "R", "eat", "jar", Fraction(3, 5), needs={"jar": Fraction(1)})
    small = replace(big, key="small", sort="drink", share=Fraction(2, 5))
    choices = tuple(StartChoice(date(2027, month, 1), True, {}) for month in (3, 6))
    baskets = tuple(Basket(n, f"H{n}", "k", {"eat": 1, "drink": 0}) for n in range(1, 4))
    problem = PlanProblem(baskets, (big, small), (Brew("r", "R", 9, choices),))
    plan = plan_gifts(problem)
    assert sum(batch.count for batch in plan.batches) == 2  # 3 x 3/5 in one pot of two batches
    apart = tuple(replace(one, most=1) for one in choices)
    plan = plan_gifts(replace(problem, brews=(Brew("r", "R", 9, apart),)))
    assert sum(plan.empty.values()) == 1  # one pot each day: a jar is filled from one pot


def test_a_batch_is_cut_down_where_its_amounts_can_be_measured():
    makes = [{"recipe": "rosemary-salt", "in parts": True, "per batch": 8}]
    prices = [{"item": "coarse sea salt", "packs": ["100 g for 0.80"]}]
    _, plan, making = offered(
        makes=makes, prices=prices, baskets={"small": {"eat": 1}}, stock={"containers": {}}
    )
    (batch,) = making.batches
    assert Fraction(2, 8) <= batch.amount < 1
    assert can_be_measured(batch.recipe, batch.amount)
    assert all(line.holds for line in batch.scaled.lines)
    whole = offered(makes=[{"recipe": "rosemary-salt", "per batch": 8}], prices=prices,
                    baskets={"small": {"eat": 1}}, stock={"containers": {}})[1]  # fmt: skip
    assert plan.points < whole.points


def test_what_is_left_over_has_a_name_and_a_use():
    offering, plan, making = offered(makes=[{"recipe": "almond-shortbread", "per batch": 3}],
                                     baskets={"small": {"eat": 1}})  # fmt: skip
    (said,) = [one for one in notices(offering, plan, making) if "left over" in one]
    assert said.startswith("Almond shortbread, batch 1: 2 x ")
    assert "for the house, to stand in for one that breaks" in said


WRONG = [
    ({"posting": [{"service": "x", "to": ["Frnce"]}]}, '"Frnce" is not a country'),
    ({"posting": [{"service": "x", "bands": {"2 pieces": 3}}]}, "is not a weight"),
    ({"days off": ["24 December 2027 to 3 December 2027"]}, "does not run from a day to a later"),
    ({"days off": ["Smarch"]}, "is not a day of the calendar"),
    ({"hours a day": {"caturday": 3}}, '"caturday" is not a day of the week'),
    ({"hours a day": 25}, "is not hours"),
    ({"hours a week": -1}, "is not hours"),
    ({"hours": {"every week": "many"}}, "is not hours"),
    ({"makes": [{"recipe": "rosemary-salt", "weighs": "heavy"}]}, "is not a weight"),
    ({"makes": [{"recipe": "rosemary-salt", "at a time": 0}]}, "it has to be at least 1"),
    ({"stock": {"vessels": {"oven": -2}}}, "it has to be 0 or more"),
    ({"households": [{"name": "A", "basket": "small", "delivery": "by post", "service": "owl"}]},
     '"owl" is not among the ways to post'),
    ({"households": [{"name": "A", "basket": "small", "delivery": "by post", "country": "France"}],
      "posting": [{"service": "x", "to": ["IE"]}]}, "No service under posting reaches France"),
    ({"households": [{"name": "A", "basket": "small", "opens": "2027-12-01"}]},
     "cannot open it before"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "said"), WRONG)
def test_a_wrong_field_gives_one_message_with_its_line(changes, said):
    with pytest.raises(ProblemsFound) as found:
        make_offering(read_dict(small_list(**changes)), demo_recipes(), TODAY)
    (problem,) = found.value.problems
    assert said in problem.what + problem.mend
    assert problem.line > 1
    assert problem.mend


def test_the_pack_of_a_list_with_everything_in_it_is_written_whole():
    read = read_dict(small_list(posting=[{"service": "parcels", "last day": "2027-12-10"}]))
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(20))
    assert pack.plan.is_whole


def test_a_recipe_is_not_begun_twice_in_halves_where_once_will_do():
    half = (Fraction(1, 2),)
    offer = Offer("salt", "salt", "Salt", "eat", "jar", Fraction(1, 4))
    days = tuple(
        StartChoice(date(2027, month, 1), True, {(2027, month): Fraction(2)}) for month in (3, 5)
    )
    brew = Brew("salt", "Salt", 4, days, sizes=half)
    for count, made in ((2, [Fraction(1, 2)]), (3, [Fraction(1)]), (4, [Fraction(1)])):
        baskets = tuple(Basket(n, f"H{n}", "small", {"eat": 1}) for n in range(1, count + 1))
        plan = plan_gifts(PlanProblem(baskets, (offer,), (brew,)))
        assert plan.proof == "proven best"
        assert [batch.amount for batch in plan.batches] == made
