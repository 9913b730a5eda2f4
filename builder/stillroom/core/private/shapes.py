"""How a private file is told by what is in it: a giving list, a pack, a part of a pack.

Neither its name nor its ending counts, nor how it was saved, nor whether its lines are commented
out. The public side and the private side both read the marks here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Set
from functools import cache

from stillroom.core.private.as_page import find_page
from stillroom.core.private.elsewhere import in_known_words
from stillroom.core.private.hidden_forms import read_plain
from stillroom.core.private.laid_out import HOUSEHOLD_KEYS, LIST_KEYS, find_head, find_keys
from stillroom.core.words.data_files import read_data

GIVING_LIST_KEY = "giving list"
GIVING_LOG_KEY = "giving log"
PACK_MARKER = ".stillroom-pack"
"""The file by which a folder is known to be a pack."""
PACK_WORDS = "stillroom-private-pack"
"""Stands in every page, calendar and print of a pack, and in a print that bears somebody's name."""
SHOPPING_HEAD = ("month", "section", "item", "need", "in the house", "buy", "price", "left")

_SHOPPING = re.compile(r"[\"']?[ ]?[,;\t|][ ]?[\"']?".join(SHOPPING_HEAD))
"""The head of a pack's table, whatever parts its cells: a spreadsheet saves it anew."""
_CALENDAR = "-//Stillroom//Private pack//"
_ANY_KEY = "|".join(LIST_KEYS)
_TELLING_KEYS = frozenset({"basket", "avoid", "delivery", "likes", "had", "never", "address"})
_BEFORE_KEY = " \t#/;*-+><!\"'\ufeff_`0123456789.)"
"""What may stand before a key that is indented, quoted, bold, in a list or commented out."""
_MARKS = ("household", "<basket", "<avoid", "<delivery")
"""Without one of these, and without "giving", a text is no list that is laid out by its words."""
_KEY = re.compile(r"giving[ _-]list[\"'*_`]*[ \t]*[:=]", re.IGNORECASE)
_LOG_KEY = re.compile(r"giving[ _-]log[\"'*_`]*[ \t]*[:=]", re.IGNORECASE)
_DONE = ("given", "posted", "thanked")
_LOG_ROW = re.compile(
    r"\bday[\"']?[ \t]*[:=][ \t]*[\"']?\d{4}-\d\d-\d\d[\"']?,?\s+"
    r"[\"']?(?:given|posted|thanked)[\"']?[ \t]*[:=]"
    r"|<day>\s*\d{4}-\d\d-\d\d\s*</day>\s*<(?:given|posted|thanked)>"
    r"|^[\"']?day[\"']?[,;\t|][ ]?[\"']?(?:given|posted|thanked)\b[^\n]*\n[\"']?\d{4}-\d\d-\d\d",
    re.MULTILINE,
)
"""A line of a log that says who was given something, wherever the log's first line is."""
_OTHER = re.compile(rf"(?:{_ANY_KEY})[\"'*_`]*(?:[ \t]*[:=]|(?<=[*_`])[ \t]*$)", re.I | re.M)
_HOUSEHOLDS = re.compile(
    r"^[\s#/\"'\ufeff]*(?P<key>households)[\"']?[ \t]*:\s*[#/\s]*[-\[{](?P<first>.{0,600})",
    re.MULTILINE | re.DOTALL,
)
_ROWS = re.compile(r"[ \t]*(?:[\[{]|(?:#[^\n]*)?\n\s*-\s|(?:#[^\n]*)?\r?\n[ \t]+\S)")
"""What stands behind a key that has rows of its own."""
_NAME_KEY = re.compile(r"\b(?:name|to)[\"']?[ \t]*:")
_TELLING_KEY = re.compile(r"\b(?:basket|avoid|delivery|likes|had)[\"']?[ \t]*:")
_PARTED_KEY = re.compile(r"giving\s+list")
_EVERY_KEY = "|".join(
    key.replace(" ", "[ _-]") for key in sorted({*HOUSEHOLD_KEYS, *LIST_KEYS, "giving list"})
)
_TAGGED = re.compile(rf"<(?P<key>{_EVERY_KEY})(?:\s[^<>]{{0,200}})?>\s*[^<\s]", re.IGNORECASE)
_KEY_TAGGED = re.compile(rf"<key>\s*(?P<key>{_EVERY_KEY})\s*</key>", re.IGNORECASE)
_GIVEN = re.compile(rf"(?<![\w-])(?P<key>{_EVERY_KEY})=(?=[\"'])", re.IGNORECASE)
_SET = re.compile(
    rf"^[ \t]*(?:[\w-]+\.)*(?P<key>{_EVERY_KEY})[ \t]*=", re.IGNORECASE | re.MULTILINE
)
_DASHED = re.compile(
    rf"^[\s>*#/-]*(?P<key>{_EVERY_KEY})[\"'*_]*[ \t]*(?:-+>?|–|—|=+>?|→|\.\.+|~)(?=\s)",
    re.IGNORECASE | re.MULTILINE,
)
_CELL = re.compile(r"[,;\t|]")
_BEHIND_KEY = re.compile(r"[\"'*_]*\s*(?:[=–—→~]|-+>?\s|\.\.|</key)")
"""What stands behind a key where no colon does and the key is in no tag."""


