"""What is chosen under Publish while something else is being made is not dropped unsaid."""

from __future__ import annotations

import asyncio
import threading
from pathlib import Path

import pytest
from playwright.sync_api import Page

from desk.conftest import open_on, small_book
from stillroom.desk import publish_room
from stillroom.desk.running import Done


def test_a_zip_that_is_chosen_while_a_folder_is_made_is_told_and_kept_chosen(
    page: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    may_end = threading.Event()

    async def slow(*_: object, **__: object) -> Done:
        while not may_end.is_set():
            await asyncio.sleep(0.05)
        return Done(0, ())

    monkeypatch.setattr(publish_room, "run", slow)
    opened, thread = open_on(small_book(tmp_path / "book"))
    page.goto(opened.first)
    page.goto(f"{opened.origin}/publish")
    page.get_by_role("button", name="Build the book").press("Enter")
    page.wait_for_url("**/publish/now")
    assert "It makes the folder for the web." in page.inner_text("main")
    page.goto(f"{opened.origin}/publish")
    page.check("[value=zip]")
    page.get_by_role("button", name="Build the book").press("Enter")
    page.wait_for_url("**/publish/now")
    assert "You have chosen the packed file for the web meanwhile." in page.inner_text("main")
    may_end.set()
    page.wait_for_selector("text=The book lies in the folder")
    assert "It has not been made" in page.inner_text("main")
    assert page.is_checked("[value=zip]")
    may_end.clear()
    page.get_by_role("button", name="Build the book").press("Enter")
    page.wait_for_selector("text=It makes the packed file")
    assert "You have chosen" not in page.inner_text("main")
    may_end.set()
    opened.ask("/stop", "POST")
    thread.join(20)
