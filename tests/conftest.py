"""One run in several workers, and the demo book built once for all of them."""

from __future__ import annotations

import atexit
import gc
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from _pytest.doctest import DoctestModule
from filelock import FileLock
from hypothesis import settings

from planted import Planted, build_planted, read_planted
from sampling import WHOLE

# no test asserts a time: a machine that pauses for a moment fails none
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")

# patterns and templates are known by their own words, and whoever made one first has made it for
# all; but what one test's build keeps of its recipes must help no other, so a file stands where
# books would be kept. Tests of the keeping name a folder of their own
if "PYTEST_XDIST_WORKER" not in os.environ:
    os.environ["STILLROOM_CACHE"] = _kept = tempfile.mkdtemp(prefix="stillroom-kept-")
    Path(_kept, "books").touch()
    atexit.register(shutil.rmtree, _kept, ignore_errors=True)
# to begin a process that loads all takes longer than what is printed in it; tests of that say 2
os.environ["STILLROOM_PROCESSES"] = "1"

if sys.dont_write_bytecode:
    # where nothing may be written beside the sources each process would compile them all again
    os.environ["PYTHONPYCACHEPREFIX"] = sys.pycache_prefix = tempfile.mkdtemp(prefix="stillroom-")
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
    sys.dont_write_bytecode = False
    atexit.register(shutil.rmtree, sys.pycache_prefix, ignore_errors=True)

# beyond these a worker costs more to start than it saves: each of them collects every test
MOST_WORKERS = 8
# with two workers or more the long ones begin first, so that none is waited for at the end
LONG = ("browser", "desk", "publish", "saving", "printing", "giving", "test_guide.py", "fuzz")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--whole", action="store_true", help="ask all that a run asks a sample of")


def pytest_configure(config: pytest.Config) -> None:
    if config.getoption("--whole"):
        os.environ[WHOLE] = "1"  # read where tests are collected, also by each worker


def pytest_xdist_auto_num_workers(config: pytest.Config) -> int:
    """Return a worker for each core for the whole house, and none for a part of it."""
    named = {(config.invocation_params.dir / name.split("::")[0]).resolve() for name in config.args}
    if Path(__file__).parent not in named:
        return 0
    free = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    return 0 if free in (None, 1) else min(free or 1, MOST_WORKERS)


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Iterator[None]:
    """Let Python not look for what may go while twenty thousand tests are read that all stay."""
    gc.disable()
    done = yield
    gc.freeze()
    gc.enable()
    return done


def pytest_collection_finish() -> None:
    """Read PDFs quickly where any test reads one: to load what reads them takes a while."""
    if "pdfplumber" in sys.modules:
        from quick_pages import read_quickly

        read_quickly()


@pytest.hookimpl(wrapper=True)
def pytest_collect_file() -> Iterator[None]:
    """Seek examples to run in the package only: no test's docstring holds one."""
    found = yield
    return [one for one in found if not isinstance(one, DoctestModule)]


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    if "PYTEST_XDIST_WORKER" not in os.environ:
        return

    def turn(item: pytest.Item) -> int:
        # the first of all needs no built book: who begins beside it builds one, and nobody waits
        if item.path.name == "test_house_rules.py":
            return 0
        return 1 if any(folder in item.path.parts for folder in LONG) else 2

    items.sort(key=turn)


@pytest.fixture(scope="session")
def make_once(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Path]:
    """Return what lets the first of all workers make a folder; the others wait and read it."""
    shared = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        shared = shared.parent

    def made(name: str, make: Callable[[Path], None]) -> Path:
        place, begun = shared / f"shared-{name}", shared / f"begun-{name}"
        with FileLock(shared / f"{name}.lock"):
            if not place.is_dir():
                shutil.rmtree(begun, ignore_errors=True)
                begun.mkdir()
                make(begun)
                begun.rename(place)
        return place

    return made


@pytest.fixture(scope="session")
def planted(make_once: Callable[..., Path]) -> Planted:
    """Return the demo book as it is built with a private list and packs all around it."""
    return read_planted(make_once("planted", build_planted))


@pytest.fixture(scope="session")
def built_book(planted: Planted) -> Path:
    """Return the folder of the built demo book. It is everybody's: nothing is written there."""
    return planted.site
