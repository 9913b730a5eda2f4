"""One Chromium for all tests of a worker: its driver cannot be started twice in one process."""

from __future__ import annotations

from collections.abc import Iterator

from playwright.sync_api import Browser, sync_playwright

_OPEN: list[Browser] = []


def open_once(place: str, flags: list[str]) -> Iterator[Browser]:
    """Yield the browser that is open, or open one and close it when the first to ask is done."""
    if _OPEN:
        yield _OPEN[0]
        return
    with sync_playwright() as driver:
        launched = driver.chromium.launch(executable_path=place, args=flags)
        _OPEN.append(launched)
        yield launched
        _OPEN.clear()
        launched.close()
