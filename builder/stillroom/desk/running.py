"""The book's own commands, run apart from the desk: a print, a plan, a build.

So that a long one can be watched and stopped, and what it says is what it says in the terminal. No
words of a request become a command: only names that the desk has chosen, and files it has found.
"""

from __future__ import annotations

import asyncio
import os
import re
import sys
import time
from collections.abc import Coroutine, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

MOST_SECONDS: Final = 900
_SECONDS_TO_END: Final = 3
LONGEST_LINE: Final = 1_000_000
LINES: Final = "STILLROOM_PROGRESS_LINES"
MARK: Final = "planning: "
"""As commands/progress.py has them: the desk knows commands by their door alone."""
_COLOURS: Final = re.compile(r"\x1b\[[0-9;]*m")
_NO_WORD: Final = re.compile(r"^(?:INFO|DEBUG)\b")
_ENDED: Final = re.compile(r"Aborted with ")
_USAGE: Final = re.compile(r"Usage: .*\n(?:Try .*\n\n?)?")
"""What stands above a refusal in the terminal: how the command is written."""
_REFUSED: Final = re.compile(r"^Error: ")
_LEVEL: Final = re.compile(r"^(?:ERROR|WARNING)\s*-\s*(?:\[[\d:]+\]\s*)?(?:[\w.]+:\s*)?")


@dataclass
class Done:
    """What a command came to: how it ended and what it said."""

    code: int
    lines: tuple[str, ...]

    @property
    def is_well(self) -> bool:
        """Whether it did what it was asked."""
        return self.code == 0


@dataclass
class Running:
    """A command that goes on while its page is looked at; `of` says what it was begun with.

    `wished` is what was asked for meanwhile and not begun, as one goes on at a time.
    """

    name: str
    of: tuple[str, ...] = ()
    task: asyncio.Task[Done] | None = None
    begun: float = field(default_factory=time.monotonic)
    process: asyncio.subprocess.Process | None = None
    progress: str = ""
    came_of: dict[str, Any] = field(default_factory=dict)
    was_told_to_stop: bool = False
    wished: str = ""

    @property
    def is_going(self) -> bool:
        """Whether it has not ended yet."""
        return self.task is not None and not self.task.done()

    def begin(self, work: Coroutine[Any, Any, Done]) -> None:
        """Let it go on by itself."""
        self.task = asyncio.create_task(work)

    @property
    def seconds(self) -> int:
        """How long it has been going on."""
        return round(time.monotonic() - self.begun)

    @property
    def done(self) -> Done | None:
        """What it came to; None while it goes on."""
        return self.task.result() if self.task and self.task.done() else None

    def stop(self) -> None:
        """End it; what it was writing stays as it was before."""
        if self.process is not None and self.process.returncode is None:
            self.was_told_to_stop = True
            self.process.terminate()

    async def end(self) -> None:
        """End it, and wait until it has ended."""
        self.stop()
        if self.task is not None:
            await asyncio.wait([self.task])


async def run(
    module: str,
    arguments: Sequence[str | Path],
    folder: Path,
    watched: Running | None = None,
    more: Mapping[str, str] | None = None,
) -> Done:
    """Run a module of Python in a folder until it ends; after a quarter of an hour it is ended.

    `more` is set in what the module finds around it.
    """
    process = await asyncio.create_subprocess_exec(
        sys.executable,
        "-m",
        module,
        *(str(argument) for argument in arguments),
        cwd=folder,
        env={
            **os.environ,
            "PYTHONIOENCODING": "utf-8",
            "NO_MKDOCS_2_WARNING": "1",
            LINES: "1" if watched else "",
            **(more or {}),
        },
        stdin=asyncio.subprocess.DEVNULL,
        stdout=asyncio.subprocess.PIPE,
        stderr=asyncio.subprocess.STDOUT,
        limit=LONGEST_LINE,
    )
    if watched is not None:
        watched.process = process
    try:
        said = await asyncio.wait_for(_all_said(process, watched), MOST_SECONDS)
    except TimeoutError:
        return Done(1, ("This took more than a quarter of an hour and was ended.",))
    finally:
        await _end(process)
    return Done(process.returncode or 0, tuple(_plain_lines(said)))


async def _end(process: asyncio.subprocess.Process) -> None:
    """End a command that still goes on: nobody waits for it any more, or the desk is closed."""
    if process.returncode is not None:
        return
    process.terminate()
    try:
        await asyncio.wait_for(process.wait(), _SECONDS_TO_END)
    except TimeoutError:
        process.kill()
        await process.wait()


async def _all_said(process: asyncio.subprocess.Process, watched: Running | None) -> str:
    """Read what a command says until it ends; how far it is, is told meanwhile and not kept."""
    assert process.stdout is not None  # it was asked for
    kept = []
    while line := await process.stdout.readline():
        words = line.decode("utf-8", "replace")
        if watched is not None and words.startswith(MARK):
            watched.progress = words.removeprefix(MARK).strip()
        else:
            kept.append(words)
    await process.wait()
    return "".join(kept)


def _plain_lines(said: str) -> list[str]:
    """Return what a command said without colours, without what it only notes, and how it ended.

    A note may run over several lines; where nothing else was said, its last line is kept.
    """
    said = _USAGE.sub("", _COLOURS.sub("", said))
    lines = [line for one in said.splitlines() if (line := _REFUSED.sub("", one).rstrip())]
    kept: list[str] = []
    is_note = False
    for line in lines:
        is_note = bool(_NO_WORD.match(line)) or (is_note and not _LEVEL.match(line))
        if not is_note and not _ENDED.match(line):
            kept.append(_LEVEL.sub("", line))
    return kept or lines[-1:]
