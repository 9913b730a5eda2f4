"""The kitchen sheet read from its PDF: what it says it makes, its vessel, and its large form."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner

from letters import open_letters
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.paper.sheets import PAPERS
from stillroom.core.size.scaling import scale_recipe
from stillroom.printing.kitchen_sheet import print_sheet as sheet_of

from .conftest import MM, ROOT, words_of
from .paragraphs import paragraphs_of

# Measures and containers as cooks ask for them; what must stand after "Makes", and what nowhere.
ASKED: dict[str, tuple[str, tuple[str, str], str, tuple[str, ...]]] = {
    "jars of another size": ("quince-chutney", ("--fill", "7 x 190 ml"), "7 jars of 190 ml",
        ("200 ml and a part", "jars of 200 ml")),
    "bottles for a chutney": ("quince-chutney", ("--fill", "5 bottles of 250 ml"),
        "5 bottles of 250 ml", ("jars of 250", "jars of 200 ml")),
    "named after their size": ("bramble-jelly", ("--fill", "3 x 500 ml clip-top jars"),
        "3 clip-top jars of 500 ml", ("jars of 200 ml",)),
    "two sizes": ("bitter-orange-spirit", ("--fill", "12 x 50 ml + 1 flask of 100 ml"),
        "12 bottles of 50 ml and 1 flask of 100 ml", ("150 ml",)),
    "to the brim": ("bramble-jelly", ("--fill", "9 jars of 220 ml to the brim"),
        "9 jars of 220 ml to the brim", ("jars of 200 ml",)),
    "by weight": ("bramble-jelly", ("--fill", "4 jars of 340 g"), "4 jars of 340 g",
        ("jars of 200 ml",)),
    "of a measured thing": ("heather-mead", ("--fill", "6 bottles of 330 ml"),
        "6 bottles of 330 ml", ("bottles of 750 ml",)),
    "by what it makes": ("bitter-orange-spirit", ("--makes", "500 ml"), "about 500 ml",
        ("bottles of",)),
    "by what is at hand": ("bitter-orange-spirit", ("--have", "500 ml vodka + 30 cinnamon sticks"),
        "about 475 ml", ("960 ml",)),
}  # fmt: skip

Print = Callable[..., bytes]


@pytest.fixture
def print_sheet(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Print:
    def run(slug: str, *words: str) -> bytes:
        monkeypatch.chdir(ROOT)
        out = tmp_path / "sheet.pdf"
        asked = ["print", "sheet", f"recipes/{slug}.md", *words, "--out", str(out), "--force"]
        done = CliRunner().invoke(main, asked)
        assert done.exit_code == 0, done.output
        return out.read_bytes()

    return run


@pytest.mark.parametrize("case", ASKED)
def test_it_makes_what_was_asked_for_and_says_so(print_sheet: Print, case: str) -> None:
    slug, words, wanted, wrong = ASKED[case]
    said = words_of(print_sheet(slug, *words))
    makes = said[said.index("Makes ") : said.index("The recipe")]
    assert wanted in makes
    assert not [one for one in wrong if one in makes]


def test_what_runs_short_and_what_is_left_over_are_told(print_sheet: Print) -> None:
    said = words_of(
        print_sheet("bitter-orange-spirit", "--have", "500 ml vodka + 30 cinnamon sticks")
    )
    assert "The vodka runs short first." in said
    assert re.search(r"Left over: \d+ cinnamon sticks\.", said)


def test_a_vessel_that_is_too_small_is_told_beside_it(print_sheet: Print) -> None:
    with open_letters(print_sheet("quince-ratafia", "--times", "3")) as pdf:
        lines = pdf.pages[0].crop((0, 0, 0.4 * 210 * MM, pdf.pages[0].height)).extract_text_lines()
    at = next(n for n, line in enumerate(lines) if line["text"] == "2 l clip-top jar")
    assert lines[at + 1]["text"].startswith("It would not fit the 2 l vessel")
    said = " ".join(line["text"] for line in lines)
    assert said.count("would not fit") == 1
    assert "would not fit" not in words_of(print_sheet("quince-ratafia"))


@pytest.mark.parametrize(
    ("slug", "size", "named"),
    [
        ("quince-ratafia", "5 l", "your own vessel of 5 l (the recipe says 2 l clip-top jar)"),
        ("quince-ratafia", "1.5 l jar", "your own vessel of 1.5 l"),
    ],
)
def test_a_cooks_own_vessel_is_named_and_not_warned_of(
    print_sheet: Print, slug: str, size: str, named: str
) -> None:
    said = words_of(print_sheet(slug, "--vessel", size))
    assert named in said
    assert "would not fit" not in said


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("slug", ["quince-chutney", "heather-mead", "rosemary-salt"])
def test_the_large_form_is_read_at_arms_length(print_sheet: Print, slug: str, paper: str) -> None:
    made = print_sheet(slug, "--large", "--paper", paper, "--start", "2026-11-28")
    small = words_of(print_sheet(slug, "--paper", paper, "--start", "2026-11-28"))
    said = words_of(made)
    for words in ("Take care", "Method", "Contains", "This box is worked out"):
        assert (words.lower() in said.lower()) == (words.lower() in small.lower()), words
    with open_letters(made) as pdf:
        sides = [[char for char in page.chars if char["text"].strip()] for page in pdf.pages]
        assert min(char["size"] for side in sides for char in side) >= 14
        steps = [char["size"] for char in sides[0] if char["text"].isdigit()]
        assert max(steps) >= 20
        inks = {tuple(char["non_stroking_color"]) for side in sides for char in side}
        # black, or the dark ink of the book: 16.1 to 1 on white (WCAG 2.2, 1.4.6 asks 7 to 1)
        assert all(max(ink) < 0.2 for ink in inks), inks
        # no step is broken over two sides: each begins with its number, whatever went before
        for side in pdf.pages[1:]:
            first = side.extract_text_lines()[0]["text"]
            assert re.match(r"\d+\. |[A-Z]", first), first


LISTED = """900 g cauliflower|450 g marrow|2 cucumbers|225 g French beans|225 g carrots
2 large onions|225 g sea salt|1.8 l white wine vinegar|350 g soft dark brown sugar
1 tbsp ground turmeric
1 tbsp English mustard powder|2 tbsp ground ginger|1 tbsp ground allspice|1 tbsp ground mace
1 tbsp ground black pepper|75 g plain flour|2 tbsp mustard seeds|2 bay leaves|1 tsp celery seeds
1 tsp coriander seeds|1 chilli|2 cloves garlic|1 red pepper|200 g peas|100 g sultanas"""
"""A stranger's piccalilli (lowsizerghbarn.co.uk) and a few of its cousins' spices."""


def test_no_line_of_a_list_goes_over_the_page_alone_and_no_word_of_a_title(tmp_path: Path) -> None:
    config = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    config = re.sub(r"      family_book:.*\n(?: {8}.*\n)+", "", config)
    (tmp_path / "mkdocs.yml").write_text(
        config.replace("docs_dir: site_demo/pages", "docs_dir: pages"), encoding="utf-8"
    )
    (tmp_path / "recipes").mkdir()
    (tmp_path / "pages" / "pictures").mkdir(parents=True)
    foods = LISTED.replace("\n", "|").split("|")
    turned = 0
    for many in range(19, len(foods) + 1):
        lines = "".join(f"  - {food}\n" for food in foods[:many])
        (tmp_path / "recipes" / "rich.md").write_text(
            "---\ntitle: Rich piccalilli with turmeric, mustard and a great many vegetables\n"
            f"kind: preserve\nmakes: 7 jars of 350 ml\ningredients:\n{lines}---\n\n"
            "## Method\n\n1. Salt the vegetables overnight, drain and simmer in the rest.\n",
            encoding="utf-8",
        )
        book = open_book(tmp_path / "mkdocs.yml")
        (recipe,) = book.load()
        made = sheet_of(
            recipe, scale_recipe(recipe, None), book.settings, None, PAPERS["a4"], large=True
        )
        with open_letters(made) as pdf:
            said = [" ".join((page.extract_text() or "").split()) for page in pdf.pages]
            title = next(one for one in paragraphs_of(pdf) if one.kind == "H1")
        there = [sum(f" {food} " in f" {page} " for food in foods[:many]) for page in said]
        assert sum(there) == many
        assert 1 not in there, (many, there)
        assert len(title.said) > 1
        assert len(title.said[-1].split()) > 1, title.said
        turned += there[1] > 0
    assert turned > 2