def find_giving_list(text: str) -> int:
    """Return the line in which a giving list is known, whatever wrote it, or 0."""
    if line := find_written_list(text):
        return line
    lowered = text.lower()
    if line := find_keys(text, lowered) or find_head(lowered):
        return line
    said = in_known_words(lowered)
    return (
        said
        and (_table_line(said) or _laid_out_line(said) or find_keys(said, said) or find_head(said))
    ) or 0


def find_written_list(text: str) -> int:
    r"""Return the line in which a text is a list that somebody wrote as one, or 0.

    A line that names a list in passing, as a heading of a page may, is none; nor is a file in which
    households stand among other things, as in the tests of a program.

    >>> find_written_list("notes\ngiving list: Winter\n"), find_written_list("# Giving list: how")
    (2, 0)
    """
    lowered = text.lower()
    if own := _own_words_line(text):
        return own
    if "giving" not in lowered:
        told = any(mark in lowered for mark in _MARKS)
        return (told and _households_line(text)) or _table_line(text)
    for number, line in _lines_with(_KEY, text):
        found = _KEY.search(line)
        if found is None:
            continue
        before = line[: found.start()]
        exact = "giving list" in found[0] and not before.strip(" \t\ufeff\"'")
        if not before.strip(" \t\ufeff\"'") and _first_words(
            "households", "day", "baskets", "makes"
        ).search(text):
            return number
        if exact or ((not before.strip(_BEFORE_KEY) or before[-1] in "\"'") and _other_key(text)):
            return number
    return _households_line(text) or _table_line(text) or find_page(text)


@cache
def _first_words(*parts: str) -> re.Pattern[str]:
    """Return the pattern of a line that begins with a key of a list, by any word for it."""
    said = read_data("list_names.yml", "private")
    words = {part: "|".join(map(re.escape, said[part])).replace(r"\ ", "[ _-]") for part in parts}
    named = "|".join(rf"(?P<{part}>{known})" for part, known in words.items())
    return re.compile(rf"^[\"']?(?:{named})[\"']?[ \t]*:", re.IGNORECASE | re.MULTILINE)


@cache
def list_marks() -> frozenset[str]:
    """Return words of which one stands, small, in every list that is known by its own words."""
    said = read_data("list_names.yml", "private")
    return frozenset(
        re.split(r"[ ]", word.lower())[0] for part in ("list", "baskets") for word in said[part]
    )


def _own_words_line(text: str) -> int:
    r"""Return the line in which a list begins that is written in other words, or 0.

    It calls itself a list of presents and has another key of one; or whoever is given something and
    what they are given it in have rows in it as in a list, and it says what is made or when. A page
    that says "Boxes: 3" has no rows there.

    >>> _own_words_line("Geschenkliste: Advent\nLeute: [Ada]\n")
    1
    >>> _own_words_line("title: Summer\npeople: 4\nrecipes: [jam]\n")
    0
    """
    first: dict[str, int] = {}
    for found in _first_words("list", "households", "baskets", "makes", "day").finditer(text):
        part = found.lastgroup or ""
        if part not in ("households", "baskets") or _ROWS.match(text, found.end()):
            first.setdefault(part, found.start())
    named = "list" in first and len(first) > 1
    parts = {"households", "baskets"} <= set(first) and not {"makes", "day"}.isdisjoint(first)
    return _line(text, min(first.values())) if named or parts else 0


def find_giving_log(text: str) -> int:
    r"""Return the line in which a giving list's log is known, or 0 when the text is none.

    >>> find_giving_log("# what happened\ngiving log:\n"), find_giving_log("the giving log: how")
    (2, 0)
    """
    dated = "day" in text and any(map(text.__contains__, _DONE))  # most texts: no closer look
    if dated and (found := _LOG_ROW.search(text)):
        return _line(text, found.start())
    if "giving" not in text.lower():
        return 0
    for number, line in _lines_with(_LOG_KEY, text):
        found = _LOG_KEY.search(line)
        if found and not line[: found.start()].strip(_BEFORE_KEY):
            return number
    return 0


def _lines_with(key: re.Pattern[str], text: str) -> Iterator[tuple[int, str]]:
    """Return the lines of a text with their numbers; none where no line can hold the key.

    No key goes over the end of a line, so one look at the whole text tells.
    """
    if key.search(text):
        yield from enumerate(text.splitlines(), 1)


