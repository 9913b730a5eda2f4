"""Recipes as old cookery books print them: all in paragraphs, each begun by a word for what it is.

"1826. INGREDIENTS.--1 gallon of brandy, 1-1/4 lb. of loaf sugar.", "_Mode_.--Rub the sugar on the
oranges.", "_Average cost_, 7s." Made into rows with heads, as newer papers have them; so is a list
that stands with semicolons before its method. Leaves out which rows are what: dividing.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.joining import together
from stillroom.bringing.one_line import foods_named, names_a_food
from stillroom.bringing.sorting import begins_with_amount
from stillroom.bringing.tails import begins_to_bid
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.words.patterns import OUTSIDE_BRACKETS
from stillroom.core.words.problems import Unreadable

_DASH: Final = r"\s*[.:]?_?\s*(?:--+|[–—])\s*"
_LIST: Final = re.compile(
    rf"(?:\d{{1,4}}\s*(?:[.:]|--+|[-–—])?\s*)?_?INGREDIENTS{_DASH}(?P<said>\S.*)", re.DOTALL
)
PARTS: Final = ("Mode", "Method", "Time", "Average cost", "Sufficient", "Seasonable", "Note")
"""What an old book's paragraphs begin with, below a title and its list."""
_PART: Final = re.compile(
    rf"_?(?P<name>{'|'.join(PARTS)})(?![^\W_])_?"
    rf"(?P<said>{_DASH}\S.*|[,.]?_?\s+\S.*)",
    re.DOTALL,
)
# a second part within a paragraph: "_Average cost_, 1s. 6d. _Seasonable_ at any time."
_PARTS_WITHIN: Final = re.compile(r"(?<=[.\d])\s+(?=_(?:Average cost|Sufficient|Seasonable)_)")
_MAKES: Final = re.compile(
    r"(?:to\s+make\s+(?P<made>(?:about\s+)?(?:\d|an?\s)(?:[^.;]|\.(?=\s[a-z]))*)"
    r"|.*\bfor\s+(?P<for>\d(?:[^.;]|\.(?=\s[a-z]))*))\.?",
    re.IGNORECASE,
)
# "CAYENNE VINEGAR. Take half a dozen ripe chillies", "_Orange Cordial._--Take the rind"
_RUN_IN: Final = re.compile(
    r"(?:No\.?\s?\d+\.?\s*[—–-]*\s*|\d{2,4}\.\s+)?"
    r"(?P<title>(?!NOTE|TIP|STEP|PART|WARNING|METHOD|MODE)"
    r"[A-ZÀ-Ý][A-ZÀ-Ý'’&-]{2,}(?:[ ,][A-ZÀ-Ý'’&-]+){1,6}\."
    r"|_[A-ZÀ-Ý][^_.\d]{3,50}\.?_\.?)\s*(?:--+|[—–])?\s*(?=[A-ZÀ-Ý][a-zà-ÿ]+\s(?:\S+\s){8})"
)
_NUMBER: Final = re.compile(r"[IVX]{1,4}\.")
_NUMBERED_TITLE: Final = re.compile(
    r"(?P<number>\d{2,4})\s*[.)]\s+(?P<title>[A-ZÀ-Ý][^.!?:;\d]{3,60})\.?"
)
_OF_ONE: Final = re.compile(
    r"(?:(?:the|a)\s+)?(?:(?:grated|thin|yellow|strained|expressed)\s+)*(?:rinds?|juice|peel|zest|whites?|yolks?|kernels)\s+of\s",
    re.IGNORECASE,
)
_TO_EACH: Final = re.compile(r"(?:to|for)\s+(?:each|every|\d)", re.IGNORECASE)
_PICTURE: Final = re.compile(r"\[Illustration(?::[^\[\]]*)?\]")
_ASIDE: Final = re.compile(r"\([^()]*\)[.,]?")
_AND_SO_MUCH: Final = re.compile(r",\s+and\s+(?=\d)")
_LIST_HEAD: Final = Row("Ingredients", "heading", 6)
_FEW: Final = 4
_GROUPS: Final = re.compile(rf";\s+{OUTSIDE_BRACKETS}|\.\s+(?=To\s)")
_COMMAS: Final = re.compile(rf",\s+{OUTSIDE_BRACKETS}")
_SO_MUCH_OF: Final = re.compile(r"(?P<each>to every\s+[^,;]{3,40}?)\s+allow\s", re.IGNORECASE)
_SPOKEN: Final = re.compile(r"(?<=[a-z])-(?=[a-z])")
# "one cup each of grated horseradish, chopped onion and sugar": asked about as it stands
_SO_MANY: Final = re.compile(
    r"(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|half|\d+)[\s-]", re.I
)
_MOST_BARE: Final = 6
_LEAST: Final = 3
"""Things parted by semicolons, from which on a sentence that begins a paragraph is a list."""


