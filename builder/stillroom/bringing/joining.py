"""Rows that a machine broke off put together again, and the heads among them seen as heads.

Leaves out what the rows are of: dividing.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.credits import names_a_book
from stillroom.bringing.found import FARTHEST, Row
from stillroom.bringing.heads import plain, words
from stillroom.bringing.list_parts import heads_stage
from stillroom.bringing.lists import WIDE, amid_a_sentence
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence
from stillroom.bringing.tails import begins_to_bid, ends_in_doing
from stillroom.bringing.tools import is_never_given, is_tool
from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.words import normal_form

_FEW: Final = 6
_FEW_OF_A_HEAD: Final = 3
_MOST_OF_A_HEAD: Final = 8
_LEAST_HEADS: Final = 2
# "Day 1.", "Jour 2", "Part one"
_DAY: Final = re.compile(
    r"(?:day|tag|jour|giorno|día|dag|part|teil|partie|parte|deel)\s+\w{1,5}[.:]?", re.IGNORECASE
)
# "For each jar of extract you would like to make:", above its steps
_FOR_EACH: Final = re.compile(
    r"(?:for\s+(?:each|every)|für\s+jede[nrs]?|pro|pour\s+chaque|per\s+ogni|para\s+cada|voor\s+elke?|för\s+varje|for\s+hver[t]?)\s+"
    r"(?:[^\W\d][\w'’-]*\s*){1,10}:",
    re.IGNORECASE,
)
# "Hot Pack-", above what is done
_DASHED: Final = re.compile(r"[A-ZÀ-Ý][^\W\d]*(?:\s[^\W\d]+){0,3}\s?[-–—]")
_NEW_SENTENCE: Final = re.compile(r"[a-zà-ÿ][.!?]\s+[A-ZÀ-Ý][a-zà-ÿ]")
_LONG: Final = 50
_LONG_CAPITALS: Final = 30
_WIDEST: Final = 120  # no machine breaks a line so late
_OPEN: Final = re.compile(
    r"(?:[,;–-]|\b(?:and|or|the|an?|of|in|into|with|to|for|from|until|till?|then|leaving|und|mit|et|de|e|y))$",
    re.IGNORECASE,
)
# "Note: wear gloves", "*Increase the time": said below the last step, and no part of it
_BESIDE_STEPS: Final = re.compile(r"\(?(?:(?:tip|note|hint|tipp)s?\s*:|\*|~\s)", re.IGNORECASE)
_NAMED: Final = 9
_PARTED: Final = re.compile(r"\b(?P<first>[^\W\d_]{2,})-$")
# "stones removed", "zest only": how what stands above is taken
_TAKEN_AS: Final = re.compile(
    r"(?:stones?|shells?|seeds?|pips|skins?|cores?|stalks?) (?:removed|discarded)"
    r"|(?:zest|juice|rind|peel)(?: and (?:zest|juice|rind))?(?: only)?"
)
_JOINS: Final = re.compile(r"(?:and|or|und|oder|et|ou|y|och|og|oraz|until|till|bis)\s")
_BEFORE_A_WORD: Final = "\"'“”„«»‹›‘’(["
_IN_BRACKETS: Final = re.compile(r"\([^()]{3,300}\)[.!]?")
# "How to sterilise jars", above how that is done
_HOW_TO: Final = re.compile(
    r"(?:how to|wie man|so|comment|come|cómo|hoe|hur man|sådan|slik|como|jak)"
    r"(?:\s[^\W\d][\w'’-]*){1,6}\s?:?",
    re.IGNORECASE,
)
_HEAD_OF_A_STEP: Final = re.compile(
    r"(?=.{4,48}$)\(?\d{1,2}\s*[.):]\s*[A-ZÀ-Ý][^\W\d]*(?:\s[^\s.,;:!?]+){0,5}"
)
# "24 cookies", alone on a line: how much is made
COUNTED: Final = re.compile(
    r"(?:about\s+|ca\.?\s+)?\d+(?:\s*(?:-|–|to)\s*\d+)?\s+(?:half-)?(?:pints?|quarts?|jars?|bottles?|cookies|biscuits|pieces|dozen|squares|servings"
    r"|Gläser|Flaschen|Stück|pots|bocaux|bouteilles|vasetti|bottiglie|biscotti|tarros|botellas|galletas|potten|flessen|koekjes|burkar|flaskor|kakor)\.?",
    re.IGNORECASE,
)
_PROOF: Final = re.compile(r"[\d–-]+\s*(?:per cent|%)(?:\s+(?:proof|vol))?")


def joined(rows: Sequence[Row]) -> list[Row]:
    """Return rows with lines that a machine broke off put together again."""
    found: list[Row] = []
    wide = _blocks_that_wrap(rows)
    headed = _below_heads_of_steps(rows)
    lines = [row.text for row in rows if row.shape == "line"]
    capitals = sum(text[:1].isupper() for text in lines) >= 2
    capitals = capitals or any(map(_NEW_SENTENCE.search, lines))
    for place, row in enumerate(rows):
        above = found[-1] if found else None
        goes_on = above is not None and row.wraps and not row.gap and row.shape == "line"
        goes_on = goes_on and not _BESIDE_STEPS.match(row.text)
        goes_on = goes_on and not is_passed(row.text) and not is_only_makes(row.text)
        goes_on = goes_on and not names_a_book(row.text)
        if goes_on and above is not None and COUNTED.fullmatch(row.text.strip()):
            goes_on = not re.search(r"[.!?]$", above.text)
        if goes_on and above is not None and _heads_items(rows, place, above):
            found.append(replace(row, shape="heading", level=6))
            continue
        if goes_on and above is not None and above.shape != "heading":
            broken = _still_of_item(rows, place, above) or place in wide
            if (
                broken
                or _is_broken_off(rows, place, capitals)
                or _goes_on_in_capitals(rows, place)
                or not re.search(r"[^\W_]", row.text)
            ):
                head = f"{above.text.rstrip()}:" if place in headed else above.text
                text = together(head, row.text)
                found[-1] = Row(text, above.shape, above.level, above.gap, True, above.indent)
                continue
        found.append(row)
    return found


def _below_heads_of_steps(rows: Sequence[Row]) -> frozenset[int]:
    """Return the lines below a number and a few words that head a step, where most are so.

    "4. Boil the brine", and below it "Put water, vinegar and sugar in a pan."
    """
    steps = [at for at, row in enumerate(rows) if row.shape == "step"]
    found = frozenset(
        at + 1
        for at in steps
        if at + 1 < len(rows)
        and _HEAD_OF_A_STEP.fullmatch(rows[at].text)
        and rows[at + 1].shape == "line"
        and not rows[at + 1].gap
        and rows[at + 1].text[:1].isupper()
    )
    return found if len(found) >= _LEAST_HEADS and len(found) * 2 > len(steps) else frozenset()


def together(above: str, below: str) -> str:
    """Return two halves of a line as one; a word that a machine parted at its edge is whole again.

    >>> together("simmer for 90 min-", "utes"), together("a well-", "buttered tin")
    ('simmer for 90 minutes', 'a well-buttered tin')
    >>> together("Boil it", "***")
    'Boil it'
    """
    if not re.search(r"[^\W_]", below):
        return above
    # a long paragraph is put together line by line, and most of them part no word
    parted = _PARTED.search(above) if above.endswith("-") else None
    if parted and below[:1].islower():
        kept = parted["first"].lower() in words("own_hyphen")
        return f"{above if kept else above[:-1]}{below}"
    return f"{above} {below}"


def _still_of_item(rows: Sequence[Row], place: int, above: Row) -> bool:
    """Whether a line below an item is the rest of it, and no sentence that follows the last."""
    row, before = rows[place], rows[place - 1].text
    if above.shape not in ("item", "step"):
        return False
    begins = row.text[:1].isupper() and is_sentence(row.text) and row.indent <= above.indent
    ended = not WIDE <= len(before) <= _WIDEST and bool(re.search(r"[.!?…]$", before))
    below = rows[place : place + FARTHEST]
    last = above.shape == "step" and not any(one.shape == "step" for one in below)
    return not ((last or above.shape == "item") and begins and ended)


def _heads_items(rows: Sequence[Row], place: int, above: Row) -> bool:
    """Whether a short line between items or steps heads those below it: "Le jour même"."""
    row = rows[place]
    if row.shape != "line" or place + 1 >= len(rows):
        return False
    below = rows[place + 1]
    short = len(row.text.split()) <= _FEW and row.text[:1].isupper()
    return (
        short
        and not re.search(r"[.!?,;]$", row.text)
        and below.shape == above.shape
        and above.shape in ("item", "step")
        and (bool(re.search(r"[.!?)…]$", above.text)) or row.text.endswith(":"))
    )


def _is_broken_off(rows: Sequence[Row], place: int, capitals: bool) -> bool:
    """Whether a small letter goes on with the line above: one that is long, or ends in mid-air.

    Who types without `capitals` begins each step so.
    """
    above, text = rows[place - 1].text, rows[place].text.lstrip(_BEFORE_A_WORD)
    if _JOINS.match(text) and not re.search(r"[.!?:;]$", above) and not is_ingredient(above):
        return True
    if not text[:1].islower():
        amid = amid_a_sentence(rows, place) or bool(
            _OPEN.search(above) and not is_ingredient(above)
        )
        return text[:1].isdigit() and amid
    ended = re.search(r"[.!?:;]$", above)
    return len(above) >= _LONG or bool(_OPEN.search(above)) or (capitals and not ended)


def _goes_on_in_capitals(rows: Sequence[Row], place: int) -> bool:
    """Whether a line all in capitals goes on with a long one above it that has no end."""
    row, above = rows[place].text, rows[place - 1].text
    long = len(above) >= _LONG_CAPITALS and len(above.split()) >= _FEW - 1
    return long and above.isupper() and row.isupper() and not re.search(r"[.!?:;]$", above)


def _blocks_that_wrap(rows: Sequence[Row]) -> set[int]:
    """Return the rows of paragraphs whose lines, but for the last, all run to the edge."""
    wide: set[int] = set()
    begin = 0
    for at in range(1, len(rows) + 1):
        if at < len(rows) and not rows[at].gap and rows[at].shape == "line":
            continue
        block = rows[begin:at]
        lengths = [len(row.text) for row in block]
        ended = sum(map(_ends_before, block, block[1:]))
        wide_enough = len(block) > 1 and min(lengths[:-1]) >= WIDE and not _each_begins(block)
        if wide_enough and ended * 2 <= len(block) - 1:
            wide.update(range(begin, at))
        begin = at
    return wide


def _each_begins(block: Sequence[Row]) -> bool:
    """Whether each line begins with a capital, and most bid something: steps without a stop."""
    capitals = all(row.text[:1].isupper() for row in block)
    bids = sum(begins_to_bid(row.text) or ends_in_doing(row.text) for row in block)
    return capitals and bids * 3 >= len(block) * 2


def _ends_before(row: Row, below: Row) -> bool:
    """Whether a line ends what it says: with a stop, or ";" above a capital, as in steps."""
    stopped = bool(re.search(r"[.!?]$", row.text))
    return stopped or (row.text.endswith(";") and below.text[:1].isupper())


def rejoined(rows: Sequence[Row]) -> Sequence[Row]:
    """Return the rows of a list whose lines a page broke at their commas, whole again.

    "8 lemons", "zest and juice": the second says how the first is taken.
    """
    broken = [bool(place) and _goes_on_with(row) for place, row in enumerate(rows)]
    if not any(broken):
        return rows
    found: list[Row] = []
    for row, behind in zip(rows, broken, strict=True):
        behind = behind or (row.shape == "item" and row.text.startswith("or "))
        if behind and found and found[-1].shape == "item" and re.match(r"\W*\d", found[-1].text):
            found[-1] = replace(found[-1], text=f"{found[-1].text}, {row.text}")
        else:
            found.append(row)
    return found


def _goes_on_with(row: Row) -> bool:
    """Whether an item of a list names no food, and only how the one above it is taken."""
    if row.shape != "item" or not (row.text[:1].islower() or _PROOF.fullmatch(row.text)):
        return False
    if is_tool(row.text) or is_never_given(row.text):
        return False
    known = _TAKEN_AS.fullmatch(row.text) or _PROOF.fullmatch(row.text)
    return bool(known) or all_harmless(normal_form(row.text).split())


def with_heads(rows: Sequence[Row]) -> list[Row]:
    """Return the rows of a method joined, and the few words that head some of them as heads."""
    return _heads_joined(_headed(_with_warnings(joined(rows))))


def _with_warnings(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "IMPORTANT", alone above a sentence, before it on one line.

    >>> rows = [Row("IMPORTANT"), Row("COLD JARS MAY SHATTER WHEN ADDING HOT LIQUIDS.")]
    >>> [row.text for row in _with_warnings(rows)]
    ['IMPORTANT: COLD JARS MAY SHATTER WHEN ADDING HOT LIQUIDS.']
    """
    found: list[Row] = []
    for row in rows:
        above = found[-1] if found else None
        warns = above is not None and plain(above.text) in words("warnings")
        if above and warns and row.shape == "line" and is_sentence(row.text):
            found[-1] = replace(row, text=f"{above.text.rstrip(' :!.')}: {row.text}", gap=above.gap)
        else:
            found.append(row)
    return found


