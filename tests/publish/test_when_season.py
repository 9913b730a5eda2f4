"""The season of the produce on the built pages: the first leaf's days to begin by, and "when"."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import vobject
from bs4 import BeautifulSoup

from stillroom.core.reading.loading import load_recipes
from stillroom.core.words.day_words import MONTH_NAMES, say_day

Pages = dict[str, BeautifulSoup]
ROOT = Path(__file__).resolve().parents[2]
IN_SEASON = {
    recipe.slug: {MONTH_NAMES[month - 1] for month in recipe.season}
    for recipe in load_recipes(sorted((ROOT / "recipes").glob("*.md")), ROOT, "metric", None)
    if recipe.season
}


@pytest.mark.parametrize("slug", sorted(IN_SEASON))
def test_the_first_leaf_keeps_to_the_season_or_says_why_not(pages: Pages, slug: str) -> None:
    [link] = pages["index.html"].select(f'.leaves li a[href="r/{slug}/"]')
    words = link.find_parent("li").select_one(".leaves__when").get_text(strip=True)
    month = re.match(r"begin by \d+ (\w+) \d{4}", words)
    assert month is not None
    if month[1] in IN_SEASON[slug]:
        assert "stored or bought in" not in words
    else:
        assert words.endswith("its produce stored or bought in")


def test_when_has_room_for_the_season_on_every_page(recipe_pages: Pages) -> None:
    for slug, page in recipe_pages.items():
        note = page.select_one('stillroom-when [data-when="season"]')
        assert note.has_attr("hidden") == (note.get_text() == ""), slug
        assert note.has_attr("hidden") or slug in IN_SEASON


def test_the_year_names_every_year_it_speaks_of(pages: Pages) -> None:
    for row in pages["year/index.html"].select(".year-table tbody tr"):
        assert re.fullmatch(r"\w+ \d{4}", row.select_one("th").get_text(" ", strip=True))
        giving = row.select("td")[3].get_text(" ", strip=True)
        for count, day in re.findall(r"(\d+) on (\d+ \w+ \d{4})?", giving):
            assert int(count) > 0
            assert day, giving


@pytest.mark.parametrize("slug", sorted(IN_SEASON))
def test_the_calendar_begins_when_the_page_does(
    built_book: Path, recipe_pages: Pages, slug: str
) -> None:
    verdict = recipe_pages[slug].select_one('[data-when="verdict"]').get_text()
    calendar = vobject.readOne((built_book / f"r/{slug}/{slug}.ics").read_text("utf-8"))
    begins = min(event.dtstart.value for event in calendar.vevent_list)
    assert say_day(begins) in recipe_pages[slug].select_one("[data-when=rows]").get_text()
    if "while its produce is to be had" in verdict:
        assert MONTH_NAMES[begins.month - 1] in IN_SEASON[slug]


def test_a_page_says_whose_its_dates_are(built_book) -> None:
    from bs4 import BeautifulSoup

    def said(slug: str) -> str:
        text = (built_book / "r" / slug / "index.html").read_text(encoding="utf-8")
        found = BeautifulSoup(text, "html.parser").select_one(".when-of-kind")
        return found.get_text() if found else ""

    assert said("lavender-sugar").startswith("These dates are those of any infused sugar")
    assert said("quince-ratafia") == ""
