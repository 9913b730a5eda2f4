"""An answer that is pressed goes into the lines that it was asked of, and takes no other word."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup

from desk.conftest import OpenDesk
from desk.test_rooms import boxes_of
from stillroom.desk.pressing import press_of, pressed_in

LINES = ["1 kg plums", "1,5 kg apples", "", "Stir well,", "then wait."]
BOX = "\n".join(LINES)


@pytest.mark.parametrize(
    ("first", "last", "now", "then"),
    [
        (1, 1, BOX, "1 kg plums\nNEW\n\nStir well,\nthen wait."),
        (3, 4, BOX, "1 kg plums\n1,5 kg apples\n\nNEW"),
        (1, 1, BOX.replace("apples", "apples, peeled"), None),
        (3, 4, BOX.replace("wait", "wait a week"), None),
        (1, 1, f"2 lemons\n{BOX}", None),
        (3, 4, "1 kg plums", None),
    ],
    ids=["a line", "a step of two lines", "typed on", "its second line", "moved", "gone"],
)
def test_only_the_lines_that_were_asked_of_change(
    first: int, last: int, now: str, then: str | None
) -> None:
    said = press_of("method", LINES, first, last, "NEW")
    assert pressed_in({"method": now}, said) == {"method": now if then is None else then}


@pytest.mark.parametrize(
    "said",
    ["", "{", "[]", '{"box": "title"}', "[" * 90_000, "ingredients|0-0|x", "9" * 99_000]
    + ['{"box": "method", "first": "0", "was": "1 kg plums", "line": "x"}'],
)
def test_what_no_button_says_changes_nothing(said: str) -> None:
    assert pressed_in({"method": BOX}, said) == {"method": BOX}


def test_without_a_script_an_answer_takes_no_word_either(desk: OpenDesk) -> None:
    sent = boxes_of(desk, "/write/new") | {"ingredients": "1,5 kg apples"}
    page = desk.ask("/write/new-recipe", "POST", sent).text
    button = BeautifulSoup(page, "html.parser").select_one('#read-ingredients [name="answer"]')
    assert button is not None
    press = {"answer": str(button["value"])}
    asked = desk.ask("/write/new-recipe", "POST", sent | press).text
    changed = {"ingredients": "1,5 kg apples, peeled"}
    typed_on = desk.ask("/write/new-recipe", "POST", sent | press | changed).text
    desk.ask("/write/new-recipe/let-go", "POST")
    boxes = [BeautifulSoup(one, "html.parser").select_one("#ingredients") for one in (asked, typed_on)]
    assert [box.text.strip() for box in boxes if box] == ["1.5 kg apples", "1,5 kg apples, peeled"]
