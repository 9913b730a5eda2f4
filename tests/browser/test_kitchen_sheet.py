"""The kitchen sheet as the browser prints it: from a recipe's page, at its chosen size and day."""

from __future__ import annotations

import io
import re
import unicodedata
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cached_property
from pathlib import Path

import pdfplumber
import pypdfium2
import pytest
import zxingcpp
from playwright.sync_api import Browser, Page

import stillroom.publish
from sampling import share
from stillroom.core.reading.loading import load_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import ScaledLine, scale_recipe
from stillroom.core.size.targets import ByFactor
from stillroom.core.when.timeline import Timeline, plan_forward
from stillroom.core.when.timeline_words import describe_dates

from .conftest import wait_until

ROOT = Path(__file__).resolve().parents[2]
RECIPES = {path.stem: path for path in sorted((ROOT / "recipes").glob("*.md"))}
SCRIPTS = Path(stillroom.publish.__file__).parent / "assets" / "js"
START = date(2027, 2, 1)
CHOSEN = [("bitter-orange-spirit", 2), ("quince-chutney", 3), ("heather-mead", 2)]
LEAST_PT = 9  # the brief of this sheet; 11 for ingredients and method
LEAST_BODY_PT = 11
# in points: ISO 216; ANSI/ASME Y14.1
PAPERS = {"A4": (210 * 72 / 25.4, 297 * 72 / 25.4), "US Letter": (612, 792)}
READY = """() => document.querySelector('[data-share=kitchen]').hidden === false
  && document.querySelector('stillroom-scale form').hidden === false
  && document.querySelector('.when-sentence').hidden === false"""


@dataclass(frozen=True)
class Printed:
    """What went to the printer, and what its element said before it was taken away again."""

    pdf: bytes
    sides: int
    ticks: list[tuple[str, int]]
    body_pt: float

    @cached_property
    def pages(self) -> list[pdfplumber.page.Page]:
        return pdfplumber.open(io.BytesIO(self.pdf)).pages  # type: ignore[no-any-return]


def press(page: Page, address: str, paper: str) -> None:
    page.goto(address)
    page.evaluate("window.print = () => {}")
    wait_until(page, READY)
    page.select_option("[data-share=paper]", label=paper)
    page.get_by_role("button", name="Print the kitchen sheet").click()
    page.wait_for_selector("body.printing-kitchen-sheet", state="attached")


def print_sheet(page: Page, address: str, paper: str = "A4") -> Printed:
    """Press the button as a reader would; making the PDF ends the print, as `afterprint` says."""
    press(page, address, paper)
    page.emulate_media(media="print")
    sides = int(page.get_attribute("body > .kitchen-sheet", "data-sides") or 0)
    days = page.locator(".kitchen-sheet__ticks li").all()
    ticks = [
        (one.inner_text(), one.locator(".kitchen-sheet__tick:visible").count()) for one in days
    ]
    sizes = page.eval_on_selector_all(
        ".kitchen-sheet :is(.amount, .item, .note, .steps li)",
        "all => all.map((one) => parseFloat(getComputedStyle(one).fontSize) * 72 / 96)",
    )
    return Printed(page.pdf(prefer_css_page_size=True), sides, ticks, min(sizes))


def squeeze(text: str) -> str:
    """Text as it can be compared: without spaces, and ligatures as their letters."""
    return re.sub(r"\s", "", unicodedata.normalize("NFKC", text))


def text_of(printed: Printed) -> str:
    """Return the printed characters in the order in which they are set, columns unmixed."""
    return squeeze("".join(char["text"] for side in printed.pages for char in side.chars))


def missing_from(sheet: Printed, wanted: list[str]) -> list[str]:
    printed = text_of(sheet)
    return [words for words in wanted if squeeze(words) not in printed]


def said_on_page(page: Page) -> list[str]:
    """Return every line, step, caution and allergen that stands on the page itself."""
    lines: list[str] = page.evaluate(
        """() => [...document.querySelectorAll('.leaf .ingredients li, .leaf .steps li, '
            + '.leaf .take-care__title, .leaf .take-care__receiver, .leaf .take-care__kitchen')]
          .map((one) => {
            const twin = one.cloneNode(true);
            twin.querySelectorAll('[hidden]').forEach((part) => part.remove());
            return twin.textContent;
          })"""
    )
    return lines


def tended_days(timeline: Timeline) -> list[tuple[int, int]]:
    """Return each day of tending in its month, and how many times it is tended on it."""
    tended = [row for row in timeline.stages if row.role == "tend"]
    return [(day.day, row.times) for row in tended for day in row.dates]


@pytest.mark.sampled
@pytest.mark.parametrize("slug", [*RECIPES][:: share(5, 1)])
def test_the_whole_recipe_stands_on_one_side_or_two(
    page: Page, book_address: str, slug: str
) -> None:
    printed = print_sheet(page, f"{book_address}/r/{slug}/")
    assert len(printed.pages) == printed.sides <= 2
    said = said_on_page(page)
    recipe = load_recipe(RECIPES[slug])
    assert len(said) > len(recipe.ingredients) + len(recipe.method)
    amounts = [f"{line.amount_text}{line.item_text}" for line in measured(recipe, 1)]
    assert missing_from(printed, [*said, *amounts]) == []
    sizes = [char["size"] for side in printed.pages for char in side.chars if char["text"].strip()]
    assert min(sizes) >= LEAST_PT - 0.01  # the PDF rounds
    assert printed.body_pt >= LEAST_BODY_PT
    assert printed.ticks == []  # no day is chosen


