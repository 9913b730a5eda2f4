"""Money to the penny, against the decimal module."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.amounts.money import parse_money, share_out, show_money, to_coins, to_decimal
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.words.problems import Unreadable

pence = st.integers(0, 10**7)


@given(st.lists(pence, max_size=30))
def test_sums_agree_with_decimal(prices):
    typed = [f"{Decimal(price).scaleb(-2)}" for price in prices]
    total = sum((parse_money(price) for price in typed), Fraction(0))
    assert to_decimal(total) == sum((Decimal(price) for price in typed), Decimal(0)).quantize(
        Decimal("0.01")
    )


@given(st.integers(0, 10**6), st.integers(1, 997))
def test_rounding_agrees_with_decimal(top, bottom):
    exact = Fraction(top, bottom)
    halved = Decimal(top) / Decimal(bottom)
    expected = halved.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)
    assert to_decimal(exact) == expected


@given(pence, st.lists(st.fractions(0, 1000), min_size=1, max_size=20))
def test_shares_add_up_and_stay_near(total, weights):
    whole = Fraction(total, 100)
    shares = share_out(whole, weights)
    assert sum(shares) == whole
    if sum(weights):
        for share, weight in zip(shares, weights, strict=True):
            assert abs(share - whole * weight / sum(weights)) < Fraction(1, 100)
            assert to_coins(share) == share * 100


@pytest.mark.parametrize("text", ["12,5x", "", "two", "1.234", "-3"])
def test_not_a_price(text):
    with pytest.raises(Unreadable):
        parse_money(text)


# names of money in one and in several, by CLDR through Babel; an English book may say "kroner"
IN_WORDS = [
    ("16 Euro", "EUR", "de", 16), ("40 Kronen", "NOK", "de", 40), ("40 kroner", "DKK", "en_GB", 40),
    ("40 kronor", "SEK", "sv", 40), ("5 korun", "CZK", "cs", 5), ("5 złotych", "PLN", "pl", 5),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "currency", "language", "sum_"), IN_WORDS)
def test_money_in_words_is_read(typed, currency, language, sum_):
    assert parse_money(typed, currency, language) == sum_


@pytest.mark.parametrize("typed", ["5 euros", "5 dollars", "5 kroner", "5 francs"])
def test_money_of_elsewhere_in_words_is_told(typed):
    with pytest.raises(Unreadable, match="not in the money used here"):
        parse_money(typed)


# pounds are money beside the size of a pack, and where either can be meant it is asked
POUNDS = [
    ("700 ml for 16 pounds", "700 ml", 16), ("1 kg for 1 pound", "1 kg", 1),
    ("2 lb for 3 pounds", "2 lb", 3), ("2 pounds for 3 pounds", "2 lb", 3),
    ("16 pounds for 700 ml", "700 ml", 16), ("12 eggs for 3 pounds", "12", 3),
    ("2.50 for 16 pounds", "16 lb", Fraction(5, 2)), ("£3 for 2 pounds", "2 lb", 3),
    ("2 pounds for 3.50", "2 lb", Fraction(7, 2)), ("2 a pound", "1 lb", 2),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "size", "sum_"), POUNDS)
def test_pounds_beside_a_size(typed, size, sum_):
    amount, price, _ = parse_pack(typed)
    assert (f"{amount.low} {amount.unit}".strip(), price) == (size, sum_)


def test_pounds_that_may_be_either_are_asked_about():
    with pytest.raises(Unreadable, match="can be a weight or a price"):
        parse_pack("6 for 3 pounds")
    assert parse_pack("6 for 3.00")[1] == 3
    assert parse_pack("3 for 2 pounds", "USD", "metric", "en_US")[0].unit == "lb"


# shown form by CLDR, through Babel
@pytest.mark.parametrize(
    ("value", "currency", "language", "shown"),
    [
        ("12.5", "GBP", "en_GB", "£12.50"),
        ("3", "USD", "en_US", "$3.00"),
        ("7", "JPY", "en_GB", "JP¥7"),
    ],
)
def test_shown_in_the_books_currency(value, currency, language, shown):
    assert show_money(Fraction(value), currency, language) == shown


@pytest.mark.parametrize(
    "typed", ["14,50", "1,5", "1,50,000", "1,2345", "9" * 30, "٣", "1.1234567891"]
)
def test_a_comma_is_thousands_or_asked_for(typed):
    with pytest.raises(Unreadable):
        parse_money(typed)


@pytest.mark.parametrize(
    ("typed", "sum_"), [("1,500", 1500), ("£1,234,567.50", Fraction("1234567.5"))]
)
def test_thousands_are_read(typed, sum_):
    assert parse_money(typed) == sum_


# decimal and group signs by CLDR; the sums as written in the giving lists of each country
BY_LANGUAGE = [
    ("14,50", "de", "14.5"), ("1.450", "de", "1450"), ("1.450,50 €", "de", "1450.5"),
    ("14.50", "de", "14.5"), ("12,-", "de", "12"), ("1 450,50", "fr", "1450.5"),
    ("1 450,50", "fr", "1450.5"), ("14,50 €", "fr", "14.5"), ("1’450.50", "de_CH", "1450.5"),
    ("1'450.50", "de_CH", "1450.5"), ("CHF 12.-", "de_CH", "12"), ("€ 14,50", "nl", "14.5"),
    ("14,5", "it", "14.5"), ("kr 14,50", "nb_NO", "14.5"), ("1,450.50", "en_GB", "1450.5"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "language", "sum_"), BY_LANGUAGE)
def test_a_price_is_read_as_its_language_writes_it(typed, language, sum_):
    money = {"de_CH": "CHF", "nb_NO": "NOK", "en_GB": "GBP"}.get(language, "EUR")
    assert parse_money(typed, money, language) == Fraction(sum_)


@pytest.mark.parametrize(("typed", "currency"), [
    ("$2", "GBP"), ("2 €", "GBP"), ("£2", "EUR"), ("2 USD", "EUR"),
    ("CHF 2", "EUR"), ("kr 2", "GBP"),
])  # fmt: skip
def test_another_money_is_never_taken_for_the_lists_own(typed, currency):
    with pytest.raises(Unreadable):
        parse_money(typed, currency)


@pytest.mark.parametrize(("typed", "currency", "language", "sum_"), [
    ("A$2", "AUD", "en_AU", 2), ("$2", "CAD", "en_CA", 2), ("2 Euro", "EUR", "de", 2),
    ("85 Cent", "EUR", "de", "0.85"), ("99¢", "USD", "en_US", "0.99"),
    ("3.50 Fr.", "CHF", "de_CH", "3.5"),
    ("12 zł", "PLN", "pl", 12), ("2 dollars", "USD", "en_US", 2), ("85p", "GBP", "en_GB", "0.85"),
])  # fmt: skip
def test_the_signs_of_a_money_are_known(typed, currency, language, sum_):
    assert parse_money(typed, currency, language) == Fraction(sum_)


@pytest.mark.parametrize(
    ("typed", "language"),
    [("14,50", "en_GB"), ("1.4500", "de"), ("14,500", "de"), ("1.450", "en_GB"), ("1.5.0", "de")],
)
def test_what_may_be_a_thousand_or_not_is_asked(typed, language):
    with pytest.raises(Unreadable):
        parse_money(typed, "EUR", language)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        # a word behind a sum is no other country's money, and the sum is given back as typed
        ("12.50 pears", '"12.50 pears" is not a price. Write "12.50".'),
        ("12,50 or thereabouts", '"12,50 or thereabouts" is not a price. Write "12.50".'),
        ("3 plums", '"3 plums" is not a price. Write "14.50".'),
        ("¤ 3", '"¤ 3" is not in the money used here, which is GBP. Write the sum in GBP.'),
    ],
)
def test_what_is_no_price_is_told_by_what_was_typed(typed: str, told: str) -> None:
    with pytest.raises(Unreadable) as wrong:
        parse_money(typed)
    assert str(wrong.value) == told
