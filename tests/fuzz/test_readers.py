"""Whatever is written, it is read whole or told in words: no traceback, no long wait, no loss.

Some two thousand mangled texts in every run, always the same, and ten thousand when the whole is
asked; a million of others by `pytest -m million tests/fuzz`. The directed ones are in
test_directed.py.
"""

from __future__ import annotations

import re
import secrets
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fuzz.mangling import mangled
from fuzz.readers import Reader, fault_of, lost_words, readers
from sampling import share
from stillroom.core.reading.loading import read_recipe
from stillroom.core.words.problems import ProblemsFound, Unreadable

# how many texts each reader is given: the dear ones few, the cheap ones many
MANY = {
    "line": 4_000, "small": 3_300, "target": 700, "larder": 700, "recipe": 800, "settings": 300,
    "list": 150, "page": 50, "plan": 20, "log": 500, "import": 200,
}  # fmt: skip


# of a million each has its fair part: the whole takes some hours
MILLION = {
    "line": 203_000, "small": 180_000, "target": 100_000, "larder": 110_000, "log": 60_000,
    "settings": 100_000, "import": 30_000, "recipe": 125_000, "list": 60_000, "page": 30_000,
    "plan": 2_000,
}  # fmt: skip


def faults_among(name: str, many: int, number: int) -> list[tuple[str, str]]:
    """Return each sort of fault once, with the text that has it."""
    reader = readers()[name]
    for seed in reader.seeds[:3]:  # what is loaded once is not reckoned to the first text
        fault_of(reader, seed)
    chance = Random(number)
    found: dict[str, str] = {}
    for _ in range(many):
        text = mangled(reader.seeds, reader.edits, chance)
        if fault := fault_of(reader, text):
            found.setdefault(fault, text)
    return list(found.items())


@pytest.mark.sampled
@pytest.mark.parametrize("name", MANY)
def test_a_mangled_text_is_read_or_told(name: str) -> None:
    assert faults_among(name, share(MANY[name] // 5, MANY[name]), number=1) == []


@pytest.mark.parametrize("name", ["small", "target", "log", "larder", "import"])
def test_no_number_of_a_text_is_too_long_to_be_read_or_told(name: str) -> None:
    reader = readers()[name]
    for seed in reader.seeds:
        for found in re.finditer(r"\d+", seed):
            for number in ("9" * 5_000, "1." + "9" * 5_000):
                text = seed[: found.start()] + number + seed[found.end() :]
                assert fault_of(reader, text) == "", text.replace(number, number[:9])


@pytest.mark.parametrize("name", ["1 " * 200 + ".jpg", "å" * 140 + ".svg", "previews/" + "a" * 300])
def test_a_page_with_a_picture_of_too_long_a_name_is_read_or_told(name: str) -> None:
    """Found by thirty thousand mangled pages: no system has names so long, and asking raises."""
    reader = readers()["page"]
    seed = next(one for one in reader.seeds if "\nkind:" in one and "\npicture:" not in one)
    text = seed.replace("\nkind:", f'\npicture: "{name}"\nkind:', 1)
    assert fault_of(reader, text) == ""


@pytest.mark.million
@pytest.mark.parametrize("name", MILLION)
def test_a_million_mangled_texts_are_read_or_told(name: str) -> None:
    number = secrets.randbelow(2**32)
    assert (number, faults_among(name, MILLION[name], number)) == (number, [])


def test_the_many_are_ten_thousand_and_the_million_is_one() -> None:
    assert sum(MANY.values()) >= 10_000
    assert sum(MILLION.values()) == 1_000_000
    assert set(MANY) == set(MILLION) == set(readers())


def test_every_seed_is_right() -> None:
    for reader in readers().values():
        wrong = [seed[:60] for seed in reader.seeds if not taken(reader, seed)]
        assert reader.name in ("line", "larder") or not wrong, (reader.name, wrong)


def taken(reader: Reader, text: str) -> bool:
    try:
        reader.take(text)
    except ValueError:
        return False
    return True


@pytest.mark.sampled
@settings(max_examples=share(60, 300), derandomize=True, database=None)
@given(st.text(max_size=200))
def test_any_text_at_all(text: str) -> None:
    for reader in readers().values():
        assert fault_of(reader, text) == "", reader.name


def test_what_is_no_message_is_a_fault() -> None:
    def crash(text: str) -> None:
        raise KeyError(text)

    def speak(text: str) -> None:
        raise Unreadable("NoneType is not a number.")

    def be_silent(text: str) -> None:
        raise ProblemsFound([])

    assert "KeyError" in fault_of(Reader("x", (), crash), "a")
    assert "NoneType" in fault_of(Reader("x", (), speak), "a")
    assert "without a word" in fault_of(Reader("x", (), be_silent), "a")


def test_what_is_lost_is_found() -> None:
    text = readers()["recipe"].seeds[0]
    recipe = read_recipe(text, "a.md", "a-thing")
    assert lost_words(text, recipe) == set()
    less = recipe.model_copy(update={"method": recipe.method[1:]})
    assert lost_words(text, less)
