"""What the words of strangers say of keeping: unopened, once opened, and where.

Sentences as pages of recipes say it, read on 29 November 2026 (curds of daffodilkitchen.com and
kitchen.nine.com.au, syrups of natureswayeaston.com and askdrernst.com, tomatoes of
dadscookbook.blogspot.com, a Likör of kochlust.renateblaes.de and others of their kind), fixed with
what each must mean before the code was asked: keeping_of_strangers.yml.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.keeping import span_on_card
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.spans import Span
from stillroom.core.words.plain_yaml import read_plain

FOODS = {
    "jam": ["1 kg strawberries", "1 kg sugar", "1 lemon"],
    "biscuits": ["250 g flour", "125 g butter", "80 g sugar"],
    "chutney": ["1 kg apples", "500 ml vinegar", "400 g sugar"],
    "curd": ["3 eggs", "100 g butter", "200 g sugar", "150 ml lemon juice"],
    "liqueur": ["700 ml vodka, 40% vol", "300 g raspberries", "200 g sugar"],
    "truffles": ["200 g dark chocolate", "150 ml double cream"],
    "syrup": ["1 l elderflower tea", "1 kg sugar", "50 g citric acid"],
    "infused salt": ["200 g sea salt", "10 g dried rosemary"],
    "granola": ["500 g rolled oats", "100 g honey", "50 ml sunflower oil"],
    "preserve": ["100 g basil", "150 ml olive oil", "50 g parmesan"],
}
# the kind, its last words, unopened, opened, the place ("" where any will do)
SAID = read_plain(Path(__file__).with_name("keeping_of_strangers.yml").read_text("utf-8"))


def _make(kind: str, said: str) -> Recipe:
    steps = ["Make it by the usual way.", said]
    return recipe_of(
        {"title": "Something", "kind": kind, "ingredients": FOODS[kind], "method": steps}
    )


def _days(span: Span | None) -> float | None:
    return None if span is None else span.minutes(longest=False) / 1440


def _as_told(span: Span | None, days: float | None) -> bool:
    """Whether a span is so many days, months of 28 to 31 and years of 360 to 366 alike."""
    found = _days(span)
    if found is None or days is None:
        return found == days
    return days <= found <= days * 1.1


@pytest.mark.parametrize(("kind", "said", "unopened", "opened", "place"), SAID)
def test_unopened_opened_and_the_place(
    kind: str, said: str, unopened: float | None, opened: float | None, place: str
) -> None:
    recipe = _make(kind, said)
    keeps = recipe.keeps
    if unopened is None:
        assert keeps.by != "method"
    else:
        assert _as_told(keeps.unopened, unopened), keeps.words
    assert _as_told(keeps.opened, opened), keeps.words
    assert place in ("", kept_at(recipe))
    card = _days(span_on_card(recipe))
    assert unopened is None or card is None or card <= unopened * 1.1


# of two places the warmer is where garlic under oil may stand
@pytest.mark.parametrize(
    ("said", "place"),
    [
        ("Keeps for a week in a jar, or freeze for 3 months.", "room"),
        ("Store on the counter for a week. You can also freeze it for 3 months.", "room"),
        ("Keeps 1 week, or can be frozen for 3 months.", "room"),
        ("Use within a week or freeze.", "room"),
        ("Hält sich im Schrank 1 Woche oder einfrieren.", "room"),
        ("Se conserve une semaine au placard, ou congeler.", "room"),
        ("Keep in the fridge for 4 days or freeze.", "fridge"),
        ("Im Kühlschrank 4 Tage haltbar oder einfrieren.", "fridge"),
        ("Se conserve 4 jours au réfrigérateur ou congeler.", "fridge"),
        ("Use at once or freeze for up to 3 months.", "freezer"),
        ("Cool and freeze until needed.", "freezer"),
        ("Freeze.", "freezer"),
    ],
)
def test_a_freezer_that_is_one_of_two_places_makes_nothing_safe(said: str, place: str) -> None:
    recipe = recipe_of(
        {
            "title": "Garlic oil",
            "kind": "preserve",
            "ingredients": ["200 g garlic", "300 ml olive oil"],
            "method": ["Cook gently.", said],
        }
    )
    assert kept_at(recipe) == place
    refused = {one.rule for one in assess_safety(recipe, BookSettings()).refusals}
    assert refused == ({"low-acid-in-oil"} if place == "room" else set())
