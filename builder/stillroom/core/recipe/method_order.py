"""What a method does between its waits: strained after the first, bottled, and kept after that.

Told as lines of a timeline in the method's own order. Straining and filling before the first wait
is part of the making ("strain the juice into a jar") unless both are done, or the kind only fills.
What is not told stands where the waits leave it: a cure, a brine or a steeping is over before
anything is filled, what matures has been. Leaves out the waits themselves: method_times.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Final, Literal

from stillroom.core.recipe.method_times import Said, sentences_of, times_in_method, total_days
from stillroom.core.recipe.model import MethodStep
from stillroom.core.recipe.wait_words import AFTER, BEFORE_USE, WAITED
from stillroom.core.recipe.waits_elsewhere import eaten_later, places_elsewhere
from stillroom.core.recipe.work_elsewhere import work_elsewhere
from stillroom.core.when.spans import Span, parse_span, tidy
from stillroom.core.when.stages import MILESTONES, Stage, stage_words
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

Act = Literal["strain", "rack", "bottle"]
_ACTS: Final[tuple[Act, ...]] = ("strain", "rack", "bottle")
# a verb begins a sentence or follows another: "the bottle" and "a strainer" do nothing
_DOES: Final = (
    r"(?:^|[,;] ?|& |\b(?:and|then|now|finally|again|later|time|time to|hours|days?|weeks?|months?|"
    r"years?)[, ] ?)(?:(?:and|then|now|finally|carefully) )*"
)
_VESSELS: Final = r"(?:bottles|jars|pots)\b|back into (?:the|its) bottle\b"
_INTO: Final = (
    r"(?:(?!\b(?:and|then)\b)[^.;,]){0,50}?(?:, [^.;,]{1,25},)? ?"
    rf"\b(?:(?:in|into|to)\b[^.;,]{{0,40}}?(?:, [a-z-]+ )?{_VESSELS})"
)
_WORK: Final[dict[Act, re.Pattern[str]]] = {
    "strain": late_regex(
        rf"{_DOES}(?:strain|filter|sieve|drain(?!{_INTO})|"
        r"(?:remove|take out|fish out|lift out|discard) (?:the )?(?:fruit|sloes|berries|peel|zest|"
        r"pods?|herbs|plant|spices|scoby|grains))\b|\bbefore (?:straining|filtering)\b"
    ),
    "rack": late_regex(
        rf"(?:{_DOES}(?:rack|siphon|syphon|draw off)|\bbefore racking|"
        rf"\b(?:should|must|can) (?:now )?be racked)\b(?!{_INTO})"
    ),
    "bottle": late_regex(
        rf"{_DOES}(?:(?:bottle|jar|pot)(?: up)?(?! of\b)\b|"
        r"(?:pour|decant|siphon|syphon|strain|filter|drain|funnel|ladle|spoon|pack|put|transfer|"
        rf"rack|run|return|divide|store|stuff)\b{_INTO}|fill (?:the |your |some |[a-z-]+ ){{0,3}}"
        r"(?:bottles|jars|pots)\b)|\b(?:should|must|can|may|will) (?:now |then )?be (?:now )?"
        rf"(?:bottled|jarred|potted)\b|\bbefore (?:bottling\b|(?:racking|pouring|decanting){_INTO})"
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


# "when 9 months old" counts from the beginning
_OF_AGE: Final = late_regex(r"\b(?:weeks?|months?|years?) old\b", re.IGNORECASE)
_HANGS: Final = late_regex(r"\b(?:hang|hung)\b(?! the (?:jelly )?bag\b)", re.IGNORECASE)
_CURES: Final = late_regex(
    r"\b(?:hang|hung|dry|dried|drying|cur(?:e|ed|ing)|press|smok(?:e|ed|ing)|string|thread|salm[oó]n|"
    r"lax|lachs|saumon)",
    re.IGNORECASE,
)
_SOLID: Final = frozenset({"dry", "cure", "chill", "turn"})
_COOLS: Final = frozenset({"chill", "cool", "set"})
_COOLED_MINUTES: Final = 2 * 24 * 60
_PACK: Final = "pack: 30 minutes"
_LONG_MINUTES: Final = 14 * 24 * 60
_FERMENTED_DAYS: Final = 28


@dataclass(frozen=True, slots=True)
class Course:
    """What a method waits for and does, in its own order: a Said, or what is done between two.

    What `hangs` dries in all its long waits.
    """

    events: tuple[Said | frozenset[Act], ...]
    hangs: bool = False

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
                events.append(one)
            elif events and isinstance(events[-1], frozenset):
                events[-1] |= {one}
            else:
                events.append(frozenset({one}))
    return Course(
        tuple(
            _since_bottled(one, events[:place]) if isinstance(one, Said) else one
            for place, one in enumerate(events)
        ),
        any(_HANGS.search(step.text) for step in steps),
    )


def _one_sentence(sentence: str, said: list[Said]) -> list[Said | Act]:
    """Return the waits and the work of one sentence, in its order."""
    plain, lengths, acts = _told_in(sentence)
    placed: list[tuple[int, Said | Act]] = []
    begin = 0
    for one in said:
        if one.role == "wait" and len(said) == 1 and AFTER.search(plain):
            placed.append((-1, one))  # "strain after ten days"
            continue
        at = next((at for at, span in lengths if span == one.span and not 0 <= at < begin), begin)
        placed.append((at, one))
        begin = max(begin, at + 1)
    placed += acts
    return [one for _, one in sorted(placed, key=lambda pair: pair[0])]


def _told_in(sentence: str) -> tuple[str, tuple[tuple[int, Span], ...], list[tuple[int, Act]]]:
    """Return a sentence as it is read, and the lengths and the work in it by their places."""
    plain = tidy(sentence)
    acts: list[tuple[int, Act]] = [
        (found.start(), act)
        for act, pattern in _WORK.items()
        for found in pattern.finditer(plain)
        if not _NOT_DONE.search(plain[: found.end()].rpartition(" ")[0])
        and not _AT_USE.search(plain[found.end() :])
    ]
    elsewhere, lengths = places_elsewhere(sentence)
    told: list[tuple[int, Act]] = list(work_elsewhere(elsewhere))
    if len(told) > len(acts):
        return elsewhere, lengths, told
    own = tuple(_lengths(plain))
    return (plain, own, acts) if acts or own else (elsewhere, lengths, acts)


def _lengths(plain: str) -> Iterator[tuple[int, Span]]:
    for found in WAITED.finditer(plain):
        try:
            yield found.start(), parse_span("1 day" if found[0] == "overnight" else found["span"])
        except Unreadable:
            continue


def _since_bottled(one: Said, before: Sequence[Said | frozenset[Act]]) -> Said:
    """Return what is "ready in a week" once something was waited for and bottled: a week more."""
    if one.role == "wait" or _OF_AGE.search(one.words):
        return one
    waited = next((i for i, each in enumerate(before) if isinstance(each, Said)), len(before))
    if not any(isinstance(each, frozenset) and "bottle" in each for each in before[waited:]):
        return one
    if one.role == "usable":
        return replace(one, role="wait", word="rest")
    return replace(one, after_bottling=True)


def lines_in_order(
    course: Course, of_kind: tuple[Stage, ...], steeped: bool, living: bool
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
    if done == {"strain"} and not living and any(_is_solid(one) for one in events):
        # the brine runs off a salmon, and it is packed
        events, done = [one for one in events if isinstance(one, Said)], frozenset()
    if done and "bottle" not in done and not (living and _nothing_waits_after_work(events)):
        events = _filled_when_strained(events)
    packed = ""
    if not done and any(one.role == "wait" for one in course.said):
        at = _place_to_fill(events, of_kind, filling, living, course.hangs)
        if at is not None:
            words = filling.word.split(" and ")
            events.insert(at, frozenset({"bottle", *(act for act in _ACTS if act in words)}))
            packed = _PACK if at and (course.hangs or _is_solid(events[at - 1])) else ""
    lines = tuple(
        one.as_written if isinstance(one, Said) else packed or _as_line(one, filling)
        for one in events
    )
    return lines, any(isinstance(one, frozenset) and "bottle" in one for one in events)


def fills_first(course: Course, of_kind: tuple[Stage, ...]) -> bool:
    """Whether nothing is waited for before it is filled, as a kind that puts up has it."""
    lines, _ = lines_in_order(course, of_kind, steeped=False, living=False)
    return not lines or "bottle" in lines[0] or lines[0].startswith("fill")


def _nothing_waits_after_work(events: Sequence[Said | frozenset[Act]]) -> bool:
    last = max(i for i, one in enumerate(events) if isinstance(one, frozenset))
    return not any(one.role == "wait" for one in events[last:] if isinstance(one, Said))


def _filled_when_strained(
    events: list[Said | frozenset[Act]],
) -> list[Said | frozenset[Act]]:
    """Return work and waits with what is strained filled: at once, or once it has stood again."""
    last, acts = [(i, one) for i, one in enumerate(events) if isinstance(one, frozenset)][-1]
    if _nothing_waits_after_work(events):
        return [*events[:last], acts | {"bottle"}, *events[last + 1 :]]
    waited = max(i for i, one in enumerate(events) if isinstance(one, Said) and one.role == "wait")
    return [*events[: waited + 1], frozenset({"bottle"}), *events[waited + 1 :]]


def _place_to_fill(
    events: Sequence[Said | frozenset[Act]],
    of_kind: tuple[Stage, ...],
    filling: Stage,
    living: bool,
    hangs: bool,
) -> int | None:
    """Return where a filling stands that no method tells; None: where its kind has it.

    What its kind puts up at once is filled when its cure or brine is over and before it matures;
    what is strained, once the waiting is over, and what ferments only after four weeks of it.
    """
    waits = [i for i, one in enumerate(events) if isinstance(one, Said) and one.role == "wait"]
    ages = [i for i, one in enumerate(of_kind) if one.role in MILESTONES]
    if of_kind.index(filling) < min(ages, default=0):
        return next(
            (
                i
                for i in waits
                if all(_matures(events[later], hangs) for later in waits if later >= i)
            ),
            waits[-1] + 1,
        )
    said = [one for one in events if isinstance(one, Said)]
    tended = [one.every for one in said if one.role == "wait"][-1]
    if tended or not any(one.role in MILESTONES for one in said):
        return None
    return None if living and total_days(said) < _FERMENTED_DAYS else waits[-1] + 1


def _matures(one: Said | frozenset[Act], hangs: bool) -> bool:
    """Whether a wait is that of a thing put up: "mature for 3 months", "chill overnight"."""
    if not isinstance(one, Said) or _CURES.search(one.words):
        return False
    if one.word in _COOLS and one.span.minutes() <= _COOLED_MINUTES:
        return True  # a terrine sets in its jar
    told = one.word == "mature" or bool(BEFORE_USE.search(one.words)) or eaten_later(one.words)
    return told or (not hangs and one.word == "rest" and one.span.minutes() >= _LONG_MINUTES)


def _is_solid(one: Said | frozenset[Act]) -> bool:
    """Whether what waited is dried or cured: it is packed, and goes into no bottle."""
    return isinstance(one, Said) and (one.word in _SOLID or bool(_CURES.search(one.words)))


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
