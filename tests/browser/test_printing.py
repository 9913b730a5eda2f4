"""Cards and tags as the browser prints them, and its arithmetic beside Python's."""

from __future__ import annotations

import io
import json
from datetime import date
from itertools import pairwise, product
from pathlib import Path

import pdfplumber
import pytest
from playwright.sync_api import Page

import stillroom.publish
from stillroom.core.book import open_book
from stillroom.core.label.date_marks import Term, date_words, mark_date, say_date
from stillroom.core.label.labelling import UsageCard, make_card
from stillroom.core.paper.sheets import CARD_SIZES, PAPERS, Size, impose
from stillroom.core.paper.tag_shapes import Shape, tag_measures, tag_shape
from stillroom.core.when.spans import Span
from stillroom.core.when.timeline_data import span_data

from .conftest import wait_until

ROOT = Path(__file__).resolve().parents[2]
MM = 72 / 25.4
TOLERANCE_MM = 0.2  # issue 6
PAPER_MM = {"a4": (210, 297), "letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1


def print_page(page: Page) -> pdfplumber.PDF:
    """Return what the browser would send to a printer, without its headers and footers."""
    return pdfplumber.open(io.BytesIO(page.pdf(prefer_css_page_size=True)))


def open_page(page: Page, address: str) -> None:
    page.goto(address)
    page.evaluate("window.print = () => {}")
    wait_until(page, "document.querySelector('.card-form, .print-room-form').hidden === false")
    page.evaluate("document.fonts.ready")
    # what lays the sheets comes with the first choice: fetched now, a choice is answered at once
    page.evaluate("document.querySelector('stillroom-print-room')?.fetchSheets()")


def gaps(pdf: pdfplumber.PDF) -> tuple[list[float], list[float]]:
    """Return the distances between cut lines of the first page, across and down, in mm."""
    points = [
        point
        for curve in (*pdf.pages[0].curves, *pdf.pages[0].lines)
        if curve["height"] > 700 or curve["width"] > 550
        for point in curve["pts"]
    ]
    xs = sorted({round(x / MM, 2) for x, _ in points})[1:-1]  # less the paper's own edges
    ys = sorted({round(y / MM, 2) for _, y in points})[1:-1]
    return [b - a for a, b in pairwise(xs)], [b - a for a, b in pairwise(ys)]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_eight_cards_of_their_true_size(page: Page, book_address: str, paper: str) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    page.select_option("stillroom-card select[name=paper]", paper)
    page.click("stillroom-card button[type=submit]")
    pdf = print_page(page)
    first = pdf.pages[0]
    assert first.width / MM == pytest.approx(PAPER_MM[paper][0], abs=0.5)
    assert first.height / MM == pytest.approx(PAPER_MM[paper][1], abs=0.5)
    across, down = gaps(pdf)
    assert len(across) == 2
    assert len(down) == 4
    assert max(abs(gap - 90) for gap in across) < TOLERANCE_MM
    assert max(abs(gap - 65) for gap in down) < TOLERANCE_MM
    assert first.extract_text().count("Rosemary salt") == 8


def test_names_and_day_typed_stand_on_every_card_and_go_nowhere(
    fresh_page: Page, book_address: str
) -> None:
    open_page(fresh_page, f"{book_address}/r/quince-ratafia/")
    fresh_page.wait_for_load_state("networkidle")  # what the page itself asks for comes first
    asked: list[str] = []
    fresh_page.on("request", lambda request: asked.append(request.url))
    fresh_page.fill("stillroom-card input[name=to]", "Margit")
    fresh_page.fill("stillroom-card input[name=from]", "the Lane")
    fresh_page.fill("stillroom-card input[name=made]", "2027-03-14")
    fresh_page.click("stillroom-card button[type=submit]")
    text = print_page(fresh_page).pages[0].extract_text()
    assert text.count("Margit") == 8
    assert text.count("14 March 2027") == 8
    assert asked == []
    assert "Margit" not in json.dumps(fresh_page.evaluate("({...localStorage})"))


def test_after_printing_the_page_is_as_it_was(page: Page, book_address: str) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    page.click("stillroom-card button[type=submit]")
    assert page.locator("body > .stillroom-sheets").count() == 1
    page.evaluate("window.dispatchEvent(new Event('afterprint'))")
    assert page.locator("body > .stillroom-sheets").count() == 0
    assert page.evaluate("document.body.className").find("printing-sheets") == -1


@pytest.mark.parametrize("size", ["90x65", "a7", "id-1"])
def test_nothing_runs_over_its_card(page: Page, book_address: str, size: str) -> None:
    open_page(page, f"{book_address}/print-room/")
    page.select_option(".print-room-form select[name=size]", size)
    fields = page.locator(".print-room-which input")
    fields.evaluate_all("all => all.slice(1).forEach((one) => { one.value = '1'; })")
    fields.first.fill("1")  # the sheets are laid out once, and not anew for each of twenty
    said = page.inner_text(".print-room-status")
    assert said.startswith("20 on")
    over = page.evaluate(
        """() => [...document.querySelectorAll('.print-room-preview .card-face')]
          .filter((face) => face.scrollHeight > face.clientHeight + 1
            || face.scrollWidth > face.clientWidth + 1)
          .map((face) => face.closest('[data-title]').dataset.title)"""
    )
    assert over == []


def test_long_words_go_to_the_back_and_too_long_ones_are_refused(
    page: Page, book_address: str
) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    use = "document.querySelector('[data-card-part=use] dd').textContent"
    page.evaluate(f"{use} = 'Rub it in well and wait a while. '.repeat(12)")
    page.fill("stillroom-card input[name=to]", "M")
    assert "needs its back" in page.inner_text(".card-status")
    page.evaluate(f"{use} = 'Rub it in well and wait a while. '.repeat(60)")
    page.fill("stillroom-card input[name=to]", "Ma")
    assert "does not fit" in page.inner_text(".card-status")
    assert "how to use it" in page.inner_text(".card-status")


def test_a_half_used_sheet_begins_where_it_is_told(page: Page, book_address: str) -> None:
    open_page(page, f"{book_address}/print-room/?recipe=rosemary-salt&count=3")
    page.click(".print-room-labels summary")
    page.fill(".print-room-form input[name=start]", "7")
    page.click(".print-room-form button[type=submit]")
    pages = [sheet.extract_text().count("Rosemary salt") for sheet in print_page(page).pages]
    assert pages == [2, 1]


@pytest.mark.parametrize("thing", ["rectangle", "luggage", "round", "wrap"])
def test_tags_print(page: Page, book_address: str, thing: str) -> None:
    open_page(page, f"{book_address}/print-room/?recipe=rosemary-salt&count=2")
    page.select_option(".print-room-form select[name=thing]", thing)
    page.click(".print-room-form button[type=submit]")
    assert print_page(page).pages[0].extract_text().count("salt") >= 2


def allergen_words(label: UsageCard) -> str:
    """Return the line of allergens and of what else a tag warns of, "" for a recipe with none."""
    parts = []
    if label.allergens:
        parts.append(f"contains {', '.join(label.allergens)}")
    if label.may_contain:
        parts.append(f"may contain traces of {', '.join(label.may_contain)}")
    if label.packets:
        parts.append(f"its packet may say more: {', '.join(label.packets)}")
    line = "; ".join([*parts, *label.on_tag])
    return line[:1].upper() + line[1:]


@pytest.mark.parametrize("thing", ["rectangle", "luggage", "round", "wrap"])
def test_every_tag_says_what_it_contains_and_may_contain(
    page: Page, book_address: str, thing: str
) -> None:
    book = open_book(ROOT / "mkdocs.yml")
    said = {
        one.slug: allergen_words(make_card(one, book.settings, date(2026, 11, 12)))
        for one in book.load()
    }
    assert any("; may contain" in line for line in said.values())
    assert said["quince-ratafia"].endswith("; with alcohol")
    open_page(page, f"{book_address}/print-room/")
    page.select_option(".print-room-form select[name=thing]", thing)
    page.fill(
        ".print-room-form input[name=made]", "2026-11-12"
    )  # undated words are the longer ones
    page.click("[data-each='1']")
    assert page.inner_text(".print-room-status").startswith(f"{len(said)} on")
    shown = page.evaluate(
        """() => Object.fromEntries([...document.querySelectorAll('.print-room-preview .gift-tag')]
          .map((tag) => [tag.dataset.recipe,
            // a food and its bracket are tied
            (tag.querySelector('.card-allergens')?.innerText ?? '').replaceAll('\u00a0', ' ')]))"""
    )
    assert shown == said
    page.click(".print-room-form button[type=submit]")
    printed = "".join(sheet.extract_text() for sheet in print_page(page).pages)
    for words in " ".join(said.values()).split():
        assert words in printed


def test_without_javascript_every_card_is_there(browser, book_address: str) -> None:  # type: ignore[no-untyped-def]
    context = browser.new_context(java_script_enabled=False)
    plain = context.new_page()
    plain.goto(f"{book_address}/print-room/")
    assert plain.locator(".usage-card").count() == 20
    assert plain.locator(".print-room-form").is_hidden()
    context.close()


DAYS = ("2026-11-25", "2027-01-31", "2028-02-29", "2026-08-31", "2026-12-31")
SPANS = (
    Span(2, 2, "week"), Span(1, 1, "month"), Span(3, 3, "month"), Span(4, 6, "month"),
    Span(10, 10, "day"), Span(18, 18, "month"), Span(19, 19, "month"), Span(3, 3, "year"),
    Span(1, 2, "year"), Span(91, 91, "day"),
)  # fmt: skip
TERMS: tuple[Term, ...] = ("best before", "use by")
LANGUAGES = ("en_GB", "en_US")


def test_date_marks_are_the_same_in_both(scripts_page: Page) -> None:
    cases = list(product(DAYS, SPANS, TERMS, LANGUAGES))
    assert len(cases) == 200
    expected, asked = [], []
    for day, span, term, language in cases:
        made = date.fromisoformat(day)
        mark = mark_date(term, span, made, language, "")
        expected.append([mark.text, mark.iso, say_date(made, language)])
        words = date_words(language)
        keeps = {"term": term, "span": span_data(span), "language": language, "words": words}
        asked.append([day, keeps])
    got = scripts_page.evaluate(
        """async (asked) => {
          const marks = await import('/assets/stillroom/js/label/date-marks.js');
          return asked.map(([day, keeps]) => {
            const mark = marks.markDate(day, keeps);
            return [mark.text, mark.iso, marks.sayDate(day, keeps.language)];
          });
        }""",
        asked,
    )
    assert got == expected


def test_a_date_that_nobody_knows_is_counted_by_neither(scripts_page: Page) -> None:
    """Published guidance may give a span to a food of which something is not known."""
    span = Span(3, 3, "week")
    assert mark_date("not known", span, date(2026, 11, 25), "en_GB", "").iso == ""
    keeps = {"term": "not known", "span": span_data(span), "language": "en_GB"}
    keeps["words"] = date_words("en_GB")
    found = scripts_page.evaluate(
        """async (keeps) => (await import('/assets/stillroom/js/label/date-marks.js'))
          .markDate('2026-11-25', keeps)""",
        keeps,
    )
    assert found is None


def _mm(size: Size) -> dict[str, float]:
    return {"width": float(size.width_mm), "height": float(size.height_mm)}


def test_imposition_and_tag_boxes_are_the_same_in_both(scripts_page: Page) -> None:
    expected = {}
    for paper, size in product(("a4", "letter"), ("90x65", "a7", "id-1")):
        grid = impose(PAPERS[paper], CARD_SIZES[size])
        last = grid.place(grid.per_page - 1, back=True)
        found = [grid.columns, grid.rows, round(float(last.x_mm), 3), round(float(last.y_mm), 3)]
        expected[f"{paper} {size}"] = found
    shapes: tuple[Shape, ...] = ("rectangle", "luggage", "round", "wrap")
    for shape in shapes:
        box = tag_shape(shape, lid_mm=62, bottle_mm=52, wall_mm=70)
        expected[shape] = [box.width_mm, box.height_mm]
    got = scripts_page.evaluate(
        """async ([papers, sizes, measures]) => {
          const paper = await import('/assets/stillroom/js/paper/paper.js');
          const tags = await import('/assets/stillroom/js/paper/tag-shapes.js');
          const found = {};
          for (const [name, sheet] of Object.entries(papers)) {
            for (const [size, box] of Object.entries(sizes)) {
              const grid = paper.impose(sheet, box);
              const last = paper.place(grid, grid.columns * grid.rows - 1, true);
              const shown = [last.x, last.y].map((mm) => Math.round(mm * 1000) / 1000);
              found[`${name} ${size}`] = [grid.columns, grid.rows, ...shown];
            }
          }
          for (const shape of ['rectangle', 'luggage', 'round', 'wrap']) {
            const box = tags.tagBox(measures, shape, {lid: 62, diameter: 52, wall: 70});
            found[shape] = [box.width, box.height];
          }
          return found;
        }""",
        [
            {name: _mm(PAPERS[name]) for name in ("a4", "letter")},
            {name: _mm(CARD_SIZES[name]) for name in ("90x65", "a7", "id-1")},
            tag_measures(),
        ],
    )
    assert got == expected


def test_the_element_goes_without_trace(page: Page, book_address: str) -> None:
    open_page(page, f"{book_address}/r/rosemary-salt/")
    before = page.locator("body > .card-measuring").count()
    page.evaluate("document.querySelector('stillroom-card').remove()")
    assert (before, page.locator("body > .card-measuring").count()) == (1, 0)


SCRIPTS = Path(stillroom.publish.__file__).parent / "assets" / "js"


@pytest.mark.parametrize(
    "name",
    [
        "elements/card-element.js",
        "elements/print-room-element.js",
        "paper/sheets.js",
        "paper/card-fit.js",
    ],
)
def test_nothing_typed_is_sent_by_the_scripts(name: str) -> None:
    text = (SCRIPTS / name).read_text(encoding="utf-8")
    assert not any(word in text for word in ("fetch(", "XMLHttpRequest", "sendBeacon"))
