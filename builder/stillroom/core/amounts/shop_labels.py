"""A pack as a shop's label has it: the price with its sign, and the size on one side of it.

"£15 70cl", "per 100g 45p", "250-g-Packung 1,99 €", "2,35 € la plaquette de 250 g". What stands on
both sides of a price, or beside two, may mean more and is left to be asked. Leaves out how a size
and a sum are read: packs.py.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.amounts.money import COINS, SIGNS_AT_HOME
from stillroom.core.amounts.units import unit_words
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex

_CODES = ("EUR", "GBP", "USD", "CHF", "SEK", "NOK", "DKK", "PLN", "CZK", "CAD", "AUD", "NZD", "JPY")
_EURO = ("euro", "euros", "pounds?", "dollars?", r"[€£$¥]", r"(?:US|CA|AU|NZ)\$")
_NUMBER = r"(?:\d[\d.,'’]*+(?::-|[-–—])?|[-–—],\d\d)"
_AROUND = " \t,;:=()–—-/"
# "10er-Packung", "a pack of ten" said as one word
_TENFOLD = late_regex(r"^(\d{1,3})er(?:[- ](?=\w)|$)", re.IGNORECASE)
_HYPHENED = late_regex(r"(?<=\d)-(?=[^\W\d]{1,9}\b)|(?<=[^\W\d])-(?=[^\W\d]{3,})")


def part_label(text: str) -> tuple[str, str] | None:
    """Return the size and the price of a label with one price on one side; None for others.

    >>> part_label("£15 70cl"), part_label("per 100g 45p"), part_label("12 kr för 1 kg")
    (('70cl', '£15'), ('100g', '45p'), ('1 kg', '12 kr'))
    >>> part_label("£2 (was £3) 500 g"), part_label("£2"), part_label("£5 2")
    (None, None, None)
    """
    found = list(_priced().finditer(text))
    if len(found) != 1:
        return None
    before, behind = text[: found[0].start()], text[found[0].end() :]
    sides = [side.strip(_AROUND) for side in (before, behind)]
    said = [side for side in sides if side]
    if len(said) != 1:
        return None
    size = plain_size(said[0])
    return None if not size or size.isdecimal() else (size, found[0][0].rstrip(".,"))


def plain_size(text: str) -> str:
    """Return a size without what a pack is called, and pieces as their number.

    >>> plain_size("la plaquette de 250 g"), plain_size("250-g-Packung"), plain_size("12 St.")
    ('250 g', '250 g', '12 pieces')
    >>> plain_size("10er-Packung"), plain_size("Stück"), plain_size("two of them")
    ('10 pieces', '1 pieces', 'two of them')
    """
    words = _HYPHENED.sub(" ", _TENFOLD.sub(r"\1 pieces ", text)).split()
    known = _words()
    while len(words) > 1 and words[0].lower() in known["little"]:
        del words[0]
    while len(words) > 1 and words[-1].lower() in known["little"]:
        del words[-1]
    if len(words) > 1 and words[0].lower() in known["held"]:
        del words[0]
        if len(words) > 1 and words[0].lower() in known["of"]:
            del words[0]
    if len(words) > 1 and words[-1].lower() in known["held"]:
        del words[-1]
    if words[-1].lower().rstrip(".") in known["pieces"] and len(words) <= 2:
        count = words[0] if len(words) == 2 else "1"
        return f"{count} pieces" if count.isdecimal() else text
    size = " ".join(words)
    return size if size[:1].isdecimal() or len(words) == 1 else text


def several_of(text: str) -> tuple[int, str, str, bool] | None:
    """Return how many packs of which size cost what, and whether each does; None for others.

    >>> several_of("2 Packungen à 500 g je 1,29"), several_of("two bottles of 70cl for 29")
    ((2, '500 g', '1,29', True), (2, '70cl', '29', False))
    >>> several_of("2 pots de 200 g à 3,90 l'un"), several_of("2 jars à 200 g 3,90")
    ((2, '200 g', '3,90', True), None)
    """
    found = _OF_SEVERAL.fullmatch(text.replace("’", "'"))
    if found is None or found["held"].lower() not in _words()["held_many"]:
        return None
    times = found["times"].lower()
    count = int(times) if times.isdecimal() else _numbers().get(times, 0)
    each = bool(found["je"] or found["each"])
    if not count or not (each or (found["sign"] or "").lower() in _FOR_ALL):
        return None
    return count, found["size"], found["price"], each


_FOR_ALL = frozenset({"for", "für", "pour", "por", "per", "voor", "för", "for all", "="})
_OF_SEVERAL = late_regex(
    r"(?P<times>\d{1,2}|[^\W\d]{2,7}) (?P<held>[^\W\d]{3,12})"
    r"(?: (?:of|à|a|de|d'|da|di|zu|von|van|av|mit|with|met))?"
    r" (?P<size>\d[\d.,]{0,6} ?[^\W\d]{1,10})"
    r",?(?: (?P<sign>at|@|à|zu|for all|for|für|pour|a|por|per|voor|för|=))?"
    r"(?P<je> (?:zu )?je| each)?"
    r" (?P<price>[^\w\s]?\d[\d.,]*(?: ?[€£$]| kr)?)"
    r"(?: (?P<each>each|apiece|ea\.?|je|l'une?|chacune?|cada un[oa]|l'un[oa]|ciascun[oa]|per stuk"
    r"|het stuk|styck|stycket|stk))?",
    re.IGNORECASE,
)


def is_pack_alone(size: str) -> bool:
    """Whether a size only says that it is a pack, or several: "la botte", "2 Netze".

    >>> is_pack_alone("la botte"), is_pack_alone("2 Netze"), is_pack_alone("12 jars")
    (True, True, False)
    """
    known = _words()
    said = [word for word in size.lower().split() if word not in known["little"]]
    words = [word for word in said if not word.isdecimal()]
    return bool(words) and all(word in known["bunches"] for word in words)


def is_measure_alone(size: str) -> bool:
    """Whether a size is a measure without a number or a pack: "a kilo", "le kg", "pound".

    >>> [is_measure_alone(said) for said in ("a kilo", "je kg", "1 kg", "kilo bag", "half a kilo")]
    [True, True, False, False, False]
    """
    words = [word for word in size.lower().split() if word not in _words()["little"]]
    return len(words) == 1 and words[0].rstrip(".") in unit_words("metric")


def is_counted(size: str) -> bool:
    """Whether a size without a measure says that pieces are counted: "12 pieces", "la docena".

    >>> is_counted("12 pieces"), is_counted("docena"), is_counted("2 left")
    (True, True, False)
    """
    return size.endswith(" pieces") or not size[:1].isdecimal()


def is_own(text: str) -> bool:
    """Whether a text in place of a price says that nothing is paid: "from the garden", "gratis".

    Every word has to be known: "garden centre", "own brand" and "free with a coupon" are asked.

    >>> is_own("from our own garden"), is_own("aus dem Garten"), is_own("free")
    (True, True, True)
    >>> is_own("from the garden centre"), is_own("own brand"), is_own("from the"), is_own("free 2")
    (False, False, False, False)
    """
    words = _WORD.findall(text.lower().replace("’", "'").replace("'s ", " "))
    known = _words()
    every = known["own_telling"] | known["own_beside"]
    if len(words) > _LONGEST_OWN or any(one.isdecimal() for one in text):
        return False
    return not known["own_telling"].isdisjoint(words) and every.issuperset(words)


_WORD = late_regex(r"[^\W\d_]+(?:-[^\W\d_]+)*'?")
_LONGEST_OWN = 8


def without_loose(text: str) -> tuple[str, bool]:
    """Return a price without the word that it is of what is sold loose, and whether it had one.

    >>> without_loose("2.20 a kilo, loose"), without_loose("lose 2,20 €/kg"), without_loose("£2 kg")
    (('2.20 a kilo', True), ('2,20 €/kg', True), ('£2 kg', False))
    """
    found = _loose().search(text)
    if not found:
        return text, False
    return f"{text[: found.start()]} {text[found.end() :]}".strip(_AROUND), True


@cache
def _loose() -> re.Pattern[str]:
    said = "|".join(sorted(map(re.escape, _words()["loose"]), key=len, reverse=True))
    return re.compile(rf"(?<![\w-])(?:{said})(?![\w-])", re.IGNORECASE)


@cache
def _words() -> dict[str, frozenset[str]]:
    return {part: frozenset(said) for part, said in read_data("shop_words.yml", "amounts").items()}


@cache
def _numbers() -> dict[str, int]:
    rows: dict[str, int] = read_data("shop_words.yml", "amounts")["numbers"]
    return rows


@cache
def _priced() -> re.Pattern[str]:
    """Return the pattern of a sum with its sign, before it or behind it."""
    home = {re.escape(sign) for signs in SIGNS_AT_HOME.values() for sign in signs}
    either = "|".join(sorted({*_CODES, *_EURO, *home}, key=len, reverse=True))
    coins = "|".join(sorted(map(re.escape, COINS), key=len, reverse=True))
    return re.compile(
        rf"(?<![\w.,–-])(?:(?:{either})\.?\s?{_NUMBER}|{_NUMBER}\s?(?:{either}|(?:{coins}))(?!\w)\.?"
        rf"|\d+:-)(?!\w)",
        re.IGNORECASE,
    )
