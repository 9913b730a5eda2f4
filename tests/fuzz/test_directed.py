"""A hundred and more texts of known malice: each is read, or told in words at once."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import pytest
import yaml

from fuzz.readers import fault_of, readers
from stillroom.core.problems import ProblemsFound, Unreadable

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
    for reader, cases in yaml.safe_load(
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


def test_there_are_more_than_a_hundred() -> None:
    assert len(CASES) > 100
    assert {case[0] for case in CASES} == set(RIGHT)
