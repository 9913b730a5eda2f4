"""Where a book's giving lists and their logs lie: they are known by what is in them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.private.hidden_forms import read_plain
from stillroom.core.private.shapes import PACK_MARKER, find_written_list
from stillroom.core.words.text_files import LARGEST
from stillroom.giving.log_file import LOG_FILE

GIVING_FOLDER: Final = "giving"
"""Where a book that is begun has its lists."""
_NOT_LISTS: Final = ("mkdocs.yml", LOG_FILE)


def giving_lists(book: Book) -> list[Path]:
    """Return the giving lists in a book's folder, two folders deep at most."""
    return [path for path in _files(book) if path.name not in _NOT_LISTS and is_list(path)]


def no_lists(book: Book) -> list[Path]:
    """Return what lies in a folder for giving lists and is not read as one."""
    lying = (path for path in _files(book) if path.parent.name == GIVING_FOLDER)
    return [path for path in lying if path.name not in _NOT_LISTS and not is_list(path)]


def giving_logs(book: Book) -> list[Path]:
    """Return the logs beside a book's giving lists."""
    folders = dict.fromkeys(path.parent for path in giving_lists(book))
    return [folder / LOG_FILE for folder in folders if (folder / LOG_FILE).is_file()]


def _files(book: Book) -> Iterator[Path]:
    for pattern in ("*.y*ml", "*/*.y*ml", "*/*/*.y*ml"):
        for path in sorted(book.root.glob(pattern)):
            above = [folder for folder in path.relative_to(book.root).parents if folder.name]
            apart = path.is_relative_to(book.site_dir) or any(
                folder.name.startswith(".") or (book.root / folder / PACK_MARKER).is_file()
                for folder in above
            )
            # a pipe has no end, and a link may lead nowhere
            if (
                not apart
                and path.is_file()
                and (path.stat().st_size <= LARGEST or path.parent.name == GIVING_FOLDER)
            ):
                yield path


def is_list(path: Path) -> bool:
    """Say whether a file is a giving list by what is in it, in whichever encoding it was saved.

    One that is too long to be read is a list all the same: whoever reads it tells so.
    """
    with path.open("rb") as file:
        return bool(find_written_list(read_plain(file.read(LARGEST))))
