"""What a line says, as the numbers a recipe reckons with: packs, pieces, strengths, pairs.

"2 x 400 g tins" are two tins of 400 g each, "2 x 330 ml bottles" 660 ml; a stick of butter weighs
what an American one does; a pair that disagrees by more than kitchen rounding is told. Uses
line_reader.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.amounts.quantities import (
    Amount,
    AnyAmount,
    Unmeasured,
    parse_amount,
    show_amount,
)
from stillroom.core.amounts.units import System, convert, offered_words, size_of
from stillroom.core.lines.amounts import STICK_FOODS
from stillroom.core.lines.doubts import refuse_counted_mass, spirit_words
from stillroom.core.lines.measures import read_qualifier
from stillroom.core.lines.pairs import compare
from stillroom.core.lines.parts_of_line import LineReading
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.shares import refuse_ratio
from stillroom.core.lines.sizes import bare_words, comma_parts, read_leading
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.nearest import nearest
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

# shortened words that are no unit: sizes, and names
_SHORTENED = frozenset(
    {
        "st.",
        "dr.",
        "no.",
        "mrs.",
        "mr.",
        "opt.",
        "extra.",
        "frz.",
        "lg.",
        "lge.",
        "lrg.",
        "sm.",
        "med.",
    }
)
_FIFTH_ML = 750
_STICK_G = Fraction(113)  # one US stick of butter: USDA SR 01145

_GROWN = frozenset({"fruit", "vegetable", "mushroom", "nut", "egg", "borderline-acid"})
_IN_BOTTLES = frozenset({"alcohol", "beverage", "condiment", "preserved-vegetable"})
# what a measure of volume behind the food is the size of, in the languages of the reader
_HOLDS_A_DRINK = frozenset(
    {"bottle", "flask", "miniature", "flasche", "bouteille", "botella", "bottiglia", "fles"}
    | {"flaska", "flaske", "garrafa", "butelka"}
)
# of these the size behind is that of one where there is one, or where it says so
_HOLDS_ONE = frozenset(
    {"can", "tin", "carton", "brick", "brique", "brik", "boîte", "lata", "lattina", "Dose"}
    | {
        "blik",
        "blikje",
        "burk",
        "paket",
        "pak",
        "pot",
        "tub",
        "bote",
        "dåse",
        "boks",
        "puszka",
        "pacote",
    }
)


@dataclass(frozen=True)
class LineAmount:
    """The parts of an ingredient that a line gives; `also` is the same measured again.

    `pack` is the weight of one as it was written, of which `each_g` is the same in grams.
    """

    item: str
    amount: AnyAmount
    note: str
    each_g: Fraction | None = None
    also: tuple[Amount, ...] = ()
    pack: Amount | None = None


def amount_of_line(text: str, system: System, language: str = "en_GB") -> LineAmount:
    """Read an ingredient line for a recipe; raises Unreadable.

    >>> line = amount_of_line("2 x 400 g tins tomatoes", "metric")
    >>> str(line.amount.low), line.amount.noun, line.each_g
    ('2', 'tin', Fraction(400, 1))
    """
    bare = bare_words(text)
    ratio = _ratio_behind(bare, system)
    if ratio:
        return ratio
    refuse_ratio(bare)
    reading = _with_fifths(_labelled(bare, system, language) or read_line(bare, system, language))
    if not reading.item.strip():  # ", tin 1 g", "some"
        raise Unreadable(f'"{bare.strip()}" does not say what it is.', 'Write "250 g sugar".')
    amount = reading.amount
    if not isinstance(amount, Amount):
        return LineAmount(reading.item, amount or Unmeasured("as needed"), _note(reading))
    _refuse_misspelt_unit(amount, reading.item, system)
    refuse_counted_mass(reading, bare)
    compare(reading.each if reading.each is not None else amount, reading.also)
    reading = _size_behind(amount, reading, system, language)
    amount, each_g, size = _packs(amount, reading)
    pack = reading.each if each_g is not None and not size else None
    if each_g is None and not amount.unit and reading.also and reading.each is None:
        each_g = _weight_of_one(amount, reading.also[0])
    if amount.noun == "stick" and STICK_FOODS.search(reading.item):
        each_g = _STICK_G
    note = ", ".join(part for part in (size, _note(reading)) if part)
    return LineAmount(reading.item, amount, note, each_g, reading.also, pack)


_LABEL = late_regex(r"\s*(?P<label>[^\W\d][^:]{1,40}?)\s*:\s+(?P<said>\S.*)$")


def _labelled(text: str, system: System, language: str) -> LineReading | None:
    """Read a food before a colon and behind it the same with its amount: "Farine: 250 g de farine".

    None where what stands before the colon is only a heading: "For the dough: 250 g flour".
    """
    told = _LABEL.match(text)
    if told is None:
        return None
    try:
        said = read_line(told["said"], system, language)
    except Unreadable:
        return None
    if not isinstance(said.amount, Amount) or not said.item:
        return None
    first = told["label"].lower().split()[0]
    food = find_staple(told["label"])
    if first not in said.item.lower().split() and (food is None or food != find_staple(said.item)):
        return None
    same = said.item.lower() == told["label"].lower()
    note = ", ".join(filter(None, ("" if same else said.item, said.note)))
    return replace(said, item=told["label"], note=note, spans={})


def _with_fifths(reading: LineReading) -> LineReading:
    """Read a fifth of spirit as the American bottle that it is: "1 fifth vodka" is 750 ml of it.

    Once a fifth of a US gallon, 757 ml; since 1980 bottles hold 750 ml (CulinaryLore, Why do we say
    a fifth of whiskey; 27 CFR 5.203 lists the standards of fill, as TTB tells of it, January 2025).
    """
    amount = reading.amount
    if not isinstance(amount, Amount) or not spirit_words().search(reading.item):
        return reading
    if amount.noun == "fifth" and reading.each is None:
        poured = replace(
            amount, low=amount.low * _FIFTH_ML, high=amount.high * _FIFTH_ML, unit="ml", noun=""
        )
        note = ", ".join(part for part in (show_amount(amount), reading.note) if part)
        return replace(reading, amount=poured, note=note)
    alone = not (amount.unit or amount.noun or reading.each or reading.also)
    if alone and amount.low == amount.high == Fraction(1, 5):
        raise Unreadable(
            f'"1/5" of {reading.item} may be an American bottle, a fifth.',
            f'Write "{_FIFTH_ML} ml {reading.item}" if it is.',
        )
    return reading


def _size_behind(
    amount: Amount, reading: LineReading, system: System, language: str
) -> LineReading:
    """Read the size of a bottle that stands behind its food: "1 bottle gin (70cl)"."""
    if reading.each is not None or amount.unit:
        return reading
    of_each = amount.noun.lower() in _HOLDS_A_DRINK
    if not of_each and amount.noun not in _HOLDS_ONE:
        return reading
    parts = comma_parts(reading.note)
    for place, part in enumerate(parts):
        said = read_leading(part, system, language)
        plain = said and said.each is None and said.rest.strip(" .").lower() in ("", "each")
        plain = plain and (of_each or amount.high == 1 or part.rstrip(" .").endswith("each"))
        if said and plain and said.amount.unit and size_of(said.amount.unit) == "volume":
            note = ", ".join(parts[:place] + parts[place + 1 :])
            return replace(reading, each=said.amount, note=note)
    return reading


def _ratio_behind(text: str, system: System) -> LineAmount | None:
    """Read "cinnamon sticks, 1 per 250 ml of vodka": the only amount that is written of another."""
    item, *notes = comma_parts(text, 1)
    note = notes[0] if notes else ""
    if not notes or " per " not in note or re.match(r"\s*[\d½¼¾⅓⅔⅛]", item):
        return None
    return LineAmount(item.strip(), parse_amount(note.strip(), system), "")


def _note(reading: LineReading) -> str:
    words = reading.fullness
    return ", ".join(part for part in (words, reading.note) if part)


def _weight_of_one(amount: Amount, whole: Amount) -> Fraction | None:
    """Return the grams of one where a line gives the weight of all: "4 egg yolks (72 grams)"."""
    if size_of(whole.unit) != "mass" or amount.middle <= 0:
        return None
    return convert(whole.middle, whole.unit, "g") / amount.middle


def _packs(amount: Amount, reading: LineReading) -> tuple[Amount, Fraction | None, str]:
    """Return the amount, the grams of one, and the size in words where it is no weight."""
    each = reading.each
    if each is None:
        return amount, None, ""
    size = size_of(each.unit)
    if _is_of_all(amount, reading, each):
        return amount, _weight_of_one(amount, each), show_amount(each)
    if size == "mass":
        return amount, convert(each.middle, each.unit, "g"), ""
    if size == "volume":
        whole = replace(each, low=each.low * amount.low, high=each.high * amount.high)
        return whole, None, f"{show_amount(amount)} of {show_amount(each)}"
    return amount, None, show_amount(each)


def _is_of_all(amount: Amount, reading: LineReading, each: Amount) -> bool:
    """Whether what stands in brackets measures all of them: "18 medium (8 cups) tomatoes".

    A fruit or a vegetable is no pack: a volume is that of all, once they are cut; a weight is of
    all where that comes nearer to what one weighs ("5 small (12 ounces) beets").
    """
    if amount.noun or amount.unit or amount.middle < 2:
        return False
    staple = find_staple(reading.item)
    if staple is None or not staple.tags & _GROWN or staple.tags & _IN_BOTTLES:
        return False
    if size_of(each.unit) == "volume":
        return True
    if size_of(each.unit) != "mass" or not staple.each_g:
        return False
    grams = convert(each.middle, each.unit, "g")
    # of the two, the one that differs by the smaller factor
    return grams * grams > staple.each_g * staple.each_g * amount.middle


def _refuse_misspelt_unit(amount: Amount, item: str, system: System) -> None:
    """Refuse "3 cupp sugar" rather than count three of a thing called "cupp sugar"."""
    first, _, rest = item.partition(" ")
    if amount.unit or amount.noun or not rest or len(first) < 3:
        return
    if read_qualifier(item, 0):  # "2 gros œufs"
        return
    if first.endswith(".") and first.lower() not in _SHORTENED:  # "2 tablesp. honey"
        raise Unreadable(f'"{first}" is not a unit.', 'Write "g", "ml", "tsp" or "cup".')
    alike = [word for word in offered_words(system) if word[0] == first[0]]
    # letters that changed places: "tsbp" has a tablespoon's four
    turned = (word for word in alike if len(word) <= 4 and sorted(word) == sorted(first.lower()))
    near = next(turned, None) or nearest(first, alike, 0.8)
    if near and find_staple(item) is None:  # French "4 piments séchés" are no pints
        raise Unreadable(f'"{first}" is not a unit.', f'Did you mean "{near}"?')
