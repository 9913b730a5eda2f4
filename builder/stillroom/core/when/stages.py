"""One line of a recipe's `timeline:` read from plain words into a frozen Stage.

`shake: every 3 days for 2 weeks` is a word (the key) and a text. The words known, their roles
and their usual hands-on minutes are data (staples/stage_words.yml). How a text is read:

* `every 3 days`, `daily`, `twice a day`, `once`    the rhythm of tending
* `for 2 weeks`, `2-4 weeks`, `overnight`           how long it lasts
* `until the end of the second month`               until the batch has that age
* `while it bubbles, about 3 weeks`                 a window with an estimate
* `after 3 days`, `from the third week`             begins at that age, beside what else goes on
* `the day before giving`, `on giving day`          counted back from the giving day
* `5 minutes each time`, `30 minutes hands-on`      hands-on time
* what is left, such as `in the dark`, is kept as said

What is not here: dates (timeline.py).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from typing import Any, Final, Literal, get_args

from stillroom.core.when.span_words import UNIT
from stillroom.core.when.spans import ORDINALS, SPAN_PATTERN, Span, parse_span, tidy
from stillroom.core.words.data_files import read_data
from stillroom.core.words.nearest import nearest
from stillroom.core.words.odd_figures import refuse_odd_figure
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

Role = Literal["prepare", "tend", "rest", "strain", "bottle", "finish", "give", "usable", "best"]
ROLES: Final[tuple[Role, ...]] = get_args(Role)
MILESTONES: Final = ("usable", "best")


@dataclass(frozen=True, slots=True)
class StageWord:
    """A word a timeline may use: its role, usual hands-on minutes and name on a calendar."""

    word: str
    role: Role
    minutes: int
    say: str


@dataclass(frozen=True, slots=True)
class Stage:
    """One span of a recipe's timeline, as undated as the recipe itself.

    `hands_on_minutes` is for each occurrence. `age` is set for usable/best only and counts from
    the start day, or from the bottling when `age_from` says so; None there means "as soon as
    the lines above are done".
    """

    word: str
    text: str
    role: Role
    say: str = ""
    hands_on_minutes: int = 0
    lasts: Span | None = None
    every: Span | None = None
    times: int = 1
    until: Span | None = None
    after: Span | None = None
    before_giving: int | None = None
    age: Span | None = None
    age_from: Literal["start", "bottling"] = "start"
    condition: str = ""
    where: str = ""

    def __hash__(self) -> int:
        """Return the sum of its line: what else it holds was read of that."""
        return hash((self.word, self.text))

    @property
    def is_window(self) -> bool:
        """Whether its end is seen rather than counted, so that its length is an estimate."""
        return bool(self.condition)


@cache
def stage_words() -> dict[str, StageWord]:
    """Return every known word, other spellings included, by its spelling."""
    known: dict[str, StageWord] = {}
    for row in read_data("stage_words.yml"):
        entry = StageWord(row["word"], row["role"], row["minutes"], row["say"])
        known[row["word"]] = entry
        for spelling in row.get("also", []):
            # a chill is called a chill, not by the word it is filed under
            say = entry.say if entry.role in MILESTONES else spelling.capitalize()
            known[spelling] = replace(entry, say=say)
    return known


@lru_cache(maxsize=4096)  # recipes share most lines of their timelines
def parse_stage(word: str, text: str) -> Stage:
    """Read one line of a timeline: the word as written and the text after its colon.

    Raises:
        Unreadable: (a ValueError) in plain words, naming what to write instead.

    >>> stage = parse_stage("shake", "every 3 days for 2 weeks")
    >>> stage.role, str(stage.every), str(stage.lasts), stage.hands_on_minutes
    ('tend', '3 days', '2 weeks', 1)
    """
    known = _find_word(word, text)
    _refuse_several(word, text)
    base = Stage(" ".join(word.split()), " ".join(text.split()), known.role, known.say)
    said = _Said(tidy(base.text))
    if known.role in MILESTONES:
        return _milestone(base, said)
    stage = replace(
        base,
        **said.rhythm(),
        condition=said.condition(),
        until=said.until_age(),
        after=said.begins(),
        before_giving=said.before_giving(),
        hands_on_minutes=said.hands_on(base.role, known.minutes),
    )
    stage = replace(stage, lasts=said.lasts())
    stage = replace(stage, where=said.rest_of_it(base))
    if base.word.lower() == "keep" and stage.lasts and not (stage.where or stage.is_window):
        mend = f'Write "- rest: {text}", or outside the timeline "keeps: {text}".'
        raise Unreadable(f'"{word}: {text}" may be how long it is left, or keeps.', mend)
    return _checked(stage)


@cache  # as many as there are kinds
def stages_of_kind(timeline: tuple[tuple[str, str], ...]) -> tuple[Stage, ...]:
    """Return the stages of a kind's timeline: its words, each with the text after its colon."""
    return tuple(parse_stage(word, text) for word, text in timeline)


