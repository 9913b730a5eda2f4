"""What a batch makes, as cooks write it: read to the last word, or asked."""

from __future__ import annotations

from fractions import Fraction

import pytest

from stillroom.core.recipe.making import read_making
from stillroom.core.words.problems import Unreadable

# as written -> how many or how much (low, high), its unit, of what, the size of each and its unit
READ = {
    "900 ml": (900, 900, "ml", "", None),
    "about 1.2 kg": ("1.2", "1.2", "kg", "", None),
    "1,500 ml": (1500, 1500, "ml", "", None),
    "24 biscuits": (24, 24, "", "biscuits", None),
    "a dozen biscuits": (12, 12, "", "biscuits", None),
    "2 dozen cookies": (24, 24, "", "cookies", None),
    "Makes 24 biscuits": (24, 24, "", "biscuits", None),
    "6 jars of 200 ml": (6, 6, "", "jars", (200, "ml")),
    "two jars of 300ml": (2, 2, "", "jars", (300, "ml")),
    "8 jars, 300 ml each": (8, 8, "", "jars", (300, "ml")),
    "6 jars (300 ml)": (6, 6, "", "jars", (300, "ml")),
    "6 300 ml jars": (6, 6, "", "jars", (300, "ml")),
    "3 x 250ml jars": (3, 3, "", "jars", (250, "ml")),
    "1 x 2 lb loaf": (1, 1, "", "loaf", (2, "lb")),
    "6 pots de 300 ml": (6, 6, "", "pots", (300, "ml")),
    "4 Gläser à 300 ml": (4, 4, "", "Gläser", (300, "ml")),
    "6-8 jars": (6, 8, "", "jars", None),
    "enough for 6 jars": (6, 6, "", "jars", None),
    "serves 6": (6, 6, "", "servings", None),
    "Serves 4 to 6 people": (4, 6, "", "servings", None),
    "900 g/2 lb": (900, 900, "g", "", None),
    "900 g (2 lb)": (900, 900, "g", "", None),
    "one loaf": (1, 1, "", "loaves", None),
    "a 20 cm cake": (1, 1, "", "20 cm cake", None),
    "24 cm cake": (1, 1, "", "24 cm cake", None),
    "12 (2 inch) squares": (12, 12, "", "(2 inch) squares", None),
    "1 litre of cordial": (1, 1, "l", "cordial", None),
    # more or less: the words about it stood on the page as what is made ("2 jars and a bit overs")
    "6 jars and a bit": (6, 6, "", "jars", None),
    "a 500ml bottle and a wee bit over": (1, 1, "", "bottle", (500, "ml")),
    "30ish biscuits": (30, 30, "", "biscuits", None),
    "30-odd biscuits": (30, 30, "", "biscuits", None),
    "a couple of jars": (2, 2, "", "jars", None),
    "a good litre": (1, 1, "l", "", None),
    "750ml approx": (750, 750, "ml", "", None),
    "a litre, give or take": (1, 1, "l", "", None),
    # as saved guides and pages have it
    "Makes about 6 half-pint (10 fl oz) jars": (6, 6, "", "jars", (Fraction(1, 2), "imp_pint")),
    "4 x 340g/12oz jars": (4, 4, "", "jars", (340, "g")),
    "9 half-pints": (9, 9, "", "jars", (Fraction(1, 2), "imp_pint")),
    # as extension services', canning and family pages say it (read in November 2026)
    "Yield: 9 half-pints": (9, 9, "", "jars", (Fraction(1, 2), "imp_pint")),
    "8 (8-ounce) jars": (8, 8, "", "jars", (8, "oz")),
    "4 (half-pint) jars": (4, 4, "", "jars", (Fraction(1, 2), "imp_pint")),
    "3–4 X 450G JARS": (3, 4, "", "jars", (450, "g")),
    "about 4 doz. cookies": (48, 48, "", "cookies", None),
    "2-3 dozen cookies": (24, 36, "", "cookies", None),
    "3 to 4 dozen cookies": (36, 48, "", "cookies", None),
    "This recipe makes about 1¾ pounds of candy.": ("7/4", "7/4", "lb", "candy", None),
    "knappt 2 liter": (2, 2, "l", "", None),
    "750g de confiture de lait": (750, 750, "g", "confiture de lait", None),
    "7 to 9 pints": (7, 9, "imp_pint", "", None),
    "about 4lbs. of chutney": (4, 4, "lb", "chutney", None),
    "voor 4 potten": (4, 4, "", "potten", None),
    "für 6 Gläser à 300 ml": (6, 6, "", "Gläser", (300, "ml")),
    "pour 6 pots de 300 g": (6, 6, "", "pots", (300, "g")),
    "two and a half bottles": ("5/2", "5/2", "", "bottles", None),
    "12 tubes (4 g each)": (12, 12, "", "tubes", (4, "g")),
    "about 35 oz / 1 litre": (1, 1, "l", "", None),
    "environ 6 pots de 200 g": (6, 6, "", "pots", (200, "g")),
    "etwa 1 Liter": (1, 1, "l", "", None),
    "5 vasetti da 320 g circa": (5, 5, "", "vasetti", (320, "g")),
    "2 flessen van 700 ml": (2, 2, "", "flessen", (700, "ml")),
    "zwei Flaschen zu 700 ml": (2, 2, "", "Flaschen", (700, "ml")),
    "due vasetti da 300 g": (2, 2, "", "vasetti", (300, "g")),
    "4 vasetti da 250 g l’uno": (4, 4, "", "vasetti", (250, "g")),
    "unos 30 mantecados": (30, 30, "", "mantecados", None),
    "± 2 eetlepels": (2, 2, "tbsp", "", None),
}
# what could be two things, or holds a size that would be lost -> a word of the mend
ASKED = {
    "1,5 kg": '"1.5"',
    "4 bocaux d'un demi-litre": "6 jars of 200 ml",
    "up to 24 biscuits": "24 biscuits",
    "2,5 l": '"2.5"',
    "1.500 g": '"1500"',
    "3 pint bottles": '"3 pint" for all',
    "a bottle or so": '"900 ml"',
    "24": '"24 biscuits"',
    "16 (yields 1 cup)": '"900 ml"',
    "24 biscuits (about 600 g in total)": '"900 ml"',
    "12 cookies (makes 2 jars)": '"900 ml"',
    "2 dozen": '"24 biscuits"',
    "lots": '"900 ml"',
    "a little": '"900 ml"',
    "a jar or two": '"900 ml"',
    "1 l 2 l": '"900 ml"',
    "1..2 l": '"2.5"',  # the number itself is told, by the one reader of numbers
    "6 jars of 0 ml": "above 0",
    "0 jars": '"900 ml"',
    "about 4 dozen squares or 1½ pounds": '"900 ml"',  # a family's fudge
    "500 ml and 2 jars": '"900 ml"',
    "8 (8-ounce) jars and 1 pint": '"6 jars of 200 ml"',
    "6 jars of 200 ml and 1 of 100": '"6 jars of 200 ml"',
}


