"""Every thing of the wrong sort in every place of every file: it is told in a cook's words.

Whatever stands where something else is wanted, no message may show how a program holds it. The
places are those of a file in which every key is written, and every key that the models know.
"""

from __future__ import annotations

import copy
import re
from collections.abc import Iterator
from typing import Any, Final

import pytest
import yaml

from fuzz.readers import ROOT, fault_of, readers
from sampling import is_whole, share
from stillroom.core.recipe.model import Card, Recipe
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.giving.model import BasketKind, GivingList, Household, Make, Price, Stock

WRONG: Final = {
    "nothing": None,
    "yes": True,
    "no": False,
    "a number": 3,
    "less than nothing": -2,
    "a part": 2.5,
    "no number": float("nan"),
    "without end": float("inf"),
    "a very large one": 10**30,
    "no words": "",
    "words": "some words",
    "a day": yaml.safe_load("2027-12-18"),
    "a moment": yaml.safe_load("2027-12-18 12:00:00"),
    "an empty list": [],
    "a list of nothing": [None],
    "a list of numbers": [1, 2.5, True],
    "a list of lists": [["a", [None]]],
    "a list of keys": [{"quince-": None}],
    "no keys": {},
    "a key of nothing": {"quince-": None},
    "keys of keys": {"a": {"b": [1, None]}},
    "a key that is a number": {3: 4},
    "a key that is nothing": {None: None},
    "a key that is yes": {True: False},
    "a key that is a day": {yaml.safe_load("2027-12-18"): 1},
    "bytes": b"\x00\xff",
    "a set": {"a", "b"},
}
# how programs hold and call things
HELD: Final = re.compile(
    r"\bdict|\bmapping|NoneType|\bNone\b|Input should|\bTrue\b|\bFalse\b|datetime|Decimal|frozenset"
    r"|\{'|'\}|\['|'\]|\[\[|\(\)|(?<!\.)\bnan\b|\bb'|\bset\(|\bmodel\b|\bobject\b|\btype\b"
    r"|\bstring\b|\binstance\b|\bvalid\b|\binteger\b|\bsequence\b|\bgenerator\b|\butf"
)
RECIPE: Final = {
    "title": "Quince drops", "kind": "infusion", "summary": "Warm drops.", "makes": "900 ml",
    "was": "quince-ratafia", "yields": "900 ml",
    "ingredients": [
        "1 l vodka, 40% vol", {"item": "quinces", "amount": "600 g", "scales": "with the batch"}
    ],
    "vessel": "2 l jar", "container": "bottle, 100 ml", "equipment": ["a sieve"],
    "timeline": [{"prepare": "40 minutes"}, {"rest": "6 weeks, in the dark"}],
    "keeps": "1 year", "season": ["October"], "source": "our own", "tags": ["winter"],
    "card": {"use": "A teaspoon in tea.", "title": "Drops", "net": "100 ml"},
    "cautions": ["Strong."], "acidity": {"ph": 3.4, "source": "a strip"}, "strength": "30% vol",
    "overrides": [{"rule": "strong-drink", "why": "A long enough reason for it."}],
    "contains": ["nuts"], "may contain": ["milk"], "picture": "quince.svg",
}  # fmt: skip
SETTINGS: Final = {
    "country": "GB", "units": "metric", "language": "en_GB", "currency": "GBP", "altitude_m": 10,
    "giving_days": [{"name": "Yule", "day": "24 December"}],
}  # fmt: skip
LARDER: Final = {
    "elder vinegar": {
        "also": ["our vinegar"], "is": "cider vinegar", "parts": ["cider vinegar", "elderflower"],
        "contains": ["nuts"], "may contain": ["milk"], "from": "plant", "acidity": "acid",
        "density": "1 cup weighs 240 g", "one weighs": "5 g", "strength": "4% vol",
        "price": ["1 kg for 8"], "section": "dry", "source": "its label", "note": "sweet",
    },
}  # fmt: skip