def is_stage_word(text: str) -> bool:
    """Whether a line is nothing but the name of a stage, which needs no time beside it.

    >>> is_stage_word("strain and bottle"), is_stage_word("strain it")
    (True, False)
    """
    known = stage_words()
    return all(piece in known for piece in _BESIDE.split(tidy(text)))


def without_colon(text: str) -> str:
    """Return a stage written without its colon as it should stand; "" for what is none.

    >>> without_colon("cook 1 hour"), without_colon("a pinch of salt")
    ('cook: 1 hour', '')
    """
    words = text.split()
    for size in range(min(4, len(words) - 1), 0, -1):
        first, rest = " ".join(words[:size]), " ".join(words[size:])
        first, rest = first.rstrip(",;–-"), re.sub(r"^(?:[–—-]\s*|(?:it|them)$)", "", rest)
        try:
            parse_stage(first, rest)
        except Unreadable:
            continue
        return f"{first}: {rest}".strip()
    return ""


def _find_word(word: str, text: str) -> StageWord:
    known = stage_words()
    spoken = tidy(word)
    for spelling in _spellings(spoken):
        if spelling in known:
            return known[spelling]
    pieces = _BESIDE.split(spoken)
    if len(pieces) > 1 and all(piece in known for piece in pieces):
        parts = [known[piece] for piece in pieces]
        last = max(parts, key=lambda part: ROLES.index(part.role))
        say = parts[0].say + "".join(f" and {part.say.lower()}" for part in parts[1:])
        return StageWord(spoken, last.role, sum(part.minutes for part in parts), say)
    if _KEEPING.fullmatch(spoken):
        what = f'"{word}" says how long it keeps, and that is no stage of making it.'
        raise Unreadable(what, f'Write "keeps: {text}" in a line of its own, outside the timeline.')
    near = nearest(spoken, known, 0.72)
    mend = f'Did you mean "{near}"?' if near else _USUAL
    raise Unreadable(f'"{word}" is not a stage this book knows.', mend)


def _refuse_several(word: str, text: str) -> None:
    """Refuse several lines in one: "daily for 2 weeks, then weekly for 2 months"."""
    parts = _THEN.split(text)
    if len(parts) > 1 and all(_WHEN.search(tidy(part)) for part in parts):
        lines = ", ".join(f'"- {word}: {part}"' for part in parts)
        raise Unreadable(f'"{word}: {text}" is more than one stage.', f"Write {lines}.")


def _spellings(spoken: str) -> Iterator[str]:
    """Yield a word as it may stand in the table: "baking time" and "left to bake" are "bake"."""
    bare = re.sub(r"^(?:leave|left|let|put) (?:it )?(?:to )?|^the |^to ", "", spoken)
    bare = re.sub(r" (?:time|stage|period|it|them|well)$", "", bare)
    yield from (spoken, bare)
    if bare.endswith("ing"):
        root = bare.removesuffix("ing")
        yield from (root, f"{root}e")
        if len(root) > 2 and root[-1] == root[-2]:
            yield root[:-1]


