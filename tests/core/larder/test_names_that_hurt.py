"""Names that must not be lost: what is never left in oil, and allergens within mixtures.

Plurals and compounds of garlic, chilli, herbs and mushrooms are foods of their danger, not unknown
ones; mixtures and words of two meanings tell the allergen that they hold or may hold. Words of the
languages, ours; what a béchamel and soup greens are made of is common knowledge.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder, common_larder

IN_OIL = """
sv_SE | vitlökar, chilifrukter, färska chilifrukter, rosmarinkvistar, salviablad, karljohansvamp
da_DK | hvidløgsfed, friske chilier, chilifrugter, rosmarinkviste, basilikumblade, salvieblade
nb_NO | hvitløksfedd, hvitløksbåter, chilifrukter, rosmarinkvister, basilikumblader, steinsopp
nl_NL | basilicumblaadjes, salieblaadjes, takje rozemarijn, artisjokharten, verse kruiden
de_DE | Pfefferschoten, Artischockenherzen, frische Kräuter, Rosmarinzweige
it_IT | mazzo di basilico, carciofini, erbe fresche
es_ES | ajíes, níscalos, hierbas frescas
fr_FR | herbes fraîches, feuilles de sauge
pt_PT | piripíris, pimentas dedo-de-moça, folhas de manjericão, ervas frescas
pl_PL | ostre papryczki, liście bazylii, borowiki, grzyby, świeże zioła, bakłażan
"""
NEVER_IN_OIL = {"garlic", "chilli", "fresh-herb", "mushroom", "low-acid-vegetable"}
HELD = """
de_DE | Suppengrün, Suppengemüse | celery
it_IT | odori, misto per soffritto | celery
nl_NL | soepgroenten | celery
da_DK | suppeurter, suppevisk | celery
nb_NO | suppegrønnsaker | celery
pl_PL | włoszczyzna | celery
en_GB | soup vegetables, vegetables, mixed vegetables, root vegetables | celery
en_GB | béchamel sauce | milk wheat
it_IT | besciamella | milk wheat
pl_PL | sos beszamelowy | milk wheat
en_GB | white malt vinegar | barley
en_GB | oyster crackers, goldfish crackers | wheat
en_GB | vermicelli noodles | wheat
en_GB | liqueur | milk eggs nuts
en_GB | clam chowder | molluscs
fr_FR | fruits secs | nuts
it_IT | frutta secca | nuts
"""
NOT_OF_IT = """
en_GB | oyster crackers, oyster mushrooms, oyster plant, oyster leaf, crab apples, lobster mushrooms
da_DK | østershatte
nl_NL | oesterzwammen
pl_PL | boczniaki
"""


def _rows(table: str) -> list[tuple[str, ...]]:
    cells = [[cell.strip() for cell in row.split("|")] for row in table.strip().splitlines()]
    return [(one[0], name.strip(), *one[2:]) for one in cells for name in one[1].split(",")]


def _larder(language: str) -> Larder:
    return replace(common_larder(), language=language)


@pytest.mark.parametrize(("language", "name"), _rows(IN_OIL))
def test_what_is_never_left_in_oil_is_known_by_its_plural(language: str, name: str) -> None:
    food = read_food(name, _larder(language)).food
    assert food is not None
    assert food.tags & NEVER_IN_OIL


@pytest.mark.parametrize(("language", "name", "held"), _rows(HELD))
def test_a_mixture_tells_what_it_may_hold(language: str, name: str, held: str) -> None:
    food = read_food(name, _larder(language)).food
    assert food is not None
    assert set(held.split()) <= {*food.allergens, *food.may_contain}


@pytest.mark.parametrize(("language", "name"), _rows(NOT_OF_IT))
def test_a_food_named_after_an_animal_of_the_sea_is_none(language: str, name: str) -> None:
    food = read_food(name, _larder(language)).food
    assert food is not None
    assert not {*food.allergens, *food.may_contain} & {"molluscs", "crustaceans"}


@pytest.mark.parametrize(
    ("language", "name"), [("es_ES", "masa"), ("fr_FR", "pâte"), ("pt_PT", "amido")]
)
def test_a_word_of_several_foods_is_known_as_none(language: str, name: str) -> None:
    assert not read_food(name, _larder(language)).known
