"""The strength of a spirit, put into the note as % vol wherever a line says it.

"gin 40% vol", "at 96% ethanol", "100 proof". A percentage of anything else (cocoa, fat, acidity) is
no strength. Leaves out other doubts: line_doubts.py.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache

from stillroom.core.amounts.units import System
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shares_said import (
    AT_LEAST,
    FAT,
    JOINS,
    is_sold_by_its_share,
    without_told_shares,
)
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.doubts import is_poured, spirit_words
from stillroom.core.lines.parts_of_line import LineReading, either, line_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

# where degrees on a bottle are parts of a hundred by volume (Gay-Lussac)
_GAY_LUSSAC = frozenset({"fr", "it", "es", "de", "nl", "sv"})

_PERCENT = r"(?P<number>\d+(?:[.,]\d+)?)\s*(?:%|per\s?cent)"
# "alcool al 95%", "Wodka mit mind. 38%"
_LEAST = rf"(?:\b(?:(?P<least>{AT_LEAST})|{JOINS})\s+)*"
_STRENGTH = late_regex(
    rf"\s*,?\s*{_LEAST}(?:\b(?P<plain>\d+(?:[.,]\d+)?)\s*(?:°|-|\s)*proof\b"
    rf"|\b(?P<volume>\d+(?:[.,]\d+)?)\s*vol\.?\s*-?\s*%"
    rf"|\b{_PERCENT}\s*(?:vol|abv|alc|alcohol)(?:\s+by\s+vol(?:ume)?)?\b\.?)\s*",
    re.IGNORECASE,
)
# what stands close before a strength and makes it none: "1/0% vol", "1..2% vol"
_NO_NUMBER = late_regex(r"\d(?:[.,]{2}|[.,/⁄]\s?)$")
# proof is half the % vol in America, and no percentage anywhere: which is meant nobody can tell
_BOTH = late_regex(
    r"\b(?P<number>\d+(?:[.,]\d+)?)\s*-?(?:%|per[\s-]?cent\b)\s*-?proof\b"
    r"|\bproof\s*(?:of\s*)?(?P<behind>\d+(?:[.,]\d+)?)\s*(?:%|per\s?cent\b)",
    re.IGNORECASE,
)
_BARE = late_regex(rf"(?:^|[\s,]+){_LEAST}\b{_PERCENT}\s*(?:$|,|(?=\s))", re.IGNORECASE)
_DEGREES = late_regex(
    rf"{_LEAST}\b(?P<number>\d+(?:[.,]\d+)?)"
    r"(?:\s*[°º](?!\s*[CF]\b)|\s+(?:grad(?:os|i|en)?|degrés)\b(?!\s*[cf]\b))",
    re.IGNORECASE,
)
# what says that a line is not English: its degrees are % vol in an English book too
_ELSEWHERE = late_regex(
    r"\b(?:à|a|di|da)\s+\d+(?:[.,]\d+)?\s*[°º]|\d\s+(?:grados|gradi|grad|degrés|graden)\b"
    r"|\b(?:alcool|alcol|aguardiente|orujo|eau[\s-]de[\s-]vie|weingeist|alkohol|primasprit|brandewijn)\b",
    re.IGNORECASE,
)
# no proof is told of these, and none of them is so weak
_ALCOHOL = late_regex(
    r"\b(?:alcohol|spirits? of wine|neutral spirit)\b.*\b[89]\d\s*[–-]", re.IGNORECASE
)
_TWO_STRENGTHS = late_regex(
    rf"(?:\b(?:{JOINS})\s+)*\b(?P<low>\d{{2}}(?:[.,]\d)?)\s*(?P<dash>[/–-])"
    r"\s*(?P<high>\d{2}(?:[.,]\d)?)\s*(?P<sign>[°º]|%)"
)
# bottles of one sort lie so near to each other; what lies farther apart is two
_NEAR = 10
_CASK = late_regex(r"\b(?:cask|barrel|navy)[\s-]strength\b|\b(?:over|under)proof\b", re.IGNORECASE)


@cache
def _of_other_things() -> re.Pattern[str]:
    """Return the pattern of foods whose percentage is of fat, cocoa, acid or the like."""
    words = line_words()
    named = either([*words["vinegars_elsewhere"], *words["percent_of"]])
    return late_regex(rf"\b(?:{named})", re.IGNORECASE)


@cache
def _sour() -> re.Pattern[str]:
    """Return the pattern of a vinegar with its acid in a language other than English."""
    named = either(line_words()["vinegars_elsewhere"])
    percent = r"\d{1,2}(?:[.,]\d)?\s*(?:%|°)"
    return late_regex(
        rf"(?:(?P<before>{percent})\s+)?(?P<name>(?:[^\W\d]+\s){{0,2}}?(?:{named})(?:\s[^\W\d]+){{0,3}}?)"
        rf"(?:\s+(?:(?:{JOINS})\s+)*(?P<behind>{percent}))?",
        re.IGNORECASE,
    )


def _acid_apart(reading: LineReading) -> LineReading:
    """Put the acid of a vinegar into the note: "Essig 5 %", "12 % ättika"."""
    sour = _sour().fullmatch(reading.item)
    said = sour and (sour["before"] or sour["behind"])
    if sour is None or not said:
        return reading
    note = ", ".join(filter(None, (said, reading.note)))
    return replace(reading, item=sour["name"], note=note)


# "crème liquide 30% MG", "Sahne mit 30 % Fett": how fat it is, which is said of it
_FAT = late_regex(
    rf"\s+(?P<said>(?:(?:{JOINS})\s+)*\d{{1,2}}(?:[.,]\d)?\s*%\s*(?:(?:de|di|of|av)\s+)?(?:{FAT})"
    r"(?=\s|$|[,)]))",
    re.IGNORECASE,
)


def _fat_apart(reading: LineReading) -> LineReading:
    """Put how fat a cream or a cheese is into the note: "crème liquide 30% MG"."""
    fat = _FAT.search(reading.item)
    if fat is None:
        return reading
    item = f"{reading.item[: fat.start()]}{reading.item[fat.end() :]}".strip(" ,")
    note = ", ".join(filter(None, (fat["said"], reading.note)))
    return replace(reading, item=item, note=note) if item else reading


@cache
def _weaker() -> re.Pattern[str]:
    """Return the pattern of drinks that are weaker than a spirit."""
    return late_regex(rf"\b(?:{either(line_words()['drinks'])})s?$", re.IGNORECASE)


def strength_apart(reading: LineReading, system: System, language: str = "en") -> LineReading:
    """Put the strength of a spirit into the note as % vol, wherever it was written.

    Proof is a country's own: twice the % vol in the United States, 100 for 57.15 % vol in Britain's
    older books. It is read in an American recipe and asked elsewhere; so is a cask's own strength.
    Degrees are % vol where a line or its book is in a `language` that has no proof, and asked else.
    """
    reading = _fat_apart(_acid_apart(reading))
    whole = f"{reading.item}, {reading.note}"
    two = _TWO_STRENGTHS.search(whole)
    degrees_told = language in _GAY_LUSSAC or _ELSEWHERE.search(whole) or _ALCOHOL.search(whole)
    if two and _is_of_one_sort(two, bool(degrees_told)):
        return _of_the_weaker(reading, two, system, language)
    if two and spirit_words().search(reading.item):
        raise Unreadable(
            f'"{two[0].strip()}" names two strengths.', 'Write the one of its label: "40% vol".'
        )
    if both := _BOTH.search(whole):
        number = both["number"] or both["behind"]
        raise Unreadable(
            f'"{both[0]}" is a percentage and proof at once.',
            f'Write "{number}% vol" if it is that, or what its label says.',
        )
    for name, said in (("item", reading.item), ("note", reading.note)):
        plain = without_told_shares(said)  # "vino" (6% de acidez) is no strength
        found = _STRENGTH.search(plain) or _bare(reading, plain, language)
        if found and (odd := _NO_NUMBER.search(said, 0, found.start())):
            said = f"{odd[0]}{found[0]}".strip(" ,")
            raise Unreadable(f'"{said}" is not a strength.', 'Write "40% vol".')
        if found:
            return _told(reading, name, said, found, system)
    cask = _CASK.search(whole)
    if cask and not re.search(r"\d\s*%", whole):
        raise Unreadable(
            f'"{cask[0]}" differs from bottle to bottle.',
            'Write the % vol of its label: "whisky, 58% vol".',
        )
    degrees = _DEGREES.search(whole)
    volume = language in _GAY_LUSSAC or _ELSEWHERE.search(whole)
    if degrees and spirit_words().search(reading.item) and volume:
        return _of_degrees(reading)
    if degrees and spirit_words().search(reading.item):
        raise Unreadable(
            f'"{degrees[0]}" is not the same strength everywhere.',
            f'Write "{degrees["number"]}% vol" if it is that, or what its label says.',
        )
    return reading


def _is_of_one_sort(two: re.Match[str], degrees: bool) -> bool:
    """Whether two strengths are those between which any bottle will do: "90-95°", "40-45%"."""
    low, high = (float(two[end].replace(",", ".")) for end in ("low", "high"))
    told = two["sign"] == "%" or degrees
    return told and two["dash"] != "/" and 0 < high - low <= _NEAR


def _of_the_weaker(
    reading: LineReading, two: re.Match[str], system: System, language: str
) -> LineReading:
    """Take a spirit "90-95°" for one of at least the lower: no bottle is weaker."""
    weaker = f"at least {two['low']}% vol"
    item, note = (said.replace(two[0], weaker) for said in (reading.item, reading.note))
    if not spirit_words().search(reading.item):
        return reading
    return strength_apart(replace(reading, item=item, note=note), system, language)


def _of_degrees(reading: LineReading) -> LineReading:
    for name, said in (("item", reading.item), ("note", reading.note)):
        found = _DEGREES.search(said)
        if found:
            return _told(reading, name, said, found, "us")
    return reading


def _bare(reading: LineReading, said: str, language: str) -> re.Match[str] | None:
    """Find a percentage with no word beside it; that of a spirit is its strength, others ask."""
    found = _BARE.search(said)
    bare = _BARE.sub(" ", reading.item).strip(" ,")
    if found is None or re.search(rf"(?:{_of_other_things().pattern})\w*$", bare, re.IGNORECASE):
        return None
    if _sour().fullmatch(bare):  # "vinaigre d'alcool"
        return None
    if spirit_words().search(bare) or _weaker().search(bare):
        return found
    if _of_other_things().search(f"{bare}, {reading.note}"):
        return None
    behind = said[found.end() :].strip(" ,")
    if is_sold_by_its_share(read_food(bare, replace(common_larder(), language=language)).food):
        return None
    if is_poured(reading.amount) and not behind and found.start() >= 0:
        number = found["number"]
        raise Unreadable(
            f'"{found[0].strip(" ,")}" does not say of what.',
            f'Write "{number}% vol" if it is alcohol, else what it is, such as "{number}% fat".',
        )
    return None


def _told(
    reading: LineReading, name: str, said: str, found: re.Match[str], system: System
) -> LineReading:
    parts = found.groupdict()
    number = (parts.get("number") or parts.get("volume") or parts.get("plain") or "").replace(
        ",", "."
    )
    if parts.get("plain"):
        if system != "us":
            raise Unreadable(
                f'"{found[0].strip(" ,")}" is another strength in Britain and America.',
                f'Write "{float(number) / 2:g}% vol" if it is American, or what its label says.',
            )
        number = f"{float(number) / 2:g}"
    begins = found.start()
    if said[:begins].strip(" ,") and said[found.end() :].strip(
        " ,"
    ):  # "bottle with 90% alcohol": what joins is the food's
        part = next(name for name in ("number", "volume", "plain") if parts.get(name))
        begins = found.start(part) if not parts.get("least") else begins
    left = " ".join(f"{said[:begins]} {said[found.end() :]}".split()).strip(" ,")
    left = re.sub(r"(?<=[^\W\d])\s?[-–—]$", "", left)  # "vodka- 80 proof"
    if name == "item" and not left:
        left = said
    least = "at least " if parts.get("least") else ""
    note = left if name == "note" else reading.note
    told = ", ".join(part for part in (f"{least}{number}% vol", note) if part)
    return replace(reading, item=left if name == "item" else reading.item, note=told)
