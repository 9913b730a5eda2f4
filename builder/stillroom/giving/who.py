"""Who lives in a household, as a person writes it: the ages of children, the kinds of animals.

Each reader raises Unreadable with what to write instead.
"""

from __future__ import annotations

import re
from datetime import date
from importlib.resources import files
from typing import Any, Final, Literal

import yaml

from stillroom.core.words.problems import Unreadable, say_written
from stillroom.giving.written import read_day

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
    r"(?P<unit>days?|weeks?|wks?|months?|mths?|mos?|m|years?|yrs?|yo|y/o|y"
    rf"|{'|'.join(word for also in _WORDS['ages'].values() for word in also)})?"
    r"(?:[\s-]+(?:old|of age|alt|oud))?"
    r"(?:[\s-]+(?P<who>baby|babies|boys?|girls?|toddlers?|child|kid|son|daughter|twins?))?\)?$",
    re.IGNORECASE,
)
_PREGNANT = re.compile(
    r"^(?:yes|yep|y|true|ja|oui|sí|si|sì|she is|very)\b|\b(?:trimester|weeks?|months?|due|expect\w*"
    r"|ivf|maybe|perhaps|possibly|hop(?:es|ing)|trying|twins|breast[\s-]?feed\w*|nursing|pregnan\w*"
    r"|schwanger\w*|enceinte|grossesse|embaraz\w*|incinta|gravid\w*|zwanger\w*)\b"
)
BREASTFEEDING: Final[Literal["breastfeeding"]] = "breastfeeding"
_FEEDS = re.compile(
    r"\bbreast[\s-]?feed\w*|\bnursing\b|\bstill(?:t|en|ende[rn]?)\b|\ballait\w*|\blactan\w*"
    r"|\bel pecho\b|\ballatta\w*|\bborstvoeding\b|\bzogend\w*|\bamm(?:ar|ande|ning)\b"
)
_BELOW_NOTHING = re.compile(r"(?:[-–−]|(?:minus|moins|menos|meno|min)\b)\s*(?=\w)", re.IGNORECASE)
_NOT_BORN = 'A child that is not born yet has none: write "pregnant: yes" for the household.'
_EXPECTS = re.compile(
    r"\b(?:pregn\w*|preggers|preggo|expect\w*|trimester|due|schwanger\w*|enceinte|grossesse"
    r"|embaraz\w*|incinta|gravid\w*|zwanger\w*)\b"
)
_NOT_PREGNANT = re.compile(
    r"\b(?:not?(?!\.? ?\d)|never|was|had|lost|no longer|any more|nobody|after|nicht|keine?|mehr|war"
    r"|niet|geen|meer|pas|plus|ya|estuvo|non|più|inte|ikke|längre|lenger|längere|var)\b|n't\b"
)
# "nearly 1" is no year: honey waits for the birthday
_LESS = re.compile(
    r"\b(?:nearly|almost|not (?:quite|yet)|just short of|shy of|under|less than|younger than|below"
    r"|before|up to|coming up (?:to|for)|turning|going on|rising|soon|about|around|approx\w*"
    r"|circa|roughly|fast|knapp|bald|presque|casi|quasi|bijna|unter|moins de|menos de|meno di)\b"
    r"\s*(?=\S)",
    re.IGNORECASE,
)
# a child of "under five" may be of any age below it
_YOUNGER = re.compile(
    r"\b(?:under|less than|younger than|below|unter|jünger als|moins de|menos de|meno di|onder)\b"
    r"[\s-]*(?=\d|[a-z])",
    re.IGNORECASE,
)
# "3 under five", "two children under 4", "three under-fives"
_SO_MANY_UNDER = re.compile(
    r"^(?P<count>\d{1,2}|[a-z]+)\s+(?:small |little |young )?"
    r"(?:kids?|children|child|kinder|enfants|niños)?\s*(?:all |aged? |who are )*"
    r"(?P<under>(?:under|younger than|below|unter|moins de|menos de|meno di|onder)[\s-]+[a-z\d]+)"
    r"(?: years?| jahren?| ans| años| anni| jaar)?\.?$",
    re.IGNORECASE,
)
_BORN = re.compile(
    r"\b(?:born(?: on| in)?|b\.|dob:?|geboren(?: am| im)?|née? (?:le|en)|nacid[oa] (?:el|en)"
    r"|nat[oa] (?:il|nel)) *(?P<day>.+)$",
    re.IGNORECASE,
)
_NO_PETS = frozenset(
    {"no pets", "no pet", "no animals", "none at all", "nothing", "keine", "aucun"}
)
_OLDEST_DAYS = 36600
_MOST_CHILDREN = 20
_NEWBORN = re.compile(rf"\b(?:{_JUST_BORN})", re.IGNORECASE)
_TOGETHER = [
    (int(count), re.compile(rf"\b(?:{'|'.join(also)})\b", re.IGNORECASE))
    for count, also in _WORDS["born_together"].items()
]
_UNIT_OF = {word: unit for unit, also in _WORDS["ages"].items() for word in also}


