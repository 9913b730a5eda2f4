"""Every page and what becomes of it in use, for everyone: by axe, by finger, by keyboard, enlarged.

Each page is looked at once, in one of four ways in turn (light or dark, telephone or desk), so that
a new page is looked at too; of the recipes' own pages, which one template makes, each run looks at
a quarter, and at all of them when the whole is asked. The ways in which a page is used are
looked at on a telephone, by day and by night in turn; Firefox sees some of them too.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import axe_playwright_python
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from browser.firefox import Firefox
from sampling import share

from .test_accessibility import RULES, told
from .test_firefox import pages_of

WAYS = [(scheme, width) for width in (320, 1280) for scheme in ("light", "dark")]

# WCAG 2.2 SC 1.4.12, its four values (from memory); a sheet of one's own, as such readers have
SPACED = """() => {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(`* { line-height: 1.5 !important; letter-spacing: 0.12em !important;
    word-spacing: 0.16em !important } p { margin-bottom: 2em !important }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}"""
# what is wider than the screen, or whose words are cut off by its own edge
CUT_OFF = r"""() => [
  ...(document.documentElement.scrollWidth > innerWidth ? ["wider than the screen"] : []),
  ...[...document.querySelectorAll("body *")].filter((one) => {
    // a card on its sheet is paper of one size, set as it will be printed
    if (one.closest(".sheet-page, .card-face")) return false;
    if (!one.checkVisibility() || !one.innerText?.trim() || one.clientWidth <= 2) return false;
    const style = getComputedStyle(one);
    const wide = one.scrollWidth > one.clientWidth + 1;
    const tall = one.scrollHeight > one.clientHeight + 1;
    const cut = (overflow, over) => over && /hidden|clip/.test(overflow);
    return cut(style.overflowX, wide) || cut(style.overflowY, tall);
  }).map((one) => one.outerHTML.slice(0, 120)),
]"""
# WCAG 2.2 SC 2.5.8: 24 by 24 CSS px, links within a sentence excepted; and no stop without a name
STOPS = r"""() => [...document.querySelectorAll(
    "a[href], button, input, select, textarea, summary, [tabindex]")]
  .filter((one) => one.tabIndex >= 0 && one.getClientRects().length
    && one.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }))
  .flatMap((one) => {
    const box = one.getBoundingClientRect();
    const name = one.getAttribute("aria-label") || one.getAttribute("aria-labelledby")
      || one.innerText || one.title || one.labels?.[0]?.textContent
      || one.querySelector("[alt]")?.alt || one.querySelector("title")?.textContent;
    const around = one.parentElement.innerText.trim();
    const sentence = one.tagName === "A" && getComputedStyle(one).display.startsWith("inline")
      && around !== one.innerText.trim() && getComputedStyle(one).display === "inline";
    const small = (box.width < 24 || box.height < 24) && !sentence;
    const said = one.outerHTML.slice(0, 120);
    return [...(name?.trim() ? [] : [`no name: ${said}`]), ...(small ? [`small: ${said}`] : [])];
  })"""


def faults(page: Page) -> list[str]:
    """Return all that is wrong with a page as it stands, spaced out at the end."""
    found = told(Axe().run(page, options=RULES).response["violations"])
    found += page.evaluate(STOPS)
    page.evaluate(SPACED)
    return found + page.evaluate(CUT_OFF)


def looked_at(site: Path) -> list[str]:
    paths = [*pages_of(site), "404.html"]
    recipes = [path for path in paths if path.startswith("r/")]
    return [path for path in paths if path not in recipes] + recipes[:: share(4, 1)]


@pytest.mark.sampled
@pytest.mark.parametrize("turn", range(4))
def test_every_page(browser: Browser, built_book: Path, book_address: str, turn: int) -> None:
    scheme, width = WAYS[turn]
    paths = looked_at(built_book)[turn::4]
    size = {"width": width, "height": 800}
    context = browser.new_context(color_scheme=scheme, viewport=size)  # type: ignore[arg-type]
    page = context.new_page()
    found = {}
    for path in paths:
        page.goto(f"{book_address}/{path}")
        if wrong := faults(page):
            found[path] = wrong
    context.close()
    assert len(paths) >= 3
    assert found == {}


def _open_all(page: Page) -> None:
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")


def _ask_wrongly(page: Page) -> None:
    page.locator("[name=makes]").fill("1,5 of nonsense")
    page.locator("[name=makes]").press("Enter")
    page.locator(".blank-wrong:visible").first.wait_for()


def _fill_card(page: Page) -> None:
    page.locator(".card-form [name=from]").fill("Zebedee Quillfeather")


def _search(page: Page) -> None:
    page.keyboard.press("/")
    page.keyboard.type("quince")
    page.locator(".md-search-result__item").first.wait_for()


RATAFIA = "r/quince-ratafia/"
STATES: dict[str, tuple[str, Callable[[Page], None] | None]] = {
    "another size": (f"{RATAFIA}?makes=3+l&units=us", _open_all),
    "a day to give": (f"{RATAFIA}?give=2027-12-18", None),
    "a day too soon": (f"{RATAFIA}?give=2020-12-18", None),
    "asked wrongly": (RATAFIA, _ask_wrongly),
    "a card with a name": ("r/layered-soup-mix/", _fill_card),
    "searched": ("", _search),
    "sheets to print": ("print-room/?recipe=quince-ratafia&count=8", _open_all),
}


def test_every_state(browser: Browser, book_address: str) -> None:
    size = {"width": 320, "height": 800}
    found = {}
    for number, (name, (path, use)) in enumerate(STATES.items()):
        scheme = ("light", "dark")[number % 2]
        page = browser.new_page(color_scheme=scheme, viewport=size)  # type: ignore[arg-type]
        page.goto(f"{book_address}/{path}")
        page.wait_for_load_state("networkidle")
        if use:
            use(page)
        if wrong := faults(page):
            found[name] = wrong
        page.close()
    assert found == {}


AXE = Path(axe_playwright_python.__file__).with_name("axe.min.js")
RUN = """axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] }).then(
  (found) => found.violations.flatMap(
    (one) => one.nodes.map((node) => `${one.id}: ${node.html.slice(0, 120)}`)))"""


def test_axe_finds_nothing_in_firefox(firefox: Firefox, book_address: str) -> None:
    firefox.resize(320, 800)
    script = AXE.read_text(encoding="utf-8")
    for path in ("", f"{RATAFIA}?makes=3+l", "r/felted-bauble/", "year/", "print-room/"):
        firefox.goto(f"{book_address}/{path}")
        firefox.evaluate(f"(() => {{ {script}; window.axe = axe; return true; }})()")
        assert firefox.evaluate(RUN) == [], path
        firefox.evaluate(f"({SPACED})() ?? true")
        assert firefox.evaluate(f"({CUT_OFF})()") == [], path
