"""A pack as a shop sells it: "700 ml for 14.50", "50 or more for 0.48 each".

Leaves out what is bought of them: buying.py.
"""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

from stillroom.core.amounts.money import is_money_and_weight, parse_money, with_point
from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.shop_labels import (
    is_counted,
    is_measure_alone,
    is_own,
    is_pack_alone,
    part_label,
    plain_size,
    several_of,
    without_loose,
)
from stillroom.core.amounts.summed import refuse_too_much, take_amount
from stillroom.core.amounts.units import System, size_of
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable, say_written

_PACK = late_regex(
    r"^(?P<size>.+?)(?P<sign>\s+(?:for|für|pour|por|per|voor|för|@|at|-|–)\s+|\s*[=:@]\s*"
    r"|,\s+|\s+(?:a|à|zu)\s+(?=[^\w\s]?\d)|\s*/\s*(?=[^\w\s]\d)|\s+(?=[^\w\s]{1,2}\d)"
    r"|\s+(?=\d+[.,]\d\d$))(?P<price>\S.*?)(?P<each>\s+(?:each|apiece|ea\.?|je))?$",
    re.IGNORECASE,
)
# "2.50 / kg", "£1.15 for 500 g", "£4.20 a dozen": the price first, then a measure
_PRICE_FIRST = late_regex(
    r"^(?P<price>[^/]+?)(?:\s*/\s*|\s+(?:for|per|a|an|für|pro|je|pour|les?|la|por|el|il|al|das|der|voor)\s+)"
    r"(?P<size>(?:\d\S*\s*)?[^\W\d].*|\d+)$",
    re.IGNORECASE,
)
_OF_ONE = late_regex(
    r"^(?:(?P<times>\d{1,3})|an?|one|per|la|une|una|il|het|een|das|ein|pro|je|par|por)?\s*"
    r"(?P<half>half (?:an? )?|half-|halbes |demi-|media |mezza |halve? |halvt )?"
    r"(?P<many>dozen|doz\.?|dz\.?|pairs?|dutzend|douzaines?|docenas?|dozzin[ae]|dozijn|dussin)$",
    re.IGNORECASE,
)
_DOZEN = 12
_BY_WEIGHT = 0
"""From no pack on: the price is that of a weight, and as much is sold as is wanted."""
_LOOSE = "loose"
# the prices of a shelf are told for these, whatever the packs are (Directive 98/6/EC, article 2:
# a kilogram; article 6 and common practice: 100 g)
_PER_100 = late_regex(
    r"(?:/|\b(?:per|je|pro|par|los|les|al|a|ogni|cada)\s)\s*100\s?g(?:r|ram|ramm)?\b", re.IGNORECASE
)
_HALF = late_regex(
    r"^(?:(?:a )?half (?:a )?|(?:ein )?halbes |(?:eine )?halbe |(?:un |une )?demi[- ]|medio |media "
    r"|mezzo |mezza |(?:een )?half |(?:ett |et )?halvt? )(?=\w)",
    re.IGNORECASE,
)
# "a bag (1.5 kg)", "ein Sack (25 kg)"
_IN_BRACKETS = late_regex(r"^(?:\w+ )?[^\W\d]{3,12} \((?P<size>\d[\d.,]* ?[^\W\d]{1,10})\)$")
_SEVERAL = late_regex(r"^(?P<times>\d{1,3})\s*[x×]\s*(?P<one>\d.*)$", re.IGNORECASE)
# what a pack is, behind its size: "500 g bag", "1 kg packet"
_HELD = late_regex(
    r"(?:bags?|packs?|packets?|tubs?|boxe?s?|sacks?|bottles?|jars?|tins?|cartons?|bars?"
    r"|pieces?|blocks?|wedges?|lumps?|slabs?|stück|morceaux?|trozos?|pezz[oi]|stuk|bit)",
    re.I,
)
_COUNTED = late_regex(r"[^\W\d]{3,}")
# "a net", "a bunch": nobody knows how many are in it; "a box of 12" says so
_HOW_MANY = late_regex(r"^(?:\d+|an?|one)?\s*(?:net|punnet|bunch|tray|case|crate|bag|box|pack"
    r"|packet|sack|sachet|tub)(?:s|es)?$", re.I)  # fmt: skip
