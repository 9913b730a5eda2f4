"""The season of the produce on the built pages: the first leaf's days to begin by, and "when"."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from stillroom.core.day_words import MONTH_NAMES
from stillroom.core.loading import load_recipes

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
