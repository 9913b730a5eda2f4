"""The kinds of making and the defaults each brings; the facts are in staples/kinds.yml."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache
from typing import Any, Literal, get_args

from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import nearest
from stillroom.core.words.plurals import singular
from stillroom.core.words.problems import Unreadable

Eater = Literal["people", "pets", "nobody"]
Trait = Literal[
    "steeped",  # in spirit or vinegar
    "living",  # made by yeast or bacteria, that may go on in the bottle
    "drink",  # poured out; its strength counts
    "put up",  # in jars for the shelf
    "loses water",  # boiled or baked, and weighed when done
    "boils sugar",  # to a heat that hangs on the altitude
    "dry",  # measured out without its liquid
    "sweet",  # sucked or chewed: a small child may choke on it
]


@dataclass(frozen=True)
class Kind:
    """One kind: its words, default timeline (word and text), container and card wording."""

    name: str
    many: str
    describes: str
    timeline: tuple[tuple[str, str], ...]
    timeline_source: str
    solids_left_in: bool
    container: str
    contents_heading: str
    keep: str
    mark: str
    eaten_by: Eater = "people"
    called: str = ""
    traits: frozenset[Trait] = frozenset()

    def is_(self, trait: Trait) -> bool:
        """Whether something sets it apart from other kinds."""
        return trait in self.traits

    @property
    def spoken(self) -> str:
        """What a page calls it: the cook's own word, as "jam", or else the kind's name."""
        return self.called or self.name

    @property
    def slug(self) -> str:
        """The name as it stands in addresses and file names."""
        return self.name.replace(" ", "-")

    @property
    def edible(self) -> bool:
        """Whether it is made for people to eat or drink; what is not known to be is not."""
        return self.eaten_by == "people"

    @property
    def is_eaten(self) -> bool:
        """Whether anyone eats it, people or animals."""
        return self.eaten_by != "nobody"


def _traits(name: str, written: Iterable[str]) -> frozenset[Trait]:
    unknown = set(written) - set(get_args(Trait))
    if unknown:
        raise ValueError(f'kinds.yml: "{name}" is {unknown}, which no kind is.')
    return frozenset(written)  # type: ignore[arg-type]


def _read(name: str, row: dict[str, Any]) -> Kind:
    return Kind(
        name=name,
        many=row["many"],
        describes=row["describes"],
        timeline=tuple(next(iter(stage.items())) for stage in row["timeline"]),
        timeline_source=row["timeline_source"],
        solids_left_in=row["solids"] == "left in",
        container=row["container"],
        contents_heading=row["contents_heading"],
        keep=row["keep"],
        mark=row["mark"],
        eaten_by=row.get("eaten_by", "people"),
        traits=_traits(name, row.get("is", ())),
    )


@cache
def all_kinds() -> dict[str, Kind]:
    """Return every kind by name, in the order of the book's chapters."""
    return {name: _read(name, row) for name, row in read_data("kinds.yml").items()}


@cache
def _everyday() -> dict[str, str]:
    """Return the kind of every everyday word that can mean no other."""
    rows = read_data("kinds.yml").items()
    return {word: name for name, row in rows for word in (name, *row.get("also", []))}


_MAY_BE_TWO = "may be two kinds"


@cache
def _asked() -> dict[str, tuple[str, str]]:
    """Return what is wrong with a word that fits two kinds or none well, and what to ask."""
    table = read_data("kind_words.yml")
    found: dict[str, tuple[str, str]] = {}
    for group, why in (("either", _MAY_BE_TWO), ("own", "is no kind of its own")):
        for row in table[group]:
            found |= {word: (why, row["ask"]) for word in row["words"]}
    return found


def _spellings(written: str) -> tuple[str, ...]:
    """Return a word as it may stand in the tables: in small letters, in the singular."""
    spelled = read_data("kind_words.yml")["spelled"]
    lower = " ".join(re.sub(r"[^\w' -]", " ", written.lower().replace("’", "'")).split())
    words = [spelled.get(word, word) for word in lower.split()]
    plain = " ".join(words).removeprefix("a ").removeprefix("an ").removeprefix("the ")
    parted = plain.replace("-", " ")
    alike = [
        one for word in (plain, parted) for one in (word, singular(word), word.removesuffix("s"))
    ]
    return tuple(dict.fromkeys([lower, *alike, *(one.removeprefix("homemade ") for one in alike)]))


