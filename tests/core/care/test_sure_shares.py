"""Sugar excuses a thing only where there is surely enough of it: "1 bag" and a juice count too.

Sugar keeps at about 60 % soluble solids (Jam and Similar Products (England) Regulations 2003), herb
syrups of half water do not; how much is in a bag or a jar nobody wrote.
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety, gather_recipe_facts
from stillroom.core.label.labelling import label_recipe
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

BOOK = BookSettings()


def made(kind: str, lines: list[str], method: str) -> Recipe:
    listed = "".join(f"  - {line}\n" for line in lines)
    head = f"---\ntitle: A thing\nkind: {kind}\nmakes: 1 l\ningredients:\n{listed}---\n"
    return read_recipe(f"{head}\n## Method\n\n{method}\n", "recipes/made.md", "made")


@pytest.mark.parametrize(("honey", "days"), [("1 jar honey", 1), ("700 g honey", None)])
def test_a_jar_of_honey_is_no_sugar_enough(honey: str, days: int | None) -> None:
    method = "Boil the water, pour it over the mint, stir in the honey and bottle."
    recipe = made("infusion", ["500 ml water", honey, "20 g mint"], method)
    kept = label_recipe(recipe, BOOK).keeping.unopened
    assert (kept.high if kept else None) == days


@pytest.mark.parametrize(("sugar", "refused"), [("1 bag sugar", True), ("1 kg sugar", False)])
def test_a_bag_of_sugar_makes_no_tomato_safe(sugar: str, refused: bool) -> None:
    recipe = made("preserve", ["1 kg tomatoes", sugar], "Boil, fill hot jars and seal.")
    found = {one.rule for one in assess_safety(recipe, BOOK).refusals}
    assert ("borderline-acid-bare" in found) is refused


@pytest.mark.parametrize(
    ("line", "grams"),
    [("1 l lemonade", 1000), ("1 l grape juice", 1000), ("500 ml oat milk", 500)],
)
def test_a_juice_without_figures_weighs_as_water(line: str, grams: int) -> None:
    facts = gather_recipe_facts(made("preserve", [line, "100 g sugar"], "Boil and fill."), BOOK)
    assert [float(one.grams or 0) for one in facts.things] == [grams, 100]
