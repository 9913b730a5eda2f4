"""Straight quotes as people type them are curly on every paper, inches and feet as they were.

What was typed is a fudge recipe's way of talking, invented; how quotes stand in other languages is
in test_setting_in_languages.py.
"""

from __future__ import annotations

import re
from datetime import date

import pytest

from letters import open_letters
from stillroom.core.book import Book, open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.size.scaling import scale_recipe
from stillroom.looks.quotes import curl
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.printing.family_book import book_data, print_book
from stillroom.printing.kitchen_sheet import print_sheet

from .conftest import ROOT

FUDGE = """---
title: Grandma Peel's "never-fail" fudge
kind: confection
summary: It's what the fete's "other" table sold first.
makes: 36 pieces
ingredients:
  - 450 g caster sugar
  - 85 g butter
  - 20 g cook's chocolate
card:
  what: Nan's "secret", of sorts.
  use: Don't wait; it's best "with the kettle on".
---

Nan's own: "Don't walk away, 'tis done soon."

## Method

1. Boil it in a 9" pan to 114 °C. Don't stop: it "catches".
2. Beat it till it's thick.
"""
SAID = "Grandma Peel’s “never-fail” fudge"


@pytest.fixture(scope="module")
def fudge(tmp_path_factory: pytest.TempPathFactory) -> Book:
    root = tmp_path_factory.mktemp("quotes")
    (root / "recipes").mkdir()
    (root / "pages" / "pictures").mkdir(parents=True)
    (root / "recipes" / "fudge.md").write_text(FUDGE, encoding="utf-8")
    config = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    config = config.replace("docs_dir: site_demo/pages", "docs_dir: pages")
    config = re.sub(r"      family_book:.*\n(?: {8}.*\n)+", "", config)
    (root / "mkdocs.yml").write_text(config, encoding="utf-8")
    return open_book(root / "mkdocs.yml")


def words_of(made: bytes) -> str:
    with open_letters(made) as pdf:
        return " ".join(" ".join(page.extract_text() for page in pdf.pages).split())


def test_cards_and_tags_bear_no_straight_quote(fudge: Book) -> None:
    (recipe,) = fudge.load()
    names = {"to": "Ann O'Brien", "sender": "the Peels' kitchen", "message": 'With "love"'}
    job = CardJob(make_card(recipe, fudge.settings, date(2026, 11, 29), **names), recipe)
    options = SheetOptions()
    for made in (
        print_cards([job], "a7", options),
        print_cards([job], "folded-a6", options),
        print_tags([job], tag_shape("rectangle"), options),
    ):
        words = words_of(made)
        assert SAID.split()[1] in words
        assert "“never-fail”" in words
        assert "O’Brien" in words
        assert "“love”" in words
        assert not re.search("['\"]", words)


def test_the_family_book_and_the_kitchen_sheet_keep_inches_only(fudge: Book) -> None:
    (recipe,) = fudge.load()
    batch = scale_recipe(recipe)
    for made in (
        print_book(book_data(fudge, [recipe], date(2026, 11, 29))),
        print_sheet(recipe, batch, fudge.settings, None, PAPERS["a4"]),
    ):
        words = words_of(made)
        assert SAID in words
        assert "it “catches”" in words
        assert re.findall("\\S*['\"]\\S*", words) == ['9"']


# as typed -> as set in English
TYPED = {
    "the bakers' table, the 'best' of it": "the bakers’ table, the ‘best’ of it",
    "rock 'n' roll": "rock ’n’ roll",
    '"Don\'t," she said, "stop."': "“Don’t,” she said, “stop.”",
    '12" x 9" tin, 6\' of twine': '12" x 9" tin, 6\' of twine',
    '("so")': "(“so”)",
    '"as good as it gets in \'88"': "“as good as it gets in ’88”",
    "'68, the kids' favourite in the '90s": "’68, the kids’ favourite in the ’90s",
    "6'10\" of ribbon, 80's, Ann's '5 a day' mix": "6'10\" of ribbon, 80’s, Ann’s ‘5 a day’ mix",
}


@pytest.mark.parametrize("typed", list(TYPED))
def test_marks_are_told_apart(typed: str) -> None:
    assert curl(typed, "en_GB") == TYPED[typed]
