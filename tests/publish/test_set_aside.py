"""What is laid on the disk until it is asked for comes back as it was, or never left."""

from __future__ import annotations

import tempfile
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from stillroom.core.book import open_book
from stillroom.publish import leaves
from stillroom.publish.leaves import open_library
from stillroom.publish.library import Library
from stillroom.publish.set_aside import LEAST, Aside, Laid, take
from stillroom.publish.working import WorkedLeaf

ROOT = Path(__file__).resolve().parents[2]
LONG, SHORT = b"quince" * LEAST, b"quince"


def test_what_is_laid_aside_is_read_in_any_order_and_more_than_once() -> None:
    aside = Aside()
    texts = [bytes([number]) * (LEAST + number) for number in range(50)]
    laid = [aside.lay(text) for text in texts]
    assert all(isinstance(one, Laid) for one in laid)
    assert [take(one) for one in reversed(laid)] == texts[::-1]
    assert take(aside.lay(LONG)) == LONG
    assert [take(one) for one in laid] == texts


def test_what_is_small_or_laid_already_is_not_laid() -> None:
    aside = Aside()
    laid = aside.lay(LONG)
    assert aside.lay(SHORT) is SHORT
    assert aside.lay(b"") == b""
    assert aside.lay(laid) is laid


def test_where_no_file_can_be_made_it_stays_at_hand(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(**_: Any) -> None:
        raise OSError("no room")

    monkeypatch.setattr(tempfile, "TemporaryFile", refuse)
    assert Aside().lay(LONG) is LONG


@pytest.mark.parametrize("writes", [OSError("no room"), 3])
def test_what_a_full_disk_does_not_take_stays_at_hand(
    monkeypatch: pytest.MonkeyPatch, writes: OSError | int
) -> None:
    aside = Aside()
    first = aside.lay(LONG)
    file = aside._file
    assert file is not None

    class Full:
        def seek(self, place: int) -> int:
            return file.seek(place)

        def read(self, size: int) -> bytes:
            return file.read(size)

        def write(self, data: bytes) -> int:
            if isinstance(writes, OSError):
                raise writes
            return file.write(data[:writes])

    monkeypatch.setattr(aside, "_file", Full())
    assert aside.lay(LONG * 2) == LONG * 2
    monkeypatch.setattr(aside, "_file", file)
    last = aside.lay(LONG * 3)
    assert isinstance(last, Laid)
    assert [take(first), take(last)] == [LONG, LONG * 3]


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("STILLROOM_CACHE", str(tmp_path / "kept"))
    for name in ("almond-shortbread", "bramble-jelly", "lavender-sugar", "quince-ratafia"):
        (tmp_path / "recipes").mkdir(exist_ok=True)
        text = (ROOT / "recipes" / f"{name}.md").read_text(encoding="utf-8")
        lines = (line for line in text.splitlines() if not line.startswith("picture"))
        (tmp_path / "recipes" / f"{name}.md").write_text("\n".join(lines), encoding="utf-8")
    (tmp_path / "pages").mkdir()
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: Short\ndocs_dir: pages\nplugins: [stillroom]\n"
        "theme: {name: material, font: false}\n",
        encoding="utf-8",
    )
    return tmp_path / "mkdocs.yml"


def pages_of(library: Library) -> list[tuple[object, ...]]:
    """Return each recipe's page, and all that other pages show of it."""
    assert library.worked

    def link(uri: str) -> str:
        return f"../../{uri}"

    return [
        (
            WorkedLeaf(one).body(library, "", link, ""),
            one.in_whole(link),
            one.found_words(),
            take(one.calendar),
            take(one.card_file),
        )
        for one in library.worked.values()
    ]


def test_a_long_books_work_is_laid_aside_and_says_the_same(
    book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    today = date(2026, 11, 30)
    opened = open_book(book)
    short = open_library(opened, today)
    assert all(isinstance(one.body, bytes) for one in short.worked.values())
    monkeypatch.setattr(leaves, "MOST_ON_PAGE", 3)
    for long in (open_library(opened, today), open_library(opened, today)):
        assert all(isinstance(one.body, Laid) for one in long.worked.values())
        assert pages_of(long) == pages_of(short)
    served = open_library(opened, today, {})  # whoever serves a book builds it again
    assert all(isinstance(one.body, bytes) for one in served.worked.values())
