"""The desk in a real Chromium and a real Firefox: by keyboard, on a telephone's width, from a disk.

With STILLROOM_STILLS set to a folder, what is seen on the way to a first page is kept there.
"""

from __future__ import annotations

import os
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from playwright.sync_api import Browser, Page, Route

from browser.conftest import wait_until
from browser.firefox import Firefox
from browser.looking import Looker
from desk.conftest import OpenDesk, open_on
from desk.test_rooms import boxes_of
from sampling import share
from stillroom.publish.stick import make_stick

LOOKED = "Number(document.documentElement.dataset.looked || 0) > {}"


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(tmp_path / "book")
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def still(page: Page, name: str) -> None:
    if folder := os.environ.get("STILLROOM_STILLS"):
        page.screenshot(path=Path(folder) / f"{name}.png")


def tab_to(page: Page, selector: str) -> None:
    """Go with the tabulator alone to what is meant; the focus must be seen on the way."""
    for _ in range(120):
        page.keyboard.press("Tab")
        if page.evaluate("(one) => document.activeElement.matches(one)", selector):
            return
    pytest.fail(f"the keyboard never reaches {selector}")


def typed(page: Page, selector: str, words: str) -> None:
    tab_to(page, selector)
    page.keyboard.type(words)


def framed(page: Page) -> str:
    words = page.frame_locator("#page").locator("article.leaf").inner_text()
    return words.replace("\N{NO-BREAK SPACE}", " ")


def test_from_an_empty_folder_to_a_published_page_by_keyboard(page: Page, empty: OpenDesk) -> None:
    page.goto(empty.first)
    still(page, "01-four-questions")
    typed(page, "#title", "The Heron Ferry book")
    typed(page, "#keeper", "Ann and Ola")
    still(page, "02-answered")
    tab_to(page, "main button")
    page.keyboard.press("Enter")
    page.wait_for_selector(".spines")
    still(page, "03-the-recipes")
    tab_to(page, "a[href='/write/new']")
    page.keyboard.press("Enter")
    page.wait_for_selector("#title")
    typed(page, "#title", "Plum and ginger chutney")
    typed(page, "#makes", "6 jars of 200 ml")
    typed(page, "#ingredients", "1 kg plums, stoned\n1,5 kg cooking apples\n400 ml cider vinegar, ")
    page.keyboard.type("5% acidity\n300 g light muscovado sugar\n1½ tsp ground ginger")
    page.wait_for_selector("#read-ingredients .read:has-text('ground ginger')")
    page.wait_for_selector("#read-ingredients .read--asked button")
    still(page, "04-a-line-is-asked")
    tab_to(page, "#read-ingredients .read--asked button")
    page.keyboard.press("Enter")
    page.wait_for_selector("#read-ingredients .read--asked", state="detached")
    assert "1.5 kg cooking apples" in page.input_value("#ingredients")
    typed(page, "#method", "Simmer the plums and cooking apples in the cider vinegar until soft.\n")
    page.keyboard.type(
        "Stir in the sugar and ground ginger and boil until thick.\nFill the hot jars."
    )
    page.wait_for_selector("#read-method .read:has-text('Fill the hot jars')")
    tab_to(page, "#read-method button")
    page.keyboard.press("Enter")
    page.wait_for_function("document.getElementById('method').value.includes('‹')")
    still(page, "05-an-amount-in-its-place")
    typed(page, "#keeps_unopened", "1 year")
    typed(page, "#keeps_source", "maker's own practice")
    typed(page, "#card_use", "With cheese.")
    wait_until(page, "document.getElementById('page').contentDocument.querySelector('h1') !== null")
    page.wait_for_timeout(1500)
    assert "Plum and ginger chutney" in framed(page)
    still(page, "06-the-page-beside-it")
    page.keyboard.press("Control+s")
    page.wait_for_selector(".said")
    assert "Kept, and in the book." in page.inner_text(".said")
    still(page, "07-kept")
    page.goto(f"{empty.origin}/publish")
    still(page, "08-what-is-public")
    tab_to(page, "main button")
    page.keyboard.press("Enter")
    page.wait_for_selector("text=lies in the folder", timeout=120_000)
    still(page, "09-published")
    made = empty.folder / "site" / "r" / "plum-and-ginger-chutney" / "index.html"
    assert "Ann and Ola" in made.read_text(encoding="utf-8")
    page.goto(made.as_uri())
    still(page, "10-her-page")


