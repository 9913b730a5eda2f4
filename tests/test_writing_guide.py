"""The guide "Write a recipe for this book": what it shows loads, what it quotes is said."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from stillroom.core.larder.own import read_own_larder
from stillroom.core.loading import read_recipe
from stillroom.core.problems import ProblemsFound

GUIDE = Path(__file__).parents[1] / "site_demo" / "pages" / "writing.md"
TEXT = GUIDE.read_text(encoding="utf-8")
FENCED = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
BLOCKS = [
    (TEXT.count("\n", 0, found.start()) + 1, *found.groups()) for found in FENCED.finditer(TEXT)
]
WHOLE = [(line, text) for line, language, text in BLOCKS if language == "markdown"]
KEYS = [(line, text) for line, language, text in BLOCKS if language == "yaml"]

# What a block of keys is laid upon, so that it can be read as a recipe.
BASE = {
    "title": "Base",
    "kind": "infusion",
    "makes": "1 l",
    "ingredients": "\n  - 1 l vodka, 40% vol",
}
MESSAGES = {  # a mistake, and the message of the guide that it must bring
    '"cupp" is not a unit.': "ingredients:\n  - 2 cupp sugar",
    '"250 g" does not say what it is.': "ingredients:\n  - 250 g",
    'A recipe has no "titel:".': "titel: Base",
    '"makes" is missing.': "makes:",
    '"{plumbs}" is not an ingredient.': "METHOD:1. Put in {plumbs}.",
    '"pickle" may be two kinds.': "kind: pickle",
    '"blackcurrant jam" is not a kind.': "kind: blackcurrant jam",
    'The recipe has no "## Method".': "METHOD:",
    '"every 3 lunches" is not a rhythm.': "timeline:\n  - rest: every 3 lunches",
}


def _recipe(keys: str, method: str = "1. Pour it in.") -> str:
    lines = [keys.rstrip()]
    lines += [
        f"{key}: {value}"
        for key, value in BASE.items()
        if not re.search(rf"^{key}:", keys, re.MULTILINE)
    ]
    heading = f"## Method\n\n{method}\n" if method else ""
    return "---\n" + "\n".join(lines) + f"\n---\n\n{heading}"


def test_the_guide_shows_whole_recipes_and_keys() -> None:
    assert len(WHOLE) >= 2
    assert len(KEYS) >= 12


@pytest.mark.parametrize(("line", "text"), WHOLE, ids=[f"line {line}" for line, _ in WHOLE])
def test_a_whole_recipe_of_the_guide_loads(line: int, text: str) -> None:
    assert read_recipe(text, f"writing.md at {line}", "guide").method


def test_the_smallest_file_is_a_dozen_lines() -> None:
    assert len(WHOLE[0][1].splitlines()) == 12


@pytest.mark.parametrize(("line", "text"), KEYS, ids=[f"line {line}" for line, _ in KEYS])
def test_keys_of_the_guide_load(line: int, text: str) -> None:
    assert read_recipe(_recipe(text), f"writing.md at {line}", "guide").title


@pytest.mark.parametrize("message", MESSAGES)
def test_a_message_of_the_guide_is_really_said(message: str) -> None:
    assert f"`{message}`" in TEXT, "the guide no longer quotes it"
    mistake = MESSAGES[message]
    if mistake.startswith("METHOD:"):
        text = _recipe("", mistake.removeprefix("METHOD:"))
    else:
        text = _recipe(mistake)
        if mistake == "makes:":
            text = text.replace("makes:\n", "")
    with pytest.raises(ProblemsFound) as found:
        read_recipe(text, "wrong.md", "wrong")
    assert message in str(found.value)


def test_every_message_of_the_guide_is_tried() -> None:
    quoted = re.findall(r"^\| `(.*?)` \|", TEXT, re.MULTILINE)
    assert sorted(quoted) == sorted(MESSAGES)


def test_the_larder_of_the_guide_is_read() -> None:
    (written,) = [text for _, _, text in BLOCKS if text.startswith("elderflower vinegar:")]
    foods = {food.name: food for food in read_own_larder(written, "larder.yml").larder.own}
    assert foods["elderflower vinegar"].acidity == "acid"
    assert foods["aunt's spread"].allergens == ("peanut",)
    assert foods["sea purslane"].each_g == 2