@pytest.mark.parametrize("written", READ)
def test_it_is_read_to_the_last_word(written: str) -> None:
    low, high, unit, things, each = READ[written]
    made = read_making(written, "metric")
    assert (made.amount.low, made.amount.high) == (Fraction(low), Fraction(high))
    assert (made.amount.unit, made.things) == (unit, things)
    assert (made.each and (made.each.low, made.each.unit)) == each


@pytest.mark.parametrize("written", ASKED)
def test_what_could_be_two_things_is_asked(written: str) -> None:
    with pytest.raises(Unreadable) as asked:
        read_making(written, "metric")
    assert ASKED[written] in asked.value.mend


@pytest.mark.parametrize(
    "written",
    [
        "30 truffles, about 500 g",
        "30 truffles (500 g)",
        "24 biscuits, 600 g",
        "40 caramels - 700 g",
        "20 mints, 200 g",
        "6 jars, 1.5 litres",
    ],
)
def test_what_all_of_them_weigh_is_not_the_weight_of_each(written: str) -> None:
    # told as "each" they made fifteen kilograms of truffles
    with pytest.raises(Unreadable, match="may be what all of them weigh together"):
        read_making(written, "metric")


@pytest.mark.parametrize(
    ("written", "each"),
    [
        ("24 biscuits, 25 g each", 25),
        ("6 jars (200 ml)", 200),
        ("12 bottles, 700 ml", 700),
        ("8 loaves, 450 g", 450),
        ("12 bars (100 g)", 100),
        ("20 biscuits of 150 g", 150),
        ("4 puddings, 900 g", 900),
    ],
)
def test_a_size_that_each_may_have_is_of_each(written: str, each: int) -> None:
    made = read_making(written, "metric")
    assert made.each is not None
    assert made.each.middle == each
