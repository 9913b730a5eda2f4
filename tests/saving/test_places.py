"""No command writes into what is published, nor over what is not its own."""

from __future__ import annotations

import os
import re
import shlex
import subprocess
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner, Result

from loaded import run_loaded
from publish.test_wall import small_book
from stillroom.cli import main
from stillroom.giving.guard import warn_of_git

DEMO_LIST = Path(__file__).parents[2] / "site_demo/giving/christmas-2027.yml"
LIST = {
    "giving list": "Winter",
    "giving day": "2027-12-18",
    "baskets": {"small": {"eat": 1}},
    "makes": [{"recipe": "lavender-sugar"}],
    "households": [{"name": "Zebedee Quillfeather", "basket": "small"}],
}
PUBLISHED = ("pages", "pages/deep/er", "recipes", "site", "own", "linked")
COMMANDS = {
    "cards": ["print", "cards", "--to", "Zebedee Quillfeather"],
    "tags": ["print", "tags"],
    "sheet": ["print", "sheet", "recipes/lavender-sugar.md"],
    "year": ["print", "year"],
    "book": ["print", "book"],
    "epub": ["print", "epub"],
    "cuts": ["print", "cuts", "--lid", "70"],
    "schema": ["schema"],
    "giving-list": ["giving-list"],
    "giving-schema": ["giving-schema"],
    "pack": ["pack", "list.yml", "--today", "2027-01-10"],
}


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = small_book(tmp_path)
    config = yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))
    config["theme"]["custom_dir"] = "own"
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    (folder / "own").mkdir()
    (folder / "list.yml").write_text(yaml.safe_dump(LIST, sort_keys=False), encoding="utf-8")
    os.symlink(folder / "pages", folder / "linked", target_is_directory=True)
    monkeypatch.chdir(folder)
    return folder


def run(*words: str) -> Result:
    return CliRunner().invoke(main, list(words))


@pytest.mark.parametrize("place", PUBLISHED)
@pytest.mark.parametrize("command", COMMANDS)
def test_no_out_may_lie_in_what_is_published(book: Path, command: str, place: str) -> None:
    before = sorted(book.rglob("*"))
    out = place if command == "pack" else f"{place}/made"
    done = run(*COMMANDS[command], "--out", out)
    assert done.exit_code == 1, done.output
    assert "which is published" in done.output
    assert " found." in done.output
    assert sorted(book.rglob("*")) == before


def test_force_writes_over_a_print_and_over_nothing_else(book: Path) -> None:
    before = (book / "list.yml").read_bytes()
    for out in ("list.yml", "mkdocs.yml"):
        done = run("print", "cuts", "--lid", "70", "--force", "--out", out)
        assert done.exit_code == 1
        assert "is no print" in done.output
        assert run("schema", "--out", out).exit_code == 1
    assert (book / "list.yml").read_bytes() == before
    for _ in range(2):
        done = run("print", "cuts", "--lid", "70", "--force", "--out", "cuts.pdf")
        assert done.exit_code == 0, done.output
        assert run("schema", "--out", "schema.json").exit_code == 0


@pytest.mark.parametrize("out", ["mkdocs.yml/a.pdf", "x" * 300, "own.pdf/"])
def test_a_place_that_cannot_be_is_told_in_words(book: Path, out: str) -> None:
    (book / "own.pdf").mkdir()
    done = run("print", "cuts", "--lid", "70", "--force", "--out", out)
    assert done.exit_code in (1, 2)
    assert isinstance(done.exception, SystemExit), done.exception


def test_a_pack_is_hidden_from_git_and_a_list_that_git_keeps_is_warned_of(book: Path) -> None:
    for words in (["init", "-q"], ["add", "list.yml"]):
        subprocess.run(["git", "-C", str(book), *words], check=True, capture_output=True)
    done = run(*COMMANDS["pack"])
    assert done.exit_code == 0, done.output
    assert "warning: list.yml:1: Git keeps this list" in done.output
    status = ["git", "-C", str(book), "status", "--porcelain", "--untracked-files=all"]
    seen = subprocess.run(status, check=True, capture_output=True, text=True, encoding="utf-8")
    assert "private" not in seen.stdout
    assert "stillroom" not in seen.stdout


def test_the_examples_own_list_may_be_kept_by_git_and_one_made_of_it_may_not(
    book: Path,
) -> None:
    text = DEMO_LIST.read_text(encoding="utf-8")
    path = book / "giving" / "christmas-2027.yml"
    path.parent.mkdir()
    for words in (["init", "-q"], ["add", "-f", "giving"]):
        path.write_text(text, encoding="utf-8")
        subprocess.run(["git", "-C", str(book), *words], check=True, capture_output=True)
    assert list(warn_of_git(path)) == []
    path.write_bytes(text.replace("\n", "\r\n").encode())
    assert list(warn_of_git(path)) == [], "line ends are git's"
    path.write_text(text.replace("giving list:", "giving list: our", 1), encoding="utf-8")
    assert [one.what for one in warn_of_git(path)] == [
        "Git keeps this list, and with it every name on it."
    ]