def _headed(rows: Sequence[Row]) -> list[Row]:
    """Return rows with a few words alone above items, or between gaps, as the heading they are."""
    found: list[Row] = []
    heads = _paragraph_heads(rows)
    for place, row in enumerate(rows):
        below = rows[place + 1] if place + 1 < len(rows) else None
        words_of = len(row.text.split())
        ended = re.search(r"[.!?,;]$", row.text) and not _DAY.fullmatch(row.text)
        dashed = bool(_DASHED.fullmatch(row.text)) and row.shape == "line"
        named = row.text[:1].isupper() or row.text.endswith(":")
        bare = row.shape == "line" and named and not ended
        over_items = below is not None and below.shape in ("item", "step") and words_of <= _FEW
        alone = below is not None and row.gap and below.gap and is_sentence(below.text)
        alone = alone or (bare and _heads_paragraphs(rows, place) and words_of <= _FEW_OF_A_HEAD)
        day = row.shape == "line" and (bool(_DAY.fullmatch(row.text)) or heads_stage(row))
        if below is not None and (
            day
            or (dashed and is_sentence(below.text))
            or (bare and _leads_to_lines(rows, place))
            or place in heads
            or (bare and row.text.endswith(":") and _says_method(row.text))
            or (bare and _FOR_EACH.fullmatch(row.text.strip()) is not None)
            or (bare and is_sentence(below.text) and _HOW_TO.fullmatch(row.text) is not None)
            or (bare and (over_items or (alone and words_of <= _FEW_OF_A_HEAD)))
        ):
            row = replace(row, text=row.text.rstrip(" -–—"), shape="heading", level=6)
        found.append(row)
    return found


