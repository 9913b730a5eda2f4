"""A book that is begun builds at once; nothing that is there is written over."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest
from click.testing import CliRunner

from giving.lists import write_somebody
from stillroom.beginning.book import Answers, begin_book, book_files
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.checking import check_book
from stillroom.core.words.problems import ProblemsFound
from stillroom.publish.agreeing import find_refused

NAMES = [
    "Our book",
    'Mum & Dad: the "book" #1',
    "it's 100 % ours",
    "- {a: b}",
    "Ünser Büch 梅",
    "yes",
    "1.5",
    "!ENV HOME",
]


@pytest.mark.parametrize("title", NAMES)
def test_any_name_is_the_books_name(title: str, tmp_path: Path) -> None:
    begin_book(tmp_path / "ours", Answers(title, keeper=title))
    book = open_book(tmp_path / "ours" / "mkdocs.yml")
    assert book.settings.title == title
    assert len(check_book(book)) == 1
    assert [*find_refused(book)] == []


@pytest.mark.parametrize(
    ("country", "language", "units", "currency"),
    [
        ("GB", "en_GB", "metric", "GBP"),
        ("uk", "en_GB", "metric", "GBP"),
        ("United States", "en_US", "us", "USD"),
        ("Ireland", "en_IE", "metric", "EUR"),
        ("Germany", "de_DE", "metric", "EUR"),
        ("CH", "de_CH", "metric", "CHF"),
        ("NO", "en_GB", "metric", "NOK"),
        ("Japan", "en_GB", "metric", "JPY"),
        ("AU", "en_AU", "metric", "AUD"),
    ],
)
def test_a_country_brings_what_is_usual_there(
    country: str, language: str, units: str, currency: str, tmp_path: Path
) -> None:
    begin_book(tmp_path / "ours", Answers("Ours", country))
    said = open_book(tmp_path / "ours" / "mkdocs.yml").settings
    assert (said.language, said.units, said.currency) == (language, units, currency)


def test_what_is_answered_wrongly_is_told_all_at_once() -> None:
    wrong = Answers("", "Ruritania", giving_day="when the geese fly", altitude_m="high")
    with pytest.raises(ProblemsFound) as found:
        book_files(wrong)
    said = [str(problem) for problem in found.value.problems]
    assert len(said) == 3, said


def test_nothing_is_written_over(tmp_path: Path) -> None:
    (tmp_path / "pages").mkdir()
    (tmp_path / "pages" / "index.md").write_text("mine", encoding="utf-8")
    with pytest.raises(ProblemsFound, match="there already"):
        begin_book(tmp_path, Answers("Ours"))
    assert [path.name for path in tmp_path.rglob("*") if path.is_file()] == ["index.md"]
    assert (tmp_path / "pages" / "index.md").read_text(encoding="utf-8") == "mine"


def test_no_book_is_begun_within_what_another_publishes(tmp_path: Path) -> None:
    begin_book(tmp_path / "ours", Answers("Ours"))
    with pytest.raises(ProblemsFound, match="which is published"):
        begin_book(tmp_path / "ours" / "pages" / "theirs", Answers("Theirs"))


def test_nothing_of_the_demo_stands_in_it() -> None:
    text = "\n".join(book_files(Answers("Ours", keeper="Ada")).values()).lower()
    assert "thistledown" not in text
    assert "kept by ada" in text
    assert "kept" not in book_files(Answers("Ours"))["mkdocs.yml"].lower()


def test_from_nothing_to_a_site_in_the_terminal(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    started = CliRunner().invoke(main, ["start", "ours", "--name", "Our: book", "--keeper", "Ada"])
    assert started.exit_code == 0, started.output
    assert 'stillroom new "Plum gin"' in started.output
    monkeypatch.chdir(tmp_path / "ours")
    new = CliRunner().invoke(main, ["new", "Plum gin", "--kind", "liqueur"])
    assert new.exit_code == 0, new.output
    again = CliRunner().invoke(main, ["new", "Plum gin", "--kind", "liqueur"])
    assert again.exit_code == 1
    command = [sys.executable, "-m", "mkdocs", "build", "--strict"]
    built = subprocess.run(
        command, cwd=tmp_path / "ours", capture_output=True, encoding="utf-8", check=False
    )
    assert built.returncode == 0, built.stderr
    assert (tmp_path / "ours" / "site" / "r" / "plum-gin" / "index.html").is_file()
    home = (tmp_path / "ours" / "site" / "index.html").read_text(encoding="utf-8")
    assert "Our: book" in home
    assert "Kept by Ada." in home
    assert "histledown" not in home


def test_without_a_book_a_recipe_has_no_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    new = CliRunner().invoke(main, ["new", "Plum gin", "--kind", "liqueur"])
    assert new.exit_code == 2
    assert "stillroom start" in new.output


def test_the_command_runs_by_way_of_python(tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "stillroom", "--help"],
        cwd=tmp_path,
        capture_output=True,
        encoding="utf-8",
        check=True,
    )
    assert done.stdout.startswith("Usage: stillroom ")
    assert "start" in done.stdout


@pytest.mark.parametrize("country", ["GB", "DE", "US"])
def test_the_giving_list_that_is_begun_makes_a_pack(country: str, tmp_path: Path) -> None:
    begin_book(tmp_path / "ours", Answers("Ours", country, keeper="Jo", today=date(2026, 11, 1)))
    where = tmp_path / "ours" / "giving" / "giving-list.yml"
    assert "name: " not in re.sub(r"#.*", "", where.read_text(encoding="utf-8")), "nobody"
    write_somebody(where)
    said = ["pack", str(where), "--today", "2026-11-01", "--seconds", "5"]
    ran = CliRunner().invoke(main, said, catch_exceptions=False)
    assert ran.exit_code == 0, ran.output
    assert "1 basket" in ran.output


def test_the_giving_list_that_is_begun_is_kept_from_a_public_history() -> None:
    files = book_files(Answers("Ours"))
    assert "giving/" in files[".gitignore"].splitlines()
    assert "# " in files["giving/giving-list.yml"]


def test_commands_to_copy_are_called_as_the_tool_was(tmp_path: Path) -> None:
    # run by its whole path, as a virtual environment has it, and not found by its name
    tool = Path(sys.executable).parent / "stillroom"
    env = {**os.environ, "PATH": str(tmp_path)}
    done = subprocess.run(
        [sys.executable, "-c", _AS_TOOL, str(tool), "start", "book"],
        capture_output=True, text=True, encoding="utf-8", check=True, cwd=tmp_path, env=env,
    )  # fmt: skip
    lines = [line.strip() for line in done.stdout.splitlines()]
    assert f'{tool} new "Plum gin"' in lines
    assert f"{tool} pack giving/giving-list.yml" in lines
    assert f"{tool} serve" in lines
    first = (tmp_path / "book" / "giving" / "giving-list.yml").read_text(encoding="utf-8")
    assert f'below "households:" it makes a pack:  {tool} pack giving/giving-list.yml' in first
    # found by its name, it is called so
    env["PATH"] = str(tool.parent)
    done = subprocess.run(
        [sys.executable, "-c", _AS_TOOL, str(tool), "start", "other"],
        capture_output=True, text=True, encoding="utf-8", check=True, cwd=tmp_path, env=env,
    )  # fmt: skip
    assert '  stillroom new "Plum gin"' in done.stdout
    assert "  stillroom serve" in done.stdout


_AS_TOOL = "import sys; sys.argv = sys.argv[1:]; from stillroom.cli import main; main()"
