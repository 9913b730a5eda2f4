"""Whatever is found on disk is a recipe or a problem: none is lost in silence, none runs on."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from sampling import tries
from stillroom.cli import main
from stillroom.core.reading.loading import read_recipe
from stillroom.core.reading.recipes_folder import find_strays
from stillroom.core.recipe.model import FrontMatter
from stillroom.core.words.problems import ProblemsFound

FACTS = {
    "title": "Quince drops",
    "kind": "infusion",
    "makes": "900 ml",
    "ingredients": "\n  - 1 l vodka, 40% vol\n  - 3 quinces, about 600 g",
}
METHOD = "## Method\n\n1. Steep {quinces} in {vodka}.\n"


SHAPES = [
    "", '""', "[]", '[""]', "{}", "\n  -", '\n  - ""\n  - a', "[[]]", "[{}]", "~", "\n  a: b",
    "[a, [b]]", "{a: {b: c}}", "0", "-1", "1/0", "NO", "\n  - a: b", "\n  - a:\n      b: c",
]  # fmt: skip


def recipe(method: str = METHOD, **facts: str) -> str:
    rows = [f"{key}: {value}" for key, value in {**FACTS, **facts}.items()]
    return "---\n" + "\n".join(rows) + f"\n---\n\n{method}"


def told(text: str, slug: str = "quince") -> list[str]:
    """Return the problems of a recipe; one that is read has none, and none is neither."""
    try:
        problems = () if read_recipe(text, "quince.md", slug).title else None
    except ProblemsFound as found:
        problems = found.problems or None
    assert problems is not None, "a recipe was lost without a word"
    return [str(problem) for problem in problems]


@pytest.mark.parametrize("key", sorted({*FrontMatter.model_fields, "materials", "vessel"}))
def test_a_fact_of_any_shape_is_read_or_told(key: str) -> None:
    for value in SHAPES:
        told(recipe(**{key: value}))


# what stands in the file -> the message, or None when it is read as if it were not there
EMPTY = {
    "cautions": ('[""]', 'Line 1 under "cautions" is empty.'),
    "was": ('""', None),
    "acidity": ('{ph: 3.4, source: ""}', '"acidity source" is missing.'),
    "overrides": ('[{rule: "", why: "a reason of more than twenty"}]', '"overrides no. 1 rule"'),
    "summary": ("", None),
    "card": ("", None),
    "picture": ("", None),
    "season": ("", None),
    "keeps": ("", None),
}


@pytest.mark.parametrize("key", EMPTY)
def test_an_empty_text_is_passed_over_or_told(key: str) -> None:
    value, message = EMPTY[key]
    said = told(recipe(**{key: value}))
    assert len(said) == (0 if message is None else 1)
    assert message is None or message in said[0]


def test_an_empty_line_in_a_list_is_told_where_it_stands() -> None:
    text = recipe(ingredients="\n  - 1 l vodka\n  -\n  - 3 quinces")
    assert told(text)[0].startswith('quince.md:7: Line 2 under "ingredients" is empty.')


@pytest.mark.parametrize(
    "old", ["../../etc", "/etc", "a/b", "..", "a b", "C:x", "x.html", "-", "x" * 81]
)
def test_an_earlier_name_leads_nowhere_else(old: str) -> None:
    assert "is not an earlier name" in told(recipe(was=f"'{old}'"))[0]


def test_an_earlier_name_may_have_its_ending() -> None:
    assert read_recipe(recipe(was="damson-gin.md"), "q.md", "q").was == ("damson-gin",)


@pytest.mark.parametrize(
    "slug", ["con", "aux", "nul", "com1", "lpt9", "index", "a" * 90, "A", "a."]
)
def test_a_name_that_makes_no_address_is_told(slug: str) -> None:
    assert len(told(recipe(), slug)) == 1


@pytest.mark.parametrize("slug", ["paper", "size", "start", "thing", "constance", "com"])
def test_a_name_that_only_looks_taken_is_none(slug: str) -> None:
    assert told(recipe(), slug) == []


HOSTILE = {
    "control": recipe(title="Quince\x07drops"),
    "nul": recipe(title="Quince\x00drops"),
    "turned round": recipe(title="Quince \u202espord"),
    "line sign": recipe(title="Quince\u2028drops"),
    "power of ten": recipe(acidity="\n  ph: 1e999999999\n  source: a strip"),
    "power in makes": recipe(makes="1e999999999 ml"),
    "many figures": recipe(makes=f"{'9' * 3000} ml"),
    "deep": recipe(summary="[" * 2000 + "]" * 2000),
    "over nothing": recipe(ingredients="\n  - 1/0 l vodka"),
    "makes nothing": recipe(makes="0 l"),
    "a jar of nothing": recipe(containers="jar, 0 ml"),
    "jars of nothing": recipe(makes="6 jars of 0 ml"),
    "a vessel of nothing": recipe(vessel="0 l jar"),
    "containers in braces": recipe(containers="[{bottle: 100 ml}]"),
    "long line": recipe(summary="word " * 5000),
    "a ratio to what is not there": recipe(
        ingredients="\n  - 1 l gin\n  - item: a\n    amount: 1 per 2 g of b",
        method="## Method\n\n1. Steep {a} in {gin}.\n",
    ),
}


@pytest.mark.parametrize("case", HOSTILE)
def test_a_hostile_text_is_one_message_in_under_a_second(case: str) -> None:
    begun = time.process_time()
    said = told(HOSTILE[case])
    assert time.process_time() - begun < 1
    assert 1 <= len(said) <= 2
    assert said[0].startswith("quince.md:")


def test_a_title_over_two_lines_is_one_line() -> None:
    assert read_recipe(recipe(title='"Quince\\ndrops"'), "q.md", "q").title == "Quince drops"
    assert read_recipe(recipe(title="|\n  Quince\n  drops"), "q.md", "q").title == "Quince drops"


def test_aliases_make_nothing_large() -> None:
    bomb = "\n".join(
        f"{b}: &{b} [*{a}, *{a}, *{a}]" for a, b in zip("abcdef", "bcdefg", strict=True)
    )
    assert told(recipe().replace("---\n\n", f"{bomb}\n---\n\n"))


# the folder of recipes


def check(root: Path) -> tuple[int, list[str]]:
    old = Path.cwd()
    os.chdir(root)
    try:
        done = CliRunner().invoke(main, ["check"])
    finally:
        os.chdir(old)
    assert done.exception is None or isinstance(done.exception, SystemExit), done.exception
    return done.exit_code, (done.stdout + done.stderr).splitlines()


@pytest.fixture
def book(tmp_path: Path) -> Path:
    (tmp_path / "mkdocs.yml").write_text(
        "site_name: A book\ntheme: material\nplugins:\n  - stillroom\n", encoding="utf-8"
    )
    (tmp_path / "docs").mkdir()
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes" / "quince.md").write_text(recipe(), encoding="utf-8")
    return tmp_path


def test_the_book_of_these_tests_is_right(book: Path) -> None:
    assert check(book)[0] == 0


@pytest.mark.parametrize(
    "name", ["b.markdown", "b.MD", "b.txt", "b.docx", "b", "b.md.", "old/b.md", "old/er/b.md"]
)
def test_what_lies_among_the_recipes_is_told(book: Path, name: str) -> None:
    path = book / "recipes" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(recipe(title="Another"), encoding="utf-8")
    code, lines = check(book)
    assert code == 1
    # a folder has no lines
    place = f"recipes/{name.split('/')[0]}" + ("" if "/" in name else ":1")
    assert [line for line in lines if line.startswith(f"{place}: ")]
    assert lines[-1] == "1 problem found."


@pytest.mark.parametrize("name", [".b.md", "b.md~", ".b.md.swp", "#b.md#", "b.yml", "b.svg"])
def test_what_programs_leave_behind_is_passed_over(book: Path, name: str) -> None:
    (book / "recipes" / name).write_text("x", encoding="utf-8")
    assert check(book)[0] == 0


def test_no_file_keeps_another_from_being_told(book: Path) -> None:
    folder = book / "recipes"
    os.mkfifo(folder / "pipe.md")
    (folder / "folder.md").mkdir()
    (folder / "lost.md").symlink_to(folder / "nowhere")
    (folder / "empty.md").write_text("", encoding="utf-8")
    (folder / "large.md").write_bytes(b"x" * 10_000_000)
    (folder / "old-letters.md").write_bytes("---\ntitle: Crème".encode("latin-1"))
    (folder / "two-bytes.md").write_bytes(recipe().encode("utf-16"))
    (folder / "nul.md").write_bytes(b"---\ntitle: a\x00b\n---\n")
    (folder / "ratio.md").write_text(
        recipe(title="B", ingredients="\n  - 3 eggs\n  - item: gin\n    amount: 1 l per 2 of eggs"),
        encoding="utf-8",
    )
    begun = time.process_time()
    code, lines = check(book)
    assert time.process_time() - begun < 5
    assert code == 1
    for name in ("pipe", "folder", "lost", "empty", "large", "old-letters", "two-bytes", "nul"):
        assert len([line for line in lines if line.startswith(f"recipes/{name}.md:")]) == 1, name


SOME_LINES = """---
title: Gin
kind: infusion
makes: 1 l
ingredients:
  - 1 l gin
