"""Marks that Python's reader of HTML ends at with an error are remarks, as they are in browsers."""

from __future__ import annotations

import pytest

from stillroom.core.reading.markup import LenientHTML


class _Words(LenientHTML):
    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []

    def handle_data(self, data: str) -> None:
        self.words.append(data)


@pytest.mark.parametrize(
    "odd", ["<![x](y)>", "<![CDATA[x]]>", "<![endif]-->", "<![if !IE]>", "<![ >"]
)
def test_an_odd_section_ends_nothing(odd: str) -> None:
    reader = _Words()
    reader.feed(f"<p>before</p>{odd}<p>behind</p>")
    reader.close()
    assert "before" in reader.words
    assert "behind" in "".join(reader.words)
