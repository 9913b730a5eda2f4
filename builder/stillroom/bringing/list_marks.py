"""The signs by which lists are set: boxes to tick, bullets of all shapes, stops between things.

Whatever sign all lines of a run begin with is none of their words. Leaves out the marks that
Markdown knows: plain_text.py, typed_marks.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby, pairwise
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import section_of
from stillroom.bringing.one_line import names_a_food
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.words.patterns import late_regex

# what is no letter or figure, opens no quotation, bracket or sum of money, and means no "about"
_MARK: Final = late_regex(
    r"(?P<mark>[^\w\s\"'“”„‚‘’«‹¿¡()\[\]{}#*+½¼¾⅓⅔⅛…£$€%&@<=.,:;!?/\\|°~≈±-]{1,3}|\[\s?\]|\.{2,3}(?!\.)|o(?=\s+\d)|\*(?=[^\s*])|[-–—](?=\s))\s*(?=\S)"
)
# the words of a page's link, behind a thing: "1 cup candied pecans (recipe here)"
_LINKED: Final = re.compile(
    r"\s*[(\[]\s*\*?(?:(?:the\s|my\s)?recipe\s(?:here|link)|(?:get|see)\s(?:the\s|my\s)?(?:recipe|post)(?:\shere)?|click\shere|(?:affiliate|paid|aff|amazon)\s?link|link"
    r"|(?:zum\s)?rezept\shier|hier\szum\srezept|werbe-?link|affiliate-?link|(?:la\s)?recette\sici|lien\s(?:affilié|ici)|(?:la\s)?ricetta\squi|(?:la\s)?receta\saquí|(?:a\s)?receita\saqui"
    r"|recept\s(?:hier|här|zde)|opskrift\sher|oppskrift\sher|przepis\s(?:tutaj|tu))\s*[)\]]",
    re.IGNORECASE,
)
_ALWAYS: Final = frozenset("▢◻❏❐❑⬜☑■▪◾◆◇❖✦✿❀➢➣➤→⇒⁃∙●○◉⦿\uf0b7\uf0a7\uf0fc\uf0d8")
_PICTURE: Final = late_regex(
    "(?:[\U0001f300-\U0001faff\u2600-\u27bf][\U0001f3fb-\U0001f3ff\ufe0f\u200d\u2640\u2642]{0,4}){1,4}\\s*(?=\\S)"
)
_LETTERED: Final = late_regex(r"\(?(?P<letter>[a-zA-Z])\)\s+(?=\S)")
_COUNTED: Final = re.compile(r"^\(?\d{1,2}\s?[.):]{1,2}\s+(?=\S)")
_PREPARE: Final = re.compile(
    r"(?:prepare|take|get|provide|make ready|you need|it['’]s|use)\s+(?:of\s+)?(?=[\d½¼¾])",
    re.IGNORECASE,
)
_LEAST: Final = 2
_LEAST_STARS: Final = 4
_JOINS: Final = late_regex(r"(?<!vitamin)\s+(?:and|und|et|y|e|en|och|og|oraz|i|a|&)$")
_STOPPED: Final = late_regex(r"\s*[;,]$")


def with_marks_taken(rows: Sequence[Row]) -> list[Row]:
    """Return rows without the sign that a run of them begins with; such a row is an item.

    >>> [row.text for row in with_marks_taken([Row("▢ 1 kg plums"), Row("Boil them.")])]
    ['1 kg plums', 'Boil them.']
    >>> run = with_marks_taken([Row("¤ 1 kg plums"), Row("¤ 800 g sugar"), Row("¤ Sold out")])
    >>> [(row.text, row.shape) for row in run][1:]
    [('800 g sugar', 'item'), ('Sold out', 'item')]
    """
    found: list[Row] = []
    bare = [_without_link(row) for row in rows]
    for mark, run in groupby(_with_letters_taken(_with_pictures_taken(bare)), key=_mark_of):
        held = list(run)
        least = _LEAST_STARS if mark == "*" else _LEAST  # one or two stars are of notes
        if mark and (len(held) >= least or mark[0] in _ALWAYS):
            held = [_without(row, mark) for row in held]
        found += held
    return _with_joins_taken(found)


def _with_joins_taken(rows: Sequence[Row]) -> list[Row]:
    """Return rows without the "and" behind a thing, where another thing stands on the next line.

    >>> said = [Row("75 g Butter,"), Row("55 g Leberwurst und"), Row("2 EL Öl"), Row("Mix and")]
    >>> [row.text for row in _with_joins_taken(said)]
    ['75 g Butter,', '55 g Leberwurst', '2 EL Öl', 'Mix and']
    """
    found = list(rows)
    for at, (row, below) in enumerate(pairwise(rows)):
        if below.gap or row.shape not in ("line", "item") or below.shape != row.shape:
            continue
        bare = _JOINS.sub("", row.text)
        if bare != row.text and is_ingredient(bare) and is_ingredient(below.text):
            found[at] = replace(row, text=bare)
    return found


def _without_link(row: Row) -> Row:
    """Return a row without the words of a page's link behind a thing: "(recipe here)"."""
    bare = _LINKED.sub("", row.text) if row.shape in ("line", "item") else row.text
    return replace(row, text=bare) if bare.strip() and bare != row.text else row


