"""The same card, the same arrangement: what the browser makes of a card and what Typst does."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from playwright.sync_api import Page

from stillroom.core.book import open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import CARD_SIZES
from stillroom.looks.card_designs import choose_design
from stillroom.printing.cards import CardJob, SheetOptions, fit_cards
from stillroom.publish.card_designs_page import designs_data
from stillroom.publish.library import Library

from .conftest import wait_until

ROOT = Path(__file__).resolve().parents[2]
LIBRARY = Library(open_book(ROOT / "mkdocs.yml"), (), date(2026, 11, 29))

# What Typst and the browser may set differently, and why; (size, recipe) -> the reason. Empty:
# both measure from capitals to baselines, and all twenty demo cards come out alike on every size.
DIFFERENT: dict[tuple[str, str], str] = {}

# Steps of type by which they may differ: half a pixel of rounding can decide one step.
LEVELS_APART = 1


MADE_ON = date(2027, 11, 25)


def browser_fits(page: Page, size: str, design: str = "plain") -> dict[str, list[str]]:
    """Return for each recipe what the browser fits it to: [arrangement, level]."""
    found: dict[str, list[str]] = page.evaluate(
        """async ([size, design]) => {
          const { fitCards } = await import('/assets/stillroom/js/paper/basket-fit.js');
          const { measuringHolder } = await import('/assets/stillroom/js/paper/card-faces.js');
          const { dress, writeCard } = await import('/assets/stillroom/js/elements/card-words.js');
          const holder = measuringHolder();
          const found = {};
          const made = document.querySelector('.print-room-form input[name=made]').value;
          const all = document.querySelectorAll('.print-room-cards .usage-card');
          const cards = [...all].map((card) => {
            const copy = card.cloneNode(true);
            copy.dataset.size = size;
            dress(copy, design);
            writeCard(copy, { to: '', from: '', made });
            return copy;
          });
          fitCards(cards, holder).forEach((fit, index) => {
            found[cards[index].dataset.recipe] = [fit.fits ? fit.front : 'refused', fit.level];
          });
          holder.remove();
          return found;
        }""",
        [size, next(one for one in designs_data(LIBRARY) if one["id"] == design)],
    )
    return found


def typst_fits(size: str, made_on: date, design: str = "plain") -> dict[str, list[str]]:
    book = open_book(ROOT / "mkdocs.yml")
    site = book.settings.site_url.rstrip("/")
    jobs = [
        CardJob(make_card(one, book.settings, made_on, url=f"{site}/r/{one.slug}/"), one)
        for one in book.load()
    ]
    found = {}
    options = SheetOptions(design=choose_design(design))
    for job, fit in zip(jobs, fit_cards(jobs, size, options), strict=True):
        sides = fit.get("sides", ["folded"])
        larger = ["b1", "b2", "b3", "b4", "b5", "b6"] if size == "folded-a6" else []
        level = [*larger, "1", "2", "3", "4", "5", "6"][fit["level"]]
        found[job.recipe.slug] = [sides[0] if fit["fits"] else "refused", level]
    return found


@pytest.mark.parametrize(
    ("size", "front"), [("90x65", "portrait gift"), ("a7", "bare gift"), ("id-1", "contents")]
)
def test_a_drawing_has_its_front_to_itself_in_both(
    page: Page, book_address: str, size: str, front: str
) -> None:
    page.goto(f"{book_address}/print-room/")
    wait_until(page, "!document.querySelector('.print-room-form').hidden")
    page.fill(".print-room-form input[name=made]", MADE_ON.isoformat())
    browser = browser_fits(page, size, "own-drawing")
    typst = typst_fits(size, MADE_ON, "own-drawing")
    assert {one for one, _ in browser.values()} == {one for one, _ in typst.values()} == {front}


# size -> how the demo book's twenty cards are arranged: alike, since they may go into one basket
FRONT = {"90x65": "gift", "a7": "gift", "id-1": "contents", "folded-a6": "folded"}


@pytest.mark.parametrize("size", CARD_SIZES)
def test_twenty_cards_are_arranged_alike(page: Page, book_address: str, size: str) -> None:
    page.goto(f"{book_address}/print-room/")
    wait_until(page, "!document.querySelector('.print-room-form').hidden")
    page.fill(".print-room-form input[name=made]", MADE_ON.isoformat())
    browser, typst = browser_fits(page, size), typst_fits(size, MADE_ON)
    assert len(browser) == len(typst) == 20
    apart = {
        slug: (browser[slug], typst[slug])
        for slug in typst
        if browser[slug][0] != typst[slug][0] and (size, slug) not in DIFFERENT
    }
    assert apart == {}
    order = ["b1", "b2", "b3", "b4", "b5", "b6", "1", "2", "3", "4", "5", "6"]
    steps = {
        slug: abs(order.index(browser[slug][1]) - order.index(typst[slug][1])) for slug in typst
    }
    assert max(steps.values()) <= LEVELS_APART, steps
    assert {front for front, _ in browser.values()} == {FRONT[size]}
    assert {front for front, _ in typst.values()} == {FRONT[size]}
