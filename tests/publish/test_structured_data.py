"""Durations as ISO 8601-1:2019 writes them, and what a page says of itself to programs."""

from __future__ import annotations

import pytest

from stillroom.publish.structured_data import iso_duration

# minutes, duration as written. Source: schema.org Duration with ISO 8601-1:2019
# (reference.md section 10: PT15M, PT1H30M and P14D are its own examples)
DURATIONS = [
    (15, "PT15M"),
    (90, "PT1H30M"),
    (14 * 24 * 60, "P14D"),
    (60, "PT1H"),
    (24 * 60 + 5, "P1DT5M"),
    (0, "PT0M"),
]


@pytest.mark.parametrize(("minutes", "written"), DURATIONS, ids=[row[1] for row in DURATIONS])
def test_durations(minutes: int, written: str) -> None:
    assert iso_duration(minutes) == written
