"""A command in a process of its own that has loaded already what it will ask for.

To load the book's machinery takes as long as to build a small book. Here one process of each worker
loads it, reads the demo book's recipes once, and is copied for each command. What a command loads
by itself is asked in test_start.py and wherever `subprocess` is used; so is every command on a
system without copies.
"""

from __future__ import annotations

import atexit
import multiprocessing
import os
import runpy
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

_LOADED = ["mkdocs.commands.build", "material.plugins.search.plugin", "stillroom.cli",
           "stillroom.publish.plugin", "warmed", "loaded"]  # fmt: skip


def run_loaded(
    words: Sequence[str], cwd: Path, env: Mapping[str, str], before: str = ""
) -> subprocess.CompletedProcess[str]:
    """Run a module of Python's with its words; `before` is done in its process first."""
    if sys.platform != "linux":
        code = f"{before}\nimport runpy, sys\nsys.argv = {[*words]!r}\n"
        code += f"runpy.run_module({words[0]!r}, run_name='__main__', alter_sys=True)\n"
        return subprocess.run(
            [sys.executable, "-c", code], cwd=cwd, env=env, check=False, encoding="utf-8",
            stdin=subprocess.DEVNULL, capture_output=True,
        )  # fmt: skip
    copies = multiprocessing.get_context("forkserver")
    copies.set_forkserver_preload(_LOADED)
    with tempfile.TemporaryDirectory() as place:
        said = [Path(place, "out"), Path(place, "err")]
        process = copies.Process(target=_run, args=([*words], cwd, {**env}, before, said))
        process.start()
        process.join()
        done = process.exitcode or 0
        process.close()
        texts = [one.read_text(encoding="utf-8") for one in said]
    return subprocess.CompletedProcess([*words], done, *texts)


def _run(words: list[str], cwd: Path, env: dict[str, str], before: str, said: list[Path]) -> None:
    for descriptor, place in enumerate(said, start=1):
        os.dup2(os.open(place, os.O_WRONLY | os.O_CREAT), descriptor)
    os.environ.clear()
    os.environ.update(env)
    os.chdir(cwd)
    sys.argv = words
    sys.path.insert(0, str(cwd))
    try:
        exec(before, {})
        runpy.run_module(words[0], run_name="__main__", alter_sys=True)
    finally:
        atexit._run_exitfuncs()  # a copy leaves without them
