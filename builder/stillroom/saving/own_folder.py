"""The folder that Stillroom keeps for itself beside a book's settings, out of git's sight.

Earlier versions of a giving list lie there, and the lines of letters as they came.
"""

from __future__ import annotations

from pathlib import Path
from typing import Final

from stillroom.saving.whole import write_whole

OWN: Final = ".desk"


def make_own(root: Path) -> Path:
    """Make the folder of a book where it is not there yet, and return it; raises ProblemsFound."""
    ignore = root / OWN / ".gitignore"
    if not ignore.exists():
        write_whole(ignore, b"*\n")
    return ignore.parent
