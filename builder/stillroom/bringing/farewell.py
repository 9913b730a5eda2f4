"""The end of a letter, and the numbers at which somebody is reached: they were for one person.

A pasted letter has no head that says it is one: "Love to Ken and the boys." ends it all the same.
What is left out is told, and not repeated. Leaves out the greeting: dividing.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.greetings import Begun, without_letter_head
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.private_end import without_private_end
from stillroom.bringing.said_to_one import greets, is_news
from stillroom.bringing.signatures import without_signatures
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_sentence, is_told
from stillroom.bringing.tails import does_something
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.words.contacts import holds_contact
from stillroom.core.words.patterns import CAPITAL

_LAST_ROWS: Final = 12
"""Rows at the end of a paper among which its farewell stands."""
_MOST_SAID: Final = 9
_LEAST_LEFT: Final = 2
"""A greeting, and what it greets with."""
_NAMES: Final = 4
_SHOWN: Final = 60
_KISSES: Final = re.compile(r"[^\W\d]+(?:[ &]+[^\W\d]+){0,3},? x{1,6}[.!]?", re.IGNORECASE)
_NAME: Final = re.compile(r"[-–—~]?\s?(?:[A-ZÀ-Ý][^\W\d]+\.?|[A-Z]\.|and|und|et|&)")
# behind "Love" and the like, what is no name: "Love this on toast", "Thanks to the acid it sets"
_SAID_OF_IT: Final = re.compile(
    r"\b(?:it|its|this|these|them|is|are|keeps?|sets?|serve[ds]?|with|on|before|until|for \d)\b",
    re.IGNORECASE,
)
_WITH_LOVE: Final = re.compile(
    r"with (?=(?:all |much |lots of )?(?:my |our )?(?:love|best wishes|kind(?:est)? regards)\b)",
    re.I,
)
_SENTENCE: Final = re.compile(rf"(?<=[.!?])\s+(?={CAPITAL}|\W?[A-ZÀ-Ý])")
AFTERWORD: Final = re.compile(
    r"(?:(?:p\.?[ -]?){1,2}s\b|(?:p\.? ?){1,2}d(?:\.| ?:)|pos(?:t)?data\b|post ?script(?:um)?\b"
    r"|nachtrag\b|naschrift\b)[\s.:,–—-]*",
    re.IGNORECASE,
)
"""How what is written below a letter's end begins: "P.S.", "PS:", "P.D." of Spanish."""


@dataclass(frozen=True)
class Left:
    """The rows of a paper that are for everybody, and what was left out of it."""

    rows: tuple[Row, ...]
    farewell: bool = False
    contacts: bool = False
    begun: Begun | None = None
    afterwords: tuple[str, ...] = ()
    signed: bool = False

    def tell(self, recipe: Recipe) -> None:
        """Say what is left out, without repeating it."""
        if self.begun:
            self.begun.tell(recipe)
        if self.farewell:
            what = "The letter's farewell is left out, and what stands with it: it was for one."
            mend = "If a word of it is of the recipe, write that; look at the last step for more."
            recipe.doubt("title", what, mend)
        if self.afterwords:
            recipe.notes.append(("Notes", list(self.afterwords)))
            what = f'Below the letter\'s end, kept as a note: "{self.afterwords[0][:_SHOWN]}"'
            mend = "If it is for nobody else to read, take it out."
            recipe.doubt("title", what, mend)
        if self.signed:
            what = "Names that stood behind the method are left out."
            recipe.doubt("title", what, "Name whose recipe it is, if they may be named.")
        if self.contacts:
            what = "A telephone number or an e-mail address is left out, with its sentence."
            mend = "Write what else that sentence said, if the recipe needs it."
            recipe.doubt("title", what, mend)


def without_private(rows: Sequence[Row], is_letter: bool = False) -> Left:
    """Return a paper without a letter's head, anybody's number, its farewell and what is behind."""
    reached = any(holds_contact(row.text) for row in rows)
    rows, signed = without_signatures(rows)
    begun = without_letter_head([row for row in map(_without_contacts, rows) if row], is_letter)
    kept, ended = _without_farewell(begun.rows, reached)
    afterwords = _afterwords(begun.rows[len(kept) :])
    greeted = any(greets(row.text) for row in kept[:-1])
    if greeted:
        told = _without_news(kept)
        kept, ended = told, ended or len(told) < len(kept)
    if greeted or is_letter or ended:
        kept, private = without_private_end(kept)
        ended = ended or private
    return Left(kept, ended, reached, begun, afterwords, signed)


