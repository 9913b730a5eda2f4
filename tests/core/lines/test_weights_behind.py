"""The weight that stands behind a counted food, of all of them or of one, in the words of cooks.

The lines were put down with what they weigh before any was tried; ten of the first thirty-two were
taken at the book's own weight of one, without a word.
"""

from __future__ import annotations

import pytest

from stillroom.core.lines.ingredient import read_ingredient

# the line | grams of one, in the line's own words
ROWS = """
1 small head of cauliflower, about 1 pound, cut | 453.59237
1 cauliflower weighing about 500 g | 500
2 cucumbers, about 300g each | 300
2 cucumbers, each 300 g | 300
2 quinces, weighing 400 g each | 400
6 figs, each weighing about 50 g | 50
4 pears, weight 700 g | 175
4 pears, total weight 700 g | 175
3 quinces, approximately 1.5 kg in total | 500
3 quinces, 1.5kg altogether | 500
4 onions, roughly 500 g, chopped | 125
6 lemons, about 900 g total weight | 150
4 oignons, soit 500 g | 125
4 oignons, 500 g en tout | 125
2 Zucchini, zusammen 500 g | 250
2 Zucchini, je 500 g | 500
4 cipolle, 500 g in tutto | 125
4 cebollas, 500 g en total | 125
4 uien, samen 500 g | 125
4 lökar, totalt 500 g | 125
4 onions, 1 cm dice |
4 onions, cut into 2 cm pieces |
2 vanilla pods, 10 cm long |
4 lemons, about 1 cup juice |
10 lemons (1 kg) |
"""


@pytest.mark.parametrize(
    ("line", "grams"),
    [tuple(part.strip() for part in row.split("|")) for row in ROWS.strip().splitlines()],
)
def test_a_weight_behind_a_count_is_read(line: str, grams: str) -> None:
    found = read_ingredient(line, "metric").each_g
    assert (float(found) if found else None) == (float(grams) if grams else None)