@dataclass(slots=True)
class _Said:
    """The text of a stage while it is read: each reader takes its phrase out of `left`."""

    left: str
    taken: list[str] = field(default_factory=list)

    def take(self, pattern: str, *hints: str) -> re.Match[str] | None:
        """Take a phrase out; without one of the hints, which it would hold, it is not sought."""
        if hints and not any(hint in self.left for hint in hints):
            return None
        match = re.search(rf"(?<![\w-])(?:{pattern})(?!\w)", self.left)
        if match:
            self.taken.append(match[0])
            self.left = f"{self.left[: match.start()]}|{self.left[match.end() :]}"
        return match

    def condition(self) -> str:
        """Take "while it bubbles" or "until it is clear", which need an estimate beside them."""
        match = self.take(
            r"(?:while|as long as|until|till) "
            r"(?!(?:the )?end of|the \w+ (?:day|week|month|year))[^,|;(]+",
            *("while", "as long as", "until", "till"),
        )
        return match[0].strip() if match else ""

    def until_age(self) -> Span | None:
        ordinal = "|".join(ORDINALS)
        match = self.take(
            rf"(?:until|till|to) (?:the )?end of (?:the )?({ordinal}) (day|week|month|year)",
            "end of",
        )
        if not match:
            return None
        return Span(ORDINALS[match[1]], ORDINALS[match[1]], match[2])

    def begins(self) -> Span | None:
        """Take "after 3 days" or "from the third week"."""
        match = self.take(
            rf"(?:after|from) (?:the )?({'|'.join(ORDINALS)}) (day|week|month|year)(?: on)?",
            *("after", "from"),
        )
        if match:
            count = ORDINALS[match[1]] - (0 if match[0].startswith("after") else 1)
            return Span(count, count, match[2])
        match = self.take(rf"(?:after|from) ({SPAN_PATTERN})(?: on)?", "after", "from")
        return parse_span(match[1]) if match else None

    def before_giving(self) -> int | None:
        if self.take(r"on (?:the )?giving day|on the day", "on "):
            return 0
        before = r"(?:before (?:giving day|giving|it is given|the giving day))"
        match = self.take(rf"the (day|week) {before}", "before")
        if match:
            return 1 if match[1] == "day" else 7
        match = self.take(rf"({SPAN_PATTERN}) {before}", "before")
        if not match:
            return None
        span = parse_span(match[1])
        if span.unit not in ("day", "week"):
            raise Unreadable(
                f'"{match[0]}" is not days or weeks.', 'Write e.g. "3 days before giving".'
            )
        return span.high * (7 if span.unit == "week" else 1)

    def rhythm(self) -> dict[str, Any]:
        """Take "every 3 days", "daily", "twice a day" or "once" as every= and times=."""
        day = Span(1, 1, "day")
        match = self.take(
            r"(once|twice|three times|four times|\d{1,4} times)"
            r" (?:a|each|every|per) (day|week|month)",
            *("once", "twice", "times"),
        )
        if match:
            counts = {"once": 1, "twice": 2, "three times": 3, "four times": 4}
            times = counts.get(match[1]) or int(match[1].split()[0])
            if times > 1 and match[2] != "day":
                raise Unreadable(f'"{match[0]}" names no days.', 'Write e.g. "every 3 days".')
            return {"every": Span(1, 1, match[2]), "times": times}
        if self.take(
            r"daily|every (?:day|morning|evening|night)|each day", "daily", "every", "each"
        ):
            return {"every": day}
        if match := self.take(
            r"(?:every|each) (other |second |third )?(day|week|month|year)|weekly|monthly|yearly",
            *("every", "each", "weekly", "monthly", "yearly"),
        ):
            unit = match[2] or match[0].removesuffix("ly")
            count = {"other ": 2, "second ": 2, "third ": 3, None: 1}[match[1]]
            return {"every": Span(count, count, unit)}
        if match := self.take(rf"every ({SPAN_PATTERN})", "every"):
            every = parse_span(match[1])
            if every.is_within_a_day:
                return {"every": day, "times": max(1, 1440 // every.minutes())}
            return {"every": every}
        if match := self.take(rf"every (?!{_WEEKDAYS})\S+(?: [a-z]+)?", "every"):
            mend = 'Write e.g. "every day", "every 3 days" or "every week".'
            raise Unreadable(f'"{match[0]}" is not a rhythm.', mend)
        self.take("once")
        return {}

    def hands_on(self, role: Role, usual: int) -> int:
        """Take "5 minutes each time", "30 minutes hands-on" or, unless resting, minutes."""
        each = ("each time", "each", "a time", "hands-on", "hands on", "of work", "of it yours")
        if match := self.take(rf"({SPAN_PATTERN}) (?:{'|'.join(each)})", *each):
            return parse_span(match[1]).minutes()
        found = re.search(SPAN_PATTERN, self.left)
        # minutes and hours are the work itself; a day or more is how long the stage lasts
        if role != "rest" and found and parse_span(found[0]).is_within_a_day:
            self.take(re.escape(found[0]))
            return parse_span(found[0]).minutes()
        return usual

    def lasts(self) -> Span | None:
        if self.take("overnight"):
            return Span(1, 1, "day")
        if not re.search(r"[^\W_]", self.left):
            return None
        if match := self.take(rf"(?:for |over )?the first ({UNIT})", "first"):
            return parse_span(f"a {match[1]}")
        match = self.take(rf"(?:for (?:the first )?|over |lasting |takes )?({SPAN_PATTERN})")
        return parse_span(match[1]) if match else None

    def rest_of_it(self, stage: Stage) -> str:
        """Return what is left, such as "in the dark"; what was meant as a time is refused."""
        left = re.sub(r"\((.*?)\)", r"\1", self.left)
        pieces = [piece.strip(" ,;") for piece in left.split("|")]
        left = ", ".join(piece for piece in pieces if piece)
        for piece in re.split(r", ", left):
            refuse_odd_figure(piece)
            if _WEEKDAY.search(piece):
                what = f'"{piece}" names a day of the week, and days are counted from the start.'
                raise Unreadable(what, 'Write "every week", or e.g. "every 3 days".')
            if re.search(r"\d", piece) or re.match(rf"(?:for|over|{_COUNT_WORDS})\b", piece):
                parse_span(re.sub(r"^(?:for|over) ", "", piece))
                what = f'"{stage.word}: {stage.text}" says "{piece}", which is not a time.'
                raise Unreadable(what, _MEND)
        return left


_BESIDE: Final = late_regex(r" and |, | & ")
_WEEKDAYS: Final = r"(?:mon|tues|wednes|thurs|fri|satur|sun)days?\b"
_WEEKDAY: Final = late_regex(rf"\b{_WEEKDAYS}")
_THEN: Final = late_regex(r"[,;]?\s+(?:and )?then\s+", re.IGNORECASE)
_WHEN: Final = late_regex(rf"{SPAN_PATTERN}|\b(?:daily|weekly|monthly|every|overnight)\b")
_COUNT_WORDS: Final = "an?|one|two|three|four|five|six|seven|eight|nine|ten|some|several|few|many"
_KEEPING: Final = late_regex(
    r"(?:use|eat|drink|consume|finish)(?: it| them)? (?:within|by|before|up)|best before|"
    r"keeps?(?: for| well)?|keeping|shelf[ -]life|lasts?(?: for)?|expir(?:y|es)|good for|"
    r"will keep|once opened|storage|stores?(?: for)?"
)
_USUAL: Final = (
    "The usual ones are prepare, cook, bake, shake, stir, rest, steep, ferment, cool, strain, "
    'bottle, fill, wrap, and "usable from", "best from".'
)
_MEND: Final = 'Write e.g. "every 3 days for 2 weeks", "overnight in the fridge" or "45 minutes".'


def _milestone(base: Stage, said: _Said) -> Stage:
    """Read "2 months", "the end of the second month", "3 months after bottling", "at once"."""
    if said.take(r"at once|straight away|the same day|when (?:\w+ ?)+|once (?:\w+ ?)+|immediately"):
        return base
    if said.take(r"(?:the )?next day"):
        return replace(base, age=Span(1, 1, "day"))
    counts_from = "bottling" if said.take(r"after (?:bottling|it is bottled)") else "start"
    said.take(r"after|old|of age|from the start")
    text = re.sub(r"\s+", " ", said.left.replace("|", " ")).strip(" ,")
    if not text:
        raise Unreadable(f'"{base.word}" has no age.', 'Write e.g. "2 months" or "at once".')
    return replace(base, age=parse_span(text), age_from=counts_from)  # type: ignore[arg-type]


def _checked(stage: Stage) -> Stage:
    """Refuse what can never come round or never end."""
    if stage.every and stage.lasts and stage.every.minutes(longest=False) > stage.lasts.minutes():
        raise Unreadable(
            f'"{stage.word}: {stage.text}" never comes round: every {stage.every} is longer than '
            f"{stage.lasts}.",
            "Write a shorter rhythm or a longer stage.",
        )
    if stage.is_window and not (stage.lasts or stage.until):
        raise Unreadable(
            f'"{stage.word}: {stage.text}" does not say about how long.',
            f'Write e.g. "{stage.text}, about 3 weeks".',
        )
    if stage.role == "tend" and stage.every and not (stage.lasts or stage.until):
        raise Unreadable(
            f'"{stage.word}: {stage.text}" does not say for how long.',
            f'Write e.g. "{stage.text} for 2 weeks".',
        )
    if stage.after and stage.until and stage.after.minutes() >= stage.until.minutes():
        raise Unreadable(
            f'"{stage.word}: {stage.text}" ends before it begins.', "Write a later end."
        )
    return stage