def whole_list() -> dict[str, Any]:
    """Return a list in which every key is written that a list may have."""
    text = (ROOT / "tests" / "giving" / "data" / "small-list.yml").read_text("utf-8")
    said: dict[str, Any] = yaml.safe_load(text)
    said.setdefault("prices", [{"item": "caster sugar", "packs": ["1 kg for 1.15"]}])
    for place, model in (
        (said, GivingList), (said["households"][0], Household), (said["makes"][0], Make),
        (said["baskets"]["small"], BasketKind), (said["prices"][0], Price), (said["stock"], Stock),
    ):  # fmt: skip
        for name, field in model.model_fields.items():
            place.setdefault(field.alias or name, "some words")
    return said


def whole(name: str) -> dict[str, Any]:
    """Return what stands in a file of this sort, by its keys."""
    if name == "list":
        return whole_list()
    if name == "recipe":
        said: dict[str, Any] = copy.deepcopy(dict(RECIPE))
        for place, model in ((said, Recipe), (said["card"], Card)):
            for key in model.model_fields:
                place.setdefault(key.replace("_", " "), "some words")
        return said
    if name == "settings":
        return {**dict.fromkeys(BookSettings.model_fields, "some words"), **SETTINGS}
    return copy.deepcopy(dict(LARDER))


def written(name: str, said: object) -> str:
    """Return the file of this sort that says so."""
    if name == "settings":
        book = {"site_name": "A book", "theme": "material", "plugins": [{"stillroom": said}]}
        return yaml.safe_dump(book, sort_keys=False)
    text = yaml.safe_dump(said, sort_keys=False, allow_unicode=True)
    return f"---\n{text}---\n\n## Method\n\n1. Put all of it into the jar and wait.\n" if (
        name == "recipe") else text  # fmt: skip


def places(said: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    if path:
        yield path
    rows = dict(enumerate(said)) if isinstance(said, list) else said
    for key, inner in rows.items() if isinstance(rows, dict) else ():
        yield from places(inner, (*path, key))


def put(said: Any, path: tuple[Any, ...], value: Any) -> Any:
    """Return the same with another thing in this place."""
    new = copy.deepcopy(said)
    here = new
    for key in path[:-1]:
        here = here[key]
    here[path[-1]] = value
    return new


def without_doubts(name: str) -> dict[str, Any]:
    """Return what is right of a file: where all else is wrong too, little is tried."""
    right = copy.deepcopy({"list": yaml.safe_load(readers()["list"].seeds[1]), "recipe": RECIPE,
                           "settings": SETTINGS, "larder": LARDER}[name])  # fmt: skip
    return dict(right)


def messages_of(name: str, text: str) -> list[str]:
    try:
        readers()[name].take(text)
    except ProblemsFound as found:
        return [str(problem) for problem in found.problems]
    except Unreadable as wrong:
        return [str(wrong)]
    return []


@pytest.mark.sampled
@pytest.mark.parametrize("name", ["list", "recipe", "settings", "larder"])
def test_a_thing_of_the_wrong_sort_is_told_in_a_cooks_words(name: str) -> None:
    faults: dict[str, str] = {}
    known, right = whole(name), without_doubts(name)
    tried = 0
    for number, path in enumerate(places(known)):
        for at, (called, value) in enumerate(WRONG.items()):
            if (number + at) % share(30, 1):
                continue
            try:
                said = put(right, path, value)
            except (KeyError, IndexError, TypeError):
                said = put(known, path, value)
            text = written(name, said)
            tried += 1
            fault = fault_of(readers()[name], text) if is_whole() else ""
            told = [one for one in messages_of(name, text) if HELD.search(one)]
            if fault or told:
                faults.setdefault(fault or told[0], f"{path}: {called}")
    assert faults == {}
    assert tried > share(10, 400)


@pytest.mark.parametrize("name", ["list", "recipe", "settings", "larder"])
def test_a_file_that_is_another_thing_altogether(name: str) -> None:
    for called, value in WRONG.items():
        text = written(name, value)
        assert fault_of(readers()[name], text) == "", called
        assert [one for one in messages_of(name, text) if HELD.search(one)] == [], called


def test_the_words_of_programs_are_found() -> None:
    for said in ("{'quince-': None}", "Input should be a valid string", "It says \"['a']\"."):
        assert HELD.search(said)
    assert not HELD.search('The basket "small" holds nothing: it says "2.5".')
