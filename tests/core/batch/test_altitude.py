"""Minutes of boiling by altitude, against the published tables."""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.batch.altitude import (
    jelly_minutes,
    process_minutes,
    setting_point_c,
    sterilise_minutes,
)

FOOT = Fraction("0.3048")
GUIDE_1 = "USDA Complete Guide to Home Canning (AIB 539), Guide 1; reference.md E3"
GUIDE_7 = "USDA Complete Guide to Home Canning (AIB 539), Guide 7; reference.md E3"

# (altitude in m, minutes, source)
STERILISE = [
    (0 * FOOT, 10, GUIDE_1),
    (999 * FOOT, 10, GUIDE_1),
    (1000 * FOOT, 11, GUIDE_1),
    (Fraction(305), 11, GUIDE_1 + ": 305 m are 1,000.66 ft"),
    (5280 * FOOT, 15, GUIDE_1),
    (Fraction(1609), 15, GUIDE_1),
    (6200 * FOOT, 16, GUIDE_1),
    (Fraction(-400), 10, GUIDE_1 + ": never less than at sea level"),
]
JELLY = [
    (0 * FOOT, 5, GUIDE_7),
    (1000 * FOOT, 5, GUIDE_7),
    (1001 * FOOT, 10, GUIDE_7),
    (Fraction(305), 10, GUIDE_7 + ": 305 m are 1,000.66 ft"),
    (6000 * FOOT, 10, GUIDE_7),
    (6001 * FOOT, 15, GUIDE_7),
]


@pytest.mark.parametrize(("metres", "minutes", "source"), STERILISE)
def test_sterilising_takes_longer_higher_up(metres: Fraction, minutes: int, source: str) -> None:
    assert sterilise_minutes(metres) == minutes, source


@pytest.mark.parametrize(("metres", "minutes", "source"), JELLY)
def test_jelly_takes_longer_higher_up(metres: Fraction, minutes: int, source: str) -> None:
    assert jelly_minutes(metres) == minutes, source


def test_a_process_with_other_steps_is_refused() -> None:
    with pytest.raises(ValueError, match="steps of its own"):
        process_minutes(20, 0)


# °F at which jelly sets: USDA Guide 7 and NCHFP, as public pages restate them
@pytest.mark.parametrize(
    ("feet", "sets_f"), [(0, 220), (1000, 218), (2000, 216), (3000, 214), (4000, 212)]
)
def test_jelly_sets_at_a_lower_heat_higher_up(feet: int, sets_f: int) -> None:
    assert setting_point_c(feet * FOOT) * Fraction(9, 5) + 32 == sets_f
