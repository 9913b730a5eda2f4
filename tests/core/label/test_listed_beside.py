"""Every food that a line lists is named in what is in it; what is said of one food is not.

The lists are those of test_unknown_in_lists.py, of public pages in ten languages.
"""

from __future__ import annotations

import re

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import label_recipe
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.loading import read_recipe

LISTS = [
    ("en_GB", "raisins, currants, sultanas"),
    ("en_GB", "150 ml Rum, Brandy or Whisky"),
    ("en_GB", "almonds, cashews, and peanuts"),
    ("en_GB", "walnuts, frobnicates, raisins"),
    ("en_GB", "spices (cinnamon, frobnicates and cloves)"),
    ("en_GB", "A few currants, cherries, or angelica"),
    ("en_GB", "dried fruit (cranberries, apricots, cherries)"),
    ("de_DE", "Rosmarin, Oregano, Lavendel oder Salbei"),
    ("de_DE", "Salz, Pfeffer, Majoran, Knoblauch"),
    ("fr_FR", "sel, poivre, gingembre, muscade"),
    ("it_IT", "salvia, menta, rosmarino, erba cipollina, basilico"),
    ("es_ES", "sal, azúcar, aceite o vinagre"),
    ("pt_PT", "sal, vinagre, alho, louro"),
    ("nl_NL", "tamarinde, gember, mosterdzaad, knoflook, peper en ui"),
    ("sv_SE", "timjan, salvia, rosmarin och lagerblad"),
    ("da_DK", "æble, løg, ingefær og salt"),
    ("nb_NO", "salt, pepper, kanel"),
    ("pl_PL", "cynamon, goździki i imbir"),
    ("fi_FI", "timjami, rosmariini ja salvia"),
]


def contents(line: str, language: str) -> str:
    text = f'---\ntitle: A mix\nkind: dry mix\nmakes: 500 g\ningredients:\n  - "{line}"\n---\n'
    larder = Larder(language=language)
    recipe = read_recipe(
        f"{text}\n## Method\n\n1. Mix.\n", "a.md", "a", larder=larder, language=language
    )
    label = label_recipe(recipe, BookSettings(language=language))
    return ", ".join(entry.whole for entry in label.contents)


@pytest.mark.parametrize(("language", "line"), LISTS)
def test_every_food_of_a_list_is_named(language: str, line: str) -> None:
    said = contents(line, language)
    words = re.findall(r"[^\W\d_]{3,}", re.sub(r"^(?:A few|150 ml)", "", line))
    assert [word for word in words if word not in said and word not in ("and", "oder")] == []


@pytest.mark.parametrize(
    ("language", "line", "said"),
    [
        ("en_GB", "butter, softened", "butter (milk)"),
        ("en_GB", "courgettes (zucchini)", "courgettes"),
        ("en_GB", "soft brown sugar (light muscovado)", "soft brown sugar"),
        ("en_GB", "2 lemons, zest and juice", "lemons"),
        ("en_GB", "milk (or oat milk)", "milk or oat milk"),
        ("en_GB", "flour, flaked almonds to decorate", "flour, flaked almonds (wheat)"),
        ("en_GB", "sultanas, soaked in rum", "sultanas, soaked in rum"),
        ("en_GB", "salt, mustard to taste", "salt, mustard"),
        ("en_GB", "nuts such as walnuts and pecans", "nuts, walnuts and pecans"),
        ("de_DE", "Salz, Senf nach Geschmack", "Salz, Senf (mustard)"),
        ("sv_SE", "1 dl olja (t.ex. jordnötsolja)", "olja, jordnötsolja (peanut)"),
    ],
)
def test_what_is_said_of_a_food_is_not(language: str, line: str, said: str) -> None:
    assert contents(line, language) == said
