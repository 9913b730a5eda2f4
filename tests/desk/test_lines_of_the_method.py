"""Lines of a method that may be none: each is answered with a press, and asked about no more."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from bs4 import BeautifulSoup, Tag
from click.testing import CliRunner

from desk.conftest import OpenDesk, open_on, small_book
from desk.test_rooms import boxes_of, keep
from stillroom.cli import main

ODD = ("Photograph by Ann Bell", "Orchard fair in September", "Tip into the jars")
PAPER = f"""Plum jam

Makes 4 jars of 200 ml

Ingredients
1 kg plums
800 g sugar

Method
1. Stone the plums and boil them with the sugar for 20 minutes.
2. {ODD[0]}
3. {ODD[1]}
4. {ODD[2]}, and close them.

Source: Nan
"""
"""Invented."""


@pytest.fixture
def brought(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[OpenDesk]:
    folder = small_book(tmp_path / "book")
    (folder / "note.txt").write_text(PAPER, encoding="utf-8")
    monkeypatch.chdir(folder)
    done = CliRunner().invoke(main, ["bring", "note.txt"])
    assert done.exit_code == 0, done.output
    assert f'Is this part of the method? "{ODD[0]}" · "{ODD[1]}".' in done.output
    opened, thread = open_on(folder)
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def press(page: BeautifulSoup, line: str, words: str) -> str:
    (row,) = (one for one in page.select("#read-method li") if line in one.get_text())
    (button,) = (one for one in row.select("button") if one.get_text(strip=True) == words)
    return str(button["value"])


def asked_rows(page: BeautifulSoup) -> list[str]:
    return [
        one.get_text(" ", strip=True)
        for one in page.select("#read-method li")
        if "part of the method?" in one.get_text()
    ]


def named(page: BeautifulSoup, name: str) -> str:
    box = page.select_one(f"[name={name}]")
    assert isinstance(box, Tag)
    return str(box.get("value", "")) or box.get_text()


def test_each_line_is_answered_with_a_press(brought: OpenDesk) -> None:
    (path,) = (brought.folder / "drafts").iterdir()
    way = f"/write/{path.stem}"
    page = BeautifulSoup(brought.ask(way).text, "html.parser")
    assert len(asked_rows(page)) == 2, "and not the step that is plainly one"
    assert "part of the method?" not in " ".join(
        one.get_text() for one in page.select(".ways label")
    ), "it is asked once"

    def pressed(line: str, words: str) -> BeautifulSoup:
        now = BeautifulSoup(brought.ask(way).text, "html.parser")
        form = boxes_of(brought, way) | {"answer": press(now, line, words)}
        return BeautifulSoup(brought.ask(f"{way}/keep", "POST", form).text, "html.parser")

    as_note = pressed(ODD[0], "a note")
    assert ODD[0] not in named(as_note, "method")
    assert ODD[0] in named(as_note, "after").partition("## Source")[0]
    assert [row for row in asked_rows(as_note) if ODD[1] in row]
    assert len(asked_rows(as_note)) == 1

    out = pressed(ODD[1], "to be left out")
    assert ODD[1] not in named(out, "method") + named(out, "after")
    assert not asked_rows(out)
    assert ODD[0] in named(out, "after"), "and the answer before it holds"

    brought.ask(f"{way}/let-go", "POST", boxes_of(brought, way))
    step = pressed(ODD[0], "a step")
    assert ODD[0] in named(step, "method")
    assert len(asked_rows(step)) == 1
    assert json.loads(press(page, ODD[0], "a step"))["more"] == f'"{ODD[0]}"'

    kept = {"method": named(step, "method"), "settled": named(step, "settled"), "as": "draft"}
    assert keep(brought, path.stem, **kept) == 303
    text = path.read_text(encoding="utf-8")
    assert f'Is this part of the method? "{ODD[1]}".' in text
    assert ODD[0] in text.partition("## Method")[2]


def test_answered_lines_are_asked_about_no_more(brought: OpenDesk) -> None:
    (path,) = (brought.folder / "drafts").iterdir()
    page = BeautifulSoup(brought.ask(f"/write/{path.stem}").text, "html.parser")
    settled = "\r\n".join(f'"{one}"' for one in ODD)
    assert keep(brought, path.stem, settled=settled, **{"as": "draft"}) == 303
    assert "part of the method?" not in path.read_text(encoding="utf-8")
    assert ODD[0] in named(page, "method")
