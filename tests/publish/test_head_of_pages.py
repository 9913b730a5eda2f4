"""What the settings say of a book is words in every page's head and foot, whatever signs it has."""

from __future__ import annotations

import pytest
import yaml
from bs4 import BeautifulSoup

from publish.test_wall import build, small_book

SAID = 'Recipes from "the Lane" onload="pwned=1" & <b>more</b> </title><script>pwned=1</script>'
OF_PAGE = {
    "title": "Jam & <i>jelly</i>",
    "description": 'Our "own" page onload="pwned=1" & <b>b</b>',
}
SETTINGS = {"site_name": "A & B's <i>book</i>", "site_description": SAID, "site_author": SAID}


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> dict[str, BeautifulSoup]:
    folder = small_book(tmp_path_factory.mktemp("head"))
    settings = folder / "mkdocs.yml"
    written = yaml.safe_load(settings.read_text(encoding="utf-8")) | SETTINGS
    settings.write_text(yaml.safe_dump(written), encoding="utf-8")
    said = f"---\n{yaml.safe_dump(OF_PAGE)}---\n\nWords of our own.\n"
    (folder / "pages" / "ours.md").write_text(said, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 0, built.stderr
    return {
        path.relative_to(folder / "site").as_posix(): BeautifulSoup(
            path.read_text(encoding="utf-8"), "html.parser"
        )
        for path in (folder / "site").rglob("*.html")
    }


def test_description_and_author_are_whole_words_in_every_head(
    pages: dict[str, BeautifulSoup],
) -> None:
    own = pages["404.html"].select_one("meta[name=description]")
    assert own is not None
    assert own["content"] == SAID
    for name, page in pages.items():
        for meta in page.select("meta[name]"):
            assert set(meta.attrs) <= {"name", "content", "media"}, name
        author = page.select_one("meta[name=author]")
        assert author is None or author["content"] == SAID
        foot = page.select_one(".colophon")
        assert foot is None or SETTINGS["site_name"] in foot.get_text()
        assert page.select("title i, .colophon i, head b") == []
        assert not any("pwned" in script.get_text() for script in page.select("script"))


def test_what_a_page_says_of_itself_is_whole_words_in_its_head(
    pages: dict[str, BeautifulSoup],
) -> None:
    head = pages["ours/index.html"].head
    assert head is not None
    (own,) = head.select("meta[name=description]")
    assert (own["content"], set(own.attrs)) == (OF_PAGE["description"], {"name", "content"})
    assert head.title is not None
    assert head.title.get_text().startswith(OF_PAGE["title"])
    assert head.select("b, i") == []


def test_a_policy_stands_in_every_page(pages: dict[str, BeautifulSoup]) -> None:
    assert len(pages) >= 8
    for name, page in pages.items():
        assert page.select("meta[http-equiv=Content-Security-Policy]"), name
