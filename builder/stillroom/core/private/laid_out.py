"""How a giving list is known that some other program wrote: by its words, where these stand.

As keys in the settings of any program ("basket = small", "[Mrs Finch]", `"basket": "small"`), as
the head of a table however its cells are parted, as the words of a file that is no text. What
counts is that several of a household's words stand where such a file has its words: a page that
speaks of them has them in sentences. Leaves out lists as their reader takes them (shapes.py) and
lists written as a page (as_page.py).
"""

from __future__ import annotations

import re
from collections import Counter
from typing import Final

LIST_KEYS: Final = ("households", "people", "baskets", "giving day", "makes", "batches")
HOUSEHOLD_KEYS: Final = frozenset(
    {"name", "to", "basket", "avoid", "adults", "children", "delivery", "likes", "had", "message",
     "address", "street", "town", "postcode", "must have", "never", "pregnant", "budget"}
)  # fmt: skip
_NAMED: Final = frozenset(
    {"name", "to", "household", "households", "person", "people", "recipient", "family", "who"}
)
_LIMITS: Final = frozenset({"avoid", "avoids", "had", "never", "must have"})
_OTHERS: Final = frozenset(
    {"delivery", "likes", "adults", "children", "pregnant", "address", "message", "street", "town",
     "postcode", "budget", "card", "phone", "email"}
)  # fmt: skip
_LISTED: Final = frozenset({"giving list", "giving day", "households"})
_KEYS: Final = _NAMED | _LIMITS | _OTHERS | _LISTED | {"basket"}
_ANY: Final = "|".join(
    re.escape(key).replace(r"\ ", "[ _-]?") for key in sorted(_KEYS, key=len)[::-1]
)
_PLAIN: Final = {key.replace(" ", ""): key for key in _KEYS}
_BEHIND: Final = (
    r"(?:[._]\d+)?[\"'`\])*_\\]{0,3}[ \t]*(?:[:={|]|->|→|</|/?>)|[\"'][ \t]+(?:value|content)="
    r"|[ \t]+[^\s;{][^\n;{]{0,200};[ \t]*$"
)
_KEY: Final = re.compile(
    rf"(?:^|[^\w\s]|[_\d])[ \t]*(?<![a-z])(?P<key>{_ANY})(?:{_BEHIND})"
    rf"|(?<=[._])(?P<last>{_ANY})(?:[._]\d+)?[\"']?[,\t]",
    re.MULTILINE,
)
"""A word with what comes before and behind it where it is a key: in no sentence is it so."""
_FORMS: Final = re.compile(r'[ \t]*\[\s*"([^"\n]{0,40})",\s*"([^"\n]{0,40})"\s*\]')
"""One and many of a word, as a table of words has them behind it."""
_FIRST_CELL: Final = re.compile(rf"^[\"']?(?P<key>{_ANY})[\"']?[ \t]*[,;\t|]", re.MULTILINE)
_IN_BYTES: Final = tuple(
    re.compile(rf"(?<![a-z]){word}(?![a-z])|{length}{word}") for length, word in (
        ("[dt]", "name"), ("[fv]", "basket"), ("[eu]", "avoid"),
        ("[a-z]", "(?:adults|children|likes|address|delivery|households)"),
    )
)  # fmt: skip
"""In a file that is no text; a letter before a word is its length, as some formats write it."""
_CONTROL: Final = re.compile("[\x00-\x08\x0e-\x1f]")

_OF_PAGE: Final = re.compile(
    r"</?(?:a|button|form|h[1-6]|iframe|input|link|meta|script|select|textarea)\b[^<>]{0,2000}>"
)
"""What of a page heads it, leads elsewhere or is filled in: its names are no keys of a list."""
_HEAD_OF_PAGE: Final = 500