def test_the_page_follows_and_asks_nobody_else(page: Page, desk: OpenDesk) -> None:
    hosts = set()
    page.on("request", lambda request: hosts.add(urlsplit(request.url).netloc))
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/quince-chutney")
    wait_until(page, "document.getElementById('page').contentDocument.querySelector('h1') !== null")
    page.fill("#title", "Another chutney")
    wait_until(page, LOOKED.format(0))
    page.fill("#card_use", "On a picnic.")
    wait_until(page, LOOKED.format(1))
    assert "Another chutney" in framed(page)
    assert "On a picnic." in framed(page)
    elements = "document.getElementById('page').contentWindow.customElements.get('stillroom-scale')"
    assert page.evaluate(f"Boolean({elements})")
    page.fill("#makes", "")
    wait_until(page, LOOKED.format(2))
    assert "How much does it make?" in page.inner_text("#wrong-makes")
    assert page.get_attribute("#makes", "aria-invalid") == "true"
    assert "Another chutney" in framed(page), "the last page that was right stays"
    assert hosts == {desk.netloc}
    # closed without keeping: it stands there again
    page.goto("about:blank")
    page.goto(f"{desk.origin}/write/quince-chutney")
    assert page.input_value("#card_use") == "On a picnic."
    desk.ask("/write/quince-chutney/let-go", "POST")


def test_an_answer_takes_no_word_that_was_typed_since_it_was_asked(
    page: Page, desk: OpenDesk
) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/new")
    page.fill("#ingredients", "1 kg plums\n1,5 kg cooking app")
    asked = "#read-ingredients .read--asked button"
    page.wait_for_selector(asked)
    # typed on, and pressed before the desk has read it
    stale = """() => {
      document.getElementById("ingredients").value += "les, peeled";
      document.querySelector("#read-ingredients .read--asked button").click();
    }"""
    page.evaluate(stale)
    assert page.input_value("#ingredients") == "1 kg plums\n1,5 kg cooking apples, peeled"
    page.wait_for_selector("#read-ingredients .read--asked:has-text('apples, peeled')")
    page.click(asked)
    assert page.input_value("#ingredients") == "1 kg plums\n1.5 kg cooking apples, peeled"
    desk.ask("/write/new-recipe/let-go", "POST")


def test_a_line_of_the_method_is_answered_with_a_press(page: Page, desk: OpenDesk) -> None:
    draft = desk.folder / "drafts" / "plum-jam.md"
    draft.parent.mkdir(exist_ok=True)
    odd = ("Orchard fair", "Photograph by Ann", "Filed under", "Printed by Ola")
    steps = "\n".join(f"{at}. {one}" for at, one in enumerate(("Boil the plums.", *odd), 1))
    named = " · ".join(f'"{one}"' for one in odd)
    draft.write_text(
        f"---\ntitle: Plum jam\n# ? Is this part of the method? {named}. Look.\nkind: jam\n"
        f"makes: 4 jars of 200 ml\ningredients:\n  - 1 kg plums\n---\n\n## Method\n\n{steps}\n\n"
        "## Source\n\nNan\n",
        encoding="utf-8",
    )
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/plum-jam")
    line = "#read-method li:has-text('{}') button:has-text('{}')"
    answers = ("a step", "a note", "to be left out", "a note")
    for one, words in zip(odd, answers, strict=True):
        page.click(line.format(one, words))
        page.wait_for_selector(line.format(one, words), state="detached")
    kept = page.input_value("#method").split("\n")
    assert [row.split(". ")[-1] for row in kept] == ["Boil the plums.", odd[0]]
    noted = f"Notes:\n\n{odd[1]}\n\n{odd[3]}\n\nSource:"
    assert page.input_value("#after").startswith(noted)
    assert page.locator("#read-method button:has-text('a note')").count() == 0
    page.goto(f"{desk.origin}/write/plum-jam")
    assert page.locator("#read-method button:has-text('a note')").count() == 0, "nor anew"
    desk.ask("/write/plum-jam/let-go", "POST")
    draft.unlink()


