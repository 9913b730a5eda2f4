"""A letter that begins with a name alone, or with a few words to somebody and no greeting.

"Anna,", "Mum, here it is as I have it. Love, T.": nobody else is to read that. Leaves out greetings
by their words: greetings.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, section_of, words
from stillroom.bringing.joining import joined
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.said_to_one import (
    MEASURED,
    greets,
    is_done,
    is_news,
    is_said_to_one,
    leads_on,
    names_food,
    speaks_to_one,
)
from stillroom.bringing.sorting import is_ingredient, is_passed, is_title
from stillroom.bringing.titles import writer_of
from stillroom.core.lines.staple_table import staples_named

# "Anna,", "Mum and Tom!", "Haniu –": whom a letter is to, where no word greets her
_NAMED_ALONE: Final = re.compile(
    r"(?:(?:To|For|An|Für|Pour|À|Per|Para|Voor|Aan|Till|Til|Dla|Pro)\s+)?(?P<names>(?:[A-ZÀ-ÝŁŚŻŹĆČŠŽŘ][^\W\d]*\.?)(?:\s(?:and|und|et|y|e|i|a|en|og|och|&|dear|darling|love|[A-ZÀ-ÝŁŚŻŹĆČŠŽŘ][^\W\d]*\.?)){0,4})"
    r"(?P<sign>\s?[,!:–—-])?(?:\s+(?P<rest>\S.*))?",
    re.DOTALL,
)
# "Love, T.", "LG J", "x J": a farewell at the end of one line
_SIGNED: Final = re.compile(r"(?:[xX]{1,4}|LG|VG|lg|HG)(?:\s[^\W\d]+\.?){0,2}")
_OF_ONESELF: Final = re.compile(
    r"(?:(?:I|We)(?:['’](?:ve|m|re|d|ll))?|Ich|Wir|J['’]ai|Je|Nous|Yo|Jag|Vi|Ik|Wij|We|Jeg|Eu)\s"
)
_MOST_SIGNED: Final = 5
_MOST_ABOVE: Final = 9


def calls(row: Row, below: Sequence[Row]) -> bool:
    """Whether a first line names somebody and no food, and what follows it is said to her.

    >>> told = [Row("Here is the recipe you asked for."), Row("Plum jam", gap=True), Row("1 kg")]
    >>> [calls(Row(one), told) for one in ("Anna,", "Mum and Tom!", "Anna", "Plums,", "Plum jam")]
    [True, True, True, False, False]
    >>> calls(Row("Anna,"), [Row("Boil it.")]), calls(Row("Delicious!"), [Row("Boil it.")])
    (True, False)
    """
    found = _NAMED_ALONE.fullmatch(row.text.strip())
    if found is None or row.shape not in ("line", "heading") or greets(row.text):
        return False
    said = {plain(one) for one in found["names"].split()} - {"and", "dear", "love", "darling"}
    kinds = ("no_names", "told_first", "told_last", "passed", "parts")
    known = any(one in words(kind) for kind in kinds for one in said)
    of_food = staples_named(found["names"]) or says_its_kind(found["names"])
    if known or of_food or section_of(row.text) is not None or is_passed(row.text):
        return False
    sign, rest = (found["sign"] or "").strip(), found["rest"] or ""
    if rest:
        return bool(sign and rest[:1].islower() and leads_on(rest))
    if sign == "," and (below[0].gap or not staples_named(below[0].text)):
        return True  # and no "Peach," of a title broken off
    speaks = below[0].shape == "line" and speaks_to_one(below[0].text)
    titled = any(one.gap and is_title(one.text) for one in below[1:_MOST_ABOVE])
    return speaks and (bool(sign) or titled)


def calling(text: str) -> str:
    """Return a line that names somebody as a greeting calls her: "Anna, here it is."."""
    found = _NAMED_ALONE.fullmatch(text.strip())
    assert found is not None
    rest = f" {found['rest']}" if found["rest"] else ""
    return f"{found['names']},{rest}"


def without_words_to_one(rows: Sequence[Row], is_letter: bool) -> tuple[Row, ...]:
    """Return the rows of a paper without what stands above its recipe and was for one person.

    In a letter that is whatever measures and does nothing above the title or the list.

    >>> note = [Row("The doctor rang."), Row("Lemon biscuits"), Row("1 kg flour")]
    >>> [row.text for row in without_words_to_one(note, True)]
    ['Lemon biscuits', '1 kg flour']
    """
    if not is_letter:
        return tuple(rows)
    rows = with_chat_joined(rows)
    near = rows[: _MOST_ABOVE + 1]
    begin = next((at for at, row in enumerate(near) if _begins_recipe(row, at)), None)
    if begin is None:
        return tuple(rows)
    kept = [row for row in rows[:begin] if not _may_be_for_one(row)]
    return (*map(yield_alone, kept), yield_alone(rows[begin]), *rows[begin + 1 :])


def yield_alone(row: Row) -> Row:
    """Return a row that says how much is made without the news behind it, for one person alone.

    >>> yield_alone(Row("Makes 24. The doctor rang Tom.")).text
    'Makes 24.'
    >>> yield_alone(Row("Makes 24. Boil the plums first.")).text
    'Makes 24. Boil the plums first.'
    """
    told = SENTENCE_ENDS.split(row.text) if row.shape == "line" and makes_of(row.text) else []
    of_it = [
        one
        for one in told
        if makes_of(one)
        or MEASURED.search(one)
        or (is_done(one) and not speaks_to_one(one) and not _tells_of_oneself(one))
    ]
    return replace(row, text=" ".join(of_it)) if len(told) > 1 and of_it else row


def with_chat_joined(rows: Sequence[Row]) -> list[Row]:
    """Return the rows of a letter with the first lines of it that a machine broke off whole again.

    Half a sentence that was for one person says nothing of that, and would stay.

    >>> note = ["So glad! Here is what I do, straight off the page I", "printed.", "1 lb figs"]
    >>> len(with_chat_joined([Row(one, gap=at == 0, wraps=True) for at, one in enumerate(note)]))
    2
    """
    chat = (
        at
        for at, row in enumerate(rows)
        if row.shape != "line" or section_of(row.text) is not None or is_ingredient(row.text)
    )
    end = next(chat, len(rows))
    return [*joined(rows[:end]), *rows[end:]]


def is_signed(text: str) -> bool:
    """Whether a line takes leave at its end, or is nothing but that: "As promised! Love, T."."""
    parts = SENTENCE_ENDS.split(text.strip())
    last = re.sub(r"^[-–—~]\s*", "", parts[-1].strip())
    if len(parts) > 1 and len(parts[-1]) <= 2:  # "Un beso, T." ends in an initial
        last = parts[-2]
    closes = plain(last.partition(",")[0]) in words("closing") - {"enjoy"}
    few = len(last.split()) <= _MOST_SIGNED
    return few and bool(closes or _SIGNED.fullmatch(last)) and not MEASURED.search(text)


def _begins_recipe(row: Row, at: int) -> bool:
    """Whether a row may be the first of a recipe: its title, a head, a line of its list, work."""
    text = row.text
    if row.shape != "line" or section_of(text) is not None or is_ingredient(text):
        return True
    if is_title(text):
        return not is_signed(text)
    return bool(MEASURED.search(text) or makes_of(text)) or (
        is_done(text) and not speaks_to_one(text) and not _tells_of_oneself(text)
    )


def _tells_of_oneself(text: str) -> bool:
    """Whether nothing is told but what the writer did, and no food named: "I made my batch"."""
    told = SENTENCE_ENDS.split(text)
    own = bool(_OF_ONESELF.match(text)) and not names_food(text)
    return own and all(_OF_ONESELF.match(one) or not is_done(one) for one in told)


def _may_be_for_one(row: Row) -> bool:
    """Whether a row above a letter's recipe is nothing of it: "Pat, here it is as I have it."."""
    own = makes_of(row.text) or writer_of(row.text) or is_passed(row.text) or greets(row.text)
    return not own or is_said_to_one(row.text) or is_news(row.text) or is_signed(row.text)
