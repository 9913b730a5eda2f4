"""A new recipe of every kind, in every book's units and language, can be published as it stands."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

import pytest

from stillroom.beginning.book import Answers, settings_of
from stillroom.beginning.recipe import new_recipe, slug_of, write_recipe
from stillroom.beginning.written import fact, facts
from stillroom.core.book import BookSettings, place_book
from stillroom.core.checking import check_files
from stillroom.core.reading.facts_above import read_facts
from stillroom.core.reading.written_facts import NAMES
from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.core.words.said import read_room

BOOKS = ("GB", "US", "DE", "FR", "ES", "IT", "NL", "NO", "JP")


@pytest.mark.parametrize("country", BOOKS)
@pytest.mark.parametrize("kind", all_kinds())
def test_it_is_whole(kind: str, country: str, tmp_path: Path) -> None:
    settings = settings_of(Answers("A book", country))
    book = place_book(tmp_path, settings, "pages", "site")
    path = write_recipe(book, "Grandmother's best", kind)
    assert path == tmp_path / "recipes" / "grandmothers-best.md"
    (recipe,) = check_files([path], book, tmp_path)
    assert recipe.title == "Grandmother's best"
    assert recipe.kind.name == kind
    assert recipe.timeline, "its own dates, to be changed by hand"
    assert unknown_foods([recipe]) == ()
    assert warn_of_dates(recipe) == ()
    assert "# " in path.read_text(encoding="utf-8")


def test_american_kitchens_measure_by_the_cup() -> None:
    text = new_recipe("Plain cookies", "cookies", settings_of(Answers("A book", "US"))).text
    assert "2 cups all-purpose flour" in text
    assert "kind: cookie\n" in text


@pytest.mark.parametrize(
    "title",
    [
        "Gin: the plum one #3",
        '"Quoted" gin',
        "'Tis the season",
        "[Bracketed] {title}",
        "- dashed",
        "50 % off # note",
        "back\\slash",
        "Kürbis-Öl mit ß",
        "梅酒",
        "*starred*",
        "--- x",
    ],
)
def test_any_title_is_read_back(title: str, tmp_path: Path) -> None:
    book = place_book(tmp_path, BookSettings(), "pages", "site")
    path = write_recipe(book, title, "liqueur")
    (recipe,) = check_files([path], book, tmp_path)
    assert recipe.title == title


def test_a_title_without_a_word_is_refused(tmp_path: Path) -> None:
    book = place_book(tmp_path, BookSettings(), "pages", "site")
    with pytest.raises(Unreadable, match="is no title"):
        write_recipe(book, "---", "liqueur")
    assert not list(tmp_path.rglob("*.md"))


def test_nothing_is_written_over(tmp_path: Path) -> None:
    book = place_book(tmp_path, BookSettings(), "pages", "site")
    path = write_recipe(book, "Plum gin", "liqueur")
    path.write_text("mine", encoding="utf-8")
    with pytest.raises(ProblemsFound, match="is there already"):
        write_recipe(book, "Plum Gin!", "liqueur")
    assert path.read_text(encoding="utf-8") == "mine"


def test_a_title_that_another_recipe_has_is_refused(tmp_path: Path) -> None:
    book = place_book(tmp_path, BookSettings(), "pages", "site")
    write_recipe(book, "Plum gin", "liqueur").rename(tmp_path / "recipes" / "sloe.md")
    with pytest.raises(ProblemsFound, match='called "plum gin" already'):
        write_recipe(book, "plum gin", "liqueur")
    assert [path.name for path in book.recipe_files()] == ["sloe.md"]


@pytest.mark.parametrize(
    ("title", "kind", "says"),
    [
        ("  ", "jam", "no title"),
        ("x" * 91, "jam", "91 letters"),
        ("Gherkins", "pickle", "may be two kinds"),
        ("Boat", "boat", "is not a kind"),
    ],
)
def test_what_cannot_be_begun_is_said(title: str, kind: str, says: str) -> None:
    with pytest.raises(Unreadable, match=says):
        new_recipe(title, kind, BookSettings())


def test_names_of_files_can_be_addresses() -> None:
    assert slug_of("Con") == "con-recipe"
    assert len(slug_of("very " * 40)) <= 80


@pytest.mark.parametrize("words", ["2 cups sugar: white", "salt #2 # coarse", "'", '"a" b', "a: b"])
def test_a_fact_is_read_back_as_it_was_said(words: str) -> None:
    assert read_facts([fact("summary", words)], "", 1, NAMES).data == {"summary": words}
    rows = facts("ingredients", [words, words])
    assert read_facts(rows, "", 1, NAMES).data == {"ingredients": [words, words]}


def test_notes_are_in_the_books_language_where_it_has_them() -> None:
    german = new_recipe("Pflaumengin", "infusion", settings_of(Answers("Ein Buch", "AT"))).text
    assert "# Worin es verschenkt wird." in german
    assert "What sort of" not in german
    french = new_recipe("Gin de prunes", "infusion", settings_of(Answers("Un livre", "FR"))).text
    assert "# What it is given in." in french


def test_every_language_of_the_notes_has_every_note() -> None:
    folder = files("stillroom.beginning") / "said"
    rooms = {one.name: read_room("stillroom.beginning", one.name[:2]) for one in folder.iterdir()}
    assert {"en.yml", "de.yml"} <= set(rooms)
    for room in rooms.values():
        assert set(room["notes"]) == set(rooms["en.yml"]["notes"])
        assert "{kind}" in room["notes"]["timeline"]
