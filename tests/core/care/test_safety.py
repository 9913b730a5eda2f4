"""The safety box against what the sources ask, written down in golden/safety/cases.yml first."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from care_cases import ask
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety, check_safety
from stillroom.core.care.safety_table import all_rules, read_rule
from stillroom.core.reading.loading import load_recipe, read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.plain_yaml import read_plain

CASES = read_plain((Path(__file__).parents[2] / "golden/safety/cases.yml").read_text("utf-8"))
GB = BookSettings()
_NOT_OF_THE_RECIPE = ("name", "source", "expect", "refuse", "absent", "method")


def recipe_of(case: dict[str, Any]) -> Recipe:
    front = {"title": "Something to give", "makes": "1 kg"}
    front |= {key: value for key, value in case.items() if key not in _NOT_OF_THE_RECIPE}
    steps = "\n".join(f"{place}. {step}" for place, step in enumerate(case["method"], 1))
    text = f"---\n{yaml.safe_dump(front)}---\n\n## Method\n\n{steps}\n"
    return read_recipe(text, "recipes/case.md", "case")


@pytest.mark.parametrize("case", CASES, ids=[case["name"] for case in CASES])
def test_a_recipe_is_warned_of_as_the_source_asks(case: dict[str, Any]) -> None:
    box = assess_safety(recipe_of(case), GB)
    said = {caution.rule for caution in box.cautions}
    assert set(case.get("expect", ())) <= said, case["source"]
    assert {caution.rule for caution in box.refusals} == set(case["refuse"]), case["source"]
    assert not said & set(case.get("absent", ())), case["source"]
    for caution in (*box.cautions, *box.refusals):
        assert caution.because
        assert "{" not in caution.to_maker + caution.to_receiver + caution.because


def test_every_rule_of_the_table_has_a_case() -> None:
    tried = {rule for case in CASES for rule in (*case.get("expect", ()), *case["refuse"])}
    assert set(all_rules()) - tried == set()


def test_every_word_of_the_cases_is_a_rule() -> None:
    words = {
        rule
        for case in CASES
        for key in ("expect", "refuse", "absent")
        for rule in case.get(key, ())
    }
    assert words - set(all_rules()) == set()


CURD = {
    "kind": "preserve",
    "ingredients": ["150 ml lemon juice", "100 g butter", "3 eggs", "175 g caster sugar"],
    "method": ["Stir over simmering water."],
    "keeps": "6 months",
}
OIL = {
    "kind": "infusion",
    "ingredients": ["500 ml olive oil", "50 g garlic"],
    "method": ["Put the garlic into the oil."],
    "keeps": "3 months",
}
WHY = "A laboratory measured every batch and the report hangs in the kitchen."


def overridden(case: dict[str, Any], rule: str) -> Recipe:
    return recipe_of(case | {"overrides": [{"rule": rule, "why": WHY}]})


def test_a_written_why_sets_a_rule_aside_and_is_shown_in_full() -> None:
    box = assess_safety(overridden(CURD, "egg-at-room"), GB)
    assert box.refusals == ()
    (aside,) = box.overrides
    assert aside.why == WHY
    assert aside.caution.rule == "egg-at-room"
    assert aside.caution.source
    assert check_safety(overridden(CURD, "egg-at-room"), GB) == ()


def test_a_caution_set_aside_stands_only_among_the_overrides() -> None:
    case = {"kind": "infusion", "ingredients": ["1 l vodka"], "method": ["Pour."]}
    box = assess_safety(overridden(case, "posting-liquid"), GB)
    assert [aside.caution.rule for aside in box.overrides] == ["posting-liquid"]
    assert "posting-liquid" not in {caution.rule for caution in box.cautions}


GRAVEST = sorted(rule.name for rule in all_rules().values() if not rule.may_be_overridden)


def test_the_gravest_are_all_refusals() -> None:
    assert set(GRAVEST) == {
        "home-distilling", "industrial-alcohol", "low-acid-in-oil", "low-acid-sealed",
        "vegetables-in-honey", "honey-left-warm", "oil-left-warm", "cure-beyond-any-law",
        "ph-above-limit", "honey-for-infants", "toxic-plant", "toxic-decoration",
        "cyanide-kernels", "deadly-craft", "pet-poison", "animal-food-sealed", "cake-in-jar",
        "alkali-in-food", "infant-food", "caffeine-powder", "poppy-tea", "claim-contradicted",
            "animal-food-fermented",
    }  # fmt: skip
    assert {all_rules()[name].gravity for name in GRAVEST} == {"refuse"}


def test_no_reason_sets_the_gravest_aside() -> None:
    recipe = overridden(OIL, "low-acid-in-oil")
    box = assess_safety(recipe, GB)
    assert [refusal.rule for refusal in box.refusals] == ["low-acid-in-oil"]
    assert box.overrides == ()
    messages = [str(problem) for problem in check_safety(recipe, GB)]
    assert any(
        '"low-acid-in-oil" cannot be set aside. Take it out from under' in m for m in messages
    )


def test_an_override_of_no_rule_names_the_nearest() -> None:
    case = {"kind": "infusion", "ingredients": ["1 l vodka"], "method": ["Pour."]}
    (problem,) = check_safety(overridden(case, "spirit-vapor"), GB)
    assert problem.what == '"spirit-vapor" is not a safety rule.'
    assert problem.mend == 'Did you mean "spirit-vapour"?'
    assert problem.line > 1


def test_a_refusal_names_the_rule_its_source_and_how_to_mend_it() -> None:
    (problem,) = check_safety(recipe_of(OIL), GB)
    assert str(problem).startswith("recipes/case.md:")
    source = "NCHFP, Freezing Garlic-in-Oil, reviewed 16 February 2015"
    assert f"(rule low-acid-in-oil; {source}" in problem.what
    assert "garlic in oil, kept 3 months at room temperature" in problem.what
    assert "4 °C" in problem.mend
    assert "Nothing sets this rule aside." in problem.mend


def test_a_refusal_that_may_be_set_aside_says_how() -> None:
    (problem,) = check_safety(recipe_of(CURD), GB)
    assert 'with "rule: egg-at-room" and why.' in problem.mend


def test_an_unknown_ingredient_is_no_problem_of_the_book() -> None:
    case = {"kind": "bake", "ingredients": ["200 g flour", "50 g moon dust"], "method": ["Bake."]}
    assert check_safety(recipe_of(case), GB) == ()


JELLY = {
    "kind": "preserve",
    "ingredients": ["1 kg blackberries", "60 ml lemon juice", "900 g sugar"],
    "method": ["Boil the juice with the sugar to a set.", "Fill hot jars."],
    "keeps": "1 year",
}


@pytest.mark.parametrize(
    ("altitude_m", "sterilise", "process"),
    # USDA Complete Guide to Home Canning (AIB 539), Guides 1 and 7
    [(20, "10 minutes at 20 m", "for 5 minutes"), (1609, "15 minutes at 1609 m", "for 10 minutes")],
)
def test_the_altitude_of_the_book_sets_the_minutes(
    altitude_m: int, sterilise: str, process: str
) -> None:
    box = assess_safety(recipe_of(JELLY), BookSettings(altitude_m=altitude_m))
    said = {caution.rule: caution.to_maker for caution in box.cautions}
    assert sterilise in said["sterilise-jars"]
    assert process in said["process-jars"]


@pytest.mark.parametrize(
    ("country", "authority"),
    [
        ("GB", "Food Standards Scotland"),
        ("US", "National Center for Home Food Preservation"),
        ("IE", "Food Safety Authority of Ireland"),
        ("NO", "your country's food-safety authority"),
    ],
)
def test_every_box_defers_to_the_books_country(country: str, authority: str) -> None:
    deference = assess_safety(recipe_of(JELLY), BookSettings(country=country)).deference
    assert authority in deference
    assert "local food-safety guidance" in deference
    assert "selling is another matter" in deference


def test_a_craft_defers_to_product_safety() -> None:
    case = {"kind": "craft", "ingredients": ["50 g beeswax"], "method": ["Melt."]}
    assert "Office for Product Safety and Standards" in assess_safety(recipe_of(case), GB).deference


def test_no_flash_point_is_printed_to_the_degree() -> None:
    for rule in ("strong-spirit", "spirit-vapour", "spirit-heated"):
        assert "°C" not in all_rules()[rule].to_maker  # reference.md 4.2: the tables disagree


GOOD_ROW = {
    "id": "a-rule",
    "gravity": "caution",
    "title": "Something",
    "when": {"kind": ["bake"]},
    "because": "it is so",
    "to_maker": "Mind it.",
    "source": "a source",
    "read": "memory",
    "checked": "2026-11-25",
}


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"when": {"knid": ["bake"]}}, 'a-rule: "knid". Did you mean "kind"'),
        ({"when": {}}, "does not say its when"),
        ({"when": {"none": [{"tugs": ["oil"]}]}}, 'a-rule: "tugs"'),
        ({"when": {"kind": ["bake"], "stays": True}}, "without what it narrows"),
        ({"gravity": "terrible"}, "none of the words allowed"),
        ({"read": "rumour"}, "none of the words allowed"),
        ({"source": ""}, "does not say its source"),
        ({"to_maker": ""}, "says nothing to anybody"),
        ({"sorce": "x"}, '"sorce". Did you mean "source"'),
    ],
)
def test_a_doubtful_rule_fails_loudly(change: dict[str, Any], message: str) -> None:
    with pytest.raises(ValueError, match="hazards") as failed:
        read_rule(GOOD_ROW | change)
    assert message in str(failed.value)


def test_every_rule_says_where_it_is_from() -> None:
    for rule in all_rules().values():
        assert rule.source
        assert "2026-11-25" <= rule.checked <= "2027-12-31", rule.name


def test_what_was_not_looked_up_is_said_to_be_so() -> None:
    spiced = JELLY | {"ingredients": [*JELLY["ingredients"], "10 g meadowsweet"]}
    sources = {c.rule: c.source for c in assess_safety(recipe_of(spiced), GB).cautions}
    assert "from memory" in sources["salicylate"]
    assert "from memory" not in sources["sterilise-jars"]
    cherries = {"kind": "infusion", "ingredients": ["1 l vodka", "500 g cherries"]}
    box = assess_safety(recipe_of(cherries | {"method": ["Steep."]}), GB)
    told = {caution.rule: caution.source for caution in box.cautions}
    assert told["stone-fruit"] == "common practice, no published source"


BOOK = sorted((Path(__file__).parents[3] / "recipes").glob("*.md"))


@pytest.mark.parametrize("path", BOOK, ids=lambda path: path.stem)
def test_the_demo_book_is_warned_of_and_not_shouted_at(path: Path) -> None:
    recipe = load_recipe(path)
    box = assess_safety(recipe, BookSettings(altitude_m=20))
    assert box.refusals == ()
    assert unknown_foods([recipe]) == ()
    assert len(box.cautions) <= 7, "more than a reader will read"
    assert len([c for c in box.cautions if c.gravity == "danger"]) <= 3


# What a food scientist looks for first in each of these.
EXPECTED_OF_THE_BOOK = {
    "quince-ratafia": {"spirit-vapour", "alcohol", "allergens"},
    "lemon-verbena-cut-spirit": {"strong-spirit", "alcohol"},
    "coffee-cacao-extract": {"spirit-vapour", "alcohol", "caffeine"},
    "double-vanilla-extract": {"spirit-vapour", "alcohol"},
    # its filled jars are boiled for ten minutes, and need not be sterile before
    "quince-chutney": {"keep-the-acid", "process-pickle", "hot-glass"},
    "bramble-jelly": {"boiling-sugar", "keep-the-sugar", "process-jars", "sterilise-jars"},
    "sea-buckthorn-curd": {"curd-cold", "allergens"},
    "heather-mead": {"alcohol", "honey-infants", "bottle-pressure"},
    "salted-honey-toffee": {"boiling-sugar", "honey-infants", "hard-sweets"},
    "almond-shortbread": {"allergens", "choking"},
    "cocoa-marshmallow-mix": {"allergens", "choking"},
    "beeswax-wraps": {"hot-wax", "food-wrap", "skin-sensitiser"},
    "felted-bauble": {"needles", "needle-tips", "not-a-toy", "cords"},
    "dried-orange-garland": {"not-food", "dry-decoration", "cords"},
}


@pytest.mark.parametrize("slug", sorted(EXPECTED_OF_THE_BOOK))
def test_the_demo_book_misses_nothing_plain(slug: str) -> None:
    recipe = load_recipe(BOOK[0].parent / f"{slug}.md")
    said = {caution.rule for caution in assess_safety(recipe, GB).cautions}
    assert said >= EXPECTED_OF_THE_BOOK[slug]


def test_an_american_book_hears_its_altitude_in_feet() -> None:
    denver = BookSettings(country="US", units="us", altitude_m=1609)
    said = {
        caution.rule: caution.to_maker
        for caution in assess_safety(recipe_of(JELLY), denver).cautions
    }
    assert "15 minutes at 5,279 ft" in said["sterilise-jars"]


def test_what_is_not_known_is_said_and_never_called_harmless() -> None:
    odd = recipe_of({"kind": "bake", "ingredients": ["20 g drubble"], "method": ["Bake."]})
    (said,) = assess_safety(odd, GB).unchecked
    assert said == "“drubble” is not known: its allergens and dangers could not be checked."
    plain = recipe_of({"kind": "bake", "ingredients": ["20 g butter"], "method": ["Bake."]})
    assert assess_safety(plain, GB).unchecked == ()


def test_no_source_sends_a_cook_to_a_data_file() -> None:
    texts = [rule.source for rule in all_rules().values()]
    assert [text for text in texts if ".yml" in text] == []


# A chutney of 1 kg of apples with 600 ml of vinegar and one thing more, counted or by its length:
# the vinegar is enough for the heaviest of it (care/heaviest.yml), or nobody can say. A quarter by
# weight: tests/golden/care/RULES.md, 7.
@pytest.mark.parametrize(
    ("line", "refused"),
    [
        ("2.5 cm fresh root ginger", False),
        ("a thumb of ginger", False),
        ("3 cm Ingwer", False),
        ("1 head of celery", False),
        ("1 bulb of garlic", False),
        ("2 courgettes", False),
        ("1 cauliflower", False),
        ("2 aubergines", False),
        ("1 swede", False),
        ("6 shallots", False),
        ("1 marrow", True),
        ("1 pumpkin", True),
        ("4 cauliflowers", True),
        ("1 bag of carrots", True),
        ("10 aubergines", True),
    ],
)
def test_vinegar_is_enough_for_the_heaviest_of_what_is_counted(line: str, refused: bool) -> None:
    written = {
        "title": "Apple chutney",
        "kind": "chutney",
        "ingredients": ["1 kg cooking apples", "600 ml malt vinegar", "400 g sugar", line],
        "method": ["Boil for two hours.", "Spoon into hot sterilised jars and seal."],
    }
    said = ask(written, BookSettings())
    assert ("low-acid-sealed" in said.refusals) is refused


def test_where_no_rule_speaks_nothing_is_promised() -> None:
    quiet = recipe_of({"kind": "infused salt", "ingredients": ["500 g salt"], "method": ["Fill."]})
    said = assess_safety(quiet, GB).silence
    assert said.startswith("Each line of the list is known")
    assert not re.search(r"(?i)\bsafe\b|\bhazards?\b|\bharmless\b", said)
    unknown = {"kind": "infused salt", "ingredients": ["500 g salt", "10 g frobnica"]}
    box = assess_safety(recipe_of(unknown | {"method": ["Fill."]}), GB)
    assert (bool(box.unchecked), box.silence) == (True, "")


def test_a_rule_that_is_set_aside_is_no_silence() -> None:
    damp = {"kind": "infused salt", "ingredients": ["500 g salt", "4 sprigs fresh rosemary"]}
    why = [{"rule": "damp-mix", "why": "It goes into the freezer the same hour."}]
    box = assess_safety(recipe_of(damp | {"method": ["Blend."], "overrides": why}), GB)
    assert (len(box.overrides), box.cautions, box.silence) == (1, (), "")
