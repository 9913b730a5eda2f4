"""What goes on for a while at the desk is stopped when told, and leaves what was there before."""

from __future__ import annotations

import socket
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from desk.conftest import OpenDesk, open_on, published, small_book


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def files_in(folder: Path) -> dict[str, bytes]:
    rows = (path for path in folder.rglob("*") if path.is_file())
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in rows}


def test_a_book_that_is_stopped_on_its_way_out_stays_as_it_was(own: OpenDesk) -> None:
    site = own.folder / "site"
    assert "lies in the folder" in published(own, "folder").text
    before = files_in(site)
    (own.folder / "recipes" / "lavender-sugar.md").unlink()
    assert own.ask("/publish", "POST", {"way": "folder"}).status == 303
    for _ in range(100):
        meanwhile = own.ask("/publish/now").text
        if "so far" not in meanwhile:
            break
        assert 'action="/publish/stop"' in meanwhile
        assert own.ask("/publish/stop", "POST").headers["location"] == "/publish/now"
        time.sleep(0.1)
    assert "It was stopped. What was published before stays as it was." in meanwhile
    assert "Nothing was published" not in meanwhile
    assert files_in(site) == before
    # and the next one goes out
    text = published(own, "folder").text
    assert "lies in the folder" in text
    assert "It was stopped" not in text
    assert not (site / "r" / "lavender-sugar").exists()


def test_a_desk_is_opened_again_at_the_same_number(tmp_path: Path) -> None:
    with socket.socket() as bound:
        bound.bind(("127.0.0.1", 0))
        number = bound.getsockname()[1]
    book = small_book(tmp_path / "book")
    for _ in range(2):
        opened, thread = open_on(book, number)
        with socket.create_connection(("127.0.0.1", number)) as held:  # as a browser holds it
            held.sendall(f"GET / HTTP/1.1\r\nHost: {opened.netloc}\r\n\r\n".encode())
            assert held.recv(100_000).startswith(b"HTTP/1.1 ")
            assert opened.ask("/stop", "POST").status == 200
            thread.join(20)
        assert not thread.is_alive()
