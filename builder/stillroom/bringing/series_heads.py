"""How books, leaflets and pages set the head of a recipe, as one line or run in at its paragraph.

"=Fig Jam.=", "_Quinces, to preserve._", "QUINCE JELLY.", "395. _To pickle_ SHRIMPS.", a line in the
middle of the page; "CURAÇAO.--Take …", "R. 141. Aardbeiensaus. De helft …". Each is answered from
the line and those beside it. Leaves out which of them part a paper: series.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.afterwords import is_name
from stillroom.bringing.bylines import is_addressed
from stillroom.bringing.found import Row
from stillroom.bringing.heads import counts_stage, section_of
from stillroom.bringing.list_parts import FOR_A_PART
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.old_books import PARTS
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_counted_title,
    is_ingredient,
    is_passed,
    is_title,
)
from stillroom.bringing.titles import writer_of
from stillroom.core.words.patterns import late_regex

_MOST_WORDS: Final = 9
_LONGEST: Final = 76
_MOST_STOPPED: Final = 3
"""Words of a plain line with a stop behind it that may be a head: "Spruce beer."."""
_LEAST_CAPITALS: Final = 4
_CENTRED: Final = 8
"""Blanks before a line, from which on it stands in the middle of a page."""
_NO: Final = r"(?:\s?,?\s?(?:No|Nr|N[°º])\.?\s?\d{1,3}\.?)?"
# "=Orange Marmalade--No. 1.=", "_Ramaquins._ No. 2."
_MARKED: Final = late_regex(
    rf"(?P<sign>[=_])(?P<title>[^=_]{{3,70}}?)[.:]?(?P=sign)[.:]?(?P<no>{_NO})[.:]?"
)
# "LICOR DE MENTA.--Póngase", "To preserve Quinces.—Take", "_Strawberry Vinegar_--Is made"
_DASHED: Final = late_regex(
    r"(?P<title>_[^_]{3,60}_|=[^=]{3,60}=|[^\W\d_][^.!?;:_]{2,60}?)(?P<stop>[.:]?)_?\s?(?:--+|[—–])\s?(?=[A-ZÀ-Ý0-9])(?P<rest>\S.*)",
    re.DOTALL,
)
# "R. 141. Aardbeiensaus. De helft", "395. _To pickle_ SHRIMPS.", "1# Berlinerkranser"
_NUMBERED: Final = late_regex(
    r"(?:(?P<mark>[A-Z]{1,3})\.\s?)?(?P<number>\d{1,4})\s?(?P<sign>[.):#])\s+(?P<rest>\S.*)",
    re.DOTALL,
)
# "Herbed Vinegars: Herbed vinegars add flavour to salads and vegetables."
_COLON: Final = late_regex(
    r"(?P<title>[A-ZÀ-Ý][^.!?:;,\d]{3,40}):\s+(?P<rest>[A-ZÀ-Ý]\S*\s(?:\S+\s){7}.*)", re.DOTALL
)
# "34. =Frittelle di mele.= — Mondate le mele"
_MARKED_IN: Final = late_regex(
    r"(?P<sign>[=_])(?P<title>[^=_]{3,70}?)[.:]?(?P=sign)[.:]?\s?(?:--+|[—–])\s?(?=[A-ZÀ-Ý0-9])(?P<rest>\S.*)",
    re.DOTALL,
)
_RUN_IN: Final = late_regex(
    r"(?P<title>[^.!?;]{3,60}(?:\s\([^()]{2,40}\))?)\.\s+(?P<rest>[(A-ZÀ-Ý]\S*\s.*)", re.DOTALL
)
# "VANILLA TAFFY. MRS. EDWARD E. POWERS."
_AND_NAME: Final = late_regex(r"(?P<title>[^.!?;:]{3,60})\.\s+(?P<who>\S.{2,50}?)\.?")
# "Apelsinlingon - gott till vilt och annat kött": what a title is told with
_AND_TOLD: Final = late_regex(
    r"(?P<title>[^\W\d][^.!?:;]{2,50}?)\s+[-–—]\s+(?P<said>[a-zà-ÿ]\S*(?:\s\S+){2,14})"
)
_COUNT: Final = late_regex(rf"{_NO}$")
_STOP: Final = late_regex(r"[.:]$")
_ENDED: Final = late_regex(r"[.!?:;)\]”\"*]_?$|^[\W_]+$")
_SHOUTED: Final = late_regex(r"\b[A-ZÀ-Ý]{4,}\b")
_TO_MAKE: Final = late_regex(r"to\s+make\s+(?:an?\s+)?(?=\w)", re.IGNORECASE)


@dataclass(frozen=True)
class Head:
    """A line that may head a recipe: where it stands, how it is set, and what it names.

    `number` is the one it is counted by, 0 for none; `told` what runs on behind it on its line,
    `writer` whose it says it is.
    """

    at: int
    form: str
    title: str
    number: int = 0
    told: str = ""
    writer: str = ""


def heads_at(rows: Sequence[Row], at: int) -> list[Head]:
    """Return how a row may be read as the head of a recipe: no way, one, or two.

    >>> text = ("=Fig Jam.=", "CURAÇAO.--Stir it.", "395. _To pickle_ SHRIMPS.", "QUINCE JELLY.")
    >>> found = [heads_at([Row(one, gap=True), Row("Boil it.")], 0)[0] for one in text]
    >>> [(one.form, one.title) for one in found[:3]]
    [('=', 'Fig Jam'), ('dash capitals', 'CURAÇAO'), ('number', 'To pickle shrimps')]
    >>> (found[3].form, found[3].title), heads_at([Row("1 lb sugar", gap=True), Row("Boil.")], 0)
    (('capitals', 'QUINCE JELLY'), [])
    """
    row = rows[at]
    if row.shape not in ("line", "step", "heading") or not _opens(rows, at):
        return []
    text = row.text.strip()
    run_in = (_dashed(at, text), _numbered(at, text), _with_colon(at, text))
    alone = (_marked(at, text), _alone(rows, at, text)) if at + 1 < len(rows) else ()
    read = (one for one in (*run_in, *alone) if one is not None)
    return [one for one in read if _may_name(one.title) and (one.told or at + 1 < len(rows))]


def below_other_ways(rows: Sequence[Row]) -> set[int]:
    """Return the headings below one of ways to vary a recipe: "Variations", and lower ones."""
    found: set[int] = set()
    level = 0
    for at, row in enumerate(rows):
        if row.shape != "heading":
            continue
        if level and row.level > level:
            found.add(at)
        else:
            level = row.level if section_of(row.text) == "aside" else 0
    return found


def _opens(rows: Sequence[Row], at: int) -> bool:
    """Whether a row opens a paragraph: behind a gap, or behind a line that has an end.

    The first words of a page end without one: "Various pickles" above "PICKLED BEETS".
    """
    above = rows[at - 1] if at else None
    if above is None or rows[at].gap or above.shape in ("heading", "row", "item"):
        return True
    if is_passed(above.text):  # "image660", where a page has a picture
        return True
    first = at == 1 and len(above.text.split()) <= _MOST_WORDS
    return bool(_ENDED.search(above.text)) or is_ingredient(above.text) or first


def _marked(at: int, text: str) -> Head | None:
    found = _MARKED.fullmatch(text)
    if found is None:
        return None
    title = f"{found['title'].strip(' .')}{_count(found['no'])}".replace("--", ", ")
    return Head(at, found["sign"], title)


def _count(said: str) -> str:
    number = said.strip(" ,.")
    return f", {number}" if number else ""


def _dashed(at: int, text: str) -> Head | None:
    found = _DASHED.match(text)
    if found is None or not (found["stop"] or found["title"].isupper() or text[:1] in "_="):
        return None
    title = found["title"].strip("_= .,")
    form = "capitals" if title.isupper() else "slanted" if text[:1] in "_=" else "plain"
    return Head(at, f"dash {form}", _named(title), told=found["rest"].strip())


def _numbered(at: int, text: str) -> Head | None:
    found = _NUMBERED.fullmatch(text)
    if found is None:
        return None
    rest, number, mark = found["rest"].strip(), int(found["number"]), found["mark"] or ""
    if (marked := _MARKED_IN.match(rest)) is not None:
        return Head(at, "number marked", _named(marked["title"]), number, marked["rest"].strip())
    run = _RUN_IN.fullmatch(rest)
    if run and mark:
        return Head(at, f"number {mark}", _named(run["title"]), number, run["rest"])
    title = _named(_STOP.sub("", rest))
    return None if run else Head(at, f"number {mark}".strip(), title, number)


def _with_colon(at: int, text: str) -> Head | None:
    found = _COLON.fullmatch(text)
    return Head(at, "colon", found["title"], told=found["rest"]) if found else None


def _alone(rows: Sequence[Row], at: int, text: str) -> Head | None:
    """Return the head that a short line alone is: in capitals, set in the middle, or plain."""
    bare = _STOP.sub("", text).strip()
    if "(" in bare and ")" not in bare:  # a machine that read the page lost it
        bare = f"{bare})"
    writer = ""
    if (both := _AND_NAME.fullmatch(text)) and text.isupper() and _is_somebody(both["who"]):
        bare, writer = both["title"], in_small(both["who"])
    if len(re.sub(r"[\W\d_]", "", bare)) < _LEAST_CAPITALS:
        return None
    if _COUNT.sub("", bare).isupper():  # "CHOCOLATE CREAMS, No. 1"
        return Head(at, "capitals", bare, writer=writer)
    centred = rows[at].indent >= _CENTRED and rows[at + 1].indent < rows[at].indent
    if centred and not bare[:1].islower():
        return Head(at, "centred", bare)
    listed = at > 0 and not rows[at].gap and is_ingredient(rows[at - 1].text)
    if rows[at].shape == "step" or listed:  # "Vanilla flavoring.", amid a list
        return None
    form = f"heading {rows[at].level}" if rows[at].shape == "heading" else "plain"
    if told := _AND_TOLD.fullmatch(text):
        return Head(at, form, told["title"], told=f"{told['said'][:1].upper()}{told['said'][1:]}")
    named = is_title(bare) and (text[-1] != "." or len(text.split()) <= _MOST_STOPPED)
    return Head(at, form, bare) if named else None


def _is_somebody(said: str) -> bool:
    return is_addressed(said) or is_name(in_small(said))


def in_small(name: str) -> str:
    """Return a name that is printed in capitals as names are written: "MRS. NED VANE".

    >>> in_small("MRS. NED VANE"), in_small("Mrs. R. McNeil")
    ('Mrs. Ned Vane', 'Mrs. R. McNeil')
    """
    return name.title() if name.isupper() else name


def _named(title: str) -> str:
    """Return a title without stress and "To make", what is shouted amid it said quietly.

    >>> _named("_To make_ COWSLIP WINE"), _named("_To pickle_ WALNUTS _green_.")
    ('COWSLIP WINE', 'To pickle walnuts green')
    """
    bare = _TO_MAKE.sub("", title.replace("_", "").strip(" .:"), count=1)
    if bare.isupper():
        return bare
    quiet = _SHOUTED.sub(lambda found: found[0].lower(), bare)
    return quiet[:1].upper() + quiet[1:]


def _may_name(title: str) -> bool:
    """Whether words may name a recipe: few, no part's name, no fact, nobody's name."""
    few = 0 < len(re.sub(r"\([^()]*\)", "", title).split()) <= _MOST_WORDS
    if not few or len(title) > _LONGEST or title[:1].islower():
        return False
    if not (title[:1].isalpha() or is_counted_title(title)):
        return False
    if section_of(title) is not None or counts_stage(title) or FOR_A_PART.match(title):
        return False
    if title.capitalize() in PARTS or "--" in title:
        return False
    fact = is_passed(title) or is_only_makes(title)
    amount = begins_with_amount(title) and not (title.isupper() and title[:1].isalpha())
    fact = fact or (amount and not is_counted_title(title))
    return not (fact or writer_of(title) or is_addressed(title))
