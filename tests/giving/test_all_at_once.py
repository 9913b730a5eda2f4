"""All that is wrong with a list in one run: what does not read, and what does not fit the book."""

from __future__ import annotations

from itertools import product

import pytest

from giving.lists import TODAY, demo_recipes
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.against_whole import check_whole, with_the_rest
from stillroom.giving.log import LogLine, ReadLog
from stillroom.giving.names import with_names_of
from stillroom.giving.offering import make_offering
from stillroom.giving.reading import read_giving_list
from stillroom.giving.season import read_season
from stillroom.giving.standing import check_pins

LIST = """giving list: Winter
giving day: 2027-12-18
baskets:
  small: {eat: 2}
  large: {eat: 3}
makes:
  - recipe: rosemary-salt
    batches: 2
  - recipe: quince-chutney
households:
  - name: Nell
    basket: small
    children: [4]
    avoid: [nuts]
  - name: The Rowans
    basket: large
    avoid: [gluten]
    likes: [quince-chutney]
posting:
  - {service: post, last day: 2027-12-10}
stock:
  made:
    - {recipe: rosemary-salt, number: 2, made on: 2027-01-02}
prices:
  - {item: sugar, packs: [1 kg for 1.15]}
  - {item: salt, packs: [1 kg for 0.70]}
batches:
  - {recipe: quince-chutney, started: 2027-01-01, made on: 2027-01-02, number: 9}
"""
# what does not read: what is written instead, and a part of what is said of it
UNREAD = [
    ("giving day: 2027-12-18", "giving day: soon", "not a day"),
    ("small: {eat: 2}", "small: {eat: many}", "whole number"),
    ("batches: 2", "batches: two or so", "whole number"),
    ("  - name: Nell\n    basket", "  - basket", "name"),
    ("children: [4]", "children: [young]", "not an age"),
    ("    basket: large\n", "", "basket"),
    ("last day: 2027-12-10", "last day: 2027-13-40", "not a day"),
    ("number: 2, made on: 2027-01-02}", "number: 2, made on: once}", "not a day"),
    ("packs: [1 kg for 1.15]", "packs: [1 kg for cheap]", "not a price"),
    ("recipe: quince-chutney, started: 2027-01-01", "started: 2027-01-01", "no. 1, recipe"),
    ("giving list: Winter\n", "giving list: Winter\ncolour: red\n", '"colour"'),
]
# what reads and does not fit the book
UNFIT = [
    ("likes: [quince-chutney]", "likes: [quince-chutny]", '"quince-chutny" is not a recipe'),
    ("avoid: [gluten]", "avoid: [glutten]", '"glutten" is nothing'),
    (
        "{item: salt, packs: [1 kg for 0.70]}",
        "{item: salt, packs: [1 kg for 1, 3 for 1]}",
        '"salt": "a count"',
    ),
    ("  - recipe: quince-chutney\nh", "  - recipe: quince-chutny\nh", '"quince-chutny" is not'),
    ("made on: 2027-01-02, number: 9", "made on: 2027-01-02, number: 90", "about 9"),
]


def problems_of(text: str) -> list[str]:
    recipes = {one.slug: one for one in demo_recipes()}
    try:
        read = read_giving_list(text, "list.yml")
        check_whole(with_names_of(read, recipes), recipes, "GB")
    except ProblemsFound as found:
        return [str(one) for one in with_the_rest(found, recipes, "GB").problems]
    return []


def changed(*changes):
    text = LIST
    for old, new, _ in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def test_the_list_is_right():
    assert problems_of(LIST) == []


@pytest.mark.parametrize("change", [*UNREAD, *UNFIT], ids=lambda one: one[1][:30])
def test_one_fault_is_told_once_and_nothing_else(change):
    told = problems_of(changed(change))
    assert len(told) == 1, told
    assert change[2] in told[0]


@pytest.mark.parametrize(
    ("unread", "unfit"), list(product(UNREAD, UNFIT)), ids=lambda one: one[1][:24]
)
def test_two_faults_of_both_sorts_are_told_in_one_run(unread, unfit):
    if unread[0].startswith("recipe: quince-chutney, st") and "number: 9" in unfit[0]:
        return  # how many are too many of a batch of which nobody knows the recipe
    told = problems_of(changed(unread, unfit))
    assert len(told) == 2, told
    for change in (unread, unfit):
        assert sum(change[2] in line for line in told) == 1, told
    alone = [*problems_of(changed(unread)), *problems_of(changed(unfit))]
    assert {line.split(":", 2)[2] for line in told} == {line.split(":", 2)[2] for line in alone}


def test_all_faults_at_once_are_told_each_once():
    both = [one for one in UNFIT if "number: 9" not in one[0]]
    told = problems_of(changed(*UNREAD, *both))
    for change in (*UNREAD, *both):
        assert any(change[2] in line for line in told), change
    assert len(told) == len(UNREAD) + len(both), told


def test_the_plan_is_told_the_posting_and_the_names_at_once():
    text = LIST.replace("likes: [quince-chutney]", "likes: [quince-chutny]\n    by post: yes")
    text = text.replace("    by post: yes", "    by post: yes\n    service: rocket")
    with pytest.raises(ProblemsFound) as found:
        make_offering(read_giving_list(text, "list.yml"), demo_recipes(), TODAY)
    assert len(found.value.problems) == 2


@pytest.mark.parametrize(("number", "wrong"), [(9, False), (13, False), (14, True), (90, True)])
def test_more_jars_than_a_batch_gives_are_told_of_list_and_log(number, wrong):
    text = LIST.replace("number: 9}", f"number: {number}}}")
    assert bool(problems_of(text)) == wrong
    giving = read_giving_list(LIST.partition("batches:\n  - {")[0], "list.yml").giving
    lines = [
        {"begun": "quince-chutney", "day": "2027-10-01"},
        {"bottled": "quince-chutney", "day": "2027-10-02", "number": number},
    ]
    log = _log(lines)
    recipes = {one.slug: one for one in demo_recipes()}
    if not wrong:
        check_pins(log, read_season(log, giving), giving, recipes)
        return
    with pytest.raises(ProblemsFound) as found:
        check_pins(log, read_season(log, giving), giving, recipes)
    (problem,) = found.value.problems
    assert "about 9" in problem.what
    assert problem.line == 2


def _log(rows) -> ReadLog:
    lines = []
    for at, row in enumerate(rows, 1):
        (kind,) = set(row) - {"day", "number"}
        lines.append(
            LogLine(kind=kind, name=row[kind], day=row["day"], number=row.get("number"), line=at)
        )
    return ReadLog("log.yml", tuple(lines))


@pytest.mark.parametrize(("word", "told"), [("eat: 2, zorp: 3", 2), ("zorp: 3", 2)])
def test_an_empty_basket_is_told_beside_a_mistake_in_another(word, told):
    lines = problems_of(LIST.replace("small: {eat: 2}", f"small: {{{word}}}\n  tiny: {{}}"))
    assert len(lines) == told
    assert sum('"tiny" holds nothing' in line for line in lines) == 1


def test_of_three_thousand_unknown_names_the_first_are_told_and_how_many_more():
    told = problems_of(LIST + "".join(f"key{n}: 1\n" for n in range(3000)))
    assert len(told) == 21
    assert any("2,980 more names from here on" in line for line in told)
