"""A few words that head a paragraph of a method: a heading, or a step, and never both.

Invented, after a letter of strangers that headed each paragraph of its method so (November 2026).
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, steps

TOLD = {
    "en_GB": "Wash the quinces well and take out their seeds, then cut them small.",
    "de_DE": "Die Quitten gut waschen, die Kerne herausnehmen und alles klein schneiden.",
    "fr_FR": "Laver bien les coings, retirer les pépins et couper le tout en morceaux.",
    "it_IT": "Lavare bene le cotogne, togliere i semi e tagliare tutto a pezzetti.",
    "es_ES": "Lava bien los membrillos, retira las semillas y corta todo en trozos.",
    "nl_NL": "Was de kweeperen goed, haal de pitten eruit en snijd alles klein.",
    "sv_SE": "Tvätta kvittenen väl, ta bort kärnorna och skär allt i små bitar.",
    "pl_PL": "Umyć dobrze pigwy, usunąć pestki i pokroić wszystko na małe kawałki.",
}
HEADS = {
    "en_GB": ["Preparing of the quinces", "Cooking of the cut quinces", "Cook over low heat"],
    "de_DE": ["Vorbereitung der vielen Quitten", "Kochen der Quitten im Topf", "Langsam kochen"],
    "fr_FR": ["Préparation de tous les coings", "Cuisson de tous les coings", "Cuire à feu doux"],
    "it_IT": ["Preparazione delle mele cotogne", "Cottura delle mele cotogne", "Cuocere piano"],
    "es_ES": [
        "Preparación de los membrillos",
        "Cocción de los membrillos",
        "Cocinar a fuego lento",
    ],
    "nl_NL": ["Voorbereiding van de kweeperen", "Koken van de kweeperen", "Kook het heel zacht"],
    "sv_SE": ["Förberedelse av alla kvitten", "Kokning av alla kvitten", "Koka på svag värme"],
    "pl_PL": ["Przygotowanie wszystkich pigw", "Gotowanie wszystkich pigw", "Gotować powoli"],
}
TOP = "Quince jam\n\nIngredients\n- 1 kg quinces\n- 500 g sugar\n\nMethod\n\n"


@pytest.mark.parametrize("between", ["\n", "\n\n"])
@pytest.mark.parametrize("language", TOLD)
def test_words_that_head_the_paragraphs_of_a_method_are_its_headings(
    language: str, between: str
) -> None:
    told = TOLD[language]
    (found,) = brought(TOP + "\n\n".join(f"{one}{between}{told}" for one in HEADS[language]))
    assert steps(found) == [told] * 3
    assert [row[4:] for row in found.text.split("\n") if row.startswith("### ")] == HEADS[language]


@pytest.mark.parametrize(
    ("language", "short"),
    [
        ("en_GB", ["Wash all of the jars", "Boil the plums with sugar"]),
        ("en_GB", ["Boil for 10 minutes", "Leave for 2 days"]),
        ("de_DE", ["Alle Gläser gründlich waschen", "Die Quitten im Topf kochen"]),
        ("fr_FR", ["Laver tous les bocaux vides", "Ajouter le sucre et remuer"]),
        ("it_IT", ["Lavare bene tutti i vasetti", "Aggiungere lo zucchero e mescolare"]),
        ("es_ES", ["Lavar bien todos los frascos", "Añadir el azúcar y remover"]),
        ("nl_NL", ["Was alle potten heel goed", "Kook het fruit met suiker"]),
        ("sv_SE", ["Tvätta alla burkar mycket noga", "Koka frukten med socker"]),
        ("pl_PL", ["Umyć dobrze wszystkie słoiki", "Zagotować syrop z cukru"]),
    ],
)
def test_short_steps_without_a_stop_between_paragraphs_stay_steps(
    language: str, short: list[str]
) -> None:
    told = TOLD[language]
    (found,) = brought(TOP + "\n\n".join(f"{one}\n\n{told}" for one in short))
    assert steps(found) == [short[0], told, short[1], told]
    assert "### " not in found.text


@pytest.mark.parametrize(
    ("last", "doubted"),
    [
        ("Zagotować syrop z cukru, wanilii i szklanki wody.", False),
        ("Wymieszać, rozlać do butelek, szczelnie zamknąć.", False),
        ("Upiec na złoto i zdjąć z blachy, kiedy ostygnie.", False),
        ("Ilość cukru była u nas w domu zawsze sporna.", True),
        ("Część naszej rodziny woli to bez cukru i rumu.", True),
    ],
)
def test_polish_infinitives_are_work_and_nouns_in_the_same_letters_are_none(
    last: str, doubted: bool
) -> None:
    (found,) = brought(f"{TOP}{TOLD['es_ES']}\n\n{last}\n", "pl_PL")
    assert ("part of the method?" in asked(found)) is doubted
