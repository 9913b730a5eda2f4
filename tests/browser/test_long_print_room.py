"""The print room of a long book fetches the cards that are chosen, and prints the same sheets."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from browser.conftest import open_tab, serve_folder, wait_until, without_errors
from publish.test_long_print_room import built
from stillroom.publish import print_room

SHOWN = "document.querySelectorAll('.print-room-preview [data-side=front] .sheet-place').length"


def test_a_chosen_card_is_fetched_once_and_shown(
    browser: Browser, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(print_room, "MOST_ON_PAGE", 3)
    address = serve_folder(built(tmp_path))
    with without_errors(open_tab(browser)) as page:
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        page.goto(f"{address}/print-room/?recipe=quince-ratafia&count=2")
        wait_until(page, f"{SHOWN} === 2")
        page.fill("[data-recipe=bramble-jelly]", "3")
        wait_until(page, f"{SHOWN} === 5")
        page.select_option("[name=thing]", "round")
        wait_until(page, "document.querySelectorAll('.print-room-preview .tag-face').length === 5")
        cards = [url for url in asked if url.endswith("card.html")]
        assert sorted(url.split("/")[-2] for url in cards) == ["bramble-jelly", "quince-ratafia"]
        page.fill("[name=find]", "LAVENDER")
        shown = page.locator("li:not([hidden]) > label > [data-recipe]")
        assert shown.evaluate_all("all => all.map((one) => one.dataset.recipe)") == [
            "bramble-jelly", "lavender-sugar", "quince-ratafia",
        ]  # fmt: skip
        page.fill("[name=find]", "")
        page.route("**/almond-shortbread/card.html", lambda route: route.abort())
        page.fill("[data-recipe=almond-shortbread]", "1")
        wait_until(
            page,
            "document.querySelector('.print-room-status').textContent.includes('not be fetched')",
        )
        page.context.close()
