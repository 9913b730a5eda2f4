"""The words by which each language bids, tells and is known: work.yml as known_work.py asks it.

Leaves out what they make of a line.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from stillroom.bringing.accents import without_accents
from stillroom.bringing.heads import words
from stillroom.core.words.plain_yaml import read_plain


@dataclass(frozen=True)
class Tongue:
    """How one language bids: the forms that do, those that need company, what stands before."""

    own: frozenset[str]
    starts: frozenset[str]
    nouns: frozenset[str]
    joins: frozenset[str]
    named: frozenset[str]
    leads: frozenset[str]
    ones: frozenset[str]
    bids: frozenset[str]
    weak: frozenset[str]
    done: frozenset[str]
    tellers: frozenset[str]
    had: frozenset[str]
    was: frozenset[str]
    eases: frozenset[str]
    makes: frozenset[str]
    pairs: frozenset[str]
    aims: frozenset[str]
    aimed: frozenset[str]
    lets: frozenset[str]
    whose: frozenset[str]
    past: tuple[str, ...]
    anywhere: bool
    capitals: bool
    plural: str
    before: tuple[str, ...]
    clitics: tuple[str, ...]


@cache
def _data() -> dict[str, Any]:
    text = (Path(__file__).parent / "work.yml").read_text(encoding="utf-8")
    found: dict[str, Any] = read_plain(text)
    return found


@cache
def tongue_of(name: str) -> Tongue:
    """Return how one language bids and tells."""
    own = _data()[name]
    bids: set[str] = set()
    weak: set[str] = set()
    done: set[str] = set()
    for group in own["groups"]:
        ends = ["" if one == "-" else one for one in str(group["ends"]).split()]
        into = done if group.get("done") else bids
        into.update(f"{stem}{end}" for stem in str(group["stems"]).split() for end in ends)
        few = str(group.get("weak", "")).split()
        weak.update(f"{stem}{end}" for stem in few for end in ends)
    many = {
        key: frozenset(str(own.get(key, "")).split())
        for key in (
            "own",
            "starts",
            "nouns",
            "joins",
            "named",
            "leads",
            "ones",
            "tellers",
            "had",
            "was",
            "eases",
            "makes",
            "pairs",
            "aims",
            "aimed",
            "lets",
            "whose",
        )
    }
    return Tongue(
        **many,
        bids=frozenset(one for one in bids if len(one) > 1) - weak,
        weak=frozenset(weak),
        done=frozenset(done),
        past=tuple(str(own.get("past", "")).split()),
        anywhere=bool(own.get("anywhere")),
        capitals=bool(own.get("capitals")),
        plural=str(own.get("plural", "-")),
        before=tuple(str(own.get("before", "")).split()),
        clitics=tuple(str(own.get("clitics", "")).split()),
    )


@cache
def small_of(name: str) -> frozenset[str]:
    """Return the small words by which one language is known."""
    return frozenset(str(_data()[name]["small"]).split())


@cache
def words_under(which: str) -> frozenset[str]:
    """Return the words of one list of all languages: of furniture, people or vessels."""
    own = frozenset(str(_data()[which]).split())
    if which != "vessels":
        return own
    return own | {without_accents(one) for key in ("tool_last", "tool_first") for one in words(key)}
