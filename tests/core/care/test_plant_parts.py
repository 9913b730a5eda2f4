"""A part of a plant named in another language: its poison counts, and a kitchen herb has none.

Plant names by the French and German lists of poisonous garden plants that toxic_plants.yml names.
"""

from __future__ import annotations

import pytest

from stillroom.core.care.plant_parts import poison_by_its_part
from stillroom.core.larder.shelves import common_larder


@pytest.mark.parametrize(
    "line",
    [
        "fleurs de muguet",
        "feuilles de digitale pourpre",
        "baies de belladone",
        "racine d'aconit",
        "feuilles de laurier-rose",
        "bulbes de narcisse",
        "Blüten vom Maiglöckchen",
        "Beeren der Tollkirsche",
    ],
)
def test_a_part_of_a_poisonous_plant_is_poisonous(line: str) -> None:
    assert "toxic" in poison_by_its_part(line, common_larder())


@pytest.mark.parametrize(
    "line",
    [
        "fleurs de sureau",
        "feuilles de laurier",
        "feuilles de menthe",
        "fleurs de sel",
        "Blüten vom Holunder",
        "Samen vom Kümmel",
        "hojas de laurel",
        "foglie di basilico",
        "lily of the valley cutter",
        "muguet",
    ],
)
def test_a_part_of_a_kitchen_plant_is_not(line: str) -> None:
    assert poison_by_its_part(line, common_larder()) == frozenset()