def test_of_the_page_only_what_changes_is_put_there_anew(page: Page, desk: OpenDesk) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/quince-chutney")
    within = "document.getElementById('page').contentDocument.querySelector('stillroom-{}')"
    wait_until(page, f"{within.format('scale')} !== null")

    def typed_into(box: str, words: str) -> tuple[bool, bool]:
        """Return whether size and card are those that stood there before."""
        looked = int(page.evaluate("Number(document.documentElement.dataset.looked || 0)"))
        for one in ("scale", "card"):
            page.evaluate(f"() => {{ {within.format(one)}.before = true; }}")
        page.fill(box, words)
        wait_until(page, LOOKED.format(looked))
        still = [
            page.evaluate(f"{within.format(one)}.before === true") for one in ("scale", "card")
        ]
        return still[0], still[1]

    typed_into("#card_use", "With cold ham.")
    assert typed_into("#card_use", "With a hard cheese.") == (True, False)
    assert typed_into("#keeps_source", "maker's own practice, long") == (True, True)
    size, _ = typed_into("#makes", "8 jars of 200 ml")
    assert not size, "what reckons from the recipe's figures has the new ones"
    leaf = "document.getElementById('page').contentDocument.querySelector('article')"
    there = page.evaluate(f"{leaf}.innerText")
    assert "With a hard cheese." in there.replace("\N{NO-BREAK SPACE}", " ")
    page.evaluate(f"() => {{ {leaf}.wasThere = true; }}")  # the page that goes stays for a moment
    page.evaluate("document.getElementById('page').contentWindow.location.reload()")
    anew = f"{leaf} && !{leaf}.wasThere && {within.format('scale')}"
    wait_until(page, f"{anew} && {leaf}.innerText.length === {len(there)}")
    assert page.evaluate(f"{leaf}.innerText") == there, "as a page that was loaded whole"
    desk.ask("/write/quince-chutney/let-go", "POST")


WAYS = (
    "/", "/write/double-vanilla-extract", "/write/new-recipe", "/book", "/paper", "/publish",
    "/giving", "/write/lavender-sugar/earlier",
)  # fmt: skip


SEEN = ((1280, "dark"), (320, "dark"), (640, "light"))  # others: test_states_in_both.py


@pytest.mark.sampled
@pytest.mark.parametrize(("width", "scheme"), SEEN[: share(1, 3)])
def test_axe_finds_nothing_and_nothing_is_wider(
    browser: Browser, desk: OpenDesk, width: int, scheme: str
) -> None:
    context = browser.new_context(
        color_scheme=scheme,  # type: ignore[arg-type]
        viewport={"width": width, "height": 800},
    )
    page = context.new_page()
    page.goto(desk.first)
    found = {}
    for way in WAYS:
        page.goto(desk.origin + way)
        wrong = Looker(page.goto, page.evaluate).told_by_axe()
        wide = page.evaluate("document.documentElement.scrollWidth")
        if wrong or wide > width:
            found[way] = [*wrong, f"{wide} px wide"]
    context.close()
    assert found == {}


def test_without_scripts_an_answer_is_pressed_too(browser: Browser, desk: OpenDesk) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/new-recipe-77")
    page.fill("#title", "Apple butter")
    page.fill("#ingredients", "1,5 kg apples")
    page.press("#title", "Enter")
    page.click("#read-ingredients button")
    assert page.input_value("#ingredients") == "1.5 kg apples"
    context.close()
    desk.ask("/write/apple-butter/out", "POST", boxes_of(desk, "/write/apple-butter"))


