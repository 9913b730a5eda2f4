"""Pictures that nothing shows are not published; what is named anywhere in the book's words is.

Found by a newcomer at the desk, 2026-11-30: a photograph that was taken in and gave way to another
stayed among the pictures, and everybody could fetch it.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from stillroom.beginning.book import Answers, begin_book
from stillroom.core.book import open_book
from stillroom.publish.shown_pictures import find_unshown

SHOWN = (
    # the picture, the file that names it, its words
    ("quince.jpg", "recipes/quince.md", "---\ntitle: Quince\npicture: quince.jpg\n---\n"),
    ("on the shelf.jpg", "pages/about.md", "![Ours](pictures/on%20the%20shelf.jpg)"),
    ("Shelf 2.jpg", "pages/about.md", '<img src="pictures/Shelf 2.jpg" alt="">'),
    ("garden/May.webp", "pages/about.md", "![May](pictures/garden/may.webp)"),
    ("leaf.svg", "pages/stylesheets/own.css", "h1 { background: url(../pictures/leaf.svg) }"),
    ("mark.png", "mkdocs.yml", "# family_mark: mark.png"),
    ("step.jpg", "recipes/quince.md", "1. Turn it ![so](../../pictures/step.jpg)."),
    ("frontispiece.svg", "pages/about.md", ""),
    ("plain.svg", "recipes/plain.md", "---\ntitle: Plain\n---\n"),
    ("previews/plain.png", "recipes/plain.md", "---\ntitle: Plain\n---\n"),
)
UNSHOWN = (
    ("quince-2.jpg", "recipes/quince.md", "---\npicture: quince.jpg\n---\n"),
    ("jam.jpg", "recipes/plum-jam.md", "---\npicture: plum-jam.jpg\n---\n"),
    ("wrong.jpg", "drafts/quince.md", "---\npicture: wrong.jpg\n---\n"),
    ("wrong.jpg", "giving/list.yml", "message: wrong.jpg"),
    ("quince.png", "recipes/quince.md", "---\npicture: quince.jpg\n---\n"),
    ("previews/gone.png", "recipes/quince.md", "---\npicture: quince.jpg\n---\n"),
)


def book_with(folder: Path, picture: str, named_in: str, words: str) -> Path:
    begin_book(folder, Answers(title="Heron Ferry book"))
    for path, said in ((folder / "pages/pictures" / picture, "x"), (folder / named_in, words)):
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("a", encoding="utf-8") as file:
            file.write(said)
    return folder / "mkdocs.yml"


@pytest.mark.parametrize(("picture", "named_in", "words"), SHOWN, ids=[one[0] for one in SHOWN])
def test_what_is_named_is_shown(tmp_path: Path, picture: str, named_in: str, words: str) -> None:
    book = open_book(book_with(tmp_path, picture, named_in, words))
    assert find_unshown(book) == ()


@pytest.mark.parametrize(
    ("picture", "named_in", "words"), UNSHOWN, ids=[f"{one[0]} by {one[1]}" for one in UNSHOWN]
)
def test_what_is_named_nowhere_is_not(
    tmp_path: Path, picture: str, named_in: str, words: str
) -> None:
    book = open_book(book_with(tmp_path, picture, named_in, words))
    assert find_unshown(book) == (book.pictures_dir / picture,)
    assert find_unshown(book, {picture}) == ()
