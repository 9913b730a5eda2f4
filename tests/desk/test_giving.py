"""The giving list at the desk: changed with the smallest change, checked first, never public."""

from __future__ import annotations

import difflib
import shutil
import time
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path
from urllib.parse import quote

import pytest
import yaml
from bs4 import BeautifulSoup

from desk.conftest import DEMO, OpenDesk, open_on, small_book
from desk.test_rooms import boxes_of
from stillroom.desk.giving_form import change_list
from stillroom.saving.yaml_files import change_yaml

LIST = DEMO / "site_demo" / "giving" / "christmas-2027.yml"


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    folder = small_book(tmp_path / "book")
    (folder / "giving").mkdir(exist_ok=True)
    shutil.copy(LIST, folder / "giving" / "winter.yml")
    opened, thread = open_on(folder)
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


NAME = quote("giving/winter.yml")


def changed(before: str, after: str) -> list[str]:
    rows = difflib.ndiff(before.splitlines(), after.splitlines())
    return [row for row in rows if row[0] in "+-"]


def test_boxes_that_were_not_touched_change_nothing(own: OpenDesk) -> None:
    path = own.folder / "giving" / "winter.yml"
    before = path.read_bytes()
    sent = boxes_of(own, f"/giving/list?name={NAME}")
    assert "households|1|avoid" in sent
    assert own.ask("/giving/list", "POST", sent).status == 303
    assert path.read_bytes() == before


@pytest.mark.parametrize("ends", ["\n", "\r\n"], ids=["unix", "windows"])
def test_one_box_changes_one_line(ends: str) -> None:
    text = LIST.read_text(encoding="utf-8").replace("\n", ends)
    sent = {"households|1|avoid": "nuts, milk", "baskets|small|eat": "4"}
    written = change_yaml(text, "l", lambda said: change_list(said, sent))
    assert [row for row in changed(text, written) if row[0] == "+"] == [
        "+   small: {eat: 4, drink: 1, craft: 0, cost: 1.20}",
        "+     avoid: [nuts, milk]             # Idony carries a pen",
    ]
    assert written.count("\r\n") == (written.count("\n") if ends == "\r\n" else 0)


def test_what_happened_is_put_into_the_log(own: OpenDesk) -> None:
    sent = boxes_of(own, f"/giving/list?name={NAME}")
    sent |= {
        "batches|new|recipe": "quince-chutney",
        "batches|new|started": str(date(2027, 10, 2)),
        "batches|new|number": "9",
        "households|new|name": "The new ones",
        "households|new|basket": "small 2",
        "households|0|gone": "1",
    }
    assert own.ask("/giving/list", "POST", sent).status == 303
    text = (own.folder / "giving" / "winter.yml").read_text(encoding="utf-8")
    assert "started: 2027-10-02" in text
    assert "The new ones" in text
    assert "Penhallicks" not in text
    assert own.ask(f"/giving/earlier?name={NAME}").text.count("&amp;at=") == 1


def test_what_is_wrong_is_told_and_not_written(own: OpenDesk) -> None:
    path = own.folder / "giving" / "winter.yml"
    before = path.read_bytes()
    sent = boxes_of(own, f"/giving/list?name={NAME}") | {"households|0|adults": "many"}
    answer = own.ask("/giving/list", "POST", sent)
    assert answer.status == 422
    assert "adults" in answer.text
    assert 'value="many"' in answer.text, "what was typed still stands there"
    assert path.read_bytes() == before


def test_private_pages_say_so_and_no_other_file_is_shown(own: OpenDesk) -> None:
    for way in ("/giving", f"/giving/list?name={NAME}", f"/giving/earlier?name={NAME}"):
        text = own.ask(way).text
        assert 'class="private"' in text
        assert "Nothing on this page is ever published" in text
    for name in ("mkdocs.yml", "../x.yml", "/etc/passwd", ""):
        assert own.ask(f"/giving/list?name={quote(name)}").status == 404
        assert own.ask("/giving/list", "POST", {"name": name}).status == 404
        assert own.ask("/giving/plan", "POST", {"name": name}).status == 404
    for way in ("/giving/pack/index.html", "/giving/pack/../mkdocs.yml", "/giving/pack/"):
        assert own.ask(way).status == 404


