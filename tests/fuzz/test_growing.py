"""Twice the text is twice the work: nothing that reads goes back over what it has read.

A paper of "1 1 1 1 ..." once took five minutes. What is counted are calls, which no machine makes
quicker or slower; where a single pattern does the work there are none to count, and the texts are
such that going back took it minutes.
"""

from __future__ import annotations

import cProfile
import re
import time
from collections.abc import Callable
from contextlib import suppress
from typing import Final

import pytest

from fuzz.readers import readers, take_import, take_list, take_recipe
from fuzz.test_wrong_types import put, without_doubts, written
from stillroom.core.larder.food_reading import read_food
from stillroom.core.private.words import list_own_words, list_private_words
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.core.words.text_files import find_two_versions

FACTS: Final = (
    "---\ntitle: Quince drops\nkind: infusion\nmakes: 900 ml\ningredients:\n"
    "  - 1 l vodka, 40% vol\n  - 3 quinces, about 600 g\n---\n\n"
)
RATIO: Final = 3.0
"""What twice a text may take more often than once the text: two, and what stands around it."""
FEW: Final = 5_000
_MADE_ONCE: Final = re.compile(r"\bre/_\w+\.py$|\bword_heads\.py$")
SHAPES: Final = ("1 ", "12, ", "sugar and ", "1 g a ", "for 2 weeks ", "1 kg sugar, ")
LINES: Final = ("\n", "a\n\n", "A\n\n", "```\n", "1 kg sugar\n")


def calls_of(take: Callable[[str], object], text: str) -> int:
    """Return how many calls reading a text makes, whatever comes of it.

    Patterns are made when a text first wants them, whichever it is: that counts for none.
    """
    counted = cProfile.Profile()
    counted.enable()
    try:
        take_quietly(take, text)
    finally:
        counted.disable()
    own = [
        one for one in counted.getstats()
        if not isinstance(one.code, str) and not _MADE_ONCE.search(one.code.co_filename)
    ]  # fmt: skip
    # what Python's own parts are called for is told by whoever calls them
    parts = [part for one in own for part in one.calls or () if isinstance(part.code, str)]
    return sum(one.callcount for one in (*own, *parts))


def take_quietly(take: Callable[[str], object], text: str) -> None:
    with suppress(ProblemsFound, Unreadable):
        take(text)


def seconds_of(take: Callable[[str], object], text: str) -> float:
    begun = time.process_time()
    take_quietly(take, text)
    return time.process_time() - begun


def in_a_step(text: str) -> None:
    lines = [text[at : at + 3_900] for at in range(0, len(text), 3_900)]
    take_recipe(f"{FACTS}## Method\n\n1. " + "\n".join(lines) + "\n")


def below_the_facts(text: str) -> None:
    take_recipe(f"{FACTS}{text}\n## Method\n\n1. Boil it.\n")


def brought(text: str) -> None:
    take_import(f"txt~{text}")


