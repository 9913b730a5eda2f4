"""Many recipes worked out, in several processes where that is sooner done.

A process must first load all that this one has loaded, so few recipes are worked out here. Where
none can be begun, as in some sandboxes, all are.
"""

from __future__ import annotations

import logging
import multiprocessing
import os
from collections.abc import Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from datetime import date
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.asked_once import forget_recipes
from stillroom.publish.keeping_templates import keep_compiled
from stillroom.publish.library import Library
from stillroom.publish.templating import environment
from stillroom.publish.working import Worked, work_out

PAYS_FROM: Final = 60
"""Recipes whose working out takes as long as a process's beginning, and as long again."""
_AT_ONCE: Final = 8
PROCESSES = "STILLROOM_PROCESSES"

log = logging.getLogger(f"mkdocs.plugins.{__name__}")


def work_out_all(paths: Sequence[Path], library: Library, larder: Larder) -> list[Worked | None]:
    """Return each recipe's file worked out, in order; None where something is wrong with it."""
    count = min(_processes(), len(paths) // (PAYS_FROM // 2))
    if count > 1 and len(paths) >= PAYS_FROM:
        try:
            return _in_processes(paths, library, larder, count)
        except (BrokenProcessPool, OSError) as error:
            log.info("The recipes are worked out one after another: %s", error)
    return [_one_after_another(path, library, larder, len(paths)) for path in paths]


def _one_after_another(path: Path, library: Library, larder: Larder, of: int) -> Worked | None:
    """Work out one recipe; among many it is not asked about again soon."""
    worked = work_out(path, library, larder)
    if of >= PAYS_FROM:
        forget_recipes()
    return worked


def _processes() -> int:
    """Return how many processes may work at once; 1 in the variable switches them off."""
    asked = os.environ.get(PROCESSES, "")
    if asked.isdecimal():
        return int(asked)
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def _in_processes(
    paths: Sequence[Path], library: Library, larder: Larder, count: int
) -> list[Worked | None]:
    # begun anew on every system: what was forked from a server with threads may wait for ever
    context = multiprocessing.get_context("spawn")
    told = (library.book, library.today)
    with ProcessPoolExecutor(count, context, _begin, told) as pool:
        try:
            done = list(pool.map(_work, paths, chunksize=_AT_ONCE))
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise
    return [one and one.in_book(larder) for one in done]


_here: list[tuple[Library, Larder]] = []
"""What a process was told at its beginning."""


def _begin(book: Book, today: date) -> None:
    keep_compiled(environment())
    _here.append((Library(book, (), today), book.own_larder().larder))


def _work(path: Path) -> Worked | None:
    library, larder = _here[0]
    worked = _one_after_another(path, library, larder, PAYS_FROM)
    return worked and worked.without_book()
