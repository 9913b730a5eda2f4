"""The lengths of time that a method itself names: "leave to steep for 3 weeks", "in six months".

Only what is waited for counts, a half day or longer: "simmer for 20 minutes" is work, "keeps for a
year" says how it keeps, "every 3 days" how often. Where a recipe states no timeline, its dates are
those of its kind; these words are then held against them. Leaves out dates: timeline.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import zip_longest
from typing import Final

from stillroom.core.recipe.days_headed import NUMBERED_DAY, Calendar
from stillroom.core.recipe.model import MethodStep
from stillroom.core.recipe.rhythms import as_one_wait, how_often
from stillroom.core.recipe.said_times import Role as Role
from stillroom.core.recipe.said_times import Said as Said
from stillroom.core.recipe.wait_words import (
    AFTER,
    AND_NIGHT,
    ASIDE,
    BARE_WAIT,
    BEFORE_USE,
    BEGINS,
    BRIEFLY,
    EATEN_WITHIN,
    ELSE,
    EVERY,
    FIRST,
    FIRST_WEEK_BEFORE,
    GOES_ON,
    IF,
    IF_YOU_CAN,
    KEEPS,
    LAST_PART,
    MEANT,
    MORE_TIME,
    NEXT_DAY,
    NO_LONGER,
    NOT_BEFORE,
    ON_A_SHELF,
    ONE_MORE,
    OR_A_NIGHT,
    OVER_THE_NEXT,
    READY,
    READY_IN,
    SHORT,
    SHORTENED,
    SO_MANY_MORE,
    STOPPED,
    STORED,
    TENDED,
    TENS,
    THEN,
    TILL,
    UP_TO,
    VERB,
    WAITED,
    WAITS,
    WARNED,
    WORKED,
)
from stillroom.core.recipe.waits_elsewhere import rhythm_elsewhere, waits_elsewhere
from stillroom.core.when.spans import Span, parse_span, tidy
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

SHORTEST_MINUTES: Final = 12 * 60
_DAY: Final = 24 * 60
_A_WEEK: Final = 7 * _DAY
_SENTENCE: Final = late_regex(r"(?<=[.;!?])\s+|[:;]\s+")


@lru_cache(maxsize=1024)
def times_in_method(steps: tuple[MethodStep, ...]) -> tuple[Said, ...]:
    """Return what a method says of waiting, in its own order."""
    found: list[Said] = []
    told, in_words = sentences_of(steps), _with_names(steps)
    latest, rhythm = -2, ("", "")
    calendar = Calendar()
    for place, (sentence, number, line) in enumerate(told):
        after = told[place + 1][0] if place + 1 < len(told) else ""
        said = list(_in_sentence(sentence, number, line, after))
        said = said or list(_implied(sentence, number, line, found))
        said = said or list(_in_other_words(sentence, number, line, found))
        said = said or list(_bare(sentence, number, line, after))
        # "leave for two months. Shake it once a week.", and the other way round
        if said and rhythm[1]:
            first = said[0]
            if first.role == "usable" and not any(one.role == "wait" for one in found):
                said.insert(0, replace(first, role="wait", word="rest"))
            said[0] = _tended(said[0], *rhythm)
        rhythm = ("", "") if said else _rhythm_alone(sentence)
        if rhythm[1] and latest == place - 1:
            tended = _tended(found[-1], *rhythm)
            rhythm = rhythm if tended == found[-1] else ("", "")
            found[-1] = tended
        latest = place if said else latest
        said = [*_nights(calendar, steps, number, sentence, line, bool(said), found), *said]
        quoted = in_words[place] if len(in_words) == len(told) else sentence
        found += [replace(one, place=place, words=_short(quoted)) for one in said]
    found = as_one_wait(found, [sentence for sentence, _, _ in told])
    return (*found, *_last_nights(calendar, found, told))


def _nights(
    calendar: Calendar,
    steps: tuple[MethodStep, ...],
    number: int,
    sentence: str,
    line: int,
    waits: bool,
    before: list[Said],
) -> Iterator[Said]:
    """Yield the nights before a sentence under "Day 3:" or "The next day", if nothing says them."""
    nights = calendar.nights_before(steps[number - 1].group, sentence, waits, total_days(before))
    if nights > 0:
        yield Said("wait", "rest", parse_span(f"{nights} days"), "", number, line)


def _last_nights(
    calendar: Calendar, found: list[Said], told: list[tuple[str, int, int]]
) -> Iterator[Said]:
    """Yield the nights of a heading such as "Days 2-14:" that nothing stands behind."""
    nights = calendar.nights_left(total_days(found))
    if nights > 0:
        sentence, number, line = told[-1]
        span = parse_span(f"{nights} days")
        yield Said("wait", "rest", span, _short(sentence), number, line, place=len(told) - 1)


def sentences_of(steps: tuple[MethodStep, ...]) -> list[tuple[str, int, int]]:
    """Return a method's sentences as they are read for times, each with its step and line."""
    return [
        (sentence.strip(), number, step.line)
        for number, step in enumerate(steps, start=1)
        for sentence in _SENTENCE.split(_in_full(step.text))
    ]


