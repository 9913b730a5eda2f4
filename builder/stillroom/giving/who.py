"""Who lives in a household, as a person writes it: the ages of children, the kinds of animals.

Each reader raises Unreadable with what to write instead.
"""

from __future__ import annotations

import re
from importlib.resources import files
from typing import Any

import yaml

from stillroom.core.words.problems import Unreadable, say_written

_WORDS: dict[str, Any] = yaml.safe_load(
    (files("stillroom.giving") / "who.yml").read_text(encoding="utf-8")
)
_SPELT = {word: str(number) for number, word in enumerate(_WORDS["numbers"])} | {
    "a": "1",
    "an": "1",
}
# what tells an age: a figure, a number in words, a newborn
_JUST_BORN = "|".join(_WORDS["newborn"])
TELLS_AGE = re.compile(rf"\d|\b(?:{'|'.join(_WORDS['numbers'][1:])})\b|\b(?:{_JUST_BORN})", re.I)
_PET_OF = {word: kind for kind, also in _WORDS["pets"].items() for word in (kind, *also)}
ANY_PET = frozenset(_WORDS["pets"])
# "a baby of 8 months", "Ottilie, 8 months", "a girl (4)", "twins aged 2": who, and then the age
_WHO = re.compile(
    r"^(?=[^\W\d])(?:[^\W\d]|[\s.'’(&-])*?(?:,|\(|\bof\b|\baged?\b|\bis\b|:|(?=\d))\s*", re.I
)
_AGE = re.compile(
    r"^(?P<number>\d{1,3}|[a-z]+)\s*(?:(?P<half>½|and a half)\s*)?-?"
    r"(?P<unit>days?|weeks?|wks?|months?|mths?|mo|m|years?|yrs?|y"
    rf"|{'|'.join(word for also in _WORDS['ages'].values() for word in also)})?"
    r"(?:[\s-]+(?:old|of age|alt|oud))?"
    r"(?:[\s-]+(?P<who>baby|babies|boys?|girls?|toddlers?|child|kid|son|daughter|twins?))?\)?$",
    re.IGNORECASE,
)
_NEWBORN = re.compile(rf"\b(?:{_JUST_BORN})", re.IGNORECASE)
_TOGETHER = [
    (int(count), re.compile(rf"\b(?:{'|'.join(also)})\b", re.IGNORECASE))
    for count, also in _WORDS["born_together"].items()
]
_UNIT_OF = {word: unit for unit, also in _WORDS["ages"].items() for word in also}


def each_child(value: Any) -> list[Any]:
    """Return what is written of children as one entry a child: twins are two.

    >>> each_child("twins aged 3"), each_child([6, "Zwillinge, 8 Monate"])
    (['twins aged 3', 'twins aged 3'], [6, 'Zwillinge, 8 Monate', 'Zwillinge, 8 Monate'])
    """
    rows = value if isinstance(value, list | tuple) else [value]
    return [one for one in rows for _ in range(_born_together(str(one)))]


def _born_together(said: str) -> int:
    return next((count for count, words in _TOGETHER if words.search(said)), 1)


def read_age_months(value: Any) -> int:
    """Return an age in whole months, never more than it is; a bare number is years.

    >>> read_age_months(4), read_age_months("8 months"), read_age_months("6 weeks")
    (48, 8, 1)
    >>> read_age_months("a baby of 8 months"), read_age_months("Wren, 3 years old")
    (8, 36)
    >>> [read_age_months(said) for said in ("6 mois", "3 Jahre", "8 meses", "nouveau-né")]
    [6, 36, 8, 0]
    """
    text = str(value).strip()
    if text.startswith("-"):
        text = ""
    if _NEWBORN.search(text):
        return 0
    found = _AGE.match(text) or _AGE.match(_WHO.sub("", text, count=1))
    number = _SPELT.get(found["number"].lower(), found["number"]) if found else ""
    # "2 boys" and "a baby" tell how many there are, and not how old
    counted = found and found["who"] and not found["unit"]
    if (
        not found
        or counted
        or not number.isdecimal()
        or isinstance(value, bool)
        or int(number) > 120
    ):
        raise Unreadable(
            f"{say_written(value)} is not an age.",
            'Write the age on giving day: "4" for years, "8 months" or "6 weeks".',
        )
    said = (found["unit"] or "years").lower()
    unit, count = _UNIT_OF.get(said, said), int(number)
    if unit.startswith("d"):
        return count // 31
    if unit.startswith("w"):
        return count * 7 * 12 // 365
    return count if unit.startswith("m") else count * 12 + (6 if found["half"] else 0)


def read_pets(value: Any) -> frozenset[str]:
    """Return the kinds of animals that live there; "yes" may be any.

    >>> sorted(read_pets("a dog and two cats")), read_pets(False)
    (['cat', 'dog'], frozenset())
    """
    if isinstance(value, bool) or value is None:
        return ANY_PET if value else frozenset()
    found: set[str] = set()
    for text in value if isinstance(value, list | tuple) else [value]:
        plain = str(text).lower().replace("guinea pig", "guinea-pig")
        # a name in brackets says nothing; an animal named there counts
        aside = re.findall(r"[\w-]+", " ".join(re.findall(r"\(([^)]*)\)", plain)))
        found |= {_PET_OF[word] for word in aside if word in _PET_OF}
        plain = re.sub(r"\([^)]*\)", " ", plain)
        words = [word for word in re.split(r"[\s,;&]+", plain) if word]
        if words in (["yes"], ["no"], ["none"]):
            found |= ANY_PET if words == ["yes"] else set()
            continue
        kinds = {_PET_OF[word] for word in words if word in _PET_OF}
        odd = [
            w
            for w in words
            if w not in _PET_OF and w not in _WORDS["say_nothing"] and not w.isdecimal()
        ]
        if not kinds or odd:
            raise Unreadable(
                f"{say_written(text)} is not a kind of animal we know.",
                f"It may be: {', '.join(_WORDS['pets'])}; or yes or no.",
            )
        found |= kinds
    return frozenset(found)
