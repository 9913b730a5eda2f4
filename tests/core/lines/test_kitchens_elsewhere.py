"""Lines of kitchens in twelve languages, and what they hold.

From pages read on 2026-11-30: vuokkoliisa.fi, sauvajyvanen.blogspot.com and
lautasella.blogspot.com (fi), dziennikwschodni.pl, cosdlazdrowia.pl and krknews.pl (pl),
magiadacozinha.blogspot.com, iguariasnaminhacozinha.blogspot.com and afrodite.json (pt),
goodfoodeasyfood.dk, koekkenvejen.dk and tbsalling/opskrifter (da), petrepa/bestemor-oppskrifter
and framtidajunior.no (nb), konservgeek.se (sv), hansbakt.nl (nl).
"""

from __future__ import annotations

import pytest

from stillroom.core.allergens.of_foods import know_ingredient
from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods

ROWS = """
1 rkl kanelia | fi_FI | 1 tbsp | cinnamon |
1 ts malt kanel | nb_NO | 1 tsp | cinnamon |
0,25 ts malt nellik | nb_NO | 1/4 tsp | ground cloves |
1 ts malt ingefær | nb_NO | 1 tsp | ground ginger |
1 ts kverna pepar | nb_NO | 1 tsp | black pepper |
2 dl kuohukermaa | fi_FI | 2 dl | cream | milk
700 gr vehnäjauhoja | fi_FI | 700 g | plain flour | wheat
1 muna, voi jättää pois | fi_FI | 1 | eggs | eggs
8 rkl suolatonta voita, huoneenlämpöistä | fi_FI | 8 tbsp | butter | milk
3 tl pomeranssinkuorta | fi_FI | 3 tsp | bitter orange peel |
1 kg karviaismarjoja | fi_FI | 1 kg | gooseberry |
puoli litraa maitoa | fi_FI | 1/2 l | milk | milk
2 dl kermaa tai maitoa | fi_FI | 2 dl | cream + milk | milk
500g mąki pszennej tortowej | pl_PL | 500 g | plain flour | wheat
150g ciemnego miodu | pl_PL | 150 g | honey |
pół litra wódki | pl_PL | 1/2 l | vodka |
szczypta cynamonu | pl_PL | 1 szczypta | cinnamon |
1 kg owoców czarnego bzu | pl_PL | 1 kg | elderberry |
100 g migdałów, posiekanych | pl_PL | 100 g | almonds | almond
4c. chá de canela | pt_PT | 4 tsp | cinnamon |
1 L de aguardente | pt_BR | 1 l | aguardente |
2 claras batidas em neve | pt_BR | 2 | egg white | eggs
1 cabeça de alho descascada e picada | pt_BR | 1 | garlic bulb |
200 g de figos, no vinho do Porto | pt_PT | 200 g | fig + port | sulphites
50 g ristede, malede hasselnødder | da_DK | 50 g | hazelnuts | hazelnut
1 c.à soupe de miel | fr_FR | 1 tbsp | honey |
14 St. Eier | de_DE | 14 Stück | eggs | eggs
1000 g TK Spinat, gehackt | de_DE | 1000 g | spinach |
150 g Pecorino Romano DOP | it_IT | 150 g | pecorino romano | milk
0,5 kg dojrzałych, słodkich gruszek | pl_PL | 1/2 kg | pear |
medio litro de ron | sv_SE | 1/2 l | rum |
1.5 kg Mehl | de_DE | 3/2 kg | plain flour | wheat
0.250 kg Butter | de_DE | 1/4 kg | butter | milk
1,5 l Hvidvins eddike | da_DK | 3/2 l | white wine vinegar | sulphites
100 g hakket mørk chokolade | da_DK | 100 g | dark chocolate | soya
3 dl koldt vand | da_DK | 3 dl | water |
1 dåse tomater | da_DK | 1 dåse | canned tomato |
30 g malte mandler | nb_NO | 30 g | ground almonds | almond
2 dl sur mjølk | nb_NO | 2 dl | sour milk | milk
500 ml ättika, 12 % | sv_SE | 500 ml | vinegar essence |
1 liter äppelcidervinäger, 5 % | sv_SE | 1 l | cider vinegar |
1 burk kikärtor (avsköljda) | sv_SE | 1 burk | canned chickpea |
1 sjalotje | nl_NL | 1 | shallot |
25g ongezouten roomboter | nl_NL | 25 g | butter | milk
500 ml Essig 5 % | de_DE | 500 ml | vinegar |
500 ml de vinaigre blanc 8 % | fr_FR | 500 ml | white vinegar |
1 boîte de thon | fr_FR | 1 boîte | canned tuna | fish
50 g di noci | it_IT | 50 g | walnuts | walnut
200 g de farine (sans gluten) | fr_FR | 200 g | gluten-free flour |
200 g de beurre (sans lait) | fr_FR | 200 g | butter | milk
100 g Margarine (ohne Milch) | de_DE | 100 g | dairy-free margarine |
300 g flour, mustard | en_GB | 300 g | flour + mustard | mustard, wheat
9 oz artichoke hearts, rinsed and drained well | en_GB | 9 oz | artichoke heart |
2 cups coconut, drained and meat grated | en_GB | 2 cup | coconut |
1 crab, meat only | en_GB | 1 | crab | crustaceans
de 500 à 600 gr de sucre de canne | fr_FR | 500 g | raw cane sugar |
2 oranges coupées en 4 | fr_FR | 2 | orange |
500 g beans, kidney | en_GB | 500 g | kidney beans |
1 sachet yeast, wine | en_GB | 1 sachet | wine yeast |
500 g apples, crab | en_GB | 500 g | crab apple |
200 g mushrooms (oyster) | en_GB | 200 g | oyster mushroom |
2 tbsp oil, ideally duck fat | en_GB | 2 tbsp | oil + duck fat |
100 g de raisins secs, macérés dans du rhum | fr_FR | 100 g | raisins + rum |
"""
CASES = [[cell.strip() for cell in row.split("|")] for row in ROWS.strip().splitlines()]


@pytest.mark.parametrize(
    ("line", "language", "amount", "foods", "held"), CASES, ids=[one[0] for one in CASES]
)
def test_a_line_is_its_foods_and_what_they_hold(
    line: str, language: str, amount: str, foods: str, held: str
) -> None:
    found = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    known = know_ingredient(found)
    assert " + ".join(food.name for food in known.staples) == foods
    assert not known.unknown
    assert known.contains == set(filter(None, held.split(", ")))
    assert isinstance(found.amount, Amount)
    assert f"{found.amount.low} {found.amount.unit or found.amount.noun}".strip() == amount


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("1 kg de poires, pochées au vin rouge", "fr_FR"),  # "poire" is a spirit too
        ("200 g de figues, arrosées de miel", "fr_FR"),
        ("200 g orzechów", "pl_PL"),
        ("100 g pähkinöitä", "fi_FI"),
        ("100 g nødder", "da_DK"),
    ],
)
def test_what_is_not_known_is_asked(line: str, language: str) -> None:
    found = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    assert know_ingredient(found).unknown
