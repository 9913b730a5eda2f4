"""What is written is whole or as it was: on a full disk, with two runs at once, after a fault.

Leaves out runs that are ended: test_killed.py.
"""

from __future__ import annotations

import errno
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from publish.test_wall import build, small_book
from stillroom.beginning.book import Answers, begin_book
from stillroom.core.words.problems import ProblemsFound
from stillroom.saving import whole
from stillroom.saving.whole import begin_folder, clear_leftovers, put_in_place, write_whole

posix = pytest.mark.skipif(sys.platform == "win32", reason="signals and limits of POSIX")


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def test_a_file_is_written_and_nothing_is_left_beside_it(tmp_path: Path) -> None:
    write_whole(tmp_path / "deep" / "er" / "a.pdf", b"one")
    write_whole(tmp_path / "deep" / "er" / "a.pdf", b"two")
    assert (tmp_path / "deep" / "er" / "a.pdf").read_bytes() == b"two"
    assert names(tmp_path / "deep" / "er") == {"a.pdf"}


@posix
def test_a_file_keeps_who_may_read_it(tmp_path: Path) -> None:
    path = tmp_path / "list.yml"
    write_whole(path, b"one")
    path.chmod(0o600)
    write_whole(path, b"two")
    assert path.stat().st_mode & 0o777 == 0o600


@pytest.mark.parametrize("refused", ["mkdocs.yml", "index.md", ".gitignore"])
@pytest.mark.parametrize("there", ["nothing", "a folder", "a file of one's own"])
def test_a_book_of_which_a_part_cannot_be_written_is_not_begun(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, refused: str, there: str
) -> None:
    folder = tmp_path / "a" / "b"
    if there != "nothing":
        folder.mkdir(parents=True)
    if there == "a file of one's own":
        (folder / "note.txt").write_text("my own", encoding="utf-8")
    before = sorted(tmp_path.rglob("*"))
    real = os.replace

    def full(one: Path, other: Path) -> None:
        if Path(other).name == refused:
            raise OSError(errno.ENOSPC, "full")
        real(one, other)

    monkeypatch.setattr(os, "replace", full)
    with pytest.raises(ProblemsFound, match="no room"):
        begin_book(folder, Answers(title="Ours", country="GB"))
    assert sorted(tmp_path.rglob("*")) == before
    monkeypatch.setattr(os, "replace", real)
    assert begin_book(folder, Answers(title="Ours", country="GB"))


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "no room"),
        (errno.EFBIG, "no room"),
        (errno.EACCES, "may not be written"),
        (errno.EROFS, "read-only"),
        (errno.EIO, "cannot be written"),
    ],
)
def test_what_the_system_refuses_is_told_and_changes_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
) -> None:
    path = tmp_path / "a.pdf"
    write_whole(path, b"old")

    def refuse(*_: object) -> None:
        raise OSError(number, os.strerror(number))

    for name in ("fsync", "replace"):
        monkeypatch.setattr(whole.os, name, refuse)
        with pytest.raises(ProblemsFound) as found:
            write_whole(path, b"new")
        monkeypatch.undo()
        assert words in str(found.value)
        assert str(path) in str(found.value)
        assert path.read_bytes() == b"old"
        assert names(tmp_path) == {"a.pdf"}


def test_a_file_that_cannot_be_written_leaves_no_folder_that_was_made_for_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(errno.ENOSPC, "full")

    (tmp_path / "mine").mkdir()
    monkeypatch.setattr(whole.os, "fsync", refuse)
    with pytest.raises(ProblemsFound):
        write_whole(tmp_path / "mine" / "deep" / "er" / "a.pdf", b"new")
    assert names(tmp_path) == {"mine"}
    assert names(tmp_path / "mine") == set()


@pytest.mark.parametrize(
    ("place", "words"),
    [("file/a.pdf", "below a file"), ("x" * 300 + ".pdf", "too long"), ("folder", "folder")],
)
def test_a_place_that_cannot_be(tmp_path: Path, place: str, words: str) -> None:
    (tmp_path / "file").write_text("mine", encoding="utf-8")
    (tmp_path / "folder").mkdir()
    with pytest.raises(ProblemsFound, match=words):
        write_whole(tmp_path / place, b"new")
    assert names(tmp_path) == {"file", "folder"}
    assert (tmp_path / "file").read_text(encoding="utf-8") == "mine"


def test_a_folder_is_exchanged_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    place = tmp_path / "site"
    for number, exchange in enumerate((whole._exchange, lambda *_: False)):
        monkeypatch.setattr(whole, "_exchange", exchange)
        for version in ("one", "two"):
            new = begin_folder(place)
            (new / f"{version}-{number}").touch()
            put_in_place(new, place)
            assert names(place) == {f"{version}-{number}"}
            assert names(tmp_path) == {"site"}


