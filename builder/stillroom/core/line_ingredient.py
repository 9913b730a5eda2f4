"""What a line says, as the numbers a recipe reckons with: packs, pieces, strengths, pairs.

"2 x 400 g tins" are two tins of 400 g each, "2 x 330 ml bottles" 660 ml; a stick of butter weighs
what an American one does; a pair that disagrees by more than kitchen rounding is told. Uses
line_reader.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.line_reader import LineReading, read_line
from stillroom.core.problems import Unreadable, nearest
from stillroom.core.quantities import Amount, AnyAmount, Unmeasured, parse_amount, show_amount
from stillroom.core.units import System, all_units, convert, size_of, unit_words

# Published British pairs round 25 g to an ounce (28.35 g) and 5 g to a quarter of one (7.1 g): the
# BBC's and the Guild of Food Writers' conversions, as printed in recipes (common practice, no
# published source). Wider than this is no rounding.
_ROUNDED_SHARE = Fraction(16, 100)
_ROUNDED_LEAST = {"mass": Fraction(5), "volume": Fraction(8), "length": Fraction(6)}
_STICK_G = Fraction(113)  # one US stick of butter: USDA SR 01145
_STICK_FOODS = re.compile(r"\b(?:butter|margarine|shortening)\b", re.IGNORECASE)


@dataclass(frozen=True)
class LineAmount:
    """The parts of an ingredient that a line gives; `also` is the same measured again."""

    item: str
    amount: AnyAmount
    note: str
    each_g: Fraction | None = None
    also: tuple[Amount, ...] = ()


def amount_of_line(text: str, system: System, language: str = "en_GB") -> LineAmount:
    """Read an ingredient line for a recipe; raises Unreadable.

    >>> line = amount_of_line("2 x 400 g tins tomatoes", "metric")
    >>> str(line.amount.low), line.amount.noun, line.each_g
    ('2', 'tin', Fraction(400, 1))
    """
    bare = " ".join(text.split())
    ratio = _ratio_behind(bare, system)
    if ratio:
        return ratio
    reading = read_line(bare, system, language)
    amount = reading.amount
    if not isinstance(amount, Amount):
        return LineAmount(reading.item, amount or Unmeasured("as needed"), _note(reading))
    _refuse_misspelt_unit(amount, reading.item, system)
    _compare(amount, reading)
    amount, each_g, size = _packs(amount, reading)
    if amount.noun == "stick" and _STICK_FOODS.search(reading.item):
        each_g = _STICK_G
    note = ", ".join(part for part in (size, _note(reading)) if part)
    return LineAmount(reading.item, amount, note, each_g, reading.also)


def _ratio_behind(text: str, system: System) -> LineAmount | None:
    """Read "cinnamon sticks, 1 per 250 ml of vodka": the only amount that is written of another."""
    item, comma, note = text.partition(",")
    if not comma or " per " not in note or re.match(r"\s*[\d½¼¾⅓⅔⅛]", item):
        return None
    return LineAmount(item.strip(), parse_amount(note.strip(), system), "")


def _note(reading: LineReading) -> str:
    words = reading.fullness
    return ", ".join(part for part in (words, reading.note) if part)


def _packs(amount: Amount, reading: LineReading) -> tuple[Amount, Fraction | None, str]:
    """Return the amount, the grams of one, and the size in words where it is no weight."""
    each = reading.each
    if each is None:
        return amount, None, ""
    size = size_of(each.unit)
    if size == "mass":
        return amount, convert(each.middle, each.unit, "g"), ""
    if size == "volume":
        whole = replace(each, low=each.low * amount.low, high=each.high * amount.high)
        return whole, None, f"{show_amount(amount)} of {show_amount(each)}"
    return amount, None, show_amount(each)


def _compare(amount: Amount, reading: LineReading) -> None:
    """Refuse a second measure that is not the first one again."""
    first = reading.each if reading.each is not None else amount
    if not first.unit:
        return
    for other in reading.also:
        if not other.unit or size_of(other.unit) != size_of(first.unit):
            continue
        again = convert(other.middle, other.unit, first.unit)
        least = _ROUNDED_LEAST[size_of(first.unit)] / all_units()[first.unit].in_base
        if abs(again - first.middle) > max(first.middle * _ROUNDED_SHARE, least):
            raise Unreadable(
                f'"{show_amount(first)}" and "{show_amount(other)}" are not the same amount.',
                "Write the one that is right, or correct the other.",
            )


def _refuse_misspelt_unit(amount: Amount, item: str, system: System) -> None:
    """Refuse "3 cupp sugar" rather than count three of a thing called "cupp sugar"."""
    first, _, rest = item.partition(" ")
    if amount.unit or amount.noun or not rest or len(first) < 3:
        return
    near = nearest(first, [word for word in unit_words(system) if word[0] == first[0]], 0.8)
    if near:
        raise Unreadable(f'"{first}" is not a unit.', f'Did you mean "{near}"?')
