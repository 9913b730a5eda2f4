"""The season's log: lines read, told, noted, and what they leave on the shelf and in the house."""

from __future__ import annotations

from fractions import Fraction

import jsonschema
import pytest
from click.testing import CliRunner

from giving.lists import demo_recipes, read_dict, small_list, write_somebody
from stillroom.cli import main
from stillroom.core.amounts.quantities import parse_leading_amount
from stillroom.core.private.shapes import find_giving_log
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.log import log_kinds
from stillroom.giving.log_file import add_row, read_log
from stillroom.giving.log_names import Known, named_log
from stillroom.giving.log_schema import log_schema
from stillroom.giving.names import with_names_of
from stillroom.giving.season import read_season
from stillroom.giving.standing import stand

RECIPES = {recipe.slug: recipe for recipe in demo_recipes()}
HEAD = "# our year\ngiving log:\n"


def standing(rows, **changes):
    """Return how a small list stands after these lines of its log."""
    named = with_names_of(read_dict(small_list(**changes)), RECIPES)
    log = read_log(HEAD + "".join(f"  - {row}\n" for row in rows), "log.yml")
    log = named_log(log, Known(named.giving, RECIPES))
    season = read_season(log, named.giving)
    return stand(named, RECIPES, log, season)


def problems_of(rows, **changes):
    with pytest.raises(ProblemsFound) as found:
        standing(rows, **changes)
    return [str(problem) for problem in found.value.problems]


def on_shelf(found):
    """Return what is on the shelf or on its way, as (recipe, number less given, filled)."""
    giving = found.read.giving
    rows = [(made.recipe, made.number, True) for made in giving.stock.made]
    for batch in giving.batches:
        number = None if batch.number is None else batch.number - batch.given
        rows.append((batch.recipe, number, batch.made_on is not None))
    return rows


