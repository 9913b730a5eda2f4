"""The wall's last table: lists that are none in any file, and are one once their page is set.

A page is headed by its file's name, by a fact above it or by the book's settings; marks fall away;
a program of the book's own, or its theme, brings in what lies in no published folder. Nothing of
them is put in place, and what is like them is built, and built again over itself.
"""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from publish.test_wall import build, small_book
from stillroom.core.private.as_page import find_page, may_show_list
from stillroom.core.private.seeking import Seeker
from stillroom.publish.wall import find_private

ROWS = "- Jo and Sam: no nuts, small basket\n- Nan: by post\n- The Ashes next door: vegan\n"
SET_ROWS = "<ul>\n<li>Jo and Sam: no nuts, small basket</li>\n<li>Nan: by post</li>\n</ul>"
TABLE = "<table>\n<tr><th>Name</th><th>Basket</th><th>Avoid</th></tr>\n" + "".join(
    f"<tr><td>{who}</td><td>small</td><td>{what}</td></tr>\n"
    for who, what in (("Jo", "nuts"), ("Nan", "milk"))
) + "</table>\n"  # fmt: skip

# a page, by what makes a list of it
PAGES: dict[str, tuple[str, str]] = {
    "its file's name": ("giving-list.md", ROWS),
    "its file's name, further down": ("ours/our_giving_list.md", f"Some words.\n\n{ROWS}"),
    "a fact above it": ("named.md", f"---\ntitle: Our giving list\n---\n\n{ROWS}"),
    "the settings": ("plain.md", ROWS),
    "a bold word of its heading": ("bold.md", f"# Giving **list**\n\n{ROWS}"),
    "both words bold": ("both.md", f"# **Giving** *list*\n\n{ROWS}"),
    "a link in its heading": ("link.md", f"# Giving [list](index.md)\n\n{ROWS}"),
    "a link named elsewhere": ("far.md", f"# Giving [list][x]\n\n{ROWS}\n[x]: index.md\n"),
    "a sign taken back": ("back.md", f"# Giving\\-list\n\n{ROWS}"),
    "a comment in its heading": ("comment.md", f"# Giv<!-- <b> -->ing list\n\n{ROWS}"),
    "a long comment": ("remark.md", f"# Giving <!-- {'a > b ' * 900}-->list\n\n{ROWS}"),
    "struck letters": ("code.md", f"# Giving `list`\n\n{ROWS}"),
    "a heading below": ("below.md", f"# Winter\n\nSome words.\n\n## *Giving* list\n\n{ROWS}"),
    "a key with marks in it": (
        "key.md",
        "**giving** list: Winter\n\n**house**holds:\n\n- name: Jo\n",
    ),
    "a file brought in": ("brought.md", '# Winter\n\n--8<-- "ours.txt"\n'),
}
# a page whose own words tell it: it is refused before anything is built
TOLD_BEFORE: dict[str, str] = {
    "a gap that holds together": f"# Giving\u00a0list\n\n{ROWS}",
    "two gaps": f"# Giving  list\n\n{ROWS}",
    "a heading over two lines": f"Giving\nlist\n======\n\n{ROWS}",
    "a box": f'!!! note "Giving list"\n\n{ROWS}',
    "a fold": f'??? "Our giving list"\n\n{ROWS}',
    "an open fold": f'???+ tip "Giving list"\n\n{ROWS}',
    "a tab": f'=== "Giving list"\n\n{ROWS}',
}
SET: dict[str, str] = {
    "a heading with marks": f"<h1>Giving <strong>list</strong></h1>{SET_ROWS}",
    "a heading with its link": '<h2 id="a">Giv<b>ing</b> list<a class="headerlink" '
    f'href="#a">&para;</a></h2>{SET_ROWS}',
    "a box": f'<p class="admonition-title">Giving list</p>{SET_ROWS}',
    "a fold": f"<details><summary>Giving list</summary>{SET_ROWS}</details>",
    "a tab": '<div class="tabbed-labels"><label for="__tabbed_1_1">Giving list</label></div>'
    f"{SET_ROWS}",
    "a table's own title": "<table><caption>Giving list</caption><tr><td>Jo</td><td>no nuts</td>"
    "</tr><tr><td>Nan</td><td>by post</td></tr></table>",
}
RECIPE = """---
title: Giving list
kind: craft
makes: 3 cards
materials:
  - 3 sheets card
---

Jo gets one.

## Method

1. Cut {card}.

## For whom

- Jo and Sam: no nuts, small basket
- Nan: by post
"""
MADE = '{"giving list": "Winter", "households": [{"name": "Jo", "basket": "small"}]}'
HOOK = f"""
import pathlib


def on_page_content(html, page, config, files):
    return html + {TABLE!r} if page.file.src_uri == "hooked.md" else html


def on_post_build(config):
    pathlib.Path(config.site_dir, "made.json").write_text({MADE!r})
"""
OVERRIDE = """{% extends "base.html" %}
{% block content %}{{ super() }}{% if page.file.src_uri.startswith("r/") %}
<h2>Giving list</h2>{% for who, what in config.extra.ours.items() %}
<p><b>{{ who }}</b> {{ what }}</p>{% endfor %}{% endif %}{% endblock %}
"""
# like those, and no list
INNOCENT: dict[str, tuple[str, str]] = {
    "a page that explains": (
        "giving-list.md",
        "Write who is given what: no names on a page.\n\n- Avoid: what they avoid\n"
        "- Basket: which, by post\n- A household: without it nothing is planned\n",
    ),
    "a page of the year": ("giving-day.md", "- Christmas: by post\n- Easter: no nuts\n"),
    "rows without such a heading": ("bring.md", f"# What to bring\n\n{ROWS}"),
    "a box that explains": (
        "box.md", '# How\n\n!!! note "Giving list"\n\n    Each household: a basket.\n',
    ),
    "a table of shops": (
        "shops.md", "# Shops\n\n| Name | Address | Delivery |\n| --- | --- | --- |\n"
        "| The corner shop | 3 High Street | by post |\n",
    ),
    "a link to the guide": ("see.md", "# See also\n\nSee [the giving list](giving-list.md).\n"),
    "what a basket avoids": ("basket.md", "# Baskets\n\nA basket avoids a box. Avoid: heat.\n"),
}  # fmt: skip