def _with_names(steps: tuple[MethodStep, ...]) -> list[str]:
    """Return the same sentences with what stands in their braces, as they are quoted."""
    opened = [_in_full(re.sub(r"[{}]", "", step.text)) for step in steps]
    return [one.strip() for text in opened for one in _SENTENCE.split(text)]


def _rhythm_alone(sentence: str) -> tuple[str, str]:
    """Return what is done and how often, where a sentence says that and no length; else blanks."""
    plain = tidy(sentence)
    if IF.match(plain) or KEEPS.search(plain):
        return "", ""
    elsewhere = rhythm_elsewhere(sentence)
    if elsewhere[1]:
        return elsewhere
    word, every = _word("stir", plain)
    return (word, every) if every and not re.search(r"\b(?:min|hour|hr)", every) else ("", "")


def _tended(one: Said, word: str, every: str) -> Said:
    """Return a wait with the rhythm that the sentence beside it names, where it comes round."""
    if one.role != "wait" or one.every or one.word in ("freeze", "soak", "chill", "drip", "set"):
        return one
    often = _A_WEEK if "week" in every else _DAY
    return replace(one, word=word, every=every) if one.span.minutes() >= 3 * often else one


def _in_full(text: str) -> str:
    """Return a step's words with braces as "it" and what is shortened written out."""
    plain = WARNED.sub("", re.sub(r"\{[^{}]*\}", "it", text))
    plain = FIRST_WEEK_BEFORE.sub(r"\2 for the first \1", plain)
    plain = NUMBERED_DAY.sub(r"\2 \1", STOPPED.sub(r"\1 ", plain))
    plain = OVER_THE_NEXT.sub(r"\2 for \1", BRIEFLY.sub(r"\1 ", plain))
    plain = NEXT_DAY.sub("overnight", ASIDE.sub("", TENS.sub(r"\1-\2", plain)))
    plain = OR_A_NIGHT.sub("overnight", plain)
    plain = FIRST.sub(
        lambda one: f"for the first {'1-2' if one[2] else '1'} {one[1]}",
        AND_NIGHT.sub(r"\1 \2", plain),
    )
    return SHORTENED.sub(lambda short: SHORT[short[0].strip(".").lower()], plain)


def _implied(written: str, step: int, line: int, before: list[Said]) -> Iterator[Said]:
    """Yield what "after ten days, strain" says was waited; not what was said of it before."""
    found = AFTER.search(tidy(written))
    span = _read(next(filter(None, found.groups()))) if found else None
    if span and span.minutes() > _waited(before):
        yield Said("wait", "rest", span, _short(written), step, line)


