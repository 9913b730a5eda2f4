"""How a letter begins: the address and the day above its greeting, the greeting, a few words.

All of it was for one person: it is left out and told, but for a title among it and for how much it
says is made. Leaves out the farewell: farewell.py, and heads of e-mail: quoting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from stillroom.bringing.afterwords import is_name
from stillroom.bringing.callings import (
    calling,
    calls,
    is_signed,
    with_chat_joined,
    without_words_to_one,
)
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, section_of, words
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.said_to_one import (
    CALLED,
    MEASURED,
    MY,
    greets,
    is_news,
    is_said_to_one,
    leads_on,
    names_food,
    speaks_to_one,
)
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_title, is_told
from stillroom.core.lines.staple_table import staples_named

_BESIDE_NAMES: Final = re.compile(
    r"[A-ZÀ-Ý][^\W\d]+|and|und|et|e|y|en|och|og|i|&|all|both|there|you|dear|again|everyone|everybody|folks|ihr|lieben"
    r"|tous|toutes|tutti|tutte|todos|todas|allemaal|alla|alle|wszystkim|x{1,3}",
)
_MOST_ABOVE: Final = 9
_MOST_OF_A_LINE: Final = 8
_FEW: Final = 5
_MOST_CHAT: Final = 3
"""Paragraphs behind a greeting that may lead to the recipe."""
_SHOWN: Final = 80
_MOST_NEWS: Final = 4
_MONTH: Final = (
    r"jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?"
    r"|januar|februar|märz|mai|juni|juli|oktober|dezember|janvier|février|mars|avril|juin|juillet|août|septembre|octobre|novembre"
    r"|décembre|gennaio|febbraio|marzo|aprile|maggio|giugno|luglio|agosto|settembre|ottobre|dicembre|enero|febrero|abril|mayo"
    r"|junio|julio|septiembre|octubre|noviembre|diciembre|januari|februari|maart|mei|augustus|augusti|maj"
)
_WEEKDAY: Final = (
    r"(?:mon|tues|wednes|thurs|fri|satur|sun)day|(?:mon|diens|donners|frei|sams|sonn)tag|mittwoch|sonnabend|lundi|mardi|mercredi"
    r"|jeudi|vendredi|samedi|dimanche|luned[iì]|marted[iì]|mercoled[iì]|gioved[iì]|venerd[iì]|sabato|domenica|lunes|martes|miércoles"
    r"|jueves|viernes|sábado|domingo|(?:maan|dins|woens|donder|vrij|zater|zon)dag|(?:mån|tis|ons|tors|fre|lör|sön)dag"
)
_DATED: Final = re.compile(
    rf"(?=.*\d).*\b(?:{_MONTH}|{_WEEKDAY})\b.*|(?:{_WEEKDAY})(?:,?\s[^\W\d]+)?|.*\b\d{{1,2}}\s?[./-]\s?\d{{1,2}}(?:[\s./-]+\d{{2,4}})?\.?"
    r"|(?:christmas\s(?:eve|day)|boxing\sday|new\syear['’]s\s(?:eve|day)|heiligabend|silvester|julafton)(?:,?\s\d{4})?|(?:19|20)\d\d",
    re.IGNORECASE,
)
# where somebody lives
_ADDRESS: Final = re.compile(
    r".*\b(?:cottage|house|farm(?:house)?|lodge|villa|manor|hall|barn|mill|vicarage|rectory|street|st|road|rd|lane|avenue|ave|close"
    r"|drive|crescent|terrace|court|row|square|gardens|laan|gracht|plein|kade|allee|platz|haus|hof)\.?(?:\s\d+\w?)?(?:,.*)?"
    r"|(?:\d+\s?\w?,?\s)?(?:rue|chemin|boulevard|allée|impasse|place|via|viale|piazza|vicolo|calle|plaza|avenida|paseo|camino|flat|apt)\b.*"
    r"|.*[^\W\d](?:straße|strasse|str\.|weg|gasse|platz|allee|straat|laan|gracht|plein|kade|dijk|gatan|vägen|gränd|torget)(?:\s\d+\s?\w?)?(?:,.*)?"
    r"|(?:[A-Z]{1,2}-)?\d{4,5}(?:\s?[A-Z]{2})?\s+(?-i:[A-ZÀ-Ý]).*|.*\b(?-i:[A-Z]{1,2}\d{1,2}[A-Z]?\s\d[A-Z]{2})",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Begun:
    """The rows of a paper without the head of a letter, and what is to be told of that."""

    rows: tuple[Row, ...]
    headed: bool = False
    doubted: str = ""
    for_one: bool = False

    def tell(self, recipe: Recipe) -> None:
        """Say that the letter's head is left out, or that one line of it may be none."""
        if self.headed:
            what = "The letter's head is left out: where and when it was written."
            recipe.doubt("title", what, "If a line of it is the title, write that.")
        if self.for_one:
            tell_greeting(recipe)
        if self.doubted and recipe.title == self.doubted:
            what = f'"{self.doubted}" stands above the greeting, and is taken for the title.'
            recipe.doubt("title", what, "If it is where the letter was written, write a title.")