def test_a_picture_that_is_chosen_and_not_taken_in_is_told(page: Page, desk: OpenDesk) -> None:
    page.goto(desk.first)
    page.goto(f"{desk.origin}/write/lavender-sugar")
    page.evaluate("document.querySelector('#picture_file').closest('details').open = true")
    chosen = {"name": "plums.png", "mimeType": "image/png", "buffer": b"no picture"}
    page.set_input_files("#picture_file", chosen)
    page.click('button[value="book"]')
    told = page.locator("#wrong-picture_file [role=alert]")
    assert "“plums.png” is chosen and not taken in yet" in told.inner_text()
    assert page.evaluate("document.activeElement.textContent") == "Take it in"
    assert page.url.endswith("/write/lavender-sugar"), "nothing was sent"
    with page.expect_navigation():
        page.click('button[value="book"]')


def test_firefox_writes_and_sees_the_page(firefox: Firefox, desk: OpenDesk) -> None:
    firefox.goto(desk.first)
    firefox.goto(f"{desk.origin}/write/lavender-sugar")
    leaf = "document.getElementById('page').contentDocument.querySelector('article')"
    firefox.wait_for(f"{leaf} && {leaf}.innerText.includes('Lavender')")
    firefox.evaluate(
        "(() => { const box = document.getElementById('title'); box.value = 'Violet sugar';"
        " box.dispatchEvent(new Event('input', { bubbles: true })); return true; })()"
    )
    firefox.wait_for(f"{leaf}.innerText.includes('Violet sugar')")
    assert firefox.evaluate("document.documentElement.scrollWidth <= innerWidth")
    desk.ask("/write/lavender-sugar/let-go", "POST")


