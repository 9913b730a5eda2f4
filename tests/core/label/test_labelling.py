"""Labels and cards: contents by weight, honest claims, the right date, the shorter keeping."""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import label_recipe, make_card
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.problems import ProblemsFound
from stillroom.publish.amounts_page import show_amounts

GB = BookSettings()
US = BookSettings(country="US", language="en_US")
MADE = date(2026, 11, 25)


# ruff: noqa: E501 - front matter reads best in one line


def recipe_of(front: str, method: str = "1. Stir.") -> Recipe:
    return read_recipe(
        f"---\ntitle: A thing\n{front}\n---\n\n## Method\n\n{method}\n", "recipes/a.md", "a"
    )


def said(recipe: Recipe, settings: BookSettings = GB) -> str:
    return ", ".join(
        f"{entry.lead}*{entry.text}*{entry.tail}" if entry.emphasised else entry.whole
        for entry in label_recipe(recipe, settings).contents
    )


SHORTBREAD = recipe_of(
    """kind: bake
makes: 24 biscuits
ingredients:
  - 100 g caster sugar
  - 200 g butter
  - 225 g plain flour
  - 75 g ground almonds
  - 1/4 tsp fine salt
  - black pepper, to taste
oven: 160 C
keeps: 3 weeks""",
    "1. Bake.",
)


def test_contents_stand_in_descending_weight() -> None:
    # Reg. (EU) 1169/2011 Art. 18(1); allergens emphasised: Art. 21(1)(b)
    assert said(SHORTBREAD) == (
        "*plain flour (wheat)*, *butter (milk)*, caster sugar, *ground almonds*, fine salt, "
        "black pepper"
    )


def test_spoons_and_counted_things_are_weighed_for_the_order() -> None:
    recipe = recipe_of(
        """kind: dry mix
makes: 1 kg
ingredients:
  - 3 eggs
  - 1 cup honey
  - 100 g sugar
units: us"""
    )
    # a US cup of honey is 339 g (USDA SR 19296), three eggs 150 g (USDA SR 01123)
    assert said(recipe) == "honey, *eggs*, sugar"


@pytest.mark.parametrize(
    "vinegar", ["malt vinegar", "cider vinegar", "black rice vinegar", "raspberry vinegar"]
)
def test_a_measured_liquid_stands_by_about_its_weight(vinegar: str) -> None:
    """Descending weight holds of a vinegar whose density no table has, too."""
    recipe = recipe_of(
        f"kind: preserve\nmakes: 4 jars of 250 ml\ningredients: [15 g garlic, 300 ml {vinegar},"
        " 500 g onions, 1 tsp salt]",
    )
    words = said(recipe)
    assert words.index("onions") < words.index(vinegar) < words.index("garlic")


def test_one_food_on_two_lines_stands_once_by_its_sum() -> None:
    recipe = recipe_of(
        """kind: preserve
makes: 1 kg
ingredients:
  - 300 g carrots
  - 400 g onions
  - 300 g carrots
  - 350 ml cider vinegar
keeps: 1 month in the fridge"""
    )
    assert said(recipe) == "carrots, onions, cider vinegar"


def test_the_same_food_cut_in_two_ways_is_weighed_line_by_line() -> None:
    recipe = recipe_of(
        """kind: preserve
makes: 1 kg
ingredients:
  - 100 g carrots, grated
  - 400 g onions
  - 500 g baby carrots
keeps: 1 month in the fridge"""
    )
    assert said(recipe) == "baby carrots, onions, carrots"


def test_a_compound_is_opened_and_only_its_allergen_emphasised() -> None:
    recipe = recipe_of(
        """kind: dry mix
makes: 1 kg
ingredients:
  - item: dark chocolate drops
    amount: 200 g
    parts: [cocoa mass, sugar, cocoa butter, emulsifier (soya lecithin)]
  - 100 g sugar"""
    )
    # Annex VII E of Reg. (EU) 1169/2011
    assert said(recipe) == (
        "dark chocolate drops (cocoa mass, sugar, cocoa butter, *emulsifier (soya lecithin)*), "
        "sugar"
    )