_HOLDING = late_regex(
    r"^(?:(?P<times>\d{1,3})\s+|an?\s+|one\s+)?(?:pack|packet|box|tray|carton|bag|net|punnet"
    r"|bunch|case|crate|tub|sack)(?:s|es)?\s+of\s+(?P<rest>\d.*)$",
    re.IGNORECASE,
)
# "0.48 each", "each 0.48"
_EACH = late_regex(
    r"^(?:each (?P<before>\S+)|(?:(?:a|à|at|zu|für) )?(?P<behind>\S+(?: [^\w\s])?) (?:each"
    r"|ea\.?|apiece|a piece|(?:das |pro |je )?stück|(?:la )?pièce|l'unité|(?:la )?unidad|cada uno"
    r"|l'uno|cad\.?|cadauno|(?:al )?pezzo"
    r"|(?:per )?stuk))$",
    re.IGNORECASE,
)
# "6 je 0,40", "6 Eier zu je 0,40": so many, and each costs so much
_OF_EACH = late_regex(
    r"^(?P<size>\d{1,3}(?:\s+[^\W\d]+)?)\s+(?:zu |à |för |a )?"
    r"(?:je|chacune?|cada uno|cadauno|ognuno|elk|styck)$",
    re.IGNORECASE,
)
_SO_MANY = late_regex(r"\d{1,3} [^\W\d]{3,}")
_AT_LEAST = late_regex(
    r"^(?:(?P<count>\d{1,9})\s+or\s+more|(?:from|ab|dès)\s+(?P<from>\d{1,9}))"
    r"(?:\s+of\s+(?P<size>.+))?$",
    re.IGNORECASE,
)
_HOW_TO_WRITE = 'Write "700 ml for 14.50", "12 for 7.20" or "50 or more for 0.48 each".'
_A_SHOP = "a shop sells"


def parse_pack(
    written: object, currency: str = "GBP", system: System = "metric", language: str = "en_GB"
) -> tuple[Amount, Fraction, int]:
    """Read a pack as typed: its amount, its price, and from how many on the price holds.

    The price is read as its language writes money, and so is the size: "0,7 l für 14,50". From 0
    on holds the price of a weight ("2.20 a kilo"), which may be sold loose: where it is said so,
    the amount's noun is "loose". What is one's own costs nothing by any measure.

    >>> amount, price, at_least = parse_pack("700 ml for 14.50")
    >>> (amount.low, amount.unit, price, at_least)
    (Fraction(700, 1), 'ml', Fraction(29, 2), 1)
    >>> parse_pack("50 or more for 0.48 each")[1:]
    (Fraction(12, 25), 50)
    >>> parse_pack("a box of 12 for 6.60")[0].low, parse_pack("£5 for 2")[0].low
    (Fraction(12, 1), Fraction(2, 1))
    >>> parse_pack("2.20 a kilo")[2], parse_pack("from the garden")[1:]
    (0, (Fraction(0, 1), 0))
    """
    text = " ".join(str(written).split()) if isinstance(written, str | int | float) else ""
    if is_own(text):
        return Amount(Fraction(1), Fraction(1)), Fraction(0), _BY_WEIGHT
    text, is_loose = without_loose(with_point(text, language))
    amount, price, at_least = _read_pack(text, currency, system, language)
    by_weight = amount.unit and size_of(amount.unit) == "mass" and at_least <= 1
    if by_weight and amount.low == 100 and amount.unit == "g" and _PER_100.search(text):
        at_least = _BY_WEIGHT
    if is_loose and by_weight:
        return replace(amount, noun=_LOOSE), price, _BY_WEIGHT
    return amount, price, at_least


