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
