"""Plain foods of cooks' papers that their own books did not know, and what stands beside each.

Lines of open pages and letters that were saved for a judge (November 2026): alltommat.se, French
and Italian blogs, a Danish jam in Markdown, a Portuguese letter, English pages; those without a
source stand beside them so that a word does not count where it makes another food.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.reading.loading import read_recipe

KNOWN = """
2 dl ättika | sv_SE | vinegar essence
1 msk ättika 24 % | sv_SE | vinegar essence
20 g gelatinpulver | sv_SE | gelatine
10 sorte peberkorn | da_DK | black pepper
5 hvide peberkorn | da_DK | white pepper
2 lauerbær | da_DK | bay leaf
Evt. atamon | da_DK | sodium benzoate
Evt. konserveringsmiddel | da_DK | preservative
1 l lagereddike | da_DK | vinegar
den tomme vaniljestang | da_DK | vanilla pod
10 svarte pepperkorn | nb_NO | black pepper
2 limões | pt_PT | lemon or lime
sumo de 1 limão | pt_PT | lemon or lime
500 g ginjas | pt_PT | sour cherry
500 g de pommes acides | fr_FR | apple
500 g petits oignons nouveaux ou de cives | fr_FR | spring onion
1 dl de vinaigre de vin rouge vieux | fr_FR | red wine vinegar
10 limoni di Sorrento | it_IT | lemon
200 g cime di cavolfiore | it_IT | cauliflower
500 g azúcar común | es_ES | granulated sugar
200 ml jugo de mandarina | es_ES | mandarin juice
1 cup standard sugar syrup | en_US | sugar syrup
2 lb small boiler onions (or larger pearl onions) | en_US | onion
1 tbsp allspice kernels | en_GB | allspice
1 leere Vanilleschote | de_DE | vanilla pod
"""
# another food, or none that is known
ANOTHER = """
100 g tomme de Savoie | fr_FR | apple
1 tom kokosnød | da_DK | vanilla pod
2 lemon cakes di Sorrento | en_GB | lemon
200 ml standard essence | en_GB | vanilla extract
500 g boiler fish | en_GB | onion
"""
BESIDE = [
    ("1 cuillère à café de gingembre râpé, ou 1/2 cuillère à café de gingembre en poudre", "fr_FR"),
    ("1 cuillère à soupe de zest, ou 2 cuillères à soupe de foobar", "fr_FR"),
    ("1 colher de chá de foobar, ou 1 colher de café de plugh", "pt_PT"),
    ("1 cucchiaino di foobar, o 1 cucchiaino da caffè di plugh", "it_IT"),
    ("1 taza de foobar, o 1 taza de té de plugh", "es_ES"),
    ("1 cup foobar, or 2 egg cups of plugh", "en_GB"),
]


def _rows(table: str) -> list[tuple[str, str, str]]:
    return [tuple(row.split(" | ")) for row in table.strip().splitlines()]  # type: ignore[misc]


def _food(line: str, language: str) -> object:
    one = read_ingredient(line, "metric", language)
    return food_of(find_foods(one, Larder(language=language)))


@pytest.mark.parametrize(("line", "language", "food"), _rows(KNOWN))
def test_a_plain_food_is_known(line: str, language: str, food: str) -> None:
    reading = _food(line, language)
    assert (reading.known, reading.food and reading.food.name) == (True, food)  # type: ignore[attr-defined]


@pytest.mark.parametrize(("line", "language", "food"), _rows(ANOTHER))
def test_the_same_word_beside_another_food_does_not_make_it_known(
    line: str, language: str, food: str
) -> None:
    reading = _food(line, language)
    assert (reading.food and reading.food.name) != food  # type: ignore[attr-defined]


@pytest.mark.parametrize(("line", "language"), BESIDE, ids=[one[0] for one in BESIDE])
def test_a_spoon_or_a_cup_names_no_food(line: str, language: str) -> None:
    reading = _food(line, language)
    names = {food.name for food in reading.named} | set(reading.nearest)  # type: ignore[attr-defined]
    assert not names & {"coffee", "tea", "eggs", "soup", "dates"}


def test_an_empty_pod_is_no_cheese_and_a_scraped_one_no_crab() -> None:
    front = (
        "title: A try\nkind: jam\nmakes: 2 glas\ningredients:\n  - 250 g abrikos\n  - 220 g sukker"
    )
    told = "Vaniljestangen flækker jeg og skrabber kornene ud. Kog med den tomme vaniljestang."
    text = f"---\n{front}\n---\n\n## Method\n\n1. {told}\n"
    larder = Larder(language="da_DK")
    recipe = read_recipe(text, "a-try.md", "a-try", "metric", larder, "da_DK")
    named = {food_of(one.ingredient).food.name for one in foods_in_method(recipe)}  # type: ignore[union-attr]
    assert named == {"vanilla pod"}


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("7 oz of Butter (don't use margarine)", "butter"),
        ("7 oz of Butter (don’t use margarine)", "butter"),
        ("200 g butter, don't use margarine", "butter"),
        ("200 g butter (margarine won't do)", "butter"),
        ("200 g butter (you can't use margarine)", "butter"),
        ("200 g chocolate (please don't use white chocolate)", "chocolate"),
        ("200 g chocolat, dont 50 g noir", "chocolate"),  # French "of which" denies nothing
    ],
)
def test_what_is_not_to_be_used_is_not_in_it(line: str, food: str) -> None:
    """Seen in a family's letter (30 November 2026); the others are the same said otherwise."""
    read = find_foods(read_ingredient(line, "metric", "en_GB"), Larder(language="en"))
    if "dont" in line:
        read = find_foods(read_ingredient(line, "metric", "fr_FR"), Larder(language="fr"))
    assert food_of(read).foods[0].name == food
