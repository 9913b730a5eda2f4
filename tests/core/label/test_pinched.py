"""A pinch of salt told only in the method goes in; salt that is rubbed in and rinsed off does not.

Recipes of public pages often name salt in the method alone; it stood on no list before 30 November
2026.
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import label_recipe
from stillroom.core.larder.shelves import Larder
from stillroom.core.reading.loading import read_recipe


def listed(lines: tuple[str, ...], method: str, language: str) -> list[str]:
    head = "".join(f'  - "{line}"\n' for line in lines)
    text = (
        "---\ntitle: A thing\nkind: bake\nmakes: 500 g\ningredients:\n"
        f"{head}---\n\n## Method\n\n1. {method}\n"
    )
    recipe = read_recipe(text, "a.md", "a", larder=Larder(language=language), language=language)
    label = label_recipe(recipe, BookSettings(language=language))
    return [content.text.lower() for content in label.contents]


@pytest.mark.parametrize(
    ("language", "line", "method", "salt"),
    [
        ("en_GB", "200 g flour", "Mix the flour and a pinch of salt. Bake at 180 °C.", "salt"),
        ("en_GB", "200 g flour", "Mix. Season with salt. Bake at 180 °C.", "salt"),
        ("en_GB", "200 g flour", "Add a little salt. Bake at 180 °C.", "salt"),
        ("de_DE", "200 g Mehl", "Mit einer Prise Salz verkneten. Backen.", "salz"),
        ("fr_FR", "200 g de farine", "Ajouter une pincée de sel. Enfourner 12 minutes.", "sel"),
        ("es_ES", "200 g de harina", "Añade una pizca de sal. Hornea 12 minutos.", "sal"),
        ("it_IT", "200 g di farina", "Unire un pizzico di sale. Infornare.", "sale"),
        ("nl_NL", "200 g bloem", "Voeg een snufje zout toe. Bak 12 minuten.", "zout"),
        ("sv_SE", "200 g vetemjöl", "Tillsätt en nypa salt. Grädda.", "salt"),
        ("da_DK", "200 g hvedemel", "Tilsæt et nip salt. Bag.", "salt"),
    ],
)  # fmt: skip
def test_a_pinch_in_the_method_is_listed(language: str, line: str, method: str, salt: str) -> None:
    assert any(salt in text for text in listed((line,), method, language))


@pytest.mark.parametrize(
    "method",
    [
        "Rub with salt and rinse. Bake at 180 °C.",
        "Cook in boiling salted water. Drain.",
        "Sprinkle the aubergines with salt, leave for an hour, rinse. Bake.",
        "Bake without salt at 180 °C.",
        "No pinch of salt goes in. Bake at 180 °C.",
    ],
)
def test_salt_that_does_not_stay_is_not(method: str) -> None:
    assert not any("salt" in text for text in listed(("1 kg aubergines",), method, "en_GB"))
