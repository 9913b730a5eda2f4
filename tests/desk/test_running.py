"""A command that goes on while its page is looked at: how far it is, and what it said."""

from __future__ import annotations

import asyncio
import io
import os
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from stillroom.commands import progress
from stillroom.commands.progress import Bar
from stillroom.desk import running
from stillroom.desk.running import Running, run
from stillroom.giving.mip import Progress

SPEAKS = """
import sys, time
print("planning: no plan yet", file=sys.stderr, flush=True)
print("planning: at most 4.0 % from the best", file=sys.stderr, flush=True)
while not __import__("pathlib").Path("go").exists():
    time.sleep(0.01)
print("Written: index.html")
print("x" * 200_000)
"""


def test_how_far_it_is_is_told_meanwhile_and_not_kept(tmp_path: Path) -> None:
    (tmp_path / "speaks.py").write_text(SPEAKS, encoding="utf-8")

    async def watched() -> tuple[str, tuple[str, ...]]:
        plan = Running("a list")
        plan.begin(run("speaks", [], tmp_path, plan))
        while "4.0" not in plan.progress:
            await asyncio.sleep(0.01)
        seen = plan.progress
        (tmp_path / "go").touch()
        assert plan.task is not None
        return seen, (await plan.task).lines

    # in a thread of its own: another test of this process may have left a loop running in this one
    with ThreadPoolExecutor(1) as apart:
        seen, lines = apart.submit(asyncio.run, asyncio.wait_for(watched(), 60)).result()
    assert seen == "at most 4.0 % from the best"
    assert lines[0] == "Written: index.html"
    assert len(lines) == 2


def test_a_command_says_how_far_it_is_once_a_second_where_it_is_read(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    steps = [Progress(at / 4, 200, 190) for at in range(9)]
    for asked, said in (("", 0), ("1", 3)):
        monkeypatch.setenv(running.LINES, asked)
        out = io.StringIO()
        bar = Bar(out, 20)
        assert all(bar(step) for step in steps)
        told = out.getvalue().splitlines()
        assert len(told) == said
        assert all(line == f"{running.MARK}at most 5.0 % from the best" for line in told)


def test_the_desk_and_the_command_call_it_alike() -> None:
    assert (running.LINES, running.MARK) == (progress.LINES, progress.MARK)


WAITS = """
import os, time
from pathlib import Path
Path("number").write_text(str(os.getpid()))
time.sleep(600)
"""


def is_going(number: int) -> bool:
    try:
        os.kill(number, 0)
    except ProcessLookupError:
        return False
    return True


@pytest.mark.skipif(os.name != "posix", reason="a number is asked after otherwise on Windows")
@pytest.mark.parametrize("way", ["closed", "stopped"])
def test_nothing_goes_on_behind_a_desk_that_is_closed(tmp_path: Path, way: str) -> None:
    (tmp_path / "waits.py").write_text(WAITS, encoding="utf-8")
    number = tmp_path / "number"

    async def begun() -> Running:
        plan = Running("a list")
        plan.begin(run("waits", [], tmp_path, plan))
        while not number.exists() or not number.read_text("utf-8"):
            await asyncio.sleep(0.01)
        assert is_going(int(number.read_text("utf-8")))
        if way == "stopped":
            await plan.end()
        return plan  # the loop ends as a closed desk's does, with all that is still waited for

    with ThreadPoolExecutor(1) as apart:
        plan = apart.submit(asyncio.run, asyncio.wait_for(begun(), 60)).result()
    assert not is_going(int(number.read_text("utf-8")))
    assert plan.was_told_to_stop is (way == "stopped")
