"""A folder written whole or not at all: into a sibling first, then swapped in.

The earlier folder stands as NAME-before until the new one is in its place.
"""

from __future__ import annotations

import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path


def restore_folder(out: Path) -> None:
    """Bring the earlier folder back when a swap was broken off half-way."""
    before = _before(out)
    if before.is_dir() and not out.exists():
        before.rename(out)


def swap_in(files: Mapping[str, bytes], out: Path) -> None:
    """Write files (paths with "/" to bytes) as the folder `out`, replacing an earlier one."""
    restore_folder(out)
    out.parent.mkdir(parents=True, exist_ok=True)
    new = Path(tempfile.mkdtemp(prefix=f"{out.name}-new-", dir=out.parent))
    try:
        for name, data in files.items():
            path = new / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        before = _before(out)
        if before.exists():
            shutil.rmtree(before)
        if out.exists():
            os.rename(out, before)
        os.rename(new, out)
    except BaseException:
        shutil.rmtree(new, ignore_errors=True)
        restore_folder(out)
        raise
    shutil.rmtree(before, ignore_errors=True)


def _before(out: Path) -> Path:
    return out.with_name(f"{out.name}-before")
