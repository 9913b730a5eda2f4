"""Lines that set the unit or the food first, or lost a blank: "Gr 300 aceto", "1æg".

Forms of public recipes (1 December 2026): gazzettadiparma.it ("Kg 1,5 verdure miste"), a Portuguese
family's book ("1 colher (café) de erva-doce"), a soap makers' forum ("lye = 7.281 ounces").
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line

LINES = [
    ("Kg 1,5 verdure miste", "it_IT", "3/2", "kg", "verdure miste"),
    ("Gr 300 aceto bianco", "it_IT", "300", "g", "aceto bianco"),
    ("Lt 1 di aceto", "it_IT", "1", "l", "aceto"),
    ("gr. 250 di burro", "it_IT", "250", "g", "burro"),
    ("n. 3 uova", "it_IT", "3", "", "uova"),
    ("N° 2 limoni", "it_IT", "2", "", "limoni"),
    ("Gr 250 de farinha", "pt_PT", "250", "g", "farinha"),
    ("1æg", "da_DK", "1", "", "æg"),
    ("2ägg", "sv_SE", "2", "", "ägg"),
    ("3egg", "nb_NO", "3", "", "egg"),
    ("lye = 7 oz", "en_US", "7", "oz", "lye"),
    ("caster sugar | 200g", "en_GB", "200", "g", "caster sugar"),
    ("1 colher (café) de erva-doce", "pt_PT", "1", "colher de café", "erva-doce"),
    ("2 coffee spoons cinnamon", "en_GB", "2", "coffee spoon", "cinnamon"),
    ("trente-deux grammes de cannelle", "fr_FR", "32", "g", "cannelle"),
    ("zweiunddreißig Gramm Zimt", "de_DE", "32", "g", "Zimt"),
    ("trentacinque grammi di cannella", "it_IT", "35", "g", "cannella"),
    ("treinta y dos gramos de canela", "es_ES", "32", "g", "canela"),
    ("sju hundre gram sukker", "nb_NO", "700", "g", "sukker"),
    ("syv hundrede gram sukker", "da_DK", "700", "g", "sukker"),
    ("femogtyve gram kanel", "da_DK", "25", "g", "kanel"),
    ("an eighth of a cup of oil", "en_US", "1/8", "cup", "oil"),
    ("2 Pund Kirsebær", "da_DK", "2", "pund", "Kirsebær"),
    ("kwartę miodu", "pl_PL", "1", "kwarta", "miodu"),
]


@pytest.mark.parametrize(("line", "language", "number", "unit", "food"), LINES)
def test_a_line_with_its_unit_first(
    line: str, language: str, number: str, unit: str, food: str
) -> None:
    read = read_line(line, language=language)
    assert isinstance(read.amount, Amount)
    said = (read.amount.low, read.amount.unit or read.amount.noun, read.item)
    assert said == (Fraction(number), unit, food)