def _read_pack(
    text: str, currency: str, system: System, language: str
) -> tuple[Amount, Fraction, int]:
    """Read a pack in whatever order its size and its price stand; raises Unreadable."""
    if one := _EACH.match(text):
        price = parse_money(one["before"] or one["behind"], currency, language)
        return Amount(Fraction(1), Fraction(1)), price, 1
    if several := several_of(text):
        count, size, paid, is_each = several
        pack = _size(size, system)
        price = parse_money(paid, currency, language, beside_size=True)
        return (pack if is_each else pack.times(Fraction(count))), price, 1
    if turned := _price_first(text, currency, system, language):
        return turned
    found = _PACK.match(text)
    if found and (one := _OF_EACH.fullmatch(found["size"])) and not found["each"]:
        each = parse_money(found["price"], currency, language)
        _size(one["size"], system)  # "3 Töpfe zu je": a pot of how much is asked
        return Amount(Fraction(1), Fraction(1)), each, 1
    if found:
        _ask_what_is_meant(text, found)
    try:
        return _size_first(text, found, currency, system, language)
    except Unreadable:
        labelled = part_label(text)
        if labelled is None:
            raise
        try:
            amount = _size(labelled[0], system)
        except Unreadable:
            labelled = None
        # "(2 left)" is no pack of two
        if labelled is None or not (amount.unit or is_counted(labelled[0])):
            raise
    return amount, parse_money(labelled[1], currency, language), _holds_from(labelled[0], amount)


def _holds_from(size: str, amount: Amount) -> int:
    """Return from how many on a price holds: none of "a kilo", "/kg", one of "1 kg"."""
    weighed = amount.unit and size_of(amount.unit) == "mass" and amount.low == 1
    return _BY_WEIGHT if weighed and is_measure_alone(size) else 1


def _size_first(
    text: str, found: re.Match[str] | None, currency: str, system: System, language: str
) -> tuple[Amount, Fraction, int]:
    """Read "700 ml for 14.50" and "50 or more for 0.48 each"; raises Unreadable."""
    if not found:
        raise Unreadable(f"{say_written(text)} is not a pack with its price.", _HOW_TO_WRITE)
    if found["each"] and _SO_MANY.fullmatch(found["size"]):  # "3 jars at 1.99 each"
        _size(found["size"], system)
        return Amount(Fraction(1), Fraction(1)), parse_money(found["price"], currency, language), 1
    several = _AT_LEAST.match(found["size"])
    at_least = int(several["count"] or several["from"]) if several else 1
    size_text = (several["size"] or "1") if several else found["size"]
    if bool(found["each"]) != bool(several) or at_least < 1:
        raise Unreadable(f'"{text}" does not say for how many it holds.', _HOW_TO_WRITE)
    amount = _size(size_text, system)
    refuse_too_much(Amount(Fraction(at_least), Fraction(at_least)), size_text, _A_SHOP)
    is_sized = bool(amount.unit) or not size_text.isdecimal()
    price = parse_money(found["price"], currency, language, beside_size=is_sized)
    return amount, price, at_least if several else _holds_from(size_text, amount)


def _ask_what_is_meant(text: str, found: re.Match[str]) -> None:
    """Ask about "3 for 2", an offer or a price, and "12 at 55p", of one or of all."""
    size, price = found["size"], found["price"]
    sign = found["sign"].strip().lower()
    if _SO_MANY.fullmatch(size) and sign in ("à", "zu") and not found["each"]:
        raise _one_or_all(text, size)
    if not size.isdecimal():
        return
    # an offer counts on the fingers; a number of thousands of digits is none, and is told elsewhere
    few = len(size) <= 3 and len(price) <= 3
    if few and price.isdecimal() and int(price) == int(size) - 1:
        raise Unreadable(
            f'"{text}" can be an offer or a price.',
            f'Write what is paid for all: "{size} for {price}.00".',
        )
    if sign in ("@", "at", "à", "zu") and not found["each"]:
        raise _one_or_all(text, size)


