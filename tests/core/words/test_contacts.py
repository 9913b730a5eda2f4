"""What is a telephone number or an address of e-mail, and what only looks like one."""

from __future__ import annotations

import pytest

from stillroom.core.words.contacts import find_contacts


# numbers that Ofcom and the North American plan keep for stories, and forms of other countries
@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("07700 900123", "07700 900123"),
        ("Ring Margaret on 01326 555 0123 first.", "01326 555 0123"),
        ("(01632) 960 001", "(01632) 960 001"),
        ("07700900123", "07700900123"),
        ("Tel +44 7700 900 123", "+44 7700 900 123"),
        ("0044 1632 960001", "0044 1632 960001"),
        ("Call 207-555-0142.", "207-555-0142"),
        ("(207) 555-0142", "(207) 555-0142"),
        ("1-207-555-0142", "1-207-555-0142"),
        ("Phone me on 555 0142", "555 0142"),
        ("06 12 34 56 78", "06 12 34 56 78"),
        ("0171/1234567", "0171/1234567"),
        ("0800-1234567", "0800-1234567"),
        ("Write to joan.vane+jam@post.example.org, please.", "joan.vane+jam@post.example.org"),
    ],
)
def test_a_number_or_an_address_is_found(text: str, found: str) -> None:
    assert [said for said, _ in find_contacts(text)] == [found]


@pytest.mark.parametrize(
    "text",
    [
        "Bake at 180-200 C (350-400 F, gas 4-6) for 20-25 minutes.",
        "Heat to 104 C, 219 F, or 78.5 C for 1000 seconds.",
        "From the book of 1998, printed 1902-1903 and 2001-2002.",
        "ISBN 978-0-14-118276-5",
        "ISBN 0-14-118276-5; ISBN: 0141182765; EAN 5012345678900",
        "Made 2027-12-18 10:30, best before 01.02.2028, 01/02/2028 or 01-02-2028.",
        "0.3333333333 of 1000000 g",
        "500 g, 1 000 g, 1,500 g, 250 500 1000 g, 200 250 3000 ml",
        "3 x 250 ml bottles, 20 x 30 x 5 cm, 1 1/2 - 2 1/2 cups",
        "Lot 20271218-04, E 150, batch 0012",
        "Call it done at 105 C; the ring tin of 23 cm holds 1500 2000 ml.",
        "See https://stillroom.example/0770090012345 and www.x.example/07700900123.",
        "The picture plums@2x.png stands beside it, @ 3.50 a kilo.",
        "Call him on 2027-03-20; no. 01600862 (1997); 1 + 250 / 2.165 / 0.6",
        "Directive 2009/48/EC, Regulation (EU) No 1169/2011, 0.5 % to 0.75 %",
    ],
)
def test_figures_of_a_recipe_are_none(text: str) -> None:
    assert [*find_contacts(text)] == []