def _afterwords(behind: Sequence[Row]) -> tuple[str, ...]:
    """Return what stands below a letter's end and is of its recipe: "P.S. It keeps a year."."""
    found: list[str] = []
    for row in behind:
        if begins := AFTERWORD.match(row.text):
            found.append(row.text[begins.end() :].strip())
        elif found and row.wraps and not row.gap:
            found[-1] = f"{found[-1]} {row.text}"
    return tuple(f"{one[:1].upper()}{one[1:]}" for one in found if _is_a_tip(one))


def _is_a_tip(text: str) -> bool:
    """Whether something is done, kept or measured in some words, or a food is named."""
    does = any(does_something(one) for one in _SENTENCE.split(text))
    return does or is_told(text) or bool(may_say_keeping(text) or staples_named(text))


def _without_farewell(kept: tuple[Row, ...], reached: bool) -> tuple[tuple[Row, ...], bool]:
    told = (at for at, row in enumerate(kept) if is_sentence(row.text) or greets(row.text))
    first_told = next(told, len(kept))  # "Love apples" is a title
    for at in range(max(len(kept) - _LAST_ROWS, first_told + 1), len(kept)):
        ends = not any(_is_of_recipe(row) for row in kept[at + 1 :])
        if ends and _parts(kept[at]):
            return kept[:at], True
    is_letter = reached or any(greets(row.text) for row in kept)
    if is_letter and len(kept) > _LEAST_LEFT and _is_name(kept[-1]):
        return (kept[:-2] if _leads_to_name(kept[-2]) else kept[:-1]), True
    return kept, False


def _leads_to_name(row: Row) -> bool:
    """Whether a few words above a name at a letter's end take leave: "Tot zaterdag!"."""
    text = row.text.strip()
    few = row.shape == "line" and len(text.split()) <= _NAMES + 1
    done = is_told(text) or does_something(text) or bool(staples_named(text))
    bids = plain(text).split(" ")[0] in words("told_first") | words("told_last")
    return few and not re.search(r"[\d.:;]", text) and not (done or bids)


def _without_news(kept: tuple[Row, ...]) -> tuple[Row, ...]:
    """Return the rows of a letter without the news at its end: "Jean sends her love."."""
    end = len(kept)
    while end > _LEAST_LEFT and kept[end - 1].shape == "line" and is_news(kept[end - 1].text):
        end -= 1
    return kept[:end]


def _without_contacts(row: Row) -> Row | None:
    """Return a row without the sentences in which somebody's number or e-mail stands."""
    if not holds_contact(row.text):
        return row
    left = " ".join(one for one in _SENTENCE.split(row.text) if not holds_contact(one))
    return replace(row, text=left) if left and not AFTERWORD.fullmatch(left) else None


def _parts(row: Row) -> bool:
    """Whether a line takes leave: "Lots of love, Nan", "Joan xx", "Best wishes from us all"."""
    text = row.text.strip()
    said = text.split()
    if row.shape not in ("line", "heading") or len(said) > _MOST_SAID:
        return False
    if _SAID_OF_IT.search(_WITH_LOVE.sub("", text)):
        return False
    if _KISSES.fullmatch(text) or plain(text) in words("closing") - {"enjoy"}:
        return True
    if plain(text.partition(",")[0]) in words("closing") - {"enjoy"} and "," in text:
        return True
    bare = plain(text)
    return any(bare == one or bare.startswith(f"{one} ") for one in words("parting"))


def _is_of_recipe(row: Row) -> bool:
    """Whether a line behind a farewell belongs to a recipe all the same."""
    is_listed = row.shape in ("item", "step", "row", "sizes")
    measures = is_ingredient(row.text) and begins_with_amount(row.text)
    return is_listed or section_of(row.text) is not None or measures


def _is_name(row: Row) -> bool:
    said = row.text.split()
    is_told = plain(row.text).split(" ")[0] in words("told_first")
    named = len(said) <= _NAMES and all(_NAME.fullmatch(one) for one in said)
    return row.shape == "line" and named and not is_told and find_staple(row.text) is None
