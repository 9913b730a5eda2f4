"""Recipes told in sentences of other languages: their amounts become lines, the rest is named.

The sentences are in the forms of old and new public recipes (1 December 2026): a ratafia of 1829
(fr.wikisource.org), Cajsa Warg's and a household book's gingerbread (sv.wikisource.org,
historiskarecept.sls.fi), "L'arte della cucina" of 1917 (it.wikisource.org), Polish and Norwegian
gingerbread (czasemancypantek.pl, mylittlenorway.com), Portuguese liqueurs and sweets (blogs).
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed
from stillroom.bringing.prose_elsewhere import told_in

TOLD = [
    (
        "fr",
        "Verser dessus six pintes d'eau-de-vie; faites fondre trois livres de sucre "
        "dans une pinte d'eau.",
        ("six pintes d'eau-de-vie", "trois livres de sucre", "une pinte d'eau"),
    ),
    (
        "fr",
        "On y met trente-deux grammes de cannelle et seize grammes de girofle.",
        ("trente-deux grammes de cannelle", "seize grammes de girofle"),
    ),
    (
        "it",
        "Fate macerare in 2 litri di spirito la scorza di un limone, per 2 giorni.",
        ("2 litri di spirito", "la scorza di un limone"),
    ),
    (
        "it",
        "Aggiungete quattro quinti di un litro di alcool a 90° e 5 chiodi di garofano.",
        ("quattro quinti di un litro di alcool a 90°", "5 chiodi di garofano"),
    ),
    (
        "es",
        "En un litro de alcohol de 90 grados se mete un kilo de guindas; luego "
        "setecientos gramos de azúcar.",
        ("un litro de alcohol de 90 grados", "un kilo de guindas", "setecientos gramos de azúcar"),
    ),
    (
        "pt",
        "Bata 8 gemas com 400 gr. de açúcar, misture 250 gr. de farinha de trigo em 10 minutos.",
        ("8 gemas", "400 gr. de açúcar", "250 gr. de farinha de trigo"),
    ),
    (
        "de",
        "500 g Mehl mit 175 g Zucker, 2 Eier und eine Prise Salz verkneten, zwei "
        "Stunden ruhen lassen.",
        ("500 g Mehl", "175 g Zucker", "2 Eier", "eine Prise Salz"),
    ),
    (
        "nl",
        "Los een half pond suiker op in een kwart liter water en schenk er "
        "driekwart liter brandewijn bij.",
        ("een half pond suiker", "een kwart liter water", "driekwart liter brandewijn"),
    ),
    (
        "sv",
        "Lägg däri 3 lod kanel, 1 lod nejlikor, 2 lod pottaska, låt så stå i 4 dygn.",
        ("3 lod kanel", "1 lod nejlikor", "2 lod pottaska"),
    ),
    (
        "da",
        "Til 2 Pund Kirsebær tages 1 Pund Sukker, en halv Pot Eddike; siden 1 Pægel Brændevin.",
        ("2 Pund Kirsebær", "1 Pund Sukker", "en halv Pot Eddike", "1 Pægel Brændevin"),
    ),
    (
        "nb",
        "Et pund sukker settes på ilden med et halvt pund smør, seks merker mel has i.",
        ("Et pund sukker", "et halvt pund smør", "seks merker mel"),
    ),
    (
        "pl",
        "Kwartę miodu smażyć, wsypać garść cukru, dodać pół litra spirytusu i sok z "
        "jednej cytryny.",
        ("Kwartę miodu", "garść cukru", "pół litra spirytusu", "sok z jednej cytryny"),
    ),
]  # fmt: skip


@pytest.mark.parametrize(("tongue", "sentence", "things"), TOLD)
def test_what_a_sentence_measures(tongue: str, sentence: str, things: tuple[str, ...]) -> None:
    assert told_in([sentence], tongue).things == things


@pytest.mark.parametrize(
    ("tongue", "sentence"),
    [
        ("de", "Zwei Stunden in einer großen Schüssel bei 180 Grad auf 3 Blechen backen."),
        ("fr", "Laisser deux jours dans un grand bocal, puis faire une liqueur."),
        ("it", "Lasciate riposare per 4 mesi in un vaso, poi fatene un liquore."),
        ("sv", "Låt stå i 4 dygn i en stenkruka på ett varmt ställe."),
        ("pl", "Piec dwie godziny i odstawić na trzy miesiące."),
        ("nl", "Zet de pot vier weken op een donkere plaats."),
    ],
)
def test_times_vessels_and_what_becomes_of_it_are_no_food(tongue: str, sentence: str) -> None:
    told = told_in([sentence], tongue)
    assert told.things == told.unknown == ()


def test_so_much_to_each_is_asked_and_is_no_amount() -> None:
    (one,) = brought(
        "Liqueur de cassis\n\nIl faut deux litres d'eau-de-vie pour une livre de "
        "cassis; au bout de deux mois filtrer"
        " le jus et mettre 170 gr de sucre par litre de jus; remettre la liqueur dans la cruche.\n",
        "fr_FR",
    )
    assert listed(one) == [
        "deux litres d'eau-de-vie",
        "une livre de cassis",
        "170 gr de sucre par litre de jus",
    ]
    assert "so much to another thing" in asked(one)


def test_what_no_line_has_is_asked_about_by_its_name() -> None:
    (one,) = brought(
        "Licor de nozes verdes\n\nPassam-se pela máquina 1 kg de nozes e põem-se a "
        "macerar com igual quantidade de"
        " aguardente e 4 gr. de canela em pó. Passado um mês, filtra-se tudo e "
        "misture com 1 kg de açúcar.\n",
        "pt_PT",
    )
    assert listed(one) == ["1 kg de nozes", "4 gr. de canela", "1 kg de açúcar"]
    assert 'what the list does not have: "aguardente"' in asked(one)


def test_without_any_amount_each_food_is_asked_about_by_its_name() -> None:
    (one,) = brought(
        "Jødekager\n\nSmør, sukker og mel æltes godt sammen, og dejen rulles ud og "
        "stikkes ud med et glas. Kagerne"
        " pensles med æg og drysses med mandler, og de bages til de er gyldne.\n",
        "da_DK",
    )
    told = asked(one)
    assert all(food in told.lower() for food in ("smør", "mel", "æg", "mandler"))


def test_what_is_measured_of_nothing_known_is_asked_about() -> None:
    (one,) = brought(
        "Pepparkaka av sirap\n\nTag 8 skålpund brunwit och sätt på elden, låt den "
        "sedan stå till dess den blir sval"
        " och lägg däri 3 lod kanel. Låt degen stå i fyra dygn.\n",
        "sv_SE",
    )
    assert listed(one) == ["3 lod kanel"]
    assert '"8 skålpund brunwit"' in asked(one)


def test_what_a_spanish_recipe_is_for_goes_in_and_is_not_made() -> None:
    (one,) = brought(
        "Mantecados\n\nPara tres libras de manteca, el zumo de tres limones y un cuartillo de"
        " leche. Se bate bien la manteca con el limón y se le va añadiendo la leche.\n",
        "es_ES",
    )
    assert fact(one, "makes") == ""
    assert listed(one) == ["el zumo de tres limones", "un cuartillo de leche"]
    assert '"tres libras de manteca"' in asked(one)
