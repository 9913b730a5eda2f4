"""A first giving list by questions: at a real terminal, and what it writes plans at once."""

from __future__ import annotations

import os
import select
import signal
import subprocess
import sys
import time
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from giving.lists import demo_book, demo_recipes, write_somebody
from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.giving.pack import Effort, work_out
from stillroom.giving.reading import read_giving_list
from stillroom.giving.starter.answers import (
    ListAnswers,
    Needs,
    read_ages,
    read_animals,
    read_budget,
    read_count,
    read_giving_day,
    read_month_hours,
    read_needs,
    read_yes,
)
from stillroom.giving.starter.asking import ask_for_list
from stillroom.giving.starter.writing import write_first_list

TODAY = date(2027, 1, 5)


def answered(said: list[str], country: str = "GB") -> tuple[str, list[str]]:
    """Return the list that comes of answers in their order, and what was told between them."""
    told: list[str] = []
    left = iter(said)
    book = demo_book()
    settings = book.settings.model_copy(update={"country": country})

    def ask(question: str, usual: str) -> str:
        return next(left) or usual

    answers = ask_for_list(ask, told.append, demo_recipes(), settings, TODAY, "Hob")
    assert next(left, None) is None
    text = write_first_list(answers, demo_recipes(), settings, TODAY, "list.yml")
    return text, told


def test_what_cannot_be_read_is_asked_again_and_said_how_to_write():
    said = [
        *["hm", "1 January 2020", "24 December"],
        *["", "The Fennimores", "a few", "two", "soon", "9, a baby of 8 months"],
        *["nuts, glutten", "carnivore", "nuts, coeliac", "a unicorn", "a dog, Katze"],
        *["perhaps", "no"],
        *["the fennimores", "Ysolde: Marl # 2", "", "", "pregnant", "", "yes", ""],
        *["quince chutny", "all", "lots", "2", "1", "0", "many", "6", "cheap", "£20"],
        *[
            "mead",
            "Nobody: mead",
            "The Fennimores: dragonfruit pie",
            "The fennimores: Quince chutney, honey",
        ],
        *["sugar 3", "sugar: 3 for 2", "granulated sugar: 1 kg for 1.15; brandy: 700 ml, £16.50"],
    ]
    text, told = answered(said)
    assert [line for line in told if "Did you mean" in line] == [
        '"glutten" is nothing that can be avoided. Did you mean "gluten"?',
        '"quince chutny" is not a recipe of the book. Did you mean "quince-chutney"?',
    ]
    odd = "2020-01-01 is past|wants somebody|a few|lots|neither yes nor no|unicorn|not an age"
    odd = f"{odd}|there already|who likes it|not among them|dragonfruit pie"
    odd = f"{odd}|thing with its price|an offer or a price"
    for part in (*odd.split("|"), "many", "not a price", "carnivore"):
        assert sum(part in line for line in told) == 1, (part, told)
    read = read_giving_list(text, "list.yml")
    first, second = read.giving.households
    assert (first.avoid, first.children, first.adults) == (("nuts", "coeliac"), (108, 8), 2)
    assert (second.name, second.pregnant, second.delivery) == ("Ysolde: Marl # 2", True, "by post")
    assert (first.budget, first.pets, second.pets) == (20, {"dog", "cat"}, set())
    assert (first.likes, second.likes) == (("quince-chutney", "honey"), ())
    assert [price.item for price in read.giving.prices] == ["granulated sugar", "brandy"]
    assert read.giving.giving_day == date(2027, 12, 24)