def _says_method(text: str) -> bool:
    """Whether a few words name a part of the method by its own word: "Step two directions:"."""
    said = plain(text).split()
    return len(said) <= _FEW and said[-1] in words("method")


def _leads_to_lines(rows: Sequence[Row], place: int) -> bool:
    """Whether words with a colon stand apart above short lines, and bid nothing: "Next day:"."""
    row, below = rows[place], rows[place + 1]
    apart = row.gap or not row.wraps
    few = apart and row.text.endswith(":") and len(row.text.split()) <= _MOST_OF_A_HEAD
    lines = below.shape == "line" and not below.gap and not is_ingredient(below.text)
    return few and lines and not _bids(row.text.rstrip(" :"), apart=False)


def _paragraph_heads(rows: Sequence[Row]) -> frozenset[int]:
    """Return the places of the words that head the paragraphs below them: "Cocción del membrillo".

    Two or more that bid nothing make heads of them all, "Cocinar a fuego lento" among them.
    """
    short = [at for at in range(len(rows) - 1) if _may_head(rows, at)]
    named = [at for at in short if not _bids(rows[at].text, rows[at + 1].gap or not rows[at].wraps)]
    enough = len(named) >= _LEAST_HEADS and len(named) * 2 >= len(short)
    return frozenset(short) if enough else frozenset()


