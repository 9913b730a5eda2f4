"""A title that would be HTML is words in every page, in its head and in what the search finds."""

from __future__ import annotations

import json

import pytest
from playwright.sync_api import Page

from browser.conftest import serve_folder
from browser.firefox import Firefox
from markup_payloads import PAYLOADS
from publish.test_wall import build, small_book


@pytest.fixture(scope="module")
def planted_address(tmp_path_factory: pytest.TempPathFactory) -> str:
    """Build a book with a page for each payload, which is its title and its description."""
    folder = small_book(tmp_path_factory.mktemp("titles"))
    for number, payload in enumerate(PAYLOADS):
        facts = f"title: {json.dumps(payload)}\ndescription: {json.dumps(payload)}\n"
        text = f"---\n{facts}---\n\nA word before: needlecase {number}.\n\n## Part\n\nneedlecase\n"
        (folder / "pages" / f"page-{number}.md").write_text(text, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 0, built.stderr
    return serve_folder(folder / "site")


def test_no_title_runs_in_a_page_or_in_the_search(fresh_page: Page, planted_address: str) -> None:
    asked: list[str] = []
    fresh_page.on("request", lambda request: asked.append(request.url))
    for number in range(len(PAYLOADS)):
        fresh_page.goto(f"{planted_address}/page-{number}/")
        assert fresh_page.evaluate("window.pwned") is None, PAYLOADS[number]
        assert fresh_page.locator("h1").count() == 1
    fresh_page.keyboard.press("/")
    fresh_page.keyboard.type("needlecase")
    fresh_page.wait_for_selector(".md-search-result__item")
    for _ in range(12):  # the list grows as it is scrolled
        fresh_page.locator(".md-search__scrollwrap").evaluate(
            "el => el.scrollTo(0, el.scrollHeight)"
        )
        fresh_page.wait_for_timeout(50)
    assert fresh_page.locator(".md-search-result__item").count() >= 10
    assert (
        fresh_page.locator(".md-search-result :is(img, script, iframe, svg[onload])").count() == 0
    )
    assert fresh_page.evaluate("window.pwned") is None
    assert [address for address in asked if "evil.example" in address] == []


def test_no_title_runs_in_firefox(firefox: Firefox, planted_address: str) -> None:
    firefox.goto(f"{planted_address}/page-2/")
    firefox.wait_for("document.querySelector('.masthead__search') !== null")
    firefox.press("/", *"needlecase")
    firefox.wait_for("document.querySelector('.md-search-result__item') !== null")
    assert firefox.evaluate("window.pwned === undefined")
    inside = "document.querySelectorAll('.md-search-result :is(img, script, iframe)').length"
    assert firefox.evaluate(inside) == 0


def test_script_written_into_a_page_does_not_run(page: Page, planted_address: str) -> None:
    """The page's own policy holds even where every other door were left open."""
    page.goto(f"{planted_address}/")
    page.evaluate(
        """() => {
        const box = document.createElement("div");
        const frame = "<iframe srcdoc='<script>parent.pwned=1</script>'></iframe>";
        box.innerHTML = `<img src=x onerror=pwned=1>${frame}`;
        document.body.append(box);
        const script = document.createElement("script");
        script.textContent = "pwned=1";
        document.body.append(script);
    }"""
    )
    page.wait_for_timeout(200)
    assert page.evaluate("window.pwned") is None
