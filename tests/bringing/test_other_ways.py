"""Another way, or another recipe, told behind the last step: a note, and no step of this one.

Measured on 21 endings (November 2026) fixed before the code: 14 of them were steps, whose foods
came onto the card, and 3 were refused for a food that does not go in.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, steps

JELLY = (
    "Quince jelly\n\nMakes 4 jars of 200 ml\n\nIngredients\n1 kg quinces\n800 g sugar\n\nMethod\n"
    "Cut up the quinces and boil them in water. Strain them through a cloth.\n"
    "Boil the juice with the sugar until it sets. Pour it into hot jars and seal.\n"
)


@pytest.mark.parametrize(
    "ending",
    [
        "For mint jelly, add a bunch of mint and leave out the lemon.",
        "Garlic quince jelly: add 3 cloves of garlic with the sugar.",
        "More like this\nPumpkin butter\nPeanut brittle",
        "You can also add peanuts or chopped almonds if you like.",
        "Instead of quinces you can use apples or crab apples.",
        "To make it spicy, add 1 tsp of chilli flakes with the sugar.",
        "OTHER FLAVOURS\n\nVanilla: add a split pod.\n\nPumpkin: use half pumpkin.",
        "Alternatively, use pumpkin for half of the quinces.",
        "Cf. Medlar jelly, page 12; Peanut brittle, page 40.",
        "Try this next: Peanut brittle",
        "Spiced quince jelly\nAdd 2 cinnamon sticks to the quinces while they boil.",
        "Note. Peanuts or garlic may be added.",
        "Variation: Add 200 g walnuts at the end.",
    ],
)
def test_another_way_behind_the_steps_is_a_note(ending: str) -> None:
    (found,) = brought(f"{JELLY}\n{ending}\n")
    assert len(steps(found)) == 2
    assert ending.split(" ")[-1] in found.text.split("## Method")[1]
    assert "cannot be published" not in asked(found)


@pytest.mark.parametrize(
    "step",
    [
        "Alternatively, boil it in two pans. Pour it into hot jars and close them.",
        "For the last boiling, add the lemon juice and stir until it sets.",
        "Add the walnuts and stir until they are covered.",
        "Leave it for a week, then strain it again.",
    ],
)
def test_what_is_done_stays_a_step(step: str) -> None:
    (found,) = brought(f"{JELLY}{step}\nPour it into bottles and close them well.\n")
    assert step in steps(found)
    assert len(steps(found)) == 4
