"""A long book's print room carries no card: each lies in a file beside its recipe."""

from __future__ import annotations

from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from mkdocs.commands.build import build
from mkdocs.config import load_config

from publish.test_kept_work import NAMES, write_book
from stillroom.publish import print_room


def built(folder: Path) -> Path:
    write_book(folder / "book")
    site = folder / "site"
    config = load_config(str(folder / "book" / "mkdocs.yml"), site_dir=str(site))
    config.plugins.on_startup(command="serve", dirty=False)
    build(config)
    return site


def page_of(path: Path) -> BeautifulSoup:
    return BeautifulSoup(path.read_text(encoding="utf-8"), "html.parser")


def test_the_cards_of_a_long_book_lie_beside_its_recipes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(print_room, "MOST_ON_PAGE", 100)
    short = page_of(built(tmp_path / "short") / "print-room" / "index.html")
    monkeypatch.setattr(print_room, "MOST_ON_PAGE", 3)
    site = built(tmp_path / "long")
    room = page_of(site / "print-room" / "index.html")
    assert len(short.select(".usage-card")) == len(NAMES)
    assert short.select("[data-card], [name=find]") == []
    assert room.select(".usage-card, .gift-tag") == []
    assert len(room.select("[name=find]")) == 1
    fields = room.select("[data-recipe]")
    assert [one["data-recipe"] for one in fields] == [
        one["data-recipe"] for one in short.select("li [data-recipe]")
    ]
    for field in fields:
        file = (site / "print-room" / field["data-card"]).resolve()
        card = page_of(file)
        assert card.select("meta[http-equiv=Content-Security-Policy]")  # opened by itself
        said = short.select_one(f'.usage-card[data-recipe="{field["data-recipe"]}"]')
        assert card.select_one(".usage-card").get_text() == said.get_text()  # type: ignore[union-attr]
        tag = card.find("template")
        assert tag is not None
        assert tag.find(class_="gift-tag") is not None  # type: ignore[union-attr]
        drawing = card.select_one(".card-emblem")
        assert drawing is not None
        assert (file.parent / str(drawing["src"])).resolve().is_file()
    told = room.select_one("noscript p")
    assert told is not None
    assert "each recipe’s own page" in told.get_text()
    link = told.select_one("a")
    assert link is not None
    assert (site / "print-room" / str(link["href"]) / "index.html").resolve().is_file()
