"""What is poured counts with all its volume, and a strength is told only where it can be known.

The strengths expected are ml of alcohol over ml of all that is poured, by hand: water and ethanol
shrink by at most 4 % when they meet (OIML R 22), so they hold to one % vol. Boiling drives
alcohol off: USDA Table of Nutrient Retention Factors, Release 6 (40 % is left after 15 minutes).
"""

from __future__ import annotations

import pytest

from stillroom.core.batch.bottling import estimate_yield
from stillroom.core.batch.strength import not_told
from stillroom.core.batch.strength_words import strength_text
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.publish.amounts_page import show_amounts

BOOK = BookSettings()
STEEPED = "Put it all together, leave it for four weeks, strain and bottle."


def drink(lines: list[str], method: str = STEEPED, kind: str = "infusion") -> Recipe:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: A drink\nkind: {kind}\nmakes: 1 l\ningredients:\n{listed}---\n"
    return read_recipe(f"{head}\n## Method\n\n{method}\n", "recipes/drink.md", "drink")


# what goes in beside 500 ml vodka of 40 % vol, and how much of it, in ml
BESIDE = [
    ("500 ml lemonade", 500), ("500 ml grape juice", 500), ("500 ml oat milk", 500),
    ("500 ml elderflower cordial", 500), ("250 ml vegetable stock", 250), ("1 l ginger beer", 1000),
    ("250 ml grenadine", 250), ("500 ml tonic water", 500), ("1 l cola", 1000),
    ("500 ml carrot juice", 500), ("500 ml verjuice", 500), ("200 ml rosewater", 200),
    ("500 ml cranberry juice", 500), ("300 ml kombucha", 300), ("200 ml passata", 200),
    ("500 ml chamomile tea", 500), ("500 ml strong coffee", 500), ("250 ml oat cream", 250),
    ("500 ml coconut water", 500), ("1.4 kg black treacle", 985), ("500 ml orange squash", 500),
]  # fmt: skip


@pytest.mark.parametrize(("line", "ml"), BESIDE)
def test_what_is_poured_weakens_and_is_bottled(line: str, ml: int) -> None:
    recipe = drink(["500 ml vodka, 40% vol", line])
    said = label_recipe(recipe, BOOK).strength_text
    told = int("".join(one for one in said if one.isdigit()))
    assert said == f"About {told} % vol"
    assert abs(told - 40 * 500 / (500 + ml)) <= 1
    found = estimate_yield(recipe)
    assert found is not None
    assert 0.93 <= float(found.high_ml) / (500 + ml) <= 1.01


# solids, for all that their names end in: they weaken a spirit by their juice alone or not at all
SOLIDS = [
    "2 tbsp assam tea", "30 g ground coffee", "1 vegetable stock cube", "50 g malted milk powder",
    "100 g tuna in oil", "50 g rum butter", "30 g instant coffee granules", "20 g dried tea leaves",
]  # fmt: skip


@pytest.mark.parametrize("line", SOLIDS)
def test_a_solid_is_strained_out(line: str) -> None:
    recipe = drink(["500 ml vodka, 40% vol", line])
    assert label_recipe(recipe, BOOK).strength_text == "About 40 % vol"
    found = estimate_yield(recipe)
    assert found is not None
    assert found.high_ml < 500


UNKNOWN = [
    (["500 ml gin, 40%", "500 ml marsala"], "marsala"),
    (["1 l vermouth", "peel of 2 oranges"], "vermouth"),
    (["500 ml limoncello", "500 ml lemonade"], "limoncello"),
    (["350 ml sloe gin", "350 ml prosecco"], "sloe gin"),
    (["1 l sake", "50 g ginger"], "sake"),
    (["500 ml vodka, 40% vol", "1 can coconut milk"], "coconut milk"),
    (["1 bottle gin", "500 g sloes"], "gin"),
]


