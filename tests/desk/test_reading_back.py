"""What stands beside each line: how it was read, or the question with answers that lose nothing."""

from __future__ import annotations

import re

import pytest

from stillroom.core.larder.shelves import common_larder
from stillroom.desk.reading_back import Ways, read_box, read_steps_box, readable

WAYS = Ways("metric", "en_GB", common_larder())

# line, state, amount, answers
LINES = [
    ("1½ tsp ground ginger", "known", "1½ tsp", []),
    ("2 to 3 apples", "known", "2–3", []),
    ("1,5 kg sugar", "asked", "", ["1.5 kg sugar"]),
    ("1 500 g sugar", "asked", "", ["1500 g sugar", "1 x 500 g sugar"]),
    ("1.500 g flour", "asked", "", ["1.5 g flour", "1500 g flour"]),
    ("a pinch", "asked", "", []),
    ("8 oz", "asked", "", []),
    ("6 cloves, 1 blade of mace", "asked", "", []),
    ("2 lbs damsuns", "unknown", "2 lb", ["2 lbs damson"]),
    ("8 bright lemons", "unknown", "8", ["8 lemons"]),
    ("1 bright lemon", "unknown", "1", ["1 lemon"]),
    ("For the icing:", "heading", "", []),
]


@pytest.mark.parametrize(("line", "state", "amount", "answers"), LINES)
def test_a_line_is_read_or_asked(line: str, state: str, amount: str, answers: list[str]) -> None:
    (read,) = read_box(line, (), WAYS)
    assert (read.state, read.amount) == (state, amount)
    assert [answer.line for answer in read.answers] == answers


@pytest.mark.parametrize("line", [line for line, state, _, _ in LINES if state == "asked"])
def test_an_answer_keeps_every_word_and_reads(line: str) -> None:
    words = set(re.findall(r"[^\W\d_]+", line))
    (read,) = read_box(line, (), WAYS)
    for answer in read.answers:
        assert words <= set(re.findall(r"[^\W\d_]+", answer.line))
        assert read_box(answer.line, (), WAYS)[0].state in ("known", "unknown")


# old cookery books, a page of fruit cheeses: so much to each measure of another thing; a fifth is
# the American bottle
@pytest.mark.parametrize(
    ("line", "answer"),
    [
        ("12oz sugar to each 1 pint puree", "sugar, 12oz per 1 pint of puree"),
        ("4 ounces of sugar to every pint of juice", "sugar, 4 ounces per 1 pint of juice"),
        ("1/5 vodka", "750 ml vodka"),
        ("1/5 vodka (~750 ml)", "750 ml vodka"),
    ],
)
def test_an_amount_to_another_thing_has_an_answer_to_press(line: str, answer: str) -> None:
    (read,) = read_box(line, (), WAYS)
    assert (read.state, [one.line for one in read.answers]) == ("asked", [answer])
    assert read_box(answer, (), WAYS)[0].state == "known"


def test_an_amount_is_put_where_a_step_names_the_food() -> None:
    goes_in = readable("1 kg plums, stoned\n500 g caster sugar\nsalt, to taste", (), WAYS)
    plain, marked = read_steps_box("Boil the plums.\nStir in ‹caster sugar›.", goes_in, WAYS)
    assert [answer.line for answer in plain.answers] == ["Boil the ‹plums›."]
    assert (marked.said, marked.answers) == ("Stir in 500 g caster sugar.", ())


def test_an_amount_of_nothing_is_asked() -> None:
    (step,) = read_steps_box("Boil ‹pears›.", readable("1 kg plums", (), WAYS), WAYS)
    assert (step.state, step.question) == (
        "asked",
        '"pears" is not an ingredient. It may be: plums.',
    )
    assert step.answers[0].line == "Boil pears."


