"""Words of keeping that name no number: they shorten, they raise a rule, and no card has a figure.

"Håller flera veckor torrt." stood on a card as "Best before: 3 weeks", above the book's own 5 days
for bread (found by a newcomer, 30 November 2026). The sentences are common forms of five languages.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.method.keeping_said import ask_of_keeping, vaguely_kept
from stillroom.core.recipe.model import Recipe

GB = BookSettings()
LISTS = {
    "bake": ["500 g strong white flour", "10 g salt", "7 g dried yeast"],
    "chutney": ["1 kg plums", "500 ml malt vinegar, 5% acidity", "400 g sugar"],
    "craft": ["100 g beeswax"],
}


def make(kind: str, last: str) -> Recipe:
    steps = {"bake": "Bake for 30 minutes.", "chutney": "Boil for 1 hour.", "craft": "Melt it."}
    facts = {"title": "Something", "kind": kind, "ingredients": LISTS[kind]}
    return recipe_of(facts | {"method": [steps[kind], last]})


@pytest.mark.parametrize(
    "last",
    [
        "Håller flera veckor torrt.",
        "Keeps for several weeks in a tin.",
        "They will keep for a few weeks.",
        "Mehrere Wochen haltbar.",
        "Hält sich einige Wochen.",
        "Se conserve plusieurs semaines.",
        "Se garde quelques mois.",
        "Se conserva varias semanas.",
    ],
)
def test_bread_keeps_as_the_book_says_whatever_is_said_without_a_number(last: str) -> None:
    bread = make("bake", last)
    assert vaguely_kept(bread)
    assert (str(bread.keeps.unopened), bread.keeps.by) == ("5 days", "book")
    told = {one.rule: one.because for one in assess_safety(bread, GB).cautions}
    assert "no number is said" in told["keeps-beyond-default"]
    said = [str(label_recipe(bread, GB).keeping.unopened), *told.values()]
    said += [one.mend for one in ask_of_keeping(bread)]
    assert not any(length in one for one in said for length in ("2 weeks", "3 weeks", "2 months"))


@pytest.mark.parametrize(
    ("kind", "last", "kept", "by"),
    [
        ("bake", "Keeps for a few days.", "2 days", "method"),
        ("bake", "Keeps for 2 weeks in a tin.", "2 weeks", "method"),
        ("bake", "Keeps for a couple of weeks in a tin.", "2 weeks", "method"),
        ("bake", "Hält sich 3 Wochen.", "3 weeks", "method"),
        ("chutney", "Keeps for several months.", "3 months", "method"),
        ("chutney", "Keeps for several years.", "1 year", "book"),
        ("chutney", "Keeps for 3 years.", "3 years", "method"),
        ("craft", "Keeps for several years.", "None", "recipe"),
        ("craft", "Keeps for 3 years.", "3 years", "method"),
    ],
)
def test_a_number_is_taken_and_loose_words_only_shorten(
    kind: str, last: str, kept: str, by: str
) -> None:
    keeps = make(kind, last).keeps
    assert (str(keeps.unopened), keeps.by) == (kept, by)


def test_who_says_the_least_of_loose_words_is_told() -> None:
    assert "name no number" in make("chutney", "Keeps for several months.").keeps.source
    assert "name no number" not in make("chutney", "Keeps for 3 months.").keeps.source


def test_loose_words_still_refuse_what_poisons() -> None:
    foods = ["100 g ramsons", "100 ml olive oil"]
    pesto = {"title": "Pesto", "kind": "preserve", "ingredients": foods}
    said = "Im Kühlschrank einige Wochen haltbar."
    box = assess_safety(recipe_of(pesto | {"method": ["Blend.", said]}), GB)
    assert "low-acid-in-oil" in {one.rule for one in box.refusals}


def test_once_opened_has_no_figure_either_but_a_few_days_are_short() -> None:
    assert make("chutney", "Once opened it keeps for several weeks.").keeps.opened is None
    assert str(make("chutney", "Once opened it keeps for a few days.").keeps.opened) == "2 days"
    assert str(make("chutney", "Once opened it keeps for 4 weeks.").keeps.opened) == "4 weeks"
