"""Lines of a sample from outside that were read wrongly, lost something or asked needlessly.

rs288/recetabase, fschloesser/Rezepte, mikkelrask/Opskrifter, dybber/opskrifter,
iberi22/ComoCocinar, adrianosferreira/afrodite.json, frankalcantara/frankalcantara.github.io and
petrepa/bestemor-oppskrifter, read 2026-11-30; what stands without one is after them.
"""

from __future__ import annotations

import pytest

from stillroom.core.allergens.of_foods import know_ingredient
from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods
from stillroom.core.words.problems import Unreadable

ROWS = """
1 (or 2) clove(s) of garlic, roughly chopped | en_US | 1-2 clove | garlic
15~20 mL baking powder | en_US | 15-20 ml | baking powder
2 tsp [garam masala](garam-masala.html) | en_US | 2 us_tsp | garam masala
150 ml of fresh water | en_US | 150 ml | water
50g whole rye flour | en_US | 50 g | rye flour
1 (5 ounce) can sliced water chestnuts, drained | en_US | 1 can | tinned water chestnut
dried organic elderberries, 100 g | en_GB | 100 g | dried elderberry
2 l fresh, filtered water | en_GB | 2 l | water
1 Stueck Ingwer | de_DE | 1 Stück | root ginger
2 TL Kreuzkuemmel | de_DE | 2 tsp | cumin seeds
100 g Nuesse | de_DE | 100 g | nut
2 EL geriebener Kaese | de_DE | 2 tbsp | cheese
1(-2) Zwiebel(n) | de_DE | 1-2 | onion
1 gelbe oder orange Paprika | de_DE | 1 | yellow pepper + orange pepper
50 cl de vin blanc moelleux | fr_FR | 50 cl | white wine
1 tin condensed milk, unsweetened | en_GB | 1 tin | evaporated milk
400 g condensed milk, unsweetened, chilled | en_GB | 400 g | evaporated milk
1 tin condensed milk, chilled | en_GB | 1 tin | tinned condensed milk
1 boite de tomates pelees | fr_FR | 1 boîte | canned tomato
2 pincees de sel | fr_FR | 2 pincée | salt
1 cuillere a soupe de sucre | fr_FR | 1 tbsp | granulated sugar
2 cuilleres a cafe de cannelle | fr_FR | 2 tsp | ground cinnamon
1 pincée de sel | fr_FR | 1 pincée | salt
1 tsk stødt nelliker | da_DK | 1 tsp | ground cloves
100 g puddersukker | da_DK | 100 g | brown sugar
200 g de açúcar mascavado | pt_PT | 200 g | muscovado sugar
500 g de abóbora descascada | pt_PT | 500 g | pumpkin
2 EL getrocknete Orangenschalen | de_DE | 2 tbsp | dried orange peel
20 g gefriergetrocknete Himbeeren | de_DE | 20 g | freeze-dried raspberry
2 lyzki cukru | pl_PL | 2 tbsp | granulated sugar
100 g Cornish sea salt | en_GB | 100 g | sea salt
2 tbsp Canadian maple syrup | en_GB | 2 tbsp | maple syrup
100 g Belgian dark chocolate | en_GB | 100 g | dark chocolate
1 tsp English mustard seeds | en_GB | 1 tsp | mustard seeds
50 g Kentish cobnuts | en_GB | 50 g | hazelnuts
1 magret de canard | fr_FR | 1 | duck breast
1 poivron rouge ou vert | fr_FR | 1 | red pepper + green pepper
2 pommes vertes ou jaunes | fr_FR | 2 | apple
1 c. à c. de sel d'ail | fr_FR | 1 tsp | garlic salt
1 cucharadita de granos de comino | es_ES | 1 tsp | cumin seeds
2 pechugas de pollo | es_ES | 2 | chicken breast
1 msk rosépepparkorn | sv_SE | 1 tbsp | pink peppercorn
1 lime (saft heraf) | da_DK | 1 | lime juice
3 fed hvidløg | da_DK | 3 fed | garlic
4 ds. hakkede tomater | da_DK | 4 dåse | tinned tomato
2 stk. citroner | da_DK | 2 | lemon
Salt og friskkværnet peber | da_DK | - | salt + black pepper
1 ss potetmjøl | nb_NO | 1 tbsp | potato starch
½ l surmelk eller kjernemelk | nb_NO | 1/2 l | sour milk + buttermilk
en halv liter melk | nb_NO | 1/2 l | milk
2 colheres (sopa) de manteiga | pt_BR | 2 tbsp | butter
1½ xícara (chá) de leite | pt_BR | 3/2 xícara de chá | milk
1 e 1/2 xícara (chá) de açúcar | pt_BR | 3/2 xícara de chá | granulated sugar
1 pitada de sal | pt_BR | 1 pitada | salt
100 ml óleo | en_GB | 100 ml | oil
abgeriebene Schale einer 1/2 Zitrone | de_DE | 1/2 | lemon peel
zest of a 1/2 lemon | en_GB | 1/2 | lemon peel
une 1/2 gousse de vanille | fr_FR | 1/2 gousse | vanilla pod
Farine de blé T55: 250g de farine premium | fr_FR | 250 g | plain flour
Œuf frais: Un œuf calibre moyen. | fr_FR | 1 | eggs
Harina: 250 g de harina | es_ES | 250 g | flour
Latte tiepido, un decilitro circa. | it_IT | 1 dl | milk
1 cucharada de anís en grano | es_ES | 1 tbsp | aniseed
2 chícaras de açúcar | pt_BR | 2 chícara | granulated sugar
senapsfrö | sv_SE | - | mustard seeds
1/2 ts muskatblomme | nb_NO | 1/2 tsp | mace
500 g små drueagurker | da_DK | 500 g | cucumber
2 laurierbladen | nl_NL | 2 | bay leaf
""".strip().splitlines()
CASES = [[cell.strip() for cell in row.split("|")] for row in ROWS]


