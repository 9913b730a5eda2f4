"""The sentence above the list sifts it, and its choice stands in the address."""

from __future__ import annotations

from playwright.sync_api import Page, expect


def test_a_kind_is_sifted_and_shared_by_address(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/browse/")
    every = page.locator("li[data-kind]:visible").count()
    page.get_by_label("which kind").select_option("preserve")
    preserves = page.locator("li[data-kind]:visible").count()
    assert 0 < preserves < every
    assert set(
        page.locator("li[data-kind]:visible").evaluate_all("all => all.map(e => e.dataset.kind)")
    ) == {"preserve"}
    expect(page.locator("[data-browse=found]")).to_have_text(f"{preserves} recipes.")
    assert "kind=preserve" in page.url
    page.go_back()
    expect(page.locator("[data-browse=found]")).to_have_text(f"{every} recipes.")
    assert page.locator("li[data-kind]:visible").count() == every
    page.goto(f"{book_address}/browse/?kind=preserve")
    expect(page.locator("[data-browse=found]")).to_have_text(f"{preserves} recipes.")
    assert page.locator("li[data-kind]:visible").count() == preserves


def test_what_nothing_fits_is_said_in_words(fresh_page: Page, book_address: str) -> None:
    fresh_page.clock.set_fixed_time("2039-01-01T12:00:00")
    fresh_page.goto(f"{book_address}/browse/?start=best")
    expect(fresh_page.locator("[data-browse=found]")).to_contain_text("Nothing in the book fits")


def test_what_can_be_started_now_is_in_season_now(page: Page, book_address: str) -> None:
    # oranges for the spirit are to be had in January and February
    page.goto(f"{book_address}/browse/")
    spirit = page.locator("#by-kind ~ .browse-group li[data-season]", has_text="Bitter-orange")
    assert spirit.get_attribute("data-season") == "1 2"
    said = page.evaluate(
        """async () => {
            const { fits, sayFound } = await import(
                "/assets/stillroom/js/elements/browse-element.js");
            const entry = { kind: "infusion", free: "", best: "2027-04-17", season: "1 2" };
            const chosen = { kind: "", free: "", start: "best" };
            return [
                fits(entry, chosen, "2027-02-28"), fits(entry, chosen, "2027-03-01"),
                fits(entry, chosen, "2027-04-18"),
                fits(entry, { ...chosen, start: "" }, "2027-03-01"),
                fits({ ...entry, season: "" }, chosen, "2027-03-01"),
                sayFound(2, ["Bitter-orange spirit"]), sayFound(0, ["A", "B"]),
            ];
        }"""
    )
    assert said == [
        "yes", "stored", "no", "yes", "yes",
        "2 recipes. With produce stored or bought in, also Bitter-orange spirit.",
        "With produce stored or bought in, also A and B.",
    ]  # fmt: skip


def test_free_from_lists_only_what_is_known_to_be(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/browse/?free=milk")
    expect(page.locator("[data-browse=found]")).to_contain_text("recipes")
    shown = page.locator("li[data-kind]:visible").evaluate_all(
        "all => all.map(e => e.dataset.free)"
    )
    assert shown
    assert all("milk" in free.split() for free in shown)
    assert page.locator("li[data-kind]:visible a[href*=toffee]").count() == 0


def test_the_link_to_share_carries_what_was_chosen(fresh_page: Page, book_address: str) -> None:
    fresh_page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    fresh_page.goto(f"{book_address}/r/quince-ratafia/?times=2")
    fresh_page.get_by_role("button", name="Copy the link").click()
    expect(fresh_page.locator("[data-share=said]")).to_have_text("The link is copied.")
    copied = fresh_page.evaluate("navigator.clipboard.readText()")
    assert copied.endswith("/r/quince-ratafia/?times=2")
