"""What is chilled last of all, or kept cool though it spoils, stands in the fridge; the rest not.

The sentences are those with which salsas, eggnogs and egg liqueurs of many pages end (an earlier
session's finds, and common forms in five languages).
"""

from __future__ import annotations

import pytest
import yaml

from stillroom.core.method.keeping_said import kept_at
from stillroom.core.reading.loading import read_recipe

_EGG = ("infusion", ["8 Eigelb", "250 g Puderzucker", "375 ml Sahne", "250 ml Weingeist, 90%"])
_NOG = ("infusion", ["6 eggs", "200 g sugar", "500 ml milk", "250 ml bourbon, 40%"])
_GIN = ("infusion", ["500 ml gin, 40%", "300 g raspberries", "100 g sugar"])
_SALSA = ("preserve", ["500 g tomatoes", "1 onion", "2 tbsp lime juice"])
_JAM = ("preserve", ["1 kg strawberries", "800 g sugar"])
_BARK = ("confection", ["200 g chocolate", "100 ml cream"])
_PEACHES = ("preserve", ["1 kg peaches", "300 g sugar", "1 l water"])

FRIDGE = [
    (_EGG, "In Flaschen füllen und kühl lagern."),
    (_EGG, "Mélanger. Conserver au frais."),
    (_EGG, "Mezclar. Conservar en frío."),
    (_EGG, "Mengen en koel bewaren."),
    (_NOG, "Chill at least 1 hour before serving."),
    (_NOG, "Chill for at least 4 hours."),
    (_SALSA, "Refrigerate at least 1 hour."),
    (_SALSA, "Cover and refrigerate for at least 1 hour before serving."),
    (_SALSA, "Vor dem Servieren mindestens 1 Stunde kalt stellen."),
    (_SALSA, "Laisser au frais 1 heure avant de servir."),
    (_SALSA, "Refrigerar al menos 1 hora antes de servir."),
    (_SALSA, "Mettere in frigo un'ora prima di servire."),
]
ROOM = [
    (_EGG, "Abfüllen, kühl und dunkel lagern."),
    (_EGG, "Abfüllen, an einem kühlen Ort lagern."),
    (_EGG, "Conserver dans un endroit frais."),
    (_GIN, "Abfüllen und kühl lagern."),
    (_GIN, "Strain and bottle. Chill for an hour before serving."),
    (_GIN, "Serve chilled."),
    (_JAM, "Refrigerate at least 2 hours before serving."),
    (_JAM, "Einkochen, abfüllen und kühl lagern."),
    (_JAM, "Boil, pot. Chill at least an hour. Keep in a cool, dark place."),
    (_BARK, "Chill at least 1 hour, then cut."),
    (_BARK, "Chill for at least 2 hours until set."),
    (_PEACHES, "Process in a water bath 25 minutes. Chill at least 1 hour before serving."),
]


@pytest.mark.parametrize(
    ("of", "words", "place"),
    [(*one, "fridge") for one in FRIDGE] + [(*one, "room") for one in ROOM],
)
def test_where_its_last_words_leave_it(of: tuple[str, list[str]], words: str, place: str) -> None:
    """Cold where it is chilled to be eaten from the cold; the shelf where that is only served."""
    kind, lines = of
    front = {"title": "Thing", "kind": kind, "makes": "1 kg", "ingredients": lines}
    head = yaml.safe_dump(front, allow_unicode=True)
    text = f"---\n{head}---\n\n## Method\n\n1. Mix everything.\n2. {words}\n"
    name = f"thing-{abs(hash((kind, words)))}"
    assert kept_at(read_recipe(text, f"recipes/{name}.md", name)) == place
