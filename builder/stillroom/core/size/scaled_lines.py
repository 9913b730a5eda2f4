"""One ingredient at another size: its kitchen amount, its window, whether it holds.

Rounds with rounding.py what scalable.py tells of a line. The browser's scale.js does the same.
Leaves out the batch as a whole: scaling.py.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.amounts.rounding import (
    Ladder,
    Rounded,
    halves_below,
    round_count,
    round_measure,
    share_named,
)
from stillroom.core.amounts.units import System, all_units, base_size, size_of
from stillroom.core.size.scalable import Scalable, ScaleLine
from stillroom.core.size.targets import written_range
from stillroom.core.words.joining import join_range
from stillroom.core.words.said import Said

_say = Said("stillroom.core.size", "size")

By = Literal["written", "weight", "volume"]


@dataclass(frozen=True)
class Measures:
    """How the reader measures: a system of units, and by weight, by volume or as written."""

    system: System
    by: By = "written"


@dataclass(frozen=True)
class ScaledLine:
    """One ingredient of the scaled batch.

    `exact`, `low` and `high` are in `unit`, the recipe's own: the nominal amount and the window
    in which the kitchen amount holds. `kitchen` is what is shown, in ml, g, mm or a count. `off`
    is how far it stands from the exact one, as a share of it. `why` says through which density a
    weight became a volume, `aside` what else helps: a weight, or how much for each container.
    """

    item: str
    item_text: str
    amount_text: str
    exact: Fraction | None
    unit: str
    low: Fraction | None
    high: Fraction | None
    holds: bool
    off: Fraction
    kitchen: Fraction | None = None
    why: str = ""
    aside: str = ""
    note: str = ""
    group: str = ""
    optional: bool = False


def scale_line(
    recipe: Scalable, line: ScaleLine, factor: Fraction, containers: int, measures: Measures
) -> ScaledLine:
    """Return one line at a factor, as the reader measures."""
    if line.form == "words":
        return ScaledLine(
            line.item, line.item, line.written, None, "", None, None, True, Fraction(0),
            note=_note(line, factor), group=line.group, optional=line.optional,
        )  # fmt: skip
    low, high, as_written = _wanted(recipe, line, factor, containers, measures)
    scaled = _round_line(line, low, high, measures, as_written)
    if line.scales == "per container":
        scaled = replace(scaled, aside=_say("for_each", written=line.written, count=containers))
    note = _note(line, factor)
    return scaled if note == scaled.note else replace(scaled, note=note)


def amount_text(
    recipe: Scalable, line: ScaleLine, factor: Fraction, containers: int, measures: Measures
) -> str:
    """Return what a line's amount is called at a factor, and nothing else of `scale_line`."""
    if line.form == "words":
        return line.written
    low, high, as_written = _wanted(recipe, line, factor, containers, measures)
    if as_written or not line.unit:
        return _round_line(line, low, high, measures, as_written).amount_text
    through, name = _through(line, measures)
    return _say_ends(
        line, _round_ends(line, low, high, base_size(line.unit) * through, name, measures)
    )


def _wanted(
    recipe: Scalable, line: ScaleLine, factor: Fraction, containers: int, measures: Measures
) -> tuple[Fraction, Fraction, str]:
    """Return the ends of a line's exact amount, and its own words where those say it."""
    low, high = written_range(recipe, line)
    if line.scales == "with the batch":
        times: Fraction | int = factor
    else:
        times = containers if line.scales == "per container" else 1
    if times != 1:
        return low * times, high * times, ""
    asis = line.form == "amount" and measures == Measures(recipe.system)
    return low, high, line.written if asis else ""


def _note(line: ScaleLine, factor: Fraction) -> str:
    """Return a note; what it counts is for the recipe as written, and at another size says so."""
    if line.note_counts and factor != 1:
        return _say("as_written_note", note=line.note)
    return line.note


def _round_line(
    line: ScaleLine, low: Fraction, high: Fraction, measures: Measures, as_written: str
) -> ScaledLine:
    middle = low if low == high else (low + high) / 2
    spread = line.tolerance if low == high or line.stated else Fraction(0)
    window = (low * (1 - spread), high * (1 + spread)) if spread else (low, high)
    if as_written:
        size = middle * base_size(line.unit)
        return _scaled(line, middle, window, as_written, True, size, size)
    if not line.unit:
        return _round_counted(line, middle, (low, high), window)
    return _round_measured(line, middle, (low, high), window, measures)


