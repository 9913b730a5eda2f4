"""Where a pack may be written: never into what is published, never into what git keeps.

Outside any work tree, or in one and not kept by it; and an existing folder is only replaced when
it is an earlier pack.
"""

from __future__ import annotations

import hashlib
import shlex
import shutil
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.saving.places import find_published

INVENTED: Final = frozenset({"79b96ab4977b774fe067deda6ede369260b8b0bd1635904d78e35241de293877"})
"""The sums of lists on which nobody lives, word for word as handed out: git may keep those.

One that is changed is somebody's own. Line ends are not counted: git may change them.
"""


def usual_folder(book: Book) -> Path:
    """Return where a book's pack goes: private/, or private/pack where notes of one's own lie."""
    private = book.root / "private"
    return private / "pack" if _holds_another(private) else private


def _holds_another(folder: Path) -> bool:
    """Whether a folder holds something other than a pack."""
    return folder.is_dir() and any(folder.iterdir()) and not (folder / PACK_MARKER).is_file()


def guard_folder(out: Path, book: Book) -> None:
    """Raise ProblemsFound unless a pack may be written to `out`.

    A pack brings a `.gitignore` of its own, so git need not be told of a new one.
    """
    if problems := tuple(_problems(out.resolve(), book)):
        raise ProblemsFound(problems)


def guard_file(out: Path, book: Book) -> None:
    """Raise ProblemsFound unless a private file may be written to `out`."""
    problems = [*find_published(out, book), *_kept_by_git(out.resolve())]
    if problems:
        raise ProblemsFound(problems)


def _problems(out: Path, book: Book) -> Iterator[Problem]:
    yield from find_published(out, book, "the pack")
    yield from _kept_by_git(out, ignores_itself=True)
    if out.is_file():
        yield Problem(str(out), 0, "This is a file.", "Name a folder for the pack.")
    elif _holds_another(out):
        mend = "Name a new folder: only an earlier pack is replaced."
        yield Problem(str(out), 0, "This folder holds something other than a pack.", mend)


def warn_of_git(path: Path) -> Iterator[Problem]:
    """Return a warning when git keeps a private file: whoever has the copies has the names.

    The file's name is told as it was given, so that what is to be written works from here.
    """
    home = next((above for above in path.resolve().parents if (above / ".git").exists()), None)
    if home and _sum_of(path) in INVENTED:
        return
    if home and shutil.which("git") and _git(home, "ls-files", "--", str(path.resolve())).stdout:
        what = "Git keeps this list, and with it every name on it."
        write = f"git rm --cached {shlex.quote(str(path))}"
        yield Problem(str(path), 1, what, f'Write "{write}", and name it in .gitignore.')


def _sum_of(path: Path) -> str:
    """Return the sum of a file's words; "" where there is none, as of a log not begun."""
    if not path.is_file():
        return ""
    return hashlib.sha256(path.read_bytes().replace(b"\r\n", b"\n")).hexdigest()


def _kept_by_git(out: Path, *, ignores_itself: bool = False) -> Iterator[Problem]:
    home = next((above for above in out.parents if (above / ".git").exists()), None)
    if home is None:
        return
    if shutil.which("git") is None:
        what = "This lies in a git work tree, and git is not there to say whether it is ignored."
        yield Problem(str(out), 0, what, "Write the pack outside of it.")
        return
    tracked = _git(home, "ls-files", "--", str(out)).stdout.strip()
    ignored = any(
        _git(home, "check-ignore", "-q", "--", name).returncode == 0
        for name in (str(out), f"{out}/")
    )
    if tracked:
        yield Problem(str(out), 0, "Git keeps files of this.", "Write the pack elsewhere.")
    elif not ignored and not ignores_itself:
        name = out.relative_to(home).as_posix()
        yield Problem(
            str(out),
            1,
            "Git does not ignore this.",
            f'Add "{name}" to .gitignore, or write elsewhere.',
        )


def _git(home: Path, *words: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["git", "-C", str(home), *words],
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
