"""What a method does between its waits: strained after the first, bottled, and kept after that.

Told as lines of a timeline in the method's own order. Straining and filling before the first wait
is part of the making ("strain the juice into a jar") unless both are done, or the kind only fills.
Leaves out the waits themselves: method_times.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final, Literal

from stillroom.core.recipe.method_times import Said, sentences_of, times_in_method
from stillroom.core.recipe.model import MethodStep
from stillroom.core.recipe.wait_words import AFTER, WAITED
from stillroom.core.when.spans import parse_span, tidy
from stillroom.core.when.stages import MILESTONES, Stage, stage_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

Act = Literal["strain", "rack", "bottle"]
_ACTS: Final[tuple[Act, ...]] = ("strain", "rack", "bottle")
# a verb begins a sentence or follows another: "the bottle" and "a strainer" do nothing
_DOES: Final = (
    r"(?:^|[,;] ?|\b(?:and|then|now|finally|again|later|days|weeks|months|year|years)[, ] ?)"
    r"(?:(?:and|then|now|finally|carefully) )*"
)
_VESSELS: Final = r"(?:bottles|jars|pots)\b|back into (?:the|its) bottle\b"
_INTO: Final = (
    rf"(?:(?!\b(?:and|then)\b)[^.;,]){{0,50}}?\b(?:(?:in|into|to)\b[^.;,]{{0,40}}?{_VESSELS})"
)
_WORK: Final[dict[Act, re.Pattern[str]]] = {
    "strain": late_regex(
        rf"{_DOES}(?:strain|filter|sieve|drain(?!{_INTO})|"
        r"(?:remove|take out|fish out|lift out|discard) (?:the )?(?:fruit|sloes|berries|peel|zest|"
        r"pods?|herbs|plant|spices|scoby|grains))\b"
    ),
    "rack": late_regex(rf"{_DOES}(?:rack|siphon|syphon|draw off)\b(?!{_INTO})"),
    "bottle": late_regex(
        rf"{_DOES}(?:(?:bottle|jar|pot)(?: up)?(?! of\b)\b|"
        r"(?:pour|decant|siphon|syphon|strain|filter|drain|funnel|ladle|spoon|pack|put|transfer|"
        rf"rack|run|return|divide)\b{_INTO}|fill (?:the |your |some |[a-z-]+ ){{0,3}}"
        r"(?:bottles|jars|pots)\b)"
    ),
}
_NOT_DONE: Final = late_regex(
    r"(?:\b(?:not|never|n['’]t|without|no need to)\b[^.;,]{0,15}$)|\bif\b[^.;,]{0,40}$"
)
# done when it is used, not when it is made
_AT_USE: Final = late_regex(
    r"^(?:(?!\band\b|\bthen\b)[^.,;]){0,30}\b(?:when(?:ever)? "
    r"(?:you|it|serving|using|needed|wanted)|before (?:serv|us|drink|pour)|"
    r"as (?:you )?(?:need|want)|to serve)"
)


@dataclass(frozen=True, slots=True)
class Course:
    """What a method waits for and does, in its own order: a Said, or what is done between two."""

    events: tuple[Said | frozenset[Act], ...]

    @property
    def said(self) -> tuple[Said, ...]:
        """Only what it waits for."""
        return tuple(one for one in self.events if isinstance(one, Said))

    @property
    def ends_in_work(self) -> bool:
        """Whether it is strained or bottled when it has waited."""
        return bool(self.events) and not isinstance(self.events[-1], Said)


@lru_cache(maxsize=1024)
def course_of(steps: tuple[MethodStep, ...]) -> Course:
    """Return what a method waits for and does; an age told after the bottling counts from there."""
    said = times_in_method(steps)
    events: list[Said | frozenset[Act]] = []
    for place, (sentence, _, _) in enumerate(sentences_of(steps)):
        for one in _one_sentence(sentence, [each for each in said if each.place == place]):
            if isinstance(one, Said):
                events.append(_since_bottled(one, events))
            elif events and isinstance(events[-1], frozenset):
                events[-1] |= {one}
            else:
                events.append(frozenset({one}))
    return Course(tuple(events))


def _one_sentence(sentence: str, said: list[Said]) -> list[Said | Act]:
    """Return the waits and the work of one sentence, in its order."""
    plain = tidy(sentence)
    placed: list[tuple[int, Said | Act]] = []
    begin = 0
    for one in said:
        if one.role == "wait" and len(said) == 1 and AFTER.search(plain):
            placed.append((-1, one))  # "strain after ten days"
            continue
        begin = next((at for at, words in _spans(plain) if at >= begin and words == one), begin)
        placed.append((begin, one))
        begin += 1
    placed += [
        (found.start(), act)
        for act, pattern in _WORK.items()
        for found in pattern.finditer(plain)
        if not _NOT_DONE.search(plain[: found.end()].rpartition(" ")[0])
        and not _AT_USE.search(plain[found.end() :])
    ]
    return [one for _, one in sorted(placed, key=lambda pair: pair[0])]


@dataclass(frozen=True, slots=True)
class _Length:
    """A length of time as written, equal to what was said with it."""

    words: str

    def __eq__(self, other: object) -> bool:
        try:
            return isinstance(other, Said) and parse_span(self.words) == other.span
        except Unreadable:
            return False

    def __hash__(self) -> int:
        return hash(self.words)


def _spans(plain: str) -> Iterator[tuple[int, _Length]]:
    return ((found.start(), _Length(found["span"])) for found in WAITED.finditer(plain))


def _since_bottled(one: Said, before: Sequence[Said | frozenset[Act]]) -> Said:
    """Return what is "ready in a week" once something was waited for and bottled: a week more."""
    if one.role == "wait":
        return one
    waited = next((i for i, each in enumerate(before) if isinstance(each, Said)), len(before))
    if not any(isinstance(each, frozenset) and "bottle" in each for each in before[waited:]):
        return one
    if one.role == "usable":
        return replace(one, role="wait", word="rest")
    return replace(one, after_bottling=True)


def lines_in_order(
    course: Course, of_kind: tuple[Stage, ...], steeped: bool
) -> tuple[tuple[str, ...], bool]:
    """Return the lines of a course, and whether the kind's own filling is among them.

    Where it is not, the kind's line stays in its own place.
    """
    events: list[Said | frozenset[Act]] = list(course.events)
    filling = next((one for one in of_kind if one.role in ("strain", "bottle")), None)
    if filling is None:
        return tuple(one.as_written for one in course.said), True
    if events and isinstance(events[0], frozenset):
        both = len(events[0]) > 1 and "bottle" in events[0]
        if not both and (steeped or "bottle" not in events[0] or _fills_later(events[1:])):
            events = events[1:]
    done = frozenset().union(*(one for one in events if isinstance(one, frozenset)))
    if done and "bottle" not in done and filling.word.startswith("strain"):
        # what is strained is bottled, at once where nothing is waited for in between
        last, acts = [(i, one) for i, one in enumerate(events) if isinstance(one, frozenset)][-1]
        if all(one.role in MILESTONES for one in events[last + 1 :] if isinstance(one, Said)):
            events[last] = acts | {"bottle"}
        else:
            events.append(frozenset({"bottle"}))
        done |= {"bottle"}
    lines = tuple(
        one.as_written if isinstance(one, Said) else _as_line(one, filling) for one in events
    )
    return lines, "bottle" in done


def _fills_later(events: Sequence[Said | frozenset[Act]]) -> bool:
    return any(isinstance(one, frozenset) and "bottle" in one for one in events)


def _as_line(acts: frozenset[Act], filling: Stage) -> str:
    """Return work as a line of a timeline: the kind's own where it is the same work."""
    known = stage_words()
    fill = "fill" if filling.word == "fill" else "bottle"
    words = [fill if act == "bottle" else act for act in _ACTS if act in acts]
    if " and ".join(words) == filling.word:
        return f"{filling.word}: {filling.text}"
    return f"{' and '.join(words)}: {sum(known[word].minutes for word in words)} minutes"