def _round_counted(
    line: ScaleLine,
    middle: Fraction,
    ends: tuple[Fraction, Fraction],
    window: tuple[Fraction, Fraction],
) -> ScaledLine:
    first, last = Fraction(ends[0].__ceil__()), Fraction(ends[1].__floor__())
    if line.form == "amount" and 0 < first < last:
        text, kitchen, holds = f"{first}–{last}", (first + last) / 2, True
        many = True
    else:
        rounded, holds = round_count(
            middle, *window, halves=line.halves and middle < halves_below()
        )
        text, kitchen, many = rounded.text, rounded.value, rounded.value > 1
    if line.noun_one:
        text = f"{text} {line.noun_many if many else line.noun_one}"
    if line.pack:
        text = _say("of_pack", amount=text, size=line.pack)
    if line.about:
        text = _say("about", amount=text)
    aside = _by_weight(middle * line.each_g) if line.each_g and not holds else ""
    scaled = _scaled(line, middle, window, text, holds, kitchen, middle, aside=aside)
    return replace(scaled, item_text=line.many if many else line.one)


def _round_measured(
    line: ScaleLine,
    middle: Fraction,
    ends: tuple[Fraction, Fraction],
    window: tuple[Fraction, Fraction],
    measures: Measures,
) -> ScaledLine:
    through, name = _through(line, measures)
    base = base_size(line.unit) * through
    size = middle * base
    low, high = ends
    rounded = _round_ends(line, low, high, base, name, measures)
    single = len(rounded) == 1
    back = [end.value / base for end in rounded]
    if single:
        holds = window[0] <= back[0] <= window[1]
    else:
        spread = line.tolerance
        holds = low * (1 - spread) <= back[0] and back[1] <= high * (1 + spread)
    kitchen = rounded[0].value if single else (rounded[0].value + rounded[1].value) / 2
    if not line.tight and not line.stated:
        blind = share_named("blind", size_of(line.unit))
        holds = holds or abs(kitchen - size) <= blind
    text = _say_ends(line, rounded)
    aside = ""
    if not holds and line.density and name != "mass":
        aside = _by_weight(size / through * (1 if size_of(line.unit) == "mass" else line.density))
    why = "" if through == 1 else _why(line)
    return _scaled(line, middle, window, text, holds, kitchen, size, why, aside)


def _round_ends(
    line: ScaleLine,
    low: Fraction,
    high: Fraction,
    base: Fraction,
    name: Ladder,
    measures: Measures,
) -> list[Rounded]:
    """Return both ends of an amount as a kitchen measures them, one where they are said alike."""
    if low == high:
        ends = [low * base]
    elif line.form == "ratio":
        ends = [(low + high) / 2 * base]
    else:
        ends = [low * base, high * base]
    rounded = [
        round_measure(end, measures.system, name, line.near, bool(line.tight)) for end in ends
    ]
    return rounded[:1] if rounded[0].text == rounded[-1].text else rounded


def _say_ends(line: ScaleLine, rounded: list[Rounded]) -> str:
    text = join_range([end.text for end in rounded])
    return _say("about", amount=text) if line.about else text


def _by_weight(grams: Fraction) -> str:
    return _say("by_weight", grams=show_decimal(grams, 0 if grams >= 10 else 1))


def _through(line: ScaleLine, measures: Measures) -> tuple[Fraction, Ladder]:
    """Return what turns the line's ml or g into the reader's, and the ladder it is rounded on."""
    size = size_of(line.unit)
    if size == "volume":
        if measures.by == "weight" and line.density:
            return line.density, "mass"
        return Fraction(1), "spoon" if line.spooned else "volume"
    if size == "mass":
        if measures.by == "volume" and line.density:
            return 1 / line.density, "spoon"
        return Fraction(1), "mass"
    return Fraction(1), "length"


def _why(line: ScaleLine) -> str:
    density = show_decimal(line.density or Fraction(0), 3)
    return _say("through", density=density, source=line.density_source)


def _scaled(
    line: ScaleLine,
    middle: Fraction,
    window: tuple[Fraction, Fraction],
    text: str,
    holds: bool,
    kitchen: Fraction,
    size: Fraction,
    why: str = "",
    aside: str = "",
) -> ScaledLine:
    return ScaledLine(
        item=line.item,
        item_text=(line.many if middle > 1 else line.one) if not line.unit else line.item,
        amount_text=text,
        exact=middle,
        unit=line.unit,
        low=window[0],
        high=window[1],
        holds=holds,
        off=kitchen / size - 1,
        kitchen=kitchen,
        why=why,
        aside=aside,
        note=line.note,
        group=line.group,
        optional=line.optional,
    )


def warning_of(line: ScaledLine) -> str:
    """Say in words that a kitchen amount does not hold."""
    named = {"item": line.item, "amount": line.amount_text}
    if not line.unit and line.low is not None and line.high is not None:
        ends = {"low": show_decimal(line.low), "high": show_decimal(line.high)}
        return _say("no_whole_number", **named, **ends)
    asked = show_decimal(line.exact or Fraction(0))
    if line.unit:
        asked = f"{asked} {all_units()[line.unit].shown}"
    percent = show_decimal(abs(line.off) * 100, 0)
    return _say("more" if line.off > 0 else "less", **named, percent=percent, asked=asked)
