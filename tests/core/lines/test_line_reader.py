"""Ingredient lines in the shapes that other people write them, each with its exact value.

The lines of lines.tsv are other people's, the source named by its kind: two publishers' lines with
the labels people gave them, foragers' pages, canning guides, old cookery books, lines in five other
languages; the first hundred are our own after published shapes, and "review" are those that were
found to be misread. Amounts, units and foods of the publishers' lines are their labellers'; the
other outside lines were labelled whole before the reader saw them. "?" marks a line that must be
asked about and never guessed. How well many thousands are read: tests/bench/bench_lines.py.
"""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.amounts.quantities import Amount, Unmeasured
from stillroom.core.lines.ingredient_amount import LineAmount, amount_of_line
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

TABLE = Path(__file__).resolve().parents[2] / "data" / "lines.tsv"
with TABLE.open(encoding="utf-8", newline="") as file:
    ROWS = list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))


def show(amount: Any) -> tuple[str, str]:
    if not isinstance(amount, Amount):
        return getattr(amount, "words", str(amount)), ""
    ends = [str(amount.low)] if amount.low == amount.high else [str(amount.low), str(amount.high)]
    return "-".join(ends), amount.unit or amount.noun


def read(row: dict[str, str]) -> LineAmount:
    return amount_of_line(row["line"], row["system"], row["language"])  # type: ignore[arg-type]


def parts_of(row: dict[str, str]) -> tuple[str, ...]:
    """Return what the reader makes of a row's line, in the columns of the table."""
    try:
        line = read(row)
    except Unreadable as asked:
        return row["line"], "?", asked.what
    also = ";".join(" ".join(show(again)) for again in line.also)
    return row["line"], *show(line.amount), also, line.item, line.note


def test_each_line_is_read_exactly() -> None:
    rows = [row for row in ROWS if row["amount"] != "?"]
    assert len(rows) > 900
    columns = ("line", "amount", "unit", "also", "item", "note")
    wanted = [tuple(row[column] for column in columns) for row in rows]
    assert [parts_of(row) for row in rows] == wanted


@pytest.mark.parametrize(
    "row", [row for row in ROWS if row["amount"] == "?"], ids=lambda r: r["line"]
)
def test_line_that_could_mean_two_things_is_asked(row: dict[str, str]) -> None:
    with pytest.raises(Unreadable) as asked:
        read(row)
    assert asked.value.what
    assert asked.value.mend


def test_packs_and_pieces_weigh_what_they_say() -> None:
    assert amount_of_line("2 x 400 g tins tomatoes", "metric").each_g == 400
    assert amount_of_line("1 (14-oz) can beans", "us").each_g == 14 * Fraction("28.349523125")
    assert amount_of_line("2 sticks butter", "us").each_g == 113
    assert amount_of_line("2 sticks cinnamon", "us").each_g is None
    litres = amount_of_line("6 x 330 ml bottles cider", "metric")
    assert show(litres.amount) == ("1980", "ml")


# Figures of one: USDA SR (a beet 82 g, a peach 150 g). The lines are of a family's canning page
# and of guides of the same shape; a cup or a pint is never the size of a tomato.
@pytest.mark.parametrize(
    ("line", "count", "grams"),
    [
        ("18 medium (8 C) tomatoes", "18", None),
        ("6 medium (2 pints) cucumbers", "6", None),
        ("12 large (1 quart) tomatoes", "12", None),
        ("5 small (12 ounces) beets", "5", 68),
        ("25 medium (5 lb) peaches", "25", 91),
        ("20 (1 kg) plums", "20", 50),
        ("2 (8-ounce) steaks", "2", 227),
        ("4 (8-oz) potatoes", "4", 227),
    ],
)
def test_what_stands_in_brackets_measures_one_pack_or_all_of_the_fruit(
    line: str, count: str, grams: int | None
) -> None:
    read = amount_of_line(line, "us")
    assert isinstance(read.amount, Amount)
    assert show(read.amount) == (count, "")
    assert (read.each_g and round(read.each_g)) == grams


def test_every_part_keeps_its_characters() -> None:
    text = "about 225g/8oz unsalted butter, softened"
    reading = read_line(text)
    cut = {name: text[start:end] for name, (start, end) in reading.spans.items()}
    assert cut == {"amount": "about 225g/8oz", "food": "unsalted butter", "note": "softened"}


