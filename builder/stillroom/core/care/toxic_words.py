"""Poisonous plants that the words of a method name: laid on the food, or put into it.

The plants are staples/toxic_plants.yml. A plant's shape, its wood, its picture, a person or a
French street of its name are not the plant. Leaves out what the list of ingredients holds:
the rules see its tags.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache, lru_cache

from stillroom.core.lines.staple_table import staples_tagged
from stillroom.core.words.patterns import clause_regex
from stillroom.core.words.word_heads import small_letters

_WORD = clause_regex(r"\w+")
_PART = r"(?:\s(?:leaf|leaves|berry|berries|sprigs?|flowers?))?"
# a plant's shape, its wood or its picture is not the plant; "holly on the icing" is
_A_SHAPE = clause_regex(
    rf"\b\w+{_PART}[- ]"
    r"(?:shaped?|cutters?|wood(?:en)?|stencils?|stamps?|motifs?|patterns?|prints?|borders?|designs?"
    r"|scented|patterned|themed|embroidered|ribbons?)\b"
    rf"|\b\w+{_PART}[- ](?:green|red|pink|purple|blue|yellow)"
    r"(?= (?:icing|food|colou?r|ribbon|paper|dye|fondant|felt))"
    r"|\b(?:pipe[ds]?|piping|draw|paint|print|embroider|stitch|carve)\b(?: \w+){0,3}? \w+"
    r"(?: (?:leaf|leaves|berries))?"
    r"(?= (?:in|with|of|on|onto|round|around) (?:\w+ ){0,2}(?:icing|chocolate|food colour|rim|label"
    r"|lid|card|tag|cloth|paper))"
    rf"|\b\w+{_PART} (?:is |are )?(?:painted|drawn|printed|embroidered|stitched|carved|piped)"
    r" (?:on|onto|round|around|along|across|over|in)\b"
    r"|\b(?:yew|holly|box|laburnum)[- ](?:spoons?|bowls?|boards?|spatulas?|platters?)\b"
    r"|\b(?:ivy|heather|rhododendron[- ]free) honey\b|\brue (?:d['’]|(?:de|du|des)\b)"
    r"|\b(?:pictures?|photographs?|drawings?|paintings?|cut-?outs?|shapes?|silhouettes?) of"
    r" (?:an? |the |some )?\w+\b"
    rf"|\b(?:\w+ of the )?\w+{_PART} (?:\w+ )?(?:cut|made|modelled|moulded|shaped|punched|piped)"
    r" (?:out )?(?:of|from|in) (?:\w+ ){0,2}(?:fondant|marzipan|icing|sugar[- ]paste|gum[- ]paste"
    r"|paper|felt|chocolate)\b"
    r"|\b(?:paper|plastic|marzipan|fondant|felt|silk|wooden|artificial|chocolate|icing|fabric"
    r"|sugar[- ]paste) \w+\b",
    re.IGNORECASE,
)


def toxic_plants_in(clauses: Iterable[str]) -> tuple[str, ...]:
    """Return the poisonous plants that clauses name.

    >>> toxic_plants_in(["Lay holly on the icing", "Use holly cutters"])
    ('holly',)
    >>> toxic_plants_in(["Serve on a plate with ivy painted round the rim"])
    ()
    """
    named: set[str] = set()
    told = tuple(clauses)
    for clause in told if _near_names(" ".join(told)) else ():
        near = _near_names(clause)
        if near and _as_word(near).search(clause):
            plain = _A_SHAPE.sub(" ", clause)
            named.update(name for name in near if _as_word((name,)).search(plain))
    return tuple(name for name in _toxic_names() if name in named) if named else ()


def _near_names(clause: str) -> tuple[str, ...]:
    """Return the names that a word of a clause begins: most clauses need no closer look."""
    begun = _by_beginning()
    words = _WORD.findall(small_letters(clause))
    near = {name for word in words for name in begun.get(word, ())}
    return tuple(sorted(near))


@cache
def _by_beginning() -> dict[str, set[str]]:
    """Return the names that a word may begin."""
    begun: dict[str, set[str]] = {}
    for name in _toxic_names():
        for word in _first_words(small_letters(name)):
            begun.setdefault(word, set()).add(name)
    return begun


def _first_words(name: str) -> Iterator[str]:
    """Yield the first word of a name; of one word, in each of the forms that `_as_word` finds."""
    if re.search(r"\W", name):
        yield re.split(r"\W", name)[0]
        return
    leaf, berry = name.removesuffix("leaf"), name.removesuffix("y")
    forms = {name}
    if leaf != name:
        forms |= {f"{leaf}leaf", f"{leaf}leave"}
    if berry != name:
        forms |= {f"{berry}y", f"{berry}ie"}
    for form in forms:
        yield from (form, f"{form}s", f"{form}es")


@cache
def _toxic_names() -> tuple[str, ...]:
    return tuple(name for staple in staples_tagged("toxic") for name in (staple.name, *staple.also))


@lru_cache(maxsize=2048)
def _as_word(names: tuple[str, ...]) -> re.Pattern[str]:
    either = "|".join(_or_many(name) for name in names)
    return re.compile(rf"\b(?:{either})(?:s|es)?\b", re.IGNORECASE)


def _or_many(name: str) -> str:
    """Return the pattern of a name that may end as berries and leaves do."""
    return re.sub(r"y$", "(?:y|ie)", re.sub(r"leaf$", "lea(?:f|ve)", re.escape(name)))
