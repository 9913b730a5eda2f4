"""An amount that stands behind its food, or of which only a part is wanted.

"Vanilla extract, 1½ teaspoons", "Honey ½ cup (169 grams)", "juice and grated zest of 2 limes".
Leaves out amounts that stand first: line_reader.py.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System, size_of
from stillroom.core.lines.amounts import Measured, read_measured
from stillroom.core.lines.measures import read_qualifier
from stillroom.core.lines.numbers import Marks
from stillroom.core.lines.parts_of_line import (
    LineReading,
    after_of,
    either,
    line_words,
    past_article,
    split_food,
    unmeasured_words,
    with_measured,
)
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular_word

_PER = late_regex(r"\bper\b|\bfor (?:each|every)\b|\bto each\b")
_FIGURE = r"[0-9½⅓⅔¼¾⅛.]"
_BEHIND = late_regex(
    r"(?P<sep>\s*(?:[,;]|:(?!\d)|(?<!\d):)\s*|\s+(?:--+|[-–—])\s*|(?<=[a-z]{3})-(?=\d+(?:[.,]\d+)?\s*(?:oz|g|ml|lb|kg)\b)|\s+)(?P<open>[(\[]\s*(?:weighing\s+|weight:?\s+)?)?"
    r"(?=(?:about|approx\.?|approximately|around|ca\.?|c\.|[~≈±])?\s*(?!\d+:\d)[0-9½⅓⅔¼¾⅛]"
    r"|(?<=[,:;–—] )[a-z]|(?<=-- )[a-z])",
    re.IGNORECASE,
)
# a number after one of these is a name or a manner, not an amount: "flour type 405", "cut in 4"
_NO_AMOUNT_AFTER = late_regex(
    r"\b(?:types?|typ|t|no|nr|n°|nº|number|grade|size|vitamin|omega|for|of|in|into|to|with|at|by|or"
    r"|and|from|step|page|see|serves|makes|about|up|over|under|minus|plus|less)\.?$",
    re.IGNORECASE,
)
_MOST_COUNTED = 100  # "Weizenmehl 405" names a flour; so many of a thing are not counted


@cache
def _taken() -> re.Pattern[str]:
    words = line_words()
    part = rf"(?:(?:{either(words['taken_how'])})\s+)*(?:{either(words['taken'])})"
    return re.compile(
        rf"(?:the\s+)?(?P<what>(?:[a-z]+\s+)?{part}(?:\s*(?:,|and|&|or|plus|\+|/)\s*(?:the\s+)?{part})*)"
        rf"(?:\s*,?\s*(?:only|grated|squeezed))?\s+"
        rf"(?:(?:of|from)\s+(?:the\s+)?|(?=about\s+{_FIGURE}|{_FIGURE}))",
        re.IGNORECASE,
    )


@cache
def _taken_in(language: str) -> re.Pattern[str] | None:
    """Return the pattern of "Saft einer", "le jus d'", "la buccia grattugiata di" in a language."""
    words: dict[str, list[str]] | None = line_words()["taken_elsewhere"].get(language)  # type: ignore[attr-defined]
    if words is None:
        return None
    how = rf"(?:(?:{either(words['how'])})\s*)*"
    part = rf"{how}(?:{either(words['parts'])})(?:\s+(?:{either(words['how'])}))*"
    return re.compile(
        rf"(?P<what>{part}(?:\s*(?:,|und|et|y|e|en|&|/)\s*{part})*)\s+"
        rf"(?:(?:{either(words['of'])})(?<=['’])|(?:{either(words['of'])})\s+)?",
        re.IGNORECASE,
    )


def _matches_taken(text: str, start: int, marks: Marks) -> re.Match[str] | None:
    pattern = _taken_in(marks.language)
    return _taken().match(text, start) or (pattern.match(text, start) if pattern else None)


_SECOND_PART = late_regex(
    r"(?P<food>.+?)\s+(?:and|plus|&)\s+(?:the\s+)?"
    r"(?P<part>(?:(?:finely |freshly )?(?:grated|pared|squeezed) )?(?:juice|zest|rind|peel))"
    r"\s+(?P<of>of\s+[\d½¼¾]\S*)$",
    re.IGNORECASE,
)


def read_taken_of(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "Juice and zest of 2 limes": two limes, of which the juice and zest."""
    taken = _matches_taken(text, start, marks)
    measured = read_measured(text, taken.end(), system, marks) if taken else None
    if taken is None or measured is None:
        return None
    food_at = past_article(text, after_of(text, measured.end), measured)
    reading = with_measured(text, split_food(text, food_at, None), measured)
    if not reading.item:
        return None
    said = _said_of_part(taken, reading)
    second = _SECOND_PART.match(reading.item)
    if second:  # "zest of 2 oranges and juice of 1"
        said = f"{said}, and {second['part']} {second['of']}"
        reading = replace(reading, item=second["food"])
    return replace(reading, note=", ".join(part for part in (said, reading.note) if part))


