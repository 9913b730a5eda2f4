"""In a real browser no page of the book asks anything of another host, search included."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Page, Request

PAGES = (
    "/", "/browse/", "/year/", "/print-room/", "/about/", "/safely/", "/writing/",
    "/r/quince-ratafia/", "/r/quince-chutney/", "/r/felted-bauble/",
)  # fmt: skip


def test_every_request_stays_on_the_host_and_is_answered(
    fresh_page: Page, searched_address: str
) -> None:
    asked: list[str] = []
    unanswered: list[str] = []
    fresh_page.on("request", lambda request: asked.append(request.url))
    fresh_page.on("requestfailed", lambda request: unanswered.append(request.url))

    def note(request: Request) -> None:
        response = request.response()
        if response is None or response.status >= 400:
            unanswered.append(request.url)

    fresh_page.on("requestfinished", note)
    for path in PAGES:
        fresh_page.goto(searched_address + path, wait_until="networkidle")
    fresh_page.goto(f"{searched_address}/browse/")
    fresh_page.keyboard.press("/")
    fresh_page.keyboard.type("quince")
    fresh_page.wait_for_selector(".md-search-result__item")
    hosts = {urlsplit(address).netloc for address in asked if not address.startswith("data:")}
    assert hosts == {urlsplit(searched_address).netloc}
    assert unanswered == []


def test_search_finds_a_recipe_and_leads_to_it(page: Page, searched_address: str) -> None:
    page.goto(searched_address + "/")
    page.keyboard.press("/")
    page.keyboard.type("ratafia")
    page.locator(".md-search-result__item a").first.click()
    page.wait_for_url("**/r/quince-ratafia/**")


def test_the_page_is_whole_without_scripts(built_book: Path, page: Page, book_address: str) -> None:
    assert page.context.browser is not None
    context = page.context.browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(f"{book_address}/r/quince-ratafia/")
    for part in (".ingredients li", ".method li", ".when", ".take-care", ".usage-card", ".share"):
        assert plain.locator(part).first.is_visible(), part
    plain.goto(f"{book_address}/browse/")
    assert plain.locator("li[data-kind]").first.is_visible()
    assert not plain.locator(".sieve").is_visible()
    context.close()
