"""What stands above a list: work that is asked about, and words that introduce it, which are not.

The first two after sheets of beets by strangers (November 2026), the rest invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed

BELOW = (
    "\n\n1 cup water\n1 cup vinegar\n1/2 tsp salt\n\nBring to the boil. Pour it into the jars.\n"
)
WORK = "stands above the list, out of the method"
DROPPED = "above the first of several recipes is left out"


@pytest.mark.parametrize(
    ("above", "is_work"),
    [
        ("Cook until tender, cool under water. Slip skins and slice.", True),
        ("3 lbs of beets - Cut leaves off about an inch above the top, and boil 30-40 min.", True),
        ("Die Beten waschen und 40 Minuten kochen.", True),
        ("Lavez les betteraves et cuisez-les 40 minutes.", True),
        ("Cuocere le barbabietole per 40 minuti.", True),
        ("Cocer las remolachas durante 40 minutos.", True),
        ("Kook de bieten in 40 minuten gaar met water.", True),
        ("Koka betorna med skalet på i 40 minuter.", True),
        ("Gotować buraki 40 minut, potem obrać.", True),
        ("My aunt made these each autumn, and everybody loved them.", False),
        ("Serve them with cheese within 2 hours of opening.", False),
        ("Cool, crisp and good with the cheese at Christmas.", False),
        ("Unsere Beten sind nach 40 Minuten fertig, das ist schön.", False),
        ("Une recette toute simple, prête en 40 minutes.", False),
        ("Keeps for a year in the cupboard.", False),
        ("Ready in 40 minutes, and so easy that children can help.", False),
    ],
)
def test_work_above_a_list_is_asked_about_and_an_introduction_is_not(
    above: str, is_work: bool
) -> None:
    (found,) = brought(f"Pickled beets\n\n{above}{BELOW}")
    assert (WORK in asked(found)) is is_work
    assert len(listed(found)) == 3


@pytest.mark.parametrize(
    ("above", "is_told"),
    [
        ("Winter preserves\n\nBoil the jars for ten minutes before you fill any of these.", True),
        ("Winter preserves", False),
        ("", False),
    ],
)
def test_an_introduction_above_several_recipes_is_dropped_with_a_word(
    above: str, is_told: bool
) -> None:
    one = "{0} jam\n\nIngredients\n1 kg {1}\n800 g sugar\n\nMethod\n1. Boil it all.\n2. Pot it.\n\n"
    text = one.format("Plum", "plums") + one.format("Pear", "pears")
    found = brought(f"{above}\n\n{text}")
    assert len(found) == 2
    assert (DROPPED in asked(found[0])) is is_told
    assert DROPPED not in asked(found[1])


@pytest.mark.parametrize("unit", ["litr", "litry", "litrów", "litra"])
def test_polish_litres_are_litres(unit: str) -> None:
    (found,) = brought(f"Lipówka\n\nSkładniki\n- 4 {unit} wody\n- 1 kg cukru\n", "pl_PL")
    assert "is not a unit" not in asked(found)
