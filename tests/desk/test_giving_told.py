"""Mistakes in a giving list at the desk: each at its box and nowhere else, and no row is lost.

Columns: what is typed into which boxes, the status, the boxes at which something must be told with
a part of what it says. At every other box nothing may stand.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import quote

import pytest
from bs4 import BeautifulSoup

from desk.conftest import Answer, OpenDesk, open_with_lists
from desk.test_rooms import boxes_of
from stillroom.core.words.problems import Problem
from stillroom.desk.giving_told import box_id, tell

TEXT = """\
giving list: Midwinter          # ours
giving day: 2027-12-18
baskets:
  small: {eat: 2, craft: 0}
makes:
  - {recipe: quince-chutney, container: "jar, 200 ml", per batch: 6}
  - {recipe: lavender-sugar, container: "jar, 200 ml", per batch: 4}
households:
  - name: Ysolde Fennimore     # next door
    basket: small
  - {name: Wren Tallow, basket: small, avoid: [milk]}
prices:
  - {item: granulated sugar, packs: [1 kg for 1.15]}
"""
NAME = "giving/winter.yml"
WAY = f"/giving/list?name={quote(NAME)}"


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("told") / "book") as opened:
        yield opened


@pytest.fixture
def path(own: OpenDesk) -> Path:
    path = own.folder / "giving" / "winter.yml"
    path.write_text(TEXT, encoding="utf-8")
    return path


def keep(own: OpenDesk, **typed: str) -> Answer:
    return own.ask("/giving/list", "POST", boxes_of(own, WAY) | typed)


def told(text: str) -> dict[str, str]:
    """Return what stands at each box; that the box says so itself and is not folded away."""
    page = BeautifulSoup(text, "html.parser")
    found = {}
    for one in page.select(".wrongs-at"):
        if words := one.get_text(" ", strip=True):
            box = page.find(id=str(one["id"]).removeprefix("wrong-"))
            assert box is not None
            assert box["aria-invalid"] == "true"
            assert one["id"] in str(box["aria-describedby"])
            row = box.find_parent("details")
            assert row is None or row.has_attr("open")
            assert page.select_one(f'.to-mend a[href="#{box["id"]}"]')
            found[str(box["name"])] = words
    return found


ROWS = [
    ({"households|0|adults": "many"}, 422, {"households|0|adults": "It has to be a whole number."}),
    ({"giving day": ""}, 422, {"giving day": 'Say when the baskets go out: "24 December 2027".'}),
    ({"giving day": "31.2.2027"}, 422, {"giving day": "is not a day of the calendar"}),
    ({"giving list": " "}, 422, {"giving list": "It has no name."}),
    ({"households|0|basket": ""}, 303, {}),  # there is one sort of basket: it is that
    ({"households|0|basket": "smal"}, 303, {"households|0|basket": 'Did you mean "small"?'}),
    ({"households|0|avoid": "Tom and Ann are vegan"}, 303, {}),  # all of the house then
    ({"households|1|avoid": "nutts"}, 303, {"households|1|avoid": 'Did you mean "nuts"?'}),
    (
        {"households|0|avoid": "half of us are vegan, more or less"},
        303,
        {"households|0|avoid": 'Did you mean "vegan"?'},
    ),
    ({"households|0|pets": "dog and cat"}, 303, {}),
    ({"households|0|pets": "unicorn"}, 422, {"households|0|pets": "It may be: dog, cat"}),
    ({"households|0|budget": "lots"}, 422, {"households|0|budget": 'Write "14.50".'}),
    ({"households|0|must have": "plum jam"}, 303, {"households|0|must have": "is not a recipe"}),
    ({"households|1|name": ""}, 422, {"households|1|name": 'Say who they are: "The Rowans".'}),
    (
        {"households|1|name": "Ysolde Fennimore"},
        303,
        {"households|1|name": "Give one another name."},
    ),
    ({"households|0|design": "zebra"}, 303, {"households|0|design": 'There is no design "zebra".'}),
    ({"makes|0|recipe": ""}, 422, {"makes|0|recipe": "Choose one."}),
    ({"makes|0|batches": "-1"}, 422, {"makes|0|batches": "It has to be 0 or more."}),
    ({"makes|1|recipe": "quince-chutney"}, 303, {"makes|1|recipe": "Keep one."}),
    (
        {"baskets|small|eat": "0"},
        303,
        {"baskets|small|eat": 'The basket "small" holds nothing. Say "2".'},
    ),
    (
        {"prices": "granulated sugar: 1 kg for 1.15\nvodka"},
        422,
        {
            "prices": "“vodka”: no pack and price stand behind a colon. "
            "Write the food, a colon, the pack and its price: “brandy: 700 ml for 16”."
        },
    ),
    ({"prices": "gin: cheap"}, 422, {"prices": '“gin”: "cheap" is not a pack with its price.'}),
    ({"hours": "6"}, 303, {}),
    ({"hours": "Jullly: 3"}, 422, {"hours": 'Did you mean "july"?'}),
    ({"stock": "stuff"}, 422, {"stock": "is not a line of stock"}),
    (
        {"households|new|avoid": "nuts"},
        422,
        {"households|new|name": "Who is it? Write their name."},
    ),
    ({"makes|new|container": "jar"}, 422, {"makes|new|recipe": "Which recipe is it? Choose one."}),
    (
        {"households|new|name": "Ash", "households|new|adults": "q"},
        422,
        {"households|2|adults": "It has to be a whole number."},
    ),
    (
        {"batches|new|recipe": "quince-chutney"},
        422,
        {"batches|0|started": "Nothing is said here yet. Fill it in."},
    ),
    (
        {"households|0|adults": "x", "households|1|avoid": "nutts"},
        422,
        {"households|0|adults": "whole number", "households|1|avoid": "nuts"},
    ),
]


@pytest.mark.parametrize(
    ("typed", "status", "expected"),
    ROWS,
    ids=[f"{next(iter(row[0]))}={next(iter(row[0].values()))[:20]}" for row in ROWS],
)
def test_each_mistake_stands_at_its_box(
    own: OpenDesk, path: Path, typed: dict[str, str], status: int, expected: dict[str, str]
) -> None:
    answer = keep(own, **typed)
    assert answer.status == status
    if status == 422:
        assert path.read_text(encoding="utf-8") == TEXT
    found = told(answer.text if status == 422 else own.ask(WAY).text)
    assert found.keys() == expected.keys()
    for box, words in expected.items():
        assert words in found[box]
    # a cook's words: no name of the file with a colon, no brackets, no dash to write
    for words in found.values():
        assert not re.search(r'"[a-z ]+: |[{}\[\]]|after a dash', words), words


PRICES = "vodka: 700 ml for 16 pounds\nrum: 1 l cheap\ngranulated sugar: 1 kg for 1.15"


def test_prices_keep_their_order_over_a_refusal(own: OpenDesk, path: Path) -> None:
    answer = keep(own, prices=PRICES)
    assert told(answer.text).keys() == {"prices"}
    sent = boxes_of_text(answer.text)
    assert sent["prices"].split() == PRICES.split()
    mended = sent | {"prices": sent["prices"].replace("1 l cheap", "1 l for 20")}
    assert own.ask("/giving/list", "POST", mended).status == 303
    text = path.read_text(encoding="utf-8")
    assert text.index("vodka") < text.index("rum") < text.index("granulated sugar")
    assert "  - {item: granulated sugar, packs: [1 kg for 1.15]}\n" in text


def test_a_day_is_chosen_and_one_in_words_stays_as_it_is(own: OpenDesk, path: Path) -> None:
    def box(name: str) -> tuple[str, str]:
        (found,) = BeautifulSoup(own.ask(WAY).text, "html.parser").select(f'[name="{name}"]')
        return str(found.get("type", "text")), str(found.get("value", ""))

    assert box("giving day") == ("date", "2027-12-18")
    assert box("households|0|opens") == ("date", "")
    path.write_text(TEXT.replace("2027-12-18", "18 December 2027"), encoding="utf-8")
    assert box("giving day") == ("text", "18 December 2027")


def test_a_list_that_is_to_be_written_is_said_whole(own: OpenDesk, path: Path) -> None:
    assert keep(own, **{"households|0|avoid": "low FODMAP"}).status == 303
    words = told(own.ask(WAY).text)["households|0|avoid"]
    assert "pistachios, sweeteners" in words
    assert "…" not in words


def test_a_name_with_blanks_makes_no_blank_in_an_id() -> None:
    assert box_id("baskets|a b|design") == "baskets|a_20b|design"


def test_rows_taken_out_and_added_beside_a_mistake_stay_so_once_it_is_mended(
    own: OpenDesk, path: Path
) -> None:
    answer = keep(
        own,
        **{
            "households|0|gone": "1",
            "households|1|adults": "q",
            "households|new|name": "Ash",
            "households|new|basket": "small",
        },
    )
    assert answer.status == 422
    sent = boxes_of_text(answer.text)
    assert sent["households|0|name"] == "Wren Tallow"
    assert sent["households|1|name"] == "Ash"
    assert own.ask("/giving/list", "POST", sent | {"households|0|adults": "2"}).status == 303
    text = path.read_text(encoding="utf-8")
    assert "{name: Wren Tallow, basket: small, avoid: [milk], adults: 2}" in text
    assert "name: Ash" in text
    assert "Ysolde" not in text
    assert "giving list: Midwinter          # ours" in text


def test_what_is_said_of_nobody_is_not_lost(own: OpenDesk, path: Path) -> None:
    answer = keep(own, **{"households|new|avoid": "nuts", "households|new|basket": "small"})
    sent = boxes_of_text(answer.text)
    assert sent["households|new|avoid"] == "nuts"
    assert own.ask("/giving/list", "POST", sent | {"households|new|name": "Ash"}).status == 303
    assert re.search(r"name: Ash\n    basket: small\n    avoid:", path.read_text(encoding="utf-8"))


def test_a_row_taken_out_elsewhere_never_takes_anothers_words(own: OpenDesk, path: Path) -> None:
    sent = boxes_of(own, WAY) | {"households|1|avoid": "milk, nuts"}
    head, _, rest = TEXT.partition("  - name: Ysolde")
    elsewhere = head + rest[rest.index("  - {name: Wren") :]
    path.write_text(elsewhere, encoding="utf-8")
    answer = own.ask("/giving/list", "POST", sent)
    assert answer.status == 409
    assert path.read_text(encoding="utf-8") == elsewhere
    again = boxes_of_text(answer.text)
    assert [again[f"households|{n}|name"] for n in (0, 1)] == ["Ysolde Fennimore", "Wren Tallow"]
    assert again["households|0|avoid"] == ""
    assert own.ask("/giving/list", "POST", again).status == 303
    assert path.read_text(encoding="utf-8") == TEXT.replace("avoid: [milk]", "avoid: [milk, nuts]")


def test_boxes_of_long_ago_are_not_put_over_a_changed_file(own: OpenDesk, path: Path) -> None:
    sent = boxes_of(own, WAY) | {"base": "0" * 64, "opened": "0" * 64}
    answer = own.ask("/giving/list", "POST", sent | {"households|0|name": "Another"})
    assert answer.status == 409
    assert "Nothing was kept" in answer.text
    assert path.read_text(encoding="utf-8") == TEXT


def boxes_of_text(text: str) -> dict[str, str]:
    page = BeautifulSoup(text, "html.parser")
    found = {}
    for one in page.select('form[action="/giving/list"] :is(input, textarea, select)[name]'):
        if one.name == "select":
            chosen = one.select_one("option[selected]") or one.select_one("option")
            found[str(one["name"])] = str(chosen.get("value", chosen.text)) if chosen else ""
        elif one.get("type") != "checkbox":
            words = one.text.removeprefix("\n") if one.name == "textarea" else one.get("value", "")
            found[str(one["name"])] = str(words)
    return found


def test_what_is_chosen_is_called_by_its_title() -> None:
    said = {"makes": [{"recipe": "rose-rusks", "container": "bag"}]}
    what = "A batch of rose-rusks makes 30 rusks: how many presents that is is not said."
    mend = 'Write it as in "- {recipe: rose-rusks, per batch: 4}".'
    problem = Problem("winter.yml", 3, what, mend, ("makes", "0", "per batch"))
    (one,) = tell([problem], said, {"rose-rusks": "Rose rusks"})
    assert one.where == "Rose rusks, How many a batch gives"
    assert one.words == (
        "A batch of Rose rusks makes 30 rusks: how many presents that is is not said. "
        'Write how many, such as "4".'
    )


def test_what_belongs_in_another_box_is_said_with_its_name(own: OpenDesk, path: Path) -> None:
    for age in ("minus 3", "due in May"):
        answer = keep(own, **{"households|1|children": age})
        assert answer.status == 422
        said = " ".join(BeautifulSoup(answer.text, "html.parser").get_text(" ").split())
        assert "write “yes” under “Somebody is pregnant” for the household." in said