def _laid_out_line(text: str) -> int:
    """Return the line from which a list is laid out in another way, or 0.

    In the tags or the attributes of XML, in the parts of a TOML file, with dashes for colons, one
    word a line: what counts is that a household's name and what is said of it stand where each is
    said, and what they belong to.
    """
    if not _may_be_laid_out(text.lower()):
        return 0
    for said, least in ((_TAGGED, 3), (_KEY_TAGGED, 3), (_GIVEN, 3), (_SET, 3), (_DASHED, 5)):
        there: set[str] = set()
        first = 0
        for found in said.finditer(text):
            there.add(" ".join(re.split(r"[\s_-]+", found["key"].lower())))
            first = first or found.start() + 1
        if len(there) >= least and _tell_of_households(there):
            return _line(text, first - 1)
    return 0


def _may_be_laid_out(lowered: str) -> bool:
    """Say whether a telling key stands as a key may: only then is a closer look worth its time."""
    for key in _TELLING_KEYS:
        at = lowered.find(key)
        while at >= 0:
            if lowered[at - 1 : at] == "<" or _BEHIND_KEY.match(lowered, at + len(key)):
                return True
            at = lowered.find(key, at + 1)
    return False


def _households_line(text: str) -> int:
    """Return the line in which the households of a list begin that has lost its first line."""
    if laid_out := _laid_out_line(text):
        return laid_out
    if "households" not in text:
        return 0
    found = _HOUSEHOLDS.search(text)
    if found and _NAME_KEY.search(found["first"]) and _TELLING_KEY.search(found["first"]):
        return _line(text, found.start("key"))
    return 0


def _other_key(text: str) -> bool:
    """Say whether a text has another of a giving list's keys where a key may stand."""
    for found in _OTHER.finditer(text):
        before = text[text.rfind("\n", 0, found.start()) + 1 : found.start()][-200:]
        if not before.strip(_BEFORE_KEY) or before[-1] in "\"'{, ":
            return True
    return False


def _table_line(text: str) -> int:
    """Return the line of a table's head that names a household's keys, or 0."""
    for number, line in enumerate(text[:4000].splitlines(), 1):
        run: set[str] = set()
        for cell in _CELL.split(line):
            said = cell.strip(" \"'\ufeff").lower()
            if said in HOUSEHOLD_KEYS:
                run.add(said)
            elif said:
                run.clear()
            if len(run) >= 3 and _tell_of_households(run):
                return number
    return 0


def _tell_of_households(keys: Set[str]) -> bool:
    """Say whether keys are those of households: a shop too has a name, an address, a delivery.

    >>> _tell_of_households({"name", "address", "basket"})
    True
    >>> _tell_of_households({"name", "address", "town", "delivery"})
    False
    """
    if keys.isdisjoint({"name", "to"}):
        return False
    own = {"likes", "had", "adults", "children", "pregnant"}
    return (
        not keys.isdisjoint({"basket", "avoid", "never"})
        or len(keys & own) + ("delivery" in keys or "address" in keys) >= 2
    )


def find_pack_part(text: str) -> int:
    """Return the line by which a file is known to be a part of a pack, or 0."""
    for mark in (PACK_WORDS, _CALENDAR):
        if (at := text.find(mark)) >= 0:
            return _line(text, at)
    if head := _SHOPPING.search(text):
        return _line(text, head.start())
    return 1 if text.startswith("Shopping for ") and "To pay in all: " in text else 0


def find_private_shape(data: bytes, texts: Iterable[str]) -> tuple[int, str]:
    """Return the line and the name of the private thing that a file is; 0 and "" for none.

    `texts` is every text that the file's bytes hold.
    """
    text = read_plain(data)
    if line := find_giving_list(text):
        return line, "giving list"
    if line := find_giving_log(text):
        return line, "giving log"
    if line := find_pack_part(text):
        return line, "part of a pack"
    for inner in texts:
        if inner == text:  # only its lines may be gone
            if _unlined_list(inner):
                return 1, "giving list"
            continue
        if find_pack_part(inner):
            return 1, "part of a pack"
        if find_giving_list(inner) or _unlined_list(inner):
            return 1, "giving list"
        if find_giving_log(inner):
            return 1, "giving log"
    return 0, ""


def _unlined_list(text: str) -> bool:
    """Say whether a text whose lines are gone was a giving list."""
    text = text.lower()
    if not _PARTED_KEY.search(text):
        return False
    text = " ".join(text.split())
    plain = text.replace('"', "").replace("'", "").replace(" :", ":")
    return "giving list:" in plain and sum(f"{key}:" in plain for key in LIST_KEYS) >= 2


def _line(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1
