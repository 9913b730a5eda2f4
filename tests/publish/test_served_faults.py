"""A mistake made while the book is served stands on its page, and the page stays as it was."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from publish.test_wall import small_book


def find_free_port() -> int:
    with socket.socket() as tried:
        tried.bind(("127.0.0.1", 0))
        return int(tried.getsockname()[1])


@pytest.fixture
def served(tmp_path: Path) -> Iterator[tuple[Path, str]]:
    with serving(small_book(tmp_path)) as found:
        yield found


@contextmanager
def serving(folder: Path) -> Iterator[tuple[Path, str]]:
    """Serve a book until the block ends."""
    port = find_free_port()
    command = [sys.executable, "-m", "stillroom", "serve", "--address", f"127.0.0.1:{port}"]
    with subprocess.Popen(
        command,
        cwd=folder,
        env={**os.environ, "NO_COLOR": "1"},
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    ) as program:
        try:
            yield folder, f"http://127.0.0.1:{port}/"
        finally:
            program.terminate()


def page_with(address: str, words: str, without: str = "") -> str:
    """Return the page as soon as it says what is waited for."""
    html, end = "", time.monotonic() + 40
    while time.monotonic() < end:
        try:
            with urllib.request.urlopen(address, timeout=10) as answer:
                html = answer.read().decode("utf-8")
        except (urllib.error.URLError, TimeoutError, ConnectionError):
            html = ""
        if words in html and not (without and without in html):
            return html
        time.sleep(0.2)
    raise AssertionError(f"the page never says {words!r}: {html[:600]}")


def test_a_mistake_is_shown_and_goes_when_it_is_mended(served: tuple[Path, str]) -> None:
    folder, address = served
    recipe = folder / "recipes" / "lavender-sugar.md"
    address += "r/lavender-sugar/"
    page_with(address, "Lavender sugar")
    good = recipe.read_text(encoding="utf-8")
    recipe.write_text(good.replace("title: Lavender", "titel: Lavender"), encoding="utf-8")
    page = page_with(address, "1 thing to mend.")
    assert "recipes/lavender-sugar.md:2:" in page
    assert "Did you mean &#34;title&#34;?" in page
    assert 'class="ingredients' in page, "the page itself stays"
    about = folder / "pages" / "about.md"
    recipe.write_text(good, encoding="utf-8")
    about.write_text("# About\n\n<script>alert(1)</script>\n", encoding="utf-8")
    page = page_with(address, "about.md")
    about.write_text("# About\n\nPlain words.\n", encoding="utf-8")
    page_with(address, "Lavender sugar", "to mend.")
    config = folder / "mkdocs.yml"
    settings = config.read_text(encoding="utf-8")
    config.write_text(settings + "docs_dri: pages\nplugins: [nowhere]\n", encoding="utf-8")
    page_with(address, "to mend.")
    config.write_text(settings.replace("- stillroom\n", "\n"), encoding="utf-8")
    page_with(address, "The stillroom plugin is not switched on.")
    config.write_text(settings, encoding="utf-8")
    page_with(address, "Lavender sugar", "to mend.")


def test_a_mistake_that_was_there_when_it_was_first_served_stands_on_the_page(
    tmp_path: Path,
) -> None:
    folder = small_book(tmp_path)
    recipe = folder / "recipes" / "lavender-sugar.md"
    about = folder / "pages" / "about.md"
    good = recipe.read_text(encoding="utf-8")
    recipe.write_text(good.replace("title: Lavender", "titel: Lavender"), encoding="utf-8")
    with serving(folder) as (_, address):
        page = page_with(address, "1 thing to mend.")
        assert "recipes/lavender-sugar.md:2:" in page
        assert "There are no pages yet" in page
        recipe.write_text(good.replace("title:", "teetle:"), encoding="utf-8")
        page_with(address, "teetle")
        recipe.write_text(good, encoding="utf-8")
        page_with(f"{address}r/lavender-sugar/", "Lavender sugar", "to mend.")
    about.write_text("# About\n\n<script>alert(1)</script>\n", encoding="utf-8")
    with serving(folder) as (_, address):
        page = page_with(address, "to mend.")
        assert "about.md" in page
        assert "alert(1)" not in page
        about.write_text("# About\n\nPlain words.\n", encoding="utf-8")
        page_with(f"{address}r/lavender-sugar/", "Lavender sugar", "to mend.")
