"""The guide of the demo book: its commands run, what it shows comes out, nothing is missing."""

from __future__ import annotations

import re
import runpy
import shlex
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from click.testing import CliRunner
from mkdocs.__main__ import cli as mkdocs

from planted import copy_demo
from stillroom.cli import main
from stillroom.core.book import open_book
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.data_files import read_data
from stillroom.giving.reading import read_giving_list

ROOT = Path(__file__).parents[1]
PAGES = ROOT / "site_demo" / "pages"
MADE: dict[str, Any] = runpy.run_path(str(ROOT / "site_demo" / "guide.py"))
TEXTS = {path.name: path.read_text(encoding="utf-8") for path in (PAGES / "guide").glob("*.md")}
TEXTS |= MADE["made_pages"]()
FENCED = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
COMMANDS = [
    (name, line)
    for name, text in sorted(TEXTS.items())
    for language, block in FENCED.findall(text)
    if language == "sh"
    for line in block.splitlines()
]
OLD = """Plum jelly

1 kg plums
750 g sugar

Simmer the plums until soft.
Drain overnight, boil the juice with the sugar and pot it.
"""


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    copy_demo(tmp_path)
    (tmp_path / "old").mkdir()
    (tmp_path / "old" / "plum-jelly.txt").write_text(OLD, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize(("page", "line"), COMMANDS, ids=[line[:60] for _, line in COMMANDS])
def test_a_command_of_the_guide_runs(page: str, line: str, book: Path) -> None:
    program, *words = shlex.split(line)
    if words[:1] == ["desk"]:
        _opens(words[1:], book)
        return
    if program == "cd":
        assert f"stillroom start {words[0]} " in TEXTS[page], "into the book that was begun above"
        return
    if program == "python3":
        readme = (ROOT / "README.md").read_text(encoding="utf-8")
        assert line.partition(" && ")[2] in readme, "as the README installs the desk"
        return
    assert program == "stillroom", line
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 0, f"{page}: {line}\n{done.output}"


def _opens(words: list[str], book: Path) -> None:
    from stillroom.desk.serving import open_desk

    (folder,) = words
    ready, said = threading.Event(), []

    def say(line: str) -> None:
        said.append(line)
        ready.set()

    desk = threading.Thread(target=open_desk, args=(book / folder, 0, False, say), daemon=True)
    desk.start()
    assert ready.wait(30)
    assert "http://127.0.0.1:" in said[0]


def test_what_the_guide_shows_of_an_answer_comes_out(book: Path) -> None:
    shown = FENCED.findall(TEXTS["scale.md"])
    (answer,) = [block for language, block in shown if language == "text"]
    done = CliRunner().invoke(main, ["scale", "recipes/quince-ratafia.md", "--fill", "12 x 50 ml"])
    assert done.output.startswith(answer)
    (asked,) = [
        block for language, block in FENCED.findall(TEXTS["bring.md"]) if language == "text"
    ]
    assert CliRunner().invoke(main, ["bring", "old/plum-jelly.txt"]).exit_code == 0
    assert asked in (book / "drafts" / "plum-jelly.md").read_text(encoding="utf-8")


def test_every_command_and_choice_stands_in_it() -> None:
    commands = dict(MADE["commands_of"](main))
    assert len(commands) >= 18
    for name, command in commands.items():
        assert f"## stillroom {name}\n" in TEXTS["commands.md"]
        for one in command.params:
            assert all(word in TEXTS["commands.md"] for word in one.opts if word.startswith("--"))


def test_every_fact_setting_and_rule_stands_in_it_with_its_source() -> None:
    from stillroom.core.reading.editor_schema import front_matter_schema

    for name in (*front_matter_schema()["properties"], *BookSettings.model_fields):
        word = "site_name" if name == "title" else name
        row = re.search(rf"^`(?:{name}|{word})`\n:   (.+)$", TEXTS["fields.md"], re.MULTILINE)
        assert row, name
        assert row[1].strip(), name
        programs = re.search(r"[a-z]+[A-Z]\w*\(|=''|\(\)|None|True|False", row[1])
        assert programs is None, name
    plain = re.sub(r"\\([|*_{}\[\]])", r"\1", TEXTS["rules.md"])
    for rule in read_data("hazards.yml"):
        assert f"### {MADE['_cell'](rule['title'])}" in TEXTS["rules.md"], rule["id"]
        source = re.sub(r"\\([|*_{}\[\]])", r"\1", MADE["_cell"](rule["source"]))
        assert source in plain, rule["id"]
    assert re.findall(r"\{[a-z_]+\}", plain) == []  # a blank is no word to a reader


FIELDS = yaml.safe_load((ROOT / "site_demo" / "fields.yml").read_text(encoding="utf-8"))
RECIPE = """---
title: Plum gin
kind: liqueur
makes: 900 ml
ingredients:
  - 700 ml gin, 40% vol
  - 500 g plums, stoned
  - 200 g caster sugar
---

## Method

1. Leave {{plums}} in {{gin}} with {{caster sugar}} for two months, then strain and bottle it.
"""


def test_what_is_said_of_facts_and_settings_names_each_and_no_other() -> None:
    from stillroom.core.reading.editor_schema import front_matter_schema

    schema = front_matter_schema()
    assert list(FIELDS["settings"]) == list(BookSettings.model_fields)
    assert set(FIELDS["recipe"]) == set(schema["properties"])
    for part, rows in FIELDS["parts"].items():
        assert set(rows) == set(schema["$defs"][part]["properties"]), part
        assert all(f"`{key}`: {words}" in TEXTS["fields.md"] for key, words in rows.items())


@pytest.mark.parametrize("name", FIELDS["recipe"])
def test_the_example_of_a_fact_is_read(name: str) -> None:
    example = FIELDS["recipe"][name]["example"].rstrip()
    first = "ingredients" if name == "materials" else name
    facts, rest = RECIPE.split("\n---\n", 1)
    without = re.sub(rf"^{first}:.*(?:\n +-? ?.*)*\n?", "", facts + "\n", flags=re.M).rstrip()
    text = f"{without}\n{example}\n---\n{rest}"
    if name == "materials":
        text = text.replace("kind: liqueur", "kind: craft").replace(
            "makes: 900 ml", "makes: 3 baubles"
        )
        text = re.sub(
            r"^1\. .*",
            "1. Felt {{wool}} and sew a loop of {{cotton thread}} to it.",
            text,
            flags=re.M,
        )
    text = text.replace("{{", "{").replace("}}", "}")
    recipe = read_recipe(text, "plum-gin.md", "plum-gin")
    assert recipe.title == "Plum gin"


@pytest.mark.parametrize("name", FIELDS["settings"])
def test_the_example_of_a_setting_is_read(name: str, tmp_path: Path) -> None:
    example = FIELDS["settings"][name]["example"].rstrip()
    at_top = name in ("title", "site_url")
    book = tmp_path / "mkdocs.yml"
    below = "".join(f"      {line}\n" for line in example.splitlines()) if not at_top else ""
    top = f"{example}\n" if at_top else ""
    name_of = "" if name == "title" else "site_name: A book\n"
    theme = "theme:\n  name: material\n"
    plugin = f"plugins:\n  - stillroom:\n{below or '      country: GB'}\n"
    book.write_text(f"{name_of}{top}{theme}{plugin}", encoding="utf-8")
    settings = open_book(book).settings
    usual = BookSettings()
    if name not in ("recipes", "larder", "pictures", "units", "design"):
        assert getattr(settings, name) != getattr(usual, name)


def test_the_page_of_the_giving_list_names_every_part_of_the_example() -> None:
    text = (ROOT / "site_demo/write-a-giving-list.md").read_text(encoding="utf-8")
    example = re.findall(r"^```yaml\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)[0]
    assert set(MADE["LIST_PARTS"]) == set(yaml.safe_load(example))
    assert "Fennimores" not in TEXTS["giving-list.md"]
    assert text.partition("## Who must not have what")[2] in TEXTS["giving-list.md"]


def test_every_page_is_reached_from_the_first_and_every_picture_is_there_and_light() -> None:
    linked = set(re.findall(r"\]\(([\w-]+\.md)\)", TEXTS["index.md"]))
    assert linked == set(TEXTS) - {"index.md"}
    shown = [name for text in TEXTS.values() for name in re.findall(r"!\[[^\]]+\]\((.*?)\)", text)]
    assert len(shown) >= 3
    for name in shown:
        assert (PAGES / "guide" / name).stat().st_size < 60_000, name


def test_no_other_book_has_the_guide(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    begun = [
        "start",
        "book",
        "--name",
        "Ours",
        "--country",
        "GB",
        "--keeper",
        "Ann",
        "--give",
        "24 December",
    ]
    assert CliRunner().invoke(main, begun).exit_code == 0
    monkeypatch.chdir(tmp_path / "book")
    assert CliRunner().invoke(mkdocs, ["build", "--strict", "--quiet"]).exit_code == 0
    site = tmp_path / "book" / "site"
    assert (site / "browse" / "index.html").is_file()
    assert not (site / "guide").exists()
    said = [path for path in site.rglob("*.html") if "guide/" in path.read_text(encoding="utf-8")]
    assert said == []


def _words() -> Iterator[str]:
    for text in TEXTS.values():
        yield from text.splitlines()


def test_no_line_leaves_a_mark_of_work_in_progress() -> None:
    assert [line for line in _words() if re.search(r"\b(?:TODO|FIXME|XXX)\b", line)] == []


def test_a_part_of_a_giving_list_in_the_guide_is_read_whole() -> None:
    """What stands between ```yaml on a page of the guide is read within a small list."""
    small = (
        "giving list: Winter\ngiving day: 2027-12-24\nbaskets:\n  small: 1 to eat\n"
        "makes: [plum-jam]\nhouseholds:\n  - {name: The Marrables, basket: small}\n"
    )
    seen = 0
    for page in sorted((ROOT / "site_demo" / "pages" / "guide").glob("*.md")):
        for part in re.findall(r"^```yaml\n(.*?)^```$", page.read_text("utf-8"), re.M | re.S):
            if part.partition(":")[0] not in {*MADE["LIST_PARTS"], "posting"}:
                continue  # a setting of the book
            giving = read_giving_list(small + part, page.name).giving
            seen += 1
            assert str(giving.posting[0].last_day) == "2027-12-18"
    assert seen
