"""Ten people are ten forms and one press: a further form takes nothing of what is typed."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
import yaml
from bs4 import BeautifulSoup
from playwright.sync_api import Browser, Page

from desk.conftest import OpenDesk, forget_typed, open_with_lists
from desk.test_giving_told import NAME, TEXT, WAY, boxes_of_text, told
from stillroom.desk.giving_form import ROWS

PEOPLE = ["Ash", "Bryony", "Clem", "Dill", "Elder", "Fern", "Gorse", "Hazel", "Iris", "Juniper"]
MORE = 'button[name="further"][value="{}"]'
KEEP = 'form[action="/giving/list"] button.action--first'


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path_factory.mktemp("further") / "book") as opened:
        yield opened


@pytest.fixture
def anew(own: OpenDesk) -> OpenDesk:
    (own.folder / NAME).write_text(TEXT, encoding="utf-8")
    forget_typed(own.folder)
    return own


def names(own: OpenDesk) -> list[str]:
    said = yaml.safe_load((own.folder / NAME).read_text(encoding="utf-8"))
    return [one["name"] for one in said["households"]]


def test_ten_people_are_kept_with_one_press_by_keyboard(page: Page, anew: OpenDesk) -> None:
    page.set_viewport_size({"width": 390, "height": 800})
    page.goto(anew.first)
    page.goto(anew.origin + WAY)
    for person in PEOPLE:
        page.locator(MORE.format("households")).press("Enter")
        focused = page.evaluate("document.activeElement.name")
        assert focused.endswith("|name"), "the hand is in the new form"
        page.keyboard.type(person)
        page.fill(f'[name="{focused.replace("|name", "|basket")}"]', "small")
    page.locator(MORE.format("baskets")).press("Enter")
    page.keyboard.type("large")
    page.fill('[name="baskets|new|eat"]', "3")
    heads = page.locator('details[data-new="households"] > summary').all_text_contents()
    assert heads == PEOPLE, "a form is headed by who is in it"
    ids = page.evaluate("[...document.querySelectorAll('[id]')].map((one) => one.id)")
    assert len(ids) == len(set(ids))
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    with page.expect_navigation():
        page.click(KEEP)
    assert names(anew) == ["Ysolde Fennimore", "Wren Tallow", *PEOPLE]
    page.set_viewport_size({"width": 1280, "height": 720})


def test_further_forms_are_there_again_when_nobody_kept(page: Page, anew: OpenDesk) -> None:
    page.goto(anew.first)
    page.goto(anew.origin + WAY)
    for person in PEOPLE[:3]:
        page.click(MORE.format("households"))
        with page.expect_response("**/typed"):
            page.keyboard.type(person)
    page.once("dialog", lambda dialog: dialog.accept())
    page.reload()
    boxes = page.locator('details[data-new="households"] input[name$="|name"]')
    assert [boxes.nth(n).input_value() for n in range(boxes.count())] == PEOPLE[:3]
    heads = page.locator('details[data-new="households"] > summary')
    assert heads.all_text_contents() == PEOPLE[:3]
    boxes.last.fill("")
    assert heads.last.text_content() == "Somebody else"
    boxes.last.fill(PEOPLE[2])
    page.click(MORE.format("makes"))
    with page.expect_response("**/typed"):
        page.select_option('[name="makes|new|recipe"]', index=1)
    title = page.locator('[name="makes|new|recipe"] option').nth(1).text_content()
    assert page.locator('details[data-new="makes"] > summary').text_content() == title
    page.select_option('[name="makes|new|recipe"]', index=0)
    with page.expect_navigation():
        page.click(KEEP)
    assert names(anew)[2:] == PEOPLE[:3]


def test_without_scripts_a_press_brings_one_more_form(browser: Browser, anew: OpenDesk) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(anew.first)
    page.goto(anew.origin + WAY)
    page.click('details[data-new="households"] summary >> nth=0')
    for person in PEOPLE[:3]:
        page.fill('[name="households|new|name"]', person)
        with page.expect_navigation():
            page.click(MORE.format("households"))
        assert names(anew) == ["Ysolde Fennimore", "Wren Tallow"], "nothing is kept unasked"
        assert page.locator('[name="households|new|name"]').is_visible()
    with page.expect_navigation():
        page.click(KEEP)
    assert names(anew)[2:] == PEOPLE[:3]
    context.close()


@pytest.mark.parametrize("part", ROWS)
def test_what_has_no_name_yet_stays_beside_the_further_form(anew: OpenDesk, part: str) -> None:
    box = next(ask.key for ask in ROWS[part] if ask.key not in ("name", "recipe", "service"))
    sent = boxes_of_text(anew.ask(WAY).text) | {f"{part}|new|{box}": "3", "further": part}
    answer = anew.ask("/giving/list", "POST", sent)
    assert answer.status == 200
    again = boxes_of_text(answer.text)
    assert (again[f"{part}|new|{box}"], again[f"{part}|new2|{box}"]) == ("3", "")
    forms = BeautifulSoup(answer.text, "html.parser").select(f'[data-new="{part}"]')
    assert len(forms) == 2


def test_a_named_row_beside_a_nameless_one_is_not_there_twice(anew: OpenDesk) -> None:
    sent = boxes_of_text(anew.ask(WAY).text)
    sent |= {"households|new|name": "Ash", "households|new|basket": "small"}
    sent |= {"households|new2|avoid": "nuts", "households|new2|basket": "small"}
    sent |= {"baskets|new|eat": "2"}
    answer = anew.ask("/giving/list", "POST", sent)
    assert answer.status == 422
    again = boxes_of_text(answer.text)
    assert again["households|2|name"] == "Ash"
    assert (again["households|new2|avoid"], again["baskets|new|eat"]) == ("nuts", "2")
    mended = again | {"households|new2|name": "Bryony", "baskets|new|name": "large"}
    kept = anew.ask("/giving/list", "POST", mended)
    assert (kept.status, told(kept.text)) == (303, {})
    assert names(anew)[2:] == ["Ash", "Bryony"]
