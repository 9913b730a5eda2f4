"""The guide "Write a recipe for this book": what it shows loads, what it quotes is said."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from stillroom.core.larder.own import read_own_larder
from stillroom.core.reading.loading import read_recipe
from stillroom.core.words.problems import ProblemsFound

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
    '"1 kg sugar" stands in a list and has no dash before it.': (
        "ingredients:\n  - 1 kg plums\n  1 kg sugar"
    ),
    '"use within" says how long it keeps, and that is no stage of making it.': (
        "timeline:\n  - use within: 2 weeks"
    ),
    '"3 pint bottles" could be the size of each or of all.': "makes: 3 pint bottles",
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


def test_the_words_of_a_timeline_that_the_guide_names_are_known() -> None:
    from stillroom.core.when.stages import parse_stage, stage_words

    said = TEXT.split("Words for work are ", 1)[1].split(" Two may be joined", 1)[0]
    plain = re.sub(r"for looking after|for waiting|and at the end|\n|\.|;", ",", said)
    words = [word.strip() for word in plain.split(",") if word.strip()]
    assert len(words) >= 25
    assert set(words) <= set(stage_words())
    assert parse_stage("strain and bottle", "45 minutes").role == "bottle"
    for length in ("2 weeks", "2-4 weeks", "overnight", "while it bubbles, about 3 weeks"):
        assert f"`{length}`" in TEXT.replace("\n", " ")
        assert parse_stage("rest", length).lasts


def test_what_the_guide_says_of_its_smallest_recipe_is_so() -> None:
    from stillroom.core.recipe.kinds import all_kinds, find_kind

    recipe = read_recipe(WHOLE[0][1], "plum-gin.md", "plum-gin")
    shaken = sum(
        stage.lasts.minutes() for stage in recipe.stages if stage.role == "tend" and stage.lasts
    )
    assert shaken == 8 * 7 * 1440, "an infusion is shaken for eight weeks"
    assert recipe.filled_into[0].name == "bottle"
    assert recipe.filled_into[0].size
    assert recipe.filled_into[0].size.middle == 100
    listed = TEXT.split("`kind` is one of ", 1)[1].split(".", 1)[0].replace(" and ", ", ")
    assert sorted(
        kind.strip() for kind in listed.replace("\n", " ").split(",") if kind.strip()
    ) == (sorted(all_kinds()))
    everyday = TEXT.split("as well: ", 1)[1].split(".", 1)[0].replace("\n", " ")
    assert all(find_kind(word.strip()) for word in everyday.split(","))


def test_materials_units_and_marks_are_as_the_guide_says() -> None:
    craft = _recipe("kind: craft\nmaterials:\n  - 1 m ribbon")
    craft = craft.replace("ingredients: \n  - 1 l vodka, 40% vol\n", "")
    assert read_recipe(craft, "a.md", "a").ingredients[0].item == "ribbon"
    for units in ("us", "imperial"):
        assert read_recipe(_recipe(f"units: {units}"), "a.md", "a").system == units
    for mark in ("best before", "use by", "none"):
        keys = f"keeps:\n  unopened: 2 weeks\n  mark: {mark}"
        assert read_recipe(_recipe(keys), "a.md", "a").keeps.mark == mark
    one_word = _recipe("ingredients:\n  - 100 g caster sugar", "1. Stir {sugar}.")
    assert read_recipe(one_word, "a.md", "a").method