def test_a_compound_of_the_staples_is_opened_too() -> None:
    recipe = recipe_of("kind: preserve\nmakes: 1 kg\ningredients:\n  - 20 ml worcester-type sauce")
    assert said(recipe) == (
        "worcester-type sauce (*malt vinegar (barley)*, black treacle, granulated sugar, salt, "
        "*anchovy (fish)*, "
        "tamarind, onion, garlic, spices)"
    )


def test_what_is_strained_out_is_infused_not_contained() -> None:
    recipe = recipe_of(
        """kind: infusion
makes: 1 l
ingredients:
  - 1 l brandy
  - 200 g sugar
  - 600 g quinces
  - 20 g almonds"""
    )
    assert said(recipe) == "brandy, sugar, infused with quinces, *almonds*"


def test_a_jelly_holds_the_juice_of_its_fruit_and_no_steam() -> None:
    recipe = recipe_of(
        """kind: preserve
makes: 6 jars of 200 ml
ingredients:
  - {item: blackberries, amount: 1.5 kg, left in: false}
  - 500 ml water
  - 900 g granulated sugar""",
        "1. Boil it to a set.",
    )
    # Annex VII A 1: added water by its weight in the finished food, nothing below 5 %
    assert said(recipe) == "juice of blackberries, granulated sugar"


def test_yeast_is_not_an_infusion() -> None:
    recipe = recipe_of(
        """kind: ferment
makes: 4 l
ingredients:
  - 1.2 kg honey
  - 3.6 l water
  - 5 g wine yeast"""
    )
    assert said(recipe) == "water, honey, wine yeast"


def test_tools_stay_on_the_table() -> None:
    recipe = recipe_of(
        """kind: craft
makes: 3 baubles
materials:
  - 45 g wool roving
  - {item: felting needle, amount: 2, scales: per batch}"""
    )
    assert said(recipe) == "wool roving"


def test_free_from_is_claimed_only_of_what_is_known() -> None:
    assert label_recipe(SHORTBREAD, GB).free_from == ("eggs", "soya", "alcohol")
    unknown = recipe_of("kind: bake\nmakes: 1 kg\ningredients:\n  - 200 g moon dust\n  - 10 g salt")
    label = label_recipe(unknown, GB)
    assert label.free_from == ()
    assert label.unknown == ("moon dust",)
    assert label.diet.vegan == "not known: ask the maker"
    assert label.diet.gluten == "not known: ask the maker"


def test_a_trace_forbids_the_claim() -> None:
    recipe = recipe_of("kind: dry mix\nmakes: 1 kg\ningredients:\n  - 200 g red lentils")
    label = label_recipe(recipe, GB)
    assert "gluten" not in label.free_from
    assert label.may_contain == ("gluten (wheat)",)


def test_peanuts_forbid_free_from_nuts() -> None:
    recipe = recipe_of("kind: bake\nmakes: 1 kg\ningredients:\n  - 200 g peanuts")
    assert "nuts" not in label_recipe(recipe, GB).free_from


def test_a_spirit_is_never_free_from_alcohol() -> None:
    recipe = recipe_of(
        "kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka\n  - 50 g vanilla pods"
    )
    label = label_recipe(recipe, GB)
    assert "alcohol" not in label.free_from
    assert "gluten" in label.free_from
    assert label.strength_text.startswith("About 4")
    assert label.diet.words == ("Vegan.", "Contains alcohol; not halal.")


def test_an_american_label_names_the_american_nine() -> None:
    recipe = recipe_of(
        "kind: bake\nmakes: 1 kg\ningredients:\n  - 200 g rye flour\n  - 9 g mustard seeds\n  - 50 g walnuts"
    )
    assert label_recipe(recipe, US).allergens == ("tree nuts (walnut)",)
    assert label_recipe(recipe, GB).allergens == ("gluten (rye)", "nuts (walnut)", "mustard")


