"""Which of a book's pictures nothing shows: one that gave way to another is published no more.

A picture is shown where a recipe, a page, the settings or the theme's own folder names its file. A
name that stands anywhere in their words counts: what is in doubt stays. Leaves out drafts, which
are not published: core/book.py does not list them.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from pathlib import Path
from typing import Final
from urllib.parse import quote

from stillroom.core.book import Book
from stillroom.core.reading.picture_files import FRONTISPIECE
from stillroom.core.words.patterns import late_regex
from stillroom.looks.photographs import PHOTOGRAPHS

PREVIEWS: Final = "previews"
"""The folder among the pictures that holds those made by hand for who shows a link to a page."""
_SHOWN_ENDINGS: Final = PHOTOGRAPHS | {".svg"}
_WORDY: Final = frozenset({".md", ".html", ".css", ".js", ".yml", ".yaml", ".json", ".txt", ".xml"})
_NAMED: Final = late_regex(r"[^\s\"'`()<>\[\]{}/\\=:,;|]+\.(?:svg|jpe?g|png|webp)\b")


def find_unshown(book: Book, known: Collection[str] = ()) -> tuple[Path, ...]:
    """Return the pictures that nothing shows; `known` are names of which it is known that they are.

    A picture is named by its path below the folder of pictures.
    """
    folder = book.pictures_dir
    named = {one.casefold() for one in known}
    left = [path for path in _pictures(folder) if not _is_among(path, folder, named)]
    if not left:
        return ()
    words = "\n".join(_words(book)).casefold()
    named |= {FRONTISPIECE, *_NAMED.findall(words)}
    named |= {f"{path.stem}.svg".casefold() for path in book.recipe_files()}
    return tuple(
        path
        for path in left
        if not _is_among(path, folder, named) and not _stands_in(path.name.casefold(), words)
    )


def _pictures(folder: Path) -> Iterator[Path]:
    if folder.is_dir():
        for path in sorted(folder.rglob("*")):
            if path.suffix.lower() in _SHOWN_ENDINGS and path.is_file():
                yield path


def _is_among(path: Path, folder: Path, named: Collection[str]) -> bool:
    """Say whether a picture is named, or made by hand for the preview of one that is."""
    below, name = path.relative_to(folder).as_posix().casefold(), path.name.casefold()
    if below in named or name in named:
        return True
    stem = path.stem.casefold()
    is_preview = below.startswith(f"{PREVIEWS}/")
    return is_preview and any(f"{stem}{ending}" in named for ending in _SHOWN_ENDINGS)


def _stands_in(name: str, words: str) -> bool:
    """Say whether a name that no sign of a list parts from its neighbours stands in the words."""
    if _NAMED.fullmatch(name):
        return quote(name) != name and quote(name).casefold() in words
    return name in words or quote(name).casefold() in words


def _words(book: Book) -> Iterator[str]:
    """Yield all that may name a picture: settings, recipes, pages, stylesheets, the theme's own."""
    yield from map(_text, book.root.glob("*.yml"))
    yield from map(_text, book.recipe_files())
    for folder in filter(None, (book.docs_dir, book.theme_dir)):
        for path in folder.rglob("*"):
            if path.suffix.lower() in _WORDY and path.is_file():
                yield _text(path)


def _text(path: Path) -> str:
    return path.read_bytes().decode("utf-8", errors="replace") if path.is_file() else ""
