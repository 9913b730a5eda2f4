"""What the lines of a log come to: batches going and filled, baskets gone, what was bought.

Lines are taken in the order of their days. What cannot be told from them is told back, by line,
and never guessed: which of two batches was filled, a jar that nobody made. Pure.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from stillroom.core.words.day_words import say_day
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.giving.log import LogLine, ReadLog
from stillroom.giving.model import GivingList, LoggedBatch


@dataclass
class Fill:
    """So many of one container, filled on a day; how many of them are gone since.

    `number` is None where nobody counted; `by_hand` where the list says itself how many were given.
    """

    number: int | None
    container: str
    made_on: date
    gone: int = 0
    by_hand: bool = False

    @property
    def left(self) -> int | None:
        """How many are still there; None where nobody counted."""
        return None if self.number is None else max(0, self.number - self.gone)


@dataclass
class Going:
    """One batch as it really went: begun, tended, strained, filled or failed."""

    recipe: str
    started: date
    batches: int = 1
    tended: list[date] = field(default_factory=list)
    strained: list[date] = field(default_factory=list)
    fills: list[Fill] = field(default_factory=list)
    container: str = ""
    failed: date | None = None
    why: str = ""
    """Why it failed, or what the list says of it."""
    from_list: bool = False
    begun_noted: bool = True
    """Else it is known only by what was filled of it, and so is how much of a recipe it was."""

    @property
    def is_open(self) -> bool:
        """Whether it is still on its way."""
        return self.failed is None and not self.fills


@dataclass(frozen=True)
class Gone:
    """A basket that was given or posted: whose, which of theirs, on which day, with what in it."""

    household: str
    nth: int
    day: date
    posted: bool
    things: tuple[str, ...]
    words: str = ""


@dataclass(frozen=True)
class Season:
    """All that is known of a season from its log, in the order of the days."""

    batches: tuple[Going, ...] = ()
    gone: tuple[Gone, ...] = ()
    taken: tuple[LogLine, ...] = ()
    """Lines that take from the shelf: given, posted, used, spoiled."""
    bought: tuple[LogLine, ...] = ()
    pinned: frozenset[tuple[str, str]] = frozenset()
    struck: frozenset[tuple[str, str]] = frozenset()
    lines: tuple[LogLine, ...] = ()

    def of_kind(self, *kinds: str) -> tuple[LogLine, ...]:
        """Return the lines of these kinds."""
        return tuple(line for line in self.lines if line.kind in kinds)

    def has_gone(self, household: str, nth: int) -> Gone | None:
        """Return how a household's basket went, or None while it waits."""
        return next((g for g in self.gone if (g.household, g.nth) == (household, nth)), None)


def read_season(log: ReadLog, giving: GivingList) -> Season:
    """Return what a log with whole names comes to; raises ProblemsFound by line."""
    told = _Teller(log.file, giving)
    for line in sorted(log.lines, key=lambda line: line.day):
        told.take(line)
    if told.problems:
        raise ProblemsFound(told.problems)
    return Season(
        batches=tuple(told.batches),
        gone=tuple(told.gone),
        taken=tuple(told.taken),
        bought=tuple(told.bought),
        pinned=frozenset(told.pinned),
        struck=frozenset(told.struck),
        lines=tuple(sorted(log.lines, key=lambda line: line.day)),
    )


