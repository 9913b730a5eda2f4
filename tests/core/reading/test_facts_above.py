"""The facts above a recipe: read as they were written, or told at their line."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.reading.facts_above import read_facts
from stillroom.core.reading.written_facts import NAMES
from stillroom.core.words.problems import ProblemsFound

RECIPES = sorted((Path(__file__).parents[3] / "recipes").glob("*.md"))


def read(text: str) -> Any:
    return read_facts(text.split("\n"), "a.md", 1, NAMES).data


def told(text: str) -> list[str]:
    try:
        problems = read_facts(text.split("\n"), "a.md", 1, NAMES).problems
    except ProblemsFound as found:
        problems = found.problems
    return [str(problem) for problem in problems]


def plain(value: Any) -> Any:
    """Return what another reader of such files made, with nothing for empty words."""
    if isinstance(value, dict):
        return {key: plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [plain(one) for one in value]
    return " ".join(value.split()) or None if isinstance(value, str) else value


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_what_is_right_elsewhere_reads_the_same(path: Path) -> None:
    front = path.read_text(encoding="utf-8").split("\n---\n")[0][4:]
    assert plain(read(front)) == plain(yaml.load(front, yaml.BaseLoader))


# as written after "title:" -> the words that were meant
WORDS = {
    "NO": "NO",
    "no": "no",
    "yes": "yes",
    "on": "on",
    "Off": "Off",
    "12:30": "12:30",
    "1_000": "1_000",
    "0123": "0123",
    "0x1F": "0x1F",
    "1e9": "1e9",
    ".5": ".5",
    "2026-11-25": "2026-11-25",
    "~": "~",
    "null": "null",
    "Null": "Null",
    "Quince: drops": "Quince: drops",
    "Gin: the: third": "Gin: the: third",
    "ends in a colon:": "ends in a colon:",
    "@home gin": "@home gin",
    "%vol gin": "%vol gin",
    "*best* gin": "*best* gin",
    "& gin": "& gin",
    "!wow": "!wow",
    "? gin": "? gin",
    "`gin`": "`gin`",
    "| gin": "| gin",
    "> gin": "> gin",
    "- gin": "- gin",
    "[draft] gin": "[draft] gin",
    '"Best" gin': '"Best" gin',
    "'Best' gin": "'Best' gin",
    '"Best: gin"': "Best: gin",
    "'it''s gin'": "it's gin",
    "it's gin": "it's gin",
    "“Best gin”": "Best gin",
    "Gran’s “best” gin": "Gran’s “best” gin",
    "gin # a note": "gin",
    "gin#2": "gin#2",
    "gin   and\tlime  ": "gin and lime",
    r"gin \n lime": r"gin \n lime",
    r'"gin\tlime"': "gin lime",
    '5" gin': '5" gin',
    "¼ gin": "¼ gin",
    "&gin lime": "&gin lime",
    "<<: gin": "<<: gin",
    "a, b, c": "a, b, c",
    "{gin}s": "{gin}s",
}


@pytest.mark.parametrize("written", WORDS)
def test_words_stay_the_words_that_were_written(written: str) -> None:
    assert read(f"title: {written}") == {"title": WORDS[written]}
    assert read(f"cautions:\n  - {written}")["cautions"] in ([WORDS[written]], ["gin"])


SHAPES: dict[str, tuple[str, Any]] = {
    "a blank before the colon": ("title : Gin", {"title": "Gin"}),
    "no blank after it": ("title:Gin", {"title": "Gin"}),
    "capitals": ("Title: Gin\nKEEPS: 1 year", {"title": "Gin", "keeps": "1 year"}),
    "a list at the edge": ("ingredients:\n- 1 l gin\n- 2 limes", ["1 l gin", "2 limes"]),
    "a dash without a blank": ("ingredients:\n  -1 l gin\n  -2 limes", ["1 l gin", "2 limes"]),
    "stars": ("ingredients:\n  * 1 l gin\n  * 2 limes", ["1 l gin", "2 limes"]),
    "round bullets": ("ingredients:\n  •1 l gin\n  • 2 limes", ["1 l gin", "2 limes"]),
    "long dashes": ("ingredients:\n  – 1 l gin\n  – 2 limes", ["1 l gin", "2 limes"]),
    "no dashes": ("ingredients:\n  1 l gin\n  2 limes", ["1 l gin", "2 limes"]),
    "tabs": ("ingredients:\n\t- 1 l gin\n\t- 2 limes", ["1 l gin", "2 limes"]),
    "a block": ("ingredients: |\n  1 l gin\n  2 limes", ["1 l gin", "2 limes"]),
    "a block with dashes": ("ingredients: |\n  - 1 l gin\n  - 2 limes", ["1 l gin", "2 limes"]),
    "out of line": ("ingredients:\n  - 1 l gin\n   - 2 limes", ["1 l gin", "2 limes"]),
    "brackets": ("ingredients: [1 l gin, '2 limes']", ["1 l gin", "2 limes"]),
    "brackets over lines": ("ingredients: [\n  1 l gin,\n  2 limes\n]", ["1 l gin", "2 limes"]),
    "blank lines": ("\ningredients:\n\n  - 1 l gin\n\n  - 2 limes\n", ["1 l gin", "2 limes"]),
    "notes": ("# a\ningredients: # b\n  # c\n  - 1 l gin # d\n  - 2 limes", ["1 l gin", "2 limes"]),
    "words that run on": ("ingredients:\n  - 1 l\n    gin\n  - 2 limes", ["1 l gin", "2 limes"]),
    "an amount behind": ("ingredients:\n  - sugar: 250 g", [{"sugar": "250 g"}]),
    "a heading": ("ingredients:\n  - Ice:\n    - 1 egg", [{"Ice": ["1 egg"]}]),
    "a bare heading": ("ingredients:\n  Ice:\n    1 egg", [{"Ice": ["1 egg"]}]),
    "stages without dashes": (
        "timeline:\n  shake: daily\n  shake: weekly",
        [{"shake": "daily"}, {"shake": "weekly"}],
    ),
    "facts below": ("card:\n  Use: A spoonful: no more", {"card": {"use": "A spoonful: no more"}}),
    "an item of facts": (
        "ingredients:\n  - item: gin\n    amount: 1 l\n  - 2 limes",
        [{"item": "gin", "amount": "1 l"}, "2 limes"],
    ),
    "folded words": (
        "summary: >\n  One\n  two\ntitle: Gin",
        {"summary": "One two", "title": "Gin"},
    ),
    "nothing": ("summary:\ntitle: Gin", {"summary": None, "title": "Gin"}),
}


@pytest.mark.parametrize("case", SHAPES)
def test_a_shape_is_read_as_it_is_meant(case: str) -> None:
    text, wanted = SHAPES[case]
    found = read(text)
    key = next(iter(found))
    assert (found if isinstance(wanted, dict) else found[key]) == wanted


WRONG: dict[str, list[str]] = {
    'title: Gin\nsummary: "For a\nmakes: 1 l': [
        "2: It begins with a quotation mark that is never closed."
    ],
    "season: [May, June\nmakes: 1 l": ['1: The bracket "[" is never closed.'],
    "title: Gin\nmakes 1 l": ['2: "makes 1 l" is not quite how a fact is written.'],
    "title: Gin\ntitle: Rum": ['2: "title" stands here twice.'],
    "- 1 l gin": ['1: "- 1 l gin" belongs to no list.'],
    "ingredients:\n  - 1 l gin\n  2 limes": ['3: "2 limes" stands in a list and has no dash'],
    "ingredients:\n  1 l gin\n  - 2 limes": ['3: "- 2 limes" has a dash, and the line above it'],
    "ingredients:\n  - 1 l gin\n    note: cold": ['3: "note: cold" stands below a line'],
    "ingredients:\n  - 2 #10 tins": ['2: It is not clear what the "#1" is for.'],
    "title: Gin\n   makes: 1 l": ['2: "makes: 1 l" stands below a line'],
    "card:\n  use: A\n    keep: B": ['3: "keep: B" stands below a line'],
    r'title: "a\x07b"': [r'1: "\x07" is no sign that can be printed.'],
    f"makes: {'9' * 40} l": ['1: "999999999999..." is a number of 40 figures.'],
    "was: " + "[" * 30 + "a" + "]" * 30: ["1: Brackets stand too deep in brackets."],
}


@pytest.mark.parametrize("text", WRONG, ids=lambda text: text[:24])
def test_what_is_not_clear_is_told_at_its_line(text: str) -> None:
    said = told(text)
    assert len(said) == len(WRONG[text])
    for line, wanted in zip(said, WRONG[text], strict=True):
        assert line.startswith(f"a.md:{wanted}")


def test_names_that_point_elsewhere_are_words() -> None:
    bomb = "a: &a [x, x]\n" + "\n".join(f"{n}: &{n} [*a, *a]" for n in "bcdefgh")
    assert read(bomb)["h"] == "&h [*a, *a]"


SIGNS = st.text(alphabet=":-#[]{}\"'|>*&!%@`\n\t abc123½,.~", max_size=120)


@given(SIGNS)
def test_any_text_is_read_or_told(text: str) -> None:
    try:
        problems = [] if isinstance(read(text), dict) else None
    except ProblemsFound as found:
        problems = list(found.problems) or None
    assert problems is not None
    assert all(1 <= problem.line <= text.count("\n") + 1 for problem in problems)


_VALUES = st.text(alphabet="abcdef 123,.()½%-", min_size=1, max_size=20).map(str.strip)
_SAFE = _VALUES.filter(lambda text: text and text[0] in "abcdef123" and text[-1] != ":")


@given(st.dictionaries(st.sampled_from(["title", "makes", "summary"]), _SAFE), st.lists(_SAFE))
def test_what_another_program_writes_reads_the_same(facts: dict, lines: list) -> None:
    data = {**facts, "cautions": lines} if lines else facts | {"title": "Gin"}
    written = yaml.safe_dump(data, allow_unicode=True, width=30)
    assert plain(read(written)) == plain(yaml.load(written, yaml.BaseLoader))
