"""Many recipes worked out, in several processes where that is sooner done.

A process must first load all that this one has loaded, so few recipes are worked out here. Where
it can safely be a copy of this one, it has loaded everything and has made every pattern. Where
none can be begun, as in some sandboxes, all recipes are worked out here.
"""

from __future__ import annotations

import gc
import logging
import multiprocessing
import os
import sys
import threading
from collections.abc import Iterator, Sequence
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
from stillroom.publish.working import Worked, unpack, work_out
from stillroom.saving.kept_patterns import take_patterns

PAYS_FROM: Final = 60
"""Recipes whose working out takes as long as a process's beginning, and as long again."""
_AT_ONCE: Final = 8
_FIRST: Final = 16
"""Recipes after which most of what all need is loaded and most patterns are made, once for all."""
PROCESSES = "STILLROOM_PROCESSES"

Out = tuple[Worked | None, bytes]
"""What a recipe came to, None where something is wrong with it; and the same packed, or b""."""

log = logging.getLogger(f"mkdocs.plugins.{__name__}")


def work_out_all(paths: Sequence[Path], library: Library, larder: Larder) -> Iterator[Out]:
    """Yield each recipe's file worked out, in order."""
    count = min(_processes(), len(paths) // (PAYS_FROM // 2))
    done = 0
    if count > 1 and len(paths) >= PAYS_FROM:
        try:
            for out in _in_processes(paths, library, larder, count):
                yield out
                done += 1
        except (BrokenProcessPool, OSError) as error:
            log.info("The recipes are worked out one after another: %s", error)
    yield from _one_after_another(paths[done:], library, larder, len(paths))


def _one_after_another(
    paths: Sequence[Path], library: Library, larder: Larder, of: int
) -> Iterator[Out]:
    for path in paths:
        yield _work_out(path, library, larder, of), b""


def _work_out(path: Path, library: Library, larder: Larder, of: int) -> Worked | None:
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
) -> Iterator[Out]:
    way = _way_to_begin()
    first = paths[:_FIRST] if way == "fork" else ()
    yield from _one_after_another(first, library, larder, len(paths))
    told = (library.book, library.today)
    context = multiprocessing.get_context(way)
    with ProcessPoolExecutor(count, context, _begin, told) as pool:
        try:
            for packed in pool.map(_work, paths[len(first) :], chunksize=_AT_ONCE):
                yield (unpack(packed, larder), packed) if packed else (None, b"")
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise


def _way_to_begin() -> str:
    """Return "fork" where a copy of this process is safe: it is sooner begun than one made anew.

    What is copied while other threads are at work, as in a server, may wait for ever; and on a Mac
    the system's own libraries do not bear it.
    """
    alone = sys.platform == "linux" and threading.active_count() == 1
    return "fork" if alone else "spawn"


_here: list[tuple[Library, Larder]] = []
"""What a process was told at its beginning."""


def _begin(book: Book, today: date) -> None:
    gc.freeze()  # what was copied or loaded stays, and is not to be looked through again
    keep_compiled(environment())
    take_patterns()  # a copy has them
    _here[:] = [(Library(book, (), today), book.own_larder().larder)]


def _work(path: Path) -> bytes:
    """Return a recipe worked out and packed, b"" where something is wrong with it."""
    library, larder = _here[0]
    worked = _work_out(path, library, larder, PAYS_FROM)
    return worked.packed() if worked else b""
