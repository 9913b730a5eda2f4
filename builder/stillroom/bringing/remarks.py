"""What stands among the steps of a method, and is none: remarks, thanks, addresses, names.

A remark that names a food or says how the thing keeps stays a step, since it may be one. Leaves
out what stands behind the last step, afterwords.py, and tips with a head: below_list.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from stillroom.bringing.afterwords import WHOSE, begins_another, without_afterwords
from stillroom.bringing.credits import SENT_BY, is_credit
from stillroom.bringing.doubted import quoted
from stillroom.bringing.farewell import AFTERWORD
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import plain, section_of, words
from stillroom.bringing.known_work import (
    TONGUES,
    is_work,
    is_work_in_own,
    listed_words,
    may_be_work,
    names_what_is_used,
    tongues_of,
)
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.other_ways import is_another_way, ways_behind
from stillroom.bringing.prose import measured_in_prose
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_told
from stillroom.bringing.tails import says_done, tail_of
from stillroom.bringing.titles import writer_of
from stillroom.bringing.yields import yield_told
from stillroom.core.larder.shelves import common_larder
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.method.reading import named_in

_LEAST: Final = 3
"""Numbered steps from which on a line without a number may be a remark."""
_NAMES: Final = 3
_MOST_NAMED: Final = 6
_LEAST_TOLD: Final = 4
"""Small words by which one paragraph is plainly in a language."""
_LEAST_DONE: Final = 2
"""Rows that are work, behind which a heading may head something else."""
_SENTENCE: Final = re.compile(r"(?<=[.!?])\s+")
_ADDRESSES: Final = re.compile(r"(?:(?:https?://|www\.)\S+[\s,]*)+", re.IGNORECASE)
_ONE_WORD: Final = re.compile(r"[A-ZÀ-Ý][a-zà-ÿ]{2,30}")
_NAME: Final = re.compile(r"[A-ZÀ-Ý][a-zà-ÿ'’.-]+")
# who tells of it, or of what was made: "I always use", "You will love", "This was a hit"
_TELLS: Final = re.compile(
    r"(?:i(?:['’](?:ve|m|d|ll))?|we(?:['’](?:ve|re|d|ll))?|my|our|this (?:recipe|is|was|makes|one)"
    r"|these (?:are|were)|you(?:['’]ll| will) (?:love|like|enjoy|find|be|want|never)"
    r"|they(?:['’]re| are| were)|it(?:['’]s| is| was)|what a|hope|think|enjoy|happy|thanks?"
    r"|thank you|with thanks|ich|wir|meine?|je|nous|mon|ma|io|noi|mio|mia|yo|mi)\b",
    re.IGNORECASE,
)
_STAYS: Final = re.compile(
    r"\b(?:keep|keeps|kept|store[ds]?|fridge|refrigerat\w*|freez\w*|leave|until|ready|mature|days?|weeks?|months?"
    r"|degrees?|minutes?|hours?)\b|°",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Method:
    """The rows of a method that are steps, and what was found beside them."""

    steps: tuple[Row, ...]
    remarks: tuple[str, ...] = ()
    addresses: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    dropped: tuple[str, ...] = ()
    begun: str = ""
    tail: tuple[str, ...] = ()

    def tell(self, recipe: Recipe) -> None:
        """Keep remarks as notes, an address as the source, and say that names were left out."""
        if self.remarks:
            recipe.notes.append(("Notes", list(self.remarks)))
        if self.tail:
            recipe.notes.append(("Notes", list(self.tail)))
            named = " · ".join(map(quoted, self.tail[:_MOST_NAMED]))
            what = f"Behind the last step, kept as a note: {named}"
            recipe.doubt("title", what, "If it is a step, write it into the method.")
        for said in (*self.remarks, *self.tail):
            recipe.say_makes(makes_of(said))
        for address in self.addresses:
            recipe.address = recipe.address or address
        if self.dropped:
            what = f'Left out, as what a page says of whoever writes it: "{self.dropped[0][:60]} …"'
            recipe.doubt("title", what, "If it is a step, write it into the method.")
        if self.begun:
            what = f'"{self.begun[:60]}" stands at the end with nothing below it, and is left out.'
            recipe.doubt("title", what, "If a recipe of that name follows, bring it in whole.")
        if self.names:
            what = "Names that stood behind the method are left out."
            mend = "Name whose recipe it is, if they may be named."
            recipe.doubt("title", what, mend)


def without_remarks(rows: Sequence[Row], recipe: Recipe) -> Method:
    """Return the rows of a method without what is said, thanked and signed beside its steps."""
    idle, rows = _idle_behind(rows, recipe)
    tail, rows = _tail(rows, recipe)
    said = without_afterwords(rows, recipe)
    rows = said.rows
    numbered = [at for at, row in enumerate(rows) if row.shape in ("step", "item")]
    behind = numbered[-1] if len(numbered) >= _LEAST else len(rows)
    first = numbered[0] if len(numbered) >= _LEAST else len(rows)
    steps: list[Row] = []
    remarks: list[str] = []
    tongues = tongues_of([row.text for row in rows]) or TONGUES
    counted = sum(row.shape == "step" for row in rows) >= _LEAST
    lead = [
        at
        for at, row in enumerate(rows[:first])
        if counted and row.shape == "line" and _does_nothing(row.text, tongues)
    ]
    if lead:
        named = " · ".join(quoted(rows[at].text) for at in lead[:_MOST_NAMED])
        what = f"Above the first numbered step, kept as a note: {named}"
        recipe.doubt("title", what, "If it is a step, write it into the method.")
    addresses: list[str] = []
    names: list[str] = []
    for at, row in enumerate(rows):
        if row.shape == "line" and _ADDRESSES.fullmatch(row.text):
            addresses.append(_with_scheme(row.text.split()[0].rstrip(",")))
        elif at > behind and _is_name(row) and not is_passed(row.text):
            names.append(row.text)
        elif at in lead or (at > first and row.shape == "line" and _is_remark(row.text, recipe)):
            remarks.append(row.text)
        else:
            steps.append(row)
    return Method(
        tuple(steps),
        (*remarks, *said.remarks, *idle),
        tuple(addresses),
        (*names, *said.names),
        said.dropped,
        said.begun,
        tail,
    )


def _idle_behind(rows: Sequence[Row], recipe: Recipe) -> tuple[tuple[str, ...], list[Row]]:
    """Return what stands behind the last work and names nothing that is used, and the rows left.

    >>> steps = [Row("Stone the plums."), Row("Boil them for an hour.")]
    >>> _idle_behind([*steps, Row("A sight to behold.")], Recipe(""))[0]
    ('A sight to behold.',)
    >>> _idle_behind([*steps, Row("Plums in the jars.")], Recipe(""))[0]
    ()
    """
    tongues = tongues_of([row.text for row in rows]) or TONGUES
    listed = listed_words(line for _, line in recipe.ingredients)
    end = len(rows)
    if end > 1 and begins_another(rows[-1], rows[-2]):
        return (), list(rows)
    while end > _LEAST_DONE and _is_idle(rows[end - 1], tongues, listed):
        end -= 1
    kept = list(rows[:end])
    if sum(is_work(row.text, tongues, listed) for row in kept) < _LEAST_DONE:
        return (), list(rows)
    leads = kept[-1].text.rstrip().endswith((":", ","))
    if leads or kept[-1].shape == "heading":  # what follows goes with it
        return (), list(rows)
    return tuple(row.text for row in rows[end:]), kept


def _is_idle(row: Row, tongues: Sequence[str], listed: frozenset[str]) -> bool:
    """Whether a row does nothing, names nothing that is used and is read as nothing else."""
    text = row.text.strip()
    if row.shape != "line" or not text[:1].strip() or text[:1].islower():
        return False
    if AFTERWORD.match(text) or is_another_way(text, ""):  # read with what they head, and asked of
        return False
    if _ONE_WORD.fullmatch(text):  # a tag, "Rhubarb"; any other may be a name
        return plain(text) not in words("told_first") and bool(staples_named(text))
    if writer_of(text) or WHOSE.fullmatch(text) or SENT_BY.match(text):
        return False
    if is_passed(text) or _is_name(row) or _ADDRESSES.search(text) or is_credit(text):
        return False
    if may_say_keeping(text) or makes_of(text) or yield_told(text) or is_ingredient(text):
        return False
    if says_done(text):  # "I put it back for another month."
        return False
    if _is_headed(text) or is_told(text) or is_work_in_own(text, tongues, listed):
        return False
    if is_work(text, tongues, listed) or names_what_is_used(text, listed):
        return False
    return not brings_food(text, tongues)


def brings_food(text: str, tongues: Sequence[str]) -> bool:
    """Whether a line names a food or measures something, in whatever words: it may go in.

    >>> brings_food("Ich gebe manchmal eine Zimtstange dazu.", ("de",))
    True
    >>> brings_food("We like it best of all.", ("en",))
    False
    """
    if staples_named(text) or measured_in_prose([text]):
        return True
    own = {*tongues, *(tongues_of((text,)) or TONGUES)}  # a line may be in another than its paper
    foods = (named_in(text, common_larder(), "" if one == "en" else one) for one in own)
    return any("craft" not in food.tags for named in foods for _, _, food in named)


def _is_headed(text: str) -> bool:
    """Whether a line says by its first words what it is: "Variation: add rum", "* or gin"."""
    head, colon, _ = text.partition(":")
    return text.startswith(("*", "\\*", "~")) or (
        bool(colon) and section_of(f"{head.strip()}:") == "aside"
    )


def _tail(rows: Sequence[Row], recipe: Recipe) -> tuple[tuple[str, ...], list[Row]]:
    """Return what stands behind the steps and may be none, and the rows without it."""
    plainly_left = without_afterwords(rows, recipe).rows
    doubted = [
        at
        for at in tail_of(rows)
        if rows[at] in plainly_left
        and not _ADDRESSES.fullmatch(rows[at].text)
        and not _is_name(rows[at])
    ]
    other = ways_behind(rows, recipe.title)
    idle = _below_idle_heads(rows, recipe)
    doubted = sorted({*doubted, *other, *idle, *_in_other_tongue(rows)})
    tail = tuple(rows[at].text for at in doubted)
    return tail, [row for at, row in enumerate(rows) if at not in doubted]


def _in_other_tongue(rows: Sequence[Row]) -> set[int]:
    """Return the paragraphs at the end that are plainly in another language than the first.

    >>> told = Row("Śliwki umyć i włożyć do garnka, dodać trochę wody i gotować godzinę na ogniu.")
    >>> again = Row("Wash the plums and put them into the pot, and cook for an hour until soft.")
    >>> _in_other_tongue([told, again]), _in_other_tongue([again, again])
    ({1}, set())
    """
    first = next((own for row in rows if (own := tongues_of((row.text,), _LEAST_TOLD))), ())
    found: set[int] = set()
    for at in range(len(rows) - 1, 0, -1):
        own = tongues_of((rows[at].text,), _LEAST_TOLD)
        if rows[at].shape != "line" or not own or set(own) & set(first):
            break
        found.add(at)
    return found


def _below_idle_heads(rows: Sequence[Row], recipe: Recipe) -> set[int]:
    """Return the headings behind the first steps below which nothing is done, and what they head.

    Below one that does not ask, no word may be one of work.

    >>> steps = [Row("Stone the plums."), Row("Boil them for an hour.")]
    >>> told = [Row("Where are they from?", "heading"), Row("They are said to be from the east.")]
    >>> _below_idle_heads([*steps, *told], Recipe(""))
    {2, 3}
    >>> _below_idle_heads([*steps, told[0], *steps], Recipe(""))
    set()
    """
    tongues = tongues_of([row.text for row in rows]) or TONGUES
    listed = listed_words(line for _, line in recipe.ingredients)
    works = [row.shape != "heading" and is_work(row.text, tongues, listed) for row in rows]
    may = [one or may_be_work(row.text, tongues) for one, row in zip(works, rows, strict=True)]
    heads = [at for at, row in enumerate(rows) if row.shape == "heading"]
    found: set[int] = set()
    for at, end in pairwise([*heads, len(rows)]):
        group = range(at + 1, end)
        done = works if rows[at].text.rstrip(" :").endswith("?") else may
        idle = not any(done[one] or _is_read_for_itself(rows[one]) for one in group)
        if group and idle and sum(works[:at]) >= _LEAST_DONE:
            found.update((at, *group))
    return found


def _is_read_for_itself(row: Row) -> bool:
    """Whether a row says how long it keeps or how much it makes, or is a step by its number."""
    told = may_say_keeping(row.text) or makes_of(row.text) or is_passed(row.text)
    return row.shape != "line" or bool(told) or is_told(row.text)


def without_names(rows: Sequence[Row]) -> Method:
    """Return the rows of notes without the names and addresses that stand at their end."""
    kept = list(rows)
    addresses: list[str] = []
    names: list[str] = []
    while kept and len(rows) > 1:
        last = kept[-1]
        if last.shape == "line" and _ADDRESSES.fullmatch(last.text):
            addresses.insert(0, _with_scheme(last.text.split()[0].rstrip(",")))
        elif _is_name(last):
            names.append(last.text)
        else:
            break
        kept.pop()
    return Method(tuple(kept), (), tuple(addresses), tuple(names))


def _with_scheme(address: str) -> str:
    return address if "://" in address else f"https://{address}"


def _is_name(row: Row) -> bool:
    said = row.text.split()
    named = row.shape in ("line", "heading") and len(said) <= _NAMES
    return (
        named
        and all(_NAME.fullmatch(one) for one in said)
        and plain(row.text).split(" ")[0] not in words("told_first")
        and find_staple(row.text) is None
    )


def _does_nothing(text: str, tongues: Sequence[str]) -> bool:
    """Whether a line does nothing, says nothing of how long it keeps, and leads to nothing."""
    if text.endswith(":") or is_ingredient(text) or is_passed(text) or may_say_keeping(text):
        return False
    return not (is_work(text, tongues) or is_told(text))


def _is_remark(text: str, recipe: Recipe) -> bool:
    """Whether a line without a number, among numbered ones, tells of the thing and does nothing."""
    if not is_sentence(text) or _STAYS.search(text) or may_say_keeping(text):
        return False
    told = [one for one in _SENTENCE.split(text) if one.strip()]
    if not all(_TELLS.match(one) for one in told):
        return False
    listed = {food.name for _, line in recipe.ingredients for food in staples_named(line)}
    # "I add almonds here" brings them in
    named = (food for _, _, food in named_in(text, common_larder()) if "craft" not in food.tags)
    return all(any(food.name.endswith(one) for one in listed) for food in named)