def word_of_kind(said: str) -> str:
    """Return which kind an everyday word is, "either" where it may be two, "own" of none; else "".

    >>> [word_of_kind(said) for said in ("Crackers", "cordial", "jerky", "sun")]
    ['bake', 'either', 'own', '']
    """
    for word in _spellings(said):
        if word in _asked():
            return "either" if _asked()[word][0] == _MAY_BE_TWO else "own"
        if word in _everyday() and word not in all_kinds():
            return _everyday()[word]
    return ""


def find_kind(name: str) -> Kind:
    """Return the kind of a name or of an everyday word for it; raises Unreadable with the nearest.

    A word that may be two kinds is asked about, never chosen.

    >>> find_kind("Jams").name, find_kind("Jams").spoken
    ('preserve', 'jam')
    """
    if (found := kind_called(name)) is not None:
        return found
    raise Unreadable(f'"{name}" is not a kind.', _nearest_kind(name, _spellings(name)[0].split()))


def kind_called(name: str) -> Kind | None:
    """Return the kind of a name or of an everyday word for it; None for any other word.

    A word that may be two kinds raises Unreadable. Nothing near is sought, which is slow work.

    >>> kind_called("Jams").name, kind_called("Mondays")
    ('preserve', None)
    >>> kind_called("Pickled beets").name, kind_called("Pickled beets").spoken
    ('preserve', 'pickled beets')
    """
    kinds = all_kinds()
    spellings = _spellings(name)
    for word in spellings:
        if word in kinds:
            return kinds[word]
        if word in _asked():
            why, ask = _asked()[word]
            raise Unreadable(f'"{name}" {why}.', ask)
        if word in _everyday():
            return replace(kinds[_everyday()[word]], called=word)
    words = spellings[0].split()
    table = read_data("kind_words.yml")
    if len(words) > 1 and words[0] in table["put_up"] and words[-1] not in table["put_up_of"]:
        if not all(word.strip("'").isalpha() for word in words):
            return None
        if not {word.strip("'") for word in words}.isdisjoint(table["put_up_not"]):
            raise Unreadable(f'"{name}" is no kind of its own.', _asked()["pickled herring"][1])
        return replace(kinds["preserve"], called=spellings[0])
    by_hand = words and words[0] in table["hand"]
    return replace(kinds["craft"], called=spellings[0]) if by_hand else None


def _nearest_kind(name: str, words: list[str]) -> str:
    kinds = all_kinds()
    bare = {re.sub("(?:'s|s')$", "", word) for word in words}
    if (bare | set(words)) & set(read_data("kind_words.yml")["animals"]):
        return 'Write "kind: pet treat" if animals eat it.'
    for start in range(1, len(words)):  # "blackcurrant jam": what its last words are
        last = " ".join(words[start:])
        for word in _spellings(last):
            if word in _asked():
                return _asked()[word][1]
            if word in _everyday():
                article = "an" if word[:1] in "aeiou" else "a"
                return f'Write "kind: {_everyday()[word]}" if it is {article} {word}.'
    if near := nearest(name, kinds, 0.7):
        return f'Did you mean "{near}"?'
    if like := nearest(name, _everyday(), 0.8):
        return f'Did you mean "{like}"? It is the kind "{_everyday()[like]}".'
    return f"It may be: {', '.join(kinds)}."


def kind_to_try(name: str) -> Kind | None:
    """Return the kind that a word which is none is meant for; None where it could be two."""
    try:
        return find_kind(name)
    except Unreadable as wrong:
        offered = re.findall(r'"(?:kind: )?([a-z ]+)"', wrong.mend)
        fits = {word for word in offered if word in all_kinds()}
        return all_kinds()[fits.pop()] if len(fits) == 1 else None
