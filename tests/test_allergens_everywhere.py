"""What a recipe holds, and what could not be checked, is on every page and paper that says so.

One book with one recipe: allergens by an alternative, a part and the book's own larder, and a food
that nobody knows. The larder lies among the pages, with a price: neither may be published.
"""

from __future__ import annotations

import io
import re
import zipfile
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from click.testing import CliRunner
from jinja2 import Environment, FileSystemLoader
from mkdocs.__main__ import cli as mkdocs

import stillroom
from letters import read_letters
from stillroom.cli import main
from stillroom.core.book import Book, open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import scale_recipe
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data, print_book
from stillroom.printing.kitchen_sheet import print_sheet

TODAY = date(2026, 11, 25)
RECIPE = """---
title: Moon cakes
kind: bake
makes: 12 cakes
ingredients:
  - 200 g plain flour
  - 100 g butter or almond butter
  - item: filling
    amount: 50 g
    parts: [sugar, sesame seeds]
  - 20 g aunt's spread
  - 5 g moon dust
oven: 160 C
---
## Method

1. Bake.
"""
LARDER = "aunt's spread:\n  contains: [peanut]\n  from: plant\n  price: 500 g for 77.31\n"
SAID = ("wheat", "milk", "almond", "sesame", "peanut")
UNKNOWN = "moon dust – its allergens could not be checked"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    root = tmp_path_factory.mktemp("book")
    (root / "docs" / "recipes").mkdir(parents=True)
    (root / "docs" / "index.md").write_text("# A book\n", encoding="utf-8")
    (root / "docs" / "recipes" / "moon-cakes.md").write_text(RECIPE, encoding="utf-8")
    (root / "docs" / "larder.yml").write_text(LARDER, encoding="utf-8")
    (root / "mkdocs.yml").write_text(
        "site_name: A book\nsite_url: https://book.example/\ntheme: material\nplugins:\n"
        "  - stillroom:\n      recipes: docs/recipes\nexclude_docs: recipes/\n",
        encoding="utf-8",
    )
    return open_book(root / "mkdocs.yml")


@pytest.fixture(scope="module")
def recipe(book: Book) -> Recipe:
    (found,) = book.load()
    return found


@pytest.fixture(scope="module")
def site(book: Book) -> Path:
    out = book.root / "site"
    done = CliRunner().invoke(
        mkdocs, ["build", "--strict", "-f", str(book.config), "--site-dir", str(out)]
    )
    assert done.exit_code == 0, done.output
    return out


def check(text: str, where: str) -> None:
    plain = re.sub(r"[\s-]+", "", text)
    for word in SAID:
        assert word in plain, f"{where}: {word}"
    assert re.sub(r"[\s-]+", "", UNKNOWN) in plain, where


def test_the_page_its_card_and_its_tag_say_it(site: Path) -> None:
    page = BeautifulSoup(
        (site / "r" / "moon-cakes" / "index.html").read_text("utf-8"), "html.parser"
    )
    care = page.select_one(".take-care__kitchen")
    assert care is not None
    check(care.get_text(), "the safety box")
    shown = page.select(".card-allergens")
    assert shown, "no card on the page"
    for card in shown:
        check(card.get_text(), "the card on the page")


def test_nothing_of_the_larder_is_published(site: Path) -> None:
    assert not list(site.rglob("larder*"))
    for path in site.rglob("*"):
        if path.is_file():
            assert b"77.31" not in path.read_bytes(), path


def text_of(pdf: bytes) -> str:
    return "\n".join(page.extract_text() for page in read_letters(pdf).pages)


def test_every_paper_says_it(book: Book, recipe: Recipe) -> None:
    card = make_card(recipe, book.settings, TODAY, url="https://book.example/r/moon-cakes/")
    jobs = [CardJob(card, recipe)]
    check(text_of(print_cards(jobs, "a7", SheetOptions())), "card")
    check(text_of(print_tags(jobs, tag_shape("luggage"), SheetOptions())), "tag")
    sheet = print_sheet(recipe, scale_recipe(recipe), book.settings, None, PAPERS["a4"])
    check(text_of(sheet), "kitchen sheet")


def test_the_family_book_says_it_on_paper_and_screen(book: Book, recipe: Recipe) -> None:
    data = book_data(book, (recipe,), TODAY)
    check(text_of(print_book(data)), "family book")
    with zipfile.ZipFile(io.BytesIO(make_epub(data))) as epub:
        pages = [epub.read(name).decode() for name in epub.namelist() if name.endswith("html")]
    check("\n".join(BeautifulSoup(page, "html.parser").get_text() for page in pages), "EPUB")


def test_the_pack_says_it(book: Book, recipe: Recipe) -> None:
    templates = Path(stillroom.__file__).parent / "giving" / "templates"
    made = {
        "card": make_card(recipe, book.settings, TODAY, to="Old Torquil"),
        "contents_heading": "In it",
    }
    page = (
        Environment(loader=FileSystemLoader(templates), autoescape=True)
        .get_template("cards.html")
        .render(baskets=[{"presents": [made]}])
    )
    check(BeautifulSoup(page, "html.parser").get_text(), "pack")


def test_the_check_names_the_unknown_food_once_and_is_content(
    book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(book.root)
    done = CliRunner().invoke(main, ["check"])
    assert done.exit_code == 0
    assert done.stderr.count('"moon dust" is not a food that this book knows') == 1
    assert "Say what it is in larder.yml" in done.stderr
