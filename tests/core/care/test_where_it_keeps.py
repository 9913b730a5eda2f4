"""Where and how long a method says that the finished thing keeps, in a cook's many words.

The sentences have the shapes of saved pages of lemon curd (29 November 2026); the words are ours.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from stillroom.core.method.keeping_said import claimed_elsewhere, claimed_in_method, kept_at
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

HEAD = (
    "---\ntitle: {title}\nkind: {kind}\nmakes: 2 jars of 200 ml\ningredients:\n"
    "{list}---\n\n## Method\n\n{steps}"
)
CURD = ("4 eggs", "100 g butter", "200 g sugar", "juice of 3 lemons")


def recipe_of(steps: list[str], kind: str = "lemon curd", foods: tuple[str, ...] = CURD) -> Recipe:
    text = HEAD.format(
        title="Lemon curd" if kind == "lemon curd" else "Garlic pesto",
        kind=kind,
        list="".join(f"  - {food}\n" for food in foods),
        steps="".join(f"{place}. {step}\n" for place, step in enumerate(steps, 1)),
    )
    return read_recipe(text, "a.md", "a", "metric")


@pytest.mark.parametrize("before", [(), ("Cook eggs, butter and sugar until thick.",)])
@pytest.mark.parametrize(
    ("said", "where", "span"),
    [
        (
            "Pour into jars. This will keep in the fridge for a couple of weeks.",
            "fridge",
            "2 weeks",
        ),
        (
            "When cold label and place in the refrigerator. It will keep for a few weeks.",
            "fridge",
            "2 weeks",
        ),
        ("Seal tightly. Keep refrigerated for as long as 3 weeks.", "fridge", "3 weeks"),
        (
            "Fill the jars. Homemade curds last 2 to 3 weeks in the refrigerator.",
            "fridge",
            "2-3 weeks",
        ),
        ("Fill the jars. Store in the fridge up to a month.", "fridge", "1 month"),
        ("Seal and keep in the fridge; use within a month or so.", "fridge", "1 month"),
        ("Fill the jars. Keeps 2-3 weeks in the fridge.", "fridge", "2-3 weeks"),
        (
            "Fill the jars. You can keep this in the refrigerator for 2-3 weeks or freeze it.",
            "fridge",
            "2-3 weeks",
        ),
        ("Fill the jars. Stays good in the fridge for about a fortnight.", "fridge", "2 weeks"),
        ("Fill the jars. It'll last a week or two in the fridge.", "fridge", "1 week"),
        ("Fill the jars and refrigerate for up to 3 weeks.", "fridge", "3 weeks"),
        ("Store in refrigerator, good for 2 weeks.", "fridge", "2 weeks"),
        ("Store covered in the refrigerator; best used within 2 weeks.", "fridge", "2 weeks"),
        ("Once cool, pop in the fridge, where it will last for three weeks.", "fridge", "3 weeks"),
        ("Pop it in the fridge and eat within 10 days.", "fridge", "10 days"),
        ("The jars keep in the fridge for three weeks.", "fridge", "3 weeks"),
        ("Put in fridge. Should keep about 2 weeks.", "fridge", "2 weeks"),
        ("Keep chilled and use within 2 weeks.", "fridge", "2 weeks"),
        ("Best kept in the fridge and eaten within a week.", "fridge", "1 week"),
        ("Cover and refrigerate (up to 2 weeks).", "fridge", "2 weeks"),
        ("Fill the jars. Keep in fridge.", "fridge", ""),
        ("Will keep for up to 3 weeks if stored in the fridge.", "fridge", "3 weeks"),
        ("It keeps well for a month, refrigerated.", "fridge", "1 month"),
        ("Fill the jars. I'm storing it in the fridge.", "fridge", ""),
        ("Fill the jars. Must be stored in the refrigerator.", "fridge", ""),
        ("Fill the jars. Lives happily in the fridge for 3 weeks.", "fridge", "3 weeks"),
        ("Fill the jars. Once sealed it goes in the fridge.", "fridge", ""),
        ("Fill the jars. In the fridge it keeps for 3 weeks.", "fridge", "3 weeks"),
        ("Fill the jars. Fridge life: 2 weeks.", "fridge", "2 weeks"),
        ("Fill the jars. Needs to be kept in the fridge.", "fridge", ""),
        (
            "Fill the jars. Keep it in your refrigerator and use it up within three weeks.",
            "fridge",
            "3 weeks",
        ),
        (
            "Store the jars in a cool dark place for up to a year; once opened keep in the fridge.",
            "room",
            "1 year",
        ),
        ("Label and store in a cool place. Once opened, store the jar in the fridge.", "room", ""),
        ("Leave in the fridge overnight to set, then store in the larder.", "room", ""),
        ("Refrigerate after opening and use within 3 weeks.", "room", ""),
        ("Refrigerate for 2 hours to set. Keeps 1 month in a cool place.", "room", "1 month"),
        ("The jars will keep up to one year in a cool, dark place.", "room", "1 year"),
        ("Seal. Keeps for months if not opened, then in the fridge.", "room", ""),
        ("Let it cool in the fridge before filling the jars.", "room", ""),
        ("Fill the jars. No need to keep it in the fridge.", "room", ""),
        ("Fill the jars. It does not need the fridge.", "room", ""),
        ("Place in the refrigerator to cool for an hour, then fill the jars and seal.", "room", ""),
        ("Put the pan in the fridge until cold. Fill the jars.", "room", ""),
    ],
)
def test_what_the_last_step_says(said: str, where: str, span: str, before: tuple[str, ...]) -> None:
    recipe = recipe_of([*before, said])
    assert kept_at(recipe) == where
    told = claimed_in_method(recipe) or claimed_elsewhere(recipe)
    assert str(told or "") == span


def test_what_stands_behind_it_takes_nothing_away() -> None:
    steps = ["Pour into jars. This will keep in the fridge for a couple of weeks."]
    steps += ["Before you begin, wash the jars.", "Dry them in a warm oven."]
    assert kept_at(recipe_of(steps)) == "fridge"


@pytest.mark.parametrize(
    ("kind", "foods", "steps"),
    [
        (
            "preserve",
            ("100 g garlic", "200 ml olive oil"),
            ["The chopped garlic keeps in the fridge for a week.", "Fill jars with it and seal."],
        ),
        (
            "biscuits",
            ("100 g flour", "50 g butter"),
            ["The dough keeps in the fridge for 3 days.", "Bake and cool."],
        ),
        (
            "liqueur",
            ("500 ml vodka, 40% vol", "200 g plums"),
            ["Place in the refrigerator for 2 weeks, shaking daily.", "Strain and bottle."],
        ),
        (
            "truffles",
            ("100 g chocolate", "50 ml cream"),
            ["Put in the fridge. The next day dip them in chocolate and keep in a tin."],
        ),
    ],
)
def test_what_is_on_its_way_is_not_kept(
    kind: str, foods: tuple[str, ...], steps: list[str]
) -> None:
    assert kept_at(recipe_of(steps, kind, foods)) == "room"


@pytest.mark.parametrize(
    ("steps", "where", "span"),
    [
        (
            ["Seal and refrigerate.", "It is ready in a day and remains tasty for up to 2 weeks."],
            "fridge",
            "2 weeks",
        ),
        (
            ["When cool, store in the fridge.", "The curd keeps for up to a month unopened."],
            "fridge",
            "1 month",
        ),
        (
            [
                "Store in the fridge for up to 1 month.",
                "To make the cocktail, pour a little into a glass and top up with soda.",
            ],
            "fridge",
            "1 month",
        ),
        (
            ["Cool, then refrigerate. It will keep for 3 weeks.", "Use this to make pies."],
            "fridge",
            "3 weeks",
        ),
        (["Keep in the fridge.", "Store the jars in a cool, dark cupboard."], "room", "None"),
        (["Refrigerate overnight.", "Fill the jars.", "Keeps 3 months."], "room", "3 months"),
        (["Keep in the fridge for a week.", "Delicious! Keeps 2 months in the cupboard."],
         "room", "2 months"),
    ],
)  # fmt: skip
def test_a_step_that_serves_or_only_counts_speaks_of_where_it_stood_before(
    steps: list[str], where: str, span: str
) -> None:
    recipe = recipe_of(["Cook until thick and fill jars.", *steps])
    assert kept_at(recipe) == where
    assert str(claimed_in_method(recipe)) == span


@pytest.mark.parametrize(
    ("steps", "where"),
    [
        (["Refrigerate for 48 hours, turning once.", "Cut in thin slices and serve."], "fridge"),
        (["Refrigerate for 48 hours.", "Slice and pack in jars under oil."], "room"),
        (["Refrigerate for 2 hours.", "Cut in thin slices and serve."], "room"),
    ],
)
def test_cured_fish_is_cut_from_where_it_lay(steps: list[str], where: str) -> None:
    foods = ("500 g salmon", "70 g salt", "80 g sugar")
    assert kept_at(recipe_of(["Rub the fish.", *steps], "preserve", foods)) == where


CREAM = ("300 ml Irish whiskey, 40% vol", "300 ml double cream", "1 tsp instant coffee")


# a newcomer's untidy words (30 November 2026), and their neighbours
@pytest.mark.parametrize(
    ("said", "where"),
    [
        ("Bottle. Fridge, up to 2 weeks.", "fridge"),
        ("Bottle it. Fridge, 2 weeks.", "fridge"),
        ("Bottle it. In the fridge: 2 weeks.", "fridge"),
        ("Bottle it. Two weeks in the fridge.", "fridge"),
        ("Bottle it (2 weeks in fridge).", "fridge"),
        ("Bottle it. OK for 2 weeks in the fridge.", "fridge"),
        ("Bottle it. Fridge - max 2 weeks", "fridge"),
        ("Bottle it. In the fridge for 2 hours, then drink.", "room"),
        ("Chill the glasses in the fridge. Bottle it.", "room"),
    ],
)
def test_a_place_and_a_time_alone_say_where_a_cream_keeps(said: str, where: str) -> None:
    recipe = recipe_of(["Blend it all.", said], "liqueur", CREAM)
    assert kept_at(recipe) == where
    assert str(claimed_in_method(recipe)) == ("2 weeks" if where == "fridge" else "None")


@pytest.mark.parametrize(
    ("where", "place"),
    [
        ("au réfrigérateur", "fridge"),
        ("im Kühlschrank", "fridge"),
        ("en la nevera", "fridge"),
        ("in frigorifero", "fridge"),
        ("in de koelkast", "fridge"),
        ("i kylskåp", "fridge"),
        ("au congélateur", "freezer"),
        ("nicht im Kühlschrank", "room"),
        ("im Schrank, nach dem Öffnen im Kühlschrank", "room"),
        ("au placard, puis au réfrigérateur une fois ouvert", "room"),
        ("im Keller", "room"),
    ],
)
def test_a_place_under_keeps_is_read_in_the_other_languages(where: str, place: str) -> None:
    recipe = recipe_of(["Fill the jars."])
    kept = replace(recipe.keeps, where=where, where_of_book=False)
    assert kept_at(recipe.model_copy(update={"keeps": kept})) == place
