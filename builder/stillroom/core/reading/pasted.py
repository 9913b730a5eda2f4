"""Recipes brought in as they stood elsewhere: a letter, a page, a word processor's file.

Says what such a file is and drafts the facts that it lacks from its own words. Leaves out the
reading of the facts: facts_above.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.core.recipe.kinds import kind_called
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable

_LETTER: Final = late_regex(r"(?:From|To|Sent|Date|Subject|Cc|Von|De|An|Betreff|Objet):\s", re.I)
_RTF: Final = late_regex(r"\{\\rtf\d")
_PAGE: Final = late_regex(r"\s*<(?:!doctype|html|\?xml)\b", re.IGNORECASE)
_MAKES: Final = late_regex(
    r"\W*(?:makes|yields?|quantity|serves|servings|ergibt|portionen|dosi|raciones|porties)\b"
    r"\s*(?:about|approximately)?\s*:?\s*(?P<said>(?:about\s+)?\S.*?)(?:[.;!]\s.*|\.)?$",
    re.IGNORECASE,
)
_SIGNS: Final = late_regex(r"^[#>*_=\s]+|[*_=\s:]+$")
_TO_MAKE: Final = late_regex(r"(?:how\s+)?to\s+make\s+(?:an?\s+)?", re.IGNORECASE)
_LONGEST: Final = 80


def refuse_other_papers(lines: Sequence[str], begin: int, name: str) -> None:
    """Refuse what is no plain text of a recipe, saying what it is; raises ProblemsFound."""
    first = lines[begin]
    what = mend = ""
    if _RTF.match(first):
        what = "This is a word processor's own file, not plain text."
        mend = 'Open it there and save it as "plain text", then name it with ".md" again.'
    elif _PAGE.match(first):
        what = "This is a web page as the browser keeps it, not the text of a recipe."
        mend = "Copy the recipe's words out of the page, as you see them there, into an empty file."
    elif _LETTER.match(first) and any(_LETTER.match(line) for line in lines[begin + 1 : begin + 4]):
        what = "This is a letter with its head."
        mend = f'Take out the head and every ">", and begin with the lines {draft_facts(lines)}.'
    if what:
        raise ProblemsFound([Problem(name, begin + 1, what, mend)])


def draft_facts(lines: Sequence[str]) -> str:
    """Return the lines to write above a recipe, as far as its own words give them."""
    title = _title(lines)
    rows = ["---", f"title: {title}", f"kind: {_kind(title)}", f"makes: {_makes(lines)}"]
    if not any(_SIGNS.sub("", line).lower() in _list_names() for line in lines):
        rows.append("ingredients:")  # with one to a line below it
    return ", ".join(f'"{row}"' for row in (*rows, "---"))


def _list_names() -> frozenset[str]:
    return frozenset(read_data("recipe_words.yml")["ingredients"])


def _title(lines: Sequence[str]) -> str:
    for line in lines:
        bare = _SIGNS.sub("", line)
        bare = _TO_MAKE.sub("", bare).rstrip(".")
        if bare and not _LETTER.match(line.strip()) and len(bare) <= _LONGEST:
            return bare.capitalize() if bare.isupper() else bare
    return "Quince ratafia"


def _kind(title: str) -> str:
    """Return the kind that a word of the title names, the last that does."""
    words: list[str] = re.findall(r"[^\W\d_]+", title.lower())
    for word in reversed(words):
        try:
            if kind_called(word) is not None:
                return word
        except Unreadable:
            continue
    return "jam (or liqueur, cookies, soap, whatever it is)"


def _makes(lines: Sequence[str]) -> str:
    for line in lines:
        if found := _MAKES.match(line):
            return str(found["said"])
    return "4 jars of 250 ml (or how much it makes)"
