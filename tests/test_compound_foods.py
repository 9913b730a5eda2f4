"""Bought compound foods, by country: no paper loses an allergen that the country's law lists.

The words are those of the published lists: the UK Food Standards Agency's fourteen with where each
is found (Reg. (EU) 1169/2011 Annex II), the nine of United States law, Health Canada's priority
allergens in English and French, and Schedule 9 of the Australia New Zealand Food Standards Code.
"""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from jinja2 import Environment, FileSystemLoader

import stillroom
from letters import read_letters
from stillroom.core.book import Book, open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.size.scaling import scale_recipe
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.family_book import book_data, print_book
from stillroom.printing.kitchen_sheet import print_sheet

TODAY = date(2026, 11, 25)
COUNTRIES = {
    "GB": ("en_GB", "eu"),
    "IE": ("en_IE", "eu"),
    "US": ("en_US", "us"),
    "CA": ("en_CA", "ca"),
    "AU": ("en_AU", "anz"),
    "NZ": ("en_NZ", "anz"),
}
FRENCH = {
    "barley": "orge",
    "fish": "poisson",
    "milk": "lait",
    "wheat": "blé",
    "almonds": "amandes",
    "eggs": "œufs",
    "tree nuts": "noix",
    "sesame": "sésame",
    "soy": "soja",
    "mustard": "moutarde",
    "crustaceans": "crustacés",
    "molluscs": "mollusques",
}
# food: what each law's label says it contains
FOODS: dict[str, dict[str, list[str]]] = {
    "Worcestershire sauce": {
        "eu": ["gluten (barley)", "fish"],
        "us": ["fish"],
        "ca": ["barley", "fish"],
        "anz": ["gluten (barley)", "fish"],
    },
    "green pesto": {"eu": ["milk"], "us": ["milk"], "ca": ["milk"], "anz": ["milk"]},
    "mince pies": {
        "eu": ["gluten (wheat)"],
        "us": ["wheat"],
        "ca": ["wheat"],
        "anz": ["wheat, gluten"],
    },
    "marzipan": {
        "eu": ["nuts (almond)"],
        "us": ["tree nuts (almond)"],
        "ca": ["almonds"],
        "anz": ["almond"],
    },
    "nougat": {
        "eu": ["egg", "nuts"],
        "us": ["egg", "tree nuts"],
        "ca": ["eggs", "tree nuts"],
        "anz": ["egg", "tree nuts"],
    },
    "stollen": {
        "eu": ["gluten (wheat)", "milk"],
        "us": ["wheat", "milk"],
        "ca": ["wheat", "milk"],
        "anz": ["wheat, gluten", "milk"],
    },
    "tahini": {"eu": ["sesame"], "us": ["sesame"], "ca": ["sesame"], "anz": ["sesame"]},
    "dark soy sauce": {
        "eu": ["gluten (wheat)", "soya"],
        "us": ["wheat", "soy"],
        "ca": ["wheat", "soy"],
        "anz": ["wheat, gluten", "soy"],
    },
    "Dijon mustard": {"eu": ["mustard"], "us": [], "ca": ["mustard"], "anz": []},
    "wheat beer": {
        "eu": ["gluten (wheat)", "gluten (barley)"],
        "us": ["wheat"],
        "ca": ["wheat", "barley"],
        "anz": ["wheat, gluten", "gluten (barley)"],
    },
    "Baileys": {"eu": ["milk"], "us": ["milk"], "ca": ["milk"], "anz": ["milk"]},
    "cake mix": {
        "eu": ["gluten (wheat)"],
        "us": ["wheat"],
        "ca": ["wheat"],
        "anz": ["wheat, gluten"],
    },
    "prawn crackers": {
        "eu": ["crustaceans"],
        "us": ["crustacean shellfish"],
        "ca": ["crustaceans"],
        "anz": ["crustacean"],
    },
    "oyster sauce": {"eu": ["molluscs"], "us": [], "ca": ["molluscs"], "anz": ["mollusc"]},
    "celery salt": {"eu": ["celery"], "us": [], "ca": [], "anz": []},
    "lupin flour": {"eu": ["lupin"], "us": [], "ca": [], "anz": ["lupin"]},
}
_BY_SLUG = {f"with-{food.lower().replace(' ', '-')}": food for food in FOODS}