def book_with(folder: Path, pages: dict[str, tuple[str, str]], **more: object) -> Path:
    small_book(folder)
    for where, words in pages.values():
        path = folder / "pages" / where
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(words, encoding="utf-8")
    settings = folder / "mkdocs.yml"
    said = yaml.safe_load(settings.read_text(encoding="utf-8"))
    extensions = ["admonition", "pymdownx.details", "pymdownx.superfences", "attr_list"]
    said["markdown_extensions"] = [*extensions, {"pymdownx.snippets": {"base_path": ["kept"]}}]
    settings.write_text(yaml.safe_dump({**said, **more}), encoding="utf-8")
    (folder / "kept").mkdir()
    (folder / "kept" / "ours.txt").write_text(f"## Giving list\n\n{ROWS}", encoding="utf-8")
    return folder


def test_no_file_of_these_pages_is_a_list(tmp_path: Path) -> None:
    folder = book_with(tmp_path, PAGES)
    assert find_private((folder / "pages", folder / "recipes"), Seeker(())) == ()


def test_a_page_that_is_set_as_a_list_is_not_put_in_place(tmp_path: Path) -> None:
    nav = [{"Home": "index.md"}, {"Giving list": "plain.md"}]
    folder = book_with(tmp_path, PAGES, nav=nav)
    built = build(folder)
    assert built.returncode == 1
    assert not (folder / "site").exists()
    assert "Traceback" not in built.stderr
    for called, (where, _) in PAGES.items():
        page = f"{where.removesuffix('.md')}/index.html:"
        told = [line for line in built.stderr.splitlines() if page in line]
        assert any("private giving list" in line for line in told), called


@pytest.mark.parametrize("called", TOLD_BEFORE)
def test_a_page_that_is_headed_so_is_told_by_its_file(tmp_path: Path, called: str) -> None:
    path = tmp_path / "pages" / "a.md"
    path.parent.mkdir()
    path.write_text(TOLD_BEFORE[called], encoding="utf-8")
    assert len(find_private((path.parent,), Seeker(()))) == 1


@pytest.mark.parametrize("called", SET)
def test_what_stands_over_a_list_on_a_page_is_its_heading(called: str) -> None:
    assert find_page(f"<p>Home</p>{SET[called]}") == 1
    assert may_show_list(SET[called])


def test_what_leads_to_a_page_is_no_heading_of_another() -> None:
    for where in (
        '<label class="md-nav__title" for="__nav_3">',
        '<a class="md-nav__link">',
        "<span>",
    ):
        assert find_page(f"<p>Home</p>{where}Giving list</a></label></span>{SET_ROWS}") == 0


def test_a_recipe_that_is_set_as_a_list_is_not_put_in_place(tmp_path: Path) -> None:
    folder = book_with(tmp_path, {})
    (folder / "recipes" / "winter.md").write_text(RECIPE, encoding="utf-8")
    assert find_private((folder / "recipes",), Seeker(())) == ()
    built = build(folder)
    assert built.returncode == 1
    assert "r/winter/index.html:" in built.stderr
    assert "private giving list" in built.stderr
    assert not (folder / "site").exists()


def test_what_a_program_of_the_book_brings_in_is_looked_at(tmp_path: Path) -> None:
    folder = book_with(tmp_path, {"hooked": ("hooked.md", "# Winter\n")}, hooks=["hook.py"])
    (folder / "hook.py").write_text(HOOK, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "hooked/index.html:" in built.stderr
    assert "made.json:" in built.stderr
    assert not (folder / "site").exists()


def test_what_the_theme_brings_onto_a_recipe_is_looked_at(tmp_path: Path) -> None:
    theme = {"name": "material", "font": False, "custom_dir": "over"}
    ours = {"Jo and Sam": "no nuts, small basket", "Nan": "by post"}
    folder = book_with(tmp_path, {}, theme=theme, extra={"ours": ours})
    (folder / "over").mkdir()
    (folder / "over" / "main.html").write_text(OVERRIDE, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "r/lavender-sugar/index.html:" in built.stderr
    assert not (folder / "site").exists()


def test_what_is_like_a_list_is_built_and_built_again(tmp_path: Path) -> None:
    nav = [{"Home": "index.md"}, {"Giving list": "giving-list.md"}, {"Giving lists": ["see.md"]}]
    folder = book_with(tmp_path, INNOCENT, nav=nav)
    for _ in range(2):
        built = build(folder)
        assert built.returncode == 0, built.stderr
        assert (folder / "site" / "giving-list" / "index.html").is_file()