def count_said(value: Any) -> Any:
    """Return a number as it is written; "yes" and "no" are none, though a file reads them as such.

    >>> count_said(2), count_said("2"), count_said("two")
    (2, '2', 2)
    """
    if isinstance(value, bool):
        raise Unreadable(f"{say_written(value)} is not a number.", 'Write "2", or "0" for none.')
    said = value.strip().lower() if isinstance(value, str) else ""
    return int(_SPELT[said]) if said in _SPELT else value


def each_child(value: Any) -> list[Any]:
    """Return what is written of children as one entry a child: twins are two.

    >>> each_child("twins aged 3"), each_child([6, "Zwillinge, 8 Monate"])
    (['twins aged 3', 'twins aged 3'], [6, 'Zwillinge, 8 Monate', 'Zwillinge, 8 Monate'])
    >>> each_child("2 under five"), each_child(["three under-fives"])[0]
    (['under five', 'under five'], 'under fives')
    """
    if isinstance(value, int | float | str) and not isinstance(value, bool):
        number = str(value).strip()
        # two children, of whom one may be a baby, or one of two years?
        if number.replace(".", "", 1).isdecimal():
            mend = f'Write each age on giving day: "children: [{number}]" is one aged {number}.'
            raise Unreadable(f'"children: {number}" may be how many, or how old.', mend)
    rows = value if isinstance(value, list | tuple) else [value]
    each = [one for row in rows for one in _so_many_under(row)]
    return [one for one in each for _ in range(_born_together(str(one)))]


def _so_many_under(row: Any) -> list[Any]:
    """Return "3 under five" as three children of under five."""
    found = _SO_MANY_UNDER.match(row.strip()) if isinstance(row, str) else None
    count = _SPELT.get(found["count"].lower(), found["count"]) if found else ""
    if found is None or not count.isdecimal() or not 0 < int(count) <= _MOST_CHILDREN:
        return [row]
    return [re.sub(r"[\s-]+", " ", found["under"])] * int(count)


def _born_together(said: str) -> int:
    return next((count for count, words in _TOGETHER if words.search(said)), 1)


def age_said(value: Any, info: Any) -> int:
    """Return the age of a child of a giving list, in months on its giving day."""
    return read_age_months(value, (info.context or {}).get("giving day"))


def read_age_months(value: Any, on: date | None = None) -> int:
    """Return an age in whole months, never more than it is; a bare number is years.

    With `on`, a day or a month of birth is read as well: the age on that day.

    >>> read_age_months(4), read_age_months("8 months"), read_age_months("6 weeks")
    (48, 8, 1)
    >>> read_age_months("a baby of 8 months"), read_age_months("Wren, 3 years old")
    (8, 36)
    >>> [read_age_months(said) for said in ("6 mois", "3 Jahre", "8 meses", "nouveau-né")]
    [6, 36, 8, 0]
    >>> [read_age_months(said) for said in ("nearly 1", "almost 3", "under 3", "Theo (almost 5)")]
    [11, 35, 0, 59]
    >>> read_age_months("born May 2024", date(2027, 12, 18))
    42
    """
    text = str(value).strip()
    if below := _BELOW_NOTHING.match(text):
        bare = text[below.end() :]
        what = f"{say_written(value)} is less than nothing, and no age."
        raise Unreadable(what, f'Write "{bare}" if that is meant. {_NOT_BORN}')
    if _NEWBORN.search(text):
        return 0
    if on and (born := _BORN.search(text)):
        return _since(born["day"], on, value)
    if _YOUNGER.search(text) and _YOUNGER.sub("", text).strip(" .)") not in ("1", "one"):
        return 0  # "under five" may be a baby: honey waits
    if less := _LESS.search(text):
        return max(read_age_months(f"{text[: less.start()]}{text[less.end() :]}", on) - 1, 0)
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
        mend = 'Write the age on giving day: "4" for years, "8 months" or "6 weeks".'
        if _EXPECTS.search(text.lower()):
            mend = _NOT_BORN
        raise Unreadable(f"{say_written(value)} is not an age.", mend)
    said = (found["unit"] or "years").lower()
    unit, count = _UNIT_OF.get(said, said), int(number)
    if unit.startswith("d"):
        return count // 31
    if unit.startswith("w"):
        return count * 7 * 12 // 365
    return count if unit.startswith("m") else count * 12 + (6 if found["half"] else 0)


