"""HTML that comes of Markdown is looked over again: nothing in it runs, fetches or sends."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml
from bs4 import BeautifulSoup

from markup_payloads import PAYLOADS
from publish.test_wall import build, small_book
from stillroom.publish.clean_html import clean_prose, drop_comments, find_faults
from stillroom.publish.templating import show_prose

ALLOWED_TAGS = {"p", "em", "strong", "a", "img", "div", "title", "b", "li", "ul"}


@pytest.mark.parametrize("payload", PAYLOADS)
def test_prose_keeps_nothing_that_runs_or_fetches(payload: str) -> None:
    for html in (
        str(show_prose(f"Words {payload}")),
        str(show_prose(payload)),
        clean_prose(payload),
    ):
        page = BeautifulSoup(html, "html.parser")
        assert {tag.name for tag in page.find_all(True)} <= ALLOWED_TAGS
        for tag in page.find_all(True):
            assert not [name for name in tag.attrs if name.startswith("on") or name == "style"]
            assert "evil.example" not in " ".join(map(str, tag.attrs.values()))
            assert "script:" not in " ".join(map(str, tag.attrs.values())).lower()
        assert "<!--" not in html


def test_prose_keeps_what_markdown_writes() -> None:
    table = "| i | j |\n|--:|---|\n| 1 | 2 |"
    text = f"A *b* [c](https://d.example/?e=1&f=2 'g') `<h>`\n\n{table}\n\n- k & l"
    html = str(show_prose(text))
    for part in (
        "<em>b</em>", 'href="https://d.example/?e=1&amp;f=2"', 'title="g"',
        "<code>&lt;h&gt;</code>", 'style="text-align: right;"', "<li>k &amp; l</li>",
    ):  # fmt: skip
        assert part in html


@pytest.mark.parametrize(
    ("html", "found"),
    [
        ("<p>Words</p><div class='note'><small>Own</small><br></div>", 0),
        ("<img src='pictures/a.svg' alt=''><a href='https://a.example/'>b</a>", 0),
        ("<script>x()</script>", 1),
        ("<p onclick='x()'>a</p>", 1),
        ("<img src='https://a.example/b.png'>", 1),
        ("<img srcset='a.png 1x, //b.example/c.png 2x'>", 1),
        ("<a href=' java\nscript:x()'>a</a>", 1),
        ("<iframe src='https://a.example/'></iframe>", 2),
        ("<style>p{color:red}</style>", 1),
        ("<p style='background:URL(x)'>a</p>", 1),
        ("<form><input name='to'></form>", 1),
    ],
)
def test_faults_of_a_page_are_told(html: str, found: int) -> None:
    assert len(list(find_faults(html))) == found


@pytest.mark.parametrize(
    ("html", "left"),
    [
        ("a<!-- b -->c", "ac"),
        ("a<!-- b\n-- c -->d<!---->e<!-->f", "adef"),
        ("a<!-- b --!>c", "ac"),
        ("a<!-- never closed", "a"),
        ("a < b and c > d", "a < b and c > d"),
    ],
)
def test_comments_are_dropped(html: str, left: str) -> None:
    assert drop_comments(html) == left


def test_a_page_of_the_book_is_refused_at_its_line(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    page = "# Words\n\nSome.\n\n<img src='https://a.example/b.png'>\n\n<script>x()</script>\n"
    (folder / "pages" / "words.md").write_text(page, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "words.md:5: " in built.stderr
    assert "words.md:7: " in built.stderr
    assert "Traceback" not in built.stderr


def test_a_comment_of_a_page_is_not_published(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    page = "# Words\n\nSome.\n\n<!-- Zebedee\nQuillfeather -->\n\nMore. <!-- Zebedee -->\n"
    (folder / "pages" / "words.md").write_text(page, encoding="utf-8")
    config = yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    built = build(folder)
    assert built.returncode == 0, built.stderr
    for path in (tmp_path / "site").rglob("*"):
        if path.is_file():
            assert b"Zebedee" not in path.read_bytes(), path
            if path.suffix == ".html":
                assert b"<!--" not in path.read_bytes(), path
