"""Needs as strangers type them, against the demo's presents: none unsafe, none in silence."""

from __future__ import annotations

from typing import Any

import pytest

from giving.households import rows
from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.allergens.avoiding import family_names
from stillroom.core.allergens.laws import all_allergens
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_book import check_list
from stillroom.giving.as_written import several
from stillroom.giving.asked_back import leaves_out
from stillroom.giving.facts import facts_of
from stillroom.giving.needs_written import needs_said
from stillroom.giving.reading import ReadList
from stillroom.giving.rules import why_refused
from stillroom.giving.who import each_child, read_age_months

NEEDS = rows("needs.yml")
BY_NAME = {recipe.slug: recipe for recipe in demo_recipes()}
# two things in one word, and "bee products", are asked about and could be read
ASKED_AS_WELL = {"sulfites (asthma)", "honey and bee products"}


def _read(row: dict[str, Any]) -> ReadList | None:
    """Return the list with such a household, None where a question is asked of it."""
    own = {key: value for key, value in row.items() if key not in ("never", "ask")}
    try:
        read = read_dict(small_list(households=[{"name": "A", "basket": "small", **own}]))
        check_list(read, BY_NAME)
    except ProblemsFound:
        return None
    return read


@pytest.mark.parametrize(
    "row", NEEDS, ids=[str(one.get("avoid", next(iter(one)))) for one in NEEDS]
)
def test_nothing_goes_where_it_would_harm_and_what_cannot_be_told_is_asked(
    row: dict[str, Any],
) -> None:
    read = _read(row)
    if read is None:
        assert row.get("ask") or row["avoid"][0] in ASKED_AS_WELL
        return
    assert row.get("ask") != "yes", "it was passed in silence"
    household = read.giving.households[0]
    let_through = {
        name for name in row["never"] if not why_refused(household, facts_of(BY_NAME[name]), TODAY)
    }
    assert let_through == set()


def test_presents_are_named_as_the_book_names_them() -> None:
    named = {name for row in NEEDS for name in row["never"]}
    assert named - set(BY_NAME) == set()
    assert len(NEEDS) >= 55


def _asked(**household: Any) -> list[str]:
    """Return every question about a household, where it is asked and what to write."""
    try:
        row = {"name": "A", "basket": "small", **household}
        check_list(read_dict(small_list(households=[row])), BY_NAME)
    except ProblemsFound as found:
        return [f"{problem.what} {problem.mend}" for problem in found.problems]
    return []


@pytest.mark.parametrize(
    ("household", "asks"),
    [
        # whom a need names and nothing else tells of: a baby must have no honey, a dog no raisins
        ({"avoid": "egg (the baby)"}, "children: [8 months]"),
        ({"avoid": "soya for our toddler"}, "children: [8 months]"),
        ({"avoid": "xylitol because of the dog"}, "pets: [dog]"),
        ({"avoid": "coconut is fine"}, "leaves nothing out"),
        ({"avoid": "can have nuts, oats are ok"}, "leaves nothing out"),
        ({"pregnant": "not any more"}, "yes or no"),
        ({"pets": "we had a dog"}, "kind of animal"),
        ({"pets": "no dogs, a cat"}, "kind of animal"),
        ({"pets": "a quokka and a cat"}, "kind of animal"),
    ],
)
def test_who_is_named_and_told_of_nowhere_is_asked_for(household, asks):
    (asked,) = _asked(**household)
    assert asks in asked


@pytest.mark.parametrize(
    "household",
    [
        {"avoid": "egg (the baby)", "children": ["8 months"]},
        {"avoid": "xylitol because of the dog", "pets": "dog"},
        {"avoid": "baby corn"},
        {"avoid": "nuts, coconut is fine"},
        {"pets": "house rabbits, 3 hens and a parrot called Bert"},
        {"pets": ["assistance dog", "a cockapoo and a ferret"]},
        {"pregnant": "due in March"},
        {"pregnant": "yes (IVF)"},
        {"pregnant": "nobody"},
    ],
)
def test_what_is_told_is_not_asked_again(household):
    assert _asked(**household) == []


def test_what_may_be_a_pregnancy_is_one():
    for said in ("second trimester", "20 weeks", "maybe", "trying for a baby", "yes, twins"):
        household = {"name": "A", "basket": "small", "pregnant": said}
        assert read_dict(small_list(households=[household])).giving.households[0].pregnant


@pytest.mark.parametrize(
    ("household", "asks"),
    [
        ({"adults": False}, '"0" for none'),
        ({"adults": "no"}, "whole number"),
        ({"days left": True}, '"0" for none'),
        # two children, or one of two years: one of the two may be a baby
        ({"children": 2}, "how many, or how old"),
        ({"children": "3"}, "how many, or how old"),
        ({"children": 0}, "how many, or how old"),
    ],
)
def test_no_is_no_number_and_a_bare_number_no_age(household, asks):
    (asked,) = _asked(**household)
    assert asks in asked