def without_letter_head(rows: Sequence[Row], is_letter: bool = False) -> Begun:
    """Return rows without what stands above a letter's greeting, which no title or list follows.

    What stands above the recipe and was for one person is left out where nothing greets her.

    >>> rows = [Row("Brook Cottage"), Row("14th October"), Row("Dear Tom,", gap=True)]
    >>> [row.text for row in without_letter_head([*rows, Row("Boil it.")]).rows]
    ['Dear Tom,', 'Boil it.']
    """
    if len(rows) > 1 and is_signed(rows[0].text):
        return replace(without_letter_head(rows[1:], is_letter), for_one=True)
    at = _first_greeting(rows, is_letter)
    if at is None or at + 1 >= len(rows):
        kept = without_words_to_one(rows, is_letter)
        return Begun(kept, for_one=len(kept) < len(rows))
    above = rows[:at]
    greeting = replace(rows[at], text=_stopped(rows[at].text))
    if not _is_greeting(rows[at]):  # of a name alone
        greeting = replace(greeting, text=f"Dear {calling(rows[at].text)}")
    told = with_chat_joined(rows[at + 1 :])
    led = next((one for one in range(len(told) - 1) if not _leads(told[one])), 0)
    below = (greeting, replace(told[led], gap=True), *told[led + 1 :])
    if not all(_may_head(row) for row in above):
        return Begun((*above, *below))
    if len(above) == 1 and not _is_of_head(above[0].text):
        return Begun((*above, *below), False, above[0].text)
    named = [row for row in above if says_its_kind(row.text) and not _is_of_head(row.text)]
    return Begun((*named, *below), len(named) < len(above))


def _leads(row: Row) -> bool:
    """Whether a line below a greeting only leads to the recipe: "Ahí va", and is no title of it."""
    told = row.shape == "line" and is_said_to_one(row.text) and not makes_of(row.text)
    named = len(row.text.split()) > 2 and staples_named(row.text)  # "ahí" is no tuna
    return told and not says_its_kind(row.text) and not named


def _is_greeting(row: Row) -> bool:
    """Whether a row is a greeting for certain: by its sign, or by nothing but names behind it."""
    text = row.text.strip()
    if row.shape not in ("line", "heading") or not greets(text):
        return False
    rest = MY.sub("", text).split()
    two = " ".join(plain(text).split()[:2]) in words("greeting")  # "Good morning"
    rest = rest[2 if two else 1 :]
    named = all(_BESIDE_NAMES.fullmatch(one) for one in rest)
    bare = named and len(rest) <= _FEW - 1 and not staples_named(text) and not says_its_kind(text)
    return bool(re.search(r"[,!:]$", text)) or CALLED.match(text) is not None or bare


def _first_greeting(rows: Sequence[Row], is_letter: bool = False) -> int | None:
    """Return the row that greets somebody, near the beginning of a paper; None where none does.

    >>> _first_greeting([Row("Hello Dolly"), Row("1 cup sugar"), Row("Melt it.")])
    >>> _first_greeting([Row("Hello Dolly"), Row("Here is the recipe."), Row("Melt it.")])
    0
    """
    near = rows[: _MOST_ABOVE + 1]
    begin = next((at for at, row in enumerate(near) if not _is_of_head(row.text)), len(near))
    if begin + 1 < len(rows) and calls(rows[begin], rows[begin + 1 :]):
        return begin
    greeting = (at for at, row in enumerate(near) if _is_greeting(row))
    return next((at for at in greeting if is_letter or _greets_here(rows, at)), None)


