"""Designs of cards and tags: read from folders, checked when read, the same on page and paper."""

from __future__ import annotations

import io
import re
import shutil
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pdfplumber
import pytest
from click.testing import CliRunner

from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.contrast import LEAST, contrast, contrasts, grey
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.looks.card_designs import (
    DESIGNS,
    choose_design,
    design_of,
    designs_of,
    read_design,
    type_steps,
)
from stillroom.looks.card_pictures import card_picture, in_one_ink
from stillroom.printing.cards import CardJob, SheetOptions, print_cards, print_tags
from stillroom.publish.card_designs_page import (
    CARD_PICTURES,
    STYLES,
    CardLook,
    designs_data,
    list_design_files,
    picture_paths,
)
from stillroom.publish.leaves import open_library

ROOT = Path(__file__).resolve().parents[2]
SCRIPTS = ROOT / "builder/stillroom/publish/assets/js/paper"
TODAY = date(2026, 11, 25)

SEVENTH = """name: Summer fair
about: Bunting in one red.
paper: "#ffffff"
inks: {ink: "#102010", soft: "#203020", accent: "#5a0d0d", line: "#707070"}
border: {file: bunting.svg, corner: 10, across: 4}
title: {style: italic}
sides: two
"""
BUNTING = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 30 30">'
    '<path d="M1 1H29V29H1z" fill="none" stroke="#ab12cd"/></svg>'
)
RECIPE = """---
title: Quince drops
kind: infusion
makes: 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - 3 quinces, about 600 g
---

## Method

1. Steep {quinces} in {vodka} for 8 weeks.
"""


@pytest.fixture
def fair(tmp_path: Path) -> Path:
    """Return a book with one recipe and a design of its own."""
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "quince-drops.md").write_text(RECIPE, encoding="utf-8")
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: A fair\nsite_url: https://fair.example/\ntheme: material\n"
        "plugins:\n  - stillroom:\n      design: summer-fair\n",
        encoding="utf-8",
    )
    own = tmp_path / "designs" / "summer-fair"
    own.mkdir(parents=True)
    (own / "design.yml").write_text(SEVENTH, encoding="utf-8")
    (own / "bunting.svg").write_text(BUNTING, encoding="utf-8")
    return tmp_path


def test_one_more_design_is_a_folder_and_no_code(fair: Path) -> None:
    book = open_book(fair / "mkdocs.yml")
    recipes = book.load()
    design = design_of(book)
    assert design.name == "Summer fair"
    card = make_card(recipes[0], book.settings, TODAY, url="https://fair.example/r/quince-drops/")
    jobs = [CardJob(card, recipes[0], 1, card_picture(recipes[0], book, design))]
    options = SheetOptions(design=design)
    for made in (
        print_cards(jobs, "90x65", options),
        print_cards(jobs, "folded-a6", options),
        print_tags(jobs, tag_shape("rectangle"), options),
    ):
        with pdfplumber.open(io.BytesIO(made)) as pdf:
            page = pdf.pages[0]
            title = [char for char in page.chars if char["size"] > 12 and char["text"].strip()]
            bunting = [
                one for one in (*page.curves, *page.rects, *page.lines)
                if _hex(one["stroking_color"]) == "#ab12cd"
            ]  # fmt: skip
        assert title
        assert "EBGaramondItalic-Italic" in {char["fontname"].partition("+")[2] for char in title}
        assert bunting
    library = open_library(book, TODAY)
    files = dict(list_design_files(library))
    assert '[data-design="summer-fair"]' in files[STYLES]
    assert "#5a0d0d" in files[STYLES]
    assert files["assets/stillroom/designs/summer-fair.svg"] == BUNTING
    assert "summer-fair" in [one["id"] for one in designs_data(library)]


def _hex(colour: object) -> str:
    if not isinstance(colour, (tuple, list)) or len(colour) != 3:
        return ""
    return "#" + "".join(f"{round(float(part) * 255):02x}" for part in colour)


def test_there_are_seven_and_none_is_hard_to_read() -> None:
    found = designs_of()
    assert len(found) >= 7
    for design in found.values():
        for ink in (design.inks.ink, design.inks.soft, design.inks.accent):
            assert min(contrasts(ink, design.paper).values()) >= LEAST, design.slug


# WCAG 2.2's own worked example and two that every table has; greys of a pure colour by BT.601
@pytest.mark.parametrize(
    ("ink", "paper", "nominal"),
    [("#000000", "#ffffff", 21.0), ("#767676", "#ffffff", 4.54), ("#0000ff", "#ffffff", 8.59)],
)
def test_contrast_is_that_of_published_tables(ink: str, paper: str, nominal: float) -> None:
    assert contrast(ink, paper) == pytest.approx(nominal, abs=0.01)
    assert grey("#00ff00") == "#969696"


WRONG = {
    "pale": (SEVENTH.replace("#203020", "#9a9a9a"), 'the ink "soft" #9a9a9a is too pale on'),
    "pale on brown card": (SEVENTH.replace("#203020", "#6a6a6a"), "is too pale on brown card"),
    "no colour": (SEVENTH.replace("#102010", "green"), '"inks ink" is not right: it says "green"'),
    "an unknown word": (f"{SEVENTH}glitter: lots\n", "a design says nothing of that name"),
    "no name": (SEVENTH.replace("name: Summer fair\n", ""), '"name" is not right: it is missing'),
    "no border": (SEVENTH.replace("bunting", "flags"), 'there is no "flags.svg" beside it'),
    "cut too deep": (SEVENTH.replace("corner: 10", "corner: 15"), "cannot|can be cut at 15"),
    "no sense": ("name: [", "this cannot be read"),
}