class _Teller:
    """Takes the lines one by one."""

    def __init__(self, file: str, giving: GivingList) -> None:
        self.file = file
        self.baskets = {one.name: sum(one.basket.values()) for one in giving.households}
        self.batches = [_from_list(batch) for batch in giving.batches]
        self.gone: list[Gone] = []
        self.taken: list[LogLine] = []
        self.bought: list[LogLine] = []
        self.pinned: set[tuple[str, str]] = set()
        self.struck: set[tuple[str, str]] = set()
        self.problems: list[Problem] = []

    def take(self, line: LogLine) -> None:
        if line.kind == "begun":
            going = Going(line.name, line.day, line.batches or 1, container=line.container)
            self.batches.append(going)
        elif line.kind in ("tended", "strained", "bottled", "failed"):
            self._batch(line)
        elif line.kind in ("given", "posted"):
            self._basket(line)
        elif line.kind in ("used", "spoiled"):
            self.taken.append(line)
        elif line.kind == "bought":
            self.bought.append(line)
        elif line.kind in ("pinned", "struck", "freed"):
            names = {(line.name, slug) for slug in line.of}
            self.pinned -= names
            self.struck -= names
            if line.kind != "freed":
                (self.pinned if line.kind == "pinned" else self.struck).update(names)

    def _tell(self, line: LogLine, what: str, mend: str) -> None:
        self.problems.append(Problem(self.file, line.line, what, mend))

    def _batch(self, line: LogLine) -> None:
        batch = self._which(line)
        if batch is None:
            return
        if line.kind == "tended":
            batch.tended.append(line.day)
        elif line.kind == "strained":
            batch.strained.append(line.day)
        elif line.kind == "failed":
            batch.failed, batch.why = line.day, line.words
        else:
            container = line.container or batch.container
            batch.fills.append(Fill(line.number, container, line.day))

    def _which(self, line: LogLine) -> Going | None:
        """Return the batch that a line is of: the one going, or the one begun on the day named."""
        own = [b for b in self.batches if b.recipe == line.name and b.started <= line.day]
        if line.began:
            same = [batch for batch in own if batch.started == line.began]
            if not same:
                what = f"No {line.name} was begun on {say_day(line.began)}."
                self._tell(line, what, "Look at the line that says it was begun.")
                return None
            return same[0]
        going = [batch for batch in own if batch.is_open]
        if len(going) > 1:
            days = " and ".join(say_day(batch.started) for batch in going)
            first = going[0].started.isoformat()
            mend = f'Say which: "began: {first}". In the terminal that is "--began {first}".'
            self._tell(line, f"{len(going)} batches of {line.name} are going, of {days}.", mend)
            return None
        if going:
            return going[0]
        # a second size out of the same batch on the same day
        today = [b for b in own if b.fills and b.fills[-1].made_on == line.day]
        if today and line.kind == "bottled":
            return today[-1]
        if line.kind == "bottled":  # made in a day: what is filled was begun
            self.batches.append(Going(line.name, line.day, begun_noted=False))
            return self.batches[-1]
        mend = (
            f'Note first when it was begun: "{{day: {line.day.isoformat()}, begun: {line.name}}}".'
        )
        self._tell(line, f"No {line.name} is going on {say_day(line.day)}.", mend)
        return None

    def _basket(self, line: LogLine) -> None:
        if line.name not in self.baskets:
            self.taken.append(line)  # of another list: it left the same shelf
            return
        nths = {gone.nth for gone in self.gone if gone.household == line.name}
        waiting = [n for n in range(1, self.baskets[line.name] + 1) if n not in nths]
        nth = line.basket or (waiting[0] if waiting else 0)
        if nth not in waiting:
            which = f"Basket {nth} of {line.name}" if nth else f"Every basket of {line.name}"
            mend = 'What else left the shelf is "used", with "number: 1".'
            self._tell(line, f"{which} has gone already, or they get none.", mend)
            return
        posted = line.kind == "posted"
        self.gone.append(Gone(line.name, nth, line.day, posted, line.things, line.words))
        self.taken.append(line)


def _from_list(batch: LoggedBatch) -> Going:
    going = Going(batch.recipe, batch.started, batch.batches, list(batch.tended), from_list=True)
    going.container, going.why = batch.container, batch.notes
    if batch.made_on:
        by_hand = batch.given > 0
        fill = Fill(batch.number, batch.container, batch.made_on, batch.given, by_hand)
        going.fills.append(fill)
    return going