def _one_or_all(text: str, size: str) -> Unreadable:
    what = f'"{text}" can be the price of one or of all.'
    return Unreadable(what, f'Write "{size} for …" or "… each".')


def _price_first(
    text: str, currency: str, system: System, language: str
) -> tuple[Amount, Fraction, int] | None:
    """Read "2.50 / kg" and "£1.15 for 500 g"; None for what does not begin with its price."""
    found = _PRICE_FIRST.match(text)
    if not found:
        return None
    try:
        amount = _size(found["size"], system)
        word = found["size"].split()[-1]
        is_either = is_money_and_weight(word, currency, language)  # "pounds"
        is_sized = bool(amount.unit) and not is_either
        price = parse_money(found["price"], currency, language, beside_size=is_sized)
    except Unreadable:
        return None
    count = found["size"].partition(" ")[0]
    if is_either and found["price"].isdecimal() and count.isdecimal():
        raise Unreadable(
            f'"{text}" can be a weight or a price.',
            f'Write "{found["price"]} for {count}.00" where {count} is paid, '
            f'"{found["price"]}.00 for {count} lb" where {found["price"]} is.',
        )
    counted = _OF_ONE.match(found["size"]) or _HOLDING.match(found["size"])
    with_sign = not found["price"][0].isdecimal() or not found["price"][-1].isdecimal()
    if amount.unit or counted or with_sign:
        return amount, price, _holds_from(found["size"], amount)
    return None


def _size(text: str, system: System) -> Amount:
    """Read the size of a pack: "0,7 l", "2 x 500 g", "half a kilo", "a dozen", "kg"."""
    if many := _OF_ONE.match(text):
        count = Fraction(2 if many["many"].lower().startswith("pair") else _DOZEN)
        count = count * int(many["times"] or 1) / (2 if many["half"] else 1)
        return Amount(count, count)
    if _HOW_MANY.match(text) or is_pack_alone(text):
        what = f'"{text}" does not say how much is in it.'
        raise Unreadable(what, 'Write "6 for 2.00" or "a bag of 500 g for 2.00".')
    held_so = _IN_BRACKETS.match(text)
    said, text = text, held_so["size"] if held_so else plain_size(text)
    held = _HOLDING.match(text)
    several = _SEVERAL.match(text)
    times = int(several["times"]) if several else int((held and held["times"]) or 1)
    text = held["rest"] if held else text
    one = _HALF.sub("1/2 ", several["one"] if several else text)
    one = re.sub(r"^an? (?=\w)", "1 ", one, flags=re.IGNORECASE)
    bare = one[:1].isalpha()  # "kg" is one; "quarter" is anybody's guess
    one = f"1 {one}" if bare else one
    amount, rest = take_amount(_with_point(one), system)
    if rest and amount:  # "500 g bag", "12 eggs"
        known = _HELD.fullmatch(rest) if amount.unit else not bare and _COUNTED.fullmatch(rest)
        rest = "" if known else rest
    if amount is None or rest or amount.low <= 0 or amount.low != amount.high:
        raise Unreadable(f'"{said}" is not the size of a pack.', _HOW_TO_WRITE)
    if not amount.unit and amount.low.denominator != 1:  # half a piece is sold nowhere
        raise Unreadable(f'"{said}" is not the size of a pack.', _HOW_TO_WRITE)
    amount = amount.times(Fraction(times))
    refuse_too_much(amount, said, _A_SHOP)
    return amount


def _with_point(size: str) -> str:
    """Return "0,7 l" as "0.7 l": no shop sells packs by the thousand."""
    return re.sub(r"^(\d{1,3}),(\d{1,2})(?!\d)", r"\1.\2", size)
