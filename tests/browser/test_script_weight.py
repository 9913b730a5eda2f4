"""How much of our own script a page asks for as it opens, measured in Chromium.

Kilobytes of a thousand bytes, each script compressed by itself with gzip as a server would send it.
"""

from __future__ import annotations

import gzip
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Page, Response

from stillroom.publish.scripts import scripts_of_page

OWN = "/assets/stillroom/"
HEAVIEST, OTHERS = 30_000, 12_000
PAGES = {
    "/": OTHERS,
    "/browse/": OTHERS,
    "/year/": OTHERS,
    "/print-room/": OTHERS,
    "/writing/": OTHERS,
    "/send/": OTHERS,
    "/404.html": OTHERS,
    "/r/quince-ratafia/": HEAVIEST,
    "/r/felted-bauble/": HEAVIEST,
}


SEEN: dict[str, dict[str, int]] = {}


def scripts_at_view(page: Page, address: str) -> dict[str, int]:
    """Return the scripts of ours that were fetched when a page has come to rest, compressed.

    Opened as by somebody who was never here: nothing is taken from what an earlier page kept.
    """
    if address in SEEN:
        return SEEN[address]
    found: dict[str, int] = {}

    def note(answer: Response) -> None:
        path = urlsplit(answer.url).path
        if path.startswith(OWN) and path.endswith(".js"):
            found[path.removeprefix(OWN)] = len(gzip.compress(answer.body(), 9))

    tools = page.context.new_cdp_session(page)
    tools.send("Network.enable")
    tools.send("Network.setCacheDisabled", {"cacheDisabled": True})
    page.on("response", note)
    page.goto(address, wait_until="networkidle")
    page.remove_listener("response", note)
    tools.send("Network.setCacheDisabled", {"cacheDisabled": False})
    tools.detach()
    return SEEN.setdefault(address, found)


@pytest.mark.parametrize(("path", "most"), PAGES.items(), ids=list(PAGES))
def test_a_page_asks_for_little_script(page: Page, book_address: str, path: str, most: int) -> None:
    asked = scripts_at_view(page, book_address + path)
    assert len(asked) >= 3, "what was measured must have been there"
    assert sum(asked.values()) <= most, sorted(asked.items(), key=lambda one: -one[1])


@pytest.mark.parametrize("path", ["/browse/", "/year/", "/print-room/", "/r/quince-ratafia/"])
def test_what_is_fetched_ahead_is_what_the_page_asks_for(
    page: Page, book_address: str, built_book: Path, path: str
) -> None:
    asked = scripts_at_view(page, book_address + path)
    html = (built_book / path.strip("/") / "index.html").read_text(encoding="utf-8")
    ahead = [name for name in scripts_of_page(html) if 'modulepreload" href="' in html]
    assert set(ahead) == {name for name in asked if not name.startswith("js/theme/")}
    for name in ahead:
        assert f'{OWN.strip("/")}/{name}">' in html, name


def test_every_published_script_says_what_it_said(built_book: Path) -> None:
    """Stripping comments and blanks must leave each script the same, word for word."""
    from said_twice import words_of_script
    from stillroom.publish.scripts import SCRIPTS

    published = built_book / OWN.strip("/") / "js"
    for path in SCRIPTS.rglob("*.js"):
        stripped = (published / path.relative_to(SCRIPTS)).read_bytes()
        assert words_of_script(stripped) == words_of_script(path.read_bytes()), path.name


def test_the_most_a_reader_can_come_to(page: Page, book_address: str) -> None:
    """A link that asks for a size and a day: everything but printing. Told, not only at view."""
    address = f"{book_address}/r/quince-ratafia/?times=2&give=2098-12-20"
    asked = scripts_at_view(page, address)
    assert {"js/elements/scale-form.js", "js/elements/dates-shown.js"} <= set(asked)
    assert sum(asked.values()) <= 55_100  # 55,045 with what is there done for two lines of one name
