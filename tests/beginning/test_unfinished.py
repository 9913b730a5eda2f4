"""Example words that still stand are named by file and line; one's own are left alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from stillroom.beginning.book import Answers, begin_book
from stillroom.beginning.recipe import example_steps, write_recipe
from stillroom.beginning.unfinished import find_unfinished, page_words
from stillroom.cli import main
from stillroom.core.book import Book, open_book

OWN = "---\ntitle: {title}\nkind: liqueur\nmakes: 700 ml\ningredients:\n  - 700 ml vodka\n---\n\n"


@pytest.fixture
def book(tmp_path: Path) -> Book:
    begin_book(tmp_path, Answers(title="Tried"))
    return open_book(tmp_path / "mkdocs.yml")


def _named(book: Book) -> list[tuple[str, int]]:
    return [(problem.file, problem.line) for problem in find_unfinished(book)]


def _line(path: Path, words: str) -> int:
    lines = path.read_text(encoding="utf-8").splitlines()
    return next(at for at, line in enumerate(lines, 1) if words in line)


def test_a_book_left_alone_names_each_place(book: Book) -> None:
    path = write_recipe(book, "Plum gin", "liqueur")
    intro = "Below stands an example"
    assert _named(book) == [
        ("recipes/plum-gin.md", _line(path, "- 700 ml vodka")),
        ("recipes/vanilla-sugar.md", _line(book.recipes_dir / "vanilla-sugar.md", intro)),
        ("pages/index.md", _line(book.docs_dir / "index.md", "first leaf")),
        ("pages/about.md", _line(book.docs_dir / "about.md", "Who keeps")),
    ]
    plum = next(find_unfinished(book))
    more = ["- 250 g", "- 150 g", intro, "1. Put {raspberries}", "2. Strain it"]
    lines = ", ".join(str(_line(path, words)) for words in more)
    assert f"(and more of it: line {lines})" in plum.what


def test_what_is_written_over_is_no_example(book: Book) -> None:
    for name in ("index.md", "about.md"):
        (book.docs_dir / name).write_text("# Ours\n\nWe write of plums here.\n", encoding="utf-8")
    first = book.recipes_dir / "vanilla-sugar.md"
    text = first.read_text(encoding="utf-8")
    line = text.splitlines()[_line(first, "Below stands an example") - 1]
    first.write_text(text.replace(line, "From my aunt's drawer."), encoding="utf-8")
    assert _named(book) == [], "the first recipe's own steps are good as they stand"
    (book.recipes_dir / "own.md").write_text(
        OWN.format(title="Own") + f"## Method\n\n1. Wait.\n2. {example_steps()[0][1]}\n",
        encoding="utf-8",
    )
    assert _named(book) == [], "one step of the example may be anybody's"


def test_all_the_steps_of_an_example_are_the_example(book: Book) -> None:
    for name in ("index.md", "about.md"):
        (book.docs_dir / name).unlink()
    (book.recipes_dir / "vanilla-sugar.md").unlink()
    steps = "\n".join(f"{place}. {step}" for place, step in enumerate(example_steps()[0], 1))
    path = book.recipes_dir / "own.md"
    path.write_text(f"{OWN.format(title='Own')}## Method\n\n{steps}\n", encoding="utf-8")
    assert _named(book) == [("recipes/own.md", _line(path, "1. "))]


KINDS = ("infusion", "infused salt", "preserve", "ferment", "dry mix", "bake", "confection")


@pytest.mark.parametrize("units", ["metric", "us"])
@pytest.mark.parametrize("kind", KINDS)
def test_a_list_that_was_not_written_over_is_the_example(
    tmp_path: Path, kind: str, units: str
) -> None:
    country = "US" if units == "us" else "GB"
    begin_book(tmp_path, Answers(title="Tried", country=country))
    book = open_book(tmp_path / "mkdocs.yml")
    for name in ("index.md", "about.md"):
        (book.docs_dir / name).unlink()
    (book.recipes_dir / "vanilla-sugar.md").unlink()
    path = write_recipe(book, "Plum gin", kind)
    front = path.read_text(encoding="utf-8").split("---\n")[1]
    path.write_text(f"---\n{front}---\n\nOurs.\n\n## Method\n\n1. Wait.\n", encoding="utf-8")
    first = _line(path, "ingredients:") + 1
    assert _named(book) == [("recipes/plum-gin.md", first)]
    text = path.read_text(encoding="utf-8")
    listed = text.splitlines()[first - 1]
    path.write_text(text.replace(listed, f"{listed}, ripe"), encoding="utf-8")
    assert _named(book) == [], "a list of which one line is one's own is one's own"


def test_words_are_found_however_their_lines_are_broken(book: Book) -> None:
    path = book.docs_dir / "about.md"
    [words] = page_words("about.md")
    path.write_text("# About\n\n" + words.replace(" ", "\n"), encoding="utf-8")
    assert ("pages/about.md", 3) in _named(book)


def test_the_check_warns_and_goes_on(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(book.root)
    done = CliRunner().invoke(main, ["check"])
    assert done.exit_code == 0
    assert "warning: pages/index.md:1: Words of the example still stand here" in done.stderr
    assert "would be published" in done.stdout
