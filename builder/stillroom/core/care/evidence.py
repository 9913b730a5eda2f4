"""What made a condition of a rule hold, put together as its lines are judged.

Leaves out the judging: safety_rules.py.
"""

from __future__ import annotations

from dataclasses import dataclass

from stillroom.core.care.keeping_limits import Limit
from stillroom.core.care.safety_facts import Thing


@dataclass(frozen=True)
class Evidence:
    """What made a condition hold: things of the recipe, words of it, and a keeping limit outrun."""

    things: tuple[Thing, ...] = ()
    also: tuple[Thing, ...] = ()
    words: tuple[str, ...] = ()
    limit: Limit | None = None

    def plus(self, other: Evidence) -> Evidence:
        """Put two together, each thing once."""
        if other is HOLDS:
            return self
        return Evidence(
            _once(self.things + other.things),
            _once(self.also + other.also),
            tuple(dict.fromkeys(self.words + other.words)),
            self.limit or other.limit,
        )


HOLDS = Evidence()
"""What holds, and names nothing."""


def _once(things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    found: dict[tuple[int, str], list[Thing]] = {}  # by line: no thing is compared with all others
    kept: list[Thing] = []
    for thing in things:
        here = found.setdefault((thing.place, thing.item), [])
        if thing not in here:
            here.append(thing)
            kept.append(thing)
    return tuple(kept)
