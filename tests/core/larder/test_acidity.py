"""How acid a staple is: by its own word, or by its tags and its water."""

from __future__ import annotations

import pytest

from stillroom.core.lines.staple_table import all_staples

# Which side of pH 4.6 a food lies on is from USDA's Complete Guide, guide 1 (from memory); dry
# things are those whose water stands in the table of staples.
ROWS = [
    ("lemon juice", "acid"),
    ("cider vinegar", "acid"),
    ("quince", "acid"),
    ("red wine", "acid"),
    ("jam", "acid"),
    ("prepared mustard", "acid"),
    ("tomato", "borderline"),
    ("fig", "borderline"),
    ("elderberry", "borderline"),
    ("garlic", "low"),
    ("onion", "low"),
    ("banana", "low"),
    ("basil", "low"),
    ("mushroom", "low"),
    ("cooked beans", "low"),
    ("whole milk", "low"),
    ("cream liqueur", "low"),
    ("cheddar", "low"),
    ("eggs", "low"),
    ("anchovy", "low"),
    ("lemon peel", "low"),
    ("coconut milk", "low"),
    ("chestnuts", "low"),
    ("elderflower", "low"),
    ("mayonnaise", "low"),
    ("granulated sugar", "dry"),
    ("honey", "dry"),
    ("salt", "dry"),
    ("vodka", "dry"),
    ("olive oil", "dry"),
    ("dried rosemary", "dry"),
    ("dried mushroom", "dry"),
    ("dried apricot", "dry"),
    ("milk powder", "dry"),
    ("chickpeas", "dry"),
    ("star anise", "dry"),
    ("dark chocolate", "dry"),
    ("sugar syrup", None),  # half water: a mould grows on it
    ("water", None),
    ("beer", None),
]


@pytest.mark.parametrize(("name", "acidity"), ROWS, ids=[row[0] for row in ROWS])
def test_acidity_follows_from_what_is_known(name: str, acidity: str | None) -> None:
    assert all_staples()[name].acidity == acidity


def test_nothing_wet_and_sweet_alone_counts_as_dry() -> None:
    wet = {
        name
        for name, staple in all_staples().items()
        if staple.acidity == "dry"
        and staple.composition
        and staple.composition.water is not None
        and staple.composition.water > 35
    }
    spirits = {name for name in wet if "spirit" in all_staples()[name].tags}
    # its composition is that of the fresh peel
    assert wet - spirits == {"dried orange slice"}