# each wrong line, and what must be said of it; the line is 3, below a note and the first line
WRONG = {
    "a kind": ("{day: 2027-01-10, bottld: quince-ratafia, number: 3}", 'Did you mean "bottled"?'),
    "a yes": ("{day: 2027-01-10, begun: yes}", 'What was "begun" is not said.'),
    "a no": ("{day: 2027-01-10, given: no, things: [jam]}", 'What was "given" is not said.'),
    "no kind": ("{day: 2027-01-10}", "What happened is not said."),
    "no day": ("{begun: quince-ratafia}", 'there is no "day". Say on which day'),
    "a day": ("{day: 10/11/2027, begun: quince-ratafia}", "can be two days"),
    "no number": ("{day: 2027-01-10, bottled: quince-ratafia}", 'Say how many: "number: 7".'),
    "a number": ("{day: 2027-01-10, bottled: quince-ratafia, number: some}", '"number"'),
    "a word too many": ("{day: 2027-01-10, thanked: Ysolde Fennimore, paid: 3}", "no place beside"),
    "a recipe": ("{day: 2027-01-10, begun: quince-ratafa}", 'Did you mean "quince-ratafia"?'),
    "a household": ("{day: 2027-01-10, thanked: The Cragbeys}", 'Did you mean "The Cragbies"?'),
    "a thing": ("{day: 2027-01-10, bought: qzxvtrip, amount: 3}", "nothing that the list"),
    "how much": ("{day: 2027-01-10, bought: brandy, amount: some}", 'Write "5 kg".'),
    "too much": ("{day: 2027-01-10, bought: brandy, amount: 1234567890123 l}", "too many noughts"),
    "a price": ("{day: 2027-01-10, bought: brandy, amount: 1 l, paid: dear}", "is not a price"),
    "words alone": ("begun quince ratafia", "is no line of the log"),
    "nothing begun": ("{day: 2027-01-10, strained: quince-ratafia}", "Note first when it"),
    "basket": (
        "{day: 2027-12-18, given: The Cragbies, basket: 2, things: [rosemary-salt]}",
        "Basket 2 of The Cragbies has gone already, or they get none.",
    ),
    "a pin": (
        "{day: 2027-06-01, pinned: The Cragbies, of: almond-shortbread}",
        "Almond shortbread is pinned for The Cragbies, but it",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("row", "told"), WRONG.values(), ids=WRONG)
def test_each_mistake_is_told_by_file_and_line(row, told):
    (said,) = problems_of([row])
    assert said.startswith("log.yml:3: "), said
    assert told in said


def test_what_is_no_log_is_told():
    for text in ("", "a: b\n", "- x\n", "giving log: 3\n", "giving log: no\n", "giving log: 0\n"):
        with pytest.raises(ProblemsFound, match=r"log\.yml:1: "):
            read_log(text, "log.yml")
    assert read_log("giving log:\n", "log.yml").lines == ()


def test_every_kind_of_line_is_read_and_every_example_is_a_command():
    for kind in log_kinds().values():
        words = kind.example.split()
        assert words[0] == "stillroom"
        assert kind.kind == "closed" or words[1] == "note"
        assert kind.kind.split()[0] in kind.example or kind.kind == "closed"


def test_a_name_is_whole_when_it_is_the_only_one():
    found = standing([
        "{day: 2027-01-10, started: Ratafia}",
        "{day: 2027-03-20, filled: quince ratafia, number: 7, container: 'bottle, 100 ml'}",
        "{day: 2027-12-18, given: cragbies, things: [Rosemary Salt]}",
    ])  # fmt: skip
    lines = found.season.lines
    assert [line.name for line in lines] == ["quince-ratafia", "quince-ratafia", "The Cragbies"]
    assert lines[2].things == ("rosemary-salt",)


def test_the_shelf_counts_itself_down():
    rows = [
        "{day: 2027-05-01, begun: rosemary-salt}",
        "{day: 2027-05-14, bottled: rosemary-salt, number: 6}",
        "{day: 2027-05-20, begun: bramble-jelly, batches: 2}",
        "{day: 2027-06-02, used: rosemary-salt, number: 1, words: the postwoman}",
        "{day: 2027-12-18, given: The Cragbies, things: [rosemary-salt]}",
        "{day: 2027-12-19, spoiled: rosemary-salt, number: 2}",
    ]
    found = standing(rows)
    assert on_shelf(found) == [("rosemary-salt", 2, True), ("bramble-jelly", None, False)]
    assert found.gone == {2}
    assert found.notes == ()
    makes = {make.recipe: make.batches for make in found.read.giving.makes}
    assert (makes["rosemary-salt"], makes["bramble-jelly"], makes["quince-chutney"]) == (2, 1, 3)


def test_what_failed_is_gone_and_may_be_made_again():
    rows = [
        "{day: 2027-05-20, begun: bramble-jelly}",
        "{day: 2027-06-03, failed: bramble-jelly, words: burnt}",
    ]
    found = standing(rows)
    assert on_shelf(found) == []
    assert {m.batches for m in found.read.giving.makes if m.recipe == "bramble-jelly"} == {3}


def test_more_gone_than_was_made_is_told_and_never_less_than_nothing():
    found = standing(["{day: 2027-12-18, given: The Cragbies, things: [rosemary-salt]}"])
    assert on_shelf(found) == []
    assert found.notes == (
        "1 more of rosemary-salt left the shelf by Saturday 18 December 2027 than were on it: note "
        "when they were filled, or count the shelf.",
    )


def test_two_batches_going_are_asked_about():
    rows = [
        "{day: 2027-05-01, begun: rosemary-salt}",
        "{day: 2027-05-02, begun: rosemary-salt}",
        "{day: 2027-05-14, bottled: rosemary-salt, number: 4}",
    ]
    (said,) = problems_of(rows)
    assert "log.yml:5: 2 batches of rosemary-salt are going" in said
    assert 'Say which: "began: 2027-05-01".' in said
    rows[2] = "{day: 2027-05-14, bottled: rosemary-salt, number: 4, began: 2027-05-02}"
    assert on_shelf(standing(rows)) == [
        ("rosemary-salt", None, False), ("rosemary-salt", 4, True)
    ]  # fmt: skip


def test_what_was_bought_is_in_the_house_and_what_was_begun_has_used_it():
    rows = [
        "{day: 2027-05-01, bought: granulated sugar, amount: 5 kg, paid: 5.25}",
        "{day: 2027-05-01, bought: 'jar, 200 ml', amount: 12, paid: 6.60}",
        "{day: 2027-05-02, begun: bramble-jelly}",
        "{day: 2027-05-02, bottled: bramble-jelly, number: 5, container: 'jar, 200 ml'}",
    ]
    stock = {"containers": {"jar, 200 ml": 1}, "ingredients": ["1 kg granulated sugar"]}
    found = standing(rows, stock=stock)
    now = found.read.giving.stock
    assert now.containers == {"jar, 200 ml": 8}
    ((amount, item),) = now.ingredients
    sugar = next(i for i in RECIPES["bramble-jelly"].ingredients if "sugar" in i.item).amount
    used, _ = parse_leading_amount(f"{float(sugar.low)} {sugar.unit}")
    grams = used.low * (1000 if used.unit == "kg" else 1)
    assert item == "granulated sugar"
    assert amount.low == Fraction(6000) - grams
    assert sum(line.paid for line in found.season.bought) == Fraction("11.85")


def test_pinned_struck_and_freed():
    rows = [
        "{day: 2027-05-01, pinned: The Cragbies, of: [rosemary-salt, quince-chutney]}",
        "{day: 2027-05-02, struck: Ysolde Fennimore, of: bramble-jelly}",
        "{day: 2027-05-03, freed: The Cragbies, of: quince-chutney}",
    ]
    ysolde, cragbies = standing(rows).read.giving.households
    assert (cragbies.must_have, cragbies.never) == (("rosemary-salt",), ())
    assert (ysolde.must_have, ysolde.never) == ((), ("bramble-jelly",))


def test_a_season_is_between_two_closings():
    text = HEAD + (
        "  - {day: 2026-12-18, thanked: A}\n"
        "  - {day: 2027-01-06, closed: Winter 2026}\n"
        "  - {day: 2027-12-18, thanked: B}\n"
        "  - {day: 2028-01-06, closed: Winter 2027}\n"
        "  - {day: 2028-01-07, thanked: C}\n"
    )
    log = read_log(text, "log.yml")

    def named(title, follows):
        return [line.name for line in log.of_list(title, follows).lines]

    assert named("Winter 2026", "") == ["A"]
    assert named("Winter 2027", "Winter 2026") == ["B"]
    assert named("Winter 2028", "Winter 2027") == ["C"]
    assert named("Easter 2028", "") == ["A", "B", "C"]  # another list of the same folder


def test_a_line_is_added_and_nothing_else_is_touched():
    text = (
        "# our year\n\ngiving log:\n"
        "  - {day: 2027-01-10,   begun: quince-ratafia}   # with Nan's quinces\n\n"
        "  # the jelly was Wren's idea\n"
        "  - day: 2027-02-01\n    bought: brandy\n    amount: 1 l\n"
    )
    row = {"day": "2027-03-20", "bottled": "quince-ratafia", "number": 7}
    after = add_row(text, "log.yml", row)
    assert after == text + "  - {day: 2027-03-20, bottled: quince-ratafia, number: 7}\n"
    assert len(read_log(after, "log.yml").lines) == 3


@pytest.fixture
def book(tmp_path, monkeypatch):
    """Begin a small book with a giving list, and stand in it."""
    done = CliRunner().invoke(main, ["start", str(tmp_path / "book"), "--name", "Fennimore's"])
    assert done.exit_code == 0, done.output
    monkeypatch.chdir(tmp_path / "book")
    write_somebody(tmp_path / "book" / "giving" / "giving-list.yml", "Our neighbours")
    return tmp_path / "book"


def run(*words):
    return CliRunner().invoke(main, ["note", "--today", "2027-06-04", *words])


def test_a_list_too_long_to_be_read_is_told_by_check(book):
    """It was passed over, and "no problems" said of a book with nobody's allergies read."""
    (giving,) = (path for path in (book / "giving").glob("*.yml") if path.name != "log.yml")
    giving.write_text(giving.read_text("utf-8") + "# x\n" * 70_000, "utf-8")
    read = CliRunner().invoke(main, ["check"])
    assert read.exit_code == 1
    assert f"{giving.name}:1: The file is longer than" in read.output


def test_note_writes_a_line_and_check_reads_it(book):
    done = run("begun", "vanilla", "sugar", "--day", "yesterday")
    assert done.exit_code == 0, done.output
    assert "Thursday 3 June 2027: Vanilla sugar begun." in done.output
    done = run("filled", "vanilla sugar", "--number", "2")
    assert done.exit_code == 0, done.output
    text = (book / "giving" / "log.yml").read_text("utf-8")
    assert text.endswith("- {day: 2027-06-04, bottled: vanilla-sugar, number: 2}\n")
    assert find_giving_log(text)
    read = CliRunner().invoke(main, ["check", "giving/log.yml"])
    assert (read.exit_code, read.output) == (0, "1 giving list read with the log, no problems.\n")
    (book / "giving" / "log.yml").write_text(text + "  - {day: 2027-06-04, begn: x}\n", "utf-8")
    read = CliRunner().invoke(main, ["check"])
    assert read.exit_code == 1
    assert 'log.yml:6: "begn" is nothing that can be noted. Did you mean "begun"?' in read.output


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("begn", "vanilla sugar"), 'Did you mean "begun"?'),
        (("begun", "vanila sugar"), "Did you mean"),
        (("begun", "vanilla sugar", "--day", "2027-06-05"), "has not come yet"),
        (("begun", "vanilla sugar", "--day", "31 June"), "is not a day of the calendar"),
        (("bottled", "vanilla sugar"), 'It lacks "number". As in: stillroom note bottled'),
        (("strained", "vanilla sugar"), "No vanilla-sugar is going"),
        (("given", "Our neighbours"), "No pack says what Our neighbours were to have."),
        (("thanked", "our neighbors"), 'Did you mean "Our neighbours"?'),
        (("closed", "Christmas"), "A year is closed by a command of its own."),
    ],
)
def test_what_cannot_be_noted_is_told_and_nothing_is_written(book, words, told):
    done = run(*words)
    assert done.exit_code == 2
    assert told in " ".join(done.output.split())
    assert not (book / "giving" / "log.yml").exists()
    assert "Traceback" not in done.output


def test_an_editor_takes_every_line_that_we_write_and_no_wrong_one():
    schema = log_schema()
    jsonschema.Draft202012Validator.check_schema(schema)
    rows = [
        {"day": "2027-01-10", "begun": "quince-ratafia"},
        {"day": "2027-03-20", "bottled": "quince-ratafia", "number": 7},
        {"day": "2027-03-20", "bought": "brandy", "amount": "1 l", "paid": 21.5},
        {"day": "2027-12-18", "given": "The Cragbies", "things": ["rosemary-salt"]},
        {"day": "2027-12-27", "gave back": "The Cragbies", "words": "plums"},
        {"day": "2028-01-06", "closed": "Winter 2027"},
    ]
    jsonschema.validate({"giving log": rows}, schema)
    for wrong in (
        {"begun": "x"},
        {"day": "2027-01-10", "bottled": "x"},
        {"day": "a", "bottld": "x"},
    ):
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate({"giving log": [wrong]}, schema)
