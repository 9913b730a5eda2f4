"""A pack put in place whole, with whatever its owner keeps beside it.

A pack says in its mark which files it is made of. What else lies in its folder is its owner's: it
is carried over, and so is a file of the pack that was written in since.
"""

from __future__ import annotations

import hashlib
import os
import shutil
from collections.abc import Mapping
from pathlib import Path

from stillroom.core.private.shapes import PACK_MARKER
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.saving.whole import begin_folder, clear_leftovers, give_up, put_in_place, told

GIT_IGNORE = ".gitignore"
_YOURS = "yours"
"""The folder to which a file of the pack goes that was written in since it was made."""


def restore_folder(out: Path) -> None:
    """Bring the earlier folder back when a swap was broken off half-way."""
    before = out.with_name(f"{out.name}-before")  # as packs were swapped at first
    if before.is_dir() and not out.exists():
        before.rename(out)
    clear_leftovers(out)


def swap_in(files: Mapping[str, bytes], out: Path) -> tuple[str, ...]:
    """Write files (paths with "/" to bytes) as the folder `out`, replacing an earlier pack.

    Returns which files of the earlier pack had been written in and now lie in "yours". When the
    folder holds just these files already, nothing is touched. Raises ProblemsFound.
    """
    with told(out):
        restore_folder(out)
        place = Path(os.path.realpath(out))
        marked = {**files, PACK_MARKER: _mark(files), GIT_IGNORE: b"*\n"}
        own, changed = _of_the_owner(place, marked)
        if place.is_dir() and not changed and _holds(place, marked):
            return ()
        new = begin_folder(place)
        try:
            for name, data in marked.items():
                path = new / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(data)
            for name in own:
                _carry(place / name, new / name)
            for name in changed:
                _carry(place / name, new / _YOURS / name)
            put_in_place(new, place)
        finally:
            give_up(new)
    return changed


def _mark(files: Mapping[str, bytes]) -> bytes:
    """Return the pack's mark: what it is, and each of its files with a sum of what is in it."""
    rows = [f"{_sum(data)} {name}" for name, data in sorted(files.items()) if name != PACK_MARKER]
    return "\n".join(["A private pack. It is never published.", *rows, ""]).encode()


def _sum(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()[:32]


def _of_the_owner(place: Path, files: Mapping[str, bytes]) -> tuple[list[str], tuple[str, ...]]:
    """Return what in a folder is no file of its pack, and what in its pack was written in."""
    sums = _sums_of(place)
    own, changed = [], []
    for path in sorted(place.rglob("*")) if place.is_dir() else ():
        name = path.relative_to(place).as_posix()
        if path.is_dir() and not path.is_symlink():
            continue
        if name in (PACK_MARKER, GIT_IGNORE):
            continue
        if name in sums:
            if path.is_file() and _sum(path.read_bytes()) != sums[name]:
                changed.append(name)
        elif name not in files:
            own.append(name)
        elif sums:  # a pack that kept no sums may have written it
            what = "This is a note of your own, and the pack has a file of that name."
            raise ProblemsFound([Problem(str(path), 1, what, "Give it another name.")])
    return own, tuple(changed)


def _sums_of(place: Path) -> dict[str, str]:
    """Return the sums that a pack keeps of its files; none for a pack of earlier days."""
    mark = place / PACK_MARKER
    if not mark.is_file():
        return {}
    rows = mark.read_text(encoding="utf-8", errors="replace").splitlines()[1:]
    pairs = (row.partition(" ") for row in rows)
    return {name: number for number, _, name in pairs if name}


def _holds(place: Path, files: Mapping[str, bytes]) -> bool:
    """Say whether a folder holds each file just as it is to be, and no file of another pack."""
    if set(_sums_of(place)) - set(files):
        return False
    return all(
        (place / name).is_file() and (place / name).read_bytes() == data
        for name, data in files.items()
    )


def _carry(old: Path, new: Path) -> None:
    new.parent.mkdir(parents=True, exist_ok=True)
    shutil.copy2(old, new, follow_symlinks=False)
