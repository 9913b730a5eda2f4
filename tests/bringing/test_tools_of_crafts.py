"""What is only worked with goes to Equipment from a list of materials too; the rest of it stays.

The list is of an open page on a candle ("Materials you'll need", saved November 2026), others of
crafts from memory. And signs that Markdown wants escaped stand as they are meant.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, listed
from stillroom.bringing.tools import is_never_given

CANDLE = """Scented soy candle at home

Materials you'll need:

- Soy wax
- Candle wicks
- Glass jars or tin containers
- Fragrance oil (optional)
- Double boiler or a pot and a glass measuring cup
- Thermometer
- Stirring utensil (a wooden spoon or a chopstick)

Instructions:

1. Melt the soy wax in a double boiler. Use a thermometer.
2. Pour the melted wax into your jars, making sure the wick is centered. Allow it to cool.
"""


def test_a_candles_tools_are_equipment_and_its_jars_are_not() -> None:
    (recipe,) = brought(CANDLE)
    assert listed(recipe) == [
        "Soy wax",
        "Candle wicks",
        "Glass jars or tin containers",
        "Fragrance oil (optional)",
    ]
    equipment = recipe.text.split("## Equipment")[1]
    for tool in ("Double boiler", "Thermometer", "Stirring utensil"):
        assert tool in equipment
        assert f'"{tool}' not in "".join(
            one.what for one in recipe.questions if "not a food" in one.what
        )


@pytest.mark.parametrize(
    ("line", "tool"),
    [
        ("Scissors", True),
        ("a hot glue gun", True),
        ("Sewing machine", True),
        ("Nähmaschine", True),
        ("une balance précise", True),
        ("Forbici", True),
        ("Kitchen scale", True),
        ("Glass jars", False),
        ("Ribbon", False),
        ("Needle and thread", False),
        ("1 m cotton fabric", False),
        ("Soy wax", False),
        ("Iron oxide", False),
        ("Wooden spoon dolls", False),
        ("Pot pourri", False),
    ],
)
def test_only_what_is_never_given_is_a_tool_of_a_craft(line: str, tool: bool) -> None:
    assert is_never_given(line) is tool


def test_escaped_signs_of_markdown_are_the_signs() -> None:
    text = (
        "# Abrikosmarmelade\n\n### Ingredienser\n\n- 250 g abrikos\n- 220 g sukker\n"
        "- Evt. atamon\\*\n\n### Fremgangsmåde\n\n1\\. Kog abrikos og sukker i 10 minutter.\n"
        "2\\. Hæld marmeladen på glas.\n"
    )
    (recipe,) = brought(text, "da_DK", "a.md")
    assert "\\" not in recipe.text
    assert "Evt. atamon" in " ".join(listed(recipe))
