"""Every link and file of the built demo book resolves, and nothing leaves the host."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urldefrag, urlsplit

import pytest
from bs4 import BeautifulSoup, Tag

Pages = dict[str, BeautifulSoup]

# Addresses that name a thing and are never fetched: an XML namespace, a vocabulary.
NAMES_NOT_FETCHED = ("http://www.w3.org/", "https://schema.org", "http://schema.org")
FETCHING = {
    "script": "src", "img": "src", "iframe": "src", "source": "src", "video": "src",
    "audio": "src", "embed": "src", "object": "data", "form": "action", "use": "href",
}  # fmt: skip


def links_of(page: BeautifulSoup) -> Iterator[tuple[Tag, str]]:
    for element in page.select("[href], [src], [action]"):
        for attribute in ("href", "src", "action"):
            if element.has_attr(attribute):
                yield element, str(element[attribute])


def base_of(page: BeautifulSoup, path: str) -> str:
    """Return the address at which a page stands."""
    return "/" + path.removesuffix("index.html")


def resolve(built_book: Path, start: str, target: str) -> Path:
    absolute = start.rsplit("/", 1)[0] + "/" + target if not target.startswith("/") else target
    parts: list[str] = []
    for part in unquote(absolute).split("/"):
        if part == "..":
            assert parts, f"{target} climbs above the book from {start}"
            parts.pop()
        elif part not in ("", "."):
            parts.append(part)
    place = built_book.joinpath(*parts)
    return place / "index.html" if place.is_dir() else place


def test_every_link_and_file_resolves_with_its_anchor(built_book: Path, pages: Pages) -> None:
    site = pages["index.html"].find("link", rel="canonical")["href"]
    prefix = urlsplit(site).path
    names = {path: {str(one["id"]) for one in page.select("[id]")} for path, page in pages.items()}
    missing = []
    for path, page in pages.items():
        for _, link in links_of(page):
            if link.startswith(("data:", "mailto:", "javascript:")):
                continue
            whole = link.startswith(site)
            local = link.removeprefix(site) if whole else link
            if urlsplit(local).scheme or local.startswith("//"):
                continue
            address, anchor = urldefrag(local)
            address = address.split("?")[0]
            if path == "404.html":
                address = address.removeprefix(prefix)
            start = "/" if whole or path == "404.html" else base_of(page, path)
            file = resolve(built_book, start, address) if address or whole else built_book / path
            if not file.is_file():
                missing.append(f"{path}: {link}")
            elif anchor and file.suffix == ".html":
                there = names[file.relative_to(built_book).as_posix()]
                missing += [] if unquote(anchor) in there else [f"{path}: {link} (no such anchor)"]
    assert missing == []


def test_no_page_fetches_from_another_host(pages: Pages) -> None:
    outside = []
    for path, page in pages.items():
        for element, link in links_of(page):
            if not re.match(r"(https?:)?//", link) or element.name == "a":
                continue
            if element.name == "link" and element.get("rel") in (["canonical"], "canonical"):
                continue
            outside.append(f"{path}: <{element.name}> {link}")
        for element in page.select("[srcset], [poster], [style*='url(']"):
            outside.append(f"{path}: {element.name}")
    assert outside == []


# What the theme ships names other hosts in code paths that this book never enters (diagrams, a
# source-code badge). tests/browser/test_requests.py watches that nothing is asked of them.
VENDORED = re.compile(r"assets/javascripts/|assets/stylesheets/")


def test_no_stylesheet_script_or_drawing_of_the_book_names_another_host(built_book: Path) -> None:
    found = []
    for path in built_book.rglob("*"):
        name = path.relative_to(built_book).as_posix()
        if path.suffix not in {".css", ".js", ".svg", ".json"} or VENDORED.match(name):
            continue
        text = path.read_text(encoding="utf-8")
        if name == "search/search_index.json":
            json.loads(text)
            continue
        found += [
            f"{name}: {address}"
            for address in re.findall(r"(?:https?:)?//[a-z0-9.-]+\.[a-z]{2,}[^\s\"')]*", text)
            if not address.startswith(NAMES_NOT_FETCHED)
        ]
    site = "https://thistledown-lane.example/"
    assert [line for line in found if site not in line] == []


def test_the_theme_asks_for_no_shim_and_no_font(pages: Pages) -> None:
    for path, page in pages.items():
        text = str(page.head)
        assert "iframe-worker" not in text, path
        assert "preconnect" not in text, path


@pytest.mark.parametrize("folder", ["css", "js", "fonts"])
def test_the_books_own_assets_are_there(built_book: Path, folder: str) -> None:
    assert list((built_book / "assets" / "stillroom" / folder).iterdir())
