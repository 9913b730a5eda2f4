"""Every recipe page of the built demo book has all its parts, in the order of design.md."""

from __future__ import annotations

import json
import re
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from bs4 import BeautifulSoup

from stillroom.core.recipe.kinds import all_kinds

Pages = dict[str, BeautifulSoup]
ROOT = Path(__file__).resolve().parents[2]
SLUGS = sorted(path.stem for path in (ROOT / "recipes").glob("*.md"))

# the sections of a recipe page, top to bottom (design.md, "A recipe page")
PARTS = ("how-much", "ingredients", "method", "when", "take-care", "card", "share")

# schema.org vocabulary: reference.md section 10. HowTo's supply, tool and step are from memory.
RECIPE_WORDS = {
    "@context", "@type", "name", "image", "author", "datePublished", "description", "keywords",
    "prepTime", "cookTime", "performTime", "totalTime", "recipeYield", "recipeIngredient",
    "recipeInstructions", "recipeCategory", "recipeCuisine", "cookingMethod", "nutrition",
    "suitableForDiet", "url",
}  # fmt: skip
HOW_TO_WORDS = {
    "@context", "@type", "name", "image", "author", "datePublished", "description", "prepTime",
    "performTime", "totalTime", "yield", "supply", "tool", "step", "estimatedCost", "url",
}  # fmt: skip
# ISO 8601-1:2019: days, hours and minutes; no months or years, which are not fixed lengths
DURATION = re.compile(r"P(?!$)(\d+D)?(T(?=\d)(\d+H)?(\d+M)?)?")


def states(slug: str, key: str) -> bool:
    """Tell whether a recipe's file has a line that begins with `key`."""
    text = (ROOT / "recipes" / f"{slug}.md").read_text(encoding="utf-8")
    return any(line.startswith(key) for line in text.splitlines())


def test_the_demo_book_has_at_least_sixteen_recipes_of_every_kind(recipe_pages: Pages) -> None:
    assert set(recipe_pages) == set(SLUGS)
    assert len(SLUGS) >= 16
    kinds = {
        page.select_one(".opening__kind").get_text(strip=True) for page in recipe_pages.values()
    }
    assert kinds == {name for name, kind in all_kinds().items() if kind.eaten_by != "pets"}


@pytest.mark.parametrize("slug", SLUGS)
def test_a_recipe_has_all_its_parts_in_order(recipe_pages: Pages, slug: str) -> None:
    page = recipe_pages[slug]
    assert len(page.find_all("h1")) == 1
    assert bool(page.select(".lead")) == states(slug, "summary:")
    assert page.select_one(".opening__picture img[alt], .opening__picture svg")
    headings = [heading["id"] for heading in page.select("h2[id]") if heading["id"] in PARTS]
    assert headings == list(PARTS)
    facts = {fact["data-fact"] for fact in page.select(".strip__fact")}
    assert {"hands-on", "usable", "best", "makes"} <= facts


@pytest.mark.parametrize("slug", SLUGS)
def test_every_ingredient_and_step_stands_there_without_a_script(
    recipe_pages: Pages, slug: str
) -> None:
    page = recipe_pages[slug]
    assert page.select(".ingredients li")
    steps = page.select(".method li[id]")
    assert [step["id"] for step in steps] == [f"step-{n}" for n in range(1, len(steps) + 1)]
    assert not re.search(r"[{}\ue000]", page.select_one(".method").get_text())


@pytest.mark.parametrize("slug", SLUGS)
def test_the_safety_box_names_sources_and_defers(recipe_pages: Pages, slug: str) -> None:
    box = recipe_pages[slug].select_one(".take-care")
    for caution in box.select(".take-care__caution"):
        assert "Source:" in caution.select_one(".source").get_text()
        assert caution["data-gravity"] in {"danger", "caution", "notice"}
    defers = box.find_all(recursive=False)[-1]
    assert "take-care__defer" in defers["class"]
    assert re.search(r"food.safety|safety", defers.get_text(), re.IGNORECASE)


@pytest.mark.parametrize("slug", SLUGS)
def test_the_safety_box_says_what_was_looked_at(recipe_pages: Pages, slug: str) -> None:
    box = recipe_pages[slug].select_one(".take-care")
    folded = box.select_one("details.take-care__looked")
    assert not folded.has_attr("open")
    answers = [part["data-answer"] for part in folded.select("dl")]
    assert answers == [a for a in ("said above", "could not be told", "not found") if a in answers]
    assert ("could not be told" in answers) == bool(box.select(".take-care__unchecked"))
    titles = {title.get_text().rstrip(".") for title in box.select(".take-care__title")}
    told = " ".join(one.get_text() for one in folded.select('[data-answer="said above"] dd'))
    assert not told or any(title in told for title in titles)


@pytest.mark.parametrize("slug", SLUGS)
def test_the_card_has_contents_dates_and_notes(recipe_pages: Pages, slug: str) -> None:
    card = recipe_pages[slug].select_one("stillroom-card .usage-card")
    parts = {part["data-card-part"] for part in card.select("[data-card-part]")}
    assert {"contents", "keep"} <= parts
    assert ("use" in parts) == states(slug, "  use:")
    assert card.select_one(".card-qr svg")
    dates = card.select_one(".card-dates")
    assert dates.select_one(".card-made").get_text() == ""  # the hand or the browser writes it
    # what does not spoil bears a day only where one is typed
    assert dates.has_attr("hidden") == states(slug, "kind: craft")
    if not dates.has_attr("hidden"):
        said = dates.select_one(".card-date").get_text(strip=True)
        assert said.endswith("from the day it was made")


