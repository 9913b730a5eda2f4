"""What somebody avoids, in their own words, against what lies in a recipe: both ways."""

from pathlib import Path

import pytest
import yaml

from care_cases import recipe_of
from stillroom.core.allergens.avoiding import read_avoided
from stillroom.core.allergens.of_foods import answer_avoid
from stillroom.giving.facts import facts_of

ROWS = yaml.safe_load(
    (Path(__file__).parents[2] / "golden" / "avoid" / "words.yml").read_text("utf-8")
)
NEVER = [(row["avoid"], line) for row in ROWS for line in row["never"]]
TRACES = [(row["avoid"], line) for row in ROWS for line in row.get("traces", ())]
FREE = [(row["avoid"], line) for row in ROWS for line in row["free"]]


def _answers(word: str, line: str) -> set[str]:
    made = {"title": "A thing", "kind": "bake", "ingredients": [line, "100 ml water"]}
    recipe = recipe_of({**made, "method": ["Mix and bake."]})
    return {answer_avoid(recipe, word), facts_of(recipe).answer(read_avoided(word))}


@pytest.mark.parametrize(("word", "line"), NEVER)
def test_what_holds_it_or_may_is_never_free(word, line):
    assert "free" not in _answers(word, line)


@pytest.mark.parametrize(("word", "line"), FREE)
def test_what_holds_nothing_of_it_is_free(word, line):
    assert _answers(word, line) == {"free"}


@pytest.mark.parametrize(("word", "line"), TRACES)
def test_what_is_packed_beside_it_may_contain_it(word, line):
    assert _answers(word, line) == {"may contain"}


@pytest.mark.parametrize("word", ["pregnant", "paleo", "allergies", "keto", "low FODMAP", "latex"])
def test_a_word_that_means_too_much_asks(word):
    assert read_avoided(word).ask


@pytest.mark.parametrize(
    ("said", "each"),
    [
        ("allergic to eggs and milk", ["eggs", "milk"]),
        ("nuts and gluten", ["nuts", "gluten"]),
        ("can't have celery or sulphites", ["celery", "sulphites"]),
        ("gluten/dairy free", ["gluten", "milk"]),
        ("coeliac + vegan", ["coeliac", "animal products"]),
    ],
)
def test_several_things_in_one_are_all_of_them(said, each):
    found = read_avoided(said)
    assert not found.ask
    assert [part.meant for part in found.of] == each


@pytest.mark.parametrize(
    "said",
    ["gluten but dairy is fine", "nuts except almonds", "no pork but beef ok", "nuts and bolts",
     "eats everything", "can eat nuts", "loves chocolate", "egg unless cooked", "only halal meat",
     "vegan or so they say", "gluten and some things"],
)  # fmt: skip
def test_what_allows_something_again_or_is_not_all_known_is_not_taken_for_a_part_of_it(said):
    found = read_avoided(said)
    assert found is None or found.ask


@pytest.mark.parametrize(
    ("said", "asks"),
    [("nuts (and soya)", "soya"), ("dairy (low FODMAP)", "fodmap"), ("gluten (no milk)", "milk"),
     ("nuts (severe)", ""), ("diabetic (type 1)", ""), ("nuts (Idony carries a pen)", ""),
     ("milk (CMPA)", ""), ("G6PD (fava beans)", "")],
)  # fmt: skip
def test_what_stands_in_brackets_is_read_too(said, asks):
    found = read_avoided(said)
    assert bool(found.ask) == bool(asks), found.ask
    assert asks in found.ask


@pytest.mark.parametrize("said", ["kidney diet", "liver diet", "banana diet"])
def test_a_diet_is_no_food_that_is_left_out(said):
    found = read_avoided(said)
    assert found is None or found.ask


@pytest.mark.parametrize("word", ["glutten", "quibberly", "dust", "cats", ""])
def test_a_word_that_means_no_food_is_not_read(word):
    assert read_avoided(word) is None


@pytest.mark.parametrize(
    "said",
    ["nuts", "Nuts", "no nuts", "nut allergy", "allergic to nuts", "nut-free", "any nuts",
     "nuts (severe)", "anything with nuts", "free from nuts", "NUTS", "nut allergies", "noix"],
)  # fmt: skip
def test_what_stands_round_the_word_changes_nothing(said):
    assert read_avoided(said).allergens == read_avoided("nuts").allergens


