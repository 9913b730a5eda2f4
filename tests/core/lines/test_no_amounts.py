"""What stands where an amount should and is none: no number, less than nothing, a ratio.

Lines of our own; "NaN", "inf" and "#REF!" are what tables and programs write for a number that they
do not know. "2:1 Gelierzucker" and "80/20" mince are names of goods in German and American shops.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.lines.reader import read_line
from stillroom.core.reading.loading import read_recipe
from stillroom.core.words.problems import ProblemsFound, Unreadable


@pytest.mark.parametrize(
    "line",
    ["∞ g sugar", "NaN g sugar", "nan g sugar", "inf g sugar", "Infinity kg sugar", "½∞ sugar",
     "½ ∞ g sugar", "8∞ apples", "sugar, ∞", "undefined g sugar", "null g sugar", "#REF! sugar",
     "NaN cups flour", "NaN"],
)  # fmt: skip
def test_no_number_is_told(line: str) -> None:
    with pytest.raises(Unreadable, match="is not a number"):
        read_line(line)


@pytest.mark.parametrize(
    "line", ["−5 g sugar", "-5 g sugar", "﹣5 g sugar", "sugar, -5 g", "sugar: −5 g"]
)
def test_less_than_nothing_is_told(line: str) -> None:
    with pytest.raises(Unreadable, match="less than nothing"):
        read_line(line)


@pytest.mark.parametrize(
    ("line", "low", "item"),
    [
        ("1 nan bread", 1, "nan bread"),
        ("2 naan breads", 2, "naan breads"),
        ("- 5 g sugar", 5, "sugar"),
        ("sugar -5 g", 5, "sugar"),
        ("sugar - 5 g", 5, "sugar"),
        ("sugar: 5 g", 5, "sugar"),
        ("flour type 405: 500 g", 500, "flour type 405"),
        ("500 g Gelierzucker 2:1", 500, "Gelierzucker 2:1"),
        ("2:1 Gelierzucker, 500 g", 500, "2:1 Gelierzucker"),
        ("100 ml 1:1 sugar syrup", 100, "1:1 sugar syrup"),
        ("1/2 sugar and water", Fraction(1, 2), "sugar and water"),
    ],
)
def test_near_them_an_amount_is_read(line: str, low: Fraction | int, item: str) -> None:
    read = read_line(line)
    assert isinstance(read.amount, Amount)
    assert (read.amount.low, read.item) == (low, item)


@pytest.mark.parametrize(
    "line",
    ["1:1 sugar and water", "1 : 1 sugar and water", "2:1 sugar to water", "sugar and water 1:1",
     "sugar and water (1:1)", "50:50 butter and lard", "50/50 butter and lard", "2:1 oil:vinegar",
     "1:1:1 lemon, sugar, gin", "3:1 Zucker und Wasser", "1:1 water"],
)  # fmt: skip
def test_a_ratio_of_two_foods_is_asked(line: str) -> None:
    with pytest.raises(Unreadable, match="is a ratio"):
        read_line(line)


@pytest.mark.parametrize(
    "line",
    ["2:1 Gelierzucker", "Gelierzucker 2:1", "1:1 sugar syrup", "1:1 gluten-free flour",
     "1:1 sugar and water syrup", "50:50 gluten-free blend", "nan khatai", "salt and pepper"],
)  # fmt: skip
def test_one_food_named_by_its_ratio_is_a_food(line: str) -> None:
    read = read_line(line)
    assert isinstance(read.amount, Unmeasured)
    assert read.item == line


def test_lean_and_fat_are_no_fraction_of_a_thing() -> None:
    with pytest.raises(Unreadable, match="does not begin with an amount"):
        read_line("80/20 minced beef")  # four of it, it was
    assert read_line("500 g minced beef, 80/20").item == "minced beef"


FACTS = {
    "makes": "1 jar",
    "vessel": "1.5 l clip-top jar",
    "containers": "jar, 50 ml",
    "timeline": "\n  - rest: 2 weeks",
    "keeps": "6 months unopened",
    "oven": "180 C",
    "ingredients": "\n  - 5 g sugar\n  - 5 g salt",
}


def told_of(**facts: str) -> list[str]:
    rows = "".join(f"{key}: {said}\n" for key, said in (FACTS | facts).items())
    text = f"---\ntitle: Mix\nkind: dry mix\n{rows}---\n\n## Method\n\n1. Mix.\n"
    try:
        read_recipe(text, "mix.md", "mix")
    except ProblemsFound as wrong:
        return [str(one) for one in wrong.problems]
    return []


@pytest.mark.parametrize("number", ["∞", "NaN", "inf", "½∞"])
@pytest.mark.parametrize(
    ("fact", "line"),
    [("makes: % ml", 4), ("vessel: % l jar", 5), ("containers: jar, % ml", 6),
     ("timeline: \n  - rest: % weeks", 8), ("keeps: % months unopened", 9), ("oven: % C", 10),
     ("ingredients: \n  - % g sugar", 12), ("ingredients: \n  - {item: sugar, amount: % g}", 12)],
)  # fmt: skip
def test_a_recipe_tells_it_once_at_its_line(fact: str, line: int, number: str) -> None:
    key, said = fact.replace("%", number).split(": ", 1)
    found = told_of(**{key: said})
    assert len(found) == 1, found
    assert found[0].startswith(f"mix.md:{line}: "), found


@pytest.mark.parametrize("number", ["5", "½", "1.5"])
def test_a_recipe_with_a_number_there_is_read(number: str) -> None:
    assert told_of(makes=f"{number} l", vessel=f"{number} l jar") == []
    assert (
        told_of(ingredients=f"\n  - {number} g sugar", timeline="\n  - rest: infused, 2 weeks")
        == []
    )


def test_a_list_below_the_facts_tells_it_once_too() -> None:
    text = (
        "---\ntitle: Mix\nkind: dry mix\nmakes: 1 jar\n---\n\n## Ingredients\n\n- ∞ g sugar\n"
        "- 5 g salt\n\n## Method\n\n1. Mix.\n"
    )
    with pytest.raises(ProblemsFound) as wrong:
        read_recipe(text, "mix.md", "mix")
    assert [str(one).partition(" ")[0] for one in wrong.value.problems] == ["mix.md:9:"]
