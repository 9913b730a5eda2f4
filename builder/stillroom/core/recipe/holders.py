"""What a recipe is made in and what it is given in, from the words a cook writes.

Sizes are read as an ingredient line's are, decimals as the book's language writes them. Leaves out
the ingredients, parts.py, and what a batch makes: making.py.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System, plain_nouns, size_of
from stillroom.core.lines.sizes import comma_parts, find_size, read_leading
from stillroom.core.recipe.making import Makes, read_making
from stillroom.core.words.odd_figures import refuse_odd_figure
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.plurals import singular
from stillroom.core.words.problems import Unreadable


@dataclass(frozen=True)
class Vessel:
    """What a batch is made in; the capacity is to the brim."""

    words: str
    capacity: Amount | None = None


@dataclass(frozen=True)
class Container:
    """What a batch is filled into to be given: its name, nominal size and closure."""

    name: str
    size: Amount | None = None
    closure: str = ""


# what a batch may be said to make, that is what it is given in: "4 jars of 200 ml", "3 bags"
_GIVEN_IN = frozenset(
    {"jar", "bottle", "bag", "tin", "box", "pot", "tub", "packet", "flask", "crock", "sachet"}
    | {"carton", "tube", "parcel", "pouch", "basket", "mug", "vial", "phial"}
)


def container_made(makes: Makes) -> Container | None:
    """Return the container that "makes" counts, with the size it says; None for other things.

    >>> container_made(read_makes("4 bottles of 330 ml", "metric")).size.low
    Fraction(330, 1)
    >>> container_made(read_makes("24 biscuits", "metric")) is None
    True
    """
    # "glass jars", "tins of biscuits"
    words = makes.things.partition(" of ")[0].split()
    name = singular(words[-1]) if words else ""
    return Container(name, makes.each) if name in _GIVEN_IN else None


# before a number that has a unit, at the head of a part
_LESS_THAN_NOTHING = late_regex(r"(?:^|[,:(])\s*([-−]\s?[\d½¼¾][\d.,/]*\s?[mcd]?[lgm]\b)")


def _one_line(value: Any, wanted: str) -> str:
    if not isinstance(value, str | int | float):
        raise Unreadable("This is not words on one line.", f'Write "{wanted}".')
    refuse_odd_figure(str(value))
    if less := _LESS_THAN_NOTHING.search(str(value)):
        raise Unreadable(f'"{less[1]}" is less than nothing.', f'Write "{wanted}".')
    return str(value)


# "wide mouth quart jar", "clean gallon jar": one quart, one gallon
_BARE_SIZE = late_regex(
    r"^(?P<before>[a-z][a-z -]*?\s)?(?P<size>(?:half[\s-])?(?:pint|quart|gallon|litre|liter))\s+"
    r"(?P<rest>(?:[a-z-]+\s+)?(?:jars?|bottles?|crocks?|jugs?|carboys?|demijohns?|pots?|pans?|saucepans?)\b)",
    re.IGNORECASE,
)


# "9 x 13 inch pan", "20x30 cm tray", "two 9x5 loaf pans": the sides of a form
_SIDE = r"\d{1,3}(?:[.,/]\d{1,2}|[½¼¾])?\s*(?:cm|mm|in(?:ch(?:es)?)?|[\"”″])?"
_SIDES = late_regex(
    rf"(?<![\w.,]){_SIDE}(?:\s*[x×]\s*{_SIDE}){{1,2}}"
    r"(?:(?<=m)|(?<=in)|(?<=inch)|(?<=inches)|(?<=[\"”″])|[\s-]*(?:cm|mm|in|inch|inches)"
    r"|(?=\s+(?:[a-z]+\s+){0,3}(?:pan|tin|tray|dish|sheet|form)s?))(?![\w])",
    re.IGNORECASE,
)


def _size_first(text: str) -> str:
    """Return "1 quart wide mouth jar" for "wide mouth quart jar", other words as they are."""
    bare = _BARE_SIZE.match(text)
    if bare is None or re.match(r"(?:half[\s-])", bare["size"], re.IGNORECASE):
        return text
    before = re.sub(r"^an?\s+", "", bare["before"] or "")
    return f"1 {bare['size']} {before}{bare['rest']}{text[bare.end() :]}"


def _holds_something(amount: Amount, text: str) -> Amount:
    if amount.low <= 0:
        raise Unreadable(f'"{text}" holds nothing.', "Write a size above 0.")
    return amount


def read_makes(text: str, system: System, language: str = "en_GB") -> Makes:
    """Read "900 ml", "24 biscuits", "about 1.2 kg" or "6 jars of 200 ml"."""
    return read_making(_one_line(text, "900 ml"), system, language)


def read_vessel(text: str, system: System, language: str = "en_GB") -> Vessel:
    """Read "1.5 l clip-top jar" or "clip-top jar, 1.5 l"; one without a size is only named."""
    text = _one_line(text, "1.5 l clip-top jar")
    for part in comma_parts(_size_first(_SIDES.sub("", text).strip())):
        said = read_leading(part, system, language)
        if said and said.each and size_of(said.each.unit) == "volume":  # "2 x 1 l jars"
            return Vessel(text, _holds_something(said.each.times(said.amount.low), text))
        if said is None or not said.amount.unit:
            found = find_size(part, system, language)
            said = found[1] if found else said
        if said:
            _holds_something(said.each or said.amount, text)
        if said and said.amount.unit and size_of(said.amount.unit) == "volume":
            return Vessel(text, said.amount)
    return Vessel(text)


def read_container(text: str, system: System, language: str = "en_GB") -> Container:
    """Read "bottle, 100 ml, cork", "100 ml bottle" or "jar (0.5 l)".

    >>> read_container("Flasche, 0,5 l, Korken", "metric", "de_DE").size.low
    Fraction(1, 2)
    """
    name, size, closure = "", None, []
    text = _one_line(text, "bottle, 100 ml")
    if _SIDES.search(text):
        return Container(text)
    text = _size_first(text)
    for part in (part for piece in text.split(": ") for part in comma_parts(piece)):
        said = read_leading(part, system, language)
        if said and said.each and size_of(said.each.unit) != "length":
            raise Unreadable(f'"{part}" is more than one container.', 'Write "bottle, 500 ml".')
        if said and said.each:  # "24 cm round"
            said = replace(said, amount=said.each)
        found = find_size(part, system, language) if not (said and said.amount.unit) else None
        if said and said.amount.unit and size is None:
            size = _holds_something(said.amount, text)
            noun = said.said if said.said in plain_nouns() else ""
            name = name or " ".join(word for word in (noun, said.rest) if word)
        elif found and size is None:
            size = _holds_something(found[1].amount, text)
            name = name or found[0]
            closure += [found[1].rest] if found[1].rest else []
        elif not name:
            name = part
        else:
            closure.append(part)
    if not name:
        raise Unreadable(f'"{text}" does not name a container.', 'Write "bottle, 100 ml".')
    return Container(name, size, ", ".join(closure))
