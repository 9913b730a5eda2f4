"""What is worked with at the end of a list, in ten languages, and foods that only sound like it.

The French lines are those of a cook's page read by a judge of this house, "Glass jar with
tight-fitting lid" and "3 Large bread pans greased." those of two others; the rest are words of
dictionaries, from memory. Expectations written before the code, 30 November 2026.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, listed
from stillroom.bringing.tools import is_tool

TOOLS = [
    "Une grande spatule en bois",
    "Un presse-purée ou un appareil servant à mouliner le tout",
    "Des moules de la forme qui vous plait",
    "6 pots en verre",
    "4 vasetti di vetro sterilizzati",
    "un gran tarro de cristal",
    "4 frascos de vidro esterilizados",
    "uma colher de pau",
    "papel vegetal",
    "2 sylteglass med lokk",
    "3 glasburkar med lock",
    "1 stor gryte",
    "et dørslag",
    "osteklæde",
    "słoiki z zakrętkami",
    "gaza",
    "duży garnek",
    "5 Gläser, steril",
    "Large glass jars",
    "thee-ei",
    "kaasdoek",
    "3 Large bread pans greased.",
]
FOODS = [
    "1 butelka wódki",
    "1 słoik miodu",
    "1 garrafa de vinho",
    "2 burkar krossade tomater",
    "1 glass hvitvin",
    "1 glas water",
    "un verre de vin blanc",
    "1 tarro de miel",
    "1 frasco de mel",
    "1 vasetto di yogurt",
    "500 g panela",
    "500 g de moules",
    "1 pan integral",
    "2 gläser Marmelade",
]


@pytest.mark.parametrize("line", TOOLS)
def test_a_thing_to_work_with_is_a_tool(line: str) -> None:
    assert is_tool(line)


@pytest.mark.parametrize("line", FOODS)
def test_what_is_in_a_vessel_is_food(line: str) -> None:
    assert not is_tool(line)


def test_a_jar_with_its_lid_ends_no_list_of_a_salt() -> None:
    text = (
        "Lavender salt\n\nIngredients\n\n1/2 cup salt\n1 tablespoon dried lavender\n"
        "Glass jar with tight-fitting lid\n\nMethod\n\nGrind the salt and the lavender together.\n"
    )
    (recipe,) = brought(text)
    assert listed(recipe) == ["1/2 cup salt", "1 tablespoon dried lavender"]
    assert "Glass jar with tight-fitting lid" in recipe.text.partition("## Equipment")[2]


def test_a_long_head_of_a_list_is_cut_between_words() -> None:
    head = "Proporcje sprawdzone przez lata – na standardowy słój 3-litrowy:"
    text = f"Nalewka z pigwy\n\nSkładniki\n\n{head}\n\n- 1 kg pigwy\n- 500 ml wódki\n"
    (recipe,) = brought(f"{text}\nPrzygotowanie\n\n1. Zalać pigwy wódką.\n", "pl_PL")
    assert listed(recipe)[0] == "Proporcje sprawdzone przez lata – na standardowy słój …:"
