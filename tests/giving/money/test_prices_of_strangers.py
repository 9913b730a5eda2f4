"""Prices and packs as strangers write them: read as meant, or one question; never another sum.

Written before they were tried (29 November 2026). Read as another sum then: "£.99" as £99, "12 at
55p" as 55 pence for all, "3 for 2" and "a net for £2" without a question. Three rows ask for what
could be read, and one expectation was taken back ("1,000 g" is a thousand to an English reader).
"""

from __future__ import annotations

from fractions import Fraction as F

import pytest

from giving.lists import read_dict, small_list
from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.words.problems import Unreadable

ASK = "ask"
ROWS = [
    ("£3", "GBP", "en_GB", 3),
    ("3.50 €", "EUR", "de_DE", F(7, 2)),
    ("3.50 €", "EUR", "en_IE", F(7, 2)),
    ("1.234,50", "EUR", "de_DE", F(2469, 2)),
    ("1 234,50", "EUR", "fr_FR", F(2469, 2)),
    ("1 234,50", "EUR", "fr_FR", F(2469, 2)),
    ("1 234,50", "SEK", "sv_SE", F(2469, 2)),
    ("3,-", "EUR", "nl_NL", 3),
    ("3,-", "EUR", "de_DE", 3),
    ("3,--", "EUR", "de_DE", 3),
    ("3,—", "EUR", "de_DE", 3),
    ("99p", "GBP", "en_GB", F(99, 100)),
    ("CHF 2.–", "CHF", "de_CH", 2),
    ("CHF 2.-", "CHF", "fr_CH", 2),
    ("2.50 Fr.", "CHF", "de_CH", F(5, 2)),
    ("Fr. 2.50", "CHF", "de_CH", F(5, 2)),
    ("1'250.-", "CHF", "de_CH", 1250),
    ("1’250.50", "CHF", "de_CH", F(2501, 2)),
    ("$4.99", "USD", "en_US", F(499, 100)),
    ("$1,299.00", "USD", "en_US", 1299),
    ("1,299", "USD", "en_US", 1299),
    ("4,99 $", "CAD", "fr_CA", F(499, 100)),
    ("$4.99", "CAD", "en_CA", F(499, 100)),
    ("AU$5", "AUD", "en_AU", 5),
    ("A$5", "AUD", "en_AU", 5),
    ("NZ$5.20", "NZD", "en_NZ", F(26, 5)),
    ("5 quid", "GBP", "en_GB", 5),
    ("two pounds", "GBP", "en_GB", ASK),
    ("£2 10s", "GBP", "en_GB", ASK),
    ("£2.5", "GBP", "en_GB", F(5, 2)),
    ("2.5", "GBP", "en_GB", F(5, 2)),
    ("£ 2 . 50", "GBP", "en_GB", ASK),
    ("£2-50", "GBP", "en_GB", ASK),
    ("£2,50", "GBP", "en_GB", ASK),
    ("2,50", "GBP", "en_GB", ASK),
    ("14,50", "GBP", "en_GB", ASK),
    (".99", "GBP", "en_GB", F(99, 100)),
    ("£.99", "GBP", "en_GB", F(99, 100)),
    ("0,99", "EUR", "it_IT", F(99, 100)),
    (",99", "EUR", "de_DE", F(99, 100)),
    ("1.500", "EUR", "de_DE", 1500),
    ("1,500", "EUR", "de_DE", ASK),
    ("1.500", "GBP", "en_GB", ASK),
    ("1,50", "EUR", "es_ES", F(3, 2)),
    ("1.50", "EUR", "es_ES", F(3, 2)),
    ("€1.50", "EUR", "nl_NL", F(3, 2)),
    ("€ 1,50", "EUR", "nl_NL", F(3, 2)),
    ("1€50", "EUR", "fr_FR", F(3, 2)),
    ("1 € 50", "EUR", "fr_FR", F(3, 2)),
    ("3 euros", "EUR", "fr_FR", 3),
    ("3,50 Euro", "EUR", "de_DE", F(7, 2)),
    ("50 ct", "EUR", "de_DE", F(1, 2)),
    ("50 Cent", "EUR", "de_DE", F(1, 2)),
    ("50 centimes", "EUR", "fr_FR", F(1, 2)),
    ("50 céntimos", "EUR", "es_ES", F(1, 2)),
    ("50c", "EUR", "en_IE", F(1, 2)),
    ("75¢", "USD", "en_US", F(3, 4)),
    ("45 kr", "SEK", "sv_SE", 45),
    ("45:-", "SEK", "sv_SE", 45),
    ("45:50", "SEK", "sv_SE", ASK),
    ("45,-", "NOK", "nb_NO", 45),
    ("kr 45,50", "NOK", "nb_NO", F(91, 2)),
    ("12 zł", "PLN", "pl_PL", 12),
    ("12,50 zł", "PLN", "pl_PL", F(25, 2)),
    ("¥500", "JPY", "ja_JP", 500),
    ("500円", "JPY", "ja_JP", 500),
    ("3 to 4", "GBP", "en_GB", ASK),
    ("3-4", "GBP", "en_GB", ASK),
    ("about 3", "GBP", "en_GB", ASK),
    ("~3", "GBP", "en_GB", ASK),
    ("ca. 3 €", "EUR", "de_DE", ASK),
    ("free", "GBP", "en_GB", ASK),
    ("0", "GBP", "en_GB", 0),
    ("-3", "GBP", "en_GB", ASK),
    ("(3)", "GBP", "en_GB", ASK),
    ("1e3", "GBP", "en_GB", ASK),
    ("3.", "GBP", "en_GB", ASK),
    ("3.00.", "GBP", "en_GB", ASK),
    ("3..00", "GBP", "en_GB", ASK),
    ("£3 each", "GBP", "en_GB", ASK),
    ("£3/kg", "GBP", "en_GB", ASK),
    ("3 €/kg", "EUR", "de_DE", ASK),
    ("£1/2", "GBP", "en_GB", ASK),
    ("£1½", "GBP", "en_GB", ASK),
    ("3£", "GBP", "en_GB", 3),
    ("GBP 3", "GBP", "en_GB", 3),
    ("3 GBP", "GBP", "en_GB", 3),
    ("€3", "GBP", "en_GB", ASK),
    ("$3", "EUR", "de_DE", ASK),
    ("3 USD", "GBP", "en_GB", ASK),
    ("１２", "GBP", "en_GB", ASK),
    ("£12.345", "GBP", "en_GB", ASK),
    ("1.2.3", "EUR", "de_DE", ASK),
    ("1,234,50", "EUR", "de_DE", ASK),
    ("12.34,50", "EUR", "de_DE", ASK),
    ("1 23", "GBP", "en_GB", ASK),
    ("1.00 p", "GBP", "en_GB", ASK),
    ("£1.20p", "GBP", "en_GB", ASK),
    ("120p", "GBP", "en_GB", F(6, 5)),
    ("1.5p", "GBP", "en_GB", ASK),
]
PACKS = [
    ("1 kg for 1.15", "GBP", "en_GB", (1, "kg", F(23, 20), 1)),
    ("1kg £1.15", "GBP", "en_GB", (1, "kg", F(23, 20), 1)),
    ("£1.15/kg", "GBP", "en_GB", (1, "kg", F(23, 20), 1)),
    ("£1.15 per kg", "GBP", "en_GB", (1, "kg", F(23, 20), 1)),
    ("1.15 a kilo", "GBP", "en_GB", (1, "kg", F(23, 20), 1)),
    ("£2.40 a dozen", "GBP", "en_GB", (12, "", F(12, 5), 1)),
    ("a dozen for £2.40", "GBP", "en_GB", (12, "", F(12, 5), 1)),
    ("dozen: 2.40", "GBP", "en_GB", (12, "", F(12, 5), 1)),
    ("3 for 2", "GBP", "en_GB", ASK),
    ("3 for £2", "GBP", "en_GB", (3, "", 2, 1)),
    ("3 for the price of 2", "GBP", "en_GB", ASK),
    ("buy one get one free", "GBP", "en_GB", ASK),
    ("2 for £5", "GBP", "en_GB", (2, "", 5, 1)),
    ("£5 for 2", "GBP", "en_GB", (2, "", 5, 1)),
    ("6 x 200 ml for 4.50", "GBP", "en_GB", (1200, "ml", F(9, 2), 1)),
    ("6x200ml £4.50", "GBP", "en_GB", (1200, "ml", F(9, 2), 1)),
    ("pack of 6 for 4.50", "GBP", "en_GB", (6, "", F(9, 2), 1)),
    ("£4.50 for a pack of 6", "GBP", "en_GB", (6, "", F(9, 2), 1)),
    ("70cl at £16.50", "GBP", "en_GB", (70, "cl", F(33, 2), 1)),
    ("0.7 l - 16.50", "GBP", "en_GB", (F(7, 10), "l", F(33, 2), 1)),
    ("1 pint for 85p", "GBP", "en_GB", (1, "imp_pint", F(17, 20), 1)),
    ("99p each", "GBP", "en_GB", (1, "", F(99, 100), 1)),
    ("each 99p", "GBP", "en_GB", (1, "", F(99, 100), 1)),
    ("99p ea", "GBP", "en_GB", (1, "", F(99, 100), 1)),
    ("a net for £2", "GBP", "en_GB", ASK),
    ("2 punnets 3.00", "GBP", "en_GB", ASK),
    ("a bunch for 80p", "GBP", "en_GB", ASK),
    ("1 for 0.75", "GBP", "en_GB", (1, "", F(3, 4), 1)),
    ("500g 1.20", "GBP", "en_GB", (500, "g", F(6, 5), 1)),
    ("500 g: 1.20", "GBP", "en_GB", (500, "g", F(6, 5), 1)),
    ("500 g = £1.20", "GBP", "en_GB", (500, "g", F(6, 5), 1)),
    ("100g/£0.80", "GBP", "en_GB", (100, "g", F(4, 5), 1)),
    ("80p per 100g", "GBP", "en_GB", (100, "g", F(4, 5), 1)),
    ("80p/100g", "GBP", "en_GB", (100, "g", F(4, 5), 1)),
    ("1 lb for $3.99", "USD", "en_US", (1, "lb", F(399, 100), 1)),
    ("$3.99/lb", "USD", "en_US", (1, "lb", F(399, 100), 1)),
    ("5 lb bag $4", "USD", "en_US", (5, "lb", 4, 1)),
    ("50 or more for 0.48 each", "GBP", "en_GB", (1, "", F(12, 25), 50)),
    ("from 50: 0.48 each", "GBP", "en_GB", (1, "", F(12, 25), 50)),
    ("0.48 each from 50", "GBP", "en_GB", ASK),
    ("1 kg für 1,99 €", "EUR", "de_DE", (1, "kg", F(199, 100), 1)),
    ("1,99 €/kg", "EUR", "de_DE", (1, "kg", F(199, 100), 1)),
    ("1.234,50 € für 100 kg", "EUR", "de_DE", (100, "kg", F(2469, 2), 1)),
    ("0,5 l für 3,-", "EUR", "de_DE", (F(1, 2), "l", 3, 1)),
    ("500 g pour 2,50 €", "EUR", "fr_FR", (500, "g", F(5, 2), 1)),
    ("2 € le kilo", "EUR", "fr_FR", (1, "kg", 2, 1)),
    ("2 € les 500 g", "EUR", "fr_FR", (500, "g", 2, 1)),
    ("10 pour 3 €", "EUR", "fr_FR", (10, "", 3, 1)),
    ("la douzaine 3 €", "EUR", "fr_FR", (12, "", 3, 1)),
    ("1 kg a 2 euro", "EUR", "it_IT", (1, "kg", 2, 1)),
    ("2 €/kg", "EUR", "it_IT", (1, "kg", 2, 1)),
    ("2 € al chilo", "EUR", "it_IT", (1, "kg", 2, 1)),
    ("1 kilo por 2,20 €", "EUR", "es_ES", (1, "kg", F(11, 5), 1)),
    ("2,20 € el kilo", "EUR", "es_ES", (1, "kg", F(11, 5), 1)),
    ("docena 3 €", "EUR", "es_ES", (12, "", 3, 1)),
    ("1 kg voor 1,50", "EUR", "nl_NL", (1, "kg", F(3, 2), 1)),
    ("Dutzend 3 €", "EUR", "de_DE", (12, "", 3, 1)),
    ("3 € das Stück", "EUR", "de_DE", (1, "", 3, 1)),
    ("3 € pro Stück", "EUR", "de_DE", (1, "", 3, 1)),
    ("2 € pièce", "EUR", "fr_FR", (1, "", 2, 1)),
    ("2 € la pièce", "EUR", "fr_FR", (1, "", 2, 1)),
    ("CHF 2.50 / 100 g", "CHF", "de_CH", (100, "g", F(5, 2), 1)),
    ("free", "GBP", "en_GB", ASK),
    ("1 kg", "GBP", "en_GB", ASK),
    ("1.15", "GBP", "en_GB", ASK),
    ("1 kg for about 1.15", "GBP", "en_GB", ASK),
    ("1-2 kg for 3", "GBP", "en_GB", ASK),
    ("1 kg for 1.15 or 2 kg for 2", "GBP", "en_GB", ASK),
    ("1 kg for 1.15 (sale)", "GBP", "en_GB", ASK),
    ("1,5 kg for 3", "GBP", "en_GB", (F(3, 2), "kg", 3, 1)),
    ("1,5 kg für 3 €", "EUR", "de_DE", (F(3, 2), "kg", 3, 1)),
    ("1.5 kg für 3 €", "EUR", "de_DE", (F(3, 2), "kg", 3, 1)),
    ("1.500 g für 3 €", "EUR", "de_DE", ASK),
    ("1,000 g for £3", "GBP", "en_GB", (1000, "g", 3, 1)),
    ("½ kg for 1", "GBP", "en_GB", (F(1, 2), "kg", 1, 1)),
    ("half a pound for 2", "GBP", "en_GB", (F(1, 2), "lb", 2, 1)),
    ("quarter 1.20", "GBP", "en_GB", ASK),
    ("a tray of 30 for £5", "GBP", "en_GB", (30, "", 5, 1)),
    ("box of 12: 6.60", "GBP", "en_GB", (12, "", F(33, 5), 1)),
    ("12 jars 6.60", "GBP", "en_GB", (12, "", F(33, 5), 1)),
    ("12 @ 55p", "GBP", "en_GB", ASK),
    ("12 at 55p each", "GBP", "en_GB", ASK),
    ("2 packs of 500 g for 3", "GBP", "en_GB", (1000, "g", 3, 1)),
    ("750ml bottle, £12", "GBP", "en_GB", (750, "ml", 12, 1)),
]


@pytest.mark.parametrize(("typed", "currency", "language", "meant"), ROWS)
def test_a_sum_is_read_as_meant_or_asked_about(typed, currency, language, meant):
    if meant == ASK:
        with pytest.raises(Unreadable) as asked:
            parse_money(typed, currency, language)
        assert asked.value.mend
    else:
        assert parse_money(typed, currency, language) == meant


@pytest.mark.parametrize(("typed", "currency", "language", "meant"), PACKS)
def test_a_pack_is_read_as_meant_or_asked_about(typed, currency, language, meant):
    system = "us" if language == "en_US" else "metric"
    if meant == ASK:
        with pytest.raises(Unreadable) as asked:
            parse_pack(typed, currency, system, language)
        assert asked.value.mend
    else:
        amount, price, at_least = parse_pack(typed, currency, system, language)
        assert (amount.low, amount.unit, price, at_least) == meant


def test_a_decimal_comma_in_brackets_parts_no_price() -> None:
    packs = ["12 für 6", 60, "1 kg für 1.450", "00"]
    data = small_list(language="de", prices=[{"item": "butter", "packs": packs}])
    (price,) = read_dict(data).giving.prices
    assert [row[1] for row in price.packs] == [F("6.60"), F(1450)]