def of_length(shape: str, letters: int) -> str:
    return (shape * (letters // len(shape) + 1))[:letters]


def test_who_goes_back_over_what_was_read_is_found() -> None:
    def goes_back(text: str) -> None:
        for at in range(len(text)):
            for letter in text[:at]:
                letter.isalpha()

    once, twice = (calls_of(goes_back, "a" * many) for many in (150, 300))
    assert twice > RATIO * once + FEW, (once, twice)


@pytest.mark.parametrize("take", [in_a_step, brought], ids=["step", "import"])
@pytest.mark.parametrize("shape", SHAPES)
def test_twice_a_line_is_twice_the_work(take: Callable[[str], object], shape: str) -> None:
    take_quietly(take, of_length(shape, 1_200 + len(shape)))  # what is loaded once is in neither
    once, twice = (calls_of(take, of_length(shape, many)) for many in (600, 1_200))
    assert twice <= RATIO * once + FEW, (once, twice)


@pytest.mark.parametrize("take", [take_recipe, below_the_facts, brought],
    ids=["file", "below", "import"])  # fmt: skip
@pytest.mark.parametrize("shape", LINES)
def test_twice_the_lines_are_twice_the_work(take: Callable[[str], object], shape: str) -> None:
    take_quietly(take, of_length(shape, 1_700))
    once, twice = (calls_of(take, of_length(shape, many)) for many in (1_600, 3_200))
    assert twice <= RATIO * once + FEW, (once, twice)


# a list without a heading, a table typed without strokes, parts of a list: each was gone through
# anew from every line of it; what stands above the method was, for every recipe of a book
@pytest.mark.parametrize("shape", ["a|b\n---|---\n", "- a\n", "For the top:\n- a\n", "A:\n",
    "Jam\n\n1 kg plums\n\n1. Boil.\n\n", "Ingredients\n1 kg plums\nMethod\nStir.\n\n"])  # fmt: skip
def test_twice_the_rows_brought_are_twice_the_work(shape: str) -> None:
    take_quietly(brought, shape * 90)
    once, twice = (calls_of(brought, shape * many) for many in (80, 160))
    assert twice <= RATIO * once + FEW, (once, twice)


def test_twice_the_ingredients_are_twice_the_work() -> None:
    head, _, foot = FACTS.partition("  - 3 quinces")
    take_quietly(take_recipe, FACTS)
    rows = ["".join(f"  - {at} g sugar\n" for at in range(1, many)) for many in (151, 301)]
    once, twice = (calls_of(take_recipe, f"{head}{row}  - 3 quinces{foot}") for row in rows)
    assert twice <= 2.4 * once + FEW, (once, twice)


@pytest.mark.parametrize(
    "shape",
    ["nuts and ", "1 kg sugar\n", "large ripe ", "nuts or ", "milk, ", "of plums ", "é ", "(egg) "],
)
def test_a_food_of_twice_the_words_is_twice_the_work(shape: str) -> None:
    """A saved page whose list is one text of 20 kB once took a minute and a half."""
    take_quietly(read_food, of_length(shape, 90))
    once, twice = (calls_of(read_food, of_length(shape, many)) for many in (6_000, 12_000))
    assert twice <= RATIO * once + FEW


def test_a_paper_of_more_lines_than_three_recipes_have_is_told() -> None:
    def page(lines: int) -> str:
        listed = "\n".join(f"{one} g sugar" for one in range(1, lines))
        return f"txt~Plum jam\n\nIngredients\n{listed}\n\nMethod\n\nBoil until it sets.\n"

    take_import(page(900))
    with pytest.raises(
        ProblemsFound, match=r"One recipe in it has 3\d{3} lines; 3000 are the most"
    ):
        take_import(page(3_500))


def test_a_recipe_of_a_book_takes_no_more_when_its_title_names_no_kind() -> None:
    """Its nearest kind was sought for every word of it, though nobody was to be told of any."""
    texts = (f"{name}\n\n1 kg sugar\n1 l water\n\n1. Boil it.\n" for name in ("Jam", "Moon dust"))
    with_kind, without = (calls_of(brought, text) for text in [*texts])
    assert without <= 1.5 * with_kind, (with_kind, without)


# each took minutes, or would have: a look ahead to the end from every sign of a long line
@pytest.mark.parametrize("shape", ["12,", "1", "a;", "1 ("])
def test_a_line_of_a_hundred_thousand_letters_is_brought_in_or_told(shape: str) -> None:
    assert seconds_of(brought, of_length(shape, 100_000)) < 10


@pytest.mark.parametrize("shape", ["=======\n", "\n", "a\n\n"])
def test_a_file_of_a_hundred_thousand_letters_is_read_or_told(shape: str) -> None:
    assert seconds_of(take_recipe, of_length(shape, 100_000)) < 10
    assert seconds_of(take_recipe, f"{FACTS}{of_length(shape, 100_000)}") < 10


def test_two_versions_are_found_in_one_pass() -> None:
    text = "=======\n" * 100_000
    assert seconds_of(lambda said: find_two_versions(f"{said}<<<<<<<x"), text) < 5
    assert find_two_versions(f"{text}>>>>>>> theirs\n") == 1
    assert find_two_versions(f"a\n=======\n<<<<<<< mine\n{text}") == 3
    assert find_two_versions(f"a\n>>>>>>> theirs\n{text}") == 0


# what is told to be too long was read on all the same: a fact folded over rows or in brackets took
# seconds, and so did squares within squares and a denial of a hundred things
@pytest.mark.parametrize("long", [
    f"keeps: {'12, ' * 900}", "keeps: >-\n" + "  a. 12, a. 12\n" * 700,
    "summary: >-\n" + "  without nuts, without nuts, keeps\n" * 300,
    f'vessel: "{"a. " * 1_200}"', f"card: {{use: {'sugar and ' * 350}}}",
])  # fmt: skip
def test_a_fact_that_is_too_long_is_told_and_not_read_on(long: str) -> None:
    text = FACTS.replace("---\n\n", f"{long}\n---\n\n## Method\n\n1. Boil it.\n")
    with pytest.raises(ProblemsFound) as found:
        take_recipe(text)
    assert [one for one in found.value.problems if "1000 are the most" in one.what]
    short = calls_of(take_recipe, FACTS)
    assert calls_of(take_recipe, text) <= RATIO * short + 200_000


@pytest.mark.parametrize("shape", ["[", "[ ", "[a", "![", "[a\n"])
def test_squares_within_squares_are_told_and_squares_beside_each_other_are_read(shape: str) -> None:
    with pytest.raises(ProblemsFound) as found:
        below_the_facts(shape * 31)
    assert [one.what for one in found.value.problems] == [
        'More than 30 "[" stand within each other here.'
    ]
    below_the_facts("[a](b.md) [c] " * 40)
    below_the_facts(f"{shape * 20}\n\n{shape * 20}")


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (f"{FACTS}## Method\n\n1. {'Stir it well.' + chr(10)}" + "Stir it on.\n" * 400,
         "This step has"),
        (f"{FACTS}## Method\n\n1. Boil it.\n\n## Notes\n\n" + f"{'It keeps. ' * 4}\n" * 800,
         "letters below the facts"),
    ],
    ids=["step", "body"],
)  # fmt: skip
def test_a_recipe_that_is_too_long_is_told_where(text: str, said: str) -> None:
    with pytest.raises(ProblemsFound) as found:
        take_recipe(text)
    assert len(found.value.problems) == 1
    assert said in found.value.problems[0].what
    assert found.value.problems[0].line > 8