def structured_data(page: BeautifulSoup) -> dict[str, Any]:
    scripts = page.select('script[type="application/ld+json"]')
    assert len(scripts) == 1
    found: dict[str, Any] = json.loads(scripts[0].string)
    return found


@pytest.mark.parametrize("slug", SLUGS)
def test_structured_data_keeps_to_the_vocabulary(recipe_pages: Pages, slug: str) -> None:
    page = recipe_pages[slug]
    data = structured_data(page)
    craft = page.select_one(".opening__kind").get_text(strip=True) == "craft"
    assert data["@type"] == ("HowTo" if craft else "Recipe")
    assert set(data) <= (HOW_TO_WORDS if craft else RECIPE_WORDS)
    assert data["url"] == page.find("link", rel="canonical")["href"]
    for key in ("prepTime", "totalTime"):
        assert DURATION.fullmatch(data[key]), data[key]
    steps = data["step" if craft else "recipeInstructions"]
    assert all(step["@type"] == "HowToStep" and step["text"] for step in steps)
    anchors = {element["id"] for element in page.select("[id]")}
    assert all(step["url"].split("#")[1] in anchors for step in steps)
    things = data["supply"] if craft else data["recipeIngredient"]
    assert len(things) == len(page.select(".ingredients li"))


@pytest.mark.parametrize("slug", SLUGS)
def test_a_sent_link_has_words_and_a_picture(
    recipe_pages: Pages, built_book: Path, slug: str
) -> None:
    page = recipe_pages[slug]

    def said(name: str) -> str:
        return str(page.find("meta", property=f"og:{name}")["content"])

    canonical = page.find("link", rel="canonical")["href"]
    assert said("title") == page.h1.get_text(strip=True)
    assert not states(slug, "summary:") or said("description")
    assert said("url") == canonical
    assert canonical.endswith(f"/r/{slug}/")
    path = said("image").removeprefix(canonical.removesuffix(f"r/{slug}/"))
    picture = built_book / path
    drawn = picture.suffix == ".png"  # a photograph is cut round its point, and heavier
    assert picture.read_bytes().startswith(b"\x89PNG" if drawn else b"\xff\xd8\xff")
    assert picture.stat().st_size < (60_000 if drawn else 200_000)


def test_headings_never_skip_a_level(pages: Pages) -> None:
    for path, page in pages.items():
        levels = [int(heading.name[1]) for heading in page.select("article :is(h1,h2,h3,h4,h5,h6)")]
        steps = [later - earlier for earlier, later in pairwise(levels)]
        assert all(step <= 1 for step in steps), path


def test_search_finds_recipe_words_and_not_the_widgets(built_book: Path) -> None:
    index = json.loads((built_book / "search" / "search_index.json").read_text(encoding="utf-8"))
    entries = index["docs"]
    titles = {entry["title"] for entry in entries if entry["location"].startswith("r/")}
    assert not titles & {"How much", "When", "The card", "Send this page on"}
    first = {entry["location"]: entry for entry in entries}
    assert len([place for place in first if re.fullmatch(r"r/[^/#]+/", place)]) == len(SLUGS)
    words = " ".join(entry["text"] for entry in entries if entry["location"].startswith("r/"))
    assert "quince" in words
    for widget_word in ("Copy the link", "Print the cards", "I want to make"):
        assert widget_word not in words


def test_no_form_field_carries_an_attribute_its_kind_does_not_take(pages: Pages) -> None:
    # WHATWG HTML: autocomplete does not apply to checkboxes, autocorrect is not an attribute there
    for path, page in pages.items():
        assert not page.select("article input[type=checkbox][autocomplete]"), path
        assert not page.select("[autocorrect]"), path
        assert all(dialog["aria-label"] for dialog in page.select("[role=dialog]")), path


@pytest.mark.parametrize("slug", SLUGS)
def test_what_is_eaten_names_its_allergens_and_the_home_kitchen(
    recipe_pages: Pages, slug: str
) -> None:
    """Where allergens stand, it stands too that a home kitchen cannot rule out traces."""
    page = recipe_pages[slug]
    words = page.select_one(".take-care__kitchen")
    assert (words is None) == states(slug, "kind: craft")
    contains = page.select_one(".usage-card .card-allergens strong")
    if words and contains:
        assert "Made in a home kitchen" in words.get_text()
        assert contains.get_text().replace("\u00a0", " ") in words.get_text()


def test_no_checkbox_has_an_attribute_that_html_gives_it_not(
    pages: dict[str, BeautifulSoup],
) -> None:
    for path, page in pages.items():
        assert page.select("input[type=checkbox][autocomplete]") == [], path


def test_the_cards_of_the_print_room_are_not_searched(built_book: Path) -> None:
    index = json.loads((built_book / "search" / "search_index.json").read_text(encoding="utf-8"))
    said = " ".join(
        f"{entry['title']} {entry['text']}"
        for entry in index["docs"]
        if entry["location"].startswith("print-room/")
    )
    assert "true size" in said
    of_cards = ("To keep", "from the day it was made", "Usage card")
    assert [words for words in of_cards if words in said] == []