def test_checking_warns_of_a_list_and_a_log_that_git_keeps(book: Path) -> None:
    assert run("check").exit_code == 0
    assert "Git keeps" not in run("check").output
    (book / "log.yml").write_text("giving log:\n", encoding="utf-8")
    for words in (["init", "-q"], ["add", "list.yml", "log.yml"]):
        subprocess.run(["git", "-C", str(book), *words], check=True, capture_output=True)
    for words in (["check"], ["check", "list.yml"], ["check", "log.yml"]):
        done = run(*words)
        assert done.exit_code == 0, done.output
        told = [line for line in done.output.splitlines() if "Git keeps this list" in line]
        assert [
            line.partition(":1:")[0].rpartition("/")[2].rpartition(" ")[2] for line in told
        ] == [
            "list.yml",
            "log.yml",
        ]
    (book / "recipes" / "lavender-sugar.md").write_text("nothing", encoding="utf-8")
    done = run("check")
    assert done.exit_code == 1
    assert done.output.count("Git keeps this list") == 2
    said = re.search(r'"(git rm --cached [^"]+)"', done.output)
    assert said is not None
    subprocess.run(shlex.split(said[1]), check=True, capture_output=True)
    assert run("check").output.count("Git keeps this list") == 1


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (yaml.safe_dump(LIST).encode("utf-16"), "was saved with two signs to a letter"),
        (b"", "This is not read as a giving list."),
        (b"- Zebedee\n", "This is not read as a giving list."),
    ],
)
def test_what_lies_where_lists_lie_is_read_or_told(book: Path, data: bytes, told: str) -> None:
    (book / "giving").mkdir()
    (book / "giving" / "winter.yml").write_bytes(data)
    done = run("check")
    assert told in done.output, done.output
    assert "giving/winter.yml:1: " in done.output


def test_what_has_households_among_other_things_is_no_list_of_the_book(book: Path) -> None:
    cases = "- case: |\n    - name: Jo\n      basket: small\n      avoid: nuts\n    - name: Nan\n"
    (book / "cases.yml").write_text(f"{cases}      basket: large\n", encoding="utf-8")
    done = run("check")
    assert done.exit_code == 0, done.output
    assert "1 giving list read" in done.output


TAKEN = {
    "the recipes": ("recipes", (), "where the recipes lie"),
    "notes": ("notes", ("mine.txt",), "something other than a site"),
    "an earlier site": ("old", ("index.html", "gone.txt"), ""),
    "only what is hidden": ("branch", (".git/HEAD",), ""),
    "nothing": ("new", (), ""),
}


@pytest.mark.parametrize(("site", "holds", "told"), TAKEN.values(), ids=TAKEN)
def test_a_site_takes_the_place_of_a_site_alone(
    book: Path, site: str, holds: tuple[str, ...], told: str
) -> None:
    for name in holds:
        (book / site / name).parent.mkdir(parents=True, exist_ok=True)
        (book / site / name).write_text("mine", encoding="utf-8")
    config = yaml.safe_load((book / "mkdocs.yml").read_text(encoding="utf-8"))
    (book / "mkdocs.yml").write_text(yaml.safe_dump(config | {"site_dir": site}), encoding="utf-8")
    before = sorted(book.rglob("*"))
    for words in (["check"], ["build", "--quiet"]):
        done = run_loaded(["stillroom.cli", *words], Path.cwd(), os.environ)
        assert (done.returncode == 1) == bool(told), done.stdout + done.stderr
        assert told in done.stdout + done.stderr
        assert not told or sorted(book.rglob("*")) == before
    assert (book / "recipes" / "lavender-sugar.md").is_file()
    assert not holds or (book / site / holds[0]).is_file()


def test_planning_again_with_nothing_changed_changes_nothing(book: Path) -> None:
    assert run(*COMMANDS["pack"]).exit_code == 0
    (book / "private" / "note.txt").write_text("mine", encoding="utf-8")
    before = {path: path.stat().st_mtime_ns for path in (book / "private").rglob("*")}
    assert run(*COMMANDS["pack"]).exit_code == 0
    assert {path: path.stat().st_mtime_ns for path in (book / "private").rglob("*")} == before
    (book / "list.yml").write_text(
        yaml.safe_dump({**LIST, "message": "With love"}, sort_keys=False), encoding="utf-8"
    )
    assert run(*COMMANDS["pack"]).exit_code == 0
    assert (book / "private" / "note.txt").read_text(encoding="utf-8") == "mine"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="pipes with names, of POSIX")
@pytest.mark.parametrize(
    ("place", "words"),
    [
        ("giving/pipe.yml", ["check"]),
        ("pipe.yml", ["check"]),
        ("pipe.txt", ["bring", "pipe.txt"]),
        ("recipes/pipe.md", ["check"]),
        ("larder.yml", ["check"]),
        ("log.yml", ["note", "begun", "lavender-sugar", "--list", "list.yml"]),
    ],
)
def test_a_pipe_without_an_end_is_not_waited_for(book: Path, place: str, words: list[str]) -> None:
    (book / "giving").mkdir()
    os.mkfifo(book / place)
    (book / "giving" / "gone.yml").symlink_to("nowhere.yml")
    (book / "giving" / "folder.yml").mkdir()
    done = run(*words)
    assert isinstance(done.exception, SystemExit | None), done.exception
    assert "Traceback" not in done.output
    if not place.endswith("pipe.yml"):
        assert f"{place}:1: This is no file that can be read to its end." in done.output
