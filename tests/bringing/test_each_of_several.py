"""Lines that say one amount of several things: each has a line of its own, and is asked about.

The first line as a bath bag's page has it (a30 of 2026-11-30, 24.txt), the second as a newspaper's
chutney (01.txt); the others in the forms of their languages.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed
from stillroom.bringing.each_of import EACH_BELOW, lines_of_each

PARTED = {
    "how, behind a comma": (
        "en_GB",
        "1 tsp each, dried, of summer savory, basil, thyme",
        ["1 tsp dried summer savory", "1 tsp dried basil", "1 tsp dried thyme"],
    ),
    "how, once said of one": (
        "en_GB",
        "1/4 tsp each of ground cloves, grated nutmeg, mustard powder and cayenne pepper",
        [
            "1/4 tsp ground cloves",
            "1/4 tsp grated nutmeg",
            "1/4 tsp mustard powder",
            "1/4 tsp ground cayenne pepper",
        ],
    ),
    "in brackets": (
        "en_GB",
        "1 tsp (each) celery seed, mustard seed, sage",
        ["1 tsp celery seed", "1 tsp mustard seed", "1 tsp sage"],
    ),
    "behind them": ("en_GB", "salt, pepper, 1 tsp each", ["1 tsp salt", "1 tsp pepper"]),
    "a word said once": (
        "en_GB",
        "100 g each white and brown sugar",
        ["100 g white sugar", "100 g brown sugar"],
    ),
    "de": ("de", "je 100 g Mandeln und Haselnüsse", ["100 g Mandeln", "100 g Haselnüsse"]),
    "fr": ("fr", "100 g chacun : amandes, noisettes", ["100 g amandes", "100 g noisettes"]),
    "it": ("it", "100 g ciascuno di mandorle e nocciole", ["100 g mandorle", "100 g nocciole"]),
    "es": ("es", "100 g almendras y avellanas, de cada", ["100 g almendras", "100 g avellanas"]),
    "nl": ("nl", "1 tl elk: kaneel, nootmuskaat", ["1 tl kaneel", "1 tl nootmuskaat"]),
    "sv": ("sv", "1 tsk av varje: kanel, ingefära", ["1 tsk kanel", "1 tsk ingefära"]),
}


@pytest.mark.parametrize("case", PARTED)
def test_each_of_several_has_a_line(case: str) -> None:
    language, line, lines = PARTED[case]
    (one,) = brought(f"Jar\n\nIngredients\n\n200 g sugar\n{line}\n\n1. Mix all.\n", language)
    assert listed(one) == ["200 g sugar", *lines]
    assert "things stood on one line, and have one each now" in asked(one)


@pytest.mark.parametrize("line", ["2 apples, 100 g each", "1 tsp each salt, finely ground"])
def test_a_size_and_what_is_done_part_nothing(line: str) -> None:
    (one,) = brought(f"Jar\n\nIngredients\n\n200 g sugar\n{line}\n\n1. Mix all.\n")
    assert listed(one) == ["200 g sugar", line]


@pytest.mark.parametrize(
    ("line", "things"),
    [
        ("1 tsk af hver: kanel og nellike", ["1 tsk kanel", "1 tsk nellike"]),
        ("po 1 łyżeczce cynamonu i goździków", ["1 łyżeczce cynamonu", "1 łyżeczce goździków"]),
        ("1 łyżeczka każdego: cynamon, goździki", ["1 łyżeczka cynamon", "1 łyżeczka goździki"]),
        (
            "1 colher de chá de cada: canela e cravo",
            ["1 colher de chá canela", "1 colher de chá cravo"],
        ),
        ("hver 1 ts kanel og nellik", ["1 ts kanel", "1 ts nellik"]),
        ("2 apples, 100 g each", []),
    ],
)
def test_the_words_for_each_are_those_of_the_reader_of_lines(line: str, things: list[str]) -> None:
    assert lines_of_each(line, lambda words: words != "apples") == things


@pytest.mark.parametrize("head", ["von jedem 1 TL", "1 c. à c. de chaque", "1 tsk av varje"])
def test_a_head_says_so_much_of_each(head: str) -> None:
    assert EACH_BELOW.search(head)
