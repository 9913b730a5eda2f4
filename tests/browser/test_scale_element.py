"""The sentence with blanks, in a real Chromium on the built book."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, Route, expect

SPIRIT = "r/bitter-orange-spirit/"


@pytest.fixture
def spirit(page: Page, book_address: str) -> Page:
    page.goto(f"{book_address}/{SPIRIT}")
    expect(page.locator("stillroom-scale form")).to_be_visible(timeout=30_000)
    return page


def answered(page: Page) -> None:
    """Wait until what answers the sentence has been fetched: when a blank is first entered."""
    expect(page.locator("stillroom-scale")).not_to_have_attribute("aria-busy", "true")


def fill(page: Page, name: str, text: str) -> None:
    field = page.locator(f"stillroom-scale [name={name}]")
    if not field.is_visible():
        page.locator(".how-much-more summary").click()
    field.fill(text)
    field.press("Enter")
    answered(page)


def amount(page: Page, place: int) -> str:
    return page.locator(f"[data-line='{place}'] [data-amount]").inner_text()


def test_amounts_change_in_the_list_and_in_the_method(spirit: Page) -> None:
    fill(spirit, "makes", "1½ l")
    expect(spirit.locator("[data-line='0'] [data-amount]")).not_to_have_text("1 l")
    vodka = amount(spirit, 0)
    assert vodka != "1 l"
    assert f"{vodka} vodka" in spirit.locator(".method").inner_text()
    assert "1.5 l" in spirit.locator("[data-fact=makes] dd").inner_text()


def test_change_is_announced_politely(spirit: Page) -> None:
    answer = spirit.get_by_role("status").filter(has_text="Makes")
    fill(spirit, "times", "2")
    expect(answer).to_contain_text("Makes about")
    assert spirit.locator("[data-scale=told]").inner_text()


def test_address_carries_the_state_and_back_works(spirit: Page) -> None:
    written = amount(spirit, 0)
    fill(spirit, "times", "3")
    expect(spirit).to_have_url(re.compile(r"\?times=3$"))
    assert amount(spirit, 0) == "3 l"
    spirit.go_back()
    expect(spirit.locator("[data-line='0'] [data-amount]")).to_have_text(written)
    spirit.go_forward()
    expect(spirit.locator("[data-line='0'] [data-amount]")).to_have_text("3 l")


def test_shared_link_opens_at_its_scale(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/{SPIRIT}?have=17+cinnamon+stick&units=us")
    expect(page.locator("[data-line='2'] [data-amount]")).to_have_text("17")
    assert page.locator("[name=have-amount-1]").input_value() == "17"
    assert page.locator("[name=units]").input_value() == "us"
    assert "quart" in amount(page, 0) or "gallon" in amount(page, 0)


# typed -> what the vodka comes to; the batch as written makes 960 ml or so, so only the unit counts
@pytest.mark.parametrize("typed", ["750ml", "1½ pints", "2 1/2 cups", "0.75 l"])
def test_typed_amounts_are_understood(spirit: Page, typed: str) -> None:
    fill(spirit, "makes", typed)
    expect(spirit.locator("[data-wrong=makes]")).to_be_hidden()
    assert "makes=" in spirit.url


def test_a_wrong_one_is_answered_in_words_beside_the_blank(spirit: Page) -> None:
    before = amount(spirit, 0)
    fill(spirit, "makes", "5 cupps")
    wrong = spirit.locator("[data-wrong=makes]")
    expect(wrong).to_contain_text('"cupps" is not a unit')
    field = spirit.locator("[name=makes]")
    assert field.get_attribute("aria-invalid") == "true"
    assert field.get_attribute("aria-describedby") == wrong.get_attribute("id")
    assert amount(spirit, 0) == before
    assert "makes=" not in spirit.url
    fill(spirit, "makes", "500 ml")
    expect(wrong).to_be_hidden()
    assert field.get_attribute("aria-invalid") is None


def test_containers_and_what_is_on_hand(spirit: Page) -> None:
    fill(spirit, "fill-count-1", "12")
    expect(spirit).to_have_url(re.compile("fill=12"))
    assert "600 ml" in spirit.locator("[data-scale=answer]").inner_text()
    fill(spirit, "have-amount-1", "4")
    expect(spirit).to_have_url(re.compile("have=4"))
    assert "fill=" not in spirit.url
    assert spirit.locator("[name=fill-count-1]").input_value() == ""


def test_what_it_comes_to_follows_the_batch(spirit: Page) -> None:
    fill(spirit, "fill-count-1", "12")
    expect(spirit.locator("[data-fact=makes] dd")).to_have_text("about 600 ml: 12 bottles of 50 ml")
    facts = spirit.locator(".comes-to")
    expect(facts).to_contain_text("600–650 ml")
    expect(facts).to_contain_text("120 teaspoons")
    expect(spirit.locator(".reckoned")).to_contain_text("filled as it should be")
    spirit.get_by_role("button", name="As written").click()
    expect(facts).to_contain_text("192 teaspoons")


def test_as_many_things_on_hand_as_a_cook_wants(spirit: Page) -> None:
    """Each filled blank brings another, next in the order of the Tab key, with its own name."""
    expect(spirit.locator("[name=have-amount-2]")).to_have_count(0)
    spirit.locator("[name=have-amount-1]").press_sequentially("17")
    answered(spirit)
    for _ in range(2):
        spirit.keyboard.press("Tab")
    focused = "document.activeElement.name"
    assert spirit.evaluate(focused) == "have-amount-2"
    spirit.keyboard.type("2 l")
    spirit.keyboard.press("Tab")
    assert spirit.evaluate(focused) == "have-item-2"
    spirit.locator("[name=have-item-2]").select_option("vodka")
    spirit.locator("[name=have-item-3]").select_option("Seville orange peel")
    fill(spirit, "have-amount-3", "9")
    expect(spirit.locator("[name=have-amount-4]")).to_be_visible()
    expect(spirit.locator("[data-scale=answer]")).to_contain_text("Seville orange peel runs short")
    names = spirit.locator("[data-pair=have] .visually-hidden").all_inner_texts()
    assert len(names) == len(set(names)) == 8
    spirit.goto(spirit.url)
    expect(spirit.locator("[name=have-amount-3]")).to_have_value("9")
    assert spirit.locator("[name=have-item-3]").input_value() == "Seville orange peel"
    fill(spirit, "have-amount-3", "")
    expect(spirit.locator("[name=have-amount-4]")).to_have_count(0)


def test_units_can_be_chosen(spirit: Page) -> None:
    spirit.locator(".how-much-more summary").click()
    spirit.locator("[name=units]").select_option("us")
    expect(spirit.locator("[data-line='0'] [data-amount]")).to_contain_text("cup")
    spirit.locator("[name=by]").select_option("weight")
    expect(spirit.locator("[data-line='0'] [data-amount]")).to_contain_text("lb")
    assert "OIML" in spirit.locator("[data-line='0'] [data-why]").inner_text()


def test_every_blank_is_reached_by_keyboard_and_has_a_name(spirit: Page) -> None:
    fields = spirit.locator("stillroom-scale form :is(input, select, button)")
    for place in range(fields.count()):
        field = fields.nth(place)
        assert field.evaluate("field => field.tabIndex") == 0
        named = field.evaluate("field => (field.labels?.[0] ?? field).textContent.trim()")
        assert named


def test_as_written_brings_the_written_amounts_back(spirit: Page) -> None:
    written = spirit.locator(".making").inner_text()
    fill(spirit, "times", "2.37")
    assert spirit.locator(".making").inner_text() != written
    spirit.get_by_role("button", name="As written").click()
    assert spirit.locator(".making").inner_text() == written
    assert "?" not in spirit.url


def test_print_prints_what_is_shown(spirit: Page) -> None:
    fill(spirit, "times", "3")
    spirit.emulate_media(media="print")
    expect(spirit.locator("[data-line='0'] [data-amount]")).to_be_visible()
    assert amount(spirit, 0) == "3 l"
    expect(spirit.locator("stillroom-scale form")).to_be_hidden()


def test_removed_element_stops_listening(spirit: Page) -> None:
    spirit.evaluate("document.querySelector('stillroom-scale').remove()")
    spirit.evaluate("history.pushState(null, '', '?times=3'); history.pushState(null, '', '?')")
    spirit.go_back()
    assert amount(spirit, 0) == "1 l"


def test_without_scripts_the_page_has_its_amounts_and_ready_made_sizes(
    browser: Browser, book_address: str
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{book_address}/{SPIRIT}")
    assert amount(page, 0) == "1 l"
    expect(page.locator("details.ready-made table")).to_be_visible()
    expect(page.locator("stillroom-scale form")).to_be_hidden()
    context.close()


def test_every_blank_filled_before_the_answers_came_is_answered(
    fresh_page: Page, book_address: str
) -> None:
    """A number and a system of units, both chosen while the tables were on their way."""
    page, held = fresh_page, list[Route]()
    page.route("**/data/amounts.json", lambda route: held.append(route))
    page.goto(f"{book_address}/{SPIRIT}")
    field = page.locator("stillroom-scale [name=times]")
    if not field.is_visible():
        page.locator(".how-much-more summary").click()
    field.fill("3")
    field.press("Tab")
    page.locator("[name=units]").select_option("us")
    expect(page.locator("stillroom-scale")).to_have_attribute("aria-busy", "true")
    for route in held:
        route.continue_()
    answered(page)
    expect(page).to_have_url(re.compile(r"\?times=3&units=us$"))
    assert field.input_value() == "3"