@pytest.mark.parametrize(
    "text", ["1" * 5000 + " g salt", "1 g salt\x00", "1 g\x07 salt", "x" * 600, "", "   ", "\u2028"]
)
def test_hostile_lines_are_one_message(text: str) -> None:
    with pytest.raises(Unreadable):
        amount_of_line(text, "metric")


PIECES = st.sampled_from(
    [
        "1",
        "½",
        "1/2",
        "1,5",
        "1.000",
        "g",
        "oz",
        "cup",
        "T",
        "/",
        "(",
        ")",
        "-",
        "x",
        "plus",
        "a",
        "tin",
        "sugar",
        "%",
        "proof",
        ",",
        "of",
        "juice",
        "or",
        "①",
        "1e9",
        "..",
        "½½",
    ]
)


@given(st.lists(PIECES, max_size=12).map(" ".join))
def test_any_pieces_are_read_or_asked(text: str) -> None:
    line = told(text)
    if line is not None:
        assert line.item
        assert isinstance(line.amount, Unmeasured) or line.amount.low > 0  # type: ignore[union-attr]


@given(st.text(max_size=60))
def test_any_text_is_read_or_asked(text: str) -> None:
    line = told(text)
    assert line is None or line.item


@pytest.mark.parametrize("line", ["some", "A few", "un peu", "etwas", "some (warm)"])
def test_an_amount_in_words_of_nothing_is_asked(line: str) -> None:
    assert told(line) is None


def told(text: str) -> LineAmount | None:
    """Read a line, None where it is asked about; anything else that is raised fails the test."""
    try:
        return amount_of_line(text, "us")
    except Unreadable:
        return None


@pytest.mark.parametrize(
    ("line", "mend"),
    [
        ("200 sugar", "200 g"),
        ("½ whole wheat flour", "½ cup"),
        ("2 milk", "2 cups"),
        ("1 tsbp olive oil", '"tbsp"'),
        ("2 tablepoons oil", '"tablespoons"'),
        ("250 Zucker", "250 g"),
        ("1?4 cup honey", ""),
    ],
)
def test_what_is_weighed_or_poured_wants_its_unit(line: str, mend: str) -> None:
    with pytest.raises(Unreadable) as asked:
        amount_of_line(line, "metric")
    assert mend in asked.value.mend


@pytest.mark.parametrize(
    "line", ["2 eggs", "8 anchovies in oil", "2 sugar cubes", "1 cake compressed yeast", "3 limes"]
)
def test_what_is_counted_needs_none(line: str) -> None:
    assert isinstance(read_line(line).amount, Amount)


@pytest.mark.parametrize("line", ["4/5 limoni", "5/6 apples", "7/8 cloves", "\ufffd cup sultanas"])
def test_four_fifths_and_lost_signs_are_asked(line: str) -> None:
    with pytest.raises(Unreadable):
        read_line(line)


@pytest.mark.parametrize(("line", "amount"), [("7/8 cup sugar", "7/8"), ("3/4 onion", "3/4")])
def test_parts_of_a_measure_are_parts(line: str, amount: str) -> None:
    found = read_line(line).amount
    assert isinstance(found, Amount)
    assert found.low == Fraction(amount)


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("1 lemon and a lime", "en_GB"),
        ("1 vanilla pod and a cinnamon stick", "en_GB"),
        ("1 lemon and a half", "en_GB"),
        ("1 Zitrone und 1 Limette", "de_DE"),
        ("eine Zitrone und eine Limette", "de_DE"),
        ("100 g Butter und 50 g Zucker", "de_DE"),
        ("un citron et une orange", "fr_FR"),
        ("1 citron et demi", "fr_FR"),
        ("1 limone e 1 arancia", "it_IT"),
        ("un limone e un'arancia", "it_IT"),
        ("1 limone e mezzo", "it_IT"),
        ("1 limón y 1 lima", "es_ES"),
        ("1 limón y medio", "es_ES"),
        ("1 citroen en 1 sinaasappel", "nl_NL"),
    ],
)
def test_two_things_counted_on_one_line_are_asked(line: str, language: str) -> None:
    with pytest.raises(Unreadable, match="more than one amount"):
        read_line(line, "metric", language)


