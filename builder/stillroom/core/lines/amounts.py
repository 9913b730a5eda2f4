"""All that a line says of how much: a measure, the same measured again, sums and packs.

"225g/8oz" and "1 cup (240 ml)" are one thing measured twice, "1 lb 4 oz" is a sum, "2 x 400 g tins"
are packs. Built of the single measures of line_measures.py. Leaves out the food: line_reader.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System, all_units, convert, counted_nouns, size_of
from stillroom.core.lines.beside import read_cut_to_size, read_said_beside, read_sized_cloth
from stillroom.core.lines.measures import (
    GLUE,
    Measure,
    counts_it,
    read_about,
    read_measure,
    read_noun,
    read_qualifier,
    read_unit,
)
from stillroom.core.lines.numbers import Marks, joins_range, read_number
from stillroom.core.lines.pairs import same_again
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

_FEW = 8  # "4 x 10 cm discs" are four; "30 x 30 cm cloth" may be one
_SPACE = late_regex(r"\s*")
_TIMES = late_regex(r"\s*[x×]\s*(?=[0-9½⅓⅔¼¾⅛])", re.IGNORECASE)
_SUM = late_regex(r"\s*(?:\+|plus|and|&|(?P<less>minus|less))\s+", re.IGNORECASE)
_PLUS = late_regex(r"\s*(?:\+|plus)\s+", re.IGNORECASE)
_SLASH = late_regex(r"\s*[/=]\s*")  # "225g/8oz", "1.5 dl = 2/3 cup"
_GLUED = late_regex(r"(?=[0-9½⅓⅔¼¾⅛])")  # "20g¾oz"
_OR = late_regex(r"\s*(?:,\s*)?\bor\s+(?:about\s+)?", re.IGNORECASE)
_OPEN = late_regex(
    r"\s*(?P<size>(?:small|medium|large)\s*)?[(\[]\s*(?:about|approx\.?|approximately|around|roughly|or|c\.|weighing|total|totaling)?\s*",
    re.IGNORECASE,
)
_CLOSE = late_regex(
    r"\s*(?:each|total|in total|or so|altogether|weight|drained|drained weight|bottles?)?\s*[)\]]",
    re.IGNORECASE,
)
STICK_FOODS = late_regex(r"\b(?:butter|margarine|oleo|shortening)\b", re.IGNORECASE)
_HOW_FULL = late_regex(
    r"\s*\((?P<said>(?:[a-z]+\s)?packed|sifted|unsifted)\)(?=\s*/)", re.IGNORECASE
)
_EACH = late_regex(r"\b(?:each|apiece)\b", re.IGNORECASE)


@dataclass(frozen=True)
class Measured:
    """What a line says of how much: the first measure is reckoned with, `also` says it again.

    `each` is the size of one pack or piece.
    """

    amount: Amount
    start: int
    end: int
    also: tuple[Amount, ...] = ()
    each: Amount | None = None
    fullness: str = ""


def _nouns_of(*tables: str) -> frozenset[str]:
    nouns, words = counted_nouns(), read_data("line_words.yml")
    among = {word for table in tables for word in words[table]}
    return frozenset(form for form in nouns if nouns[form][0] in among)


@cache
def _packs() -> frozenset[str]:
    return _nouns_of("packs")


@cache
def _packs_behind_size() -> frozenset[str]:
    return _nouns_of("packs", "packs_behind_size")


def is_pack(noun: str) -> bool:
    """Whether what is counted is a pack or a piece that has a weight of its own: "tin", "bar"."""
    return noun in _packs()


def read_measured(text: str, at: int, system: System, marks: Marks) -> Measured | None:
    """Read all that a line says of how much, from `at`: pairs, sums and packs included.

    Raises Unreadable for what could be read in two ways.
    """
    cut = read_cut_to_size(text, at, system, marks) or read_sized_cloth(text, at, system, marks)
    if cut is not None:
        return Measured(cut.amount, at, cut.end, each=cut.each, fullness=cut.said)
    first = read_measure(text, at, system, marks)
    if first is None:
        return None
    found = Measured(first.amount, first.start, first.end, fullness=first.fullness)
    found = _halves(text, found, system, marks)
    pack = _read_pack(text, found, system, marks)
    whole = _named_by_size(text, _read_more(text, pack or found, system, marks))
    added = read_said_beside(text, whole.end, whole.amount)
    if added is None:
        return whole
    words = ", ".join(part for part in (whole.fullness, added.said) if part)
    return replace(whole, amount=added.amount, end=added.end, fullness=words)


def _halves(text: str, found: Measured, system: System, marks: Marks) -> Measured:
    """Read "1/8 plus 1/16 teaspoon": two numbers of one unit."""
    own = found.amount
    sign = _PLUS.match(text, found.end) if not own.unit and not own.noun else None
    more = _numbered(text, sign.end(), system, marks) if sign else None
    if more is None or not more.amount.unit:
        return found
    added = more.amount
    whole = replace(added, low=own.low + added.low, high=own.high + added.high, about=own.about)
    return replace(found, amount=whole, end=more.end)


def _read_more(text: str, found: Measured, system: System, marks: Marks) -> Measured:
    """Add what follows the first measure: sums, then the same in other units."""
    while True:
        grown = (
            _read_reach(text, found, system, marks)
            or _read_sum(text, found, system, marks)
            or _read_pair(text, found, system, marks)
            or _read_bracket(text, found, system, marks)
        )
        if grown is None:
            return found
        found = grown


_REACH = late_regex(r"\s*(?:-|–|—|to)\s*(?=[0-9½⅓⅔¼¾⅛])")


def _read_reach(text: str, found: Measured, system: System, marks: Marks) -> Measured | None:
    """Read "75g-110g", "13oz–1lb 2oz": a range whose ends each bear their unit."""
    own = found.amount
    sign = _REACH.match(text, found.end)
    at = sign.end() if sign else joins_range(text, found.end, marks)  # "800 g à 1 kg"
    more = _numbered(text, at, system, marks) if at is not None and own.unit else None
    if more is None or not more.amount.unit or not _alike(more.amount.unit, own.unit):
        return None
    second = Measured(more.amount, more.start, more.end)
    whole = _read_sum(text, second, system, marks) or second
    if found.also:  # "150ml/5fl oz-200ml/7fl oz"
        whole = _read_pair(text, whole, system, marks) or whole
    high = convert(whole.amount.high, whole.amount.unit, own.unit)
    if high < own.low:
        raise Unreadable(
            f'The range "{text[found.start : whole.end].strip()}" runs backwards.',
            "Write the smaller amount first.",
        )
    also = tuple(
        replace(low, high=convert(up.high, up.unit, low.unit))
        for low, up in zip(found.also, whole.also, strict=False)
        if low.unit and up.unit and size_of(low.unit) == size_of(up.unit)
    )
    return replace(found, amount=replace(own, high=high), also=also, end=whole.end)


def _alike(unit: str, other: str) -> bool:
    """Whether two units may be the ends of one range: both metric, or neither."""
    metric = [all_units()[one].system == "metric" for one in (unit, other)]
    return size_of(unit) == size_of(other) and metric[0] == metric[1]


def _read_sum(text: str, found: Measured, system: System, marks: Marks) -> Measured | None:
    """Read "1 lb 4 oz", "2 cups + 1 tbsp", "1 cup minus 2 tbsp" in the first unit."""
    sign = _SUM.match(text, found.end)
    found = _sticks_as_spoons(text, found) if sign else found
    own = found.amount
    if not own.unit or (found.also and sign is None):
        return None
    space = _SPACE.match(text, found.end)
    at = sign.end() if sign else (space.end() if space else found.end)
    more = _numbered(text, at, system, marks)
    if more and sign:  # "6 tablespoons plus 1 stick butter"
        spoons = _sticks_as_spoons(text, Measured(more.amount, more.start, more.end))
        more = replace(more, amount=spoons.amount)
    if more is None or not more.amount.unit:
        return None
    if size_of(more.amount.unit) != size_of(own.unit):
        if sign and size_of(own.unit) != "length":
            raise Unreadable(
                f'"{text[found.start : more.end].strip()}" adds a weight and a measure by volume.',
                "Write two lines, one for each.",
            )
        return None
    if not sign and not _alike(more.amount.unit, own.unit):
        return _beside_another_system(text, found, more)
    low, high = (
        convert(end, more.amount.unit, own.unit) for end in (more.amount.low, more.amount.high)
    )
    if not sign and low >= own.low:
        return None
    if sign and sign["less"]:
        low, high = -high, -low
    second = Measured(more.amount, more.start, more.end)
    again = _read_bracket(text, second, system, marks) or second
    words = ", ".join(part for part in (found.fullness, more.fullness) if part)
    return replace(
        found,
        amount=replace(own, low=own.low + low, high=own.high + high),
        end=again.end,
        also=() if sign and sign["less"] else _added(found.also, again.also),
        fullness=words,
    )


def _beside_another_system(text: str, found: Measured, more: Measure) -> Measured:
    """Read "8oz 225g": the same again. Ask about "1 lb 50 g", which no scale weighs."""
    if same_again(found.amount, more.amount):
        return replace(found, also=(*found.also, more.amount), end=more.end)
    raise Unreadable(
        f'"{text[found.start : more.end].strip()}" is of two systems, and not one amount twice.',
        "Write the one that is right, or a plus between them.",
    )


def _sticks_as_spoons(text: str, found: Measured) -> Measured:
    """Return an American stick of butter as the eight tablespoons that its wrapper marks."""
    own = found.amount
    if own.noun != "stick" or not STICK_FOODS.search(text, found.end):
        return found
    spoons = replace(own, low=own.low * 8, high=own.high * 8, unit="us_tbsp", noun="")
    return replace(found, amount=spoons, also=())


def _added(first: tuple[Amount, ...], second: tuple[Amount, ...]) -> tuple[Amount, ...]:
    """Add what both parts of a sum say again; what only one says again is not of the whole."""
    if not first or len(first) != len(second) or any(not one.unit for one in (*first, *second)):
        return ()
    if any(size_of(a.unit) != size_of(b.unit) for a, b in zip(first, second, strict=True)):
        return ()
    return tuple(
        replace(
            a,
            low=a.low + convert(b.low, b.unit, a.unit),
            high=a.high + convert(b.high, b.unit, a.unit),
        )
        for a, b in zip(first, second, strict=True)
    )


def _read_pair(text: str, found: Measured, system: System, marks: Marks) -> Measured | None:
    """Read "225g/8oz": the same in another unit, itself perhaps a sum."""
    own_unit = found.amount.unit
    full = _HOW_FULL.match(text, found.end)  # "1 cup (firmly packed)/7.6 ounces"
    if full and own_unit:
        found = replace(found, end=full.end(), fullness=full["said"])
    sign = _SLASH.match(text, found.end) or (
        _OR.match(text, found.end) or (_GLUED.match(text, found.end) if own_unit else None)
        if own_unit or found.each
        else None
    )
    if sign is None:
        return None
    more = _numbered(text, sign.end(), system, marks)
    if more and more.amount.noun and own_unit and sign.re is _SLASH:  # "12g/2 sachets yeast"
        return replace(found, also=(*found.also, more.amount), end=more.end)
    if more is None or not more.amount.unit:
        return None
    second = Measured(more.amount, more.start, more.end)
    whole = _read_sum(text, second, system, marks) or second
    whole = _read_reach(text, whole, system, marks) or whole
    if found.each is not None and size_of(whole.amount.unit) == size_of(found.each.unit):
        return _container(text, replace(found, end=whole.end))
    grown = replace(found, also=(*found.also, whole.amount), end=whole.end)
    return _container(text, grown)


def _read_bracket(text: str, found: Measured, system: System, marks: Marks) -> Measured | None:
    """Read "1 cup (240 ml)", "1 (14-oz) can", "6 oranges (about 900 g)"."""
    opened = _OPEN.match(text, found.end)
    if opened is None:
        return None
    inner = _numbered(text, opened.end(), system, marks)
    of_one = inner and size_of(inner.amount.unit) == "length"  # "4 lb (3-inch) cucumbers"
    if of_one and found.amount.unit and size_of(found.amount.unit) != "length":
        return None
    if inner is None or not (inner.amount.unit or inner.amount.noun or found.amount.noun):
        return None
    more = _read_more(text, Measured(inner.amount, inner.start, inner.end), system, marks)
    closed = _CLOSE.match(text, more.end)
    container = None if closed else re.compile(r"[^()]{0,24}[)\]]").match(text, more.end)
    if closed is None and (container is None or not _EACH.search(container[0])):
        return None
    end = closed.end() if closed else container.end()  # type: ignore[union-attr]
    fullness = opened["size"].strip() if opened["size"] else found.fullness
    if not found.amount.unit and found.each is None:
        # before the food a size is that of one: "4 (6-ounce) fillets", "2 tins (400 g)"
        if (
            found.amount.noun
            and not is_pack(found.amount.noun)
            and not _EACH.search(text[more.end : end])
        ):
            return replace(found, also=(*found.also, more.amount, *more.also), end=end)
        unit = read_unit(text, end + len(text[end:]) - len(text[end:].lstrip()), system)
        if unit:  # "2 (10 ml) tsp"
            own = replace(found.amount, unit=unit[0])
            return replace(found, amount=own, also=(*found.also, more.amount), end=unit[1])
        return _container(text, replace(found, each=more.amount, end=end, fullness=fullness))
    return replace(found, also=(*found.also, more.amount, *more.also), end=end)


def _numbered(text: str, at: int, system: System, marks: Marks) -> Measure | None:
    """Read a measure that begins with a figure, so that words after "and" are never measures."""
    about = read_about().match(text, at)
    begins = about.end() if about else at
    lead = read_qualifier(text, begins)
    begins = lead.end if lead else begins  # "plus scant 3/4 cup"
    if begins >= len(text) or not (text[begins].isdigit() or text[begins] in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"):
        word = read_number(text, begins, marks) if begins < len(text) else None
        glue = GLUE.match(text, word[1]) if word else None
        unit = read_unit(text, glue.end(), system) if glue else None
        if unit is None:
            return None
    return read_measure(text, at, system, marks)


def _read_pack(text: str, found: Measured, system: System, marks: Marks) -> Measured | None:
    """Read "2 x 400 g tins", "2 400g tins", "two 14-ounce cans", "3 5-inch sticks"."""
    if found.amount.unit or found.amount.noun:
        return None
    times = _TIMES.match(text, found.end)
    space = re.compile(r"\s+").match(text, found.end)
    at = times.end() if times else (space.end() if space else None)
    size = _numbered(text, at, system, marks) if at is not None else None
    if size is None or not size.amount.unit:
        return None
    reach = _read_reach(text, Measured(size.amount, size.start, size.end), system, marks)
    size = replace(size, amount=reach.amount, end=reach.end) if reach else size
    whole = _read_more_size(text, size, system, marks)
    packed = _container(text, replace(found, each=size.amount, end=whole))
    several = found.amount.low >= _FEW and not packed.amount.noun
    if times and several and size_of(size.amount.unit) == "length":
        said = text[found.start : size.end].strip()
        raise Unreadable(
            f'"{said}" could be a size or a count.',
            'Write "1 piece, 30 cm x 30 cm", or "30 pieces of 30 cm".',
        )
    # "3 5-inch sticks", "one 4 to 5 pound chicken"
    of_one = size_of(size.amount.unit) == "length" or "-" in text[size.start : size.end]
    spoken = text[found.start : found.end].strip().isalpha()
    return packed if times or packed.amount.noun or of_one or spoken else None


def _read_more_size(text: str, size: Measure, system: System, marks: Marks) -> int:
    """Return where the size of a pack ends, its second measure passed over: "400g/14oz"."""
    second = _SLASH.match(text, size.end)
    more = _numbered(text, second.end(), system, marks) if second else None
    if more and more.amount.unit:
        again = Measured(more.amount, more.start, more.end)
        again = _read_sum(text, again, system, marks) or again
        return (_read_reach(text, again, system, marks) or again).end
    opened = _OPEN.match(text, size.end)
    inner = _numbered(text, opened.end(), system, marks) if opened else None
    closed = _CLOSE.match(text, inner.end) if inner and inner.amount.unit else None
    return closed.end() if closed else size.end


def _named_by_size(text: str, found: Measured) -> Measured:
    """Read "5cm/2in piece of ginger" is one piece; "a 400g tin of tomatoes" is 400 g of them."""
    own = found.amount
    if not own.unit or found.each is not None:
        return found
    packed = _container(text, replace(found, amount=Amount(Fraction(1), Fraction(1)), each=own))
    if not packed.amount.noun:
        return found
    if size_of(own.unit) == "length":
        return replace(packed, also=())
    if packed.amount.noun not in _packs_behind_size():
        return found
    return replace(found, end=packed.end, fullness=packed.amount.noun)


def _container(text: str, found: Measured) -> Measured:
    """Take the noun after a size: tin, piece, stick; without one nothing changes."""
    if found.amount.noun or (found.amount.unit and found.each is None):
        return found
    gap = re.compile(r"[\s-]*").match(text, found.end)
    at = gap.end() if gap else found.end
    between = read_qualifier(text, at)
    noun = read_noun(text, between.end if between else at)
    if noun is None or not counts_it(text, between.end if between else at, noun[1]):
        return found
    words = " ".join(part for part in (found.fullness, between.said if between else "") if part)
    return replace(found, amount=replace(found.amount, noun=noun[0]), end=noun[1], fullness=words)
