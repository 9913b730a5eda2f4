"""Tending that changes its rhythm, and the first part of a wait that is tended otherwise.

Two of the methods are of sloe gin on public pages read on 30 November 2026, cut down to the fact;
the others say the same in other words and languages. The third column is whether the page must say
that a length was not told: "then weekly".
"""

from __future__ import annotations

import pytest

from stillroom.core.recipe.method_times import times_in_method
from stillroom.core.recipe.model import MethodStep
from stillroom.core.recipe.times_not_read import times_not_read

METHODS = [
    (
        "Shake daily for 2 weeks, then weekly.",
        "shake: every day for 2 weeks",
        True,
    ),
    (
        "Shake daily for two weeks, then weekly until Christmas.",
        "shake: every day for 2 weeks",
        True,
    ),
    (
        "Shake the jar daily for 2 weeks, then once a week for a month.",
        "shake: every day for 2 weeks; shake: once a week for 1 month",
        False,
    ),
    (
        "Leave for 3 months, shaking daily for the first 2 weeks, then weekly.",
        "shake: every day for 2 weeks; shake: every week for 11 weeks",
        False,
    ),
    (
        "Leave for 3 months. Shake daily for the first 2 weeks, then weekly.",
        "shake: every day for 2 weeks; shake: every week for 11 weeks",
        False,
    ),
    (
        "Shake daily for the first week and weekly after that for 3 months.",
        "shake: every day for 1 week; shake: every week for 3 months",
        False,
    ),
    (
        "Shake every day for a week, then every week for two months.",
        "shake: every day for 1 week; shake: every week for 2 months",
        False,
    ),
    (
        "Turn the jar daily for the first week, then leave undisturbed for 2 months.",
        "turn: every day for 1 week; rest: 2 months",
        False,
    ),
    (
        "Stir every day for 5 days, then every other day for 2 weeks.",
        "stir: every day for 5 days; stir: every other day for 2 weeks",
        False,
    ),
    (
        "Keep for three months, rack again.",
        "rest: 3 months",
        False,
    ),
    (
        "Keep for three months, then rack again.",
        "rest: 3 months",
        False,
    ),
    (
        "Rack into a clean jar, keep for three months, rack again and keep another three "
        "months before bottling.",
        "rest: 3 months; rest: 3 months",
        False,
    ),
    (
        "Shake daily for the first week, then once a week for the next three weeks.",
        "shake: every day for 1 week; shake: once a week for 3 weeks",
        False,
    ),
    (
        "Leave in a dark place, shaking every day at first and then weekly, for 3 months.",
        "rest: 3 months",
        False,
    ),
    (
        "Shake it every day for a week, and after that once a week for six weeks.",
        "shake: every day for 1 week; shake: once a week for 6 weeks",
        False,
    ),
    (
        "Leave for two weeks, shaking every day, then strain.",
        "shake: every day for 2 weeks",
        False,
    ),
    (
        "For the first week shake daily, after that weekly, for 8 weeks in all.",
        "shake: every day for 1 week; shake: every week for 7 weeks",
        False,
    ),
    (
        "For the first fortnight, shake every day; thereafter once a week.",
        "shake: every day for 2 weeks",
        True,
    ),
    (
        "2 Wochen lang täglich schütteln, danach wöchentlich.",
        "shake: every day for 2 weeks",
        True,
    ),
    (
        "Die ersten zwei Wochen täglich schütteln, danach einmal pro Woche, insgesamt 3 Monate.",
        "shake: every day for 2 weeks; shake: every week for 11 weeks",
        False,
    ),
    (
        "Agiter tous les jours pendant 2 semaines, puis une fois par semaine.",
        "shake: every day for 2 weeks",
        True,
    ),
    (
        "Remuer tous les jours la première semaine puis une fois par semaine pendant deux mois.",
        "shake: every day for 1 week; shake: every week for 2 months",
        False,
    ),
    (
        "Store in a cool, dark cupboard and shake every other day for a week. Then shake once "
        "a week for at least two months.",
        "shake: every other day for 1 week; shake: once a week for 2 months",
        False,
    ),
    (
        "Pop on the lid and shake well every day for the first week, or until the sugar is "
        "completely gone. After that, shake weekly until Christmas.",
        "shake: every day for 1 week",
        True,
    ),
    (
        "Leave in a dark place for three months, shaking daily for the first week and weekly "
        "thereafter.",
        "shake: every day for 1 week; shake: every week for 12 weeks",
        False,
    ),
    (
        "Store in a dark place. Shake daily for the first week and weekly thereafter. Strain "
        "after three months.",
        "shake: every day for 1 week; shake: every week for 12 weeks",
        False,
    ),
    (
        "Shake daily for 2 weeks, then weekly. Strain after 3 months.",
        "shake: every day for 2 weeks; shake: every week for 11 weeks",
        False,
    ),
    (
        "Leave to infuse for 6 weeks, shaking every day for the first week.",
        "shake: every day for 1 week; infuse: 5 weeks",
        False,
    ),
    (
        "Steep for 4 weeks, stirring daily for the first 3 days.",
        "stir: every day for 3 days; steep: 25 days",
        False,
    ),
    (
        "Steep for 3 months. Turn daily in the first week.",
        "turn: every day for 1 week; steep: 12 weeks",
        False,
    ),
    (
        "Shake every day for two weeks. Leave for two months.",
        "shake: every day for 2 weeks; rest: 2 months",
        False,
    ),
    (
        "Shake every day for two weeks, strain, then leave for 3 months.",
        "shake: every day for 2 weeks; rest: 3 months",
        False,
    ),
    (
        "4 Wochen ziehen lassen, in der ersten Woche täglich schütteln.",
        "shake: every day for 1 week; steep: 3 weeks",
        False,
    ),
    (
        "Lasciare macerare per 40 giorni, agitando ogni giorno la prima settimana.",
        "shake: every day for 1 week; macerate: 33 days",
        False,
    ),
    (
        "Låt dra i 6 veckor. Skaka varje dag första veckan, sedan en gång i veckan.",
        "shake: every day for 1 week; shake: every week for 5 weeks",
        False,
    ),
    (
        "Faire macérer 2 mois en remuant tous les jours la première semaine.",
        "shake: every day for 1 week; macerate: 54 days",
        False,
    ),
    (
        "Dejar macerar 3 meses, agitando a diario la primera semana y luego una vez por semana.",
        "shake: every day for 1 week; shake: every week for 12 weeks",
        False,
    ),
    (
        "Laat 6 weken trekken. Schud de eerste week dagelijks, daarna wekelijks.",
        "shake: every day for 1 week; shake: every week for 5 weeks",
        False,
    ),
    (
        "Lad det trække i 2 måneder. Ryst glasset dagligt den første uge, derefter en gang om "
        "ugen.",
        "shake: every day for 1 week; shake: every week for 54 days",
        False,
    ),
    (
        "Die erste Woche täglich schütteln, dann 5 Wochen ruhen lassen.",
        "shake: every day for 1 week; rest: 5 weeks",
        False,
    ),
]


@pytest.mark.parametrize(("text", "waits", "asked"), METHODS)
def test_a_rhythm_that_changes_is_one_wait(text: str, waits: str, asked: bool) -> None:
    steps = (MethodStep(text, "", 7),)
    assert ("; ".join(one.as_written for one in times_in_method(steps)) or "-") == waits
    assert bool(times_not_read(steps)) is asked