def _with_pictures_taken(rows: Sequence[Row]) -> list[Row]:
    """Return rows without the little pictures that two or more of them begin with, each its own.

    >>> drawn = [Row("🍋 1 lemon"), Row("🍬 500 g sugar"), Row("Boil.")]
    >>> [row.text for row in _with_pictures_taken(drawn)]
    ['1 lemon', '500 g sugar', 'Boil.']
    """
    begins = [_PICTURE.match(row.text) if row.shape != "heading" else None for row in rows]
    if sum(map(bool, begins)) < _LEAST:
        return list(rows)
    return [_without(row, one[0]) if one else row for row, one in zip(rows, begins, strict=True)]


def _with_letters_taken(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the things of a list that counts in letters as items: "a) 500 g sugar".

    >>> [row.text for row in _with_letters_taken([Row("a) 1 kg plums"), Row("b) 1 lemon")])]
    ['1 kg plums', '1 lemon']
    >>> [row.text for row in _with_letters_taken([Row("a) Boil it."), Row("b) Strain it.")])]
    ['a) Boil it.', 'b) Strain it.']
    """
    found = list(rows)
    begin = 0
    while begin < len(rows):
        end = begin
        while end < len(rows) and _counts_as(rows[end].text, end - begin):
            end += 1
        bare = [_LETTERED.sub("", row.text) for row in rows[begin:end]]
        if len(bare) >= _LEAST and sum(map(is_ingredient, bare)) * 2 > len(bare):
            found[begin:end] = [
                replace(row, text=text, shape="item")
                for row, text in zip(rows[begin:end], bare, strict=True)
            ]
        begin = max(end, begin + 1)
    return found


def _counts_as(text: str, number: int) -> bool:
    lettered = _LETTERED.match(text)
    return (
        bool(lettered) and lettered is not None and lettered["letter"].lower() == chr(97 + number)
    )


def _mark_of(row: Row) -> str:
    begins = _MARK.match(row.text) if row.shape in ("line", "item", "step") else None
    closes = row.text.endswith(("«", "»", "›")) if begins else False
    return "" if begins is None or closes else begins["mark"]


def _without(row: Row, mark: str) -> Row:
    shape = "item" if row.shape == "line" else row.shape
    return replace(row, text=row.text[len(mark) :].strip(), shape=shape)


def without_stops_between(lines: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """Return a list's things without the signs that part them, where most of them bear one.

    >>> without_stops_between([("", "1 kg plums;"), ("", "800 g sugar;"), ("", "1 lemon.")])
    [('', '1 kg plums'), ('', '800 g sugar'), ('', '1 lemon')]
    >>> without_stops_between([("", "1 kg plums,"), ("", "800 g sugar"), ("", "1 lemon")])[0][1]
    '1 kg plums,'
    """
    parted = sum(bool(_STOPPED.search(said)) for _, said in lines)
    if parted < _LEAST - 1 or parted * 2 < len(lines):
        return list(lines)
    bare = [(group, _STOPPED.sub("", said)) for group, said in lines]
    group, last = bare[-1]
    return [*bare[:-1], (group, re.sub(r"(?<=[^\W\d]{3})\.$", "", last))]


def with_numbered_lists(rows: Sequence[Row]) -> list[Row]:
    """Return rows with the numbered things below "Ingredients of" as items of a list.

    "1. Prepare 2 tsp of ginger." is one, as pages that machines write have it.
    """
    found = list(rows)
    for place, row in enumerate(rows):
        if row.shape not in ("heading", "line") or section_of(row.text) != "ingredients":
            continue
        at = place + 1
        bare = _are_bare_things(rows, at)
        while at < len(rows) and rows[at].shape in ("step", "item"):
            said = _COUNTED.sub("", rows[at].text) if rows[at].shape == "step" else rows[at].text
            thing = _PREPARE.sub("", said)
            thing = thing.rstrip(".") if thing != said or rows[at].shape == "step" else said
            if not is_ingredient(thing) and at not in bare:
                break
            found[at] = replace(rows[at], text=thing, shape="item")
            at += 1
    return found


def _are_bare_things(rows: Sequence[Row], at: int) -> range:
    """Return the numbered rows from one on where they are things without amounts: "1. Flour".

    A heading of the method follows them, and most are foods by their names.
    """
    end = next((one for one in range(at, len(rows)) if rows[one].shape != "step"), len(rows))
    texts = [_COUNTED.sub("", row.text).strip() for row in rows[at:end]]
    told = end < len(rows) and section_of(rows[end].text) == "method"
    short = all(len(text.split()) <= _MOST_OF_A_NAME and text[-1:] != "." for text in texts)
    named = sum(map(names_a_food, texts))
    return range(at, end if told and short and named >= _FEW and named * 2 >= len(texts) else at)


_FEW: Final = 2
_MOST_OF_A_NAME: Final = 6