# (front matter, the text of the mark, how it is kept, once opened, source)
KEEPING = [
    (
        "kind: bake\nmakes: 24 biscuits\ningredients:\n  - 200 g flour\noven: 160 C\nkeeps: 3 weeks",
        "Best before 16 December",
        "",
        "the recipe's own, no longer than USDA FoodKeeper's",
    ),
    (
        "kind: bake\nmakes: 24 biscuits\ningredients:\n  - 200 g flour\noven: 160 C\nkeeps: 3 months",
        "Best before 16 December",
        "",
        "USDA FoodKeeper: 2 to 3 weeks (memory)",
    ),
    (
        "kind: bake\nmakes: 24 biscuits\ningredients:\n  - 200 g flour\noven: 160 C\n"
        "keeps: {unopened: 8 weeks, reason: dried to a rusk before it is packed}",
        "Best before 20 January 2027",
        "",
        "a reason outweighs it",
    ),
    (
        "kind: preserve\nmakes: 1 kg\ningredients:\n  - 1 kg plums\n  - 900 g sugar\nkeeps: 3 years",
        "Best before end October 2027",
        "Once opened: 1 month",
        "NCHFP: within a year; jam opened 1 month (memory)",
    ),
    (
        "kind: preserve\nmakes: 500 g\ningredients:\n  - 100 ml lemon juice\n  - 100 g butter\n  - 2 eggs\n"
        "keeps: {unopened: 8 weeks, opened: 1 week, where: in the fridge, reason: we have always done it}",
        "Use by 23 December 2026",
        "Once opened: 1 week",
        "NCHFP: 4 weeks in the fridge, which no reason outweighs (memory)",
    ),
    (
        "kind: infusion\nmakes: 500 ml\ningredients:\n  - 500 ml olive oil\n  - 3 g garlic\n"
        "keeps: {unopened: 4 days, where: in the fridge}",
        "Use by 29 November 2026",
        "Once opened: by the same date",
        "NCHFP 2015: no more than 4 days at 4 C in all, opened or not",
    ),
    (
        "kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka\n  - 6 lemons\nkeeps: 2 years",
        "Best before end October 2028",
        "",
        "Annex X 1(d) exempts it; a date is given all the same, and the finer (E9)",
    ),
    (
        "kind: infused salt\nmakes: 200 g\ningredients:\n  - 200 g salt\n  - 9 g dried rosemary\nkeeps: 1 year",
        "Best before end October 2027",
        "",
        "reference.md 6.3 (iii): infused salt holds a plant, so it is dated",
    ),
]  # fmt: skip


@pytest.mark.parametrize(("front", "mark", "opened", "source"), KEEPING)
def test_the_card_takes_the_shorter_keeping(
    front: str, mark: str, opened: str, source: str
) -> None:
    label = label_recipe(recipe_of(front, "1. Boil or bake it."), GB, MADE)
    assert label.date_mark.text == mark, source
    assert label.once_opened == opened, source


def test_shorter_guidance_is_said_with_its_source() -> None:
    recipe = recipe_of(KEEPING[1][0], "1. Bake.")
    (note,) = label_recipe(recipe, GB, MADE).keeping.notes
    assert note.startswith("3 weeks unopened: USDA FoodKeeper")
    assert note.endswith("(the recipe says 3 months)")


def test_a_strong_drink_says_why_it_needs_no_date() -> None:
    recipe = recipe_of("kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka\nkeeps: 2 years")
    assert "10 % vol or more needs no best-before" in label_recipe(recipe, GB, MADE).date_mark.why


@pytest.mark.parametrize(
    ("country", "front", "said"),
    [
        ("GB", "kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka", True),
        ("IE", "kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka", True),
        ("US", "kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka", False),
        ("GB", "kind: infusion\nmakes: 1 l\ningredients:\n  - 100 ml vodka\n  - 1 l water", False),
        ("GB", "kind: preserve\nmakes: 1 l\ningredients:\n  - 1 l water\n  - 1 kg sugar", False),
    ],
)
def test_the_page_says_that_a_strong_drink_needs_no_date(
    country: str, front: str, said: bool
) -> None:
    facts = show_amounts(
        recipe_of(front, "1. Steep for a month."), BookSettings(country=country)
    ).always
    assert ("Best-before date" in [fact.name for fact in facts]) is said


