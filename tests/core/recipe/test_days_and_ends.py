"""Nights between days that head a method are waited for; a ferment without any time is not known.

Forms as papers for candied peel, country wine and sourdough have them in seven languages (common
forms, from memory); expectations stood before the code was asked.
"""

import pytest

from care_cases import recipe_of
from stillroom.core.label.how_long import planned_span
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import dates_of_kind
from stillroom.core.recipe.method_times import times_in_method, total_days
from stillroom.core.recipe.model import Recipe

_PEEL = ("confection", "Candied peel", ["500 g orange peel", "500 g sugar"])
_MEAD = ("ferment", "Mead", ["1.5 kg honey", "4 l water", "5 g yeast"])
_GINGER = ("ferment", "Ginger beer", ["50 g ginger", "100 g sugar", "1 l water", "1 g yeast"])
_KRAUT = ("ferment", "Sauerkraut", ["1 kg cabbage", "20 g salt"])


def made(of: tuple[str, str, list[str]], method: list[str], **more: str) -> Recipe:
    kind, title, lines = of
    front = {"title": title, "kind": kind, "ingredients": lines, "method": method, "makes": "1 l"}
    return recipe_of(front | more)


@pytest.mark.parametrize(
    ("method", "days"),
    [
        (["Day 1: boil the peel.", "Day 2: boil it again.", "Day 3: dry it."], 2),
        (["**Day 1** Boil the peel.", "**Day 4** Boil it again."], 3),
        (["Tag 1: Schalen kochen.", "Tag 2: wieder kochen."], 1),
        (["Am 1. Tag kochen.", "Am 3. Tag trocknen."], 2),
        (["Jour 1 : blanchir. Jour 3 : égoutter."], 2),
        (["Deuxième jour : égoutter.", "3e jour : sécher."], 2),
        (["Día 1: hervir.", "Día 2: escurrir."], 1),
        (["Giorno 1: bollire.", "Giorno 5: asciugare."], 4),
        (["Dag 1: koken. Dag 2: drogen."], 1),
        (["Week 1: mix.", "Week 3: strain."], 14),
        (["Day 1: mix.", "Days 2-14: stir daily."], 13),
        (["Boil it.", "Next day, drain and boil again.", "The following day, dry it."], 2),
        (["Schalen kochen.", "Am nächsten Tag abgießen."], 1),
        (["Cuire. Le lendemain, égoutter."], 1),
        (["Hervir. Al día siguiente, escurrir."], 1),
        (["Koken. De volgende dag uitlekken."], 1),
        (["Koka. Nästa dag, sila."], 1),
        # the wait itself is told: it is not counted twice
        (["Boil. Leave overnight. Next day, drain."], 1),
        (["Day 1: boil. Leave overnight.", "Day 2: drain.", "Day 3: dry."], 2),
        (["Boil. Leave to stand for 2 days. On day 3, drain."], 2),
        (["Cover with rum.", "Leave for 2 weeks.", "The next day, strain."], 14),
        # no day of the making
        (["Mix. It is better the next day."], 0),
        (["Backen. Am nächsten Tag schmecken sie noch besser."], 0),
        (["Bake on the first day of December."], 0),
        (["Day 1: boil, dry and pack."], 0),
        (["Boil. Give it on Mother's Day 2."], 0),
    ],
)
def test_the_nights_between_days(method: list[str], days: int) -> None:
    assert total_days(times_in_method(made(_PEEL, method).method)) == days


def test_days_that_head_groups_of_steps() -> None:
    text = (
        "---\ntitle: Candied peel\nkind: confection\nmakes: 500 g\ningredients:\n"
        "  - 500 g orange peel\n  - 500 g sugar\n---\n\nSweet.\n\n## Method\n\n"
        "### Day 1\n\n1. Boil the peel.\n2. Cover.\n\n### Day 3\n\n3. Boil again.\n4. Dry.\n"
    )

    assert total_days(times_in_method(read_recipe(text, "recipes/p.md", "p").method)) == 2


@pytest.mark.parametrize(
    ("of", "method", "says"),
    [
        (_MEAD, "Mix it. Ferment until it stops.", "“Ferment until it stops”"),
        (_MEAD, "When the bubbling has stopped, bottle.", "cannot be counted"),
        (_MEAD, "Gären lassen, bis die Gärung beendet ist.", "cannot be counted"),
        (_MEAD, "Laisser fermenter jusqu'à ce que la fermentation s'arrête.", "cannot be counted"),
        (_MEAD, "Dejar fermentar hasta que pare.", "cannot be counted"),
        (_MEAD, "Lasciare fermentare fino alla fine.", "cannot be counted"),
        (_MEAD, "Laten gisten tot het stopt.", "cannot be counted"),
        (_MEAD, "Låt jäsa tills det har slutat bubbla.", "cannot be counted"),
        (_GINGER, "Mix it all. Bottle.", "is not known: neither recipe nor method says"),
    ],
)
def test_a_ferment_without_a_time_is_not_known(
    of: tuple[str, str, list[str]], method: str, says: str
) -> None:
    recipe = made(of, [method])
    found = dates_of_kind(recipe)
    assert found
    assert says in found.text
    assert recipe.keeps.unopened is None


@pytest.mark.parametrize(
    ("of", "method"),
    [
        (_MEAD, "Ferment until it stops, about 4 weeks. Bottle."),
        (_MEAD, "Ferment 6 weeks. Bottle and age 6 months."),
        (_KRAUT, "Pack and ferment for 3 weeks."),
    ],
)
def test_one_with_a_time_is_as_before(of: tuple[str, str, list[str]], method: str) -> None:
    recipe = made(of, [method])
    found = dates_of_kind(recipe)
    assert found
    assert "not known" not in found.text
    assert "cannot be counted" not in found.text
    assert (str(recipe.keeps.unopened) == "3 years") is (of is _MEAD)


def test_vegetables_in_salt_without_a_time_have_a_guide_to_their_keeping_and_no_dates() -> None:
    recipe = made(_KRAUT, ["Pack and ferment until it is sour. Then keep it in the fridge."])
    found = dates_of_kind(recipe)
    assert found
    assert "is not known" in found.text
    assert str(planned_span(recipe)) == "6 months"


def test_its_own_word_of_keeping_stands() -> None:
    recipe = made(_MEAD, ["Ferment until it stops."], keeps="3 years")
    assert str(recipe.keeps.unopened) == "3 years"
