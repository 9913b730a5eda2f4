"""Poisonous plants that the words of a method name: laid on the food, or put into it.

The plants are staples/toxic_plants.yml. A plant's shape, its wood, its picture and a person of its
name are not the plant. Leaves out what the list of ingredients holds: the rules see its tags.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache

from stillroom.core.lines.staple_table import staples_tagged
from stillroom.core.words.patterns import late_regex

_WORD = late_regex(r"\w+")
_PART = r"(?:\s(?:leaf|leaves|berry|berries|sprigs?|flowers?))?"
# a plant's shape, its wood or its picture is not the plant; "holly on the icing" is
_A_SHAPE = late_regex(
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
    r"|\b(?:ivy|heather|rhododendron[- ]free) honey\b"
    r"|\b(?:pictures?|photographs?|drawings?|paintings?|cut-?outs?|shapes?|silhouettes?) of"
    r" (?:an? |the |some )?\w+\b"
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
    told = [clause for clause in clauses if _may_name(clause) and _any_toxic().search(clause)]
    affirmed = [_A_SHAPE.sub(" ", clause) for clause in told]
    named = [clause for clause in affirmed if _any_toxic().search(clause)]
    return tuple(
        word
        for word in (_toxic_names() if named else ())
        if any(_as_word(word).search(clause) for clause in named)
    )


def _may_name(clause: str) -> bool:
    """Say whether a word of a clause begins a name: most clauses need no closer look."""
    return not clause.isascii() or not _beginnings().isdisjoint(_WORD.findall(clause.lower()))


@cache
def _beginnings() -> frozenset[str]:
    # pattern and name differ in no letter but these, which count as "i" and "s" for both
    plain = (name.lower().replace("ı", "i").replace("ſ", "s") for name in _toxic_names())
    words = (word for name in plain for word in _first_words(name))
    return frozenset(word for word in words if word.isascii())


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


@cache
def _any_toxic() -> re.Pattern[str]:
    return _as_word(*_toxic_names())


def _as_word(*names: str) -> re.Pattern[str]:
    either = "|".join(_or_many(name) for name in names)
    return re.compile(rf"\b(?:{either})(?:s|es)?\b", re.IGNORECASE)


def _or_many(name: str) -> str:
    """Return the pattern of a name that may end as berries and leaves do."""
    return re.sub(r"y$", "(?:y|ie)", re.sub(r"leaf$", "lea(?:f|ve)", re.escape(name)))
