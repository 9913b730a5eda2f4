"""Where nothing may be written: into what is published, or over what is not ours.

Paper bears names and is printed for one table; the book is read by everybody. What is meant to be
read by everybody is copied into the book's pages by hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from stillroom.core.book import Book
from stillroom.core.words.problems import Problem, ProblemsFound


def find_published(out: Path, book: Book, what: str = "the file") -> Iterator[Problem]:
    """Return a problem when a place lies in a folder that is published, or holds one."""
    there = out.resolve()
    mend = f"Write {what} elsewhere"
    mend += ': "--out private".' if what == "the pack" else ": what lies there is read by all."
    for name, folder in published_folders(book).items():
        inner = folder.resolve()
        if there == inner or inner in there.parents:
            words = f"This lies inside {name} ({folder.name}), which is published."
            yield Problem(str(out), 0, words, mend)
        elif there in inner.parents:
            words = f"This holds {name} ({folder.name}), which is published."
            yield Problem(str(out), 0, words, mend)


def published_folders(book: Book) -> dict[str, Path]:
    """Return every folder of a book whose files are published, by what it is called."""
    folders = {
        "the site": book.site_dir,
        "the book's pages": book.docs_dir,
        "the recipes": book.recipes_dir,
        "the pictures": book.pictures_dir,
    }
    return folders | ({"the theme's own folder": book.theme_dir} if book.theme_dir else {})


def guard_out(out: Path, book: Book) -> None:
    """Raise ProblemsFound unless a command may write a file to `out`."""
    if problems := tuple(find_published(out, book)):
        raise ProblemsFound(problems)


def is_own_print(path: Path) -> bool:
    """Say whether a file is one that `stillroom print` made and nobody has changed since.

    What it makes is always dated 1980-01-01; who writes in such a file dates it anew.
    """
    if not path.is_file():
        return False
    data = path.read_bytes()
    if data.startswith(b"%PDF"):
        made = b"/CreationDate(D:19800101000000Z)" in data
        return made and b"/ModDate(D:19800101000000Z)" in data and b"/Creator(Typst" in data
    # a zip's first entry: its time (10) and date (12), then its name (30)
    return data[10:14] == b"\0\0\x21\0" and data[30:58] == b"mimetypeapplication/epub+zip"


def guard_earlier(out: Path, beginnings: tuple[bytes, ...], called: str) -> None:
    """Raise ProblemsFound when `out` is there and is nothing that such a command wrote."""
    if out.is_dir():
        raise ProblemsFound([Problem(str(out), 0, "This is a folder.", "Name a file.")])
    if not out.is_file():
        return
    with out.open("rb") as file:
        begin = file.read(64).lstrip()
    if begin and not begin.startswith(beginnings):
        what = f"This file is there already and is no {called}."
        raise ProblemsFound([Problem(str(out), 0, what, "Name another.")])