def _may_head(rows: Sequence[Row], at: int) -> bool:
    """Whether a few words with no sign and no figure stand above a paragraph, apart from others."""
    row, below = rows[at], rows[at + 1]
    apart = at == 0 or row.gap or not row.wraps
    bare = row.text[:1].isupper() and not re.search(r"[\d,;:()]|[.!?…]$", row.text)
    few = row.shape == "line" and len(row.text.split()) <= _MOST_OF_A_HEAD
    return few and apart and bare and below.shape == "line" and is_sentence(below.text)


def _bids(text: str, apart: bool) -> bool:
    """Whether words bid something: by the first of them, or the last where a gap stands below."""
    return begins_to_bid(text) or (apart and ends_in_doing(text))


def _heads_paragraphs(rows: Sequence[Row], place: int) -> bool:
    """Whether a few words that name what is done stand between paragraphs: "Abfüllen"."""
    row, below = rows[place], rows[place + 1 : place + 2]
    told = plain(row.text).split(" ")[0] in words("told_first") | words("told_last")
    ended = place == 0 or bool(re.search(r"[.!?…)]$", rows[place - 1].text))
    follows = bool(below) and below[0].shape == "line" and is_sentence(below[0].text)
    named = row.text[:1].isupper() and not re.search(r"[\d,;:()]", row.text)
    return not row.wraps and ended and follows and named and not told


def _heads_joined(rows: Sequence[Row]) -> list[Row]:
    """Return steps whose number stands at a few words and the sentences below them as one."""
    found: list[Row] = []
    for row in rows:
        above = found[-1] if found else None
        named = (
            above is not None and above.shape == "step" and not re.search(r"[.!?:]$", above.text)
        )
        told = row.shape == "line" and is_sentence(row.text)
        if above and named and told and len(above.text.split()) <= _NAMED:
            found[-1] = replace(above, text=f"{above.text}: {row.text}")
            continue
        aside = row.shape == "line" and not row.gap and _IN_BRACKETS.fullmatch(row.text)
        aside = aside if not names_a_book(row.text) else None
        if above and aside and above.shape != "heading":  # "(this keeps the wick from rising)"
            found[-1] = replace(above, text=f"{above.text} {row.text}")
            continue
        found.append(row)
    return found
