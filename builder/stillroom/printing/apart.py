"""Typst in a process of its own, which ends after so many pieces and gives its memory back.

Typst keeps all that it ever measured: some megabytes a card, for as long as its process lives.
Leaves out what is set (cards.py and whoever else asks).
"""

from __future__ import annotations

import multiprocessing
import os
import signal
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from queue import SimpleQueue
from typing import Any, Final, Literal

from stillroom.core.words.problems import Unreadable
from stillroom.printing.typesetting import (
    TEMPLATES,
    PaperMissing,
    is_installed,
    measure,
    typeset,
)

MOST_PIECES: Final = 96
"""Cards that one process sets before another begins: some 200 MB (tests/bench/bench_pack.py)."""
PAYS_FROM: Final = 480
"""Pieces from which a second process at the same time is sooner done than it is begun."""
PROCESSES: Final = "STILLROOM_PROCESSES"
"""The variable that says how many processes may work at once; 1 leaves all to this one."""
_AT_ONCE: Final = 2


@dataclass(frozen=True)
class Job:
    """One run of Typst: to set a paper, or to measure what a template notes under "fit".

    `pieces` is how many cards, or things like them, it works on.
    """

    what: Literal["set", "fit"]
    template: str
    data: Mapping[str, Any]
    pieces: int = 1
    fonts: Path | None = None
    root: Path = TEMPLATES

    def run(self) -> Any:
        """Return a PDF's bytes or the values measured; raises Unreadable."""
        if self.what == "set":
            return typeset(self.template, self.data, fonts=self.fonts, root=self.root).pdf
        return measure(self.template, self.data, "fit", fonts=self.fonts)


Runner = Callable[[Sequence[Job]], list[Any]]
"""Whoever runs jobs and returns what each came to, in their order."""


def run_here(jobs: Sequence[Job]) -> list[Any]:
    """Run jobs in this process."""
    return [job.run() for job in jobs]


class Apart:
    """Runs jobs in processes of their own while it is open: `with Apart() as apart`."""

    def __init__(self) -> None:
        self._lanes: list[_Lane] = []

    def __enter__(self) -> Apart:
        return self

    def __exit__(self, *_: object) -> None:
        for lane in self._lanes:
            lane.close()

    def __call__(self, jobs: Sequence[Job]) -> list[Any]:
        """Run jobs, two at a time where they are many; raises PaperMissing and Unreadable."""
        if not is_installed():
            raise PaperMissing
        if _allowed() == 1:
            return run_here(jobs)
        pieces = sum(job.pieces for job in jobs)
        count = min(_AT_ONCE, _allowed(), len(jobs)) if pieces >= PAYS_FROM else 1
        while len(self._lanes) < count:
            self._lanes.append(_Lane())
        free: SimpleQueue[_Lane] = SimpleQueue()
        for lane in self._lanes[:count]:
            free.put(lane)

        def run(job: Job) -> Any:
            lane = free.get()
            try:
                return lane.run(job)
            finally:
                free.put(lane)

        with ThreadPoolExecutor(count) as waiting:
            try:
                return list(waiting.map(run, jobs))
            except BaseException:
                waiting.shutdown(wait=False, cancel_futures=True)
                raise


class _Lane:
    """One process after another, each until it has set as much as one may."""

    def __init__(self) -> None:
        self._pool: ProcessPoolExecutor | None = None
        self._done = 0

    def run(self, job: Job) -> Any:
        if self._pool is None or self._done + job.pieces > MOST_PIECES:
            self.close()
            context = multiprocessing.get_context("spawn")
            self._pool = ProcessPoolExecutor(1, context, _begin)
        self._done += job.pieces
        told = self._pool.submit(_run, job).result()
        if isinstance(told, _Wrong):
            raise Unreadable(told.what, told.mend)
        return told

    def close(self) -> None:
        if self._pool is not None:
            self._pool.shutdown(cancel_futures=True)
        self._pool, self._done = None, 0


@dataclass(frozen=True)
class _Wrong:
    """What an Unreadable said, as it goes from process to process."""

    what: str
    mend: str


def _begin() -> None:
    # a Ctrl-C is for the process that was started by hand; it ends this one
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def _run(job: Job) -> Any:
    try:
        return job.run()
    except Unreadable as wrong:
        return _Wrong(wrong.what, wrong.mend)


def _allowed() -> int:
    asked = os.environ.get(PROCESSES, "")
    return int(asked) if asked.isdecimal() else os.cpu_count() or 1


def in_slices(count: int, most: int) -> Iterator[slice]:
    """Yield slices that part so many things into even runs of at most so many.

    >>> [(one.start, one.stop) for one in in_slices(7, 3)]
    [(0, 3), (3, 5), (5, 7)]
    """
    runs = -(-count // most)
    begun = 0
    for n in range(runs):
        size = count // runs + (n < count % runs)
        yield slice(begun, begun + size)
        begun += size


def _go_beside(days: Mapping[str, Any] | None, front: int) -> bool:
    """Say whether a card's days stand beside each other, where they are to and as they are set."""
    if days is None:
        return True
    level = max(days["level"], front) if days["shared"] else days["level"]
    return bool(level >= days["from"])


def all_alike(
    template: str, parts: Sequence[Mapping[str, Any]], run: Runner, fonts: Path | None
) -> list[list[dict[str, Any]]]:
    """Return what fits in each part, all parts arranged as they would be in one run.

    Each row says under "alike" which arrangement its run took, and its size: an arrangement that
    holds one part may be too small for the next, which is then tried from there on. So is the next
    arrangement where the days of some card would not stand beside each other, as this one has them.
    """

    def ask(part: Mapping[str, Any], first: int) -> Job:
        data = {**part, "measuring": True, "first": first}
        return Job("fit", template, data, len(part["cards"]), fonts)

    found: list[list[dict[str, Any]]] = run([ask(part, 0) for part in parts])
    while True:
        firsts = [rows[0]["alike"][0] for rows in found]
        first = max(firsts)
        behind = [n for n, own in enumerate(firsts) if own < first]
        largest = max(row["alike"][1] for rows in found for row in rows)
        if not behind:
            if all(_go_beside(row.get("days"), largest) for rows in found for row in rows):
                break
            behind, first = list(range(len(parts))), first + 1
        again = run([ask(parts[n], first) for n in behind])
        for n, rows in zip(behind, again, strict=True):
            found[n] = rows
    return [[{**row, "alike": [row["alike"][0], largest]} for row in rows] for rows in found]
