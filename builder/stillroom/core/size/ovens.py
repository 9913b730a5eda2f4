"""The oven of a recipe in °C, °F and gas mark, and the other temperatures of its method in °F.

Reads "160 C", "325 F", "gas mark 3" and ranges of them. Nothing here grows with the batch. The
table of gas marks is staples/ovens.yml, read by what_stays.py; the recipe's own words stay.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache

from stillroom.core.amounts.quantities import show_decimal
from stillroom.core.batch.altitude import SETTING_SOURCE, setting_point_c
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.what_stays import read_oven
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_pattern, clause_regex, late_regex

SOURCE = "°F by NIST SP 811, to the step of a dial"
# the degree sign and its look-alikes: º (ordinal) and ˚ (ring above); ℃ and ℉ are one sign each
_DEGREE = r"(?:[°º˚]|deg(?:ree)?s?\.?)"
_SCALE = (
    r"(?P<scale>[CF](?![a-z])|celsius|centigrade|fahrenheit|[℃℉]"
    # where these languages are spoken a degree is one of Celsius's
    r"|grad|degrés|grados|gradi|graden)"
)
# an oven with a fan, in German, French, Spanish, Italian, Dutch and Swedish
_FAN = (
    r"(?i:(?:bei |mit |en |con |a |met )?"
    r"(?:umluft|hei(?:ß|ss)luft|chaleur (?:tournante|pulsée)|aire|ventilador|(?:forno )?ventilato"
    r"|hete ?lucht|varmluft))\b"
)
_FAN_BEFORE = late_regex(rf"(?:\bfan|{_FAN})\W{{0,3}}(?:bei |à |a |op )?$", re.IGNORECASE)
# a kiln's thousand: "1,180", "1'180", "1 180"; behind a gas mark or a step the one is no thousand
_THOUSAND = (
    r"(?:[1-9][.,'’\u00a0\u2009\u202f]\d{3}"
    r"|(?i:(?<!mark )(?<!mk )(?<!gas )(?<!step )(?<!stufe )(?<!schritt )(?<!no ))1 [0-4]\d\d)(?!\d)"
)
_NUMBER = rf"(?:{_THOUSAND}|\d{{1,9}}(?:[.,]\d)?)"
_HEAT = late_regex(
    rf"(?<![\w.])(?<!\d,)(?P<low>{_NUMBER})(?:\s*{_DEGREE})?"
    rf"(?:\s*(?:-|–|to|and)\s*(?P<high>{_NUMBER}))?"
    rf"\s?{_DEGREE}?\s?(?i:{_SCALE})(?!\w)"
    r"(?P<fan>[,(]? (?:with (?:a|the) )?fan\b(?! ?\d)"
    rf"|[,(]? ?{_FAN}(?!\W{{0,3}}(?:ca\.? )?\d+ ?{_DEGREE}))?"
    r"(?P<apart> (?:above|below|over|under|more|less|higher|lower|warmer|cooler)\b)?"
)
_MARKS = ("half", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_PART = r"1/2|1/4|½|¼|(?:(?:a|one)[ -])?(?:half|quarter)"
_ONE_MARK = rf"{_PART}|\d|{'|'.join(_MARKS[1:])}"
_GAS = clause_regex(
    r"\b(?:gas(?:[ -]?(?:mark|mk\.?|no\.?|number|setting))?|regulo(?: mark)?):?\s?"
    rf"(?P<mark>{_ONE_MARK})"
    rf"(?:\s?(?:-|–|to|or)\s?(?P<top>{_ONE_MARK}))?(?!\w)",
    re.IGNORECASE,
)
# no oven of a kitchen is as hot as 300 °C, so degrees without a scale are °F from there
_NO_SCALE = late_regex(
    rf"(?<![\w.])(?<!\d,)(?P<low>[345]\d\d)\s?{_DEGREE}(?!\s?{_SCALE})(?!\w)", re.IGNORECASE
)
# of two heats one has no scale: "200 °C, then 160", "10 minutes at 400 and 20 at 325 F"
_OVEN_ALONE = late_regex(
    r"(?:^|\b(?:at|to|then|and|first|bei|auf|dann|und|erst|à|puis|et|a|poi|luego|y|op|dan|en|på|sedan)\s+"
    r"|[/→>,]\s*)"
    rf"(?P<low>[1-5]\d[05]|[5-9][05])(?![\d.])\s?{_DEGREE}?"
    r"(?=\s*(?:[,.;:)/→>-]|$|\d+\s?(?:min|h\b|stunde|heure|ore\b|uur|tim)"
    r"|(?:for|until|till|and|then|or|after|with|fan|für|bis|und|dann|nach|pendant|puis|et|per|poi|e"
    r"|durante|luego|y|dan|voor|en|i|och|sedan)\b))",
    re.IGNORECASE,
)
_FAN_BEHIND = late_regex(
    rf"\s?{_DEGREE}?[,(]? ?(?:(?:for|with|in) )?(?:a |the )?(?:fan\b|{_FAN})", re.IGNORECASE
)
_DIALS = {"c": (50, 300), "f": (150, 550)}
"""From where to where the dial of an oven goes; in °C also that of a drying one."""
_AS_A_SIGN = {"1/2": "½", "half": "½", "1/4": "¼", "quarter": "¼"} | {
    word: str(number) for number, word in enumerate(_MARKS) if number
}
_BARE = late_regex(rf"(?<=\d)\s?{_DEGREE}?\s?([CF])\b")
_A_FIGURE = late_regex(r"\d")
_A_SCALE = late_regex(r"[CF]\b")
IN_AN_OVEN = clause_regex(
    r"\b(?:oven|bak(?:e|ed|ing)(?![ -](?:sheets?|trays?|tins?|pans?|dish\w*|paper|parchment"
    r"|powder|soda|chocolate|mats?|stones?|chips))|roast\w*"
    r"|(?:(?:ge|vor|aus)?back(?:en|ofen)|ofen)"
    r"|(?:ober|unter)hitze|umluft|hei(?:ß|ss)luft|(?:au|le|du) four|enfourne[rz]?"
    r"|chaleur (?:tournante|statique|pulsée)|hornos?|hornea\w*|forno|inforna\w*|bakken|gebakken"
    r"|ugn(?:en)?|grädda\w*)\b",
    re.IGNORECASE,
)
SENTENCES = late_regex(r"\s(?<=[.;!?]\s)\s*(?=[A-ZÀ-Þ])")
# how hot the loaf is, and no oven
UNTIL_ITSELF = late_regex(
    r"\b(?:until|till)\b(?=[^.;]{0,80}\b(?:thermometer|inside|internal|cent(?:re|er)|core|middle|reach"
    r"|regist))",
    re.IGNORECASE,
)
# in the step that also bakes: how hot sugar, milk or the middle of a thing gets
_IN_A_PAN = late_regex(
    r"\b(?:boil\w*|syrup|sugar|caramel\w*|toffee|(?:hard|soft|firm)[- ](?:crack|ball)|crack"
    r"|thermometer|reach\w*|registers?|internal|inside|temper\w*|oil|water|milk|melt\w*)\b",
    re.IGNORECASE,
)
_SAME = late_regex(r"\s*(?:/|\(|,|or)\s*")
"""What stands between two ways of saying one heat: "180 °C/350 °F (gas mark 4)"."""
_FARTHEST = 30  # how far before its degrees an oven's fan is named
_BOILED_C = 103  # sugar boiled hotter than this is judged by its heat
_SAME_WITHIN = 12  # °C: dials, marks and round figures of one heat lie no further apart


@dataclass(frozen=True)
class Heat:
    """A temperature from `low` to `high` in °C; `fan` for an oven with a fan.

    `written_f` tells that it was written in °F, `beside` that it stands beside another heat with
    nothing but a sign or "or" between: not said to come after it.
    """

    low: Fraction
    high: Fraction
    fan: bool = False
    written_f: bool = False
    beside: bool = False


@dataclass(frozen=True)
class HeatLine:
    """One line for the page and the sheet: its name, its text and where the figures are from."""

    name: str
    text: str
    source: str


def read_heats(text: str) -> tuple[Heat, ...]:
    """Return the temperatures of a sentence; differences ("4.5 C above boiling") are none.

    One heat in several scales is one: the first is kept.

    >>> [int(heat.low) for heat in read_heats("Heat the oven to 160 C (140 C with a fan).")]
    [160, 140]
    >>> [int(heat.low) for heat in read_heats("Bake at 180C/350F/gas 4.")]
    [180]
    """
    kept: list[Heat] = []
    end = 0
    for start, stop, heat in sorted(_heats(text), key=lambda found: found[0]):
        again = bool(kept) and _SAME.fullmatch(text[end:start]) is not None
        if not (again and _is_the_same(heat, kept[-1])):
            kept.append(heat)
        end = stop
    return tuple(kept)


def read_oven_heats(text: str, written_f: bool | None = None) -> tuple[Heat, ...]:
    """Return an oven's heats in their order; one without a scale has that of the others.

    `written_f` is the scale where no heat of the sentence has one, None where that is not known. A
    range that falls is two heats, one after the other.

    >>> [int(heat.low) for heat in read_oven_heats("200 °C for 10 minutes, then 160")]
    [200, 160]
    >>> read_oven_heats("Bake at 200 for 10 minutes.")
    ()
    """
    scaled = sorted(_heats(text), key=lambda found: found[0])
    if scaled:
        written_f = scaled[0][2].written_f
    if written_f is not None and _A_FIGURE.search(text):
        scaled += list(_heats_alone(text, written_f, scaled))
    kept: list[Heat] = []
    end = 0
    for start, stop, heat in sorted(scaled, key=lambda found: found[0]):
        again = bool(kept) and _SAME.fullmatch(text[end:start]) is not None
        if not (again and _is_the_same(heat, kept[-1])):
            heat = replace(heat, beside=again)
            falls = heat.low > heat.high
            parts = (replace(heat, high=heat.low), replace(heat, low=heat.high, beside=False))
            kept += parts if falls else (heat,)
        end = stop
    return tuple(kept)


def _heats_alone(
    text: str, written_f: bool, scaled: Sequence[tuple[int, int, Heat]]
) -> Iterator[tuple[int, int, Heat]]:
    """Yield the heats of an oven that stand without a scale, and nowhere within another."""
    least, most = _DIALS["f" if written_f else "c"]
    for found in _OVEN_ALONE.finditer(text):
        start, stop = found.span("low")
        said = int(found["low"])
        is_within = any(start < other_stop and other < stop for other, other_stop, _ in scaled)
        if is_within or not least <= said <= most:
            continue
        degrees = (said - 32) * Fraction(5, 9) if written_f else Fraction(said)
        before = text[max(start - _FARTHEST, 0) : start]
        fan = bool(_FAN_BEHIND.match(text, stop) or _FAN_BEFORE.search(before))
        yield start, stop, Heat(degrees, degrees, fan, written_f)


def _is_the_same(heat: Heat, other: Heat) -> bool:
    return heat.fan == other.fan and abs(heat.low - other.low) <= _SAME_WITHIN


def _heats(text: str) -> Iterator[tuple[int, int, Heat]]:
    """Yield each temperature with where it stands."""
    figured = _A_FIGURE.search(text) is not None  # most sentences have none: that is seen sooner
    for found in _HEAT.finditer(text) if figured else ():
        if found["apart"]:
            continue
        ends = [_as_number(found["low"]), _as_number(found["high"] or found["low"])]
        written_f = found["scale"][0] in "Ff℉"
        if written_f:
            ends = [(end - 32) * Fraction(5, 9) for end in ends]
        before = text[max(found.start() - _FARTHEST, 0) : found.start()]
        fan = bool(found["fan"]) or _FAN_BEFORE.search(before) is not None
        yield (*found.span(), Heat(ends[0], ends[1], fan, written_f))
    marks = _gas_marks()
    for found in _GAS.finditer(text) if _GAS.search(text) else ():
        low, high = (_mark(found[name] or found["mark"], marks) for name in ("mark", "top"))
        if low is not None:
            yield (*found.span(), Heat(low, low if high is None else high))
    for found in _NO_SCALE.finditer(text) if figured else ():
        celsius = (Fraction(found["low"]) - 32) * Fraction(5, 9)
        yield (*found.span(), Heat(celsius, celsius, written_f=True))


def _as_number(text: str) -> Fraction:
    """Return what is written: "1,180" of a kiln has a thousand, "37,5" of a dairy a part."""
    whole, _, part = re.sub(r"[^\d]", ".", text).partition(".")
    return Fraction(whole + part if len(part) == len("180") else f"{whole}.{part or 0}")


@cache
def _gas_marks() -> Mapping[str, Fraction]:
    return {row["mark"]: Fraction(row["c"]) for row in read_data("ovens.yml")["gas_marks"]}


def _mark(word: str, marks: Mapping[str, Fraction]) -> Fraction | None:
    plain = re.sub(r"^(?:a|one)[ -]", "", word.lower())
    return marks.get(_AS_A_SIGN.get(plain, plain))


def heat_lines(recipe: Recipe, altitude_m: int = 0) -> tuple[HeatLine, ...]:
    """Return the oven in all three scales, then what else the method heats to, in °C and °F.

    Where sugar is boiled to a heat, a line says what the book's altitude takes off it.
    """
    ovens = list(read_oven_heats(recipe.oven.strip(), recipe.system == "us"))
    others: list[Heat] = []
    for step in recipe.method:
        bakes = IN_AN_OVEN.search(step.text)
        for sentence in SENTENCES.split(step.text):
            in_oven = IN_AN_OVEN.search(sentence) or (bakes and not _IN_A_PAN.search(sentence))
            told = UNTIL_ITSELF.split(sentence, maxsplit=1)
            if in_oven:
                before = ovens[-1].written_f if ovens else None
                ovens.extend(read_oven_heats(told[0], before))
            else:
                others.extend(read_heats(told[0]))
            others.extend(read_heats("".join(told[1:])))
    lines = []
    if ovens:
        gas = read_data("ovens.yml")["source"]
        lines.append(HeatLine("Oven", _in_turn(ovens), f"{SOURCE}; {gas}"))
    elif recipe.oven:
        lines.append(HeatLine("Oven", recipe.oven, ""))
    else:
        lines += _by_name(recipe)
    if others:
        words = dict.fromkeys(_other_words(heat) for heat in others)
        lines.append(HeatLine("Other temperatures", "; ".join(words), "°F by NIST SP 811"))
    return (*lines, *_higher_up(recipe, others, altitude_m))


def _in_turn(ovens: Sequence[Heat]) -> str:
    """Return the heats of an oven in words, each once: one that is turned to later stands so."""
    said: dict[str, Heat] = {}
    for heat in ovens:
        said.setdefault(_oven_words(heat), heat)
    text, before = "", None
    for words, heat in said.items():
        alone = not heat.fan and not heat.beside
        is_later = before is not None and alone and not _is_the_same(heat, before)
        text += f"{'; ' if text else ''}{'then ' if is_later else ''}{words}"
        before = before if heat.fan else heat
    return text


def _by_name(recipe: Recipe) -> Iterator[HeatLine]:
    """Say what cooks mean by "a moderate oven", where no step gives degrees."""
    table = read_data("ovens.yml")
    said = " . ".join(step.text.lower() for step in recipe.method)
    for row in table["called"] if " oven" in said else ():
        found = clause_pattern(rf"\b(?:{row['words']}) oven\b").search(said)
        if found:
            heat = _oven_words(Heat(Fraction(row["c"]), Fraction(row["c"])))
            yield HeatLine("Oven", f"{found[0]} is about {heat}", table["source"])
            return


def _higher_up(recipe: Recipe, heats: list[Heat], altitude_m: int) -> Iterator[HeatLine]:
    lower = setting_point_c(0) - setting_point_c(altitude_m)
    boiled = recipe.kind.is_("boils sugar") and any(heat.low >= _BOILED_C for heat in heats)
    if not boiled or lower < Fraction(1, 2):
        return
    less, sets = show_decimal(lower, 1), show_decimal(setting_point_c(altitude_m), 1)
    text = f"boiled sugar is ready {less} °C lower than at the sea; jam sets at about {sets} °C"
    yield HeatLine(f"At {altitude_m} m", text, SETTING_SOURCE)


def show_degrees(text: str) -> str:
    """Write "160 C" in a step as "160 °C", on one line; the recipe's own words stay.

    >>> show_degrees("Heat it to 160 C.") == "Heat it to 160\u00a0°C."
    True
    """
    named = "C" in text or "F" in text  # most steps name no scale: that is seen sooner
    return _BARE.sub("\u00a0°\\1", text) if named and _A_SCALE.search(text) else text


def with_scale(recipe: Recipe) -> str:
    """Return the recipe's `oven:`; a bare number is in °F in a US recipe, else in °C."""
    bare = recipe.oven.strip()
    if re.fullmatch(r"\d{2,9}", bare):
        return f"{bare} {'F' if recipe.system == 'us' else 'C'}"
    return bare


def _oven_words(heat: Heat) -> str:
    ends = [read_oven(_on_dial(end)) for end in dict.fromkeys((heat.low, heat.high))]
    if heat.fan:  # a gas oven has none
        return f"with a fan {' to '.join(f'{end.celsius} °C, {end.fahrenheit} °F' for end in ends)}"
    return " to ".join(end.text for end in ends)


def _on_dial(celsius: Fraction) -> Fraction:
    """Round what was written in °F to the 5 °C that a dial shows; whole °C stay as they are."""
    if celsius.denominator == 1:
        return celsius
    return Fraction((celsius / 5 + Fraction(1, 2)).__floor__() * 5)


def _other_words(heat: Heat) -> str:
    ends = tuple(dict.fromkeys((heat.low, heat.high)))
    celsius = "–".join(show_decimal(end, 0 if heat.written_f else 1) for end in ends)
    fahrenheit = "–".join(show_decimal(end * Fraction(9, 5) + 32, 1) for end in ends)
    if (
        heat.written_f
    ):  # "234 °F is 112 °C": as it was written, then the whole degree of a thermometer
        return f"{fahrenheit} °F is {celsius} °C"
    return f"{celsius} °C is {fahrenheit} °F"
