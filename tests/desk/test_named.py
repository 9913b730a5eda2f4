"""What is chosen from at the desk by its name."""

from __future__ import annotations

from stillroom.desk.named import currencies


def test_money_is_what_is_paid_with_today() -> None:
    # a newcomer was offered East German marks, and of China and Uruguay no money that shops take
    found = dict(currencies())
    for code in (
        "GBP",
        "EUR",
        "USD",
        "CHF",
        "SEK",
        "PLN",
        "CNY",
        "UYU",
        "INR",
        "JPY",
        "ZAR",
        "MXN",
    ):
        assert code in found
    for code in ("DDM", "SUR", "YUN", "ESA", "BEL", "LUL", "CHW", "UYW", "CNH", "XAU", "XXX"):
        assert code not in found
    assert not [name for name in found.values() if "(" in name or name.startswith("Unknown")]
