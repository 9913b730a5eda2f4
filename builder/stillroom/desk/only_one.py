"""One desk at a time has a book open: a file that the system itself holds while the desk runs.

The hold ends with the process, however it ends, so that nothing is to be cleared away by hand.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import IO

from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.saving.whole import told

_HELD_AT = 1 << 20
"""Far behind the words of the file: on Windows nobody can read what is held."""


def _hold(file: IO[bytes]) -> bool:
    """Hold a file until it is closed; False when another holds it."""
    try:
        if sys.platform == "win32":
            import msvcrt

            file.seek(_HELD_AT)
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


@contextmanager
def only_desk(file: Path, address: str) -> Iterator[None]:
    """Hold a book while its desk is open; raises ProblemsFound where another desk has it."""
    with told(file):
        file.parent.mkdir(parents=True, exist_ok=True)
        opened = file.open("a+b")
    with opened:
        if not _hold(opened):
            raise ProblemsFound([_held_by(file)])
        opened.seek(0)
        opened.truncate()
        opened.write(json.dumps({"address": address, "process": os.getpid()}).encode())
        opened.flush()
        yield


def _held_by(file: Path) -> Problem:
    """Say where the other desk is, as far as it has said so."""
    where = ""
    with suppress(OSError, ValueError, KeyError, TypeError):
        said = json.loads(file.read_bytes())
        where = f" at {said['address']} (process {said['process']})"
    what = f"Another desk has this book open{where}."
    return Problem(str(file.parent.parent), 0, what, "Go on there, or close that one first.")