def _since(born: str, on: date, value: Any) -> int:
    """Return the whole months since a birth; of a month or a year its last day is meant."""
    day = _last_day(born, on)
    if day is None or not 0 <= (on - day).days < _OLDEST_DAYS:
        raise Unreadable(
            f"{say_written(value)} is not a day of birth before the baskets go out.",
            'Write the age on giving day: "4" for years, "8 months" or "6 weeks".',
        )
    return (on.year - day.year) * 12 + on.month - day.month - (on.day < day.day)


def _last_day(born: str, on: date) -> date | None:
    """Return a day of birth; the last one of a month or a year, so that no age is too great."""
    said = " ".join(born.strip(" .)").split())
    whole = re.fullmatch(r"\d{4}", said)
    tries = [f"31 December {said}"] if whole else [f"{n} {said}" for n in (31, 30, 29, 28)]
    try:
        return read_day(said)
    except Unreadable:
        pass
    for words in tries:
        try:
            last = read_day(words)
        except Unreadable:
            continue
        begun = (last.year, last.month if not whole else on.month) <= (on.year, on.month)
        return min(last, on) if begun else last
    return None


def read_pregnant(value: Any) -> Any:
    """Return whether somebody is pregnant, as it is said; what is neither is left as it stands.

    What may be counts: "maybe", "trying for a baby" are yes.

    >>> [read_pregnant(said) for said in ("yes, twins", "due in March", "20 weeks", "maybe", "no")]
    [True, True, True, True, False]
    >>> read_pregnant("not any more"), read_pregnant("breast-feeding")
    ('not any more', 'breastfeeding')
    """
    if not isinstance(value, str):
        return value
    said = value.strip().lower()
    if said in ("no", "nobody", "none", "nein", "non", "nee"):
        return False
    if _NOT_PREGNANT.search(said):
        return value
    if feeds_alone(said):
        return BREASTFEEDING
    return True if _PREGNANT.search(said) else value


def pregnant_said(value: Any) -> bool | Literal["breastfeeding"]:
    """Return whether somebody is pregnant, or breastfeeds; raises Unreadable for other words."""
    found = read_pregnant(value)
    if isinstance(found, bool):
        return found
    if found == BREASTFEEDING:
        return BREASTFEEDING
    raise Unreadable(
        f"{say_written(value)} tells neither yes nor no.",
        'It has to be yes or no; or "breastfeeding".',
    )


def feeds_alone(said: str) -> bool:
    """Whether words say that somebody breastfeeds, and not that a child is on its way.

    >>> feeds_alone("Breast feeding"), feeds_alone("stillt"), feeds_alone("pregnant and nursing")
    (True, True, False)
    """
    plain = said.lower()
    return bool(_FEEDS.search(plain)) and not _EXPECTS.search(plain)


def denies_pregnancy(said: str) -> bool:
    """Whether words tell that it was, or is not: "not pregnant any more"."""
    return bool(_NOT_PREGNANT.search(said.lower()))


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
        # what stands in brackets is said of the one before it: its name, or what "Fido" is
        plain = re.sub(r"\(([^)]*)\)", lambda said: re.sub(r"[,;&+]", " ", said[1]), plain).strip()
        if plain in _NO_PETS:
            continue
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
