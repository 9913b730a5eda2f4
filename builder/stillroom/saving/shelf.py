"""The user's folder for what is kept from one command to the next, and how a file gets there.

The folder may be deleted at any time, and two commands may use it at once. STILLROOM_CACHE names
another one, or says "off". Leaves out what is kept.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

VARIABLE: Final = "STILLROOM_CACHE"
FORGOTTEN_AFTER: Final = 90 * 24 * 60 * 60
"""Seconds after which what nobody took goes."""
_OFF: Final = frozenset({"off", "no", "none", "0"})


def shelf_folder() -> Path | None:
    """Return the folder for such things that the variable or the system names; None for none."""
    asked = os.environ.get(VARIABLE, "").strip()
    if asked.lower() in _OFF:
        return None
    if asked:
        return Path(asked)
    import platformdirs  # whoever names a folder does not wait for it

    return Path(platformdirs.user_cache_dir("stillroom", appauthor=False))


def is_ours(folder: Path) -> bool:
    """Say whether nobody else may write there: what is kept is read back as it was written."""
    if not hasattr(os, "getuid"):
        return True
    found = folder.stat()
    return found.st_uid == os.getuid() and not found.st_mode & 0o022


def lay_on_shelf(path: Path, data: bytes) -> None:
    """Write a file whole or not at all, beside whoever else writes it."""
    import tempfile  # who only takes something from the shelf does not wait for it

    descriptor, aside = tempfile.mkstemp(dir=path.parent, suffix=".part")
    try:
        with os.fdopen(descriptor, "wb") as file:
            file.write(data)
        os.replace(aside, path)
    except BaseException:
        Path(aside).unlink(missing_ok=True)
        raise
