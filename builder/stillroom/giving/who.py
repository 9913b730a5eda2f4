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
_PREGNANT = re.compile(
    r"^(?:yes|yep|y|true|ja|oui|sí|si|sì|she is|very)\b|\b(?:trimester|weeks?|months?|due|expect\w*"
    r"|ivf|maybe|perhaps|possibly|hop(?:es|ing)|trying|twins|breast-?feed\w*|nursing|pregnan\w*)\b"
)
_NOT_PREGNANT = re.compile(r"\b(?:not?|never|was|had|lost|no longer|any more|nobody|after)\b|n't\b")
_NEWBORN = re.compile(rf"\b(?:{_JUST_BORN})", re.IGNORECASE)
_TOGETHER = [
    (int(count), re.compile(rf"\b(?:{'|'.join(also)})\b", re.IGNORECASE))
    for count, also in _WORDS["born_together"].items()
]
_UNIT_OF = {word: unit for unit, also in _WORDS["ages"].items() for word in also}


def count_said(value: Any) -> Any:
    """Return a number as it is written; "yes" and "no" are none, though a file reads them as such.

    >>> count_said(2), count_said("2")
    (2, '2')
    """
    if isinstance(value, bool):
        raise Unreadable(f"{say_written(value)} is not a number.", 'Write "2", or "0" for none.')
    return value


def each_child(value: Any) -> list[Any]:
    """Return what is written of children as one entry a child: twins are two.

    >>> each_child("twins aged 3"), each_child([6, "Zwillinge, 8 Monate"])
    (['twins aged 3', 'twins aged 3'], [6, 'Zwillinge, 8 Monate', 'Zwillinge, 8 Monate'])
    """
    if isinstance(value, int | float | str) and not isinstance(value, bool):
        number = str(value).strip()
        # two children, of whom one may be a baby, or one of two years?
        if number.replace(".", "", 1).isdecimal():
            mend = f'Write each age on giving day: "children: [{number}]" is one aged {number}.'
            raise Unreadable(f'"children: {number}" may be how many, or how old.', mend)
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


def read_pregnant(value: Any) -> Any:
    """Return whether somebody is pregnant, as it is said; what is neither is left as it stands.

    What may be counts: "maybe", "trying for a baby" are yes.

    >>> [read_pregnant(said) for said in ("yes, twins", "due in March", "20 weeks", "maybe", "no")]
    [True, True, True, True, False]
    >>> read_pregnant("not any more")
    'not any more'
    """
    if not isinstance(value, str):
        return value
    said = value.strip().lower()
    if said in ("no", "nobody", "none", "nein", "non", "nee"):
        return False
    return True if _PREGNANT.search(said) and not _NOT_PREGNANT.search(said) else value


def read_pets(value: Any) -> frozenset[str]:
    """Return the kinds of animals that live there; "yes" may be any.

    >>> sorted(read_pets("a dog and two cats")), read_pets(False)
    (['cat', 'dog'], frozenset())
    >>> sorted(read_pets("house rabbits, 3 hens and a parrot called Bert"))
    ['bird', 'rabbit']
    """
    if isinstance(value, bool) or value is None:
        return ANY_PET if value else frozenset()
    found: set[str] = set()
    for text in value if isinstance(value, list | tuple) else [value]:
        plain = re.sub(r"guinea[ -]pig", "guinea-pig", str(text).lower())
        # a name in brackets says nothing; an animal named there counts
        aside = re.findall(r"[\w-]+", " ".join(re.findall(r"\(([^)]*)\)", plain)))
        found |= {_PET_OF[word] for word in aside if word in _PET_OF}
        plain = re.sub(r"\([^)]*\)", " ", plain).strip()
        if plain in ("yes", "no", "none"):
            found |= ANY_PET if plain == "yes" else set()
            continue
        for one in re.split(rf"\s*[,;&+]\s*|\s+(?:{'|'.join(_WORDS['and'])})\s+", plain):
            found |= _pets_of(one, text)
    return frozenset(found)


def _pets_of(one: str, text: Any) -> set[str]:
    """Return the kinds that one of several animals is: "a parrot called Bert"."""
    words = re.findall(r"[\w-]+", one)
    kinds = {_PET_OF[word] for word in words if word in _PET_OF}
    only_said = all(word in _WORDS["say_nothing"] or word.isdecimal() for word in words)
    if not (kinds or only_said) or set(words) & set(_WORDS["no_longer"]):
        raise Unreadable(
            f"{say_written(text)} is not a kind of animal we know.",
            f"It may be: {', '.join(_WORDS['pets'])}; or yes or no.",
        )
    return kinds
