"""The QR code's size, quiet zone and content."""

import random
import re

import pytest
import segno

from stillroom.core.paper.qr_code import SMALLEST_MODULE_MM, draw_qr
from stillroom.core.paper.qr_mask import best_rows
from stillroom.core.words.problems import Unreadable


@pytest.mark.parametrize("length", [10, 40, 80, 200])
def test_modules_are_never_under_the_stated_size(length: int) -> None:
    code = draw_qr("https://book.example/" + "r" * length)
    modules = int(re.search(r'viewBox="0 0 (\d+)', code.svg)[1])  # type: ignore[index]
    assert code.size_mm / modules >= SMALLEST_MODULE_MM
    assert (modules - 8 - 17) % 4 == 0  # ISO/IEC 18004: a side is 17 + 4 x version


def test_four_modules_stay_white_all_round() -> None:
    starts = re.findall(
        r"M(\d+) (\d+)h", draw_qr("https://book.example/r/a/").svg.split("crispEdges")[1]
    )
    assert min(int(x) for x, _ in starts) == 4
    assert min(int(y) for _, y in starts) == 4


@pytest.mark.parametrize("address", ["", "x" * 301])
def test_no_code_for_no_address_or_an_endless_one(address: str) -> None:
    with pytest.raises(Unreadable):
        draw_qr(address)


def test_a_module_too_small_to_print_is_refused() -> None:
    with pytest.raises(Unreadable):
        draw_qr("https://book.example/", module_mm=0.3)


@pytest.mark.parametrize("signs", ["0123456789", "ABCDEFG $%*+-./:", "abcxyz/-0189", "aß€ü"])
def test_the_mask_is_the_one_that_the_standard_chooses(signs: str) -> None:
    """A second maker of codes tries each mask on each module; versions 1 to 13."""
    dice = random.Random(signs)
    for length in range(1, 240, 9):
        text = "".join(dice.choices(signs, k=length))
        tried = segno.make(text, error="l", boost_error=True, micro=False)
        assert best_rows(text) == tuple("".join(map(str, row)) for row in tried.matrix), text