@pytest.mark.parametrize("case", WRONG)
def test_a_wrong_design_gets_one_plain_message(fair: Path, case: str) -> None:
    text, said = WRONG[case]
    folder = fair / "designs" / "summer-fair"
    (folder / "design.yml").write_text(text, encoding="utf-8")
    with pytest.raises(Unreadable, match=re.escape(said) if "|" not in said else said):
        read_design(folder)


def test_a_border_fetches_nothing(fair: Path) -> None:
    folder = fair / "designs" / "summer-fair"
    (folder / "bunting.svg").write_text(
        BUNTING.replace("<path", '<image href="https://elsewhere.example/a.png"/><path'),
        encoding="utf-8",
    )
    with pytest.raises(Unreadable, match="holds more than lines and shapes"):
        read_design(folder)


def test_an_unknown_design_is_told_with_those_there_are(fair: Path) -> None:
    with pytest.raises(Unreadable, match=r'no design "leafs".*Write "leaves".*"summer-fair"'):
        choose_design("leafs", open_book(fair / "mkdocs.yml"))
    config = fair / "mkdocs.yml"
    config.write_text(
        config.read_text(encoding="utf-8").replace("summer-fair", "winters"), encoding="utf-8"
    )
    with pytest.raises(ProblemsFound, match=r'mkdocs.yml:6: There is no design "winters"'):
        design_of(open_book(config))
    asked = ["print", "cards", "--design", "lace", str(fair / "recipes" / "quince-drops.md")]
    done = CliRunner().invoke(main, asked)
    assert done.exit_code == 2
    assert 'There is no design "lace"' in done.output
    assert "Traceback" not in done.output


def test_a_design_is_read_anew_when_it_changes(fair: Path) -> None:
    folder = fair / "designs" / "summer-fair"
    assert read_design(folder).name == "Summer fair"
    shutil.copy(folder / "design.yml", folder / "old.txt")
    (folder / "design.yml").write_text(
        SEVENTH.replace("Summer fair", "Autumn fair"), encoding="utf-8"
    )
    assert read_design(folder).name == "Autumn fair"


def test_one_ink_leaves_one_colour(recipes_of_the_demo: Callable[[], list[str]]) -> None:
    for svg in recipes_of_the_demo():
        inky = in_one_ink(svg, "#1f140b")
        assert set(re.findall(r"#[0-9a-fA-F]{6}\b", inky)) <= {"#1f140b"}


def test_recipes_without_a_picture_share_the_drawing_of_their_kind(fair: Path) -> None:
    recipes = fair / "recipes"
    for name in ("pear-drops", "sloe-drops"):
        (recipes / f"{name}.md").write_text(RECIPE.replace("Quince", name[:-6].title()), "utf-8")
    book = open_book(fair / "mkdocs.yml")
    book.pictures_dir.mkdir(parents=True)
    (book.pictures_dir / "sloe-drops.svg").write_text(BUNTING, encoding="utf-8")
    library = open_library(book, TODAY)
    files = dict(list_design_files(library))
    drawn = sorted(path.removeprefix(CARD_PICTURES) for path in files if CARD_PICTURES in path)
    assert drawn == [
        *("kinds/infusion.brown-card.svg", "kinds/infusion.svg"),
        *("sloe-drops.brown-card.svg", "sloe-drops.svg"),
    ]
    assert "#ab12cd" in files[f"{CARD_PICTURES}sloe-drops.svg"]
    assert "#ab12cd" not in files[f"{CARD_PICTURES}sloe-drops.brown-card.svg"]
    for recipe in library.recipes:
        look = CardLook.of(recipe, library)
        assert look.emblem == ("" if recipe.slug == "sloe-drops" else "always")
        for path in (*picture_paths(look, library), look.path(choose_design("brown-card"))):
            assert path in files


@pytest.fixture
def recipes_of_the_demo() -> Callable[[], list[str]]:
    def read() -> list[str]:
        book = open_book(ROOT / "mkdocs.yml")
        plain = choose_design("plain")
        return [card_picture(recipe, book, plain).svg for recipe in book.load()]

    return read


def test_every_recipe_of_the_demo_has_its_own_drawing() -> None:
    book = open_book(ROOT / "mkdocs.yml")
    plain = choose_design("plain")
    shown = [card_picture(recipe, book, plain).svg for recipe in book.load()]
    assert len(set(shown)) == len(shown) == 20


def test_the_browser_names_the_same_steps_of_type() -> None:
    script = "".join(
        (SCRIPTS / name).read_text(encoding="utf-8") for name in ("card-fit.js", "basket-fit.js")
    )
    for step in (step for steps in type_steps().values() for step in steps):
        assert f'"{step.name}"' in script
    for use, steps in type_steps().items():
        assert not use.startswith("large") or min(min(s.text, s.plain) for s in steps) >= 12


def test_every_folder_of_designs_is_read() -> None:
    folders = {path.name for path in DESIGNS.iterdir() if path.is_dir()}
    assert folders == set(designs_of())