def _said_of_part(taken: re.Match[str], reading: LineReading) -> str:
    english = taken.re is _taken()
    return f"{_part(taken['what'], reading)} only" if english else taken["what"]


def _part(what: str, reading: LineReading) -> str:
    """Return the part that is wanted without its food's name: "orange peel from 1 orange"."""
    first, _, rest = what.lower().partition(" ")
    of_it = singular_word(first) in {singular_word(word) for word in reading.item.lower().split()}
    return rest if rest and of_it else what.lower()


def read_amount_behind(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "Vanilla extract, 1½ teaspoons", "Butter – 50 g", "sugar 200g", "Salt (1 tsp)"."""
    for sep in _BEHIND.finditer(text, start + 1):
        food = text[start : sep.start()].strip()
        if sep["open"] is None and text[: sep.start()].count("(") > text[: sep.start()].count(")"):
            continue
        parted = bool(sep["open"] or sep["sep"].strip())
        # "Salt, pure granulated ¾ cup", "Plain flour, sieved -- 115g"
        # "mixed sultanas, raisins and currants, 300 g"
        listed = "," in food and sep["sep"].strip() == ","
        dashed = food.count(",") == 1 and (not parted or sep["sep"].strip().startswith("--"))
        last = listed or dashed
        named = food.replace(",", "") if last else food
        if _HALF_A_NUMBER.search(food) and _HUNDREDS.match(text, sep.end()):
            continue  # "sugar 1 500 g" is no 500 g of "sugar 1"
        if not _may_be_food(named, parted) or _PER.search(text[sep.end() :]):
            continue
        measured = read_measured(text, sep.end(), system, marks)
        measured = _with_its_size(text, measured) if measured and parted else measured
        rest = _rest_of(text, measured, sep) if measured else None
        if measured is None or rest is None or not _is_amount(text, sep, measured):
            continue
        weighed = size_of(measured.amount.unit) in ("mass", "volume")
        # "apples, peeled, 3"
        counted = listed and not (rest or measured.amount.unit or measured.each)
        if ((last and not counted) or unmeasured_words().search(food)) and not weighed:
            continue  # "butter for the tins (2)", "carrots, sliced 2 cm"
        if last and rest:
            continue
        return _reading(text, (start, sep.start()), measured, rest)
    return None


_HALF_A_NUMBER = late_regex(r"(?<![\w.,/])[1-9]$")
_HUNDREDS = late_regex(r"\d{3}(?!\d)")
_MEASURED_TO = late_regex(
    r",?\s+(?:measured|filled|poured)\s+(?:up\s+)?to\s+(?:the\s+)?(?=[0-9½⅓⅔¼¾⅛])", re.IGNORECASE
)
_LEVEL = late_regex(r"\s*(?:level|mark|line)\b(?P<rest>.*)$", re.IGNORECASE)


def read_measured_to(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "rice, measured to the 450ml level in a jug": so much of it."""
    to = _MEASURED_TO.search(text, start + 1)
    measured = read_measured(text, to.end(), system, marks) if to else None
    level = _LEVEL.match(text, measured.end) if measured else None
    if to is None or measured is None or level is None or not measured.amount.unit:
        return None
    return _reading(text, (start, to.start()), measured, level["rest"].strip())


def _may_be_food(food: str, parted: bool) -> bool:
    """Whether words before an amount name a food; "oil for frying" does where a comma follows."""
    bare = re.sub(r"\([^)]*\)", "", food)
    return (
        bool(re.search(r"[A-Za-zÀ-ÿ]{2}", bare))
        and not re.search(r"[,;:]|\s[-–—]\s", bare)
        and not _NO_AMOUNT_AFTER.search(bare)
        and (parted or not unmeasured_words().search(bare))
    )


_ITS_SIZE_ENDS = late_regex(
    r"\s*(?:[-\s]?sized?\b|ones?\b)?\s*(?=[,;(\[)\]]|\.?\s*$)", re.IGNORECASE
)


def _with_its_size(text: str, measured: Measured) -> Measured:
    """Add the size behind a count: "Onions – 2 large, sliced", "Raw mango: 3-5 standard sized"."""
    own = measured.amount
    if own.unit or own.noun or measured.each:
        return measured
    gap = re.compile(r"\s+").match(text, measured.end)
    size = read_qualifier(f"{text} ", gap.end()) if gap else None
    if gap is None or size is None:
        return measured
    ends = _ITS_SIZE_ENDS.match(text, gap.end() + len(size.said))
    if ends is None:
        return measured
    said = ", ".join(part for part in (measured.fullness, size.said) if part)
    return replace(measured, end=ends.end(), fullness=said)


# "crème: 90 ml pour une texture onctueuse": what it is for
_MAY_FOLLOW = late_regex(
    r"[,;(\[]|[-–—]\s|\)|(?:pour|für|zum|zur|per|para|voor|om)\s", re.IGNORECASE
)


# "un decilitro circa"
_ABOUT = late_regex(
    r"^(?:circa|ca|environ|about|approx(?:imately)?|roughly|ungefähr|etwa|aproximadamente|aprox"
    r"|ongeveer|ungefär|omtrent|około)\b\.?(?=\W|$)",
    re.IGNORECASE,
)


def _rest_of(text: str, measured: Measured, sep: re.Match[str]) -> str | None:
    """Return what is said behind the amount; None where the amount goes on and was not read."""
    rest = text[measured.end :].strip()
    if sep["open"]:
        closed = re.match(r"(?:each|total|in total)?\s*[)\]]", rest)
        if closed is None:
            return None
        rest = rest[closed.end() :].strip()
    rest = _ABOUT.sub("", rest).strip(" .")
    if rest and not _MAY_FOLLOW.match(rest):
        return None
    return rest


def _is_amount(text: str, sep: re.Match[str], measured: Measured) -> bool:
    """Whether a number behind the food counts or measures it, and does not name it."""
    own = measured.amount
    if own.unit or own.noun or measured.each:
        marked = sep["open"] or sep["sep"].strip() or own.about
        return bool(marked or not text[sep.end()].isalpha())
    return text[sep.end()] in "0123456789½⅓⅔¼¾⅛" and own.high <= _MOST_COUNTED


def _reading(text: str, place: tuple[int, int], measured: Measured, rest: str) -> LineReading:
    if measured.each is not None and not measured.amount.unit and not measured.amount.noun:
        # "Egg yolks 4 (72 grams)": behind the food a size is that of all
        measured = replace(measured, each=None, also=(measured.each, *measured.also))
    named = split_food(text[: place[1]], place[0], None)
    note = ", ".join(part for part in (named.note, rest.strip(" ,;()[]")) if part)
    reading = replace(named, amount=measured.amount, note=note)
    assert isinstance(measured.amount, Amount)
    return with_measured(text, reading, measured)
