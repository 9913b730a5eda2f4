"""What is typed into a giving list is worked out, or told, or asked about: it never just goes."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
import yaml
from bs4 import BeautifulSoup
from playwright.sync_api import Dialog, Page

from desk.conftest import OpenDesk, forget_typed, open_with_lists
from desk.test_giving import worked_out
from desk.test_giving_told import NAME, TEXT, WAY, boxes_of_text, told

AVOID = '[name="households|0|avoid"]'
RECIPES = '.head nav a[href="/"]'
WORK = 'main button[formaction="/giving/plan"]'


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("leaving") / "book") as opened:
        yield opened


@pytest.fixture
def asked(page: Page, own: OpenDesk) -> Iterator[list[str]]:
    """Open the list anew, its rows unfolded; whoever is asked whether to leave stays."""
    (own.folder / NAME).write_text(TEXT, encoding="utf-8")
    forget_typed(own.folder)
    found: list[str] = []

    def stay(dialog: Dialog) -> None:
        found.append(dialog.type)
        dialog.dismiss()

    page.goto(own.first)
    page.goto(own.origin + WAY)
    page.on("dialog", stay)
    unfold(page)
    yield found
    page.remove_listener("dialog", stay)


def unfold(page: Page) -> None:
    page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")


def press(page: Page, selector: str) -> None:
    """Press what leads elsewhere, and wait until the page is another."""
    with page.expect_navigation(timeout=60_000):
        page.click(selector)


def avoided(own: OpenDesk) -> object:
    said = yaml.safe_load((own.folder / NAME).read_text(encoding="utf-8"))
    return said["households"][0].get("avoid")


def plan_of(own: OpenDesk) -> str:
    page = BeautifulSoup(own.ask("/giving/pack/plan.html").text, "html.parser")
    return " ".join(page.get_text(" ").split())


def test_what_is_typed_is_kept_and_then_worked_out(
    page: Page, own: OpenDesk, asked: list[str]
) -> None:
    page.fill(AVOID, "dairy, gluten, sugar")
    press(page, WORK)
    assert page.url == f"{own.origin}/giving/plan"
    assert avoided(own) == ["dairy", "gluten", "sugar"]
    page.wait_for_selector("a[href='/giving/pack/plan.html']", timeout=120_000)
    assert "sugar: Ysolde Fennimore" in plan_of(own)
    press(page, 'main a[href^="/giving/list"]')
    assert page.input_value(AVOID) == "dairy, gluten, sugar"
    assert asked == []


@pytest.mark.parametrize(
    ("box", "typed", "words", "is_kept"),
    [
        ("households|0|avoid", "nutts", 'Did you mean "nuts"?', True),
        ("households|0|adults", "many", "whole number", False),
    ],
)
def test_what_is_wrong_is_told_at_its_box_and_not_worked_out(
    page: Page, own: OpenDesk, asked: list[str], box: str, typed: str, words: str, is_kept: bool
) -> None:
    page.fill(f'[name="{box}"]', typed)
    press(page, WORK)
    found = told(page.content())
    assert found.keys() == {box}
    assert words in found[box]
    assert page.input_value(f'[name="{box}"]') == typed
    assert page.locator("h1").inner_text() == "Midwinter"
    assert ((own.folder / NAME).read_text(encoding="utf-8") != TEXT) is is_kept
    if is_kept:
        press(page, RECIPES)
    else:
        with page.expect_event("dialog"):
            page.click(RECIPES)
    assert asked == ([] if is_kept else ["beforeunload"]), "what was refused is not kept yet"


@pytest.mark.parametrize("way", [RECIPES, ".head__close button", "text=Earlier versions", "note"])
def test_leaving_with_something_typed_is_asked_about(
    page: Page, own: OpenDesk, asked: list[str], way: str
) -> None:
    page.fill(AVOID, "dairy")
    page.fill("#whom", "quince chutney")
    with page.expect_event("dialog"):
        page.click('form[action="/giving/happened"] button' if way == "note" else way)
    assert asked == ["beforeunload"]
    assert page.input_value(AVOID) == "dairy"
    assert not (own.folder / "giving" / "log.yml").exists()


def test_leaving_with_nothing_typed_is_not_asked_about(
    page: Page, own: OpenDesk, asked: list[str]
) -> None:
    page.fill(AVOID, "dairy")
    page.fill(AVOID, "")
    page.check('[name="afresh"]')
    press(page, RECIPES)
    assert asked == []
    page.goto(own.origin + WAY)
    unfold(page)
    page.fill(AVOID, "dairy")
    press(page, 'form[action="/giving/list"] button.action--first')
    press(page, RECIPES)
    assert asked == []
    assert avoided(own) == ["dairy"]


def test_a_plan_of_other_words_gives_way_and_one_of_the_same_goes_on(
    own: OpenDesk, asked: list[str]
) -> None:
    sent = boxes_of_text(own.ask(WAY).text)
    for avoid in ("milk", "milk, sugar", "milk, sugar"):  # pressed twice: the page is an old one
        typed = sent | {"households|0|avoid": avoid}
        answer = own.ask("/giving/plan", "POST", typed)
        assert (answer.status, answer.headers.get("location")) == (303, "/giving/plan")
        if avoid == "milk":
            sent = boxes_of_text(own.ask(WAY).text)
    assert avoided(own) == ["milk", "sugar"]
    assert "/giving/pack/index.html" in worked_out(own)
    assert "sugar: Ysolde Fennimore" in plan_of(own)
