"""Each choice of colours keeps the contrast that reading wants, by day and by night."""

from __future__ import annotations

import pytest

from stillroom.desk.colours import LEAST, READ_TOGETHER, Palette, contrast, palettes


@pytest.mark.parametrize("palette", palettes().values(), ids=lambda palette: palette.name)
def test_what_is_read_together_is_told_apart(palette: Palette) -> None:
    faint = [
        (ink, ground, round(contrast(colours[ink], colours[ground]), 2))
        for colours in (palette.day, palette.night)
        for ink, ground in READ_TOGETHER
        if contrast(colours[ink], colours[ground]) < LEAST
    ]
    assert faint == []
