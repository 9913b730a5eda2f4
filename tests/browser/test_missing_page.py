"""The leaf for what is missing is whole: where the book is published, or at the top of a server."""

from __future__ import annotations

import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

PUBLISHED_AT = "/book/"
"""The path of the demo book's site_url."""
PAPER = "rgb(248, 244, 234)"
"""--paper of tokens.css by day."""


class _Host(http.server.SimpleHTTPRequestHandler):
    """Serves a book below a path and answers what is missing with its 404.html, as hosts do."""

    def __init__(self, *args: Any, below: str, **keys: Any) -> None:
        self.below = below
        super().__init__(*args, **keys)

    def translate_path(self, path: str) -> str:
        below = path.startswith(self.below)
        return super().translate_path("/" + path.removeprefix(self.below) if below else "/nothing")

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        leaf = (Path(self.directory) / "404.html").read_bytes()
        self.send_response(code)
        self.send_header("Content-Type", "text/html")
        self.end_headers()
        self.wfile.write(leaf)

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing: the tests' own output is what is read."""


@pytest.fixture(params=[PUBLISHED_AT, "/"], ids=["published", "at the top"])
def host(request: pytest.FixtureRequest, built_book: Path) -> Iterator[tuple[str, str]]:
    handler = functools.partial(_Host, directory=str(built_book), below=request.param)
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}", request.param
        server.shutdown()


@pytest.mark.parametrize("missing", ["gone/", "r/long-gone/", "r/long/gone/for/ever.html"])
def test_it_is_styled_and_leads_on_at_any_depth(
    page: Page, host: tuple[str, str], missing: str
) -> None:
    address, below = host
    page.goto(f"{address}{below}{missing}", wait_until="networkidle")
    unstyled = page.evaluate(
        "[...document.querySelectorAll('link[rel=stylesheet]')].filter(one => !one.sheet?.cssRules)"
    )
    assert unstyled == []
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == PAPER
    page.get_by_role("link", name="Look through all the recipes").click()
    page.wait_for_url(f"{address}{below}browse/", wait_until="networkidle")


def test_it_searches_the_book(page: Page, host: tuple[str, str]) -> None:
    address, below = host
    page.goto(f"{address}{below}r/long-gone/", wait_until="networkidle")
    page.keyboard.press("/")
    page.keyboard.type("ratafia")
    page.locator(".md-search-result__item a").first.click()
    page.wait_for_url(f"{address}{below}r/quince-ratafia/**", wait_until="networkidle")
