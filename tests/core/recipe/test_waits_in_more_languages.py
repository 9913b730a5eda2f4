"""Waits and keeping of methods in Danish, Norwegian, Portuguese, Polish, Dutch, and none too many.

The Danish lines are of a page of such recipes and of one of herbs for snaps, the Polish and
Portuguese of growers' and newspapers' pages (read 30 November 2026); the others are cooks' words.
Expectations were written before the code was asked.
"""

from __future__ import annotations

import pytest

from stillroom.core.method.keeping_opened import opened_in, without_opened
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere, waits_elsewhere
from stillroom.core.recipe.work_elsewhere import work_elsewhere


@pytest.mark.parametrize(
    ("sentence", "span"),
    [
        ("Lad trække i 4 uger et mørkt sted.", "4 weeks"),
        ("Lad det stå og trække i 14 dage.", "14 days"),
        ("Trækker 2-3 dage.", "2-3 days"),
        ("Skal trække 2 måneder.", "2 months"),
        ("Lad den hvile i mindst 2 måneder.", "2 months"),
        ("La det trekke i 4 uker på et mørkt sted.", "4 weeks"),
        ("La stå i 6 uker.", "6 weeks"),
        ("La den hvile i minst 2 måneder.", "2 months"),
        ("Odstawić na 4 tygodnie w ciemne miejsce.", "4 weeks"),
        ("Zostawić na 6 tygodni.", "6 weeks"),
        ("Pozostaw na jeden dzień.", "1 day"),
        ("Deixe repousar pelo menos 2 meses.", "2 months"),
        ("Deixe envelhecer por 5 meses.", "5 months"),
        ("Zet de pot minimaal 4 weken op een donkere plaats.", "4 weeks"),
    ],
)
def test_a_wait_is_read(sentence: str, span: str) -> None:
    assert [str(one.span) for one in waits_elsewhere(sentence)] == [span]


@pytest.mark.parametrize(
    "sentence",
    [
        "Kog det i 10 minutter og rør hele tiden.",
        "Gotuj 20 minut, mieszając.",
        "Mexa sempre durante 5 minutos.",
        "Holder sig 6 måneder køligt og mørkt.",
        "Hæld saften på flasker til 2 glas.",
        "Laat het 5 minuten koken.",
        "Lave 500 g de ameixas e retire os caroços.",
        "Ladle it into 2 jars to the brim.",
    ],
)
def test_what_is_no_wait_is_none(sentence: str) -> None:
    assert not list(waits_elsewhere(sentence))


@pytest.mark.parametrize(
    ("sentence", "span"),
    [
        ("On peut le garder 2 mois au réfrigérateur.", "2 months"),
        ("Conservate non oltre 6 mesi in luogo fresco.", "6 months"),
        ("Dura un anno chiuso.", "1 year"),
        ("Sin abrir dura un año.", "1 year"),
        ("De potjes blijven ongeopend minstens een jaar goed.", "1 year"),
        ("Oöppnad håller den ett år.", "1 year"),
        ("Uåbnet holder den et år.", "1 year"),
        ("Uåpnet holder den et år.", "1 year"),
        ("W lodówce wytrzyma do 3 miesięcy.", "3 months"),
        ("Przechowywać do roku.", "1 year"),
        ("Va consumato entro un anno.", "1 year"),
        ("Se puede conservar en la nevera hasta tres meses.", "3 months"),
        ("In een trommel blijven ze 3 weken vers.", "3 weeks"),
        ("Kan sparas upp till ett halvår.", "6 months"),
        ("De kan gemmes 3 uger i en dåse.", "3 weeks"),
        ("Kan lagres i opptil et halvt år.", "6 months"),
        ("Pode guardar-se no frigorífico até três meses.", "3 months"),
        ("Duram 3 semanas numa lata.", "3 weeks"),
        ("W chłodnym miejscu postoi pół roku.", "6 months"),
        ("Nadaje się do spożycia przez rok.", "1 year"),
    ],
)
def test_how_long_it_keeps_is_read(sentence: str, span: str) -> None:
    assert str(keeps_elsewhere(sentence)) == span


@pytest.mark.parametrize(
    "sentence",
    [
        "Potrete consumarlo dopo tre mesi.",
        "Verbrauchen sollte man ihn erst nach etwa 2 Monaten.",
        "A consommer dans la joie après 3 semaines.",
        "La fermentación dura 2 semanas.",
        "La macerazione dura 40 giorni.",
        "Det blir bra, och grytan håller värmen.",
        "Der skal bruges 2 liter vand.",
        "A fermentação dura 2 semanas.",
        "Glassene brukes i 2 uker til modning.",
    ],
)
def test_an_age_or_a_work_is_no_keeping(sentence: str) -> None:
    assert keeps_elsewhere(sentence) is None


@pytest.mark.parametrize(
    ("sentence", "closed", "opened"),
    [
        ("Uåbnet holder den et år, åbnet en måned på køl.", "Uåbnet holder den et år", "1 month"),
        (
            "Uåpnet holder den et år, åpnet en måned i kjøleskap.",
            "Uåpnet holder den et år",
            "1 month",
        ),
        ("Dura un anno chiuso, aperto un mese in frigo.", "Dura un anno chiuso", "1 month"),
        ("Sin abrir dura un año, una vez abierto un mes.", "Sin abrir dura un año", "1 month"),
        ("Przechowywać do roku, po otwarciu 2 tygodnie.", "Przechowywać do roku", "2 weeks"),
    ],
)
def test_one_that_is_opened_is_told_apart(sentence: str, closed: str, opened: str) -> None:
    assert without_opened(sentence) == closed
    assert str(opened_in([sentence])) == opened


@pytest.mark.parametrize(
    ("sentence", "acts"),
    [
        ("Filtrer og hæld på flaske.", ["strain", "bottle"]),
        ("Sil og hell på flaske.", ["strain", "bottle"]),
        ("Przefiltrować i rozlać do butelek.", ["strain", "bottle"]),
        ("Filtre e engarrafe.", ["strain", "bottle"]),
        ("Kog bærrene møre.", []),
        ("Nie filtrować.", []),
    ],
)
def test_what_is_done_between_waits(sentence: str, acts: list[str]) -> None:
    assert [act for _, act in work_elsewhere(sentence)] == acts
