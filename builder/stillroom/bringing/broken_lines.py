"""Lines that a writing program or a narrow column broke, glued or marked, made whole again.

Bullets that became letters ("Ø Strain it"), brackets that run over several lines, a step whose
number stands behind the one before it, and "optional (a clove)". Leaves out how a page's own
columns and cells are put together: columns.py, cells_on_lines.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import section_of
from stillroom.bringing.naming import says_its_kind
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_MOST_OF_BRACKETS: Final = 5
"""Lines over which brackets may run."""
_LONGEST: Final = 400
_LEAST_MARKED: Final = 3
"""Lines with the same letter before a capital or a figure, from which on it is a sign."""
# a letter that stood for a sign in a font of signs: "Ø Strain it", "o   Boil it"
_LETTER_FIRST: Final = late_regex(r"^\s*(?P<sign>[^\W\d_]|§|¤|¨)(?P<gap>\s+)(?=[A-ZÀ-Ý\d½¼¾⅓⅔])")
_SIGNS: Final = frozenset("Ø§¤¨vqüðøoà")
_WIDE: Final = 2
_LIST_NAMED: Final = re.compile(
    r"(?P<head>ingredients|zutaten|ingr[eé]dients|ingredienti|ingredientes|ingredi[eë]nten|ingredienser|składniki)"
    r"\s(?P<what>[^\W\d]{4,}(?:[\s-][^\W\d]+){0,3})\s?:",
    re.IGNORECASE,
)
_NEXT_NUMBER: Final = late_regex(r"(?<=[^\W\d]|[.!?)])\s+(?P<number>\d{1,2})[.)]\s+(?=[A-ZÀ-Ý])")
_NUMBER: Final = late_regex(r"^\(?(?P<number>\d{1,2})\s*[.)]\s")
_OPTIONAL: Final = re.compile(
    r"(?P<word>optional(?:ly)?|nach\s+belieben|wahlweise|optionnel|en\s+option|facultatif|facoltativ[oi]|opzionale|opcional"
    r"|optioneel|valfritt|valgfritt?|opcjonalnie)\s*:?\s*\((?P<what>[^()]{3,80})\)\.?",
    re.IGNORECASE,
)


def without_letters_for_signs(lines: Sequence[str]) -> list[str]:
    """Return lines with a point where a letter stands for one, as a word processor copies it.

    >>> without_letters_for_signs(["Ø 4 oranges", "Ø 1 l wine", "Ø Strain it"])
    ['• 4 oranges', '• 1 l wine', '• Strain it']
    >>> without_letters_for_signs(["A 20 cm tin", "I Boil", "o Pot"])
    ['A 20 cm tin', 'I Boil', 'o Pot']
    """
    found = [_LETTER_FIRST.match(line) for line in lines]
    many: dict[str, int] = {}
    for one in filter(None, found):
        many[one["sign"]] = many.get(one["sign"], 0) + 1

    def is_sign(one: re.Match[str] | None) -> bool:
        if one is None or one["sign"] not in _SIGNS:
            return False
        wide = len(one["gap"]) >= _WIDE or "\t" in one["gap"]
        return many[one["sign"]] >= (_WIDE if wide else _LEAST_MARKED)

    return [
        f"{' ' * one.start('sign')}• {line[one.end() :]}" if one and is_sign(one) else line
        for line, one in zip(lines, found, strict=True)
    ]


def made_whole(rows: Sequence[Row]) -> list[Row]:
    """Return rows whose brackets close on them, one step to a row, "a clove (optional)".

    >>> broken = [Row("700 g sugar (white, or half"), Row("white, half brown)"), Row("1 lemon")]
    >>> [row.text for row in made_whole(broken)]
    ['700 g sugar (white, or half white, half brown)', '1 lemon']
    >>> [row.text for row in made_whole([Row("optional (a clove)"), Row("optional (see below)")])]
    ['a clove (optional)', 'optional (see below)']
    """
    whole = _with_list_head_told(_steps_apart(_with_brackets_closed(rows)))
    return [_with_optional_behind(row) for row in whole]


def _with_list_head_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the one head of a list that names what is made saying so.

    >>> [row.text for row in _with_list_head_told([Row("Zutaten Quittengelee:"), Row("1 kg")])]
    ['Zutaten für Quittengelee:', '1 kg']
    """
    heads = ((at, _LIST_NAMED.fullmatch(row.text.strip())) for at, row in enumerate(rows))
    named = [at for at, one in heads if one and says_its_kind(one["what"])]
    above = rows[: named[0]] if named else ()
    if len(named) != 1 or any(section_of(row.text) == "ingredients" for row in above):
        return list(rows)
    said = _LIST_NAMED.sub(r"\g<head> für \g<what>:", rows[named[0]].text.strip())
    return [replace(row, text=said) if at in named else row for at, row in enumerate(rows)]


def _with_brackets_closed(rows: Sequence[Row]) -> list[Row]:
    found: list[Row] = []
    at = 0
    while at < len(rows):
        end = _closed_at(rows, at)
        whole = " ".join(row.text.strip() for row in rows[at : end + 1])
        found.append(replace(rows[at], text=whole) if end > at else rows[at])
        at = end + 1
    return found


def _closed_at(rows: Sequence[Row], at: int) -> int:
    """Return the row at which the brackets close that stay open on one; the row where none do."""
    opened = rows[at].text.count("(") - rows[at].text.count(")")
    if opened != 1 or rows[at].shape in ("heading", "row", "sizes"):
        return at
    size = len(rows[at].text)
    for below in range(at + 1, min(len(rows), at + _MOST_OF_BRACKETS)):
        row = rows[below]
        size += len(row.text)
        if row.shape != "line" or row.gap or "(" in row.text.partition(")")[0] or size > _LONGEST:
            return at
        if ")" in row.text:
            return below if row.text.count(")") == row.text.count("(") + 1 else at
    return at


def _steps_apart(rows: Sequence[Row]) -> list[Row]:
    """Return steps with the next number apart: "5. Seal the jars 6. Label them."."""
    numbers = [_NUMBER.match(row.text) if row.shape == "step" else None for row in rows]
    counted = [int(one["number"]) for one in numbers if one]
    if not counted or any(two - one not in (1, 2, 3) for one, two in pairwise(counted)):
        return list(rows)
    found: list[Row] = []
    for row, number in zip(rows, numbers, strict=True):
        text, want = row.text, int(number["number"]) + 1 if number else 0
        while want:
            glued = (one for one in _NEXT_NUMBER.finditer(text) if int(one["number"]) == want)
            cut = next(glued, None)
            if cut is None or want in counted:
                break
            found.append(replace(row, text=text[: cut.start()].rstrip()))
            text, want = text[cut.start() :].lstrip(), want + 1
        found.append(replace(row, text=text))
    return found


def _with_optional_behind(row: Row) -> Row:
    said = _OPTIONAL.fullmatch(row.text.strip()) if row.shape in ("line", "item") else None
    if said is None or not staples_named(said["what"]):
        return row
    return replace(row, text=f"{said['what']} ({said['word'].lower()})")
