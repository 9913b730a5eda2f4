"""What a ferment comes to, and of which nobody can say: brines, cultures, musts without figures.

16.83 g of sugar in a litre for each % vol: French order of 14 September 2011, Annex IV. Yeast stops
at 12 to 16 % vol (MadSci Network, Ohio State University, 18 November 1999), at 16 to 18 by an
encyclopaedia's article on fortified wine. Home-made kombucha is mostly under 1 % vol, whatever its
sugar: see `may-hold-alcohol` in hazards.yml.
"""

from __future__ import annotations

import pytest

from stillroom.core.batch.preserves import solids_of
from stillroom.core.batch.strength import not_told, strength_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

BOOK = BookSettings()


def made(
    title: str, lines: list[str], method: str, kind: str = "ferment", makes: str = "2 l"
) -> Recipe:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: {title}\nkind: {kind}\nmakes: {makes}\ningredients:\n{listed}---\n"
    return read_recipe(f"{head}\n## Method\n\n{method}\n", "recipes/made.md", "made")


TEA = ["2 l water", "8 g black tea", "140 g sugar", "1 scoby", "200 ml kombucha"]
NO_WINE = [
    ("Kombucha", TEA, "Brew, cool, add the scoby and leave for 10 days."),
    ("Water kefir", ["1 l water", "50 g sugar", "3 tbsp water kefir grains"], "Leave two days."),
    ("Milk kefir", ["1 l milk", "1 tbsp kefir grains"], "Leave for a day, then strain."),
    ("Hot sauce", ["500 g red chillies", "500 ml water", "25 g salt", "20 g sugar"], "Ferment."),
    ("Beet kvass", ["300 g beetroot", "1 l water", "10 g salt"], "Leave for 5 days."),
    ("Apple vinegar", ["2 l apple juice", "100 ml vinegar with the mother"], "Leave 2 months."),
    ("Sauerkraut", ["1 kg cabbage", "20 g salt"], "Pack under its brine, leave for 3 weeks."),
]


@pytest.mark.parametrize(("title", "lines", "method"), NO_WINE)
def test_what_is_no_wine_is_given_no_wine_s_strength(
    title: str, lines: list[str], method: str
) -> None:
    recipe = made(title, lines, method)
    assert strength_of(recipe) is None
    assert label_recipe(recipe, BOOK).strength_text == ""


WORKED = [
    (["1.5 kg honey", "4 l water", "5 g wine yeast"], "About 14.5 % vol"),
    (["5 l apple juice", "5 g cider yeast"], "About 6 % vol"),
    (["500 g sugar", "4.5 l water", "1 tsp ale yeast"], "About 6 % vol"),
    (["3 kg honey", "2.5 l water", "yeast"], "About 18 % vol, where yeast gives up, and sweet"),
    (
        ["2 kg blackberries", "2.5 kg sugar", "3 l water", "wine yeast"],
        "About 18 % vol, where yeast gives up, and sweet",
    ),
]


@pytest.mark.parametrize(("lines", "said"), WORKED)
def test_a_must_comes_to_what_its_sugar_gives_and_no_further(lines: list[str], said: str) -> None:
    recipe = made("A wine", lines, "Ferment until still, rack and bottle.")
    assert label_recipe(recipe, BOOK).strength_text == said


@pytest.mark.parametrize(
    ("title", "lines", "method"),
    [
        ("Ginger beer", ["2 l water", "200 g sugar", "1/4 tsp yeast"], "Leave for 2 days."),
        ("Tepache", ["1 pineapple", "200 g sugar", "2 l water"], "Leave for 3 days, strain."),
    ],
)
def test_what_is_drunk_young_has_its_own_wait_and_is_told_with_a_proviso(
    title: str, lines: list[str], method: str
) -> None:
    recipe = made(title, lines, method)
    label = label_recipe(recipe, BOOK)
    assert label.strength_text.endswith("% vol, if it works to the end")
    assert label.keeping.unopened is None
    assert not any("months" in stage.text for stage in recipe.stages)


@pytest.mark.parametrize(
    ("lines", "named"),
    [
        (["5 l grape juice", "wine yeast"], "grape juice"),
        (["1 kg sugar", "2 kg rowan berries", "4.5 l water", "yeast"], "rowan berries"),
        (["2 kg barley malt", "8 l water", "ale yeast"], "malt"),
        (["250 g agave syrup", "1 l water", "champagne yeast"], "agave syrup"),
        (["1 l red wine, 13% vol", "200 ml vinegar with the mother"], "vinegar"),
        (["3 jars honey", "4 l water", "yeast"], "honey"),
    ],
)
def test_a_must_without_figures_is_not_known(lines: list[str], named: str) -> None:
    title = "Wine vinegar" if named == "vinegar" else "A wine"
    recipe = made(title, lines, "Ferment until still, rack and bottle.")
    assert named in not_told(recipe)
    assert label_recipe(recipe, BOOK).strength_text == "Strength not known"


def test_fruit_left_to_work_in_sugar_may_hold_alcohol() -> None:
    lines = ["1 kg sour cherries", "500 g sugar"]
    recipe = made("Cherries in the sun", lines, "Leave for 6 weeks until it stops bubbling.")
    assert "may-hold-alcohol" in {one.rule for one in assess_safety(recipe, BOOK).cautions}
    salted = made("Salted plums", ["1 kg plums", "100 g salt"], "Leave for 6 weeks.")
    assert "may-hold-alcohol" not in {one.rule for one in assess_safety(salted, BOOK).cautions}


HIDDEN = [
    (["500 ml apple juice", "500 g date sugar"], "date sugar"),
    (["400 g plums", "400 g agave syrup"], "agave syrup"),
    (["400 g sugar", "1 bag frozen blueberries"], "frozen blueberries"),
    (["100 g walnuts", "100 g sugar", "1 jar of honey"], "honey"),
]


@pytest.mark.parametrize(("lines", "named"), HIDDEN)
def test_sugar_that_nobody_counted_is_no_verdict_on_a_jam(lines: list[str], named: str) -> None:
    recipe = made("A jam", lines, "Boil to a set.", "preserve", "1 l")
    found = solids_of(recipe)
    assert found is not None
    assert found.text.startswith("at least ")
    assert found.text.endswith(f"how much more is in the {named} is not known")


@pytest.mark.parametrize(
    ("lines", "how"),
    [
        (["1 kg plums", "500 g sugar"], "stays below"),
        (["1 kg plums", "900 g sugar", "juice of 1 lemon"], "reaches"),
        (["1 kg medlars", "900 g sugar"], "reaches"),
        (["1 kg plums", "500 g jam sugar"], "stays below"),
        (["1 kg plums", "900 g jam sugar"], "reaches"),
    ],
)
def test_sugar_that_is_known_is_held_against_the_least(lines: list[str], how: str) -> None:
    found = solids_of(made("A jam", lines, "Boil to a set.", "preserve", "1.1 l"))
    assert found is not None
    assert f"{how} the 60 %" in found.text
