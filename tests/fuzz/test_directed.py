"""Three hundred texts of known malice: each is read, or told in words at once."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest

from fuzz.readers import fault_of, readers
from stillroom.core.words.plain_yaml import read_plain
from stillroom.core.words.problems import ProblemsFound, Unreadable

RIGHT: Final = {
    "recipe": {
        "title": "Quince drops",
        "kind": "infusion",
        "makes": "900 ml",
        "ingredients": "\n  - 1 l vodka, 40% vol\n  - 3 quinces, about 600 g",
    },
    "list": {
        "giving list": "Winter 2027",
        "giving day": "2027-12-18",
        "baskets": "{small: {eat: 1}}",
        "makes": "[{recipe: rosemary-salt}]",
        "households": "[{name: The Cragbies, basket: small}]",
    },
    "larder": {"contains": "nothing", "source": "its label"},
    "settings": {"country": "GB"},
}
FRAMES: Final = {
    "recipe": "---\n{}\n---\n\n## Method\n\n1. Put all of it into the jar and wait.\n",
    "list": "{}\n",
    "larder": "elder paste:\n{}\n",
    "settings": "site_name: A book\ntheme: material\nplugins:\n  - stillroom:\n{}\n",
}
INDENTS: Final = {"recipe": "", "list": "", "larder": "  ", "settings": "      "}
CASES: Final = [
    (reader, *case)
    for reader, cases in read_plain(
        Path(__file__).with_name("directed.yml").read_text("utf-8")
    ).items()
    for case in cases
]


def written(reader: str, key: str, value: str) -> str:
    facts = {**RIGHT[reader], str(key): value}
    rows = [f"{INDENTS[reader]}{name}: {said}" for name, said in facts.items()]
    return FRAMES[reader].format("\n".join(rows))


@pytest.mark.parametrize("reader", RIGHT)
def test_the_text_around_the_cases_is_right(reader: str) -> None:
    readers()[reader].take(written(reader, *next(iter(RIGHT[reader].items()))))


@pytest.mark.parametrize(("reader", "key", "value", "outcome"), CASES)
def test_a_case_is_read_or_told(reader: str, key: str, value: str, outcome: str) -> None:
    text = written(reader, key, value)
    assert fault_of(readers()[reader], text) == ""
    try:
        readers()[reader].take(text)
    except (ProblemsFound, Unreadable):
        assert outcome == "told"
    else:
        assert outcome == "read"


LONG = "9" * 5_000
COUNTED = (
    "span~{} weeks", "span~1-{} weeks", "stage~shake: every {} days for 2 weeks",
    "stage~shake: {} times a day for 2 weeks", "keeps~{} weeks", "day~{} June",
    "day~{} days before Easter", "day~the {}rd Sunday in June", "money~{}", "money~1.{}",
    "pack~{} ml for 3", "pack~7 ml for {}", "pack~{} or more for 3 each", "container~jar, {} ml",
    "makes~{} dozen", "makes~{} biscuits",
    "makes~6 jars of 1/2/3 ml 6 jars of {} ml", "vessel~{} cm round tin", "cut~{} ml at 96%|40%|",
    "cut~5 ml at {}%|40%|", "cut~5 ml at 96%|{}%|", "pods~{} g in 700 ml at 40%|33%",
    "pods~3 g in 700 ml at {}%|33%",
)  # fmt: skip
TARGETS = ("times={}", "times=1/{}", "fill={} x 50 ml", "fill=3 x {} ml", "have={} ml vodka",
    "makes={} ml", "vessel={} ml")  # fmt: skip


@pytest.mark.parametrize("words", [*COUNTED, *TARGETS])
def test_a_number_that_is_none_is_told(words: str) -> None:
    reader = readers()["target" if "=" in words else "small"]
    for number in (LONG, "²", "1e999999999", "0", "-1", "٣٣٣٣٣٣٣٣٣٣٣"):
        assert fault_of(reader, words.format(number)) == "", number[:20]
    if "=" not in words:
        with pytest.raises(Unreadable):
            reader.take(words.format(LONG))


# what only the method names: in no list, in one line's words, of a craft, as a dish to eat with
@pytest.mark.parametrize("kind", ["infusion", "preserve", "bake", "confection", "dry mix", "craft"])
@pytest.mark.parametrize(
    "said",
    ["Beat in an egg.", "Stir in 200 g walnuts and a splash of rum.", "Serve with lamb.",
     "Add the peel of two lemons, 2 cm of ginger and potato flour.", "Dust with cocoa.",
     "Use 1 cup - the best.", "Add 200 g of the, and an."],
)  # fmt: skip
def test_a_food_that_only_the_method_names_has_its_page(kind: str, said: str) -> None:
    facts = {**RIGHT["recipe"], "kind": kind}
    front = "\n".join(f"{name}: {value}" for name, value in facts.items())
    text = f"---\n{front}\n---\n\n## Method\n\n1. Cook {{quinces}} in {{vodka}}. {said}\n"
    assert fault_of(readers()["page"], text) == ""


def test_there_are_more_than_three_hundred() -> None:
    assert len(CASES) > 300
    assert {case[0] for case in CASES} == set(RIGHT)