def made_new(rows: Sequence[Row]) -> list[Row]:
    """Return rows with an old book's paragraphs as heads, items and lines; others stay."""
    found: list[Row] = []
    old = False
    for row in _paragraphs(rows):
        text = row.text if row.shape in ("line", "step") else ""
        if listed := _LIST.fullmatch(text):
            old = True
            _name_it(found)
            found += _list_rows(listed["said"])
        elif old and _PART.fullmatch(text):
            for said in _PARTS_WITHIN.split(text):
                _add_part(found, said)
        elif (head := _RUN_IN.match(text)) and section_of(head["title"]) is None:
            title = head["title"].strip(" ._")
            found.append(Row(title.capitalize() if title.isupper() else title, "heading", 1, True))
            found.append(Row(text[head.end() :], "line", 0, True))
        elif told := _listed_first(text):
            _name_it(found)
            things = [one for part in told[0].split(";") for one in _AND_SO_MUCH.split(part)]
            found += [_LIST_HEAD]
            found += [Row(thing.strip(), "item") for thing in things]
            found += [Row("Method", "heading", 6), Row(told[1])]
        else:
            found.append(row)
    return found


def _paragraphs(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the lines of an old book's list and parts put together again."""
    found: list[Row] = []
    old = False
    for row in rows:
        above = found[-1] if found else None
        if old and _PICTURE.fullmatch(row.text):
            continue
        goes_on = above and old and row.wraps and not row.gap and row.shape == "line"
        goes_on = goes_on and not (row.text.startswith("_") and _PART.match(row.text))
        if above and goes_on and (_LIST.match(above.text) or _PART.match(above.text)):
            found[-1] = replace(above, text=together(above.text, row.text))
        else:
            old = old or bool(_LIST.match(row.text))
            found.append(row)
    return found


def _add_part(found: list[Row], said: str) -> None:
    """Add a paragraph that begins with its name: the method, how much is made, or a note."""
    part = _PART.fullmatch(said)
    if part is None:
        found.append(Row(said))
        return
    name = part["name"].lower()
    text = re.sub(rf"^(?:{_DASH}|[,.]?_?\s+)", "", part["said"]).strip("_ ")
    if name in ("mode", "method"):
        found += [Row("Method", "heading", 6), Row(text)]
        return
    made = _MAKES.fullmatch(text) if name == "sufficient" else None
    if made:
        lists = [at for at, row in enumerate(found) if row.text == _LIST_HEAD.text]
        so_much = re.sub(r"(?<=[a-z])\.(?=\s)", "", made["made"] or made["for"])
        found.insert(lists[-1], Row(f"Makes {so_much}"))
        return
    label = "" if name in ("time", "note") else f"{part['name']}: "
    found += [Row("Notes", "heading", 6), Row(f"{label}{text}")]


def _name_it(found: list[Row]) -> None:
    """Make the title above a list a heading: in capitals with a stop, numbered, or numbered alone.

    A second recipe under one title ("II.") takes that title with its number.
    """
    at = len(found) - 1
    number = ""
    while at >= 0 and (_ASIDE.fullmatch(found[at].text) or _NUMBER.fullmatch(found[at].text)):
        if _NUMBER.fullmatch(found[at].text):
            number = f" ({found.pop(at).text.rstrip('.')})"
        at -= 1
    numbered = _NUMBERED_TITLE.fullmatch(found[at].text) if at >= 0 else None
    bare = re.sub(r"\s*\([^()]*\)\.?$", "", found[at].text).rstrip(".") if at >= 0 else ""
    name = re.split(r",\s+(?=[a-z])", bare)[0]  # "PRESERVED PINEAPPLE, for Present Use."
    bare = name if name.isupper() else bare
    bare = re.sub(r"^TO MAKE (?:AN? )?(?=\w)", "", bare)
    if numbered:
        found[at] = Row(numbered["title"], "heading", 1, True)
    elif bare.isupper() and found[at].shape in ("line", "heading"):
        found[at] = Row(f"{bare.capitalize()}{number}", "heading", 1, True)
    elif number:
        titles = [row.text for row in found if row.shape == "heading" and row.level == 1]
        title = re.sub(r"\s\([IVX]+\)$", "", titles[-1]) if titles else "Another way"
        found.append(Row(f"{title}{number}", "heading", 1, True))


def _listed_first(text: str) -> tuple[str, str] | None:
    """Return the list and the method of a paragraph that begins with things between semicolons.

    >>> _listed_first("Cherries, 10 lbs.; mace, 2 oz.; brandy, 8 pints. Crush the fruit well.")
    ('Cherries, 10 lbs.; mace, 2 oz.; brandy, 8 pints', 'Crush the fruit well.')
    >>> _listed_first("Boil it; strain it; bottle it. Keep it.") is None
    True
    """
    ends = re.search(r"\.\s+(?=[A-ZÀ-Ý][a-zà-ÿ]+\s)|\.?$", text)
    first = text[: ends.start()] if ends else text
    parts = first.split(";")
    done = next((at for at, one in enumerate(parts) if at and _is_done(one)), len(parts))
    if done < _LEAST or not all(map(_is_thing, parts[:done])):
        return None
    if sum(map(_is_measured, parts[:done])) * 2 <= done:
        return None
    rest = ";".join(parts[done:]).strip()
    told = f"{rest[:1].upper()}{rest[1:]}. " if rest else ""
    method = f"{told}{text[ends.end() :] if ends else ''}".strip()
    return (";".join(parts[:done]), method) if method else None


def _is_done(part: str) -> bool:
    """Whether a part between semicolons says what is done: "boil three hours", "tie in a bag"."""
    said = part.strip()
    first = plain(said).split(" ")[0]
    bids = begins_to_bid(said) and not foods_named(first)  # "sugar" ends as a verb does elsewhere
    return (bids or first in words("told_first")) and not begins_with_amount(said)


def _is_thing(part: str) -> bool:
    """Whether a part between semicolons is a thing: measured, or a food without an amount."""
    if not foods_named(part):
        return _is_measured(part)
    bare = len(part.split()) <= _MOST_BARE
    return bare or bool(_SO_MANY.match(part.strip())) or _is_measured(part)


def _is_measured(part: str) -> bool:
    for one in _AND_SO_MUCH.split(part.strip()):
        try:
            if not isinstance(read_line(_SPOKEN.sub(" ", one)).amount, Amount):
                return False
        except Unreadable:
            if not re.search(r"\d", one):
                return False
    return True


def _list_rows(text: str) -> list[Row]:
    """Return the head of a list and its things: what tells more of one stays with it.

    Behind "to every gallon of juice" all up to the next semicolon is so much to a gallon.
    """
    things: list[str] = []
    for group in _GROUPS.split(text.strip().removesuffix(".")):
        to_each = _SO_MUCH_OF.match(group)
        for place, part in enumerate(_COMMAS.split(group)):
            bare = re.sub(r"^and\s+", "", part.strip())
            told = place == 0 or _OF_ONE.match(bare) or _TO_EACH.match(bare)
            if place and to_each and begins_with_amount(bare):
                things.append(f"{to_each['each']} {bare}")
            elif not things or told or begins_with_amount(bare) or _names_a_food(bare):
                things.append(bare)
            else:
                things[-1] = f"{things[-1]}, {part.strip()}"
    return [_LIST_HEAD, *(Row(thing, "item") for thing in things)]


def _names_a_food(text: str) -> bool:
    return len(text.split()) <= _FEW and names_a_food(text)
