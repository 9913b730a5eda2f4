"""A wrong setting is told at its own line, and what is checked is what is built.

One table: a mkdocs.yml, and the one message it must get from the check and from the build, or
none from either.
"""

from __future__ import annotations

import os
import re
import time
from pathlib import Path

import pytest
from click.testing import CliRunner
from mkdocs.__main__ import cli as mkdocs

from stillroom.cli import main

RECIPE = """---
title: Quince drops
kind: infusion
makes: 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - 3 quinces, about 600 g
---

## Method

1. Steep {quinces} in {vodka}.
"""
TOP = "site_name: A book\nsite_url: https://book.example/\ntheme: material\n"
PLUGIN = "plugins:\n  - search\n  - stillroom:\n"


def of(*rows: str) -> str:
    """Return a mkdocs.yml with these settings; the first stands at line 7."""
    return TOP + PLUGIN + "".join(f"      {row}\n" for row in rows)


# what is written -> line and the words of its one message; None when the book is right
CASES: dict[str, tuple[str | bytes, tuple[int, str] | None]] = {
    "right": (of("country: GB"), None),
    "bare": (TOP + "plugins:\n  - stillroom\n", None),
    "bare, with a colon": (TOP + "plugins:\n  - stillroom:\n", None),
    "plugins by name": (TOP + "plugins:\n  search: {}\n  stillroom:\n    country: GB\n", None),
    "Norway": (of("country: NO", "currency: NOK"), None),
    "all empty": (
        of("title:", "recipes:", "pictures:", "units:", "country:", "altitude_m:", "language:")
        + "      currency:\n      giving_days:\n",
        None,
    ),
    "an empty address": (of("country: GB").replace(" https://book.example/", ""), None),
    "a day with a colon": (of('giving_days: [{name: "A: b", day: 24 June}]'), None),
    "from the surroundings": (of("country: !ENV STILLROOM_TEST_COUNTRY"), None),
    "else from the surroundings": (of("country: !ENV [STILLROOM_NOT_SET, GB]"), None),
    "nothing in the surroundings": (of("country: !ENV STILLROOM_NOT_SET"), None),
    "a function of Python's": (
        of("country: GB") + "markdown_extensions:\n  - pymdownx.emoji:\n"
        "      emoji_index: !!python/name:material.extensions.emoji.twemoji\n",
        None,
    ),
    "a byte order mark": (b"\xef\xbb\xbf" + of("country: GB").encode(), None),
    "a setting that is none": (
        of("country: GB") + "sitename: B\n",
        (8, 'no setting "sitename". Did you mean "site_name"?'),
    ),
    "the book named twice": (TOP + "plugins:\n  - stillroom\n  - stillroom\n", (4, "stillroom")),
    "a family book": (
        of("family_book:", "  dedication: For Ann", "  photographs: []"),
        None,
    ),
    "a family book of one word": (of("family_book: For Ann"), (7, 'Under it stand "dedication')),
    "a family book that says more": (
        of("family_book:", "  dedicated: For Ann"),
        (8, 'it cannot say "dedicated"'),
    ),
    "a photograph of nothing": (
        of("family_book:", "  photographs:", "    - picture: hut.jpg"),
        (9, 'it says no "shows"'),
    ),
    "a photograph that is not there": (
        of("family_book:", "  photographs:", "    - {picture: hut.jpg, shows: The hut}"),
        (9, 'Put it into the folder "pictures"'),
    ),
    "a hand that is not there": (
        of("family_book:", "  says: With love", "  handwriting: hand.png"),
        (9, "is not among the book's pictures"),
    ),
    "no page to send a recipe": (of("country: GB", "send_us: no"), None),
    "a page or not": (of("country: GB", "send_us: perhaps"), (8, 'Write "yes", or "no"')),
    "misspelt": (of("units: us", "contry: GB"), (8, '"contry" is not a setting of the book.')),
    "a country in words": (of("country: Norway"), (7, 'not right: "Norway". Write "NO".')),
    "UK": (of("country: UK"), (7, 'Write "GB".')),
    "small letters": (of("country: no"), (7, 'Write "NO".')),
    "no country": (of("country: XX"), (7, "two capitals")),
    "a wrong unit": (of("country: GB", "units: cups"), (8, 'Write "metric", "us" or "imperial".')),
    "not a height": (of("altitude_m: high"), (7, "whole metres")),
    "too high": (of("altitude_m: 90000"), (7, "whole metres")),
    "not a language": (of("language: en-XX-yy-zz"), (7, "a language and its country")),
    "no currency": (of("currency: pounds"), (7, "three capitals")),
    "a list for a word": (of("country: [GB, NO]"), (7, "not written as wanted")),
    "a word for a list": (of("giving_days: Christmas"), (7, "Write each as")),
    "no giving days": (of("giving_days: []"), (7, "nothing is in it")),
    "a day that is none": (
        of("giving_days:", "  - {name: A, day: 24 June}", "  - {name: B, day: 31 June}"),
        (9, "is not a day of the year"),
    ),
    "a day without a rule": (
        of("giving_days:", "  - {name: A, day: 24 June}", "  - name: B"),
        (9, 'it says no "day"'),
    ),
    "a day that says more": (
        of("giving_days:", "  - name: B", "    day: 24 June", "    hour: 9"),
        (10, 'it cannot say "hour"'),
    ),
    "a day once": (
        of("giving_days:", "  - name: B", "    day: 2027-06-24"),
        (9, "comes only once"),
    ),
    "two days of two names": (
        of("giving_days:", "  - {name: A, day: 24 June}", "  - {name: B, day: 24 June}"),
        None,
    ),
    "two days of one name": (
        of("giving_days:", "  - {name: Yule, day: 24 June}", "  - {name: yule, day: 21 December}"),
        (9, 'Two giving days are called "yule": the first stands in line 8.'),
    ),
    "the year 9999": (
        of("giving_days:", "  - name: B", "    day: 9999-12-31"),
        (9, "is not a date of our time"),
    ),
    "the surroundings are wrong": (of("country: !ENV STILLROOM_TEST_WRONG"), (7, "two capitals")),
    "the plugin is a word": (TOP + "plugins:\n  - stillroom: GB\n", (5, "no setting of the book")),
    "no plugin": (TOP + "plugins:\n  - search\n", (4, "is not switched on")),
    "another theme": (
        of("country: GB").replace("theme: material", "theme: readthedocs"),
        (3, 'Not for "readthedocs".'),
    ),
    "another theme by name": (
        of("country: GB").replace("theme: material", "theme:\n  name: mkdocs"),
        (4, 'Not for "mkdocs".'),
    ),
    "no theme": (of("country: GB").replace("theme: material\n", ""), (1, "made for the theme")),
    "no name": (of("country: GB").replace("site_name: A book\n", ""), (1, "The book has no name")),
    "an address without its beginning": (
        of("country: GB").replace("https://book.example/", "book.example"),
        (2, "Write the whole address"),
    ),
    "an endless address": (
        of("country: GB").replace("book.example", "book.example/" + "a" * 400),
        (2, "not too long"),
    ),
    "pages that are not there": (of("country: GB") + "docs_dir: nowhere\n", (8, '"docs_dir"')),
    "a list for the folder of pages": (of("country: GB") + "docs_dir: {}\n", (8, "no folder")),
    "a list for the theme's own folder": (
        of("country: GB").replace("material", "{name: material, custom_dir: [a]}"),
        (3, "no folder"),
    ),
    "recipes that are not there": (
        of("units: us", "recipes: nowhere"),
        (8, "There are no recipes"),
    ),
    "a tab": (TOP + "plugins:\n\t- stillroom\n", (5, "There is a tab in this line")),
    "an open quotation mark": (TOP + 'plugins:\n  - "stillroom\n', (5, "never closed")),
    "a second colon": (TOP.replace("A book", "A book: ours") + PLUGIN, (1, "second colon")),
    "older letters": ((TOP + "copyright: Crème\n" + PLUGIN).encode("latin-1"), (4, "older way")),
    "two bytes to a letter": (of("country: GB").encode("utf-16"), (1, "two signs to a letter")),
    "unprintable": (of("country: G\x00B"), (7, "cannot be printed")),
    "empty": ("", (1, "is not switched on")),
    "a list": ("- a\n- b\n", (1, "no list of names")),
    "too large": ("# " + "x" * 3000 + "\n" + ("# y" * 1000 + "\n") * 100, (1, "longer than")),
}


