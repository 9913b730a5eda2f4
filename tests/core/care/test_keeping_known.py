"""How long a thing keeps where the recipe does not say: its method's word, the book's, or nobody's.

The sentences are of the form in which guides and cookery books say it, each fixed with what it must
mean and with what it must not.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.keeping import keeping_words
from stillroom.core.label.labelling import label_recipe
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import parse_span
from stillroom.core.when.timeline import plan_forward
from stillroom.core.words.plain_yaml import read_plain

GB = BookSettings()


def make(
    kind: str, ingredients: list[str], *steps: str, title: str = "Something", **more: str
) -> Recipe:
    """Read a recipe of a few words, as the cases of care are read."""
    facts = {"title": title, "kind": kind, "ingredients": ingredients, "method": list(steps)}
    return recipe_of(facts | more)


def curd(last: str) -> Recipe:
    return make("preserve", ["500 g cream cheese", "20 g chives"], "Beat together.", last)


@pytest.mark.parametrize(
    ("last", "span", "place"),
    [
        ("Keeps for 5 days in the fridge.", "5 days", "fridge"),
        ("Cover and store in the refrigerator for up to 1 week.", "1 week", "fridge"),
        ("It will keep in the fridge for 3 days.", "3 days", "fridge"),
        ("Refrigerate and use within 4 days.", "4 days", "fridge"),
        ("Keep it in the fridge. Eat within three days.", "3 days", "fridge"),
        ("Freeze for up to 3 months.", "3 months", "freezer"),
        ("Store in an airtight tin for up to 2 weeks.", "2 weeks", "room"),
    ],
)
def test_the_last_step_says_how_long_and_where(last: str, span: str, place: str) -> None:
    recipe = curd(last)
    assert (str(recipe.keeps.unopened), recipe.keeps.by) == (span, "method")
    assert kept_at(recipe) == place


# forms in which recipes of public repositories say it, gathered before the reader was changed
@pytest.mark.parametrize(
    ("last", "span"),
    [
        ("Cool and store in jars. Keeps 1 week.", "1 week"),
        (
            "Cookies are best eaten fresh. Store in an airtight container for up to 3 days.",
            "3 days",
        ),
        ("Store in an airtight container for up to several days.", "3 days"),
        ("These delicate sweets stay fresh for several days.", "3 days"),
        ("Will keep in the fridge for a couple of days if need be.", "2 days"),
        ("Line them up in a jar and they will keep all week.", "1 week"),
        ("They have a shelf life of about 3-5 days.", "3-5 days"),
        ("They won't keep longer than a week.", "1 week"),
        ("Biscuits keep 2 weeks in a tin.", "2 weeks"),
        ("They will last a week or so.", "1 week"),
        ("Store in an airtight tin for 2 weeks.", "2 weeks"),
        ("Keep in the fridge for 1 week.", "1 week"),
        ("Keep in the fridge for 2 days before baking.", ""),
        ("Cool completely and store in an airtight container.", ""),
        ("Once opened, will keep in the fridge for two weeks.", ""),
        ("It keeps warm for 20 minutes in the oven.", ""),
        ("Keep the dough in the fridge for 2 days before baking.", ""),
        ("Keeps for ages.", ""),
    ],
)
def test_a_biscuit_keeps_as_long_as_its_method_says(last: str, span: str) -> None:
    flour = ["200 g plain flour", "100 g butter"]
    recipe = make("bake", flour, "Bake for 12 minutes.", last, title="Biscuits")
    assert (str(recipe.keeps.unopened), recipe.keeps.by) == (
        (span, "method") if span else ("3 weeks", "book")
    )


@pytest.mark.parametrize(
    ("words", "span"),
    [
        ({"summary": "They keep 10 days."}, "10 days"),
        ({"card": {"keep": "In a tin they keep for 2 weeks."}}, "2 weeks"),
        ({"method": ["They keep a week in a tin.", "Bake for 12 minutes."]}, "1 week"),
        ({"method": ["The dough will keep 2 days.", "Bake for 12 minutes."]}, ""),
        ({"method": ["Bake.", "In der Blechdose halten sie 2 Wochen."]}, "2 weeks"),
        ({"summary": "They keep for 2 months."}, ""),  # longer than the book's own figure
    ],
)
def test_other_words_of_a_recipe_shorten_what_the_book_says(
    words: dict[str, Any], span: str
) -> None:
    facts = {"title": "Biscuits", "kind": "bake", "method": ["Bake for 12 minutes."]}
    listed = {"ingredients": ["200 g plain flour", "100 g butter"]}
    recipe = recipe_of(facts | listed | words)
    assert str(recipe.keeps.unopened) == (span or "3 weeks")


def test_what_still_stands_in_its_jar_is_not_taken_for_kept() -> None:
    steep = "Store in a sealed bottle in a dark place for 3 months."
    recipe = make("infusion", ["700 ml vodka, 40% vol", "2 vanilla pods"], "Mix.", steep)
    assert recipe.keeps.by == "book"
    lemon = ["4 lemons", "200 g sugar", "100 g butter", "3 eggs"]
    put_up = make("preserve", lemon, "Stir to 77 C.", "Keep in the fridge for 1 week.")
    assert (str(put_up.keeps.unopened), put_up.keeps.by) == ("1 week", "method")
    onions = ["1 kg onions", "1 l malt vinegar"]
    standing = make("preserve", onions, "Pack.", "Store in sealed jars for 4 weeks.")
    assert str(standing.keeps.unopened) != "4 weeks"


@pytest.mark.parametrize(
    "last",
    [
        "Leave in the fridge for 2 hours to set.",
        "Chill overnight in the refrigerator.",
        "Once opened, keep in the fridge and eat within 2 weeks.",
        "Freeze until solid, then cut into cubes.",
        "Keep stirring for 5 minutes.",
    ],
)
def test_setting_it_is_not_putting_it_away(last: str) -> None:
    recipe = curd(last)
    assert recipe.keeps.by != "method"
    assert kept_at(recipe) == "room"


def test_steeping_is_no_keeping() -> None:
    recipe = make(
        "infusion",
        ["700 ml vodka, 40% vol", "100 g raspberries"],
        "Keep in a dark place for three months, shaking every week.",
    )
    assert (str(recipe.keeps.unopened), recipe.keeps.by) == ("2 years", "book")


def test_what_the_line_says_goes_before_the_method() -> None:
    steps = ("Beat.", "Keeps for 5 days in the fridge.")
    recipe = make("preserve", ["500 g cream cheese"], *steps, keeps="2 days in the fridge")
    assert (str(recipe.keeps.unopened), recipe.keeps.by) == ("2 days", "recipe")


def test_the_book_gives_its_own_figure_and_says_whose_it_is() -> None:
    recipe = make("bake", ["200 g plain flour", "100 g butter"], "Bake.", title="Ginger biscuits")
    label = label_recipe(recipe, GB, date(2026, 11, 28))
    assert str(recipe.keeps.unopened) == "3 weeks"
    assert label.date_mark.iso == "2026-12-19"
    assert "The recipe does not say; this is USDA FoodKeeper" in label.date_mark.why
    assert recipe.keeps.words == "3 weeks (the book’s own figure)"


def test_what_is_planned_ends_on_the_day_of_the_card() -> None:
    flour = ["200 g plain flour", "100 g butter"]
    recipe = make("bake", flour, "Bake.", title="Ginger biscuits", keeps="4 weeks")
    made = date(2026, 11, 28)
    assert label_recipe(recipe, GB, made).date_mark.iso == "2026-12-19"
    assert str(recipe.lasts) == "3 weeks"
    assert keeping_words(recipe).startswith("4 weeks; card and dates take 3 weeks")
    assert plan_forward(recipe, made).keep_until == date(2026, 12, 19)
    shorter = make("bake", flour, "Bake.", title="Ginger biscuits", keeps="2 weeks")
    assert (str(shorter.lasts), keeping_words(shorter)) == ("2 weeks", "2 weeks")


@pytest.mark.parametrize(
    ("opened", "words"),
    [
        ("6 weeks", "1 year, 6 weeks once opened; the card takes 1 month once opened"),
        ("3 weeks", "1 year, 3 weeks once opened"),
    ],
)
def test_what_the_page_says_of_one_opened_is_what_the_card_says(opened: str, words: str) -> None:
    jam = make("preserve", ["1 kg damsons", "1 kg granulated sugar"], "Boil.", title="Damson jam")
    kept = replace(jam.keeps, unopened=parse_span("1 year"), opened=parse_span(opened), by="recipe")
    jam = jam.model_copy(update={"keeps": kept})
    assert keeping_words(jam).removesuffix(", by published guidance") == words
    shorter = "1 month" if "1 month" in words else opened
    assert str(label_recipe(jam, GB).keeping.opened) == shorter


@pytest.mark.parametrize(
    ("kind", "ingredients"),
    [
        ("bake", ["200 g plain flour", "100 g zorblatt"]),
        ("craft", ["100 g beeswax"]),
        ("infusion", ["700 ml gin, 40% vol", "400 g sloes", "300 g sugar", "500 ml water"]),
    ],
)
def test_what_is_not_known_keeps_for_no_known_time(kind: str, ingredients: list[str]) -> None:
    recipe = make(kind, ingredients, "Make it.", title="Biscuits")
    assert recipe.keeps.unopened is None
    assert label_recipe(recipe, GB, date(2026, 11, 28)).date_mark.iso == ""


def test_a_place_that_only_the_book_named_makes_nothing_safe() -> None:
    recipe = make("infusion", ["200 ml olive oil", "6 cloves garlic"], "Mix.", title="Garlic oil")
    assert [one.rule for one in assess_safety(recipe, GB).refusals] == ["low-acid-in-oil"]
    ganache = make("confection", ["200 g dark chocolate", "150 ml double cream"], "Heat and stir.")
    assert ganache.keeps.by == "book"
    assert kept_at(ganache) == "room"


@pytest.mark.parametrize(
    ("keeps", "told", "refused"),
    [
        ("2 weeks in the fridge", False, False),
        ("15 days in the fridge", False, False),
        ("3 weeks in the fridge", True, False),
        ("1 month in the fridge", True, False),
        ("5 weeks in the fridge", False, True),
        ("2 to 6 weeks in the fridge", False, True),
        ("6 months in the freezer", False, False),
    ],
)
def test_a_range_counts_at_its_long_end_and_a_month_is_four_weeks(
    keeps: str, told: bool, refused: bool
) -> None:
    lime = ["150 ml lime juice", "100 g butter", "3 eggs", "175 g sugar"]
    recipe = make("preserve", lime, "Stir over simmering water to 77 C.", "Cool.", keeps=keeps)
    box = assess_safety(recipe, GB)
    assert ("keeps-beyond-default" in {one.rule for one in box.cautions}) is told
    assert ("keeps-too-long" in {one.rule for one in box.refusals}) is refused


PUBLISHED = read_plain((Path(__file__).parent / "published_keeping.yml").read_text("utf-8"))


def published(row: dict[str, Any], **more: Any) -> Recipe:
    facts = {"title": row["name"].capitalize(), "kind": row["kind"], "method": row["method"]}
    return recipe_of(facts | {"ingredients": row["ingredients"]} | more)


@pytest.mark.parametrize("row", PUBLISHED, ids=[row["name"] for row in PUBLISHED])
def test_a_claim_as_long_as_the_published_is_not_refused(row: dict[str, Any]) -> None:
    recipe = published(row, keeps=f"{row['published']} {row['where']}")
    assert recipe.keeps.unopened is not None
    assert not assess_safety(recipe, GB).refusals


@pytest.mark.parametrize("row", PUBLISHED, ids=[row["name"] for row in PUBLISHED])
def test_the_book_says_no_longer_than_the_published(row: dict[str, Any]) -> None:
    keeps = published(row, method=[*row["method"], f"Keep {row['where']}."]).keeps
    longest = parse_span(str(row["published"])).minutes()
    # twelve months and a year are the same to a cook
    assert keeps.unopened is None or keeps.unopened.minutes() * 100 <= longest * 102


@pytest.mark.parametrize(
    "name", ["gravlax", "hot-smoked trout", "hummus", "potted beef", "vegetable soup", "quark"]
)
def test_twice_the_published_is_refused_where_it_is_a_danger(name: str) -> None:
    row = next(row for row in PUBLISHED if row["name"] == name)
    recipe = published(row, keeps="2 months in the fridge")
    assert "keeps-too-long" in {one.rule for one in assess_safety(recipe, GB).refusals}


@pytest.mark.parametrize(
    ("last", "how"),
    [
        ("Keep in the fridge for 1 week.", "In the fridge."),
        ("Store in the freezer.", "In the freezer."),
        ("Chill for an hour in the fridge, then keep in a cool, dark place.", "Cool and dark"),
        ("Pot.", "Cool and dark"),
    ],
)
def test_the_card_sends_to_the_fridge_what_the_method_keeps_there(last: str, how: str) -> None:
    plums = make("preserve", ["1 kg plums", "1 kg sugar"], "Boil to a set.", last)
    label = label_recipe(plums, GB, date(2026, 11, 28))
    assert label.keep_how.startswith(how)


@pytest.mark.parametrize(
    ("ingredients", "span"),
    [
        (["1 l water", "10 black tea bags", "200 g sugar"], "1 day"),
        (["400 ml water", "200 g sugar", "20 g root ginger"], "1 day"),
        (["500 ml water", "50 g rose petals"], "1 day"),
        (["250 ml water", "400 g sugar", "50 g mint"], "1 year"),
        (["1 kg pears", "1 l water", "700 g sugar"], "1 year"),
        (["500 ml vinegar", "300 ml water", "300 g onions"], "1 year"),
    ],
)
def test_what_is_mostly_water_is_not_put_up_for_a_year(ingredients: list[str], span: str) -> None:
    recipe = make("preserve", ingredients, "Simmer and pour into sterilised bottles.")
    assert (str(recipe.keeps.unopened), recipe.keeps.by) == (span, "book")


@pytest.mark.parametrize(
    ("kind", "ingredients", "step", "rule", "said"),
    [
        ("confection", ["200 g sugar", "5 tbsp golden syrup"], "Melt, bubble to amber, pour.",
         "boiling-sugar", True),
        ("confection", ["300 g sugar", "90 g butter"], "Melt the sugar until golden.",
         "boiling-sugar", True),
        ("bake", ["200 g sugar", "200 g plain flour"], "Sprinkle with sugar and bake until golden.",
         "boiling-sugar", False),
        ("bake", ["200 g sugar", "90 g butter", "200 g oats"], "Melt the sugar and butter. Bake.",
         "boiling-sugar", False),
        ("craft", ["200 g oats", "50 g glitter"], "Mix and bag.", "not-food", True),
        ("craft", ["500 g wool"], "Felt it.", "not-food", False),
    ],
)  # fmt: skip
def test_sugar_brought_to_amber_and_crafts_of_food(
    kind: str, ingredients: list[str], step: str, rule: str, said: bool
) -> None:
    found = assess_safety(make(kind, ingredients, step), GB)
    assert (rule in [one.rule for one in found.cautions]) == said


# what neither sugar nor acid nor boiling in its jar keeps, and what brings water
@pytest.mark.parametrize(
    ("kind", "title", "ingredients", "steps"),
    [
        (  # theflexiblechef.co.uk: 45 ml of vinegar to 12 spoons of seed and 120 ml of water
            "mustard",
            "Mustard",
            ["130 g mustard seeds", "120 ml water", "45 ml cider vinegar"],
            ["Grind and mix.", "Decant into cold sterilised jars."],
        ),
        (  # eatsip365.com: the page says a fridge, which this one does not
            "jam",
            "Chia jam",
            ["500 g raspberries", "40 ml maple syrup", "30 g chia seeds"],
            ["Simmer and stir in the seeds.", "Spoon into a jar."],
        ),
        (
            "jam",
            "Low-sugar jam",
            ["1 kg strawberries", "200 g sugar"],
            ["Boil, fill hot jars and seal."],
        ),
        (
            "syrup",
            "Rosehip syrup",
            ["1 kg rose hips", "1 l water", "250 g sugar"],
            ["Simmer, strain twice, warm with the sugar and bottle."],
        ),
        (
            "preserve",
            "Apple butter",
            ["2 kg apples", "100 g sugar"],
            ["Cook down for hours, fill hot jars."],
        ),
        (
            "infused salt",
            "Rosemary salt",
            ["500 g salt", "4 sprigs fresh rosemary"],
            ["Blend.", "Put in a clean dry jar."],
        ),
        ("infused sugar", "Lemon sugar", ["500 g sugar", "3 lemons, zest"], ["Rub together."]),
        (
            "infusion",
            "Tea syrup",
            ["20 g tea", "500 ml water", "500 g sugar"],
            ["Steep and strain."],
        ),
    ],
)
def test_of_what_keeps_by_nothing_the_book_says_no_time(
    kind: str, title: str, ingredients: list[str], steps: list[str]
) -> None:
    assert make(kind, ingredients, *steps, title=title).keeps.unopened is None


# the other side: USDA AIB 539 Guide 1; vinegar after Univ. of Georgia Cooperative Extension
@pytest.mark.parametrize(
    ("kind", "title", "ingredients", "steps", "span"),
    [
        (
            "jam",
            "Strawberry jam",
            ["1 kg strawberries", "700 g sugar"],
            ["Boil to a set and fill hot jars."],
            "1 year",
        ),
        (
            "jam",
            "Low-sugar jam",
            ["1 kg strawberries", "200 g sugar"],
            ["Boil, fill hot jars, process 10 minutes in a boiling-water bath."],
            "1 year",
        ),
        (
            "jelly",
            "Crab jelly",
            ["2 kg crab apples", "1.2 l water", "1200 g sugar"],
            ["Boil the apples and strain.", "Boil with the sugar to a set."],
            "1 year",
        ),
        (
            "chutney",
            "Apple chutney",
            ["1 kg apples", "300 g sugar", "400 ml malt vinegar", "200 g onions"],
            ["Simmer until thick and fill hot jars."],
            "1 year",
        ),
        (
            "infused salt",
            "Rosemary salt",
            ["500 g salt", "4 sprigs fresh rosemary"],
            ["Dry the rosemary in a low oven until crisp.", "Blend."],
            "1 year",
        ),
        (
            "infusion",
            "Raspberry vinegar",
            ["500 g raspberries", "500 ml white wine vinegar"],
            ["Steep for a week and strain."],
            "3 months",
        ),
    ],
)
def test_what_sugar_acid_or_boiling_keeps_has_the_guides_time(
    kind: str, title: str, ingredients: list[str], steps: list[str], span: str
) -> None:
    assert str(make(kind, ingredients, *steps, title=title).keeps.unopened) == span


def test_a_year_claimed_for_herb_vinegar_is_not_contradicted() -> None:
    herbs = ["500 ml white wine vinegar", "4 sprigs tarragon"]
    recipe = make("infusion", herbs, "Steep.", title="Tarragon vinegar", keeps="1 year")
    said = {caution.rule for caution in assess_safety(recipe, GB).cautions}
    assert not said & {"keeps-beyond-default", "keeps-too-long"}
