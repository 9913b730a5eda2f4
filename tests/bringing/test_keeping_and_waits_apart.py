"""Whether words of a method say how long a thing keeps or how long it waits, in eleven languages.

"Tapar bien y dejar durante una semana." (the steeping of a Spanish liqueur) was taken for a keeping
of one week, since "durante" begins with "dura"; Danish, Norwegian, Portuguese, Polish and Czech
words of keeping were not read at all. The sentences beside those of papers are written for this.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought

LIST = "- 1 kg plums\n- 500 g sugar\n- 1 litre vodka\n"
TEXT = f"Plum liqueur\n\n{LIST}\n## Method\n\n1. Put all in.\n2. {{0}}\n"


@pytest.mark.parametrize(
    "said",
    [
        "Tapar bien y dejar durante una semana.",
        "Dejar reposar durante dos semanas.",
        "Guardar en un lugar oscuro durante un mes y luego filtrar.",
        "Conservare al buio per 30 giorni, poi filtrare.",
        "Conserver à l'abri de la lumière pendant 40 jours, puis filtrer.",
        "4 Wochen dunkel aufbewahren, dann filtern.",
        "Bewaar 4 weken op een donkere plek en zeef dan.",
        "Förvara mörkt i 4 veckor och sila sedan.",
        "Tapar e deixar durante uma semana.",
        "Keep in a dark place for a month, then strain.",
    ],
)
def test_a_wait_is_no_keeping(said: str) -> None:
    (one,) = brought(TEXT.format(said))
    assert "unopened:" not in one.text
    assert "how long it keeps" not in asked(one).lower()


@pytest.mark.parametrize(
    ("said", "span"),
    [
        ("Se conserva durante un año.", "1 year"),
        ("Nach 4 Wochen filtern, dann 1 Jahr haltbar.", "1 year"),
        ("Passato un mese filtrare; si conserva un anno.", "1 year"),
        ("Conserva-se durante um ano.", "1 year"),
        ("Dura até 6 meses no frigorífico.", "6 months"),
        ("Holder sig et år.", "1 year"),
        ("Kan holde i 3 måneder i køleskab.", "3 months"),
        ("Holder seg i ett år.", "1 year"),
        ("Można przechowywać rok.", "1 year"),
        ("Zachowuje trwałość przez 6 miesięcy.", "6 months"),
        ("Vydrží půl roku.", "6 months"),
        ("Once opened store them in the fridge where they will keep for 3+ months.", ""),
    ],
)
def test_a_keeping_is_taken_or_asked_about(said: str, span: str) -> None:
    (one,) = brought(TEXT.format(said))
    assert "how long it keeps" in asked(one).lower()
    assert not span or f"unopened: {span}" in one.text


@pytest.mark.parametrize(
    "said",
    [
        "Keeps until next season.",
        "Der Sirup hält sich ca. bis zur nächsten Holunderblüten-Ernte.",
        "Se garde jusqu'à la prochaine récolte.",
        "Si conserva fino alla prossima stagione.",
        "Se conserva hasta la próxima cosecha.",
        "Blijft goed tot de volgende oogst.",
        "Håller till nästa säsong.",
    ],
)
def test_till_the_next_crop_is_no_length_and_asked_about(said: str) -> None:
    (one,) = brought(TEXT.format(said))
    assert "It is said to keep, and not how long" in asked(one)


def test_till_the_next_day_is_a_wait() -> None:
    (one,) = brought(TEXT.format("Bis zum nächsten Tag ziehen lassen."))
    assert "keep" not in asked(one)


@pytest.mark.parametrize("begun", ["you start to use it", "you have started using them", "in use"])
def test_once_it_is_in_use_it_is_opened(begun: str) -> None:
    said = f"Will keep for a year unopened, but once {begun} use within 3-4 weeks."
    (one,) = brought(TEXT.format(said))
    assert "  unopened: 1 year\n  opened: 3-4 weeks\n" in one.text