_WANTED: Final = re.compile(
    r"(?<![a-z])(?:baskets?|hampers?|avoids?|must avoid|allerg(?:y|ies)|dietary)(?![a-z])"
)
_OF_WANTED: Final = ("basket", "hamper", "avoid", "allerg", "dietary")
"""What stands in each of those: most texts need no closer look."""
_GIFTS: Final = frozenset({"basket", "baskets", "hamper", "hampers", "gift", "gifts", "present"})
_CARE: Final = frozenset(
    {"avoid", "avoids", "must avoid", "allergy", "allergies", "dietary", "diet", "dietary needs"}
)
_HEADS: Final = _KEYS | _GIFTS | _CARE
_HEAD_NAMES: Final = (_NAMED | {"households", "recipients", "for"}) - {"who"}
_CELLS: Final = re.compile(r"[,;\t|&]|!!|\\(?:cell|trowd|row)\b|\\\\|[ ]{2,}")
_STRIPPED: Final = " \t\r\ufeff\"'`*_#!|^.~-=\\"
_A_LETTER: Final = re.compile(r"[^\W\d_]")
_SQL: Final = re.compile(r"\b(?:insert into|create table)\b")
_SQL_KIND: Final = re.compile(r" +(?:text|varchar|char|character|integer|int|json)\b.*$")
_TAG_ROWS: Final = re.compile(r"^[ \t]*[|!].{0,60}$")
_LIST_TABLE: Final = re.compile(r"^[ \t]*(?:\* )?- .{0,60}$")
_SHOWN: Final = re.compile(r"\(((?:[^()\\]|\\.){0,200})\)\s*(?:tj|')|\[([^\[\]]{0,2000})\]\s*tj")
_BESIDE: Final = 300
"""How far around a word the cells of one row are looked for."""


def find_keys(text: str, lowered: str) -> int:
    r"""Return the line of the first key where a text's keys are those of households, or 0.

    >>> find_keys("[Mrs Finch]\nbasket = small\navoid = nuts\n[Jo]\nbasket=big\navoid=ale", "")
    0
    >>> text = "- who: Jo\n  basket: small\n  avoid: nuts\n- who: Nan\n  basket: large\n"
    >>> find_keys(text, text), find_keys(said := "Its basket: small. Avoid: nuts.", said.lower())
    (1, 0)
    >>> words = '"never":["neve","never"],"children":"child","people":"person"'
    >>> find_keys(text := f'{{"basket":["basket","baskets"],{words}}}', text)
    0
    >>> find_keys(text := '{"basket":"s","never":["nuts"],"children":[8],"people":"Jo"}', text)
    1
    """
    if "basket" not in lowered or not any(word in lowered for word in ("avoid", "had", "never")):
        return _first_cells(lowered)
    if _CONTROL.search(lowered) and all(sign.search(lowered) for sign in _IN_BYTES):
        return 1
    if "<html" in lowered[:_HEAD_OF_PAGE]:
        lowered = _OF_PAGE.sub(lambda tag: " " * len(tag[0]), lowered)
    keys = ((key, one) for one in _KEY.finditer(lowered) if (key := _key_of(one, lowered)))
    # a page may be called so, or lead to one that is
    found = [
        (key, at.start()) for key, at in keys if key != "giving list" or at[0][-1] not in "|/>"
    ]
    counted = Counter(_PLAIN[re.sub("[ _-]", "", key)] for key, _ in found)
    there = counted.keys()
    limits = sum(counted[key] for key in _LIMITS)
    named = bool(there & (_NAMED | _LISTED))
    told = len(there & (_LIMITS | _OTHERS | _LISTED))
    several = counted["basket"] >= 2 and limits >= 1 and (named or limits >= 2)
    if several or (counted["basket"] and limits and named and told >= 2):
        return text.count("\n", 0, found[0][1]) + 1
    return _first_cells(lowered)


def _key_of(found: re.Match[str], lowered: str) -> str:
    """Return a key, or "" for a word that stands in a table of one and many."""
    key: str = found["key"] or found["last"]
    forms = _FORMS.match(lowered, found.end())
    return "" if forms and key in forms.groups() else key


def _first_cells(lowered: str) -> int:
    """Return the line from which a table that stands on its side has a household's words."""
    if "basket" not in lowered:
        return 0
    found = list(_FIRST_CELL.finditer(lowered))
    there = {one["key"] for one in found}
    if len(there) >= 4 and "basket" in there and there & _NAMED and there & (_LIMITS | _OTHERS):
        return lowered.count("\n", 0, found[0].start("key")) + 1
    return 0