@pytest.mark.parametrize(("line", "language", "amount", "foods"), CASES, ids=[c[0] for c in CASES])
def test_a_line_from_outside(line: str, language: str, amount: str, foods: str) -> None:
    system = "us" if language == "en_US" else "metric"
    found = find_foods(read_ingredient(line, system, language), Larder(language=language[:2]))
    known = know_ingredient(found)
    assert " + ".join(food.name for food in known.staples) == foods
    assert not known.unknown
    if isinstance(found.amount, Amount):
        own = found.amount
        many = str(own.low) if own.low == own.high else f"{own.low}-{own.high}"
        assert f"{many} {own.unit or own.noun}".strip() == amount
    else:
        assert amount == "-"


@pytest.mark.parametrize(
    ("line", "language", "words"),
    [
        ("ett par matskedar socker", "sv_SE", "ett par matskedar"),
        ("et par spsk sukker", "da_DK", "et par spsk"),
        ("ein paar EL Zucker", "de_DE", "ein paar el"),
        ("quelques cuillères à soupe de sucre", "fr_FR", "quelques cuillères à soupe"),
        ("een paar eetlepels suiker", "nl_NL", "een paar eetlepels"),
        ("a few tablespoons of sugar", "en_GB", "a few tablespoons"),
    ],
)
def test_a_few_spoons_are_no_part_of_the_food(line: str, language: str, words: str) -> None:
    found = find_foods(read_ingredient(line, "metric", language), Larder(language=language[:2]))
    assert found.amount == Unmeasured(words)
    assert not know_ingredient(found).unknown


@pytest.mark.parametrize(
    ("line", "language", "told"),
    [
        ("N/A sugar", "en_GB", '"N/A" does not say how much'),
        ("sugar, N/A", "en_GB", '"N/A" does not say how much'),
        ("100 g sugar (golden) - 2 eggs", "en_GB", "more than one amount"),
        ("2 eggs - ¾ cup sugar (160g)", "en_GB", "more than one amount"),
        ("½ stick butter, 1 pkg garlic cheese", "en_GB", "more than one amount"),
        ("1 stick butter, 1 package cream cheese", "en_GB", "more than one amount"),
        ("2 cups sugar, 1 can evaporated milk", "en_GB", "more than one amount"),
        # a heading, and no label of the same food
        ("For the icing: 250 g icing sugar", "en_GB", "could not be read"),
        ("Zuckerguss: 100 g Puderzucker", "de_DE", "could not be read"),
    ],
)
def test_what_is_asked(line: str, language: str, told: str) -> None:
    with pytest.raises(Unreadable, match=told):
        read_ingredient(line, "metric", language)


@pytest.mark.parametrize("line", ["2 cucharadas de anís", "Anís. (Puse 2 cucharadas)"])
def test_spanish_anis_may_be_the_drink(line: str) -> None:
    found = find_foods(read_ingredient(line, "metric", "es_ES"), Larder(language="es"))
    assert know_ingredient(found).unknown


@pytest.mark.parametrize(
    "line",
    ["400 g chickpeas, 1 tin", "8 oz cream cheese, 1 block", "1 kg tomatoes, 1 can tomatoes"],
)
def test_a_pack_of_the_same_is_nothing_more(line: str) -> None:
    read = find_foods(read_ingredient(line, "metric", "en_GB"), Larder())
    assert not know_ingredient(read).unknown


def test_grains_and_grams_of_an_old_book_are_asked() -> None:
    with pytest.raises(Unreadable, match="grains or grams"):
        read_ingredient("5 gr. salt", "imperial", "en_GB")
    assert read_ingredient("5 gr. salt", "metric", "en_GB").amount is not None


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("rice and noodles", "rice + noodle"),  # "and" is no word within a name
        ("1 red pepper or orange", "red pepper + orange"),  # in English the fruit may be meant
        ("tuna fish", "tuna"),
    ],
)
def test_no_word_is_passed_over_that_parts_foods(line: str, foods: str) -> None:
    known = know_ingredient(find_foods(read_ingredient(line, "metric"), Larder()))
    assert " + ".join(food.name for food in known.staples) == foods
