"""A book's own larder: what a cook may say of a food, and every mistake told at its line."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from stillroom.core.allergens.of_foods import answer_avoid, know_recipe
from stillroom.core.book import open_book
from stillroom.core.checking import check_book
from stillroom.core.larder.own import read_own_larder
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.problems import ProblemsFound

LARDER = """
elder vinegar:
  also: [elderflower vinegar, vinegar of elder]
  parts: [cider vinegar, elderflower]
  acidity: acid
  density: 1 cup weighs 240 g
  source: its label
Aunt's spread:
  is: peanut butter
  may contain: [sesame]
moon dust:
  contains: [wheat, egg]
  from: [plant, egg]
  one weighs: 12 g
  source: weighed
sloe cordial:
  contains: nothing
  from: plant
  strength: 1% vol
  price: 500 ml for 3.50
  source: its label
"""


def recipe_of(item: str, larder_text: str | None, slug: str = "a") -> Recipe:
    larder = read_own_larder(larder_text, "larder.yml").larder if larder_text else None
    text = (
        f"---\ntitle: A thing\nkind: bake\nmakes: 1 kg\ningredients:\n  - 200 g {item}\n---\n\n"
        "## Method\n\n1. Bake.\n"
    )
    return read_recipe(text, f"recipes/{slug}.md", slug, "metric", larder)


def test_what_is_said_is_known() -> None:
    own = {food.name: food for food in read_own_larder(LARDER, "larder.yml").larder.own}
    vinegar, spread, dust, cordial = own.values()
    assert (vinegar.acidity, vinegar.density) == ("acid", Fraction(240, 250))
    assert vinegar.sources["density"] == "its label"
    assert "sulphites" in vinegar.may_contain, "cider vinegar may"
    assert (spread.allergens, spread.name) == (("peanut",), "Aunt's spread")
    assert "sesame" in spread.may_contain
    assert (dust.allergens, dust.animal, dust.each_g) == (("wheat", "eggs"), ("plant", "egg"), 12)
    assert (cordial.allergens, cordial.vegan, cordial.strength) == ((), True, 1)
    assert "alcohol" in cordial.tags


def test_a_cup_is_the_books_own() -> None:
    text = "dust:\n  contains: nothing\n  density: 1 cup weighs 130 g\n  source: weighed\n"
    (food,) = read_own_larder(text, "larder.yml", system="us").larder.own
    assert food.density is not None
    assert float(food.density) == pytest.approx(130 / 236.588, abs=0.001)


@pytest.mark.parametrize("item", ["moon dust", "Moon Dust", "vinegar of elder", "fresh moon dust"])
def test_a_recipe_carries_what_its_own_book_knows_and_no_others(item: str) -> None:
    first = recipe_of(item, LARDER)
    other = recipe_of(item, None)
    assert bool(know_recipe(first)[0].unknown) == item.startswith("fresh")
    assert know_recipe(other)[0].unknown, "the next book says nothing of it"
    assert not know_recipe(recipe_of("moon dust", LARDER))[0].unknown


def test_what_a_book_says_goes_before_what_the_program_knows() -> None:
    text = "butter:\n  contains: [soya]\n  from: plant\n"
    assert know_recipe(recipe_of("butter", text))[0].contains == {"soya"}
    assert know_recipe(recipe_of("butter", None))[0].contains == {"milk"}
    assert answer_avoid(recipe_of("butter", text), "milk") == "free"
    assert answer_avoid(recipe_of("butter", None), "milk") == "contains"


# (what is written, the line, words of the message)
WRONG = [
    ("- moon dust\n", 1, "No food is named here"),
    ("moon dust:\n", 1, 'Nothing is said of "moon dust"'),
    ("moon dust: butter\n", 1, 'Nothing is said of "moon dust"'),
    ("moon dust:\n  from: plant\n", 1, 'What "moon dust" holds is not said'),
    ("moon dust:\n  contians: milk\n  is: butter\n", 2, 'Did you mean "contains"?'),
    ("moon dust:\n  contains: [mlk]\n", 2, 'Did you mean "milk"?'),
    ("moon dust:\n  contains: gluten\n", 2, "a label names it"),
    ("moon dust:\n  is: star dust\n", 2, '"star dust" is not known either'),
    ("moon dust:\n  is: cinammon stick\n", 2, 'Did you mean "cinnamon stick"?'),
    ("moon dust:\n  parts: [sugar, star dust]\n", 2, 'The part "star dust" is not known'),
    ("moon dust:\n  is: butter\n  from: cow\n", 3, "come from"),
    ("moon dust:\n  is: butter\n  contains: nothing\n", 3, "cannot contain nothing"),
    ("moon dust:\n  is: butter\n  acidity: pH 3\n  source: me\n", 3, 'Write "acid"'),
    ("moon dust:\n  is: butter\n  acidity: acid\n", 3, "source: its label"),
    ("moon dust:\n  is: butter\n  density: 3 apples\n  source: me\n", 3, "1 cup weighs 130 g"),
    ("moon dust:\n  is: butter\n  density: 1 cup weighs 9 kg\n  source: me\n", 3, "heavier"),
    ("moon dust:\n  is: butter\n  one weighs: 3 ml\n  source: me\n", 3, "is not a weight"),
    ("moon dust:\n  is: butter\n  strength: strong\n  source: me\n", 3, 'Write "20% vol"'),
    ("moon dust:\n  is: butter\n  price: 500 g for a song\n", 3, "not a price"),
    ("moon dust:\n  is: butter\nmoon dust:\n  is: milk\n", 3, "twice"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "line", "words"), WRONG, ids=[row[2] for row in WRONG])
def test_a_mistake_is_told_at_its_line(text: str, line: int, words: str) -> None:
    with pytest.raises(ProblemsFound) as found:
        read_own_larder(text, "larder.yml")
    (problem,) = found.value.problems
    assert (problem.file, problem.line) == ("larder.yml", line)
    assert words in f"{problem.what} {problem.mend}"
    kitchen = f"{problem.what} {problem.mend}".lower()
    assert not [word for word in ("yaml", "token", "key", "mapping") if word in kitchen.split()]


def test_an_unknown_food_is_named_once_with_what_would_mend_it() -> None:
    recipes = [recipe_of("moon dust", None, "a"), recipe_of("Moon Dust", None, "b")]
    (food,) = unknown_foods(recipes)
    said = food.say()
    assert said.startswith('recipes/a.md:6: "moon dust" is not a food that this book knows')
    assert "also recipes/b.md:6" in said
    assert "allergens and dangers could not be checked" in said
    assert "Say what it is in larder.yml:\n    moon dust:\n      contains: nothing" in said
    assert "core/" not in said
    lines = "moon dust:\n  contains: nothing\n  from: plant\n"
    assert unknown_foods([recipe_of("moon dust", lines)]) == (), "the lines to copy mend it"


def write_book(root: Path, larder: str, setting: str = "") -> Path:
    (root / "docs").mkdir()
    (root / "recipes").mkdir()
    recipe = recipe_text()
    (root / "recipes" / "a.md").write_text(recipe, encoding="utf-8")
    (root / (setting or "larder.yml")).write_text(larder, encoding="utf-8")
    top = "site_name: A book\nsite_url: https://book.example/\ntheme: material\n"
    option = f"      larder: {setting}\n" if setting else ""
    plugins = f"plugins:\n  - stillroom:\n      country: GB\n{option}"
    (root / "mkdocs.yml").write_text(top + plugins, encoding="utf-8")
    return root / "mkdocs.yml"


def recipe_text() -> str:
    return (
        "---\ntitle: A thing\nkind: bake\nmakes: 1 kg\ningredients:\n  - 200 g moon dust\n---\n\n"
        "## Method\n\n1. Bake.\n"
    )


@pytest.mark.parametrize("setting", ["", "our-foods.yml"])
def test_a_book_reads_its_larder_beside_its_recipes(tmp_path: Path, setting: str) -> None:
    config = write_book(tmp_path, "moon dust:\n  contains: [milk]\n  from: milk\n", setting)
    (recipe,) = check_book(open_book(config))
    assert know_recipe(recipe)[0].contains == {"milk"}
    assert open_book(config).load() == (recipe,)


def test_a_wrong_larder_is_a_problem_of_the_book(tmp_path: Path) -> None:
    config = write_book(tmp_path, "moon dust:\n  contains: [mlk]\n")
    with pytest.raises(ProblemsFound, match=r"larder\.yml:2: "):
        check_book(open_book(config))


def test_a_larder_that_is_named_must_be_there(tmp_path: Path) -> None:
    config = write_book(tmp_path, "", "our-foods.yml")
    (tmp_path / "our-foods.yml").unlink()
    with pytest.raises(ProblemsFound, match=r"our-foods\.yml:1: "):
        check_book(open_book(config))


@pytest.mark.parametrize("said", ["", "~", "[]", '""'])
@pytest.mark.parametrize("key", ["contains", "may contain", "is", "parts", "from", "strength"])
def test_a_fact_left_empty_says_nothing_and_is_told(key: str, said: str) -> None:
    """An empty "contains:" is not "contains: nothing"."""
    text = f"dust:\n  {key}: {said}\n  source: weighed\n"
    with pytest.raises(ProblemsFound) as found:
        read_own_larder(text, "larder.yml")
    told = [str(problem) for problem in found.value.problems]
    assert f'larder.yml:2: Nothing stands behind "{key}" of "dust".' in told[-1]
