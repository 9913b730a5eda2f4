"""Lye in a pan, spoon or mould of aluminium is minded, and a warning against it is not.

After blazeandfoam.com.au, a seller of soap supplies, Safe containers for lye water (aluminium
gives off hydrogen); the methods are a family's, written before the code, other tongues from memory.
"""

from __future__ import annotations

import pytest

from care_cases import ask
from stillroom.core.book import BookSettings

TOUCHES = """
Stir the lye into the water in an aluminium pan.
Stir the lye into the water in an old aluminum pot.
Add the lye to the water and stir with an aluminum spoon.
Use an aluminium saucepan.
Pour the soap into an aluminium tray.
Pour the raw soap into a mould lined with aluminium foil.
Melt the oils in the aluminium preserving pan, then add the lye water.
Stir it in an alloy pan made of aluminium.
In einem Aluminiumtopf rühren.
Die Lauge in einem Topf aus Aluminium anrühren.
Verser la soude dans une casserole en aluminium.
Mescolare in una pentola di alluminio.
Remover en una olla de aluminio.
"""
SPARED = """
Stir the lye into the water in a stainless steel pan.
Never use aluminium.
Do not use an aluminium pan.
Use stainless steel, not aluminium.
Use a steel pan, no aluminium.
Use anything but aluminium.
Keep aluminium away from the lye.
Avoid aluminium pans.
Use a steel pan instead of an aluminium one.
Aluminium pans are eaten by lye.
Lye eats aluminium.
Lye reacts with aluminium.
Cover the mould with a sheet of aluminium foil.
Wrap the cured bars and cover with aluminium foil.
Keinen Topf aus Aluminium nehmen.
"""


def _rules(method: str, line: str = "130 g sodium hydroxide") -> frozenset[str]:
    written = {
        "title": "Olive soap",
        "kind": "craft",
        "makes": "10 bars",
        "ingredients": ["1 kg olive oil", "300 g water", line],
        "method": [method, "Leave to cure for six weeks."],
    }
    return ask(written, BookSettings()).cautions


@pytest.mark.parametrize("method", TOUCHES.strip().splitlines())
def test_lye_in_aluminium_is_minded(method: str) -> None:
    assert "lye-in-aluminium" in _rules(method)


@pytest.mark.parametrize("method", SPARED.strip().splitlines())
def test_what_spares_aluminium_is_not(method: str) -> None:
    assert "lye-in-aluminium" not in _rules(method)


def test_without_lye_aluminium_is_no_matter() -> None:
    assert "lye-in-aluminium" not in _rules("Melt it in an aluminium pan.", "100 g beeswax")
