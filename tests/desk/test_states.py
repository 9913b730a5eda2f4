"""Every page of the desk in each of its states: axe finds nothing, and nothing is wider than seen.

At a telephone's width by day, and at 200 % of a window of 1280 points by night; the other way
about too when the whole is asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page

from browser.looking import Looker
from desk.conftest import OpenDesk, open_on, small_book
from desk.test_giving_told import TEXT
from sampling import share

SAVED = b"""<html><body><nav><a href="/">Home</a> <a href="/a">About</a></nav><main>
<h1>Plum butter of a very long name that goes over the edge of a telephone</h1>
<p>For the baskets.</p><ul><li>1 kg plums</li>
<li>a-word-that-is-much-too-long-for-any-line-of-a-narrow-page-and-has-no-gap</li></ul>
<ol><li>Boil the plums with the sugar until it is thick, stirring all the while.</li>
<li>Pot it while it is hot, and shut the jars at once. Keep them cool and dark.</li></ol></main>
<div class="comments">https://orchard.example/a-very-long-address-without-a-gap-that-is-left</div>
</body></html>"""
LIST = "/giving/list?name=giving/winter.yml"


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    folder = small_book(tmp_path / "book")
    (folder / "giving" / "winter.yml").write_text(TEXT, encoding="utf-8")
    opened, thread = open_on(folder)
    yield opened
    thread.join(20)
    assert not thread.is_alive(), "it was closed by its button"


def states(page: Page, desk: OpenDesk) -> Iterator[str]:
    """Go through the desk as somebody who makes every mistake, and name where one stands."""

    def at(way: str) -> None:
        page.goto(desk.origin + way)

    def press(selector: str) -> None:
        with page.expect_navigation(timeout=180_000):
            page.click(selector)

    at("/")
    yield "recipes"
    for _ in range(900):  # the book is opened for the first time: other work may hold it up
        if "still to be" not in page.inner_text("main"):
            break
        page.wait_for_timeout(100)
    assert page.locator(".spine").count() == 4
    at("/write/new")
    yield "nothing written"
    page.fill("#title", "Plum jam")
    page.fill("#ingredients", "1,5 kg plums\n3 blurgs of nothing known\n1 lemon and 1 lime")
    page.fill("#method", "Boil it.")
    page.wait_for_selector("#read-ingredients .read--asked")
    for more in page.locator("details.more").all():
        more.evaluate("(one) => { one.open = true; }")
    yield "asked at lines"
    press('.write__bar button[value="draft"]')
    yield "kept as a draft"
    page.fill("#title", "Plum jam, better")
    page.wait_for_timeout(600)
    page.reload()
    yield "typed and not kept"
    press('.write__bar button[value="draft"]')
    at(f"{page.url.removeprefix(desk.origin).partition('?')[0]}/earlier")
    press(".versions a")
    yield "versions side by side"
    at("/write/lavender-sugar")
    path = desk.folder / "recipes" / "lavender-sugar.md"
    path.write_text(path.read_text("utf-8").replace("title:", "title: My", 1), encoding="utf-8")
    page.fill("#title", "Mine")
    press('.write__bar button[value="book"]')
    yield "changed elsewhere"
    at("/bring")
    page.fill("#pasted", "Toffee\n\n200 sugar\n1 cup cream\n\nBoil it.\nPour it out.")
    press("main button.action--first")
    yield "brought in"
    press("section a")
    yield "asked when brought in"
    at("/bring")
    page.fill("#pasted", "Toffee\n\n200 sugar\n1 cup cream\n\nBoil it.\nPour it out.")
    press("main button.action--first")
    yield "here already"
    at("/bring")
    page.set_input_files("#file", {"name": "a.html", "mimeType": "text/html", "buffer": SAVED})
    press("main button.action--first")
    press("section a")
    for more in page.locator("#came details").all():
        more.evaluate("(one) => { one.open = true; }")
    assert page.locator(".came__around li").count() == 2
    yield "a web page line by line"
    at("/bring")
    press("main button.action--first")
    yield "nothing to bring"
    at("/book")
    with page.expect_response("**/typed"):
        page.fill("#site_name", "Another name")
    page.reload()
    page.wait_for_selector("[data-typed-said]:not([hidden])")
    yield "a book's words typed before"
    page.fill("#altitude_m", "nonsense")
    page.fill("#larder", "what is this")
    press("main button.action--first")
    yield "a book's mistakes"
    at("/paper")
    yield "print"
    at("/publish")
    yield "what is public"
    at("/giving")
    yield "giving lists"
    at(LIST)
    page.evaluate("document.getElementById('households|0|adults').value = 'many'")
    page.evaluate("document.getElementById('households|1|avoid').value = 'nutts'")
    press('form[action="/giving/list"] button.action--first')
    yield "a list's mistakes"
    at("/giving/earlier?name=giving/winter.yml")
    yield "no versions of a list"
    at("/write/no-such-recipe-at-all")
    yield "not here"
    with page.expect_navigation():
        page.goto(desk.origin + "/")
    press(".head__close button")
    yield "closed"


PHONE, LARGE = (390, 1), (640, 2)
WAYS = (
    ((*PHONE, "light"), (*LARGE, "dark")),
    ((*LARGE, "light"), (*PHONE, "dark")),
)
"""The desk is gone through in the first way of each; where one stands is seen in both."""


@pytest.mark.sampled
@pytest.mark.parametrize("ways", WAYS[: share(1, 2)])
def test_every_state_is_sound(
    browser: Browser, own: OpenDesk, ways: Sequence[tuple[int, int, str]]
) -> None:
    context = browser.new_context()
    page = context.new_page()
    tools = context.new_cdp_session(page)

    def see(width: int, scale: int, scheme: Literal["light", "dark"]) -> None:
        page.emulate_media(color_scheme=scheme)
        size = {"width": width, "height": 800, "deviceScaleFactor": scale, "mobile": False}
        tools.send("Emulation.setDeviceMetricsOverride", size)

    see(*ways[0])
    page.goto(own.first)
    found = {}
    seen = []
    for name in states(page, own):
        seen.append(name)
        for way in (*ways[1:], ways[0]):
            see(*way)
            assert page.evaluate("[innerWidth, devicePixelRatio]") == [*way[:2]]
            wrong = Looker(page.goto, page.evaluate).told_by_axe()
            wide = page.evaluate("document.documentElement.scrollWidth")
            if wrong or wide > way[0]:
                found[name, way] = [*wrong, f"{wide} px wide"]
    context.close()
    assert found == {}
    assert len(seen) == 21
