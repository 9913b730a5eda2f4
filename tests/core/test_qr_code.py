"""The QR code's size, quiet zone and content."""

import re

import pytest

from stillroom.core.problems import Unreadable
from stillroom.core.qr_code import SMALLEST_MODULE_MM, draw_qr


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
