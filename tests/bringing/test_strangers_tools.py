"""Tools among the foods of papers as strangers type and save them, and foods that are no tools.

The classes were found in 38 saved pages, letters and texts of seven sorts of site and in six
languages (November 2026), read with expectations written before; the texts here are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps
from stillroom.bringing.tools import is_tool


@pytest.mark.parametrize(
    ("line", "tool"),
    [
        ("A sterilised 3 ½ cup mason jar with lid", True),
        ("An A4 sheet of plain paper", True),
        ("1 Topf", True),
        ("Bassine à confiture en cuivre", True),
        ("1 jar honey", False),
        ("200 g rice paper", False),
        ("2 bottles red wine", False),
        ("1 vanilla pod", False),
    ],
)
def test_tools_are_told_from_foods(line: str, tool: bool) -> None:
    assert is_tool(line) is tool


def test_tools_among_foods_go_to_the_notes() -> None:
    (found,) = brought(
        "Sloe gin\n\nYou will need\nA large jar\nA sieve\n500 g sloes\n250 g sugar\n\n"
        "Put the sloes and the sugar in the jar and shake it daily.\n"
    )
    assert listed(found) == ["500 g sloes", "250 g sugar"]
    assert "## Equipment\n\nA large jar\n\nA sieve\n" in found.text
    assert "Under Equipment now" not in asked(found)  # a sieve is plainly no food
    (craft,) = brought(
        "Felt star\n\n1 sheet of paper\n1 jar\n50 g wool\n\nFold the paper and wind wool round.\n"
    )
    assert len(listed(craft)) == 3


def test_equipment_behind_the_list_goes_on_to_the_next_head() -> None:
    (found,) = brought(
        "Chutney\n\nIngredients\n1 kg pears\n1 kg sugar\nEquipment\n6 x 250 ml jars\nA large pan\n"
        "A wide funnel if you have one of them\nRubber gloves\nInstructions\n"
        "Step one: Boil the pears.\nThis recipe makes about 7 jars depending on their size.\n"
    )
    assert listed(found) == ["1 kg pears", "1 kg sugar"]
    assert steps(found) == ["Boil the pears."]
    assert "makes: about 7 jars" in found.text


def test_tools_on_one_line_or_without_amounts_are_no_foods() -> None:
    text = (
        "Quittenlikör\n\nZutaten: 1 kg Quitten, 300 g Zucker, 1 l Korn\n"
        "Geräte: 1 Messer, 1 Topf, Schnur, 1 Schüssel\nRezept: Wenn man Quitten verarbeitet, "
        "muss man "
        "zuerst den Flaum abreiben und sie dann in Stücke schneiden.\n"
    )
    (found,) = brought(text, "de")
    assert listed(found) == ["1 kg Quitten", "300 g Zucker", "1 l Korn"]
    assert steps(found)[0].startswith("Wenn man Quitten")
    assert "1 Topf, Schnur" in found.text
    text = (
        "# Mermelada\n\nIngredientes\n\n- 1 kg de membrillos\n- 1 kg de azúcar\n\nUtensilios "
        "necesarios\n\n"
        "- Una olla de fondo doble\n- Un rallador\n- Una cuchara de madera\n\nPreparación\n\n1. "
        "Cocina todo.\n"
    )
    (found,) = brought(text, "es", "a.md")
    assert listed(found) == ["1 kg de membrillos", "1 kg de azúcar"]
    assert "Una olla de fondo doble" in found.text
    assert "Un rallador" in found.text
    assert not is_tool("distilled white vinegar: 6 cups")
    assert not is_tool("1 cucharada de sal")


@pytest.mark.parametrize(
    ("text", "tool"),
    [
        ("evaporated milk - 1 small tin (170g)", False),
        ("Condensed milk: 1 tin", False),
        ("cake tin, 20 cm", True),
        ("jam jars - 6", True),
    ],
)
def test_a_food_in_a_tin_is_no_tin(text: str, tool: bool) -> None:
    assert is_tool(text) is tool


@pytest.mark.parametrize(
    ("text", "language", "tool"),
    [
        ("Equipment: a big pan\n\n1 kg plums\n1 kg sugar\n\nBoil them.", "en_GB", "a big pan"),
        (
            "Ingredients\nEquipment: a big pan\n1 kg plums\n1 kg sugar\n\nMethod\nBoil them.",
            "en_GB",
            "a big pan",
        ),
        ("Geräte: ein großer Topf\n\n1 kg Pflaumen\n1 kg Zucker\n\nKochen.", "de_DE", "Topf"),
        ("Benodigdheden: een grote pan\n\n1 kg pruimen\n1 kg suiker\n\nKoken.", "nl_NL", "pan"),
    ],
)
def test_what_stands_behind_equipment_above_a_list_is_none_of_it(
    text: str, language: str, tool: str
) -> None:
    (found,) = brought(f"Plum jam\n\n{text}\n", language)
    assert len(listed(found)) == 2
    assert tool in found.text.split("\n---\n")[1]