def test_a_weak_mead_is_dated_without_excuse() -> None:
    # Commission Q&A: mead is of honey, not fruit, so only the 10 % line counts (reference.md 6.3)
    recipe = recipe_of(
        "kind: ferment\nmakes: 4 l\ningredients:\n  - 600 g honey\n  - 4 l water\n  - 5 g yeast\nkeeps: 1 year"
    )
    assert label_recipe(recipe, GB, MADE).date_mark.why.startswith("It keeps")


def test_a_craft_has_no_date() -> None:
    recipe = recipe_of(
        "kind: craft\nmakes: 4 wraps\nmaterials:\n  - 48 g beeswax\nkeeps: {unopened: 2 years, opened: 1 year}"
    )
    label = label_recipe(recipe, GB, MADE)
    assert label.date_mark.term == "none"
    assert label.once_opened == "In use: 1 year"


_SOUP = "kind: dry mix\nmakes: 2 jars\ningredients:\n  - 300 g {}\n  - 200 g rice"


@pytest.mark.parametrize(
    ("front", "told"),
    [
        (_SOUP.format("galactic moon dust"), True),  # no book knows how long that keeps
        (_SOUP.format("galactic moon dust") + "\nkeeps: 3 months", False),
        (_SOUP.format("red lentils"), False),
        ("kind: craft\nmakes: 4 wraps\nmaterials:\n  - 48 g beeswax", False),
        ("kind: infusion\nmakes: 1 l\ningredients:\n  - 1 l vodka", False),
    ],
)
def test_a_card_says_that_nobody_knows_how_long_a_food_keeps(front: str, told: bool) -> None:
    # a card without a word of it is taken for one of a thing that keeps
    for made_on in (MADE, None):
        card = make_card(recipe_of(front), GB, made_on)
        assert (card.date_mark.text == "How long it keeps is not known") is told
        assert not (told and card.date_mark.iso)


def test_a_card_bears_what_was_typed_on_it_and_no_more() -> None:
    card = make_card(SHORTBREAD, GB, MADE, to="Isla", sender="us", message="With love", url="x/")
    assert (card.to, card.sender, card.message, card.url) == ("Isla", "us", "With love", "x/")
    assert card.made_on_text == "Made on 25 November 2026"
    assert card.allergens == ("gluten (wheat)", "milk", "nuts (almond)")
    assert card.kitchen


GARLIC_HONEY = "kind: infusion\nmakes: 2 jars of 250 ml\ningredients: [3 heads garlic, 400 g honey, 300 ml cider vinegar]"


@pytest.mark.parametrize(
    ("front", "keep"),
    [
        (GARLIC_HONEY, "In the fridge."),
        (f"{GARLIC_HONEY}\ncard: {{keep: On the shelf.}}", "In the fridge."),
        (f"{GARLIC_HONEY}\ncard: {{keep: In the fridge for a week.}}", "In the fridge for a week."),
        (GARLIC_HONEY.replace("3 heads garlic", "2 vanilla pods"), ""),
    ],
)
def test_a_card_does_not_name_two_places(front: str, keep: str) -> None:
    """A danger that wants the fridge outweighs "at room temperature" beside it."""
    card = make_card(recipe_of(front), GB)
    colder = "fridge" in " ".join(card.cautions)
    assert colder == ("garlic" in front)
    assert card.keep == keep if colder else "fridge" not in card.keep


def test_a_card_leaves_out_what_its_allergen_line_says() -> None:
    card = make_card(SHORTBREAD, GB, MADE)
    assert not any("Contains gluten" in caution for caution in card.cautions)


def test_a_card_says_alcohol_and_honey_to_whoever_is_given_it() -> None:
    recipe = recipe_of(
        "kind: infusion\nmakes: 1 l\ningredients:\n  - 700 ml vodka\n  - 300 g honey"
    )
    cautions = " ".join(make_card(recipe, GB, MADE).cautions)
    assert "Not for children or in pregnancy" in cautions
    assert "under one year" in cautions


def test_a_noun_that_belongs_to_the_name_is_kept() -> None:
    recipe = recipe_of("kind: dry mix\nmakes: 50 g\ningredients:\n  - 4 star anise\n  - 20 g salt")
    assert said(recipe) == "salt, star anise"