@pytest.mark.parametrize(
    "people",
    [
        [("Nan", "", "", "", "", "")],
        [
            ("Eadwin", "", "", "alcohol, vegan", "", ""),
            ("The Lanxons", "2", "3, 8 months", "nuts", "dog", "yes"),
        ],
        [(f"No. {n}", "", "", ("", "gluten", "milk")[n % 3], "", "") for n in range(9)],
    ],
    ids=["one", "careful", "nine"],
)  # fmt: skip
def test_the_list_plans_at_once_and_no_basket_asks_for_what_cannot_go_to_them(people):
    said = ["", *(part for one in people for part in one), "", "", "", "", "", "", "", "", ""]
    text, told = answered(said)
    assert len(told) == 1
    read = read_giving_list(text, "list.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.2))
    assert pack.complaints == ()
    assert len(pack.plan.gifts) == len(people)
    assert all(pack.plan.gifts.values())


@pytest.mark.parametrize(
    ("country", "money"), [("GB", "20"), ("DE", "14,50 €"), ("US", "$20"), ("FR", "20 €")]
)
def test_a_new_book_of_any_country_gets_one_in_its_own_money(country, money, tmp_path):
    begin_book(tmp_path / "ours", Answers("Ours", country, today=date(2026, 11, 1)))
    book = open_book(tmp_path / "ours" / "mkdocs.yml")
    left = iter(
        [
            "",
            "Oma",
            "",
            "",
            "Nüsse" if country == "DE" else "",
            "",
            "",
            "",
            "",
            "",
            "",
            money,
            "",
            "",
        ]
    )
    answers = ask_for_list(
        lambda _, usual: next(left) or usual, lambda _: None, book.load(), book.settings, TODAY
    )
    text = write_first_list(answers, book.load(), book.settings, TODAY, "list.yml")
    said = book.settings
    read = read_giving_list(text, "list.yml", said.currency, said.language, said.country)
    assert read.giving.households[0].budget == (14.5 if country == "DE" else 20)
    assert ("Diese Datei ist privat" in text) == (country == "DE")
    pack = work_out(read, book.load(), said, TODAY, Effort(5))
    assert all(pack.plan.gifts.values())


def test_a_list_that_names_nobody_plans_once_somebody_is_in_it(tmp_path: Path):
    text = write_first_list(
        ListAnswers("Christmas 2027", date(2027, 12, 18)),
        demo_recipes(), demo_book().settings, TODAY, "list.yml",
    )  # fmt: skip
    with pytest.raises(ProblemsFound) as found:
        read_giving_list(text, "list.yml")
    assert [one.what for one in found.value.problems] == ["Nobody stands in this list yet."]
    (tmp_path / "list.yml").write_text(text, encoding="utf-8")
    write_somebody(tmp_path / "list.yml")
    text = (tmp_path / "list.yml").read_text(encoding="utf-8")
    pack = work_out(
        read_giving_list(text, "list.yml"), demo_recipes(), demo_book().settings, TODAY, Effort(5)
    )
    assert pack.complaints == ()


READ = [
    (read_needs, "no nuts please", Needs(("no nuts please",))),
    (read_needs, "nothing", Needs()),
    (read_needs, "keine", Needs()),
    (read_ages, "nein", ()),
    (read_animals, "aucun", ()),
    (read_animals, "zwei Katzen, ein Hund", ("zwei Katzen", "ein Hund")),
    (read_animals, "un cane e un gatto", ("un cane e un gatto",)),
    (read_needs, "pregnant, gluten", Needs(("gluten",), True)),
    (read_needs, "carnivore", None),
    (read_needs, "keto", None),
    (read_needs, "allergies", None),
    (read_ages, "6 and 9", ("6", "9")),
    (read_ages, "none", ()),
    (read_ages, "young", None),
    (read_count, "three", 3),
    (read_count, "a few", None),
    # "no" to how many grown-ups is no number: whether none live there is asked again
    (read_count, "no", None),
    (read_count, "yes", None),
    (read_count, "none", 0),
    (read_count, "-1", None),
    (read_yes, "Oui", True),
    (read_yes, "NO", False),
    (read_yes, "perhaps", None),
    (read_month_hours, "6 hours", "6"),
    (read_month_hours, "none", ""),
    (read_month_hours, "lots", None),
    (read_month_hours, "900", None),
]


@pytest.mark.parametrize(
    ("reader", "said", "meant"), READ, ids=[f"{a.__name__}-{b}" for a, b, _ in READ]
)
def test_an_answer_is_read_or_asked_again(reader, said, meant):
    if meant is not None:
        assert reader(said) == meant
        return
    with pytest.raises(Unreadable) as wrong:
        reader(said)
    assert wrong.value.mend


@pytest.mark.parametrize(
    ("said", "day"),
    [("24 December", "2027-12-24"), ("24. Dezember", "2027-12-24"), ("Easter Sunday", "2027-03-28"),
     ("2028-01-06", "2028-01-06"), ("4 January", "2028-01-04"), ("4 January 2027", None),
     ("soon", None), ("31 February", None), ("", None), ("4.1.2028", "2028-01-04"),
         ("4/1/2028", None)],
)  # fmt: skip
def test_a_day_is_the_next_one_or_asked_again(said, day):
    if day:
        assert read_giving_day(said, TODAY, "GB") == date.fromisoformat(day)
        return
    with pytest.raises(Unreadable):
        read_giving_day(said, TODAY, "GB")


def test_a_budget_is_read_as_the_book_writes_money():
    assert read_budget("14,50", "EUR", "de_DE") == "14,50"
    for wrong in ("0", "14 pounds of butter", "$5"):
        with pytest.raises(Unreadable):
            read_budget(wrong, "GBP", "en_GB")


def _hears_ctrl_c() -> None:
    """Undo what a shell does to whatever it runs in the background: there Ctrl-C is ignored."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


class Terminal:
    """A command at a terminal of its own, and somebody who types when it asks."""

    def __init__(self, folder: Path, *words: str) -> None:
        import pty

        self.ours, theirs = pty.openpty()
        self.process = subprocess.Popen(
            [sys.executable, "-m", "stillroom", *words],
            cwd=folder, stdin=theirs, stdout=theirs, stderr=theirs, close_fds=True,
            start_new_session=True, preexec_fn=_hears_ctrl_c,
        )  # fmt: skip
        os.close(theirs)
        self.seen = ""

    def until(self, words: str) -> None:
        """Read until these words are shown."""
        end = time.monotonic() + 60
        while words not in self.seen:
            assert time.monotonic() < end, f"{words!r} was not asked: {self.seen}"
            ready, _, _ = select.select([self.ours], [], [], 1)
            if ready:
                self.seen += os.read(self.ours, 65536).decode()
        self.seen = self.seen.split(words, 1)[1]

    def answer(self, words: str, typed: str) -> None:
        """Wait for a question, and type."""
        self.until(words)
        self.until(": ")
        os.write(self.ours, f"{typed}\n".encode())

    def interrupt(self) -> None:
        """Send what Ctrl-C sends; once more where it came before anybody waited for it."""
        for _ in range(15):
            self.process.send_signal(signal.SIGINT)
            if select.select([self.ours], [], [], 4)[0]:
                return
        self.process.kill()
        raise AssertionError(f"Ctrl-C was not heard: {self.seen}")

    def end(self) -> int:
        """Wait for the end, and return its code."""
        while True:
            try:
                part = os.read(self.ours, 65536)
            except OSError:  # the terminal is closed: nobody writes to it any more
                break
            if not part:
                break
            self.seen += part.decode()
        os.close(self.ours)
        return self.process.wait(60)


at_a_terminal = pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such terminal")


@pytest.fixture
def ours(tmp_path: Path) -> Path:
    begin_book(tmp_path / "ours", Answers("Ours", today=date(2026, 11, 1)))
    (tmp_path / "ours" / "giving" / "giving-list.yml").unlink()
    return tmp_path / "ours"


@at_a_terminal
def test_at_a_terminal_the_list_of_a_book_is_asked_for(ours: Path):
    one = Terminal(ours, "giving-list")
    one.answer("baskets go out", "soon")
    one.answer("baskets go out", "")
    one.answer("given one first", "Nan")
    one.answer("grown-ups", "")
    one.answer("children", "")
    one.answer("not have", "glutten")
    one.until('Did you mean "gluten"?')
    one.answer("not have", "gluten")
    one.answer("animals", "")
    one.answer("by post", "")
    one.answer("who else", "")
    one.answer("Which of them", "")
    one.answer("to eat", "")
    one.answer("hours", "")
    one.answer("cost at most", "")
    one.answer("something best", "")
    one.answer("things cost", "")
    assert one.end() == 0, one.seen
    path = ours / "giving" / "giving-list.yml"
    text = path.read_text(encoding="utf-8")
    assert "avoid: [gluten]" in text
    packed = CliRunner().invoke(main, ["pack", str(path), "--seconds", "5"])
    assert packed.exit_code == 0, packed.output
    again = Terminal(ours, "giving-list", "--out", str(path))
    again.until("there already")
    assert again.end() == 1
    assert path.read_text(encoding="utf-8") == text


@at_a_terminal
def test_whoever_leaves_in_the_middle_leaves_nothing_written(ours: Path):
    one = Terminal(ours, "giving-list")
    one.answer("baskets go out", "")
    one.until("given one first")
    os.write(one.ours, b"\x04")
    assert one.end() == 1
    assert not (ours / "giving" / "giving-list.yml").exists()


@at_a_terminal
def test_a_new_book_is_begun_with_its_list(tmp_path: Path):
    one = Terminal(tmp_path, "start", "ours")
    for question in ("book called", "Which country", "Whose book"):
        one.answer(question, "")
    one.answer("do you give", "")
    one.until("given something")
    os.write(one.ours, b"y\n")
    one.answer("baskets go out", "")
    one.answer("given one first", "The Marrables")
    for question in ("grown-ups", "children", "not have", "animals", "by post", "who else",
                     "Which of them", "to eat", "hours", "cost at most",
                     "something best", "things cost"):  # fmt: skip
        one.answer(question, "")
    assert one.end() == 0, one.seen
    text = (tmp_path / "ours" / "giving" / "giving-list.yml").read_text(encoding="utf-8")
    assert "The Marrables" in text
    assert "Nobody stands here yet" not in text


@at_a_terminal
@pytest.mark.parametrize("within", [False, True], ids=["at once", "among the questions"])
@pytest.mark.parametrize("sign", [b"\x04", b"\x03"], ids=["end", "break"])
def test_whoever_leaves_the_list_has_the_book(tmp_path: Path, within: bool, sign: bytes):
    said = ("--name", "Ours", "--country", "GB", "--keeper", "Hob", "--give", "24 December")
    one = Terminal(tmp_path, "start", "ours", *said)
    one.until("given something")
    one.until("]:")
    if within:
        os.write(one.ours, b"y\n")
        one.answer("baskets go out", "")
        one.until("given one first")
        one.until(": ")
    if sign == b"\x03":
        one.interrupt()
    else:
        os.write(one.ours, sign)
    one.until("The book is written, and whole.")
    one.until("names nobody yet")
    assert one.end() == 0, one.seen
    assert "Aborted" not in one.seen
    assert (tmp_path / "ours" / "mkdocs.yml").is_file()
    begun = (tmp_path / "ours/giving/giving-list.yml").read_text(encoding="utf-8")
    assert "Nobody stands in it yet" in begun


def test_without_a_terminal_one_that_names_nobody_is_written_and_nothing_over_it(
    ours: Path, monkeypatch
):
    monkeypatch.chdir(ours)
    first = CliRunner().invoke(main, ["giving-list"])
    assert first.exit_code == 0, first.output
    path = ours / "giving" / "giving-list.yml"
    before = path.read_bytes()
    assert b"# " in before
    assert CliRunner().invoke(main, ["giving-list", "--out", str(path)]).exit_code == 1
    assert path.read_bytes() == before
    assert CliRunner().invoke(main, ["giving-list"]).exit_code == 0
    assert path.read_bytes() == before
    assert len(list((ours / "giving").glob("*.yml"))) == 2
    packed = CliRunner().invoke(main, ["pack", str(path), "--seconds", "5"])
    assert packed.exit_code == 1
    assert "Nobody stands in this list yet. Say who is given a basket" in packed.output
    checked = CliRunner().invoke(main, ["check"])
    assert checked.exit_code == 0, checked.output
    assert checked.output.count("note: ") == 2
    write_somebody(path)
    packed = CliRunner().invoke(main, ["pack", str(path), "--seconds", "5"])
    assert packed.exit_code == 0, packed.output


def test_where_there_is_no_book_the_command_says_so(tmp_path: Path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(main, ["giving-list"])
    assert done.exit_code == 2
    assert "stillroom start" in done.output