# illnesses, beliefs and wishes that name no food: taken for one, the rest of what they leave out
# would be let through
ASKED = [
    "kidney disease", "liver disease", "heart disease", "chronic kidney disease", "gout", "statins",
    "warfarin", "alpha-gal", "alpha-gal syndrome", "PKU", "histamine intolerance", "IBS",
    "fructose", "latex", "birch pollen", "Jain", "Rastafarian", "Mormon", "braces", "dentures",
    "breastfeeding", "nursing", "seeds", "pepper", "blue cheese", "dialysis", "eczema", "migraine",
]  # fmt: skip


@pytest.mark.parametrize("word", ASKED)
def test_what_is_no_food_is_asked_and_never_taken_for_one(word):
    found = read_avoided(word)
    assert found is not None
    assert found.ask
    assert (found.foods, found.tags, found.allergens) == ((), frozenset(), frozenset())


# how people say it, by allergy charities' own wording, and the family that is meant
SAID = [
    ("anaphylaxis to brazil nuts", {"brazil-nut"}), ("carries an EpiPen for peanuts", {"peanut"}),
    ("has an EpiPen for peanuts", {"peanut"}), ("severely allergic to sesame", {"sesame"}),
    ("sulphite-sensitive", {"sulphites"}), ("sensitive to mustard", {"mustard"}),
    ("gluten sensitivity", {"wheat", "barley", "rye", "oats"}), ("milk anaphylaxis", {"milk"}),
    ("strict gluten-free", {"wheat", "barley", "rye", "oats"}),
]  # fmt: skip


@pytest.mark.parametrize(("said", "allergens"), SAID)
def test_a_reaction_is_read_as_what_it_is_to(said, allergens):
    found = read_avoided(said)
    assert found is not None
    assert found.allergens == allergens


@pytest.mark.parametrize(("said", "meant"), [
    ("in recovery", "alcohol"), ("alcohol even in cooking", "alcohol"), ("prediabetic", "sugar"),
    ("low sodium", "salt"), ("keeps kosher", "kosher"), ("type 1 diabetic", "sugar"),
])  # fmt: skip
def test_a_way_of_life_is_read_as_what_it_leaves_out(said, meant):
    found = read_avoided(said)
    assert found is not None
    assert found.meant == meant


@pytest.mark.parametrize(
    ("said", "means"),
    [
        ("Tom is allergic to nuts", "nuts"),
        ("Tom has a nut allergy", "nuts"),
        ("Tom: nuts", "nuts"),
        ("nuts for Tom", "nuts"),
        ("nut allergy: Tom", "nuts"),
        ("nuts, Tom has an allergy", "nuts"),
        ("nuts for the children", "nuts"),
        ("Tom & Ann can't have milk", "milk"),
        ("the little one can't have milk", "milk"),
        ("milk for my youngest son", "milk"),
        ("Anna (vegan)", "vegan"),
        ("Anna is vegan", "vegan"),
        ("Granny doesn't drink", "alcohol"),
        ("one of the boys has coeliac disease", "coeliac"),
        ("sugar for diabetics", "sugar"),
        ("Ben hates coconut", "coconut"),
        # what is a food as well as a name, and what allows a thing, is asked about
        ("Olive is allergic to nuts", ""),
        ("Rosemary: eggs", ""),
        ("Tom is fine with nuts", ""),
        ("Tom can have nuts", ""),
        ("Tom loves nuts", ""),
        ("Nuts are no problem", ""),
        ("Tom has no allergies", ""),
        ("Tom eats everything", ""),
    ],
)
def test_who_it_is_changes_nothing_of_what_they_must_not_have(said: str, means: str) -> None:
    found = read_avoided(said)
    if not means:
        assert found is None or found.ask
        return
    plain = read_avoided(means)
    assert found is not None
    assert plain is not None
    assert not found.ask
    assert (found.allergens, found.diet, found.of) == (plain.allergens, plain.diet, plain.of)
    # what the plain word finds, the whole phrase finds
    for food in ("granulated sugar", "dark treacle", "desiccated coconut", "honey"):
        assert plain.said_in(food) != "contains" or found.said_in(food) == "contains"
