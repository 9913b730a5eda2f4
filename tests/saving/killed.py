"""A command that is ended at a moment of chance, or just before a step of its own on the disk.

Python says of each file it opens, moves or makes what it is about to do (audit hooks): a run can be
ended before the first of these steps, the second, and so on, however short the moment is.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

from loaded import run_loaded

_ENDS_AT = "STILLROOM_ENDS_AT"
"""Before which step it ends; 0 ends nothing, and says at the end how many there were."""
_ARMED_BY = "STILLROOM_ARMED_BY"
"""A file without which no step counts; a server is first to be ready."""
_HOOK = f'''
import atexit, os, signal, sys
sys.dont_write_bytecode = True
last, armed = int(os.environ["{_ENDS_AT}"]), os.environ.get("{_ARMED_BY}")
steps = [0]
NAMES = {{"os.mkdir", "os.rename", "os.remove", "os.rmdir", "os.link", "os.symlink", "os.chmod",
         "shutil.rmtree", "shutil.move", "shutil.copyfile", "ctypes.dlsym", "os.truncate"}}

def hook(name, about):
    if name == "open":
        if isinstance(about[0], int) or not about[2] & (os.O_WRONLY | os.O_RDWR | os.O_CREAT):
            return
    elif name not in NAMES:
        return
    if armed and not os.path.exists(armed):
        return
    if "stillroom-desk-" in str(about[0]):  # what is made for looking at, elsewhere and meanwhile
        return
    steps[0] += 1
    if steps[0] == last:
        os.kill(os.getpid(), signal.SIGKILL)

if last == 0:
    atexit.register(lambda: print(f"steps={{steps[0]}}", file=sys.stderr))
sys.addaudithook(hook)
'''
HOOKED = f"""{_HOOK}
import runpy
sys.argv = sys.argv[1:]
runpy.run_module(sys.argv[0], run_name="__main__", alter_sys=True)
"""
ENVIRONMENT = {
    **os.environ,
    "NO_COLOR": "1",
    "SOURCE_DATE_EPOCH": "1795780800",
    "STILLROOM_PROCESSES": "1",
}


def start(folder: Path, words: list[str], step: int, armed_by: str = "") -> subprocess.Popen[bytes]:
    """Begin a command of Python's ("stillroom.cli check") that ends before a step."""
    around = {**ENVIRONMENT, _ENDS_AT: str(step)} | ({_ARMED_BY: armed_by} if armed_by else {})
    return subprocess.Popen(
        [sys.executable, "-c", HOOKED, *words], cwd=folder, env=around,
        stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )  # fmt: skip


def count_steps(folder: Path, words: list[str]) -> tuple[int, float]:
    """Run a command to its end; return how many steps it has, and its seconds."""
    begun = time.monotonic()
    run = run_loaded(words, folder, {**ENVIRONMENT, _ENDS_AT: "0"}, _HOOK)
    assert run.returncode == 0, run.stdout + run.stderr
    steps = int(run.stderr.rpartition("steps=")[2].split()[0])
    return steps, time.monotonic() - begun


def end_at_step(folder: Path, words: list[str], step: int) -> bool:
    """Say whether a command was ended before that step of its own."""
    run = run_loaded(words, folder, {**ENVIRONMENT, _ENDS_AT: str(step)}, _HOOK)
    return run.returncode == -signal.SIGKILL


def end_after(folder: Path, words: list[str], seconds: float) -> bool:
    """Say whether a command was ended after so many seconds; False when it was done by then."""
    run = start(folder, words, 0)
    time.sleep(seconds)
    run.send_signal(signal.SIGKILL)
    run.communicate()
    return run.returncode == -signal.SIGKILL