# what goes in, a step, what is offered: water that stands round a jar or a bowl is no ingredient
STEPS = [
    ("250 ml boiling water\n100 ml water", "Pour on the boiling water.", ["250 ml boiling water"]),
    ("250 ml boiling water\n100 ml water", "Stir in the water.", ["100 ml water"]),
    ("100 ml water\n500 g honey", "Stand the jars in a boiling water bath.", []),
    ("100 ml water\n500 g honey", "Melt it over a pan of simmering water.", []),
    ("500 ml water, boiling", "Pour on the boiling water.", ["500 ml water"]),
    ("500 ml water", "Pour on the warm water.", ["500 ml water"]),
    ("1 l honey vinegar\n200 g honey", "Stir in the honey.", ["200 g honey"]),
    ("4.5 l water", "Mix it with a little water.", []),
    ("4.5 l water", "Mix it with a little water, then pour on the water.", ["4.5 l water"]),
    ("700 ml vodka", "Top it up with some more vodka.", []),
    ("1.5 l malt vinegar", "Cover with vinegar-proof lids.", []),
    ("30 g English mustard powder", "Mix in the mustard.", ["30 g English mustard powder"]),
    ("30 g English mustard powder", "Scatter the mustard seeds.", []),
    ("30 g mustard powder\n1 tsp mustard seeds", "Add the mustard.", []),
    ("3 bay leaves", "Take out the bay.", ["3 bay leaves"]),
    (
        "1 tbsp turmeric\n30 g English mustard powder\n2 tsp ground ginger\n1 tsp ground allspice\n"
        "1 tbsp ground mace\n1 tsp ground black pepper\n40 g plain flour",
        "Mix the turmeric, mustard, ginger, allspice, mace, pepper, and flour.",
        [
            *("1 tbsp turmeric", "30 g English mustard powder", "2 tsp ground ginger"),
            *("1 tsp ground allspice", "1 tbsp ground mace", "1 tsp ground black pepper"),
            "40 g plain flour",
        ],
    ),
]

DAMSONS = """\
For the jam:
900 g damsons
900 g sugar

For the brandy:
450 g damsons
200 g caster sugar
350 ml brandy
"""
# a step, under which heading, what is offered: the amount of its own part, and no other's
HEADED = [
    ("Boil the damsons with the sugar.", "For the jam", ["900 g damsons", "900 g sugar"]),
    ("Add the sugar.", "For the brandy", ["200 g caster sugar"]),
    ("Pour over the brandy.", "Brandied damsons", ["350 ml brandy"]),
    ("For the brandy ones, put the pricked damsons in with the sugar.", "", ["200 g caster sugar"]),
    ("For the jam, boil the sugar.", "", ["900 g sugar"]),
    ("Stir in the sugar.", "", ["900 g sugar"]),
    ("Add the sugar.", "To finish", ["900 g sugar"]),
]


@pytest.mark.parametrize(("step", "heading", "offers"), HEADED)
def test_the_amount_of_the_steps_own_heading_is_offered(
    step: str, heading: str, offers: list[str]
) -> None:
    text = f"{heading}:\n{step}" if heading else step
    read = read_steps_box(text, readable(DAMSONS, (), WAYS), WAYS)[-1]
    assert [answer.words for answer in read.answers] == offers


@pytest.mark.parametrize(("box", "step", "offers"), STEPS)
def test_only_the_ingredient_that_is_meant_is_offered(
    box: str, step: str, offers: list[str]
) -> None:
    (read,) = read_steps_box(step, readable(box, (), WAYS), WAYS)
    assert [answer.words for answer in read.answers] == offers


# a line, what the food is called, what it is known as besides
CALLED = [
    ("1 jelly bag or muslin", "jelly bag or muslin", ""),
    ("30 cm muslin", "muslin", "cotton"),
    ("50 g butter or margarine", "butter or margarine", ""),
    ("1½ tsp ground ginger", "ground ginger", ""),
    ("1 kg plums, stoned", "plums", ""),
]


@pytest.mark.parametrize(("line", "food", "known_as"), CALLED)
def test_a_food_is_called_as_the_cook_calls_it(line: str, food: str, known_as: str) -> None:
    (read,) = read_box(line, (), WAYS)
    assert (read.state, read.food, read.known_as) == ("known", food, known_as)


@pytest.mark.parametrize(
    ("typed", "row", "answer"),
    [
        ("- rub the butter in\n- roll it out", 0, "- rub the ‹butter› in"),
        ("1. Roll it. 2. Rub the butter in.", 0, "1. Roll it.\n2. Rub the ‹butter› in."),
        ("Rub the\nbutter in", 0, "Rub the ‹butter› in"),
    ],
)
def test_an_amount_put_there_leaves_the_other_steps(typed: str, row: int, answer: str) -> None:
    goes_in = readable("100 g butter", (), WAYS)
    steps = read_steps_box(typed, goes_in, WAYS)
    asked = [(one.first, said.line) for one in steps for said in one.answers]
    assert asked == [(row, answer)]
    lines = typed.split("\n")
    one = next(one for one in steps if one.answers)
    lines[one.first : one.last + 1] = [answer]
    again = read_steps_box("\n".join(lines), goes_in, WAYS)
    assert len(again) == len(steps)


@pytest.mark.parametrize("step", ["Add the lemon zest.", "Add lemon juice.", "Stir in lemon oil."])
def test_a_form_of_a_food_is_not_the_food(step: str) -> None:
    steps = read_steps_box(step, readable("1 lemon\n1 kg sugar", (), WAYS), WAYS)
    assert [answer.words for one in steps for answer in one.answers] == []
