"""Every short form that a list's reader takes, at the desk: shown, kept as it is, changed alone."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from desk.conftest import open_on, small_book
from desk.test_rooms import boxes_of
from stillroom.beginning.book import Answers, begin_book
from stillroom.desk.giving_form import ROWS, box_name, change_list, rows_of, top_of
from stillroom.desk.giving_lines import lines_of
from stillroom.giving.list_words import words_by_part
from stillroom.giving.reading import read_giving_list
from stillroom.saving.yaml_files import change_yaml, read_yaml_file

HEAD = "giving list: Midwinter\ngiving day: 2027-12-18\n"
BASKETS = "baskets:\n  small: {eat: 1}\n"
MAKES = "makes:\n  - recipe: plum-jam\n"
WHO = "households:\n  - name: Ysolde Fennimore\n    basket: small\n"
# the part written short, its text, and boxes that must show this
SHORT = {
    "basket in words": ("baskets", "  small: 1 to eat\n", {"baskets|small|eat": "1"}),
    "basket of two sorts": (
        "baskets",
        "  small: 2 to eat, 1 drink\n",
        {"baskets|small|eat": "2", "baskets|small|drink": "1"},
    ),
    "basket by another word": ("baskets", "  small: {food: 3}\n", {"baskets|small|eat": "3"}),
    "a make by its name": ("makes", "  - plum-jam\n", {"makes|0|recipe": "plum-jam"}),
    "makes in one line": ("makes", " plum-jam, quince-paste\n", {"makes|1|recipe": "quince-paste"}),
    "makes with their jar": (
        "makes",
        '  plum-jam: "jar, 250 ml"\n',
        {"makes|0|recipe": "plum-jam", "makes|0|container": "jar, 250 ml"},
    ),
    "makes with nothing said": ("makes", "  plum-jam:\n", {"makes|0|recipe": "plum-jam"}),
    "makes by other words": (
        "makes",
        "  - gift: plum-jam\n    in: jar\n",
        {"makes|0|recipe": "plum-jam", "makes|0|container": "jar"},
    ),
    "somebody by name": ("households", "  - Ysolde\n", {"households|0|name": "Ysolde"}),
    "all in one line": ("households", " Ysolde; Wren\n", {"households|1|name": "Wren"}),
    "somebody and a basket": (
        "households",
        "  Ysolde: small\n",
        {"households|0|name": "Ysolde", "households|0|basket": "small"},
    ),
    "somebody and what to avoid": (
        "households",
        "  Ysolde: no nuts\n",
        {"households|0|name": "Ysolde", "households|0|avoid": "no nuts"},
    ),
    "somebody and several baskets": (
        "households",
        "  Ysolde: {basket: {small: 2}, avoid: nuts}\n",
        {"households|0|basket": "small 2", "households|0|avoid": "nuts"},
    ),
    "by post, yes": (
        "households",
        "  - name: Ysolde\n    by post: yes\n",
        {"households|0|delivery": "by post"},
    ),
    "by other words": (
        "households",
        "  - who: Ysolde\n    allergies: nuts and dairy\n    kids: 4, 8 months\n",
        {"households|0|name": "Ysolde", "households|0|avoid": "nuts and dairy"},
    ),
    "price behind its name": (
        "prices",
        "  - caster sugar: 1 kg for 2.10\n",
        {"prices": "caster sugar: 1 kg for 2.10"},
    ),
    "prices by name": (
        "prices",
        "  caster sugar: [1 kg for 2.10, 2 kg for 4]\n",
        {"prices": "caster sugar: 1 kg for 2.10; 2 kg for 4"},
    ),
    "price in a line": (
        "prices",
        "  - caster sugar, 1 kg for 2.10\n  - 1 kg flour for 1.15\n",
        {"prices": "caster sugar: 1 kg for 2.10\nflour: 1 kg for 1.15"},
    ),
    "price of a size": (
        "prices",
        "  - 1 kg sugar: 1.15\n",
        {"prices": "sugar: 1 kg for 1.15"},
    ),
    "hours bare": ("hours", " 6\n", {"hours": "every month: 6"}),
    "hours a week": ("hours", "\n  every week: 5\n", {"hours": "every week: 5"}),
    "stock as a list": ("stock", "\n  - 3 kg honey\n", {"stock": "3 kg honey"}),
    "stock of one": ("stock", "\n  ingredients: 3 kg honey\n", {"stock": "3 kg honey"}),
}


def listed(part: str, written: str) -> str:
    parts = {"baskets": BASKETS, "makes": MAKES, "households": WHO}
    own = f"{part}:{'' if written[0] == ' ' and written[1] != ' ' else chr(10)}{written}"
    return HEAD + "".join((parts | {part: own.replace(":\n\n", ":\n")}).values())


def boxes(text: str) -> dict[str, str]:
    said = read_yaml_file(text, "l")
    found = {ask.key: value for ask, value in top_of(said)}
    for part in ROWS:
        for at, row in rows_of(said, part):
            found |= {box_name(part, at, key): value for key, value in row.items()}
    return found | {part: lines_of(said, part) for part in ("prices", "hours", "stock")}


@pytest.mark.parametrize("case", SHORT)
def test_a_short_form_is_shown_and_kept(case: str) -> None:
    part, written, shown = SHORT[case]
    text = listed(part, written)
    read_giving_list(text, "l")  # a form that the reader takes
    sent = boxes(text)
    assert {name: sent[name] for name in shown} == shown
    assert change_yaml(text, "l", lambda said: change_list(said, sent)) == text


@pytest.mark.parametrize("case", SHORT)
def test_one_box_changed_changes_that_alone(case: str) -> None:
    part, written, _ = SHORT[case]
    text = listed(part, written)
    for box, new, changed in (
        ("households|0|message", "Keep warm", lambda one: one.households[0].message),
        ("makes|0|batches", "2", lambda one: one.makes[0].batches),
        ("baskets|small|craft", "1", lambda one: one.baskets["small"].craft),
        ("households|0|avoid", "milk", lambda one: one.households[0].avoid),
        ("households|0|delivery", "by post", lambda one: one.households[0].delivery),
        ("prices", boxes(text)["prices"] + "\noats: 1 kg for 1", lambda one: one.prices[-1].item),
    ):
        sent = boxes(text) | {box: new}
        after = change_yaml(text, "l", lambda said, sent=sent: change_list(said, sent))
        old, now = (read_giving_list(one, "l").giving for one in (text, after))
        assert str(changed(now)) in {new, f"('{new}',)", "oats"}, after
        part_changed = box.partition("|")[0]
        same = {"makes", "baskets", "households", "prices", "hours", "stock"} - {part_changed}
        assert all(getattr(old, one) == getattr(now, one) for one in same), after
        if part_changed == "households":
            names = {"message", "avoid", "delivery"} - {box.split("|")[-1]}
            for one, two in zip(old.households, now.households, strict=True):
                assert (one.name, one.basket, one.children) == (two.name, two.basket, two.children)
                assert all(getattr(one, name) == getattr(two, name) for name in names)


def test_every_other_word_of_the_reader_is_shown_in_its_box() -> None:
    for part, words in (("households", "household"), ("makes", "make"), ("baskets", "basket")):
        asked = {ask.key for ask in ROWS[part]}
        for word, key in words_by_part()[words].items():
            if key not in asked:
                continue
            row = {"name": "A", "recipe": "a"} | {word: "some words"}
            said = {part: {"small": {word: "some words"}} if part == "baskets" else [row]}
            assert rows_of(said, part)[0][1][key] == "some words" or key in ("name", "recipe")


def test_rows_are_taken_out_and_added_in_the_form_the_file_has() -> None:
    text = listed("makes", "  plum-jam: jar\n  quince-paste: tin\n")
    sent = {"makes|0|gone": "1", "makes|new|recipe": "oatcakes", "baskets|new|name": "large"}
    after = change_yaml(text, "l", lambda said: change_list(said, sent | {"baskets|new|eat": "3"}))
    now = read_giving_list(after, "l").giving
    assert [(one.recipe, one.container) for one in now.makes] == [
        ("quince-paste", "tin"),
        ("oatcakes", ""),
    ]
    assert now.baskets["large"].eat == 3


@pytest.mark.parametrize(
    "broken",
    ["makes: 7\n", "baskets: [small]\n", "households: {7: }\n", "prices: nothing\nstock: 3\n"],
)
def test_what_no_reader_takes_is_shown_all_the_same(broken: str) -> None:
    text = HEAD + broken
    assert change_yaml(text, "l", lambda said: change_list(said, boxes(text))) == text


def test_the_list_that_a_new_book_brings_opens_and_is_kept(tmp_path: Path) -> None:
    begin_book(tmp_path / "new", Answers(title="Heron Ferry"))
    shutil.copytree(
        tmp_path / "new" / "giving", small_book(tmp_path / "b") / "giving", dirs_exist_ok=True
    )
    for folder in (tmp_path / "new", tmp_path / "b"):
        opened, thread = open_on(folder)
        path = next((folder / "giving").glob("*.yml"))
        before = path.read_bytes()
        way = f"/giving/list?name=giving/{path.name}"
        assert opened.ask(way).status == 200
        assert opened.ask("/giving/list", "POST", boxes_of(opened, way)).status == 303
        assert path.read_bytes() == before
        opened.ask("/stop", "POST")
        thread.join(20)


def test_a_list_that_names_nobody_yet_is_kept_and_somebody_is_put_in(tmp_path: Path) -> None:
    begin_book(tmp_path / "new", Answers(title="Heron Ferry"))
    opened, thread = open_on(tmp_path / "new")
    way, path = "/giving/list?name=giving/giving-list.yml", tmp_path / "new/giving/giving-list.yml"
    shown = opened.ask(way).text
    assert "Nobody stands in this list yet. Fill in “Somebody else” below." in shown
    assert "Marrables" not in shown.replace('placeholder="quince ratafia, or The Marrables"', "")
    sent = boxes_of(opened, way) | {"from": "Ann and Ola"}
    assert opened.ask("/giving/list", "POST", sent).status == 303
    assert 'from: "Ann and Ola"' in path.read_text(encoding="utf-8")
    sent = boxes_of(opened, way)
    assert opened.ask("/giving/plan", "POST", sent).headers["location"].startswith("/giving/list")
    named = {"households|new|name": "Wren Tallow", "households|new|avoid": "nuts"}
    assert opened.ask("/giving/list", "POST", boxes_of(opened, way) | named).status == 303
    text = path.read_text(encoding="utf-8")
    assert "to be mended" not in opened.ask(way).text.lower(), text
    opened.ask("/stop", "POST")
    thread.join(20)