def _greets_here(rows: Sequence[Row], at: int) -> bool:
    """Whether a greeting without a sign is one where it stands: "Hello Dolly" may be a biscuit."""
    text = rows[at].text.strip()
    if re.search(r"[,!:.]$", text) or CALLED.match(text) or len(text.split()) == 1:
        return True
    last = text.split()[-1]
    if plain(text) in words("greeting") or (_BESIDE_NAMES.fullmatch(last) and last.islower()):
        return True  # "Hi all", "Good morning"
    if at + 1 == len(rows):
        return True
    below = rows[at + 1]
    if is_ingredient(below.text) or is_name(below.text):
        return False
    return leads_on(below.text) or (below.gap and is_title(below.text))


def _stopped(text: str) -> str:
    """Return a greeting that ends as no title above a list does."""
    bare = re.sub(r"\s*[!:]$", "", text.strip())
    return bare if re.search(r"[,.?]$", bare) else f"{bare},"


def _may_head(row: Row) -> bool:
    """Whether a row may stand in the head of a letter: short, and nothing of a recipe's list."""
    if row.shape not in ("line", "heading") or section_of(row.text) is not None:
        return False
    if is_sentence(row.text) or len(row.text.split()) > _MOST_OF_A_LINE:
        return False
    if makes_of(row.text) or is_passed(row.text):
        return bool(_is_of_head(row.text))
    return bool(_is_of_head(row.text)) or not (is_ingredient(row.text) and staples_named(row.text))


def _is_of_head(text: str) -> bool:
    return bool(_DATED.fullmatch(text.strip()) or _ADDRESS.fullmatch(text.strip()))


def without_greeting(rows: Sequence[Row], recipe: Recipe) -> list[Row]:
    """Return the rows of a letter that has no list without its greeting and what leads to it.

    How much is made is taken from what is left out, and that it is left out is told.
    """
    near = rows[: _MOST_ABOVE + 1]
    greeting = (place for place, row in enumerate(near) if _is_greeting(row))
    at = next((place for place in greeting if _greets_here(rows, place)), None)
    if at is None:
        if first := next((row for row in rows[:2] if speaks_to_one(row.text)), None):
            _ask_of_first(first.text, recipe)
        return list(rows)
    above = [row for row in rows[:at] if not _is_chat(row)]
    called = CALLED.match(MY.sub("", rows[at].text))
    rest = MY.sub("", rows[at].text)[called.end() :].strip() if called else ""
    kept = [replace(rows[at], text=f"{rest[:1].upper()}{rest[1:]}", gap=True)] if rest else []
    kept += rows[at + 1 :]
    for _ in range(_MOST_CHAT):
        if len(kept) < 2 or kept[0].shape != "line":
            break
        if not is_said_to_one(kept[0].text) and not is_news(kept[0].text):
            break
        recipe.say_makes(makes_of(kept.pop(0).text))
    if kept and kept[0].shape == "line":
        kept[0] = _without_first_sentences(kept[0])
        _ask_of_first(kept[0].text, recipe)
    tell_greeting(recipe)
    return [*above, *kept]


def _ask_of_first(text: str, recipe: Recipe) -> None:
    """Ask about a first step that may still be chat: it measures nothing and names no food."""
    bids = plain(text).split(" ")[0] in words("told_first") | words("told_last")
    if bids or is_told(text) or MEASURED.search(text) or names_food(text):
        return
    what = f'The first step may still be of the letter: "{text[:_SHOWN]}"'
    recipe.doubt("title", what, "If nothing is done in it, take it out of the method.")


def tell_greeting(recipe: Recipe) -> None:
    """Say that a greeting and what leads from it to the recipe is left out."""
    what = "What the letter says before its recipe is left out: it was written to one person."
    recipe.doubt("title", what, "Write a word of your own about it, if you like.")


def tell_beside(recipe: Recipe) -> None:
    """Say that a letter above or below the one with the recipe is left out."""
    what = "What was written beside the letter that holds the recipe is left out: it was for one."
    recipe.doubt("title", what, "If a word of it is of the recipe, write that.")


def _is_chat(row: Row) -> bool:
    return row.shape == "line" and is_said_to_one(row.text)


def _without_first_sentences(row: Row) -> Row:
    """Return a paragraph without the sentences at its beginning that were said to one person."""
    told = SENTENCE_ENDS.split(row.text)
    first = next((at for at, one in enumerate(told) if not is_said_to_one(one)), 0)
    return replace(row, text=" ".join(told[first:])) if first else row