def measured(recipe: Recipe, times: int) -> list[ScaledLine]:
    """Return the lines with an amount, as Python scales them."""
    batch = scale_recipe(recipe, ByFactor(Fraction(times)))
    return [line for line in batch.lines if line.exact is not None]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("slug", "times"), CHOSEN)
def test_the_chosen_size_and_day_are_what_is_printed(
    page: Page, book_address: str, slug: str, times: int, paper: str
) -> None:
    address = f"{book_address}/r/{slug}/?times={times}&start={START}"
    printed = print_sheet(page, address, paper)
    recipe = load_recipe(RECIPES[slug])
    timeline = plan_forward(recipe, START)
    wanted = [f"{line.amount_text}{line.item_text}" for line in measured(recipe, times)]
    wanted += [
        f"{row.when}, {row.hands_on} hands-on" if row.hands_on else row.when
        for row in describe_dates(timeline)
    ]
    wanted += [f"{times} times the recipe", *said_on_page(page)]
    assert missing_from(printed, wanted) == []
    boxes = [(int(words.split()[0]), count) for words, count in printed.ticks]
    assert boxes == tended_days(timeline)
    if slug == "heather-mead":
        assert 2 in {count for _words, count in printed.ticks}  # shaken twice a day
    assert len(printed.pages) == printed.sides <= 2


@pytest.mark.parametrize("slug", ["heather-mead", "quince-chutney", "layered-soup-mix"])
def test_letter_paper_holds_it_too(page: Page, book_address: str, slug: str) -> None:
    printed = print_sheet(page, f"{book_address}/r/{slug}/", "US Letter")
    assert len(printed.pages) == printed.sides <= 2


@pytest.mark.parametrize(("chosen", "loaded"), [("A4", "Letter"), ("US Letter", "A4")])
def test_other_paper_in_the_printer_adds_no_side(
    page: Page, book_address: str, chosen: str, loaded: str
) -> None:
    press(page, f"{book_address}/r/bitter-orange-spirit/?start={START}", chosen)
    sides = page.get_attribute("body > .kitchen-sheet", "data-sides")
    pdf = page.pdf(format=loaded)
    assert len(pypdfium2.PdfDocument(pdf)) == int(sides or 0)


@pytest.mark.parametrize("paper", PAPERS)
def test_the_chosen_paper_goes_with_the_print(page: Page, book_address: str, paper: str) -> None:
    printed = print_sheet(page, f"{book_address}/r/rosemary-salt/", paper)
    for side in printed.pages:
        assert (side.width, side.height) == pytest.approx(PAPERS[paper], abs=1)


@pytest.mark.parametrize("dpi", [300, 150])
def test_the_square_leads_to_the_page(page: Page, book_address: str, dpi: int) -> None:
    printed = print_sheet(page, f"{book_address}/r/felted-bauble/?times=2")
    image = pypdfium2.PdfDocument(printed.pdf)[0].render(scale=dpi / 72).to_pil().convert("L")
    codes = zxingcpp.read_barcodes(image)
    link = page.get_attribute(".share__link", "href")
    assert [code.text for code in codes] == [link]
    assert missing_from(printed, [link or "no link"]) == []


def test_after_printing_the_page_is_as_it_was(page: Page, book_address: str) -> None:
    address = f"{book_address}/r/quince-chutney/"
    page.goto(address)
    wait_until(page, READY)
    before = page.inner_text(".leaf .making")
    places = page.evaluate("document.body.children.length")
    styles = page.locator("style").count()
    press(page, address, "A4")
    assert page.locator("body > .kitchen-sheet").count() == 1
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert page.locator(".kitchen-sheet, .kitchen-sheet-measuring").count() == 0
    assert "printing-kitchen-sheet" not in (page.get_attribute("body", "class") or "")
    assert page.evaluate("document.body.children.length") == places
    assert page.locator("style").count() == styles
    assert page.inner_text(".leaf .making") == before
    assert "side" in page.inner_text("[data-share=said]")


@pytest.mark.parametrize("slug", ["heather-mead", "lavender-sugar"])
def test_the_page_itself_prints_its_dates_on_one_side(
    page: Page, book_address: str, slug: str
) -> None:
    page.goto(f"{book_address}/r/{slug}/")
    wait_until(page, READY)
    last = page.inner_text(".when-dates tbody tr:last-child th")
    with pdfplumber.open(io.BytesIO(page.pdf(format="Letter"))) as opened:
        sides = [side.extract_text() for side in opened.pages]
    tables = [text.split("What When Hands-on")[1] for text in sides if "What When Hands" in text]
    assert len(tables) == 1
    assert f"\n{last} " in tables[0]


def test_it_is_printed_from_the_keyboard(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/r/rosemary-salt/")
    page.evaluate("window.print = () => { window.printed = document.body.className; }")
    wait_until(page, READY)
    page.get_by_role("button", name="Print this page").focus()
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    wait_until(page, "window.printed?.includes('printing-kitchen-sheet')")


def test_without_javascript_it_is_not_offered(browser: Browser, book_address: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(f"{book_address}/r/rosemary-salt/")
    assert plain.locator("[data-share=kitchen]").is_hidden()
    context.close()


@pytest.mark.parametrize("name", ["elements/kitchen-sheet.js", "paper/sheet-fit.js"])
def test_nothing_is_sent_by_the_scripts(name: str) -> None:
    text = (SCRIPTS / name).read_text(encoding="utf-8")
    assert not any(word in text for word in ("fetch(", "XMLHttpRequest", "sendBeacon"))