def _bare(written: str, step: int, line: int, after: str) -> Iterator[Said]:
    """Yield a wait of which nothing but its length is said: more of it, or strained after it."""
    plain = tidy(ONE_MORE.sub("another 1 ", written)).rstrip(".")
    found = BARE_WAIT.fullmatch(plain)
    if found is None:
        return
    waits = MORE_TIME.search(written) or found["then"] or BEGINS.match(tidy(after))
    # "24 hours in the fridge." is waited for where something is done to it afterwards
    waits = waits or (found["where"] and WORKED.match(tidy(after)))
    span = _read(found["span"]) if waits else None
    if span and span.minutes() >= _DAY:
        yield Said("wait", "rest", span, _short(written), step, line)


def _waited(before: list[Said]) -> int:
    """Return the longest wait so far, in minutes."""
    waits = (one.span.minutes() for one in before if one.role == "wait")
    return max(waits, default=0)


def _in_other_words(written: str, step: int, line: int, before: list[Said]) -> Iterator[Said]:
    """Yield what a sentence in another language names, and what it implies was waited for."""
    for one in waits_elsewhere(written):
        long_enough = one.span.minutes() >= SHORTEST_MINUTES
        if long_enough and one.word in ("best", "usable"):
            role: Role = "best" if one.word == "best" else "usable"
            yield Said(role, "", one.span, _short(written), step, line)
        elif long_enough and not (one.after and one.span.minutes() <= _waited(before)):
            yield Said("wait", one.word, one.span, _short(written), step, line, one.every)


def _in_sentence(written: str, step: int, line: int, after: str = "") -> Iterator[Said]:
    """Yield what one sentence names; what says how it keeps is passed over.

    What is stored and then strained, in this sentence or the one `after` it, was waited for.
    """
    plain = SO_MANY_MORE.sub("", ONE_MORE.sub("a ", written))
    plain = tidy(NO_LONGER.sub("upto ", plain))
    plain = EATEN_WITHIN.sub(lambda one: "." * len(one[0]), plain)
    last_wait: list[Said] = []
    for found in (*READY.finditer(plain), *READY_IN.finditer(plain)):
        span = _read(found["span"])
        if span and not KEEPS.search(found[0]):
            role: Role = "best" if "best" in found["what"] else "usable"
            # "ready to drink five days after": counted from what was done last
            later = re.match(r" (?:after|later|from (?:then|now|bottling))", plain[found.end() :])
            if later and role == "usable":
                last_wait = [Said("wait", "mature", span, _short(written), step, line)]
            else:
                yield Said(role, "", span, _short(written), step, line)
            plain = f"{plain[: found.start()]}{'.' * len(found[0])}{plain[found.end() :]}"
    late = NOT_BEFORE.search(plain)
    if late and late["made"] and not re.search(r"\bat least\b|\bminimum\b", written.lower()):
        late = None  # "can be made 2 days in advance"
    if late and re.search(r"\b(?:more|longer|later) than\b", written.lower()):
        late = None  # "do not use it for more than 2 weeks"
    if late and (span := _read(late["span"] or late["resisted"] or late["made"])):
        yield Said("usable", "", span, _short(written), step, line)
        plain = f"{plain[: late.start()]}{'.' * len(late[0])}{plain[late.end() :]}"
    spans = list(WAITED.finditer(EVERY.sub(lambda one: "." * len(one[0]), plain)))
    # "two weeks to one month" waits for the longer
    spans = [
        one
        for one, other in zip_longest(spans, spans[1:])
        if other is None or not UP_TO.fullmatch(plain[one.end() : other.start()])
    ]
    begin, verb = 0, ""
    for place, found in enumerate(spans):
        end = found.end() if place + 1 < len(spans) else len(plain)
        clause, before = plain[begin:end], plain[begin : found.start()]
        begin = found.end()
        span = _read(found["span"])
        # "shake daily for a week, then weekly for three months": the verb is said once
        goes_on = place > 0 and GOES_ON.match(before) and EVERY.search(clause)
        clause = f"{verb} {clause}" if goes_on and not _verb(before) else clause
        cut, begun = _without_first_part(before)
        if cut:
            before = before[cut:]
            clause = f"{'' if _verb(before) else begun} {clause[clause.index(before) :]}"
        verb = _verb(before) or begun or (verb if goes_on else "")
        # "each day for the first week, shake the jar"
        if not verb and span and EVERY.search(before):
            behind = plain[
                found.end() : spans[place + 1].start() if place + 1 < len(spans) else None
            ]
            clause = before + GOES_ON.split(behind)[0]
            verb = "stir" if _word("stir", clause)[1] else ""
        last = place + 1 == len(spans)
        if not verb and THEN.search(plain[found.end() :]) and before.endswith("for "):
            verb = "leave"  # "stop it up for six months, and then draw it off"
        if span is None or not verb or ELSE.search(before):
            continue
        done = THEN.search(plain[found.end() :]) or (last and BEGINS.match(tidy(after)))
        keeps = KEEPS.search(ON_A_SHELF.sub("", clause) if done else clause)
        # "for 2 months before eating, it will keep for a year": the eating belongs to the first
        told = BEFORE_USE.match(clause.lstrip()) if place else None
        word, rhythm = _word(verb, clause)
        if keeps and keeps[0].startswith("stored") and rhythm:
            keeps = None  # "stored in a cupboard, shaken every other day for a week"
        if keeps and keeps[0] == "stored in" and word == "mature":
            keeps = None  # "stored in a dark place to mature for 9 months"
        if keeps and not BEFORE_USE.search(clause.lstrip(), told.end() if told else 0):
            continue
        tended = bool(last and _rhythm_alone(after)[1])
        meant = bool(MEANT.search(f"{clause} {written.lower()}")) or tended
        meant = meant or bool(done) or found[0] == "overnight"
        # "Refrigerate 48 hours." before "Cut into squares."
        meant = meant or bool(last and span.minutes() <= _A_WEEK and WORKED.match(tidy(after)))
        if STORED.match(verb) and not meant:
            if IF_YOU_CAN.search(clause):
                yield Said("best", "", span, _short(written), step, line)
            continue
        yield Said("wait", word, span, _short(written), step, line, rhythm)
    yield from last_wait


