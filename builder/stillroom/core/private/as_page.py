"""How a giving list is known that is written as a page: below a heading, who is to have what.

Leaves out lists in files for programs (shapes.py, laid_out.py). A page that explains how a list is
written names nobody.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from stillroom.core.private.laid_out import HOUSEHOLD_KEYS, LIST_KEYS
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import CAPITAL

_NO_NAMES: Final = frozenset(
    key.rstrip("s") for key in (*HOUSEHOLD_KEYS, *LIST_KEYS, "giving list")
) | {
    "anybody", "each", "everybody", "everyone", "he", "it", "nobody", "she", "they", "who", "you",
    "allergen", "food", "pet", "price", "trace",
}  # fmt: skip
"""What a page that explains lists has where a list has names."""
_CALLED: Final = r"[^\n:<]{0,24}\bgiving[\s-]{1,3}list\b"
_HEADED: Final = re.compile(
    r"^[ \t]*(?:#{1,6}[ \t]*|<h[1-6][^<>]*>|\*\*|__|(?=[^\n]*\n[ \t]*(?:={3,}|-{3,})[ \t]*$)"
    # what opens a box, a fold or a tab of a page, by its title
    rf"|(?:!!!|\?\?\?\+?|===[!+]?)[ \t]+[\w \t]*[\"']){_CALLED}[^\n:<]{{0,24}}"
    rf"|\A\s*{_CALLED}[^\n:<.]{{0,24}}$",
    re.IGNORECASE | re.MULTILINE,
)
"""A heading of a page that is called a giving list."""
_ROW: Final = re.compile(
    r"^[ \t]*(?:(?:[-*+|>]|\d+[.)]|#{2,6}|<(?:li|p|dt|tr|td|h[2-6]|b|strong)\b[^<>]*>"
    r"|\[[ xX]?\])[ \t]*)*[ \t*_]*"
    rf"(?P<who>{CAPITAL}[^\n:–—|<>(]{{1,60}}?)[*_]*"
    r"(?:[ \t]*(?:[:–—|]|\((?![A-Z]{2,4}\) (?:No\.? )?\d+/\d))|[ \t]-+[ \t]|</?\w+>|\n{1,2})"
    r"(?P<said>[^\n]{2,200})$",
    re.MULTILINE,
)
"""A line that names somebody and says more; "Regulation (EU) 1169/2011" names an act."""
_SAID_OF_SOMEBODY: Final = re.compile(
    r"\b(?:no [a-z]+s\b|without|allerg\w*|avoids?|vegans?|vegetarians?|coeliac|celiac|halal"
    r"|kosher|by post|posted|collects?|(?:small|large|big|medium) (?:basket|one)|adults?"
    r"|(?<=- )baskets?(?=:)|child|children|kids|pregnant|diabetic|lactose|gluten)\b",
    re.IGNORECASE,
)
"""What is said of a household beside its name, where a list is written as a page."""
_SENTENCE: Final = re.compile(
    r"(?P<who>\b[A-Z][\w'’-]+(?: (?:and |& )?[A-Z][\w'’-]+){0,5}) "
    r"(?:gets?|receives?|will (?:get|have)|(?:is|are) getting|is to have) (?P<said>[^.\n]{3,200})"
)
_TITLES: Final = (
    r"(?:h[1-6]|summary|caption|figcaption|legend|label(?= for=.?__tab))\b[^<>]{0,400}"
    r"|p(?= [^<>]{0,200}\btitle\b)[^<>]{0,400}"
)
_TITLE: Final = re.compile(
    rf"<(?:{_TITLES})>(?:[^<]|<(?!/?(?:h[1-6]|\w*caption|summary|legend|label|p|li|[duo]l|div|t\w+)"
    r"\b)){0,600}",
    re.IGNORECASE,
)
"""What stands over a part of a page, whatever marks are in it."""
_BLOCK: Final = re.compile(
    rf"<(?P<head>{_TITLES})>|</?(?:li|dt|tr|p|ul|ol|dl|table|div|br|h[1-6]|w:p|text:p|text:h)"
    r"\b[^<>]{0,400}>",
    re.IGNORECASE,
)
_BEHIND_NAME: Final = re.compile(r"</(?:b|strong|em|i|td|th)>", re.IGNORECASE)
_MARKS: Final = r"(?:<[^<>]{0,400}>)*"
_LIST_NAMED: Final = re.compile(
    rf"{_MARKS.join('giving')}(?:[\s_-]|&#?\w{{1,8}};|<[^<>]{{0,400}}>){{0,9}}"
    rf"(?:{_MARKS.join('list')}|{_MARKS.join('log')})"
)
"""What a list is called, whatever marks a page has between its letters."""
_BASKET_KEY: Final = re.compile(r"baskets?[\"']?\s{0,9}(?:[<:=–—|-]|$)", re.MULTILINE)
_TAG: Final = re.compile(r"<[^<>]{0,4000}>")


def find_page(text: str) -> int:
    r"""Return the line of a heading under which two or more are named with what is said of them.

    >>> find_page("# Giving list\n\n- Jo and Sam: no nuts\n- Nan – by post, small basket\n")
    1
    >>> find_page("# The giving list\n\n- Avoid: what they avoid\n- Basket: which, by post\n")
    0
    """
    for laid in (text, _as_lines(text)) if "<" in text else (text,):
        head = _HEADED.search(laid)
        if head and len(set(_told_below(laid, head.end()))) >= 2:
            begin = text.lower().find(head[0].strip(" \t\n#*_=-<>").lower()[-12:])
            return text.count("\n", 0, max(begin, 0)) + 1
    return 0


def _told_below(text: str, at: int) -> Iterator[str]:
    """Return who is named below a heading with what is said of them."""
    for rows in (_ROW, _SENTENCE):
        for row in rows.finditer(text, at):
            who = " ".join(row["who"].lower().split())
            told = _SAID_OF_SOMEBODY.search(row["said"]) and who.rstrip("s") not in _NO_NAMES
            if told and _may_name(row["who"]):
                yield who


def _as_lines(text: str) -> str:
    """Return the words of a page or a letter, each heading and each part on a line of its own."""
    broken = _TITLE.sub(lambda found: _unmarked(found[0]), text)
    broken = _BEHIND_NAME.sub(" – ", broken)
    broken = _BLOCK.sub(lambda found: "\n# " if found["head"] else "\n", broken)
    return "\n".join(filter(None, map(str.strip, _TAG.sub(" ", broken).split("\n"))))


def _unmarked(title: str) -> str:
    """Return a title's tag and its words without the tags among them."""
    tag, _, words = title.partition(">")
    return f"{tag}>{_TAG.sub('', words)}"


def may_show_list(page: str) -> bool:
    """Say whether what a page of the book shows may be a list: only then is it looked at closely.

    All that its file says was looked at before; what is sought is what only the finished page has.

    >>> may_show_list("<h1>Giving <b>list</b></h1>"), may_show_list("<p>A giving day. A list.</p>")
    (True, False)
    >>> [may_show_list(f"<td>{said}</td>") for said in ("Basket", "Basket: big", "A basket, too.")]
    [True, True, False]
    """
    lowered = page.lower()
    for basket in _BASKET_KEY.finditer(lowered) if "basket" in lowered else ():
        before = lowered[max(0, basket.start() - 9) : basket.start()].rstrip()
        if not before[-1:].isalnum():
            return True
    return _LIST_NAMED.search(lowered) is not None


def _may_name(said: str) -> bool:
    """Say whether what stands before a colon may call a household: it has no words of a sentence.

    >>> [_may_name(said) for said in ("Nan and Grandpa", "The Ashes next door", "A household has")]
    [True, True, False]
    """
    beside = read_data("list_names.yml", "private")["beside names"]
    words = re.findall(r"[^\W\d_]+", said)
    return len(words) <= 7 and all(word[0].isupper() or word in beside for word in words)
