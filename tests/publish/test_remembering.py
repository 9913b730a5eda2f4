"""What the wall remembers of earlier builds: what it passes over, and that this tells nothing."""

from __future__ import annotations

from hashlib import blake2b, sha256
from pathlib import Path

import pytest

from stillroom.core.book import Book, open_book
from stillroom.core.private.seeking import Seeker
from stillroom.publish import remembering, wall
from stillroom.publish.keeping_work import book_folder
from stillroom.publish.remembering import keep, remember
from stillroom.publish.wall import (
    find_private,
    find_private_in_site,
    find_shapes,
    know_private_words,
)

LIST = """giving list: Winter
giving day: 2027-12-18
households:
  - name: Nell Tarrowby
    address: 14 Thrift Lane
    telephone: 01632 960123
"""
PAGES = {"one.md": "Stir the quinces.", "two.md": "Tarrow and thrift.", "three.txt": "No more."}


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Book:
    monkeypatch.setenv("STILLROOM_CACHE", str(tmp_path / "shelf"))
    folder = tmp_path / "book"
    for name in ("pages", "recipes", "site"):
        (folder / name).mkdir(parents=True)
    for name, words in PAGES.items():
        (folder / "pages" / name).write_text(words, encoding="utf-8")
        (folder / "site" / name).write_text(f"<p>{words}</p>", encoding="utf-8")
    (folder / "list.yml").write_text(LIST, encoding="utf-8")
    config = "site_name: A book\ntheme:\n  name: material\n  font: false\n"
    config += "docs_dir: pages\nplugins: [stillroom]\n"
    (folder / "mkdocs.yml").write_text(config, encoding="utf-8")
    return open_book(folder / "mkdocs.yml")


def build(book: Book, monkeypatch: pytest.MonkeyPatch) -> tuple[list[str], int]:
    """Look a book through as a build does; return what was found and how many files were read."""
    read: list[bytes] = []
    real = wall.hold
    monkeypatch.setattr(wall, "hold", lambda data: read.append(data) or real(data))
    seeker = know_private_words(book)
    remember(seeker, book)
    found = [
        *find_private([book.docs_dir, book.recipes_dir], seeker),
        *find_shapes(book.site_dir, seeker),
        *find_private_in_site(book.site_dir, seeker),
    ]
    if not found:
        keep(seeker, book)
    monkeypatch.setattr(wall, "hold", real)
    names = {path.name.encode() for path in book.root.rglob("*")}
    return [problem.what for problem in found], len([one for one in read if one not in names])


def test_what_was_looked_through_is_passed_over(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert build(book, monkeypatch) == ([], 9)
    assert build(book, monkeypatch) == ([], 0)
    (book.docs_dir / "one.md").write_text("Stir them twice.", encoding="utf-8")
    assert build(book, monkeypatch) == ([], 1)


def test_another_word_on_the_list_has_all_names_looked_for_again(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert build(book, monkeypatch)[0] == []
    more = LIST + "  - name: Ottilie Brackwater\n"
    (book.docs_dir / "one.md").write_text("For Ottilie Brackwater.", encoding="utf-8")
    assert build(book, monkeypatch)[0] == []
    (book.root / "list.yml").write_text(more, encoding="utf-8")
    (what, *_), _ = build(book, monkeypatch)
    assert "holds a name" in what


def test_another_version_looks_through_what_it_publishes_and_not_what_the_last_one_made(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert build(book, monkeypatch) == ([], 9)
    monkeypatch.setattr(remembering, "code_sum", lambda: bytes(32))
    read: list[bytes] = []
    real = wall.find_private_shape
    monkeypatch.setattr(
        wall, "find_private_shape", lambda data, texts: read.append(data) or real(data, texts)
    )
    seeker = know_private_words(book)
    remember(seeker, book)
    assert find_shapes(book.site_dir, seeker) == ()
    assert read == []
    assert find_private_in_site(book.site_dir, seeker) == ()
    assert len(read) == 3
    (book.site_dir / "three.txt").write_text(LIST, encoding="utf-8")
    (found,) = find_shapes(book.site_dir, seeker)
    assert found.what == "This file is a private giving list."


@pytest.mark.parametrize("where", ["pages", "site"])
def test_a_file_known_to_be_clean_is_found_by_its_new_name(
    book: Book, monkeypatch: pytest.MonkeyPatch, where: str
) -> None:
    assert build(book, monkeypatch)[0] == []
    folder = book.root / where
    (folder / "one.md").rename(folder / "nell-tarrowby.md")
    (what, *_), _ = build(book, monkeypatch)
    assert "holds a name" in what


def test_a_list_put_into_the_site_is_found_though_its_names_were_looked_for(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    (book.root / "list.yml").unlink()
    assert build(book, monkeypatch)[0] == []
    (book.site_dir / "three.txt").write_text(LIST, encoding="utf-8")
    assert "This file is a private giving list." in build(book, monkeypatch)[0]


@pytest.mark.parametrize("damage", ["cut", "emptied", "other bytes"])
def test_a_damaged_memory_remembers_nothing(
    book: Book, monkeypatch: pytest.MonkeyPatch, damage: str
) -> None:
    build(book, monkeypatch)
    folder = book_folder(book)
    assert folder is not None
    file = folder / "looked-through"
    data = file.read_bytes()
    changed = {"cut": data[:-3], "emptied": b"", "other bytes": data[:-1] + bytes([data[-1] ^ 1])}
    file.write_bytes(changed[damage])
    assert build(book, monkeypatch) == ([], 9)
    assert build(book, monkeypatch) == ([], 0)


def test_what_is_remembered_tells_nothing(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    build(book, monkeypatch)
    folder = book_folder(book)
    assert folder is not None
    data = (folder / "looked-through").read_bytes()
    seeker = know_private_words(book)
    assert ("nell tarrowby", True) in seeker.sought
    for form, _ in seeker.sought:
        for sought in (form.encode(), sha256(form.encode()).digest(), _short(form.encode())):
            assert sought not in data
    for path in (path for path in book.root.rglob("*") if path.is_file()):
        for told in (path.name.encode(), _short(path.read_bytes())):
            assert told not in data
        assert sha256(path.read_bytes()).digest()[:20] not in data
    # the same words, files and program with another salt come to other sums throughout
    first = {data[at : at + 20] for at in range(100, len(data), 20)}
    (folder / "looked-through").unlink()
    build(book, monkeypatch)
    again = (folder / "looked-through").read_bytes()
    assert len(first) == 12
    assert first.isdisjoint(again[at : at + 20] for at in range(100, len(again), 20))


def _short(data: bytes) -> bytes:
    return blake2b(data, digest_size=20).digest()


def test_without_a_list_no_name_is_remembered(book: Book, monkeypatch: pytest.MonkeyPatch) -> None:
    (book.root / "list.yml").unlink()
    assert Seeker(()).sought == ()
    assert build(book, monkeypatch) == ([], 6)
