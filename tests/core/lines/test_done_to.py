"""What is done to a food behind its name moves to the note, and no word of the name does.

Lines of rodneyshupe/Cookbook, masonrecipes, algritz/nosrecettes, XonqNopp/recettes,
adrianosferreira/afrodite.json and JulienGenovese/ricette, read 2026-11-30, and theirs turned.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods

MOVED = """
2 onions diced | en_GB | onions | diced
6 apples peeled and cored | en_GB | apples | peeled and cored
4 large English cucumbers thinly sliced | en_US | large English cucumbers | thinly sliced
1 leek diced (white only) | en_US | leek | diced, white only
2 lemons unwaxed, sliced | en_GB | lemons | unwaxed, sliced
2 Zwiebeln fein gewürfelt | de_DE | Zwiebeln | fein gewürfelt
2-3 Chilischoten gehackt | de_DE | Chilischoten | gehackt
125 g noisettes moulues | fr_FR | noisettes | moulues
7 tasses d'oignons hachés | fr_FR | oignons | hachés
2 gousses d'ail hachées finement | fr_FR | ail | hachées finement
125 g di burro fuso | it_IT | burro | fuso
2 cucharadas de mantequilla derretida | es_ES | mantequilla | derretida
½ xícara (chá) de nozes picadas | pt_BR | nozes | picadas
2 uien gesnipperd | nl_NL | uien | gesnipperd
"""
KEPT = """
100 g tomatoes dried | en_GB
1 tsp mustard seed | en_GB
200 g smoked salmon | en_GB
250 g salted butter | en_GB
100 g cheese and onion | en_GB
800 g lait condensé sucré | fr_FR
500 g pâte feuilletée | fr_FR
120 g figues séchées | fr_FR
5 ml d'origan séché | fr_FR
150 g di zucchero semolato | it_IT
2 patate | it_IT
1 xícara (chá) de leite condensado | pt_BR
1700 g kylling filet | da_DK
"""


def rows(text: str) -> list[list[str]]:
    return [[cell.strip() for cell in row.split("|")] for row in text.strip().splitlines()]


@pytest.mark.parametrize(("line", "language", "item", "note"), rows(MOVED))
def test_what_is_done_to_a_food_is_no_part_of_its_name(
    line: str, language: str, item: str, note: str
) -> None:
    found = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    assert (found.item, found.note) == (item, note)


@pytest.mark.parametrize(("line", "language"), rows(KEPT))
def test_what_makes_another_food_stays_in_the_name(line: str, language: str) -> None:
    read = read_ingredient(line, "metric", language)
    assert find_foods(read, Larder(language=language[:2])).item == read.item