@pytest.fixture(scope="module")
def stick(built_book: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("stick") / "book"
    shutil.copytree(built_book, folder)
    make_stick(folder)
    return folder


def test_publishing_says_how_far_it_is_and_hands_the_zip_over(
    browser: Browser, desk: OpenDesk
) -> None:
    """With the script and without; at the width of a telephone, and nothing is wider."""
    for has_script in (True, False):
        context = browser.new_context(
            java_script_enabled=has_script, viewport={"width": 390, "height": 800}
        )
        page = context.new_page()
        page.goto(desk.first)
        page.goto(f"{desk.origin}/publish")
        page.check('input[value="zip"]')
        with page.expect_download(timeout=120_000) as handed:
            page.click("main button.action--first")
            page.wait_for_selector("h1:has-text('Building the book')")
            assert "so far" in page.inner_text('[role="status"]')
            if has_script:
                assert page.evaluate("document.documentElement.scrollWidth") <= 390
        assert handed.value.suggested_filename == "book.zip"
        assert "The book is packed" in page.inner_text("main")
        context.close()


def test_every_link_of_a_stick_leads_to_a_file(stick: Path) -> None:
    lost = []
    for path in stick.rglob("*.html"):
        if path.name == "404.html":
            continue  # no disk shows it
        for link in re.findall(r'\s(?:href|src)="([^"]*)"', path.read_text(encoding="utf-8")):
            if re.match(r"(?:[a-z]+:|#|$)", link):
                continue
            if not (path.parent / re.split("[?#]", link)[0]).is_file():
                lost.append(f"{path.relative_to(stick)}: {link}")
    assert lost == []


def test_a_stick_is_searched_and_scaled_from_a_disk(page: Page, stick: Path) -> None:
    page.goto((stick / "index.html").as_uri())
    page.keyboard.press("/")
    page.keyboard.type("ratafia")
    page.wait_for_selector(".md-search-result__item")
    page.keyboard.press("Enter")
    page.wait_for_url("**/r/quince-ratafia/index.html")
    assert page.evaluate("Boolean(customElements.get('stillroom-scale'))")
    wait_until(page, "!document.querySelector('stillroom-scale input').disabled")


def test_a_stick_names_the_recipe_of_what_is_found(page: Page, stick: Path) -> None:
    """It named the part alone, so that a word of many lists found "Ingredients" over and over."""
    page.goto((stick / "index.html").as_uri())
    page.keyboard.press("/")
    page.keyboard.type("muscovado")
    page.wait_for_selector(".md-search-result__item")
    found = page.locator(".md-search-result__item").all()
    titles = [one.locator("h1").all_inner_texts() for one in found]
    assert ["Quince chutney"] in titles
    assert all(len(one) == 1 for one in titles), "each page once"
    assert len({one[0] for one in titles}) == len(titles)
    [chutney] = [one for one in found if one.locator("h1").inner_text() == "Quince chutney"]
    assert "Ingredients" in chutney.locator("h2").all_inner_texts()


def test_what_a_script_links_on_a_stick_is_a_file(page: Page, stick: Path) -> None:
    """The year's lists are made anew by its script, and led into folders."""
    page.goto((stick / "year" / "index.html").as_uri())
    wait_until(page, "Boolean(customElements.get('stillroom-still-time'))")
    page.fill("[name=give]", "2031-12-24")
    links = page.evaluate(
        "[...document.querySelectorAll('stillroom-still-time a')].map((one) => one.href)"
    )
    assert len(links) > 5
    lost = [one for one in links if not Path(unquote(urlsplit(one).path)).is_file()]
    assert lost == []


def test_a_book_opened_from_a_disk_says_what_it_lacks(
    page: Page, built_book: Path, stick: Path
) -> None:
    """The site for a host has no search there: it was silent, and looked broken."""
    for leaf in ("index.html", "r/quince-ratafia/index.html"):
        page.goto((built_book / leaf).as_uri())
        page.wait_for_selector("[data-from-file]", state="visible")
        said = page.inner_text("[data-from-file]")
        assert "by a double click" in said
        assert not re.search(r"stillroom|terminal|desk|\bhost\b", said), (
            "a guest of the book reads it"
        )
        page.goto((stick / leaf).as_uri())
        assert page.query_selector("[data-from-file]") is None


def test_a_stick_in_firefox(firefox: Firefox, stick: Path) -> None:
    firefox.goto((stick / "browse" / "index.html").as_uri())
    firefox.evaluate(
        "(() => { const box = document.querySelector('[data-md-component=search-query]');"
        " box.value = 'chutney'; box.dispatchEvent(new Event('input')); return true; })()"
    )
    firefox.wait_for("document.querySelector('.md-search-result__item a') !== null")


def test_too_large_a_file_is_refused_in_one_message(
    page: Page, empty: OpenDesk, tmp_path: Path
) -> None:
    page.goto(empty.first)
    page.fill("#title", "The Heron Ferry book")
    page.click("main button")
    page.wait_for_selector(".spines")
    huge = tmp_path / "huge.txt"
    with huge.open("wb") as file:
        file.truncate(90_000_000)
    page.goto(f"{empty.origin}/bring")
    page.set_input_files("#file", str(huge))
    page.click("main button.action--first")
    page.wait_for_load_state()
    assert "more than the desk takes at once: 80 MB" in page.inner_text("body")


def test_a_page_that_looks_again_follows_whatever_of_it_changes(
    browser: Browser, empty: OpenDesk
) -> None:
    """A child amid others changed, and the next look raised: the page stood still for ever."""
    looks = '<script type="module" src="/desk/own/again.js"></script>'
    shown = [
        f"{looks}<main id=main><h1>A</h1><p>1 second</p><form>stop</form></main>",
        f"{looks}<main id=main><h1>A</h1><p>2 seconds</p><form>halt</form></main>",
        "<main id=main><h1>Done</h1><ul><li>all</li></ul></main>",
    ]
    page = browser.new_page()
    page.goto(empty.first)

    def answer(route: Route) -> None:
        body = shown.pop(0) if len(shown) > 1 else shown[0]
        route.fulfill(body=f"<!doctype html>{body}", content_type="text/html")

    page.route("**/looks-again", answer)
    page.goto(f"{empty.origin}/looks-again")
    page.wait_for_selector("h1:has-text('Done')", timeout=20_000)
    assert page.inner_text("li") == "all"
    page.close()
