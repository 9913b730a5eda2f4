"""The desk's pages in Chromium and in Firefox, by day and by night, at four widths, spaced out.

By way of JavaScript alone, so that both are driven alike: axe (WCAG 2.2 AA), every tab stop named
and large enough, nothing wider than the screen, no words cut off when spaced (SC 1.4.12). With
everything that is folded away open. The states that need typing: test_states.py, at the two
middle widths. A run goes through in one way of each browser, where the whole is asked in all.
"""

from __future__ import annotations

import json
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Error as PlaywrightError

from browser.looking import Looker
from desk.conftest import OpenDesk, open_with_lists
from desk.test_giving_told import NAME, TEXT
from sampling import is_whole

WAYS = [(scheme, width) for width in (320, 1280, 390, 640) for scheme in ("light", "dark")]
PLACES = {
    "recipes": "/",
    "nothing written": "/write/new",
    "a recipe": "/write/lavender-sugar",
    "bring in": "/bring",
    "the book": "/book",
    "print": "/paper",
    "what is public": "/publish",
    "giving lists": "/giving",
    "a list": "/giving/list?name=giving/winter.yml",
    "earlier versions": "/write/lavender-sugar/earlier",
    "not here": "/write/no-such-recipe-at-all",
}
# pressed with boxes filled: what comes back is told of
MISTAKES = {
    "a list's mistakes": (
        "/giving/list?name=giving/winter.yml",
        {
            "households|0|adults": "many",
            "households|0|country": "Nowhere",
            "posting|new|bands": "3.70",
            "hours a day": "all of it",
        },
        'form[action="/giving/list"] button.action--first',
    ),
    "a book's mistakes": (
        "/book",
        {"altitude_m": "nonsense", "printer_feed": "far", "larder": "what is this"},
        "main button.action--first",
    ),
    "nothing to bring": ("/bring", {}, "main button.action--first"),
}


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    with open_with_lists(tmp_path / "book") as opened:
        (opened.folder / NAME).write_text(TEXT, encoding="utf-8")
        yield opened


def _wait_until_gone(look: Looker) -> None:
    """Wait until another page stands there; on the way to it nothing can be asked."""
    for _ in range(600):
        time.sleep(0.1)
        try:
            if look.ask("() => Boolean(document.body && !document.body.dataset.before)"):
                return
        except (PlaywrightError, AssertionError):
            continue
    raise AssertionError("nothing came of the press")


def looked_at(look: Looker, desk: OpenDesk) -> dict[str, list[str]]:
    """Return what is wrong with each state of the desk, unfolded whole."""
    found: dict[str, list[str]] = {}

    def faults(name: str) -> None:
        look.wait_for("document.readyState === 'complete' && document.querySelector('main')")
        look.ask(
            "() => { for (const one of document.querySelectorAll('details')) one.open = true; }"
        )
        if wrong := look.faults():
            found[name] = wrong

    look.go(desk.first)
    for name, way in PLACES.items():
        look.go(desk.origin + way)
        faults(name)
    for name, (way, boxes, button) in MISTAKES.items():
        look.go(desk.origin + way)
        look.ask(
            f"""() => {{
              for (const [name, value] of Object.entries({json.dumps(boxes)}))
                document.getElementsByName(name)[0].value = value;
              document.body.dataset.before = "1";
              document.querySelector({json.dumps(button)}).click();
            }}"""
        )
        _wait_until_gone(look)
        faults(name)
    return found


@pytest.mark.sampled
@pytest.mark.parametrize(("called", "first"), [("chromium_ways", 0), ("firefox_ways", 3)])
def test_every_page_of_the_desk(
    called: str, first: int, request: pytest.FixtureRequest, own: OpenDesk
) -> None:
    ways: Callable[[str, int], Looker] = request.getfixturevalue(called)
    asked = WAYS if is_whole() else WAYS[first : first + 1]
    found = {
        f"{name}, {scheme}, {width}": wrong
        for scheme, width in asked
        for name, wrong in looked_at(ways(scheme, width), own).items()
    }
    assert found == {}