@pytest.mark.parametrize(
    ("name", "asks"),
    [
        # a need in a name protected nobody
        ("Jo (coeliac), small", '"avoid: coeliac"'),
        ("Lee - vegan", '"avoid: vegan"'),
        ("Ann (nut allergy)", '"avoid: nut allergy"'),
        ("Bob (doesn't drink)", '"avoid: doesn\'t drink"'),
        ("Jo (pregnant)", '"avoid: pregnant"'),
        ("Kim and baby (7 months)", '"children: [6, 8 months]"'),
        ("The Patels (Raj, Asha 6, baby Dev)", '"children: [6, 8 months]"'),
        # and what is a name is one
        ("The Rowans, Rose Cottage", ""),
        ("Jo & Pat (flat 3)", ""),
        ("Smith, Basil", ""),
        ("Mr Salmon (Mill Lane 4)", ""),
    ],
)
def test_what_a_name_tells_of_needs_and_ages_is_asked_for_by_itself(name, asks):
    asked = _asked(name=name)
    assert len(asked) == bool(asks)
    assert all(asks in one for one in asked)


def test_a_country_is_no_name_on_a_card():
    (asked,) = _asked(to="France", delivery="by post")
    assert '"country: France"' in asked
    assert _asked(to="Aunt France") == []


@pytest.mark.parametrize(
    ("said", "months"),
    [
        # nearly a year is no year, for honey; births are reckoned to 18 December 2027
        ("nearly 1", 11),
        ("not quite 1", 11),
        ("under 3", 0),
        ("about 5", 59),
        ("Theo (almost 3)", 35),
        ("just turned 1", 12),
        ("born May 2024", 42),
        ("Bea, born 18 December 2026", 12),
        ("born 19 December 2026", 11),
        ("born 2027", 0),
        ("né en mars 2025", 32),
    ],
)
def test_an_age_is_never_more_than_it_is(said, months):
    row = {"name": "A", "basket": "small", "children": [said]}
    assert read_dict(small_list(households=[row])).giving.households[0].children == (months,)


def test_a_birth_that_is_still_to_come_is_asked():
    (asked,) = _asked(children=["born March 2028"])
    assert "day of birth" in asked


def test_numbers_are_read_in_words():
    makes = [{"recipe": "bramble-jelly", "batches": "two", "per batch": "six"}]
    read = read_dict(small_list(makes=makes))
    assert (read.giving.makes[0].batches, read.giving.makes[0].per_batch) == (2, 6)


def test_no_children_are_none_and_an_age_in_a_list_is_an_age():
    for said in (False, "no", "none", []):
        assert _asked(children=said) == []
    row = {"name": "A", "basket": "small", "children": [0, 2], "adults": "none"}
    household = read_dict(small_list(households=[row])).giving.households[0]
    assert (household.children, household.adults) == ((0, 24), 0)


NOTHING = (
    "none; no allergies; no food allergies; keine; keine Allergien; keine Lebensmittelallergien "
    "bekannt; aucune allergie; pas d'allergies; pas d’allergie connue; sin alergias; ninguna "
    "alergia conocida; nessuna allergia; geen allergieën; none that I know of; they eat "
    "everything; isst alles; mange de tout; n/a; NKDA; no dietary requirements; no known "
    "allergies or intolerances; not fussy; nope; RAS; no special diet"
)
# words that begin like one of those, and needs beside them
SOMETHING = (
    "notenallergie; nougat; no nuts; sinusitis; no-nut; nothing with nuts; none of the nuts; "
    "keine Nüsse; sin gluten; pas de lait; pas d'œufs; pas d'arachides; nada de leche; nothing "
    "but rice; none but vegan; no allergies except nuts; no allergies - vegan; eats anything but "
    "nuts; everything vegan; noci; nonna is coeliac; no special nuts"
)


@pytest.mark.parametrize("said", NOTHING.split("; "))
def test_an_answer_that_there_is_nothing_leaves_nothing_out(said):
    assert several(said) == []


def test_no_need_is_taken_for_an_answer_that_there_is_nothing():
    words = [*SOMETHING.split("; "), *family_names(), *all_allergens()]
    assert [word for word in words if not several(word)] == []


@pytest.mark.parametrize(
    ("said", "left", "pregnant"),
    [
        ("pregnant", [], True),
        ("expecting in March", [], True),
        ("30 weeks pregnant, gone off coffee", ["gone off coffee"], True),
        ("schwanger, kein Alkohol", ["kein Alkohol"], True),
        ("enceinte et coeliaque", ["coeliaque"], True),
        # what is not, and what names more, is asked about as before
        ("was pregnant", ["was pregnant"], None),
        ("gestational diabetes", ["gestational diabetes"], None),
        ("due to a nut allergy", ["due to a nut allergy"], None),
    ],
)
def test_who_is_pregnant_may_stand_among_what_is_avoided(said, left, pregnant):
    read = needs_said(said, several(said))
    assert (list(read["avoid"]), read.get("pregnant")) == (left, pregnant)


@pytest.mark.parametrize(
    ("said", "ages"),
    [
        # a child of "under five" may be a baby: no honey
        ("3 under five", [0, 0, 0]),
        ("two children under 4", [0, 0]),
        (["three under-fives", 7], [0, 0, 0, 84]),
        ("under 1", [11]),
        ("almost 3", [35]),
    ],
)
def test_so_many_under_an_age_may_be_babies(said, ages):
    assert [read_age_months(one) for one in each_child(said)] == ages


@pytest.mark.parametrize(
    ("said", "left_out"),
    [
        ("does not react to nuts", False),
        ("doesn't react to nuts", False),
        ("never reacts to nuts", False),
        ("isn't allergic to nuts", False),
        ("does not react well to nuts", None),
        ("reacts to nuts", True),
        ("reacts badly to nuts", True),
    ],
)
def test_whoever_does_not_react_to_a_thing_may_have_it(said, left_out):
    read = read_avoided(said)
    assert (leaves_out(said) if read else None) is left_out
