"""Cooked beans are not told to be soaked, and what holds bacon has one figure: the shorter.

After Kansas State Univ., Cooking Dry Beans Safely (soak and boil dried beans), and the USDA
National Agricultural Library, How long should I keep leftover food (three to four days).
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.keeping import span_on_card


def _told(kind: str, line: str, method: str) -> tuple[set[str], str]:
    written = {
        "title": "Beans",
        "kind": kind,
        "ingredients": [line, "50 g sugar", "10 g salt"],
        "keeps": {"unopened": "4 days", "where": "in the fridge"},
        "method": [method],
    }
    box = assess_safety(recipe_of(written), BookSettings())
    beans = [one for one in box.cautions if one.rule in ("kidney-beans", "other-beans")]
    return {one.rule for one in beans}, " ".join(one.to_receiver for one in beans)


COOKED = """
1 kg dried haricot beans, soaked overnight | Cook the beans till soft, drain, and simmer for 1 hour.
1 kg dried haricot beans | Soak overnight. Boil the beans in fresh water for 1 hour.
500 g dried kidney beans | Soak overnight. Boil the beans hard for 30 minutes, then simmer.
"""
DRY = """
dry mix | 300 g dried haricot beans | Layer in a jar.
dry mix | 300 g dried red kidney beans | Layer in a jar. To make: soak, and boil hard.
preserve | 300 g dried red kidney beans | Soak in brine for two weeks.
"""


@pytest.mark.parametrize("row", COOKED.strip().splitlines())
def test_who_gets_cooked_beans_is_not_told_to_soak_them(row: str) -> None:
    line, method = row.split(" | ")
    rules, said = _told("preserve", line, method)
    assert rules
    assert said == ""


@pytest.mark.parametrize("row", DRY.strip().splitlines())
def test_who_gets_dried_beans_is_told(row: str) -> None:
    rules, said = _told(*row.split(" | "))
    assert rules
    assert "Soak the beans" in said


@pytest.mark.parametrize(
    ("line", "claimed", "card"),
    [
        ("4 rashers smoked bacon", "1 week", "4 days"),
        ("400 g smoked ham", "1 week", "4 days"),
        ("400 g chorizo", "2 weeks", "4 days"),
        ("400 g smoked bacon", "3 days", "3 days"),
        ("2 tbsp Worcester sauce", "2 weeks", "2 weeks"),
    ],
)
def test_one_figure_and_the_shorter(line: str, claimed: str, card: str) -> None:
    written = {
        "title": "Tomato and bacon relish",
        "kind": "preserve",
        "ingredients": [line, "1 kg tomatoes", "300 g sugar", "300 ml cider vinegar"],
        "keeps": {"unopened": claimed, "where": "in the fridge"},
        "method": ["Simmer everything for 1 hour and pot."],
    }
    assert str(span_on_card(recipe_of(written))) == card