def said_by_check(root: Path) -> list[str]:
    done = CliRunner().invoke(main, ["check"])
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    lines = done.stderr.splitlines()
    return [] if done.exit_code == 0 else lines[:-1]


def builds(root: Path) -> tuple[bool, list[str]]:
    # what a cook sees: the log itself is heard differently by older and newer tools
    runner = CliRunner(env={"COLUMNS": "10000"})
    done = runner.invoke(mkdocs, ["build", "--quiet", "--site-dir", str(root / "site")])
    built = done.exit_code == 0
    assert built != bool(re.search("error", done.output, re.IGNORECASE)), done.output
    return built, done.output.splitlines()


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "docs").mkdir()
    (tmp_path / "docs" / "index.md").write_text("# A book\n", encoding="utf-8")
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "quince.md").write_text(RECIPE, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("STILLROOM_TEST_COUNTRY", "NO")
    monkeypatch.setenv("STILLROOM_TEST_WRONG", "Norwegia")
    return tmp_path


@pytest.mark.parametrize("case", CASES)
def test_a_setting_is_told_at_its_line(case: str, book: Path) -> None:
    written, wanted = CASES[case]
    written = written if isinstance(written, bytes) else written.encode()
    (book / "mkdocs.yml").write_bytes(written)
    said = said_by_check(book)
    if wanted is None:
        assert said == []
    else:
        assert len(said) == 1, said
        assert said[0].startswith(f"mkdocs.yml:{wanted[0]}: ")
        assert wanted[1] in said[0]


# one of each sort: a whole build is slow
BUILT = ["right", "Norway", "all empty", "else from the surroundings", "a byte order mark",
    "misspelt", "the surroundings are wrong", "a day once", "another theme", "no name",
    "older letters", "pages that are not there", "no giving days", "a tab"]  # fmt: skip


@pytest.mark.parametrize("case", BUILT)
def test_what_is_checked_is_what_is_built(case: str, book: Path) -> None:
    written, wanted = CASES[case]
    (book / "mkdocs.yml").write_bytes(written if isinstance(written, bytes) else written.encode())
    built, told = builds(book)
    assert built == (wanted is None), told
    if wanted is not None and any("mkdocs.yml:" in line for line in told):
        assert any(f"mkdocs.yml:{wanted[0]}: " in line and wanted[1] in line for line in told)
    assert (book / "site" / "r" / "quince" / "index.html").is_file() == built


@pytest.mark.parametrize("wanted", ["yes", "no"])
def test_the_page_to_send_a_recipe_is_there_unless_it_is_switched_off(
    book: Path, wanted: str
) -> None:
    (book / "mkdocs.yml").write_text(of(f"send_us: {wanted}"), encoding="utf-8")
    assert builds(book)[0]
    assert (book / "site" / "send" / "index.html").is_file() == (wanted == "yes")
    browse = (book / "site" / "browse" / "index.html").read_text(encoding="utf-8")
    assert ("../send/" in browse) == (wanted == "yes")
    assert (book / "site/assets/stillroom/js/send.js").is_file() == (wanted == "yes")


def test_settings_are_inherited(book: Path) -> None:
    (book / "base.yml").write_text(
        TOP + "plugins:\n  stillroom:\n    country: US\n    units: cups\n", encoding="utf-8"
    )
    over = "INHERIT: base.yml\nplugins:\n  search: {}\n  stillroom:\n    country: UK\n"
    (book / "mkdocs.yml").write_text(over, encoding="utf-8")
    said = said_by_check(book)
    assert [line.split(" ")[0] for line in said] == ["base.yml:7:", "mkdocs.yml:5:"]
    (book / "base.yml").write_text(
        TOP + "plugins:\n  stillroom:\n    units: us\n", encoding="utf-8"
    )
    (book / "mkdocs.yml").write_text(over.replace("UK", "NO"), encoding="utf-8")
    assert said_by_check(book) == []


def test_what_is_inherited_and_not_there_is_told(book: Path) -> None:
    (book / "mkdocs.yml").write_text("\nINHERIT: nowhere.yml\n", encoding="utf-8")
    assert said_by_check(book)[0].startswith("mkdocs.yml:2: ")


@pytest.mark.parametrize(
    ("inherited", "base", "words"),
    [
        ("mkdocs.yml", "", "build on themselves"),
        ("base.yml", "INHERIT: mkdocs.yml\n", "build on themselves"),
        ("base.yml", "INHERIT: base.yml\n", "build on themselves"),
        ("[base.yml, other.yml]", "", "are one file"),
        ("docs", "", "are not there"),
    ],
)
def test_settings_that_build_on_no_file_of_their_own_are_told(
    book: Path, inherited: str, base: str, words: str
) -> None:
    (book / "base.yml").write_text(base, encoding="utf-8")
    (book / "mkdocs.yml").write_text(f"INHERIT: {inherited}\n{TOP}{PLUGIN}", encoding="utf-8")
    said = said_by_check(book)
    file = "base.yml" if base else "mkdocs.yml"
    assert len(said) == 1
    assert said[0].startswith(f"{file}:1: ")
    assert words in said[0]


def test_a_pipe_for_settings_is_told_and_does_not_hang(book: Path) -> None:
    os.mkfifo(book / "mkdocs.yml")
    assert said_by_check(book)[0].startswith("mkdocs.yml:1: ")


# what MkDocs by itself would hang at, end in a traceback at, or build without this book's checks
BEFORE_THE_PLUGIN: dict[str, tuple[str | None, str]] = {
    "a pipe": (None, "mkdocs.yml:1: "),
    "settings that build on themselves": (f"INHERIT: mkdocs.yml\n{TOP}{PLUGIN}", "mkdocs.yml:1: "),
    "no plugin at all": (f"{TOP}plugins:\n", "mkdocs.yml:4: The stillroom plugin is not switched"),
    "another plugin only": (f"{TOP}plugins: [search]\n", "mkdocs.yml:4: The stillroom plugin"),
    "plugins not named": (TOP, "mkdocs.yml:1: The stillroom plugin is not switched on"),
    "another's plugin that is not there": (of("country: GB") + "  - nowhere\n", "mkdocs.yml:4: "),
    "a tab": (f"{TOP}plugins:\n\t- stillroom\n", "mkdocs.yml:5: There is a tab"),
    "nothing": ("", "mkdocs.yml:1: The stillroom plugin is not switched on"),
    "another theme": (of("country: GB").replace("material", "mkdocs"), "mkdocs.yml:3: "),
    "a page that is none": (of("country: GB") + "nav: {a: b}\n", "mkdocs.yml:8: "),
}


@pytest.mark.parametrize("command", ["build", "serve"])
@pytest.mark.parametrize("case", BEFORE_THE_PLUGIN)
def test_settings_are_looked_at_before_mkdocs_reads_them(
    book: Path, case: str, command: str
) -> None:
    written, wanted = BEFORE_THE_PLUGIN[case]
    if written is None:
        os.mkfifo(book / "mkdocs.yml")
    else:
        (book / "mkdocs.yml").write_text(written, encoding="utf-8")
    begun = time.process_time()
    done = CliRunner().invoke(main, [command])
    assert done.exit_code == 1, done.output
    lines = done.stderr.splitlines()
    assert [line for line in lines if line.startswith(wanted)] == lines[:1], lines
    assert lines[1:] == ["1 problem found."]
    assert time.process_time() - begun < 1.5
    assert not (book / "site").exists()
    assert said_by_check(book)[:1] == lines[:1]


def test_the_book_is_built_by_its_own_command_as_mkdocs_builds_it(book: Path) -> None:
    (book / "mkdocs.yml").write_text(of("country: GB"), encoding="utf-8")
    (book / "below").mkdir()
    assert builds(book)[0]
    page = book / "site" / "r" / "quince" / "index.html"
    by_mkdocs = page.read_bytes()
    page.unlink()
    done = CliRunner().invoke(main, ["build", "--strict", "--quiet"])
    assert done.exit_code == 0, done.output
    assert page.read_bytes() == by_mkdocs
    (book / "recipes" / "quince.md").write_text(RECIPE.replace("title", "titel"), encoding="utf-8")
    done = CliRunner().invoke(main, ["build"])
    assert done.exit_code == 1
    assert "recipes/quince.md:2: " in done.output
    assert page.read_bytes() == by_mkdocs


@pytest.mark.parametrize("made", ["pipe", "device", "link"])
def test_a_page_without_an_end_is_told_by_check_and_build(book: Path, made: str) -> None:
    (book / "mkdocs.yml").write_text(of("country: GB"), encoding="utf-8")
    page = book / "docs" / "more" / "page.md"
    page.parent.mkdir()
    if made == "pipe":
        os.mkfifo(page)
    else:
        page.symlink_to("/dev/zero" if made == "device" else "nowhere.md")
    said = said_by_check(book)
    assert len(said) == 1, said
    assert said[0].startswith("docs/more/page.md:1: ")
    built, told = builds(book)
    assert not built
    assert any(said[0] in line for line in told)


# a page's facts -> the line of what is told, or None; MkDocs reads facts without dashes too
TEMPLATES: dict[str, tuple[str, int | None]] = {
    "of no such name": ("---\ntitle: Us\ntemplate: nowhere.html\n---\n\n# Us\n", 3),
    "without dashes": ("title: Us\ntemplate: nowhere.html\n\n# Us\n", 2),
    "misspelt": ("---\ntemplate: mian.html\n---\n\n# Us\n", 2),
    "of no name": ("---\ntemplate:\n---\n\n# Us\n", 2),
    "a list": ("---\ntemplate: [main.html]\n---\n\n# Us\n", 2),
    "the theme's": ("---\ntemplate: main.html\n---\n\n# Us\n", None),
    "spoken of": ("# Us\n\ntemplate: nowhere.html is how it is named.\n", None),
    "in an example": ("# Us\n\n```\n---\ntemplate: nowhere.html\n---\n```\n", None),
}


@pytest.mark.parametrize("case", TEMPLATES)
def test_a_template_that_is_not_there_is_told_at_its_page(book: Path, case: str) -> None:
    written, line = TEMPLATES[case]
    (book / "mkdocs.yml").write_text(of("country: GB"), encoding="utf-8")
    (book / "docs" / "about.md").write_text(written, encoding="utf-8")
    said = said_by_check(book)
    built, told = builds(book)
    assert built == (line is None), told
    if line is None:
        assert said == []
    else:
        assert len(said) == 1, said
        assert said[0].startswith(f"docs/about.md:{line}: "), said
        assert any(said[0] in row for row in told), told


@pytest.mark.parametrize(("left_out", "asked"), [("about.md", 0), ("other.md", 1)])
def test_a_page_kept_off_the_site_asks_for_no_template(
    book: Path, left_out: str, asked: int
) -> None:
    text = of("country: GB") + f"exclude_docs: |\n  {left_out}\n"
    (book / "mkdocs.yml").write_text(text, encoding="utf-8")
    written, _ = TEMPLATES["of no such name"]
    (book / "docs" / "about.md").write_text(written, encoding="utf-8")
    assert len(said_by_check(book)) == asked
    assert builds(book)[0] == (not asked)


def test_settings_that_repeat_themselves_are_told(book: Path) -> None:
    rows = ["x0: &x0 [a, a]"] + [f"x{n}: &x{n} [*x{n - 1}, *x{n - 1}]" for n in range(1, 40)]
    bomb = of(*rows, "giving_days: *x39")
    (book / "mkdocs.yml").write_text(bomb, encoding="utf-8")
    begun = time.process_time()
    assert "repeat themselves" in said_by_check(book)[0]
    assert time.process_time() - begun < 2


def test_a_recipe_without_a_page_stops_the_build(
    book: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from stillroom.publish import plugin

    (book / "mkdocs.yml").write_text(of("country: GB"), encoding="utf-8")
    assert builds(book)[0]
    real = plugin.list_leaves
    monkeypatch.setattr(
        plugin,
        "list_leaves",
        lambda library: {uri: leaf for uri, leaf in real(library).items() if "quince" not in uri},
    )
    built, told = builds(book)
    assert not built
    assert any("recipes/quince.md:1: This recipe was read, and no page" in line for line in told)
    assert (book / "site" / "r" / "quince" / "index.html").is_file()  # the old site is whole