def test_what_dissolves_is_never_infused() -> None:
    recipe = recipe_of(
        "kind: infusion\nmakes: 1 l\ningredients:\n  - 300 g sugar\n  - 350 ml brandy\n  - 10 egg yolks"
    )
    assert said(recipe) == "brandy, sugar, *egg yolks*"


def test_pickled_things_stay_in_their_jar() -> None:
    recipe = recipe_of("kind: ferment\nmakes: 1 kg\ningredients:\n  - 1 kg cabbage\n  - 25 g salt")
    assert said(recipe) == "cabbage, salt"


def test_an_american_label_says_soy() -> None:
    recipe = recipe_of("kind: bake\nmakes: 1 kg\ningredients:\n  - 200 g dark chocolate")
    assert label_recipe(recipe, US).allergens == ("soy",)
    assert label_recipe(recipe, GB).allergens == ("soya",)


@pytest.mark.parametrize(("written", "shown"), [("200 g", "Net 200 g"), ("0.5 l", "Net 0.5 l")])
def test_the_net_quantity_stands_on_the_card_where_it_is_wanted(written: str, shown: str) -> None:
    facts = "kind: dry mix\nmakes: 400 g\ningredients:\n  - 400 g caster sugar"
    assert make_card(recipe_of(facts), GB, MADE).strength_text == ""
    wanted = recipe_of(f"{facts}\ncard:\n  net: {written}")
    assert make_card(wanted, GB, MADE).strength_text == shown


@pytest.mark.parametrize("written", ["2 handfuls", "a bit", "12"])
def test_a_net_quantity_is_a_weight_or_a_volume(written: str) -> None:
    facts = "kind: dry mix\nmakes: 400 g\ningredients:\n  - 400 g caster sugar"
    with pytest.raises(ProblemsFound) as caught:
        recipe_of(f"{facts}\ncard:\n  net: {written}")
    assert [problem.line for problem in caught.value.problems] == [8]


def test_water_cold_or_hot_is_one_water_and_what_a_cook_adds_to_a_name_is_no_name() -> None:
    recipe = recipe_of(
        """kind: infusion
makes: 1 l
ingredients:
  - 500 ml cold water
  - 300 ml boiling water
  - 100 g sugar
  - 1 tsp citric acid, if you like
  - a little milk for brushing""",
        "1. Stir.",
    )
    assert said(recipe) == "water, sugar, citric acid, *milk*"


def test_packed_sugar_is_sugar_and_extra_virgin_oil_no_extra_one() -> None:
    recipe = recipe_of(
        """kind: infusion
makes: 1 l
ingredients:
  - 500 ml extra virgin olive oil
  - 1 cup firmly packed brown sugar""",
        "1. Stir.",
    )
    assert said(recipe) == "extra virgin olive oil, brown sugar"


def test_water_keeps_its_name_in_another_language() -> None:
    recipe = recipe_of(
        "kind: infusion\nmakes: 1 l\ningredients:\n  - 500 ml Wasser\n  - 100 g Zucker"
    )
    assert said(recipe) == "Wasser, Zucker"


def test_a_finished_soap_holds_no_lye() -> None:
    # the chart of saponification values: 135 g of lye to a kg of olive oil are used up
    recipe = recipe_of(
        """kind: craft
makes: 10 bars
ingredients:
  - 1 kg olive oil
  - 300 g water
  - 125 g sodium hydroxide""",
        "1. Stir the lye into the water. Cure for six weeks.",
    )
    assert said(recipe) == "olive oil, water, the fats turned into soap with sodium hydroxide"


def test_lye_without_fat_is_listed() -> None:
    recipe = recipe_of(
        "kind: craft\nmakes: 1 l\ningredients:\n  - 1 l water\n  - 50 g sodium hydroxide"
    )
    assert said(recipe) == "water, sodium hydroxide"


def test_the_name_before_the_bracket_is_no_allergen() -> None:
    recipe = recipe_of(
        """kind: confection
makes: 1 kg
ingredients:
  - item: marzipan
    amount: 200 g
    parts: [almonds, sugar]
  - 100 g sugar"""
    )
    assert said(recipe) == "marzipan (*almonds*, sugar), sugar"
