"""The staples: every row is whole, every published figure is the published one."""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.larder.index import load_index
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.staple_table import Staple, all_staples, find_staple, staples_named
from stillroom.core.words.data_files import read_data

ALLERGENS = read_data("allergens.yml")

# (item, g in a US cup of 236.588 ml, source). Sources: USDA SR WEIGHT.txt by food number,
# as listed in reference.md section 3.
CUPS = [
    ("granulated sugar", 200, "USDA SR 19335"),
    ("brown sugar, packed", 220, "USDA SR 19334"),
    ("icing sugar", 120, "USDA SR 19336"),
    ("honey", 339, "USDA SR 19296"),
    ("black treacle", 337, "USDA SR 19304"),
    ("maple syrup", 315, "USDA SR 19353"),
    ("light corn syrup", 341, "USDA SR 19350"),
    ("table salt", 292, "USDA SR 02047"),
    ("plain flour", 125, "USDA SR 20081"),
    ("wholemeal flour", 120, "USDA SR 20080"),
    ("rice flour", 158, "USDA SR 20061"),
    ("cornflour", 128, "USDA SR 20027"),
    ("polenta", 157, "USDA SR 20022"),
    ("rolled oats", 81, "USDA SR 08120"),
    ("cocoa powder", 86, "USDA SR 19165"),
    ("butter", 227, "USDA SR 01145"),
    ("long-grain rice", 185, "USDA SR 20044"),
    ("green lentils", 192, "USDA SR 16069"),
    ("split peas", 197, "USDA SR 16085"),
    ("olive oil", 216, "USDA SR 04053"),
    ("milk", 244, "USDA SR 01077"),
    ("cider vinegar", 239, "USDA SR 02048"),
    ("lemon juice", 244, "USDA SR 09152"),
    ("raisins", 145, "USDA SR 09298"),
    ("almonds", 143, "USDA SR 12061"),
    ("ground almonds", 95, "USDA SR 12061"),
    ("hazelnuts", 135, "USDA SR 12120"),
]


@pytest.mark.parametrize(("item", "cup_g", "source"), CUPS, ids=[row[0] for row in CUPS])
def test_a_cup_weighs_what_usda_says(item: str, cup_g: int, source: str) -> None:
    staple = find_staple(item)
    assert staple is not None
    assert staple.density is not None
    assert float(staple.density) * 236.5882365 == pytest.approx(cup_g, abs=0.2), source
    assert source in staple.sources["density"]


# (item, g of one, source): USDA SR WEIGHT.txt
EACH = [
    ("egg", 50, "USDA SR 01123, large"),
    ("lemon juice", 48, "USDA SR 09152, one lemon yields"),
    ("active dry yeast", Fraction("7.2"), "USDA SR 18375, packet"),
    ("almond", Fraction("1.2"), "USDA SR 12061"),
    ("garlic clove", 3, "USDA SR 11215"),
    ("onion", 110, "USDA SR 11282, medium"),
    ("apple", 182, "USDA SR 09003, medium"),
    ("quince", 92, "USDA SR 09296, without refuse"),
]


@pytest.mark.parametrize(("item", "grams", "source"), EACH, ids=[row[0] for row in EACH])
def test_one_weighs_what_usda_says(item: str, grams: Fraction, source: str) -> None:
    staple = find_staple(item)
    assert staple is not None
    assert staple.each_g == grams, source


HAND_MADE = [name for name, row in load_index()["rows"].items() if isinstance(row, dict)]


def test_there_are_more_than_150_and_all_find_themselves() -> None:
    assert len(HAND_MADE) >= 150
    lost = {name: find_staple(name) for name in HAND_MADE}
    assert {name for name, found in lost.items() if found is None or found.name != name} == set()


def test_other_names_find_their_staple() -> None:
    own_names = {normal_form(name) for name in all_staples()}
    wrong = [
        (other, staple.name)
        for name in HAND_MADE
        for staple in [all_staples()[name]]
        for other in staple.also
        for found in [find_staple(other)]
        if (found is None or found.allergens != staple.allergens)
        and normal_form(other) not in own_names  # a name of the tables goes before an alias here
    ]
    assert wrong == []


def test_every_staple_is_whole() -> None:
    for staple in all_staples().values():
        _check_whole(staple)


def _check_whole(staple: Staple) -> None:
    assert staple.section
    assert set(staple.allergens) | set(staple.may_contain) <= set(ALLERGENS)
    assert all(staple.sources.values()), "every figure names its source"
    if staple.composition:
        grams = [
            value
            for value in (
                staple.composition.water,
                staple.composition.sugar,
                staple.composition.alcohol,
                staple.composition.fat,
            )
            if value is not None
        ]
        assert sum(grams) <= 101
    if staple.allergens and staple.parts:
        assert any(part for part in staple.parts)


# An item that only looks like a staple must not be taken for it.
@pytest.mark.parametrize(
    ("item", "name"),
    [
        ("unwaxed Seville oranges", "seville orange"),
        ("garlic cloves", "garlic"),
        ("whole cloves", "cloves"),
        ("coarse sea salt", "coarse sea salt"),
        ("rosemary, dried", "dried rosemary"),
        ("fresh rosemary", "rosemary"),
        ("dried apricots", "dried apricot"),
        ("dried apricots, unsulphured", "unsulphured dried apricot"),
        ("almond milk", "almond milk"),
        ("coconut milk", "coconut milk"),
        ("cocoa butter", "cocoa butter"),
        ("almond biscuits", None),
        ("milk chocolate", "milk chocolate"),
        ("rhubarb leaves", "rhubarb leaf"),
        ("rhubarb", "rhubarb"),
        ("apricot kernels", "apricot kernel"),
        ("elderflowers", "elderflower"),
        ("elder leaves", "elder leaf"),
        ("moon dust", None),
    ],
)
def test_an_item_finds_its_staple(item: str, name: str | None) -> None:
    found = find_staple(item)
    assert (found.name if found else None) == name


def test_every_staple_in_a_head_is_named() -> None:
    assert {staple.name for staple in staples_named("oatmeal and honey")} == {"oatmeal", "honey"}
