"""An answer that is pressed goes into the lines that it was asked of, and takes no other word."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup

from desk.conftest import OpenDesk
from desk.test_rooms import boxes_of
from stillroom.desk.pressing import press_of, pressed_in, with_more

LINES = ["1 kg plums", "1,5 kg apples", "", "Stir well,", "then wait."]
BOX = "\n".join(LINES)


@pytest.mark.parametrize(
    ("first", "last", "now", "then"),
    [
        (1, 1, BOX, "1 kg plums\nNEW\n\nStir well,\nthen wait."),
        (3, 4, BOX, "1 kg plums\n1,5 kg apples\n\nNEW"),
        (1, 1, BOX.replace("apples", "apples, peeled"), None),
        (3, 4, BOX.replace("wait", "wait a week"), None),
        (1, 1, f"2 lemons\n{BOX}", "2 lemons\n1 kg plums\nNEW\n\nStir well,\nthen wait."),
        (1, 1, f"2 lemons\n{BOX}\n1,5 kg apples", None),
        (3, 4, "1 kg plums", None),
    ],
    ids=["a line", "two lines", "typed on", "its second line", "moved", "twice", "gone"],
)
def test_only_the_lines_that_were_asked_of_change(
    first: int, last: int, now: str, then: str | None
) -> None:
    said = press_of("method", LINES, first, last, "NEW")
    assert pressed_in({"method": now}, said) == {"method": now if then is None else then}


def test_notes_stand_in_the_order_in_which_they_were_pressed_and_leave_no_gap() -> None:
    form = {"method": "Boil.\nFirst note\nStir.\nSecond note\nThird note", "after": ""}
    lines = form["method"].split("\n")
    for at in (1, 3, 4):  # as the page asked before anything was pressed
        said = press_of("method", lines, at, at, "", to="after", more=lines[at])
        form = pressed_in(form, said)
    assert form == {
        "method": "Boil.\nStir.",
        "after": "## Notes\n\nFirst note\n\nSecond note\n\nThird note",
    }


NOTED = {
    "no heading": ("It sets late.", "## Notes\n\nIt sets late.\n\nNEW"),
    "the last": ("## Notes\n\nIt sets.", "## Notes\n\nIt sets.\n\nNEW"),
    "above another": (
        "## Notes\n\nIt sets.\n\n## Source\n\nNan",
        "## Notes\n\nIt sets.\n\nNEW\n\n## Source\n\nNan",
    ),
    "below another": (
        "## Source\n\nNan\n\n## Notes\n\nIt sets.\n",
        "## Source\n\nNan\n\n## Notes\n\nIt sets.\n\nNEW",
    ),
    "none": ("## Source\n\nNan", "## Notes\n\nNEW\n\n## Source\n\nNan"),
}


@pytest.mark.parametrize(("text", "then"), NOTED.values(), ids=NOTED)
def test_a_note_stands_behind_the_last_one(text: str, then: str) -> None:
    assert with_more(text, "NEW", "after") == then


@pytest.mark.parametrize(
    "said",
    [
        "",
        "{",
        "[]",
        '{"box": "title"}',
        "[" * 90_000,
        "ingredients|0-0|x",
        "9" * 99_000,
        '{"box": "method", "first": "0", "was": "1 kg plums", "line": "x"}',
    ],
)
def test_what_no_button_says_changes_nothing(said: str) -> None:
    assert pressed_in({"method": BOX}, said) == {"method": BOX}


def test_without_a_script_an_answer_takes_no_word_either(desk: OpenDesk) -> None:
    way = "/write/quince-chutney"
    sent = boxes_of(desk, way) | {"ingredients": "1,5 kg apples"}

    def pressed(press: str, listed: str) -> BeautifulSoup:
        form = sent | {"ingredients": listed, "answer": press}
        return BeautifulSoup(desk.ask(f"{way}/keep", "POST", form).text, "html.parser")

    shown = pressed("", "1,5 kg apples")
    press = str(shown.select('#read-ingredients [name="answer"]')[0]["value"])
    boxes = [
        pressed(press, "1,5 kg apples").select("#ingredients")[0].text.strip(),
        pressed(press, "1,5 kg apples, peeled").select("#ingredients")[0].text.strip(),
    ]
    desk.ask(f"{way}/let-go", "POST")
    assert boxes == ["1.5 kg apples", "1,5 kg apples, peeled"]
