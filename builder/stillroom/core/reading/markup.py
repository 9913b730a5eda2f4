"""What a recipe's words may not bring into a page: HTML, scripts, pictures from elsewhere.

A recipe is read by strangers, printed, put into a search and into an e-book. It is written in plain
words with Markdown's emphasis, lists and links; anything else is refused where it stands, so that
no page has to decide what it would do. Leaves out what pages do with what is let through.
"""

from __future__ import annotations

import html
import re
from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from types import NoneType
from typing import Any

from pydantic import BaseModel

from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem

# elements of HTML with a name that no kitchen's letter or measure has
_ELEMENTS = (
    "abbr address area article aside audio base bdi bdo blockquote body br button canvas "
    "caption cite code col colgroup data datalist dd del details dfn dialog div dl dt em embed "
    "fieldset figcaption figure font footer form frame frameset h[1-6] head header hr html "
    "iframe img input ins isindex kbd label legend li link main map mark marquee math menu meta "
    "meter nav noembed noscript object ol optgroup option output param picture plaintext portal "
    "pre progress rp rt ruby samp script search section select slot small source span strike "
    "strong style sub summary sup svg table tbody td template textarea tfoot th thead time "
    "title tr track tt ul var video wbr xmp "
)
# "<https://book.example>" and "<me@book.example>" are links in Markdown; "3 < 5" is no mark-up, and
# neither is "pH <pH 4": what is never closed is one only by an element's own name or by an "="
_TAG = late_regex(
    r"<(?!https?://|mailto:|[\w.+-]+@[\w-]+\.)"
    rf"(?:[A-Za-z/!?][^<>]*>|[!?]|/?(?:{'|'.join(_ELEMENTS.split())})(?![\w-])[^<>\n]{{0,40}}"
    r"|[A-Za-z][^<>=]*=[^<>\n]{0,40})",
    re.ASCII | re.IGNORECASE,
)
_TARGET = late_regex(r"(!?)\[[^\]\n]*\](?:\(\s*<?|:\s*<?)([^\s>)]*)")
_ATTRIBUTES = late_regex(
    r"\{:?[^{}\n]*\b(on[a-z]+|style|src|srcset|href|action|formaction|srcdoc)\s*=", re.IGNORECASE
)
_SCHEME = late_regex(r"[a-z][a-z0-9+.-]*:")
_SAFE_SCHEMES = ("http:", "https:", "mailto:", "tel:")
_NOT_SEEN = late_regex(r"[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029\ufeff]")


def find_markup(text: str) -> tuple[str, str] | None:
    """Return what in a text may not stand in a page and how to mend it; None for plain words.

    >>> find_markup("Stir *well*, see [the year](../year.md); 3 < 5.")
    >>> find_markup("<b>Quince</b>")
    ('"<b>" is HTML, and a recipe is plain words.', 'Write "*quince*" to stress a word.')
    """
    if not ("<" in text or "[" in text or "{" in text):
        return None
    if tag := _TAG.search(text):
        what = f'"{_short(tag[0])}" is HTML, and a recipe is plain words.'
        note = tag[0].startswith("<!")
        return what, "Take it out." if note else 'Write "*quince*" to stress a word.'
    for picture, target in _TARGET.findall(text) if "[" in text else ():
        if picture and not is_own(target):
            what = f'The picture "{_short(target)}" would be fetched from another host.'
            return what, "Put it among the book's pictures and name it there."
        if not is_safe_link(target):
            what = f'"{_short(target)}" is no link to a page.'
            return what, 'Write an address that begins with "https://", or a page of the book.'
    if found := _ATTRIBUTES.search(text):
        return f'"{_short(found[0])}" is HTML, and a recipe is plain words.', "Leave it out."
    return None


def is_safe_link(target: str) -> bool:
    """Say whether following a link can do no more than open a page, a letter or a telephone.

    >>> is_safe_link("https://a.example"), is_safe_link("java&#115;cript:alert(1)")
    (True, False)
    """
    scheme = _SCHEME.match(_as_followed(target))
    return scheme is None or scheme[0] in _SAFE_SCHEMES


def is_own(target: str) -> bool:
    """Say whether an address is one of the book's own, so that nobody else is asked for it.

    >>> is_own("pictures/quince.svg"), is_own("//elsewhere.example/a.png")
    (True, False)
    """
    seen = _as_followed(target)
    return not _SCHEME.match(seen) and not seen.replace("\\", "/").startswith("//")


def _as_followed(target: str) -> str:
    """Return an address as a browser takes it: entities read, what is not seen left out."""
    return _NOT_SEEN.sub("", html.unescape(target)).lower()


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:37]}..."


_NOT_WRITTEN = frozenset({"kind", "lines", "file", "slug", "larder", "found", "found_parts"})
"""Parts of a recipe that its writer did not write in it."""


def check_markup(recipe: Recipe, path: Path) -> Iterator[Problem]:
    """Find every word of a recipe that may not stand in a page, with its line in the file."""
    if not any(map(find_markup, _words_within(recipe))):
        return  # of most recipes nobody asks where which word stands
    told = set()
    for place, text in _texts(recipe):
        found = find_markup(text)
        if found and found not in told:
            told.add(found)
            lines = path.read_text(encoding="utf-8-sig", errors="replace").splitlines()
            own = (number for number, line in enumerate(lines, 1) if find_markup(line) == found)
            yield Problem(recipe.file, next(own, recipe.line_of(*place)), *found)


_NO_WORDS = (int, Fraction, NoneType)
_Place = tuple[str | int, ...]


def _words_within(recipe: Recipe) -> Iterator[str]:
    """Return every text within a recipe, in no order."""
    left: list[Any] = [recipe]
    while left:
        value = left.pop()
        if isinstance(value, str):
            yield value
        elif not isinstance(value, _NO_WORDS):
            left += _parts_within(value)


def _parts_within(value: Any) -> Iterable[Any]:
    """Return what a thing holds."""
    made: Any = type(value)
    if names := _parts_of(made):
        return [getattr(value, name) for name in names]
    if isinstance(value, dict):
        return value.values()
    return value if isinstance(value, list | tuple | frozenset) else ()


def _texts(recipe: Recipe) -> Iterator[tuple[_Place, str]]:
    """Return every text within a recipe, and where it stands."""
    left: list[tuple[_Place, Any]] = [((), recipe)]
    while left:
        place, value = left.pop()
        if isinstance(value, str):
            yield place, value
        elif not isinstance(value, _NO_WORDS):
            left += reversed([((*place, name), inner) for name, inner in _within(value)])


def _within(value: Any) -> Iterable[tuple[str | int, Any]]:
    """Return what a thing holds, each by its name or its number."""
    made: Any = type(value)
    if names := _parts_of(made):
        return [(name, getattr(value, name)) for name in names]
    if isinstance(value, dict):
        return [(str(name), inner) for name, inner in value.items()]
    return enumerate(value) if isinstance(value, list | tuple | frozenset) else ()


@cache
def _parts_of(made: type[object]) -> tuple[str, ...]:
    """Return what a thing of a type is made of, as far as the recipe's writer wrote it."""
    if issubclass(made, BaseModel):
        names: Iterable[str] = made.model_fields
    else:
        names = getattr(made, "__dataclass_fields__", ())
    return tuple(name for name in names if name not in _NOT_WRITTEN)


class LenientHTML(HTMLParser):
    """Python's reader of HTML, which takes "<![x" for a remark as browsers do, and never raises."""

    def parse_marked_section(self, i: int, report: int = 1) -> int:
        """Return the end of a section that Python's own reader ends at with an error."""
        return self.parse_bogus_comment(i, bool(report))
