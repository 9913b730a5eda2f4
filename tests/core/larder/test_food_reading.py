"""What food a phrase means: the whole of it counts, and what is left over makes it unknown."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.harmless import LONGEST
from stillroom.core.larder.index import build_index
from stillroom.core.larder.index_file import INDEX, held_index, source_files, write_index
from stillroom.core.larder.shelves import all_staples, common_larder
from stillroom.core.larder.words import normal_form, words_of
from stillroom.core.words.data_files import read_data

ROOT = Path(__file__).parents[3]

# (phrase, the food that it must never be taken for)
NEVER = [
    ("white chocolate", "dark chocolate"),
    ("ruby chocolate", "dark chocolate"),
    ("cashew butter", "butter"),
    ("butter beans", "butter"),
    ("shea butter", "butter"),
    ("apple butter", "butter"),
    ("vegan butter", "butter"),
    ("butter flavouring", "butter"),
    ("malted milk powder", "milk powder"),
    ("roasted peppers", "black pepper"),
    ("roasted peppers", "sweet pepper"),
    ("peppers, roasted", "sweet pepper"),
    ("coconut rum", "dark rum"),
    ("rum essence", "dark rum"),
    ("essential oil of lavender", "lavender"),
    ("lavender oil", "lavender"),
    ("smoked almonds", "almonds"),
    ("sugared almonds", "almonds"),
    ("almond biscuits", "almonds"),
    ("almond essence", "almonds"),
    ("dried apricots", "apricot"),
    ("apricots, dried", "apricot"),
    ("apricots (dried)", "apricot"),
    ("apricot kernels", "apricot"),
    ("candied ginger", "root ginger"),
    ("pickled garlic", "garlic"),
    ("black garlic", "garlic"),
    ("garlic in oil", "garlic"),
    ("tinned cherries", "cherry"),
    ("cherries in brandy", "cherry"),
    ("rhubarb leaves", "rhubarb"),
    ("milk, oat", "whole milk"),
    ("goat milk chocolate spread", "milk chocolate"),
    ("chocolate, white", "dark chocolate"),
    ("smoked salt", "salt"),
    ("celery salt", "salt"),
    ("sugar substitute", "granulated sugar"),
    ("egg substitute", "eggs"),
    ("imitation vanilla", "vanilla extract"),
    ("honey mustard", "honey"),
    ("lemon curd", "lemon"),
    ("lemon extract", "lemon"),
    ("fresh turmeric", "turmeric"),
]


@pytest.mark.parametrize(("phrase", "food"), NEVER, ids=[f"{row[0]}" for row in NEVER])
def test_a_phrase_is_not_taken_for_the_food_whose_name_it_holds(phrase: str, food: str) -> None:
    reading = read_food(phrase)
    assert food not in {staple.name for staple in reading.foods}


# (phrase, every food that it names, the first reckoned with)
KNOWN = [
    ("unwaxed Seville oranges, thinly peeled", ["seville orange"]),
    ("Large free-range EGGS, beaten", ["eggs"]),
    ("finely chopped fresh rosemary", ["rosemary"]),
    ("rosemary, dried", ["dried rosemary"]),
    ("a knob of butter, softened", ["butter"]),
    ("unsalted butter", ["butter"]),
    ("extra-virgin olive oil", ["olive oil"]),
    ("sprigs of thyme", ["thyme"]),
    ("2 heads of garlic", ["garlic head"]),
    ("juice of 2 limes", ["lime juice"]),
    ("chocolate, white", ["white chocolate"]),
    ("dark chocolate (70% cocoa)", ["dark chocolate"]),
    ("peanuts (unsalted)", ["peanuts"]),
    ("toasted hazelnuts", ["hazelnuts"]),
    ("pecan halves", ["pecans"]),
    ("vodka, 40% vol", ["vodka"]),
    ("butter or margarine", ["butter", "margarine"]),
    ("butter, or margarine", ["butter", "margarine"]),
    ("butter (or margarine)", ["butter", "margarine"]),
    ("butter/margarine", ["butter", "margarine"]),
    ("milk/cream", ["milk", "cream"]),
    ("vodka or gin", ["vodka", "gin"]),
    ("caster sugar and butter", ["caster sugar", "butter"]),
    ("caster sugar & butter", ["caster sugar", "butter"]),
    ("butter, plus extra for greasing", ["butter"]),
    ("lemons, zest and juice", ["lemon"]),
    ("Confectioners’ sugar", ["icing sugar"]),
    ("CRÈME FRAÎCHE", ["crème fraîche"]),
    ("self raising flour", ["self-raising flour"]),
    ("foxglove petals", ["foxglove"]),
]


@pytest.mark.parametrize(("phrase", "foods"), KNOWN, ids=[row[0] for row in KNOWN])
def test_a_phrase_is_known_by_the_whole_of_it(phrase: str, foods: list[str]) -> None:
    reading = read_food(phrase)
    assert [staple.name for staple in reading.foods] == foods
    assert reading.known
    assert reading.food is reading.foods[0]


# (phrase, what is left over, a food that it may mean)
UNKNOWN = [
    ("moon dust", ("moon", "dust"), None),
    ("moonlight butter", ("moonlight",), "butter"),
    ("cinammon stick", ("cinammon",), "cinnamon stick"),
    ("butter or moon dust", ("moon", "dust"), "butter"),
]


@pytest.mark.parametrize(("phrase", "left", "near"), UNKNOWN, ids=[row[0] for row in UNKNOWN])
def test_what_is_left_over_is_named(phrase: str, left: tuple[str, ...], near: str | None) -> None:
    reading = read_food(phrase)
    assert not reading.known
    assert set(left) <= set(reading.leftover)
    assert near is None or near in (*reading.nearest, *(food.name for food in reading.foods))


def test_what_an_unknown_phrase_surely_holds_is_kept_apart_from_what_it_may_be() -> None:
    dust = read_food("almond moondust")
    assert [food.name for food in dust.hinted] == ["almonds"]
    assert dust.doubted == ()
    butter = read_food("moonlight butter")
    assert (butter.hinted, [food.name for food in butter.doubted]) == ((), ["butter"])


def test_every_letter_of_a_known_phrase_is_accounted_for() -> None:
    text = "finely chopped large rosemary"
    said = {text[span.start : span.end]: span.read_as for span in read_food(text).spans}
    assert said == {
        "finely": "harmless",
        "chopped": "harmless",
        "large": "harmless",
        "rosemary": "food",
    }


def test_no_form_of_writing_makes_another_food() -> None:
    assert normal_form("Crème-Fraîche") == normal_form("CREME FRAICHE") == "creme fraiche"
    assert normal_form("bœuf") == normal_form("boeufs")
    assert normal_form("bakers’ yeast") == normal_form("baker's yeast")
    assert [word.form for word in words_of("the 70 % bar")] == ["70%", "bar"]


def test_harmless_words_are_declared_for_foods_and_tags_that_exist() -> None:
    staples = all_staples()
    known = {f"={name}" for name in staples} | {tag for one in staples.values() for tag in one.tags}
    known |= {
        "juice",
        "stock",
        "milk",
        "meat",
        "shellfish",
        "crustacean",
        "mollusc",
    }  # of the tables
    for row in read_data("../larder/harmless.yml"):
        assert set(row.get("only", ())) | set(row.get("never", ())) <= known, row["class"]
        longest = max(len(normal_form(words).split()) for words in row["words"].split(","))
        assert longest <= LONGEST, row["class"]


def test_the_index_is_what_the_data_make() -> None:
    mend = "run: python tests/data/make_larder_index.py"
    assert INDEX.read_text(encoding="utf-8") == write_index(build_index()), mend


def test_the_index_of_a_file_is_the_one_that_was_made() -> None:
    held, made = held_index(), json.loads(json.dumps(build_index()))
    assert held is not None
    assert made == {
        part: {key: dict(rows) if part == "foreign" else rows for key, rows in held[part].items()}
        if isinstance(held[part], Mapping)
        else held[part]
        for part in held
    }


def test_the_index_is_made_anew_when_what_makes_it_changes() -> None:
    made_by = {path.name for path in source_files()}
    assert {"index.py", "index_file.py", "words.py", "plurals.py", "phrases.yml"} <= made_by
    assert {"harmless.yml", "plurals.yml", "acidity.yml", "egg_sizes.yml"} <= made_by


def test_finding_a_food_reads_no_table() -> None:
    code = (
        "import stillroom.core.larder.index as index, stillroom.core.larder.data as data\n"
        "index.build_index = data.read_yaml = None\n"
        "from stillroom.core.lines.staple_table import find_staple\n"
        "assert find_staple('butter').name == 'butter'\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)


def test_a_name_of_the_common_larder_is_found_by_itself() -> None:
    larder = common_larder()
    lost = [name for name, food in all_staples().items() if larder.named(normal_form(name)) != food]
    assert lost == []


@pytest.mark.parametrize(
    ("phrase", "foods"),
    [
        ("olive or salad oil", ["olive oil", "salad oil"]),
        ("lemon or lime juice", ["lemon juice", "lime juice"]),
        ("almond or vanilla extract", ["almond extract", "vanilla extract"]),
        ("rum or vanilla extract", ["rum", "rum extract", "vanilla extract"]),
        ("milk or dark chocolate", ["milk", "milk chocolate", "dark chocolate"]),
        ("peeled, cored, seeded and chopped tomatoes", ["tomato"]),
        ("firm, ripe pears, peeled", ["pear"]),
        ("fresh, tender green or yellow beans", ["green bean", "yellow bean"]),
        ("dried, chopped apricots", ["dried apricot"]),
        ("limes, juice and zest only", ["lime"]),
        ("lemons, grated rind and juice", ["lemon"]),
        ("chocolate, white and dark", []),
    ],
)
def test_joined_foods_and_words_before_a_comma(phrase: str, foods: list[str]) -> None:
    """As American canning guides print them; what is dried is no fresh food and stays unknown."""
    reading = read_food(phrase)
    assert [food.name for food in reading.foods] == foods
    assert reading.known == bool(foods)


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        ("sultanas (golden raisins)", ["sultanas"]),
        ("courgettes (zucchini)", ["courgette", "zucchini"]),
        ("pecans (walnuts)", ["pecans", "walnuts"]),
        ("chocolate, milk", ["milk chocolate"]),
        ("milk, oat", ["oat milk"]),
        ("salt (her recipe uses garlic powder, but I do not care for it)", ["salt"]),
        ("brown sugar (you can, however, use raw sugar and nobody minds)", ["brown sugar"]),
        ("cucumbers seeds removed", ["cucumber"]),
        ("skin-on, bone-in chicken thighs", ["chicken thigh"]),
        ("London dry gin or similar", ["gin"]),
        ("half and half cream", ["half cream"]),
        ("seeded and chopped hot chiles, such as serrano", ["chilli"]),
        ("chopped pecans (or walnuts, coconut)", ["pecans", "walnuts", "coconut"]),
    ],
)
def test_a_food_in_brackets_is_its_other_name_or_counts_too(text: str, foods: list[str]) -> None:
    reading = read_food(text)
    assert reading.known
    assert [food.name for food in reading.foods] == foods


@pytest.mark.parametrize(
    "text",
    [
        "bread, banana",
        "biscuits, almond",
        "butter (margarine)",
        "fish (it may be breaded too if you like)",
        "vegetable, sunflower or olive oil",
    ],
)
def test_what_a_food_in_a_note_makes_of_another_stays_not_known(text: str) -> None:
    assert not read_food(text).known


@pytest.mark.parametrize(
    ("text", "foods"),
    [
        ("neutral oil (such as peanut)", ["neutral oil", "peanut oil"]),
        ("vegetable oil (peanut oil works best)", ["vegetable oil", "peanut oil"]),
        ("oil (I use peanut)", ["oil", "peanut oil"]),
        ("milk (such as almond or oat)", ["milk", "almond milk", "oat milk"]),
        ("crackers, e.g. oatcakes", ["cracker", "oatcake"]),
        ("oil, such as sunflower", ["oil"]),
        ("sugar (I use caster)", ["granulated sugar"]),
        ("butter (I like salted)", ["butter"]),
    ],
)
def test_a_sort_that_is_named_counts_where_it_brings_an_allergen(
    text: str, foods: list[str]
) -> None:
    assert [food.name for food in read_food(text).foods] == foods