def _without_first_part(before: str) -> tuple[int, str]:
    """Return where the last part of a clause begins, and the verb of what was done till then.

    "Shake every day until the sugar is gone and then once a week for 3 months" is weekly.
    """
    for part in reversed(list(LAST_PART.finditer(before))):
        first = before[: part.start()]
        if part.start() and EVERY.search(first) and (TILL.search(first) or "then" in part[0]):
            return part.end(), _verb(first)
    return 0, ""


def _read(words: str) -> Span | None:
    """Return a length that is waited for; None for less than half a day, or for no length."""
    try:
        span = parse_span(words)
    except Unreadable:
        return None
    return span if span.minutes() >= SHORTEST_MINUTES else None


def _verb(words: str) -> str:
    """Return the last verb of waiting: "leave to steep" is a steeping."""
    known = []
    for found in VERB.finditer(words):
        bare = re.sub(r"(?:s|ed|ing|(?<=e)d)$", "", found[0])
        known += [verb for verb in (found[0], bare, f"{bare}e") if verb in WAITS][:1]
    begun = re.match(r"(?:then |and )?place\b", words.strip(" ,"))
    return known[-1] if known else "put" if begun else ""


def _word(verb: str, clause: str) -> tuple[str, str]:
    """Return the timeline's word for a wait and, where it is tended meanwhile, how often."""
    every = EVERY.search(clause)
    often = how_often(every[0]) if every else ""
    for root, word in TENDED.items():
        if often and "few" not in often and re.search(rf"\b{root}", clause):
            return word, often
    word = WAITS[verb]
    return ("rest" if word in TENDED.values() else word), ""


def _short(written: str) -> str:
    words = written.rstrip(".;")
    return words if len(words) <= 90 else f"{words[:87].rsplit(' ', 1)[0]} ..."


def total_days(said: Iterable[Said]) -> int:
    """Return how long all that is waited for takes together, in whole days."""
    minutes = sum(one.span.minutes(longest=False) for one in said if one.role == "wait")
    return round(minutes / _DAY)