@pytest.mark.parametrize(("lines", "named"), UNKNOWN)
def test_what_nobody_wrote_is_said_to_be_not_known(lines: list[str], named: str) -> None:
    recipe = drink(lines)
    assert named in not_told(recipe)
    assert label_recipe(recipe, BOOK).strength_text == "Strength not known"
    assert named in strength_text(recipe)
    told = [one for one in show_amounts(recipe, BOOK).always if one.name == "Strength"]
    assert [(one.text, named in one.how) for one in told] == [("not known", True)]


@pytest.mark.parametrize(
    "lines",
    [
        ["700 ml cognac", "100 ml water"],
        ["700 ml kirsch", "2 tsp orange bitters"],
        ["500 ml marsala, 17% vol", "500 ml gin, 40% vol"],
        ["1 l rum, 40% vol", "3 dashes angostura bitters"],
    ],
)
def test_a_spirit_is_as_strong_as_sold_and_a_trace_hides_nothing(lines: list[str]) -> None:
    recipe = drink(lines)
    assert not not_told(recipe)
    assert label_recipe(recipe, BOOK).strength_text.startswith("About ")


def test_nothing_is_said_of_the_strength_of_what_holds_no_alcohol() -> None:
    recipe = drink(["500 ml grape juice", "1 can coconut milk"])
    assert not not_told(recipe)
    assert label_recipe(recipe, BOOK).strength_text == ""


BOILED = [
    (["500 ml vodka, 40%", "200 g sugar"], "Simmer the vodka and sugar for 10 minutes."),
    (["1 l red wine, 13%", "150 g sugar"], "Simmer for 20 minutes, strain and bottle."),
    (["1 l red wine, 13%", "150 g sugar"], "Boil everything for 10 minutes. Strain and bottle."),
    (["500 ml rum, 40%", "200 g sugar"], "Warm the rum, set it alight, add the sugar and bottle."),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "method"), BOILED)
def test_what_is_boiled_is_at_most_so_strong(lines: list[str], method: str) -> None:
    recipe = drink(lines, method)
    assert label_recipe(recipe, BOOK).strength_text.startswith("At most ")
    assert "Boiled" in [one.name for one in show_amounts(recipe, BOOK).always]


COOLED = [
    "Boil the sugar, water and coffee, cool, strain, add the vodka.",
    "Boil the sugar and water for 10 minutes. Leave until cold. Stir in the vodka and bottle.",
    "Simmer the water and sugar to a syrup. When it has cooled, pour in the vodka.",
    "Sterilise the bottles in boiling water. Mix all and bottle.",
]


@pytest.mark.parametrize("method", COOLED)
def test_spirit_that_goes_in_cold_is_not_boiled(method: str) -> None:
    lines = ["350 ml vodka, 40%", "350 ml water", "300 g sugar", "50 g coffee beans"]
    recipe = drink(lines, method)
    assert label_recipe(recipe, BOOK).strength_text.startswith("About ")
    rules = {one.rule for one in assess_safety(recipe, BOOK).cautions}
    assert "spirit-heated" not in rules


def test_weak_fruit_is_told_where_the_spirit_is_drowned() -> None:
    """Half lemonade is 20 % vol at most, and with the juice of the fruit less."""
    lines = ["500 ml vodka, 40% vol", "700 ml lemonade", "300 g strawberries"]
    assert "weak-infusion" in {one.rule for one in assess_safety(drink(lines), BOOK).cautions}


@pytest.mark.parametrize(
    ("lines", "order"),
    [
        (["1 cup sugar", "1 tsp chilli flakes", "2 cups mango pulp"], "mango pulp, sugar"),
        (["100 g flour", "2 cups froobles"], "froobles, flour"),
        (["2 tbsp onion flakes", "1 cup alphabet pasta", "500 g split peas"], "split peas, alpha"),
        (["100 g sugar", "500 ml lemonade"], "lemonade, sugar"),
    ],
)
def test_what_has_no_density_stands_about_where_it_weighs(lines: list[str], order: str) -> None:
    """Descending weight, Reg. (EU) 1169/2011 Article 18: two cups of a fruit are not its last."""
    recipe = drink(lines, "Mix it.", kind="preserve")
    said = ", ".join(one.whole for one in label_recipe(recipe, BOOK).contents)
    assert said.startswith(order)