def _open(root: Path, country: str) -> Book:
    (root / "docs" / "recipes").mkdir(parents=True)
    (root / "docs" / "index.md").write_text("# A book\n", encoding="utf-8")
    for food in FOODS:
        slug = food.lower().replace(" ", "-")
        (root / "docs" / "recipes" / f"with-{slug}.md").write_text(
            f"---\ntitle: A thing with {slug}\nkind: bake\nmakes: 12 biscuits\ncard:\n"
            f"  net: 200 g\ningredients:\n  - 100 g {food}\n  - 100 g sugar\noven: 160 C\n---\n\n"
            "## Method\n\n1. Bake.\n",
            encoding="utf-8",
        )
    (root / "mkdocs.yml").write_text(
        "site_name: A book\nsite_url: https://book.example/\ntheme: material\nplugins:\n"
        f"  - stillroom:\n      recipes: docs/recipes\n      country: {country}\n"
        f"      language: {COUNTRIES[country][0]}\nexclude_docs: recipes/\n",
        encoding="utf-8",
    )
    return open_book(root / "mkdocs.yml")


def _plain(text: str) -> str:
    return re.sub(r"[\s-]+", "", text)


def _text_of(pdf: bytes) -> str:
    return "\n".join(page.extract_text() for page in read_letters(pdf).pages)


def _wanted(food: str, law: str) -> list[str]:
    said = FOODS[food][law]
    return [f"{name} / {FRENCH[name]}" for name in said] if law == "ca" else said


@pytest.mark.parametrize("country", COUNTRIES)
def test_no_card_loses_an_allergen(country: str, tmp_path: Path) -> None:
    book = _open(tmp_path, country)
    law = COUNTRIES[country][1]
    recipes = book.load()
    assert len(recipes) == len(FOODS)
    for recipe in recipes:
        food = _BY_SLUG[recipe.slug]
        assert sorted(make_card(recipe, book.settings, TODAY).allergens) == sorted(
            _wanted(food, law)
        ), food


# printing is slow: each food is printed under one law, so that each law prints four of them
@pytest.mark.parametrize(("turn", "country"), [(0, "GB"), (1, "US"), (2, "CA"), (3, "AU")])
def test_no_paper_loses_an_allergen(turn: int, country: str, tmp_path: Path) -> None:
    book = _open(tmp_path, country)
    recipes = book.load()[turn::4]
    pack = Environment(
        loader=FileSystemLoader(Path(stillroom.__file__).parent / "giving" / "templates"),
        autoescape=True,
    ).get_template("cards.html")
    for recipe in recipes:
        food = _BY_SLUG[recipe.slug]
        card = make_card(recipe, book.settings, TODAY, url="https://book.example/r/a/")
        jobs = [CardJob(card, recipe)]
        made = {"card": card, "contents_heading": "In it"}
        papers = {
            "card": _text_of(print_cards(jobs, "a7", SheetOptions())),
            "tag": _text_of(print_tags(jobs, tag_shape("luggage"), SheetOptions())),
            "sheet": _text_of(
                print_sheet(recipe, scale_recipe(recipe), book.settings, None, PAPERS["a4"])
            ),
            "pack": BeautifulSoup(
                pack.render(baskets=[{"presents": [made]}]), "html.parser"
            ).get_text(),
            "book": _text_of(print_book(book_data(book, (recipe,), TODAY))),
        }
        for where, text in papers.items():
            for name in _wanted(food, COUNTRIES[country][1]):
                assert _plain(name) in _plain(text), f"{country} {food} {where}: {name}"
        for where in ("card", "pack"):
            assert "Net200g" in _plain(papers[where]), f"{country} {food} {where}: net"