def worked_out(desk: OpenDesk) -> str:
    """Wait until a plan is there, and return the page that tells of it."""
    for _ in range(240):
        text = desk.ask("/giving/plan").text
        if "so far" not in text:
            break
        time.sleep(0.5)
    return text


def test_a_plan_that_lacks_something_is_a_plan_all_the_same(own: OpenDesk) -> None:
    said = {"called": "Soon", "day": str(date.today() + timedelta(3)), "who": "The Marrables"}
    assert own.ask("/giving", "POST", said).status == 303
    assert own.ask("/giving/plan", "POST", {"name": "giving/soon.yml"}).status == 303
    text = worked_out(own)
    assert "Worked out, but not all of it can be done</h1>" in text
    assert "/giving/pack/index.html" in text


def test_a_list_is_begun_and_worked_out(own: OpenDesk) -> None:
    said = {"called": "Midsummer 2027", "day": "2027-12-18", "who": "The Marrables"}
    assert own.ask("/giving", "POST", said).status == 303
    assert (own.folder / "giving" / "midsummer-2027.yml").is_file()
    assert own.ask("/giving/plan", "POST", {"name": "giving/midsummer-2027.yml"}).status == 303
    text = worked_out(own)
    assert "/giving/pack/index.html" in text, text
    pack = own.ask("/giving/pack/index.html")
    assert pack.status == 200
    assert "Midsummer 2027" in pack.text
    assert "Marrables" in own.ask("/giving/pack/plan.html").text
    assert "script-src" not in pack.headers["content-security-policy"]
    never = own.ask("/publish").text
    assert "the pack that was worked out" in never


def test_what_happened_is_one_line_of_the_log_or_told(own: OpenDesk) -> None:
    log = own.folder / "giving" / "log.yml"
    said = {"name": NAME, "what": "begun", "whom": "quince chutne"}
    answer = own.ask("/giving/happened", "POST", said)
    assert answer.status == 422
    assert "is not a recipe of the book" in answer.text
    assert not log.exists()
    assert own.ask("/giving/happened", "POST", said | {"whom": "quince chutney"}).status == 303
    text = log.read_text(encoding="utf-8")
    assert f"- {{day: {date.today()}, begun: quince-chutney}}\n" in text
    assert own.ask("/giving/happened", "POST", said | {"name": "mkdocs.yml"}).status == 404
    sent = {**said, "what": "bottled", "whom": "quince chutney", "number": "7"}
    assert own.ask("/giving/happened", "POST", sent).status == 303
    assert "bottled: quince-chutney, number: 7" in log.read_text(encoding="utf-8")
    assert "Noted." in own.ask(f"/giving/list?name={NAME}&said=noted").text


def test_what_cannot_be_noted_is_told_by_the_boxes(own: OpenDesk) -> None:
    # "number" has no place beside "failed". It may be: began, day, words. (a newcomer, 2026-11-30)
    told = {
        ("failed", "quince chutney", "number", "2"): "“How many” is not asked of “failed”, but: "
        "“On”, “Begun on, where two are going”, “In your words”.",
        ("bought", "vodka", "paid", "12.50"): "“How much was bought” is not filled in.",
        ("bottled", "quince chutney", "words", "at last"): "“How many” is not filled in.",
        ("tended", "quince chutney", "day", "today"): "Note first when it was begun.",
    }
    for (what, whom, box, words), expected in told.items():
        sent = {"name": NAME, "what": what, "whom": whom, box: words}
        answer = own.ask("/giving/happened", "POST", sent)
        assert answer.status == 422
        said = " ".join(BeautifulSoup(answer.text, "html.parser").get_text(" ").split())
        assert expected in said
        for notion in ("stillroom note", "quince-chutney is going", "{day", "has no place"):
            assert notion not in said


