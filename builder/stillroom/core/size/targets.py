"""What a cook may ask a batch to be, read from plain words and solved for a factor.

A factor; what it makes; containers to fill; ingredients on hand (the scarcest decides); a vessel to
fill to its headspace, or a tin. The browser's scale-targets.js solves the same ones the same way.
Leaves out amounts and rounding: scaling.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.quantities import Amount, parse_leading_amount, parse_number
from stillroom.core.amounts.tins import Tin, pan_factor, read_own_tin
from stillroom.core.amounts.units import System, base_size, convert, offered_words, size_of
from stillroom.core.size.scalable import Scalable, ScaleLine
from stillroom.core.size.typed_sizes import BETWEEN, plainly_typed
from stillroom.core.words.joining import join_and
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular
from stillroom.core.words.problems import Unreadable
from stillroom.core.words.said import Said

_COUNTED = late_regex(
    r"^(?P<count>\d{1,9})\s*(?:x|×|\*|(?:(?P<thing>[a-z-]+)\s+)?of)\s*(?P<size>.+)$", re.IGNORECASE
)
_TO_THE_BRIM = late_regex(r"\s*(?:filled\s+)?to the brim\s*$", re.IGNORECASE)
_THING = late_regex(r"[a-z][a-z -]*", re.IGNORECASE)
_say = Said("stillroom.core.size", "size")


@dataclass(frozen=True)
class ByFactor:
    """So many times the recipe as written."""

    factor: Fraction


@dataclass(frozen=True)
class ByMakes:
    """A batch that makes so much: "200 ml", "36 biscuits"."""

    amount: Amount
    things: str = ""


@dataclass(frozen=True)
class Wanted:
    """So many containers of a size: what one holds filled as it should be, or to its very brim.

    `thing` is what the cook called them, "" where only their number and size were said.
    """

    count: int
    size: Amount
    brim: bool = False
    thing: str = ""


@dataclass(frozen=True)
class ByContainers:
    """A batch that fills so many containers of each size."""

    containers: tuple[Wanted, ...]


@dataclass(frozen=True)
class ByHand:
    """As much as what is on hand allows: amounts and the words of their ingredients."""

    have: tuple[tuple[Amount, str], ...]


@dataclass(frozen=True)
class ByVessel:
    """As much as stands in a vessel filled to its headspace."""

    capacity: Amount


@dataclass(frozen=True)
class ByTin:
    """As much as stands as high in the cook's own tin as in the recipe's."""

    tin: Tin


Target = ByFactor | ByMakes | ByContainers | ByHand | ByVessel | ByTin


@dataclass(frozen=True)
class LeftOver:
    """What remains of an ingredient on hand, in the unit it was told in."""

    item: str
    amount: Fraction
    unit: str


@dataclass(frozen=True)
class Solved:
    """The factor a target comes to, the containers it named, the scarcest item and the rest."""

    factor: Fraction
    containers: tuple[Wanted, ...] = ()
    scarcest: str = ""
    left: tuple[LeftOver, ...] = ()


def parse_times(text: str) -> ByFactor:
    """Read "3", "1½" or "1/3"; raises Unreadable."""
    factor = parse_number(text)
    if factor <= 0:
        raise _say.refuse("nothing")
    return ByFactor(factor)


def parse_wanted(text: str, system: System) -> ByMakes:
    """Read "200 ml", "1½ pints", "36 biscuits" or "12 x 125 ml"; raises Unreadable."""
    counted = _COUNTED.match(text)
    each = parse_leading_amount(counted["size"], system)[0] if counted else None
    if counted and each and each.unit and each.low > 0:
        return ByMakes(each.times(Fraction(counted["count"])))
    amount, rest = parse_leading_amount(text, system)
    if amount is None or amount.low <= 0:
        raise _say.refuse("not_an_amount", text=text)
    return ByMakes(amount, rest)


def parse_fill(text: str, system: System = "metric") -> ByContainers:
    """Read "12 x 50 ml + 6 x 100 ml" or "12 bottles of 50 ml"; raises Unreadable.

    >>> [(one.count, str(one.size.low)) for one in parse_fill("12 x 50 ml + 1 x 100 ml").containers]
    [(12, '50'), (1, '100')]
    >>> parse_fill("9 jars of 220 ml to the brim").containers[0].brim
    True
    >>> [one.thing for one in parse_fill("7 x 190 ml bottles + 2 flasks of 100 ml").containers]
    ['bottles', 'flasks']
    """
    found = []
    for part in BETWEEN.split(text.strip()):
        match = _COUNTED.match(part)
        size, rest = parse_leading_amount(match["size"], system) if match else (None, "")
        if not match or size is None or size.low <= 0 or int(match["count"]) < 1:
            raise _say.refuse("no_containers", text=part)
        if not size.unit or size_of(size.unit) not in ("volume", "mass"):
            raise _say.refuse("no_size", text=part)
        thing = match["thing"] or _thing_in(rest)
        found.append(Wanted(int(match["count"]), size, "brim" in rest.lower(), thing))
    return ByContainers(tuple(found))


def _thing_in(rest: str) -> str:
    """Return what a container was called after its size: "bottles" of "190 ml bottles"."""
    words = _TO_THE_BRIM.sub("", rest).strip()
    return words if _THING.fullmatch(words) and "brim" not in words.lower() else ""


def parse_have(text: str, system: System = "metric") -> ByHand:
    """Read "17 cinnamon stick" or "500 g sugar + 1 l vodka"; raises Unreadable.

    >>> parse_have("17 cinnamon sticks").have[0][1]
    'cinnamon sticks'
    """
    found = []
    for part in BETWEEN.split(text.strip()):
        amount, rest = parse_leading_amount(part, system)
        words = " ".join(word for word in (amount.noun if amount else "", rest) if word)
        words = re.sub(r"^of\s+", "", words)
        if amount is None or amount.low <= 0 or not words:
            raise _say.refuse("nothing_on_hand", text=part)
        found.append((amount, words))
    return ByHand(tuple(found))


def parse_vessel(text: str, system: System = "metric") -> ByVessel | ByTin:
    """Read "1.5 l", also "1.5 l jar", or a tin "24 cm round"; raises Unreadable."""
    if tin := read_own_tin(text):
        return ByTin(tin)
    amount, _rest = parse_leading_amount(text, system)
    if amount is None or amount.low <= 0 or not amount.unit or size_of(amount.unit) != "volume":
        raise _say.refuse("no_vessel", text=text)
    return ByVessel(amount)


def read_target(asked: Mapping[str, str | None], system: System) -> Target:
    """Return the one target asked for under "times", "makes", "fill", "have" or "vessel".

    None asked is the recipe as written; two at once raise Unreadable.
    """
    named = [(name, text) for name, text in asked.items() if text is not None]
    if len(named) > 1:
        both = join_and([f'"--{name}"' for name, _text in named])
        raise Unreadable(f"{both} cannot both decide.", "Ask for one of them.")
    if not named:
        return ByFactor(Fraction(1))
    name, typed = named[0]
    text = plainly_typed(name, typed)
    if name == "times":
        return parse_times(text)
    readers: dict[str, Callable[[str, System], Target]] = {
        "makes": parse_wanted,
        "fill": parse_fill,
        "have": parse_have,
        "vessel": parse_vessel,
    }
    return readers[name](text, system)


def solve_target(recipe: Scalable, target: Target) -> Solved:
    """Return the factor a target comes to; raises Unreadable when it cannot be had."""
    if isinstance(target, ByFactor):
        return Solved(target.factor)
    if isinstance(target, ByMakes):
        return Solved(_factor_of_makes(recipe, target))
    if isinstance(target, ByContainers):
        wanted = sum((_holds_ml(recipe, one) * one.count for one in target.containers), Fraction(0))
        return Solved(wanted / _makes_ml(recipe), containers=target.containers)
    if isinstance(target, ByTin):
        if recipe.tin is None:
            raise _say.refuse("no_tin")
        return Solved(pan_factor(recipe.tin, target.tin))
    if isinstance(target, ByVessel):
        if not recipe.stands_ml:
            raise _say.refuse("stands_in_nothing")
        usable = convert(target.capacity.middle, target.capacity.unit, "ml") * recipe.vessel_share
        return Solved(usable / recipe.stands_ml)
    return _solve_hand(recipe, target)


def _factor_of_makes(recipe: Scalable, target: ByMakes) -> Fraction:
    amount = target.amount
    if not amount.unit:
        if recipe.makes.unit and target.things:
            mend = did_you_mean(target.things, offered_words(recipe.system))
            raise _say.refuse("unknown_unit", word=target.things, mend=mend)
        if recipe.makes.unit:
            raise _say.refuse("measured")
        return amount.middle / recipe.makes.middle
    whole = recipe.each.times(recipe.makes.middle) if recipe.each else recipe.makes
    if whole.unit and size_of(whole.unit) == size_of(amount.unit):
        return convert(amount.middle, amount.unit, whole.unit) / whole.middle
    return _ml(recipe, amount) / _makes_ml(recipe)


def _makes_ml(recipe: Scalable) -> Fraction:
    if recipe.makes_ml is None:
        raise _say.refuse("counted", things=recipe.things)
    return recipe.makes_ml


def _holds_ml(recipe: Scalable, wanted: Wanted) -> Fraction:
    """Return what one container holds; of a jar known by its brim, less the published headspace."""
    size = _ml(recipe, wanted.size)
    if not wanted.brim:
        return size
    if recipe.headspace_ml is None:
        raise _say.refuse("no_brim")
    if size <= recipe.headspace_ml:
        raise _say.refuse("all_headspace")
    return size - recipe.headspace_ml


def _ml(recipe: Scalable, amount: Amount) -> Fraction:
    if size_of(amount.unit) == "volume":
        return convert(amount.middle, amount.unit, "ml")
    if size_of(amount.unit) == "mass" and recipe.finished_density:
        return convert(amount.middle, amount.unit, "g") / recipe.finished_density
    raise _say.refuse("not_measured_so")


def _solve_hand(recipe: Scalable, target: ByHand) -> Solved:
    allowed = []
    for amount, words in target.have:
        lines = [recipe.lines[place] for place in find_lines(words, recipe.lines)]
        # dough and topping both want sugar: what is there has to do for all of them
        measured = [line for line in lines if line.form != "words"] or lines
        used = sum((_share_used(recipe, line, amount) for line in measured), Fraction(0))
        allowed.append((1 / used, lines[0].item, used, amount))
    factor, scarcest = min(((row[0], row[1]) for row in allowed), key=lambda row: row[0])
    left = tuple(
        LeftOver(item, (1 - used * factor) * amount.middle, amount.unit)
        for own, item, used, amount in allowed
        if own > factor
    )
    return Solved(factor, scarcest=scarcest if len(allowed) > 1 else "", left=left)


def _share_used(recipe: Scalable, line: ScaleLine, have: Amount) -> Fraction:
    """Return which part of what is there one batch needs for a line."""
    need, there = _in_one_measure(recipe, line, have)
    return need / there


def _in_one_measure(recipe: Scalable, line: ScaleLine, have: Amount) -> tuple[Fraction, Fraction]:
    """Return what one batch needs of a line and what is there, in ml, g, mm or a count."""
    if line.scales != "with the batch" or line.form == "words":
        raise _say.refuse("does_not_grow", item=line.item)
    need = written_middle(recipe, line) * base_size(line.unit)
    there = have.middle * base_size(have.unit)
    sizes = (size_of(line.unit), size_of(have.unit))
    if sizes[0] == sizes[1]:
        return need, there
    if sizes == ("mass", "volume") and line.density:
        return need, there * line.density
    if sizes == ("volume", "mass") and line.density:
        return need, there / line.density
    if sizes == ("count", "mass") and line.each_g:
        return need, there / line.each_g
    raise _say.refuse("item_not_measured_so", item=line.item, written=line.written)


def written_range(recipe: Scalable, line: ScaleLine) -> tuple[Fraction, Fraction]:
    """Return the least and the most of a line in one batch as written, in the line's unit."""
    if line.form != "ratio" or line.of is None:
        return line.low, line.high
    whole = recipe.lines[line.of]
    base = (whole.low + whole.high) / 2
    return line.low * base / line.per_high, line.high * base / line.per_low


def written_middle(recipe: Scalable, line: ScaleLine) -> Fraction:
    """Return the nominal amount of a line in one batch: the middle of its range."""
    low, high = written_range(recipe, line)
    return (low + high) / 2


def find_lines(words: str, lines: Sequence[ScaleLine]) -> list[int]:
    """Return the places of the lines meant by a cook's words; raises Unreadable.

    A whole name wins, with every line that has it; else the one line that holds every word,
    singular or plural.
    """
    known = [_stems(line.item) for line in lines]
    wanted = _stems(words)
    nouns = [{line.noun_one} - {""} for line in lines]
    names = [line.item for line in lines]
    whole = [place for place, stems in enumerate(known) if wanted == stems]
    if whole:
        return whole
    fits = [place for place, stems in enumerate(known) if wanted and wanted <= stems | nouns[place]]
    if len(fits) == 1:
        return fits
    if fits:
        items = join_and([f'"{names[place]}"' for place in fits])
        raise _say.refuse("fits_several", words=words, items=items)
    raise _say.refuse("not_in_recipe", words=words, mend=did_you_mean(words, names))


def _stems(words: str) -> set[str]:
    return {singular(word) for word in re.findall(r"[a-zà-öø-ÿ]+", words.lower())}
