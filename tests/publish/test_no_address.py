"""A book that has no address yet prints no square that leads nowhere; another keeps its own."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from click.testing import CliRunner

from stillroom.beginning.book import Answers, begin_book
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.publish.card_page import view_card
from stillroom.publish.library import Library
from stillroom.publish.one_page import show_recipe
from stillroom.publish.print_room import PrintRoomLeaf

TODAY = date(2026, 11, 29)


def _library(folder: Path, address: str) -> Library:
    begin_book(folder, Answers(title="Tried", site_url=address))
    book = open_book(folder / "mkdocs.yml")
    return Library(book, book.load(), TODAY)


def test_without_an_address_the_card_bears_no_square(tmp_path: Path) -> None:
    library = _library(tmp_path, "")
    card = view_card(library.recipes[0], library)
    assert (card.qr_svg, card.address) == ("", "")
    page = BeautifulSoup(show_recipe(library.book, library.recipes[0], TODAY), "html.parser")
    assert page.select(".card-qr, .card-address, .share__code, .share__link") == []
    room = PrintRoomLeaf().body(library, "", lambda uri: uri, "")
    assert "no square to scan" in room
    assert "card-qr" not in room


def test_with_an_address_it_does(tmp_path: Path) -> None:
    library = _library(tmp_path, "https://book.example/")
    card = view_card(library.recipes[0], library)
    assert card.qr_svg.startswith("<svg")
    assert card.address == "book.example/r/vanilla-sugar"
    page = BeautifulSoup(show_recipe(library.book, library.recipes[0], TODAY), "html.parser")
    assert len(page.select(".card-qr svg")) == len(page.select(".share__code svg")) == 1
    assert "no square to scan" not in PrintRoomLeaf().body(library, "", lambda uri: uri, "")


@pytest.mark.parametrize(("address", "said"), [("", 1), ("https://book.example/", 0)])
def test_where_cards_are_printed_it_is_said_how_to_set_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, address: str, said: int
) -> None:
    _library(tmp_path / "book", address)
    monkeypatch.chdir(tmp_path / "book")
    done = CliRunner().invoke(main, ["print", "cards", "--out", str(tmp_path / "cards.pdf")])
    assert done.exit_code == 0, done.output
    assert done.stdout.count("site_url") == said