- x
## Method
1. Pour {gin}.

timeline:
  - rest: 3 weeks
card:
  use: in tea
was: a
  - item: gin
    amount: 1 l
## Notes
{"""
LINES = st.lists(st.sampled_from(SOME_LINES.splitlines()), max_size=24)


@pytest.mark.sampled
@given(LINES)
@tries(100, 500)
def test_any_order_of_lines_is_read_or_told(lines: list[str]) -> None:
    told("\n".join(lines))


@pytest.mark.sampled
@given(st.sampled_from(sorted(FrontMatter.model_fields)), st.text(max_size=40))
@tries(200, 1000)
def test_any_words_in_any_fact_are_read_or_told(key: str, words: str) -> None:
    told(recipe(**{key: words}))


@pytest.mark.parametrize(
    "text", ["title: Gin\n", "title: Gin\nkind: infusion\n\n1. Pour.\n", "kind: bake"]
)
def test_facts_without_any_dashes_are_told_at_a_line_there_is(text: str) -> None:
    assert {line.split(":")[1] for line in told(text)} == {"1"}


@pytest.mark.parametrize("name", ["larder.yml", "Larder.yaml"])
def test_foods_of_a_books_own_among_the_recipes_are_told(name: str, tmp_path: Path) -> None:
    (tmp_path / name).write_text("elder vinegar:\n  is: cider vinegar\n", encoding="utf-8")
    said = [str(problem) for problem in find_strays(tmp_path, "recipes")]
    assert len(said) == 1
    assert f"recipes/{name}:1:" in said[0]
    assert "one folder up" in said[0]
