"""Alcohol in what is said to be for children, however that is said, and what only sounds so.

The sayings are a family's of titles and notes, written before the code; German, French, Spanish,
Italian and Dutch from memory.
"""

from __future__ import annotations

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.method.who import said_for_children

TITLES_FOR = """
Kids' rum balls
Kids’ Rum Balls
Kids rum balls
Kid's rum fudge
Children's rum truffles
Childrens rum truffles
Kiddies' rum truffles
Kiddie rum pops
Toddler rum bites
Toddlers' rum bites
Tots' rum truffles
Little ones' rum truffles
Rum balls for the kids
Rum balls (kids)
Nursery school rum truffles
School party rum balls
Party bag rum truffles
Kid-friendly rum truffles
Child-friendly rum balls
Kinder-Rumkugeln
Rumkugeln für Kinder
Rumkugeln zum Kindergeburtstag
Truffes au rhum des enfants
Truffes au rhum pour les petits enfants
Trufas al ron para niños
Tartufi al rum per bambini
Rumballen voor kinderen
"""
TITLES_NOT = """
Baby shower rum balls
Kid gloves rum balls
Rum balls, not for children
Not-for-children rum truffles
Grown-ups' rum truffles (no kids)
Rum truffles to hide from the kids
Rum balls for the kids' teachers
The kids' teacher's rum truffles
Rum fudge for the children's ward nurses
Rum and kidney bean brownies
Kidderminster rum fudge
Rum balls for when the kids are in bed
Ten-year-old rum truffles
Rum truffles with 10 year old rum
Hen party bag rum truffles
Kinderleichte Rumkugeln
Rumkugeln mit Kinderschokolade
Rumkugeln, nicht für Kinder
Rumkugeln für Erwachsene
Truffes au rhum, pas pour les enfants
Truffes au rhum (hors de portée des enfants)
Trufas al ron, no para niños
Children of the revolution rum balls
Old school rum truffles
Garden nursery rum balls
Nursery rhyme rum cake
Tater tots in rum butter
A tot of rum cake
Rumballen van tot tot
First-class party rum balls
World class treats with rum
Old-school treats with rum
Christ-child rum stollen
Childhood rum raisins
Mother and child reunion rum cake
"""
SAID_FOR = """
Nice for school party bags.
For the children's party bags.
Lovely in party bags.
Good for nursery snacks.
I make these for the nursery.
They are kid-friendly.
Great for kiddies.
For the toddlers.
For playgroup.
Handy for school lunch boxes.
For the class party.
Für die Kinder.
Für den Kindergeburtstag.
Pour le goûter des enfants.
"""
SAID_NOT = """
For a baby shower.
Handle it with kid gloves.
Not for children.
Unsuitable for children.
Not suitable for school party bags.
Kids: leave out the rum.
For kids, leave out the rum.
For the kids use apple juice instead of the rum.
Replace the rum with juice for the children.
Keep out of reach of children.
Keep away from the kids.
Let the children roll the balls.
The kids can help roll the balls in cocoa.
Add to 10 year old rum.
Old school truffles.
For the school teachers.
From the garden nursery.
A kinder heat is better.
In wedding party bags.
Truly first-class treats.
World class snacks.
An old-school treat.
Wrapped in a grown-up party bag.
Für Kinder den Rum weglassen.
Nicht für Kinder geeignet.
À tenir hors de portée des enfants.
Déconseillé aux enfants.
"""


def _truffles(title: str, summary: str = "") -> dict[str, object]:
    front: dict[str, object] = {"title": title, "kind": "confection", "makes": "30 truffles"}
    if summary:
        front["summary"] = summary
    front["ingredients"] = ["200 g dark chocolate", "100 ml cream", "3 tbsp dark rum"]
    front["method"] = ["Melt, stir in the rum, chill and roll."]
    return front


def _refused(written: dict[str, object]) -> bool:
    box = assess_safety(recipe_of(written), BookSettings())
    return "alcohol-for-children" in {one.rule for one in box.refusals}


@pytest.mark.parametrize("title", TITLES_FOR.strip().splitlines())
def test_a_title_names_children(title: str) -> None:
    assert said_for_children(recipe_of(_truffles(title)))


@pytest.mark.parametrize("title", TITLES_NOT.strip().splitlines())
def test_a_title_only_sounds_like_children(title: str) -> None:
    assert said_for_children(recipe_of(_truffles(title))) == ""


@pytest.mark.parametrize("said", SAID_FOR.strip().splitlines())
def test_a_note_is_for_children(said: str) -> None:
    assert said_for_children(recipe_of(_truffles("Rum truffles", said)))


@pytest.mark.parametrize("said", SAID_NOT.strip().splitlines())
def test_a_note_only_names_children(said: str) -> None:
    assert said_for_children(recipe_of(_truffles("Rum truffles", said))) == ""


def test_the_alcohol_is_refused() -> None:
    assert _refused(_truffles("Kiddies' rum truffles"))
    assert _refused(_truffles("Rum truffles", "Nice for school party bags."))
    assert not _refused(_truffles("Rum truffles", "Kids: leave out the rum."))
