"""A file or a folder written whole or not at all.

Each is made aside, beside its place, and put there by one renaming; where the system can exchange
two folders in one step (Linux, macOS) there is no moment without the earlier one. What a killed run
left aside is cleared away by the next; git never sees it, for it brings a `.gitignore` of its own.
"""

from __future__ import annotations

import errno
import os
import shutil
import sys
import time
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path

from stillroom.core.words.problems import Problem, ProblemsFound

ASIDE = ".stillroom-"
"""What is made aside is called ".NAME.stillroom-NUMBER", by the number of the run making it."""
_NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_HELD = (5, 32, 33)
"""What Windows answers for a file that another program holds (ERROR_ACCESS_DENIED and two more)."""
_TRIES, _WAIT_SECONDS = 8, 0.1
_WORDS = {
    errno.EACCES: ("This may not be written.", "Change who may write there, or name another."),
    errno.EPERM: ("This may not be written.", "Change who may write there, or name another."),
    errno.EROFS: ("This may not be written: the disk is read-only.", "Name another place."),
    errno.ENOTDIR: ("This lies below a file.", "Name a place in a folder."),
    errno.EEXIST: ("This lies below a file.", "Name a place in a folder."),
    errno.EISDIR: ("This is a folder.", "Name a file."),
    errno.ENAMETOOLONG: ("This name is too long.", "Name a shorter one."),
    errno.ENOENT: ("This folder is not there.", "Make it first, or name another."),
    errno.ELOOP: ("This is a link that leads to itself.", "Name another."),
}


def explain(error: OSError, path: Path | str) -> Problem:
    """Return what kept a file from being read or written, in plain words."""
    if error.errno in _NO_ROOM:
        return Problem(str(path), 0, "There is no room to write this.", "Make room on the disk.")
    if getattr(error, "winerror", None) in _HELD:
        what = "This is open in another program, or may not be written."
        return Problem(str(path), 0, what, "Close it there, or name another.")
    what, mend = _WORDS.get(error.errno or 0, (f"This cannot be written ({error.strerror}).", ""))
    return Problem(str(path), 0, what, mend)


@contextmanager
def told(path: Path) -> Iterator[None]:
    """Turn what the system says about a place into a problem; raises ProblemsFound."""
    try:
        yield
    except OSError as error:
        raise ProblemsFound([explain(error, path)]) from None


def write_whole(path: Path, data: bytes) -> None:
    """Write a file and the folders above it; raises ProblemsFound, and then nothing is changed."""
    with told(path):
        there = Path(os.path.realpath(path))
        lacking = [folder for folder in there.parents if not folder.exists()]
        try:
            there.parent.mkdir(parents=True, exist_ok=True)
            clear_leftovers(there)
            _write_aside(there, data)
        except BaseException:
            _take_away(lacking)
            raise


def write_several(files: Mapping[Path, bytes], folders: Iterable[Path] = ()) -> None:
    """Write new files and folders in their order; where one cannot be, none of them stays.

    Raises ProblemsFound. A file that is there already is written over and is not taken away.
    """
    wanted = [*(path.parent for path in files), *folders]
    above = {one for folder in wanted for one in (folder, *folder.parents)}
    lacking = sorted((one for one in above if not one.exists()), key=lambda one: -len(one.parts))
    new = [path for path in files if not path.exists()]
    try:
        for folder in folders:
            with told(folder):
                folder.mkdir(parents=True, exist_ok=True)
        for path, data in files.items():
            write_whole(path, data)
    except BaseException:
        for path in new:
            with suppress(OSError):  # never written
                path.unlink()
        _take_away(lacking)
        raise


