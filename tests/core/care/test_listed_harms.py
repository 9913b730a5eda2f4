"""What a line lists beside its first food is told of as that is: "thyme, comfrey and sage".

Only the first food's dangers were told before 30 November 2026.
"""

from __future__ import annotations

import pytest

from care_cases import rules_of_text


def _rules(line: str, base: str = "500 g flour", kind: str = "bake") -> frozenset[str]:
    return rules_of_text(
        f"---\ntitle: A thing\nkind: {kind}\nmakes: 1 kg\ningredients:\n  - {base}\n"
        f'  - "{line}"\n---\n\n## Method\n\n1. Mix.\n2. Pack into jars and seal.\n'
    )


@pytest.mark.parametrize(
    ("line", "rule"),
    [
        ("Almonds, wild garlic and angelica", "look-alike"),
        ("Almonds and wild garlic", "look-alike"),
        ("cherries and fresh angelica", "look-alike"),
        ("thyme, comfrey and sage", "liver-herb"),
        ("thyme, comfrey, sage", "liver-herb"),
        ("herbs (thyme, comfrey, sage)", "liver-herb"),
        ("vanilla, star anise and cinnamon", "star-anise"),
        ("pepper and liquorice", "liquorice"),
        ("cinnamon and wormwood", "thujone"),
        ("salt and rhubarb leaves", "toxic-plant"),
        # asked about, and named all the same
        ("Almonds, wild garlic", "look-alike"),
        ("200 g walnuts, comfrey leaves", "liver-herb"),
    ],
)
def test_the_others_of_a_list_are_told_of(line: str, rule: str) -> None:
    assert rule in _rules(line)


def test_garlic_of_a_list_lies_under_the_oil() -> None:
    assert "low-acid-in-oil" in _rules("chillies and garlic", "500 ml olive oil", "preserve")


@pytest.mark.parametrize("line", ["garlic", "dill and garlic", "dill, garlic", "garlic and dill"])
def test_what_is_low_in_acid_is_weighed_in_a_list_as_alone(line: str) -> None:
    assert "low-acid-sealed" in _rules(line, "500 ml white wine vinegar, 5%", "preserve")


@pytest.mark.parametrize(
    "line", ["400 g onions and garlic", "400 g carrots, cauliflower and onions"]
)
def test_what_a_line_weighs_it_weighs_of_all_its_foods(line: str) -> None:
    assert "low-acid-sealed" not in _rules(line, "500 ml white wine vinegar, 5%", "preserve")


@pytest.mark.parametrize(
    "line",
    ["cherries and angelica", "A few currants, cherries, or angelica", "butter, softened",
     "200 g dried apricots and walnut kernels", "thyme, rosemary and sage"],
)  # fmt: skip
def test_what_does_no_harm_is_not(line: str) -> None:
    harms = {"look-alike", "foraged", "liver-herb", "cyanide-kernels", "star-anise", "thujone"}
    assert not _rules(line) & harms
