"""The command as a cook meets it: what it prints, and its exit codes."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest
from click.testing import CliRunner

from publish.test_wall import small_book
from stillroom.cli import main
from stillroom.core.reading.editor_schema import front_matter_schema
from stillroom.core.words.frontmatter import read_yaml

ROOT = Path(__file__).resolve().parents[1]
RECIPES = sorted((ROOT / "recipes").glob("*.md"))


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.chdir(ROOT)
    return lambda *words: CliRunner().invoke(main, [str(word) for word in words])


def test_check_reads_the_whole_book(run) -> None:
    result = run("check")
    assert result.exit_code == 0, result.stderr
    assert f"{len(RECIPES)} recipes read, no problems." in result.stdout


def test_check_tells_what_is_private_and_would_be_published(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = small_book(tmp_path / "book")
    monkeypatch.chdir(folder)
    assert CliRunner().invoke(main, ["check"]).exit_code == 0
    page = folder / "pages" / "who.md"
    page.write_text("# Giving list\n\n- Jo: no nuts\n- Nan: by post\n", encoding="utf-8")
    result = CliRunner().invoke(main, ["check"])
    assert result.exit_code == 1
    assert "who.md:1: This file is a private giving list." in result.stderr


def test_check_reads_a_file_that_lies_elsewhere(run, tmp_path: Path) -> None:
    path = tmp_path / "quince.md"
    path.write_text(RECIPES[0].read_text(encoding="utf-8"), encoding="utf-8")
    assert run("check", path).exit_code == 0


def test_check_says_every_problem_and_counts_them(run, tmp_path: Path) -> None:
    path = tmp_path / "quince.md"
    path.write_text("---\ntitel: Quince\nkind: infuson\n---\n", encoding="utf-8")
    result = run("check", path)
    assert result.exit_code == 1
    assert result.stdout == ""
    lines = result.stderr.splitlines()
    assert lines[0].startswith(f"{path}:")
    assert lines[-1] == f"{len(lines) - 1} problems found."


def test_check_tells_unsafe_unreadable_and_pictureless_files_in_one_run(
    run, tmp_path: Path
) -> None:
    (tmp_path / "unreadable.md").write_text("---\ntitel: Quince\n---\n", encoding="utf-8")
    text = (
        "---\ntitle: {}\nkind: {}\nmakes: 200 ml\npicture: {}\ningredients:\n{}---\n\n"
        "## Method\n\n1. Mix.\n"
    )
    (tmp_path / "unsafe.md").write_text(
        text.format("Garlic oil", "infusion", "''", "  - 200 ml olive oil\n  - 6 cloves garlic\n"),
        encoding="utf-8",
    )
    (tmp_path / "pictureless.md").write_text(
        text.format("Sugar", "dry mix", "no.svg", "  - 200 g caster sugar\n"), encoding="utf-8"
    )
    result = run("check", *tmp_path.glob("*.md"))
    assert result.exit_code == 1
    assert 'Did you mean "title"?' in result.stderr
    assert 'The picture "no.svg" is not in' in result.stderr
    assert "unsafe.md:" in result.stderr


def test_wrong_usage_is_2(run) -> None:
    assert run("check", "no-such-file.md").exit_code == 2
    assert run("chekc").exit_code == 2


def test_check_outside_any_book_leads_to_one(
    run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    result = run("check")
    assert result.exit_code == 2
    assert "There is no book here. Begin one with" in result.stderr


def test_settings_that_are_wrong_are_told(
    run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "mkdocs.yml").write_text(
        "plugins:\n  - stillroom:\n      contry: GB\n      altitude_m: high\n", encoding="utf-8"
    )
    monkeypatch.chdir(tmp_path)
    result = run("check")
    assert result.exit_code == 1
    assert 'Did you mean "country"?' in result.stderr
    assert "altitude_m" in result.stderr


def test_schema_knows_the_keys_a_cook_writes(run) -> None:
    document = json.loads(run("schema").stdout)
    assert {"title", "kind", "makes", "ingredients", "materials", "vessel"} <= set(
        document["properties"]
    )
    assert document["additionalProperties"] is False
    jsonschema.Draft202012Validator.check_schema(document)


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_schema_accepts_every_recipe_of_the_demo_book(run, path: Path) -> None:
    validator = jsonschema.Draft202012Validator(front_matter_schema())
    front = path.read_text(encoding="utf-8").split("---\n")[1]
    assert list(validator.iter_errors(read_yaml(front, path.name).data)) == []


@pytest.mark.parametrize(
    "written",
    [
        {"titel": "Quince"},
        {"title": "Q", "kind": "infuson", "makes": "1 l", "ingredients": ["1 l vodka"]},
        {"title": "Q", "kind": "infusion", "makes": "1 l"},
        {"title": "Q", "kind": "infusion", "makes": "1 l", "materials": [{"itm": "x"}]},
    ],
)
def test_schema_refuses_what_the_reader_refuses(written: dict) -> None:
    validator = jsonschema.Draft202012Validator(front_matter_schema())
    assert list(validator.iter_errors(written))


@pytest.mark.parametrize("page", ["cp1252", "cp437"])
def test_output_to_a_file_on_windows_loses_no_amount(page: str) -> None:
    # such a page has no "⅛": what a Windows file or pipe is written in unless it is told
    command = [sys.executable, "-m", "stillroom.cli", "scale", "recipes/almond-shortbread.md"]
    done = subprocess.run(
        [*command, "--times", "1/3"],
        cwd=ROOT,
        env={**os.environ, "PYTHONIOENCODING": page, "PYTHONUTF8": "0"},
        capture_output=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr.decode("utf-8", "replace")
    assert "⅛" in done.stdout.decode("utf-8")


def test_dates_go_into_a_calendar_too(run, tmp_path: Path) -> None:
    out = tmp_path / "salt.ics"
    words = ["dates", ROOT / "recipes" / "rosemary-salt.md", "--give", "2027-12-18"]
    words += ["--today", "2027-01-01", "--calendar", out]
    for _ in range(2):
        assert run(*words).exit_code == 0
    text = out.read_text(encoding="utf-8")
    assert text.startswith("BEGIN:VCALENDAR")
    assert "DTSTART;VALUE=DATE:2027" in text
    out.write_text("mine", encoding="utf-8")
    refused = run(*words)
    assert refused.exit_code == 1
    assert "is no calendar" in refused.stderr
    assert out.read_text(encoding="utf-8") == "mine"


def test_a_scale_can_be_sent_as_a_link(run, tmp_path: Path) -> None:
    path = ROOT / "recipes" / "rosemary-salt.md"
    page = "https://thistledown-lane.example/book/r/rosemary-salt/"
    asked = run("scale", path, "--makes", "8 jars of 60 ml", "--units", "us", "--link")
    assert asked.stdout == f"{page}?makes=8+jars+of+60+ml&units=us\n"
    assert run("scale", path, "--link").stdout == f"{page}\n"
