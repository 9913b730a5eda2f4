"""A recipe that is brought in once more is told to be there already, and its numbers are one."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from desk.conftest import OpenDesk, open_on, small_book

PAPER = """Pear butter

Makes 4 jars of 200 ml

2 kg pears
1 kg sugar
a little of her spice

Peel the pears and boil them with the sugar until thick.
Orchard fair
Pot it hot.
"""


@pytest.fixture
def own(tmp_path: Path) -> Iterator[OpenDesk]:
    opened, thread = open_on(small_book(tmp_path / "book"))
    yield opened
    opened.ask("/stop", "POST")
    thread.join(20)


def bring_in(page: Page, desk: OpenDesk, text: str) -> str:
    page.goto(f"{desk.origin}/bring")
    page.fill("#pasted", text)
    with page.expect_navigation():
        page.get_by_role("button", name="Bring in").press("Enter")
    return page.inner_text("main")


def drafts(desk: OpenDesk) -> list[str]:
    return sorted(path.name for path in (desk.folder / "drafts").glob("*.md"))


def test_the_same_recipe_on_another_visit_is_told_and_made_again_only_by_choice(
    page: Page, own: OpenDesk
) -> None:
    page.goto(own.first)
    assert "1 draft was made" in bring_in(page, own, PAPER)
    assert drafts(own) == ["pear-butter.md"]
    # its lines broken elsewhere, as another program pastes them
    said = bring_in(page, own, PAPER.replace("boil them with", "boil them\nwith"))
    assert "One recipe is here already" in said
    assert "Pear butter, as a draft" in said
    assert drafts(own) == ["pear-butter.md"]
    assert page.input_value("#pasted") == "", "nothing is left to be brought in"
    again = page.get_by_role("button", name="Make another draft of it")
    with page.expect_navigation():
        again.press("Enter")
    assert "1 draft was made" in page.inner_text("main")
    assert drafts(own) == ["pear-butter-2.md", "pear-butter.md"]


def test_another_recipe_beside_one_that_is_there_is_made(page: Page, own: OpenDesk) -> None:
    page.goto(own.first)
    bring_in(page, own, PAPER)
    said = bring_in(
        page, own, f"{PAPER}\n\nQuince paste\n\n2 kg quinces\n1 kg sugar\n\nBoil both.\n"
    )
    assert "1 draft was made" in said
    assert "One recipe is here already" in said
    assert drafts(own) == ["pear-butter.md", "quince-paste.md"]


def test_a_recipe_that_is_in_the_book_is_there_too(page: Page, own: OpenDesk) -> None:
    """However it came there; another list under the same name is another recipe."""
    page.goto(own.first)
    listed = "\n".join(
        line.strip().removeprefix("- ").strip('"')
        for line in (own.folder / "recipes/lavender-sugar.md").read_text("utf-8").split("\n")
        if line.startswith("  - ")
    )
    title = "Lavender sugar"
    said = bring_in(page, own, f"{title}\n\n{listed}\n\nMix them and pot them.\n")
    assert ("in the book" in said) == ("One recipe is here already" in said)
    said = bring_in(page, own, f"{title}\n\n1 kg sugar\n3 tbsp lavender\n\nMix them.\n")
    assert "1 draft was made" in said


def test_every_page_tells_the_same_numbers(page: Page, own: OpenDesk) -> None:
    page.goto(own.first)
    said = bring_in(page, own, PAPER)
    told = re.search(r"Pear butter: (.*)", said)
    assert told
    numbers = re.findall(r"(\d+) (thing|question)", told[1])
    assert numbers
    page.goto(f"{own.origin}/write/pear-butter")
    assert re.findall(r"(\d+) (thing|question)", page.inner_text("#said-now")) == numbers
    page.goto(own.origin)
    page.wait_for_function("!document.body.innerText.includes('still to be looked at')")
    spine = page.locator(".spine", has_text="Pear butter").inner_text()
    counted = dict((one, int(number)) for number, one in numbers)
    assert spine.count("To mend:") == (1 if "thing" in counted else 0)
    if counted.get("thing", 0) > 1:
        assert f"And {counted['thing'] - 1} more." in spine
    if "question" in counted:
        assert f"{counted['question']} question" in spine
