"""Spirit in which things have stood is called otherwise, and catches fire as it did before.

"Do gorącego syropu wlać nalewkę": what is poured into the hot syrup was 95 % a week ago. The
sentences are ours, after those of Polish and Italian pages; what has gone cold is no heat.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.larder.shelves import common_larder
from stillroom.core.reading.loading import read_recipe

HOT = """
en_GB | vodka, 50% vol | Steep the peel in the vodka for a week. | Boil the syrup. Pour the
  infusion into the hot syrup.
de_DE | Korn, 50% vol | Die Schale eine Woche im Korn ziehen lassen. | Sirup aufkochen. Den Auszug
  in den heißen Sirup gießen.
fr_FR | eau-de-vie, 50% vol | Laisser le zeste une semaine dans l'eau-de-vie. | Verser le macérat
  dans le sirop bouillant.
it_IT | alcol, 95% vol | Lasciare le scorze una settimana nell'alcol. | Versare l'infuso nello
  sciroppo bollente.
es_ES | alcohol, 95% vol | Dejar las cáscaras una semana en el alcohol. | Verter el macerado en el
  almíbar caliente.
nl_NL | alcohol, 95% vol | Laat de schillen een week in de alcohol trekken. | Giet het aftreksel
  bij de hete siroop.
pt_PT | álcool, 95% vol | Deixar as cascas uma semana no álcool. | Deitar o macerado na calda
  quente.
pl_PL | spirytus, 95% vol | Skórki zalać spirytusem na tydzień. | Zagotować syrop. Nalew wlać do
  gorącego syropu.
"""
COLD = """
en_GB | vodka, 50% vol | Boil water and make an infusion of the camomile. Let it go cold. | Add
  the vodka.
de_DE | Korn, 50% vol | Die Schale im Korn ziehen lassen. | Sirup kochen und abkühlen lassen. Den
  Auszug zugießen.
pl_PL | spirytus, 95% vol | Skórki zalać spirytusem. | Zagotować syrop i wystudzić. Nalew wlać do
  zimnego syropu.
"""


def _rows(table: str) -> list[list[str]]:
    rows = table.strip().replace("\n  ", " ").splitlines()
    return [[cell.strip() for cell in row.split("|")] for row in rows]


def _rules(language: str, spirit: str, *steps: str) -> set[str]:
    front = f"title: Cordial\nkind: infusion\nmakes: 1 l\ningredients:\n  - 500 ml {spirit}\n"
    method = "\n".join(f"{place}. {step}" for place, step in enumerate(steps, 1))
    text = f"---\n{front}  - 300 g sugar\n---\n\n## Method\n\n{method}\n"
    larder = replace(common_larder(), language=language)
    box = assess_safety(read_recipe(text, "a.md", "a", "metric", larder, language), BookSettings())
    return {one.rule for one in (*box.refusals, *box.cautions)}


@pytest.mark.parametrize("row", _rows(HOT), ids=lambda row: row[0])
def test_what_stood_in_spirit_is_spirit_in_the_heat(row: list[str]) -> None:
    assert "spirit-heated" in _rules(*row)


@pytest.mark.parametrize("row", _rows(COLD), ids=lambda row: row[0])
def test_what_has_gone_cold_heats_none(row: list[str]) -> None:
    assert "spirit-heated" not in _rules(*row)