def find_head(lowered: str) -> int:
    r"""Return the line of a table's head that says who is given what and avoids what, or 0.

    >>> find_head("household | basket | notes | avoid\nThe Finches | small | - | nuts\n")
    1
    >>> find_head("| name | basket | keeps |\n|---|---|---|\n"), find_head("avoid heat, light\n")
    (0, 0)
    """
    if " tj" in lowered or ")tj" in lowered:
        lowered = "|".join(one[1] or one[2] for one in _SHOWN.finditer(lowered))
    seen = -1
    for found in _WANTED.finditer(lowered) if any(map(lowered.__contains__, _OF_WANTED)) else ():
        begin = lowered.rfind("\n", 0, found.start()) + 1
        end = lowered.find("\n", found.end())
        end = end if end >= 0 else len(lowered)
        if begin != seen and (_is_row(lowered, begin, end) or _is_run(lowered, found.start())):
            return lowered.count("\n", 0, begin) + 1
        seen = begin if end - begin < _BESIDE else -1
    return 0


def _is_row(lowered: str, begin: int, end: int) -> bool:
    """Say whether a line is the head of a list, with a row below it."""
    if end - begin > 2 * _BESIDE:
        return False
    line = lowered[begin:end]
    cells = _cells(line)
    rows = _LIST_TABLE if "list-table" in lowered else _TAG_ROWS
    if len(cells) == 1 and rows.match(line):
        cells = _cells_around(lowered, begin)
    return _is_head(cells) and _rows_below(lowered, end, cells)


def _is_run(lowered: str, at: int) -> bool:
    """Say whether a head stands here in a text whose rows have no lines of their own."""
    begin, end = max(0, at - _BESIDE), at + _BESIDE
    part = lowered[begin:end]
    if part.count("|") < 2:
        return False
    cells = [cell.strip(_STRIPPED + "\n") for cell in part.split("|")]
    here = part[: at - begin].count("|")
    run = [cells[here]]
    for step in (-1, 1):
        other = here + step
        while 0 <= other < len(cells) and (cells[other] in _HEADS or not cells[other]):
            run += [cells[other]]
            other += step
    run = [cell for cell in run if cell]
    return len(run) >= 3 and _is_head(run)


def _is_head(cells: list[str]) -> bool:
    """Say whether cells are the head of a list: somebody, a present, what they may not have."""
    there = set(cells)
    if not there & _HEAD_NAMES or not all(0 < len(cell.split()) <= 4 for cell in cells):
        return False
    if len(cells) == 2:
        return bool(there & (_HEAD_NAMES - {"to", "for"}) and there & {"basket", "avoid", "avoids"})
    gift, care = there & _GIFTS, there & _CARE
    if gift & {"basket", "baskets", "hamper", "hampers"}:
        return bool(care or len(there & (_LIMITS | _OTHERS)) >= 1)
    somewhere = there & {"address", "street", "town", "postcode", "delivery"}
    return bool(care and (gift or somewhere))


def _cells(line: str) -> list[str]:
    """Return what stands in the cells of a line, whatever parts these."""
    if _SQL.search(line):
        line = re.sub(r"\)[^()]*$", "", line.split(") values")[0]).rpartition("(")[2]
        line = ",".join(_SQL_KIND.sub("", cell) for cell in line.split(","))
    elif '["' in line or "['" in line:
        line = re.split(r"\[(?=[\"'])", line)[-1 if line.count("[") == 1 else 1].partition("]")[0]
    cells = (cell.strip(_STRIPPED) for cell in _CELLS.split(line.replace("(", " ", 1)))
    return [cell for cell in cells if cell]


def _cells_around(lowered: str, begin: int) -> list[str]:
    """Return the cells of a row that has a line for each of them."""
    lines = lowered[max(0, begin - 400) : begin + 400].split("\n")
    at = lowered.count("\n", max(0, begin - 400), begin)
    cells = _cells(lines[at])
    for step in (-1, 1):
        other = at + step
        while 0 <= other < len(lines):
            there = _cells(lines[other])
            if there and (len(there) > 1 or there[0] not in _HEADS):
                break
            cells += there
            other += step
    return cells


def _rows_below(lowered: str, end: int, cells: list[str]) -> bool:
    """Say whether more stands below a head than the rule under it."""
    if _SQL.search(lowered) or '":' in lowered[:end]:
        return True
    below = lowered[end : end + 3000].split("\n")
    first = next((row for row in below if _A_LETTER.search(row)), "")
    return len(_cells(first)) >= (2 if len(cells) == 2 else 1)
