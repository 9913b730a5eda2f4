"""The sugar asked of jam is spoken of beside what is a jam, and beside nothing else.

60 % is asked of jam that is sold (Jam and Similar Products (England) Regulations 2003); a gherkin,
a cordial, dried fruit, a cured salmon or a jam of milk is none. Recipes as they came from a
newcomer's papers (gherkins, cordial, apple rings, gravadlax) and from memory.
"""

from typing import Any

import pytest
from tests.care_cases import recipe_of

from stillroom.core.batch.preserves import solids_of

JAMS: list[tuple[str, str, list[str], str]] = [
    ("Damson jam", "preserve", ["1 kg damsons", "1 kg sugar"], "1.6 kg"),
    ("Gran's damsons", "jam", ["1 kg damsons", "1 kg sugar"], "1.6 kg"),
    ("Redcurrant jelly with port", "preserve", ["1 kg redcurrants", "800 g sugar"], "1.2 kg"),
    ("Erdbeerkonfitüre", "preserve", ["1 kg Erdbeeren", "500 g Zucker"], "1.2 kg"),
    ("Zwetschgenmus", "preserve", ["2 kg Zwetschgen", "500 g Zucker"], "1.2 kg"),
    ("Confiture d'abricots", "preserve", ["1 kg apricots", "700 g sugar"], "1.4 kg"),
    ("Blackberry preserves", "preserve", ["1 kg blackberries", "700 g sugar"], "1.4 kg"),
    ("Hallonsylt", "preserve", ["1 kg raspberries", "500 g sugar"], "1.2 kg"),
]
NO_JAMS: list[tuple[str, str, list[str], str]] = [
    ("Senfgurken", "preserve", ["1.5 kg Gurken", "500 ml Weißweinessig", "250 g Zucker"], "2 kg"),
    ("Blackcurrant cordial", "preserve", ["1 kg blackcurrants", "500 g sugar"], "1.25 l"),
    ("Dried apple rings", "preserve", ["2 kg apples", "2 lemons"], "180 g"),
    ("Gravadlax", "preserve", ["1 kg salmon", "60 g salt", "60 g caster sugar"], "900 g"),
    ("Confiture de lait", "preserve", ["1 l whole milk", "500 g sugar"], "600 g"),
    ("Chilli jelly", "preserve", ["1 kg apples", "500 ml cider vinegar", "700 g sugar"], "1 kg"),
    ("Bacon jam", "preserve", ["500 g bacon", "200 g sugar"], "500 g"),
    ("Peaches in a jam jar", "preserve", ["1 kg peaches", "300 g sugar"], "1.5 kg"),
    ("Hummus", "preserve", ["400 g chickpeas", "10 g sugar"], "500 g"),
    ("Elderflower syrup", "preserve", ["1 kg sugar", "1 l water"], "1.5 l"),
]


def _solids(title: str, kind: str, lines: list[str], makes: str) -> Any:
    written = {"title": title, "kind": kind, "ingredients": lines, "makes": makes}
    return solids_of(recipe_of({**written, "method": ["Do as usual."]}))


@pytest.mark.parametrize("case", JAMS, ids=lambda case: case[0])
def test_a_jam_is_held_against_it(case: tuple[str, str, list[str], str]) -> None:
    assert "asked of jam" in _solids(*case).text


@pytest.mark.parametrize("case", NO_JAMS, ids=lambda case: case[0])
def test_what_is_no_jam_is_not(case: tuple[str, str, list[str], str]) -> None:
    assert _solids(*case) is None