@pytest.mark.parametrize(
    ("line", "language"),
    [
        ("1 lemon, zest and juice", "en_GB"),
        ("1 tsp salt and pepper", "en_GB"),
        ("1 Prise Salz und Pfeffer", "de_DE"),
        ("1 cucharada de sal y pimienta", "es_ES"),
        ("2 cucchiai di olio e aceto", "it_IT"),
    ],
)
def test_things_joined_without_an_amount_of_their_own_are_read(line: str, language: str) -> None:
    assert isinstance(read_line(line, "metric", language).amount, Amount)


@pytest.mark.parametrize(
    "text",
    [
        "1 cup sugar, 2 eggs",
        "1 cup sugar, 1/2 cup water",
        "500 g flour, sifted, 2 pinches salt",
        "1 litro d’alcool, 1kg di ciliege, 400g di zucchero, 2 stecche di cannella",
        "400 g tomatoes, 2 large onions",
    ],
)
def test_a_second_food_behind_a_comma_is_asked_about(text: str) -> None:
    with pytest.raises(Unreadable, match="more than one amount"):
        read_line(text)


# From the labelled lines of tests/bench/bench_lines.py: of 51,166 with a comma seven are asked.
@pytest.mark.parametrize(
    "text",
    [
        "¼ pound butter (1 stick), softened",
        "2 racks of lamb, 8 bones in each",
        "1 bouquet garni (2 sprigs thyme, 2 bay leaves)",
        "6 eggs, 2 separated",
        "1 orange, 2 strips peel",
        "3 onions, 1 red",
        "200 g dark chocolate, 70% cocoa solids",
        "1 chicken, 3 lb",
    ],
)
def test_what_is_said_of_a_food_behind_a_comma_is_no_second_one(text: str) -> None:
    read_line(text)


@pytest.mark.parametrize(
    ("text", "note"),
    [
        ("1 litro d'alcool a 90°", "90% vol"),
        ("1/2 litro di alcol puro a 95°", "95% vol"),
        ("1 l de aguardiente de 40 grados", "40% vol"),
        ("75 cl eau-de-vie à 45°", "45% vol"),
        ("500 ml Weingeist 96°", "96% vol"),
    ],
)
def test_degrees_of_a_line_in_another_language_are_its_strength(text: str, note: str) -> None:
    """Gay-Lussac's degree is a part in a hundred by volume (EU Directive 80/181, Annex: % vol)."""
    assert read_line(text).note == note


@pytest.mark.parametrize("text", ["500 ml gin 40°", "1 l vodka at 40°"])
def test_degrees_of_an_english_line_are_asked_about(text: str) -> None:
    with pytest.raises(Unreadable, match="not the same strength"):
        read_line(text)


@pytest.mark.parametrize(
    ("text", "item", "unit"),
    [
        ("2green bell peppers, stems removed", "green bell peppers", ""),
        ("1tbls ground ginger", "ground ginger", "tbsp"),
        ("1 tbls salt", "salt", "tbsp"),
        ("5gfresh ginger", "fresh ginger", "g"),
    ],
)
def test_glued_and_shortened_measures(text: str, item: str, unit: str) -> None:
    reading = read_line(text)
    assert (reading.item, reading.amount.unit) == (item, unit)


@pytest.mark.parametrize(
    ("line", "amount", "unit"),
    [  # nobody has thousands of an English kitchen's measures (common practice)
        ("8.625 oz olive oil", Fraction(69, 8), "oz"),
        ("2.375 cups sugar", Fraction(19, 8), "cup"),
        ("1.125 tsp salt", Fraction(9, 8), "tsp"),
    ],
)
def test_thousandths_of_a_kitchens_measure_are_decimals(
    line: str, amount: Fraction, unit: str
) -> None:
    read = read_line(line).amount
    assert isinstance(read, Amount)
    assert (read.low, read.unit) == (amount, unit)


@pytest.mark.parametrize("line", ["1.500 g flour", "2.250 ml oil", "1.200 almonds", "1,250 cups x"])
def test_what_may_be_thousands_is_still_asked(line: str) -> None:
    with pytest.raises(Unreadable, match="two ways"):
        read_line(line)