def test_a_list_with_more_rows_than_a_house_has_of_anything_is_told_at_once() -> None:
    giving = readers()["list"].seeds[1]
    rows = "".join(
        f"  - {{item: thing {number}, packs: [1 kg for 3]}}\n" for number in range(2_001)
    )
    text = giving.partition("prices:")[0] + f"prices:\n{rows}"
    with pytest.raises(ProblemsFound) as found:
        take_list(text)
    assert [one.what for one in found.value.problems] == [
        'There are 2001 rows under "prices"; 2000 are the most.'
    ]


# a couple's names were sought from every letter of a name, and the recipe meant among all titles
# for each of ten thousand rows
@pytest.mark.parametrize("path", [("households", 0, "name"), ("households",), ("makes",),
    ("makes", 0, "recipe"), ("households", 0, "avoid")], ids=str)  # fmt: skip
@pytest.mark.parametrize("shape", ["é", "a\n", "1\n", "a, ", "12, ", "- ", "Ab, "])
def test_a_list_with_a_text_of_pages_is_read_or_told(
    path: tuple[str | int, ...], shape: str
) -> None:
    text = written("list", put(without_doubts("list"), path, of_length(shape, 20_000)))
    assert seconds_of(take_list, text) < 2  # ten and more, of what is not linear


@pytest.mark.parametrize("shape", ["é", "Ab, ", "A-", "A ", "Aa and Bb ", "X'", "a  # "])
def test_names_are_sought_in_one_pass(shape: str) -> None:
    text = f"giving list: A\nname: {of_length(shape, 50_000)}\n"
    assert seconds_of(lambda said: list(list_private_words(said.encode(), "a")), text) < 2
    assert seconds_of(lambda said: list_own_words(said.encode()), "\n" * 50_000) < 2


@pytest.mark.parametrize(("path", "shape", "told"), [
    (("households", 0, "name"), "é" * 301, "301 letters; 300 are the most"),
    (("households", 0, "avoid"), "- " * 700, "letters; 1000 are the most"),
    (("makes",), "a\n" * 2_001, '2001 rows under "makes"; 2000 are the most'),
], ids=["name", "need", "rows"])  # fmt: skip
def test_what_is_too_long_in_a_list_is_one_message(
    path: tuple[str | int, ...], shape: str, told: str
) -> None:
    with pytest.raises(ProblemsFound) as found:
        take_list(written("list", put(without_doubts("list"), path, shape)))
    assert len(found.value.problems) == 1
    assert told in found.value.problems[0].what


def test_a_number_of_hundreds_of_figures_is_refused_and_a_long_one_is_not() -> None:
    with pytest.raises(ProblemsFound, match="hundreds of figures"):
        brought(f"Jam\n\nIngredients\n1 kg sugar\n{'1' * 300} plums\n\nMethod\nBoil.\n")
    brought("Jam\n\nIngredients\n1 kg sugar\n2 plums\n\nMethod\nBoil. ISBN 9780306406157.\n")
