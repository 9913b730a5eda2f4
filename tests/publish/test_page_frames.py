"""A page that is filled into the theme's frame is the page that the theme sets, to the byte."""

from __future__ import annotations

import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import jinja2
import pytest
import yaml
from mkdocs.commands.build import build
from mkdocs.config import load_config

from stillroom.publish import page_frames
from stillroom.publish.page_frames import PageFrames

ROOT = Path(__file__).resolve().parents[2]
DRAWN = ("almond-shortbread", "bramble-jelly", "dried-orange-garland", "quince-ratafia")
PLAIN = """---
title: {title}
kind: infused salt
makes: 200 g
{more}ingredients:
  - 190 g coarse sea salt
  - 10 g rosemary leaves
---
## Method
1. Dry the rosemary, and grind it with the salt.
"""
OWN = {
    "salt-and-more": ('"Salt & more: the cook\'s \\"own\\""', "summary: A < B & so on.\n"),
    "plain-salt": ("Plain salt", ""),
}


def write_book(folder: Path, theme: Mapping[str, str]) -> None:
    (folder / "recipes").mkdir(parents=True)
    (folder / "pages" / "pictures" / "previews").mkdir(parents=True)
    for name in DRAWN:
        shutil.copy(ROOT / "recipes" / f"{name}.md", folder / "recipes")
        shutil.copy(ROOT / f"site_demo/pages/pictures/{name}.svg", folder / "pages" / "pictures")
    preview = "site_demo/pages/pictures/previews/quince-ratafia.png"
    shutil.copy(ROOT / preview, folder / "pages" / "pictures" / "previews")
    for name, (title, more) in OWN.items():
        text = PLAIN.format(title=title, more=more)
        (folder / "recipes" / f"{name}.md").write_text(text, encoding="utf-8")
    (folder / "pages" / "index.md").write_text("Words.\n", encoding="utf-8")
    config = {
        "site_name": "Salt & sons",
        "site_url": "https://short.example/deep/",
        "docs_dir": "pages",
        "theme": {"name": "material", "font": False, **theme},
        "plugins": ["search", "stillroom"],
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")


@pytest.fixture
def filled(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Gather the address of each page that is filled."""
    monkeypatch.setenv("STILLROOM_CACHE", "off")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795867200")
    told: list[str] = []
    fill = page_frames._filled

    def seen(frame: Any, words: Mapping[str, str]) -> str:
        told.append(words["address"].rstrip("/").rpartition("/")[2])
        return fill(frame, words)

    monkeypatch.setattr(page_frames, "_filled", seen)
    return told


def built(folder: Path) -> dict[str, bytes]:
    config = load_config(str(folder / "mkdocs.yml"))
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    config.plugins["stillroom"].site = None  # MkDocs keeps one plugin for all that it does
    site = folder / "site"
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


def test_a_filled_page_is_what_the_theme_sets(
    tmp_path: Path, filled: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    write_book(tmp_path / "book", {})
    with_frames = built(tmp_path / "book")
    assert set(filled) == {*DRAWN, *OWN}
    filled.clear()
    monkeypatch.setattr(PageFrames, "ask_for", lambda *_: None)
    assert built(tmp_path / "book") == with_frames
    assert not filled
    page = with_frames["r/salt-and-more/index.html"].decode()
    assert "<title>Salt &amp; more: the cook&#39;s &#34;own&#34; · Salt &amp; sons</title>" in page


def test_whose_theme_is_their_own_has_no_page_filled(tmp_path: Path, filled: list[str]) -> None:
    own = tmp_path / "book" / "own" / "partials"
    write_book(tmp_path / "book", {"custom_dir": "own"})
    own.mkdir(parents=True)
    (own / "footer.html").write_text("<footer>At {{ page.url }}</footer>", encoding="utf-8")
    site = built(tmp_path / "book")
    assert not filled
    assert b"<footer>At r/bramble-jelly/</footer>" in site["r/bramble-jelly/index.html"]


def parts_of(template: str) -> object:
    told = jinja2.Environment().from_string(template).render(title=page_frames._mark("title"))
    return page_frames._parts_of(told, "")


@pytest.mark.parametrize(
    ("template", "filled_in"),
    [
        ("a {{ title }} b", "a <i>Salt</i> &amp; <b> b"),
        ("a {{ title | e }} b", "a &lt;i&gt;Salt&lt;/i&gt; &amp;amp; &lt;b&gt; b"),
        ("a {{ title | striptags | e }} b", "a Salt &amp; b"),
    ],
)
def test_a_fact_is_filled_in_as_the_theme_writes_it(template: str, filled_in: str) -> None:
    words = {"title": "<i>Salt</i> &amp; <b>"}
    frame = parts_of(template)
    assert isinstance(frame, tuple)
    assert page_frames._filled(frame, words) == filled_in
    assert jinja2.Environment().from_string(template).render(**words) == filled_in


@pytest.mark.parametrize(
    "template",
    [
        "{{ title | striptags }}",
        "{{ title[1:] }}",
        "{{ title | urlencode }}",
        "{{ title | upper }}",
    ],
)
def test_a_fact_written_in_another_way_makes_no_frame(template: str) -> None:
    assert parts_of(f"a {template} b") is None