def test_what_a_killed_run_left_is_cleared_and_what_it_moved_is_brought_back(
    tmp_path: Path,
) -> None:
    command = [sys.executable, "-c", "import os; print(os.getpid())"]
    ended = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=True)
    aside = tmp_path / f".site.stillroom-{ended.stdout.strip()}"
    (aside / "new").mkdir(parents=True)
    (aside / "old").mkdir()
    (aside / "old" / "index.html").touch()
    (tmp_path / f".a.pdf.stillroom-{ended.stdout.strip()}").touch()
    running = {f".site.stillroom-{os.getppid()}", f".other.stillroom-{os.getpid()}"}
    for name in running:
        (tmp_path / name).mkdir()
    clear_leftovers(tmp_path / "whatever.txt")
    assert names(tmp_path) == {"site", *running}
    assert names(tmp_path / "site") == {"index.html"}


def test_git_sees_nothing_of_what_is_being_made(tmp_path: Path) -> None:
    subprocess.run(["git", "-C", str(tmp_path), "init", "-q"], check=True)
    new = begin_folder(tmp_path / "private")
    (new / "plan.json").touch()
    status = ["git", "-C", str(tmp_path), "status", "--porcelain"]
    seen = subprocess.run(status, capture_output=True, text=True, encoding="utf-8", check=True)
    assert seen.stdout == ""


def versions(site: Path) -> set[str]:
    """Return the words of each version of the book that stand in its pages."""
    found = set()
    for path in site.rglob("*.html"):
        text = path.read_text(encoding="utf-8")
        assert text.rstrip().endswith("</html>"), path
        found |= {word for word in ("Versionone", "Versiontwo") if word in text}
    return found


@pytest.fixture(scope="session")
def once_built(make_once: Callable[..., Path]) -> Path:
    """Build a small book once; what is tried on it is tried on a copy."""

    def build_it(folder: Path) -> None:
        set_version(small_book(folder), "Versionone")
        assert build(folder).returncode == 0

    return make_once("small", build_it)


@pytest.fixture
def built(once_built: Path, tmp_path: Path) -> Path:
    shutil.copytree(once_built, tmp_path, dirs_exist_ok=True)
    return tmp_path


def set_version(folder: Path, word: str) -> None:
    config = folder / "mkdocs.yml"
    lines = config.read_text(encoding="utf-8").splitlines()
    kept = [line for line in lines if not line.startswith("site_name")]
    config.write_text("\n".join([*kept, f"site_name: {word}", ""]), encoding="utf-8")


@posix
@pytest.mark.parametrize("most", [0, 3_000, 20_000, 100_000])
def test_a_full_disk_leaves_the_old_book(built: Path, most: int) -> None:
    folder = built
    before = {path: path.read_bytes() for path in (folder / "site").rglob("*") if path.is_file()}
    set_version(folder, "Versiontwo")
    script = (
        "import resource, runpy, sys; sys.dont_write_bytecode = True; "
        f"resource.setrlimit(resource.RLIMIT_FSIZE, ({most}, {most})); "
        "sys.argv = ['mkdocs', 'build', '-q']; runpy.run_module('mkdocs', run_name='__main__')"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=folder, capture_output=True, check=False
    )
    assert done.returncode != 0
    after = {path: path.read_bytes() for path in (folder / "site").rglob("*") if path.is_file()}
    assert before == after
    assert not [name for name in names(folder) if "stillroom" in name]
    assert b"no room" in done.stdout + done.stderr
    assert b"Traceback" not in done.stdout + done.stderr


def test_two_builds_at_once_leave_one_whole_book(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    set_version(folder, "Versionone")
    command = [sys.executable, "-m", "mkdocs", "build", "-q"]
    runs = [subprocess.Popen(command, cwd=folder, stderr=subprocess.DEVNULL) for _ in range(2)]
    assert [run.wait() for run in runs] == [0, 0]
    assert versions(folder / "site") == {"Versionone"}
    assert names(folder) == {"mkdocs.yml", "pages", "recipes", "site"}


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("lavender-sugar.svg", b""),
        ("lavender-sugar.svg", b"\xff\xd8\xff\xe0 a photograph"),
        ("lavender-sugar.svg", b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 0"/>'),
        ("frontispiece.svg", b"<svg"),
    ],
)
def test_a_faulty_picture_is_told_and_the_old_book_stays(
    built: Path, name: str, data: bytes
) -> None:
    folder = built
    (folder / "pages" / "pictures").mkdir()
    (folder / "pages" / "pictures" / name).write_bytes(data)
    before = {path: path.stat().st_mtime_ns for path in (folder / "site").rglob("*")}
    failed = build(folder)
    assert failed.returncode == 1
    assert name in failed.stderr
    assert "1 problem" in failed.stderr
    assert "Traceback" not in failed.stderr
    assert {path: path.stat().st_mtime_ns for path in (folder / "site").rglob("*")} == before


def test_a_strict_build_with_a_warning_leaves_the_old_book(built: Path) -> None:
    folder = built
    before = {path: path.stat().st_mtime_ns for path in (folder / "site").rglob("*")}
    (folder / "pages" / "words.md").write_text("# A\n\n[b](gone.md)\n", encoding="utf-8")
    assert build(folder).returncode == 1
    assert {path: path.stat().st_mtime_ns for path in (folder / "site").rglob("*")} == before
    assert names(folder) == {"mkdocs.yml", "pages", "recipes", "site"}