def test_what_happened_is_said_as_a_cook_says_it(own: OpenDesk) -> None:
    log, today = own.folder / "giving" / "log.yml", date.today()
    gone = today - timedelta(days=40)
    day = f"{gone.day} {gone:%B}"  # without its year: it has happened
    rows = (
        ({"what": "begun", "whom": "quince chutney", "day": day, "number": "2"}, "batches: 2"),
        ({"what": "bought", "whom": "vodka", "amount": "2 x 70cl"}, "amount: 2 x 70cl"),
        ({"what": "bought", "whom": "jam jars", "number": "6"}, "amount: 6"),
        ({"what": "begun", "whom": "quince chutney", "day": "today"}, "begun: quince-chutney}"),
        ({"what": "tended", "whom": "quince chutney", "began": day}, f"began: {gone}"),
    )
    for said, written in rows:
        answer = own.ask("/giving/happened", "POST", {"name": NAME, **said})
        assert answer.status == 303, answer.text
        assert written in log.read_text(encoding="utf-8").replace("'", "").replace('"', "")
    assert f"day: {gone}, begun: quince-chutney" in log.read_text(encoding="utf-8")


def test_words_in_a_box_are_read_as_a_list_reads_them(own: OpenDesk) -> None:
    path = own.folder / "giving" / "winter.yml"
    sent = boxes_of(own, f"/giving/list?name={NAME}")
    sent |= {
        "households|0|children": "3 and 7",
        "households|0|avoid": "nuts (walnuts, pecans), and alcohol",
    }
    assert own.ask("/giving/list", "POST", sent).status == 303
    row = yaml.safe_load(path.read_text(encoding="utf-8"))["households"][0]
    assert row["children"] == [3, 7]
    assert row["avoid"] == ["nuts (walnuts, pecans)", "alcohol"]


def test_an_earlier_list_stands_in_the_words_of_its_boxes(own: OpenDesk) -> None:
    sent = boxes_of(own, f"/giving/list?name={NAME}") | {"households|0|likes": "damson cheese"}
    assert own.ask("/giving/list", "POST", sent).status == 303
    listed = BeautifulSoup(own.ask(f"/giving/earlier?name={NAME}").text, "html.parser")
    link = listed.select_one(".versions a")
    assert link is not None
    shown = BeautifulSoup(own.ask(str(link["href"])).text, "html.parser")
    sides = shown.select_one(".sides")
    assert sides is not None
    changed = [row.get_text(" ", strip=True) for row in sides.select("tr.other")]
    assert changed == ["Likes: quince-chutney, bramble-jelly Likes: damson cheese"]
    words = sides.get_text("\n")
    assert "Recipe: " in words
    assert not [one for one in ("households:", "makes:", "giving day:", "#", "- ") if one in words]


def test_earlier_settings_stand_in_the_words_of_their_boxes(own: OpenDesk) -> None:
    sent = boxes_of(own, "/book") | {"foot": "Ann and Ola"}
    assert own.ask("/book", "POST", sent).status == 303
    listed = BeautifulSoup(own.ask("/book/earlier?name=mkdocs.yml").text, "html.parser")
    link = listed.select_one(".versions a")
    assert link is not None
    shown = BeautifulSoup(own.ask(str(link["href"])).text, "html.parser")
    words = shown.select_one(".sides").get_text("\n")  # type: ignore[union-attr]
    assert "Whose it is: Ann and Ola" in words
    assert "Country of the kitchen: " in words
    assert not [one for one in ("site_name", "plugins", "theme:", "copyright") if one in words]


def test_what_is_made_already_is_named_as_the_book_names_it(own: OpenDesk) -> None:
    way = f"/giving/list?name={NAME}"
    hint = BeautifulSoup(own.ask(way).text, "html.parser").find(id="hint-made")
    assert hint is not None
    shape = hint.get_text().partition("“")[2].rstrip("”")
    assert shape.startswith("Plum jam: "), "a title, not the name of a file"
    sent = boxes_of(own, way) | {"made": shape.replace("Plum jam", "Lavender sugar")}
    answer = own.ask("/giving/list", "POST", sent)
    assert answer.status == 303, answer.text
    assert "Lavender sugar: 6; jar, 200 ml" in own.ask(way).text
