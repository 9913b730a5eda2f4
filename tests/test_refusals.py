"""Help and refusals in the terminal: no word of a library in them, and what to type instead."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main

PROGRAMS = re.compile(
    r"INTEGER|FLOAT|RANGE|\bTEXT\b|DIRECTORY|\bPATH\b|BOOLEAN|x>=|<=x|\bSeed\b|\bseed\b|None\b"
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with a book in it, my-book, that has two recipes more than it began with."""
    root = tmp_path_factory.mktemp("refused")
    begin_book(root / "my-book", Answers(title="My book"))
    here = os.getcwd()
    os.chdir(root / "my-book")
    for title in ("Plum gin", "Fudge"):
        assert CliRunner().invoke(main, ["new", title]).exit_code == 0
    os.chdir(here)
    return root


@pytest.fixture
def book(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(folder / "my-book")
    return folder / "my-book"


def run(*words: str) -> Result:
    return CliRunner().invoke(main, list(words), prog_name="stillroom")


def commands(group: click.Group, *before: str) -> Iterator[tuple[str, ...]]:
    context = click.Context(group)
    for name in group.list_commands(context):
        command = group.get_command(context, name)
        yield (*before, name)
        if isinstance(command, click.Group):
            yield from commands(command, *before, name)


@pytest.mark.parametrize("words", [(), *commands(main)], ids=" ".join)
def test_help_speaks_no_programs_words(words: tuple[str, ...]) -> None:
    said = run(*words, "--help")
    assert said.exit_code == 0
    assert PROGRAMS.findall(said.output) == []
    command: click.Command | None = main
    for word in words:
        assert isinstance(command, click.Group)
        command = command.get_command(click.Context(command), word)
    assert command is not None
    assert command.help
    for one in command.params:
        assert not isinstance(one, click.Option) or one.help, one.opts


# what is typed in the book's folder; words that the answer holds
REFUSED = [
    ("chek", 'Did you mean "check"?'),
    ("frobnicate", "There are bring, build, check"),
    ("print crads", 'Did you mean "cards"?'),
    ("--verion", 'Did you mean "--version"?'),
    ("new", 'Say what it is called, in quotes: "Plum gin".'),
    ("new Plum gin", 'goes in quotes: "Plum gin"'),
    ("new Pickles", 'Type --kind "preserve" if vinegar keeps it'),
    ("new Surprise", "Type --kind and one of these"),
    ("new Relish --kind foo", "It may be: infusion,"),
    ("scale", 'Name the file of a recipe: "recipes/plum-gin.md".'),
    ("scale plum-gin", 'Write "recipes/plum-gin.md".'),
    ("scale plum-gin.md", 'Write "recipes/plum-gin.md".'),
    ("scale 'Plum gin'", 'Write "recipes/plum-gin.md".'),
    ("scale 'plum gin.md'", 'Write "recipes/plum-gin.md".'),
    ("scale giving/plum-gin.md", 'Write "recipes/plum-gin.md".'),
    ("scale plm-gin", 'Did you mean "recipes/plum-gin.md"?'),
    ("scale xyzzy", '"recipes/fudge.md"'),
    ("scale recipes", '"recipes" is a folder, and a file is asked for.'),
    ("scale recipes/plum-gin.md --tims 2", 'Did you mean "--times"?'),
    ("scale recipes/plum-gin.md --times", 'Something goes behind "--times": So many times'),
    ("scale recipes/plum-gin.md --units cups", 'none of these: "metric", "us", "imperial"'),
    ("check fudge", 'Write "recipes/fudge.md".'),
    ("dates fudge", 'Write "recipes/fudge.md".'),
    ("strength fudge", 'Write "recipes/fudge.md".'),
    ("print cards Fudge", 'Write "recipes/fudge.md".'),
    ("print sheet fudge", 'Write "recipes/fudge.md".'),
    ("dates recipes/fudge.md --give christmass", '--give: "christmass" is not a day. Did you'),
    ("print cards --count many", "Write a whole number from 1 to 2000."),
    ("print cards --count 0", "Write a whole number from 1 to 2000."),
    ("print tags --lid wide", "Write a number, 0 or more."),
    ("desk --port 99999999", "Write a whole number from 0 to 65535."),
    ("desk mkdocs.yml", '"mkdocs.yml" is a file. Name a folder.'),
    ("start", 'Name a folder for it: "my-book".'),
    ("pack", 'Name the giving list: "giving/'),
    ("pack giving", '"giving" is a folder, and a file is asked for.'),
    ("pack christmas.yml", '"giving/giving-list.yml"'),
    ("close-year christmas.yml --out b.yml", '"giving/giving-list.yml"'),
    ("close-year giving/giving-list.yml", "--out is asked for. Say where it goes"),
    ("note", "Say what happened: begun, bottled"),
    ("note begun", "Say to what or whom"),
    ("bring", "Name one file or several"),
    ("bring nobody.txt", "Drag it from its folder into this window"),
    ("build --strct", 'Did you mean "--strict"?'),
    ("schema --out recipes", '--out: "recipes" is a folder. Name a file.'),
]


@pytest.mark.parametrize(("typed", "says"), REFUSED, ids=[typed for typed, _ in REFUSED])
def test_a_refusal_says_what_to_type_instead(book: Path, typed: str, says: str) -> None:
    import shlex

    before = sorted(book.rglob("*"))
    done = run(*shlex.split(typed))
    assert done.exit_code == 2
    assert says in " ".join(done.output.split())
    assert "help" in done.output, "it leads to the help"
    assert not re.search(r"Invalid value|does not exist|No such|Missing|Traceback", done.output)
    assert PROGRAMS.findall(done.output) == []
    assert sorted(book.rglob("*")) == before


NEED_A_BOOK = (
    "check", "build", "serve", "new Jam", "giving-list", "note begun jam", "print cards",
    "print tags", "print year", "print book", "print epub", "print cover",
)  # fmt: skip


@pytest.mark.parametrize("typed", NEED_A_BOOK)
def test_where_no_book_is_the_way_to_one_is_said_in_one_way(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, typed: str
) -> None:
    # called by no command of its own, in a worker and in one process alike
    monkeypatch.setattr(sys, "argv", ["pytest"])
    monkeypatch.chdir(tmp_path)
    done = run(*typed.split())
    assert done.exit_code == 2
    assert 'There is no book here. Begin one with "stillroom start FOLDER"' in done.output
    monkeypatch.chdir(folder)
    done = run(*typed.split())
    assert done.exit_code == 2
    assert 'There is no book here. Go to the book first: cd "my-book"' in done.output
    assert list(tmp_path.iterdir()) == []


def test_from_a_folder_of_the_book_the_way_begins_there(
    book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(book / "giving")
    assert 'Write "../recipes/fudge.md".' in run("scale", "fudge").output
    monkeypatch.chdir(book / "recipes")
    assert 'Write "fudge.md".' in run("scale", "recipes/fudge.md").output


def test_a_new_recipe_names_its_kind_and_what_its_example_makes(book: Path) -> None:
    text = (book / "recipes" / "fudge.md").read_text(encoding="utf-8")
    assert "kind: fudge" in text
    assert "soft ball" in text
    done = run("new", "Green tomato chutney")
    assert "(kind: chutney, one of the preserves)" in done.output
    assert "an example, apple chutney, and not your" in " ".join(done.output.split())
    (book / "recipes" / "green-tomato-chutney.md").unlink()


def test_a_list_that_nobody_was_asked_for_names_nobody(book: Path) -> None:
    done = run("giving-list", "--out", "giving/other.yml")
    assert done.exit_code == 0
    said = " ".join(done.output.split())
    assert "nobody stands in it yet" in said
    assert 'Write your own people below "households:"' in said
    (book / "giving" / "other.yml").unlink()


def test_of_a_list_no_water_is_priced(book: Path) -> None:
    lines = ["450 ml tap water", "200 ml cold water", "1 l boiling water", "2 tbsp rose water"]
    path = book / "recipes" / "fudge.md"
    text = path.read_text(encoding="utf-8")
    more = "".join(f"  - {line}\n" for line in lines)
    path.write_text(text.replace("ingredients:\n", f"ingredients:\n{more}", 1), encoding="utf-8")
    assert run("giving-list", "--out", "giving/other.yml").exit_code == 0
    priced = (book / "giving" / "other.yml").read_text(encoding="utf-8").partition("prices:")[2]
    assert "rose water: ..." in priced
    assert not re.search(r"(?:tap|cold|boiling) water: \.\.\.", priced)
    (book / "giving" / "other.yml").unlink()
    path.write_text(text, encoding="utf-8")
