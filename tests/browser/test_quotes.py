"""What is typed in the browser has the same curly quotes as what is printed from files."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page

from printing.test_quotes import TYPED
from stillroom.looks.quotes import QUOTES, curl, marks_of

from .conftest import wait_until


@pytest.mark.parametrize("language", list(QUOTES))
def test_python_and_browser_set_the_same_marks(scripts_page: Page, language: str) -> None:
    found = scripts_page.evaluate(
        """async ([typed, marks]) => {
          const { curl } = await import('/assets/stillroom/js/words/quotes.js');
          return typed.map((one) => curl(one, marks));
        }""",
        [list(TYPED), list(marks_of(language))],
    )
    assert found == [curl(one, language) for one in TYPED]


def test_names_and_a_line_are_curled_as_they_are_typed(page: Page, book_address: str) -> None:
    page.goto(f"{book_address}/print-room/?recipe=rosemary-salt&count=1")
    wait_until(page, "!document.querySelector('.print-room-form').hidden")
    page.fill(".print-room-form input[name=to]", "Ann O'Brien")
    page.fill(".print-room-form input[name=message]", 'With "love"')
    shown = page.locator(".print-room-preview").inner_text()
    assert "O’Brien" in shown
    assert "“love”" in shown
    assert "'" not in shown