def _write_aside(there: Path, data: bytes) -> None:
    """Write a file aside and move it over the earlier one, whose permissions it keeps."""
    new = there.with_name(_aside_name(there)) / "new"
    try:
        _make_aside(new.parent)
        with new.open("wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        if there.is_file():
            shutil.copymode(there, new)
        _move_over(new, there)
    finally:
        give_up(new)


def _make_aside(aside: Path) -> None:
    """Make a folder of which git sees nothing."""
    aside.mkdir(parents=True)
    (aside / ".gitignore").write_text("*\n", encoding="utf-8")


def _take_away(folders: Iterable[Path]) -> None:
    """Take away folders that were made for nothing, the innermost first, unless they are used."""
    for folder in folders:
        with suppress(OSError):  # never made, or another run has put something there
            folder.rmdir()


def _move_over(aside: Path, there: Path) -> None:
    """Put a file in another's place; on Windows whoever looks at a new file holds it a moment."""
    for tried in range(1, _TRIES + 1):
        try:
            os.replace(aside, there)
        except PermissionError as error:
            if tried == _TRIES or getattr(error, "winerror", None) not in _HELD:
                raise
            time.sleep(_WAIT_SECONDS)
        else:
            return


def begin_folder(place: Path) -> Path:
    """Return a new empty folder aside, to be filled and given to `put_in_place`."""
    with told(place):
        place.parent.mkdir(parents=True, exist_ok=True)
        clear_leftovers(place)
        aside = place.with_name(_aside_name(place))
        try:
            _make_aside(aside)
            (aside / "new").mkdir()
        except OSError:
            give_up(aside / "new")
            raise
        return aside / "new"


def give_up(new: Path) -> None:
    """Clear away a folder that was begun."""
    shutil.rmtree(new.parent, ignore_errors=True)


def put_in_place(new: Path, place: Path) -> None:
    """Make a folder that was begun the one at `place`, and clear the earlier one away."""
    with told(place):
        if place.exists() and not place.is_dir():
            what = "A file stands here, and would be taken away."
            raise ProblemsFound([Problem(str(place), 0, what, "Name a folder.")])
        if place.exists() and not _exchange(new, place):
            _exchange_in_two(new, place)
        elif new.exists() and not place.exists():
            os.rename(new, place)
    give_up(new)


def _exchange_in_two(new: Path, place: Path) -> None:
    """Put a folder in place where the system cannot exchange two in one step."""
    old = new.with_name("old")
    os.rename(place, old)
    try:
        os.rename(new, place)
    except BaseException:
        os.rename(old, place)
        raise


def clear_leftovers(place: Path) -> None:
    """Clear away what killed runs left aside in a folder; bring back what one had put aside."""
    for aside in place.parent.glob(f".*{ASIDE}[0-9]*"):
        name, _, number = aside.name[1:].rpartition(ASIDE)
        if not number.isdecimal() or not _is_left(name == place.name, int(number)):
            continue
        if aside.is_dir():
            there = aside.with_name(name)
            if (aside / "old").is_dir() and not there.exists():
                os.rename(aside / "old", there)
            shutil.rmtree(aside, ignore_errors=True)
        else:
            aside.unlink(missing_ok=True)


def clear_leftovers_below(root: Path) -> None:
    """Clear away what killed runs left aside anywhere in a book, but in what is made of it."""
    for folder, below, _ in os.walk(root):
        below[:] = [name for name in below if name == ".desk" or name[0] != "." or ASIDE in name]
        below[:] = [name for name in below if name not in ("site", "node_modules")]
        if any(ASIDE in name for name in below):
            clear_leftovers(Path(folder) / "any")
            below[:] = [name for name in below if ASIDE not in name]


def _is_left(is_of_place: bool, number: int) -> bool:
    """Say whether the run that made something aside has ended; this one may do two things at once.

    On Windows no run is asked whether it goes on, so that only what is of the same place is taken.
    """
    if number == os.getpid() or sys.platform == "win32":
        return is_of_place
    return not _is_running(number)


def clear_ended(folder: Path, beginning: str) -> None:
    """Clear away folders called by a beginning and the number of a run, where it has ended."""
    for left in folder.glob(f"{beginning}[0-9]*"):
        number = left.name.removeprefix(beginning).partition("-")[0]
        if number.isdecimal() and _is_left(False, int(number)):
            shutil.rmtree(left, ignore_errors=True)


def _aside_name(place: Path) -> str:
    return f".{place.name}{ASIDE}{os.getpid()}"


def _is_running(number: int) -> bool:
    """Say whether a run still goes on; on Windows asking may end it."""
    try:
        os.kill(number, 0)
    except ProcessLookupError:
        return False
    except (PermissionError, OverflowError):
        return True
    return True


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two folders in one step; False where the system or the disk has no such step."""
    names = (os.fsencode(one), os.fsencode(other))
    here, exchange = -100, 2  # AT_FDCWD and RENAME_EXCHANGE of renameat2(2); RENAME_SWAP is 2 too
    import ctypes  # late: only what replaces a whole folder needs it

    library = ctypes.CDLL(None, use_errno=True) if sys.platform != "win32" else None
    if library is None:
        return False
    if hasattr(library, "renameat2"):
        done = library.renameat2(here, names[0], here, names[1], exchange)
    elif hasattr(library, "renamex_np"):
        done = library.renamex_np(names[0], names[1], exchange)
    else:
        return False
    return bool(done == 0)
